"""The stress sheet on a page of a field book: one narrow column, its figures in a table.

A telephone held upright shows such a page at its own size. What may cross stands before anything
else.
"""

from collections.abc import Mapping
from typing import Any

from eyebar.drawings import blocks
from eyebar.drawings.blocks import Drawn, Laid, Place
from eyebar.drawings.elevation import NARROW_ASIDE, NARROW_HUNG_ASIDE, Frame, Link, elevation
from eyebar.drawings.fonts import Face
from eyebar.drawings.force_table import force_table
from eyebar.drawings.key import key_block
from eyebar.drawings.measured import hung, truss_size
from eyebar.drawings.paper import FIELD_BOOK, UNITS_PER_INCH, drawing_scale
from eyebar.drawings.roadside import roadside
from eyebar.drawings.title_block import border, title_block
from eyebar.views import sheet_words
from eyebar.views.stress_sheet import StressSheet, Work

GAP = 15.0
"""Between the border and what stands inside."""
APART = 24.0
"""Between the blocks of the column."""


def field_book_page(view: StressSheet, truss: Mapping[str, Any], link: Link | None) -> Laid:
    """Title, verdict, sign, truss, key, table, title block: one under the other."""
    paper = FIELD_BOOK
    left = paper.margin + GAP
    place = Place(left=left, top=paper.margin + GAP + 2, width=paper.width - 2 * left)
    head = _heading(view, place)
    sign = roadside(view.signs, view.designation, place.below(head.bottom + APART))
    size = truss_size(truss)
    aside = NARROW_HUNG_ASIDE if hung(truss) else NARROW_ASIDE
    scale = drawing_scale(size, (place.width - 2 * aside, paper.deepest_in * UNITS_PER_INCH))
    drawn = elevation(view, truss, Frame(
        middle=paper.width / 2, top=sign.bottom + 12, scale=scale, figures=0.0, aside=aside,
        inside=(place.left, place.left + place.width),
    ), link)
    key = key_block(view.bars, sheet_words.FIGURES_IN_TABLE, place.below(drawn.bottom + APART))
    carrying = [bar for bar in view.bars if bar.work != Work.GONE]
    table = force_table(carrying, sheet_words.ALL_BARS, place.below(key.bottom + APART))
    block = title_block(view, place.below(table.bottom + APART), paper, scale)
    height = paper.cut(block.bottom + GAP + paper.margin)
    parts = (head, sign, Drawn(ink=drawn.ink, bottom=drawn.bottom), key, table, block)
    return Laid(
        paper=paper, height=height, bars=drawn.bars,
        ink=(*border(paper, height), *blocks.stacked(parts)),
    )


def _heading(view: StressSheet, place: Place) -> Drawn:
    """The verdict under the name; a bridge that is to be closed says so first."""
    closed = blocks.text_block(view.closed.upper(), place, size=24.0, face=Face.STRONG)
    name = blocks.text_block(
        view.title, place.below(closed.bottom + 4), size=19.0, face=Face.STRONG
    )
    under = blocks.text_block(
        f"Stress sheet of the {view.truss} truss, as on {view.date}", place.below(name.bottom + 2),
        face=Face.SLANTED,
    )
    rule = blocks.swelled_rule(place.left + place.width / 2, under.bottom + 10, place.width * 0.8)
    said = blocks.verdict(view, place.below(under.bottom + 24))
    return Drawn(
        ink=(*blocks.stacked((closed, name, under)), *rule, *said.ink), bottom=said.bottom
    )
