"""Reading a sweep: the least multiple at which a force reaches a strength; extremes at a multiple.

Both lie on the sweep's edges, along which forces, multiples and multiple-times-place are straight.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from eyebar.analysis.model import Floats
from eyebar.analysis.paths import END, Ints
from eyebar.analysis.sweep import Bundle, Sweep


@dataclass(frozen=True, slots=True, kw_only=True)
class Passages:
    """For n bars: `multiple` (n,) at which each limit is first reached, infinity where it never is;
    `edge` (n,) the edge, -1 where there is none; `part` (n,) how far along it, from 0 to 1."""

    multiple: Floats
    edge: Ints
    part: Floats


def passages(
    bundle: Bundle, limits: Floats, sense: int, bars: Ints | None = None
) -> list[Passages]:
    """First passages of sense * force over `limits` (n,) [kip, infinity where there is none], sweep
    by sweep.

    A limit already passed under dead load alone has multiple 0. Only `bars` (b,) are looked at
    where they are given; the others have none.
    """
    chosen = np.flatnonzero(np.isfinite(limits)) if bars is None else bars
    whole = len(chosen) == bundle.forces.shape[1]
    forces = bundle.forces if whole else bundle.forces[:, chosen]
    bound, width = sense * limits[chosen], len(chosen)
    over: NDArray[np.bool_] = forces >= bound if sense > 0 else forces <= bound
    edge, bar = _crossed(over, bundle)
    p, q = bundle.begin[edge], bundle.end[edge]
    flat = np.ascontiguousarray(forces).ravel()
    force_p, force_q = flat[p * width + bar], flat[q * width + bar]
    begin = bundle.multiple[p]
    part = (bound[bar] - force_p) / (force_q - force_p)
    multiple = begin + part * (bundle.multiple[q] - begin)
    count, n = len(bundle.edge_at) - 1, len(limits)
    group = bundle.edge_sweep[edge] * n + chosen[bar]
    best, along = np.full(count * n, np.inf), np.zeros(count * n)
    where = np.full(count * n, -1, dtype=np.intp)
    np.minimum.at(best, group, multiple)
    # Where two edges are equal the first one stays.
    least = np.flatnonzero(multiple == best[group])[::-1]
    along[group[least]], where[group[least]] = part[least], edge[least]
    shape = (count, n)
    best, along, where = best.reshape(shape), along.reshape(shape), where.reshape(shape)
    where = np.where(where < 0, -1, where - bundle.edge_at[:-1, None])
    begun = chosen[over[0]] if len(over) else chosen[:0]
    best[:, begun], where[:, begun], along[:, begun] = 0.0, 0, 0.0
    return [Passages(multiple=best[i], edge=where[i], part=along[i]) for i in range(count)]


def _crossed(over: NDArray[np.bool_], bundle: Bundle) -> tuple[Ints, Ints]:
    """Edges and columns between whose ends a column of `over` (q, b) changes.

    Columns are packed into words: most edges change none, and are passed over whole.
    """
    wide = -(-over.shape[1] // 64) * 64
    room = np.zeros((len(over), wide), dtype=bool)
    room[:, : over.shape[1]] = over
    words = np.packbits(room, axis=1).view(np.uint64)
    change = words[bundle.begin] ^ words[bundle.end]
    rows = np.flatnonzero(change.any(axis=1))
    bits = np.unpackbits(change[rows].view(np.uint8), axis=1, count=over.shape[1])
    row, bar = np.nonzero(bits)
    return rows[row], bar


def joined(first: Passages, second: Passages, bars: Ints) -> Passages:
    """The passages of `second` for some bars, of `first` for the rest."""
    multiple, edge, part = first.multiple.copy(), first.edge.copy(), first.part.copy()
    multiple[bars], edge[bars], part[bars] = (
        second.multiple[bars], second.edge[bars], second.part[bars])
    return Passages(multiple=multiple, edge=edge, part=part)


def extremes(sweep: Sweep, multiple: float) -> tuple[Floats, Floats, Ints, Ints, Floats]:
    """Least and greatest forces (n,) at a multiple, the edge of each (n,) and part along it (h,).

    Only meaningful where no path ends before the multiple (`ended`).
    """
    crossed, part, forces = cut(sweep, multiple)
    low, high = forces.argmin(axis=0), forces.argmax(axis=0)
    bars = np.arange(forces.shape[1])
    parts = np.zeros(len(sweep.edges))
    parts[crossed] = part
    return forces[low, bars], forces[high, bars], crossed[low], crossed[high], parts


def cut(sweep: Sweep, multiple: float) -> tuple[Ints, Floats, Floats]:
    """The edges (c,) that cross a multiple, how far along each (c,), and the forces there (c, n).

    Only meaningful where no path ends before the multiple (`ended`).
    """
    first, second = sweep.edges.T
    m_first, m_second = sweep.multiple[first], sweep.multiple[second]
    crossed = np.flatnonzero(
        (np.minimum(m_first, m_second) <= multiple) & (multiple <= np.maximum(m_first, m_second))
    )
    a, b = first[crossed], second[crossed]
    span = sweep.multiple[b] - sweep.multiple[a]
    part = np.where(span != 0, (multiple - sweep.multiple[a]) / np.where(span != 0, span, 1.0), 0.0)
    forces: Floats = sweep.forces[a] + part[:, None] * (sweep.forces[b] - sweep.forces[a])
    return crossed, part, forces


@dataclass(frozen=True, slots=True, kw_only=True)
class Spots:
    """Points of edges (b,): where the train stands, what it does, which bars worked on the way.

    `front_ft` (b,), `spacing_ft` (b, a-1), `growing` (b, e); `path_sets`, `event_multiple` (b, k):
    the path at that place, padded as in Paths. What is read row by row is in lists.
    """

    front_ft: list[float]
    spacing_ft: list[list[float]]
    growing: Floats
    path_sets: list[list[int]]
    event_multiple: Floats
    multiples: list[list[float]]
    """`event_multiple` again."""


def sets_before(sweep: Sweep, edges: Ints) -> Ints:
    """(b,) slack set of the stretch on which, or up to which, each edge lies; -1 for edge -1."""
    p, q = sweep.edges[np.maximum(edges, 0)].T
    ray = sweep.ray[p]
    step = p - sweep.first[ray]
    across = (ray != sweep.ray[q]).astype(np.intp)
    return np.where(edges < 0, -1, sweep.sets[ray, step - across])


def spots(sweep: Sweep, edges: Ints, parts: Floats) -> Spots:
    """The points `parts` (b,) of the way along edges (b,)."""
    p, q = sweep.edges[edges].T
    weight_p, weight_q = (1.0 - parts) * sweep.multiple[p], parts * sweep.multiple[q]
    total = weight_p + weight_q
    far = np.where(total > 0.0, weight_q / np.where(total > 0.0, total, 1.0), parts)
    a, b = sweep.ray[p], sweep.ray[q]
    # A place between two rays has its events on the straight lines between theirs.
    begin, end = sweep.event_multiple[a, 1:], sweep.event_multiple[b, 1:]
    with np.errstate(divide="ignore", invalid="ignore"):
        between = 1.0 / ((1.0 - far)[:, None] / begin + far[:, None] / end)
    multiple = np.where((a != b)[:, None], between, begin)
    return Spots(
        front_ft=_between(sweep.front_ft, a, b, far).tolist(),
        spacing_ft=_between(sweep.spacing_ft, a, b, far[:, None]).tolist(),
        growing=_between(sweep.growing, a, b, far[:, None]),
        path_sets=sweep.sets[a].tolist(),
        event_multiple=multiple,
        multiples=multiple.tolist(),
    )


def _between(values: Floats, a: Ints, b: Ints, far: Floats) -> Floats:
    """Straight between rows a and b; equal ends stay what they are, to the bit."""
    between: Floats = values[a] + far * (values[b] - values[a])
    return between


def ended(sweep: Sweep) -> tuple[float, int, int]:
    """Least multiple at which equilibrium ends, its ray, and the one-way element that was last.

    (infinity, -1, -1) where it never does.
    """
    ray = int(np.argmin(sweep.ends))
    if not np.isfinite(sweep.ends[ray]):
        return np.inf, -1, -1
    event = int(sweep.event[ray, sweep.count[ray] - 1])
    return float(sweep.ends[ray]), ray, END - event
