import numpy as np
import pytest
from numpy.typing import NDArray

from eyebar.errors import OutOfRange
from eyebar.formula import recording
from eyebar.loads.simple_beam import (
    greatest_end_shear,
    greatest_moment,
    lane_end_shear,
    lane_moment,
    moment_ordinate,
)
from eyebar.vehicles import Vehicle, shipped_vehicles
from tests.loads.made import train

VEHICLES = {name: one for name, one in shipped_vehicles().items() if one.axles_kip}
SPANS = (6.0, 16.0, 27.0, 60.0, 150.0)


def stepped(
    vehicle: Vehicle, span_ft: float, spacings_ft: tuple[float, ...]
) -> tuple[float, float]:
    """(moment, end shear) by stepping the front axle a tenth of a foot at a time, both ways."""
    behind = np.array(vehicle.behind_front_ft(spacings_ft))
    axles = np.array(vehicle.axles_kip)
    front = np.arange(0.0, span_ft + behind[-1] + 0.1, 0.1)
    moment = shear = 0.0
    for place in (front[:, None] - behind, span_ft - front[:, None] + behind):
        on = (place >= 0.0) & (place <= span_ft)
        load = np.where(on, axles, 0.0)
        left = (load * (span_ft - place)).sum(axis=1) / span_ft
        shear = max(shear, float(left.max()))
        moment = max(moment, float(_moments(place, load, left).max()))
    return moment, shear


def _moments(
    place: NDArray[np.float64], load: NDArray[np.float64], left: NDArray[np.float64]
) -> NDArray[np.float64]:
    """Moment under each axle: reaction times arm, less the loads on the way."""
    ahead = np.maximum(place[:, :, None] - place[:, None, :], 0.0)
    under: NDArray[np.float64] = left[:, None] * place - (load[:, None, :] * ahead).sum(axis=2)
    return np.where(load > 0.0, under, 0.0)


@pytest.mark.parametrize("span_ft", SPANS)
@pytest.mark.parametrize("name", list(VEHICLES))
def test_dense_stepping_never_finds_more_and_comes_near(name: str, span_ft: float) -> None:
    # Other method: both directions, spacings at both ends and between; 0.1 ft steps miss the
    # summit by 0.05 ft at most, which is worth less than 1 % of a moment here.
    vehicle = VEHICLES[name]
    moment = greatest_moment(vehicle, span_ft).value
    shear = greatest_end_shear(vehicle, span_ft).value
    least, most = vehicle.least_spacings_ft, vehicle.greatest_spacings_ft
    between = tuple((a + b) / 2 for a, b in zip(least, most, strict=True))
    found = [stepped(vehicle, span_ft, spacings) for spacings in {least, between, most}]
    assert max(m for m, _ in found) <= moment * (1 + 1e-9)
    assert max(v for _, v in found) <= shear * (1 + 1e-9)
    assert max(m for m, _ in found) >= moment * 0.99
    assert max(v for _, v in found) >= shear * 0.98


def test_one_axle_stands_at_mid_span() -> None:
    # By hand: P L / 4 = 32 x 20 / 4.
    found = greatest_moment(train((32.0,), ()), 20.0)
    assert (found.value, found.section_ft, found.front_axle_ft) == (160.0, 10.0, 10.0)


def test_two_equal_axles_straddle_mid_span_by_a_quarter_of_their_spacing() -> None:
    # By hand: 50 / 40 x (20 - 1)^2 = 451.25, under the axle 1 ft from mid-span.
    found = greatest_moment(train((25.0, 25.0), (4.0,)), 40.0)
    assert found.value == pytest.approx(451.25)
    assert abs(found.section_ft - 20.0) == pytest.approx(1.0)


@pytest.mark.parametrize(("gap_ft", "moment"), [(5.8, 146.693), (5.9, 145.5)])
def test_far_axles_give_way_to_one_alone(gap_ft: float, moment: float) -> None:
    # By hand: two axles of 58.2 kip govern on 10 ft while nearer than (2 - sqrt 2) 10 = 5.858 ft:
    # 2 x 58.2 / 10 x (5 - 5.8 / 4)^2 = 146.693 against 58.2 x 10 / 4 = 145.5 of one alone.
    found = greatest_moment(train((58.2, 58.2), (gap_ft,)), 10.0).value
    assert found == pytest.approx(moment, abs=5e-4)


