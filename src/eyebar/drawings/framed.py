"""The frame of every sheet: border, title, the drawing, blocks of words, title block, scale.

A sheet gives its `Content`; the frame finds the smallest sheet of the series on which all of it
finds room, or lays it out as one narrow column for a page of the field book.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from eyebar.drawings import blocks
from eyebar.drawings.blocks import Drawn, Laid, Place
from eyebar.drawings.dimensions import ruler
from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import FINE, HAIR, Ink, Line, Plate, letterings
from eyebar.drawings.lettering import Lettering, fitted, on_line, run
from eyebar.drawings.paper import Paper, Scale
from eyebar.drawings.printed import Printed
from eyebar.drawings.svg_file import svg_file
from eyebar.drawings.title_block import border
from eyebar.errors import OutOfRange

GAP = 24.0
"""Between the border and what stands inside, and between what stands there."""
NARROW_GAP = 14.0
COLUMN = 290.0
"""The least width of a column of words."""
CAPTION = 62.0
LEAST_FIGURE = 150.0
"""A drawing with less height than this is none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """Where the drawing of a sheet is laid: its upper left corner, width and greatest height."""

    left: float
    top: float
    width: float
    height: float
    narrow: bool

    @property
    def middle(self) -> float:
        """The x of its middle."""
        return self.left + self.width / 2

    @property
    def right(self) -> float:
        """The x of its right side."""
        return self.left + self.width


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """A drawing laid in its room: ink, the level under it, its scale; blocks that belong to it."""

    ink: tuple[Ink, ...]
    bottom: float
    scale: Scale | None = None
    said_scale: str = ""
    """What the title block says of the scale where there is no single one."""
    blocks: tuple["Block", ...] = ()


Block = Callable[[Place], Drawn]


