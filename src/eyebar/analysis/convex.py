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
CLOSE = 1e-13
"""Trials end where the check is this part of its limit from it."""

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
    every fourth time, so that the stretch always closes.
    """
    first, second = one.forces[ends[:, 0]], one.forces[ends[:, 1]]
    change = second - first
    low, high = np.zeros(len(ends)), np.ones(len(ends))
    at_low, at_high = (one.values[ends[:, i]] - limit for i in (0, 1))
    part = np.zeros(len(ends))
    stayed = np.zeros(len(ends), dtype=np.intp)
    for trial in range(MOST_TRIALS):
        part = low + at_low / (at_low - at_high) * (high - low)
        if trial % 4 == 3:
            part = 0.5 * (low + high)
        value = one.check(first + part[:, None] * change) - limit
        if (np.abs(value) <= CLOSE * limit).all():
            break
        beyond = (value >= 0.0) ^ over_first
        at_low = np.where(beyond, np.where(stayed > 0, 0.5 * at_low, at_low), value)
        at_high = np.where(beyond, value, np.where(stayed < 0, 0.5 * at_high, at_high))
        high, low = np.where(beyond, part, high), np.where(beyond, low, part)
        stayed = np.where(beyond, 1, -1)
    return part
