"""First passages of a check that takes the forces of several bars at one place together.

Along an edge of a sweep all bar forces are straight lines. A check that is a convex function of
them (a resultant moment along a pin, a sum of ratios) has no greatest value inside an edge: it
passes its limit on an edge only where one end is under the limit and the other over it, and there
once. So the places at which forces are exact are exact for it too.

Every point lies on a path, along which the load grows: where the end of an edge with the lesser
multiple is over the limit, the limit was passed before, on that path. So only passages upwards are
looked for.

Most edges are passed over by bounds. The passage on one edge of a sweep bounds the first one of the
sweep; other edges matter only as far as that multiple, and only if the check has passed there. A
bound of the check that costs less, of straight lines, is tried before the check itself.
"""

from dataclasses import dataclass
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from eyebar.analysis.model import Floats
from eyebar.analysis.passage import Passages
from eyebar.analysis.paths import Ints
from eyebar.analysis.sweep import Bundle

SHORTEST = 1e-290
"""Put for the length of an edge on which the multiple stays what it is."""


ROUGH = 1e-3
"""Bounds are taken greater by this part. Single precision loses a ten-millionth of the forces: this
covers a check in which a force across the usual ones does some thousand times what these do."""
SKIPPED = 8
"""One in so many edges tells in which directions forces mostly vary."""


Rough = NDArray[np.float32]


