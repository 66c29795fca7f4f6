"""From the least candidates to ratings with all their facts, many bars at once."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from eyebar.analysis.loaded import LoadedTruss, dead_forces
from eyebar.analysis.model import Floats
from eyebar.analysis.passage import Spots, ended, spots
from eyebar.analysis.paths import SlackSets, solved
from eyebar.loads import LaneCase
from eyebar.rating.families import Swept
from eyebar.rating.formulas import plain_rating_factor, rated_tons, rating_factor
from eyebar.rating.lookup import Candidate
from eyebar.rating.rated import Event, Facts, PartRating, Place
from eyebar.terms import Combine, Level, Method
from eyebar.vehicles import Vehicle

UNSEEN = 1e-7
"""Events under this multiple of the axles come from the splitting of ties, not from the load."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """What was asked: a vehicle by a method at a level, with what multiplies its axles."""

    vehicle: Vehicle
    method: Method
    level: Level
    live_factor: float
    case: LaneCase
    pulls: Sequence[str]
    """For each candidate: `none`, or `measured` where measured pulls were in the bars."""


def entries(
    question: Question, candidates: Sequence[Candidate], scales: Sequence[float],
    chosen: np.ndarray, dead: Floats,
) -> list[PartRating]:
    """One rating for each bar (n,). `dead` (n,) unfactored dead-load forces [kip]."""
    found: list[PartRating | None] = [None] * len(chosen)
    for number in np.unique(chosen):
        bars = np.flatnonzero(chosen == number)
        one, scale = candidates[number], scales[number]
        pull = question.pulls[number]
        for bar, rating in zip(
            bars, _group(question, one, scale, bars, (pull, dead)), strict=True
        ):
            found[bar] = rating
    return [rating for rating in found if rating is not None]


def _group(
    question: Question, one: Candidate, scale: float, bars: np.ndarray,
    about: tuple[str, Floats],
) -> list[PartRating]:
    """Ratings of the bars for which one candidate governs."""
    pull, dead = about
    factors = one.factor[bars]
    if not np.isfinite(factors).any():
        return [_without(question, dead[bar]) for bar in bars]
    swept = one.swept
    edges, parts = _edges(one, bars)
    where = spots(swept.sweep, edges, parts)
    live = _own(swept.loaded, swept.dead, where.growing, bars) * scale * question.case.total
    factored = dead_forces(swept.loaded, *swept.dead)
    events = rating_factor(
        multiple=where.event_multiple, scale=scale, live_factor=question.live_factor,
        impact=one.impact[bars][:, None], share=question.case.total,
    )
    ratings = []
    for row, bar in enumerate(bars):
        if not np.isfinite(factors[row]):
            ratings.append(_without(question, dead[bar]))
            continue
        facts = _facts(one, int(edges[row]), int(bar), (scale, float(factored[bar])))
        spot = _Spot(
            where, row, events[row].tolist(), pull, float(live[row]), float(dead[bar]))
        ratings.append(_one(question, one, int(bar), facts, spot))
    return ratings


def _edges(one: Candidate, bars: np.ndarray) -> tuple[np.ndarray, Floats]:
    """Edge and part of each bar's passage; for the end of equilibrium its last stretch."""
    if one.found is not None:
        return np.maximum(one.found.edge[bars], 0), one.found.part[bars]
    sweep = one.swept.sweep
    _, ray, _ = ended(sweep)
    last = sweep.first[ray] + sweep.count[ray]
    edge = int(np.flatnonzero((sweep.edges[:, 1] == last) & (sweep.edges[:, 0] == last - 1))[0])
    return np.full(len(bars), edge), np.ones(len(bars))


def _own(
    loaded: LoadedTruss, pair: tuple[float, float], growing: Floats, bars: np.ndarray
) -> Floats:
    """(b,) each bar's own force of its own place, by the bars that work under dead load."""
    elements, _ = solved(loaded.model, loaded.sets.sets[loaded.start(*pair)], growing)
    forces = loaded.model.bar_forces(elements)
    own: Floats = forces[np.arange(len(bars)), bars]
    return own


def _facts(one: Candidate, edge: int, bar: int, about: tuple[float, float]) -> Facts:
    sweep = one.swept.sweep
    p, q = sweep.edges[edge]
    return Facts(
        multiple_before=float(sweep.multiple[p]), multiple_after=float(sweep.multiple[q]),
        force_before=float(sweep.forces[p, bar]), force_after=float(sweep.forces[q, bar]),
        scale=about[0], factored_dead=about[1], loaded_ft=float(one.loaded_ft[bar]),
    )


@dataclass(frozen=True, slots=True)
class _Spot:
    where: Spots
    row: int
    event_factors: list[float]
    pull: str
    live: float
    dead: float


def _one(
    question: Question, one: Candidate, bar: int, facts: Facts, spot: _Spot
) -> PartRating:
    live, dead = spot.live, spot.dead
    factor, shock = float(one.factor[bar]), float(one.impact[bar])
    begun = factor <= 0.0 and one.sense != 0
    limit = one.strengths.of(one.sense)[1][bar] if one.sense else None
    swept = one.swept
    if one.sense == 0:
        check = "no equilibrium"
    elif begun:
        check = "dead load"
    else:
        check = limit.check if limit else ""
    plain = None
    if limit is not None and live * one.sense > 0.0:
        plain = plain_rating_factor(
            limit=limit.force, factored_dead=facts.factored_dead, live=live,
            live_factor=question.live_factor, impact=shock,
        )
    return PartRating(
        vehicle=question.vehicle.name, method=question.method, level=question.level,
        factor=factor, plain_factor=plain, tons=tons_of(question.vehicle, factor),
        check=(swept.prefix + check) if check != "dead load" else check,
        capacity=limit.capacity if limit else None, unit=limit.unit if limit else "",
        limit_kip=limit.force if limit else None, dead=dead, live=live,
        dead_factors=swept.dead, live_factor=question.live_factor, impact=shock,
        share=question.case.total, lanes=question.case.lanes,
        at=None if begun or not swept.placed else _place(swept, spot),
        events=() if begun else _events(swept, spot, factor),
        pull=spot.pull, limit=limit, facts=facts,
    )


def tons_of(vehicle: Vehicle, factor: float) -> float | None:
    """Factor times weight [tons]; None for the design load, which weighs nothing real."""
    return None if vehicle.combine is Combine.SUM else rated_tons(factor, vehicle.weight_tons)


def _place(swept: Swept, spot: _Spot) -> Place:
    return Place(
        front_axle_ft=float(spot.where.front_ft[spot.row]),
        direction=swept.sweep.task.places.direction,
        spacing_ft=tuple(float(s) for s in spot.where.spacing_ft[spot.row]),
    )


def _events(swept: Swept, spot: _Spot, factor: float) -> tuple[Event, ...]:
    """Bars that go slack or taut on the way to the factor, at the place where it arises."""
    where, row = spot.where, spot.row
    found: list[Event] = []
    path = where.path_sets[row].tolist()
    for k, (at, multiple) in enumerate(
        zip(spot.event_factors, where.event_multiple[row].tolist(), strict=True)
    ):
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
        dead=float(dead), live_factor=question.live_factor, share=question.case.total,
        lanes=question.case.lanes,
    )
