"""From the least candidates to ratings with all their facts, many bars at once."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from eyebar.analysis.loaded import LoadedTruss, dead_forces
from eyebar.analysis.model import Floats
from eyebar.analysis.passage import Spots, ended, spots
from eyebar.analysis.paths import Ints, SlackSets, solved
from eyebar.rating.families import Swept
from eyebar.rating.formulas import plain_rating_factor, rated_tons, rating_factor
from eyebar.rating.lookup import Candidate, Question
from eyebar.rating.rated import Event, Facts, PartRating, Place
from eyebar.terms import Combine
from eyebar.vehicles import Vehicle

LOST = "no equilibrium"
"""The check of a part where the path of the load ends before any limit is reached."""

UNSEEN = 1e-7
"""Events under this multiple of the axles come from the splitting of ties, not from the load."""

DEAD_ALONE = (1.0, 1.0)

WEIGHTLESS = (Combine.SUM, Combine.AREA)
"""The design load weighs nothing real, a load by area what the road has room for."""

NOISE = 1e-9
"""A live force under this part of the greatest in the truss is none: a bar that is slack under dead
load has no plain factor."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """The candidates of one question, of each its scale and whether measured pulls were in the
    bars, and the one `chosen` (n,) for each bar."""

    question: Question
    candidates: Sequence[Candidate]
    scales: Sequence[float]
    pulls: Sequence[str]
    chosen: Ints


@dataclass(frozen=True, slots=True)
class _Piece:
    """The bars (b,) for which one candidate of one answer governs, with edge and part of each."""

    answer: int
    candidate: int
    bars: Ints
    edges: Ints
    parts: Floats


def entries(answers: Sequence[Answer], dead: Floats) -> list[list[PartRating]]:
    """For each answer one rating a bar (n,). `dead` (n,) unfactored dead-load forces [kip], told
    where there is no factor.

    Places are looked up sweep by sweep, for all answers together.
    """
    found: list[list[PartRating | None]] = [[None] * len(dead) for _ in answers]
    by_sweep: dict[int, tuple[Swept, list[_Piece]]] = {}
    alone: dict[int, Floats] = {}
    for number, answer in enumerate(answers):
        for piece in _pieces(number, answer):
            swept = answer.candidates[piece.candidate].swept
            by_sweep.setdefault(id(swept), (swept, []))[1].append(piece)
    for swept, pieces in by_sweep.values():
        edges = np.concatenate([piece.edges for piece in pieces])
        bars = np.concatenate([piece.bars for piece in pieces])
        where = spots(swept.sweep, edges, np.concatenate([piece.parts for piece in pieces]))
        live = _own(swept.loaded, swept.dead, where.growing, bars)
        if id(swept.loaded) not in alone:
            alone[id(swept.loaded)] = dead_forces(swept.loaded, *DEAD_ALONE)
        looked = _Looked(
            where, live, dead_forces(swept.loaded, *swept.dead), alone[id(swept.loaded)]
        )
        begin = 0
        for piece in pieces:
            rows = range(begin, begin + len(piece.bars))
            begin += len(piece.bars)
            for bar, rating in _ratings(answers[piece.answer], piece, looked, rows):
                found[piece.answer][bar] = rating
    return [
        [
            _without(answer.question, float(force)) if one is None else one
            for one, force in zip(row, dead, strict=True)
        ]
        for answer, row in zip(answers, found, strict=True)
    ]


def _pieces(number: int, answer: Answer) -> list[_Piece]:
    pieces = []
    for candidate in np.unique(answer.chosen).tolist():
        one = answer.candidates[candidate]
        bars = np.flatnonzero((answer.chosen == candidate) & np.isfinite(one.factor))
        if len(bars):
            edges, parts = _edges(one, bars)
            pieces.append(_Piece(number, candidate, bars, edges, parts))
    return pieces


def _edges(one: Candidate, bars: Ints) -> tuple[Ints, Floats]:
    """Edge and part of each bar's passage; for the end of equilibrium its last stretch, for a limit
    passed under dead load the place where the vehicle adds most."""
    sweep = one.swept.sweep
    if one.found is None:
        _, ray, _ = ended(sweep)
        last = int(sweep.first[ray] + sweep.count[ray])
        along = (sweep.edges[:, 1] == last) & (sweep.edges[:, 0] == last - 1)
        return np.full(len(bars), int(np.flatnonzero(along)[0])), np.ones(len(bars))
    edges, parts = one.found.edge[bars].copy(), one.found.part[bars].copy()
    begun = np.flatnonzero(one.factor[bars] <= 0.0)
    if len(begun):
        edges[begun] = _worst_edges(one, bars[begun])
    return edges, parts


def _worst_edges(one: Candidate, bars: Ints) -> Ints:
    """(b,) first edge of the path on which the vehicle adds most to each bar at the beginning."""
    swept = one.swept
    sweep, loaded = swept.sweep, swept.loaded
    slack = loaded.sets.sets[loaded.start(*swept.dead)]
    elements, _ = solved(loaded.model, slack, sweep.growing)
    rays = (one.sense * loaded.model.bar_forces(elements)[:, bars]).argmax(axis=0)
    at = {int(point): edge for edge, point in enumerate(sweep.edges[:, 0].tolist())
          if sweep.multiple[point] == 0.0}
    return np.array([at[int(sweep.first[ray])] for ray in rays], dtype=np.intp)


def _own(loaded: LoadedTruss, pair: tuple[float, float], growing: Floats, bars: Ints) -> Floats:
    """(b,) each bar's own force of its own place, by the bars that work under dead load."""
    elements, _ = solved(loaded.model, loaded.sets.sets[loaded.start(*pair)], growing)
    forces = loaded.model.bar_forces(elements)
    own: Floats = forces[np.arange(len(bars)), bars]
    nothing = NOISE * np.abs(growing).max(axis=1)
    return np.where(np.abs(own) > nothing, own, 0.0)


