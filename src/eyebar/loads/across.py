"""Across the road: how many lanes there are, and what part of a vehicle one truss takes.

A wheel line at distance y from a truss gives it 1 - y/B, B the distance between the trusses. A
vehicle's share is the sum over its wheel lines of half of that, without multiple presence.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import floor

from eyebar.bridge.parts import Roadway
from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.terms import Combine, Method
from eyebar.vehicles import Vehicle

_PRESENCE = ("one lane", "two lanes", "three lanes", "four lanes or more")


@dataclass(frozen=True, slots=True, kw_only=True)
class Lanes:
    """How many vehicles may stand side by side. `caution` is empty, or what must be said of it."""

    number: int
    caution: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Shares:
    """What one truss takes of a vehicle [1]: sums of axle fractions, without multiple presence.

    `by_lanes[n - 1]` with n lanes loaded, all for this truss's worst; `middle` with one vehicle on
    the middle line of the road. `by_lanes` is shorter than the lanes where such vehicles cannot
    pass each other; `cannot_pass` then says why.
    """

    by_lanes: tuple[float, ...]
    middle: float
    cannot_pass: str = ""
    alone: bool = False
    """Whether nothing else can be on the bridge, so that no multiple presence counts."""

    @property
    def one_lane(self) -> float:
        """One vehicle on the bridge, as near to this truss as it may come."""
        return self.by_lanes[0]

    @property
    def two_lanes(self) -> float | None:
        """Two vehicles side by side; None where there is one lane, or they cannot pass."""
        return self.by_lanes[1] if len(self.by_lanes) > 1 else None

    def case(self, name: str) -> float | None:
        """The share of a case by its name: `one_lane`, `two_lanes` or `middle`."""
        cases = {"one_lane": self.one_lane, "two_lanes": self.two_lanes, "middle": self.middle}
        return cases[name]


@dataclass(frozen=True, slots=True, kw_only=True)
class LaneCase:
    """`lanes` lanes loaded: `share` [1], `presence` [1] and what multiplies the axles, `total`."""

    lanes: int
    share: float
    presence: float
    total: float


@formula(
    "s = ((1 - y / B) + (1 - (y + t) / B)) / 2",
    result=Symbol("part of an axle that the truss takes", "1"),
    y=Symbol("distance of the nearer wheel line from the truss", "ft", "near_wheel_ft"),
    t=Symbol("gauge between wheel lines", "ft", "gauge_ft"),
    B=Symbol("distance between the trusses", "ft", "truss_spacing_ft", low=10.0, high=40.0),
    source="lever rule: statics of a floorbeam that rests on the two trusses",
)
def lever_share(near_wheel_ft: float, gauge_ft: float, truss_spacing_ft: float) -> float:
    """Part of an axle that one truss takes [1].

    Distances [ft]. Scalars or arrays. Limits: trusses apart; a floorbeam on two trusses.
    """
    near = 1.0 - near_wheel_ft / truss_spacing_ft
    far = 1.0 - (near_wheel_ft + gauge_ft) / truss_spacing_ft
    return (near + far) / 2.0


@formula(
    "s = 1 - (e + b / 2) / B",
    result=Symbol("part of a lane load that the truss takes", "1"),
    e=Symbol("distance of the strip's nearer edge from the truss", "ft", "near_edge_ft"),
    b=Symbol("width of the strip that the lane load covers", "ft", "strip_ft"),
    B=Symbol("distance between the trusses", "ft", "truss_spacing_ft", low=10.0, high=40.0),
    source="lever rule: statics; a uniform strip acts at its middle",
)
def strip_share(near_edge_ft: float, strip_ft: float, truss_spacing_ft: float) -> float:
    """Part of a lane load, spread evenly over a strip, that one truss takes [1].

    Distances [ft]. Scalars or arrays. Limits: trusses apart; a floorbeam on two trusses.
    """
    return 1.0 - (near_edge_ft + strip_ft / 2.0) / truss_spacing_ft


def lanes_by_width(clear_width_ft: float, values: Values) -> int:
    """Lanes of a clear width [ft]: one, two halves, or as many whole lanes as it has room for."""
    if clear_width_ft < values.number("lanes.two from"):
        return 1
    if clear_width_ft <= values.number("lanes.full from"):
        return 2
    return max(2, floor(clear_width_ft / values.number("lanes.width")))


def lanes(roadway: Roadway, values: Values) -> Lanes:
    """The lanes of a road: what the record says wins over its clear width, with a caution.

    Raises OutOfRange where the record gives fewer than one.
    """
    if roadway.use.one_at_a_time:
        return Lanes(number=1, caution="")
    by_width = lanes_by_width(roadway.clear_width_ft, values)
    given = roadway.lanes_given
    if given is None or given == by_width:
        return Lanes(number=by_width, caution="")
    if given < 1:
        raise OutOfRange("number of lanes", given, "1 or more")
    said = f"lanes are taken as the record gives them, {given}, not {by_width} as the clear width"
    of_width = f"{said} of {roadway.clear_width_ft:g} ft has"
    if given > by_width:
        return Lanes(number=given, caution=of_width)
    only = "holds only while nothing can make more vehicles stand side by side"
    return Lanes(number=given, caution=f"{of_width}; the rating {only}")


def lane_width_ft(clear_width_ft: float, number: int, values: Values) -> float:
    """Width of a lane [ft]: an even part of the road, no wider than a whole lane.

    One lane has the whole road, on which its vehicle may stand anywhere.
    """
    if number == 1:
        return clear_width_ft
    return min(clear_width_ft / number, values.number("lanes.width"))


def shares(roadway: Roadway, truss: str, vehicle: Vehicle, values: Values) -> Shares:
    """What a truss takes of a vehicle, for one to all lanes loaded, each at its worst.

    Outer wheel line no nearer than 2 ft to the curb; with several lanes each vehicle stands
    anywhere in its own, its inner wheel line up to 1 ft from the lane line. Where that does not
    fit, the clearances shrink alike. A lane load lies nearer than the wheels of a wide gauge: a
    vehicle that has one is taken with its gauge at most. Raises OutOfRange where the vehicle is
    wider than the road.
    """
    clear = roadway.clear_width_ft
    if vehicle.width_ft > clear:
        raise OutOfRange(
            f"width of {vehicle.name}", f"{vehicle.width_ft:g} ft",
            f"no more than the clear width of the road, {clear:g} ft: it is too wide to cross",
        )
    if vehicle.combine is Combine.AREA:
        return _all_over(roadway, truss)
    number = lanes(roadway, values).number
    wide = [n for n in range(2, number + 1) if n * vehicle.width_ft > clear]
    why = ""
    if wide:
        number = wide[0] - 1
        why = (
            f"{wide[0]} vehicles like {vehicle.name}, {vehicle.width_ft:g} ft wide, have no room "
            f"beside each other on {clear:g} ft"
        )
    gauge = vehicle.gauge_ft
    if vehicle.lane_kip_per_ft:
        gauge = min(gauge, _lane_gauge_ft(values))
    return _placed(roadway, truss, gauge, (number, why), values)


def _all_over(roadway: Roadway, truss: str) -> Shares:
    """What a truss takes of a load by area on the clear width, wherever it adds.

    Beyond the other truss the load would lighten this one and is left out, which is the safe side.
    """
    first, apart = roadway.curb_ft[truss], roadway.truss_spacing_ft
    last = min(first + roadway.clear_width_ft, apart)
    part = (last - first) / roadway.clear_width_ft
    share = part * strip_share(first, last - first, apart)
    return Shares(by_lanes=(share,), middle=share, alone=roadway.use.alone)


def lane_load_shares(roadway: Roadway, truss: str, values: Values) -> Shares:
    """What a truss takes of a lane load, for one to all lanes loaded, each at its worst.

    The 10 ft strip lies where it has a 6 ft gauge with 2 ft outside each wheel line: its middle is
    the vehicle's when the vehicle has that gauge, so both have one share.
    """
    number = lanes(roadway, values).number
    return _placed(roadway, truss, _lane_gauge_ft(values), (number, ""), values)


def _lane_gauge_ft(values: Values) -> float:
    """Gauge of the vehicle whose middle is that of a lane load's strip [ft]."""
    return values.number("lanes.load width") - 2.0 * values.number("clearance.curb")


