"""The rays of a sweep: the paths at the places, and those put between them until all is known.

See `sweep.py` for the reasoning.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from eyebar.analysis.model import Floats
from eyebar.analysis.paths import CAP, END, Ints, SlackSets, paths, solved
from eyebar.analysis.places import Places

SLIVER_FT = 1e-6
SIDE = 2e-8
"""How far beside a corner the two new rays stand, as a part of the way between the old ones."""
ROUNDS = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """One train in one direction on one dead load: fixed element forces (e,), its slack set,
    the places and the force (r, e) of each with all bars working."""

    places: Places
    fixed: Floats
    start: int
    growing: Floats


@dataclass(slots=True)
class Rays:
    """All rays of all tasks while corners are being found."""

    task: Ints
    front: Floats
    spacing: Floats
    growing: list[Floats]
    count: Ints
    multiple: Floats
    event: Ints
    sets: Ints
    forces: list[Floats]

    def rates(self, rows: Ints) -> Floats:
        """Growing forces (r, e) of some rays, whichever round they came in."""
        if len(self.growing) > 1:
            self.growing = [np.concatenate(self.growing)]
        return self.growing[0][rows]


def followed(sets: SlackSets, tasks: Sequence[Task], cap: float) -> tuple[Rays, Ints]:
    """All rays of several tasks on one truss, and the pairs (c, 2) of neighbours that meet the same
    slack sets in the same order.

    Raises ArithmeticError where the search for corners does not settle.
    """
    widest = max(task.places.spacing_ft.shape[1] for task in tasks)
    fixed = np.stack([t.fixed for t in tasks])
    start = np.array([t.start for t in tasks], dtype=np.intp)
    number = np.repeat(np.arange(len(tasks)), [len(t.places.front_ft) for t in tasks])
    growing = np.concatenate([t.growing for t in tasks])
    walked = paths(sets, fixed[number], growing, start=start[number], cap=cap)
    rays = Rays(
        number,
        np.concatenate([t.places.front_ft for t in tasks]),
        np.concatenate([_padded(t.places.spacing_ft, widest) for t in tasks]),
        [growing],
        walked.count,
        walked.multiple,
        walked.event,
        walked.sets,
        [walked.forces],
    )
    first = np.arange(len(rays.task) - 1)
    line = np.concatenate([t.places.line for t in tasks])
    together = (rays.task[:-1] == rays.task[1:]) & (line[:-1] == line[1:])
    open_cells = np.stack([first, first + 1], axis=1)[together]
    known: list[Ints] = []
    for _ in range(ROUNDS):
        same = _same_order(rays, open_cells)
        known.append(open_cells[same])
        open_cells = _wide(rays, open_cells[~same])
        if not len(open_cells):
            break
        where = _corners(sets, rays, fixed, open_cells, cap)
        open_cells = _split(
            sets, rays, fixed=fixed, start=start, cells=open_cells, where=where, cap=cap
        )
    else:
        raise ArithmeticError(
            f"{len(open_cells)} stretches of road still unsettled after {ROUNDS} rounds"
        )
    cells = np.concatenate(known)
    return rays, cells


def _wide(rays: Rays, cells: Ints) -> Ints:
    a, b = cells.T
    width = np.abs(rays.front[b] - rays.front[a])
    wide: Ints = cells[width + np.abs(rays.spacing[b] - rays.spacing[a]).sum(axis=1) > SLIVER_FT]
    return wide


def _padded(spacing: Floats, columns: int) -> Floats:
    return np.pad(spacing, ((0, 0), (0, columns - spacing.shape[1])))


def _same_order(walked: Rays, cells: Ints) -> NDArray[np.bool_]:
    a, b = cells.T
    same: NDArray[np.bool_] = (walked.sets[a] == walked.sets[b]).all(axis=1)
    last_a = walked.event[a, walked.count[a] - 1]
    last_b = walked.event[b, walked.count[b] - 1]
    same &= (last_a == CAP) == (last_b == CAP)
    return same


def _corners(
    sets: SlackSets,
    rays: Rays,
    fixed: Floats,
    cells: Ints,
    cap: float,
) -> Floats:
    """Where, between 0 and 1 from one ray to the other, the two orders of each cell part."""
    walked = rays
    a, b = cells.T
    differ = (walked.sets[a] != walked.sets[b]) | (walked.event[a] != walked.event[b])
    step = differ.argmax(axis=1)
    number = walked.sets[a, step]
    where = np.full(len(cells), 0.5)
    event_a, event_b = walked.event[a, step], walked.event[b, step]
    for group in np.unique(number):
        rows = np.flatnonzero(number == group)
        base = _states(sets, int(group), fixed[rays.task[a[rows]]])
        rate_a = _states(sets, int(group), rays.rates(a[rows]))
        rate_b = _states(sets, int(group), rays.rates(b[rows]))
        first = _line(event_a[rows], base, rate_a, rate_b, cap)
        second = _line(event_b[rows], base, rate_a, rate_b, cap)
        with np.errstate(divide="ignore", invalid="ignore"):
            determinant = first[1] * second[2] - first[2] * second[1]
            along_a = (-first[0] * second[2] + first[2] * second[0]) / determinant
            along_b = (-first[1] * second[0] + first[0] * second[1]) / determinant
            part = along_b / (along_a + along_b)
        good = np.isfinite(part) & (along_a > 0) & (along_b > 0)
        where[rows[good]] = part[good]
    return where


def _states(sets: SlackSets, number: int, forces: Floats) -> Floats:
    """(r, m): force of working one-way elements in their senses, gap of slack ones."""
    model, slack = sets.model, sets.sets[number]
    elements, gaps = solved(model, slack, forces)
    state: Floats = elements[:, model.unilateral] * model.sense
    state[:, slack.members] = gaps
    return state


def _line(
    event: Ints,
    base: Floats,
    rate_a: Floats,
    rate_b: Floats,
    cap: float,
) -> tuple[Floats, Floats, Floats]:
    """Coefficients of the line c0 + c1 * a + c2 * b = 0 on which each row's event happens."""
    rows = np.arange(len(event))
    element = np.where(event <= END, END - event, np.maximum(event, 0))
    capped = event == CAP
    return (
        np.where(capped, -cap, base[rows, element]),
        np.where(capped, 1.0, rate_a[rows, element]),
        np.where(capped, 1.0, rate_b[rows, element]),
    )


