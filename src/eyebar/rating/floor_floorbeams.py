"""Floorbeams under vehicles: what comes to the panel point, anywhere across the road."""

from dataclasses import dataclass, field
from typing import ClassVar

import numpy as np

from eyebar.bridge.floor_ends import width_of
from eyebar.bridge.floor_parts import Floor, Floorbeam, Timber
from eyebar.formula import note
from eyebar.loads.floor_dead import (
    Pair,
    PointLoad,
    floorbeam_points,
    heavier,
    spread_points,
    uniform_moment,
    uniform_shear,
)
from eyebar.loads.shears import shear_ordinate
from eyebar.loads.simple_beam import moment_ordinate
from eyebar.loads.wheels_across import AcrossLine, hat
from eyebar.rating.floor_context import FloorContext
from eyebar.rating.floor_facts import FloorFacts, Met
from eyebar.rating.floor_looked import Looked, line_by
from eyebar.rating.floor_reactions import PanelPoint, panel_point
from eyebar.rating.floor_search import EVERY_SET, Found, Wish
from eyebar.rating.floor_stringers import INCHES
from eyebar.rating.floor_trussed import Trussed, trussed
from eyebar.resistance.floor_beams import Beam, floor_beam_strengths
from eyebar.resistance.floor_rules import Effect, Strength, floor_rules
from eyebar.terms import Combine, Level, Metal, Method
from eyebar.vehicles import Vehicle

PARTS = 20
"""Parts of a floorbeam at whose ends it is looked at, besides stringers and changes of section."""


