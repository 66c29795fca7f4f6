"""King post, queen post and the Warren family."""

import pytest

from eyebar.terms import EndPosts, FloorOn, Form, Kind
from tests.bridge.forms import called, form, of_kind, redundancy
from tests.published.test_burr_1902_moving import howe as burrs_howe
from tests.published.test_burr_1902_moving import warren as burrs_warren
from tests.published.test_hicks_moving_loads import deck_warren


def test_a_king_post_has_one_upper_joint_at_midspan() -> None:
    # The rule by which surveys tell it: one top joint at midspan. By hand: 5 bars, 4 joints.
    layout = form(Form.KING_POST, 2)
    assert set(layout.bars) == {"U1-L0", "U1-L2", "L0-L1", "L1-L2", "U1-L1"}
    assert called(layout, "king rod") == {"U1-L1"}
    assert of_kind(layout, Kind.END_POST) == {"U1-L0", "U1-L2"}


def test_a_king_post_turned_over_is_a_trussed_beam() -> None:
    # Burr 1902, section 115: a beam on one post, trussed by two rods to its ends.
    layout = form(Form.KING_POST, 2, end_posts=EndPosts.NONE, floor=FloorOn.UPPER)
    assert set(layout.bars) == {"U0-U1", "U1-U2", "U1-L1", "U0-L1", "U2-L1"}
    assert called(layout, "king post") == {"U1-L1"}
    assert of_kind(layout, Kind.POST) == {"U1-L1"}


def test_a_queen_post_is_open_in_the_middle_unless_its_diagonals_are_recorded() -> None:
    # Two top joints, no diagonal or crossed ones in the middle panel. By hand: 8 bars on 6 joints
    # are one too few; both diagonals make one too many.
    open_panel = form(Form.QUEEN_POST, 3)
    assert called(open_panel, "queen rod") == {"U1-L1", "U2-L2"}
    assert redundancy(open_panel) == -1
    crossed = form(Form.QUEEN_POST, 3, counters=("U1-L2", "U2-L1"))
    assert of_kind(crossed, Kind.COUNTER) == {"U1-L2", "U2-L1"}
    assert redundancy(crossed) == 1


def test_a_warren_has_an_upper_joint_over_the_middle_of_each_panel() -> None:
    # By hand, panels of 10, 12 and 14 ft: middles at 60, 192 and 348 in.
    layout = form(Form.WARREN, [120.0, 144.0, 168.0])
    assert [layout.joints[f"U{i}"][0] for i in (1, 2, 3)] == [60.0, 192.0, 348.0]
    assert of_kind(layout, Kind.END_POST) == {"U1-L0", "U3-L3"}
    assert of_kind(layout, Kind.DIAGONAL) == {"U1-L1", "U2-L1", "U2-L2", "U3-L2"}
    assert not of_kind(layout, Kind.POST) | of_kind(layout, Kind.HIP_VERTICAL)


def test_burrs_warren_of_seven_panels_is_the_form() -> None:
    # Burr 1902, section 92, whose table of stresses is held in tests/published.
    drawn, layout = burrs_warren(), form(Form.WARREN, 7)
    assert set(layout.bars) == {"-".join(bar.ends) for bar in drawn.bars}
    assert all(layout.joints[joint][0] == x for joint, (x, _) in drawn.joints.items())


def test_burrs_howe_of_seven_panels_is_the_form() -> None:
    # Burr 1902, section 91, with its counters c1.
    layout = form(Form.HOWE, 7, counters=("U2-L3", "U5-L4"))
    assert set(layout.bars) == {bar.name for bar in burrs_howe().bars}


def test_the_deck_warren_of_the_handbook_hangs_from_its_upper_chord() -> None:
    # Hicks, pp. 1.69-1.75 (c): upper joints every 30 ft, lower ones between, 20 ft below.
    layout = form(Form.WARREN, [360.0] * 4, end_posts=EndPosts.NONE, floor=FloorOn.UPPER)
    drawn = deck_warren()
    names = {"T": "U", "B": "L"}

    def ours(joint: str) -> str:
        return names[joint[0]] + joint[1:]

    assert {frozenset(bar.ends) for bar in layout.bars.values()} == {
        frozenset(ours(joint) for joint in bar.ends) for bar in drawn.bars}
    assert {joint: x for joint, (x, _) in layout.joints.items()} == {
        ours(joint): x for joint, (x, _) in drawn.joints.items()}
    assert [joint for joint, _ in layout.floor_joints] == [ours(j) for j in drawn.floor_joints]


def test_a_warren_on_upright_end_posts_has_upper_joints_over_its_bearings() -> None:
    # By hand, two panels: U0 and U3 over the bearings, U1 and U2 between.
    layout = form(Form.WARREN, 2, end_posts=EndPosts.VERTICAL)
    assert [layout.joints[f"U{i}"][0] for i in range(4)] == [0.0, 90.0, 270.0, 360.0]
    assert of_kind(layout, Kind.END_POST) == {"U0-L0", "U3-L2"}
    assert of_kind(layout, Kind.DIAGONAL) == {"U1-L0", "U1-L1", "U2-L1", "U2-L2"}


def test_a_warren_with_verticals_alternates_its_diagonals() -> None:
    # By hand, six panels: L0-U1-L2-U3-L4-U5-L6; verticals under U1, U3 and U5 hang.
    layout = form(Form.WARREN_WITH_VERTICALS, 6)
    assert of_kind(layout, Kind.DIAGONAL) == {"U1-L2", "U3-L2", "U3-L4", "U5-L4"}
    assert called(layout, "hanger") == {"U1-L1", "U3-L3", "U5-L5"}
    assert called(layout, "post") == {"U2-L2", "U4-L4"}


def test_an_odd_warren_with_verticals_crosses_its_middle_panel() -> None:
    # By hand, five panels: L0-U1-L2 from either end, both diagonals between L2 and L3.
    layout = form(Form.WARREN_WITH_VERTICALS, 5)
    assert of_kind(layout, Kind.DIAGONAL) == {"U1-L2", "U2-L3", "U3-L2", "U4-L3"}
    assert redundancy(layout) == 1


@pytest.mark.parametrize("count", [4, 5, 9])
def test_a_double_warren_has_both_diagonals_in_all_panels_but_the_ends(count: int) -> None:
    # By hand: two webs over each other; n - 2 crossed panels, verticals from the hips alone.
    layout = form(Form.DOUBLE_INTERSECTION_WARREN, count)
    assert of_kind(layout, Kind.DIAGONAL) == {
        name for i in range(1, count - 1) for name in (f"U{i}-L{i + 1}", f"U{i + 1}-L{i}")}
    assert of_kind(layout, Kind.HIP_VERTICAL) == {"U1-L1", f"U{count - 1}-L{count - 1}"}
    assert of_kind(layout, Kind.POST) == set()
    assert redundancy(layout) == 1
