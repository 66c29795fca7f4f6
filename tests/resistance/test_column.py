"""Columns: the three methods' curves against tables worked apart, and a straight bar's push."""

import math
from dataclasses import replace

import pytest

from eyebar.errors import NotMeasured
from eyebar.resistance.column import (
    allowable_column_stress,
    buckling_load,
    failing_column_stress,
    nominal_column_stress,
)
from eyebar.sections.shapes import Eyebar, Eyebars, Rolled, RolledShape
from eyebar.terms import Level, Method
from tests.published.printing import Printed, printed
from tests.resistance.bars import (
    EVERY_LEVEL,
    IRON,
    STANDARD,
    STIFF_ENDS,
    bar,
    given,
    greatest_push,
    limits_of,
)

YIELDS = (26.0, 30.0, 33.0, 36.0)
CURVES = list(enumerate(YIELDS))


def cell(text: str) -> Printed:
    return printed(text)


# Worked apart, by hand with E = 29,000 ksi and C_c of 148.4, 138.1, 131.7, 126.1: inventory with a
# factor of safety of 2.12, operating with 1.70, in ksi for yields of 26, 30, 33 and 36 ksi.
ALLOWABLE = {
    0: (("12.26", "15.29"), ("14.15", "17.65"), ("15.57", "19.41"), ("16.98", "21.18")),
    40: (("11.82", "14.74"), ("13.56", "16.91"), ("14.85", "18.52"), ("16.13", "20.11")),
    60: (("11.26", "14.04"), ("12.82", "15.98"), ("13.95", "17.40"), ("15.06", "18.78")),
    80: (("10.48", "13.07"), ("11.78", "14.69"), ("12.69", "15.83"), ("13.56", "16.91")),
    100: (("9.48", "11.82"), ("10.44", "13.02"), ("11.08", "13.82"), ("11.64", "14.52")),
    120: (("8.25", "10.29"), ("8.81", "10.99"), ("9.11", "11.35"), ("9.29", "11.59")),
    140: (("6.81", "8.49"), ("6.89", "8.59"), ("6.89", "8.59"), ("6.89", "8.59")),
    160: (("5.27", "6.58"),) * 4,
    200: (("3.38", "4.21"),) * 4,
}

# The same for load and resistance, P_n / A_g.
NOMINAL = {
    40: ("24.47", "27.97", "30.55", "33.09"),
    60: ("22.67", "25.62", "27.74", "29.78"),
    80: ("20.38", "22.66", "24.23", "25.70"),
    100: ("17.78", "19.35", "20.37", "21.27"),
    120: ("15.04", "15.95", "16.47", "16.87"),
    140: ("12.34", "12.70", "12.82", "12.81"),
    160: ("9.81", "9.81", "9.81", "9.81"),
    200: ("6.28", "6.28", "6.28", "6.28"),
}


@pytest.mark.parametrize("slenderness", ALLOWABLE)
@pytest.mark.parametrize(("place", "strength"), CURVES)
def test_allowable_stress_follows_the_table(
    slenderness: int, place: int, strength: float
) -> None:
    inventory, operating = ALLOWABLE[slenderness][place]
    assert allowable_column_stress(strength, 2.12, slenderness, 29_000.0) == cell(inventory)
    assert allowable_column_stress(strength, 1.70, slenderness, 29_000.0) == cell(operating)


@pytest.mark.parametrize("slenderness", NOMINAL)
@pytest.mark.parametrize(("place", "strength"), CURVES)
def test_load_and_resistance_follows_the_table(
    slenderness: int, place: int, strength: float
) -> None:
    stress = nominal_column_stress(strength, slenderness, 29_000.0)
    assert stress == cell(NOMINAL[slenderness][place])


@pytest.mark.parametrize("strength", YIELDS)
def test_the_two_branches_of_a_curve_meet_where_they_change(strength: float) -> None:
    # Law: sqrt(2 pi^2 E / F_y) for the older curve, P_e = 0.44 P_o for the later; its branches
    # are apart by no more than the rounding of 0.658, 0.877 and 0.44.
    older = math.sqrt(2 * math.pi**2 * 29_000 / strength)
    below, above = (
        failing_column_stress(strength, older * part, 29_000.0) for part in (1 - 1e-9, 1 + 1e-9)
    )
    assert below == pytest.approx(above, rel=1e-7)
    assert below == pytest.approx(strength / 2, rel=1e-7)
    later = math.sqrt(math.pi**2 * 29_000 / (0.44 * strength))
    below, above = (
        nominal_column_stress(strength, later * part, 29_000.0) for part in (1 - 1e-9, 1 + 1e-9)
    )
    assert below == pytest.approx(above, rel=2e-3)


def test_a_slender_iron_bar_buckles_with_irons_own_modulus() -> None:
    # Law: on the elastic branch strength goes with the modulus, 27,900 to 29,000.
    iron, standard = (
        greatest_push(
            bar(given(6.0, 1.0, 1.0), length=200.0, material=metal), Method.LOAD_FACTOR,
            Level.OPERATING,
        )
        for metal in (IRON, STANDARD)
    )
    assert iron / standard == pytest.approx(27_900 / 29_000, rel=1e-12)


