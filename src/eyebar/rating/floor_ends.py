"""Hangers under the ends of floorbeams, and what the ends of the trusses stand on."""

from dataclasses import dataclass

import numpy as np

from eyebar.bridge.floor_parts import Hanger, Shoe
from eyebar.formula import note
from eyebar.loads.across import LaneCase, lane_cases, shares
from eyebar.loads.floor_dead import Pair
from eyebar.loads.shears import partial_shear, shear_ordinate
from eyebar.loads.trains import Floats
from eyebar.loads.wheels_across import AcrossLine
from eyebar.rating.floor_context import FloorContext, lane_alone, lane_beside
from eyebar.rating.floor_facts import FloorFacts, Met
from eyebar.rating.floor_reactions import PanelPoint
from eyebar.rating.floor_search import EVERY_SET, Found, Wish, sections
from eyebar.resistance.floor_rules import Strength, floor_rules
from eyebar.resistance.hangers import hanger_strengths
from eyebar.resistance.shoes import shoe_strengths
from eyebar.terms import Level, Metal, Method
from eyebar.vehicles import Vehicle


@dataclass(slots=True, kw_only=True)
class TrussSide:
    """What one truss takes of a vehicle, by lanes loaded."""

    context: FloorContext
    truss: str

    def case(self, vehicle: Vehicle, method: Method, lanes: int) -> LaneCase | None:
        """The case with so many lanes loaded; None where they do not fit."""
        if lanes > self.context.lanes[vehicle.name]:
            return None
        key = (self.truss, vehicle.gauge_ft, self.context.lanes[vehicle.name], method)
        known = self.context.known_cases
        if key not in known:
            across = shares(self.context.roadway, self.truss, vehicle, self.context.values)
            known[key] = lane_cases(across, method, self.context.values)
        return known[key][lanes - 1]

    def totals(self, wish: Wish) -> Floats:
        """(v,) what multiplies the axles, nan where the lanes do not fit."""
        cases = [
            self.case(one, wish.asked.method, wish.lanes)
            for one in self.context.listed(wish.asked.rows.tolist())
        ]
        return np.array([np.nan if one is None else one.total for one in cases])

    def line(self) -> AcrossLine:
        """Influence line of the truss across the road."""
        places = self.context.floor.truss_ft
        own = places[self.truss]
        apart = self.context.roadway.truss_spacing_ft
        other = apart if own == 0.0 else 0.0
        pairs = sorted([(own, 1.0), (other, 0.0)])
        return AcrossLine(places_ft=(pairs[0][0], pairs[1][0]),
                          ordinates=(pairs[0][1], pairs[1][1]))


@dataclass(slots=True, kw_only=True)
class HangerLoads:
    """One hanger: its panel point, its side of the road, what hangs on it [kip]."""

    context: FloorContext
    hanger: Hanger
    side: TrussSide
    point: PanelPoint
    dead: Pair

    def strengths(self, method: Method, level: Level) -> tuple[Strength, ...]:
        """Its strengths by a method and level."""
        by = floor_rules(
            method, level, system="single bar", values=self.context.values,
            condition=self.context.condition,
        )
        return hanger_strengths(self.hanger, by, self.context.values, self.context.condition)

    def shock(self, vehicle: Vehicle, method: Method) -> float:
        """Impact by the two panels that hang on it."""
        both = self.hanger.before_ft + self.hanger.behind_ft
        return self.context.shock(vehicle, method, metal=Metal.STEEL, loaded_ft=both, span_ft=both)

    def sets(self) -> tuple[str, ...]:
        """Dead load only adds."""
        return EVERY_SET[:1]

    def likeness(self) -> tuple[object, ...]:
        """What its ratings depend on, all but its place along the road."""
        one = self.hanger
        bar = None if one.bar is None else (
            one.bar.as_built, one.bar.left, id(one.bar.material), one.bar.length
        )
        return (
            bar, one.bent, one.inside, one.leg, one.pin, one.pin_yield, one.hole, one.beyond,
            one.off_centre, one.apart, one.fastening, one.made_of and id(one.made_of),
            self.point.key(), self.dead, self._crowd(), *(
                self.side.case(vehicle, method, lanes)
                for vehicle in self.context.vehicles.values() for method in Method
                for lanes in range(1, self.context.lanes[vehicle.name] + 1)
            ),
        )

    @property
    def base_ft(self) -> float:
        """Its place along the road."""
        return self.point.station_ft

    def station(self, facts: FloorFacts) -> float:
        """Where along the road the axle of the facts stands [ft]."""
        return self.point.station_ft + (facts.front_ft or 0.0)

    def _crowd(self) -> float:
        return self.context.crowd(self.side.line(), self.point.dead_length_ft)

    def found(self, wish: Wish) -> list[Found]:
        """Factors of the asked vehicles for one wish."""
        strength, answers = wish.strength, []
        total = self.side.totals(wish)
        left = strength.capacity * strength.divisor - wish.dead[0] * self.dead.dc - (
            wish.dead[1] * self.dead.dw) - wish.live * self._crowd()
        for effect, found in self.point.loads(wish, shear=True):
            with np.errstate(invalid="ignore", divide="ignore"):
                factor = np.where(effect > 0.0, left / (wish.times * total * effect), np.inf)
            answers.append(Found(
                factor=factor, section=found.section, axle=found.axle, way=found.way,
                lane_only=found.lane_only, front=found.front, spacings=found.spacings,
            ))
        return answers

    def met(self, facts: FloorFacts, method: Method, vehicle: Vehicle) -> Met:
        """What a check meets."""
        case = self.side.case(vehicle, method, facts.lanes)
        assert case is not None
        over = 1.0 / facts.strength.divisor
        whole = self.point.whole(facts, vehicle, self.shock(vehicle, method), shear=True)
        return Met(
            dead=self.dead.times(over), live=whole * case.total * over, share=case.total,
            crowd=self._crowd() * over,
        )


