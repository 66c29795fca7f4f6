"""Who is let in, from where, with how much."""

import asyncio
import base64
import hashlib
import re
from collections.abc import Iterable
from itertools import chain, repeat

import pytest
from starlette.testclient import TestClient

from eyebar.store.documents import bridge_document
from eyebar.web import urls
from eyebar.web.app import ROUTES, application
from eyebar.web.door import LARGEST_BODY
from tests.web.benches import HANDLE, HERE, ORIGIN, Seat, links

ADDRESSES = ["/", "/new", "/bridges/31-08", "/bridges/31-08/load.json", "/static/workbench.css",
             "/nothing", "/enter/", "/enter/wrong"]


def stranger(seat: Seat) -> TestClient:
    return TestClient(application(seat.bench, seat.printed.append), base_url=HERE)


@pytest.mark.parametrize("address", ADDRESSES)
def test_without_the_key_every_address_is_refused(seat: Seat, address: str) -> None:
    answer = stranger(seat).get(address, follow_redirects=False)
    assert answer.status_code in (401, 403)
    assert "Wrenmallow" not in answer.text


@pytest.mark.parametrize("route", [one for one in ROUTES if "POST" in (one.methods or ())],
                         ids=lambda one: one.path)
def test_no_form_is_taken_without_the_key(seat: Seat, route) -> None:
    path = re.sub(r"\{[^}]*\}", "1", route.path)
    assert stranger(seat).post(path, headers=ORIGIN).status_code == 401


def test_the_key_works_once_and_a_fresh_one_is_printed(own_seat: Seat) -> None:
    key = own_seat.bench.keeper.key
    first, second = stranger(own_seat), stranger(own_seat)
    assert first.get(urls.enter(key)).status_code == 200
    assert second.get(urls.enter(key)).status_code == 403
    assert own_seat.printed[-1] == urls.enter(own_seat.bench.keeper.key)
    assert second.get(own_seat.printed[-1]).status_code == 200


@pytest.mark.parametrize("host", ["evil.example", "127.0.0.1", "127.0.0.1:1", "", "localhost"])
def test_another_host_is_refused_key_or_not(seat: Seat, host: str) -> None:
    assert seat.client.get("/", headers={"host": host}).status_code == 421


@pytest.mark.parametrize("headers", [
    {}, {"origin": "http://evil.example"}, {"origin": "null"}, {"sec-fetch-site": "cross-site"},
    {"origin": HERE + ".evil.example"}, {"origin": "http://127.0.0.1:1"},
])
def test_a_form_from_elsewhere_is_refused(seat: Seat, headers: dict[str, str]) -> None:
    before = len(seat.get(f"/bridges/{HANDLE}/revisions"))
    answer = seat.client.post(f"/bridges/{HANDLE}/issue", data={"why": "x"}, headers=headers)
    assert answer.status_code == 403
    assert len(seat.get(f"/bridges/{HANDLE}/revisions")) == before


def test_every_answer_forbids_what_is_not_ours(seat: Seat) -> None:
    for address in ("/", f"/bridges/{HANDLE}", "/nothing", "/static/load.js"):
        headers = seat.client.get(address).headers
        policy = headers["content-security-policy"]
        assert "default-src 'none'" in policy
        assert "unsafe" not in policy
        assert headers["x-content-type-options"] == "nosniff"
        assert headers["referrer-policy"] == "same-origin"


def test_pages_hold_no_script_or_style_within_and_lead_nowhere_outside(seat: Seat) -> None:
    for page in ("", "load", "weakest", "measure", "revisions", "papers", "field"):
        text = seat.get(f"/bridges/{HANDLE}/{page}".rstrip("/"))
        assert not re.search(r"<script(?![^>]*\bsrc=)|<style|\sstyle=|\son\w+=", text), page
        assert all(one.startswith(("/", "?")) for one in links(text)), page


def test_who_leaves_is_out(own_seat: Seat) -> None:
    assert own_seat.client.post("/leave", headers=ORIGIN).status_code == 401
    assert own_seat.client.get("/").status_code == 401


BOUNDARY = "--apart"
FORM_BEGINS = (
    f'--{BOUNDARY}\r\ncontent-disposition: form-data; name="file"; filename="a.txt"\r\n\r\n'
).encode()
MEGABYTE = b"x" * 1_000_000


