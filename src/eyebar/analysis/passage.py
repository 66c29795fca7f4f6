"""Reading a sweep: the least multiple at which a force reaches a strength; extremes at a multiple.

Both lie on the sweep's edges, along which forces, multiples and multiple-times-place are straight.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from eyebar.analysis.model import Floats
from eyebar.analysis.paths import END, Ints
from eyebar.analysis.sweep import Sweep


@dataclass(frozen=True, slots=True, kw_only=True)
class Passages:
    """For n bars: `multiple` (n,) at which each limit is first reached, infinity where it never is;
    `edge` (n,) the edge, -1 where there is none; `part` (n,) how far along it, from 0 to 1."""

    multiple: Floats
    edge: Ints
    part: Floats


def passages(sweep: Sweep, limits: Floats, sense: int) -> Passages:
    """First passage of sense * force over `limits` (n,) [kip, infinity where there is none].

    A limit already passed under dead load alone has multiple 0.
    """
    over: NDArray[np.bool_] = sense * sweep.forces >= limits
    first, second = sweep.edges.T
    edge, bar = np.nonzero(over[first] ^ over[second])
    p, q = first[edge], second[edge]
    force_p, force_q = sense * sweep.forces[p, bar], sense * sweep.forces[q, bar]
    part = (limits[bar] - force_p) / (force_q - force_p)
    multiple = sweep.multiple[p] + part * (sweep.multiple[q] - sweep.multiple[p])
    n = len(limits)
    best, where, along = np.full(n, np.inf), np.full(n, -1, dtype=np.intp), np.zeros(n)
    order = np.lexsort((multiple, bar))
    bars, at = np.unique(bar[order], return_index=True)
    chosen = order[at]
    best[bars], where[bars], along[bars] = multiple[chosen], edge[chosen], part[chosen]
    begun = over[0]
    best[begun], where[begun], along[begun] = 0.0, 0, 0.0
    return Passages(multiple=best, edge=where, part=along)


@dataclass(frozen=True, slots=True, kw_only=True)
class Extremes:
    """For n bars at one multiple: least and greatest force (n,) [kip] and the edges and parts of
    edges where they are (n,)."""

    least: Floats
    greatest: Floats
    least_edge: Ints
    greatest_edge: Ints
    part: Floats
    """(h,) part of each crossed edge, in the order of `crossed`."""


def extremes(sweep: Sweep, multiple: float) -> tuple[Floats, Floats, Ints, Ints, Floats]:
    """Least and greatest forces (n,) at a multiple, the edge of each (n,) and part along it (h,).

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
    forces = sweep.forces[a] + part[:, None] * (sweep.forces[b] - sweep.forces[a])
    low, high = forces.argmin(axis=0), forces.argmax(axis=0)
    bars = np.arange(forces.shape[1])
    parts = np.zeros(len(sweep.edges))
    parts[crossed] = part
    return forces[low, bars], forces[high, bars], crossed[low], crossed[high], parts


def place_on(sweep: Sweep, edge: int, part: float) -> tuple[float, tuple[float, ...], Floats]:
    """Front axle's station [ft], spacings [ft] and growing forces (e,) at a point of an edge."""
    p, q = sweep.edges[edge]
    weight_p = (1.0 - part) * sweep.multiple[p]
    weight_q = part * sweep.multiple[q]
    total = weight_p + weight_q
    far = weight_q / total if total > 0 else part
    a, b = sweep.ray[p], sweep.ray[q]
    front = (1.0 - far) * sweep.front_ft[a] + far * sweep.front_ft[b]
    spacing = (1.0 - far) * sweep.spacing_ft[a] + far * sweep.spacing_ft[b]
    growing = (1.0 - far) * sweep.growing[a] + far * sweep.growing[b]
    return float(front), tuple(float(s) for s in spacing), growing


def ended(sweep: Sweep) -> tuple[float, int, int]:
    """Least multiple at which equilibrium ends, its ray, and the one-way element that was last.

    (infinity, -1, -1) where it never does.
    """
    ray = int(np.argmin(sweep.ends))
    if not np.isfinite(sweep.ends[ray]):
        return np.inf, -1, -1
    event = int(sweep.event[ray, sweep.count[ray] - 1])
    return float(sweep.ends[ray]), ray, END - event
