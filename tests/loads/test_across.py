from dataclasses import replace

import numpy as np
import pytest

from eyebar.errors import OutOfRange
from eyebar.loads.across import (
    Shares,
    lane_cases,
    lane_load_shares,
    lanes,
    lanes_by_width,
    lever_share,
    multiple_presence,
    shares,
    strip_share,
    worst_case,
)
from eyebar.office import office_values, shipped_values
from eyebar.terms import Method
from eyebar.vehicles import shipped_vehicles
from tests.loads.made import road, wide

VALUES = shipped_values()
TRUCK = shipped_vehicles()["Type 3"]


def test_a_truck_at_the_curb_gives_the_near_truss_two_thirds() -> None:
    # By hand, trusses 18 ft apart, curb 1 ft in: wheels at 3 and 9 ft, (15 + 9) / 36.
    assert shares(road(16.0), "near", TRUCK, VALUES).one_lane == pytest.approx(24 / 36)


def test_a_truck_in_the_middle_gives_each_truss_half() -> None:
    of = shares(road(16.0), "near", TRUCK, VALUES)
    assert of.middle == pytest.approx(0.5)
    assert of.two_lanes is None


@pytest.mark.parametrize(
    ("clear_ft", "share"),
    [
        # By hand, curbs 1 ft in. 18 ft: centres of the trucks at 6 and 14 ft of 20: 14/20 + 6/20.
        (18.0, 20 / 20),
        # 20 ft: halves of 10 ft; centres at 6 and 11 + 1 + 3 = 15 ft of 22.
        (20.0, 16 / 22 + 7 / 22),
        # 24 ft: centres at 6 and 17 ft of 26.
        (24.0, 20 / 26 + 9 / 26),
        # 30 ft: two lanes of 12 ft beside the near curb; centres at 6 and 17 ft of 32.
        (30.0, 26 / 32 + 15 / 32),
    ],
)
def test_two_trucks_each_stand_in_their_own_lane(clear_ft: float, share: float) -> None:
    assert shares(road(clear_ft), "near", TRUCK, VALUES).two_lanes == pytest.approx(share)


def test_three_lanes_of_twelve_feet_carry_three_trucks() -> None:
    # By hand: centres at 6, 17 and 29 ft of 38.
    of = shares(road(36.0), "near", TRUCK, VALUES)
    assert of.by_lanes[2] == pytest.approx(32 / 38 + 21 / 38 + 9 / 38)


def test_each_truss_has_its_own_curb() -> None:
    # By hand, trusses 22 ft apart: centre of the truck 6 ft from the one, 10 ft from the other.
    across = road(16.0, near_ft=1.0, far_ft=5.0)
    assert shares(across, "near", TRUCK, VALUES).one_lane == pytest.approx(16 / 22)
    assert shares(across, "far", TRUCK, VALUES).one_lane == pytest.approx(12 / 22)


def test_on_a_road_too_narrow_for_both_clearances_the_truck_keeps_the_middle() -> None:
    # By hand: 9 ft leave 1.5 ft outside each wheel line.
    of = shares(road(9.0, near_ft=2.0, far_ft=3.0), "near", TRUCK, VALUES)
    assert of.one_lane == pytest.approx(1 - 6.5 / 14)
    assert of.one_lane == of.middle


def test_a_wide_implement_stands_nearer_to_the_middle_than_a_truck() -> None:
    # By hand: gauge 8 ft, centre at 1 + 2 + 4 = 7 ft of 22.
    of = shares(road(20.0), "near", wide(8.0, 11.5), VALUES)
    assert of.one_lane == pytest.approx(15 / 22)


def test_implements_that_cannot_pass_are_not_put_side_by_side() -> None:
    of = shares(road(20.0), "near", wide(8.0, 11.5), VALUES)
    assert of.two_lanes is None
    assert "2 vehicles like implement, 11.5 ft wide, have no room" in of.cannot_pass
    assert shares(road(23.0), "near", wide(8.0, 11.5), VALUES).two_lanes is not None


