"""CALFEM, a finite element toolbox for teaching (Lund): documentation, source/exs_bar2.rst.

Plane truss: nodes (0, 0), (0, 1.2), (1.6, 0), (1.6, 1.2) m; bars (0, 0)-(1.6, 0) of 6.0e-4,
(1.6, 0)-(1.6, 1.2) of 3.0e-4, (0, 1.2)-(1.6, 0) of 10.0e-4 m2; E = 200 GPa; 80 kN down at (1.6, 0),
the other nodes fixed. Printed: N = -29.845, 57.617, 37.306 kN; u = -3.9793e-4, -1.1523e-3 m.
"""

from tests.analysis.solving import pulled
from tests.published.printing import printed
from tests.published.small_trusses import HELD, truss

PLANE = truss(
    {"a": (0.0, 0.0), "b": (0.0, 1.2), "c": (1.6, 0.0), "d": (1.6, 1.2)},
    [("a-c", 6.0e-4), ("c-d", 3.0e-4), ("b-c", 10.0e-4)],
    200.0e6,
    {"a": HELD, "b": HELD, "d": HELD},
)
FORCES, MOTIONS = pulled(PLANE, {"c": (0.0, -80.0)})


def test_the_forces_of_the_three_bars() -> None:
    assert FORCES["a-c"] == printed("-29.845")
    assert FORCES["c-d"] == printed("57.617")
    assert FORCES["b-c"] == printed("37.306")


def test_the_motion_of_the_loaded_node() -> None:
    assert MOTIONS["c", "x"] == printed("-3.9793e-4")
    assert MOTIONS["c", "y"] == printed("-1.1523e-3")
