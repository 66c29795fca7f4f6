"""Lane loads that are worst for a pin itself.

A pin's moment comes from all its bars together: the lane load that is worst for it need not be the
worst for any bar. In one slack set forces are straight in the loads, and the pin's check is convex
in them: it is over its tangent, so that the load that is worst for the tangent at the forces known
is worse than these, or they are already worst in that direction. From four directions of every
resultant this is climbed in the slack set in which the check is known to be reached, and on along
the tangents of bending and shear together; what is found is followed along its own path, and
climbed again from where that leads. The loads that bring a pin to its limit earlier are swept for
that pin. What is found is bounded by trying, not proven; tests hold it against every pattern of
loaded panels, and where no bar goes slack against the worst from all sides, which is proven.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace

import numpy as np

from eyebar.analysis.model import Floats
from eyebar.analysis.passage import sets_before
from eyebar.analysis.paths import Ints, Paths, paths, solved
from eyebar.analysis.places import Places
from eyebar.analysis.rays import Task
from eyebar.analysis.sweep import sweeps
from eyebar.bridge.parts import Pin
from eyebar.rating.families import CAP, LANE_PREFIX, Swept
from eyebar.rating.pin_checks import PinCheck, PinRules, pin_check
from eyebar.rating.pin_lane_groups import LaneGroup
from eyebar.rating.pin_table import PinTable
from eyebar.rating.pin_tangents import tangents, units
from eyebar.terms import Direction

ROUNDS = 3
CLIMBS = 2
MORE = 1e-6
"""A load counts where it brings a check over 1 by more than this."""
QUARTERS = np.array([[1.0, 0.0], [-1.0, 0.0], [0.0, 1.0], [0.0, -1.0]])
TURNED = np.array([[0.0, -1.0], [1.0, 0.0]])


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """One lane load with what stands beside it: `loads` (p,); train and place of it, or -1."""

    loads: Floats
    train: int = -1
    place: int = -1


@dataclass(slots=True, kw_only=True)
class _Sought:
    """One pin by one rule: the multiple at which its check is reached so far, the forces (b,) and
    slack set there, the load that does it, and the slack sets that were climbed."""

    pin: int
    group: LaneGroup
    check: PinCheck
    columns: Ints
    multiple: float
    forces: Floats
    number: int
    best: Laid | None = None
    climbed: set[int] = field(default_factory=set)

    def counting(self, ordinates: Floats, dead: Floats) -> tuple[Floats, Floats]:
        """The rows across and upright (s, b) of those resultants that some load may bring to the
        limit: none is over what it would be with every weight where it counts most, all in one
        direction."""
        both = self.check.rows.reshape(2, -1, len(self.columns))
        each = np.hypot(*(both @ ordinates.T))
        most = np.hypot(*(both @ dead)) + self.multiple * self.group.weigh(each)
        chosen = self.check.counting(most)
        return both[0, chosen], both[1, chosen]

    def follow(self, laid: Laid, walked: Paths, row: int) -> bool:
        """Take what the path of a load tells; whether there is something left to climb."""
        model = self.group.loaded.model
        count = int(walked.count[row])
        along = model.bar_forces(walked.forces[row, : count + 1])[:, self.columns]
        values = self.check(along)
        over = np.flatnonzero((values[:-1] < 1.0) & (values[1:] >= 1.0))
        self.forces, step = along[count], count - 1
        if len(over):
            step = int(over[0])
            change = along[step + 1] - along[step]
            part = self.check.passed(along[step][None], change[None], np.ones(1))[0]
            begin, end = walked.multiple[row, step : step + 2]
            multiple = float(begin + part * (end - begin))
            if multiple < self.multiple * (1.0 - MORE):
                self.multiple, self.best = multiple, laid
                self.forces = along[step] + part * change
                self.climbed.clear()
        self.number = int(walked.sets[row, step])
        return self.number not in self.climbed


@dataclass(slots=True, kw_only=True)
class _Climb:
    """The way of one pin to the worst load in its slack set, at the multiple: influence lines
    (p, b) of its bars, dead forces (b,), the rows across and upright (r, b) that may count, the
    directions (d r, 2) they are looked at from; the worst load so far, and its check's value."""

    one: _Sought
    ordinates: Floats
    dead: Floats
    across: Floats
    up: Floats
    toward: Floats
    value: float = 1.0 + MORE
    laid: Laid | None = None

    def tangents(self) -> Floats:
        """(d r, p) influence lines of the tangents to the resultants."""
        times = len(self.toward) // len(self.across)
        tangents = self.toward[:, :1] * np.tile(self.across, (times, 1))
        tangents += self.toward[:, 1:] * np.tile(self.up, (times, 1))
        lines: Floats = tangents @ self.ordinates.T
        return lines

    def take(self, loads: Floats, place: Ints) -> None:
        """Look at loads (t, d r, p) with their places (t, d r), and turn to where they lead."""
        along = self.keep(loads, place)[0].reshape(-1, *self.across.shape)
        self.toward = units(np.stack(
            [(one * along).sum(axis=-1).ravel() for one in (self.across, self.up)], axis=1
        ))

    def keep(self, loads: Floats, place: Ints) -> Floats:
        """(t, n, b) bar forces under loads (t, n, p) with their places (t, n); the worst of all is
        kept."""
        forces: Floats = self.dead + self.one.multiple * (loads @ self.ordinates)
        values = self.one.check(forces)
        best = int(values.argmax())
        train, row = divmod(best, values.shape[1])
        if values[train, row] > self.value:
            self.value = float(values[train, row])
            self.laid = Laid(
                loads=loads[train, row], train=train if self.one.group.trains else -1,
                place=int(place[train, row]),
            )
        return forces

    def joint(self) -> Floats:
        """(c, p) influence lines of the tangents of bending and shear together, where it is."""
        forces = self.one.forces
        if self.laid is not None:
            forces = self.dead + self.one.multiple * (self.laid.loads @ self.ordinates)
        lines: Floats = tangents(self.one.check, forces) @ self.ordinates.T
        return lines


