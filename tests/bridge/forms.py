"""Forms laid out from a few sizes, for the tests of this folder, and the statics of a layout."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import accumulate

import numpy as np
from numpy.typing import NDArray

from eyebar.bridge.form_rules import FORMS, broken_rules, broken_shape
from eyebar.bridge.forms import Layout, Sizes
from eyebar.errors import OutOfRange
from eyebar.record.form_joints import Pattern, depth_joints
from eyebar.record.form_words import CURVED, SUBDIVIDED
from eyebar.terms import EndPosts, FloorOn, Form, Kind, SubMembers
from tests.analysis.trusses import Drawing, bar

PANEL = 180.0
DEPTH = 240.0


def curved_depths(form: Form, joints: Sequence[str], stations: Sequence[float]) -> dict[str, float]:
    """Depths [in] that fit a form: level, two slopes up for a Camelback, else a parabola."""
    if form not in CURVED:
        return dict.fromkeys(joints, DEPTH)
    if form is Form.CAMELBACK:
        ends = {1, len(stations) - 2}
        return {joint: 200.0 if int(joint[1:]) in ends else DEPTH for joint in joints}
    span = stations[-1]
    least = 100.0 if form in (Form.PARKER, Form.PENNSYLVANIA) else 0.0
    at = {joint: stations[int(joint[1:])] for joint in joints}
    return {joint: least + DEPTH * 4.0 * x * (span - x) / span**2 for joint, x in at.items()}


def sizes(
    form: Form, panels: Sequence[float] | int, *, depths: Mapping[str, float] | None = None,
    **how: object,
) -> Sizes:
    """Sizes of a form: so many panels of 15 ft, or panels given [in]; 20 ft deep, or as curved."""
    lengths = (PANEL,) * panels if isinstance(panels, int) else tuple(panels)
    hip = min(lengths[0], lengths[-1]) / 2.0
    found = replace(Sizes(panels=lengths, depths={}, hip=hip), **how)
    pattern = Pattern(
        form=form, count=len(lengths), end_posts=found.end_posts, floor=found.floor
    )
    stations = (0.0, *accumulate(lengths))
    fitting = curved_depths(form, depth_joints(pattern), stations)
    return replace(found, depths=fitting if depths is None else depths)


def form(word: Form, panels: Sequence[float] | int, **how: object) -> Layout:
    """A form laid out from `sizes`. Raises OutOfRange for what the form does not allow."""
    of = sizes(word, panels, **how)
    for what, got, limit in broken_rules(word, of):
        raise OutOfRange(what, got, limit)
    layout = FORMS[word].lay(of)
    for what, got, limit in broken_shape(word, of, layout):
        raise OutOfRange(what, got, limit)
    return layout


def ways(word: Form) -> Iterator[dict[str, object]]:
    """Every way of ending and of carrying the floor that a form allows, and of subdividing it."""
    rule = FORMS[word]
    for end_posts in rule.end_posts:
        for floor in rule.floors:
            if not _fits(word, end_posts, floor):
                continue
            for sub in SubMembers if word in SUBDIVIDED else (SubMembers.STRUTS,):
                yield {"end_posts": end_posts, "floor": floor, "sub_members": sub}


def _fits(word: Form, end_posts: EndPosts, floor: FloorOn) -> bool:
    """What hangs has its floor above; a floor above lies on a level chord or hangs a lens."""
    if end_posts is EndPosts.NONE:
        return floor is FloorOn.UPPER
    return floor is FloorOn.LOWER or word not in CURVED or word is Form.LENTICULAR


def counts(word: Form, most: int) -> list[int]:
    """The numbers of panels that a form allows, up to `most`."""
    rule = FORMS[word]
    return list(range(rule.least, min(rule.most, most) + 1, 2 if rule.even else 1))


def bearings(layout: Layout) -> tuple[str, str]:
    """The joints over the bearings."""
    letter = "L" if "L0" in layout.joints else "U"
    of_chord = [joint for joint in layout.joints if joint[0] == letter]
    return f"{letter}0", max(of_chord, key=lambda joint: layout.joints[joint][0])


def of_kind(layout: Layout, kind: Kind) -> set[str]:
    """Names of the bars whose own word is a kind."""
    return {one.name for one in layout.bars.values() if one.kinds[0] is kind}


def called(layout: Layout, word: str) -> set[str]:
    """Names of the bars that the trade calls by a word."""
    return {one.name for one in layout.bars.values() if one.called == word}


def equilibrium(layout: Layout) -> tuple[NDArray[np.float64], list[tuple[str, int]]]:
    """(d, n) what a pull of each bar does to each free direction, and those directions.

    Pinned at end 0, on rollers at the other.
    """
    first, last = bearings(layout)
    held = {(first, 0), (first, 1), (last, 1)}
    free = [(joint, axis) for joint in layout.joints for axis in (0, 1)
            if (joint, axis) not in held]
    rows = {one: row for row, one in enumerate(free)}
    matrix = np.zeros((len(free), len(layout.bars)))
    for column, one in enumerate(layout.bars.values()):
        near, far = (np.array(layout.joints[joint]) for joint in one.ends)
        along = (far - near) / np.linalg.norm(far - near)
        for joint, sense in zip(one.ends, (1.0, -1.0), strict=True):
            for axis in (0, 1):
                if (joint, axis) in rows:
                    matrix[rows[joint, axis], column] += sense * along[axis]
    return matrix, free


def redundancy(layout: Layout) -> int:
    """Bars beyond those that statics needs: bars + 3 reactions - 2 joints."""
    return len(layout.bars) + 3 - 2 * len(layout.joints)


def forces(layout: Layout, loads: Mapping[str, float]) -> dict[str, float]:
    """Bar -> force under loads (joint -> kip down) of a determinate truss, joint by joint."""
    matrix, free = equilibrium(layout)
    assert matrix.shape[0] == matrix.shape[1], "not determinate"
    down = np.array([loads.get(joint, 0.0) if axis else 0.0 for joint, axis in free])
    found = np.linalg.solve(matrix, down)
    return dict(zip(layout.bars, found.tolist(), strict=True))


def drawing(layout: Layout) -> Drawing:
    """The layout as the analysis's tests draw trusses: every bar alike and working both ways."""
    first, last = bearings(layout)
    return Drawing(
        joints=layout.joints,
        bars=tuple(bar(*one.ends, 6.0) for one in layout.bars.values()),
        supports={first: (True, True), last: (False, True)},
        floor_joints=tuple(joint for joint, _ in layout.floor_joints),
    )
