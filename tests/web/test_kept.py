"""What the workbench keeps while it runs."""

import threading
import time
from pathlib import Path

import pytest

from eyebar.store.documents import list_document
from eyebar.web.kept import StillRating
from eyebar.web.serving import issue_all
from tests.web.benches import HANDLE, seated

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
        busy.set()
        end = time.monotonic() + PATIENCE_SECONDS
        while list_document(seat.bench.register)["bridges"][0]["rating"] is None:
            assert time.monotonic() < end
            time.sleep(0.05)
        assert "Close this bridge" in seat.get("/")