def _placed(
    roadway: Roadway, truss: str, gauge_ft: float, passing: tuple[int, str], values: Values
) -> Shares:
    number, why = passing
    clear, apart = roadway.clear_width_ft, roadway.truss_spacing_ft
    curb = roadway.curb_ft[truss]
    clearance = values.number("clearance.curb")
    alone = curb + min(clearance, max(clear - gauge_ft, 0.0) / 2.0)
    if roadway.use.held_ft is not None:
        alone = max(alone, curb + (clear - gauge_ft) / 2.0 - roadway.use.held_ft)
    found = [lever_share(alone, gauge_ft, apart)]
    for count in range(2, number + 1):
        wheels = _near_wheels_ft(clear, count, gauge_ft, values)
        found.append(sum(lever_share(curb + wheel, gauge_ft, apart) for wheel in wheels))
    middle = lever_share(curb + (clear - gauge_ft) / 2.0, gauge_ft, apart)
    return Shares(
        by_lanes=tuple(found), middle=middle, cannot_pass=why, alone=roadway.use.alone
    )


def _near_wheels_ft(
    clear_ft: float, count: int, gauge_ft: float, values: Values
) -> list[float]:
    """Each vehicle's nearer wheel line from the curb [ft], `count` vehicles side by side."""
    width = lane_width_ft(clear_ft, count, values)
    at_curb, at_line = values.number("clearance.curb"), values.number("clearance.lane line")
    shrunk = min(1.0, max(width - gauge_ft, 0.0) / (at_curb + at_line))
    return [shrunk * at_curb, *(lane * width + shrunk * at_line for lane in range(1, count))]


def multiple_presence(method: Method, loaded: int, values: Values) -> float:
    """The factor for `loaded` lanes loaded at once [1]. Raises OutOfRange for none."""
    if loaded < 1:
        raise OutOfRange("number of loaded lanes", loaded, "1 or more")
    by = method if method is Method.LOAD_AND_RESISTANCE else "older methods"
    return values.number(f"multiple presence.{by}.{_PRESENCE[min(loaded, 4) - 1]}")


def lane_cases(of: Shares, method: Method, values: Values) -> tuple[LaneCase, ...]:
    """One case for each number of lanes loaded, with what multiplies the axles in it."""
    cases = []
    for loaded, share in enumerate(of.by_lanes, start=1):
        presence = 1.0 if of.alone else multiple_presence(method, loaded, values)
        cases.append(
            LaneCase(lanes=loaded, share=share, presence=presence, total=share * presence)
        )
    return tuple(cases)


def worst_case(cases: tuple[LaneCase, ...]) -> LaneCase:
    """The case that multiplies the axles most; the fewer lanes where two are alike.

    The load grows with it and the dead load does not change, so no factor of any part is less in
    another case.
    """
    return max(cases, key=lambda case: case.total)


def shares_of_all(
    roadway: Roadway, truss: str, vehicles: Mapping[str, Vehicle], values: Values
) -> Mapping[str, Shares]:
    """Vehicle -> shares of one truss. Raises OutOfRange as `shares` does."""
    return {name: shares(roadway, truss, one, values) for name, one in vehicles.items()}
