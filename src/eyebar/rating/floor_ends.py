"""Hangers under the ends of floorbeams, and what one truss takes of a vehicle."""

from dataclasses import dataclass
from typing import ClassVar

import numpy as np

from eyebar.bridge.floor_parts import Hanger
from eyebar.loads.across import LaneCase, lane_cases, shares
from eyebar.loads.floor_dead import Pair
from eyebar.loads.trains import Floats
from eyebar.loads.wheels_across import AcrossLine
from eyebar.rating.floor_context import FloorContext
from eyebar.rating.floor_facts import FloorFacts, Met
from eyebar.rating.floor_reactions import PanelPoint
from eyebar.rating.floor_search import EVERY_SET, Found, Wish
from eyebar.resistance.floor_rules import Strength, floor_rules
from eyebar.resistance.hangers import hanger_strengths
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

    mirrored: ClassVar[bool] = False
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
            one.off_centre, one.apart, one.fastening, one.yoke, one.made_of and id(one.made_of),
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
        for axles, lane, found in self.point.loads(wish, shear=True):
            effect = axles + lane
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
        whole = sum(self.point.whole(facts, vehicle, self.shock(vehicle, method), shear=True))
        return Met(
            dead=self.dead.times(over), live=whole * case.total * over, share=case.total,
            crowd=self._crowd() * over,
        )
