"""Tests that need a tool from outside Python are left out where it is missing, and named.

Under `CI=true` nothing is left out: a missing tool is a failure.
"""

import gc
import os
from collections import Counter

import pytest
from hypothesis import settings

from tests.groups import GROUPS

settings.register_profile("quick", max_examples=50)
settings.register_profile("soak", max_examples=400)
settings.load_profile(os.environ.get("EYEBAR_LAWS", "quick"))

gc.set_threshold(200_000, 50, 1000)
"""Documents are large and have no circles: looking for those took a twentieth of a run."""


def pytest_configure(config: pytest.Config) -> None:
    for group in GROUPS:
        config.addinivalue_line("markers", f"{group.marker}: needs {group.needs}")


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
