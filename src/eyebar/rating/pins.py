"""Pins rated for all vehicles: the multiple at which the bars' forces together reach a limit.

All forces are of one place of the load together. The places and the ways there are those of the
bars (families.py); what is convex in the forces passes its limit on the same edges.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from eyebar.analysis.passage import Spots, spots
from eyebar.bridge.parts import Bridge, Pin, Truss
from eyebar.errors import OutOfRange
from eyebar.loads import impact
from eyebar.office import Values
from eyebar.rating.entries import LOST, events_at, place_at, tons_of
from eyebar.rating.families import Swept
from eyebar.rating.formulas import rating_factor
from eyebar.rating.lookup import Question
from eyebar.rating.pin_checks import METHODS
from eyebar.rating.pin_lane_groups import lane_groups
from eyebar.rating.pin_lanes import lane_sweeps
from eyebar.rating.pin_table import PinTable
from eyebar.rating.rated import NO_RULE, PartRating, PinFacts, RatedPart
from eyebar.rating.safe_load import ALIKE
from eyebar.terms import Kind, Method
from eyebar.vehicles import Vehicle

LOADED_PANELS = 2.0
"""Impact goes by the length of two panels, the least length that loads a pin: the safe side."""
PROPOSED = "its packing was not measured: the one it is rated by is proposed from its bars"
NOTHING = "{} does nothing to this part that its strength would limit"
SAID = (
    "pins: impact by the length of two panels, forces at the middle of their bearings unless the "
    "office says otherwise; by load factor there is no rule"
)


@dataclass(frozen=True, slots=True)
class Way:
    """One sweep that may govern: its state, and the vehicle's axles over those of the sweep's."""

    pull: str
    swept: Swept
    scale: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A question with every way in which it may be answered."""

    question: Question
    ways: tuple[Way, ...]


@dataclass(frozen=True, slots=True)
class _Least:
    """Where a question's factor for one pin arises: the way, the edge and part, the check."""

    way: Way
    edge: int
    part: float
    multiple: float
    check: str


def pin_parts(
    bridge: Bridge, truss: Truss, asked: tuple[Sequence[Asked], Sequence[PartRating]],
    table: PinTable,
) -> list[RatedPart]:
    """The pins of a truss, rated for every question that has a rule for pins.

    `asked` are the questions, and the ratings of vehicles that are refused on this road.
    """
    questions, refused = asked
    stations = [station for _, station in truss.floor_joints]
    panel = max(b - a for a, b in pairwise(stations))
    rating = _PinRating(
        bridge=bridge, table=table, span_ft=stations[-1] - stations[0],
        loaded_ft=LOADED_PANELS * panel,
    )
    if any(pin.proposed for pin in truss.pins):
        table.values.number("pin.clearance")
    pins, refusals = _in_balance(truss.pins, table)
    found: dict[str, list[PartRating]] = {pin.address: [] for pin in pins}
    for one in questions:
        if one.question.method not in METHODS:
            for pin in pins:
                found[pin.address].append(_without(one.question, NO_RULE))
    wanted = [one for one in questions if one.question.method in METHODS]
    lane_sweeps(lane_groups(
        (table.rules_of(one.question), [way.swept for way in one.ways]) for one in wanted
    ), pins, table)
    chosen = [
        (pin, one.question, rating.least(pin, one)) for one in wanted for pin in pins
    ]
    for pin, made in rating.ratings(chosen):
        found[pin.address].append(made)
    return [
        RatedPart(
            address=pin.address, truss=truss.name, kind=Kind.PIN, pin=pin,
            ratings=(*found[pin.address], *refused),
            provisional=PROPOSED if pin.proposed else "",
        )
        for pin in pins
    ] + [
        RatedPart(
            address=pin.address, truss=truss.name, kind=Kind.PIN, pin=pin, not_rated=reason
        )
        for pin, reason in refusals
    ]


def _in_balance(
    pins: Sequence[Pin], table: PinTable
) -> tuple[list[Pin], list[tuple[Pin, str]]]:
    """The pins that can be looked at as beams, and the others with the reason."""
    found, refused = [], []
    for pin in pins:
        try:
            table.rows_of(pin)
        except OutOfRange as wrong:
            refused.append((pin, str(wrong)))
        else:
            found.append(pin)
    return found, refused


def unrated_pins(truss: Truss, reason: str) -> list[RatedPart]:
    """The pins of a truss whose dead load is not known."""
    return [
        RatedPart(
            address=pin.address, truss=truss.name, kind=Kind.PIN, pin=pin, not_rated=reason
        )
        for pin in truss.pins
    ]