def uploaded(seat: Seat, headers: dict[str, str], pieces: Iterable[bytes]) -> tuple[int, int]:
    """The status that answers a file sent in pieces, and how many of them were read: asked of the
    application itself, so that nothing goes over a wire and no server measures it before."""
    read, answers, left = 0, [], iter(pieces)
    cookie = "; ".join(f"{name}={value}" for name, value in seat.client.cookies.items())
    sent = {"host": HERE.removeprefix("http://"), "cookie": cookie, **ORIGIN,
            "content-type": f"multipart/form-data; boundary={BOUNDARY}", **headers}

    async def receive() -> dict:
        nonlocal read
        read += 1
        piece = next(left, None)
        return {"type": "http.request", "body": piece or b"", "more_body": piece is not None}

    async def send(message: dict) -> None:
        answers.append(message)

    path = f"/bridges/{HANDLE}/files"
    asyncio.run(application(seat.bench, seat.printed.append)({
        "type": "http", "method": "POST", "scheme": "http", "path": path,
        "raw_path": path.encode(), "query_string": b"", "root_path": "", "http_version": "1.1",
        "headers": [(name.encode(), value.encode()) for name, value in sent.items()],
        "client": ("127.0.0.1", 1), "server": ("127.0.0.1", 8123), "asgi": {"version": "3.0"},
    }, receive, send))
    return answers[0]["status"], read


@pytest.mark.parametrize("headers", [
    {"content-length": str(LARGEST_BODY + 1)}, {"content-length": "-1"},
    {"content-length": "a lot"}, {"transfer-encoding": "chunked"},
    {"transfer-encoding": "chunked", "content-length": "7"},
])
def test_what_is_too_large_or_of_no_size_is_refused_unread(
    own_seat: Seat, headers: dict[str, str]
) -> None:
    assert uploaded(own_seat, headers, repeat(MEGABYTE)) == (413, 0)
    assert bridge_document(own_seat.bench.register, HANDLE)["files"] == []


@pytest.mark.parametrize("headers", [{"content-length": "1000"}, {}])
def test_what_goes_on_beyond_the_limit_is_cut_off_and_not_kept(
    own_seat: Seat, headers: dict[str, str]
) -> None:
    status, read = uploaded(own_seat, headers, chain([FORM_BEGINS], repeat(MEGABYTE)))
    assert status == 413
    assert read == 1 + LARGEST_BODY // len(MEGABYTE)
    assert bridge_document(own_seat.bench.register, HANDLE)["files"] == []


def test_what_keeps_within_the_limit_is_kept(own_seat: Seat) -> None:
    pieces = [FORM_BEGINS, b"measured by hand", f"\r\n--{BOUNDARY}--\r\n".encode()]
    status, _ = uploaded(own_seat, {"content-length": str(sum(map(len, pieces)))}, pieces)
    assert status == 303
    (kept,) = bridge_document(own_seat.bench.register, HANDLE)["files"]
    assert kept["name"] == "a.txt"


@pytest.mark.parametrize("name", [
    "../app.py", "..%2Fapp.py", "%2e%2e/app.py", "workbench.css%00", "/etc/passwd",
    "..\\app.py", "SourceSerifPro-Regular.ttf/..", ".ttf",
])
def test_no_path_reaches_the_file_system(seat: Seat, name: str) -> None:
    answer = seat.client.get(f"/static/{name}", follow_redirects=False)
    assert answer.status_code == 404


def test_the_style_sheet_scripts_and_letters_are_there(seat: Seat) -> None:
    for name in ("workbench.css", "load.js", "zoom.js", "SourceSerifPro-It.ttf", "icon.svg"):
        answer = seat.client.get(urls.static(name))
        assert answer.status_code == 200
        assert len(answer.content) > 100


def test_a_refusal_at_the_door_allows_its_own_style_alone(seat: Seat) -> None:
    answer = stranger(seat).get("/")
    policy = answer.headers.get_list("content-security-policy")
    style = re.search(r"<style>(.*?)</style>", answer.text, re.DOTALL)
    assert style is not None
    hashed = base64.b64encode(hashlib.sha256(style[1].encode()).digest()).decode()
    assert len(policy) == 1
    assert f"style-src 'sha256-{hashed}'" in policy[0]
    assert "default-src 'none'" in policy[0]
    assert "'self'" not in policy[0]
    assert links(answer.text) == set()


def test_a_fault_of_the_workbench_is_told_without_what_is_inside(
    seat: Seat, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_: object) -> None:
        raise RuntimeError("the secret inside")

    monkeypatch.setattr("eyebar.web.pages.weakest.weak_list", broken)
    asking = TestClient(
        application(seat.bench, print), base_url=HERE, raise_server_exceptions=False,
        cookies=seat.client.cookies,
    )
    answer = asking.get(f"/bridges/{HANDLE}/weakest")
    assert answer.status_code == 500
    assert "A fault of the workbench" in answer.text
    assert "secret" not in answer.text
    assert "default-src 'none'" in answer.headers["content-security-policy"]


def test_a_refusal_leads_back_to_the_page_it_came_from_and_never_outside(seat: Seat) -> None:
    for came, back in ((f"{HERE}/bridges/{HANDLE}/load?way=up", f"/bridges/{HANDLE}/load?way=up"),
                       ("http://evil.example/x", "/"), (f"{HERE}//evil.example/x", "/"), ("", "/")):
        answer = seat.client.get("/nothing", headers={"referer": came})
        assert answer.status_code == 404
        assert f'<a href="{back}">Back</a>' in answer.text
