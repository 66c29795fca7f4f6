"""M. A. Khan, Bridge and Highway Structure Rehabilitation and Repair (2010).

Table 4.5, p. 164 (HS20 and the 25 kip tandem), Table 6.7, p. 251 (H20), p. 167 (design load):
moment in kip-ft, end shear in kip, one lane, no impact. Read at digilib.universitaspertamina.ac.id.
Vehicles: H20 8 and 32 kip, 14 ft; HS20 8, 32, 32 kip, 14 and 14 ft; tandem 25, 25 kip, 4 ft.

The tables come from closed forms that have a range, and are used only inside it: HS20 moments from
34 ft (below, only two axles are on the beam), its shears from 28 ft, H20 moments from 28 ft (below,
one axle at mid-span governs). The tandem's moments are those at mid-span, not the greatest.
"""

import pytest

from eyebar.loads.simple_beam import (
    greatest_end_shear,
    greatest_moment,
    lane_end_shear,
    lane_moment,
    moment_ordinate,
)
from eyebar.vehicles import shipped_vehicles
from tests.published.printing import Printed, printed

VEHICLES = shipped_vehicles()
H20, HS20 = VEHICLES["H20"], VEHICLES["HS20"]
TRUCK, TANDEM = VEHICLES["design truck"], VEHICLES["design tandem"]


def hs20_moment(text: str) -> Printed:
    return printed(
        text, within=0.1,
        because="the book's closed form 18 (L - 1.55)(L - 14)/L rounds 14/9 to 1.55",
    )


@pytest.mark.parametrize(
    ("span_ft", "text"),
    [
        (34, "343.59"), (40, "449.87"), (45, "538.78"), (50, "627.91"), (60, "806.61"),
        (70, "985.68"), (75, "1075.31"),
    ],
)
def test_moments_of_hs20(span_ft: int, text: str) -> None:
    assert greatest_moment(HS20, span_ft).value == hs20_moment(text)


@pytest.mark.parametrize(
    ("span_ft", "text"),
    [
        (28, "48.00"), (30, "49.60"), (34, "52.24"), (40, "55.20"), (45, "57.07"),
        (50, "58.56"), (60, "60.80"), (70, "62.40"), (75, "63.04"),
    ],
)
def test_end_shears_of_hs20(span_ft: int, text: str) -> None:
    assert greatest_end_shear(HS20, span_ft).value == printed(text)


@pytest.mark.parametrize(
    ("span_ft", "text"),
    [
        (28, "226.80"), (30, "246.61"), (32, "266.45"), (34, "286.31"), (36, "306.18"),
        (38, "326.06"), (40, "345.96"), (42, "365.87"), (45, "395.74"), (50, "445.57"),
        (55, "495.43"),
    ],
)
def test_moments_of_the_h20_truck(span_ft: int, text: str) -> None:
    assert greatest_moment(H20, span_ft).value == printed(text)


@pytest.mark.parametrize(
    ("span_ft", "text"),
    [
        (20, "122.0"), (26, "171.08"), (28, "188.72"), (30, "207.0"), (34, "245.48"), (40, "308"),
        (45, "364.5"), (50, "425"), (60, "558"), (65, "630.5"), (70, "707"), (75, "787.5"),
        (80, "872"), (85, "960.5"), (90, "1053"), (95, "1149.5"), (100, "1250"), (105, "1354.5"),
        (110, "1463"), (115, "1575.5"), (120, "1692"),
    ],
)
def test_moments_of_the_h20_lane_load(span_ft: int, text: str) -> None:
    assert H20.lane_point_kip is not None
    assert lane_moment(H20.lane_kip_per_ft, H20.lane_point_kip[0], span_ft) == printed(text)


