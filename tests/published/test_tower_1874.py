"""G. B. N. Tower, Instructions on Modern American Bridge Building (1874): a Pratt truss.

Read as Project Gutenberg no. 14873. Span 100 ft, rise 12 ft, ten panels of 10 ft, 3,000 lb a foot
of bridge on two trusses: 15,000 lb a panel a truss at the lower joints. The print is rough: its
first tie, 2 x 49,375 lb, takes the whole end reaction and a diagonal of 15.8 ft; its middle
chord, printed 3,333,333 lb, is 312,500 lb by its own formula W S / 8 h, for both trusses
together. The exact forces are by hand: a chord is the moment about the joint across from it over
12 ft, a diagonal the shear of its panel times 15.6205 / 12, a post the shear that its upper joint
hands on.
"""

import pytest

from tests.analysis.solving import at_rest
from tests.analysis.trusses import pratt
from tests.published.printing import printed

FORCES = at_rest(
    pratt(10, counters=(), pitch=120.0, depth=144.0, slender=False),
    {f"L{i}": 15_000.0 for i in range(1, 10)},
)

EXACT = {
    # Moments: 67,500 lb x 10 k ft less 15,000 lb on the joints passed; over 12 ft.
    "L0-L1": 56_250, "L1-L2": 56_250, "L2-L3": 100_000, "L3-L4": 131_250, "L4-L5": 150_000,
    "U1-U2": -100_000, "U2-U3": -131_250, "U3-U4": -150_000, "U4-U5": -156_250,
    # Shears 67,500, 52,500, 37,500, 22,500, 7,500 lb times 1.30171.
    "U1-L0": -87_865, "U1-L2": 68_340, "U2-L3": 48_814, "U3-L4": 29_288, "U4-L5": 9_763,
    "U1-L1": 15_000, "U2-L2": -37_500, "U3-L3": -22_500, "U4-L4": -7_500, "U5-L5": 0,
}


@pytest.mark.parametrize("bar", EXACT)
def test_every_bar_of_the_half_truss(bar: str) -> None:
    # Worked to whole pounds.
    assert FORCES[bar] == pytest.approx(EXACT[bar], abs=0.5)


def test_the_printed_formula_of_the_middle_chord() -> None:
    # W S / 8 h for both trusses, 300,000 lb in all: 312,500 (misprinted 3,333,333).
    assert -2.0 * FORCES["U4-U5"] == printed("312,500")


def test_the_printed_first_tie_is_on_the_safe_side() -> None:
    # 75,000 x 15.8 / 12 = 98,750 lb, against the panel's own shear of 52,500 lb.
    assert printed("98,750") == 75_000 * 15.8 / 12
    assert FORCES["U1-L2"] < 98_750
