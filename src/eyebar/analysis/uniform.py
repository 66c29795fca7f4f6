"""Lane loads on a truss whose bars may go slack.

Which stretches of road make a uniform load worst for a bar depends on the bars that then work,
and those on the load. So every bar's worst stretches are taken for each slack set that its paths
meet, and for the sets of the greatest forces that anything tried gives it, until there is no new
one. What moves beside the uniform load, a train or the lane's single weight, stands at its worst
place in that set or in those that the search began with; for chords also anywhere between it and
the next place on the way to another set's, for in a panel with crossed rods a chord's force is the
lesser of two lines, greatest where they are equal. Where the load that is worst in a set leads into
another set, loads between the worst in either are tried too. The least multiple so found is bounded
by trying, not proven; tests hold it against every pattern of loaded panels.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from eyebar.analysis.influence import InfluenceLines, uniform_panel_loads, weight_at_greatest
from eyebar.analysis.mechanisms import Mechanisms, Triple, lost
from eyebar.analysis.model import Floats
from eyebar.analysis.paths import Ints, paths
from eyebar.analysis.places import Places, places
from eyebar.analysis.rays import Task
from eyebar.analysis.tried import Rows, Tried, at_levels
from eyebar.terms import Direction

MEANS = (0.0, 0.1, 0.5, 0.9, 1.0)
"""Between the influence lines of two slack sets."""
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

    `bars` (b,) numbers of the bars; `chords` (n,) which bars of the truss are chords; `fixed` (e,)
    forces under dead load and its slack set `start`; `train`: where it is given, its worst place in
    the same slack set is added to the lane load.
    """

    bars: Ints
    chords: NDArray[np.bool_]
    lane: Lane
    fixed: Floats
    start: int
    train: Places | None = None


def lane_tasks(
    lines: InfluenceLines, wishes: Sequence[LaneWish], cap: float
) -> list[Task | None]:
    """For each wish the lane loads that are worst for its bars, as a task; None where no lane load
    does anything to them. Neighbours are places of one train beside one lane load."""
    ways = Mechanisms(lines, cap)
    asked = [
        _first(wish, lines.sets.number(0), ways.under(wish.fixed, wish.start)) for wish in wishes
    ]
    moving = [_moving(lines, wish) for wish in wishes]
    tried = [Tried() for _ in wishes]
    active = list(range(len(wishes)))
    for _ in range(ROUNDS):
        if not active:
            break
        for i in active:
            tried[i].asked |= set(zip(*(column.tolist() for column in asked[i]), strict=True))
            tried[i].rows.append(_rows(lines, asked[i], wishes[i], moving[i]))
        for i, met in zip(active, _met(lines, wishes, active, tried, cap), strict=True):
            best = zip(*(column.tolist() for column in tried[i].best(wishes[i].bars)), strict=True)
            met |= {one for one in best if one[2] >= 0}
            asked[i] = _columns(met - tried[i].asked)
        active = [i for i in active if asked[i]]
    tasks = [
        _task(lines, one.rows, train, wish)
        for one, train, wish in zip(tried, moving, wishes, strict=True)
    ]
    return _with_kinks(lines, tasks, tried, list(zip(moving, wishes, strict=True)))


def _moving(lines: InfluenceLines, wish: LaneWish) -> Places | None:
    """What moves beside the uniform load: the train, else the single weight as a train."""
    if wish.train is not None or not wish.lane.point_kip:
        return wish.train
    return places((wish.lane.point_kip,), (), lines.stations_ft, Direction.UP)


def _first(wish: LaneWish, everything: int, mechanisms: set[Triple]) -> tuple[Ints, ...]:
    """(bar, sense, slack set) to begin with: the set under dead load, and all bars working; and
    the mechanisms."""
    asked = {
        (bar, sense, number)
        for number in {wish.start, everything} for sense in (1, -1) for bar in wish.bars.tolist()
    }
    return _columns(asked | mechanisms)


def _columns(asked: set[Triple]) -> tuple[Ints, ...]:
    return tuple(
        np.array(column, dtype=np.intp) for column in zip(*sorted(asked), strict=True)
    )


def _met(
    lines: InfluenceLines, wishes: Sequence[LaneWish], active: Sequence[int],
    tried: Sequence[Tried], cap: float,
) -> list[set[Triple]]:
    """For each active wish the (bar, sense, slack set) that its last rows' own paths meet, and
    those of the mechanisms in which they end; what they come to at the levels is kept with what
    was tried."""
    rows = [tried[i].rows[-1] for i in active]
    count = [len(part.bar) for part in rows]
    fixed = np.repeat(np.stack([wishes[i].fixed for i in active]), count, axis=0)
    start = np.repeat([wishes[i].start for i in active], count)
    growing = np.concatenate([part.loads for part in rows]) @ lines.units
    walked = paths(lines.sets, fixed, growing, start=start, cap=min(cap, SEARCHED))
    at, forces = at_levels(lines, walked)
    found, begin = [], 0
    for i, part in zip(active, rows, strict=True):
        here = slice(begin, begin + len(part.bar))
        begin += len(part.bar)
        tried[i].sets.append(at[here])
        tried[i].forces.append(forces[here])
        sets, its = walked.sets[here], np.arange(here.start, here.stop)
        row, step = np.nonzero(sets >= 0)
        columns = (part.bar[row].tolist(), part.sense[row].tolist(), sets[row, step].tolist())
        found.append(set(zip(*columns, strict=True)) | lost(lines.sets.model, walked, its))
    return found


