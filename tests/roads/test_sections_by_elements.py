"""Section properties against a general cross-section library that meshes an outline.

The library knows nothing of channels or angles: it is given the outlines alone, cuts them into
triangles and integrates over these, and for twisting solves Saint-Venant's problem on them.
"""

from dataclasses import dataclass
from typing import Any

import pytest

from eyebar.sections.properties import properties
from eyebar.sections.shapes import (
    Angle,
    Angles,
    Channel,
    Channels,
    Placed,
    Plate,
    PlatesAndAngles,
    Rolled,
    RolledShape,
    Section,
    Side,
    Taper,
    Toes,
)
from eyebar.sections.twist import twists
from tests.sections.outlines import (
    ROLLED_OUTLINES,
    Outline,
    angle_outline,
    box,
    channel_outlines,
    ring_outline,
)

EXACT = 1e-7
"""Triangles fill straight sides exactly: what is left is rounding."""
LEGS, THICK = (3.0, 2.5), (0.3125, 0.3125)
ANGLE = Angle(upright=3.0, level=2.5, upright_thickness=0.3125, level_thickness=0.3125)
CHANNEL = Channel(depth=9.0, web=0.3125, flange=2.5, flange_thickness=0.4375)
THIN = Channel(depth=9.0, web=0.25, flange=2.5, flange_thickness=0.375)
COVER = Plate(width=16.0, thickness=0.3125)


@dataclass(frozen=True)
class Meshed:
    """What the library finds: area, centre, inertias, product, principal inertias."""

    area: float
    x: float
    y: float
    i_x: float
    i_y: float
    product: float
    least: float


def geometry(outlines: list[Outline], mesh: float) -> Any:
    """The library's analysis of some outlines in triangles of at most so much area [in2]."""
    # Imported here: it takes seconds, and brings a plotting library.
    from sectionproperties.analysis import Section as Analysis
    from sectionproperties.pre.geometry import CompoundGeometry, Geometry
    from shapely import Polygon

    parts = [Geometry(Polygon(one)) for one in outlines]
    whole = parts[0] if len(parts) == 1 else CompoundGeometry(parts)
    whole.create_mesh(mesh_sizes=[mesh])
    return Analysis(whole)


def meshed(outlines: list[Outline]) -> Meshed:
    found = geometry(outlines, 0.5)
    found.calculate_geometric_properties()
    (x, y), (i_x, i_y, product) = found.get_c(), found.get_ic()
    _, least = found.get_ip()
    return Meshed(
        area=found.get_area(), x=x, y=y, i_x=i_x, i_y=i_y, product=product, least=least
    )


def an_angle(heel: tuple[float, float], points: tuple[int, int]) -> Outline:
    return angle_outline(LEGS, THICK, heel, points)


def pair_of_channels(toes: Toes) -> list[Outline]:
    return [
        *channel_outlines(CHANNEL, 4.5, right=False, toes=toes),
        *channel_outlines(THIN, 4.5, right=True, toes=toes),
    ]