@dataclass(slots=True, kw_only=True)
class ShoeLoads:
    """One end of a truss: the whole span on a simple beam, every weight over it counted."""

    context: FloorContext
    shoe: Shoe
    side: TrussSide
    begin_ft: float
    span_ft: float
    dead: Pair

    def strengths(self, method: Method, level: Level) -> tuple[Strength, ...]:
        """Its strengths by a method and level."""
        return shoe_strengths(self.shoe, method, level)

    def shock(self, vehicle: Vehicle, method: Method) -> float:
        """Impact by the whole span."""
        return self.context.shock(
            vehicle, method, metal=Metal.STEEL, loaded_ft=self.span_ft, span_ft=self.span_ft
        )

    def sets(self) -> tuple[str, ...]:
        """Dead load only adds."""
        return EVERY_SET[:1]

    def likeness(self) -> tuple[object, ...]:
        """What its ratings depend on; every end by itself."""
        return (self.shoe.address,)

    @property
    def base_ft(self) -> float:
        """Its place along the road."""
        return self.begin_ft

    def station(self, facts: FloorFacts) -> float:
        """Where along the road the axle of the facts stands [ft]: over the bearing."""
        at = facts.section_ft
        return self.begin_ft + (at if self.shoe.at_zero else self.span_ft - at)

    def found(self, wish: Wish) -> list[Found]:
        """Factors of the asked vehicles for one wish."""
        spans, rows, span = self.context.spans, wish.asked.rows, self.span_ft
        vehicles = self.context.listed(rows.tolist())
        total, strength = self.side.totals(wish), wish.strength
        greatest = spans.shear(span, 0.0)
        sense = 1 if self.shoe.at_zero else -1
        left = strength.capacity * strength.divisor - wish.dead[0] * self.dead.dc - (
            wish.dead[1] * self.dead.dw)
        lane = np.array([lane_beside(one, over - 1.0) for one, over in zip(
            vehicles, wish.over.tolist(), strict=True)]) * span / 2.0
        with np.errstate(invalid="ignore", divide="ignore"):
            coming = greatest.effect[rows] + lane
            found = [Found(
                factor=np.where(coming > 0.0, left / (wish.times * total * coming), np.inf),
                section=sections(0.0, len(rows)), axle=greatest.axle[rows].tolist(),
                way=(sense * greatest.way[rows]).tolist(),
            )]
            alone = np.array([lane_alone(one) for one in vehicles])
            effect = spans.of.lane[rows] * span / 2.0 + spans.of.point_shear[rows]
            factor = np.where(alone, left / (wish.times * total * effect), np.inf)
        return [*found, Found(
            factor=factor, section=sections(0.0, len(rows)), lane_only=[True] * len(rows)
        )]

    def met(self, facts: FloorFacts, method: Method, vehicle: Vehicle) -> Met:
        """What a check meets."""
        case = self.side.case(vehicle, method, facts.lanes)
        assert case is not None
        over, span = 1.0 / facts.strength.divisor, self.span_ft
        if facts.lane_only:
            point = (vehicle.lane_point_kip or (0.0, 0.0))[1]
            whole = partial_shear(vehicle.lane_kip_per_ft, 0.0, span) + point
        else:
            behind = vehicle.behind_front_ft()
            way = facts.way if self.shoe.at_zero else -facts.way
            whole = 0.0
            for far, axle in zip(behind, vehicle.axles_kip, strict=True):
                away = way * (behind[facts.axle] - far)
                if 0.0 <= away <= span:
                    whole += axle * shear_ordinate(away, span)
            if lane := lane_beside(vehicle, self.shock(vehicle, method)):
                whole += partial_shear(lane, 0.0, span)
        note("reaction of the whole vehicle", "R", whole, "kip")
        return Met(dead=self.dead.times(over), live=whole * case.total * over, share=case.total)
