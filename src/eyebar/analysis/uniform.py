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


@dataclass(frozen=True, slots=True)
class _Rows:
    """Loads (r, p) of rows, each the worst for pull or push of one bar in one slack set."""

    bar: Ints
    sense: Ints
    loads: Floats
    front_ft: Floats
    spacing_ft: Floats


def lane_task(
    lines: InfluenceLines,
    bars: Ints,
    lane: Lane,
    *,
    fixed: Floats,
    start: int,
    cap: float,
    train: Places | None = None,
) -> Task | None:
    """The rows of lane loads that are worst for some bars, as a task without neighbours.

    Parameters: `bars` numbers of the bars; `fixed` (e,) forces under dead load and its slack set
    `start`; `train`: where it is given, the worst place of a train in the same slack set is added
    to the lane load. Returns None where no lane load does anything to these bars.
    """
    senses = np.repeat([1, -1], len(bars))
    twice = np.tile(bars, 2)
    asked: list[tuple[Ints, ...]] = [
        (twice, senses, np.full(len(twice), number)) for number in sorted({start, 0})
    ]
    tried: set[tuple[int, int, int]] = set()
    parts: list[_Rows] = []
    for _ in range(ROUNDS):
        bar, sense, number = (np.concatenate(column) for column in zip(*asked, strict=True))
        tried |= set(zip(bar.tolist(), sense.tolist(), number.tolist(), strict=True))
        rows = _rows(lines, bar, sense, number, (lane, train))
        parts.append(rows)
        growing = rows.loads @ lines.units
        begin = np.full(len(growing), start)
        walked = paths(
            lines.sets, np.broadcast_to(fixed, growing.shape), growing, begin, min(cap, SEARCHED)
        )
        row, step = np.nonzero(walked.sets >= 0)
        met = set(zip(
            rows.bar[row].tolist(), rows.sense[row].tolist(), walked.sets[row, step].tolist(),
            strict=True,
        )) - tried
        if not met:
            break
        asked = [tuple(np.array(column) for column in zip(*sorted(met), strict=True))]
    return _task(lines, parts, fixed, start, train)


def _rows(
    lines: InfluenceLines, bar: Ints, sense: Ints, number: Ints,
    load: tuple[Lane, Places | None],
) -> _Rows:
    """Worst loads for each bar's pull or push in its slack set, without those that load nothing."""
    lane, train = load
    ordinates = np.empty((len(bar), len(lines.stations_ft)))
    for one in np.unique(number):
        there = number == one
        ordinates[there] = lines.ordinates(int(one))[:, bar[there]].T
    ordinates *= sense[:, None]
    loads = uniform_panel_loads(lines.stations_ft, ordinates, lane.kip_per_ft)
    if lane.point_kip:
        loads += weight_at_greatest(ordinates, lane.point_kip)
    front, spacing = np.full(len(bar), np.nan), np.zeros((len(bar), 0))
    if train is not None:
        worst = (ordinates @ train.loads.T).argmax(axis=1)
        front, spacing = train.front_ft[worst], train.spacing_ft[worst]
        loads += train.loads[worst]
    some = loads.any(axis=1)
    return _Rows(bar[some], sense[some], loads[some], front[some], spacing[some])


def _task(
    lines: InfluenceLines, parts: Sequence[_Rows], fixed: Floats, start: int,
    train: Places | None,
) -> Task | None:
    """All rows, each load once."""
    loads = np.concatenate([part.loads for part in parts])
    if not len(loads):
        return None
    front = np.concatenate([part.front_ft for part in parts])
    spacing = np.concatenate([part.spacing_ft for part in parts])
    key = np.round(np.column_stack([loads, np.nan_to_num(front), spacing]), 9)
    _, once = np.unique(np.ascontiguousarray(key).view(f"V{key.dtype.itemsize * key.shape[1]}"),
                        return_index=True)
    once = np.sort(once)
    merged = Places(
        direction=train.direction if train else Direction.UP, front_ft=front[once],
        spacing_ft=spacing[once], line=np.arange(len(once)), loads=loads[once],
    )
    return Task(places=merged, fixed=fixed, start=start, growing=merged.loads @ lines.units)
