"""Drawn sheets as PDF and PNG: each on a page of its own size, its words read out as its text."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any

from eyebar.drawings import Printed
from eyebar.drawings.paper import UNITS_PER_INCH
from eyebar.report.typeset import Paper, pictured, typeset

DOTS_PER_INCH = 144.0
"""Fine lines of half a unit are then three quarters of a dot."""


def drawn_pdf(sheets: Sequence[Printed], document: Mapping[str, Any]) -> bytes:
    """The sheets as one PDF. Raises MissingLibrary where typst is not installed."""
    return typeset(_paper(sheets, document))


def drawn_png(sheet: Printed, document: Mapping[str, Any]) -> bytes:
    """One sheet as PNG. Raises MissingLibrary where typst is not installed."""
    return pictured(_paper([sheet], document), dots_per_inch=DOTS_PER_INCH)


def _paper(sheets: Sequence[Printed], document: Mapping[str, Any]) -> Paper:
    return Paper(
        template="drawn.typ", title=sheets[0].title,
        claims=(f"record={document['record_hash']}", f"eyebar={document['version']}",
                f"on={document['date']}"),
        dated=date.fromisoformat(document["date"]),
        content={"sheets": [
            {
                "svg": one.svg, "said": f"{one.title}. {one.said}",
                "wide": one.width / UNITS_PER_INCH, "high": one.height / UNITS_PER_INCH,
            }
            for one in sheets
        ]},
    )