@dataclass(frozen=True, slots=True)
class _Looked:
    """What was looked up for the rows of one sweep: places, live forces, dead-load forces (n,)
    factored and not."""

    where: Spots
    live: Floats
    factored: Floats
    dead: Floats


def _ratings(
    answer: Answer, piece: _Piece, looked: _Looked, rows: range
) -> Iterator[tuple[int, PartRating]]:
    question, scale = answer.question, answer.scales[piece.candidate]
    one = answer.candidates[piece.candidate]
    events = rating_factor(
        multiple=looked.where.event_multiple[rows.start : rows.stop], scale=scale,
        live_factor=question.live_factor, impact=one.impact[piece.bars][:, None],
        share=question.case.total,
    )
    live = looked.live[rows.start : rows.stop] * scale * question.case.total
    columns = zip(
        piece.bars.tolist(), rows, one.factor[piece.bars].tolist(),
        one.impact[piece.bars].tolist(), live.tolist(), looked.dead[piece.bars].tolist(),
        events.tolist(), strict=True,
    )
    pull = answer.pulls[piece.candidate]
    for facts, (bar, row, factor, impact, force, dead, at) in zip(
        _facts(one, piece, looked.factored, scale), columns, strict=True
    ):
        spot = _Spot(looked.where, row, at, pull, factor, impact, force, dead)
        yield bar, _one(question, one, bar, facts, spot)


def _facts(
    one: Candidate, piece: _Piece, factored: Floats, scale: float
) -> Iterator[Facts]:
    """The facts of each bar of a piece; `factored` (n,) dead-load forces."""
    sweep, bars = one.swept.sweep, piece.bars
    p, q = sweep.edges[piece.edges].T
    columns = zip(
        sweep.multiple[p].tolist(), sweep.multiple[q].tolist(), sweep.forces[p, bars].tolist(),
        sweep.forces[q, bars].tolist(), factored[bars].tolist(), one.loaded_ft[bars].tolist(),
        strict=True,
    )
    for before, after, force_before, force_after, dead, loaded_ft in columns:
        yield Facts(
            multiple_before=before, multiple_after=after, force_before=force_before,
            force_after=force_after, scale=scale, factored_dead=dead, loaded_ft=loaded_ft,
        )


