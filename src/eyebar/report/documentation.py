"""The documentation sheet of a bridge: its documents and drawings, as PDF and as Markdown."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path
from typing import Any

from eyebar.documents.drawn import drawn_of
from eyebar.documents.history import history_of
from eyebar.documents.how import how_of
from eyebar.documents.opened import Opened
from eyebar.documents.sheet import sheet_of
from eyebar.drawings import Printed, how_figures, small_elevation
from eyebar.drawings.cross_section_sheet import cross_section_sheet
from eyebar.drawings.elevation_sheet import elevation_sheet
from eyebar.drawings.floor_sheet import floor_sheet
from eyebar.drawings.framed import FramedSheet
from eyebar.drawings.paper import UNITS_PER_INCH
from eyebar.drawings.sizes import FREE
from eyebar.errors import NotMeasured, OutOfRange, Unstable
from eyebar.report.typeset import Paper, typeset
from eyebar.views import documentation as view
from eyebar.views import documentation_words as words
from eyebar.views import drawn as drawn_view
from eyebar.views import report_words
from eyebar.views.blocks import Figure, plainly
from eyebar.views.markdown import markdown

PAPERS = FREE[1:]
"""Standard sheets for the drawings attached: none is as small as the pages of words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Documented:
    """What a sheet is made from: its documents, small drawings by heading, and whole sheets."""

    sheet: dict[str, Any]
    history: dict[str, Any]
    how: dict[str, Any] | None
    no_how: str
    figures: Mapping[str, tuple[Printed, ...]]
    sheets: tuple[Printed, ...]
    missing: tuple[str, ...]

    def told(self, svg: Callable[[Printed], str]) -> view.Told:
        """For the view; `svg` makes the drawings fit for the paper."""
        return view.Told(
            sheet=self.sheet, history=self.history, how=self.how, no_how=self.no_how,
            missing=self.missing,
            figures={
                heading: tuple(_figure(one, svg, heading) for one in drawings)
                for heading, drawings in self.figures.items()
            },
        )


def documented(one: Opened) -> Documented:
    """Everything for a sheet of a record that has been opened."""
    drawn = drawn_of(one)
    how, no_how = _how(one)
    sheets, missing = _sheets(drawn)
    return Documented(
        sheet=sheet_of(one), history=history_of(one), how=how, no_how=no_how,
        figures={
            words.GENERAL: tuple(_elevations(drawn)),
            **(how_figures(how) if how else {}),
        },
        sheets=tuple(sheets), missing=tuple(missing),
    )


def documentation_pdf(of: Documented, dated: date | None = None) -> bytes:
    """The sheet as PDF. Raises MissingLibrary where typst is not installed."""
    sheet = of.sheet
    return typeset(Paper(
        template="documentation.typ",
        content={
            "kind": words.KIND, "name": sheet["bridge"]["name"],
            "under": ". ".join(filter(None, (sheet["place"], report_words.as_on(sheet)))),
            "sections": plainly(view.documentation(of.told(lambda one: one.svg))),
            "sheets": [
                {
                    "svg": one.svg, "said": f"{one.title}. {one.said}",
                    "wide": one.width / UNITS_PER_INCH, "high": one.height / UNITS_PER_INCH,
                }
                for one in of.sheets
            ],
            "foot": report_words.foot(sheet),
            "page_word": report_words.PAGE, "of_word": report_words.OF,
        },
        title=view.title(sheet),
        claims=(
            f"record={sheet['record_hash']}", f"eyebar={sheet['version']}", f"on={sheet['date']}",
        ),
        dated=dated or date.fromisoformat(sheet["date"]),
    ))


def documentation_markdown(of: Documented, file: Path) -> tuple[str, dict[str, str]]:
    """The sheet as Markdown, and name -> SVG of the drawings that stand beside the file."""
    sheet = of.sheet
    text, files = markdown(
        view.title(sheet),
        filter(None, (sheet["place"], report_words.as_on(sheet))),
        (*view.documentation(of.told(lambda one: one.alone)), view.attached([
            _figure(one, lambda printed: printed.alone) for one in of.sheets
        ])),
        file.stem,
    )
    return text, files


def _figure(one: Printed, svg: Callable[[Printed], str], heading: str = "") -> Figure:
    """A drawing; without a caption where it would say its heading again."""
    return Figure(
        svg=svg(one), said=f"{one.title}. {one.said}".strip(),
        caption="" if one.title == heading else one.title,
    )


def _how(one: Opened) -> tuple[dict[str, Any] | None, str]:
    """How it works; where its forces cannot be found, the reason."""
    try:
        return how_of(one), ""
    except (NotMeasured, OutOfRange, Unstable) as refusal:
        return None, f"Not told: {refusal}."


def _elevations(drawn: dict[str, Any]) -> Iterator[Printed]:
    """The first truss, small; the others where they are not the same."""
    shown: list[Any] = []
    for truss in drawn["trusses"]:
        if truss["joints"] in shown:
            continue
        shown.append(truss["joints"])
        yield small_elevation(
            drawn_view.elevation_view(drawn, truss, sections=False), truss, said=words.CAN_PUSH
        )


def _sheets(drawn: dict[str, Any]) -> tuple[list[Printed], list[str]]:
    """Elevations, cross-section and floor plan on standard sheets, and why some of them are not
    there."""
    makers: Mapping[str, Callable[[], FramedSheet]] = {
        **{
            words.elevation(truss["truss"]): partial(
                elevation_sheet, drawn, PAPERS, truss=truss["truss"]
            )
            for truss in drawn["trusses"]
        },
        words.CROSS_SECTION: partial(cross_section_sheet, drawn, None, PAPERS),
        words.FLOOR_PLAN: partial(floor_sheet, drawn, PAPERS),
    }
    sheets: list[Printed] = []
    missing: list[str] = []
    for name, make in makers.items():
        try:
            sheets.append(make().printed)
        except (NotMeasured, OutOfRange) as refusal:
            missing.append(f"{words.NOT_DRAWN}: {name}: {refusal}.")
    return sheets, missing
