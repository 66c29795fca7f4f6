"""The sentences of a report."""

import re

from eyebar.views.report_words import AT_ONCE, MANY, folded

SAID = "pin offset not recorded; the pins are taken at mid-depth"


def test_what_is_said_of_many_parts_alike_stands_once_with_all_of_them() -> None:
    bars = [f"upstream/U{i}-U{i + 1}" for i in range(1, MANY + 1)]
    made = folded(["a rule", *(f"{bar}: {SAID}" for bar in bars), "pins: by their packing"])
    assert made == (
        "a rule", f"{SAID} ({MANY}): {', '.join(bars)}", "pins: by their packing",
    )


def test_of_few_parts_each_has_its_own_sentence() -> None:
    few = tuple(f"upstream/U{i}-U{i + 1}: {SAID}" for i in range(1, MANY))
    assert folded(few) == few


def test_no_part_is_lost_however_many_there_are() -> None:
    bars = [f"down/U{i}-U{i + 1}" for i in range(3 * AT_ONCE + 7)]
    made = folded([f"{bar}: {SAID}" for bar in bars])
    assert len(made) == 4
    assert all(len(one) < 2000 for one in made)
    named = [bar for one in made for bar in one.rpartition(": ")[2].split(", ")]
    assert named == bars
    assert sum(int(re.search(r"\((\d+)\)", one)[1]) for one in made) == len(bars)
