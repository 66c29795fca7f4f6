"""American Institute of Steel Construction, Design Examples to its Manual, versions 13.0 and 14.0.

D.9: a plate 14 in x 1/2 in with staggered holes of 7/8 in as they count (rivets of 3/4 in would
count the same): chains of 12.3, 11.5, 11.9 and 12.1 in, net area 5.75 in2 (read on scribd.com,
document 361038804).

E.2: a column 15 ft long of flanges 8 in x 1 in and a web 15 in x 1/4 in, 50 ksi: slenderness 86.5,
web 60.0 thicknesses over the limit of 35.9, Q 0.965, 508 kip with 0.90 (as quoted in manuals that
check programs against it).

E.12: a column 14 ft long, pinned, of an outside flange 5 in x 3/4 in, an inside flange 8 in x 3/4
in and a web 10 1/2 in x 3/8 in, 50 ksi: it bends about its web and twists; slenderness 98.2, 279
kip with 0.90 (so quoted too).
"""

import math

import pytest

from eyebar.resistance.column import nominal_column_stress
from eyebar.resistance.punched import Hole, chain_width, hole_width, net_width, step_width
from eyebar.resistance.thin_plates import (
    effective_width,
    idle_area,
    plate_slenderness,
    reduced_yield,
    thin_plate_factor,
)
from eyebar.resistance.twisting import (
    bending_and_twisting,
    bending_stress,
    equal_slenderness,
    polar_radius,
    twisting_part,
    twisting_stress,
)
from eyebar.sections.closed_forms import radius_of_gyration
from tests.published.printing import printed

STEEL = 29_000.0


class TestD9:
    # Lines of holes 2, 5, 9 and 12 in from the edge, the inner ones 2 1/2 in farther along.
    HOLES = (
        Hole(along=0.0, across=2.0), Hole(along=2.5, across=5.0),
        Hole(along=2.5, across=9.0), Hole(along=0.0, across=12.0),
    )

    @pytest.mark.parametrize(
        ("holes", "gauges", "width"),
        [(2, (), "12.3"), (4, (3.0, 3.0), "11.5"), (3, (3.0,), "11.9"), (3, (7.0, 3.0), "12.1")],
    )
    def test_each_chain(self, holes: int, gauges: tuple[float, ...], width: str) -> None:
        counted = hole_width(0.75)
        steps = sum(step_width(2.5, gauge) for gauge in gauges)
        # 12.25 is printed as 12.3.
        assert chain_width(14.0, holes, counted, steps) == printed(width)

    def test_the_weakest_chain_is_found(self) -> None:
        width = net_width(14.0, self.HOLES, 0.75)
        assert width == printed("11.5")
        assert width * 0.5 == printed(
            "5.75", within=0.025, because="the print multiplies the rounded 11.5 in"
        )


class TestE2:
    AREA = 2 * 8.0 + 15 * 0.25
    SLENDERNESS = 15 * 12 / radius_of_gyration(2 * 8.0**3 / 12 + 15 * 0.25**3 / 12, AREA)

    def test_slenderness(self) -> None:
        found = self.SLENDERNESS
        assert found == printed(
            "86.5", within=0.1, because="the print rounds the radius of gyration to 2.08 in"
        )

    def test_the_web_is_thin(self) -> None:
        use = plate_slenderness(15.0, 0.25, thick_limit=1.49, modulus=STEEL, yield_stress=50.0)
        assert 15 / 0.25 / use == printed("35.9")

    def test_what_the_thin_web_leaves(self) -> None:
        stress = nominal_column_stress(50.0, self.SLENDERNESS, STEEL)
        width = effective_width(
            15.0, 0.25, modulus=STEEL, stress=stress, carrying=1.92, imperfect=0.34
        )
        part = thin_plate_factor(1.0, self.AREA, idle_area(1, 15.0, width, 0.25))
        assert part == printed(
            "0.965", within=0.0035, because="the print divides the rounded areas 19.1 and 19.8 in2"
        )
        left = reduced_yield(part, 50.0)
        push = 0.90 * nominal_column_stress(left, self.SLENDERNESS, STEEL) * self.AREA
        assert push == printed(
            "508", within=2.5, because="the print rounds the area up from 19.75 to 19.8 in2"
        )


class TestE12:
    INSIDE, WEB, OUTSIDE = 8 * 0.75, 10.5 * 0.375, 5 * 0.75
    AREA = INSIDE + WEB + OUTSIDE
    BETWEEN = 11.25

    def test_slenderness_and_strength(self) -> None:
        i_y = (0.75 * 8**3 + 0.75 * 5**3 + 10.5 * 0.375**3) / 12
        slenderness = 14 * 12 / radius_of_gyration(i_y, self.AREA)
        assert slenderness == printed(
            "98.2", within=0.3, because="the print rounds the radius of gyration to 1.71 in"
        )
        # Heights above the inside flange's outer face.
        places = (0.375, 6.0, 11.625)
        areas = (self.INSIDE, self.WEB, self.OUTSIDE)
        centre = sum(a * y for a, y in zip(areas, places, strict=True)) / self.AREA
        i_x = sum(a * (y - centre) ** 2 for a, y in zip(areas, places, strict=True))
        i_x += (8 * 0.75**3 + 0.375 * 10.5**3 + 5 * 0.75**3) / 12
        below = 0.375 + self.BETWEEN * 5**3 / (8**3 + 5**3)
        above = below - centre
        radius = polar_radius(i_x, i_y, area=self.AREA, aside=0.0, above=above)
        part = twisting_part(0.0, above, radius)
        assert part == printed(
            "0.808", within=0.008, because="the print has the shear centre 2.55 in away, not 2.49"
        )
        torsion = (8 * 0.75**3 + 5 * 0.75**3 + self.BETWEEN * 0.375**3) / 3
        warping = 0.75 * self.BETWEEN**2 / 12 * (8**3 * 5**3) / (8**3 + 5**3)
        twisting = twisting_stress(
            rigidity=11_200.0, torsion=torsion, modulus=STEEL, warping=warping, length=168.0,
            area=self.AREA, polar_radius=radius,
        )
        stress = bending_and_twisting(bending_stress(STEEL, slenderness), twisting, part)
        assert stress < math.pi**2 * STEEL / slenderness**2
        push = nominal_column_stress(50.0, equal_slenderness(STEEL, stress), STEEL) * self.AREA
        assert 0.90 * push == printed(
            "279", within=1.0, because="the print rounds every step to three figures"
        )