def _split(
    sets: SlackSets,
    rays: Rays,
    *,
    fixed: Floats,
    start: Ints,
    cells: Ints,
    where: Floats,
    cap: float,
) -> Ints:
    """Put rays on both sides of each corner; the cells between old and new ones."""
    middle = np.minimum(np.maximum(where, 2 * SIDE), 1 - 2 * SIDE)
    parts = np.stack([middle - SIDE, middle + SIDE], axis=1).ravel()
    halved = where == 0.5
    a, b = np.repeat(cells, 2, axis=0).T
    keep = ~np.stack([np.zeros_like(halved), halved], axis=1).ravel()
    parts = np.where(np.repeat(halved, 2), 0.5, parts)
    a, b, parts = a[keep], b[keep], parts[keep]
    column = parts[:, None]
    growing = (1 - column) * rays.rates(a) + column * rays.rates(b)
    task = rays.task[a]
    fresh = paths(sets, fixed[task], growing, start=start[task], cap=cap)
    old = len(rays.task)
    rays.front = np.concatenate([rays.front, (1 - parts) * rays.front[a] + parts * rays.front[b]])
    rays.spacing = np.concatenate(
        [rays.spacing, (1 - column) * rays.spacing[a] + column * rays.spacing[b]]
    )
    rays.task = np.concatenate([rays.task, task])
    rays.growing.append(growing)
    rays.forces.append(fresh.forces)
    rays.count = np.concatenate([rays.count, fresh.count])
    rays.multiple = _stacked(rays.multiple, fresh.multiple, 0.0)
    rays.event = _stacked(rays.event, fresh.event, CAP)
    rays.sets = _stacked(rays.sets, fresh.sets, -1)
    numbers = np.full((len(cells), 2), -1, dtype=np.intp)
    numbers.reshape(-1)[keep] = old + np.arange(len(parts))
    left = np.stack([cells[:, 0], numbers[:, 0]], axis=1)
    right = np.stack([np.where(halved, numbers[:, 0], numbers[:, 1]), cells[:, 1]], axis=1)
    return np.concatenate([left, right])


def _stacked(first: NDArray[Any], second: NDArray[Any], filler: float) -> NDArray[Any]:
    columns = max(first.shape[1], second.shape[1])
    parts = [
        np.pad(p, ((0, 0), (0, columns - p.shape[1])), constant_values=filler)
        if p.shape[1] < columns
        else p
        for p in (first, second)
    ]
    return np.concatenate(parts)
