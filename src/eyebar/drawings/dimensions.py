"""Dimension strings: the panels, the span, the depth, and the ruler in feet."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

from eyebar.drawings.boxes import Point
from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import FINE, HAIR, Ink, Line, Outline
from eyebar.drawings.lettering import FAINT, Lettering, Run, centred, extent, on_line, run
from eyebar.drawings.paper import Scale, ruler_step_ft
from eyebar.views import sheet_words

LETTERS = 11.0
LEAST_LETTERS = 8.0
HEAD = 6.5
"""Length of an arrowhead."""
ABOVE = 4.0
"""Between a dimension line and the lettering over it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reach:
    """A part of a string: from one station to the next on the sheet, and its length [in]."""

    start: float
    end: float
    length_in: float

    @property
    def room(self) -> float:
        """What is free between its arrowheads."""
        return self.end - self.start - 4.0


def measured_together(reaches: Sequence[Reach]) -> list[list[Reach]]:
    """The panels one by one where each has room for its length; else neighbours of one length."""
    if all(_width(_said(one.length_in), LETTERS) <= one.room for one in reaches):
        return [[one] for one in reaches]
    return [list(alike) for _, alike in groupby(reaches, key=lambda one: _said(one.length_in))]


def panel_string(groups: Sequence[Sequence[Reach]], y: float) -> tuple[Ink, ...]:
    """The string of panels: a length over each group.

    Where that is too long for its room, the lettering stands upright on the line.
    """
    ink: list[Ink] = []
    for alike in groups:
        whole = Reach(
            start=alike[0].start, end=alike[-1].end,
            length_in=sum(one.length_in for one in alike),
        )
        ink += _measured((whole.start, y), (whole.end, y))
        ink += [Line(start=(one.start, y), end=(one.start, y + 4)) for one in alike[1:]]
        ink.append(_over(sheet_words.panels(len(alike), alike[0].length_in), whole, y))
    return tuple(ink)


def span_string(reach: Reach, y: float, words: str) -> tuple[Ink, ...]:
    """One dimension line with words over it."""
    return (*_measured((reach.start, y), (reach.end, y)), _over(words, reach, y))


def depth_string(top: float, bottom: float, x: float, length_in: float) -> tuple[Ink, ...]:
    """An upright dimension line; its lettering, read from the right, may rise above it."""
    row = (run(_said(length_in), LETTERS),)
    off = ABOVE + 1.0 + (extent(row).above + extent(row).below) / 2
    middle = min((top + bottom) / 2, bottom - extent(row).width / 2)
    return (
        *_measured((x, bottom), (x, top)),
        centred(row, (x - off, middle), angle=-math.pi / 2),
    )


def ruler(scale: Scale, at: Point, length: float) -> tuple[Ink, ...]:
    """A ruler in feet, black and white in turn; in inches where a foot is longer than it."""
    if scale.units_per_foot > length:
        feet, unit = 1.0 / 12.0, "in"
        step_ft = next((one for one in (1, 2, 3, 6) if one * scale.units_per_inch >= 30.0), 6)
    else:
        feet, unit = 1.0, "ft"
        step_ft = ruler_step_ft(scale, 44.0)
    step = step_ft * scale.units_per_foot * feet
    count = max(1, int(length // step))
    x, y = at
    ink: list[Ink] = [
        _bar_of_ruler(x + i * step, y, step, black=i % 2 == 0) for i in range(count)
    ]
    for i in range(count + 1):
        ink.append(Line(start=(x + i * step, y - 4), end=(x + i * step, y + 4), weight=HAIR))
        figure = f"{i * step_ft}" if i < count else f"{i * step_ft} {unit}"
        digits = extent((run(f"{i * step_ft}", 9.5),)).width
        ink.append(on_line((run(figure, 9.5),), (x + i * step - digits / 2, y + 16), colour=FAINT))
    return tuple(ink)


def _bar_of_ruler(x: float, y: float, step: float, *, black: bool) -> Outline:
    points = ((x, y - 4), (x + step, y - 4), (x + step, y), (x, y))
    return Outline(points=points, fill="#1d1b18" if black else "none", weight=HAIR)


def _measured(start: Point, end: Point) -> list[Ink]:
    """A fine line between two arrowheads, with a tick across each end."""
    length = math.dist(start, end)
    ux, uy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    head = min(HEAD, length / 3)
    ink: list[Ink] = [Line(start=start, end=end, weight=HAIR)]
    for (x, y), sense in ((start, 1.0), (end, -1.0)):
        fx, fy = x + ux * head * sense, y + uy * head * sense
        ink.append(Outline(
            points=((x, y), (fx - uy * 1.5, fy + ux * 1.5), (fx + uy * 1.5, fy - ux * 1.5)),
            fill="#1d1b18",
        ))
        ink.append(Line(
            start=(x - uy * 4, y + ux * 4), end=(x + uy * 4, y - ux * 4), weight=FINE,
        ))
    return ink


def _over(words: str, reach: Reach, y: float) -> Lettering:
    """Words over the middle of a dimension line, smaller or upright where room is short."""
    middle = (reach.start + reach.end) / 2
    size = LETTERS
    while size > LEAST_LETTERS and _width(words, size) > reach.room:
        size -= 0.5
    row = (run(words, size),)
    rise = ABOVE + extent(row).below
    if _width(words, size) <= reach.room:
        return on_line(row, (middle, y - rise), share=0.5)
    return centred(row, (middle, y - ABOVE - extent(row).width / 2), angle=-math.pi / 2)


def _said(length_in: float) -> str:
    return sheet_words.length(length_in)


def _width(words: str, size: float) -> float:
    return extent((Run(text=words, size=size, face=Face.UPRIGHT),)).width
