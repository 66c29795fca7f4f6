"""A workbench that is served, and a real Chromium that was let in."""

import os
import shutil
import socket
import threading
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import pytest
import uvicorn

from eyebar.record import read_record
from eyebar.store.accounts import Accounts
from eyebar.store.opened import opened_register
from eyebar.store.saving import add_bridge
from eyebar.terms import Role
from eyebar.web import urls
from eyebar.web.app import application
from eyebar.web.bench import Bench
from eyebar.web.keepers import ByAccount
from eyebar.web.serving import Own, bench_on, free_socket, own_keeper
from tests.certificates import certified
from tests.documents import demos
from tests.groups import GROUPS

CHROMIUM = next(one for one in GROUPS if one.marker == "browser")
PATIENCE_MS = 60_000
UNCAGED = ("--no-sandbox",) if getattr(os, "geteuid", lambda: 1)() == 0 else ()
"""Chromium's own cage does not work for root."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Served:
    """The bench and where it answers."""

    bench: Bench
    root: str


@contextmanager
def answering(bench: Bench, listening: socket.socket, **tls: str) -> Iterator[None]:
    """The application, served beside the tests."""
    server = uvicorn.Server(uvicorn.Config(
        application(bench, lambda _: None), log_level="critical", lifespan="off", **tls,
    ))
    thread = threading.Thread(target=server.run, kwargs={"sockets": [listening]})
    thread.start()
    while not server.started:
        time.sleep(0.02)
    yield
    server.should_exit = True
    thread.join()


@contextmanager
def serving(file: Path, names: Sequence[str] = ()) -> Iterator[Served]:
    """A workbench of one's own on a new register that holds some of the demo bridges."""
    listening = free_socket(0)
    port = listening.getsockname()[1]
    with opened_register(str(file), begin=True) as register:
        for name in names:
            add_bridge(register, read_record(demos.record(name)), person="test", reason="test")
        keeper = own_keeper(port, Own(person="A. Measurer"))
        with bench_on(register, keeper, office=None) as bench, answering(bench, listening):
            yield Served(bench=bench, root=f"http://127.0.0.1:{port}")


@pytest.fixture(scope="session")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    folder = tmp_path_factory.mktemp("served")
    with serving(folder / "register.db", ("wrenmallow", "dovetansy")) as one:
        yield one


PASSWORDS = {"Reader": "reads a great deal", "Engineer": "signs a great deal"}


@pytest.fixture(scope="session")
def shared(served: Served, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """A shared workbench on the same register, behind TLS."""
    folder = tmp_path_factory.mktemp("shared")
    tls, listening = certified(folder), free_socket(0)
    port = listening.getsockname()[1]
    accounts = Accounts(folder / "accounts.db")
    for name, password in PASSWORDS.items():
        accounts.add(name, Role(name.lower()), password)
    keeper = ByAccount(hosts=frozenset({f"localhost:{port}"}), accounts=accounts)
    with bench_on(served.bench.register, keeper, office=None) as bench:
        bench.kept.jobs.update(served.bench.kept.jobs)
        with answering(bench, listening, ssl_certfile=str(tls.certificate),
                       ssl_keyfile=str(tls.key)):
            yield Served(bench=bench, root=f"https://localhost:{port}")
    accounts.close()


@pytest.fixture
def stranger(browser, shared: Served) -> Iterator[object]:
    """A page of a browser that nobody let in to the shared workbench."""
    context = browser.new_context(base_url=shared.root, ignore_https_errors=True)
    opened = context.new_page()
    opened.set_default_timeout(PATIENCE_MS)
    yield opened
    context.close()


def log_in(page, name: str, password: str = "") -> None:
    """Fill in the page to log in."""
    page.goto("/login")
    page.get_by_label("Name").fill(name)
    page.get_by_label("Password").fill(password or PASSWORDS[name])
    page.get_by_role("button", name="Come in").click()


def serious_faults(page) -> list:
    """What the axe rules find that is serious for those who see or move less."""
    from axe_playwright_python.sync_playwright import Axe

    found = Axe().run(page, options={"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa"]})
    return [
        (one["id"], one["help"], [node["html"][:160] for node in one["nodes"]][:4])
        for one in found.response["violations"] if one["impact"] in ("serious", "critical")
    ]


@pytest.fixture(scope="session")
def browser() -> Iterator[object]:
    from playwright.sync_api import sync_playwright

    program = next(filter(None, map(shutil.which, CHROMIUM.programs)))
    with sync_playwright() as playwright:
        opened = playwright.chromium.launch(
            executable_path=program, args=["--disable-background-networking", *UNCAGED]
        )
        yield opened
        opened.close()


@pytest.fixture(scope="session")
def let_in(served: Served, browser) -> dict:
    """What a browser that was let in remembers."""
    context = browser.new_context()
    context.new_page().goto(served.root + urls.enter(served.bench.keeper.key))
    state = context.storage_state()
    context.close()
    return state


@pytest.fixture
def page(served: Served, browser, let_in: dict, request: pytest.FixtureRequest) -> Iterator[object]:
    """A page of a browser that was let in; a fault of a script fails the test."""
    wanted = getattr(request, "param", {})
    context = browser.new_context(
        storage_state=let_in, base_url=served.root,
        **{"viewport": {"width": 1280, "height": 900}, **wanted},
    )
    faults: list[str] = []
    opened = context.new_page()
    opened.set_default_timeout(PATIENCE_MS)
    opened.on("pageerror", lambda error: faults.append(str(error)))
    opened.on("console", lambda message: faults.append(message.text)
              if message.type == "error" else None)
    opened.faults = faults
    yield opened
    context.close()
    assert faults == []


def come(page, address: str) -> None:
    """Go to a page, and wait while what it needs is being made."""
    page.goto(address)
    page.locator("p.waiting").wait_for(state="detached")
