"""What is gone of a piece: strokes inside its outline as built and outside what is left."""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from eyebar.drawings.boxes import Point
from eyebar.drawings.ink import HAIR, Line
from eyebar.drawings.lettering import RUST

STEP = 3.2
"""Between two strokes."""

Span = tuple[float, float]


def hatched(built: Sequence[Point], left: Sequence[Point]) -> Iterator[Line]:
    """Strokes that rise to the right, where the first figure is and the second is not."""
    turned = [_turned(points) for points in (built, left)]
    if not turned[0]:
        return
    low, high = min(y for _, y in turned[0]), max(y for _, y in turned[0])
    count = int((high - low) / STEP)
    for i in range(count + 1):
        level = low + (high - low - count * STEP) / 2 + i * STEP + 1e-4
        for start, end in _without(_inside(turned[0], level), _inside(turned[1], level)):
            if end - start > 0.3:
                yield Line(start=_back((start, level)), end=_back((end, level)), weight=HAIR,
                           colour=RUST)


def _turned(points: Sequence[Point]) -> list[Point]:
    """Turned by an eighth, so that strokes run level."""
    root = math.sqrt(0.5)
    return [((x - y) * root, (x + y) * root) for x, y in points]


def _back(point: Point) -> Point:
    root, (x, y) = math.sqrt(0.5), point
    return (x + y) * root, (y - x) * root


def _inside(points: Sequence[Point], level: float) -> list[Span]:
    """Where a level line is inside a figure."""
    if not points:
        return []
    crossed = sorted(
        x1 + (level - y1) / (y2 - y1) * (x2 - x1)
        for (x1, y1), (x2, y2) in pairwise((*points, points[0]))
        if (y1 <= level) != (y2 <= level)
    )
    return list(zip(crossed[::2], crossed[1::2], strict=True))


def _without(spans: list[Span], gone: list[Span]) -> list[Span]:
    found = spans
    for low, high in gone:
        found = [
            part for start, end in found
            for part in ((start, min(end, low)), (max(start, high), end)) if part[1] > part[0]
        ]
    return found
