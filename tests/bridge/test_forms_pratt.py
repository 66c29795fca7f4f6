"""The Pratt family and its counterpart, the Howe: joints, bars and what each bar is for."""

from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from eyebar.bridge.forms import Layout
from eyebar.terms import EndPosts, FloorOn, Form, Kind
from tests.bridge.forms import called, form, of_kind


def test_a_six_panel_pratt_has_the_bars_that_everyone_draws() -> None:
    # By hand, from the figure of a Pratt through truss: one diagonal a panel, falling inwards.
    layout = form(Form.PRATT, 6)
    assert of_kind(layout, Kind.DIAGONAL) == {"U1-L2", "U2-L3", "U4-L3", "U5-L4"}
    assert of_kind(layout, Kind.END_POST) == {"U1-L0", "U5-L6"}
    assert of_kind(layout, Kind.HIP_VERTICAL) == {"U1-L1", "U5-L5"}
    assert of_kind(layout, Kind.POST) == {"U2-L2", "U3-L3", "U4-L4"}
    assert of_kind(layout, Kind.TOP_CHORD) == {"U1-U2", "U2-U3", "U3-U4", "U4-U5"}
    assert len(of_kind(layout, Kind.BOTTOM_CHORD)) == 6


def test_an_odd_pratt_crosses_its_middle_panel() -> None:
    # Burr 1902, sections 90-92: seven panels, main ties T2 and T3, in the middle T4 and its mirror.
    layout = form(Form.PRATT, 7)
    assert of_kind(layout, Kind.DIAGONAL) == {"U1-L2", "U2-L3", "U5-L4", "U6-L5"}
    assert of_kind(layout, Kind.COUNTER) == {"U3-L4", "U4-L3"}
    # Either word is right for them, and naming them among the counters does no harm.
    assert set(layout.bars["U3-L4"].kinds) == {Kind.COUNTER, Kind.DIAGONAL}
    named = form(Form.PRATT, 7, counters=("U3-L4", "U4-L3"))
    assert named.bars.keys() == layout.bars.keys()


def test_a_small_pratt_is_three_panels_with_the_middle_one_crossed() -> None:
    # Oklahoma DOT, Spans of Time: looks like a queen post, but has diagonals that pull.
    layout = form(Form.SMALL_PRATT, 3)
    assert of_kind(layout, Kind.COUNTER) == {"U1-L2", "U2-L1"}
    assert of_kind(layout, Kind.HIP_VERTICAL) == {"U1-L1", "U2-L2"}
    assert len(layout.bars) == 10


def test_the_end_post_of_a_half_hip_is_shorter_than_a_panel_and_no_vertical_hangs_there() -> None:
    # Indiana DNR's guide to bridge styles, after the drawing of the national record: the inclined
    # end posts do not run a full panel. By hand, four panels of 15 ft, hips 6 ft from the bearings.
    layout = form(Form.HALF_HIP_PRATT, 4, hip=72.0)
    assert layout.joints["U0"] == (72.0, 240.0)
    assert layout.joints["U4"] == (720.0 - 72.0, 240.0)
    assert of_kind(layout, Kind.END_POST) == {"U0-L0", "U4-L4"}
    assert of_kind(layout, Kind.HIP_VERTICAL) == set()
    assert called(layout, "hip diagonal") == {"U0-L1", "U4-L3"}
    assert of_kind(layout, Kind.DIAGONAL) == {"U0-L1", "U4-L3", "U1-L2", "U3-L2"}
    assert of_kind(layout, Kind.POST) == {"U1-L1", "U2-L2", "U3-L3"}
    assert of_kind(layout, Kind.TOP_CHORD) == {"U0-U1", "U1-U2", "U2-U3", "U3-U4"}


def test_a_ten_panel_double_intersection_truss_is_the_one_of_the_reference() -> None:
    # Own reference solution, ten panels: 39 bars, main diagonals U4-L6 and U6-L4 crossing on the
    # middle panel point.
    layout = form(Form.DOUBLE_INTERSECTION_PRATT, 10)
    assert len(layout.bars) == 39
    assert len(layout.joints) == 20
    assert of_kind(layout, Kind.DIAGONAL) == {
        "U1-L2", "U1-L3", "U2-L4", "U3-L5", "U4-L6",
        "U9-L8", "U9-L7", "U8-L6", "U7-L5", "U6-L4",
    }


