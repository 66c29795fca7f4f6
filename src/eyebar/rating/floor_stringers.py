"""Stringers as simple spans under vehicles: each section with the axle over it, exactly."""

from dataclasses import dataclass

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
from eyebar.loads.trains import Floats, least_factor
from eyebar.loads.wheels_across import AcrossLine, mean_spacing, share_by_table
from eyebar.rating.floor_context import FloorContext, lane_alone, lane_beside
from eyebar.rating.floor_facts import FloorFacts, Met
from eyebar.rating.floor_search import EVERY_SET, Found, Wish, sections
from eyebar.resistance.floor_beams import Beam, floor_beam_strengths
from eyebar.resistance.floor_rules import Effect, Strength, floor_rules
from eyebar.terms import Combine, Level, Metal, Method
from eyebar.vehicles import Vehicle

INCHES = 12.0
SLAB_ON_STEEL = "concrete.on steel"
WHEEL_LINE = 0.5
"""Part of the axles on one wheel line."""


@dataclass(slots=True, kw_only=True)
class StringerLoads:
    """One stringer, the wheels that come to it, its dead load along it [kip/ft]."""

    context: FloorContext
    stringer: Stringer
    beam: Beam
    line: AcrossLine
    dead: Pair

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
            for vehicle in self.context.vehicles.values()
            for lanes in range(1, self.context.lanes[vehicle.name] + 1)
        )
        return (
            one.span_ft, one.run_ft, one.run_place, beam.stretches, beam.as_built, beam.ends,
            beam.unheld, beam.sharing, beam.apart, id(one.made_of), self.dead, shares,
        )

    @property
    def base_ft(self) -> float:
        """Its place along the road."""
        return self.stringer.begin_ft

    def station(self, facts: FloorFacts) -> float:
        """Where along the road the axle of the facts stands [ft]."""
        return self.stringer.begin_ft + facts.section_ft

    def shares(self, vehicle: Vehicle, lanes: int) -> tuple[float, float]:
        """Shares of the axles [1], by the table (the deck as simple spans where it has none) and
        of an axle beside the support, both without multiple presence. Raises IndexError where so
        many lanes do not fit."""
        lever = self.context.placings(self.line, vehicle)[lanes - 1].share
        before, behind = self.stringer.gaps_ft
        if before is None or behind is None or vehicle.combine is Combine.AREA:
            return lever, lever
        part = share_by_table(
            self.context.floor.deck_word, mean_spacing(before, behind), lanes=lanes,
            gauge_ft=vehicle.gauge_ft, values=self.context.values, widest_ft=max(before, behind),
        )
        return (lever if part is None else part / 2.0), lever

    def shares_by(
        self, vehicle: Vehicle, lanes: int, method: Method
    ) -> tuple[float, float]:
        """The same by a method. For slabs on steel load and resistance has not the table's figures
        but formulas, for stringers farther apart and longer than these: they take a whole wheel
        line at least, which is more than by the formulas up to 4 1/2 ft, and hardly less beyond."""
        table, lever = self.shares(vehicle, lanes)
        slab = self.context.floor.deck_word == SLAB_ON_STEEL
        if slab and method is Method.LOAD_AND_RESISTANCE and vehicle.combine is not Combine.AREA:
            table = lever = max(table, lever, WHEEL_LINE)
        return table, lever

    def shared(self, wish: Wish) -> tuple[Floats, Floats]:
        """(v,) both shares with multiple presence, nan where the lanes do not fit."""
        found = [
            self.shares_by(one, wish.lanes, wish.asked.method)
            if wish.lanes <= self.context.lanes[one.name] else (np.nan, np.nan)
            for one in self.context.listed(wish.asked.rows.tolist())
        ]
        return (
            wish.presence * np.array([one[0] for one in found]),
            wish.presence * np.array([one[1] for one in found]),
        )

    def timber_share(self, share: float) -> float:
        """Share of the axles in the shear of timber [1], `share` that by the table."""
        number = self.context.values.number
        return timber_shear_share(
            number("timber shear.half"), number("timber shear.undistributed part"), share
        )

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
        table, lever = self.shared(wish)
        weight = wish.dead[0] * self.dead.dc + wish.dead[1] * self.dead.dw
        with np.errstate(invalid="ignore", divide="ignore"):
            match strength.effect:
                case Effect.MOMENT:
                    return self._moments(wish, table, weight)
                case Effect.TIMBER_SHEAR:
                    share = wish.presence * np.array([
                        self.timber_share(one) for one in table / wish.presence
                    ])
                    dead = weight * (span / 2.0 - min(strength.begin_ft, span / 2.0))
                    at = self.timber_place(strength)
                    return self._shears(wish, at, dead, (share, share), strength.end)
                case Effect.REACTION:
                    return self._shears(wish, 0.0, weight * span / 2.0, (table, lever),
                                        strength.end)
                case _:
                    return [
                        found
                        for end, at in ((0, strength.begin_ft), (1, span - strength.end_ft))
                        for found in self._shears(
                            wish, at, weight * (span / 2.0 - at), (table, lever), end
                        )
                    ]

    def _beside(self, wish: Wish) -> Floats:
        """(v,) lane loads that are summed with the axles [kip/ft]."""
        vehicles = self.context.listed(wish.asked.rows.tolist())
        return np.array([
            lane_beside(one, over - 1.0)
            for one, over in zip(vehicles, wish.over.tolist(), strict=True)
        ])

    def _alone(self, wish: Wish) -> Floats:
        """(v,) vehicles whose lane load may stand in the place of their axles."""
        vehicles = self.context.listed(wish.asked.rows.tolist())
        return np.array([lane_alone(one) for one in vehicles])

    def _moments(self, wish: Wish, share: Floats, weight: float) -> list[Found]:
        strength, span, rows = wish.strength, self.stringer.span_ft, wish.asked.rows
        spans = self.context.spans
        capacity = strength.capacity * strength.divisor / INCHES
        begin, end = strength.begin_ft, strength.end_ft
        least = least_factor(
            spans.pieces(span, begin, end).rows(rows), capacity=capacity, dead_kip_per_ft=weight,
            span_ft=span, times=wish.times * share, lane=self._beside(wish),
        )
        found = [Found(
            factor=least.factor, section=least.section, axle=least.axle.tolist(),
            way=least.way.tolist(),
        )]
        alone = self._alone(wish)
        if alone.any():
            at = min(max(span / 2.0, begin), end)
            moment = (spans.of.lane[rows] * span / 2.0 + spans.of.point_moment[rows]) * at * (
                span - at) / span
            left = capacity - weight * at * (span - at) / 2.0
            found.append(Found(
                factor=np.where(alone, left / (wish.times * share * moment), np.inf),
                section=sections(at, len(rows)), lane_only=[True] * len(rows),
            ))
        return found

    def _shears(
        self, wish: Wish, at: float, dead: float, shares: tuple[Floats, Floats], end: int
    ) -> list[Found]:
        """Shear at a section `at` ft from end 0 or 1; of the shares the second is that of the axle
        beside the section."""
        spans, rows, span = self.context.spans, wish.asked.rows, self.stringer.span_ft
        share, own = shares
        over = np.ones(len(spans.of.names))
        over[rows] = np.where(np.isnan(share), 1.0, own / share)
        greatest = spans.shear(span, at, over)
        left = wish.strength.capacity * wish.strength.divisor - dead
        lane = self._beside(wish) * (span - at) ** 2 / (2.0 * span)
        section = sections(at if end == 0 else span - at, len(rows))
        way = greatest.way[rows] if end == 0 else -greatest.way[rows]
        sheared = greatest.effect[rows] + lane
        found = [Found(
            factor=np.where(sheared > 0.0, left / (wish.times * share * sheared), np.inf), end=end,
            section=section, axle=greatest.axle[rows].tolist(), way=way.tolist(),
        )]
        alone = self._alone(wish)
        if alone.any():
            effect = spans.of.lane[rows] * (span - at) ** 2 / (2.0 * span) + (
                spans.of.point_shear[rows] * (span - at) / span)
            found.append(Found(
                factor=np.where(alone, left / (wish.times * share * effect), np.inf), end=end,
                section=section, lane_only=[True] * len(rows),
            ))
        return found

    def met(self, facts: FloorFacts, method: Method, vehicle: Vehicle) -> Met:
        """What a check meets, by the declared formulas."""
        presence = self.context.presence(method, facts.lanes)
        table, lever = self.shares_by(vehicle, facts.lanes, method)
        shock = self.shock(vehicle, method)
        if facts.strength.effect is Effect.MOMENT:
            return self._met_moment(facts, vehicle, presence * table, shock)
        if facts.strength.effect is Effect.TIMBER_SHEAR:
            table = lever = self.timber_share(table)
        return self._met_shear(facts, vehicle, (presence * table, presence * lever), shock)

    def _met_moment(
        self, facts: FloorFacts, vehicle: Vehicle, share: float, shock: float
    ) -> Met:
        span, at, divisor = self.stringer.span_ft, facts.section_ft, facts.strength.divisor
        note("section, from the stringer's beginning", "x", at, "ft")
        if facts.lane_only:
            point = (vehicle.lane_point_kip or (0.0, 0.0))[0]
            whole = uniform_moment(vehicle.lane_kip_per_ft, at, span)
            whole += point * moment_ordinate(at, at, span)
        else:
            whole = 0.0
            for number, axle in enumerate(vehicle.axles_kip):
                place = self._place(facts, vehicle, number, at)
                if 0.0 <= place <= span:
                    whole += axle * moment_ordinate(place, at, span)
            if lane := lane_beside(vehicle, shock):
                whole += uniform_moment(lane, at, span)
        note("moment of the whole vehicle at the section", "M", whole, "kip ft")
        dead = Pair(
            dc=uniform_moment(self.dead.dc, at, span), dw=uniform_moment(self.dead.dw, at, span)
        )
        return Met(
            dead=dead.times(INCHES / divisor), live=whole * share * INCHES / divisor, share=share
        )

    def _place(self, facts: FloorFacts, vehicle: Vehicle, number: int, at: float) -> float:
        """Place of an axle while that of the facts stands `at` [ft]."""
        behind = vehicle.behind_front_ft()
        return at + facts.way * (behind[facts.axle] - behind[number])

    def _met_shear(
        self, facts: FloorFacts, vehicle: Vehicle, shares: tuple[float, float], shock: float
    ) -> Met:
        """Shear before end 1 is that behind end 0 of the mirror image."""
        strength, span = facts.strength, self.stringer.span_ft
        at = facts.section_ft if facts.end == 0 else span - facts.section_ft
        share, own = shares
        note("section, from the nearer end of the stringer", "x", at, "ft")
        if facts.lane_only:
            point = (vehicle.lane_point_kip or (0.0, 0.0))[1]
            whole = partial_shear(vehicle.lane_kip_per_ft, at, span)
            whole += point * shear_ordinate(at, span)
            shared = whole * share
        else:
            whole, shared = self._sheared(facts, vehicle, at, shares)
            if lane := lane_beside(vehicle, shock):
                beside = partial_shear(lane, at, span)
                whole, shared = whole + beside, shared + beside * share
        note("shear of the whole vehicle at the section", "V", whole, "kip")
        section = at
        if strength.effect is Effect.TIMBER_SHEAR:
            section = min(strength.begin_ft, span / 2.0)
        dead = Pair(
            dc=uniform_shear(self.dead.dc, section, span),
            dw=uniform_shear(self.dead.dw, section, span),
        )
        return Met(
            dead=dead.times(1.0 / strength.divisor), live=shared / strength.divisor,
            share=share if own == share else shared / whole,
        )

    def _sheared(
        self, facts: FloorFacts, vehicle: Vehicle, at: float, shares: tuple[float, float]
    ) -> tuple[float, float]:
        """Shear of the whole axles, and of their shares."""
        mirrored = facts if facts.end == 0 else _mirrored(facts)
        whole = shared = 0.0
        for number, axle in enumerate(vehicle.axles_kip):
            place = self._place(mirrored, vehicle, number, at)
            if 0.0 <= place <= self.stringer.span_ft:
                beyond = 0.0 if place >= at else 1.0
                effect = axle * (shear_ordinate(place, self.stringer.span_ft) - beyond)
                whole += effect
                shared += effect * shares[1 if number == facts.axle else 0]
        return whole, shared


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