@dataclass(frozen=True, slots=True, kw_only=True)
class _PinRating:
    """Rates the pins of one truss. `span_ft` of the truss and `loaded_ft` go into the impact."""

    bridge: Bridge
    table: PinTable
    span_ft: float
    loaded_ft: float

    def least(self, pin: Pin, asked: Asked) -> _Least | None:
        """The way with the least multiple over scale; None where nothing reaches a limit."""
        by = self.table.rules_of(asked.question)
        best: _Least | None = None
        least = np.inf
        number = self.table.alike(pin)
        lanes = {
            id(swept): Way(way.pull, swept, way.scale) for way in asked.ways
            for swept, meant in self.table.lanes_of(way.swept) if number in meant
        }
        for way in (*asked.ways, *lanes.values()):
            place = way.swept.sweep.place
            found = self.table.passed_by(pin, by, way.swept)
            multiple = found.multiple[place]
            if multiple / way.scale < least * (1.0 - ALIKE):
                least = multiple / way.scale
                best = _Least(
                    way, found.edge[place], found.part[place], multiple, found.checks[place]
                )
            if id(way.swept) in lanes:
                continue
            ending, ray, _ = self.table.ended_of(way.swept)
            if ending / way.scale < least * (1.0 - ALIKE):
                least = ending / way.scale
                best = _Least(way, _last_edge(way.swept, ray), 1.0, ending, LOST)
        return best

    def ratings(
        self, chosen: Sequence[tuple[Pin, Question, _Least | None]]
    ) -> Iterable[tuple[Pin, PartRating]]:
        """The rating of each question, in the order asked; places are looked up by sweep."""
        rows: dict[int, list[int]] = {}
        for i, (_, _, one) in enumerate(chosen):
            if one is not None:
                rows.setdefault(id(one.way.swept), []).append(i)
        looked: dict[int, tuple[Spots, int]] = {}
        for numbers in rows.values():
            places = [chosen[i][2] for i in numbers]
            known = [one for one in places if one is not None]
            where = spots(
                known[0].way.swept.sweep, np.array([one.edge for one in known]),
                np.array([one.part for one in known]),
            )
            looked |= {i: (where, row) for row, i in enumerate(numbers)}
        for i, (pin, question, one) in enumerate(chosen):
            yield pin, (
                _without(question, NOTHING.format(question.vehicle.name)) if one is None
                else self._rating(pin, question, one, looked[i])
            )

    def _rating(
        self, pin: Pin, question: Question, one: _Least, spot: tuple[Spots, int]
    ) -> PartRating:
        swept, vehicle = one.way.swept, question.vehicle
        shock = self._impact(pin, question)
        about = {
            "scale": one.way.scale, "live_factor": question.live_factor, "impact": shock,
            "share": question.case.total,
        }
        facts = self._facts(pin, one)
        factor = factor_of(facts, **about)
        events = rating_factor(
            multiple=spot[0].event_multiple[spot[1]], **about
        ).tolist()
        begun = one.multiple <= 0.0
        return PartRating(
            vehicle=vehicle.name, method=question.method, level=question.level, factor=factor,
            tons=tons_of(vehicle, factor),
            check="dead load" if begun else swept.prefix + one.check,
            capacity=None if one.check == LOST else 1.0,
            unit="" if one.check == LOST else "ratio", dead_factors=swept.dead,
            live_factor=question.live_factor, impact=shock, share=question.case.total,
            lanes=question.case.lanes,
            at=None if begun or not swept.placed else place_at(swept, *spot),
            events=() if begun else events_at(swept, spot, events, factor),
            pull=one.way.pull, pin_facts=facts,
        )

    def _facts(self, pin: Pin, one: _Least) -> PinFacts:
        sweep, rows = one.way.swept.sweep, self.table.rows_of(pin)
        p, q = sweep.edges[one.edge].tolist()
        bars = self.table.columns_of(one.way.swept, rows)
        begun = one.multiple <= 0.0
        return PinFacts(
            bars=rows.bars, forces_before=tuple(sweep.forces[p, bars].tolist()),
            forces_after=tuple(sweep.forces[q, bars].tolist()), part=0.0 if begun else one.part,
            multiple_before=0.0 if begun else float(sweep.multiple[p]),
            multiple_after=float(sweep.multiple[q]), scale=one.way.scale,
            loaded_ft=self.loaded_ft, span_ft=self.span_ft,
        )

    def _impact(self, pin: Pin, question: Question) -> float:
        pace = self.bridge.road.use.pace
        key = (question.method, question.vehicle.vehicle_class, pin.material.metal, pace)
        if key not in self.table.shocks:
            self.table.shocks[key] = pin_impact(
                self.bridge, pin, question.vehicle, question.method,
                lengths=(self.loaded_ft, self.span_ft), values=self.table.values,
            )
        return self.table.shocks[key]


def pin_impact(
    bridge: Bridge, pin: Pin, vehicle: Vehicle, method: Method, *,
    lengths: tuple[float, float], values: Values,
) -> float:
    """Impact on a pin [1]; `lengths` are those of two panels and of the span [ft]."""
    return impact(
        method=method, vehicle_class=vehicle.vehicle_class, metal=pin.material.metal,
        loaded_length_ft=lengths[0], span_ft=lengths[1], surface=bridge.road.surface,
        values=values, pace=bridge.road.use.pace,
    )


def factor_of(
    facts: PinFacts, *, scale: float, live_factor: float, impact: float, share: float
) -> float:
    """The rating factor of a pin from the part of the stretch at which its check is reached [1]."""
    multiple = facts.multiple_before + facts.part * (facts.multiple_after - facts.multiple_before)
    factor: float = rating_factor(
        multiple=multiple, scale=scale, live_factor=live_factor, impact=impact, share=share
    )
    return factor


def _last_edge(swept: Swept, ray: int) -> int:
    """The last stretch of a ray, on which its path ends."""
    sweep = swept.sweep
    last = int(sweep.first[ray] + sweep.count[ray])
    along = (sweep.edges[:, 1] == last) & (sweep.edges[:, 0] == last - 1)
    return int(np.flatnonzero(along)[0])


def _without(question: Question, reason: str) -> PartRating:
    return PartRating(
        vehicle=question.vehicle.name, method=question.method, level=question.level, factor=None,
        reason=reason, live_factor=question.live_factor, share=question.case.total,
        lanes=question.case.lanes,
    )