@given(st.integers(6, 40))
def test_a_double_intersection_diagonal_passes_one_vertical(count: int) -> None:
    # Common practice: all but the short ones of the hips span two panels.
    layout = form(Form.DOUBLE_INTERSECTION_PRATT, count)
    spans = Counter(
        abs(int(bar.ends[0][1:]) - int(bar.ends[1][1:]))
        for bar in layout.bars.values() if bar.kinds[0] is Kind.DIAGONAL
    )
    assert spans[1] == 2
    assert set(spans) == {1, 2}


def test_with_an_odd_number_of_panels_no_main_diagonal_crosses_the_middle() -> None:
    # By hand, nine panels, middle at 4.5: U3-L5 reaches past it, its own middle (4) does not.
    layout = form(Form.DOUBLE_INTERSECTION_PRATT, 9)
    assert of_kind(layout, Kind.DIAGONAL) == {
        "U1-L2", "U1-L3", "U2-L4", "U3-L5", "U8-L7", "U8-L6", "U7-L5", "U6-L4",
    }
    crossing = form(Form.DOUBLE_INTERSECTION_PRATT, 9, counters=("U4-L6", "U5-L3"))
    assert of_kind(crossing, Kind.COUNTER) == {"U4-L6", "U5-L3"}


def test_a_howe_has_the_opposite_diagonals_and_rods_for_verticals() -> None:
    # Iowa DOT's page of bridge types: diagonals incline to the centre, verticals pull, diagonals
    # push. By hand, six panels.
    layout = form(Form.HOWE, 6)
    assert called(layout, "brace") == {"U2-L1", "U3-L2", "U4-L5", "U3-L4"}
    assert of_kind(layout, Kind.END_POST) == {"U1-L0", "U5-L6"}
    assert called(layout, "vertical rod") == {f"U{i}-L{i}" for i in range(1, 6)}
    assert of_kind(layout, Kind.DIAGONAL) == called(layout, "brace")


def test_an_odd_howe_crosses_its_middle_panel_and_its_counters_push() -> None:
    # Burr 1902, section 91: seven panels, main braces P2, P3, the middle's P4, counter c1.
    layout = form(Form.HOWE, 7, counters=("U2-L3", "U5-L4"))
    braces = {"U2-L1", "U3-L2", "U5-L6", "U4-L5", "U4-L3", "U3-L4"}
    assert called(layout, "brace") == braces
    assert called(layout, "counterbrace") == {"U2-L3", "U5-L4"}
    assert layout.misplaced == ()


@pytest.mark.parametrize("word", [Form.PARKER, Form.CAMELBACK])
def test_a_parker_is_a_pratt_whose_upper_chord_is_not_level(word: Form) -> None:
    # Oklahoma DOT: a Parker is a Pratt with a polygonal top chord, a Camelback one of five slopes.
    curved, plain = form(word, 8), form(Form.PRATT, 8)
    assert {n: b.kinds for n, b in curved.bars.items()} == {
        n: b.kinds for n, b in plain.bars.items()}
    assert curved.joints["U4"][1] > curved.joints["U1"][1]


def test_burrs_parker_of_240_ft_is_laid_out_from_its_depths() -> None:
    # Burr 1902, section 112: 8 panels of 30 ft, depths 27, 36, 40, 40, 40, 36, 27 ft; his first
    # length of upper chord is 376 in, his third diagonal 562 in, in whole inches.
    depths = {f"U{i}": 12.0 * d for i, d in enumerate((27, 36, 40, 40, 40, 36, 27), start=1)}
    layout = form(Form.PARKER, [360.0] * 8, depths=depths)

    def length(name: str) -> float:
        (ax, ay), (bx, by) = (layout.joints[joint] for joint in layout.bars[name].ends)
        return float(((ax - bx) ** 2 + (ay - by) ** 2) ** 0.5)

    assert round(length("U1-U2")) == 376
    assert round(length("U2-L3")) == 562


def test_upright_end_posts_put_a_diagonal_into_the_end_panels() -> None:
    # The bedstead of the trade: end posts vertical at the bridge seat. By hand, four panels.
    layout = form(Form.PRATT, 4, end_posts=EndPosts.VERTICAL)
    assert of_kind(layout, Kind.END_POST) == {"U0-L0", "U4-L4"}
    assert of_kind(layout, Kind.DIAGONAL) == {"U0-L1", "U1-L2", "U3-L2", "U4-L3"}
    assert of_kind(layout, Kind.HIP_VERTICAL) == set()


