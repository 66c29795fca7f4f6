"""No tracked file names a package registry or a path of one machine."""

import shutil

import pytest

from tests.house.tracked import ROOT, forbidden_lines, tracked_files

pytestmark = pytest.mark.skipif(
    shutil.which("git") is None or not (ROOT / ".git").exists(),
    reason="the files of a checkout are listed by git",
)


def test_no_tracked_file_holds_what_is_forbidden() -> None:
    found = [
        f"{path.relative_to(ROOT)}:{line}"
        for path in tracked_files()
        for line in forbidden_lines(path.read_text(encoding="utf-8"))
    ]
    assert not found, "\n".join(found)


@pytest.mark.parametrize(
    "line",
    [
        "index-url = https://py" + "pi.org/simple",
        "open('/" + "tmp/x.yaml')",
        "see /" + "work/notes",
    ],
)
def test_what_is_forbidden_is_found(line: str) -> None:
    assert forbidden_lines(line) == [f"1: {line}"]


def test_addresses_and_words_of_the_trade_are_free() -> None:
    # A part's address and a web address hold slashes too.
    assert forbidden_lines("upstream/U2-L4\n/bridges/07-19/work/\nwork done by the loads") == []
