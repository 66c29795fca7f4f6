"""The sign as it will stand at the roadside: its legend on a plate, on a post, in the ground."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from eyebar.drawings.blocks import Drawn, Place
from eyebar.drawings.boxes import Point
from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import FINE, HAIR, HEAVY, Ink, Line, Plate
from eyebar.drawings.lettering import (
    FAINT,
    INK,
    PAPER,
    Lettering,
    Run,
    extent,
    fitted,
    on_line,
    run,
    wrapped,
)
from eyebar.signs import PROVISIONAL

PLATE = 140.0
"""Breadth of a plate."""
EDGE = 9.0
APART = 22.0
POST = 42.0
"""How much of the post is seen under the plate."""
GROUND = 14.0
"""Depth of the ground's hatching."""
FIGURE = 40.0

_LIMIT = re.compile(r"(?P<heading>.*LIMIT) (?P<rest>.+)")
_ONE = re.compile(r"(?P<figure>\d+) (?P<unit>TONS?)")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    run: Run
    above: float
    """Space between this row and the one before."""


def roadside(signs: Sequence[str], designation: str, place: Place) -> Drawn:
    """The signs side by side, or under each other where the place is narrow."""
    provisional = any(PROVISIONAL in one for one in signs)
    legends = [one.replace(PROVISIONAL, "").strip() for one in signs]
    rows = [_rows(legend, provisional=provisional) for legend in legends]
    beside = max(1, int((place.width + APART) // (PLATE + APART)))
    ink: list[Ink] = []
    top = place.top
    for first in range(0, len(rows), beside):
        together = rows[first:first + beside]
        width = len(together) * PLATE + (len(together) - 1) * APART
        left = place.left + (place.width - width) / 2
        highest = max(_height(one) for one in together)
        for i, one in enumerate(together):
            ink += _sign(one, (left + i * (PLATE + APART), top + highest - _height(one)))
        ground = top + highest + POST
        ink += _ground(ground, (left - 14, left + width + 14))
        top = ground + GROUND + 12
    if designation:
        caption = run(designation, 10.5, Face.SLANTED)
        ink.append(on_line((caption,), (place.left + place.width / 2, top), share=0.5,
                           colour=FAINT))
        top += 8
    return Drawn(ink=tuple(ink), bottom=top)


def _rows(legend: str, *, provisional: bool) -> list[_Row]:
    """The rows of a plate: the limit's heading, its figure large where it is but one."""
    inner = PLATE - 2 * EDGE - 6
    found = _LIMIT.fullmatch(legend)
    rows = [
        _Row(run=one, above=7.0)
        for one in wrapped(found["heading"] if found else legend, 15.5, inner, face=Face.STRONG)
    ]
    if found:
        one = _ONE.fullmatch(found["rest"])
        if one:
            rows += [
                _Row(run=run(one["figure"], FIGURE, Face.STRONG), above=9.0),
                _Row(run=run(one["unit"], 15.5, Face.STRONG), above=9.0),
            ]
        else:
            pieces = found["rest"].split(", ")
            size = min(fitted(run(piece, 12.0, Face.STRONG), inner).size for piece in pieces)
            small = [fitted(run(piece, size, Face.STRONG), inner) for piece in pieces]
            rows += [_Row(run=one, above=8.0 if i else 11.0) for i, one in enumerate(small)]
    if provisional:
        rows.append(_Row(run=fitted(run(PROVISIONAL, 11.0, Face.STRONG, spread=1.2), inner),
                         above=11.0))
    return rows


def _height(rows: Sequence[_Row]) -> float:
    return 2 * EDGE + 8 + sum(
        extent((row.run,)).above + row.above for row in rows
    ) - rows[0].above


def _sign(rows: Sequence[_Row], corner: Point) -> list[Ink]:
    """A plate with its rows, on a post that runs down to the ground."""
    left, top = corner
    bottom, middle = top + _height(rows), left + PLATE / 2
    ink: list[Ink] = [
        Line(start=(middle + side, bottom), end=(middle + side, bottom + POST), weight=FINE)
        for side in (-3.0, 3.0)
    ]
    ink += [
        Plate(left=left, top=top, right=left + PLATE, bottom=bottom, round=8, fill=PAPER,
              weight=HEAVY),
        Plate(left=left + 4, top=top + 4, right=left + PLATE - 4, bottom=bottom - 4, round=5,
              weight=FINE),
    ]
    level = top + EDGE + 4 - rows[0].above
    for row in rows:
        level += row.above + extent((row.run,)).above
        ink.append(_middled(row.run, (middle, level)))
    return ink


def _middled(one: Run, at: Point) -> Lettering:
    return on_line((one,), at, share=0.5, colour=INK)


def _ground(level: float, between: tuple[float, float]) -> list[Ink]:
    """The ground's line, hatched under it."""
    left, right = between
    ink: list[Ink] = [Line(start=(left, level), end=(right, level), weight=FINE)]
    x = left + 10
    while x < right:
        ink.append(Line(start=(x, level + 2), end=(x - 8, level + 10), weight=HAIR))
        x += 7.5
    return ink
