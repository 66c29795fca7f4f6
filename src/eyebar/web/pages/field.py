"""In the field: part by part, what is read of each, kept while the signal is lost."""

import json
from collections.abc import Mapping
from datetime import date, datetime

from starlette.requests import Request
from starlette.responses import Response

from eyebar.errors import OutOfRange, Unreadable
from eyebar.record import What
from eyebar.record.adding import Read, with_inspection
from eyebar.views.workbench import part_groups
from eyebar.web import urls
from eyebar.web.answers import REFUSED, bench_of, page, person_of
from eyebar.web.drafts import Draft
from eyebar.web.forms import Faults, Sent, gone_to
from eyebar.web.pages.looked_up import Latest, heading, latest, rated

MOST = 2000
ROWS = 4
"""Readings that the page without script takes at once."""
KEYS = ("part", "what", "value", "place", "gauge", "plus_minus", "piece", "note")


def field(request: Request) -> Response:
    """The parts, and rows for what is read of the one chosen."""
    return _shown(request, latest(request), request.query_params, Faults())


def _shown(request: Request, of: Latest, typed: Mapping[str, str], faults: Faults) -> Response:
    """The page, with the rows as they were filled in and what is wrong with them."""
    found, part = rated(request, of), typed.get("part", "")
    readings = [
        (inspection["date"], one) for inspection in found.describe["inspections"]
        for one in inspection["readings"] if one["part"] == part
    ]
    return page(
        "field.html", part_groups(found.rate, part), heading=heading(of, found), part=part,
        words=[str(one) for one in What], rows=ROWS, onto=of.revision.revision,
        readings=readings, person=person_of(request),
        today=datetime.now().astimezone().date().isoformat(), typed=typed, faults=faults,
        status=REFUSED if faults else 200,
    )


def taken(request: Request, sent: Sent) -> Response:
    """An inspection with its readings: a draft, whose effect is shown before it is saved."""
    of, bench, faults = latest(request), bench_of(request), Faults()
    with faults.at("date"):
        day = _day(sent.text("date"))
    with faults.at(""):
        readings = _many(sent) if sent.text("entries") else _few(sent)
        if not readings:
            raise OutOfRange("number of readings", 0, "at least one: write what was read")
        if not faults:
            text = with_inspection(
                of.revision.text, day, sent.text("by") or person_of(request), readings,
                note=sent.text("note"),
            )
    if faults:
        return _shown(request, of, sent.fields, faults)
    name = bench.drafts.keep(Draft(
        handle=of.key, onto=of.revision.revision, text=text,
        why=f"inspection of {sent.text('date')}",
    ))
    return gone_to(urls.bridge(of.key, "measure", draft=name))


def _few(sent: Sent) -> list[Read]:
    """The rows of the page without script."""
    found = []
    for row in range(ROWS):
        typed = {key: sent.text(f"{key} {row}") for key in KEYS if key != "part"}
        if typed["value"]:
            found.append(Read(part=sent.text("part"), **typed))
    return found


def _many(sent: Sent) -> list[Read]:
    """What the page's script has gathered."""
    try:
        entries = json.loads(sent.text("entries"))
    except ValueError:
        raise Unreadable("entries", "are not JSON") from None
    if not isinstance(entries, list) or len(entries) > MOST:
        raise OutOfRange("entries", type(entries).__name__, f"a list of at most {MOST}")
    return [
        Read(**{key: str(one.get(key, "")) for key in KEYS}) for one in entries
        if isinstance(one, dict) and one.get("value")
    ]


def _day(typed: str) -> date:
    try:
        return date.fromisoformat(typed)
    except ValueError:
        raise Unreadable(typed, "is no day", "write it year-month-day") from None