def test_a_vehicle_wider_than_the_road_is_refused() -> None:
    with pytest.raises(OutOfRange, match=r"width of implement is 17 ft.*16 ft: it is too wide"):
        shares(road(16.0), "near", wide(12.0, 17.0), VALUES)
    assert shares(road(16.0), "near", wide(12.0, 16.0), VALUES).one_lane == pytest.approx(0.5)


@pytest.mark.parametrize(
    ("clear_ft", "number"),
    [
        # Manual for Bridge Evaluation 6A.2.3.2 (from memory) up to 24 ft, whole 12 ft lanes beyond.
        (10.0, 1), (17.99, 1), (18.0, 2), (20.0, 2), (24.0, 2), (24.1, 2), (35.9, 2), (36.0, 3),
        (48.0, 4),
    ],
)
def test_lanes_follow_from_the_clear_width(clear_ft: float, number: int) -> None:
    assert lanes_by_width(clear_ft, VALUES) == number


def test_the_lanes_of_the_record_win_and_are_said() -> None:
    assert lanes(road(20.0), VALUES).caution == ""
    assert lanes(road(20.0, lanes=2), VALUES).caution == ""
    one = lanes(road(20.0, lanes=1), VALUES)
    assert one.number == 1
    assert "given" not in one.caution
    assert "1, not 2 as the clear width of 20 ft has" in one.caution
    assert "holds only while nothing can make more vehicles stand side by side" in one.caution
    more = lanes(road(17.5, lanes=2), VALUES)
    assert more.number == 2
    assert "holds only" not in more.caution
    with pytest.raises(OutOfRange, match="number of lanes is 0"):
        lanes(road(20.0, lanes=0), VALUES)


def test_clearances_shrink_alike_where_lanes_given_are_narrow() -> None:
    # By hand: two halves of 8.75 ft leave 2.75 of the 3 ft; near wheels at 2 x 2.75/3 = 1.8333 and
    # 8.75 + 2.75/3 = 9.6667 ft from the curb, centres at 5.8333 and 13.6667 ft of 19.5.
    of = shares(road(17.5, lanes=2), "near", TRUCK, VALUES)
    assert of.two_lanes == pytest.approx((19.5 - 5.83333) / 19.5 + (19.5 - 13.66667) / 19.5)


@pytest.mark.parametrize("clear_ft", [12.0, 16.0, 18.0, 21.5, 24.0, 31.0])
@pytest.mark.parametrize("gauge_ft", [5.0, 6.0, 7.5])
def test_no_allowed_place_of_the_trucks_gives_more(clear_ft: float, gauge_ft: float) -> None:
    # Other method: all places on a grid of 0.05 ft that keep 2 ft to the curbs and 1 ft to the
    # lane line, one truck to a lane; the greatest of them is the share.
    across, vehicle = road(clear_ft, near_ft=1.5), wide(gauge_ft, gauge_ft + 1.0)
    of = shares(across, "near", vehicle, VALUES)
    apart = across.truss_spacing_ft
    width = min(clear_ft / 2.0, 12.0)

    def greatest(first_ft: float, last_ft: float) -> float:
        near = np.arange(first_ft, last_ft - gauge_ft + 1e-9, 0.05)
        return float((1.0 - (1.5 + near + gauge_ft / 2.0) / apart).max())

    assert of.one_lane == pytest.approx(greatest(2.0, clear_ft - 2.0))
    if clear_ft >= 18.0 and width >= gauge_ft + 3.0:
        two = greatest(2.0, width - 1.0) + greatest(width + 1.0, 2.0 * width - 2.0)
        assert of.two_lanes == pytest.approx(two)


@pytest.mark.parametrize("clear_ft", [16.0, 20.0, 24.0, 30.0])
def test_a_lane_load_has_the_share_of_a_truck_of_six_feet_gauge(clear_ft: float) -> None:
    across = road(clear_ft)
    assert lane_load_shares(across, "near", VALUES) == shares(across, "near", TRUCK, VALUES)


