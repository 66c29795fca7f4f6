"""The path of a growing load, with one-way bars going slack and taut: many paths at once.

For loads P(m) = fixed + m * growing the forces are straight lines in m between events. In forces
with all bars working, q = q_fixed + m * q_growing on the one-way elements (in their senses), the
truss solves: forces y = q + M s, slackness s, both never negative, never both positive (M is the
model's `slack_matrix`). It is the least complementary energy's condition. This module follows the
solution from m = 0 by exchanging one element at an event; where letting a bar go slack would leave
a mechanism, the slack bar whose gap closes first along the mechanism's motion is let in; where none
closes, equilibrium has come to its end.

Ties are split by a force of about 1e-9 kip, different in every element.
"""

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from eyebar.analysis.model import Floats, Model

Ints = NDArray[np.intp]

CAP = -1
"""Event of a path that ran to its cap."""
END = -2
"""Events at or under this are the end of equilibrium: END - i where element i was the last."""

TIE_KIP = 1e-9
SINGULAR = 1e-9
RATE = 1e-12


@dataclass(frozen=True, slots=True)
class SlackSet:
    """One set of slack elements: `members` (s,) among the one-way elements, `inverse` (s, s) of the
    slack matrix on them, `carried` (s, e) what their unbalanced forces add to every element."""

    mask: int
    members: Ints
    inverse: Floats
    carried: Floats


@dataclass(slots=True)
class SlackSets:
    """The sets that a model has met, each factorised once."""

    model: Model
    sets: list[SlackSet] = field(default_factory=list)
    index: dict[int, int] = field(default_factory=dict)
    moves: dict[tuple[int, int], int | None] = field(default_factory=dict)
    changes: dict[tuple[int, int], list[tuple[str, str]]] = field(default_factory=dict)

    def number(self, mask: int) -> int:
        """The number of the set with these bits, made when it is new."""
        found = self.index.get(mask)
        if found is None:
            found = len(self.sets)
            self.index[mask] = found
            self.sets.append(_slack_set(self.model, mask))
        return found


def _slack_set(model: Model, mask: int) -> SlackSet:
    members = np.array([i for i in range(len(model.unilateral)) if mask >> i & 1], dtype=np.intp)
    inverse: Floats = np.linalg.inv(model.slack_matrix[np.ix_(members, members)]).astype(float)
    carried = -(inverse @ model.slack_effect[members])
    return SlackSet(mask, members, inverse, carried)


@dataclass(frozen=True, slots=True, kw_only=True)
class Paths:
    """r paths of at most k stretches each.

    `count` (r,) stretches of each path; `multiple` (r, k+1) the load multiples at their ends, the
    first 0; `forces` (r, k+1, e) element forces there [kip]; `event` (r, k) the one-way element
    that ends each stretch, or CAP, or END; `sets` (r, k) the slack set on each stretch.
    Beyond a path's own count its rows repeat its last point.
    """

    count: Ints
    multiple: Floats
    forces: Floats
    event: Ints
    sets: Ints


def ties_split(model: Model) -> Floats:
    """(e,) forces of about 1e-9 kip, in their senses, that split ties between one-way elements.

    They are not in equilibrium, and so keep a bar that nothing loads from ending it by rounding.
    """
    forces = np.zeros(len(model.stiffness))
    parts = np.modf(np.arange(1, len(model.sense) + 1) * 0.6180339887498949)[0]
    forces[model.unilateral] = model.sense * TIE_KIP * (1.0 + parts)
    return forces


def paths(
    sets: SlackSets,
    fixed: Floats,
    growing: Floats,
    *,
    start: Ints,
    cap: float | Floats,
) -> Paths:
    """Follow r paths from multiple 0 to `cap` (one figure or (r,)) or to the end of equilibrium.

    Parameters: `fixed`, `growing` (r, e) element forces with all bars working [kip]; `start` (r,)
    the slack set at 0, as `starting_sets` finds it.
    """
    caps = np.broadcast_to(np.asarray(cap, float), len(fixed))
    walk = _Walk(sets, fixed, growing, start=start, cap=caps)
    while len(walk.active):
        walk.advance()
    return walk.result()