class Check(Protocol):
    """A convex check of the forces (..., b) of some bars, 1 at its limit."""

    def __call__(self, forces: Floats) -> Floats:
        """(...) its values under forces (..., b)."""

    def reach(self, forces: Floats) -> Floats:
        """(...) sizes of forces (..., b): while the sizes of parts that make up a force are
        together not over 1, the check of that force is not."""

    def passed(self, first: Floats, change: Floats, part: Floats) -> Floats:
        """(h,) how far from forces `first` (h, b), that change by (h, b), it comes to 1, being
        under it at the first and not at `part` (h,) of the way."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Edges:
    """The edges of a bundle by their lesser multiples, and so directed.

    `forces` (n, q) of its bars, `rough` (n, q) in single precision, for bounds; `number` (h,) in
    the bundle, `rank` (h,) the place here of each number; `turned` (h,) which lead the other way in
    the bundle; `low`, `high` (h,) points; `begin`, `inverse` (h,) the lesser multiple and one over
    the difference; `sweep` (h,). `last` (f,) those that lead to the greatest multiple, sweep by
    sweep, `last_at` where these begin.
    """

    bundle: Bundle
    forces: Floats
    rough: Rough
    number: Ints
    rank: Ints
    turned: NDArray[np.bool_]
    low: Ints
    high: Ints
    begin: Floats
    inverse: Floats
    sweep: Ints
    last: Ints
    last_at: Ints

    def part(self, rows: Ints | slice, multiple: Floats) -> Floats:
        """(h,) how far along some edges the multiples (t,) of their sweeps lie, at most 1; -1 where
        they lie before."""
        far: Floats = (multiple[self.sweep[rows]] - self.begin[rows]) * self.inverse[rows]
        return np.clip(far, -1.0, 1.0, out=far)


def edges_of(bundle: Bundle) -> Edges:
    """The edges of a bundle, put in order."""
    first, second = bundle.multiple[bundle.begin], bundle.multiple[bundle.end]
    begin = np.minimum(first, second)
    number = np.argsort(begin, kind="stable")
    turned = (first > second)[number]
    p, q = bundle.begin[number], bundle.end[number]
    length = np.abs(second - first)[number]
    sweep = bundle.edge_sweep[number]
    ends = np.maximum(first, second)[number] >= bundle.multiple.max() * (1.0 - 1e-9)
    last = np.flatnonzero(ends & (length > 0.0))
    last = last[np.argsort(sweep[last], kind="stable")]
    rank = np.empty_like(number)
    rank[number] = np.arange(len(number))
    forces = np.ascontiguousarray(bundle.forces.T)
    return Edges(
        bundle=bundle, forces=forces, rough=forces.astype(np.float32), number=number, rank=rank,
        turned=turned, low=np.where(turned, q, p),
        high=np.where(turned, p, q), begin=begin[number], sweep=sweep,
        inverse=1.0 / np.maximum(length, SHORTEST), last=last,
        last_at=np.flatnonzero(np.diff(sweep[last], prepend=-1)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """The forces of some `bars` (b,) on a bundle, taken apart along the `directions` (b, b) in
    which they mostly vary under lesser multiples: `sizes` (b, q) of the parts, in single precision;
    `farthest` edges, on which one of them grows most."""

    edges: Edges
    bars: Ints
    directions: Floats
    sizes: Rough
    farthest: Ints

    def forces(self, points: Ints) -> Floats:
        """(b, h) the forces at some points (h,)."""
        some: Floats = self.edges.forces[self.bars[:, None], points]
        return some


def spread(edges: Edges, bars: Ints) -> Spread:
    """The forces of some bars (b,), taken apart."""
    forces = edges.rough[bars]
    some = forces.take(edges.low[: len(edges.low) // 2 : SKIPPED], axis=1)
    _, axes = np.linalg.eigh(some @ some.T)
    directions = axes.T
    sizes: Rough = directions @ forces
    last = edges.last
    growth = sizes.take(edges.high[last], axis=1) - sizes.take(edges.low[last], axis=1)
    growth = growth * edges.inverse[last]
    np.abs(sizes, out=sizes)
    farthest = np.zeros(0, dtype=np.intp)
    if len(last):
        count = np.diff(edges.last_at, append=len(last))
        rows = [
            np.nonzero(growth == np.repeat(most.reduceat(growth, edges.last_at, axis=1), count, 1))
            for most in (np.maximum, np.minimum)
        ]
        farthest = last[np.unique(np.concatenate([row for _, row in rows]))]
    return Spread(
        edges=edges, bars=bars, directions=directions.astype(float), sizes=sizes, farthest=farthest
    )


@dataclass(slots=True)
class _First:
    """The first passages (t,) found so far: multiple, edge (-1: none) and part of the way."""

    multiple: Floats
    edge: Ints
    part: Floats


def first_passages(one: Spread, check: Check, before: Passages | None = None) -> Passages:
    """First passage of a check over 1 on each sweep of the bundle (t,).

    One that is passed under dead load alone has multiple 0. `before`: where it is known, where
    another check of the same bars is passed: this one is likely to be passed nearby.
    """
    edges, bundle = one.edges, one.edges.bundle
    count = len(bundle.edge_at) - 1
    none = np.zeros(count, dtype=np.intp)
    if check(one.forces(np.zeros(1, dtype=np.intp)).T)[0] >= 1.0:
        return Passages(multiple=np.zeros(count), edge=none, part=np.zeros(count))
    sums = check.reach(one.directions).astype(np.float32) @ one.sizes
    sums *= 1.0 + ROUGH
    found = _First(np.full(count, np.inf), none - 1, np.zeros(count))
    tried = one.farthest
    if before is not None:
        tried = edges.rank[(before.edge + bundle.edge_at[:-1])[before.edge >= 0]]
    _pass(one, check, np.concatenate([tried, _by_sums(edges, sums)]), found, rounds=1)
    _pass(one, check, _candidates(edges, sums, found.multiple), found, rounds=2)
    known = found.edge >= 0
    part = np.where(edges.turned[found.edge], 1.0 - found.part, found.part)
    return Passages(
        multiple=found.multiple, part=np.where(known, part, 0.0),
        edge=np.where(known, edges.number[found.edge] - bundle.edge_at[:-1], -1),
    )


def _by_sums(edges: Edges, sums: Rough) -> Ints:
    """Of each sweep that of the last edges on which a bound (q,) of the check passes first."""
    last = edges.last
    if not len(last):
        return last
    begin, end = sums[edges.low[last]], sums[edges.high[last]]
    with np.errstate(divide="ignore", invalid="ignore"):
        part = np.where(begin < 1.0, (1.0 - begin) / (end - begin), 0.0)
    part[end < 1.0] = np.inf
    multiple = edges.begin[last] + part / edges.inverse[last]
    least = np.minimum.reduceat(multiple, edges.last_at)
    count = np.diff(edges.last_at, append=len(last))
    first: Ints = last[(multiple == np.repeat(least, count)) & np.isfinite(multiple)]
    return first


def _candidates(edges: Edges, sums: Rough, multiple: Floats) -> Ints:
    """The edges on which a bound (q,) of the check passes before multiples (t,) of the sweeps."""
    near = slice(0, int(np.searchsorted(edges.begin, multiple.max(), "right")))
    part = edges.part(near, multiple)
    begin = sums[edges.low[near]]
    reached = sums[edges.high[near]]
    reached -= begin
    reached *= part
    reached += begin
    return np.flatnonzero((reached >= 1.0) & (part >= 0.0))


def _pass(one: Spread, check: Check, rows: Ints, found: _First, *, rounds: int) -> None:
    """Put in what is passed on some edges before what was found.

    A chord lies over the check, so that where it comes to 1 is before the passage: the edge of each
    sweep on which it does so first is solved, and in a second round those that may still be before.
    """
    edges = one.edges
    part = edges.part(rows, found.multiple)
    first, change = one.forces(edges.low[rows]), one.forces(edges.high[rows])
    change -= first
    reached = check((first + part * change).T)
    over = np.flatnonzero((reached >= 1.0) & (part >= 0.0))
    begun = check(first[:, over].T)
    over, begun = over[begun < 1.0], begun[begun < 1.0]
    rows, part, reached = rows[over], part[over], reached[over]
    first, change = first[:, over].T, change[:, over].T
    chord = edges.begin[rows] + part * (1.0 - begun) / (reached - begun) / edges.inverse[rows]
    sweep = edges.sweep[rows]
    chosen, solved = _first_of(sweep, chord), np.zeros(len(rows), dtype=bool)
    for _ in range(rounds if len(rows) else 0):
        where = check.passed(first[chosen], change[chosen], part[chosen])
        _put(found, sweep[chosen], rows[chosen], where, edges)
        solved[chosen] = True
        chosen = np.flatnonzero((chord <= found.multiple[sweep]) & ~solved)
        if not len(chosen):
            break


def _put(found: _First, sweep: Ints, rows: Ints, part: Floats, edges: Edges) -> None:
    multiple = edges.begin[rows] + part / edges.inverse[rows]
    np.minimum.at(found.multiple, sweep, multiple)
    best = np.flatnonzero(multiple == found.multiple[sweep])[::-1]
    found.edge[sweep[best]] = rows[best]
    found.part[sweep[best]] = part[best]


def _first_of(group: Ints, value: Floats) -> Ints:
    """The row with the least value of each group."""
    order = np.lexsort((value, group))
    rows: Ints = order[np.flatnonzero(np.diff(group[order], prepend=-1))]
    return rows
