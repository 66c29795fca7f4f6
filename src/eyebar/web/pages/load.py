"""Where the load stands: a vehicle on a truss, place by place."""

from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from eyebar.drawings.standing import standing_drawing
from eyebar.errors import NotMeasured, OutOfRange, Unreadable
from eyebar.terms import Direction, VehicleClass
from eyebar.views.force_line import force_line
from eyebar.views.governing_places import GoverningPlace, governing_places
from eyebar.views.standing import standing
from eyebar.web import urls
from eyebar.web.answers import bench_of, page
from eyebar.web.kept import Rated
from eyebar.web.making import Document
from eyebar.web.pages.looked_up import heading, latest, rated


def load(request: Request) -> Response:
    """The truss with the vehicle at a place; links lead from place to place."""
    of, asked = latest(request), request.query_params
    found = rated(request, of)
    table = _table(found, request)
    truss, vehicle, way = table["truss"], table["vehicle"]["name"], table["direction"]
    bar = asked.get("bar", "") if asked.get("bar") in table["bars"] else ""
    view = standing(table, _place(table, asked.get("at", "")), bar)
    rate = bench_of(request).kept.rate(found, found.one.vehicles[vehicle])
    places = governing_places(table, rate, bar)

    def to(one: GoverningPlace) -> str:
        return urls.load(of.key, one.truss, vehicle, one.way, at=one.front_ft, bar=bar)

    assert found.forces is not None
    drawing = standing_drawing(
        table, next(one for one in found.forces["trusses"] if one["truss"] == truss), view,
        lambda name: urls.load(of.key, truss, vehicle, way, at=view.front_ft, bar=name),
        places=places, to=to,
    )
    return page(
        "load.html", view, heading=heading(of, found), drawing=drawing, table=table, bar=bar,
        places=places, to=to,
        vehicles=_vehicles(found), trusses=[one["truss"] for one in found.forces["trusses"]],
        line=force_line(table, bar, view.front_ft, places) if bar else None,
    )


def table(request: Request) -> Response:
    """The force table that the page's script moves along."""
    return JSONResponse(_table(rated(request, latest(request)), request))


def _table(found: Rated, request: Request) -> Document:
    asked = request.query_params
    if found.forces is None:
        raise NotMeasured("the forces", found.answer.no_forces)
    truss = asked.get("truss") or found.forces["trusses"][0]["truss"]
    by = found.rate["posting"]["governed_by"]
    vehicle = asked.get("vehicle") or (by["vehicle"] if by else _vehicles(found)[0])
    try:
        way = Direction(asked.get("way") or "up")
    except ValueError:
        raise Unreadable(asked["way"], "is no way of travel", "write up or down") from None
    return bench_of(request).kept.table(found, truss, vehicle, way)


def _place(table: Document, asked: str) -> float:
    """The place asked for, else where the vehicle stands whole and nearest to the middle."""
    if table["no_equilibrium"]:
        raise OutOfRange("force table", table["no_equilibrium"]["reason"], "of a truss that stands")
    if asked:
        try:
            return float(asked)
        except ValueError:
            raise Unreadable(asked, "is no place of the front axle", "write feet: 41.5") from None
    fronts = [row["front_axle_ft"] for row in table["rows"]]
    return float(min(fronts, key=lambda one: abs(one - (fronts[0] + fronts[-1]) / 2.0)))


def _vehicles(found: Rated) -> list[str]:
    """Vehicles with axles that the road is wide enough for, everyday ones first."""
    width = found.one.bridge.road.clear_width_ft
    fitting = [
        one for one in found.one.vehicles.values() if one.axles_kip and one.width_ft <= width
    ]
    fitting.sort(key=lambda one: one.vehicle_class is not VehicleClass.EVERYDAY)
    return [one.name for one in fitting]
