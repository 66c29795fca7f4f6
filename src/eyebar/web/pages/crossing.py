"""May it cross? The board, one vehicle of the office's or of one's own, and the slip."""

from datetime import date, datetime

from starlette.requests import Request
from starlette.responses import Response

from eyebar.documents.cross import chosen
from eyebar.documents.slip import slip_of
from eyebar.errors import Unreadable
from eyebar.store.issued import Crossing, give_slip, slip_given
from eyebar.terms import VehicleClass
from eyebar.vehicles import Vehicle, typed_vehicle
from eyebar.views import words
from eyebar.views.columns import columns
from eyebar.views.crossing import BoardRow, board, said, slip_lines
from eyebar.web import urls
from eyebar.web.answers import asking_again, bench_of, page, person_of
from eyebar.web.forms import Sent, gone_to, whole_number
from eyebar.web.kept import Rated, StillRating
from eyebar.web.making import Document
from eyebar.web.pages.looked_up import heading, latest, rated


def crossing(request: Request) -> Response:
    """The answer for the vehicle that is asked for, and the board for all."""
    of = latest(request)
    found = rated(request, of)
    one = _one(request, found)
    everybody = _board(request, found)
    answer = page(
        "crossing.html", said(one, one["vehicles"][0]) if one else None,
        heading=heading(of, found), one=one["vehicles"][0] if one else None,
        vehicles=_names(found),
        asked=request.query_params, board=everybody, columns=columns(BoardRow),
        today=_today().isoformat(),
    )
    return answer if everybody is not None else asking_again(request, answer)


def _names(found: Rated) -> list[str]:
    """The vehicles that can be asked for: no design load."""
    return [
        one.name for one in found.one.vehicles.values()
        if one.vehicle_class is not VehicleClass.DESIGN
    ]


def _one(request: Request, found: Rated) -> Document | None:
    vehicle = _asked(request.query_params)
    return None if vehicle is None else bench_of(request).kept.crossing(found, vehicle)


def _asked(asked: object) -> str | Vehicle | None:
    """The vehicle that an address or a form asks for: typed axles, else a name."""
    get = asked.get  # type: ignore[attr-defined]
    if axles := (get("axles") or "").strip():
        return typed_vehicle(
            axles, gauge=get("gauge") or "", width=get("width") or "",
            name=(get("name") or "").strip() or "own vehicle", towing=bool(get("towing")),
        )
    return (get("vehicle") or "").strip() or None


def _board(request: Request, found: Rated) -> tuple[BoardRow, ...] | None:
    try:
        return board(bench_of(request).kept.board(found))
    except StillRating:
        return None


def slip(request: Request, sent: Sent) -> Response:
    """Give a slip: it is written down in the register and shown, to be printed and signed."""
    of, bench = latest(request), bench_of(request)
    vehicle = _asked(sent.fields)
    if vehicle is None:
        raise Unreadable("", "names no vehicle", "choose one, or type its axles")
    found = rated(request, of)
    document = slip_of(
        bench.kept.crossing(found, vehicle), chosen([vehicle], found.one.vehicles)[0],
        _day(sent.text("day")), way=whole_number(sent.text("way") or "1", "a way"),
    )
    conditions = document["way"]["conditions"] if document["way"] else []
    day = date.fromisoformat(document["day"])
    given = give_slip(
        bench.register, of.key,
        Crossing(
            vehicle=document["vehicle"]["name"], holder=sent.text("holder"), begins=day, ends=day,
            conditions="; ".join(map(words.condition, conditions)) or "none",
        ), person=person_of(request), reason=sent.text("why") or "asked at the workbench",
    )
    bench.slips[given.number] = document
    return gone_to(urls.bridge(of.key, f"slips/{given.number}"))


def shown_slip(request: Request) -> Response:
    """A slip to print; of one that was given before the workbench was opened, what is kept of it.
    """
    of, bench, number = latest(request), bench_of(request), int(request.path_params["number"])
    with bench.register.reading() as connection:
        given = slip_given(connection, of.bridge, number)
    document = bench.slips.get(number)
    return page("slip.html", slip_lines(document) if document else None, handle=of.key,
                given=given)


def _day(typed: str) -> date:
    if not typed:
        return _today()
    try:
        return date.fromisoformat(typed)
    except ValueError:
        raise Unreadable(typed, "is no day", "write it year-month-day") from None


def _today() -> date:
    return datetime.now().astimezone().date()
