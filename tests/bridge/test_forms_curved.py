"""Trusses whose chords meet over the bearings, and the curves of chords."""

import pytest

from eyebar.bridge.curves import circle, circle_radius, parabola
from eyebar.errors import OutOfRange
from eyebar.terms import FloorOn, Form, Kind
from tests.bridge.forms import called, forces, form, of_kind


def test_a_bowstrings_upper_chord_comes_down_to_its_lower_one() -> None:
    # By hand, six panels: the arch is L0-U1-...-U5-L6, its first lengths upper chord as well.
    layout = form(Form.BOWSTRING, 6)
    assert of_kind(layout, Kind.TOP_CHORD) == {
        "U1-L0", "U1-U2", "U2-U3", "U3-U4", "U4-U5", "U5-L6"}
    assert Kind.END_POST in layout.bars["U1-L0"].kinds
    assert called(layout, "vertical") == {f"U{i}-L{i}" for i in range(1, 6)}
    assert of_kind(layout, Kind.DIAGONAL) == {"U1-L2", "U2-L3", "U4-L3", "U5-L4"}


def test_a_lenticular_bulges_above_and_below_the_line_of_its_bearings() -> None:
    # By hand, four panels: up to U, down to L, one joint over each bearing.
    depths = {"U1": 60.0, "U2": 80.0, "U3": 60.0, "L1": 45.0, "L2": 60.0, "L3": 45.0}
    layout = form(Form.LENTICULAR, 4, depths=depths)
    assert layout.joints["U2"] == (360.0, 80.0)
    assert layout.joints["L2"] == (360.0, -60.0)
    assert layout.joints["L0"] == (0.0, 0.0)
    assert of_kind(layout, Kind.BOTTOM_CHORD) == {"L0-L1", "L1-L2", "L2-L3", "L3-L4"}


def test_a_lens_carries_its_floor_below_or_above() -> None:
    # By hand: hangers or posts of different lengths make a level floor on a curved chord.
    below = form(Form.LENTICULAR, 4)
    above = form(Form.LENTICULAR, 4, floor=FloorOn.UPPER)
    assert [joint for joint, _ in below.floor_joints] == ["L0", "L1", "L2", "L3", "L4"]
    assert [joint for joint, _ in above.floor_joints] == ["L0", "U1", "U2", "U3", "L4"]


def test_under_even_load_the_diagonals_of_a_parabola_rest() -> None:
    # A chord on the parabola carries equal panel loads alone: the string polygon of equal weights
    # has its corners on a parabola. By hand, six panels, 1 kip at each lower joint: the thrust is
    # the moment at midspan over the rise, 4.5 panels x 15 ft / 20 ft = 3.375 kip.
    layout = form(Form.BOWSTRING, 6)
    found = forces(layout, {f"L{i}": 1.0 for i in range(1, 6)})
    assert [found[name] for name in of_kind(layout, Kind.DIAGONAL)] == pytest.approx([0.0] * 4)
    assert found["L2-L3"] == pytest.approx(3.375)
    assert found["U3-L3"] == pytest.approx(1.0)


def test_the_chords_of_a_lens_share_the_moment_by_both_depths() -> None:
    # By moments about a joint at midspan: 4.5 panels x 15 ft over the whole depth of 40 ft.
    layout = form(Form.LENTICULAR, 6)
    found = forces(layout, {f"L{i}": 1.0 for i in range(1, 6)})
    (ax, ay), (bx, by) = layout.joints["L2"], layout.joints["L3"]
    level = found["L2-L3"] * (bx - ax) / ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5
    assert level == pytest.approx(4.5 * 15.0 / 40.0)


def test_a_parabola_at_a_quarter_has_three_quarters_of_its_rise() -> None:
    # By hand: 4 r (1/4)(3/4) = 3/4 r.
    assert parabola(300.0, 1200.0, 200.0) == pytest.approx(150.0)
    assert parabola(600.0, 1200.0, 200.0) == pytest.approx(200.0)


def test_a_circle_of_three_four_five() -> None:
    # By hand: half span 4, rise 2, radius 5 (5 - 3 = 2 below the crown); at 1 from the end, 3 from
    # the middle, the height over the centre is 4, so 4 - 3 = 1 over the line between the ends.
    assert circle_radius(8.0, 2.0) == pytest.approx(5.0)
    assert circle(1.0, 8.0, 2.0, radius=5.0) == pytest.approx(1.0)
    assert circle(0.0, 8.0, 2.0, radius=5.0) == pytest.approx(0.0)


def test_beyond_the_circle_there_is_no_height() -> None:
    with pytest.raises(OutOfRange, match="radius"):
        circle(20.0, 8.0, 2.0, radius=5.0)
