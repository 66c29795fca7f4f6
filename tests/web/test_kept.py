"""What the workbench keeps while it runs."""

import threading
import time
from pathlib import Path

import pytest

from eyebar.documents.cross import cross_document
from eyebar.errors import OutOfRange
from eyebar.store.documents import list_document
from eyebar.web.kept import GONE_SECONDS, Kept, StillRating
from eyebar.web.serving import issue_all
from tests.documents import demos
from tests.web.benches import HANDLE, Seat, seated

PATIENCE_SECONDS = 60.0


def test_a_page_that_waits_and_the_demo_that_issues_do_not_wait_for_each_other(
    tmp_path: Path,
) -> None:
    with seated(tmp_path, "wrenmallow") as seat:
        kept, busy = seat.bench.kept, threading.Event()
        kept.jobs.clear()
        kept.worker.submit(busy.wait)
        text = seat.client.get(f"/bridges/{HANDLE}/revisions/1").text
        with pytest.raises(StillRating):
            kept.rated(text, "record")
        issue_all(seat.bench)
        waits = seat.client.get("/")
        assert "The demo bridges are being rated" in waits.text
        assert waits.headers["Refresh"].startswith("2;")
        busy.set()
        end = time.monotonic() + PATIENCE_SECONDS
        while list_document(seat.bench.register)["bridges"][0]["rating"] is None:
            assert time.monotonic() < end
            time.sleep(0.05)
        assert "Close this bridge" in seat.get("/")
        assert "being rated" not in seat.get("/")


def test_what_failed_says_so_once_and_is_tried_again() -> None:
    kept, tries = Kept(office=None), iter([OutOfRange("office", "not there", "there"), "made"])

    def make() -> str:
        found = next(tries)
        if isinstance(found, Exception):
            raise found
        return found

    with pytest.raises(OutOfRange):
        kept.made("paper", "text", make)
    assert [kept.made("paper", "text", make) for _ in range(2)] == ["made", "made"]
    kept.close()


def test_what_is_rated_once_crosses_as_the_command_says(seat: Seat) -> None:
    text = seat.client.get(f"/bridges/{HANDLE}/revisions/1").text
    found = seat.bench.kept.rating(text, "record").result()
    for _ in range(600):
        try:
            answer = seat.bench.kept.crossing(found, "grain cart")
        except StillRating:
            continue
        break
    assert answer == cross_document(demos.record("wrenmallow"), ["grain cart"])


def test_a_page_says_what_it_waits_for(own_seat: Seat) -> None:
    own_seat.get(f"/bridges/{HANDLE}")
    busy = threading.Event()
    own_seat.bench.kept.worker.submit(busy.wait)
    waits = own_seat.client.get(f"/bridges/{HANDLE}/load?vehicle=grain cart")
    assert (waits.status_code, "Refresh" in waits.headers) == (200, True)
    assert "The vehicle is being led across" in waits.text
    assert own_seat.client.get(f"/bridges/{HANDLE}/load.json?vehicle=grain cart").status_code == 202
    busy.set()
    assert 'id="standing"' in own_seat.get(f"/bridges/{HANDLE}/load?vehicle=grain cart")


def test_what_nobody_waits_for_any_longer_is_not_made() -> None:
    kept, busy = Kept(office=None), threading.Event()
    kept.worker.submit(busy.wait)
    made: list[str] = []
    for name in ("older", "latest"):
        with pytest.raises(StillRating):
            kept.made(name, "text", lambda name=name: made.append(name))
        kept.asked[name, "text"] -= GONE_SECONDS + 1.0
    with pytest.raises(StillRating):
        kept.made("latest", "text", lambda: made.append("again"))
    busy.set()
    kept.made("last", "text", lambda: made.append("last"))
    assert made == ["latest", "last"]
    kept.close()