@dataclass(slots=True, kw_only=True)
class FloorbeamLoads:
    """One floorbeam: the panel point it stands at, dead loads on it [kip] and along it."""

    mirrored: ClassVar[bool] = False
    context: FloorContext
    beam: Floorbeam
    as_beam: Beam
    point: PanelPoint
    points: tuple[PointLoad, ...]
    rods: Trussed | None
    known: dict[tuple[object, ...], list[Looked]] = field(default_factory=dict)

    def strengths(self, method: Method, level: Level) -> tuple[Strength, ...]:
        """Its strengths by a method and level, those of its truss rods too."""
        number = self.context.values.number
        apart = max(self.beam.before_ft, self.beam.behind_ft)
        far = apart > number("system factor.floorbeams far apart from") and self.point.run is None
        by = floor_rules(
            method, level, system="floorbeams far apart" if far else "floorbeams",
            values=self.context.values, condition=self.context.condition,
        )
        found = floor_beam_strengths(self.as_beam, by, self.context.values)
        if self.rods is not None:
            found += self.rods.strengths(by, self.context.values, self.context.condition)
        return found

    def shock(self, vehicle: Vehicle, method: Method) -> float:
        """Impact by its own span."""
        made_of = self.beam.made_of
        metal = Metal.TIMBER if isinstance(made_of, Timber) else made_of.metal
        span = self.beam.span_ft
        return self.context.shock(vehicle, method, metal=metal, loaded_ft=span, span_ft=span)

    def sets(self) -> tuple[str, ...]:
        """Dead load only adds, but where rods lift the beam."""
        return EVERY_SET[:1] if self.rods is None else EVERY_SET

    def likeness(self) -> tuple[object, ...]:
        """What its ratings depend on, all but its place along the road."""
        one, beam = self.beam, self.as_beam
        return (
            one.span_ft, one.slant, one.stringers_ft, one.weight_kip_per_ft, beam.stretches,
            beam.as_built, beam.ends, beam.unheld, id(one.made_of), self.points, self.point.key(),
            one.truss_rods and id(one.truss_rods), beam.carries,
        )

    @property
    def base_ft(self) -> float:
        """Its place along the road."""
        return self.point.station_ft

    def station(self, facts: FloorFacts) -> float:
        """Where along the road the axle of the facts stands [ft]."""
        return self.point.station_ft + (facts.front_ft or 0.0)

    def line(self, strength: Strength, at_ft: float, end: int) -> AcrossLine:
        """Influence line of a strength's effect across the road, for a unit load on the panel
        point: moment [ft], shear [1] behind the section (end 0) or before it (end 1)."""
        span = self.beam.span_ft
        if strength.effect is Effect.MOMENT:
            kinks = self.beam.stringers_ft or (0.0, at_ft, span)
            return line_by(kinks, [self._moment(strength, y, at_ft) for y in kinks])
        if strength.effect is Effect.STRINGER:
            return hat(self.beam.stringers_ft, self.beam.stringers_ft.index(at_ft))
        if strength.effect is Effect.RODS:
            kinks = self.beam.stringers_ft or tuple(span * i / PARTS for i in range(PARTS + 1))
            assert self.rods is not None
            return line_by(kinks, [self.rods.pull(y) for y in kinks])
        step = 1e-6 * span
        kinks = self.beam.stringers_ft or (0.0, max(at_ft - step, step / 2), at_ft + step, span)
        return line_by(kinks, [self._shear(y, at_ft, end) for y in kinks])

    def _moment(self, strength: Strength, load_ft: float, at_ft: float) -> float:
        """Moment at a section for a unit load [ft], in the strength's sense; with what the rods'
        thrust adds to the stress where there are rods."""
        span = self.beam.span_ft
        moment = moment_ordinate(load_ft, at_ft, span)
        if self.rods is None:
            return strength.sense * moment * self.beam.slant
        return self.rods.moment(strength, moment, load_ft=load_ft, at_ft=at_ft)

    def _shear(self, load_ft: float, at_ft: float, end: int) -> float:
        span = self.beam.span_ft
        if end == 0:
            return shear_ordinate(load_ft, span) - (1.0 if load_ft < at_ft else 0.0)
        return load_ft / span - (1.0 if load_ft > at_ft else 0.0)

    def _sections(self, strength: Strength) -> list[tuple[float, int]]:
        """(section [ft], end) to be looked at for a strength."""
        span, begin, last = self.beam.span_ft, strength.begin_ft, strength.end_ft
        match strength.effect:
            case Effect.MOMENT:
                grid = {span * i / PARTS for i in range(1, PARTS)} | set(self.beam.stringers_ft)
                inner = sorted(x for x in grid if begin < x < last)
                return [(x, 0) for x in (begin, *inner, last)]
            case Effect.SHEAR:
                return [(begin, 0), (last, 1)]
            case Effect.TIMBER_SHEAR:
                # Stringers stand where they stand: none beyond one depth is left out, and the rule
                # for wheels that are shared among stringers is not for it.
                at = min(begin, span / 2.0)
                return [(at, 0) if strength.end == 0 else (span - at, 1)]
            case Effect.RODS:
                return [(0.0, 0)]
            case Effect.STRINGER:
                return [(place, 0) for place in self.beam.stringers_ft]
            case _:
                return [(0.0, 0) if strength.end == 0 else (span, 1)]

    def dead(self, strength: Strength, at_ft: float, end: int) -> Pair:
        """Dead load's effect at a section [kip ft or kip]; sidewalks only where they add."""
        span, weight = self.beam.span_ft, self.beam.weight_kip_per_ft
        line = self.line(strength, at_ft, end)
        found = Pair(dc=0.0, dw=0.0)
        for one in self.points:
            found = found.plus(one.load.times(self._ordinate(strength, one.place_ft, at_ft, end)))
        own = self._own(strength, at_ft, end, weight, span)
        walks = 0.0 if strength.effect is Effect.STRINGER else (
            self.context.walks_dead(line, self.point.dead_length_ft))
        return found.plus(Pair(dc=own + walks, dw=0.0))

    def _ordinate(self, strength: Strength, load_ft: float, at_ft: float, end: int) -> float:
        if strength.effect is Effect.MOMENT:
            return self._moment(strength, load_ft, at_ft)
        if strength.effect is Effect.RODS:
            assert self.rods is not None
            return self.rods.pull(load_ft)
        if strength.effect is Effect.STRINGER:
            return 1.0 if load_ft == at_ft else 0.0
        return self._shear(load_ft, at_ft, end)

    def _own(
        self, strength: Strength, at_ft: float, end: int, weight: float, span: float
    ) -> float:
        """Effect of the beam's own weight."""
        if strength.effect is Effect.STRINGER:
            return 0.0
        if self.rods is not None and strength.effect in (Effect.MOMENT, Effect.RODS):
            piece = span / PARTS
            return sum(
                weight * piece * self._ordinate(strength, (i + 0.5) * piece, at_ft, end)
                for i in range(PARTS)
            )
        if strength.effect is Effect.MOMENT:
            return strength.sense * uniform_moment(weight, at_ft, span) * self.beam.slant**2
        return uniform_shear(weight, at_ft if end == 0 else span - at_ft, span) * self.beam.slant

    def _crowd(self, strength: Strength, line: AcrossLine) -> float:
        """What a crowd on the sidewalks does, none of which stands on the stringers."""
        if strength.effect is Effect.STRINGER:
            return 0.0
        return self.context.crowd(line, self.point.dead_length_ft)

    def _looked(self, strength: Strength) -> list[Looked]:
        """The sections to be looked at for a strength, by their ends, each set found once."""
        key = (
            strength.effect, strength.sense, strength.begin_ft, strength.end_ft, strength.end,
            self.rods and strength.divisor,
        )
        if key not in self.known:
            by_end: dict[int, list[float]] = {}
            for at, end in self._sections(strength):
                by_end.setdefault(end, []).append(at)
            self.known[key] = [
                self._look(strength, places, end) for end, places in by_end.items()
            ]
        return self.known[key]

    def _look(self, strength: Strength, places: list[float], end: int) -> Looked:
        lines = tuple(self.line(strength, at, end) for at in places)
        dead = [self.dead(strength, at, end) for at in places]
        return Looked(
            end=end, at=np.array(places), lines=lines,
            dc=np.array([one.dc for one in dead]), dw=np.array([one.dw for one in dead]),
            crowd=np.array([self._crowd(strength, line) for line in lines]),
        )

    def found(self, wish: Wish) -> list[Found]:
        """Factors of the asked vehicles for one wish."""
        strength, rows = wish.strength, wish.asked.rows
        moment = strength.effect is Effect.MOMENT
        capacity = strength.capacity * strength.divisor / (INCHES if moment else 1.0)
        coming = self.point.loads(wish, shear=not moment)
        answers = []
        for looked in self._looked(strength):
            left = (capacity - wish.dead[0] * looked.dc - wish.dead[1] * looked.dw)[:, None]
            left = left - wish.live * looked.crowd[:, None]
            shares, laid = looked.shares(self.context, wish.lanes)
            shares, laid = wish.presence * shares[:, rows], wish.presence * laid[:, rows]
            for axles, lane, found in coming:
                with np.errstate(invalid="ignore", divide="ignore"):
                    met = wish.times * shares * axles + wish.times * laid * lane
                    factor = np.where(met > 0.0, left / met, np.inf)
                best, every = factor.argmin(axis=0), np.arange(len(rows))
                answers.append(Found(
                    factor=factor[best, every], section=looked.at[best], end=looked.end,
                    axle=found.axle, way=found.way, lane_only=found.lane_only, front=found.front,
                    spacings=found.spacings,
                ))
        return answers

    def met(self, facts: FloorFacts, method: Method, vehicle: Vehicle) -> Met:
        """What a check meets."""
        strength, at, end = facts.strength, facts.section_ft, facts.end
        moment = strength.effect is Effect.MOMENT
        scale = (INCHES if moment else 1.0) / strength.divisor
        line = self.line(strength, at, end)
        presence = self.context.presence(method, facts.lanes)
        axles, lane = self.point.whole(
            facts, vehicle, self.shock(vehicle, method), shear=not moment
        )
        note("section, from the end at the first truss", "y", at, "ft")
        live = 0.0
        if axles:
            live += axles * self._share(line, vehicle, facts.lanes, "ft" if moment else "1")
        if lane:
            live += lane * self._strip(line, vehicle, facts.lanes, "ft" if moment else "1")
        dead = self.dead(strength, at, end).times(scale)
        crowd = self._crowd(strength, line) * scale
        return Met(
            dead=dead, live=live * presence * scale, crowd=crowd,
            share=presence * (facts.lanes if moment or strength.effect is Effect.RODS
                              else live / (axles + lane)),
        )

    def _share(self, line: AcrossLine, vehicle: Vehicle, lanes: int, unit: str) -> float:
        """Share of the axles [ft or 1], where they add."""
        placing = self.context.placings(line, vehicle)[lanes - 1]
        for number, wheel in enumerate(placing.wheels_ft, start=1):
            note(f"wheel line {number}, from the first truss", "y", wheel, "ft")
        note("half the sum of the ordinates under the wheel lines", "m", placing.share, unit)
        return max(placing.share, 0.0)

    def _strip(self, line: AcrossLine, vehicle: Vehicle, lanes: int, unit: str) -> float:
        """Share of the lane load [ft or 1]."""
        share = self.context.lane_share(line, vehicle, lanes)
        if vehicle.combine is not Combine.AREA:
            strips = self.context.strips(line)[lanes - 1]
            note("width of the strip of a lane load", "b", strips.width_ft, "ft")
            for number, edge in enumerate(strips.edges_ft, start=1):
                note(f"first edge of strip {number}, from the first truss", "y", edge, "ft")
        note("sum of the mean ordinates under the lane loads", "m_l", share, unit)
        return share


