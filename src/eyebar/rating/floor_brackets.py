"""Brackets that carry a sidewalk outside a truss: no wheel comes there, a load by area does."""

from dataclasses import dataclass
from typing import ClassVar

import numpy as np

from eyebar.bridge.floor_parts import Bracket
from eyebar.formula import note
from eyebar.loads.floor_dead import Pair
from eyebar.rating.floor_context import FloorContext
from eyebar.rating.floor_facts import FloorFacts, Met
from eyebar.rating.floor_search import EVERY_SET, Found, Wish, sections
from eyebar.resistance.brackets import bracket_strengths, walk_load
from eyebar.resistance.floor_rules import Strength, floor_rules
from eyebar.terms import Combine, Level, Metal, Method
from eyebar.vehicles import Vehicle


@dataclass(slots=True, kw_only=True)
class BracketLoads:
    """One bracket and what stands on its half of both panels."""

    mirrored: ClassVar[bool] = False
    context: FloorContext
    bracket: Bracket

    def strengths(self, method: Method, level: Level) -> tuple[Strength, ...]:
        """Its strengths by a method and level."""
        by = floor_rules(
            method, level, system="floorbeams", values=self.context.values,
            condition=self.context.condition,
        )
        return bracket_strengths(self.bracket, by, self.context.values)

    def shock(self, vehicle: Vehicle, method: Method) -> float:
        """Impact by the length of walk that it carries."""
        long = self.bracket.long_ft
        return self.context.shock(
            vehicle, method, metal=Metal.STEEL, loaded_ft=long, span_ft=long
        )

    def sets(self) -> tuple[str, ...]:
        """Dead load only adds."""
        return EVERY_SET[:1]

    def likeness(self) -> tuple[object, ...]:
        """What its ratings depend on, all but its place along the road."""
        one = self.bracket
        return (one.long_ft, one.width_ft, one.arm, one.kip_per_ft2, one.left, id(one.made_of),
                one.unheld)

    @property
    def base_ft(self) -> float:
        """Its place along the road."""
        return self.bracket.station_ft

    def station(self, _facts: FloorFacts) -> float:
        """Where along the road it stands [ft]."""
        return self.bracket.station_ft

    def _load(self, kip_per_ft2: float) -> float:
        return walk_load(kip_per_ft2, self.bracket.width_ft, self.bracket.long_ft)

    def found(self, wish: Wish) -> list[Found]:
        """Factors of the asked vehicles for one wish: nothing but of loads by area."""
        vehicles = self.context.listed(wish.asked.rows.tolist())
        live = np.array([
            self._load(one.area_kip_per_ft2) if one.combine is Combine.AREA else 0.0
            for one in vehicles
        ])
        strength = wish.strength
        left = strength.capacity * strength.divisor - wish.dead[0] * self._load(
            self.bracket.kip_per_ft2)
        with np.errstate(divide="ignore", invalid="ignore"):
            factor = np.where(live > 0.0, left / (wish.times * live), np.inf)
        return [Found(
            factor=factor, section=sections(0.0, len(vehicles)), lane_only=[True] * len(vehicles)
        )] if wish.lanes == 1 else []

    def met(self, facts: FloorFacts, _method: Method, vehicle: Vehicle) -> Met:
        """What a check meets."""
        over = 1.0 / facts.strength.divisor
        live = self._load(vehicle.area_kip_per_ft2)
        note("load of the walk on the bracket", "P", live, "kip")
        dead = Pair(dc=self._load(self.bracket.kip_per_ft2), dw=0.0)
        return Met(dead=dead.times(over), live=live * over, share=1.0)
