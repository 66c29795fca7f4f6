"""Single angles held by one leg, in push and in pull."""

import pytest

from eyebar.resistance.net_section import net_by_one_leg, net_by_shear_lag
from eyebar.resistance.one_leg import (
    held_by_longer_leg,
    held_by_shorter_leg,
    slenderness_by_one_leg,
)
from eyebar.sections.shapes import Angle, Angles, Placed, Rolled, RolledShape
from eyebar.terms import Level, Method
from tests.resistance.bars import LACED, bar, limits_of

OPERATING = (Method.LOAD_FACTOR, Level.OPERATING)


def single(upright: float, level: float) -> Angles:
    one = Angle(upright=upright, level=level, upright_thickness=0.25, level_thickness=0.25)
    return Angles(angles=(one,), placed=Placed.SINGLE)


@pytest.mark.parametrize(
    ("length", "slenderness"),
    [
        # By hand, 3 x 3 x 1/4 in: r 0.930354; 60 in: L/r 64.4916, 72 + 0.75 x 64.4916; 100 in:
        # 107.4860, 32 + 1.25 x 107.4860.
        (60.0, 120.3687),
        (100.0, 166.3575),
    ],
)
def test_an_equal_angle_by_its_length(length: float, slenderness: float) -> None:
    found = slenderness_by_one_leg(single(3.0, 3.0), length)
    assert found is not None
    assert found[0] == pytest.approx(slenderness, abs=5e-5)


@pytest.mark.parametrize(("upright", "level"), [(5.0, 3.0), (3.0, 5.0)])
def test_an_unequal_angle_by_the_worse_leg(upright: float, level: float) -> None:
    # By hand, 5 x 3 x 1/4 in, 80 in: held by the longer leg, r along it 0.861435, L/r 92.8683: 32 +
    # 1.25 x 92.8683 = 148.085; by the shorter, r 1.623956, 72 + 0.75 x 49.2624 + 4 (25/9 - 1) =
    # 116.058, at least 0.95 x 80 / 0.662899 = 114.648.
    assert held_by_longer_leg(80.0, 0.8614354) == pytest.approx(148.0853, abs=5e-4)
    equal_legs = held_by_longer_leg(80.0, 1.6239557)
    assert held_by_shorter_leg(
        equal_legs, 5.0, 3.0, length=80.0, least_radius=0.662899
    ) == pytest.approx(116.0579, abs=5e-4)
    found = slenderness_by_one_leg(single(upright, level), 80.0)
    assert found is not None
    assert found[0] == pytest.approx(148.0853, abs=5e-4)


def test_the_least_radius_keeps_an_angle_held_by_its_shorter_leg_from_seeming_stocky() -> None:
    # By hand: 0.95 x 300 / 0.6 = 475 over 72 + 20.
    assert held_by_shorter_leg(92.0, 3.0, 2.9, length=300.0, least_radius=0.6) == 475.0


def test_legs_very_unequal_are_remarked_on() -> None:
    found = slenderness_by_one_leg(single(6.0, 3.0), 60.0)
    assert found is not None
    assert "legs more unequal than the rule of one leg is for" in found[1]


def test_only_angles_that_stand_alone_have_the_check() -> None:
    rolled = Rolled(
        shape=RolledShape.ANGLE, number=2, depth=3.0, web=0.25, flange=3.0, flange_thickness=0.25
    )
    check = "column, an angle held by one leg"
    assert check in limits_of(bar(single(3.0, 3.0), length=60.0), *OPERATING)
    assert check in limits_of(bar(rolled, length=60.0), *OPERATING)
    assert check not in limits_of(bar(LACED, length=60.0), *OPERATING)
    assert slenderness_by_one_leg(single(3.0, 3.0), 60.0) == slenderness_by_one_leg(rolled, 60.0)


def test_in_pull_half_the_leg_that_is_not_held_is_left_out() -> None:
    # By hand, 5 x 3 x 1/4 in: A 1.9375, holes not recorded 0.7 x 1.9375 = 1.35625; the greater leg
    # 5 x 1/4 = 1.25 in2: 1.35625 - 0.625 = 0.73125 in2, x 48 ksi = 35.1 kip; by load and resistance
    # 0.60 x 1.35625 x 48 x 0.80 x 0.90 = 28.1232 kip.
    assert net_by_one_leg(1.35625, 1.25) == 0.73125
    assert net_by_shear_lag(0.6, 1.35625) == pytest.approx(0.81375, rel=1e-12)
    one = bar(single(5.0, 3.0), can_push=False)
    older = limits_of(one, *OPERATING)["fracture of the net section"]
    assert older.force == pytest.approx(35.1, rel=1e-12)
    assert "taken as held by one leg at its ends" in older.remarks
    later = limits_of(one, Method.LOAD_AND_RESISTANCE, Level.LEGAL)["fracture of the net section"]
    assert later.force == pytest.approx(28.1232, rel=1e-12)
