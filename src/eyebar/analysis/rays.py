"""The rays of a sweep: the paths at the places, and those put between them until all is known.

See `sweep.py` for the reasoning.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from eyebar.analysis.model import Floats
from eyebar.analysis.paths import CAP, END, Ints, SlackSets, motion_of, paths, solved
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """What all rays stand on: slack sets of the truss, fixed element forces (t, e) and slack set
    under them (t,) of each task, the multiple up to which paths are followed."""

    sets: SlackSets
    fixed: Floats
    start: Ints
    cap: float


@dataclass(slots=True)
class Rays:
    """All rays of all tasks while corners are being found; `line` (r,) numbers those that stand on
    one line of places."""

    task: Ints
    line: Ints
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

    def append(
        self, *, task: Ints, line: Ints, front: Floats, spacing: Floats, growing: Floats,
        count: Ints, multiple: Floats, event: Ints, sets: Ints, forces: list[Floats],
    ) -> None:
        """Put more rays behind those that are there."""
        self.task = np.concatenate([self.task, task])
        self.line = np.concatenate([self.line, line])
        self.front = np.concatenate([self.front, front])
        self.spacing = np.concatenate([self.spacing, spacing])
        self.growing.append(growing)
        self.count = np.concatenate([self.count, count])
        self.multiple = _stacked(self.multiple, multiple, 0.0)
        self.event = _stacked(self.event, event, CAP)
        self.sets = _stacked(self.sets, sets, -1)
        self.forces += forces


def followed(sets: SlackSets, tasks: Sequence[Task], cap: float) -> tuple[Ground, Rays, Ints]:
    """All rays of several tasks on one truss, what they stand on, and the pairs (c, 2) of
    neighbours that meet the same slack sets in the same order.

    Raises ArithmeticError where the search for corners does not settle.
    """
    widest = max(task.places.spacing_ft.shape[1] for task in tasks)
    ground = Ground(
        sets=sets, fixed=np.stack([t.fixed for t in tasks]),
        start=np.array([t.start for t in tasks], dtype=np.intp), cap=cap,
    )
    number = np.repeat(np.arange(len(tasks)), [len(t.places.front_ft) for t in tasks])
    growing = np.concatenate([t.growing for t in tasks])
    walked = paths(sets, ground.fixed[number], growing, start=ground.start[number], cap=cap)
    line = np.concatenate([t.places.line for t in tasks])
    changed = (np.diff(number) != 0) | (np.diff(line) != 0)
    rays = Rays(
        number,
        np.concatenate([[0], np.cumsum(changed)]),
        np.concatenate([t.places.front_ft for t in tasks]),
        np.concatenate([_padded(t.places.spacing_ft, widest) for t in tasks]),
        [growing],
        walked.count,
        walked.multiple,
        walked.event,
        walked.sets,
        [walked.forces],
    )
    first = np.flatnonzero(~changed)
    return ground, rays, settled(ground, rays, np.stack([first, first + 1], axis=1), SLIVER_FT)


def settled(ground: Ground, rays: Rays, cells: Ints, sliver_ft: float) -> Ints:
    """The known pairs of neighbours (c, 2) that given ones (c, 2) fall into, rays being put between
    those whose orders differ until they do not, or stand nearer than a sliver.

    Raises ArithmeticError where the search for corners does not settle.
    """
    known: list[Ints] = []
    for _ in range(ROUNDS):
        same = same_order(rays, cells)
        known.append(cells[same])
        cells = _wide(rays, cells[~same], sliver_ft)
        if not len(cells):
            return np.concatenate(known)
        cells = _split(ground, rays, cells, _corners(ground, rays, cells))
    raise ArithmeticError(
        f"{len(cells)} stretches of road still unsettled after {ROUNDS} rounds"
    )


def _wide(rays: Rays, cells: Ints, sliver_ft: float) -> Ints:
    a, b = cells.T
    width = np.abs(rays.front[b] - rays.front[a])
    wide: Ints = cells[width + np.abs(rays.spacing[b] - rays.spacing[a]).sum(axis=1) > sliver_ft]
    return wide


def _padded(spacing: Floats, columns: int) -> Floats:
    return np.pad(spacing, ((0, 0), (0, columns - spacing.shape[1])))


def same_order(walked: Rays, cells: Ints) -> NDArray[np.bool_]:
    """(c,) which pairs of rays meet the same slack sets in the same order."""
    a, b = cells.T
    same: NDArray[np.bool_] = (walked.sets[a] == walked.sets[b]).all(axis=1)
    last_a = walked.event[a, walked.count[a] - 1]
    last_b = walked.event[b, walked.count[b] - 1]
    same &= (last_a == CAP) == (last_b == CAP)
    return same


def _corners(ground: Ground, rays: Rays, cells: Ints) -> Floats:
    """Where, between 0 and 1 from one ray to the other, the two orders of each cell part."""
    first, second = partings(ground, rays, cells, cells)
    with np.errstate(divide="ignore", invalid="ignore"):
        determinant = first[1] * second[2] - first[2] * second[1]
        along_a = (-first[0] * second[2] + first[2] * second[0]) / determinant
        along_b = (-first[1] * second[0] + first[0] * second[1]) / determinant
        part = along_b / (along_a + along_b)
    good = np.isfinite(part) & (along_a > 0) & (along_b > 0)
    where: Floats = np.where(good, part, 0.5)
    return where


def parted(rays: Rays, cells: Ints) -> tuple[Ints, NDArray[np.bool_]]:
    """(c,) the last stretch that the paths of each pair of rays have in common, and whether one
    event then lets different bars in."""
    a, b = cells.T
    differ = (rays.sets[a] != rays.sets[b]) | (rays.event[a] != rays.event[b])
    step = differ.argmax(axis=1)
    exchanged = (step > 0) & (rays.sets[a, step] != rays.sets[b, step])
    return step - exchanged, exchanged


def partings(
    ground: Ground, rays: Rays, cells: Ints, beside: Ints
) -> tuple[Floats, Floats]:
    """The two lines c0 + c1 * a + c2 * b ... = 0, coefficients (1 + k, c), that meet where the
    orders of each pair of rays part; a, b ... are amounts of the loads of rays `beside` (c, k)."""
    a, b = cells.T
    step, exchanged = parted(rays, cells)
    number = rays.sets[a, step]
    lines = np.zeros((2, 1 + beside.shape[1], len(cells)))
    for group in np.unique(number):
        rows = np.flatnonzero(number == group)
        fixed = _states(ground, int(group), ground.fixed[rays.task[a[rows]]])
        by = [_states(ground, int(group), rays.rates(column)) for column in beside[rows].T]
        state = np.stack([fixed, *by])
        for line, ray in zip(lines, (a, b), strict=True):
            line[:, rows] = _event_line(rays.event[ray[rows], step[rows]], state, ground.cap)
        for i in np.flatnonzero(exchanged[rows]):
            row = rows[i]
            after = rays.sets[cells[row], step[row] + 1]
            event = int(rays.event[a[row], step[row]])
            ratios = _closing(ground.sets, (int(group), event), after, state[:, i])
            lines[1, :, row] = ratios[0] - ratios[1]
    return lines[0], lines[1]


def _states(ground: Ground, number: int, forces: Floats) -> Floats:
    """(r, m): force of working one-way elements in their senses, gap of slack ones."""
    model, slack = ground.sets.model, ground.sets.sets[number]
    elements, gaps = solved(model, slack, forces)
    state: Floats = elements[:, model.unilateral] * model.sense
    state[:, slack.members] = gaps
    return state


def _event_line(event: Ints, state: Floats, cap: float) -> Floats:
    """Coefficients (1 + k, r) of the line on which each row's event happens, from states
    (1 + k, r, m)."""
    element = np.where(event <= END, END - event, np.maximum(event, 0))
    line: Floats = state[:, np.arange(len(event)), element]
    capped = event == CAP
    line[0, capped], line[1:, capped] = -cap, 1.0
    return line


def _closing(
    sets: SlackSets, about: tuple[int, int], after: Ints, state: Floats
) -> list[Floats]:
    """How soon the gap of the bar closes that an event lets in, coefficients (1 + k,), for each of
    the slack sets that come after it."""
    slack, event = sets.sets[about[0]], about[1]
    _, motion = motion_of(sets.model, slack, event)
    found = []
    for number in after.tolist():
        let_in = (slack.mask | 1 << event) & ~sets.sets[number].mask
        place = np.flatnonzero(slack.members == let_in.bit_length() - 1)
        found.append(
            state[:, slack.members[place[0]]] / -motion[place[0]] if len(place)
            else np.zeros(len(state))
        )
    return found


def _split(ground: Ground, rays: Rays, cells: Ints, where: Floats) -> Ints:
    """Put rays on both sides of each corner; the cells between old and new ones."""
    middle = np.minimum(np.maximum(where, 2 * SIDE), 1 - 2 * SIDE)
    parts = np.stack([middle - SIDE, middle + SIDE], axis=1).ravel()
    halved = where == 0.5
    a, b = np.repeat(cells, 2, axis=0).T
    keep = ~np.stack([np.zeros_like(halved), halved], axis=1).ravel()
    parts = np.where(np.repeat(halved, 2), 0.5, parts)
    a, b, parts = a[keep], b[keep], parts[keep]
    old = added(ground, rays, np.stack([a, b], axis=1), parts, line=rays.line[a])
    numbers = np.full((len(cells), 2), -1, dtype=np.intp)
    numbers.reshape(-1)[keep] = old + np.arange(len(parts))
    left = np.stack([cells[:, 0], numbers[:, 0]], axis=1)
    right = np.stack([np.where(halved, numbers[:, 0], numbers[:, 1]), cells[:, 1]], axis=1)
    return np.concatenate([left, right])


def added(ground: Ground, rays: Rays, between: Ints, parts: Floats, *, line: Ints) -> int:
    """Put rays `parts` (r,) of the way between pairs of others (r, 2), on lines (r,); the number of
    the first new one."""
    a, b = between.T
    column = parts[:, None]
    growing = (1 - column) * rays.rates(a) + column * rays.rates(b)
    task = rays.task[a]
    fresh = paths(
        ground.sets, ground.fixed[task], growing, start=ground.start[task], cap=ground.cap
    )
    old = len(rays.task)
    rays.append(
        task=task, line=line, growing=growing, forces=[fresh.forces], count=fresh.count,
        front=(1 - parts) * rays.front[a] + parts * rays.front[b],
        spacing=(1 - column) * rays.spacing[a] + column * rays.spacing[b],
        multiple=fresh.multiple, event=fresh.event, sets=fresh.sets,
    )
    return old


def _stacked(first: NDArray[Any], second: NDArray[Any], filler: float) -> NDArray[Any]:
    columns = max(first.shape[1], second.shape[1])
    parts = [
        np.pad(p, ((0, 0), (0, columns - p.shape[1])), constant_values=filler)
        if p.shape[1] < columns
        else p
        for p in (first, second)
    ]
    return np.concatenate(parts)
