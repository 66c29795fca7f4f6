"""The workbench as an application: its addresses, its door, its files."""

from collections.abc import Callable
from importlib.resources import files as own_files
from inspect import iscoroutinefunction
from typing import Any

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from eyebar.drawings.fonts import Face
from eyebar.errors import EyebarError, NotAllowed, Unknown
from eyebar.terms import Role
from eyebar.web.answers import broken, caller_of, not_taken, refused, waiting
from eyebar.web.bench import Bench
from eyebar.web.door import Door
from eyebar.web.forms import Page, posted
from eyebar.web.kept import StillRating
from eyebar.web.pages import (
    beginning,
    coming,
    crossing,
    field,
    files,
    machines,
    measure,
    papers,
    revisions,
    slips,
)
from eyebar.web.pages.bridge import bridge
from eyebar.web.pages.bridges import bridges
from eyebar.web.pages.load import load, table
from eyebar.web.pages.weakest import weakest

KINDS = {"css": "text/css", "js": "text/javascript", "ttf": "font/ttf",
         "svg": "image/svg+xml"}
AN_HOUR = "private, max-age=3600"

OF_BRIDGE = "/bridges/{handle}"


def _may(least: Role, endpoint: Callable[[Request], Any]) -> Callable[[Request], Any]:
    """The endpoint for whoever may do that; all others are refused."""
    def refuse(request: Request) -> None:
        if not caller_of(request).may(least):
            raise NotAllowed(caller_of(request).name, str(least))

    if iscoroutinefunction(endpoint):
        async def awaited(request: Request) -> Response:
            refuse(request)
            answer: Response = await endpoint(request)
            return answer
        return awaited

    def called(request: Request) -> Response:
        refuse(request)
        answer: Response = endpoint(request)
        return answer
    return called


def _page(
    path: str, endpoint: Callable[[Request], Response], least: Role = Role.READER
) -> Route:
    return Route(path, _may(least, endpoint))


def _form(path: str, taken: Page, least: Role) -> Route:
    return Route(path, _may(least, posted(taken)), methods=["POST"])


ROUTES = (
    _page("/", bridges),
    _page("/new", beginning.beginning, Role.MEASURER),
    _form("/new", beginning.begin, Role.MEASURER),
    _form("/new/faults", beginning.faults, Role.MEASURER),
    _form("/new/take", beginning.take, Role.MEASURER),
    _page("/new/{draft}", beginning.drafted, Role.MEASURER),
    _page(OF_BRIDGE, bridge),
    _page(f"{OF_BRIDGE}/load", load),
    _page(f"{OF_BRIDGE}/load.json", table),
    _page(f"{OF_BRIDGE}/weakest", weakest),
    _page(f"{OF_BRIDGE}/cross", crossing.crossing),
    _form(f"{OF_BRIDGE}/slip", slips.slip, Role.ENGINEER),
    _page(f"{OF_BRIDGE}/slips/{{number:int}}", slips.shown_slip),
    _page(f"{OF_BRIDGE}/measure", measure.measure),
    _form(f"{OF_BRIDGE}/look", measure.look, Role.MEASURER),
    _form(f"{OF_BRIDGE}/faults", measure.faults, Role.MEASURER),
    _form(f"{OF_BRIDGE}/save", measure.save, Role.MEASURER),
    _page(f"{OF_BRIDGE}/field", field.field),
    _form(f"{OF_BRIDGE}/field", field.taken, Role.MEASURER),
    _page(f"{OF_BRIDGE}/revisions", revisions.revisions),
    _page(f"{OF_BRIDGE}/revisions/{{number:int}}", revisions.text),
    _page(f"{OF_BRIDGE}/papers", papers.papers),
    _page(f"{OF_BRIDGE}/papers/{{name}}", papers.paper),
    _form(f"{OF_BRIDGE}/issue", papers.issue, Role.ENGINEER),
    _form(f"{OF_BRIDGE}/sign", papers.signed, Role.ENGINEER),
    _form(f"{OF_BRIDGE}/files", papers.upload, Role.MEASURER),
    _page(f"{OF_BRIDGE}/files/{{number:int}}", files.fetch),
    _page("/json/openapi.json", machines.described),
    _page("/json/bridges", machines.bridges),
    _page("/json/bridges/{handle}", machines.bridge),
    _page("/json/bridges/{handle}/record", machines.record),
    _page("/json/bridges/{handle}/rate", machines.rate),
    _page("/json/bridges/{handle}/force-table", machines.force_table),
    _form("/json/bridges/{handle}/revisions", machines.save, Role.MEASURER),
)
COMING = (
    Route("/login", coming.login),
    Route("/login", posted(coming.logged_in), methods=["POST"]),
)


def application(bench: Bench, printing: Callable[[str], None]) -> Starlette:
    """The application on a bench; `printing` says a fresh address to whoever sits at it."""
    app = Starlette(
        routes=[*ROUTES, *COMING, Route("/static/{name}", static)],
        exception_handlers={
            EyebarError: refused, StillRating: waiting, HTTPException: not_taken,
            Exception: broken,
        },
    )
    app.state.bench = bench
    app.add_middleware(Door, keeper=bench.keeper, printing=printing)
    return app


def static(request: Request) -> Response:
    """A file of the workbench's own: style sheet, script, or a face of letters."""
    name = request.path_params["name"]
    stem, _, kind = name.rpartition(".")
    if name in _own():
        content = own_files("eyebar.web").joinpath("static", name).read_bytes()
    elif kind == "ttf" and stem in set(Face):
        content = own_files("font_source_serif_pro").joinpath("files", name).read_bytes()
    else:
        raise Unknown("file", name)
    return Response(content, media_type=KINDS[kind], headers={"cache-control": AN_HOUR})


def _own() -> set[str]:
    return {one.name for one in own_files("eyebar.web").joinpath("static").iterdir()}
