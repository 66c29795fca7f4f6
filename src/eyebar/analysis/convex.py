"""First passages of a check that takes the forces of several bars at one place together.

Along an edge of a sweep all bar forces are straight lines. A check that is a convex function of
them (a resultant moment along a pin, a sum of ratios) has no greatest value inside an edge: it
passes its limit on an edge only where one end is under the limit and the other over it, and there
once. So the places at which forces are exact are exact for it too.

A convex check lies under its chord, so where the chord passes the limit is a bound; only edges
whose bound comes before the first passage found so far are solved.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from eyebar.analysis.model import Floats
from eyebar.analysis.passage import Passages
from eyebar.analysis.paths import Ints
from eyebar.analysis.sweep import Bundle

MOST_TRIALS = 60
"""Trials along an edge; about ten bring them down to rounding, halving alone would take 52."""
CLOSE = 1e-15
"""Trials end where the check is this part of its change along the edge from its limit."""

Check = Callable[[Floats], Floats]
"""From forces (..., b) of the bars that matter to the values (...) of a convex check."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Together:
    """A convex check on all points of a bundle: forces (q, b) of its bars, its values (q,)."""

    bundle: Bundle
    check: Check
    forces: Floats
    values: Floats


def together(bundle: Bundle, bars: Ints, check: Check) -> Together:
    """A check looked at on every point, for the bars (b,) whose forces it takes."""
    forces = bundle.forces[:, bars]
    return Together(bundle=bundle, check=check, forces=forces, values=check(forces))


def convex_passages(one: Together, limit: float) -> Passages:
    """First passage of the check over its limit on each sweep of the bundle (t,).

    One that is passed under dead load alone has multiple 0.
    """
    bundle = one.bundle
    count = len(bundle.edge_at) - 1
    best, where, along = np.full(count, np.inf), np.full(count, -1, dtype=np.intp), np.zeros(count)
    if one.values[0] >= limit:
        return Passages(multiple=np.zeros(count), edge=np.zeros_like(where), part=along)
    over: NDArray[np.bool_] = one.values >= limit
    edge = np.flatnonzero(over[bundle.edges[:, 0]] ^ over[bundle.edges[:, 1]])
    ends = bundle.edges[edge]
    sweep = np.searchsorted(bundle.edge_at, edge, "right") - 1
    bound = _bounds(one, ends, over[ends[:, 0]], limit)
    multiple = np.full(len(edge), np.inf)
    part = np.zeros(len(edge))
    rows = _first_of(sweep, bound)
    for _ in range(2):
        part[rows] = _solved(one, ends[rows], over[ends[rows, 0]], limit)
        begin, end = bundle.multiple[ends[rows, 0]], bundle.multiple[ends[rows, 1]]
        multiple[rows] = begin + part[rows] * (end - begin)
        np.minimum.at(best, sweep[rows], multiple[rows])
        rows = np.flatnonzero((bound <= best[sweep]) & np.isinf(multiple))
    solved = np.flatnonzero(np.isfinite(multiple))
    kept = solved[_first_of(sweep[solved], multiple[solved])]
    where[sweep[kept]] = edge[kept] - bundle.edge_at[sweep[kept]]
    along[sweep[kept]] = part[kept]
    return Passages(multiple=best, edge=where, part=along)


def _bounds(one: Together, ends: Ints, over_first: NDArray[np.bool_], limit: float) -> Floats:
    """(h,) a multiple under that at which each edge's check passes its limit."""
    first, second = one.values[ends].T
    begin, end = one.bundle.multiple[ends].T
    chord = begin + (limit - first) / (second - first) * (end - begin)
    bound: Floats = np.minimum(chord, np.where(over_first, begin, end))
    return bound


def _first_of(group: Ints, value: Floats) -> Ints:
    """The row with the least value of each group."""
    order = np.lexsort((value, group))
    rows: Ints = order[np.flatnonzero(np.diff(group[order], prepend=-1))]
    return rows


def _solved(
    one: Together, ends: Ints, over_first: NDArray[np.bool_], limit: float
) -> Floats:
    """(h,) how far along each edge the check passes its limit.

    By false position, the weight of an end that stays halved (the Illinois rule), and by halving
    every eighth time, so that the stretch always closes.
    """
    first, second = one.forces[ends[:, 0]], one.forces[ends[:, 1]]
    change = second - first
    low, high = np.zeros(len(ends)), np.ones(len(ends))
    at_low, at_high = (one.values[ends[:, i]] - limit for i in (0, 1))
    near = CLOSE * (2.0 * limit + np.abs(at_low) + np.abs(at_high))
    part = np.zeros(len(ends))
    stayed = np.zeros(len(ends), dtype=np.intp)
    found = np.zeros(len(ends), dtype=bool)
    for trial in range(MOST_TRIALS):
        tried = low + at_low / (at_low - at_high) * (high - low)
        if trial % 8 == 7:
            tried = 0.5 * (low + high)
        part = np.where(found, part, tried)
        value = one.check(first + part[:, None] * change) - limit
        found |= (np.abs(value) <= near) | (high - low <= near)
        if found.all():
            break
        beyond = (value >= 0.0) ^ over_first
        at_low = np.where(beyond, np.where(stayed > 0, 0.5 * at_low, at_low), value)
        at_high = np.where(beyond, value, np.where(stayed < 0, 0.5 * at_high, at_high))
        high, low = np.where(beyond, part, high), np.where(beyond, low, part)
        stayed = np.where(beyond, 1, -1)
    return part


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """The forces (q, b) of some bars on a bundle, taken apart along the `directions` (b, b) in
    which they mostly vary: `sizes` (q, b) of the parts."""

    bundle: Bundle
    forces: Floats
    directions: Floats
    sizes: Floats


