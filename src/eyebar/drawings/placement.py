"""Where the figures of the bars find room: beside their bar, on a leader, or nowhere.

Every candidate is a set of boxes; the first whose boxes touch nothing is taken. What crosses most
other bars chooses first.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import Enum

from eyebar.drawings.boxes import Box, Point, TakenGround, strip, touching
from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import HAIR, Circle, Ink, Line
from eyebar.drawings.lettering import INK, RUST, Lettering, Run, centred, extent, run
from eyebar.drawings.members import PIN, DrawnBar, arrow_boxes

CLEAR = 1.6
"""What stays free around lettering."""
BETWEEN = 2.6
"""Between a bar and its figures, and between two rows of them."""
STEPS = 12
"""Places tried along each half of a bar."""
LEADERS = ((0, -1), (0, 1), (1, -1), (-1, -1), (1, 1), (-1, 1), (1, 0), (-1, 0))
"""Where a leader's lettering is tried, as steps across and down from the bar."""


Rows = Sequence[tuple[Run, ...]]
"""Lettering in lines under each other."""


class Side(Enum):
    """On which side of a bar rows of figures stand: above it, below it, or one on each."""

    BOTH = 0
    ABOVE = -1
    BELOW = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """The lettering of one bar, and where its leader runs."""

    letterings: tuple[Lettering, ...]
    leader: tuple[Point, Point] | None = None
    """From the bar to the edge of its lettering."""

    @property
    def ink(self) -> tuple[Ink, ...]:
        """The leader first, lettering over it."""
        if self.leader is None:
            return self.letterings
        foot, edge = self.leader
        colour = self.letterings[0].colour
        return (
            Line(start=foot, end=edge, weight=HAIR, colour=colour),
            Circle(centre=foot, radius=1.3, fill=colour, weight=HAIR, colour=colour),
            *self.letterings,
        )


def placing(
    bars: Sequence[DrawnBar], ground: TakenGround, size: float
) -> Iterator[tuple[DrawnBar, Placed | None]]:
    """Each bar with the place of its figures, or None; what is placed is put on the ground."""
    for bar in sorted(bars, key=lambda one: _urgency(one, bars)):
        place = _first_free(_beside(bar, size), ground) or _on_leader(bar, bars, ground, size)
        if place is not None:
            _take(place, ground)
        yield bar, place


def placed_mark(bar: DrawnBar, ground: TakenGround, size: float) -> Placed | None:
    """The mark of a bar, where it finds room beside the bar."""
    row = (run(bar.figures.mark, size, Face.SLANTED),)
    for side in (Side.ABOVE, Side.BELOW):
        for share in _shares(bar, 0.3):
            place = Placed(letterings=_rows(bar, [row], side, share))
            if _free(place, ground):
                _take(place, ground)
                return place
    return None


def _urgency(bar: DrawnBar, bars: Sequence[DrawnBar]) -> tuple[int, int, float, str]:
    """Who chooses first: what governs, then what crosses most bars, then what is shortest."""
    thin = strip(bar.at(bar.length * 0.08), bar.at(bar.length * 0.92), 0.1)
    crossings = sum(touching(thin, other.box) for other in bars if other is not bar)
    first = 0 if bar.figures.mark == "governs" else 1
    return first, -crossings, round(bar.length, 3), bar.figures.bar


def _beside(bar: DrawnBar, size: float) -> Iterator[Placed]:
    """Places beside the bar: dead load and live load astride it, then both on one side."""
    dead = run(bar.figures.dead, size)
    live = run(bar.figures.live, size, Face.SLANTED)
    same_row = (dead, replace(live, lead=0.55 * size))
    rows_on: tuple[tuple[Rows, Side], ...] = (
        ([(dead,), (live,)], Side.BOTH),
        ([(dead,), (live,)], Side.ABOVE),
        ([(dead,), (live,)], Side.BELOW),
        ([same_row], Side.ABOVE),
        ([same_row], Side.BELOW),
    )
    liked = 0.5 if abs(bar.along[1]) < 0.1 else 0.34
    for rows, side in rows_on:
        for share in _shares(bar, liked):
            yield Placed(letterings=_rows(bar, rows, side, share))


