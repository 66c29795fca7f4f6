"""A slip for one crossing as a page: what may cross, on which conditions, and who signs."""

from dataclasses import dataclass

from eyebar.views import report_words
from eyebar.views.blocks import Blanks, Block, Paragraph, Points, Rows, Section, Ticks
from eyebar.views.columns import Document, text
from eyebar.views.crossing import conditions_of, slip_rows, slip_title
from eyebar.views.sheet_words import long_date

MAY = "May cross once on {day}"
MAY_IF = "May cross once on {day}, if all that is below is kept"
GENERAL = 3
"""The cautions that stand above all; those on crossing and on the record stand below."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SlipPage:
    """What stands on the page."""

    title: str = text("Title", "What the paper is.")
    verdict: str = text("Answer", "What may be done, and when.")
    cautions: tuple[str, ...] = text("Cautions", "Sentences that belong to every slip.")
    sections: tuple[Section, ...] = text("Sections", "Vehicle, conditions, signatures, cautions.")


def slip_page(document: Document) -> SlipPage:
    """The page of a `slip` document."""
    conditions = conditions_of(document)
    day = long_date(document["day"])
    cautions = tuple(document["cautions"])
    kept: list[Block] = [Ticks(points=conditions)] if conditions else [
        Paragraph(text=report_words.NO_MUST)
    ]
    return SlipPage(
        title=slip_title(document),
        verdict=(MAY_IF if conditions else MAY).format(day=day),
        cautions=cautions[:GENERAL],
        sections=(
            Section(heading="What crosses", blocks=(
                Rows(headings=report_words.OF_THE_CROSSING, rows=slip_rows(document)),
            )),
            Section(heading="On these conditions", blocks=tuple(kept)),
            Section(heading="Signed by", blocks=(
                Blanks(captions=tuple(
                    caption for one in document["signed"]
                    for caption in _captions(one)
                )),
            )),
            Section(heading="What this rests on", blocks=(Points(points=cautions[GENERAL:]),)),
        ),
    )


def _captions(one: Document) -> tuple[str, str]:
    role = str(one["role"]).capitalize()
    return f"{role}: name and signature", "Date"
