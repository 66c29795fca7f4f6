"""The form of a truss from its lines alone: against the forms as the trade defines them.

The layouts come from `bridge/forms*.py`, whose bars are held against exact solutions and drawings
by tests of their own; here it is checked that the definition can be read back from bare lines.
"""

import numpy as np
import pytest

from eyebar.errors import OutOfRange
from eyebar.history import Lines, mirrored, recognised
from eyebar.terms import EndPosts, FloorOn, Form
from tests.bridge.forms import form
from tests.history.trusses import Case, cases, drawn, of_form, seen


def name_of(case: object) -> str:
    if not isinstance(case, tuple):
        return str(case)
    word, count, way = case
    return f"{word} of {count}, {', '.join(str(one) for one in way.values())}"


@pytest.mark.parametrize("case", list(cases(9)), ids=name_of)
def test_every_form_is_read_back_from_its_lines(case: Case) -> None:
    word, count, way = case
    found = recognised(of_form(word, count, **way))
    assert found.form is not None
    assert word in (found.form, *found.same_lines)
    assert found.features


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


PANELS = {
    Form.PRATT: 7, Form.DOUBLE_INTERSECTION_PRATT: 9, Form.PARKER: 8, Form.CAMELBACK: 9,
    Form.WARREN: 6, Form.WARREN_WITH_VERTICALS: 8, Form.DOUBLE_INTERSECTION_WARREN: 6,
    Form.HOWE: 6, Form.BALTIMORE: 12, Form.PENNSYLVANIA: 12, Form.HALF_HIP_PRATT: 5,
    Form.KING_POST: 2, Form.QUEEN_POST: 3, Form.SMALL_PRATT: 3, Form.BOWSTRING: 8,
    Form.LENTICULAR: 8,
}


@pytest.mark.parametrize("word", Form)
@pytest.mark.parametrize("seed", range(4))
def test_unequal_panels_change_no_form(word: Form, seed: int) -> None:
    draw = np.random.default_rng(seed)
    panels = 180.0 * draw.uniform(0.8, 1.2, PANELS[word])
    # A skewed bridge shows in one truss as panels that differ from end to end.
    if word in (Form.BALTIMORE, Form.PENNSYLVANIA):
        panels = np.repeat(panels[::2], 2)
    found = recognised(of_form(word, panels.tolist()))
    assert word in (found.form, *found.same_lines)


@pytest.mark.parametrize("word", Form)
def test_joints_taped_within_an_inch_change_no_form(word: Form) -> None:
    draw = np.random.default_rng(1)
    true = of_form(word, PANELS[word])
    taped = Lines(
        {joint: (x + draw.uniform(-0.5, 0.5), y + draw.uniform(-0.5, 0.5))
         for joint, (x, y) in true.joints.items()},
        true.bars,
    )
    found = recognised(taped)
    assert word in (found.form, *found.same_lines)


@pytest.mark.parametrize("counters", [(), ("U3-L2", "U4-L5"), ("U2-L1", "U3-L2", "U4-L5", "U5-L6")])
def test_counters_added_or_lost_change_no_pratt(counters: tuple[str, ...]) -> None:
    found = recognised(of_form(Form.PRATT, 7, counters=counters))
    assert found.form is Form.PRATT


def test_a_web_crossed_in_every_panel_is_said_to_be_in_doubt() -> None:
    # Of six panels, each one that has a diagonal crossed.
    found = recognised(of_form(Form.PRATT, 6, counters=("U2-L1", "U3-L2", "U3-L4", "U4-L5")))
    assert found.form is Form.PRATT
    assert any("Howe" in doubt for doubt in found.doubts)


@pytest.mark.parametrize("word", [one for one in Form if PANELS[one] != 3])
def test_half_a_truss_tells_as_much_as_the_whole(word: Form) -> None:
    # Three panels have no joint in the middle to mirror about.
    whole = seen(form(word, PANELS[word] - PANELS[word] % 2))
    kept = {joint: at for joint, at in whole.joints.items() if at[0] <= whole.middle + 1.0}
    half = Lines(kept, tuple(bar for bar in whole.bars if {*bar} <= kept.keys()))
    found = recognised(mirrored(half))
    assert word in (found.form, *found.same_lines)


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


def test_a_bar_to_no_joint_is_refused_by_name() -> None:
    with pytest.raises(OutOfRange, match="B9"):
        Lines({"A": (0.0, 0.0)}, (("A", "B9"),))


def test_pieces_that_do_not_hang_together_have_no_edge() -> None:
    joints = {"A": (0.0, 0.0), "B": (100.0, 0.0), "C": (300.0, 0.0), "D": (400.0, 0.0)}
    with pytest.raises(OutOfRange, match="from one end to the other"):
        recognised(drawn(joints, "A-B C-D"))


@pytest.mark.parametrize(
    ("word", "panels", "how"),
    [
        # Each line quotes what a public record says; heights are in the records almost never, so
        # the depth is ours, and so are equal panels.
        pytest.param(Form.CAMELBACK, 7, {}, id="Dump Hill, PA, 1905: 7 panels, five slopes"),
        pytest.param(Form.PRATT, 7, {}, id="Shanley Road, Elk Co. PA, 1891: 7-panel pin Pratt"),
        pytest.param(Form.PRATT, (150.0, 180.0, 180.0, 180.0, 180.0, 210.0), {},
                     id="Moreland, PA: 6 panels, skewed"),
        pytest.param(Form.LENTICULAR, 13, {}, id="Bardwell's Ferry, MA: 13 panels, lenticular"),
        pytest.param(Form.HALF_HIP_PRATT, 4, {}, id="Hunterdon Co. NJ: 4 panels, half-hip pony"),
        pytest.param(Form.HALF_HIP_PRATT, 3, {}, id="Mill Road, NJ: 3-panel half-hip"),
        pytest.param(Form.WARREN_WITH_VERTICALS, 4, {},
                     id="Lower Kingstown, NJ: 4-panel Warren with verticals"),
        pytest.param(Form.SMALL_PRATT, 3, {}, id="Garfield Co. OK, 1912: looks like a queen post"),
        pytest.param(Form.CAMELBACK, 6, {}, id="Sand Creek, OK: six-panel camelback pony"),
        pytest.param(Form.DOUBLE_INTERSECTION_WARREN, 4, {},
                     id="Elk Co. PA approaches: 4-panel double-intersection Warren pony"),
    ],
)
def test_public_records_get_the_form_they_are_known_by(
    word: Form, panels: int, how: dict[str, object]
) -> None:
    found = recognised(of_form(word, panels, **how))
    assert word in (found.form, *found.same_lines)


def test_a_truss_that_hangs_is_read_the_right_way_up() -> None:
    # Common practice: a deck Pratt hung from its upper chord still has diagonals that fall.
    found = recognised(of_form(
        Form.PRATT, 8, end_posts=EndPosts.NONE, floor=FloorOn.UPPER))
    assert found.form is Form.PRATT
