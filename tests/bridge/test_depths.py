"""Depths of a curved chord: joint by joint, or by the shape of its curve; mirrored halves too."""

import pytest

from eyebar.bridge.depths import depths_of
from eyebar.record.wished import trusses_wished
from eyebar.terms import Form


def depths(form: str, panels: str, **how: object) -> dict[str, float]:
    """Joint -> depth [ft] of trusses as a record would have them."""
    entry = trusses_wished(
        {"names": ("near", "far"), "spacing": "16 ft", "form": form, "panels": panels,
         "bearings": {"zero": "fixed", "other": "free"}, **how}, asked="a test",
    )
    found, faults = depths_of(entry, [panel.number for panel in entry.panels or ()])
    assert not faults, faults
    return {joint: depth / 12.0 for joint, depth in found.items()}


def test_one_depth_serves_a_level_chord() -> None:
    assert depths("Pratt", "4 at 15 ft", depth="18 ft") == {"U1": 18.0, "U2": 18.0, "U3": 18.0}


def test_a_parabola_rises_from_hip_to_crown() -> None:
    # By hand, six panels of 15 ft: hip to hip 60 ft, rise 8 ft; at a quarter three quarters of it.
    found = depths(
        "Parker", "6 at 15 ft", depth="24 ft", curve={"shape": "parabola", "rise": "8 ft"})
    assert found == pytest.approx({"U1": 16.0, "U2": 22.0, "U3": 24.0, "U4": 22.0, "U5": 16.0})


def test_with_an_odd_number_of_panels_no_joint_stands_at_the_crown() -> None:
    # By hand, five panels: hip to hip 45 ft; at a third 8/9 of the rise of 9 ft.
    found = depths(
        "Parker", "5 at 15 ft", depth="25 ft", curve={"shape": "parabola", "rise": "9 ft"})
    assert found == pytest.approx({"U1": 16.0, "U2": 24.0, "U3": 24.0, "U4": 16.0})


def test_a_circle_is_taken_through_hips_and_crown() -> None:
    # By hand, six panels of 20 ft: half of hip to hip 40 ft, rise 20 ft, radius 50 ft; 20 ft from
    # the middle the circle is sqrt(50^2 - 20^2) - 30 = 15.826 ft over the hips.
    found = depths(
        "Parker", "6 at 20 ft", depth="40 ft", curve={"shape": "circle", "rise": "20 ft"})
    assert found["U2"] == pytest.approx(20.0 + 15.8258, abs=1e-4)
    assert found["U3"] == pytest.approx(40.0)


def test_five_slopes_are_straight_to_the_shoulder_and_level_from_there() -> None:
    # By hand, eight panels of 15 ft, hips U1, shoulders U3 and U5: half-way up at U2.
    found = depths("Camelback", "8 at 15 ft", depth="26 ft",
                   curve={"shape": "five slopes", "rise": "6 ft", "shoulder": "U3"})
    assert found == pytest.approx(
        {"U1": 20.0, "U2": 23.0, "U3": 26.0, "U4": 26.0, "U5": 26.0, "U6": 23.0, "U7": 20.0})


def test_a_bowstring_rises_from_its_bearings() -> None:
    # By hand, four panels: at a quarter of the span three quarters of the depth.
    found = depths("bowstring", "4 at 15 ft", depth="16 ft", curve={"shape": "parabola"})
    assert found == pytest.approx({"U1": 12.0, "U2": 16.0, "U3": 12.0})


def test_a_lens_shares_its_depth_between_rise_and_sag() -> None:
    # By hand: 20 ft at midspan, 8 of them below; at a quarter three quarters of each.
    found = depths(
        "lenticular", "4 at 15 ft", depth="20 ft", curve={"shape": "parabola", "sag": "8 ft"})
    assert found == pytest.approx(
        {"U1": 9.0, "U2": 12.0, "U3": 9.0, "L1": 6.0, "L2": 8.0, "L3": 6.0})
    halved = depths("lenticular", "4 at 15 ft", depth="20 ft", curve={"shape": "parabola"})
    assert halved["U2"] == halved["L2"] == pytest.approx(10.0)


def test_a_pennsylvania_curves_from_the_hip_of_its_long_panels() -> None:
    # By hand, eight half panels: hips U2 and U6, crown U4.
    found = depths("Pennsylvania", "8 at 12 ft", depth="30 ft",
                   curve={"shape": "parabola", "rise": "6 ft"})
    assert found == pytest.approx({"U2": 24.0, "U4": 30.0, "U6": 24.0})


def test_what_hangs_has_its_depths_below() -> None:
    found = depths("Parker", "6 at 15 ft", depth="24 ft", floor="on the upper chord",
                   curve={"shape": "parabola", "rise": "8 ft"}, **{"end posts": "none"})
    assert found == pytest.approx({"L1": 16.0, "L2": 22.0, "L3": 24.0, "L4": 22.0, "L5": 16.0})


def test_half_of_a_mirrored_chord_is_enough() -> None:
    # By hand, three panels given of six: U4 is the image of U2, U5 of U1.
    entry = trusses_wished(
        {"names": ("near", "far"), "spacing": "16 ft", "form": Form.PARKER, "panels": "3 at 15 ft",
         "mirrored": "true", "depths": {"U1": "16 ft", "U2": "20 ft", "U3": "22 ft"},
         "bearings": {"zero": "fixed", "other": "free"}}, asked="a test",
    )
    found, faults = depths_of(entry, [180.0] * 6)
    assert faults == ()
    assert found["U4"] == 240.0
    assert found["U5"] == 192.0


@pytest.mark.parametrize(
    ("form", "how", "said"),
    [
        ("Parker", {"depth": "20 ft"}, "is one depth, and a Parker truss has many"),
        ("Parker", {"depths": {"U1": "16 ft", "U2": "18 ft"}}, "gives no depth at U3"),
        ("Parker", {"depths": {"U1": "16 ft", "U2": "18 ft", "U3": "16 ft", "L1": "2 ft"}},
         "has no depth to be given"),
        ("Parker", {"depth": "20 ft", "curve": {"shape": "five slopes", "rise": "4 ft"}},
         "needs the joint from which the chord is level"),
        ("lenticular", {"depth": "20 ft", "curve": {"shape": "circle", "sag": "20 ft"}},
         "leaves nothing of the depth"),
        ("bowstring", {"depth": "20 ft", "curve": {"shape": "circle", "sag": "4 ft"}},
         "belongs to a lenticular truss alone"),
    ],
)
def test_what_is_wrong_with_depths_is_told(form: str, how: dict[str, object], said: str) -> None:
    entry = trusses_wished(
        {"names": ("near", "far"), "spacing": "16 ft", "form": form, "panels": "4 at 15 ft",
         "bearings": {"zero": "fixed", "other": "free"}, **how}, asked="a test",
    )
    _, faults = depths_of(entry, [180.0] * 4)
    assert any(said in rule for _, rule, _, _ in faults)
    assert all(cure for _, _, _, cure in faults)