@dataclass(frozen=True, slots=True, kw_only=True)
class Content:
    """What a sheet shows.

    `draw` lays the drawing into a room, None where it finds none; `blocks` are words that stand
    below it. `said` is the whole sheet in words.
    """

    bridge: str
    number: str
    title: str
    date: str
    units: str
    source: str
    said: str
    draw: Callable[[Room], Drawing | None]
    blocks: tuple[Block, ...] = ()
    page: str = ""
    least: float = LEAST_FIGURE
    """The least height that the drawing is given on a sheet."""
    how: str = ""
    """What of it is to scale and what is not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FramedSheet:
    """A sheet in its frame."""

    laid: Laid
    content: Content

    @property
    def title(self) -> str:
        """Its title."""
        page = f", {self.content.page}" if self.content.page else ""
        return f"{self.content.title}: {self.content.bridge}{page}"

    @property
    def said(self) -> str:
        """What it shows, in words."""
        return self.content.said

    @property
    def svg(self) -> str:
        """The text of its file."""
        return svg_file(self.laid, title=self.title, said=self.said)

    @property
    def printed(self) -> Printed:
        """The same for a page that brings the letters."""
        return Printed(
            ink=self.ink, width=self.laid.paper.width, height=self.laid.height, title=self.title,
            said=self.said,
        )

    @property
    def ink(self) -> tuple[Ink, ...]:
        """All that is drawn on it."""
        return self.laid.ink

    @property
    def bars(self) -> tuple[()]:
        """No bars of a stress sheet."""
        return ()

    @property
    def letterings(self) -> tuple[Lettering, ...]:
        """All lettering on it."""
        return tuple(letterings(*self.ink))


def framed(content: Content, papers: Sequence[Paper]) -> FramedSheet:
    """The content on the first of the sheets that has room for it.

    Raises OutOfRange where none has.
    """
    for paper in papers:
        laid = _page(content, paper) if paper.height is None else _sheet(content, paper)
        if laid is not None:
            return FramedSheet(laid=laid, content=content)
    tried = papers[-1].name or "the field book"
    raise OutOfRange("size of sheet", tried, "large enough that all lettering finds room")


def _sheet(content: Content, paper: Paper) -> Laid | None:
    """A standard sheet: title, drawing, columns of words, title block along the lower edge."""
    height = paper.cut(0.0)
    left = paper.margin + GAP
    place = Place(left=left, top=paper.margin + GAP, width=paper.width - 2 * left)
    head = _title(content, place)
    room = Room(left=left, top=head.bottom + 14, width=place.width, narrow=False, height=0.0)
    tallest = height - head.bottom - paper.margin - GAP
    drawing = content.draw(replace(room, height=tallest))
    if drawing is None:
        return None
    band = _title_block(content, drawing, place.below(0.0), paper)
    top = height - paper.margin - 5.0 - band.bottom
    own = (*content.blocks, *drawing.blocks)
    words = _columns(own, place.below(0.0))
    space = top - GAP - (words.bottom + GAP if own else 0.0) - room.top
    if space < content.least:
        return None
    drawing = content.draw(replace(room, height=space))
    if drawing is None or drawing.bottom > room.top + space + 1e-6:
        return None
    again = (*content.blocks, *drawing.blocks)
    if again and _columns(again, place.below(0.0)).bottom > words.bottom + 1e-6:
        return None
    spare = room.top + space - drawing.bottom
    lower = content.draw(replace(room, top=room.top + 0.4 * spare, height=space - 0.4 * spare))
    drawing = lower if lower is not None and lower.scale == drawing.scale else drawing
    band = _title_block(content, drawing, place.below(top), paper)
    words = _columns(again, place.below(top - GAP - words.bottom))
    return Laid(paper=paper, height=height, bars=(), ink=(
        *border(paper, height), *head.ink, *drawing.ink, *words.ink, *band.ink,
    ))


def _page(content: Content, paper: Paper) -> Laid | None:
    """A page of the field book: the same, one under the other."""
    left = paper.margin + NARROW_GAP
    place = Place(left=left, top=paper.margin + NARROW_GAP, width=paper.width - 2 * left)
    head = _narrow_title(content, place)
    drawing = content.draw(Room(
        left=left, top=head.bottom + 10, width=place.width, height=2.2 * paper.width, narrow=True,
    ))
    if drawing is None:
        return None
    words = _columns(
        (*content.blocks, *drawing.blocks), place.below(drawing.bottom + NARROW_GAP + 6)
    )
    band = _narrow_block(content, drawing, place.below(words.bottom + NARROW_GAP), paper)
    height = paper.cut(band.bottom + NARROW_GAP + paper.margin)
    return Laid(paper=paper, height=height, bars=(), ink=(
        *border(paper, height), *head.ink, *drawing.ink, *words.ink, *band.ink,
    ))


def _title(content: Content, place: Place) -> Drawn:
    middle = place.left + place.width / 2
    name = fitted(run(content.bridge.upper(), 22.0, Face.STRONG, spread=3.6), place.width - 40)
    page = f", {content.page}" if content.page else ""
    under = fitted(run(f"{content.title}{page}", 15.0, Face.SLANTED, spread=0.3), place.width - 40)
    level = place.top + 22.0
    return Drawn(
        ink=(
            on_line((name,), (middle, level), share=0.5),
            *blocks.swelled_rule(middle, level + 14.0, 260.0),
            on_line((under,), (middle, level + 34.0), share=0.5),
        ),
        bottom=level + 42.0,
    )


def _narrow_title(content: Content, place: Place) -> Drawn:
    name = blocks.text_block(content.bridge, place, size=19.0, face=Face.STRONG)
    page = f", {content.page}" if content.page else ""
    under = blocks.text_block(
        f"{content.title}{page}", place.below(name.bottom + 2), size=14.0, face=Face.SLANTED
    )
    rule = blocks.swelled_rule(place.left + place.width / 2, under.bottom + 8, place.width * 0.8)
    return Drawn(ink=(*name.ink, *under.ink, *rule), bottom=under.bottom + 16)


def _columns(own: Sequence[Block], place: Place) -> Drawn:
    """Blocks side by side, each put under the shortest column; wide ones may ask for less."""
    if not own:
        return Drawn(ink=(), bottom=place.top)
    count = max(1, min(len(own), int((place.width + GAP) // (COLUMN + GAP))))
    width = (place.width - (count - 1) * GAP * 1.3) / count
    levels = [place.top] * count
    ink: list[Ink] = []
    for block in own:
        column = min(range(count), key=lambda i: (levels[i], i))
        drawn = block(Place(
            left=place.left + column * (width + GAP * 1.3), top=levels[column], width=width,
        ))
        ink += drawn.ink
        levels[column] = drawn.bottom + 16.0
    return Drawn(ink=tuple(ink), bottom=max(levels) - 16.0)


def _rows(content: Content, drawing: Drawing, paper: Paper) -> list[list[tuple[str, str]]]:
    """What the title block says, in three columns."""
    scale = drawing.said_scale or "none"
    if drawing.scale is not None:
        scale = f"{drawing.scale.said}, where the sheet is {paper.said}"
    return [
        [("Bridge", content.bridge), ("Number", content.number or "none"),
         ("As on", content.date)],
        [("Sheet", content.title + (f", {content.page}" if content.page else "")),
         ("Units", content.units), ("Drawn", f"{content.source}. {content.how}".strip())],
        [("Scale", scale), ("Signed", "not signed; to be checked and signed by a licensed "
                            "engineer")],
    ]


def _title_block(content: Content, drawing: Drawing, place: Place, paper: Paper) -> Drawn:
    """Three columns between fine lines along the lower edge; `bottom` is its height at top 0."""
    shares = (0.3, 0.4, 0.3)
    rows = _rows(content, drawing, paper)
    left, ink, deepest = place.left - GAP + 5.0, list[Ink](), place.top
    width = place.width + 2 * GAP - 10.0
    for i, (share, own) in enumerate(zip(shares, rows, strict=True)):
        inner = Place(left=left + 12.0, top=place.top + 3.0, width=share * width - 24.0)
        drawn = blocks.rows_with_captions(own, inner, CAPTION)
        ink += drawn.ink
        bottom = drawn.bottom
        if i == 2 and drawing.scale is not None:
            ink += ruler(
                drawing.scale, (inner.left + CAPTION, bottom + 7), inner.width - CAPTION - 34
            )
            bottom += 30.0
        deepest = max(deepest, bottom)
        left += share * width
    deepest += 6.0
    edge = place.left - GAP + 5.0
    ink.append(Line(start=(edge, place.top), end=(edge + width, place.top), weight=FINE))
    for share in (0.3, 0.7):
        x = edge + share * width
        ink.append(Line(start=(x, place.top), end=(x, deepest), weight=HAIR))
    return Drawn(ink=tuple(ink), bottom=deepest)


def _narrow_block(content: Content, drawing: Drawing, place: Place, paper: Paper) -> Drawn:
    inner = Place(left=place.left + 8, top=place.top + 6, width=place.width - 16)
    drawn = blocks.rows_with_captions(
        [row for column in _rows(content, drawing, paper) for row in column], inner, CAPTION - 8
    )
    ink, bottom = list(drawn.ink), drawn.bottom
    if drawing.scale is not None:
        ink += ruler(drawing.scale, (inner.left + CAPTION, bottom + 7),
                     inner.width - CAPTION - 34)
        bottom += 30.0
    return Drawn(ink=(
        Plate(left=place.left, top=place.top, right=place.left + place.width, bottom=bottom + 4,
              weight=FINE), *ink,
    ), bottom=bottom + 4)
