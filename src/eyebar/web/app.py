"""The workbench as an application: its addresses, its door, its files."""

from collections.abc import Callable
from importlib.resources import files as own_files

from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from eyebar.drawings.fonts import Face
from eyebar.errors import EyebarError, Unknown
from eyebar.web.answers import refused, waiting
from eyebar.web.bench import Bench
from eyebar.web.door import Door
from eyebar.web.forms import posted
from eyebar.web.kept import StillRating
from eyebar.web.pages import beginning, crossing, field, files, measure, papers, revisions
from eyebar.web.pages.bridge import bridge
from eyebar.web.pages.bridges import bridges
from eyebar.web.pages.load import load, table
from eyebar.web.pages.weakest import weakest

KINDS = {"css": "text/css", "js": "text/javascript", "ttf": "font/ttf",
         "svg": "image/svg+xml"}
AN_HOUR = "private, max-age=3600"

OF_BRIDGE = "/bridges/{handle}"

ROUTES = (
    Route("/", bridges),
    Route("/new", beginning.beginning),
    Route("/new", posted(beginning.begin), methods=["POST"]),
    Route("/new/take", posted(beginning.take), methods=["POST"]),
    Route("/new/{draft}", beginning.drafted),
    Route(OF_BRIDGE, bridge),
    Route(f"{OF_BRIDGE}/load", load),
    Route(f"{OF_BRIDGE}/load.json", table),
    Route(f"{OF_BRIDGE}/weakest", weakest),
    Route(f"{OF_BRIDGE}/cross", crossing.crossing),
    Route(f"{OF_BRIDGE}/slip", posted(crossing.slip), methods=["POST"]),
    Route(f"{OF_BRIDGE}/slips/{{number:int}}", crossing.shown_slip),
    Route(f"{OF_BRIDGE}/measure", measure.measure),
    Route(f"{OF_BRIDGE}/look", posted(measure.look), methods=["POST"]),
    Route(f"{OF_BRIDGE}/faults", posted(measure.faults), methods=["POST"]),
    Route(f"{OF_BRIDGE}/save", posted(measure.save), methods=["POST"]),
    Route(f"{OF_BRIDGE}/field", field.field),
    Route(f"{OF_BRIDGE}/field", posted(field.taken), methods=["POST"]),
    Route(f"{OF_BRIDGE}/revisions", revisions.revisions),
    Route(f"{OF_BRIDGE}/revisions/{{number:int}}", revisions.text),
    Route(f"{OF_BRIDGE}/papers", papers.papers),
    Route(f"{OF_BRIDGE}/papers/{{name}}", papers.paper),
    Route(f"{OF_BRIDGE}/issue", posted(papers.issue), methods=["POST"]),
    Route(f"{OF_BRIDGE}/sign", posted(papers.signed), methods=["POST"]),
    Route(f"{OF_BRIDGE}/files", posted(files.upload), methods=["POST"]),
    Route(f"{OF_BRIDGE}/files/{{number:int}}", files.fetch),
)


def application(bench: Bench, printing: Callable[[str], None]) -> Starlette:
    """The application on a bench; `printing` says a fresh address to whoever sits at it."""
    app = Starlette(
        routes=[*ROUTES, Route("/static/{name}", static)],
        exception_handlers={EyebarError: refused, StillRating: waiting},
    )
    app.state.bench = bench
    app.add_middleware(Door, keeper=bench.door, printing=printing)
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