@dataclass(frozen=True, slots=True)
class _Spot:
    """One row of what was looked up: place, factors of the events there, and figures of the bar."""

    where: Spots
    row: int
    event_factors: list[float]
    pull: str
    factor: float
    impact: float
    live: float
    dead: float


def _one(
    question: Question, one: Candidate, bar: int, facts: Facts, spot: _Spot
) -> PartRating:
    factor, shock = spot.factor, spot.impact
    begun = factor <= 0.0 and one.sense != 0
    limit = one.strengths.of(one.sense)[1][bar] if one.sense else None
    swept, live = one.swept, spot.live
    plain = None
    if limit is not None and live * one.sense > 0.0:
        plain = plain_rating_factor(
            limit=limit.force, factored_dead=facts.factored_dead, live=live,
            live_factor=question.live_factor, impact=shock,
        )
    return PartRating(
        vehicle=question.vehicle.name, method=question.method, level=question.level,
        factor=factor, plain_factor=plain, tons=tons_of(question.vehicle, factor),
        check="dead load" if begun else swept.prefix + (limit.check if limit else LOST),
        capacity=limit.capacity if limit else None, unit=limit.unit if limit else "",
        limit_kip=limit.force if limit else None, dead=spot.dead, live=live,
        dead_factors=swept.dead, live_factor=question.live_factor, impact=shock,
        share=question.case.total, lanes=question.case.lanes,
        at=None if begun or not swept.placed else place_at(swept, spot.where, spot.row),
        events=() if begun else events_at(
            swept, (spot.where, spot.row), spot.event_factors, factor
        ),
        pull=spot.pull, limit=limit, facts=facts,
    )


def tons_of(vehicle: Vehicle, factor: float) -> float | None:
    """Factor times weight [tons]; None for a load that has no weight of its own."""
    return None if vehicle.combine in WEIGHTLESS else rated_tons(factor, vehicle.weight_tons)


def place_at(swept: Swept, where: Spots, row: int) -> Place:
    """The place of one of the spots of a sweep."""
    return Place(
        front_axle_ft=where.front_ft[row],
        direction=swept.sweep.task.places.direction,
        spacing_ft=tuple(where.spacing_ft[row]),
    )


def events_at(
    swept: Swept, spot: tuple[Spots, int], factors: Sequence[float], factor: float
) -> tuple[Event, ...]:
    """Bars that go slack or taut on the way to the factor, at the place where it arises.

    `factors` are those at the events of the path there.
    """
    where, row = spot
    if not factors or factors[0] > factor:
        return ()
    found: list[Event] = []
    path = where.path_sets[row]
    for k, (at, multiple) in enumerate(zip(factors, where.multiples[row], strict=True)):
        if at > factor or k + 1 >= len(path) or path[k + 1] < 0:
            break
        if multiple >= UNSEEN:
            found += [
                Event(factor=at, bar=bar, goes=goes)
                for bar, goes in changed(swept.loaded.sets, path[k], path[k + 1])
            ]
    return tuple(found)


def changed(sets: SlackSets, before: int, after: int) -> list[tuple[str, str]]:
    """Bars that differ between two slack sets, and what they do: go `slack` or `taut`."""
    key = (before, after)
    if key not in sets.changes:
        first, second = sets.sets[before].mask, sets.sets[after].mask
        model = sets.model
        sets.changes[key] = [
            (model.bars[model.element_bar[model.unilateral[i]]].name,
             "slack" if second >> i & 1 else "taut")
            for i in range((first ^ second).bit_length())
            if (first ^ second) >> i & 1
        ]
    return sets.changes[key]


def _without(question: Question, dead: float) -> PartRating:
    vehicle = question.vehicle.name
    return PartRating(
        vehicle=vehicle, method=question.method, level=question.level, factor=None,
        reason=f"{vehicle} does nothing to this part that its strength would limit",
        dead=dead, live_factor=question.live_factor, share=question.case.total,
        lanes=question.case.lanes,
    )
