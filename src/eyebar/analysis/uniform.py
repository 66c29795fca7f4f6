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

ROUNDS = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Lane:
    """A lane load: uniform weight, and one weight put where it is worst (0 where there is none)."""

    kip_per_ft: float
    point_kip: float


def lane_task(
    lines: InfluenceLines,
    bars: Ints,
    lane: Lane,
    *,
    fixed: Floats,
    start: int,
    cap: float,
    trains: Sequence[Places] = (),
) -> Task | None:
    """The rows of lane loads that are worst for some bars, as a task without neighbours.

    Parameters: `bars` numbers of the bars; `fixed` (e,) forces under dead load and its slack set
    `start`; `trains`: where they are given, the worst place of the train in the same slack set is
    added to the lane load. Returns None where no lane load does anything to these bars.
    """
    tried: set[int] = set()
    fresh = {start, lines.sets.number(0)}
    parts: list[Places] = []
    for _ in range(ROUNDS):
        rows = [_rows(lines, number, bars, lane, trains) for number in sorted(fresh)]
        parts.extend(rows)
        growing = np.concatenate([row.loads for row in rows]) @ lines.units
        begin = np.full(len(growing), start)
        walked = paths(lines.sets, np.broadcast_to(fixed, growing.shape), growing, begin, cap)
        tried |= fresh
        fresh = set(np.unique(walked.sets[walked.sets >= 0]).tolist()) - tried
        if not fresh:
            break
    merged = _merged(parts)
    if merged is None:
        return None
    return Task(places=merged, fixed=fixed, start=start, growing=merged.loads @ lines.units)


def _rows(
    lines: InfluenceLines,
    number: int,
    bars: Ints,
    lane: Lane,
    trains: Sequence[Places],
) -> Places:
    """Worst loads for each bar's pull and push in one slack set."""
    ordinates = lines.ordinates(number)[:, bars].T
    both = np.concatenate([ordinates, -ordinates])
    loads = uniform_panel_loads(lines.stations_ft, both, lane.kip_per_ft)
    loads += weight_at_greatest(both, lane.point_kip)
    if not trains:
        nowhere = np.full(len(loads), np.nan)
        return Places(
            direction=Direction.UP,
            front_ft=nowhere,
            spacing_ft=np.zeros((len(loads), 0)),
            line=np.arange(len(loads)),
            loads=loads,
        )
    chosen = [(both @ train.loads.T).argmax(axis=1) for train in trains]
    return Places(
        direction=trains[0].direction,
        front_ft=np.concatenate([t.front_ft[c] for t, c in zip(trains, chosen, strict=True)]),
        spacing_ft=np.concatenate([t.spacing_ft[c] for t, c in zip(trains, chosen, strict=True)]),
        line=np.arange(len(loads) * len(trains)),
        loads=np.concatenate([loads + t.loads[c] for t, c in zip(trains, chosen, strict=True)]),
    )


def _merged(parts: Sequence[Places]) -> Places | None:
    """All rows that load anything, each once."""
    loads = np.concatenate([part.loads for part in parts])
    front = np.concatenate([part.front_ft for part in parts])
    spacing = np.concatenate([part.spacing_ft for part in parts])
    key = np.concatenate([np.round(loads, 9), np.nan_to_num(front)[:, None]], axis=1)
    _, once = np.unique(key, axis=0, return_index=True)
    once = np.sort(once[loads[once].any(axis=1)])
    if not len(once):
        return None
    return Places(
        direction=parts[0].direction,
        front_ft=front[once],
        spacing_ft=spacing[once],
        line=np.arange(len(once)),
        loads=loads[once],
    )
