"""The interface for programs: its description, its answers, and a run of whatever fits or does not.
"""

import jsonschema
import pytest
from hypothesis import HealthCheck, given, settings

from eyebar.documents.schemas import schema
from tests.documents import demos
from tests.web.benches import HANDLE, HERE, Seat


def test_every_answer_is_the_document_that_the_description_says(seat: Seat) -> None:
    described = seat.client.get("/json/openapi.json").json()
    assert described["openapi"].startswith("3.1")
    for path, name in (
        ("/json/bridges", "register-list"), (f"/json/bridges/{HANDLE}", "register-bridge"),
    ):
        jsonschema.validate(seat.client.get(path).json(), schema(name))
    seat.get(f"/bridges/{HANDLE}")
    rate = seat.client.get(f"/json/bridges/{HANDLE}/rate").json()
    assert rate["posting"] == demos.rate("wrenmallow")["posting"]


def test_refusals_are_documents_too(seat: Seat) -> None:
    answer = seat.client.get("/json/bridges/none")
    assert answer.status_code == 404
    jsonschema.validate(answer.json(), schema("error"))
    answer = seat.client.get(f"/json/bridges/{HANDLE}/force-table?truss=north&vehicle=sledge")
    assert (answer.status_code, answer.json()["code"]) == (404, "unknown")


def let_in(seat: Seat):
    """The application as whoever was let in reaches it."""
    cookie = "; ".join(f"{name}={value}" for name, value in seat.client.cookies.items())
    ours = {b"host": HERE.partition("//")[2].encode(), b"cookie": cookie.encode(),
            b"origin": HERE.encode()}

    async def app(scope, receive, send) -> None:
        if scope["type"] == "http":
            kept = [one for one in scope["headers"] if one[0].lower() not in ours]
            scope = {**scope, "headers": [*kept, *ours.items()]}
        await seat.client.app(scope, receive, send)
    return app


def test_whatever_is_asked_the_answer_is_one_that_is_described(seat: Seat) -> None:
    """A bounded fuzz run over every address of the interface."""
    schemathesis = pytest.importorskip("schemathesis")
    seat.get(f"/bridges/{HANDLE}")
    interface = schemathesis.openapi.from_asgi("/json/openapi.json", let_in(seat))
    count = 0
    for found in interface.get_all_operations():
        count += 1
        _fuzzed(found.ok(), schemathesis.checks)
    assert count == 6


def _fuzzed(operation, checks) -> None:
    @settings(max_examples=15, deadline=None, derandomize=True, database=None,
              suppress_health_check=list(HealthCheck))
    @given(case=operation.as_strategy())
    def asked(case) -> None:
        case.validate_response(case.call(), checks=[
            checks.not_a_server_error, checks.status_code_conformance,
            checks.content_type_conformance, checks.response_schema_conformance,
        ])

    asked()
