"""The straight sides of a chord: what its joints make of it, whatever stands on a straight line."""

from collections.abc import Sequence
from itertools import pairwise

Point = tuple[float, float]
Side = tuple[Point, Point]


def straight_sides(points: Sequence[Point], within: float) -> tuple[Side, ...]:
    """The sides of a line of points from left to right, from corner to corner.

    A side runs on while all points that it passes lie no farther than `within` above or below it;
    both in one unit.
    """
    corners, start = [points[0]], 0
    for i in range(1, len(points) - 1):
        if not _straight(points[start:i + 2], within):
            corners.append(points[i])
            start = i
    return tuple(pairwise([*corners, points[-1]]))


def _straight(points: Sequence[Point], within: float) -> bool:
    """Whether all points lie on the line from the first to the last."""
    (x, y), (u, v) = points[0], points[-1]
    return all(abs(y + (v - y) * (a - x) / (u - x) - b) <= within for a, b in points)
