"""Tables of words on a sheet: columns by their shares, cells wrapped, a hair line under a row."""

from collections.abc import Sequence
from dataclasses import dataclass

from eyebar.drawings import blocks
from eyebar.drawings.blocks import Drawn, Place
from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import FINE, HAIR, Group, Ink, Line, identity
from eyebar.drawings.lettering import FAINT, INK, LEADING, RUST, on_line, run, wrapped

SIZE = 12.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column: its heading, its share of the width, whether it holds figures."""

    heading: str
    share: float
    figure: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A row's cells; `part` makes it reachable by its address, `marked` sets it in the accent."""

    cells: tuple[str, ...]
    part: str = ""
    said: str = ""
    marked: bool = False
    least: float = 0.0
    """The least height, for what is filled in by hand."""


def table(
    columns: Sequence[Column], rows: Sequence[Row], place: Place, *, title: str = "",
    size: float = SIZE,
) -> Drawn:
    """The whole table at a place."""
    head = blocks.heading(title, place) if title else Drawn(ink=(), bottom=place.top)
    lefts = [place.left + place.width * sum(one.share for one in columns[:i])
             for i in range(len(columns))]
    widths = [place.width * one.share - 8.0 for one in columns]
    level = head.bottom
    ink: list[Ink] = [*head.ink]
    lines = 0
    for column, left, width in zip(columns, lefts, widths, strict=True):
        words = wrapped(column.heading, size, width, Face.SLANTED)
        lines = max(lines, len(words))
        for i, one in enumerate(words):
            at = left + (width if column.figure else 0.0), level + size * 0.8 + i * size * LEADING
            ink.append(on_line((one,), at, share=1.0 if column.figure else 0.0, colour=FAINT))
    level += (lines - 1) * size * LEADING + size * 1.25
    ink.append(Line(start=(place.left, level), end=(place.left + place.width, level), weight=FINE))
    for row in rows:
        drawn = _row(columns, row, (lefts, widths), level, size)
        bottom = max(drawn.bottom, level + row.least)
        line = Line(start=(place.left, bottom), end=(place.left + place.width, bottom), weight=HAIR)
        if row.part:
            ink.append(Group(children=(*drawn.ink, line), part=row.part,
                             identity=identity(row.part), title=row.part, said=row.said))
        else:
            ink += (*drawn.ink, line)
        level = bottom
    return Drawn(ink=tuple(ink), bottom=level + 2.0)


def _row(
    columns: Sequence[Column], row: Row, at: tuple[list[float], list[float]], top: float,
    size: float,
) -> Drawn:
    ink: list[Ink] = []
    deepest = 1
    for column, cell, left, width in zip(columns, row.cells, *at, strict=True):
        words = wrapped(cell, size, width, Face.STRONG if row.marked else Face.UPRIGHT)
        deepest = max(deepest, len(words))
        x, share = (left + width, 1.0) if column.figure else (left, 0.0)
        for i, one in enumerate(words):
            ink.append(on_line((one,), (x, top + size * (1.08 + i * LEADING)), share=share,
                               colour=RUST if row.marked else INK))
    return Drawn(ink=tuple(ink), bottom=top + size * (1.08 + (deepest - 1) * LEADING + 0.48))


def height_of_rows(
    columns: Sequence[Column], rows: Sequence[Row], width: float, *, size: float = SIZE
) -> list[float]:
    """How high each row is in a table of a width."""
    found = []
    for row in rows:
        deepest = max(
            len(wrapped(cell, size, width * column.share - 8.0)) or 1
            for column, cell in zip(columns, row.cells, strict=True)
        )
        found.append(max(size * (1.08 + (deepest - 1) * LEADING + 0.48), row.least))
    return found


def caption(text: str, place: Place, *, size: float = 13.0) -> Drawn:
    """A slanted line over a part of a drawing."""
    return Drawn(
        ink=(on_line((run(text, size, Face.SLANTED),), (place.left, place.top + size)),),
        bottom=place.top + size * 1.6,
    )
