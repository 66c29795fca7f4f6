"""The rating report: from the documents of a bridge to its pages."""

import dataclasses
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from eyebar.documents.gathered import Gathered
from eyebar.drawings import Printed, pin_figures, sign_alone, small_elevation, stress_sheet
from eyebar.drawings.paper import UNITS_PER_INCH
from eyebar.report.typeset import Paper, typeset
from eyebar.terms import Board, Reader, Working
from eyebar.views import (
    report_bridge,
    report_pins,
    report_public,
    report_ratings,
    report_values,
    report_words,
)
from eyebar.views.blocks import Figure, Paragraph, Section, plainly
from eyebar.views.report_board import who_may_cross
from eyebar.views.report_bracing import bracing
from eyebar.views.report_front import front
from eyebar.views.report_inventory import inventory
from eyebar.views.report_since import changes
from eyebar.views.report_working import working_section
from eyebar.views.signed import InRegister
from eyebar.views.stress_sheet import StressSheet, chosen_truss, sheet_view


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What is asked of a report beside its record."""

    working: Working = Working.GOVERNING
    dated: date | None = None
    since: Mapping[str, Any] | None = None
    reader: Reader = Reader.ENGINEER
    board: Board = Board.ANSWERS
    register: InRegister | None = None
    """What the register says of the rating, where it is kept in one."""


def rating_report(of: Gathered, asked: Asked) -> bytes:
    """The PDF of a rating. Raises MissingLibrary where typst is not installed."""
    rate = of.rate
    dated = asked.dated or date.fromisoformat(rate["date"])
    for_public = asked.reader is Reader.PUBLIC
    result = report_values.fingerprint(rate)
    return typeset(Paper(
        template="public.typ" if for_public else "rating.typ",
        content=public_contents(of) if for_public else contents(of, asked, result),
        title=report_public.title(rate) if for_public else report_words.title(rate),
        claims=claims(rate, asked, result),
        dated=dated,
    ))


def claims(rate: Mapping[str, Any], asked: Asked, result: str) -> tuple[str, ...]:
    """What the file says of itself, for whoever proves it; `result` is the rating's fingerprint."""
    return (
        f"record={rate['record_hash']}",
        f"result={result}",
        f"eyebar={rate['version']}",
        f"on={rate['date']}",
        f"working={asked.working}",
        f"for={asked.reader}",
        f"board={asked.board}",
        *((f"since={report_values.fingerprint(dict(asked.since))}",) if asked.since else ()),
        *((f"register={asked.register.register}", f"rating={asked.register.rating}",
           f"head={asked.register.head}") if asked.register else ()),
    )


def _changes(of: Gathered, asked: Asked) -> tuple[str, ...]:
    return changes(dict(asked.since), of.rate) if asked.since else ()


def contents(of: Gathered, asked: Asked, result: str) -> dict[str, Any]:
    """Everything that the template sets; `result` is the rating's fingerprint."""
    rate = of.rate
    view = sheet_view(rate, of.forces) if of.forces else None
    return {
        "front": dataclasses.asdict(front(
            rate, of.describe, changes=_changes(of, asked),
            crossing=report_words.crossing(rate["posting"], of.everyday), register=asked.register,
        )),
        "headings": report_words.HEADINGS,
        "foot": report_words.foot(rate),
        "page_word": report_words.PAGE, "of_word": report_words.OF,
        "elevation": _elevations(of, view),
        "sign": _plain(sign_alone(rate["posting"])),
        "sections": plainly(_sections(of, asked)),
        "sheets": _sheets(of),
        "working": plainly(_workings(of, asked.working)),
        "proof": plainly([
            report_values.proof(rate, result, report_words.VERIFY, asked.register),
        ]),
    }


def public_contents(of: Gathered) -> dict[str, Any]:
    """Everything that the template of the public's pages sets."""
    view = sheet_view(of.rate, of.forces) if of.forces else None
    return {
        "public": dataclasses.asdict(report_public.public(of.rate, of.describe)),
        "foot": report_words.foot(of.rate),
        "page_word": report_words.PAGE, "of_word": report_words.OF,
        "elevation": _elevations(of, view),
        "sign": _plain(sign_alone(of.rate["posting"])),
    }


def _sections(of: Gathered, asked: Asked) -> list[Section]:
    return [
        report_bridge.described(of.describe),
        report_bridge.readings(of.describe),
        report_bridge.materials(of.describe),
        report_bridge.loads(of.describe, of.vehicles),
        report_ratings.weakest(of.rate),
        report_ratings.by_part(of.rate),
        *report_pins.pins([
            (one.view, replace(_figure(one.printed, caption=one.view.part), floats=True))
            for one in pin_figures(of.rate, of.explain)
        ]),
        bracing(of.bracing()),
        report_ratings.whole(of.rate),
        *_board(of, asked.board),
        report_values.assumed(of.rate),
        report_values.values(of.rate),
        inventory(of.rate, of.describe, of.vehicles),
    ]


def _board(of: Gathered, which: Board) -> list[Section]:
    if which is Board.NONE:
        return []
    return [who_may_cross(of.rate, of.board(which), looked_for=which is Board.CONDITIONS)]


def _sheets(of: Gathered) -> list[dict[str, Any]]:
    """A stress sheet for each truss, on a page of its own size."""
    if of.forces is None:
        return []
    return [
        {
            "svg": sheet.printed.svg,
            "said": f"{sheet.printed.title}. {sheet.view.posting}. {sheet.view.governed}",
            "width": sheet.width / UNITS_PER_INCH, "height": sheet.height / UNITS_PER_INCH,
        }
        for truss in of.forces["trusses"]
        for sheet in [stress_sheet(of.rate, of.forces, truss=truss["truss"])]
    ]


def _elevations(of: Gathered, view: StressSheet | None) -> list[dict[str, Any]]:
    if of.forces is None or view is None:
        return []
    drawn = small_elevation(view, chosen_truss(of.rate, of.forces, view.truss))
    return [_plain(drawn)]


def _figure(drawn: Printed, caption: str = "") -> Figure:
    """As wide as the page: there a pin is drawn to the scale that its figure names."""
    return Figure(svg=drawn.svg, said=f"{drawn.title}. {drawn.said}", caption=caption)


def _plain(drawn: Printed) -> dict[str, Any]:
    return dataclasses.asdict(_figure(drawn))


def _workings(of: Gathered, which: Working) -> Sequence[Section]:
    parts = list(_explained(of, which))
    if not parts:
        return []
    head = Section(heading=report_words.HEADINGS["working"], blocks=(
        Paragraph(text=report_words.ABOUT_WORKING),
    ))
    return [head, *(working_section(of.explain(part)) for part in parts)]


def _explained(of: Gathered, which: Working) -> Iterable[str]:
    """The parts whose working is shown: all, none, or what governs the posting and the weakest of
    each group."""
    weakest = report_ratings.weakest_parts(of.rate)
    if which is Working.ALL:
        return [part["part"] for part, _ in weakest]
    if which is Working.NONE:
        return []
    governs = of.rate["posting"]["governed_by"]
    first = {governs["part"]: ""} if governs else {}
    groups: dict[str, str] = {}
    for part, _ in weakest:
        groups.setdefault(report_ratings.group_of(part["kind"]), part["part"])
    return dict.fromkeys([*first, *groups.values()])