def spread(bundle: Bundle, bars: Ints) -> Spread:
    """The forces of some bars (b,), taken apart."""
    forces = bundle.forces[:, bars]
    _, directions = np.linalg.eigh(forces.T @ forces)
    sizes = forces @ directions
    np.abs(sizes, out=sizes)
    return Spread(bundle=bundle, forces=forces, directions=directions, sizes=sizes)


def bounded_passages(one: Spread, check: Check, reach: Check, limit: float) -> Passages:
    """The same, the check looked at only on edges that may hold a first passage.

    `reach` gives sizes of forces (..., b): while the sizes of parts that make up a force are
    together not over the limit, the check of that force is not over it. Along the directions in
    which the forces mostly vary little is lost by the sum. The sum is convex too, so its chord
    bounds from below where an edge's check passes; one edge of each sweep
    is solved, and those whose bound lies beyond it are passed over.
    """
    bundle, forces = one.bundle, one.forces
    bounds = _bounds_by(bundle, one.sizes @ reach(one.directions.T), limit)
    known = _known(bundle, forces, check, bounds, limit)
    edges = np.flatnonzero(bounds <= known[bundle.edge_sweep])
    mark = np.zeros(len(forces), dtype=bool)
    mark[0] = True
    mark[bundle.begin[edges]] = True
    mark[bundle.end[edges]] = True
    number = np.cumsum(mark) - 1
    edge_sweep = bundle.edge_sweep[edges]
    part = Bundle(
        multiple=bundle.multiple[mark], forces=forces[mark], edges=number[bundle.edges[edges]],
        point_at=bundle.point_at, begin=number[bundle.begin[edges]],
        end=number[bundle.end[edges]], edge_sweep=edge_sweep,
        edge_at=np.searchsorted(edge_sweep, np.arange(len(bundle.edge_at))),
    )
    found = convex_passages(together(part, np.arange(forces.shape[1]), check), limit)
    rows = np.flatnonzero(found.edge >= 0)
    rows = rows[found.multiple[rows] > 0.0] if len(rows) else rows
    where = np.full_like(found.edge, -1)
    where[rows] = edges[found.edge[rows] + part.edge_at[rows]] - bundle.edge_at[rows]
    begun = found.multiple <= 0.0
    where[begun] = 0
    return Passages(multiple=found.multiple, edge=where, part=found.part)


def _bounds_by(bundle: Bundle, sums: Floats, limit: float) -> Floats:
    """(h,) a multiple under that at which each edge's check passes; infinity where it does not."""
    begin, end = sums[bundle.begin], sums[bundle.end]
    first, second = bundle.multiple[bundle.begin], bundle.multiple[bundle.end]
    least = np.minimum(first, second)
    with np.errstate(divide="ignore", invalid="ignore"):
        chord = first + (limit - begin) / (end - begin) * (second - first)
    low, high = begin < limit, end < limit
    bound = np.where(low & ~high, np.minimum(chord, second), least)
    bound = np.where(high & ~low, np.minimum(chord, first), bound)
    return np.where(low & high, np.inf, bound)


def _known(
    bundle: Bundle, forces: Floats, check: Check, bounds: Floats, limit: float
) -> Floats:
    """(t,) a multiple at which the check has been passed on each sweep, by one edge of each."""
    known = np.full(len(bundle.edge_at) - 1, np.inf)
    far = bundle.multiple[bundle.end] >= bundle.multiple.max() * (1.0 - 1e-9)
    rows = np.flatnonzero(far & np.isfinite(bounds))
    if not len(rows):
        return known
    rows = rows[_first_of(bundle.edge_sweep[rows], bounds[rows])]
    begin, end = bundle.begin[rows], bundle.end[rows]
    values = check(forces[np.stack([begin, end], axis=1)])
    crossed = (values[:, 0] < limit) & (values[:, 1] >= limit)
    rows, begin, end, values = rows[crossed], begin[crossed], end[crossed], values[crossed]
    # The chord of a convex check lies over it: nothing is passed before it does, so the passage is
    # sought on the edge itself.
    ends = np.stack([np.arange(len(rows)), np.arange(len(rows)) + len(rows)], axis=1)
    one = Together(
        bundle=bundle, check=check, forces=np.concatenate([forces[begin], forces[end]]),
        values=values.T.ravel(),
    )
    part = _solved(one, ends, np.zeros(len(rows), dtype=bool), limit)
    first = bundle.multiple[begin]
    known[bundle.edge_sweep[rows]] = (
        first + part * (bundle.multiple[end] - first)
    ) * (1.0 + 1e-9)
    return known
