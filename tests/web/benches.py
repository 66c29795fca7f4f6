"""A workbench on a register of its own, and a client that was let in."""

import json
import re
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from starlette.testclient import TestClient

from eyebar.record import read_record
from eyebar.store.opened import opened_register
from eyebar.store.saving import add_bridge
from eyebar.web import urls
from eyebar.web.app import application
from eyebar.web.bench import Bench
from eyebar.web.serving import Own, bench_on, own_keeper
from tests.documents import demos

PORT = 8123
HERE = f"http://127.0.0.1:{PORT}"
ORIGIN = {"origin": HERE}
HANDLE = "31-08"
"""The smallest of the demo bridges, which is rated quickest."""


RATED: dict = {}
"""What a bench has rated, for the next: a rating depends on the record alone."""


@dataclass(slots=True, kw_only=True)
class Seat:
    """The bench, a client that sits at it, and what was printed."""

    bench: Bench
    client: TestClient
    printed: list[str] = field(default_factory=list)

    def get(self, address: str) -> str:
        """The text of a page, once what it needs was made."""
        for _ in range(400):
            answer = self.client.get(address)
            if "Refresh" not in answer.headers and answer.status_code != 202:
                assert answer.status_code == 200, answer.text[:600]
                return str(answer.text)
            time.sleep(0.05)
        raise AssertionError(f"{address} never came")

    def table(self, address: str) -> dict:
        """A force table, once what it needs was made."""
        return json.loads(self.get(address))

    def post(self, address: str, **fields: str):
        """The answer to a form, not followed."""
        return self.client.post(address, data=fields, headers=ORIGIN, follow_redirects=False)


@contextmanager
def seated(folder: Path, *names: str) -> Iterator[Seat]:
    """A bench on a new register with some demo bridges, and a client that was let in."""
    with opened_register(str(folder / "register.db"), begin=True) as register:
        for name in names:
            add_bridge(register, read_record(demos.record(name)), person="test", reason="test")
        keeper = own_keeper(PORT, Own(person="A. Measurer"))
        with bench_on(register, keeper, office=None) as bench:
            bench.kept.jobs.update(RATED)
            printed: list[str] = []
            client = TestClient(
                application(bench, printed.append), base_url=HERE, raise_server_exceptions=True
            )
            assert client.get(urls.enter(keeper.key)).status_code == 200
            yield Seat(bench=bench, client=client, printed=printed)
            RATED.update({
                key: job for key, job in bench.kept.jobs.items()
                if key[0] == "rate" and job.done() and job.exception() is None
            })


def links(page: str) -> set[str]:
    """The addresses that a page leads to, without the places within them."""
    found = re.findall(r'(?:href|src|action)="([^"#]*)', page)
    return {one.replace("&amp;", "&") for one in found if one}
