"""Cyclopedia of Architecture, Carpentry and Building (Chicago, c. 1912), "Use of Tables", part 4.

An I-beam 24 in, 80 lb: web .50, flange projecting 3.25 in each way, its thickness .60 at the edge
and 1.142 at the web. Printed: area 10.858 + 11.323 + 1.142 = 23.323 in2,
I = 576 + 1067.752 + 443.505 + .291 = 2087.548 in4. Read at chestofbooks.com.
"""

from eyebar.sections.properties import properties
from eyebar.sections.shapes import Rolled, RolledShape, Taper
from tests.published.printing import printed

TAPERED = Rolled(
    shape=RolledShape.I, number=1, depth=24.0, web=0.50, flange=2 * 3.25 + 0.50,
    flange_thickness=None, taper=Taper(edge=0.60, at_web=1.142),
)
BEAM = Rolled(
    shape=RolledShape.I, number=1, depth=24.0, web=0.50, flange=2 * 3.25 + 0.50,
    flange_thickness=(0.60 + 1.142) / 2,
)


def test_the_area_of_the_24_inch_beam() -> None:
    # A mean thickness gives a tapered flange's area exactly.
    assert properties(BEAM).area == printed("23.323")
    assert properties(TAPERED).area == printed("23.323")


def test_the_inertia_of_the_24_inch_beam() -> None:
    # By hand: 576 + 11.323 x (12 - .4355)^2 + 11.323 x .871^2 / 12 = 2091.03.
    assert properties(BEAM).i_x == printed(
        "2087.548", within=3.6,
        because="the print takes the taper; a flange of mean thickness sits farther out, by 0.17 %",
    )
    assert properties(BEAM).i_x > 2087.548


def test_the_inertia_with_the_flanges_taper() -> None:
    # By hand, part by part: 12 x 24^2 / 12 = 576; 7.8 x 11.7^2 = 1067.742; 3.523 x 11.2193^2 =
    # 443.45; their own 0.234 + 0.057 = 0.291.
    assert properties(TAPERED).i_x == printed(
        "2087.548", within=0.065,
        because="the print has 1067.752 and 443.505 for what its own figures make 1067.742 and "
        "443.45",
    )
