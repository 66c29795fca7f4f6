"""Turned rectangles on the sheet, and whether they touch: what keeps letterings apart.

The sheet's unit is 1/96 inch, x to the right, y down; angles in radians, clockwise as seen.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass, field, replace

CELL = 48.0
"""Side of the squares [1/96 in] into which taken ground is sorted, so that few boxes are tried."""

Point = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A rectangle about (x, y): `along` and `across` are half its sides, `angle` its turn.

    What every comparison needs is worked out once: its direction, and its `bounds`, the least x,
    least y, greatest x and greatest y.
    """

    x: float
    y: float
    along: float
    across: float
    angle: float = 0.0
    cos: float = field(init=False, repr=False)
    sin: float = field(init=False, repr=False)
    bounds: tuple[float, float, float, float] = field(init=False, repr=False)

    def __post_init__(self) -> None:
        cos, sin = math.cos(self.angle), math.sin(self.angle)
        wide = self.along * abs(cos) + self.across * abs(sin)
        high = self.along * abs(sin) + self.across * abs(cos)
        object.__setattr__(self, "cos", cos)
        object.__setattr__(self, "sin", sin)
        object.__setattr__(
            self, "bounds", (self.x - wide, self.y - high, self.x + wide, self.y + high)
        )

    @property
    def corners(self) -> tuple[Point, Point, Point, Point]:
        """The four corners, in order around it."""
        ax, ay = self.along * self.cos, self.along * self.sin
        bx, by = -self.across * self.sin, self.across * self.cos
        return (
            (self.x + ax + bx, self.y + ay + by), (self.x + ax - bx, self.y + ay - by),
            (self.x - ax - bx, self.y - ay - by), (self.x - ax + bx, self.y - ay + by),
        )

    def grown(self, by: float) -> "Box":
        """The same box, `by` larger on every side."""
        return Box(
            x=self.x, y=self.y, along=self.along + by, across=self.across + by, angle=self.angle
        )


def upright(left: float, top: float, right: float, bottom: float) -> Box:
    """The box between two uprights and two levels."""
    return Box(
        x=(left + right) / 2, y=(top + bottom) / 2,
        along=abs(right - left) / 2, across=abs(bottom - top) / 2,
    )


def strip(start: Point, end: Point, half_width: float) -> Box:
    """The box around a straight line of some breadth."""
    run, fall = end[0] - start[0], end[1] - start[1]
    return Box(
        x=(start[0] + end[0]) / 2, y=(start[1] + end[1]) / 2,
        along=math.hypot(run, fall) / 2, across=half_width, angle=math.atan2(fall, run),
    )


def touching(one: Box, other: Box) -> bool:
    """Whether two boxes have a point in common: no side of either parts them."""
    a, b = one.bounds, other.bounds
    if a[0] > b[2] or b[0] > a[2] or a[1] > b[3] or b[1] > a[3]:
        return False
    return not (_parted(one, other) or _parted(other, one))


def _parted(one: Box, other: Box) -> bool:
    """Whether a side of the first box parts the second from it."""
    dx, dy = other.x - one.x, other.y - one.y
    cos = abs(one.cos * other.cos + one.sin * other.sin)
    sin = abs(one.cos * other.sin - one.sin * other.cos)
    return (
        abs(dx * one.cos + dy * one.sin) > one.along + other.along * cos + other.across * sin
        or abs(dy * one.cos - dx * one.sin) > one.across + other.along * sin + other.across * cos
    )


@dataclass(frozen=True, slots=True)
class TakenGround:
    """Where something stands already; boxes are added as lettering finds its place."""

    _cells: dict[tuple[int, int], list[Box]] = field(default_factory=dict)

    def take(self, *boxes: Box) -> None:
        """Put boxes on the ground."""
        for box in boxes:
            for cell in _cells(box):
                self._cells.setdefault(cell, []).append(box)

    def free(self, boxes: Iterable[Box]) -> bool:
        """Whether none of the boxes touches what stands there."""
        return not any(
            touching(box, taken)
            for box in boxes
            for cell in _cells(box)
            for taken in self._cells.get(cell, ())
        )

    def copied(self) -> "TakenGround":
        """The same ground, to try something on."""
        return TakenGround({cell: list(boxes) for cell, boxes in self._cells.items()})


def _cells(box: Box) -> list[tuple[int, int]]:
    left, top, right, bottom = box.bounds
    if box.along > CELL and box.angle % (math.pi / 2):
        return _cells_along(box)
    return [
        (column, row)
        for column in range(int(left // CELL), int(right // CELL) + 1)
        for row in range(int(top // CELL), int(bottom // CELL) + 1)
    ]


def _cells_along(box: Box) -> list[tuple[int, int]]:
    """The cells of a long slanting box, piece by piece: its bounds would cover the whole panel."""
    pieces = math.ceil(2 * box.along / CELL)
    half, cos, sin = box.along / pieces, math.cos(box.angle), math.sin(box.angle)
    found: dict[tuple[int, int], None] = {}
    for i in range(pieces):
        off = (2 * i + 1) * half - box.along
        piece = replace(box, x=box.x + off * cos, y=box.y + off * sin, along=half)
        found.update(dict.fromkeys(_cells(piece)))
    return list(found)
