"""Crossing slips: given, and shown to be printed and signed."""

from datetime import date, datetime

from starlette.requests import Request
from starlette.responses import Response

from eyebar.documents.cross import chosen
from eyebar.documents.slip import slip_of
from eyebar.errors import EyebarError, Unreadable
from eyebar.store.asked import revision_before
from eyebar.store.issued import Crossing, Given, give_slip, slip_given
from eyebar.store.writing import plain_text
from eyebar.views import words
from eyebar.views.crossing import slip_lines
from eyebar.web import urls
from eyebar.web.answers import bench_of, page, person_of
from eyebar.web.forms import Faults, Sent, gone_to, whole_number
from eyebar.web.making import Document
from eyebar.web.pages.crossing import field_of, shown, vehicle_of
from eyebar.web.pages.looked_up import Latest, latest, rated

OTHER_CONDITIONS = (
    "rated again with the values of today, its revision gives other conditions than the slip has"
)
NOT_AN_OFFICES = (
    "{name} is not among the office's vehicles, and the axles of a typed one are not kept"
)


def slip(request: Request, sent: Sent) -> Response:
    """Give a slip: it is written down in the register and shown, to be printed and signed."""
    of, faults = latest(request), Faults()
    with faults.at("holder"):
        plain_text(sent.text("holder"), "to whom it is given")
    with faults.at("day"):
        day = _day(sent.text("day"))
    with faults.at("way"):
        way = whole_number(sent.text("way") or "1", "a way")
    if not faults:
        try:
            given = _given(request, of, sent, (day, way))
        except EyebarError as refusal:
            faults.add(field_of(refusal), refusal)
        else:
            return gone_to(urls.bridge(of.key, f"slips/{given.number}"))
    return shown(request, of, sent.fields, faults)


def _given(request: Request, of: Latest, sent: Sent, asked: tuple[date, int]) -> Given:
    """The slip, written down. Raises what a crossing raises, and OutOfRange where it is no."""
    bench, vehicle = bench_of(request), vehicle_of(sent.fields)
    if vehicle is None:
        raise Unreadable("", "names no vehicle", "choose one, or type its axles", where="vehicle")
    found = rated(request, of)
    document = slip_of(
        bench.kept.crossing(found, vehicle), chosen([vehicle], found.one.vehicles)[0],
        asked[0], way=asked[1],
    )
    given = give_slip(
        bench.register, of.key,
        Crossing(
            vehicle=document["vehicle"]["name"], holder=sent.text("holder"), begins=asked[0],
            ends=asked[0], conditions=_conditions(document["way"]),
        ), person=person_of(request), reason=sent.text("why") or "asked at the workbench",
    )
    bench.slips[given.number] = document
    return given


def _conditions(way: Document | None) -> str:
    """The conditions of a way across, as the register keeps them."""
    return "; ".join(map(words.condition, way["conditions"] if way else [])) or "none"


def shown_slip(request: Request) -> Response:
    """A slip to print; of one that was given before the workbench was opened, its answer made again
    from the revision that it was given on, or what the register keeps of it and why no more."""
    of, bench, number = latest(request), bench_of(request), int(request.path_params["number"])
    with bench.register.reading() as connection:
        given = slip_given(connection, of.bridge, number)
        revision = revision_before(connection, of.bridge, given["event"])
    document, why = bench.slips.get(number), ""
    if document is None:
        then = Latest(bridge=of.bridge, revision=revision, signed="", caller=of.caller)
        try:
            document, why = _again(request, then, given)
        except EyebarError as refusal:
            why = str(refusal)
    return page(
        "slip.html", slip_lines(document) if document else None, handle=of.key, given=given,
        why=why, revision=revision.revision, again=number not in bench.slips,
    )


def _again(request: Request, then: Latest, given: Document) -> tuple[Document | None, str]:
    """The document of a slip made again, or why it cannot be. Raises StillRating, and what a
    rating and a crossing raise."""
    found, name = rated(request, then), given["vehicle"]
    if name not in found.one.vehicles:
        return None, NOT_AN_OFFICES.format(name=name)
    crossed = bench_of(request).kept.crossing(found, name)
    ways = crossed["vehicles"][0]["ways"]
    way = next(
        (at for at, one in enumerate(ways, 1) if _conditions(one) == given["conditions"]),
        0 if ways or given["conditions"] != "none" else 1,
    )
    if not way:
        return None, OTHER_CONDITIONS
    day = date.fromisoformat(given["begins"])
    return slip_of(crossed, found.one.vehicles[name], day, way=way), ""


def _day(typed: str) -> date:
    if not typed:
        return datetime.now().astimezone().date()
    try:
        return date.fromisoformat(typed)
    except ValueError:
        raise Unreadable(typed, "is no day", "write it year-month-day") from None
