"""The stress sheet of one truss: elevation, figures, posting, sign, key and title block.

Made from a `rate` and a `forces` document, and from nothing else.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from eyebar.drawings.blocks import Laid
from eyebar.drawings.elevation import Link
from eyebar.drawings.field_book import field_book_page
from eyebar.drawings.full_sheet import full_sheet
from eyebar.drawings.ink import Ink, letterings
from eyebar.drawings.lettering import Lettering
from eyebar.drawings.members import DrawnBar
from eyebar.drawings.paper import SHEETS, Paper
from eyebar.drawings.printed import Printed
from eyebar.drawings.svg_file import svg_file
from eyebar.terms import Leaf
from eyebar.views.stress_sheet import StressSheet, chosen_truss, sheet_view


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A sheet as it was laid out, its title and what it says in words, and what it was drawn from,
    for whoever wants to check or go on."""

    laid: Laid
    title: str
    said: str
    view: StressSheet

    @property
    def svg(self) -> str:
        """The text of its file."""
        return svg_file(self.laid, title=self.title, said=self.said)

    @property
    def printed(self) -> Printed:
        """The same for a page that brings the letters."""
        return Printed(
            ink=self.ink, width=self.width, height=self.height, title=self.title, said=self.said
        )

    @property
    def width(self) -> float:
        """Its width [units of 1/96 inch]."""
        return self.laid.paper.width

    @property
    def height(self) -> float:
        """Its height [units of 1/96 inch]."""
        return self.laid.height

    @property
    def ink(self) -> tuple[Ink, ...]:
        """All that is drawn on it."""
        return self.laid.ink

    @property
    def bars(self) -> tuple[DrawnBar, ...]:
        """Its bars."""
        return self.laid.bars

    @property
    def letterings(self) -> tuple[Lettering, ...]:
        """All lettering on the sheet."""
        return tuple(letterings(*self.ink))


def stress_sheet(
    rate: Mapping[str, Any], forces: Mapping[str, Any], *, truss: str | None = None,
    vehicle: str | None = None, leaf: Leaf = Leaf.SHEET, link: Link | None = None,
    papers: Sequence[Paper] = SHEETS,
) -> Sheet:
    """The stress sheet from the `rate` and `forces` documents of one bridge on one date.

    Without a truss: the one that governs, or the first. Without a vehicle: the worst of all. A
    field-book leaf is one narrow column, its figures in a table. `link` gives the address that a
    part's drawing leads to; `papers` are the sheets to try. Raises Unknown for a truss or a vehicle
    that is not there, OutOfRange where a standard sheet is too small.
    """
    rate, forces = dict(rate), dict(forces)
    view = sheet_view(rate, forces, truss=truss, vehicle=vehicle)
    drawn = chosen_truss(rate, forces, view.truss)
    if leaf is Leaf.SHEET:
        laid = full_sheet(view, drawn, link, papers)
    else:
        laid = field_book_page(view, drawn, link)
    return Sheet(
        laid=laid, view=view, title=f"Stress sheet of the {view.truss} truss: {view.title}",
        said=" ".join((view.posting, view.governed, *view.cautions)),
    )