def _climb(one: _Sought) -> _Climb | None:
    """The beginning of a climb; None where no load can be worse."""
    one.climbed.add(one.number)
    loaded = one.group.loaded
    ordinates = loaded.lines.ordinates(one.number)[:, one.columns]
    slack = loaded.sets.sets[one.number]
    elements, _ = solved(loaded.model, slack, loaded.dead(*one.group.dead)[None])
    dead = loaded.model.bar_forces(elements)[0, one.columns]
    across, up = one.counting(ordinates, dead)
    if not len(across):
        return None
    at = units(np.stack([across @ one.forces, up @ one.forces], axis=1))
    return _Climb(
        one=one, ordinates=ordinates, dead=dead, across=across, up=up,
        toward=np.concatenate([
            at @ (cosine * np.eye(2) + sine * TURNED) for cosine, sine in QUARTERS
        ]),
    )


def _climbed(active: Sequence[_Sought]) -> list[tuple[_Sought, Laid]]:
    """The worst loads of pins in their slack sets, of those for which one is worse than known."""
    climbs = [climb for one in active if (climb := _climb(one)) is not None]
    for _ in range(CLIMBS):
        for climb, loads, place in _worst([(climb, climb.tangents()) for climb in climbs]):
            climb.take(loads, place)
    going = climbs
    while going:
        before = [climb.value for climb in going]
        for climb, loads, place in _worst([(climb, climb.joint()) for climb in going]):
            climb.keep(loads, place)
        going = [
            climb for climb, value in zip(going, before, strict=True)
            if climb.value > value * (1.0 + MORE)
        ]
    return [(climb.one, climb.laid) for climb in climbs if climb.laid is not None]


def _worst(asked: Sequence[tuple[_Climb, Floats]]) -> Iterator[tuple[_Climb, Floats, Ints]]:
    """The loads (t, r, p) that are worst for influence lines (r, p) of climbs, with their places
    (t, r), looked up group by group; nothing of climbs without lines."""
    by_group: dict[int, list[tuple[_Climb, Floats]]] = {}
    for climb, lines in asked:
        if len(lines):
            by_group.setdefault(id(climb.one.group), []).append((climb, lines))
    for members in by_group.values():
        every, places = members[0][0].one.group.worst(np.concatenate([one for _, one in members]))
        ends = np.cumsum([len(lines) for _, lines in members]).tolist()
        loads = every.reshape(-1, ends[-1], every.shape[-1])
        place = places.reshape(-1, ends[-1])
        for (climb, lines), end in zip(members, ends, strict=True):
            rows = slice(end - len(lines), end)
            yield climb, loads[:, rows], place[:, rows]


def lane_sweeps(
    groups: Iterable[tuple[LaneGroup, PinRules]], pins: Sequence[Pin], table: PinTable
) -> None:
    """Find the lane loads that are worst for pins, by groups and rules, and keep their sweeps in
    the table. Pins alike, on trusses alike, are looked at once."""
    sought = [
        one for group, by in groups for pin in pins
        if (one := _sought(group, by, pin, table)) is not None
    ]
    active = sought
    for _ in range(ROUNDS):
        active = list(_followed(_climbed(active)))
    _keep([one for one in sought if one.best is not None], table)