@pytest.mark.parametrize(
    ("span_ft", "text"),
    [
        (20, "32.4"), (26, "34.32"), (28, "34.96"), (30, "35.6"), (34, "36.88"), (40, "38.8"),
        (45, "40.4"), (50, "42.0"), (60, "45.2"), (70, "48.4"), (80, "51.6"), (100, "58.0"),
    ],
)
def test_end_shears_of_the_h20_lane_load(span_ft: int, text: str) -> None:
    assert H20.lane_point_kip is not None
    assert lane_end_shear(H20.lane_kip_per_ft, H20.lane_point_kip[1], span_ft) == printed(text)


@pytest.mark.parametrize(
    ("span_ft", "text"),
    [
        (22, "225"), (24, "250"), (26, "275"), (28, "300"), (30, "325"), (34, "375"), (40, "450"),
        (45, "512.5"), (50, "575"), (60, "700"), (70, "825"), (75, "887.5"),
    ],
)
def test_moments_of_the_tandem_at_mid_span_and_a_little_more_beside_it(
    span_ft: int, text: str
) -> None:
    middle = span_ft / 2.0
    at_middle = 25.0 * (
        moment_ordinate(middle, middle, span_ft) + moment_ordinate(middle - 4.0, middle, span_ft)
    )
    assert at_middle == printed(text)
    # By hand: 50/L (L/2 - 1)^2 is 50/L more than 12.5 L - 50.
    assert greatest_moment(TANDEM, span_ft).value == pytest.approx(at_middle + 50.0 / span_ft)


def test_end_shear_of_the_design_load_on_a_hundred_feet() -> None:
    lane = lane_end_shear(TRUCK.lane_kip_per_ft, 0.0, 100.0)
    assert greatest_end_shear(TRUCK, 100.0).value + lane == printed("97.28")


@pytest.mark.parametrize(
    ("span_ft", "misprint", "right"),
    [
        # By hand: one axle at mid-span, 32 x 22 / 4; two axles, 64/L (L/2 - 3.5)^2.
        (22, 133.85, 176.0), (24, 168.38, 192.667), (26, 203.12, 222.154), (28, 238.05, 252.0),
    ],
)
def test_the_hs20_moments_below_34_feet_are_printed_too_low(
    span_ft: int, misprint: float, right: float
) -> None:
    assert greatest_moment(HS20, span_ft).value == pytest.approx(right, abs=5e-4)
    assert misprint < 0.95 * right


@pytest.mark.parametrize(
    ("span_ft", "misprint", "right"),
    [
        # By hand: 32 (2 - 14/L), the third axle being off the beam.
        (22, 41.45, 43.636), (24, 44.00, 45.333), (26, 46.15, 46.769),
    ],
)
def test_the_hs20_shears_below_28_feet_are_printed_too_low(
    span_ft: int, misprint: float, right: float
) -> None:
    assert greatest_end_shear(HS20, span_ft).value == pytest.approx(right, abs=5e-4)
    assert misprint < right


@pytest.mark.parametrize(
    ("span_ft", "misprint", "right"),
    [
        # By hand: the heavy axle alone at mid-span, 32 L / 4.
        (20, 147.92, 160.0), (26, 207.02, 208.0),
    ],
)
def test_the_h20_moments_below_28_feet_forget_one_axle_at_mid_span(
    span_ft: int, misprint: float, right: float
) -> None:
    assert greatest_moment(H20, span_ft).value == pytest.approx(right)
    assert misprint < right


def test_the_total_moment_of_the_design_load_is_printed_for_the_lesser_of_two() -> None:
    # P. 167 prints 1998.26 for 100 ft, lane and tandem. By hand for the truck, resultant 4.667 ft
    # from its middle axle: 72/100 (50 - 2.333)^2 - 8 x 14 = 1523.92, and the lane's 800.
    lane = lane_moment(TRUCK.lane_kip_per_ft, 0.0, 100.0)
    assert greatest_moment(TRUCK, 100.0).value + lane == pytest.approx(2323.92)
    assert greatest_moment(TANDEM, 100.0).value < greatest_moment(TRUCK, 100.0).value