@pytest.mark.parametrize(
    ("name", "span_ft", "shear"),
    [
        # By hand: 32 + 32 x 14/28 (the third axle just at the other end) = 48;
        # 32 (1 + 26/40) + 8 x 12/40 = 55.2.
        ("HS20", 28.0, 48.0), ("HS20", 40.0, 55.2),
        # 25 (1 + 16/20) = 45.
        ("design tandem", 20.0, 45.0),
        # 17 (1 + 16/20) + 16 x 1/20 = 31.4.
        ("Type 3", 20.0, 31.4),
    ],
)
def test_end_shear_is_had_with_an_axle_over_the_support(
    name: str, span_ft: float, shear: float
) -> None:
    assert greatest_end_shear(VEHICLES[name], span_ft).value == pytest.approx(shear)


@pytest.mark.parametrize(
    ("span_ft", "moment", "shear"),
    [
        # AASHTO's appendix for HS20, from memory, with the roundings of its print.
        (30.0, 282.1, 49.6), (40.0, 449.8, 55.2), (60.0, 806.5, 60.8), (100.0, 1524.0, 65.3),
    ],
)
def test_the_old_national_table_of_hs20_is_met(
    span_ft: float, moment: float, shear: float
) -> None:
    assert greatest_moment(VEHICLES["HS20"], span_ft).value == pytest.approx(moment, abs=0.1)
    assert greatest_end_shear(VEHICLES["HS20"], span_ft).value == pytest.approx(shear, abs=0.05)


@pytest.mark.parametrize(("smaller", "larger"), [("H15", "H20"), ("HS15", "HS20")])
@pytest.mark.parametrize("span_ft", SPANS)
def test_a_15_loading_bends_three_quarters_as_much(
    smaller: str, larger: str, span_ft: float
) -> None:
    # Law: effects are linear in the loads.
    for effect in (greatest_moment, greatest_end_shear):
        least, most = effect(VEHICLES[smaller], span_ft), effect(VEHICLES[larger], span_ft)
        assert least.value == pytest.approx(0.75 * most.value)


def test_the_ordinate_is_the_same_with_load_and_section_exchanged() -> None:
    # Law: Maxwell's reciprocity; by hand 4 x (20 - 14) / 20.
    assert moment_ordinate(4.0, 14.0, 20.0) == pytest.approx(1.2)
    assert moment_ordinate(14.0, 4.0, 20.0) == moment_ordinate(4.0, 14.0, 20.0)


def test_a_lane_load_of_h20_on_forty_feet() -> None:
    # By hand: 0.64 x 1600 / 8 + 18 x 10 = 308; 0.64 x 20 + 26 = 38.8.
    assert lane_moment(0.64, 18.0, 40.0) == pytest.approx(308.0)
    assert lane_end_shear(0.64, 26.0, 40.0) == pytest.approx(38.8)


@pytest.mark.parametrize(
    ("span_ft", "over"), [(58.0, 1.01), (80.0, 1.17), (100.0, 1.32), (120.0, 1.48), (150.0, 1.71)]
)
def test_the_lane_load_of_h15_overtakes_its_truck_at_58_feet(span_ft: float, over: float) -> None:
    # By hand: 30 kip, the resultant 2.8 ft from the heavy axle, 30/L (L/2 - 1.4)^2; the lane load
    # 0.48 L^2/8 + 13.5 L/4. The quotients to two places are worked beside.
    vehicle = VEHICLES["H15"]
    by_hand = 30.0 / span_ft * (span_ft / 2.0 - 1.4) ** 2
    assert greatest_moment(vehicle, span_ft).value == pytest.approx(by_hand)
    assert lane_moment(0.48, 13.5, span_ft) / by_hand == pytest.approx(over, abs=0.005)


@pytest.mark.parametrize("span_ft", [0.0, -10.0, float("nan"), float("inf")])
def test_a_span_that_is_none_is_refused(span_ft: float) -> None:
    for effect in (greatest_moment, greatest_end_shear):
        with pytest.raises(OutOfRange, match="span"):
            effect(VEHICLES["HS20"], span_ft)


def test_the_working_replayed_gives_the_same_to_the_bit() -> None:
    plain = greatest_moment(VEHICLES["SU7"], 83.0)
    with recording() as steps:
        replayed = greatest_moment(VEHICLES["SU7"], 83.0)
    assert replayed == plain
    assert len(steps) == 1
