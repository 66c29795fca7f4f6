"""What the parts of one floor share while they are rated: vehicles as arrays, wheels across, dead
load of the panels."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from eyebar.bridge.floor_parts import Floor, Sidewalk
from eyebar.bridge.parts import Roadway
from eyebar.errors import OutOfRange
from eyebar.loads.across import LaneCase, multiple_presence, shares
from eyebar.loads.continuous import Extremes
from eyebar.loads.floor_dead import Pair, stringer_dead, stringer_line
from eyebar.loads.shock import impact
from eyebar.loads.stringer_shares import StringerShares
from eyebar.loads.strips_across import Strips, worst_strips
from eyebar.loads.trains import Floats, Spans, trains
from eyebar.loads.wheels_across import (
    AcrossLine,
    Placing,
    RoadAcross,
    placed_all_over,
    worst_placings,
)
from eyebar.office import Values
from eyebar.resistance import Condition
from eyebar.resistance.floor_rules import Strength
from eyebar.terms import Combine, Level, Metal, Method
from eyebar.vehicles import Vehicle

Rows = NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class FloorKept:
    """What of a floor depends neither on vehicles nor on the use of the road: dead load of the
    stringers by panel, strengths by part, method and level."""

    dead: dict[int, Mapping[float, Pair]] = field(default_factory=dict)
    strengths: dict[tuple[str, Method, Level], tuple[Strength, ...]] = field(default_factory=dict)


@dataclass(slots=True, kw_only=True)
class FloorContext:
    """One bridge's floor with the vehicles that may cross it. `refused`: too wide ones, and why."""

    roadway: Roadway
    floor: Floor
    values: Values
    condition: Condition
    vehicles: Mapping[str, Vehicle]
    refused: Mapping[str, str]
    spans: Spans
    lanes: Mapping[str, int]
    """Vehicle -> how many of them may stand side by side."""
    known_placings: dict[tuple[AcrossLine, float, int], tuple[Placing, ...]] = field(
        default_factory=dict
    )
    known_placed: dict[tuple[AcrossLine, int], Floats] = field(default_factory=dict)
    known_shares: dict[tuple[object, ...], StringerShares] = field(default_factory=dict)
    known_listed: list[Vehicle] = field(default_factory=list)
    known_kinds: list[tuple[Vehicle, Rows]] = field(default_factory=list)
    known_strips: dict[AcrossLine, tuple[Strips, ...]] = field(default_factory=dict)
    known_laid: dict[tuple[AcrossLine, int], Floats] = field(default_factory=dict)
    kept: FloorKept = field(default_factory=FloorKept)
    known_cases: dict[tuple[object, ...], tuple[LaneCase, ...]] = field(default_factory=dict)
    known_trains: dict[tuple[object, ...], Extremes] = field(default_factory=dict)
    """What trains do to stringers that run on."""
    known_shocks: dict[tuple[object, ...], float] = field(default_factory=dict)

    @property
    def most_lanes(self) -> int:
        """The most lanes that any vehicle may load."""
        return max(self.lanes.values(), default=1)

    @property
    def road(self) -> RoadAcross:
        """The road as wheels see it."""
        return RoadAcross(
            curb_ft=self.floor.curb_ft, clear_ft=self.floor.clear_width_ft,
            held_ft=self.roadway.use.held_ft,
        )

    def listed(self, rows: Sequence[int]) -> list[Vehicle]:
        """The vehicles in some places of the arrays."""
        if not self.known_listed:
            self.known_listed.extend(self.vehicles.values())
        return [self.known_listed[row] for row in rows]

    def kind(self, vehicle: Vehicle) -> tuple[object, ...]:
        """What of a vehicle its shares across the road depend on."""
        return (vehicle.gauge_ft, self.lanes[vehicle.name], vehicle.combine is Combine.AREA,
                has_lane_load(vehicle))

    @property
    def kinds(self) -> list[tuple[Vehicle, Rows]]:
        """One vehicle of each such kind, and the places in the arrays of all of that kind."""
        if not self.known_kinds:
            rows: dict[tuple[object, ...], list[int]] = {}
            everything = list(self.vehicles.values())
            for row, one in enumerate(everything):
                rows.setdefault(self.kind(one), []).append(row)
            self.known_kinds.extend(
                (everything[found[0]], np.array(found)) for found in rows.values()
            )
        return self.known_kinds

    def placings(self, line: AcrossLine, vehicle: Vehicle) -> tuple[Placing, ...]:
        """The worst placings of a vehicle for an influence line across, by lanes loaded."""
        if vehicle.combine is Combine.AREA:
            return (placed_all_over(line, self.road),)
        key = (line, vehicle.gauge_ft, self.lanes[vehicle.name])
        if key not in self.known_placings:
            self.known_placings[key] = worst_placings(
                line, self.road, gauge_ft=vehicle.gauge_ft, most_lanes=key[2], values=self.values
            )
        return self.known_placings[key]

    def placed(self, line: AcrossLine, lanes: int) -> Floats:
        """(v,) share of the axles with so many lanes loaded, nan where so many do not fit."""
        if (line, lanes) not in self.known_placed:
            shares = np.full(len(self.vehicles), np.nan)
            for one, rows in self.kinds:
                found = self.placings(line, one)
                if len(found) >= lanes:
                    shares[rows] = found[lanes - 1].share
            self.known_placed[line, lanes] = shares
        return self.known_placed[line, lanes]

    def strips(self, line: AcrossLine) -> tuple[Strips, ...]:
        """The worst places of lane loads for an influence line across, by lanes loaded."""
        if line not in self.known_strips:
            self.know_strips([line])
        return self.known_strips[line]

    def know_strips(self, lines: Sequence[AcrossLine]) -> None:
        """Finds the worst places of lane loads for lines of the same places, all at once."""
        new = [one for one in lines if one not in self.known_strips]
        if new:
            self.known_strips.update(zip(new, worst_strips(
                new, self.road, most_lanes=self.most_lanes, values=self.values
            ), strict=True))

    def lane_share(self, line: AcrossLine, vehicle: Vehicle, lanes: int) -> float:
        """Share of a vehicle's lane load with so many lanes loaded, nothing where it has none; of a
        load by area as it lies."""
        if vehicle.combine is Combine.AREA:
            return self.placings(line, vehicle)[lanes - 1].share
        if not has_lane_load(vehicle):
            return 0.0
        return self.strips(line)[lanes - 1].share

    def laid(self, line: AcrossLine, lanes: int) -> Floats:
        """(v,) share of the lane load with so many lanes loaded, nan where so many do not fit."""
        if (line, lanes) not in self.known_laid:
            shares = np.full(len(self.vehicles), np.nan)
            for one, rows in self.kinds:
                if lanes <= self.lanes[one.name]:
                    shares[rows] = self.lane_share(line, one, lanes)
            self.known_laid[line, lanes] = shares
        return self.known_laid[line, lanes]

    def presence(self, method: Method, lanes: int) -> float:
        """Multiple presence [1]; none where a vehicle is alone on the bridge."""
        if self.roadway.use.alone:
            return 1.0
        return multiple_presence(method, lanes, self.values)

    def places(self, panel: int) -> tuple[float, ...]:
        """Places of the stringers of a panel that work [ft]."""
        return tuple(
            one.place_ft for one in self.floor.stringers
            if one.panel == panel and not one.not_rated.startswith("declared broken")
        )

    def panel_dead(self, panel: int) -> Mapping[float, Pair]:
        """Place of a stringer -> dead load along it [kip/ft], for a panel."""
        if panel not in self.kept.dead:
            places = self.places(panel)
            self.kept.dead[panel] = {
                one.place_ft: stringer_dead(self.floor, one, stringer_line(one, places))
                for one in self.floor.stringers
                if one.panel == panel and one.place_ft in places
            }
        return self.kept.dead[panel]

    def shock(
        self, vehicle: Vehicle, method: Method, *, metal: Metal, loaded_ft: float, span_ft: float
    ) -> float:
        """Impact on a part [1]."""
        key = (vehicle.vehicle_class, method, metal, loaded_ft, span_ft)
        if key not in self.known_shocks:
            self.known_shocks[key] = impact(
                method=method, vehicle_class=vehicle.vehicle_class, metal=metal,
                loaded_length_ft=loaded_ft, span_ft=span_ft,
                surface=self.roadway.surface, values=self.values,
                pace=self.roadway.use.pace,
            )
        return self.known_shocks[key]

    def crowd(self, line: AcrossLine, length_ft: float) -> float:
        """What a crowd on the sidewalks does beside a vehicle, where it adds."""
        part = self.values.number("sidewalk.part beside a vehicle") if self.floor.sidewalks else 0.0
        if part == 0.0:
            return 0.0
        by_area = part * self.values.number("sidewalk.crowd")
        return sum(
            by_area * walk.width_ft * length_ft * max(line.at(walk.place_ft), 0.0)
            for walk in self.floor.sidewalks
        )

    def walks_dead(self, line: AcrossLine, length_ft: float) -> float:
        """Dead load of the sidewalks, where it adds."""
        return sum(_walk_weight(walk) * length_ft * max(line.at(walk.place_ft), 0.0)
                   for walk in self.floor.sidewalks)


