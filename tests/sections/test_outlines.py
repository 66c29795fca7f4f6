"""Outlines of sections enclose the areas that are counted, and stand where the parts stand."""

import math
from itertools import pairwise
from typing import Any

import pytest

from eyebar.sections.composed import channels_parts
from eyebar.sections.outlines import ROUND, figure
from eyebar.sections.properties import area
from eyebar.sections.shapes import (
    Angle,
    Angles,
    Channel,
    Channels,
    Eyebar,
    Eyebars,
    FlangedSegments,
    Given,
    Placed,
    Plate,
    PlatesAndAngles,
    Rod,
    Rods,
    RodShape,
    Rolled,
    RolledShape,
    Segment,
    Side,
    Stick,
    Timbers,
    Toes,
)

CHANNEL = Channel(depth=9.0, web=0.3125, flange=2.5, flange_thickness=0.375)
ANGLE = Angle(upright=3.0, level=4.0, upright_thickness=0.375, level_thickness=0.5)
SIDE = Side(web=Plate(width=12.0, thickness=0.375), top=ANGLE, bottom=ANGLE)
ONE_WEB = Side(web=None, top=ANGLE, bottom=ANGLE)
SECTIONS: dict[str, Any] = {
    "eyebars": Eyebars(bars=(Eyebar(width=3.0, thickness=0.625, head=7.0, hole=2.8),) * 2),
    "square rod": Rods(rods=(Rod(shape=RodShape.SQUARE, size=1.0),)),
    "sticks": Timbers(sticks=(Stick(width=6.0, depth=12.0),)),
    **{
        f"channels, toes {toes}, {'closed' if cover else 'open'}": Channels(
            near=CHANNEL, far=CHANNEL, apart=8.0, toes=toes, cover=cover,
            bottom=cover and Plate(width=9.0, thickness=0.25),
        )
        for toes in Toes for cover in (None, Plate(width=14.0, thickness=0.25))
    },
    **{
        f"two webs, toes {toes}": PlatesAndAngles(
            near=SIDE, far=SIDE, middle=None, apart=10.0, toes=toes,
            cover=Plate(width=20.0, thickness=0.375),
        )
        for toes in Toes
    },
    "one web": PlatesAndAngles(
        near=ONE_WEB, far=ONE_WEB, middle=Plate(width=24.0, thickness=0.3125), apart=None,
        toes=Toes.OUT,
    ),
    "single angle": Angles(angles=(ANGLE,), placed=Placed.SINGLE),
    "back to back": Angles(angles=(ANGLE, ANGLE), placed=Placed.BACK_TO_BACK, apart=0.375),
    "star": Angles(angles=(ANGLE,) * 4, placed=Placed.STAR, apart=0.375),
    "box": Angles(angles=(ANGLE,) * 4, placed=Placed.BOX, backs=14.0, backs_across=12.0),
    **{
        f"rolled {shape}": Rolled(
            shape=shape, number=2, depth=10.0, web=0.375, flange=4.5, flange_thickness=0.5
        )
        for shape in (RolledShape.I, RolledShape.CHANNEL, RolledShape.TEE, RolledShape.ANGLE)
    },
}


def enclosed(points: Any) -> float:
    """The area inside a figure, from its corners (Gauss's formula)."""
    return abs(math.fsum(
        x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairwise((*points, points[0]))
    )) / 2


@pytest.mark.parametrize("name", SECTIONS)
def test_outlines_enclose_the_area_that_is_counted(name: str) -> None:
    # Other method: the area from the corners against the area from the sizes.
    section = SECTIONS[name]
    pieces = figure(section).pieces
    assert math.fsum(enclosed(one.outline) for one in pieces) == pytest.approx(area(section))


def test_a_round_rod_is_drawn_with_corners_on_its_circle() -> None:
    # By hand: of a circle of diameter d a figure of n corners on it encloses n/2 r² sin(2 pi / n).
    rod = Rods(rods=(Rod(shape=RodShape.ROUND, size=1.125),))
    (piece,) = figure(rod).pieces
    by_hand = ROUND / 2 * 0.5625**2 * math.sin(2 * math.pi / ROUND)
    assert enclosed(piece.outline) == pytest.approx(by_hand)
    assert by_hand == pytest.approx(area(rod), rel=0.006)


def test_a_column_of_segments_encloses_its_metal_within_the_flats_that_stand_for_arcs() -> None:
    column = FlangedSegments(
        segments=(Segment(thickness=0.25, flange=1.25, flange_thickness=0.25),) * 4, inside=8.0
    )
    drawn = math.fsum(enclosed(one.outline) for one in figure(column).pieces)
    # Walls drawn by chords of 7.5 deg lose 0.3 % of their area; what the flanges' feet share with
    # the curve is as little.
    assert drawn == pytest.approx(area(column), rel=0.02)


def test_a_channel_stands_where_its_part_stands() -> None:
    # By hand: toes out, 8 in between the backs: near channel from -4 outward to -6.5, 9 in high.
    section = SECTIONS["channels, toes out, open"]
    near = figure(section).pieces[0]
    xs, ys = zip(*near.outline, strict=True)
    assert (min(xs), max(xs), min(ys), max(ys)) == pytest.approx((-6.5, -4.0, 0.0, 9.0))
    part = channels_parts(section)[0]
    assert (min(xs), max(xs)) == pytest.approx((part.left, part.right))


def test_what_was_never_measured_has_sizes_and_no_outline() -> None:
    section = Eyebars(bars=(Eyebar(width=3.0, thickness=None, head=None, hole=None),))
    (piece,) = figure(section).pieces
    assert piece.outline == ()
    assert dict(piece.sizes) == {"width": 3.0, "thickness": None}


def test_a_section_given_by_numbers_has_no_outline() -> None:
    given = Given(area=12.5, net_area=None, r_x=None, r_y=None, top=None, bottom=None, source="s")
    assert figure(given).pieces[0].outline == ()
