"""What may befall the lines of a truss before one looks at it: for the table of results."""

from collections.abc import Callable, Iterator
from itertools import combinations

import numpy as np

from eyebar.history import Lines, lines_of, mirrored
from eyebar.history.lines import Bar
from eyebar.terms import Form
from tests.bridge.forms import form
from tests.history.trusses import cases, of_form, seen

COUNTED = (
    Form.PRATT, Form.SMALL_PRATT, Form.HALF_HIP_PRATT, Form.PARKER, Form.CAMELBACK, Form.HOWE,
    Form.DOUBLE_INTERSECTION_PRATT,
)
"""Common practice: forms in which counters cross diagonals."""
PANELS = {
    Form.PRATT: 7, Form.DOUBLE_INTERSECTION_PRATT: 9, Form.PARKER: 8, Form.CAMELBACK: 9,
    Form.WARREN: 6, Form.WARREN_WITH_VERTICALS: 8, Form.DOUBLE_INTERSECTION_WARREN: 6,
    Form.HOWE: 6, Form.BALTIMORE: 12, Form.PENNSYLVANIA: 12, Form.HALF_HIP_PRATT: 5,
    Form.KING_POST: 2, Form.QUEEN_POST: 3, Form.SMALL_PRATT: 3, Form.BOWSTRING: 8,
    Form.LENTICULAR: 8,
}
"""Of a usual truss of each form."""
MOST = 9
"""Panels up to which every truss of a form is drawn."""


def as_defined(word: Form) -> Iterator[Lines]:
    """Every number of panels, every kind of end and floor."""
    for case in cases(MOST):
        if case[0] is word:
            yield of_form(word, case[1], **case[2])


def unequal(word: Form) -> Iterator[Lines]:
    """Panels between 0.8 and 1.2 of the usual, at random; halves of a panel stay halves."""
    for seed in range(4):
        draw = np.random.default_rng(seed)
        panels = 180.0 * draw.uniform(0.8, 1.2, PANELS[word])
        if word in (Form.BALTIMORE, Form.PENNSYLVANIA):
            panels = np.repeat(panels[::2], 2)
        yield of_form(word, panels.tolist())


def skewed(word: Form) -> Iterator[Lines]:
    """The end panel shorter at one end and longer at the other, as in a truss of a skew bridge."""
    halves = 2 if word in (Form.BALTIMORE, Form.PENNSYLVANIA) else 1
    for part in (0.85, 0.7):
        panels = [180.0] * PANELS[word]
        panels[:halves] = [180.0 * part] * halves
        panels[-halves:] = [180.0 * (2.0 - part)] * halves
        yield of_form(word, panels)


def taped(word: Form) -> Iterator[Lines]:
    """Every joint taped half an inch wrong at most, at random."""
    for seed in range(4):
        draw = np.random.default_rng(seed)
        true = of_form(word, PANELS[word])
        yield Lines(
            {joint: (x + draw.uniform(-0.5, 0.5), y + draw.uniform(-0.5, 0.5))
             for joint, (x, y) in true.joints.items()},
            true.bars,
        )


def counters_added(word: Form) -> Iterator[Lines]:
    """One more counter, then two, across the diagonals next to the middle."""
    if word not in COUNTED:
        return
    for count in range(PANELS[word], PANELS[word] + 2):
        true = of_form(word, count) if _allows(word, count) else None
        for more in (1, 2):
            if true and len(found := list(_counters(true))) >= more:
                yield lines_of(true.joints, (*true.bars, *found[:more]))


def counters_lost(word: Form) -> Iterator[Lines]:
    """Of two diagonals that cross as mates in a panel, one is gone; each in turn."""
    if word not in COUNTED:
        return
    for count in range(PANELS[word], PANELS[word] + 2):
        if not _allows(word, count):
            continue
        true = of_form(word, count)
        for one, other in combinations(true.diagonals, 2):
            if _across(one, true) == frozenset(other):
                for gone in (one, other):
                    yield Lines(true.joints, tuple(bar for bar in true.bars if bar != gone))


def half_hidden(word: Form) -> Iterator[Lines]:
    """One half alone, to a joint in the middle; three panels have none."""
    count = PANELS[word] - PANELS[word] % 2
    if PANELS[word] == 3:
        return
    whole = seen(form(word, count))
    kept = {joint: at for joint, at in whole.joints.items() if at[0] <= whole.middle + 1.0}
    yield mirrored(Lines(kept, tuple(bar for bar in whole.bars if {*bar} <= kept.keys())))


BEFALLS: dict[str, Callable[[Form], Iterator[Lines]]] = {
    "as defined": as_defined, "unequal panels": unequal, "skew": skewed, "taped badly": taped,
    "counters added": counters_added, "counters lost": counters_lost, "half hidden": half_hidden,
}
"""Heading of the table -> the trusses under it."""


def _allows(word: Form, count: int) -> bool:
    return word is not Form.SMALL_PRATT or count == PANELS[word]


def _counters(lines: Lines) -> Iterator[Bar]:
    """Bars that would cross a lone diagonal as its mate, those next to the middle first."""
    there = {frozenset(bar) for bar in lines.bars}
    near = sorted(lines.diagonals, key=lambda bar: abs(
        sum(lines.joints[joint][0] for joint in bar) / 2.0 - lines.middle))
    for bar in near:
        mate = _across(bar, lines)
        if mate and mate not in there:
            one, other = sorted(mate)
            yield one, other


def _across(bar: Bar, lines: Lines) -> frozenset[str]:
    """The two joints over and under the ends of a diagonal; empty where one is missing."""
    low, high = sorted(bar, key=lambda joint: lines.joints[joint][1])
    over = [one for one in lines.upper if _same_place(one, low, lines) and one != low]
    under = [one for one in lines.lower if _same_place(one, high, lines) and one != high]
    return frozenset((*over, *under)) if over and under else frozenset()


def _same_place(one: str, other: str, lines: Lines) -> bool:
    return abs(lines.joints[one][0] - lines.joints[other][0]) < 1.0
