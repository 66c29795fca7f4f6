"""Stringers as simple spans under vehicles: each section with the axle over it, exactly."""

from dataclasses import dataclass, field
from typing import ClassVar

import numpy as np

from eyebar.bridge.floor_parts import Stringer, Timber
from eyebar.formula import note
from eyebar.loads.floor_dead import NONE, Pair, stringer_line, uniform_moment, uniform_shear
from eyebar.loads.shears import (
    partial_shear,
    shear_ordinate,
    timber_load_place,
    timber_shear_share,
)
from eyebar.loads.simple_beam import moment_ordinate
from eyebar.loads.stringer_shares import StringerShares
from eyebar.loads.trains import Floats, least_factor
from eyebar.loads.wheels_across import AcrossLine
from eyebar.rating.floor_context import FloorContext, lane_beside
from eyebar.rating.floor_facts import FloorFacts, Met
from eyebar.rating.floor_search import EVERY_SET, Found, Wish, sections
from eyebar.rating.floor_shares import shares_by_method, stringer_shares, under_slab
from eyebar.resistance.floor_beams import Beam, floor_beam_strengths
from eyebar.resistance.floor_rules import Effect, Strength, floor_rules
from eyebar.terms import Level, Metal, Method
from eyebar.vehicles import Vehicle

INCHES = 12.0


