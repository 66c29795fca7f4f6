"""Dead load on each truss besides its own bars."""

import pytest

from eyebar.bridge.parts import Bridge, Weight
from tests.bridge.plain import bridge, with_readings


def item(found: Bridge, name: str, truss: str = "left") -> Weight:
    return next(weight for weight in found.weights[truss] if weight.name == name)


def test_the_floor_by_hand() -> None:
    found = bridge()
    # By hand, one truss carries half: deck 3/12 ft x 16 ft x 48 lb/ft3 / 2 = 96 lb/ft.
    assert item(found, "deck").kip_per_ft == pytest.approx(0.096)
    assert item(found, "deck").working == "3 in x 16 ft x 48 lb/ft3 x 0.5 = 0.096 kip/ft"
    # Gravel 2/12 x 16 x 120 / 2 = 160 lb/ft, which may be taken off.
    assert item(found, "surfacing").kip_per_ft == pytest.approx(0.160)
    assert item(found, "surfacing").wearing
    # Stringers 6 x (4/12 x 1) ft2 x 48 lb/ft3 / 2 = 48 lb/ft.
    assert item(found, "stringers").kip_per_ft == pytest.approx(0.048)
    # The railing of one's own side; a floorbeam of 1,200 lb at L1 ... L5, half of it.
    assert item(found, "railing").kip_per_ft == pytest.approx(0.030)
    assert item(found, "floorbeams").kip_at_joints == {f"L{i}": 0.6 for i in range(1, 6)}
    wearing = [weight.name for weight in found.weights["left"] if weight.wearing]
    assert wearing == ["surfacing"]


def test_a_road_nearer_to_one_truss_weighs_more_on_it() -> None:
    found = bridge(("clear width: 16 ft", "clear width: 14 ft"),
                   ("curb to right truss: 1 ft", "curb to right truss: 3 ft"))
    # By hand: middle of the road 1 + 7 = 8 ft from the left truss, of 18: 10/18 of it there.
    left, right = (item(found, "deck", truss).kip_per_ft for truss in ("left", "right"))
    assert left / right == pytest.approx(10 / 8)
    assert left + right == pytest.approx(3 / 12 * 14 * 0.048)


def test_a_curb_that_is_not_given_is_where_the_other_leaves_it() -> None:
    found = bridge(("clear width: 16 ft", "clear width: 14 ft"),
                   ("  curb to right truss: 1 ft\n", ""))
    # By hand: 18 - 14 - 1 = 3 ft.
    assert found.roadway.curb_ft == {"left": 1.0, "right": 3.0}


@pytest.mark.parametrize(
    ("written", "kip_per_ft"),
    [
        # By hand, six stringers, half to each truss: 20 lb/ft each is 60 lb/ft; a piece of 300 lb
        # in each of 6 panels is 6 x 300 x 6 / 90 ft / 2 = 60 lb/ft.
        ("stringers: {number: 6, weight: 20 lb/ft, material: steel}", 0.060),
        ("stringers: {number: 6, weight: 300 lb, material: timber}", 0.060),
    ],
)
def test_stringers_weighed_in_other_ways(written: str, kip_per_ft: float) -> None:
    found = bridge((
        "stringers: {number: 6, size: 4 in x 12 in, weight: 48 lb/ft3, material: timber}", written
    ))
    assert item(found, "stringers").kip_per_ft == pytest.approx(kip_per_ft)


def test_a_deck_weighed_by_area() -> None:
    found = bridge(("deck: {kind: plank, thickness: 3 in, weight: 48 lb/ft3}",
                    "deck: {kind: steel grating, thickness: 3 in, weight: 15 lb/ft2}"))
    # By hand: 16 x 15 / 2 = 120 lb/ft.
    assert item(found, "deck").kip_per_ft == pytest.approx(0.120)


def test_floorbeams_weighed_along_their_length() -> None:
    found = bridge(("floorbeams: {weight: 1200 lb}", "floorbeams: {weight: 60 lb/ft}"))
    # By hand: 60 x 18 ft between the trusses / 2 = 540 lb.
    assert item(found, "floorbeams").kip_at_joints["L1"] == pytest.approx(0.540)


def test_what_hangs_on_one_truss_is_not_shared() -> None:
    found = bridge((
        "  surface: smooth\n",
        "  bracing: {weight: 50 lb/ft}\n"
        "  utilities: {water: {weight: 12 lb/ft, truss: right}, cable: {weight: 4 lb/ft}}\n"
        "  others: {sidewalk: {weight: 80 lb/ft, truss: left}}\n  surface: smooth\n",
    ))
    assert item(found, "water", "right").kip_per_ft == pytest.approx(0.012)
    assert "water" not in {weight.name for weight in found.weights["left"]}
    assert item(found, "cable").kip_per_ft == pytest.approx(0.002)
    assert item(found, "cable").wearing
    assert item(found, "sidewalk").kip_per_ft == pytest.approx(0.080)
    assert not item(found, "sidewalk").wearing
    assert item(found, "bracing").kip_per_ft == pytest.approx(0.025)


def test_the_greatest_of_the_latest_readings_of_the_surfacing_weighs() -> None:
    found = bridge(with_readings(
        "part: floor/deck, place: mid, what: surfacing thickness, value: 3 in",
        "part: floor/deck, place: end L0, what: surfacing thickness, value: 1 in",
    ))
    # By hand: 3/12 x 16 x 120 / 2 = 240 lb/ft.
    assert item(found, "surfacing").kip_per_ft == pytest.approx(0.240)


def test_planks_that_wore_thin_at_one_spot_weigh_as_built() -> None:
    found = bridge(with_readings("part: floor/deck, what: deck thickness, value: 2 in"))
    assert item(found, "deck").kip_per_ft == pytest.approx(0.096)


def test_no_surfacing_no_weight() -> None:
    found = bridge(("kind: gravel, thickness: 2 in", "kind: none, thickness: 2 in"))
    assert "surfacing" not in {weight.name for weight in found.weights["left"]}


def test_stringers_of_unknown_size_leave_the_dead_load_unknown() -> None:
    found = bridge(("size: 4 in x 12 in, ", "size: 4 in x not measured, "))
    assert found.unknown_loads == ("size of stringers not measured",)


def test_floorbeams_weighed_by_volume_alone_leave_the_dead_load_unknown() -> None:
    found = bridge(("floorbeams: {weight: 1200 lb}", "floorbeams: {weight: 50 lb/ft3}"))
    assert found.unknown_loads == (
        "size of floorbeams not recorded, only their weight by volume",
    )
