"""The section of a report on who may cross, vehicle by vehicle."""

from collections.abc import Sequence

from eyebar.documents.cross import ASSUMED, PERMIT, RATED
from eyebar.views import report_words
from eyebar.views.blocks import Block, Paragraph, Points, Section, table
from eyebar.views.columns import Document
from eyebar.views.crossing import BoardRow, board

SHARES = (4, 0, 0, 2, 0, 4, 6)


def who_may_cross(rate: Document, vehicles: Sequence[Document], *, looked_for: bool) -> Section:
    """The board from the answers of a `cross` document; `looked_for`: whether conditions were.

    Of a bridge over which nothing may cross it says so instead.
    """
    posting = rate["posting"]
    if posting["closed"] is not False:
        blocks: list[Block] = [
            Paragraph(text=said, tone="accent") for said in report_words.crossing(posting, ())
        ]
        return Section(heading=report_words.BOARD, blocks=tuple(blocks))
    notes = [PERMIT, RATED]
    if any(one["assumed"] for one in vehicles):
        notes.append(f"* {ASSUMED}")
    if not looked_for:
        notes.append(report_words.NO_CONDITIONS)
    return Section(heading=report_words.BOARD, blocks=(
        table(BoardRow, board({"vehicles": vehicles}), shares=SHARES,
              caption=report_words.ABOUT_BOARD),
        Points(points=tuple(notes)),
    ))