def _shares(bar: DrawnBar, liked: float) -> list[float]:
    """Places along the bar as parts of its length from the upper end, nearest the liked first.

    Equal distances are tried from the middle of the truss's own symmetry: the upper end first.
    """
    from_top = bar.start[1] <= bar.end[1]
    shares = [0.5 + i * 0.4 / STEPS for i in range(-STEPS, STEPS + 1)]
    ordered = sorted(shares, key=lambda share: (round(abs(share - liked), 6), share))
    return ordered if from_top else [1.0 - share for share in ordered]


def _rows(
    bar: DrawnBar, rows: Rows, side: Side, share: float
) -> tuple[Lettering, ...]:
    """Rows of lettering that run with the bar; the first stands uppermost."""
    angle = readable(math.atan2(bar.along[1], bar.along[0]))
    down = -math.sin(angle), math.cos(angle)
    middle = bar.at(bar.length * share)
    heights = [extent(row).above + extent(row).below for row in rows]
    offsets = _offsets(heights, side, bar.half + BETWEEN)
    colour = RUST if bar.figures.mark == "governs" else INK
    return tuple(
        centred(row, (middle[0] + down[0] * off, middle[1] + down[1] * off), angle=angle,
                colour=colour)
        for row, off in zip(rows, offsets, strict=True)
    )


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


def readable(angle: float) -> float:
    """The direction of a bar turned so that lettering along it is not upside down."""
    while angle > math.pi / 2 - 1e-9:
        angle -= math.pi
    while angle < -math.pi / 2 - 1e-9:
        angle += math.pi
    return angle


def _on_leader(
    bar: DrawnBar, bars: Sequence[DrawnBar], ground: TakenGround, size: float
) -> Placed | None:
    """Level figures in the open beside the bar, on a leader that crosses nothing."""
    dead = run(bar.figures.dead, size)
    live = run(bar.figures.live, size, Face.SLANTED)
    rows = [(dead,), (live,)]
    width = max(extent(row).width for row in rows)
    height = sum(extent(row).above + extent(row).below for row in rows) + BETWEEN
    for share in (0.5, 0.4, 0.6, 0.3, 0.7):
        foot = bar.at(bar.length * share)
        for reach in (10.0, 16.0, 24.0, 34.0, 46.0):
            for across, down in LEADERS:
                middle = (
                    foot[0] + across * (reach + width / 2), foot[1] + down * (reach + height / 2)
                )
                place = _led(bar, rows, foot, middle)
                if place and _free(place, ground) and _runs_free(place, bar, bars, ground):
                    return place
    return None


def _led(
    bar: DrawnBar, rows: Rows, foot: Point, middle: Point
) -> Placed | None:
    """Rows about a point, with a line from the bar to their edge."""
    heights = [extent(row).above + extent(row).below for row in rows]
    width, height = max(extent(row).width for row in rows), sum(heights) + BETWEEN
    away = middle[0] - foot[0], middle[1] - foot[1]
    beyond = max(abs(away[0]) / (width / 2 + 3), abs(away[1]) / (height / 2 + 3))
    if beyond <= 1.05:
        return None
    edge = middle[0] - away[0] / beyond, middle[1] - away[1] / beyond
    top = middle[1] - height / 2
    colour = RUST if bar.figures.mark == "governs" else INK
    return Placed(
        letterings=(
            centred(rows[0], (middle[0], top + heights[0] / 2), colour=colour),
            centred(rows[1], (middle[0], top + height - heights[1] / 2), colour=colour),
        ),
        leader=(foot, edge),
    )


def _runs_free(
    place: Placed, bar: DrawnBar, bars: Sequence[DrawnBar], ground: TakenGround
) -> bool:
    """Whether a leader, once clear of its own bar, meets neither another bar nor lettering."""
    if place.leader is None:
        return True
    foot, edge = place.leader
    off = (bar.half + PIN / 2) / math.dist(foot, edge)
    if off >= 1.0:
        return False
    start = foot[0] + (edge[0] - foot[0]) * off, foot[1] + (edge[1] - foot[1]) * off
    whole = strip(foot, edge, 1.0)
    return ground.free([strip(start, edge, 1.0)]) and not any(
        touching(whole, other.box) for other in bars if other is not bar
    )


def _first_free(places: Iterator[Placed], ground: TakenGround) -> Placed | None:
    return next((place for place in places if _free(place, ground)), None)


def _free(place: Placed, ground: TakenGround) -> bool:
    return ground.free(one.box.grown(CLEAR) for one in place.letterings)


def _take(place: Placed, ground: TakenGround) -> None:
    ground.take(*(one.box for one in place.letterings))
    if place.leader:
        ground.take(strip(*place.leader, 1.0))


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
