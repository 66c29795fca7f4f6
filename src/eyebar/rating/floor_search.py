"""The search for the least factor of a part of the floor, all vehicles of a method at once.

A part's `Loads` say what its strengths are and what the vehicles do to each; the search tries every
strength, number of lanes, and set of dead load, and keeps the least. Its answer is then worked out
with the declared formulas, by the same function that makes the working again.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar, Protocol

import numpy as np

from eyebar.loads.trains import Floats
from eyebar.rating.asked import SERVICE, Asked
from eyebar.rating.floor_context import FloorContext
from eyebar.rating.floor_facts import FloorFacts, Met
from eyebar.resistance.floor_rules import Strength
from eyebar.terms import Level, Method
from eyebar.vehicles import Vehicle

EVERY_SET = ("greatest", "least")


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """One strength under so many lanes and one set of dead-load factors: live load factor times
    1 + impact of each vehicle (v,), the multiple presence, and what impact divides a lane load by
    that has none (v,)."""

    strength: Strength
    asked: Asked
    lanes: int
    dead: tuple[float, float]
    times: Floats
    live: Floats
    over: Floats
    presence: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """Factors of the vehicles (v,) and where they arise: sections (v,) [ft], `end` and `sense` as
    in FloorFacts; axles and ways of travel; whether the lane load alone does it; front axles [ft
    from the part's beginning] and spacings where the axle over the section does not tell."""

    factor: Floats
    section: Floats
    end: int = 0
    sense: int = 1
    axle: Sequence[int] = ()
    way: Sequence[int] = ()
    lane_only: Sequence[bool] = ()
    front: Sequence[float] = ()
    spacings: Sequence[tuple[float, ...]] = ()

    def facts(self, row: int, wish: Wish, dead_set: str) -> FloorFacts:
        """The facts of one vehicle."""
        return FloorFacts(
            strength=wish.strength, lanes=wish.lanes, dead_set=dead_set, end=self.end,
            section_ft=float(self.section[row]), sense=self.sense,
            axle=int(self.axle[row]) if self.axle else 0,
            way=int(self.way[row]) if self.way else 1,
            lane_only=bool(self.lane_only[row]) if self.lane_only else False,
            front_ft=self.front[row] if self.front else None,
            spacings_ft=self.spacings[row] if self.spacings else (),
        )


class Loads(Protocol):
    """A part of the floor and what the vehicles do to it."""

    mirrored: ClassVar[bool]
    """Whether what is found at its end 1 is what is found at its end 0 in the mirror."""

    @property
    def context(self) -> FloorContext:
        """The floor it belongs to."""
        ...

    @property
    def base_ft(self) -> float:
        """Its place along the road."""
        ...

    def station(self, facts: FloorFacts) -> float:
        """Where along the road the axle of the facts stands, or the front one if they tell it."""
        ...

    def likeness(self) -> tuple[object, ...]:
        """What its ratings depend on, all but its place along the road."""
        ...

    def strengths(self, method: Method, level: Level) -> tuple[Strength, ...]:
        """Its strengths; none where the method has no rule. Raises NotMeasured, OutOfRange."""
        ...

    def shock(self, vehicle: Vehicle, method: Method) -> float:
        """Impact on it [1]."""
        ...

    def sets(self) -> tuple[str, ...]:
        """Names of the sets of dead load that may govern."""
        ...

    def found(self, wish: Wish) -> list[Found]:
        """Factors of the asked vehicles for one wish."""
        ...

    def met(self, facts: FloorFacts, method: Method, vehicle: Vehicle) -> Met:
        """What the check of the facts meets, by the declared formulas."""
        ...


def least_facts(
    loads: Loads, asked: Asked, strengths: Sequence[Strength]
) -> list[FloorFacts | None]:
    """The facts of the least factor of each asked vehicle; None where nothing limits it.

    An empty list where the method has no rule, and so no strengths.
    """
    context = loads.context
    if not strengths:
        return []
    vehicles = context.listed(asked.rows.tolist())
    shock = np.array([loads.shock(one, asked.method) for one in vehicles])
    over = np.array([
        1.0 if one.lane_impact else 1.0 + part for one, part in zip(vehicles, shock, strict=True)
    ])
    most = max(context.lanes[one.name] for one in vehicles)
    best = np.full(len(vehicles), np.inf)
    where: list[tuple[Found, Wish, str] | None] = [None] * len(vehicles)
    for strength in _apart(strengths) if loads.mirrored else strengths:
        live = asked.service_live if strength.service else asked.live
        for lanes in range(1, most + 1):
            for name in (SERVICE,) if strength.service else loads.sets():
                wish = Wish(
                    strength=strength, asked=asked, lanes=lanes, dead=asked.dead[name], live=live,
                    times=live * (1.0 + shock), over=over,
                    presence=context.presence(asked.method, lanes),
                )
                for found in loads.found(wish):
                    for row in np.flatnonzero(found.factor < best).tolist():
                        best[row] = found.factor[row]
                        where[row] = (found, wish, name)
    return [
        one and one[0].facts(row, one[1], one[2]) for row, one in enumerate(where)
    ]


def _apart(strengths: Sequence[Strength]) -> list[Strength]:
    """Strengths without those that are another's at the other end: of a part alike at both its
    factor is the same, and the first is kept."""
    seen, found = set(), []
    for one in strengths:
        key = (one.check, one.effect, one.capacity, one.divisor, one.begin_ft, one.end_ft,
               one.sense, one.service)
        if key not in seen:
            seen.add(key)
            found.append(one)
    return found


def sections(at_ft: float, count: int) -> Floats:
    """One section for so many vehicles."""
    return np.full(count, at_ft)
