"""Lettering on the sheet: measured before it is placed, so that its box is known.

Sizes and places in the sheet's unit, 1/96 inch; angles in radians.
"""

import math
import unicodedata
from dataclasses import dataclass, replace
from functools import cache

from eyebar.drawings.boxes import Box, Point
from eyebar.drawings.fonts import Face, advance, bounds

INK = "#1d1b18"
FAINT = "#645f55"
RUST = "#9a3416"
PAPER = "#fbfaf4"

ELLIPSIS = "…"
LEADING = 1.34
"""Distance of the lines of a paragraph, in sizes of the letter."""

_UNSEEN = {"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"}
"""Kinds of characters that cannot be seen; some turn the writing round or are no XML."""
_JOINERS = "\u200c\u200d"
"""Unseen too, but some scripts cannot be written without them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """Letters of one face and size.

    `lead` is space before them, `drop` lowers them, `spread` opens the space between them.
    """

    text: str
    face: Face = Face.UPRIGHT
    size: float
    lead: float = 0.0
    drop: float = 0.0
    spread: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Extent:
    """How far lettering reaches from the start of its line: forward, above, below."""

    width: float
    above: float
    below: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Lettering:
    """Runs in one line that starts at (x, y)."""

    runs: tuple[Run, ...]
    x: float
    y: float
    angle: float = 0.0
    colour: str = INK

    @property
    def box(self) -> Box:
        """The box around its ink."""
        size = extent(self.runs)
        forward, down = size.width / 2, (size.below - size.above) / 2
        cos, sin = math.cos(self.angle), math.sin(self.angle)
        return Box(
            x=self.x + forward * cos - down * sin, y=self.y + forward * sin + down * cos,
            along=size.width / 2, across=(size.above + size.below) / 2, angle=self.angle,
        )


def plain(text: str) -> str:
    """The text on one line, without characters that nobody sees."""
    spaced = (" " if letter.isspace() else letter for letter in text)
    seen = (one for one in spaced if one in _JOINERS or unicodedata.category(one) not in _UNSEEN)
    return " ".join("".join(seen).split())


def run(text: str, size: float, face: Face = Face.UPRIGHT, *, spread: float = 0.0) -> Run:
    """One run, made of what can be seen of the text."""
    return Run(text=plain(text), size=size, face=face, spread=spread)


@cache
def run_width(one: Run) -> float:
    """How far a run moves on; the space opened behind its last letter does not count."""
    letters = sum(advance(one.face, letter) for letter in one.text) * one.size
    return one.lead + letters + one.spread * max(0, len(one.text) - 1)


@cache
def extent(runs: tuple[Run, ...]) -> Extent:
    """How far runs in one line reach."""
    highs, lows = [0.0], [0.0]
    for one in runs:
        for letter in one.text:
            low, high = bounds(one.face, letter)
            highs.append(high * one.size - one.drop)
            lows.append(one.drop - low * one.size)
    return Extent(width=sum(map(run_width, runs)), above=max(highs), below=max(lows))


def centred(
    runs: tuple[Run, ...], at: Point, *, angle: float = 0.0, colour: str = INK
) -> Lettering:
    """Lettering whose box has its centre there."""
    return anchored(runs, at, (0.5, 0.5), angle=angle, colour=colour)


def anchored(
    runs: tuple[Run, ...], at: Point, anchor: Point, *, angle: float = 0.0, colour: str = INK
) -> Lettering:
    """Lettering with a point of its box there: (0, 0) is its upper start, (1, 1) its lower end."""
    size = extent(runs)
    forward = -anchor[0] * size.width
    down = size.above - anchor[1] * (size.above + size.below)
    cos, sin = math.cos(angle), math.sin(angle)
    return Lettering(
        runs=runs, x=at[0] + forward * cos - down * sin, y=at[1] + forward * sin + down * cos,
        angle=angle, colour=colour,
    )


def on_line(
    runs: tuple[Run, ...], at: Point, *, share: float = 0.0, colour: str = INK
) -> Lettering:
    """Level lettering that stands on a line; `share` of its width lies before the point."""
    return Lettering(runs=runs, x=at[0] - share * extent(runs).width, y=at[1], colour=colour)


def fitted(one: Run, width: float, *, least: float = 7.0) -> Run:
    """The run made smaller until it is no wider, and cut short where that is not enough."""
    width += 1e-6  # a rounding is no reason to cut
    if run_width(one) > width:
        ratio = max(width / run_width(one), least / one.size)
        one = replace(one, size=one.size * ratio, spread=one.spread * ratio)
    text = one.text
    while text and run_width(one) > width:
        text = text[:-1]
        one = replace(one, text=text.rstrip() + ELLIPSIS)
    return one


def wrapped(text: str, size: float, width: float, face: Face = Face.UPRIGHT) -> list[Run]:
    """The text in lines no wider than that."""
    lines: list[Run] = []
    current = ""
    for word in _pieces(plain(text).split(" "), size, width, face):
        longer = f"{current} {word}" if current else word
        if current and run_width(Run(text=longer, size=size, face=face)) > width:
            lines.append(Run(text=current, size=size, face=face))
            longer = word
        current = longer
    return [*lines, Run(text=current, size=size, face=face)] if current else lines


def paragraph(
    text: str, at: Point, width: float, size: float, *, face: Face = Face.UPRIGHT,
    colour: str = INK,
) -> tuple[Lettering, ...]:
    """The text wrapped, its first line standing on the point's level."""
    return tuple(
        Lettering(runs=(one,), x=at[0], y=at[1] + i * size * LEADING, colour=colour)
        for i, one in enumerate(wrapped(text, size, width, face))
    )


def _pieces(words: list[str], size: float, width: float, face: Face) -> list[str]:
    """The words, those wider than the line cut up."""
    found: list[str] = []
    for word in words:
        piece = ""
        for letter in word:
            if piece and run_width(Run(text=piece + letter, size=size, face=face)) > width:
                found.append(piece)
                piece = ""
            piece += letter
        found.append(piece)
    return found
