"""The slip for one crossing, as a page to be signed and carried along."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from eyebar.report.typeset import Paper, typeset
from eyebar.views import report_words
from eyebar.views.blocks import plainly
from eyebar.views.slip_page import slip_page


def slip_report(slip: Mapping[str, Any]) -> bytes:
    """The page of a `slip` document. Raises MissingLibrary where typst is not installed."""
    document = dict(slip)
    page = slip_page(document)
    bridge = document["bridge"]
    return typeset(Paper(
        template="plain.typ",
        content={
            "kind": page.title, "name": bridge["name"], "under": bridge["number"],
            "verdict": page.verdict, "cautions": page.cautions,
            "sections": plainly(page.sections), "foot": report_words.foot(document),
            "page_word": report_words.PAGE, "of_word": report_words.OF,
        },
        title=f"{page.title}: {report_words.with_article(bridge['name'])}",
        claims=(f"record={document['record_hash']}", f"eyebar={document['version']}"),
        dated=date.fromisoformat(document["day"]),
    ))
