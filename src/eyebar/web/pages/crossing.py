"""May it cross? The board, one vehicle of the office's or of one's own, and the form of a slip."""

from collections.abc import Mapping
from datetime import date, datetime

from starlette.requests import Request
from starlette.responses import Response

from eyebar.errors import EyebarError, OutOfRange, Unknown, Unreadable
from eyebar.terms import VehicleClass
from eyebar.vehicles import Vehicle, typed_vehicle
from eyebar.views.columns import columns
from eyebar.views.crossing import BoardRow, board, said
from eyebar.web.answers import REFUSED, asking_again, bench_of, page
from eyebar.web.forms import Faults
from eyebar.web.kept import Rated, StillRating
from eyebar.web.making import Document
from eyebar.web.pages.looked_up import Latest, heading, latest, rated


def crossing(request: Request) -> Response:
    """The answer for the vehicle that is asked for, and the board for all."""
    return shown(request, latest(request), request.query_params, Faults())


def shown(
    request: Request, of: Latest, asked: Mapping[str, str], faults: Faults
) -> Response:
    """The page, with its forms as they were filled in and what is wrong with them."""
    found, kept = rated(request, of), bench_of(request).kept
    one: Document | None = None
    try:
        vehicle = vehicle_of(asked)
        one = None if vehicle is None else kept.crossing(found, vehicle)
    except EyebarError as refusal:
        faults.add(field_of(refusal), refusal)
    everybody = _board(request, found)
    waits = everybody is None and not faults and request.method != "POST"
    answer = page(
        "crossing.html", said(one, one["vehicles"][0]) if one else None,
        heading=heading(of, found), one=one["vehicles"][0] if one else None,
        vehicles=_names(found), status=REFUSED if faults else 200, faults=faults,
        asked=asked, board=everybody, columns=columns(BoardRow), today=_today().isoformat(),
        comes_back=waits,
    )
    return asking_again(request, answer) if waits else answer


def _names(found: Rated) -> list[str]:
    """The vehicles that can be asked for: no design load."""
    return [
        one.name for one in found.one.vehicles.values()
        if one.vehicle_class is not VehicleClass.DESIGN
    ]


def vehicle_of(asked: Mapping[str, str]) -> str | Vehicle | None:
    """The vehicle that an address or a form asks for: typed axles, else a name."""
    def one(name: str) -> str:
        return asked.get(name, "").strip()

    if axles := one("axles"):
        return typed_vehicle(
            axles, gauge=one("gauge"), width=one("width"), towing=bool(one("towing"))
        )
    return one("vehicle") or None


FIELDS = {"vehicle": "vehicle", "axle": "axles", "distance": "axles", "number of axles": "axles",
          "gauge": "gauge", "width": "width"}
"""How a refusal of a vehicle begins to say where -> the field of the form."""


def field_of(refusal: EyebarError) -> str:
    """The field of the form on vehicles that a refusal is about."""
    if isinstance(refusal, Unknown):
        return "vehicle"
    if not isinstance(refusal, Unreadable | OutOfRange):
        return ""
    where = refusal.where if isinstance(refusal, Unreadable) else refusal.what
    return next((name for begins, name in FIELDS.items() if where.startswith(begins)), "")


def _board(request: Request, found: Rated) -> tuple[BoardRow, ...] | None:
    try:
        return board(bench_of(request).kept.board(found))
    except StillRating:
        return None


def _today() -> date:
    return datetime.now().astimezone().date()
