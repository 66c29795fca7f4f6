"""Tests that need a tool from outside Python are left out where it is missing, and named.

Under `CI=true` nothing is left out: a missing tool is a failure.
"""

import gc
import os
from collections import Counter
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import settings

from tests.documents import demos
from tests.groups import GROUPS

settings.register_profile("quick", max_examples=50)
settings.register_profile("soak", max_examples=400)
settings.load_profile(os.environ.get("EYEBAR_LAWS", "quick"))

gc.set_threshold(200_000, 50, 1000)
"""Documents are large and have no circles: looking for those took a twentieth of a run."""

TOGETHER = ("tests/report/", "tests/web/")
"""Rooms whose files share what takes long to make: one process runs all of a room."""

LONGEST = (
    "tests/report/", "tests/drawings/test_stress_sheet.py", "tests/house/test_wheel.py",
    "tests/rating/test_resolved.py", "tests/laws/test_rating.py", "tests/rating/test_replayed.py",
    "tests/web/", "tests/bridge/test_begun.py", "tests/demo/", "tests/store/test_signed_report.py",
    "tests/cli/test_on_the_demo.py", "tests/drawings/", "tests/documents/", "tests/browser/",
    "tests/laws/", "tests/analysis/", "tests/house/test_gallery.py", "tests/rating/",
)
"""What is begun first, so that at the end no process waits long for another."""


def pytest_configure(config: pytest.Config) -> None:
    for group in GROUPS:
        config.addinivalue_line("markers", f"{group.marker}: needs {group.needs}")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    items.sort(key=lambda item: _place(item.nodeid))  # stable: a file stays together


def _place(nodeid: str) -> int:
    return next((i for i, one in enumerate(LONGEST) if nodeid.startswith(one)), len(LONGEST))


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> object:
    if config.getvalue("dist") != "loadfile":
        return None
    from xdist.scheduler import LoadFileScheduling

    class RoomScheduling(LoadFileScheduling):
        """Whole files, in the order above; of some rooms all files to one process."""

        def _split_scope(self, nodeid: str) -> str:
            rooms = (room for room in TOGETHER if nodeid.startswith(room))
            return next(rooms, super()._split_scope(nodeid))

    config.option.loadscopereorder = False  # else by the number of tests, which says little
    return RoomScheduling(config, log)


@pytest.fixture(scope="session", autouse=True)
def shared_documents(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Documents of the demo that one process of the run has made are there for the others."""
    if "PYTEST_XDIST_WORKER" in os.environ:
        demos.FOLDER = tmp_path_factory.getbasetemp().parent / "documents"
        demos.FOLDER.mkdir(exist_ok=True)
    yield
    demos.FOLDER = None


def pytest_runtest_setup(item: pytest.Item) -> None:
    for group in GROUPS:
        if item.get_closest_marker(group.marker) and not group.found():
            if os.environ.get("CI") == "true":
                pytest.fail(f"{group.needs} is missing: {group.brings}", pytrace=False)
            pytest.skip(_missing(group.needs))


def _missing(needs: str) -> str:
    return f"{needs} is missing"


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    # Read off the reports, which come together here from however many processes ran the tests.
    reasons = Counter(
        report.longrepr[2].removeprefix("Skipped: ")
        for report in terminalreporter.stats.get("skipped", ())
        if isinstance(report.longrepr, tuple)
    )
    for group in GROUPS:
        count = reasons[_missing(group.needs)]
        if count:
            terminalreporter.write_line(
                f"left out: {count} tests of the group {group.marker}, which need "
                f"{group.needs}: {group.brings}"
            )
