"""T. G. Hicks (ed.), Handbook of Civil Engineering Calculations, 2nd ed., p. 1.104.

Strut of two angles set as a star: area of each 3.61 in2, r_y 1.56 and r_z 0.99 in, length 12 ft.
Printed: r 1.97 in, KL/r 73, allowable stress 16.12 ksi (building rule, yield 36 ksi), 116 kip. The
stress is by another rule than ours, so that only what surrounds it is compared.
"""

import math

from eyebar.resistance.column import allowable_column_stress, allowable_push, slenderness_ratio
from eyebar.sections.closed_forms import radius_of_gyration
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