def test_a_pratt_that_hangs_from_its_upper_chord_is_a_howe_turned_over() -> None:
    # By hand, four panels: the end diagonals pull, the posts carry the floor down.
    layout = form(Form.PRATT, 4, end_posts=EndPosts.NONE, floor=FloorOn.UPPER)
    assert "L0" not in layout.joints
    assert layout.joints["U0"] == (0.0, 0.0)
    assert layout.joints["L2"] == (360.0, -240.0)
    assert called(layout, "end diagonal") == {"U0-L1", "U4-L3"}
    assert called(layout, "diagonal") == {"U1-L2", "U3-L2"}
    assert of_kind(layout, Kind.POST) == {"U1-L1", "U2-L2", "U3-L3"}
    assert of_kind(layout, Kind.BOTTOM_CHORD) == {"L1-L2", "L2-L3"}
    assert len(of_kind(layout, Kind.TOP_CHORD)) == 4


def test_counters_of_a_hanging_truss_are_named_where_they_stand() -> None:
    # By hand, six panels: U1-L2 falls inwards, so U2-L1 crosses it.
    layout = form(Form.PRATT, 6, end_posts=EndPosts.NONE, floor=FloorOn.UPPER,
                  counters=("U2-L1", "U3-L1"))
    assert of_kind(layout, Kind.COUNTER) == {"U2-L1"}
    assert layout.misplaced == ("U3-L1",)


@pytest.mark.parametrize(
    ("end_posts", "floor"),
    [
        (EndPosts.INCLINED, ["L0", "U1", "U2", "U3", "L4"]),
        (EndPosts.VERTICAL, ["U0", "U1", "U2", "U3", "U4"]),
        (EndPosts.NONE, ["U0", "U1", "U2", "U3", "U4"]),
    ],
)
def test_a_deck_lies_on_the_upper_chord_and_reaches_the_abutments(
    end_posts: EndPosts, floor: list[str]
) -> None:
    # By hand: where the upper chord ends at the hips the end stringers rest on the abutments,
    # whose loads go into the bearings' joints; four panels of 15 ft.
    layout = form(Form.PRATT, 4, end_posts=end_posts, floor=FloorOn.UPPER)
    assert layout.floor_joints == tuple(zip(floor, (0.0, 15.0, 30.0, 45.0, 60.0), strict=True))


def test_unequal_panels_put_joints_where_they_add_up_to() -> None:
    # By hand: 10 + 12 + 14 ft = 36 ft; in inches 120, 264, 432.
    layout = form(Form.PRATT, [120.0, 144.0, 168.0], depths={"U1": 200.0, "U2": 220.0})
    assert layout.joints["L3"] == (432.0, 0.0)
    assert layout.joints["U2"] == (264.0, 220.0)
    assert layout.floor_joints == (("L0", 0.0), ("L1", 10.0), ("L2", 22.0), ("L3", 36.0))


@pytest.mark.parametrize(
    ("word", "count", "counter"),
    [
        (Form.PRATT, 6, "U2-L3"),  # is a main diagonal
        (Form.PRATT, 6, "U4-L2"),  # crosses two panels
        (Form.PRATT, 6, "U1-L0"),  # is an end post
        (Form.PRATT, 6, "U3-L7"),  # ends nowhere
        (Form.PRATT, 6, "U2-U3"),  # is a chord
        (Form.HOWE, 6, "U2-L1"),  # is a main brace
        (Form.HALF_HIP_PRATT, 4, "U1-L0"),  # ends on the bearing
        (Form.DOUBLE_INTERSECTION_PRATT, 10, "U5-L2"),  # crosses three panels
        (Form.DOUBLE_INTERSECTION_PRATT, 10, "U2-L0"),  # ends on the bearing
    ],
)
def test_a_counter_that_is_none_is_told(word: Form, count: int, counter: str) -> None:
    assert form(word, count, counters=(counter,)).misplaced == (counter,)


def test_every_counter_of_a_pratt_panel_may_be_recorded() -> None:
    # By hand, six panels: the four inner panels each have one line across their main diagonal.
    counters = ("U2-L1", "U3-L2", "U3-L4", "U4-L5")
    layout: Layout = form(Form.PRATT, 6, counters=counters)
    assert of_kind(layout, Kind.COUNTER) == set(counters)
    assert layout.misplaced == ()
