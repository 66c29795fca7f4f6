"""Opening the workbench: on this machine alone, or shared behind TLS."""

import getpass
import ipaddress
import signal
import socket
import sys
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Future
from contextlib import contextmanager
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from threading import current_thread, main_thread
from typing import Any

import uvicorn

from eyebar.errors import OutOfRange, Unknown, nearest
from eyebar.record import record_of
from eyebar.store.accounts import Accounts
from eyebar.store.asked import Revision, bridge_named, latest_of_all, revision_of
from eyebar.store.issued import issue_document
from eyebar.store.opened import Register, opened_register
from eyebar.store.saving import add_bridge
from eyebar.terms import Role
from eyebar.web import urls
from eyebar.web.app import application
from eyebar.web.bench import Bench
from eyebar.web.beside import Beside
from eyebar.web.keepers import ByAccount, ByKey, Keeper
from eyebar.web.kept import Kept, Rated
from eyebar.web.people import Person

LOOPBACK = "127.0.0.1"
HTTPS = 443


@dataclass(frozen=True, slots=True, kw_only=True)
class Own:
    """A workbench on this machine alone: who sits at it, and the people of a file."""

    port: int = 0
    person: str = ""
    people: tuple[Person, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Shared:
    """A shared workbench: the address it listens on, the name it is asked for by, and its TLS.

    `certificate` and `key` are files; without them `proxy` is the address of the one machine that
    ends TLS before it and is trusted to say so.
    """

    listen: str
    name: str
    port: int
    accounts: Path | None
    certificate: Path | None = None
    key: Path | None = None
    proxy: str = ""

    def refuse_open(self) -> None:
        """Refuse to be shared without TLS. Raises OutOfRange."""
        files = self.certificate is not None and self.key is not None
        if not files and not self.proxy:
            raise OutOfRange(
                "shared workbench", "without TLS", "behind it: give --certificate and --key, or the"
                " address of a trusted --proxy that ends TLS before it",
            )
        if files and self.proxy:
            raise OutOfRange("TLS", "given twice", "either by files or by a proxy")
        if self.proxy:
            try:
                ipaddress.ip_address(self.proxy)
            except ValueError:
                raise OutOfRange("proxy", repr(self.proxy), "one address, like 10.0.0.5") from None
        for file in (self.certificate, self.key):
            if file is not None and not file.is_file():
                raise OutOfRange("file of TLS", str(file), "a file that is there")
        if not self.name:
            raise OutOfRange("name", "not given", "that by which browsers ask for it: --name HOST")

    @property
    def hosts(self) -> frozenset[str]:
        """What browsers call it."""
        return frozenset({self.name, f"{self.name}:{self.port}", f"{self.name}:{HTTPS}"})

    def settings(self) -> dict[str, Any]:
        """What the server is set to."""
        if self.proxy:
            return {"proxy_headers": True, "forwarded_allow_ips": self.proxy}
        return {
            "proxy_headers": False, "ssl_certfile": str(self.certificate),
            "ssl_keyfile": str(self.key),
        }


def with_bridges(register: Register, texts: Sequence[str]) -> None:
    """Put the demo bridges into a register that is empty."""
    for text in texts:
        add_bridge(register, record_of(text), person="eyebar", reason="demo bridge, invented")


def issue_all(bench: Bench) -> None:
    """Rate every bridge beside the pages, and keep the ratings as drafts: the list then has them.
    """
    with bench.register.reading() as connection:
        handles = [one["handle"] for one in latest_of_all(connection)]
    for handle in handles:
        with bench.register.reading() as connection:
            revision = revision_of(connection, bridge_named(connection, handle))
        job = bench.kept.rating(revision.text, f"{handle}, revision {revision.revision}")
        job.add_done_callback(partial(_issued, bench, handle, revision))


def _issued(bench: Bench, handle: str, revision: Revision, job: "Future[Rated]") -> None:
    """Keep a rating that was made; one that could not be made leaves the list as it was."""
    if job.cancelled() or job.exception() is not None:
        return
    found = job.result()
    issue_document(
        bench.register, handle, revision, (found.rate, found.one.values.digest()),
        person="eyebar", reason="demo bridge, rated when the workbench was opened",
    )


def free_socket(port: int, address: str = LOOPBACK) -> socket.socket:
    """A socket that listens on a port, of this machine alone by default; 0 takes a free one.

    Raises OutOfRange where the port is taken.
    """
    family = socket.AF_INET6 if ":" in address else socket.AF_INET
    found = socket.socket(family, socket.SOCK_STREAM)
    found.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        found.bind((address, port))
        found.listen()
    except OSError as error:
        found.close()
        raise OutOfRange(
            "port", f"{port} ({error.strerror})", "free: leave it out, and a free one is taken"
        ) from None
    return found


@contextmanager
def bench_on(
    register: Register, keeper: Keeper, *, office: Path | None, people: tuple[Person, ...] = (),
    beside: Beside | None = None,
) -> Iterator[Bench]:
    """A bench, and what it keeps while it is open; `beside` is the process that ratings are made
    in, if not in this one."""
    kept = Kept(office=office, beside=beside or Beside(here=True))
    kept.begin()
    try:
        yield Bench(register=register, office=office, keeper=keeper, kept=kept, people=people)
    finally:
        kept.close()


@contextmanager
def ended_by_term() -> Iterator[None]:
    """A server that is told to end by SIGTERM closes what it holds, as it does after Ctrl-C."""
    if current_thread() is not main_thread():
        yield
        return

    def end(number: int, frame: object) -> None:
        del frame
        sys.exit(128 + number)

    before = signal.signal(signal.SIGTERM, end)
    try:
        yield
    finally:
        signal.signal(signal.SIGTERM, before)


def own_keeper(port: int, wanted: Own) -> ByKey:
    """Who keeps the door of a workbench on this machine. Raises Unknown, OutOfRange."""
    hosts = frozenset(f"{name}:{port}" for name in (LOOPBACK, "localhost"))
    if not wanted.people:
        return ByKey(hosts=hosts, person=wanted.person or getpass.getuser())
    named = {one.name: one for one in wanted.people}
    name = wanted.person or (next(iter(named)) if len(named) == 1 else "")
    if not name:
        raise OutOfRange("who sits at it", "not said", f"one of {', '.join(named)}: --by NAME")
    if name not in named:
        raise Unknown("person", name, near=nearest(name, named), where="the people's file")
    return ByKey(hosts=hosts, person=name, role=Role(named[name].role))


def serve(
    place: str | None, wanted: Own | Shared, *, office: Path | None, demo: Sequence[str] = (),
    saying: Callable[[str], None],
) -> None:
    """Serve until interrupted; `demo` are the texts of records that a new register is filled with.

    Raises NoRegister, OutOfRange, Unknown.
    """
    if isinstance(wanted, Shared):
        wanted.refuse_open()
        _serve_shared(place, wanted, office=office, saying=saying)
        return
    listening = free_socket(wanted.port)
    port = listening.getsockname()[1]
    keeper = own_keeper(port, wanted)

    def printed(path: str) -> None:
        saying(f"Open  http://{LOOPBACK}:{port}{path}")

    with opened_register(place, begin=bool(demo)) as register:
        if demo:
            with_bridges(register, demo)
        with ended_by_term(), bench_on(
            register, keeper, office=office, people=wanted.people, beside=Beside()
        ) as bench:
            if demo:
                issue_all(bench)
            printed(urls.enter(keeper.key))
            _run(bench, listening, printed, proxy_headers=False)


def _serve_shared(
    place: str | None, wanted: Shared, *, office: Path | None, saying: Callable[[str], None]
) -> None:
    accounts = Accounts(wanted.accounts)
    try:
        if not any(one["ended"] is None for one in accounts.listed()):
            raise OutOfRange(
                "accounts", 0, "at least one before it is shared: eyebar account add NAME --role"
                " engineer",
            )
        listening = free_socket(wanted.port, wanted.listen)
        keeper = ByAccount(hosts=wanted.hosts, accounts=accounts)
        with opened_register(place) as register, ended_by_term(), bench_on(
            register, keeper, office=office, beside=Beside()
        ) as bench:
            saying(f"Shared at  https://{wanted.name}:{wanted.port}/")
            _run(bench, listening, saying, **wanted.settings())
    finally:
        accounts.close()


def _run(
    bench: Bench, listening: socket.socket, printed: Callable[[str], None], **settings: Any
) -> None:
    config = uvicorn.Config(
        application(bench, printed), log_level="warning", access_log=False, server_header=False,
        lifespan="off", **settings,
    )
    uvicorn.Server(config).run(sockets=[listening])
