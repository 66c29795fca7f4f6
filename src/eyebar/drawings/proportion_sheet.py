"""Metal given against metal needed, a small measure for every bar, before and after rust."""

from collections.abc import Mapping, Sequence
from typing import Any

from eyebar.drawings import blocks
from eyebar.drawings.blocks import Drawn, Place
from eyebar.drawings.boxes import Point
from eyebar.drawings.fonts import Face
from eyebar.drawings.framed import Content, Drawing, FramedSheet, Room, framed
from eyebar.drawings.hatching import hatched
from eyebar.drawings.ink import FINE, HAIR, HEAVY, Group, Ink, Line, Outline, identity
from eyebar.drawings.lettering import FAINT, INK, RUST, fitted, on_line, run
from eyebar.drawings.paper import Paper
from eyebar.views import drawn, proportion, sheet_words
from eyebar.views.proportion import ProportionRow

ROW, HEAD, SIZE = 19.0, 44.0, 12.0
WIDTH, APART = 340.0, 34.0
"""The least width of a column of bars, and between columns."""
NAME = 62.0
FIGURES = (40.0, 46.0, 40.0)
"""Widths of the figures given, needed, left."""
TINT = "#d9d4c6"
ENDLESS = 1e6
"""A narrow page is as long as it needs to be."""
HOW = "Measures are to one scale on the whole sheet, in square inches."


def proportion_sheet(document: Mapping[str, Any], papers: Sequence[Paper]) -> FramedSheet:
    """The sheet from a `proportion` document."""
    whole = dict(document)
    rows = proportion.proportion_rows(whole)
    short = [row.bar for row in rows if row.short]
    worst = f"Less is left than needed: {', '.join(short)}." if short else (
        "All bars that are compared have what they need.")
    words = [proportion.loads(whole), worst, proportion.RULE]

    def draw(room: Room) -> Drawing | None:
        return _drawn(rows, room)

    return framed(Content(
        bridge=whole["bridge"]["name"], number=whole["bridge"]["number"],
        date=sheet_words.long_date(whole["date"]), units="square inches", how=HOW,
        title=f"Proportion of the {whole['truss']} truss", source=drawn.source(whole),
        said=" ".join(words), draw=draw,
        blocks=(
            lambda place: _said("How to read it", [proportion.KEY], place),
            lambda place: _said("What it says", [*words, *whole["cautions"]], place),
        ),
    ), papers)


def _said(title: str, said: Sequence[str], place: Place) -> Drawn:
    found = [blocks.heading(title, place)]
    for text in said:
        found.append(blocks.text_block(text, place.below(found[-1].bottom + 1), size=blocks.SMALL))
    return Drawn(ink=blocks.stacked(found), bottom=found[-1].bottom)


def _drawn(rows: Sequence[ProportionRow], room: Room) -> Drawing | None:
    """The groups in as few columns as they need, a group beginning a column where there are three.
    """
    most = max(1, int((room.width + APART) // (WIDTH + APART)))
    tried = (_columns(rows, room, count) for count in range(min(3, most), most + 1))
    return next(filter(None, tried), None)


def _columns(rows: Sequence[ProportionRow], room: Room, count: int) -> Drawing | None:
    """The groups in so many columns, read downwards; None where they find no room."""
    width = (room.width - (count - 1) * APART) / count
    most = max((max(row.sizes) for row in rows), default=1.0) or 1.0
    scale = (width - NAME - sum(FIGURES) - 12.0) / most
    height = ENDLESS if room.narrow else room.height
    ink: list[Ink] = []
    column, level, deepest = 0, room.top, room.top
    for group in proportion.GROUPS:
        own = [row for row in rows if row.group == group]
        if own and count >= len(proportion.GROUPS) and level > room.top:
            column, level = column + 1, room.top
        continued = ""
        while own:
            fits = int(min((room.top + height - level - HEAD) // ROW, len(own)))
            if fits < min(3, len(own)):
                column, level = column + 1, room.top
                if column >= count:
                    return None
                continue
            left = room.left + column * (width + APART)
            ink += _heading(f"{proportion.HEADINGS[group]}{continued}", (left, level), width)
            level += HEAD
            for row in own[:fits]:
                ink.append(_row(row, (left, level), width, scale))
                level += ROW
            own, continued, level = own[fits:], ", continued", level + 14.0
            deepest = max(deepest, level)
    return Drawing(ink=tuple(ink), bottom=deepest, said_scale="measures to one scale, see figures")


def _heading(text: str, at: Point, width: float) -> list[Ink]:
    left, top = at
    head = blocks.heading(text, Place(left=left, top=top, width=width))
    ink: list[Ink] = [*head.ink]
    x = left + width - sum(FIGURES)
    for word, wide in zip(("given", "needed", "left"), FIGURES, strict=True):
        x += wide
        ink.append(on_line((run(word, 11.0, Face.SLANTED),), (x, top + 32.0), share=1.0,
                           colour=FAINT))
    return ink


def _row(row: ProportionRow, at: Point, width: float, scale: float) -> Group:
    left, top = at
    colour = RUST if row.short else INK
    base = top + 13.0
    ink: list[Ink] = [on_line((fitted(run(row.bar, SIZE), NAME - 6.0),), (left, base),
                              colour=colour)]
    x = left + NAME
    if row.sizes == (0.0, 0.0, 0.0):
        why = fitted(run(f"not compared: {row.why}", 11.0, Face.SLANTED), width - NAME - 4.0)
        ink.append(on_line((why,), (x, base), colour=FAINT))
    else:
        ink += _measure(row, (x, top + 3.0), scale)
        end = left + width - sum(FIGURES)
        for said, wide in zip((row.given, row.needed, row.left), FIGURES, strict=True):
            end += wide
            face = Face.STRONG if row.short else Face.UPRIGHT
            ink.append(on_line((fitted(run(said, SIZE, face), wide - 3.0),), (end, base), share=1.0,
                               colour=colour))
    return Group(children=tuple(ink), part=row.part, identity=identity(row.part), title=row.part,
                 said=row.said)


def _measure(row: ProportionRow, at: Point, scale: float) -> list[Ink]:
    """Outline given, tint left, hatching gone, and the stroke of what is needed."""
    x, top = at
    given, needed, left = (size * scale for size in row.sizes)
    high = 10.0
    whole = _box(x, top, given, high)
    kept = _box(x, top, min(left, given), high)
    ink: list[Ink] = []
    if left > 0:
        ink.append(Outline(points=kept, fill=TINT))
    if left < given - 0.3:
        ink += hatched(whole, kept if left > 0 else ())
    ink.append(Outline(points=whole, weight=FINE))
    ink.append(Line(start=(x, top - 2), end=(x, top + high + 2), weight=HAIR))
    ink.append(Line(start=(x + needed, top - 3), end=(x + needed, top + high + 3), weight=HEAVY,
                    colour=RUST if row.short else INK))
    return ink


def _box(x: float, top: float, wide: float, high: float) -> tuple[Point, ...]:
    return (x, top), (x + wide, top), (x + wide, top + high), (x, top + high)