class _Walk:
    """State of the walk: one row for each path, advanced one event at a time, set by set."""

    def __init__(
        self,
        sets: SlackSets,
        fixed: Floats,
        growing: Floats,
        *,
        start: Ints,
        cap: Floats,
    ) -> None:
        self.sets, self.fixed, self.growing, self.cap = sets, fixed, growing, cap
        self.current = start.copy()
        self.at = np.zeros(len(fixed))
        self.active = np.arange(len(fixed))
        self.log: list[tuple[Ints, Floats, Floats, Ints, Ints, Floats]] = []

    def advance(self) -> None:
        """Take every active path to its next event."""
        order = np.argsort(self.current[self.active], kind="stable")
        rows = self.active[order]
        numbers = self.current[rows]
        edges = np.flatnonzero(np.diff(numbers)) + 1
        alive = [self._stretch(group) for group in np.split(rows, edges) if len(group)]
        self.active = np.concatenate(alive) if alive else self.active[:0]

    def _stretch(self, rows: Ints) -> Ints:
        number = int(self.current[rows[0]])
        slack = self.sets.sets[number]
        fixed, fixed_gaps = solved(self.sets.model, slack, self.fixed[rows])
        growing, growing_gaps = solved(self.sets.model, slack, self.growing[rows])
        model = self.sets.model
        state = fixed[:, model.unilateral] * model.sense
        rate = growing[:, model.unilateral] * model.sense
        state[:, slack.members], rate[:, slack.members] = fixed_gaps, growing_gaps
        until, event = _next_event(state, rate, self.at[rows], self.cap[rows])
        self.log.append(
            (
                rows,
                until,
                fixed + until[:, None] * growing,
                event,
                np.full(len(rows), number),
                fixed + self.at[rows][:, None] * growing,
            )
        )
        self.at[rows] = until
        for element in np.unique(event[event >= 0]):
            there = np.flatnonzero(event == element)
            after = moved(self.sets, number, int(element))
            if after is not None:
                self.current[rows[there]] = after
                continue
            for i in there:
                gaps = fixed_gaps[i] + until[i] * growing_gaps[i]
                swapped = exchanged(self.sets, slack, int(element), gaps)
                if swapped is None:
                    event[i] = END - element
                else:
                    self.current[rows[i]] = swapped
        return rows[event >= 0]

    def result(self) -> Paths:
        """The log, put in order as rectangular arrays."""
        r, e = self.fixed.shape
        rows = np.concatenate([entry[0] for entry in self.log])
        count = np.bincount(rows, minlength=r)
        k = int(count.max(initial=0))
        order = np.argsort(rows, kind="stable")
        step = np.empty(len(rows), dtype=np.intp)
        step[order] = np.arange(len(rows)) - np.repeat(np.cumsum(count) - count, count)
        multiple, forces = np.zeros((r, k + 1)), np.zeros((r, k + 1, e))
        event, numbers = np.full((r, k), CAP), np.full((r, k), -1)
        multiple[rows, step + 1] = np.concatenate([entry[1] for entry in self.log])
        forces[rows, step + 1] = np.concatenate([entry[2] for entry in self.log])
        event[rows, step] = np.concatenate([entry[3] for entry in self.log])
        numbers[rows, step] = np.concatenate([entry[4] for entry in self.log])
        first, begin = rows[step == 0], np.concatenate([entry[5] for entry in self.log])[step == 0]
        forces[first, 0] = begin
        for column in range(1, k + 1):
            done = count < column
            multiple[done, column] = multiple[done, column - 1]
            forces[done, column] = forces[done, column - 1]
        return Paths(count=count, multiple=multiple, forces=forces, event=event, sets=numbers)


def solved(model: Model, slack: SlackSet, forces: Floats) -> tuple[Floats, Floats]:
    """Element forces (r, e) [kip] and gaps (r, s) [in times root of stiffness] with this set slack.

    `forces` (r, e): those with all bars working.
    """
    elements = model.unilateral[slack.members]
    unbalanced = forces[:, elements] * (model.sense / model.root)[slack.members]
    return forces + unbalanced @ slack.carried, -(unbalanced @ slack.inverse)


def _next_event(state: Floats, rate: Floats, at: Floats, cap: Floats) -> tuple[Floats, Ints]:
    """Multiple and one-way element of the next event of each row; CAP where none comes first."""
    if not state.shape[1]:
        return cap.copy(), np.full(len(at), CAP)
    scale = RATE * (1.0 + np.abs(rate).max(axis=1, keepdims=True))
    falling = rate < -scale
    when = np.where(falling, -state / np.where(falling, rate, 1.0), np.inf)
    event = when.argmin(axis=1)
    until = np.maximum(when[np.arange(len(at)), event], at)
    capped = until >= cap
    return np.where(capped, cap, until), np.where(capped, CAP, event)


def moved(sets: SlackSets, number: int, event: int) -> int | None:
    """The set after one element goes slack or taut; None where going slack leaves a mechanism."""
    key = (number, event)
    if key not in sets.moves:
        slack, bit = sets.sets[number], 1 << event
        if slack.mask & bit:
            sets.moves[key] = sets.number(slack.mask ^ bit)
        else:
            coupling, motion = motion_of(sets.model, slack, event)
            pivot = sets.model.slack_matrix[event, event] + coupling @ motion
            sets.moves[key] = sets.number(slack.mask | bit) if pivot > SINGULAR else None
    return sets.moves[key]


def exchanged(sets: SlackSets, slack: SlackSet, event: int, gaps: Floats) -> int | None:
    """The set after an element's going slack has let another one in; None where equilibrium ends.

    `gaps` (s,) of the slack elements at the event. The mechanism moves without changing any force;
    the slack element whose gap it closes first becomes taut.
    """
    _, motion = motion_of(sets.model, slack, event)
    closing = motion < -SINGULAR
    if not closing.any():
        return None
    ratios = np.where(closing, gaps / np.where(closing, -motion, 1.0), np.inf)
    let_in = int(slack.members[int(np.argmin(ratios))])
    return sets.number((slack.mask | 1 << event) ^ (1 << let_in))


def motion_of(model: Model, slack: SlackSet, event: int) -> tuple[Floats, Floats]:
    """Coupling of one element with the slack ones, and how their gaps follow its own (s,)."""
    coupling = model.slack_matrix[slack.members, event]
    return coupling, -(slack.inverse @ coupling)


def starting_sets(sets: SlackSets, fixed: Floats) -> list[int | None]:
    """The slack set of each row of `fixed` (r, e) by itself; None where there is no equilibrium."""
    found: list[int | None] = []
    for row in fixed:
        walked = lowered(sets, row)
        last = walked.count[0] - 1
        lost = walked.event[0, last] <= END
        found.append(None if lost else int(walked.sets[0, last]))
    return found


def lowered(sets: SlackSets, forces: Floats) -> Paths:
    """The path on which forces (e,), raised until every one-way element works, come down again."""
    model = sets.model
    working = forces[model.unilateral] * model.sense
    lift = max(0.0, float(-working.min(initial=0.0))) + 1.0
    raised = forces.copy()
    raised[model.unilateral] += lift * model.sense
    lowering = np.zeros_like(forces)
    lowering[model.unilateral] = -model.sense
    begin = np.array([sets.number(0)])
    return paths(sets, raised[None], lowering[None], start=begin, cap=lift)
