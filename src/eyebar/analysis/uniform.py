"""Lane loads on a truss whose bars may go slack.

Which stretches of road make a uniform load worst for a bar depends on the bars that then work,
and those on the load. So every bar's worst stretches are taken for each slack set that its paths
meet, until they meet no new one. What moves beside the uniform load, a train or the lane's single
weight, stands at its worst place in that set or in those that the search began with; for chords
also anywhere between it and the next place on the way to another set's, for in a panel with
crossed rods a chord's force is the lesser of two lines, greatest where they are equal. The least
multiple so found is bounded by trying, not proven; tests hold it against every pattern of loaded
panels.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from eyebar.analysis.influence import InfluenceLines, uniform_panel_loads, weight_at_greatest
from eyebar.analysis.model import Floats, Model
from eyebar.analysis.paths import END, Ints, Paths, paths
from eyebar.analysis.places import Places, places
from eyebar.analysis.rays import Task
from eyebar.terms import Direction

Triple = tuple[int, int, int]
"""A bar's number, the sense in which loads act on it, the number of a slack set."""

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


@dataclass(frozen=True, slots=True)
class _Rows:
    """Rows (r,), each the worst for pull or push of one bar in one slack set.

    `lane` (r, p) lane loads; `place` (r,) of what moves beside them, -1 where nothing does; `loads`
    (r, p) of both.
    """

    bar: Ints
    sense: Ints
    lane: Floats
    place: Ints
    loads: Floats


def lane_tasks(
    lines: InfluenceLines, wishes: Sequence[LaneWish], cap: float
) -> list[Task | None]:
    """For each wish the lane loads that are worst for its bars, as a task; None where no lane load
    does anything to them. Neighbours are places of one train beside one lane load."""
    ways = _Mechanisms(lines, cap)
    asked = [
        _first(wish, lines.sets.number(0), ways.under(wish.fixed, wish.start)) for wish in wishes
    ]
    moving = [_moving(lines, wish) for wish in wishes]
    tried: list[set[Triple]] = [set() for _ in wishes]
    parts: list[list[_Rows]] = [[] for _ in wishes]
    active = list(range(len(wishes)))
    for _ in range(ROUNDS):
        if not active:
            break
        rows = []
        for i in active:
            tried[i] |= set(zip(*(column.tolist() for column in asked[i]), strict=True))
            rows.append(_rows(lines, asked[i], wishes[i], moving[i]))
            parts[i].append(rows[-1])
        for i, met in zip(active, _met(lines, wishes, active, rows, cap), strict=True):
            asked[i] = _columns(met - tried[i])
        active = [i for i in active if asked[i]]
    return [_task(lines, *one) for one in zip(parts, moving, wishes, strict=True)]


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


@dataclass(slots=True)
class _Mechanisms:
    """Where equilibrium ends: the bar last to let go, the sense of what makes it, the set before.
    """

    lines: InfluenceLines
    cap: float
    known: dict[int, set[Triple]] = field(default_factory=dict)

    def under(self, fixed: Floats, start: int) -> set[Triple]:
        """Those that loads from either end of the road, or on one joint, lead to under a dead
        load."""
        if id(fixed) not in self.known:
            one = np.eye(len(self.lines.stations_ft))
            loads = np.concatenate([one, np.cumsum(one, axis=0), np.cumsum(one[::-1], axis=0)])
            growing = loads @ self.lines.units
            walked = paths(
                self.lines.sets, np.broadcast_to(fixed, growing.shape), growing,
                start=np.full(len(growing), start), cap=self.cap,
            )
            self.known[id(fixed)] = lost(self.lines.sets.model, walked, np.arange(len(growing)))
        return self.known[id(fixed)]


def lost(model: Model, walked: Paths, rows: Ints) -> set[Triple]:
    """(bar, sense, slack set) of the bar last to let go on each of some paths that ends: loads
    that act on it in that sense end equilibrium."""
    last_one = walked.count[rows] - 1
    event, number = walked.event[rows, last_one], walked.sets[rows, last_one]
    ended = np.flatnonzero(event <= END)
    last = END - event[ended]
    bars = model.element_bar[model.unilateral[last]]
    senses = -np.sign(model.sense[last]).astype(np.intp)
    return set(zip(bars.tolist(), senses.tolist(), number[ended].tolist(), strict=True))


def _met(
    lines: InfluenceLines, wishes: Sequence[LaneWish], active: Sequence[int],
    rows: Sequence[_Rows], cap: float,
) -> list[set[Triple]]:
    """For each active wish the (bar, sense, slack set) that its rows' own paths meet, and those of
    the mechanisms in which they end."""
    count = [len(part.bar) for part in rows]
    fixed = np.repeat(np.stack([wishes[i].fixed for i in active]), count, axis=0)
    start = np.repeat([wishes[i].start for i in active], count)
    growing = np.concatenate([part.loads for part in rows]) @ lines.units
    walked = paths(lines.sets, fixed, growing, start=start, cap=min(cap, SEARCHED))
    found, begin = [], 0
    for part in rows:
        its = np.arange(begin, begin + len(part.bar))
        sets = walked.sets[its]
        begin += len(part.bar)
        row, step = np.nonzero(sets >= 0)
        columns = (part.bar[row].tolist(), part.sense[row].tolist(), sets[row, step].tolist())
        found.append(set(zip(*columns, strict=True)) | lost(lines.sets.model, walked, its))
    return found


def _rows(
    lines: InfluenceLines, asked: tuple[Ints, ...], wish: LaneWish, moving: Places | None
) -> _Rows:
    """Worst loads for each bar's pull or push in its slack set, without those that load nothing."""
    bar, sense, number = asked
    ordinates = np.empty((len(bar), len(lines.stations_ft)))
    for one in np.unique(number):
        there = number == one
        ordinates[there] = lines.ordinates(int(one))[:, bar[there]].T
    ordinates *= sense[:, None]
    lane = uniform_panel_loads(lines.stations_ft, ordinates, wish.lane.kip_per_ft)
    if wish.train is not None and wish.lane.point_kip:
        lane += weight_at_greatest(ordinates, wish.lane.point_kip)
    place, loads = np.full(len(bar), -1, dtype=np.intp), lane
    if moving is not None:
        place = (ordinates @ moving.loads.T).argmax(axis=1)
        loads = lane + moving.loads[place]
    some = loads.any(axis=1)
    return _Rows(bar[some], sense[some], lane[some], place[some], loads[some])


def _task(
    lines: InfluenceLines, parts: Sequence[_Rows], moving: Places | None, wish: LaneWish
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
