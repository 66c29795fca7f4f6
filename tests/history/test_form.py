"""The form of a truss from its lines alone: against the forms as the trade defines them.

The layouts come from `bridge/forms*.py`, whose bars are held against exact solutions and drawings
by tests of their own; here it is checked that the definition can be read back from bare lines.
"""

import pytest

from eyebar.errors import OutOfRange
from eyebar.history import Lines, recognised
from eyebar.terms import EndPosts, FloorOn, Form
from tests.history.public_records import PUBLIC_RECORDS, PublicRecord
from tests.history.results import chapter, right
from tests.history.seen import BEFALLS, COUNTED
from tests.history.trusses import cases, drawn, of_form


@pytest.mark.parametrize("what", BEFALLS)
@pytest.mark.parametrize("word", Form)
def test_a_form_is_known_whatever_befalls_its_lines(word: Form, what: str) -> None:
    # The table of docs/how-we-check.md: every truss is called by its form, or by one of its lines.
    trusses, named, called = right(word, what)
    assert called <= named == trusses


@pytest.mark.parametrize("word", COUNTED)
def test_no_form_with_counters_is_left_out_of_those_tests(word: Form) -> None:
    # A small Pratt has one panel for a diagonal, and it is crossed already.
    assert right(word, "counters lost")[0] > 0
    assert right(word, "counters added")[0] > 0 or word is Form.SMALL_PRATT


@pytest.mark.parametrize("one", PUBLIC_RECORDS, ids=lambda one: one.bridge)
def test_public_records_get_the_form_they_are_known_by(one: PublicRecord) -> None:
    found = recognised(one.lines)
    assert one.form in (found.form, *found.same_lines)


def test_the_table_of_results_has_a_row_for_every_form_and_every_record() -> None:
    rows = [line for line in chapter().splitlines() if line.startswith("| ")]
    # Two lines of headings.
    assert len(rows) == len(Form) + len(PUBLIC_RECORDS) + 2


DISTINCT = (
    Form.KING_POST, Form.QUEEN_POST, Form.HALF_HIP_PRATT, Form.DOUBLE_INTERSECTION_PRATT,
    Form.CAMELBACK, Form.WARREN, Form.DOUBLE_INTERSECTION_WARREN, Form.BALTIMORE,
    Form.PENNSYLVANIA, Form.BOWSTRING, Form.LENTICULAR,
)
"""Forms whose lines no other form of ours has, whatever the number of panels."""


@pytest.mark.parametrize("word", DISTINCT)
def test_a_form_with_lines_of_its_own_is_called_by_its_name(word: Form) -> None:
    counts = dict.fromkeys(Form, 0)
    for case in cases(12):
        if case[0] is word:
            found = recognised(of_form(word, case[1], **case[2]))
            assert found.form is not None
            counts[found.form] += 1
    assert {one for one, count in counts.items() if count} == {word}


@pytest.mark.parametrize("counters", [(), ("U3-L2", "U4-L5"), ("U2-L1", "U3-L2", "U4-L5", "U5-L6")])
def test_counters_added_or_lost_change_no_pratt(counters: tuple[str, ...]) -> None:
    found = recognised(of_form(Form.PRATT, 7, counters=counters))
    assert found.form is Form.PRATT


def test_a_web_crossed_in_every_panel_is_said_to_be_in_doubt() -> None:
    # Of six panels, each one that has a diagonal crossed.
    found = recognised(of_form(Form.PRATT, 6, counters=("U2-L1", "U3-L2", "U3-L4", "U4-L5")))
    assert found.form is Form.PRATT
    assert any("Howe" in doubt for doubt in found.doubts)


def test_a_four_panel_pratt_says_that_a_warren_with_verticals_looks_the_same() -> None:
    found = recognised(of_form(Form.PRATT, 4))
    assert Form.WARREN_WITH_VERTICALS in found.same_lines
    assert found.doubts


