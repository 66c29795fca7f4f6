"""Each page of the workbench on the 40-bar demo bridge, against rating that bridge.

A page is asked for once with nothing of its own made beforehand (but the rating of the bridge),
and then again; what is counted is the server's processor time. What takes long when it is first
asked for is made beside the pages, which say so.
"""

import time
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from benchmarks.bench_register import BRIDGES, place
from benchmarks.timing import least
from eyebar.demo import SHOWN
from eyebar.rating import rated_bridge
from eyebar.record.adding import Read, with_inspection
from eyebar.store.accounts import Accounts
from eyebar.store.asked import bridge_named, revision_of
from eyebar.store.issued import issue_document
from eyebar.store.opened import opened_register
from eyebar.terms import Role
from eyebar.web import urls
from eyebar.web.app import application
from eyebar.web.keepers import ByAccount
from eyebar.web.serving import Own, bench_on, own_keeper
from tests.web.benches import HERE, PORT, Seat, seated

__all__ = ["place"]
HANDLE = "07-19"
SHARE = 0.1
"""Of a rating: no page takes longer once what it shows was made."""
worked = partial(least, clock=time.process_time)
"""The least processor time of several runs [s]."""


def of(page: str = "", **asked: object) -> str:
    return urls.bridge(HANDLE, page, **asked)


@dataclass(slots=True, kw_only=True)
class Desk:
    """A seat at a bench whose bridge is rated, and how long a rating takes."""

    seat: Seat
    rating: float

    @property
    def text(self) -> str:
        return self.seat.client.get(of("revisions/1")).text

    def told(self, name: str, address: str) -> float:
        """Print what a page takes when first asked for and then; the latter as a share."""
        first = worked(lambda: self.seat.get(address), 1) / self.rating
        again = worked(lambda: self.seat.get(address), 7) / self.rating
        print(f"{name:<36}{first:>9.3f}{again:>9.3f}")
        return again


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Desk]:
    with seated(tmp_path_factory.mktemp("desk"), SHOWN) as seat:
        kept, text = seat.bench.kept, seat.client.get(of("revisions/1")).text
        one = kept.rating(text, "record").result().one
        rating = worked(lambda: rated_bridge(one.bridge, one.values, one.rated_vehicles), 3)
        print(f"\nrating of the bridge {rating:.2f} s; the pages in ratings, when first asked for"
              " and then:")
        yield Desk(seat=seat, rating=rating)


def pages(desk: Desk) -> dict[str, str]:
    bar, pin = "upstream/U2-L4", "upstream/L4/pin"
    vehicle = "large school bus full"
    readings = with_inspection(
        desk.text, date(2026, 10, 1), "crew",
        [Read(part=bar, what="thickness", value="1/2 in", place="mid")],
    )
    looked = desk.seat.post(of("look"), text=readings, onto="1").headers["location"]
    begun = desk.seat.post("/new", form="Pratt", panels="7 at 15 ft", depth="20 ft", name="Mill")
    return {
        "all bridges, one": "/",
        "a bridge": of(),
        "a bar": of(part=bar),
        "a chord": of(part="upstream/U3-U4"),
        "a pin": of(part=pin),
        "a floorbeam": of(part="floor/L5/floorbeam"),
        "a stringer": of(part="floor/panel 6/stringer 4"),
        "load": of("load"),
        "load, another vehicle": of("load", vehicle=vehicle, truss="downstream", way="down"),
        "load, a bar of it": of("load", bar="U2-L4"),
        "its force table": of("load.json"),
        "what holds it back": of("weakest"),
        "the board": of("cross"),
        "one crossing": of("cross", vehicle=vehicle),
        "a crossing of one's own axles": of("cross", axles="10 kip, 12 ft, 18 kip"),
        "measure": of("measure"),
        "what a change does": looked,
        "in the field": of("field"),
        "in the field, a bar": of("field", part=bar),
        "revisions": of("revisions"),
        "papers": of("papers"),
        "the public's pages": of("papers/public.pdf"),
        "stress sheet": of("papers/stress sheet.svg"),
        "a new bridge": "/new",
        "a new bridge, drawn": "/new?form=Pratt&panels=7+at+15+ft&depth=20+ft",
        "a new bridge, its record": begun.headers["location"],
        "style sheet": urls.static("workbench.css"),
        "all bridges, for programs": "/json/bridges",
        "the rating, for programs": f"/json/bridges/{HANDLE}/rate",
    }


def test_every_page_of_a_rated_bridge(desk: Desk) -> None:
    slow = {}
    for name, address in pages(desk).items():
        share = desk.told(name, address)
        if share > SHARE:
            slow[name] = share
    text = desk.text

    def faults() -> object:
        return desk.seat.post(of("faults"), text=text)

    print(f"{'faults while one types':<36}{'':>9}{worked(faults, 5) / desk.rating:>9.3f}")
    assert not slow


@pytest.fixture(scope="module")
def rated_place(desk: Desk, place: Path) -> Path:
    """The large register, a rating issued of every bridge."""
    document = desk.seat.bench.kept.rated(desk.text, "record").rate
    with opened_register(str(place)) as register:
        for number in range(BRIDGES):
            with register.reading() as connection:
                latest = revision_of(connection, bridge_named(connection, f"B-{number:03}"))
            issue_document(
                register, f"B-{number:03}", latest,
                ({**document, "parts": document["parts"][:20]}, "of the shipped values"),
                person="A", reason="b",
            )
    return place


def test_the_list_of_a_large_office(desk: Desk, rated_place: Path) -> None:
    with opened_register(str(rated_place)) as register:
        keeper = own_keeper(PORT, Own(person="A"))
        with bench_on(register, keeper, office=None) as bench:
            client = TestClient(application(bench, print), base_url=HERE)
            client.get(urls.enter(keeper.key))
            of_all = Desk(seat=Seat(bench=bench, client=client), rating=desk.rating)
            shares = [of_all.told(f"all bridges, {BRIDGES}{name}", address) for name, address in {
                "": "/", ", found": "/?find=B-250", ", ordered": "/?sort=due",
            }.items()]
    assert max(shares) < SHARE


def test_coming_in_where_it_is_shared(desk: Desk, tmp_path: Path) -> None:
    accounts = Accounts(tmp_path / "accounts.db")
    accounts.add("Reader", Role.READER, "reads a great deal")
    keeper = ByAccount(hosts=frozenset({"bench.example"}), accounts=accounts)
    with bench_on(desk.seat.bench.register, keeper, office=None) as bench:
        client = TestClient(application(bench, print), base_url="https://bench.example")
        page = worked(lambda: client.get(urls.LOGIN))
        come = worked(lambda: client.post(
            urls.LOGIN, data={"name": "Reader", "password": "reads a great deal"},
            headers={"origin": "https://bench.example"}, follow_redirects=False,
        ), 3)
        listed = worked(lambda: client.get(urls.BRIDGES))
    accounts.close()
    for name, taken in {"page": page, "with argon2": come, "the list then": listed}.items():
        print(f"{'log-in, ' + name:<36}{'':>9}{taken / desk.rating:>9.3f}")