def _stands_on(floor: Floor, beam: Floorbeam) -> float | None:
    """Width of the stringers that stand on a floorbeam [in], 0 where it is not known; None where
    they are joined to its web, by rivets or under a cope, or the deck lies on it itself."""
    here = [one for one in floor.stringers if beam.joint in one.ends]
    if not beam.stringers_ft or any(
        one.beam_ends.fastening is not None or one.beam_ends.cope is not None for one in here
    ):
        return None
    return width_of(here) or 0.0


def floorbeam_loads(context: FloorContext, beam: Floorbeam, panel_before: int) -> FloorbeamLoads:
    """A floorbeam ready to be rated; `panel_before` is the number of the panel before it."""
    point = panel_point(
        context, panel_before=panel_before, station_ft=beam.station_ft, before_ft=beam.before_ft,
        behind_ft=beam.behind_ft,
    )
    rods = trussed(beam)
    if not beam.stringers_ft:
        points = spread_points(context.floor, beam)
    elif point.run is not None:
        points = floorbeam_points([(
            2.0 * max(point.dead_length_ft, (beam.before_ft + beam.behind_ft) / 2.0),
            heavier(context.panel_dead(panel_before), context.panel_dead(panel_before + 1)),
        )])
    else:
        points = floorbeam_points([
            (beam.before_ft, context.panel_dead(panel_before)),
            (beam.behind_ft, context.panel_dead(panel_before + 1)),
        ])
    return FloorbeamLoads(
        context=context, beam=beam, point=point, points=points, rods=rods,
        as_beam=Beam(
            stretches=beam.stretches, as_built=beam.as_built, made_of=beam.made_of,
            carries=_stands_on(context.floor, beam), ends=beam.beam_ends, unheld=beam.unheld,
            both_ways=rods is not None, over="hanger",
            unheld_below=0.0 if rods is None else beam.span_ft * INCHES,
        ),
    )
