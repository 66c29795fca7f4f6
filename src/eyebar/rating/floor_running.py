"""Stringers that run on over floorbeams, by influence lines: see `loads.continuous` for the error.

Both the greatest and the least dead load are tried, as dead load of other spans relieves. The beam
is taken as heavy and as stiff all along as in the span that is rated; beside the supports the
greater of the two shares holds for every axle.
"""

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import ClassVar

import numpy as np

from eyebar.formula import note
from eyebar.loads.continuous import (
    MOMENT,
    REACTION,
    SHEAR,
    ContinuousBeam,
    lane_extremes,
    train_extremes,
)
from eyebar.loads.floor_dead import Pair
from eyebar.loads.trains import Floats
from eyebar.rating.floor_context import FloorContext, lane_alone, lane_beside
from eyebar.rating.floor_facts import FloorFacts, Met
from eyebar.rating.floor_search import EVERY_SET, Found, Wish, sections
from eyebar.rating.floor_stringers import INCHES, StringerLoads
from eyebar.resistance.floor_rules import Effect, Strength, floor_rules
from eyebar.resistance.shoes import anchored
from eyebar.terms import Level, Method
from eyebar.vehicles import Vehicle

SYMBOLS = {MOMENT: ("M", "kip ft"), SHEAR: ("V", "kip"), REACTION: ("R", "kip")}

AS_SIMPLE = ", a seat lifted off"
NO_ANCHORS = ("no anchors recorded that hold its ends down: it may lift off a seat and bend as a "
              "simple span")
PARTS = 20
"""Parts of a span at whose ends it is looked at."""


