"""A finite element primer, example 1: a truss of three bars, as quoted in an open gallery.

Nodes (0, 0), (144, 0), (168, 0) held and (72, 96) loaded by (100, -50); areas 10, 5, 5; E = 3000.
Printed: 43.9352, -57.5463, -55.3114; the joint moves by .530093, -.177894. (Another text about the
example says E = 300; only 3000 gives the printed motion.)
"""

from tests.analysis.solving import pulled
from tests.published.printing import printed
from tests.published.small_trusses import HELD, truss

PRIMER = truss(
    {"a": (0.0, 0.0), "b": (144.0, 0.0), "c": (168.0, 0.0), "top": (72.0, 96.0)},
    [("a-top", 10.0), ("b-top", 5.0), ("c-top", 5.0)], 3000.0,
    {"a": HELD, "b": HELD, "c": HELD},
)
FORCES, MOTIONS = pulled(PRIMER, {"top": (100.0, -50.0)})


def test_the_forces_of_the_three_bars() -> None:
    assert FORCES["a-top"] == printed("43.9352")
    assert FORCES["b-top"] == printed("-57.5463")
    assert FORCES["c-top"] == printed("-55.3114")


def test_the_motion_of_the_top() -> None:
    assert MOTIONS["top", "x"] == printed(".530093")
    assert MOTIONS["top", "y"] == printed("-.177894")
