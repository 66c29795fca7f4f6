"""Inspection sheets: blanks to be filled in the field, part by part, last readings beside them."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from eyebar.drawings.blocks import Drawn, Place, text_block
from eyebar.drawings.fonts import Face
from eyebar.drawings.framed import Content, Drawing, FramedSheet, Room, framed
from eyebar.drawings.ink import FINE, HAIR, Group, Ink, Line, identity
from eyebar.drawings.lettering import FAINT, LEADING, fitted, on_line, run, run_width, wrapped
from eyebar.drawings.paper import Paper
from eyebar.drawings.sizes import STANDARD
from eyebar.errors import Unknown
from eyebar.views import drawn, inspection
from eyebar.views.inspection import Asked, PartAsked

SIZE = 11.5
LINE = 24.0
"""Height of a row: handwriting needs it."""
HEAD, PART = 22.0, 22.0
SHARES = (0.19, 0.19, 0.12, 0.22, 0.28)
HEADINGS = ("Place", "What", "As built", "Last read", "Read now, and how")
WIDTH, APART = 470.0, 34.0
NARROW_PARTS = 14
"""Parts on one narrow page."""
HOW = ("Sizes in inches. Write what was read, the gauge and its tolerance; a stroke where a place "
       "could not be reached. What is not measured is not assumed sound.")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Filled:
    """As many parts as found room, and how many rows of the last one are done."""

    drawing: Drawing
    parts: int


def inspection_sheets(
    document: Mapping[str, Any], described: Mapping[str, Any], papers: Sequence[Paper],
    wanted: str = "",
) -> list[FramedSheet]:
    """The sheets from a `drawn` and a `describe` document, as many as all parts need.

    `wanted` is the beginning of addresses. Raises Unknown where no part begins so.
    """
    whole = dict(document)
    parts = inspection.inspection_parts(whole, dict(described), wanted)
    if not parts:
        raise Unknown("part that begins with", wanted, where=whole["bridge"]["name"])
    paper = papers[0] if len(papers) == 1 else STANDARD["ANSI B"]
    pages: list[Sequence[PartAsked]] = []
    rest: Sequence[PartAsked] = parts
    while rest:
        count = _fitting(whole, rest, paper, wanted)
        pages.append(rest[:count])
        rest = rest[count:]
    return [
        framed(_content(whole, page, wanted, f"sheet {i} of {len(pages)}"), [paper])
        for i, page in enumerate(pages, 1)
    ]


def _fitting(
    whole: Mapping[str, Any], parts: Sequence[PartAsked], paper: Paper, wanted: str
) -> int:
    """How many of the parts find room on one sheet."""
    if paper.height is None:
        return min(NARROW_PARTS, len(parts))
    seen: list[int] = []
    content = _content(whole, parts, wanted, "sheet 10 of 10", seen)
    framed(content, [paper])
    return max(1, seen[-1])


def _content(
    whole: Mapping[str, Any], parts: Sequence[PartAsked], wanted: str, page: str,
    seen: list[int] | None = None,
) -> Content:
    document = dict(whole)

    def draw(room: Room) -> Drawing | None:
        filled = _rows(parts, room)
        if seen is not None:
            seen.append(filled.parts)
        return filled.drawing

    return Content(
        bridge=document["bridge"]["name"], number=document["bridge"]["number"],
        date=inspection.long_date(document), units="inches, unless written", page=page, how=HOW,
        title=inspection.title(wanted), source=drawn.source(document), draw=draw,
        said=f"{len(parts)} parts: {', '.join(one.part for one in parts)}.",
        blocks=(_by_hand,),
    )


def _by_hand(place: Place) -> Drawn:
    """Who, when, and how the weather was: to be written by hand."""
    ink: list[Ink] = []
    words = ("Inspected by", "on", "Weather, water", "Reached by")
    wide = place.width > 700.0
    step = place.width / len(words) if wide else place.width
    for i, word in enumerate(words):
        left, level = (place.left + i * step, place.top + 16) if wide else (
            place.left, place.top + 16 + i * 26.0)
        said = on_line((run(word, SIZE, Face.SLANTED),), (left, level), colour=FAINT)
        end = left + step - 16.0
        ink += [said, Line(start=(left + 2 * said.box.along + 8, level + 2), end=(end, level + 2),
                           weight=HAIR)]
    return Drawn(ink=tuple(ink), bottom=place.top + (24 if wide else 26.0 * len(words)))


def _rows(parts: Sequence[PartAsked], room: Room) -> _Filled:
    """Parts in columns, read downwards, as many as find room."""
    count = 1 if room.narrow else max(1, int((room.width + APART) // (WIDTH + APART)))
    width = (room.width - (count - 1) * APART) / count
    height = 1e6 if room.narrow else room.height
    ink: list[Ink] = []
    column, done, deepest = 0, 0, room.top
    level = room.top
    for part in parts:
        if level == room.top:
            ink += _headings(Place(left=room.left + column * (width + APART), top=level,
                                   width=width))
            level += HEAD
        high = _height(part, width)
        if level + high > room.top + height and level > room.top + HEAD:
            column, level = column + 1, room.top
            if column >= count:
                break
            ink += _headings(Place(left=room.left + column * (width + APART), top=level,
                                   width=width))
            level += HEAD
        ink.append(_part(part, Place(left=room.left + column * (width + APART), top=level,
                                     width=width)))
        level += high
        done, deepest = done + 1, max(deepest, level)
    return _Filled(parts=done, drawing=Drawing(
        ink=tuple(ink), bottom=min(deepest, room.top + height), said_scale="none",
    ))


def _headings(place: Place) -> list[Ink]:
    ink: list[Ink] = []
    left = place.left
    for word, share in zip(HEADINGS, SHARES, strict=True):
        one = fitted(run(word, SIZE, Face.SLANTED), share * place.width - 4)
        ink.append(on_line((one,), (left, place.top + 13), colour=FAINT))
        left += share * place.width
    return [*ink, Line(start=(place.left, place.top + 18),
                       end=(place.left + place.width, place.top + 18), weight=FINE)]


def _height(part: PartAsked, width: float) -> float:
    return PART + sum(_row_height(row, width) for row in part.rows) + 4.0


def _row_height(row: Asked, width: float) -> float:
    deepest = max(
        len(wrapped(cell, SIZE, share * width - 6.0)) or 1
        for cell, share in zip((row.place, row.what, row.built, row.last), SHARES, strict=False)
    )
    return max(LINE, 10.0 + deepest * SIZE * LEADING)


def _part(part: PartAsked, place: Place) -> Group:
    name = fitted(run(part.part, SIZE + 0.5, Face.STRONG), place.width * 0.5)
    ink: list[Ink] = [on_line((name,), (place.left, place.top + 16))]
    beside = place.left + run_width(name) + 12.0
    said = fitted(run(part.said, SIZE, Face.SLANTED), place.left + place.width - beside)
    ink.append(on_line((said,), (beside, place.top + 16), colour=FAINT))
    level = place.top + PART
    for row in part.rows:
        high = _row_height(row, place.width)
        left = place.left
        cells = (row.place, row.what, row.built, row.last)
        for cell, share in zip(cells, SHARES, strict=False):
            block = text_block(cell, Place(left=left, top=level + 5.0,
                                           width=share * place.width - 6.0), size=SIZE)
            ink += block.ink
            left += share * place.width
        ink.append(Line(start=(left, level + high), end=(place.left + place.width, level + high),
                        weight=FINE))
        ink.append(Line(start=(place.left, level + high), end=(left - 6.0, level + high),
                        weight=HAIR))
        level += high
    return Group(children=tuple(ink), part=part.part, identity=identity(part.part),
                 title=part.part, said=part.said)
