"""Baltimore and Pennsylvania trusses: halved panels, and joints in the middle of diagonals.

NCHRP 25-25(15), A Context for Common Historic Bridge Types (2005), 3.1.9: a Baltimore truss is a
parallel-chord Pratt with subdivided panels, each diagonal braced at its middle by sub-diagonals and
vertical sub-struts; the Pennsylvania (Pettit) truss has a polygonal upper chord besides.
"""

import pytest

from eyebar.terms import EndPosts, FloorOn, Form, Kind, SubMembers
from tests.bridge.forms import called, forces, form, of_kind, redundancy


def test_eight_half_panels_are_four_long_ones() -> None:
    # By hand: a Pratt of four panels from even point to even point, each diagonal in two halves.
    layout = form(Form.BALTIMORE, 8)
    assert set(layout.joints) == {
        *(f"L{i}" for i in range(9)), "U2", "U4", "U6", "M1", "M3", "M5", "M7"}
    assert of_kind(layout, Kind.END_POST) == {"U2-M1", "M1-L0", "U6-M7", "M7-L8"}
    assert called(layout, "diagonal") == {"U2-M3", "M3-L4", "U6-M5", "M5-L4"}
    assert called(layout, "sub-vertical") == {"M1-L1", "M3-L3", "M5-L5", "M7-L7"}
    assert called(layout, "sub-strut") == {"M1-L2", "M3-L2", "M7-L6", "M5-L6"}
    assert of_kind(layout, Kind.TOP_CHORD) == {"U2-U4", "U4-U6"}
    assert called(layout, "hip vertical") == {"U2-L2", "U6-L6"}
    assert of_kind(layout, Kind.POST) == {"U4-L4"}


def test_sub_ties_hold_the_diagonals_from_above_but_the_end_posts_from_below() -> None:
    # By hand: the tie goes up to the far upper joint of the long panel; an end panel has none.
    layout = form(Form.BALTIMORE, 8, sub_members=SubMembers.TIES)
    assert called(layout, "sub-tie") == {"U4-M3", "U4-M5"}
    assert called(layout, "sub-strut") == {"M1-L2", "M7-L6"}


def test_an_odd_number_of_long_panels_crosses_the_middle_one() -> None:
    # By hand, six half panels: the long panel from L2 to L4 has all four halves, meeting in M3.
    layout = form(Form.BALTIMORE, 6)
    assert called(layout, "middle half") == {"U2-M3", "U4-M3", "M3-L2", "M3-L4"}
    assert redundancy(layout) == 1


def test_a_counter_is_the_half_that_a_panel_lacks() -> None:
    # By hand: L2-M3-U4 crosses the diagonal; its lower half is the sub-strut already.
    layout = form(Form.BALTIMORE, 8, counters=("U4-M3", "U4-M5", "M3-L1"))
    assert called(layout, "counter") == {"U4-M3", "U4-M5"}
    assert layout.misplaced == ("M3-L1",)
    tied = form(Form.BALTIMORE, 8, sub_members=SubMembers.TIES, counters=("M3-L2",))
    assert called(tied, "counter") == {"M3-L2"}


def test_the_middle_joint_lies_on_the_line_of_its_diagonal() -> None:
    # By hand, half panels of 10, 20, 10 and 20 ft twice over, 20 ft deep: M1 is a third of the way
    # up the end post, M3 two thirds of the way down from U2, which is a third up from L4.
    layout = form(Form.BALTIMORE, [120.0, 240.0] * 4)
    assert layout.joints["M1"] == pytest.approx((120.0, 80.0))
    assert layout.joints["M3"] == pytest.approx((480.0, 160.0))


def test_a_pennsylvania_measures_its_depth_at_the_long_panels() -> None:
    # By hand: depths of 20, 26 and 20 ft; M3 half-way down from U2, whatever U4 is.
    depths = {"U2": 240.0, "U4": 312.0, "U6": 240.0}
    layout = form(Form.PENNSYLVANIA, 8, depths=depths)
    assert layout.joints["U4"] == (720.0, 312.0)
    assert layout.joints["M3"] == (540.0, 120.0)
    assert layout.bars.keys() == form(Form.BALTIMORE, 8).bars.keys()


def test_a_deck_of_halved_panels_stands_on_sub_posts() -> None:
    # By hand: the floor has a joint over each half panel, the lower chord one under each long one.
    layout = form(Form.BALTIMORE, 8, end_posts=EndPosts.NONE, floor=FloorOn.UPPER)
    assert [joint for joint, _ in layout.floor_joints] == [f"U{i}" for i in range(9)]
    assert called(layout, "sub-post") == {"U1-M1", "U3-M3", "U5-M5", "U7-M7"}
    assert of_kind(layout, Kind.BOTTOM_CHORD) == {"L2-L4", "L4-L6"}
    assert called(layout, "end diagonal") == {"U0-M1", "M1-L2", "U8-M7", "M7-L6"}
    # What hangs at its ends holds the end diagonals' middles from above.
    assert called(layout, "sub-tie") >= {"U2-M1", "U6-M7"}


def test_a_sub_vertical_carries_its_floor_joint_and_nothing_else() -> None:
    # By joints at L3: the chord is level there, so the sub-vertical takes the whole 10 kip, and at
    # L5, where nothing lies, none.
    layout = form(Form.BALTIMORE, 8)
    found = forces(layout, {"L3": 10.0})
    assert found["M3-L3"] == pytest.approx(10.0)
    assert found["M5-L5"] == pytest.approx(0.0, abs=1e-12)


def test_a_sub_strut_pushes_with_half_of_its_joints_load() -> None:
    # By joints at M3, half-way along the diagonal: the strut and the upper half share the 10 kip;
    # 15 ft by 10 ft, strut 18.028 ft long, its upright part 5 kip: 5 x 18.028 / 10 = 9.014 kip.
    layout = form(Form.BALTIMORE, 8)
    assert forces(layout, {"L3": 10.0})["M3-L2"] == pytest.approx(-9.01388, rel=1e-5)


def test_a_sub_tie_pulls_with_half_of_its_joints_load() -> None:
    # The same from above: the tie takes 5 kip upright.
    layout = form(Form.BALTIMORE, 8, sub_members=SubMembers.TIES)
    assert forces(layout, {"L3": 10.0})["U4-M3"] == pytest.approx(9.01388, rel=1e-5)
