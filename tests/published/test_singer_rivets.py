"""F. L. Singer, Strength of Materials: a rivet of 20.5 mm, illustrative problem on riveted joints.

Shear 60 MPa: one rivet in single shear 19.8 kN, in double shear 39.6 kN; bearing 130 MPa on a main
plate of 14 mm: 37.3 kN. Read at books.google.com, excerpt on rivets. Newtons and millimetres go
through as kips and inches do.
"""

from eyebar.resistance.rivets import allowable_bearing, full_bearing, rivet_shear
from tests.published.printing import printed


def test_single_and_double_shear() -> None:
    assert rivet_shear(1, 60.0, 20.5) / 1000 == printed("19.8")
    assert rivet_shear(2, 60.0, 20.5) / 1000 == printed("39.6")


def test_bearing_on_the_main_plate() -> None:
    assert full_bearing(1.0, 130.0, rivet=20.5, thinner=14.0) / 1000 == printed("37.3")
    of_strong_metal = allowable_bearing(130.0, 400.0, of_steel=400.0, rivet=20.5, thinner=14.0)
    assert of_strong_metal / 1000 == printed("37.3")
