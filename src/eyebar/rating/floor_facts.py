"""From what a part of the floor meets to its factor, and the facts to make the working again."""

from dataclasses import dataclass

from eyebar.formula import Symbol, formula
from eyebar.loads.floor_dead import Pair
from eyebar.resistance.floor_rules import Strength

DEAD_LOAD = Symbol("factor on DC", "1", "dc_factor")
WEARING = Symbol("factor on DW", "1", "dw_factor")
LIVE_FACTOR = Symbol("live load factor", "1", "live_factor")
IMPACT = Symbol("impact", "1", "impact")
SOURCE = "Manual for Bridge Evaluation, general rating equation, from memory"


@dataclass(frozen=True, slots=True, kw_only=True)
class FloorFacts:
    """Which check governs and where: `strength`; lanes loaded; factors on dead load by the set of
    that name; `section_ft` along the part, counted as shear behind its end 0 or before its end 1
    (`end`), or in the sense +1 or -1 of a beam that runs on; the axle (from 0, front to rear) that
    stands over the section, way of travel (1 up, -1 down) and spacings [ft]; whether the lane load
    alone governs. `front_ft`: the front axle from the part's beginning, for beams that run on."""

    strength: Strength
    lanes: int
    dead_set: str
    section_ft: float = 0.0
    end: int = 0
    sense: int = 1
    axle: int = 0
    way: int = 1
    spacings_ft: tuple[float, ...] = ()
    lane_only: bool = False
    front_ft: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Met:
    """What a check meets, in its unit: dead load unfactored; the vehicle times `share`; a crowd on
    the sidewalks."""

    dead: Pair
    live: float
    share: float
    crowd: float = 0.0


@formula(
    "RF = (C - g_dc * D_dc - g_dw * D_dw - gL * Q) / (gL * L * (1 + I))",
    result=Symbol("rating factor", "1"),
    C=Symbol("stress that may be borne", "ksi", "stress_limit", low=10.0, high=40.0),
    g_dc=DEAD_LOAD,
    D_dc=Symbol("stress of dead load that stays", "ksi", "dc_stress", low=0.0, high=5.0),
    g_dw=WEARING,
    D_dw=Symbol("stress of what may be taken off", "ksi", "dw_stress", low=0.0, high=5.0),
    gL=LIVE_FACTOR,
    Q=Symbol("stress of a crowd on the sidewalks", "ksi", "crowd_stress", low=0.0, high=1.0),
    L=Symbol("stress of the vehicle, its share counted", "ksi", "live_stress", low=1.0, high=40.0),
    I=IMPACT,
    source=SOURCE,
)
def factor_by_stress(
    *, stress_limit: float, dc_factor: float, dc_stress: float, dw_factor: float,
    dw_stress: float, live_factor: float, crowd_stress: float, live_stress: float, impact: float,
) -> float:
    """Rating factor of a check of stress [1].

    Stresses [ksi], factors [1]; scalars or arrays. Limits: a live stress other than zero.
    """
    left = stress_limit - dc_factor * dc_stress - dw_factor * dw_stress
    return (left - live_factor * crowd_stress) / (live_factor * live_stress * (1.0 + impact))


@formula(
    "RF = (C - g_dc * D_dc - g_dw * D_dw - gL * Q) / (gL * L * (1 + I))",
    result=Symbol("rating factor", "1"),
    C=Symbol("force that may be borne", "kip", "force_limit", low=10.0, high=90.0),
    g_dc=DEAD_LOAD,
    D_dc=Symbol("force of dead load that stays", "kip", "dc_force", low=0.0, high=9.0),
    g_dw=WEARING,
    D_dw=Symbol("force of what may be taken off", "kip", "dw_force", low=0.0, high=9.0),
    gL=LIVE_FACTOR,
    Q=Symbol("force of a crowd on the sidewalks", "kip", "crowd_force", low=0.0, high=5.0),
    L=Symbol("force of the vehicle, its share counted", "kip", "live_force", low=1.0, high=60.0),
    I=IMPACT,
    source=SOURCE,
)
def factor_by_force(
    *, force_limit: float, dc_factor: float, dc_force: float, dw_factor: float, dw_force: float,
    live_factor: float, crowd_force: float, live_force: float, impact: float,
) -> float:
    """Rating factor of a check of force [1].

    Forces [kip], factors [1]; scalars or arrays. Limits: a live force other than zero.
    """
    left = force_limit - dc_factor * dc_force - dw_factor * dw_force
    return (left - live_factor * crowd_force) / (live_factor * live_force * (1.0 + impact))


def plain_factor(
    strength: Strength, met: Met, factors: tuple[float, float], *, live_factor: float,
    impact: float,
) -> float:
    """The factor of a check, negative where dead load alone is too much."""
    if strength.unit == "kip":
        return factor_by_force(
            force_limit=strength.capacity, dc_factor=factors[0], dc_force=met.dead.dc,
            dw_factor=factors[1], dw_force=met.dead.dw, live_factor=live_factor,
            crowd_force=met.crowd, live_force=met.live, impact=impact,
        )
    return factor_by_stress(
        stress_limit=strength.capacity, dc_factor=factors[0], dc_stress=met.dead.dc,
        dw_factor=factors[1], dw_stress=met.dead.dw, live_factor=live_factor,
        crowd_stress=met.crowd, live_stress=met.live, impact=impact,
    )