@pytest.mark.parametrize(
    ("method", "level", "kip"),
    [
        # From the tables above at KL/r = 80, yield 26 ksi, times 6 in2: 10.48, 13.07, 0.85 times
        # F_cr and 0.90 (system) x 0.90 (column) x 20.38. F_cr by hand: 26 (1 - 26 x 6400 /
        # (4 pi^2 x 29,000)) = 22.22109.
        (Method.ALLOWABLE_STRESS, Level.INVENTORY, 10.48 * 6),
        (Method.ALLOWABLE_STRESS, Level.OPERATING, 13.07 * 6),
        (Method.LOAD_FACTOR, Level.OPERATING, 0.85 * 22.22109 * 6),
        (Method.LOAD_AND_RESISTANCE, Level.LEGAL, 0.90 * 0.85 * 20.38 * 6),
    ],
)
def test_a_straight_upright_bar_pushes_by_its_greater_slenderness(
    method: Method, level: Level, kip: float
) -> None:
    # Slenderness 80 in the plane (r_x 2.25 on 180 in), 60 out of it. A given section has the system
    # factor of a single bar, 0.85.
    upright = bar(given(6.0, 2.25, 3.0), material=STANDARD)
    found = limits_of(upright, method, level, values=STIFF_ENDS)
    in_plane = found["column in the plane of the truss"]
    assert in_plane.force == pytest.approx(-kip, rel=1e-3)
    assert (in_plane.capacity, in_plane.unit, in_plane.sense) == (-in_plane.force, "kip", -1)
    assert found["column out of the plane of the truss"].force < in_plane.force
    assert "thrust with bending" not in found


def test_effective_lengths_are_the_offices() -> None:
    # Shipped: 1.0 in the plane, 0.875 out of it. By hand: 0.875 x 180 / 3 = 52.5, so that the
    # elastic loads are as (52.5 / 60)^2.
    column = bar(given(1.0, 0.9, 0.9), length=180.0)
    found = limits_of(column, Method.LOAD_FACTOR, Level.OPERATING)
    in_plane = found["column in the plane of the truss"].force
    out_of_plane = found["column out of the plane of the truss"].force
    assert in_plane / out_of_plane == pytest.approx(0.875**2, rel=1e-12)


def test_a_very_slender_column_is_remarked_on() -> None:
    found = limits_of(bar(given(4.0, 1.2, 3.0)), Method.LOAD_FACTOR, Level.OPERATING)
    # By hand: 180 / 1.2 = 150; 0.875 x 180 / 3 = 52.5.
    assert "slenderness 150 over 120" in found["column in the plane of the truss"].remarks
    (remark,) = found["column out of the plane of the truss"].remarks
    assert remark == "widths of its plates not recorded: thin plates not looked for"


def test_an_angle_buckles_about_its_slanting_axis() -> None:
    # By hand, 4 x 4 x 1/2 in with square corners: A 3.75, centre 1.18333 in from both faces, I
    # 5.56146, product of inertia -3.26667, so that the least inertia is 2.29479, the least radius
    # 0.78227 and the slenderness 180 / 0.78227 = 230.10.
    angle = Rolled(
        shape=RolledShape.ANGLE, number=1, depth=4.0, web=0.5, flange=4.0, flange_thickness=0.5
    )
    found = limits_of(bar(angle), Method.LOAD_FACTOR, Level.OPERATING)
    least = -found["column about its least axis"].force
    # Its shear centre lies on the other axis: bending and twisting is the same bending here.
    assert least == pytest.approx(
        min(-limit.force for limit in found.values() if limit.sense < 0), rel=1e-12
    )
    assert least == pytest.approx(0.85 * buckling_load(27_900.0, 3.75, 230.10), rel=1e-3)


def test_eyebars_that_can_push_bend_one_by_one() -> None:
    # By hand: r_y = 0.75 / sqrt(12) = 0.21651, as for one bar alone; 0.875 x 180 / r_y = 727.5.
    two = Eyebars(bars=(Eyebar(width=3.0, thickness=0.75, head=7.0, hole=2.5),) * 2)
    push = greatest_push(bar(two), Method.LOAD_FACTOR, Level.OPERATING)
    assert push == pytest.approx(0.85 * buckling_load(27_900.0, 4.5, 727.46), rel=1e-4)


@pytest.mark.parametrize(("method", "level"), EVERY_LEVEL)
def test_a_bar_that_cannot_push_has_no_limit_in_push(method: Method, level: Level) -> None:
    found = limits_of(bar(given(4.0, 1.0, 1.0), can_push=False), method, level)
    assert all(limit.sense == 1 for limit in found.values())


def test_a_radius_never_given_is_not_measured() -> None:
    column = bar(replace(given(4.0, 1.0, 1.0), r_y=None))
    with pytest.raises(NotMeasured, match="radius of gyration about the upright axis"):
        limits_of(column, Method.LOAD_FACTOR, Level.OPERATING)


def test_given_fibres_are_asked_for_only_where_something_bends_the_bar() -> None:
    upright = bar(given(4.0, 1.5, 1.5))
    limits_of(upright, Method.LOAD_FACTOR, Level.OPERATING)
    with pytest.raises(NotMeasured, match="distance to the upper fibre"):
        limits_of(replace(upright, run=100.0), Method.LOAD_FACTOR, Level.OPERATING)