TAPERED = Rolled(
    shape=RolledShape.I, number=1, depth=10.0, web=0.3125, flange=4.625, flange_thickness=None,
    taper=Taper(edge=0.3125, at_web=0.6875),
)
SPLAYED = [[
    (-2.3125, 0.0), (2.3125, 0.0), (2.3125, 0.3125), (0.15625, 0.6875), (0.15625, 9.3125),
    (2.3125, 9.6875), (2.3125, 10.0), (-2.3125, 10.0), (-2.3125, 9.6875), (-0.15625, 9.3125),
    (-0.15625, 0.6875), (-2.3125, 0.3125),
]]
CHORD = PlatesAndAngles(
    near=Side(web=Plate(width=12.0, thickness=0.375), top=ANGLE, bottom=ANGLE),
    far=Side(web=Plate(width=12.0, thickness=0.3125), top=ANGLE, bottom=ANGLE),
    middle=None, apart=9.0, toes=Toes.OUT, cover=Plate(width=18.0, thickness=0.375), bottom=None,
)
CHORD_OUTLINES = [
    box(-4.875, 0.0, -4.5, 12.0), box(4.5, 0.0, 4.8125, 12.0), box(-9.0, 12.0, 9.0, 12.375),
    an_angle((-4.875, 12.0), (-1, -1)), an_angle((-4.875, 0.0), (-1, 1)),
    an_angle((4.8125, 12.0), (1, -1)), an_angle((4.8125, 0.0), (1, 1)),
]
CASES: dict[str, tuple[Section, list[Outline], float]] = {
    # Name: section, outlines, and the height in the drawing from which the section measures.
    "channels, toes out, two plates": (
        Channels(near=CHANNEL, far=THIN, apart=9.0, toes=Toes.OUT, cover=COVER, bottom=COVER),
        [*pair_of_channels(Toes.OUT), box(-8, 9, 8, 9.3125), box(-8, -0.3125, 8, 0)], 0.0,
    ),
    "channels, toes in, a plate above": (
        Channels(near=CHANNEL, far=THIN, apart=9.0, toes=Toes.IN, cover=COVER, bottom=None),
        [*pair_of_channels(Toes.IN), box(-8, 9, 8, 9.3125)], 0.0,
    ),
    "beam with tapered flanges": (TAPERED, SPLAYED, 0.0),
    "single angle": (
        Angles(angles=(ANGLE,), placed=Placed.SINGLE), [an_angle((0, 0), (1, -1))], 0.0,
    ),
    "star of two angles": (
        Angles(angles=(ANGLE, ANGLE), placed=Placed.STAR, apart=0.375),
        [an_angle((-0.1875, -0.1875), (-1, -1)), an_angle((0.1875, 0.1875), (1, 1))], 0.0,
    ),
    "star of four angles": (
        Angles(angles=(ANGLE,) * 4, placed=Placed.STAR, apart=0.375),
        [an_angle((aside * 0.1875, up * 0.1875), (aside, up))
         for aside in (-1, 1) for up in (-1, 1)], 0.0,
    ),
    "four angles laced as an I": (
        Angles(angles=(ANGLE,) * 4, placed=Placed.LACED, apart=0.25, backs=10.0),
        [an_angle((aside * 0.125, height), (aside, up))
         for aside in (-1, 1) for height, up in ((10.0, -1), (0.0, 1))], 0.0,
    ),
    "box of four angles": (
        Angles(angles=(ANGLE,) * 4, placed=Placed.BOX, backs=12.0, backs_across=10.0),
        [an_angle((side * 5.0, level), (-side, up))
         for side in (-1, 1) for level, up in ((12.0, -1), (0.0, 1))], 0.0,
    ),
    "webs, angles and a plate above": (CHORD, CHORD_OUTLINES, 0.0),
}


@pytest.mark.parametrize("name", CASES)
def test_area_centre_and_inertias_are_those_of_the_meshed_outline(name: str) -> None:
    section, outlines, datum = CASES[name]
    got, by_mesh = properties(section), meshed(outlines)
    assert (got.area, got.i_x, got.i_y) == pytest.approx(
        (by_mesh.area, by_mesh.i_x, by_mesh.i_y), rel=EXACT
    )
    assert (got.x_bar, got.y_bar + datum) == pytest.approx(
        (by_mesh.x, by_mesh.y), abs=EXACT * 10
    )
    assert got.product == pytest.approx(by_mesh.product, abs=EXACT * (got.i_x + got.i_y))


@pytest.mark.parametrize("name", ["single angle", "star of two angles", "star of four angles"])
def test_the_least_radius_is_that_of_the_meshed_outline(name: str) -> None:
    section, outlines, _ = CASES[name]
    by_mesh = meshed(outlines)
    assert properties(section).r_least == pytest.approx(
        (by_mesh.least / by_mesh.area) ** 0.5, rel=1e-6
    )


def test_a_segment_of_a_round_column_is_a_piece_of_a_ring() -> None:
    # The library's own road to the ring that the columns' outlines are made of: 400 chords for a
    # quarter leave out 1 part in 10^6.
    by_mesh = meshed([ring_outline(2.75, 3.0, 0.0, 3.14159265358979 / 2)])
    # By hand: pi (3^2 - 2.75^2) / 4 = 1.12900; I about the centre of the ring pi (3^4 - 2.75^4)/16.
    about = by_mesh.i_x + by_mesh.area * by_mesh.y**2
    assert (by_mesh.area, about) == pytest.approx((1.129010, 4.674807), rel=1e-5)


@pytest.mark.parametrize("shape", list(RolledShape))
def test_old_rolled_shapes_are_stiff_against_twisting_as_saint_venant_has_it(
    shape: RolledShape,
) -> None:
    sizes = {"depth": 8.0, "web": 0.3125, "flange": 4.0, "flange_thickness": 0.4375}
    (twist,) = twists(Rolled(shape=shape, number=1, taper=None, **sizes))
    found = geometry([ROLLED_OUTLINES[shape](*sizes.values())], 0.01)
    found.calculate_geometric_properties()
    found.calculate_warping_properties()
    # Thin plates: their ends are counted full, what the corners add is left out, and so are the
    # fillets, which the outline has not. At a width of 9 thicknesses that is 4 % at the most.
    assert twist.torsion == pytest.approx(found.get_j(), rel=0.04)
    if twist.warping:
        assert twist.warping == pytest.approx(found.get_gamma(), rel=0.03)
    (x, y), (s_x, s_y) = found.get_c(), found.get_sc()
    assert (twist.aside, twist.above) == pytest.approx(
        (s_x - x, s_y - y), abs=0.03 * sizes["flange"]
    )
