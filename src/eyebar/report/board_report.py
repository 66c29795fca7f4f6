"""The board of who may cross, as a sheet for the wall."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from eyebar.report.typeset import Paper, typeset
from eyebar.views import report_words, words
from eyebar.views.blocks import Paragraph, Points, Section, plainly, table
from eyebar.views.crossing import BoardRow, board

TITLE = "Who may cross"
OWN = 4
"""The cautions on crossing, which stand behind the general ones; those on the record follow."""


def board_report(cross: Mapping[str, Any], dated: date | None) -> bytes:
    """The sheet of a `cross` document. Raises MissingLibrary where typst is not installed."""
    document = dict(cross)
    bridge, posting = document["bridge"], document["posting"]
    rows = board(document)
    general = 2 + bool(posting["closed"])
    sections = (
        Section(heading=TITLE, blocks=(
            table(BoardRow, rows, caption=report_words.as_on(document),
                  shares=(4, 0, 2, 2, 0, 4, 6)),
            Paragraph(text=words.provisional(posting), tone="accent"),
            Points(points=tuple(document["cautions"][general:general + OWN])),
        )),
    )
    return typeset(Paper(
        template="plain.typ",
        content={
            "kind": TITLE, "name": bridge["name"], "under": bridge["number"],
            "verdict": words.posting_line(posting),
            "cautions": document["cautions"][:general],
            "sections": plainly(sections), "foot": report_words.foot(document),
            "page_word": report_words.PAGE, "of_word": report_words.OF,
        },
        title=f"{TITLE}: {report_words.with_article(bridge['name'])}",
        claims=(f"record={document['record_hash']}", f"eyebar={document['version']}"),
        dated=dated or date.fromisoformat(document["date"]),
    ))
