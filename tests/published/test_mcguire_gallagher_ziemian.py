"""W. McGuire, R. H. Gallagher, R. D. Ziemian, Matrix Structural Analysis: three examples.

Examples 2.1, 2.2 and 3.2, E = 200 GPa. 2.1: nodes (0, 0), (6, 4), (9, 0) m, bars of 6000 and 8000
mm2, 500 kN to the right at the apex; printed 400.6 and -277.8 kN, 2.41 and .72 mm. 2.2: 1000 kN
to the right on two bars of 5000 mm2 to (-3/tan 30, +-3) and two of 3000 mm2 to (3, +-3) m;
printed 368.8, 368.8, -255.5, -255.5 kN, 2.55 mm. 3.2: nodes (0, 0), (4/tan 30, 4), (4/tan 30 + 4,
0) m, bars of 15, 20 and 18e3 mm2, 500 kN at 40 degrees on the apex; printed 515.7, 89.9, -63.6
kN, .87, 1.24, -.19 mm. As quoted in the tests of a general frame library; the book was not read.
"""

import math

from tests.analysis.solving import pulled
from tests.published.printing import printed
from tests.published.small_trusses import HELD, truss

E = 200e6  # kN/m2


def test_example_2_1() -> None:
    drawn = truss(
        {"a": (0.0, 0.0), "b": (6.0, 4.0), "c": (9.0, 0.0)},
        [("a-b", 6000e-6), ("b-c", 8000e-6)], E, {"a": HELD, "c": HELD},
    )
    forces, motions = pulled(drawn, {"b": (500.0, 0.0)})
    assert forces["a-b"] == printed("400.6")
    assert forces["b-c"] == printed("-277.8")
    assert 1000.0 * motions["b", "x"] == printed("2.41")
    assert 1000.0 * motions["b", "y"] == printed(".72")


def test_example_2_2() -> None:
    back = 3.0 / math.tan(math.radians(30.0))
    drawn = truss(
        {"a": (0.0, 0.0), "b": (-back, 3.0), "c": (-back, -3.0), "d": (3.0, 3.0), "e": (3.0, -3.0)},
        [("a-b", 5000e-6), ("a-c", 5000e-6), ("a-d", 3000e-6), ("a-e", 3000e-6)], E,
        dict.fromkeys("bcde", HELD),
    )
    forces, motions = pulled(drawn, {"a": (1000.0, 0.0)})
    assert forces["a-b"] == printed("368.8")
    assert forces["a-c"] == printed("368.8")
    assert forces["a-d"] == printed("-255.5")
    assert forces["a-e"] == printed("-255.5")
    assert 1000.0 * motions["a", "x"] == printed("2.55")


def test_example_3_2() -> None:
    run = 4.0 / math.tan(math.radians(30.0))
    drawn = truss(
        {"a": (0.0, 0.0), "b": (run, 4.0), "c": (run + 4.0, 0.0)},
        [("a-b", 15e-3), ("b-c", 20e-3), ("a-c", 18e-3)], E, {"a": HELD, "c": (False, True)},
    )
    slope = math.radians(40.0)
    forces, motions = pulled(drawn, {"b": (500.0 * math.cos(slope), 500.0 * math.sin(slope))})
    assert forces["a-b"] == printed("515.7")
    assert forces["b-c"] == printed("89.9")
    assert forces["a-c"] == printed("-63.6")
    assert 1000.0 * motions["b", "x"] == printed(".87")
    assert 1000.0 * motions["b", "y"] == printed("1.24")
    assert 1000.0 * motions["c", "x"] == printed("-.19")