@dataclass(slots=True, kw_only=True)
class RunningLoads:
    """A stringer that runs on; what does not depend on that is in `own`."""

    mirrored: ClassVar[bool] = False
    own: StringerLoads
    run: ContinuousBeam
    begin_ft: float
    """Where its span begins on the beam that runs on."""

    @property
    def context(self) -> FloorContext:
        """The floor it belongs to."""
        return self.own.context

    def strengths(self, method: Method, level: Level) -> tuple[Strength, ...]:
        """Its strengths by a method and level: what holds its ends down, or, where nothing is known
        to, its bending as a simple span besides, as it is when a seat is lifted off."""
        found = self.own.strengths(method, level)
        anchors = self.own.stringer.beam_ends.anchors
        if anchors is None or not found:
            return (*found, *(
                replace(one, effect=Effect.SIMPLE_MOMENT, check=f"{one.check}{AS_SIMPLE}",
                        remarks=(*one.remarks, NO_ANCHORS))
                for one in found if one.effect is Effect.MOMENT and one.sense > 0
            ))
        by = floor_rules(
            method, level, system="single bar", values=self.context.values,
            condition=self.context.condition,
        )
        pull = anchored(anchors, by.bending)
        return (*found, *(
            Strength(check="uplift at the seat", effect=Effect.UPLIFT, capacity=pull, unit="kip",
                     divisor=1.0, end=end)
            for end in (0, 1)
        ))

    def shock(self, vehicle: Vehicle, method: Method) -> float:
        """Impact by its own span."""
        return self.own.shock(vehicle, method)

    def sets(self) -> tuple[str, ...]:
        """Dead load may relieve."""
        return EVERY_SET

    def likeness(self) -> tuple[object, ...]:
        """What its ratings depend on, all but its place along the road."""
        return self.own.likeness()

    @property
    def base_ft(self) -> float:
        """Its place along the road."""
        return self.own.stringer.begin_ft

    def station(self, facts: FloorFacts) -> float:
        """Where along the road the front axle of the facts stands [ft]; as a simple span that over
        the section."""
        if facts.strength.effect is Effect.SIMPLE_MOMENT:
            return self.own.station(facts)
        return self.own.stringer.begin_ft + (facts.front_ft or 0.0)

    def _sections(self, strength: Strength) -> tuple[str, list[float]]:
        """What is looked at for a strength, and at which sections [ft from its own beginning]."""
        span = self.own.stringer.span_ft
        match strength.effect:
            case Effect.MOMENT:
                inner = [span * i / PARTS for i in range(1, PARTS)]
                return MOMENT, [
                    strength.begin_ft,
                    *(x for x in inner if strength.begin_ft < x < strength.end_ft),
                    strength.end_ft,
                ]
            case Effect.SHEAR:
                return SHEAR, [strength.begin_ft, strength.end_ft]
            case Effect.TIMBER_SHEAR:
                at = self.own.timber_place(strength)
                return SHEAR, [at if strength.end == 0 else span - at]
            case _:
                place = 0.0 if strength.end == 0 else span
                return (REACTION if self._over_inner_support(strength.end) else SHEAR), [place]

    def _over_inner_support(self, end: int) -> bool:
        """Whether it runs on over the floorbeam at its end 0 or 1, which then bears both spans."""
        place, spans = self.own.stringer.run_place, len(self.own.stringer.run_ft)
        return place > 0 if end == 0 else place + 1 < spans

    def _span(self, effect: str, section: float) -> int:
        """The span that an effect at a section belongs to: of a reaction that behind it."""
        place = self.own.stringer.run_place
        return place + 1 if effect == REACTION and section > 0.0 else place

    def _effect(self, strength: Strength) -> str:
        """What is looked at for a strength."""
        return self._sections(strength)[0]

    def found(self, wish: Wish) -> list[Found]:
        """Factors of the asked vehicles for one wish."""
        strength = wish.strength
        if strength.effect is Effect.SIMPLE_MOMENT:
            return self.own.found(replace(wish, strength=_simple(strength)))
        effect, places = self._sections(strength)
        table, lever, laid = self.own.shared(wish)
        share = table if effect == MOMENT else np.maximum(table, lever)
        laid = laid if effect == MOMENT else np.maximum(laid, lever)
        if strength.effect is Effect.TIMBER_SHEAR:
            share, laid = self.own.timber_shares(wish)
        capacity = strength.capacity * strength.divisor / _scale(effect)
        return [
            self._at(wish, (effect, place, sense), (share, laid),
                     self._left(wish, capacity, effect, place, sense=sense))
            for place in places
            for sense in _senses(strength, effect)
        ]

    def _left(
        self, wish: Wish, capacity: float, effect: str, place: float, *, sense: int
    ) -> float:
        dead = self._dead(effect, place, wish.strength)
        return capacity - sense * (wish.dead[0] * dead.dc + wish.dead[1] * dead.dw)

    def _dead(self, effect: str, section: float, strength: Strength) -> Pair:
        """Dead load's effect at a section [kip ft or kip]."""
        stringer, place = self.own.stringer, section
        if strength.effect is Effect.TIMBER_SHEAR:
            depth = min(strength.begin_ft, stringer.span_ft / 2.0)
            place = depth if strength.end == 0 else stringer.span_ft - depth
        unit = _of_unit_load(self.run, effect, self.begin_ft + place, self._span(effect, place))
        return self.own.dead.times(unit)

    def _at(
        self, wish: Wish, about: tuple[str, float, int], shares: tuple[Floats, Floats],
        left: float,
    ) -> Found:
        """Factors at one section, for one effect in one sense; shares of axles and lane load."""
        _, section, sense = about
        vehicles = self.context.listed(wish.asked.rows.tolist())
        whole, lane_only, where = [], [], []
        rows = zip(vehicles, wish.over.tolist(), *(one.tolist() for one in shares), strict=True)
        for one, over, share, laid in rows:
            train, lane, at = self._acting(one, about)
            alone = lane_alone(one) and laid * lane > share * train
            beside = lane / over if _summed(one) else 0.0
            whole.append(laid * lane if alone else share * train + laid * beside)
            lane_only.append(alone)
            where.append(at)
        effects = np.array(whole)
        with np.errstate(divide="ignore", invalid="ignore"):
            factor = np.where(effects > 0.0, left / (wish.times * effects), np.inf)
        return Found(
            factor=factor, section=sections(section, len(vehicles)), sense=sense,
            way=[way for _, way, _ in where], lane_only=lane_only,
            front=[front - self.begin_ft for front, _, _ in where],
            spacings=[spacing for _, _, spacing in where],
        )

    def _acting(
        self, vehicle: Vehicle, about: tuple[str, float, int]
    ) -> tuple[float, float, tuple[float, int, tuple[float, ...]]]:
        """Effects of axles and of the lane load in a sense, both 0 or more; where the axles are."""
        effect, section, sense = about
        place, known = self._span(effect, section), self.context.known_trains
        key = (self.run, vehicle.axles_kip, vehicle.spacings_ft, effect, section, place)
        if key not in known:
            known[key] = train_extremes(
                self.run, vehicle, effect=effect, section_ft=self.begin_ft + section, span=place
            )
        found, lane = known[key], (0.0, 0.0)
        if vehicle.lane_kip_per_ft and (lane_alone(vehicle) or _summed(vehicle)):
            points = vehicle.lane_point_kip or (0.0, 0.0)
            lane = lane_extremes(
                self.run, kip_per_ft=vehicle.lane_kip_per_ft, effect=effect, span=place,
                point_kip=points[0] if effect == MOMENT else points[1],
                section_ft=self.begin_ft + section,
            )
        if sense > 0:
            return found.greatest, lane[0], found.greatest_at
        return -found.least, -lane[1], found.least_at

    def met(self, facts: FloorFacts, method: Method, vehicle: Vehicle) -> Met:
        """What a check meets."""
        strength = facts.strength
        if strength.effect is Effect.SIMPLE_MOMENT:
            return self.own.met(replace(facts, strength=_simple(strength)), method, vehicle)
        effect = self._effect(strength)
        shares = self.own.shares_by(vehicle, facts.lanes, method)
        if strength.effect is Effect.TIMBER_SHEAR:
            shares = self.own.timbered(shares)
        elif effect != MOMENT:
            shares = shares.beside_for_all()
        shares = shares.times(self.context.presence(method, facts.lanes))
        train, lane, _ = self._acting(vehicle, (effect, facts.section_ft, facts.sense))
        over = 1.0 if vehicle.lane_impact else 1.0 + self.shock(vehicle, method)
        if facts.lane_only:
            train = 0.0
        else:
            lane = lane / over if _summed(vehicle) else 0.0
        scale = _scale(effect) / strength.divisor
        symbol, unit = SYMBOLS[effect]
        note("section, from the stringer's beginning", "x", facts.section_ft, "ft")
        note(f"{effect} of the whole vehicle there, by influence line", symbol, train + lane, unit)
        dead = self._dead(effect, facts.section_ft, strength).times(facts.sense)
        live, share = shares.of(train, lane)
        return Met(dead=dead.times(scale), live=live * scale, share=share)


