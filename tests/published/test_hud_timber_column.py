"""Residential Structural Design Guide, 2nd ed. (HUD), example 5.6: a timber post.

A 4x4 (3.5 in) of spruce-pine-fir No. 2, 7.3 ft long, 4,800 lb: F_c 1,150 psi with a size factor of
1.15, E_min 510,000 psi: C_P 0.4378, F'_c 579 psi, 0.677 of its strength used.
"""

from eyebar.resistance.given_stress import (
    column_stability,
    stable_stress,
    stick_buckling_stress,
    stick_slenderness,
)
from tests.published.printing import printed

ALLOWED = 1.150 * 1.15
PART = column_stability(
    stick_buckling_stress(510.0, stick_slenderness(1.0, 7.3 * 12, 3.5)) / ALLOWED, 0.8
)


def test_the_column_factor_and_what_it_leaves() -> None:
    part = PART
    assert part == printed("0.4378")
    assert 1000 * stable_stress(PART, ALLOWED) == printed("579")


def test_how_much_of_the_post_is_used() -> None:
    assert 4.8 / 3.5**2 / stable_stress(PART, ALLOWED) == printed("0.677")
