"""J. M. Gere and B. J. Goodno, Mechanics of Materials, problem 5.6-7: joists of a floor of planks.

Solution read at coursehero.com, documents 5584262 and 6640834.

Joists 16 in apart, 10.5 ft long, 120 lb/ft2 in all, 1350 psi allowed. Printed: q = 13.333 lb/in,
M_max = 26,460 lb-in, S = 19.6 in3.
"""

import pytest

from eyebar.loads.floor_dead import stringer_weight, uniform_moment
from eyebar.sections.beams import bending_modulus
from eyebar.sections.shapes import Stick, Timbers
from tests.published.printing import printed

ALONG = stringer_weight(0.120, 16 / 12, 0.0)
MOMENT = uniform_moment(ALONG, 10.5 / 2, 10.5) * 12


def test_the_load_along_a_joist() -> None:
    assert printed("13.333") == ALONG * 1000 / 12


def test_the_greatest_moment() -> None:
    assert printed("26,460", unit=10) == MOMENT * 1000


def test_the_section_modulus_that_it_needs() -> None:
    assert printed("19.6") == MOMENT / 1.350
    # The joist chosen, 2 in x 10 in, of 1 1/2 in x 9 1/4 in as dressed.
    chosen = Timbers(sticks=(Stick(width=1.5, depth=9.25),))
    assert bending_modulus(chosen) == pytest.approx(1.5 * 9.25**2 / 6)
    assert bending_modulus(chosen) > MOMENT / 1.350