def _simple(strength: Strength) -> Strength:
    """The same as a strength of a simple span."""
    return replace(strength, effect=Effect.MOMENT)


def _senses(strength: Strength, effect: str) -> tuple[int, ...]:
    if strength.effect is Effect.UPLIFT:
        # Shear before the last support is its reaction turned round.
        return (1,) if effect == SHEAR and strength.end == 1 else (-1,)
    if effect == REACTION:
        return (1,)
    return (strength.sense,) if effect == MOMENT else (1, -1)


@lru_cache(maxsize=4096)
def _of_unit_load(run: ContinuousBeam, effect: str, section_ft: float, span: int) -> float:
    """Effect at a section of 1 kip/ft all along."""
    return run.uniform(effect, section_ft, span, [1.0] * len(run.spans_ft))


def _scale(effect: str) -> float:
    return INCHES if effect == MOMENT else 1.0


def _summed(vehicle: Vehicle) -> bool:
    return lane_beside(vehicle, 0.0) > 0.0


def running_loads(own: StringerLoads) -> RunningLoads:
    """A stringer that runs on, ready to be rated."""
    stringer = own.stringer
    return RunningLoads(
        own=own, run=ContinuousBeam(spans_ft=stringer.run_ft),
        begin_ft=sum(stringer.run_ft[: stringer.run_place]),
    )
