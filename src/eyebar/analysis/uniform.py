"""Lane loads on a truss whose bars may go slack.

Which stretches of road make a uniform load worst for a bar depends on the bars that then work, and
those on the load. So every bar's worst stretches are taken for each slack set that its paths meet,
until they meet no new one. The least multiple so found is bounded by trying, not proven; tests hold
it against every pattern of loaded panels.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from eyebar.analysis.influence import InfluenceLines, uniform_panel_loads, weight_at_greatest
from eyebar.analysis.model import Floats
from eyebar.analysis.paths import Ints, paths
from eyebar.analysis.places import Places
from eyebar.analysis.rays import Task
from eyebar.terms import Direction

ROUNDS = 3
SEARCHED = 30.0
"""Slack sets met beyond this multiple of the load give no further loads to try."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lane:
    """A lane load: uniform weight, and one weight put where it is worst (0 where there is none)."""

    kip_per_ft: float
    point_kip: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LaneWish:
    """Lane loads to be found that are worst for some bars.

    `bars` (b,) numbers of the bars; `fixed` (e,) forces under dead load and its slack set `start`;
    `train`: where it is given, its worst place in the same slack set is added to the lane load.
    """

    bars: Ints
    lane: Lane
    fixed: Floats
    start: int
    train: Places | None = None


@dataclass(frozen=True, slots=True)
class _Rows:
    """Loads (r, p) of rows, each the worst for pull or push of one bar in one slack set."""

    bar: Ints
    sense: Ints
    loads: Floats
    front_ft: Floats
    spacing_ft: Floats


def lane_tasks(
    lines: InfluenceLines, wishes: Sequence[LaneWish], cap: float
) -> list[Task | None]:
    """For each wish the rows of lane loads that are worst for its bars, as a task without
    neighbours; None where no lane load does anything to them."""
    asked = [_first(wish, lines.sets.number(0)) for wish in wishes]
    tried: list[set[tuple[int, int, int]]] = [set() for _ in wishes]
    parts: list[list[_Rows]] = [[] for _ in wishes]
    active = list(range(len(wishes)))
    for _ in range(ROUNDS):
        if not active:
            break
        rows = []
        for i in active:
            tried[i] |= set(zip(*(column.tolist() for column in asked[i]), strict=True))
            rows.append(_rows(lines, asked[i], wishes[i]))
            parts[i].append(rows[-1])
        for i, met in zip(active, _met(lines, wishes, active, rows, cap), strict=True):
            columns = zip(*sorted(met - tried[i]), strict=True)
            asked[i] = tuple(np.array(column, dtype=np.intp) for column in columns)
        active = [i for i in active if asked[i]]
    return [_task(lines, part, wish) for part, wish in zip(parts, wishes, strict=True)]


def _first(wish: LaneWish, everything: int) -> tuple[Ints, ...]:
    """(bar, sense, slack set) to begin with: the set under dead load, and all bars working."""
    sets = sorted({wish.start, everything})
    twice, senses = np.tile(wish.bars, 2), np.repeat([1, -1], len(wish.bars))
    return (
        np.tile(twice, len(sets)), np.tile(senses, len(sets)), np.repeat(sets, len(twice)),
    )


def _met(
    lines: InfluenceLines, wishes: Sequence[LaneWish], active: Sequence[int],
    rows: Sequence[_Rows], cap: float,
) -> list[set[tuple[int, int, int]]]:
    """For each active wish the (bar, sense, slack set) that its rows' own paths meet."""
    count = [len(part.bar) for part in rows]
    fixed = np.repeat(np.stack([wishes[i].fixed for i in active]), count, axis=0)
    start = np.repeat([wishes[i].start for i in active], count)
    growing = np.concatenate([part.loads for part in rows]) @ lines.units
    walked = paths(lines.sets, fixed, growing, start, min(cap, SEARCHED))
    found, begin = [], 0
    for part in rows:
        sets = walked.sets[begin : begin + len(part.bar)]
        begin += len(part.bar)
        row, step = np.nonzero(sets >= 0)
        columns = (part.bar[row].tolist(), part.sense[row].tolist(), sets[row, step].tolist())
        found.append(set(zip(*columns, strict=True)))
    return found


def _rows(lines: InfluenceLines, asked: tuple[Ints, ...], wish: LaneWish) -> _Rows:
    """Worst loads for each bar's pull or push in its slack set, without those that load nothing."""
    bar, sense, number = asked
    ordinates = np.empty((len(bar), len(lines.stations_ft)))
    for one in np.unique(number):
        there = number == one
        ordinates[there] = lines.ordinates(int(one))[:, bar[there]].T
    ordinates *= sense[:, None]
    loads = uniform_panel_loads(lines.stations_ft, ordinates, wish.lane.kip_per_ft)
    if wish.lane.point_kip:
        loads += weight_at_greatest(ordinates, wish.lane.point_kip)
    front, spacing = np.full(len(bar), np.nan), np.zeros((len(bar), 0))
    if wish.train is not None:
        worst = (ordinates @ wish.train.loads.T).argmax(axis=1)
        front, spacing = wish.train.front_ft[worst], wish.train.spacing_ft[worst]
        loads += wish.train.loads[worst]
    some = loads.any(axis=1)
    return _Rows(bar[some], sense[some], loads[some], front[some], spacing[some])


def _task(lines: InfluenceLines, parts: Sequence[_Rows], wish: LaneWish) -> Task | None:
    """All rows, each load once."""
    loads = np.concatenate([part.loads for part in parts])
    if not len(loads):
        return None
    front = np.concatenate([part.front_ft for part in parts])
    spacing = np.concatenate([part.spacing_ft for part in parts])
    key = np.round(np.column_stack([loads, np.nan_to_num(front), spacing]), 9)
    whole = np.ascontiguousarray(key).view(f"V{key.dtype.itemsize * key.shape[1]}")
    _, once = np.unique(whole, return_index=True)
    once = np.sort(once)
    merged = Places(
        direction=wish.train.direction if wish.train is not None else Direction.UP,
        front_ft=front[once], spacing_ft=spacing[once], line=np.arange(len(once)),
        loads=loads[once],
    )
    return Task(
        places=merged, fixed=wish.fixed, start=wish.start, growing=merged.loads @ lines.units
    )
