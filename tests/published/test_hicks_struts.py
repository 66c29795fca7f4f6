"""T. G. Hicks (ed.), Handbook of Civil Engineering Calculations, 2nd ed., p. 1.104.

Strut of two angles set as a star: area of each 3.61 in2, r_y 1.56 and r_z 0.99 in, length 12 ft.
Printed: r 1.97 in, KL/r 73, allowable stress 16.12 ksi (building rule, yield 36 ksi), 116 kip. The
stress is by another rule than ours, so that only what surrounds it is compared.
"""

import math

from eyebar.resistance.column import allowable_column_stress, allowable_push, slenderness_ratio
from eyebar.sections.closed_forms import radius_of_gyration
from eyebar.sections.properties import properties
from eyebar.sections.shapes import Angle, Angles, Placed
from tests.published.printing import printed

AREA = 2 * 3.61
# Of a star the weaker axis is along the legs' bisector; an angle's two principal inertias add up to
# twice the one about a leg.
RADIUS = radius_of_gyration(AREA * (2 * 1.56**2 - 0.99**2), AREA)


def test_the_stars_radius_of_gyration() -> None:
    assert printed("1.97") == RADIUS


def test_its_slenderness() -> None:
    assert slenderness_ratio(1.0, 144.0, RADIUS) == printed("73")


def test_its_load_at_the_printed_stress() -> None:
    assert allowable_push(16.12, AREA) == printed("116")


def test_the_bridge_rule_asks_for_more_safety_than_the_building_rule() -> None:
    slenderness = slenderness_ratio(1.0, 144.0, RADIUS)
    bridge = allowable_column_stress(36.0, 2.12, slenderness, 29_000.0)
    # By hand: 36 / 2.12 (1 - 73.04^2 / (2 x 126.1^2)) = 14.13 ksi.
    assert math.isclose(bridge, 14.13, abs_tol=0.01)
    assert bridge < 16.12


FIVE_INCHES = Angle(upright=5.0, level=5.0, upright_thickness=0.375, level_thickness=0.375)
"""An angle of 5 x 5 x 3/8 in, which has the printed properties (its size is not printed)."""


def test_the_single_angle_by_its_measures() -> None:
    got = properties(Angles(angles=(FIVE_INCHES,), placed=Placed.SINGLE))
    assert got.area == printed("3.61")
    assert got.r_y == printed("1.56")
    assert got.r_least == printed("0.99")


def test_the_star_by_its_measures() -> None:
    # Heels touching, or a plate between them: the weaker axis runs through both heels.
    for apart in (0.0, 0.375):
        star = properties(
            Angles(angles=(FIVE_INCHES, FIVE_INCHES), placed=Placed.STAR, apart=apart)
        )
        assert star.r_least == printed("1.97")
        assert star.area * 16.12 == printed("116")
