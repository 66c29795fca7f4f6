"""CE 479 wood design example, autumn 2006, scribd.com document 89270399: a wet 2x8 beam.

A 2x8 (1.5 in x 7.25 in) of Douglas fir-larch No. 1, dead load and snow, damp, on its narrow side,
held against turning: F_b 1,000 psi, C_D 1.15, C_F 1.2, C_M 0.85 since F_b C_F = 1,200 psi is over
1,150 psi: F'_b = 1173 psi. F_v 180 psi, C_M 0.97: F'_v = 201 psi. Snow has the factor of vehicles.
"""

from eyebar.bridge.floor_parts import Timber
from eyebar.office import office_values
from eyebar.resistance.timber import Stick, timber_strength
from eyebar.terms import Level, Method
from tests.published.printing import printed

DAMP = Timber(
    name="joist", species="Douglas fir-larch", grade="No. 1", wet=True, incised=False
)


def test_a_damp_two_by_eight() -> None:
    found = timber_strength(
        DAMP, Stick(breadth=1.5, depth=7.25), method=Method.ALLOWABLE_STRESS,
        level=Level.INVENTORY, reduction=1.0, shear_reduction=1.0, values=office_values(),
    )
    assert found.bending * 1000 == printed("1173")
    assert found.shear * 1000 == printed("201")
