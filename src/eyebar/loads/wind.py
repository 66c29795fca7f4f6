"""Wind across a bridge: what it meets, and how much of it comes on the upper and the lower chord.

Three rules stand beside each other: a weight for each foot of chord and a pressure on all surfaces,
as the bridge's own time had them, and the pressure of later specifications.
"""

from collections.abc import Callable
from dataclasses import dataclass

from eyebar.bridge.parts import Bar, Bridge, Truss
from eyebar.errors import NotMeasured
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.sections.properties import properties
from eyebar.sections.shapes import Section
from eyebar.terms import Kind

INCHES = 12.0
POUNDS = 1000.0
UPPER = (Kind.TOP_CHORD,)
LOWER = (Kind.BOTTOM_CHORD,)
BY_THE_FOOT = "by the foot"
BY_AREA = "by area"
LATER = "later"
RULES = (BY_THE_FOOT, BY_AREA, LATER)
SOURCES = {
    BY_THE_FOOT: ("loaded chord", "unloaded chord", "moving"),
    BY_AREA: ("pressure",),
    LATER: ("pressure", "least on the loaded chord", "least on the unloaded chord",
            "part with vehicles", "moving", "lift"),
}
"""Rule -> the office's values behind it."""
EMPTY = "empty"
LOADED = "loaded"
STATES = (EMPTY, LOADED)


@dataclass(frozen=True, slots=True, kw_only=True)
class Exposed:
    """What a bridge shows the wind from one side [ft2].

    `upper_ft2` of each truss: its upper chord and half of what stands between the chords;
    `lower_ft2` of each: the other half, and its lower chord; `floor_ft2` the floor's edge,
    `railing_ft2` one railing.
    """

    upper_ft2: tuple[float, ...]
    lower_ft2: tuple[float, ...]
    floor_ft2: float
    railing_ft2: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Wind:
    """Wind on a bridge by one rule in one state.

    `upper` and `lower` on the two chords' levels, both trusses together, and `moving` on the
    vehicles [kip/ft]; `lift` upwards on the floor [kip/ft2]; `pressure` on surfaces [lb/ft2], None
    where the rule has none.
    """

    rule: str
    state: str
    upper: float
    lower: float
    moving: float
    lift: float = 0.0
    pressure: float | None = None


@formula(
    "A = h * l",
    result=Symbol("surface that a bar shows the wind", "in2"),
    h=Symbol("its depth, seen from the side", "in", "seen", low=0.5, high=24.0),
    l=Symbol("its length", "in", "length", low=60.0, high=500.0),
    source="geometry; heads, gussets and lacing not counted apart",
)
def exposed_area(seen: float, length: float) -> float:
    """Surface that a bar shows the wind [in2].

    Lengths [in]; scalars or arrays. Limits: none.
    """
    return seen * length


@formula(
    "w = max(p * A / l, w_0)",
    result=Symbol("wind for each foot of a chord", "lb/ft"),
    p=Symbol("pressure", "lb/ft2", "pressure", low=10.0, high=75.0),
    A=Symbol("surface that comes on the chord", "ft2", "surface", low=20.0, high=900.0),
    l=Symbol("length of the chord that it spreads over", "ft", "length_ft", low=30.0, high=300.0),
    w_0=Symbol("least wind for each foot", "lb/ft", "least_lb_per_ft", low=0.0, high=300.0),
    source="statics",
)
def wind_by_area(
    pressure: float, surface: float, *, length_ft: float, least_lb_per_ft: float
) -> float:
    """Wind for each foot of a chord by the surface exposed [lb/ft].

    Pressure [lb/ft2], surface [ft2], length [ft], least [lb/ft]. Scalars. Limits: length above 0.
    """
    return max(pressure * surface / length_ft, least_lb_per_ft)


def depth_seen(section: Section) -> float:
    """How deep a section is, seen from the side of the truss [in]. Raises NotMeasured."""
    shape = properties(section)
    return shape.top + shape.bottom


def exposed(bridge: Bridge, values: Values) -> Exposed:
    """What the bridge shows the wind. Raises NotMeasured where a width is not known."""
    upper, lower = [], []
    for truss in bridge.trusses:
        above, below = _of_truss(truss)
        upper.append(above)
        lower.append(below)
    span = span_ft(bridge.trusses[0])
    return Exposed(
        upper_ft2=tuple(upper), lower_ft2=tuple(lower), floor_ft2=_floor_depth_ft(bridge) * span,
        railing_ft2=values.number("wind.railing") * span,
    )


