"""The stress sheet of one truss: elevation, figures, posting, sign, key and title block.

Made from a `rate` and a `forces` document, and from nothing else.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from eyebar.drawings.blocks import Laid
from eyebar.drawings.elevation import Link
from eyebar.drawings.field_book import field_book_page
from eyebar.drawings.fonts import FAMILY, STYLES, Face, embedded
from eyebar.drawings.full_sheet import full_sheet
from eyebar.drawings.ink import Ink, attribute, content, letterings, number, written
from eyebar.drawings.lettering import PAPER, Lettering
from eyebar.drawings.members import DrawnBar
from eyebar.drawings.paper import UNITS_PER_INCH
from eyebar.terms import Leaf
from eyebar.views.stress_sheet import StressSheet, chosen_truss, sheet_view

LAID = "font-kerning:none;font-variant-ligatures:none;text-rendering:geometricPrecision"
"""Letters are set one after the other, as they were measured."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A sheet: its SVG, and what it was written from, for whoever wants to check or go on."""

    svg: str
    view: StressSheet
    width: float
    height: float
    ink: tuple[Ink, ...]
    bars: tuple[DrawnBar, ...]

    @property
    def letterings(self) -> tuple[Lettering, ...]:
        """All lettering on the sheet."""
        return tuple(letterings(*self.ink))


def stress_sheet(
    rate: Mapping[str, Any], forces: Mapping[str, Any], *, truss: str | None = None,
    vehicle: str | None = None, leaf: Leaf = Leaf.SHEET, link: Link | None = None,
) -> Sheet:
    """The stress sheet from the `rate` and `forces` documents of one bridge on one date.

    Without a truss: the one that governs, or the first. Without a vehicle: the worst of all. A
    field-book leaf is one narrow column, its figures in a table. `link` gives the address that a
    part's drawing leads to. Raises Unknown for a truss or a vehicle that is not there.
    """
    rate, forces = dict(rate), dict(forces)
    view = sheet_view(rate, forces, truss=truss, vehicle=vehicle)
    drawn = chosen_truss(rate, forces, view.truss)
    laid = (full_sheet if leaf is Leaf.SHEET else field_book_page)(view, drawn, link)
    return Sheet(
        svg=_svg(view, laid), view=view, width=laid.paper.width, height=laid.height, ink=laid.ink,
        bars=laid.bars,
    )


def _svg(view: StressSheet, laid: Laid) -> str:
    width, height = laid.paper.width, laid.height
    title = f"Stress sheet of the {view.truss} truss: {view.title}"
    said = " ".join((view.posting, view.governed, *view.cautions))
    body = "\n".join(written(one) for one in laid.ink)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{number(width / UNITS_PER_INCH)}in" '
        f'height="{number(height / UNITS_PER_INCH)}in" '
        f'viewBox="0 0 {number(width)} {number(height)}" '
        'style="max-width:100%;height:auto" role="graphics-document document" '
        f"aria-label={attribute(title)} fill=\"none\">\n"
        f"<title>{content(title)}</title>\n<desc>{content(said)}</desc>\n"
        f"<style>{_faces(laid.ink)}</style>\n"
        f'<rect width="{number(width)}" height="{number(height)}" fill="{PAPER}"/>\n'
        f"{body}\n</svg>\n"
    )


def _faces(ink: Sequence[Ink]) -> str:
    """The faces used, each cut down to the letters used."""
    used: dict[Face, set[str]] = {}
    for one in letterings(*ink):
        for letters in one.runs:
            used.setdefault(letters.face, set()).update(letters.text)
    rules = []
    for face in sorted(used):
        style, weight = STYLES[face]
        source = embedded(face, "".join(sorted(used[face])))
        rules.append(
            f'@font-face{{font-family:"{FAMILY}";font-style:{style};font-weight:{weight};'
            f"src:url({source})}}"
        )
    return f"text{{{LAID}}}" + "".join(rules)
