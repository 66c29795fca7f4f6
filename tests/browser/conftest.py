"""A workbench that is served, and a real Chromium that was let in."""

import os
import shutil
import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass

import pytest
import uvicorn

from eyebar.record import read_record
from eyebar.store.opened import opened_register
from eyebar.store.saving import add_bridge
from eyebar.web import urls
from eyebar.web.app import application
from eyebar.web.bench import Bench
from eyebar.web.serving import Own, bench_on, free_socket, own_keeper
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


@pytest.fixture(scope="session")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    listening = free_socket(0)
    port = listening.getsockname()[1]
    file = tmp_path_factory.mktemp("served") / "register.db"
    with opened_register(str(file), begin=True) as register:
        for name in ("wrenmallow", "dovetansy"):
            add_bridge(register, read_record(demos.record(name)), person="test", reason="test")
        keeper = own_keeper(port, Own(person="A. Measurer"))
        with bench_on(register, keeper, office=None) as bench:
            server = uvicorn.Server(uvicorn.Config(
                application(bench, lambda _: None), log_level="warning", lifespan="off",
            ))
            thread = threading.Thread(target=server.run, kwargs={"sockets": [listening]})
            thread.start()
            while not server.started:
                time.sleep(0.02)
            yield Served(bench=bench, root=f"http://127.0.0.1:{port}")
            server.should_exit = True
            thread.join()


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
