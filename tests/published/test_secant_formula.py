"""The secant formula: ecoursesbook.com, mechanics of materials, section 9.3.

Pipe of outer radius 3 in and inner radius 2.75 in, fixed below and free above, 30 ft long
(effective length 720 in); 5 kip, 3 in beside the axis; E = 29,000 ksi. Printed: A 4.515 in2, I
18.70 in4, r 2.035 in, argument of the secant 1.0931, secant 2.175, stress 1.107 (1 + 2.173 x 2.175)
= 6.34 ksi.

Also Gere and Goodno, Mechanics of Materials, 7th ed., problem 11.6-7: W10 x 60, A 17.6 in2, I 341
in4, depth 10.22 in, 120 kip 2.0 in beside the axis, 24 ft, E = 30,000 ksi; L/r 65.42 and e c / r^2
0.5273 could be read, the stress could not.
"""

import math

from eyebar.resistance.column import slenderness_ratio
from eyebar.resistance.moments import secant_stress
from eyebar.sections.closed_forms import radius_of_gyration
from tests.published.printing import printed

AREA = math.pi * (3.0**2 - 2.75**2)
INERTIA = math.pi * (3.0**4 - 2.75**4) / 4
RADIUS = radius_of_gyration(INERTIA, AREA)


def test_the_pipe() -> None:
    assert printed("4.515", within=0.0011, because="the print is cut low: 4.5160") == AREA
    assert printed("18.70") == INERTIA
    assert printed("2.035") == RADIUS


def test_the_greatest_stress_in_the_pipe() -> None:
    stress = secant_stress(
        5.0, AREA, offset=3.0, fibre=3.0, radius=RADIUS, length=720.0, modulus=29_000.0
    )
    assert stress == printed("6.34")
    secant = (stress / (5.0 / AREA) - 1) / (9.0 / RADIUS**2)
    assert secant == printed("2.175")
    assert math.acos(1 / secant) == printed("1.0931", within=2e-4,
                                           because="found back from the secant")


def test_the_ratios_of_the_wide_flange_column() -> None:
    radius = radius_of_gyration(341.0, 17.6)
    assert slenderness_ratio(1.0, 24 * 12.0, radius) == printed("65.42", within=0.01,
        because="inertia and area are printed to three digits")
    assert 2.0 * (10.22 / 2) / radius**2 == printed("0.5273", within=2e-4,
        because="inertia and area are printed to three digits")