@dataclass(slots=True, kw_only=True)
class StringerLoads:
    """One stringer, the wheels that come to it, its dead load along it [kip/ft]."""

    mirrored: ClassVar[bool] = True
    context: FloorContext
    stringer: Stringer
    beam: Beam
    line: AcrossLine
    dead: Pair
    known: dict[tuple[int, Method], Floats] = field(default_factory=dict)
    """Lanes and method -> (3, v) shares."""

    def strengths(self, method: Method, level: Level) -> tuple[Strength, ...]:
        """Its strengths by a method and level."""
        by = floor_rules(
            method, level, system="stringers", values=self.context.values,
            condition=self.context.condition,
        )
        return floor_beam_strengths(self.beam, by, self.context.values)

    def shock(self, vehicle: Vehicle, method: Method) -> float:
        """Impact by its own span."""
        span = self.stringer.span_ft
        made_of = self.stringer.made_of
        metal = Metal.TIMBER if isinstance(made_of, Timber) else made_of.metal
        return self.context.shock(vehicle, method, metal=metal, loaded_ft=span, span_ft=span)

    def sets(self) -> tuple[str, ...]:
        """On a simple span dead load only adds."""
        return EVERY_SET[:1]

    def likeness(self) -> tuple[object, ...]:
        """What its ratings depend on, all but its place along the road."""
        one, beam = self.stringer, self.beam
        shares = tuple(
            self.shares(vehicle, lanes)
            for vehicle, _ in self.context.kinds
            for lanes in range(1, self.context.lanes[vehicle.name] + 1)
        )
        return (
            one.span_ft, one.run_ft, one.run_place, beam.stretches, beam.as_built, beam.ends,
            beam.unheld, beam.sharing, beam.apart, id(one.made_of), self.dead, shares,
            under_slab(self.context, one),
        )

    @property
    def base_ft(self) -> float:
        """Its place along the road."""
        return self.stringer.begin_ft

    def station(self, facts: FloorFacts) -> float:
        """Where along the road the axle of the facts stands [ft]."""
        return self.stringer.begin_ft + facts.section_ft

    def shares(self, vehicle: Vehicle, lanes: int) -> StringerShares:
        """Shares of a vehicle. Raises IndexError where so many lanes do not fit."""
        return stringer_shares(self.context, self.stringer, self.line, vehicle, lanes=lanes)

    def shares_by(self, vehicle: Vehicle, lanes: int, method: Method) -> StringerShares:
        """The same by a method."""
        return shares_by_method(
            self.context, self.stringer, self.shares(vehicle, lanes), vehicle, method=method,
            lanes=lanes,
        )

    def shared(self, wish: Wish) -> tuple[Floats, Floats, Floats]:
        """(v,) shares of the axles, of that beside the support and of the lane load, with multiple
        presence, nan where the lanes do not fit."""
        key = (wish.lanes, wish.asked.method)
        if key not in self.known:
            found = np.full((3, len(self.context.vehicles)), np.nan)
            for one, rows in self.context.kinds:
                if wish.lanes <= self.context.lanes[one.name]:
                    shares = self.shares_by(one, *key)
                    found[:, rows] = [[shares.axles], [shares.beside], [shares.lane]]
            self.known[key] = found
        axles, beside, lane = wish.presence * self.known[key][:, wish.asked.rows]
        return axles, beside, lane

    def timber_shares(self, wish: Wish) -> tuple[Floats, Floats]:
        """(v,) shares of axles and lane load in the shear of timber, with multiple presence."""
        axles, _, lane = self.shared(wish)
        number, over = self.context.values.number, wish.presence
        half, part = number("timber shear.half"), number("timber shear.undistributed part")
        of_axles, of_lane = (
            np.array([over * timber_shear_share(half, part, one / over) for one in shares])
            for shares in (axles.tolist(), lane.tolist())
        )
        return of_axles, of_lane

    def timbered(self, shares: StringerShares) -> StringerShares:
        """The shares in the shear of timber, by those in its moment."""
        number = self.context.values.number
        half, part = number("timber shear.half"), number("timber shear.undistributed part")
        axles = timber_shear_share(half, part, shares.axles)
        lane = timber_shear_share(half, part, shares.lane)
        return StringerShares(axles=axles, beside=axles, lane=lane)

    def timber_place(self, strength: Strength) -> float:
        """From the support to the load that shears timber [ft]."""
        number = self.context.values.number
        return timber_load_place(
            number("timber shear.depths from the support"), strength.begin_ft,
            number("timber shear.part of span"), self.stringer.span_ft,
        )

    def found(self, wish: Wish) -> list[Found]:
        """Factors of the asked vehicles for one wish."""
        strength, span = wish.strength, self.stringer.span_ft
        weight = wish.dead[0] * self.dead.dc + wish.dead[1] * self.dead.dw
        with np.errstate(invalid="ignore", divide="ignore"):
            match strength.effect:
                case Effect.MOMENT:
                    return self._moments(wish, weight)
                case Effect.TIMBER_SHEAR:
                    axles, lane = self.timber_shares(wish)
                    dead = weight * (span / 2.0 - min(strength.begin_ft, span / 2.0))
                    at = self.timber_place(strength)
                    return self._shears(wish, at, dead, (axles, axles, lane), strength.end)
                case Effect.REACTION:
                    return self._shears(
                        wish, 0.0, weight * span / 2.0, self.shared(wish), strength.end
                    )
                case _:
                    return [
                        found
                        for end, at in ((0, strength.begin_ft), (1, span - strength.end_ft))
                        for found in self._shears(
                            wish, at, weight * (span / 2.0 - at), self.shared(wish), end
                        )
                    ]

    def _moments(self, wish: Wish, weight: float) -> list[Found]:
        share, _, laid = self.shared(wish)
        strength, span, rows = wish.strength, self.stringer.span_ft, wish.asked.rows
        spans = self.context.spans
        capacity = strength.capacity * strength.divisor / INCHES
        begin, end = strength.begin_ft, strength.end_ft
        least = least_factor(
            spans.pieces(span, begin, end).rows(rows).times(share), capacity=capacity,
            dead_kip_per_ft=weight, span_ft=span, times=wish.times,
            lane=laid * spans.of.beside[rows] / wish.over,
        )
        found = [Found(
            factor=least.factor, section=least.section, axle=least.axle.tolist(),
            way=least.way.tolist(),
        )]
        alone = spans.of.alone[rows]
        if alone.any():
            at = min(max(span / 2.0, begin), end)
            moment = (spans.of.lane[rows] * span / 2.0 + spans.of.point_moment[rows]) * at * (
                span - at) / span
            left = capacity - weight * at * (span - at) / 2.0
            found.append(Found(
                factor=np.where(alone, left / (wish.times * laid * moment), np.inf),
                section=sections(at, len(rows)), lane_only=[True] * len(rows),
            ))
        return found

    def _shears(
        self, wish: Wish, at: float, dead: float, shares: tuple[Floats, Floats, Floats], end: int
    ) -> list[Found]:
        """Shear at a section `at` ft from end 0 or 1; of the shares the second is that of the axle
        beside the section, the third that of the lane load."""
        spans, rows, span = self.context.spans, wish.asked.rows, self.stringer.span_ft
        share, own, laid = shares
        over = np.ones(len(spans.of.names))
        over[rows] = np.where(share > 0.0, own / share, 1.0)
        greatest = spans.shear(span, at, over)
        left = wish.strength.capacity * wish.strength.divisor - dead
        lane = spans.of.beside[rows] / wish.over * (span - at) ** 2 / (2.0 * span)
        section = sections(at if end == 0 else span - at, len(rows))
        way = greatest.way[rows] if end == 0 else -greatest.way[rows]
        sheared = share * greatest.effect[rows] + laid * lane
        found = [Found(
            factor=np.where(sheared > 0.0, left / (wish.times * sheared), np.inf), end=end,
            section=section, axle=greatest.axle[rows].tolist(), way=way.tolist(),
        )]
        alone = spans.of.alone[rows]
        if alone.any():
            effect = spans.of.lane[rows] * (span - at) ** 2 / (2.0 * span) + (
                spans.of.point_shear[rows] * (span - at) / span)
            found.append(Found(
                factor=np.where(alone, left / (wish.times * laid * effect), np.inf), end=end,
                section=section, lane_only=[True] * len(rows),
            ))
        return found

    def met(self, facts: FloorFacts, method: Method, vehicle: Vehicle) -> Met:
        """What a check meets, by the declared formulas."""
        presence = self.context.presence(method, facts.lanes)
        shares = self.shares_by(vehicle, facts.lanes, method)
        shock = self.shock(vehicle, method)
        if facts.strength.effect is Effect.TIMBER_SHEAR:
            shares = self.timbered(shares)
        if facts.strength.effect is Effect.MOMENT:
            return self._met_moment(facts, vehicle, shares.times(presence), shock)
        return self._met_shear(facts, vehicle, shares.times(presence), shock)

    def _met_moment(
        self, facts: FloorFacts, vehicle: Vehicle, shares: StringerShares, shock: float
    ) -> Met:
        span, at, divisor = self.stringer.span_ft, facts.section_ft, facts.strength.divisor
        note("section, from the stringer's beginning", "x", at, "ft")
        whole = laid = 0.0
        if facts.lane_only:
            point = (vehicle.lane_point_kip or (0.0, 0.0))[0]
            laid = uniform_moment(vehicle.lane_kip_per_ft, at, span)
            laid += point * moment_ordinate(at, at, span)
        else:
            for number, axle in enumerate(vehicle.axles_kip):
                place = self._place(facts, vehicle, number, at)
                if 0.0 <= place <= span:
                    whole += axle * moment_ordinate(place, at, span)
            if lane := lane_beside(vehicle, shock):
                laid = uniform_moment(lane, at, span)
        note("moment of the whole vehicle at the section", "M", whole + laid, "kip ft")
        dead = Pair(
            dc=uniform_moment(self.dead.dc, at, span), dw=uniform_moment(self.dead.dw, at, span)
        )
        live, share = shares.of(whole, laid)
        return Met(dead=dead.times(INCHES / divisor), live=live * INCHES / divisor, share=share)

    def _place(self, facts: FloorFacts, vehicle: Vehicle, number: int, at: float) -> float:
        """Place of an axle while that of the facts stands `at` [ft]."""
        behind = vehicle.behind_front_ft()
        return at + facts.way * (behind[facts.axle] - behind[number])

    def _met_shear(
        self, facts: FloorFacts, vehicle: Vehicle, shares: StringerShares, shock: float
    ) -> Met:
        """Shear before end 1 is that behind end 0 of the mirror image."""
        strength, span = facts.strength, self.stringer.span_ft
        at = facts.section_ft if facts.end == 0 else span - facts.section_ft
        note("section, from the nearer end of the stringer", "x", at, "ft")
        whole = own = laid = 0.0
        if facts.lane_only:
            point = (vehicle.lane_point_kip or (0.0, 0.0))[1]
            laid = partial_shear(vehicle.lane_kip_per_ft, at, span)
            laid += point * shear_ordinate(at, span)
        else:
            whole, own = self._sheared(facts, vehicle, at)
            if lane := lane_beside(vehicle, shock):
                laid = partial_shear(lane, at, span)
        note("shear of the whole vehicle at the section", "V", whole + own + laid, "kip")
        section = at
        if strength.effect is Effect.TIMBER_SHEAR:
            section = min(strength.begin_ft, span / 2.0)
        dead = Pair(
            dc=uniform_shear(self.dead.dc, section, span),
            dw=uniform_shear(self.dead.dw, section, span),
        )
        live, share = shares.of(whole, laid, own)
        return Met(dead=dead.times(1.0 / strength.divisor), live=live / strength.divisor,
                   share=share)

    def _sheared(self, facts: FloorFacts, vehicle: Vehicle, at: float) -> tuple[float, float]:
        """Shear of the axles, that of the facts apart from the others."""
        mirrored = facts if facts.end == 0 else _mirrored(facts)
        found = [0.0, 0.0]
        for number, axle in enumerate(vehicle.axles_kip):
            place = self._place(mirrored, vehicle, number, at)
            if 0.0 <= place <= self.stringer.span_ft:
                beyond = 0.0 if place >= at else 1.0
                found[number == facts.axle] += axle * (
                    shear_ordinate(place, self.stringer.span_ft) - beyond)
        return found[0], found[1]


def _mirrored(facts: FloorFacts) -> FloorFacts:
    return FloorFacts(
        strength=facts.strength, lanes=facts.lanes, dead_set=facts.dead_set, way=-facts.way,
        axle=facts.axle,
    )


def stringer_loads(context: FloorContext, stringer: Stringer) -> StringerLoads:
    """A stringer as a simple span, ready to be rated."""
    places = context.places(stringer.panel)
    gaps = [gap for gap in stringer.gaps_ft if gap is not None]
    return StringerLoads(
        context=context, stringer=stringer, line=stringer_line(stringer, places),
        dead=context.panel_dead(stringer.panel).get(stringer.place_ft, NONE),
        beam=Beam(
            stretches=stringer.stretches, as_built=stringer.as_built, made_of=stringer.made_of,
            ends=stringer.beam_ends, unheld=stringer.unheld,
            unheld_below=stringer.span_ft * INCHES if stringer.continuous else 0.0,
            both_ways=stringer.continuous, sharing=len(places),
            apart=INCHES * max(gaps) if gaps else None,
        ),
    )
