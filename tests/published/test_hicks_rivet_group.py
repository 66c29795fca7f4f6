"""T. G. Hicks (ed.), Handbook of Civil Engineering Calculations: eccentric load on a riveted
connection, Fig. 59. Read at issuhub.com, document 4963, page 122 of the reader.

Six rivets, two lines of three, 6 in and 4 in apart; 15,000 lb stand 6 in beside their middle.
Printed: M 90,000 in-lb; J = 6 (3)² + 4 (4)² = 118 in2; of the worst rivet f_x = 3050 lb, f_y =
2290 + 2500 = 4790 lb, F = 5680 lb.
"""

import pytest

from eyebar.resistance.end_rivets import group_force, polar_moment, worst_rivet
from tests.published.printing import printed

POLAR = polar_moment(6.0, gauge=6.0, lines=2.0, pitch=4.0, rows=3.0)


def test_polar_moment_of_the_group() -> None:
    assert printed("118") == POLAR


def test_the_worst_rivet() -> None:
    worst = worst_rivet(6.0, 6.0, outer_line=3.0, polar=POLAR, outer_rivet=4.0)
    assert 15_000 * worst == printed("5680", unit=10)
    level = worst_rivet(1e12, 6.0, outer_line=0.0, polar=POLAR, outer_rivet=4.0)
    assert 15_000 * level == printed("3050", unit=10)


def test_a_group_whose_worst_rivet_may_carry_that_force_carries_the_load() -> None:
    worst = worst_rivet(6.0, 6.0, outer_line=3.0, polar=POLAR, outer_rivet=4.0)
    assert group_force(15.0 * worst, worst) == pytest.approx(15.0)