def test_verticals_split_by_half_diagonals_are_no_known_form() -> None:
    # A K web of four panels: drawn from the definition.
    joints = {f"L{i}": (180.0 * i, 0.0) for i in range(5)}
    joints |= {f"U{i}": (180.0 * i, 240.0) for i in (1, 2, 3)}
    joints |= {f"M{i}": (180.0 * i, 120.0) for i in (1, 3)}
    found = recognised(drawn(joints, (
        "L0-L1 L1-L2 L2-L3 L3-L4 U1-U2 U2-U3 L0-U1 U3-L4 L1-M1 M1-U1 L3-M3 M3-U3 U2-L2 "
        "M1-U2 M1-L2 M3-U2 M3-L2"
    )))
    assert found.form is None
    assert "K" in found.features[0]


def test_three_webs_are_no_known_form() -> None:
    # Diagonals that span three panels and pass two verticals, in both halves of twelve panels.
    joints = {f"L{i}": (120.0 * i, 0.0) for i in range(13)}
    joints |= {f"U{i}": (120.0 * i, 300.0) for i in range(1, 12)}
    bars = [f"L{i}-L{i + 1}" for i in range(12)] + [f"U{i}-U{i + 1}" for i in range(1, 11)]
    bars += [f"U{i}-L{i}" for i in range(1, 12)] + ["L0-U1", "L12-U11"]
    bars += [f"U{i}-L{i + 3}" for i in range(1, 5)] + [f"U{12 - i}-L{9 - i}" for i in range(1, 5)]
    found = recognised(drawn(joints, " ".join(bars)))
    assert found.form is None
    assert "more than two webs" in found.features[0]


def test_a_lattice_without_verticals_is_no_known_form() -> None:
    joints = {f"L{i}": (60.0 * i, 0.0) for i in range(9)} | {
        f"U{i}": (60.0 * i, 150.0) for i in range(9)}
    bars = [f"{c}{i}-{c}{i + 1}" for c in "LU" for i in range(8)] + ["U0-L0", "U8-L8"]
    bars += [f"U{i}-L{i + 3}" for i in range(6)] + [f"L{i}-U{i + 3}" for i in range(6)]
    found = recognised(drawn(joints, " ".join(bars)))
    assert found.form is None
    assert "lattice" in found.features[0]


def plain_frame(panels: int, web: str) -> Lines:
    """Upright ends and posts of some panels of 15 ft, with diagonals besides."""
    joints = {f"{c}{i}": (180.0 * i, 0.0 if c == "L" else 240.0)
              for c in "LU" for i in range(panels + 1)}
    bars = [f"{c}{i}-{c}{i + 1}" for c in "LU" for i in range(panels)]
    posts = [f"U{i}-L{i}" for i in range(panels + 1)]
    return drawn(joints, " ".join([*bars, *posts, web]))


def test_a_frame_without_diagonals_is_no_known_form() -> None:
    # Drawn from the definition: a frame of stiff joints has posts alone.
    found = recognised(plain_frame(6, ""))
    assert found.form is None
    assert "no diagonal" in found.features[0]


def test_diagonals_that_all_lean_one_way_are_no_known_form() -> None:
    # In one half they fall towards the middle, in the other they rise: neither Pratt nor Howe, and
    # no Warren, whose diagonals go to and fro.
    found = recognised(plain_frame(6, " ".join(f"U{i}-L{i + 1}" for i in range(6))))
    assert found.form is None
    assert "same side" in found.features[0]


def test_a_bar_to_no_joint_is_refused_by_name() -> None:
    with pytest.raises(OutOfRange, match="B9"):
        Lines({"A": (0.0, 0.0)}, (("A", "B9"),))


def test_pieces_that_do_not_hang_together_have_no_edge() -> None:
    joints = {"A": (0.0, 0.0), "B": (100.0, 0.0), "C": (300.0, 0.0), "D": (400.0, 0.0)}
    with pytest.raises(OutOfRange, match="from one end to the other"):
        recognised(drawn(joints, "A-B C-D"))


def test_a_truss_that_hangs_is_read_the_right_way_up() -> None:
    # Common practice: a deck Pratt hung from its upper chord still has diagonals that fall.
    found = recognised(of_form(
        Form.PRATT, 8, end_posts=EndPosts.NONE, floor=FloorOn.UPPER))
    assert found.form is Form.PRATT
