"""Where the figures of the bars find room: beside their bar, on a leader, or nowhere.

The first spot that touches nothing is taken. What crosses most other bars chooses first.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import Enum

from eyebar.drawings.boxes import Box, Point, TakenGround, strip, touching
from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import Ink
from eyebar.drawings.leaders import on_leader
from eyebar.drawings.lettering import run
from eyebar.drawings.members import DrawnBar, arrow_boxes
from eyebar.drawings.spots import BETWEEN, Placed, Row, Spot, figure_rows, placed, row
from eyebar.views.stress_sheet import Work

STEPS = 12
"""Places tried along each half of a bar."""
LIKED = 0.34
"""Where figures stand on a bar that is not level, from its upper end: clear of most crossings."""

MARKS = (12.0, 10.0, 8.5)
"""Sizes of the mark of a bar, the largest first."""


class Side(Enum):
    """On which side of a bar rows of figures stand: above it, below it, or one on each."""

    BOTH = 0
    ABOVE = -1
    BELOW = 1


def ground_under(
    bars: Sequence[DrawnBar], joints: Sequence[Point], pin: float
) -> TakenGround:
    """The ground that bars, arrows and pins take."""
    ground = TakenGround()
    ground.take(*(bar.box for bar in bars))
    for bar in bars:
        ground.take(*arrow_boxes(bar))
    ground.take(*(Box(x=x, y=y, along=pin + 1, across=pin + 1) for x, y in joints))
    return ground


@dataclass(frozen=True, slots=True, kw_only=True)
class BarLettering:
    """What is lettered at one bar: its figures and its mark, each where it found room."""

    bar: DrawnBar
    figures: Placed | None = None
    mark: Placed | None = None

    @property
    def without_room(self) -> bool:
        """Whether it has figures that found no room."""
        return self.figures is None and self.bar.figures.work != Work.GONE

    @property
    def ink(self) -> tuple[Ink, ...]:
        """Its lettering, with leaders."""
        return tuple(ink for place in (self.figures, self.mark) if place for ink in place.ink)


def placing(
    bars: Sequence[DrawnBar], ground: TakenGround, size: float
) -> Iterator[BarLettering]:
    """Bar by bar, what found room; it is put on the ground. Size 0 sets no figures, marks alone."""
    for bar in sorted(bars, key=lambda one: _urgency(one, bars)):
        figures = mark = None
        if size and bar.figures.work != Work.GONE:
            rows = figure_rows(bar, size)
            figures = _first(_beside(bar, rows), ground) or on_leader(bar, rows, bars, ground)
            _take(figures, ground)
        if bar.figures.mark:
            mark = _mark(bar, bars, ground)
            _take(mark, ground)
        yield BarLettering(bar=bar, figures=figures, mark=mark)


def one_figure(
    bars: Sequence[DrawnBar], ground: TakenGround, text: str, size: float
) -> Iterator[tuple[DrawnBar, Placed | None]]:
    """Bar by bar, where one figure no longer than the text finds room; it is put on the ground."""
    rows = (row(run(text, size)),)
    for bar in sorted(bars, key=lambda one: _urgency(one, bars)):
        liked = 0.5 if abs(bar.along[1]) < 0.1 else LIKED
        beside = (
            place for side in (Side.ABOVE, Side.BELOW)
            for place in _along(bar, rows, side, liked=liked)
        )
        found = _first(beside, ground) or on_leader(bar, rows, bars, ground)
        _take(found, ground)
        yield bar, found


def _mark(bar: DrawnBar, bars: Sequence[DrawnBar], ground: TakenGround) -> Placed | None:
    """The mark of a bar, beside it, beyond its figures or on a leader, as large as it can be."""
    for size in MARKS:
        rows = (row(run(bar.figures.mark, size, Face.SLANTED)),)
        beside = (
            place for beyond in (0.0, 1.5 * size) for side in (Side.ABOVE, Side.BELOW)
            for place in _along(bar, rows, side, liked=LIKED, beyond=beyond)
        )
        place = _first(beside, ground) or on_leader(bar, rows, bars, ground)
        if place is not None:
            return place
    return None


def _first(places: Iterator[Placed], ground: TakenGround) -> Placed | None:
    return next((place for place in places if place.free(ground)), None)


def _take(place: Placed | None, ground: TakenGround) -> None:
    if place is not None:
        place.take(ground)


def readable(angle: float) -> float:
    """The direction of a bar turned so that lettering along it is not upside down."""
    while angle > math.pi / 2 - 1e-9:
        angle -= math.pi
    while angle < -math.pi / 2 - 1e-9:
        angle += math.pi
    return angle


def _urgency(bar: DrawnBar, bars: Sequence[DrawnBar]) -> tuple[int, int, float, str]:
    """Who chooses first: what governs, then what crosses most bars, then what is shortest."""
    thin = strip(bar.at(bar.length * 0.08), bar.at(bar.length * 0.92), 0.1)
    crossings = sum(touching(thin, other.box) for other in bars if other is not bar)
    first = 0 if bar.figures.mark == "governs" else 1
    return first, -crossings, round(bar.length, 3), bar.figures.bar


def _beside(bar: DrawnBar, rows: tuple[Row, Row]) -> Iterator[Placed]:
    """Places beside the bar: dead load and live load astride it, then both on one side."""
    dead, live = rows
    first, second = *dead.runs, *live.runs
    one_row = row(first, replace(second, lead=0.55 * second.size))
    liked = 0.5 if abs(bar.along[1]) < 0.1 else LIKED
    for arranged, side in (
        (rows, Side.BOTH), (rows, Side.ABOVE), (rows, Side.BELOW),
        ((one_row,), Side.ABOVE), ((one_row,), Side.BELOW),
    ):
        yield from _along(bar, arranged, side, liked=liked)


def _along(
    bar: DrawnBar, rows: Sequence[Row], side: Side, *, liked: float, beyond: float = 0.0
) -> Iterator[Placed]:
    """Rows that run with the bar, the first uppermost, at each place along it.

    `beyond` is space left to what stands nearer to the bar.
    """
    angle = readable(math.atan2(bar.along[1], bar.along[0]))
    down = -math.sin(angle), math.cos(angle)
    offsets = _offsets([one.height for one in rows], side, bar.half + BETWEEN + beyond)
    for share in _shares(bar, liked):
        x, y = bar.at(bar.length * share)
        yield placed(bar, [
            Spot(row=one, at=(x + down[0] * off, y + down[1] * off), angle=angle)
            for one, off in zip(rows, offsets, strict=True)
        ])


def _shares(bar: DrawnBar, liked: float) -> list[float]:
    """Places along the bar as parts of its length, nearest first to the liked from its upper end.

    Bars that mirror each other try mirrored places.
    """
    from_top = bar.start[1] <= bar.end[1]
    shares = [0.5 + i * 0.4 / STEPS for i in range(-STEPS, STEPS + 1)]
    ordered = sorted(shares, key=lambda share: (round(abs(share - liked), 6), share))
    return ordered if from_top else [1.0 - share for share in ordered]


def _offsets(heights: list[float], side: Side, clear: float) -> list[float]:
    """How far below the bar's middle line the middle of each row stands."""
    if side is Side.BOTH:
        return [-(clear + heights[0] / 2), clear + heights[1] / 2]
    outward = heights if side is Side.BELOW else heights[::-1]
    offsets, edge = [], clear
    for height in outward:
        offsets.append(side.value * (edge + height / 2))
        edge += height + BETWEEN
    return offsets if side is Side.BELOW else offsets[::-1]
