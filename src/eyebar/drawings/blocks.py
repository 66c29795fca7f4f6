"""The blocks of words around a drawing: each is laid into a place and says how far it reaches."""

from collections.abc import Sequence
from dataclasses import dataclass

from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import HAIR, Ink, Line, Outline
from eyebar.drawings.lettering import (
    FAINT,
    INK,
    LEADING,
    RUST,
    extent,
    on_line,
    paragraph,
    run,
    wrapped,
)
from eyebar.drawings.members import DrawnBar
from eyebar.drawings.paper import Paper
from eyebar.views.stress_sheet import StressSheet

TEXT = 13.0
SMALL = 12.2


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where a block is laid: its upper left corner, and its width."""

    left: float
    top: float
    width: float

    def below(self, level: float) -> "Place":
        """The same column, further down."""
        return Place(left=self.left, top=level, width=self.width)


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """A block that has been laid: its ink, and the level under it."""

    ink: tuple[Ink, ...]
    bottom: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """A whole sheet before it is written: its paper, the height it is cut to, ink and bars."""

    paper: Paper
    height: float
    ink: tuple[Ink, ...]
    bars: tuple[DrawnBar, ...]


def heading(text: str, place: Place) -> Drawn:
    """A small heading in spaced capitals over a fine line."""
    row = run(text.upper(), 10.5, Face.STRONG, spread=1.6)
    level = place.top + extent((row,)).above
    return Drawn(
        ink=(
            on_line((row,), (place.left, level)),
            Line(start=(place.left, level + 6), end=(place.left + place.width, level + 6),
                 weight=HAIR),
        ),
        bottom=level + 20,
    )


def text_block(
    text: str, place: Place, *, size: float = TEXT, face: Face = Face.UPRIGHT, colour: str = INK
) -> Drawn:
    """A paragraph; empty text takes no room."""
    lines = wrapped(text, size, place.width, face=face)
    if not lines:
        return Drawn(ink=(), bottom=place.top)
    first = place.top + size * 0.78
    return Drawn(
        ink=paragraph(text, (place.left, first), place.width, size, face=face, colour=colour),
        bottom=first + (len(lines) - 1) * size * LEADING + size * 0.72,
    )


def stacked(blocks: Sequence[Drawn]) -> tuple[Ink, ...]:
    """The ink of blocks that stand in one column."""
    return tuple(ink for block in blocks for ink in block.ink)


def verdict(view: StressSheet, place: Place) -> Drawn:
    """What the rating says: the posting, what governs it in the accent, remarks, cautions."""
    blocks = [text_block(view.posting, place, size=18.0, face=Face.STRONG)]
    blocks.append(text_block(view.governed, place.below(blocks[-1].bottom + 3), colour=RUST,
                             face=Face.SLANTED, size=14.5))
    for remark in view.remarks:
        blocks.append(text_block(remark, place.below(blocks[-1].bottom + 2), size=SMALL))
    level = blocks[-1].bottom + 8
    blocks.append(Drawn(
        ink=(Line(start=(place.left, level - 4), end=(place.left + 46, level - 4), weight=HAIR),),
        bottom=level + 2,
    ))
    for caution in view.cautions:
        blocks.append(text_block(caution, place.below(blocks[-1].bottom + 1), size=SMALL))
    return Drawn(ink=stacked(blocks), bottom=blocks[-1].bottom)


def rows_with_captions(rows: Sequence[tuple[str, str]], place: Place, caption: float) -> Drawn:
    """Rows of a title block: a slanted caption, what it says beside it, a hair line under each."""
    ink: list[Ink] = []
    level = place.top
    for i, (name, said) in enumerate(rows):
        if i:
            ink.append(Line(start=(place.left, level), end=(place.left + place.width, level),
                            weight=HAIR))
        beside = Place(left=place.left + caption, top=level + 6, width=place.width - caption)
        row = text_block(said, beside)
        ink.append(on_line((run(name, SMALL, Face.SLANTED),), (place.left, level + 6 + TEXT * 0.78),
                           colour=FAINT))
        ink += row.ink
        level = row.bottom + 2
    return Drawn(ink=tuple(ink), bottom=level)


def swelled_rule(middle: float, level: float, length: float) -> tuple[Ink, ...]:
    """A rule that swells to its middle, as printers set under a title."""
    half = length / 2
    return (
        Outline(
            points=((middle - half, level), (middle, level - 1.7), (middle + half, level),
                    (middle, level + 1.7)),
            fill=INK,
        ),
    )