@pytest.mark.parametrize("clear_ft", [16.0, 20.0, 24.0])
def test_with_a_lane_load_a_wide_gauge_takes_nothing_off(clear_ft: float) -> None:
    # By hand, curbs 1 ft in: wheels of 8 ft gauge at 3 and 11 ft have their middle 7 ft from the
    # truss, the strip of 10 ft against the curb 6 ft.
    across, apart = road(clear_ft), clear_ft + 2.0
    wheels = replace(TRUCK, gauge_ft=8.0)
    laid = replace(wheels, lane_kip_per_ft=0.64)
    least = lane_load_shares(across, "near", VALUES)
    assert shares(across, "near", wheels, VALUES).one_lane == pytest.approx(1.0 - 7.0 / apart)
    assert least.one_lane == pytest.approx(1.0 - 6.0 / apart)
    assert shares(across, "near", laid, VALUES) == least


def test_a_strip_against_the_curb_has_the_share_of_the_truck_on_it() -> None:
    # By hand: 10 ft from the curb on, middle at 1 + 5 = 6 ft of 18; wheels at 3 and 9 ft.
    assert strip_share(1.0, 10.0, 18.0) == pytest.approx(12 / 18)
    assert strip_share(1.0, 10.0, 18.0) == pytest.approx(lever_share(3.0, 6.0, 18.0))


@pytest.mark.parametrize(
    ("method", "loaded", "factor"),
    [
        # LRFD Table 3.6.1.1.2-1 and Standard Specifications 3.12.1, from memory.
        (Method.LOAD_AND_RESISTANCE, 1, 1.2), (Method.LOAD_AND_RESISTANCE, 2, 1.0),
        (Method.LOAD_AND_RESISTANCE, 3, 0.85), (Method.LOAD_AND_RESISTANCE, 5, 0.65),
        (Method.ALLOWABLE_STRESS, 1, 1.0), (Method.LOAD_FACTOR, 2, 1.0),
        (Method.LOAD_FACTOR, 3, 0.9), (Method.ALLOWABLE_STRESS, 4, 0.75),
    ],
)
def test_multiple_presence_goes_by_method_and_loaded_lanes(
    method: Method, loaded: int, factor: float
) -> None:
    assert multiple_presence(method, loaded, VALUES) == factor


def test_no_lane_loaded_is_refused() -> None:
    with pytest.raises(OutOfRange, match="number of loaded lanes"):
        multiple_presence(Method.LOAD_FACTOR, 0, VALUES)


def test_the_worst_case_may_be_one_lane_by_one_method_and_two_by_another() -> None:
    # By hand, 0.9 in one lane and 1.0 in two: 1.2 x 0.9 = 1.08 against 1.0; without the 1.2 less.
    of = Shares(by_lanes=(0.9, 1.0), middle=0.5)
    by_resistance = worst_case(lane_cases(of, Method.LOAD_AND_RESISTANCE, VALUES))
    assert (by_resistance.lanes, by_resistance.total) == (1, pytest.approx(1.08))
    by_stress = worst_case(lane_cases(of, Method.ALLOWABLE_STRESS, VALUES))
    assert (by_stress.lanes, by_stress.total) == (2, 1.0)


def test_cases_are_had_by_their_names() -> None:
    of = Shares(by_lanes=(0.7, 1.0), middle=0.5)
    assert [of.case(name) for name in ("one_lane", "two_lanes", "middle")] == [0.7, 1.0, 0.5]


def test_an_offices_clearance_moves_the_truck() -> None:
    # By hand: 1 ft from the curb puts the centre at 5 ft of 18.
    values = office_values(exceptions={"clearance.curb": (1.0, "ft", "trial")})
    assert shares(road(16.0), "near", TRUCK, values).one_lane == pytest.approx(13 / 18)