def _sought(group: LaneGroup, by: PinRules, pin: Pin, table: PinTable) -> _Sought | None:
    """A pin where it is reached so far; None where it is known or nothing reaches it."""
    number = table.alike(pin)
    key = (id(group.loaded), id(group.family), group.dead, id(by), number)
    if key in table.lanes_sought:
        return None
    table.lanes_sought.add(key)
    least, swept = min(
        ((table.passed_by(pin, by, one).multiple[one.sweep.place], one) for one in group.known),
        key=lambda pair: pair[0],
    )
    if not 0.0 < least < np.inf:
        return None
    found, place = table.passed_by(pin, by, swept), swept.sweep.place
    rows = table.rows_of(pin)
    columns = table.columns_of(swept, rows)
    edge = found.edge[place]
    p, q = swept.sweep.edges[edge]
    first, second = swept.sweep.forces[p, columns], swept.sweep.forces[q, columns]
    return _Sought(
        pin=number, group=group, check=pin_check(rows, by), columns=columns, multiple=least,
        forces=first + found.part[place] * (second - first),
        number=int(sets_before(swept.sweep, np.array([edge]))[0]),
    )


def _followed(tried: Sequence[tuple[_Sought, Laid]]) -> Iterator[_Sought]:
    """Follow the paths of loads; those for which something is left to climb."""
    by_truss: dict[int, list[tuple[_Sought, Laid]]] = {}
    for one, laid in tried:
        by_truss.setdefault(id(one.group.loaded), []).append((one, laid))
    for members in by_truss.values():
        loaded = members[0][0].group.loaded
        dead = [one.group.dead for one, _ in members]
        walked = paths(
            loaded.sets, np.stack([loaded.dead(*pair) for pair in dead]),
            np.stack([laid.loads for _, laid in members]) @ loaded.lines.units,
            start=np.array([loaded.start(*pair) for pair in dead]),
            cap=np.array([one.multiple for one, _ in members]),
        )
        for row, (one, laid) in enumerate(members):
            if one.follow(laid, walked, row):
                yield one


def _keep(found: Sequence[_Sought], table: PinTable) -> None:
    """Sweep the loads that were found, group by group, each for its pin."""
    groups: dict[tuple[int, int], list[_Sought]] = {}
    for one in found:
        assert one.best is not None
        groups.setdefault((id(one.group), one.best.train), []).append(one)
    by_truss: dict[int, list[tuple[LaneGroup, Task, frozenset[int]]]] = {}
    for members in groups.values():
        group = members[0].group
        task = _task(group, [one.best for one in members if one.best is not None])
        meant = frozenset(one.pin for one in members)
        by_truss.setdefault(id(group.loaded), []).append((group, task, meant))
    for tasks in by_truss.values():
        tasks.sort(key=lambda one: one[0].dead)
        loaded = tasks[0][0].loaded
        done = sweeps(loaded.sets, [task for _, task, _ in tasks], CAP)
        for sweep, (group, _, meant) in zip(done, tasks, strict=True):
            placed = bool(group.trains)
            table.lanes.setdefault((id(loaded), id(group.family), group.dead), []).append((
                Swept(
                    loaded=loaded, sweep=sweep, dead=group.dead, family=group.family,
                    bars=np.zeros(len(loaded.model.bars), dtype=bool),
                    prefix="" if placed else LANE_PREFIX, placed=placed,
                ), meant,
            ))


def _task(group: LaneGroup, laid: Sequence[Laid]) -> Task:
    """Loads as places of one train, each by itself."""
    loads = np.stack([one.loads for one in laid])
    count, train = len(laid), laid[0].train
    stand = Places(
        direction=Direction.UP, front_ft=np.full(count, np.nan), loads=loads,
        spacing_ft=np.zeros((count, 0)), line=np.arange(count),
    )
    if train >= 0:
        moving, place = group.trains[train], [one.place for one in laid]
        stand = replace(
            stand, direction=moving.direction, front_ft=moving.front_ft[place],
            spacing_ft=moving.spacing_ft[place],
        )
    return Task(
        places=stand, fixed=group.loaded.dead(*group.dead),
        start=group.loaded.start(*group.dead), growing=loads @ group.loaded.lines.units,
    )
