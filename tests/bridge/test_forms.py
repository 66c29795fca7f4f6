"""The forms of truss: joints, bars and what each bar is for."""

from collections import Counter
from collections.abc import Callable, Iterable, Sequence

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from eyebar.bridge.forms import Layout, double_intersection_pratt, pratt
from eyebar.errors import OutOfRange
from eyebar.terms import Kind

Form = Callable[..., Layout]
BOTH = [(pratt, 3), (double_intersection_pratt, 6)]


def laid(form: Form, count: int, counters: Iterable[str] = ()) -> Layout:
    return form([180.0] * count, dict.fromkeys((f"U{i}" for i in range(1, count)), 240.0), counters)


def of_kind(layout: Layout, kind: Kind) -> set[str]:
    return {bar.name for bar in layout.bars.values() if bar.kinds[0] is kind}


def test_a_six_panel_pratt_has_the_bars_that_everyone_draws() -> None:
    # By hand, from the figure of a Pratt through truss: one diagonal a panel, falling inwards.
    layout = laid(pratt, 6)
    assert of_kind(layout, Kind.DIAGONAL) == {"U1-L2", "U2-L3", "U4-L3", "U5-L4"}
    assert of_kind(layout, Kind.END_POST) == {"U1-L0", "U5-L6"}
    assert of_kind(layout, Kind.HIP_VERTICAL) == {"U1-L1", "U5-L5"}
    assert of_kind(layout, Kind.POST) == {"U2-L2", "U3-L3", "U4-L4"}
    assert of_kind(layout, Kind.TOP_CHORD) == {"U1-U2", "U2-U3", "U3-U4", "U4-U5"}
    assert len(of_kind(layout, Kind.BOTTOM_CHORD)) == 6


def test_an_odd_pratt_crosses_its_middle_panel() -> None:
    # Burr 1902, sections 90-92: seven panels, main ties T2 and T3, in the middle T4 and its mirror.
    layout = laid(pratt, 7)
    assert of_kind(layout, Kind.DIAGONAL) == {"U1-L2", "U2-L3", "U5-L4", "U6-L5"}
    assert of_kind(layout, Kind.COUNTER) == {"U3-L4", "U4-L3"}
    # Either word is right for them, and naming them among the counters does no harm.
    assert set(layout.bars["U3-L4"].kinds) == {Kind.COUNTER, Kind.DIAGONAL}
    assert laid(pratt, 7, ["U3-L4", "U4-L3"]).bars.keys() == layout.bars.keys()


def test_a_ten_panel_double_intersection_truss_is_the_one_of_the_reference() -> None:
    # Own reference solution, ten panels: 39 bars, main diagonals U4-L6 and U6-L4 crossing on the
    # middle panel point.
    layout = laid(double_intersection_pratt, 10)
    assert len(layout.bars) == 39
    assert len(layout.joints) == 20
    assert of_kind(layout, Kind.DIAGONAL) == {
        "U1-L2", "U1-L3", "U2-L4", "U3-L5", "U4-L6",
        "U9-L8", "U9-L7", "U8-L6", "U7-L5", "U6-L4",
    }


@given(st.integers(6, 40))
def test_a_double_intersection_diagonal_passes_one_vertical(count: int) -> None:
    # Common practice: all but the short ones of the hips span two panels.
    layout = laid(double_intersection_pratt, count)
    spans = Counter(
        abs(int(bar.ends[0][1:]) - int(bar.ends[1][1:]))
        for bar in layout.bars.values() if bar.kinds[0] is Kind.DIAGONAL
    )
    assert spans[1] == 2
    assert set(spans) == {1, 2}


def test_with_an_odd_number_of_panels_no_main_diagonal_crosses_the_middle() -> None:
    # By hand, nine panels, middle at 4.5: U3-L5 reaches past it, its own middle (4) does not.
    layout = laid(double_intersection_pratt, 9)
    assert of_kind(layout, Kind.DIAGONAL) == {
        "U1-L2", "U1-L3", "U2-L4", "U3-L5", "U8-L7", "U8-L6", "U7-L5", "U6-L4",
    }
    crossing = laid(double_intersection_pratt, 9, ["U4-L6", "U5-L3"])
    assert of_kind(crossing, Kind.COUNTER) == {"U4-L6", "U5-L3"}


@pytest.mark.parametrize(("form", "least"), BOTH)
@given(data=st.data())
def test_a_form_is_its_own_mirror_image(form: Form, least: int, data: st.DataObject) -> None:
    count = data.draw(st.integers(least, 30))
    layout = laid(form, count)

    def mirrored(joint: str) -> str:
        return f"{joint[0]}{count - int(joint[1:])}"

    ends = {frozenset(bar.ends) for bar in layout.bars.values()}
    assert {frozenset(map(mirrored, pair)) for pair in ends} == ends


@pytest.mark.parametrize(("form", "least"), BOTH)
@given(data=st.data())
def test_a_form_stands(form: Form, least: int, data: st.DataObject) -> None:
    # Law: pinned at one end and on rollers at the other, with all bars working both ways, every
    # joint is held: the equilibrium matrix has full rank.
    count = data.draw(st.integers(least, 16))
    panels: Sequence[float] = data.draw(
        st.lists(st.floats(120, 300), min_size=count, max_size=count)
    )
    depths = {f"U{i}": data.draw(st.floats(150, 400)) for i in range(1, count)}
    layout = form(panels, depths)
    free = [
        (joint, axis) for joint in layout.joints for axis in (0, 1)
        if (joint, axis) not in {("L0", 0), ("L0", 1), (f"L{count}", 1)}
    ]
    matrix = np.zeros((len(free), len(layout.bars)))
    for column, bar in enumerate(layout.bars.values()):
        first, second = (np.array(layout.joints[joint]) for joint in bar.ends)
        along = (second - first) / np.linalg.norm(second - first)
        for row, (joint, axis) in enumerate(free):
            if joint in bar.ends:
                matrix[row, column] = along[axis] * (1 if joint == bar.ends[0] else -1)
    assert np.linalg.matrix_rank(matrix) == len(free)


def test_unequal_panels_put_joints_where_they_add_up_to() -> None:
    # By hand: 10 + 12 + 14 ft = 36 ft; in inches 120, 264, 432.
    layout = pratt([120.0, 144.0, 168.0], {"U1": 200.0, "U2": 220.0})
    assert layout.joints["L3"] == (432.0, 0.0)
    assert layout.joints["U2"] == (264.0, 220.0)
    assert layout.floor_joints == (("L0", 0.0), ("L1", 10.0), ("L2", 22.0), ("L3", 36.0))


@pytest.mark.parametrize(
    ("form", "count", "counter"),
    [
        (pratt, 6, "U2-L3"),  # is a main diagonal
        (pratt, 6, "U4-L2"),  # crosses two panels
        (pratt, 6, "U1-L0"),  # is an end post
        (pratt, 6, "U3-L7"),  # ends nowhere
        (pratt, 6, "U2-U3"),  # is a chord
        (double_intersection_pratt, 10, "U5-L2"),  # crosses three panels
        (double_intersection_pratt, 10, "U2-L0"),  # ends on the bearing
    ],
)
def test_a_counter_that_is_none_is_told(form: Form, count: int, counter: str) -> None:
    assert laid(form, count, [counter]).misplaced == (counter,)


@pytest.mark.parametrize(("form", "least"), BOTH)
def test_too_few_panels_are_refused(form: Form, least: int) -> None:
    with pytest.raises(OutOfRange, match=f"{least} or more"):
        laid(form, least - 1)
