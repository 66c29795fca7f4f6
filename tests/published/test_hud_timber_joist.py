"""Residential Structural Design Guide, 2nd ed. (HUD), example 5.1: a timber joist.

A 2x8 (1.5 in x 7.25 in) 16 in apart: F_b 975 psi, C_r 1.15, C_F 1.2: F'_b = 1345 psi; S 13.14 in3,
I = 47.63 in4; under 30 + 10 lb/ft2 it spans 14.865 ft in bending.
"""

from math import sqrt

from eyebar.resistance.decks import strip_modulus
from eyebar.resistance.timber_factors import adjusted_bending
from tests.published.printing import printed


def test_the_joist_of_the_example() -> None:
    stress = adjusted_bending(
        975.0, duration=1.0, wet=1.0, size=1.2, flat=1.0, incised=1.0, repetitive=1.15
    )
    assert stress == printed("1345", within=1.0, because="1,345.5 is printed cut off")
    modulus = strip_modulus(1.5, 7.25)
    assert modulus == printed("13.14")
    along = 40.0 * 16 / 12 / 12
    assert sqrt(8 * stress * modulus / along) / 12 == printed("14.865", within=0.01,
                                                             because="steps before are rounded")
