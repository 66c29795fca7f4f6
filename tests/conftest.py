"""Tests that need a tool from outside Python are left out where it is missing, and named.

Under `CI=true` nothing is left out: a missing tool is a failure.
"""

import os
from collections import Counter

import pytest

from tests.groups import GROUPS, Group

LEFT_OUT = pytest.StashKey[Counter[str]]()


def pytest_configure(config: pytest.Config) -> None:
    config.stash[LEFT_OUT] = Counter()
    for group in GROUPS:
        config.addinivalue_line("markers", f"{group.marker}: needs {group.needs}")


def pytest_runtest_setup(item: pytest.Item) -> None:
    for group in GROUPS:
        if item.get_closest_marker(group.marker) and not group.found():
            if os.environ.get("CI") == "true":
                pytest.fail(f"{group.needs} is missing: {group.brings}", pytrace=False)
            item.config.stash[LEFT_OUT][group.marker] += 1
            pytest.skip(f"{group.needs} is missing")


def pytest_terminal_summary(
    terminalreporter: pytest.TerminalReporter, config: pytest.Config
) -> None:
    left_out = config.stash[LEFT_OUT]
    missing: list[Group] = [group for group in GROUPS if left_out[group.marker]]
    for group in missing:
        terminalreporter.write_line(
            f"left out: {left_out[group.marker]} tests of the group {group.marker}, which need "
            f"{group.needs}: {group.brings}"
        )
