"""The interface for programs: the documents of a bridge as JSON, and a revision saved.

A session or a token lets one in; a token that only reads changes nothing.
"""

from typing import Any

from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from eyebar import __version__
from eyebar.documents.schemas import schema
from eyebar.errors import Unreadable
from eyebar.record import record_of
from eyebar.store.documents import bridge_document, done_document, list_document
from eyebar.store.saving import save_revision
from eyebar.terms import Direction
from eyebar.web.answers import bench_of, person_of
from eyebar.web.forms import Sent, whole_number
from eyebar.web.pages.looked_up import latest, rated

PREFIX = "/json"
ASKED = {
    "handle": ("path", "The bridge's handle.", "string"),
    "truss": ("query", "The truss.", "string"),
    "vehicle": ("query", "The vehicle.", "string"),
    "way": ("query", "Which way it travels: up or down.", "string"),
}


def bridges(request: Request) -> Response:
    """Every bridge of the register."""
    return JSONResponse(list_document(bench_of(request).register))


def bridge(request: Request) -> Response:
    """All that is kept of one bridge, the texts of its records apart."""
    return JSONResponse(bridge_document(bench_of(request).register, latest(request).key))


def record(request: Request) -> Response:
    """The text of the latest revision, its number and its hash."""
    of = latest(request).revision
    return JSONResponse({
        "revision": of.revision, "record_hash": of.record_hash, "text": of.text,
    })


def rate(request: Request) -> Response:
    """The rating of the latest revision."""
    found = rated(request, latest(request))
    return Response(found.once("json", lambda: JSONResponse(found.rate).body),
                    media_type="application/json")


def force_table(request: Request) -> Response:
    """All bar forces of a truss wherever a vehicle stands on it."""
    asked = request.query_params
    for name in ("truss", "vehicle"):
        if not asked.get(name):
            raise Unreadable("", f"names no {name}", f"add {name}=NAME to the address")
    way = asked.get("way") or Direction.UP.value
    if way not in set(Direction):
        raise Unreadable(way, "is no way of travel", "write up or down")
    found = rated(request, latest(request))
    return JSONResponse(bench_of(request).kept.table(
        found, asked["truss"], asked["vehicle"], Direction(way)
    ))


def save(request: Request, sent: Sent) -> Response:
    """Save a revision: fields text, onto (the revision it was made from) and why."""
    of, bench = latest(request), bench_of(request)
    onto = whole_number(sent.text("onto"), "a revision")
    if not sent.text("why"):
        raise Unreadable("", "gives no reason", "say why in the field why")
    saved = save_revision(
        bench.register, of.key, record_of(sent.whole("text"), file="text"), onto=onto,
        person=person_of(request), reason=sent.text("why"),
    )
    return JSONResponse(done_document(
        bench.register, f"Revision {saved.revision} of {saved.bridge} is saved.",
        handle=saved.bridge, number=saved.revision, chain=saved.chain,
    ), status_code=201)


def described(request: Request) -> Response:
    """The interface, as OpenAPI has it."""
    del request
    return JSONResponse(openapi())


def openapi() -> dict[str, Any]:
    """The description of the interface."""
    paths: dict[str, Any] = {}
    for path, (said, kind, names) in ANSWERS.items():
        paths[PREFIX + path] = {"get": {
            "summary": said, "parameters": [_parameter(name) for name in names],
            "responses": {
                "200": _json("The answer.", kind), "202": {"description": "It is being made."},
                **_refusals(),
            },
        }}
    paths[f"{PREFIX}/bridges/{{handle}}/revisions"] = {"post": {
        "summary": "Save a revision.", "parameters": [_parameter("handle")],
        "requestBody": {"required": True, "content": {
            "application/x-www-form-urlencoded": {"schema": {
                "type": "object", "required": ["text", "onto", "why"], "properties": {
                    "text": {"type": "string"}, "onto": {"type": "integer", "minimum": 1},
                    "why": {"type": "string", "minLength": 1},
                },
            }},
        }},
        "responses": {"201": _json("Saved.", "register-done"), **_refusals()},
    }}
    return {
        "openapi": "3.1.0",
        "info": {"title": "eyebar, the workbench's interface", "version": __version__},
        "paths": paths, "security": [{"token": []}],
        "components": {"securitySchemes": {"token": {"type": "http", "scheme": "bearer"}}},
    }


ANSWERS: dict[str, tuple[str, str, tuple[str, ...]]] = {
    "/bridges": ("Every bridge.", "register-list", ()),
    "/bridges/{handle}": ("All that is kept of a bridge.", "register-bridge", ("handle",)),
    "/bridges/{handle}/record": ("The text of its latest revision.", "", ("handle",)),
    "/bridges/{handle}/rate": ("Its rating.", "rate", ("handle",)),
    "/bridges/{handle}/force-table": (
        "All bar forces wherever a vehicle stands.", "force-table",
        ("handle", "truss", "vehicle", "way"),
    ),
}
"""Path -> what it is, the document that answers (empty: none of ours), what it asks."""


def _parameter(name: str) -> dict[str, Any]:
    place, said, kind = ASKED[name]
    return {"name": name, "in": place, "description": said, "schema": {"type": kind},
            "required": place == "path" or name != "way"}


def _json(said: str, kind: str) -> dict[str, Any]:
    of = {key: value for key, value in schema(kind).items() if key != "$schema"} if kind else {
        "type": "object"
    }
    return {"description": said, "content": {"application/json": {"schema": _inline(of)}}}


def _inline(of: dict[str, Any]) -> dict[str, Any]:
    """A schema without references into itself, which stand elsewhere here."""
    found = of.get("$defs", {})

    def resolved(one: Any) -> Any:
        if isinstance(one, dict):
            if "$ref" in one:
                return resolved(found[one["$ref"].rsplit("/", 1)[1]])
            return {key: resolved(value) for key, value in one.items() if key != "$defs"}
        return [resolved(inner) for inner in one] if isinstance(one, list) else one

    whole: dict[str, Any] = resolved(of)
    return whole


def _refusals() -> dict[str, Any]:
    refused = _json("Refused.", "error")
    return dict.fromkeys(("400", "403", "404", "409", "413", "422"), refused) | {
        "401": {"description": "Who are you?"}, "429": {"description": "Too often."},
        "421": {"description": "Another host."}, "405": {"description": "Not so."},
    }
