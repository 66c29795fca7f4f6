import pytest

from eyebar.errors import OutOfRange
from eyebar.vehicles import shipped_vehicles

VEHICLES = shipped_vehicles()


def bridge_formula_lb(length_ft: float, axles: int) -> float:
    """23 U.S.C. 127: the gross weight that so many axles over such a length may have [lb]."""
    return 500.0 * (length_ft * axles / (axles - 1) + 12 * axles + 36)


@pytest.mark.parametrize(
    ("name", "tons"),
    [
        # Gross weights as these vehicles are named and known by; from memory, but for H and HS by
        # their names (H15 is 15 tons; HS20 is 20 tons and 16 more on the trailer).
        ("H15", 15.0), ("H20", 20.0), ("HS15", 27.0), ("HS20", 36.0), ("design truck", 36.0),
        ("design tandem", 25.0), ("Type 3", 25.0), ("Type 3S2", 36.0), ("Type 3-3", 40.0),
        ("SU4", 27.0), ("SU5", 31.0), ("SU6", 34.75), ("SU7", 38.75), ("EV2", 28.75),
        ("EV3", 43.0),
    ],
)
def test_a_vehicle_weighs_what_it_is_known_by(name: str, tons: float) -> None:
    assert VEHICLES[name].weight_tons == tons


@pytest.mark.parametrize(
    ("name", "length_ft", "rounded_lb"),
    [
        # By hand: SU4 500 (18 x 4/3 + 48 + 36) = 54,000; SU5 61,750, to the next 500 lb 62,000;
        # SU6 69,600 to 69,500; SU7 500 (35 + 84 + 36) = 77,500.
        ("SU4", 18.0, 54_000), ("SU5", 22.0, 62_000), ("SU6", 26.0, 69_500), ("SU7", 30.0, 77_500),
    ],
)
def test_a_specialised_hauling_truck_is_just_what_the_bridge_formula_allows(
    name: str, length_ft: float, rounded_lb: int
) -> None:
    vehicle = VEHICLES[name]
    assert vehicle.behind_front_ft()[-1] == length_ft
    allowed = bridge_formula_lb(length_ft, len(vehicle.axles_kip))
    assert 1000 * vehicle.weight_kip == rounded_lb
    assert abs(allowed - rounded_lb) <= 250


def test_type_3_is_within_the_bridge_formula() -> None:
    # By hand: 500 (19 x 3/2 + 36 + 36) = 50,250 lb.
    assert bridge_formula_lb(19.0, 3) == 50_250
    assert 1000 * VEHICLES["Type 3"].weight_kip <= 50_250
    assert VEHICLES["Type 3"].behind_front_ft()[-1] == 19.0


@pytest.mark.parametrize(("smaller", "larger"), [("H15", "H20"), ("HS15", "HS20")])
def test_a_15_loading_is_three_quarters_of_the_20_loading(smaller: str, larger: str) -> None:
    # The trade's own rule: the number is the weight in tons of the truck, all else goes with it.
    one, other = VEHICLES[smaller], VEHICLES[larger]
    assert [4 * axle for axle in one.axles_kip] == [3 * axle for axle in other.axles_kip]
    assert one.spacings_ft == other.spacings_ft
    assert 4 * one.lane_kip_per_ft == pytest.approx(3 * other.lane_kip_per_ft)
    assert one.lane_point_kip is not None
    assert other.lane_point_kip is not None
    assert [4 * p for p in one.lane_point_kip] == [3 * p for p in other.lane_point_kip]


@pytest.mark.parametrize("number", [15, 20])
def test_an_hs_train_is_the_h_truck_and_its_rear_axle_once_more(number: int) -> None:
    # The trade's rule: 0.4 n, 1.6 n, 1.6 n kip.
    tractor, train = VEHICLES[f"H{number}"], VEHICLES[f"HS{number}"]
    assert train.axles_kip == (*tractor.axles_kip, tractor.axles_kip[-1])
    assert train.axles_kip == pytest.approx((0.4 * number, 1.6 * number, 1.6 * number))


def test_the_design_truck_is_hs20_with_its_lane_load_added_and_not_shaken() -> None:
    truck, old = VEHICLES["design truck"], VEHICLES["HS20"]
    assert (truck.axles_kip, truck.spacings_ft) == (old.axles_kip, old.spacings_ft)
    assert (truck.combine, old.combine) == ("sum", "greater")
    assert (truck.lane_impact, old.lane_impact) == (False, True)
    assert truck.lane_point_kip is None


def test_axles_are_placed_behind_the_front_one() -> None:
    # By hand: 14 ft, then 14 more at the least spacing or 22 more between its ends.
    vehicle = VEHICLES["HS20"]
    assert vehicle.behind_front_ft() == (0.0, 14.0, 28.0)
    assert vehicle.behind_front_ft((14.0, 22.0)) == (0.0, 14.0, 36.0)
    assert vehicle.greatest_spacings_ft == (14.0, 30.0)
    assert vehicle.varied == (1,)


@pytest.mark.parametrize("spacings", [(14.0, 13.9), (14.0, 30.1), (15.0, 14.0)])
def test_a_spacing_that_is_not_the_vehicles_is_refused(spacings: tuple[float, ...]) -> None:
    with pytest.raises(OutOfRange, match="axle spacing of HS20"):
        VEHICLES["HS20"].behind_front_ft(spacings)