def _rows(
    lines: InfluenceLines, asked: tuple[Ints, ...], wish: LaneWish, moving: Places | None
) -> Rows:
    """Worst loads for each bar's pull or push in its slack set, without those that load nothing."""
    bar, sense, number = asked
    ordinates = _ordinates(lines, number, bar, sense)
    lane = uniform_panel_loads(lines.stations_ft, ordinates, wish.lane.kip_per_ft)
    if wish.train is not None and wish.lane.point_kip:
        lane += weight_at_greatest(ordinates, wish.lane.point_kip)
    place, loads = np.full(len(bar), -1, dtype=np.intp), lane
    if moving is not None:
        place = (ordinates @ moving.loads.T).argmax(axis=1)
        loads = lane + moving.loads[place]
    some = loads.any(axis=1)
    return Rows(
        bar[some], sense[some], number[some], lane[some], place[some], loads[some]
    )


def _task(
    lines: InfluenceLines, parts: Sequence[Rows], moving: Places | None, wish: LaneWish
) -> Task | None:
    """All lane loads, each once, with what moves beside them at its worst places and around."""
    lane = np.concatenate([part.lane for part in parts])
    if not len(lane):
        return None
    key = np.ascontiguousarray(np.round(lane, 9))
    whole = key.view(f"V{key.dtype.itemsize * key.shape[1]}").ravel()
    _, once, which = np.unique(whole, return_index=True, return_inverse=True)
    if moving is None:
        loads = lane[once]
        stand = Places(
            direction=Direction.UP, front_ft=np.full(len(once), np.nan),
            spacing_ft=np.zeros((len(once), 0)), line=np.arange(len(once)), loads=loads,
        )
    else:
        bar, sense, place = (
            np.concatenate([getattr(part, name) for part in parts])
            for name in ("bar", "sense", "place")
        )
        part, which, place = _mixed(2 * bar + (sense > 0), which, place, len(parts[0].bar))
        near = _near(place, part, wish.chords[part // 2])
        stand = _around(moving, lane[once], which, near)
    return Task(
        places=stand, fixed=wish.fixed, start=wish.start, growing=stand.loads @ lines.units
    )


def _with_kinks(
    lines: InfluenceLines, tasks: list[Task | None], tried: Sequence[Tried],
    about: Sequence[tuple[Places | None, LaneWish]],
) -> list[Task | None]:
    """The tasks, each with those rows of loads between worst ones that come to more than these."""
    rows = [
        _kinks(lines, one.unstable(wish.bars), train, wish)
        for one, (train, wish) in zip(tried, about, strict=True)
    ]
    between = [loads[:, 1:-1].reshape(-1, loads.shape[2]) for loads, _ in rows]
    count = [len(part) for part in between]
    if not sum(count):
        return tasks
    fixed = np.repeat(np.stack([wish.fixed for _, wish in about]), count, axis=0)
    start = np.repeat([wish.start for _, wish in about], count)
    growing = np.concatenate(between) @ lines.units
    _, forces = at_levels(lines, paths(lines.sets, fixed, growing, start=start, cap=SEARCHED))
    begin = 0
    for i, (loads, place) in enumerate(rows):
        task, part = tasks[i], forces[begin : begin + count[i]]
        begin += count[i]
        if task is not None and len(part):
            more = tried[i].more(part, about[i][1].bars).reshape(len(loads), -1).any(axis=1)
            tasks[i] = _longer(lines, task, (loads[more], place[more]), about[i][0])
    return tasks


def _kinks(
    lines: InfluenceLines, kinks: set[tuple[int, int, int, int]], moving: Places | None,
    wish: LaneWish,
) -> tuple[Floats, Ints]:
    """Rows of loads (c, k, p) from the worst in one slack set to the worst in another, what moves
    beside them standing where it is worst in one of them, at a place (c,).

    A force that is the lesser of two lines is greatest where they are equal: the lane load is then
    worst for a mean of their influence lines, or lies between two that are.
    """
    if not kinks:
        return np.zeros((0, len(MEANS), len(lines.stations_ft))), np.zeros(0, dtype=np.intp)
    bar, sense, *both = np.array(sorted(kinks), dtype=np.intp).T
    first, second = (_ordinates(lines, number, bar, sense) for number in both)
    means = np.stack([(1.0 - far) * first + far * second for far in MEANS], axis=1)
    lane = uniform_panel_loads(lines.stations_ft, means, wish.lane.kip_per_ft)
    if wish.train is not None and wish.lane.point_kip:
        lane += weight_at_greatest(first, wish.lane.point_kip)[:, None]
    place = np.full(len(bar), -1, dtype=np.intp)
    if moving is not None:
        beside = [(line @ moving.loads.T).argmax(axis=1) for line in (first, second)]
        apart = beside[0] != beside[1]
        lane = np.concatenate([lane, lane[apart]])
        place = np.concatenate([beside[0], beside[1][apart]])
    key = np.concatenate([np.round(lane.reshape(len(lane), -1), 9), place[:, None]], axis=1)
    whole = np.ascontiguousarray(key).view(f"V{key.dtype.itemsize * key.shape[1]}").ravel()
    _, once = np.unique(whole, return_index=True)
    lane, place = lane[once], place[once]
    if moving is not None:
        lane = lane + moving.loads[place][:, None]
    return lane, place


def _longer(
    lines: InfluenceLines, task: Task, more: tuple[Floats, Ints], moving: Places | None
) -> Task:
    """A task with further rows of loads (c, k, p), each a line, at places (c,)."""
    loads, place = more
    stand, rows = task.places, np.repeat(place, loads.shape[1])
    front, spacing = np.full(len(rows), np.nan), np.zeros((len(rows), stand.spacing_ft.shape[1]))
    if moving is not None:
        front, spacing = moving.front_ft[rows], moving.spacing_ft[rows]
    number = stand.line[-1] + 1 + np.repeat(np.arange(len(loads)), loads.shape[1])
    flat = loads.reshape(-1, loads.shape[2])
    longer = Places(
        direction=stand.direction, front_ft=np.concatenate([stand.front_ft, front]),
        spacing_ft=np.concatenate([stand.spacing_ft, spacing]),
        line=np.concatenate([stand.line, number]), loads=np.concatenate([stand.loads, flat]),
    )
    return Task(
        places=longer, fixed=task.fixed, start=task.start,
        growing=np.concatenate([task.growing, flat @ lines.units]),
    )


def _ordinates(lines: InfluenceLines, number: Ints, bar: Ints, sense: Ints) -> Floats:
    """(r, p) influence lines of bars (r,) in slack sets (r,), in their senses."""
    ordinates = np.empty((len(bar), len(lines.stations_ft)))
    for one in np.unique(number):
        there = number == one
        ordinates[there] = lines.ordinates(int(one))[:, bar[there]].T
    ordinates *= sense[:, None]
    return ordinates


def _mixed(part: Ints, which: Ints, place: Ints, begun: int) -> tuple[Ints, Ints, Ints]:
    """Rows (part, lane load, place): all that are given (r,), and every lane load of a part beside
    every place that the part began with, those of the first `begun` rows.

    A lane load may be worst because it keeps a counter slack while the train stands where it would
    work: a hip vertical at whose foot a counter ends.
    """
    other = np.arange(len(part)) < begun
    first, second = np.nonzero((part[:, None] == part) & (other | np.eye(len(part), dtype=bool)))
    rows = np.unique(np.stack([part[first], which[first], place[second]], axis=1), axis=0)
    return rows[:, 0], rows[:, 1], rows[:, 2]


def _near(place: Ints, part: Ints, chord: NDArray[np.bool_]) -> Ints:
    """(r, 3) each row's place, and a chord's neighbours of it towards other places (r,) of the same
    part (r,)."""
    _, part = np.unique(part, return_inverse=True)
    least = np.full(part.max() + 1, place.max())
    most = np.zeros_like(least)
    np.minimum.at(least, part, place)
    np.maximum.at(most, part, place)
    before, behind = chord & (least[part] < place), chord & (most[part] > place)
    return np.stack([place - before, place, place + behind], axis=1)


def _around(moving: Places, lane: Floats, which: Ints, near: Ints) -> Places:
    """Places of a train (r, 3) beside lane loads (k, p), `which` (r,) of them; each pair once."""
    there = moving.line[near] == moving.line[near[:, 1:2]]
    near = np.where(there, near, near[:, 1:2])
    pairs = np.unique(np.stack([np.repeat(which, 3), near.ravel()], axis=1), axis=0)
    load, stand = pairs.T
    apart = (np.diff(load) != 0) | (np.diff(stand) != 1) | (np.diff(moving.line[stand]) != 0)
    return Places(
        direction=moving.direction, front_ft=moving.front_ft[stand],
        spacing_ft=moving.spacing_ft[stand], line=np.concatenate([[0], np.cumsum(apart)]),
        loads=lane[load] + moving.loads[stand],
    )
