"""S. P. Timoshenko and J. M. Gere, Theory of Elastic Stability, 2nd ed. (1961): twisting column.

A cross of plates 24 in wide and 1 in thick (A 48 in2, torsion constant 16 in4, inertia 1,152 in4
both ways), 240 in long, E 29,000 ksi, Poisson's ratio 0.3: it twists under 3,718 kip. Read as
quoted in an example that checks programs against it, scribd.com, document 229742842.
"""

import math

from eyebar.resistance.twisting import shear_modulus, twisting_stress
from tests.published.printing import printed


def test_the_load_at_which_the_cross_twists() -> None:
    shear = shear_modulus(29_000.0)
    stress = twisting_stress(
        rigidity=shear, torsion=16.0, modulus=29_000.0, warping=0.0, length=240.0, area=48.0,
        polar_radius=math.sqrt((1152 + 1152) / 48),
    )
    assert 48 * stress == printed("3,718")
    # By hand: G (t / b)^2 with legs of 12 in is G / 144 = 77.46 ksi, the same load.
    assert 48 * shear / 144 == printed("3,718")
