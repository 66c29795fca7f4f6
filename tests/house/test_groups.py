"""Tests that need a tool from outside are left out where it is missing, and fail under CI."""

from types import SimpleNamespace
from typing import Any

import pytest

from tests import conftest
from tests.groups import GROUPS, Group

MISSING = Group(marker="m", needs="A Tool", programs=("no-such-program",), package="a-tool")


class Item(SimpleNamespace):
    """A test that carries the marker of the missing group."""

    def get_closest_marker(self, name: str) -> bool:
        return name == "m"


@pytest.fixture
def item(monkeypatch: pytest.MonkeyPatch) -> Any:
    monkeypatch.setattr(conftest, "GROUPS", (MISSING,))
    return Item()


def test_a_missing_tool_leaves_the_test_out(item: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("CI", raising=False)
    with pytest.raises(pytest.skip.Exception, match="A Tool is missing"):
        conftest.pytest_runtest_setup(item)


def test_under_ci_a_missing_tool_is_a_failure_that_says_the_line_that_brings_it(
    item: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("CI", "true")
    with pytest.raises(pytest.fail.Exception, match=MISSING.brings):
        conftest.pytest_runtest_setup(item)


def test_what_was_left_out_is_named_with_its_count_and_the_line_that_brings_it(item: Any) -> None:
    reports = [SimpleNamespace(longrepr=("f.py", 1, f"Skipped: {text}"))
               for text in ("A Tool is missing", "A Tool is missing", "not today")]
    said: list[str] = []
    reporter: Any = SimpleNamespace(stats={"skipped": reports}, write_line=said.append)
    conftest.pytest_terminal_summary(reporter)
    assert len(said) == 1
    assert said[0].startswith("left out: 2 tests of the group m")
    assert said[0].endswith(MISSING.brings)


def test_a_program_is_found_on_the_path_or_in_a_folder_of_its_own() -> None:
    # /bin/sh is on every machine that runs make.
    assert Group(marker="m", needs="sh", programs=("sh",), package="x").found()
    apart = Group(
        marker="m", needs="sh", programs=("no-such-program", "sh"), folders=("bi*",), package="x"
    )
    assert apart.found()
    assert not MISSING.found()


def test_every_group_says_how_to_come_by_its_tool() -> None:
    assert all(group.package in group.brings for group in GROUPS)
