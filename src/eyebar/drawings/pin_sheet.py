"""A pin on a sheet: its packing to scale, forces, shears and moments in both planes, a table."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields
from typing import Any

from eyebar.drawings import blocks
from eyebar.drawings.blocks import Drawn, Laid, Place
from eyebar.drawings.boxes import Point
from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import FINE, HAIR, Ink, Line, letterings
from eyebar.drawings.lettering import INK, RUST, Run, fitted, on_line, run
from eyebar.drawings.paper import Paper
from eyebar.drawings.pin_diagrams import pin_diagrams
from eyebar.drawings.printed import Printed
from eyebar.drawings.svg_file import svg_file
from eyebar.drawings.title_block import border
from eyebar.errors import OutOfRange
from eyebar.views.pin_sheet import PinBearingRow, PinSheet, pin_sheet

PAPER_OF_A_PIN = Paper(width_in=11.0, least_height_in=8.5, margin_in=0.375, deepest_in=6.0)
EDGE = 30.0
"""Room inside the border."""
WIDTHS = (30.0, 168.0, 72.0, 66.0, 66.0, 66.0, 66.0, 66.0, 66.0, 66.0, 66.0, 66.0, 60.0)
GROUPS = ((3, 5, "Force, kip"), (5, 8, "Shear beyond, kip"), (8, 12, "Moment, kip in"))


@dataclass(frozen=True, slots=True, kw_only=True)
class PinDrawing:
    """A pin's sheet, drawn."""

    svg: str
    view: PinSheet
    ink: tuple[Ink, ...]
    laid: Laid
    bars: tuple[()] = ()

    @property
    def printed(self) -> Printed:
        """The same for a page that brings the letters."""
        return Printed(
            ink=self.ink, width=self.laid.paper.width, height=self.laid.height,
            title=f"{self.view.title}: {self.view.part}", said=self.view.answer,
        )

    @property
    def letterings(self) -> tuple[Any, ...]:
        """All its lettering."""
        return tuple(letterings(*self.ink))


def pin_drawing(
    document: Mapping[str, Any], papers: Sequence[Paper] = (PAPER_OF_A_PIN,)
) -> PinDrawing:
    """The sheet of a pin from its `explain` document, on the first of the sheets with room for it.

    Raises Unknown where nothing acts on the pin, OutOfRange where no sheet has room.
    """
    for paper in papers:
        found = _on_paper(document, paper)
        if found is not None:
            return found
    raise OutOfRange("size of sheet", papers[-1].name, "11 inches wide or more, and higher")


def _on_paper(document: Mapping[str, Any], paper: Paper) -> PinDrawing | None:
    view = pin_sheet(dict(document))
    width = PAPER_OF_A_PIN.width - 2 * (PAPER_OF_A_PIN.margin + EDGE)
    if paper.width < PAPER_OF_A_PIN.width:
        return None
    inner = Place(left=(paper.width - width) / 2, top=paper.margin + EDGE, width=width)
    drawn = [_title(view, inner)]
    diagrams = pin_diagrams(document["pin"], view, inner.below(drawn[-1].bottom + 16))
    drawn.append(diagrams.drawn)
    drawn.append(_table(view, inner.below(drawn[-1].bottom + 22)))
    drawn.append(_said(view, diagrams.scale, paper, inner.below(drawn[-1].bottom + 10)))
    needed = drawn[-1].bottom + EDGE + paper.margin
    height = paper.cut(needed)
    if height < needed:
        return None
    ink = (*border(paper, height), *(one for block in drawn for one in block.ink))
    laid = Laid(paper=paper, height=height, ink=ink, bars=())
    svg = svg_file(laid, title=f"{view.title}: {view.part}", said=view.answer)
    return PinDrawing(svg=svg, view=view, ink=ink, laid=laid)


def _title(view: PinSheet, place: Place) -> Drawn:
    middle = place.left + place.width / 2
    name = fitted(run(view.title.upper(), 20.0, Face.STRONG, spread=3.2), place.width)
    under = fitted(run(f"{view.part}: {view.load}", 14.0, Face.SLANTED), place.width)
    said = blocks.text_block(view.answer, place.below(place.top + 58), size=14.5, colour=RUST,
                             face=Face.SLANTED)
    return Drawn(
        ink=(on_line((name,), (middle, place.top + 18), share=0.5),
             on_line((under,), (middle, place.top + 42), share=0.5), *said.ink),
        bottom=said.bottom,
    )


def _table(view: PinSheet, place: Place) -> Drawn:
    """All figures, bearing by bearing; the governing row in the accent."""
    columns = fields(PinBearingRow)
    lefts = [place.left + sum(WIDTHS[:i]) for i in range(len(WIDTHS))]
    level = place.top + 12
    ink: list[Ink] = []
    for first, after, name in GROUPS:
        ink.append(on_line((run(name, 11.5, Face.SLANTED),), (lefts[first] + 12, level)))
        ink.append(Line(start=(lefts[first] + 12, level + 6), end=(lefts[after] - 2, level + 6),
                        weight=HAIR))
    level += 24
    for column, (left, width) in zip(columns, zip(lefts, WIDTHS, strict=True), strict=True):
        head = run(column.metadata["heading"], 11.5, Face.SLANTED)
        ink.append(_cell(head, (left, level), width, name=column.name))
    ink.append(Line(start=(place.left, level + 7), end=(place.left + place.width, level + 7),
                    weight=FINE))
    for i, row in enumerate(view.rows):
        level += 21 if i else 25
        chosen = i == view.governing
        face, colour = (Face.STRONG, RUST) if chosen else (Face.UPRIGHT, INK)
        for column, (left, width) in zip(columns, zip(lefts, WIDTHS, strict=True), strict=True):
            said = fitted(run(getattr(row, column.name), 12.5, face), width - 8)
            ink.append(_cell(said, (left, level), width, name=column.name, colour=colour))
    return Drawn(ink=tuple(ink), bottom=level + 12)


def _cell(said: Run, at: Point, width: float, *, name: str, colour: str = INK) -> Ink:
    """Words begin at the left of their column, figures end at its right."""
    left, level = at
    if name in ("number", "bears"):
        return on_line((said,), (left, level), colour=colour)
    return on_line((said,), (left + width - 4, level), share=1.0, colour=colour)


def _said(view: PinSheet, scale: str, paper: Paper, place: Place) -> Drawn:
    how = (
        f"Bearings and pin in {scale} where the sheet is {paper.said}; what bears is drawn "
        "higher than the pin to be seen. An arrow up is a force towards "
        "higher stations, or upwards. Short fine strokes are moments with loads spread over their "
        "bearings. Forces are those at which the check is reached, all of one place of the load. "
        "Not signed; to be checked and signed by a licensed engineer."
    )
    drawn = [Drawn(ink=(), bottom=place.top)]
    for text in (*view.remarks, how, *view.cautions):
        drawn.append(blocks.text_block(text, place.below(drawn[-1].bottom + 2),
                                       size=blocks.SMALL))
    return Drawn(ink=blocks.stacked(drawn), bottom=drawn[-1].bottom)
