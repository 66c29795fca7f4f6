"""Two changes of one record put together, or left to whoever made them."""

import pytest

from eyebar.store.differing import differences
from eyebar.store.merging import merged
from tests.store.samples import text, with_line

BASE = """eyebar: 1
name: A
owner: county
built: 1890   # plaque
counters:
  - U1-L2
  - U2-L1
inspections:
  - date: 2021-06-15
    by: crew
    readings:
      - {part: a/U1-L0, what: thickness, value: 1/2 in}
"""
LATER = "  - date: 2026-06-09\n    by: {}\n    readings:\n      - {{part: a/L0-L1, value: {} in}}\n"


def changed(*pairs: tuple[str, str]) -> str:
    found = BASE
    for was, now in pairs:
        assert was in found
        found = found.replace(was, now)
    return found


def test_changes_of_different_lines_stand_side_by_side() -> None:
    # By hand: neighbouring lines too.
    theirs = changed(("owner: county", "owner: town"), ("1/2 in", "3/8 in"))
    yours = changed(("name: A", "name: B"), ("1890   # plaque", "1891   # letter of 1891"))
    assert merged(BASE, theirs, yours) == changed(
        ("owner: county", "owner: town"), ("1/2 in", "3/8 in"), ("name: A", "name: B"),
        ("1890   # plaque", "1891   # letter of 1891"),
    )


@pytest.mark.parametrize(("one", "other"), [("north crew", "south crew"), ("crew", "crew")])
def test_inspections_that_both_add_are_both_there(one: str, other: str) -> None:
    theirs, yours = BASE + LATER.format(one, "7/16"), BASE + LATER.format(other, "3/8")
    assert merged(BASE, theirs, yours) == theirs + LATER.format(other, "3/8")


@pytest.mark.parametrize(("theirs", "yours"), [
    # The same line.
    (changed(("county", "town")), changed(("county", "state"))),
    # The same comment.
    (changed(("plaque", "plate")), changed(("plaque", "letter"))),
    # One took away what the other wrote in.
    (BASE[:BASE.index("inspections")], changed(("1/2 in", "3/8 in"))),
    # Both added the same key, each on a line of its own.
    (BASE + "note: loose\n", BASE + "note: sound\n"),
    # One list on two lines: what both together say of it was said by neither.
    (changed(("  - U1-L2", "  - U1-L4")), changed(("  - U2-L1", "  - U4-L1"))),
    # The same inspection, told by both.
    (BASE + LATER.format("crew", "3/8"), BASE + LATER.format("crew", "3/8")),
    # What cannot be read.
    (changed(("county", "town")), changed(("name: A", "name: [A"))),
])
def test_what_is_in_each_others_way_is_left_to_them(theirs: str, yours: str) -> None:
    assert merged(BASE, theirs, yours) is None
    assert merged(BASE, yours, theirs) is None


def test_a_whole_record_with_a_change_of_each_says_both() -> None:
    theirs = with_line(text(), "place: Fen Lane")
    yours = with_line(text(), "built: 1877")
    both = merged(text(), theirs, yours)
    assert both is not None
    # Law: what both say is what the one says, and what the other does.
    assert differences(text(), both) == tuple(sorted(
        (*differences(text(), theirs), *differences(text(), yours)),
        key=lambda one: list(text().splitlines()).index(
            next(line for line in text().splitlines() if line.startswith(f"{one.path[0]}:"))
        ),
    ))
