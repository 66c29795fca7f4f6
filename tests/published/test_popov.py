"""E. P. Popov, Engineering Mechanics of Solids, example 2.14.

Three equal bars meet at a joint: A = 10, E = 3000, the middle one upright and 200 long, the outer
ones at 30 degrees to it; P = 200 hangs there. Fv = P / (1 + 2 cos^3 a). Printed: 86.993 in the
middle, 65.245 in the outer bars, the joint goes down by .57995. As quoted in a verification test
of an open finite element program; the book was not read.
"""

import math

from tests.analysis.solving import pulled
from tests.published.printing import printed
from tests.published.small_trusses import HELD, truss

ASIDE = 200.0 * math.tan(math.radians(30.0))
THREE = truss(
    {"foot": (0.0, 0.0), "left": (-ASIDE, 200.0), "top": (0.0, 200.0), "right": (ASIDE, 200.0)},
    [("foot-left", 10.0), ("foot-top", 10.0), ("foot-right", 10.0)],
    3000.0,
    {"left": HELD, "top": HELD, "right": HELD},
)
FORCES, MOTIONS = pulled(THREE, {"foot": (0.0, -200.0)})


def test_the_middle_bar_takes_most() -> None:
    assert FORCES["foot-top"] == printed("86.993")
    assert math.isclose(FORCES["foot-top"], 200.0 / (1.0 + 2.0 * math.cos(math.radians(30.0)) ** 3))


def test_the_outer_bars_take_alike() -> None:
    assert FORCES["foot-left"] == printed("65.245")
    assert FORCES["foot-right"] == printed("65.245")


def test_the_joint_goes_down() -> None:
    assert MOTIONS["foot", "y"] == printed("-.57995")
