"""Whether the bracing of a bridge, and the bars that it bends, stand the wind.

Beside the rating, and no part of it: no vehicle is rated or posted by what stands here.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from eyebar.bridge.parts import Bridge
from eyebar.errors import NotMeasured, Unknown, nearest
from eyebar.formula import Symbol, formula
from eyebar.loads.wind import INCHES, LOADED, Exposed, Wind, exposed, span_ft, winds
from eyebar.office import Values
from eyebar.rating.half_through import held_by_posts
from eyebar.rating.kept import loaded_states
from eyebar.rating.wind_members import PartChecks, Stood
from eyebar.rating.wind_paths import WindPath, upper_length_ft, wind_path
from eyebar.rating.wind_posts import HeldPost, held_posts, worse
from eyebar.rating.wind_strength import Judge
from eyebar.rating.wind_trusses import TrussForces, least_thrusts, truss_forces
from eyebar.resistance import Condition
from eyebar.vehicles import Vehicle

NOT_RECORDED = "the bracing is not recorded (bracing)"
ON_TOP = "the floor lies on the upper chords: wind on such a bridge is not followed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Overturning:
    """Whether the empty bridge stays on its bearings: moments about the leeward bearings [kip ft].
    """

    rule: str
    windward: str
    turning: float
    holding: float
    factor: float


@dataclass(frozen=True, slots=True, kw_only=True)
class WindChecks:
    """All that is known of a bridge under wind. `reason`: why nothing is."""

    reason: str = ""
    overhead: bool | None = None
    winds: tuple[Wind, ...] = ()
    unknown_rules: Mapping[str, str] | None = None
    area: Exposed | None = None
    paths: tuple[WindPath, ...] = ()
    stood: tuple[Stood, ...] = ()
    posts: tuple[HeldPost, ...] = ()
    overturning: tuple[Overturning, ...] = ()
    broken: tuple[str, ...] = ()
    bridge: Bridge | None = None
    """With the effective lengths of half-through chords."""


@formula(
    "k = M_r / M_w",
    result=Symbol("safety of the empty bridge against turning over", "1"),
    M_r=Symbol("moment of the dead load about the leeward bearings", "kip ft", "holding_moment",
               low=100.0,
               high=2000.0),
    M_w=Symbol("moment of the wind about them", "kip ft", "turning_moment", low=50.0,
               high=2000.0),
    source="definition",
)
def safety_against_turning(holding_moment: float, turning_moment: float) -> float:
    """Safety of the empty bridge against turning over [1].

    Moments [kip ft]. Scalars. Limits: turning moment above 0.
    """
    return holding_moment / turning_moment


def wind_checks(
    bridge: Bridge, values: Values, vehicles: Mapping[str, Vehicle]
) -> WindChecks:
    """The bridge under wind, by every rule, empty and loaded, from both sides.

    `vehicles` are all that are known; the office's values say which of them stand on it then.
    """
    bracing = bridge.bracing
    if bracing is None:
        return WindChecks(reason=NOT_RECORDED)
    if not all(joint.startswith("L") for joint, _ in bridge.trusses[0].floor_joints):
        return WindChecks(reason=ON_TOP, overhead=bracing.overhead)
    if not bracing.overhead:
        bridge, _, _ = held_by_posts(
            bridge, lambda truss: loaded_states(bridge, truss)[0]["none"], values
        )
    found, unknown = winds(bridge, values, upper_ft=upper_length_ft(bridge))
    forces, why = truss_forces(bridge, _named(vehicles, "wind.beside", values), values)
    thrusts = least_thrusts(bridge, forces)
    paths = tuple(
        wind_path(bridge, wind, truss.name, thrusts=thrusts, values=values)
        for wind in found for truss in bridge.trusses
    )
    judge = Judge(values, _condition(bridge), values.number("wind.more stress"))
    checks = PartChecks(bridge=bridge, judge=judge, forces=forces, why=why)
    return WindChecks(
        overhead=bracing.overhead, winds=tuple(found), unknown_rules=unknown,
        area=_area(bridge, values), paths=paths,
        stood=_worst(one for path in paths for one in checks.of(path)),
        posts=_posts(bridge, found, vehicles, judge),
        overturning=tuple(_overturning(bridge, found, forces, values)), bridge=bridge,
        broken=tuple(dict.fromkeys(
            said for path in paths for said in path.broken.values()
        )),
    )


def _named(
    vehicles: Mapping[str, Vehicle], row: str, values: Values
) -> Mapping[str, Vehicle]:
    """The vehicles that a row of the office's values names. Raises Unknown."""
    names = values.names(row)
    for name in names:
        if name not in vehicles:
            raise Unknown("vehicle", name, near=nearest(name, vehicles))
    return {name: vehicles[name] for name in names}


def _posts(
    bridge: Bridge, found: list[Wind], vehicles: Mapping[str, Vehicle], judge: Judge
) -> tuple[HeldPost, ...]:
    """The posts of a half-through bridge, which must also hold a part of their chord's push."""
    if bridge.bracing is None or bridge.bracing.overhead:
        return ()
    values = judge.values
    pushed, _ = truss_forces(
        bridge, _named(vehicles, "wind.half-through.beside", values), values
    )
    return tuple(held_posts(
        bridge, found, pushed, values=values,
        judges=(Judge(values, judge.condition, 1.0), judge),
    ))


def _condition(bridge: Bridge) -> Condition:
    return Condition(
        superstructure_condition=bridge.superstructure_condition,
        loss_measured=bridge.condition_measured,
    )


def _area(bridge: Bridge, values: Values) -> Exposed | None:
    try:
        return exposed(bridge, values)
    except NotMeasured:
        return None


def _worst(every: Iterator[Stood]) -> tuple[Stood, ...]:
    """The worst of each part, check and rule; what is not known is said once."""
    found: dict[tuple[str, str, str], Stood] = {}
    for one in every:
        key = (one.part, one.what, one.rule)
        if key not in found or worse(found[key].verdict, one.verdict) is not found[key].verdict:
            found[key] = one
    return tuple(found.values())


def _overturning(
    bridge: Bridge, found: list[Wind], forces: Mapping[str, TrussForces], values: Values
) -> Iterator[Overturning]:
    """The empty bridge about its leeward bearings."""
    bracing = bridge.bracing
    if not forces or bracing is None or bracing.spacing is None:
        return
    truss = bridge.trusses[0]
    spacing, span = bracing.spacing / INCHES, span_ft(truss)
    below = values.number("wind.bearings below the pins")
    level = min(y for _, y in (truss.joints[joint] for joint, _ in truss.floor_joints))
    height = (max(y for _, y in truss.joints.values()) - level) / INCHES
    width = bridge.road.clear_width_ft
    for wind in found:
        if wind.state == LOADED:
            continue
        turning = wind.upper * upper_length_ft(bridge) * (height + below)
        turning += wind.lower * span * below
        turning += wind.lift * width * span * (spacing / 2.0 + width / 4.0)
        for one in bridge.trusses:
            holding = forces[one.name].weight * spacing
            yield Overturning(
                rule=wind.rule, windward=one.name, turning=turning, holding=holding,
                factor=safety_against_turning(holding, turning),
            )
