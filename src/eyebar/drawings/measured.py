"""What measures a truss on the sheet: strings of panels and span, depth, the floor's level."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

from eyebar.drawings import bearings, dimensions
from eyebar.drawings.boxes import Point
from eyebar.drawings.ink import HAIR, Ink, Line
from eyebar.views import sheet_words

STRINGS = (40.0, 70.0)
"""How far below the bearings the two dimension strings run."""
BELOW_NAMES = 30.0
"""Where the fine lines down to the strings begin, under the lowest panel points."""
DEPTH_ASIDE = 50.0
HUNG_DEPTH_ASIDE = 86.0
"""How far outside the end pin the depth is written; the second beside stones that stand there."""

NEAR = 14.0
"""A fine line of extension ends before the first panel point so near its level."""


def truss_size(truss: Mapping[str, Any]) -> tuple[float, float]:
    """Length and depth over all panel points [in]."""
    xs, ys = zip(*truss["joints"].values(), strict=True)
    return max(xs) - min(xs), max(ys) - min(ys)


def surroundings(
    truss: Mapping[str, Any], points: Mapping[str, Point], *, bottom: float, narrow: bool
) -> tuple[Ink, ...]:
    """Strings, depth and level about a truss whose panel points stand on the sheet.

    `bottom` is the lowest level of panel points and bearings. A narrow sheet has no room beside
    the truss: there the depth stands in the words of the span.
    """
    if narrow:
        return _strings(truss, points, bottom, deep=truss_size(truss)[1])
    return (
        *_strings(truss, points, bottom), *_depth(truss, points), *_level(truss, points),
    )


def hung(truss: Mapping[str, Any]) -> set[str]:
    """The supports from which a bar runs down: the truss hangs between them."""
    heights = {joint: y for joint, (_, y) in truss["joints"].items()}
    ends = [bar["ends"] for bar in truss["bars"].values()]
    return {
        joint for joint in truss["supports"]
        if any(joint in pair and min(map(heights.__getitem__, pair)) < heights[joint] - 1e-6
               for pair in ends)
    }


def _strings(
    truss: Mapping[str, Any], points: Mapping[str, Point], bottom: float, *, deep: float = 0.0
) -> tuple[Ink, ...]:
    """Panels and span below the truss, each end with its fine line of extension."""
    named = [joint for joint, _ in truss["floor_joints"]] or list(points)
    stations = sorted(dict.fromkeys(named), key=lambda joint: points[joint][0])

    def reach(one: str, other: str) -> dimensions.Reach:
        return dimensions.Reach(
            start=points[one][0], end=points[other][0],
            length_in=truss["joints"][other][0] - truss["joints"][one][0],
        )

    groups = dimensions.measured_together([reach(one, other) for one, other in pairwise(stations)])
    whole = reach(stations[0], stations[-1])
    panels, span = (bottom + below for below in STRINGS)
    xs = [*(group[0].start for group in groups), whole.end]
    stones = [points[joint][0] for joint in truss["supports"]]
    begin = max(y for _, y in points.values()) + BELOW_NAMES, bottom + 4.0
    return (
        *_extensions(xs, stones, begin, (panels, span)),
        *dimensions.panel_string(groups, panels),
        *dimensions.span_string(
            whole, span, sheet_words.span(len(stations) - 1, whole.length_in, deep)
        ),
    )


def _extensions(
    xs: Sequence[float], stones: Sequence[float], begin: tuple[float, float],
    levels: tuple[float, float],
) -> list[Line]:
    """Fine lines down to the strings, begun under the names, or under the stones near them."""
    ink = []
    for x in xs:
        near = any(abs(x - stone) < bearings.WIDTH / 2 for stone in stones)
        end = levels[1] if x in (xs[0], xs[-1]) else levels[0]
        ink.append(Line(start=(x, begin[1] if near else begin[0]), end=(x, end + 4), weight=HAIR))
    return ink


def _depth(truss: Mapping[str, Any], points: Mapping[str, Point]) -> tuple[Ink, ...]:
    """The greatest depth, left of the truss."""
    left = min(x for x, _ in points.values())
    left -= HUNG_DEPTH_ASIDE if hung(truss) else DEPTH_ASIDE
    ys = [y for _, y in points.values()]
    _, depth = truss_size(truss)
    if depth <= 0:
        return ()
    ink: list[Ink] = []
    for level in (min(ys), max(ys)):
        near = min(x for x, y in points.values() if abs(y - level) < NEAR)
        ink.append(Line(start=(left - 4, level), end=(max(near - 14, left + 8), level),
                        weight=HAIR))
    return (*ink, *dimensions.depth_string(min(ys), max(ys), left, depth))


def _level(truss: Mapping[str, Any], points: Mapping[str, Point]) -> tuple[Ink, ...]:
    """The level of the floor's panel points, where they lie on one."""
    floor = [points[joint] for joint, _ in truss["floor_joints"]]
    if not floor or max(y for _, y in floor) - min(y for _, y in floor) > 1.0:
        return ()
    right = max(x for x, _ in points.values())
    return bearings.level_mark((right + 34, floor[0][1]), "floor")