def _walk_weight(walk: Sidewalk) -> float:
    return walk.kip_per_ft2 * walk.width_ft


def floor_context(
    roadway: Roadway, floor: Floor, values: Values, *, condition: Condition,
    vehicles: Mapping[str, Vehicle], kept: FloorKept | None = None,
) -> FloorContext:
    """The context of a floor; vehicles wider than the road are refused."""
    truss = next(iter(roadway.curb_ft))
    fitting: dict[str, Vehicle] = {}
    lanes: dict[str, int] = {}
    refused: dict[str, str] = {}
    for name, vehicle in vehicles.items():
        try:
            lanes[name] = len(shares(roadway, truss, vehicle, values).by_lanes)
            fitting[name] = vehicle
        except OutOfRange as wide:
            refused[name] = str(wide)
    return FloorContext(
        roadway=roadway, floor=floor, values=values, condition=condition, vehicles=fitting,
        refused=refused, lanes=lanes, spans=Spans(of=trains(fitting)),
        kept=kept or FloorKept(),
    )


def has_lane_load(vehicle: Vehicle) -> bool:
    """Whether a lane load stands on the road beside its axles or in their place."""
    return vehicle.combine is not Combine.NONE and vehicle.lane_kip_per_ft != 0.0


def lane_beside(vehicle: Vehicle, impact_on_axles: float) -> float:
    """Lane load summed with the axles [kip/ft], over 1 + impact where it has none itself."""
    if vehicle.combine is not Combine.SUM:
        return 0.0
    over = 1.0 if vehicle.lane_impact else 1.0 + impact_on_axles
    return vehicle.lane_kip_per_ft / over


def lane_alone(vehicle: Vehicle) -> bool:
    """Whether the lane load stands in the place of the axles where it does more."""
    return vehicle.combine in (Combine.GREATER, Combine.AREA)
