"""Opening the workbench on a port of this machine."""

import getpass
import socket
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

import uvicorn

from eyebar.errors import OutOfRange
from eyebar.record import record_of
from eyebar.store.asked import bridge_named, latest_of_all, revision_of
from eyebar.store.issued import issue_document
from eyebar.store.opened import Register, opened_register
from eyebar.store.saving import add_bridge
from eyebar.web import urls
from eyebar.web.app import application
from eyebar.web.bench import Bench, Doorkeeper
from eyebar.web.kept import Kept

LOOPBACK = "127.0.0.1"


def with_bridges(register: Register, texts: Sequence[str]) -> None:
    """Put the demo bridges into a register that is empty."""
    for text in texts:
        add_bridge(register, record_of(text), person="eyebar", reason="demo bridge, invented")


def issue_all(bench: Bench) -> None:
    """Rate every bridge beside the pages, and keep the ratings as drafts: the list then has them.
    """
    def issued(handle: str) -> None:
        with bench.register.reading() as connection:
            revision = revision_of(connection, bridge_named(connection, handle))
        found = bench.kept.made_at_once(revision.text, f"{handle}, revision {revision.revision}")
        issue_document(
            bench.register, handle, revision, (found.rate, found.one.values.digest()),
            person="eyebar", reason="demo bridge, rated when the workbench was opened",
        )

    with bench.register.reading() as connection:
        handles = [one["handle"] for one in latest_of_all(connection)]
    for handle in handles:
        bench.kept.worker.submit(issued, handle)


def free_socket(port: int) -> socket.socket:
    """A socket that listens on a port of this machine alone; 0 takes a free one.

    Raises OutOfRange where the port is taken.
    """
    found = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    found.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        found.bind((LOOPBACK, port))
    except OSError as error:
        found.close()
        raise OutOfRange(
            "port", f"{port} ({error.strerror})", "free: leave it out, and a free one is taken"
        ) from None
    return found


@contextmanager
def bench_on(
    register: Register, port: int, *, office: Path | None, person: str | None = None
) -> Iterator[Bench]:
    """A bench whose door knows the port."""
    kept = Kept(office=office)
    hosts = frozenset(f"{name}:{port}" for name in (LOOPBACK, "localhost"))
    try:
        yield Bench(
            register=register, office=office, person=person or getpass.getuser(),
            door=Doorkeeper(hosts=hosts), kept=kept,
        )
    finally:
        kept.close()


def serve(
    place: str | None, port: int, *, office: Path | None, person: str | None,
    demo: Sequence[str] = (), saying: Callable[[str], None],
) -> None:
    """Serve until interrupted; `demo` are the texts of records that a new register is filled with.

    Raises NoRegister, OutOfRange.
    """
    listening = free_socket(port)
    port = listening.getsockname()[1]
    with opened_register(place, begin=bool(demo)) as register:
        if demo:
            with_bridges(register, demo)
        with bench_on(register, port, office=office, person=person) as bench:
            if demo:
                issue_all(bench)
            def printed(path: str) -> None:
                saying(f"Open  http://{LOOPBACK}:{port}{path}")

            printed(urls.enter(bench.door.key))
            config = uvicorn.Config(
                application(bench, printed), log_level="warning", access_log=False,
                server_header=False, date_header=True, lifespan="off",
            )
            uvicorn.Server(config).run(sockets=[listening])