def _of_truss(truss: Truss) -> tuple[float, float]:
    """Surfaces of a truss that come on its upper and its lower chord [ft2]."""
    upper = lower = 0.0
    for bar in (*truss.bars, *truss.broken):
        surface = exposed_area(_depth(bar), bar.length) / INCHES**2
        share = 1.0 if bar.kind in UPPER else 0.0 if bar.kind in LOWER else 0.5
        upper += share * surface
        lower += (1.0 - share) * surface
    return upper, lower


def _depth(bar: Bar) -> float:
    try:
        return depth_seen(bar.as_built)
    except NotMeasured as missing:
        raise NotMeasured(bar.address, missing.what) from None


def _floor_depth_ft(bridge: Bridge) -> float:
    """Depth of deck and stringers, seen from the side [ft]. Raises NotMeasured."""
    floor = bridge.floor
    if floor is None or floor.deck is None or floor.deck.built is None:
        raise NotMeasured("the floor", "thickness of the deck")
    try:
        stringers = max((depth_seen(one.as_built) for one in floor.stringers), default=0.0)
    except NotMeasured:
        raise NotMeasured("the floor", "depth of the stringers") from None
    return (floor.deck.built + stringers) / INCHES


def span_ft(truss: Truss) -> float:
    """Span of a truss, from the floor's first joint to its last [ft]."""
    return truss.floor_joints[-1][1] - truss.floor_joints[0][1]


def winds(
    bridge: Bridge, values: Values, *, upper_ft: float
) -> tuple[list[Wind], dict[str, str]]:
    """The wind by every rule, empty and loaded; of rules that cannot be used the reason.

    `upper_ft` is the length of upper chord that the wind on it spreads over, end panels by half.
    """
    found, unknown = [], {}
    area: Exposed | None = None
    try:
        area = exposed(bridge, values)
    except NotMeasured as missing:
        reason = f"{missing.what} of {missing.part} not measured"
        unknown = dict.fromkeys((BY_AREA, LATER), reason)
    span = span_ft(bridge.trusses[0])
    for rule in RULES:
        if rule in unknown:
            continue
        found += [
            _BY[rule](_Met(
                area=area, span_ft=span, upper_ft=upper_ft, state=state, values=values
            ))
            for state in STATES
        ]
    return found, unknown


@dataclass(frozen=True, slots=True, kw_only=True)
class _Met:
    """What a rule looks at."""

    area: Exposed | None
    span_ft: float
    upper_ft: float
    state: str
    values: Values

    def number(self, name: str) -> float:
        return self.values.number(f"wind.{name}")

    def moving(self, rule: str) -> float:
        return self.number(f"{rule}.moving") / POUNDS if self.state == LOADED else 0.0


def _by_the_foot(met: _Met) -> Wind:
    return Wind(
        rule=BY_THE_FOOT, state=met.state,
        upper=met.number("by the foot.unloaded chord") / POUNDS,
        lower=met.number("by the foot.loaded chord") / POUNDS,
        moving=met.moving(BY_THE_FOOT),
    )


def _by_area(met: _Met) -> Wind:
    """Both trusses, both railings and the floor's edge; on vehicles what the foot rule has."""
    area, pressure = met.area, met.number("by area.pressure")
    assert area is not None
    lower = sum(area.lower_ft2) + area.floor_ft2 + 2.0 * area.railing_ft2
    return Wind(
        rule=BY_AREA, state=met.state, pressure=pressure, moving=met.moving(BY_THE_FOOT),
        upper=wind_by_area(
            pressure, sum(area.upper_ft2), length_ft=met.upper_ft, least_lb_per_ft=0.0
        ) / POUNDS,
        lower=wind_by_area(
            pressure, lower, length_ft=met.span_ft, least_lb_per_ft=0.0
        ) / POUNDS,
    )


def _later(met: _Met) -> Wind:
    """One side as it is seen, with the least for each foot; less of it beside vehicles."""
    area, pressure = met.area, met.number("later.pressure")
    assert area is not None
    lower = max(area.lower_ft2) + area.floor_ft2 + area.railing_ft2
    part = met.number("later.part with vehicles") if met.state == LOADED else 1.0
    upper = wind_by_area(
        pressure, max(area.upper_ft2), length_ft=met.upper_ft,
        least_lb_per_ft=met.number("later.least on the unloaded chord"),
    )
    below = wind_by_area(
        pressure, lower, length_ft=met.span_ft,
        least_lb_per_ft=met.number("later.least on the loaded chord"),
    )
    return Wind(
        rule=LATER, state=met.state, pressure=part * pressure, upper=part * upper / POUNDS,
        lower=part * below / POUNDS, moving=met.moving(LATER),
        lift=met.number("later.lift") / POUNDS if met.state == EMPTY else 0.0,
    )


_BY: dict[str, Callable[[_Met], Wind]] = {
    BY_THE_FOOT: _by_the_foot, BY_AREA: _by_area, LATER: _later,
}
