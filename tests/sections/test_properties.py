"""Areas, centres of gravity and inertias against outlines integrated by Green's theorem."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from eyebar.errors import NotMeasured, OutOfRange
from eyebar.sections.properties import Properties, area, channel_properties, properties
from eyebar.sections.shapes import (
    Channel,
    Channels,
    Eyebar,
    Eyebars,
    Given,
    Plate,
    Plates,
    Rod,
    Rods,
    RodShape,
    Rolled,
    RolledShape,
    Toes,
)
from tests.sections.outlines import ROLLED_OUTLINES, box, channel_outlines, integrated

sizes = st.floats(0.125, 1.0)


@st.composite
def channels(draw: st.DrawFn) -> Channels:
    depth = draw(st.floats(4, 15))

    def one() -> Channel:
        return Channel(
            depth=depth, web=draw(sizes), flange=draw(st.floats(1.5, 4)),
            flange_thickness=draw(sizes),
        )

    cover = draw(st.none() | st.builds(Plate, width=st.floats(8, 24), thickness=sizes))
    return Channels(
        near=one(), far=one(), apart=draw(st.floats(8, 14)), toes=draw(st.sampled_from(Toes)),
        cover=cover,
    )


@given(channels())
def test_two_channels_and_a_plate_are_what_their_outline_encloses(section: Channels) -> None:
    assert section.apart is not None
    assert section.near.depth is not None
    outlines = channel_outlines(section.near, section.apart / 2, right=False, toes=section.toes)
    outlines += channel_outlines(section.far, section.apart / 2, right=True, toes=section.toes)
    top = section.near.depth
    if section.cover is not None:
        half, thickness = section.cover.width, section.cover.thickness
        assert half is not None
        assert thickness is not None
        outlines.append(box(-half / 2, top, half / 2, top + thickness))
        top += thickness
    size, x, y, i_x, i_y, _ = integrated(outlines)
    side = max(abs(px - x) for outline in outlines for px, _ in outline)
    got = properties(section)
    assert area(section) == got.area
    assert (got.area, got.y_bar, got.i_x, got.i_y, got.top, got.bottom, got.side) == pytest.approx(
        (size, y, i_x, i_y, top - y, y, side), rel=1e-9
    )
    assert got.r_x == pytest.approx(math.sqrt(i_x / size))
    assert got.r_least == min(got.r_x, got.r_y)


@given(channels())
def test_one_channel_is_what_its_outline_encloses(section: Channels) -> None:
    size, x, _, i_x, i_y, _ = integrated(
        channel_outlines(section.near, 0.0, right=True, toes=Toes.OUT)
    )
    got = channel_properties(section.near)
    assert (got.area, got.centre, got.i_x, got.i_y) == pytest.approx((size, x, i_x, i_y), rel=1e-9)


@pytest.mark.parametrize("shape", list(RolledShape))
@given(depth=st.floats(3, 24), web=sizes, flange=st.floats(2, 8), thickness=sizes)
def test_a_rolled_shape_is_what_its_outline_encloses(
    shape: RolledShape, depth: float, web: float, flange: float, thickness: float
) -> None:
    outline = ROLLED_OUTLINES[shape](depth, web, flange, thickness)
    size, x, y, i_x, i_y, product = integrated([outline])
    got = properties(
        Rolled(
            shape=shape, number=1, depth=depth, web=web, flange=flange, flange_thickness=thickness
        )
    )
    # Of tees and angles heights are measured from the back of the flange, drawn at the depth.
    edge = depth if shape in (RolledShape.TEE, RolledShape.ANGLE) else 0.0
    assert (got.area, got.y_bar, got.i_x, got.i_y, got.side) == pytest.approx(
        (size, y - edge, i_x, i_y, max(x, flange - x)), rel=1e-9
    )
    assert (got.top, got.bottom) == pytest.approx((depth - y, y))
    # Principal axes by the eigenvalues of the inertia tensor, not by Mohr's formula.
    least = (i_x + i_y) / 2 - math.sqrt((i_x + i_y) ** 2 / 4 - (i_x * i_y - product**2))
    assert got.r_least == pytest.approx(math.sqrt(least / size), rel=1e-6)


def test_a_pair_of_rolled_shapes_that_nothing_ties_has_twice_of_everything() -> None:
    def tee(number: int) -> Properties:
        return properties(
            Rolled(
                shape=RolledShape.TEE, number=number, depth=4, web=0.5, flange=4,
                flange_thickness=0.5,
            )
        )

    one, two = tee(1), tee(2)
    assert (two.area, two.i_x, two.i_y) == (2 * one.area, 2 * one.i_x, 2 * one.i_y)
    assert (two.r_x, two.r_least, two.top) == (one.r_x, one.r_least, one.top)


def test_eyebars_side_by_side_add_up() -> None:
    bars = tuple(
        Eyebar(width=3, thickness=thickness, head=7, hole=2.5) for thickness in (0.75, 1.0)
    )
    got = properties(Eyebars(bars=bars))
    # By hand: 3 x (0.75 + 1) = 5.25; 1.75 x 27 / 12 = 3.9375; 3 x (0.421875 + 1) / 12 = 0.35546875.
    assert (got.area, got.i_x, got.i_y) == pytest.approx((5.25, 3.9375, 0.35546875))
    assert (got.top, got.side) == (1.5, 0.5)


def test_rods_round_and_square() -> None:
    round_rod = Rod(shape=RodShape.ROUND, size=1.25)
    square = Rod(shape=RodShape.SQUARE, size=1.0)
    # By hand: pi x 1.25^2 / 4 = 1.22718; pi x 1.25^4 / 64 = 0.119842; 1 x 1 = 1; 1 / 12 = 0.083333.
    got = properties(Rods(rods=(round_rod, square)))
    assert got.area == pytest.approx(2.22718, abs=5e-6)
    assert got.i_x == pytest.approx(0.119842 + 0.083333, abs=2e-6)


def test_plates_stand_upright() -> None:
    got = properties(Plates(plates=(Plate(width=8, thickness=0.5), Plate(width=8, thickness=0.5))))
    # By hand: 2 x 4 = 8; 1 x 512 / 12 = 42.6667.
    assert (got.area, got.i_x, got.top) == pytest.approx((8.0, 42.666667, 4.0))


def test_given_properties_are_taken_as_they_are() -> None:
    section = Given(
        area=10.0, net_area=9.0, r_x=3.0, r_y=2.0, top=4.0, bottom=5.0, source="a drawing"
    )
    got = properties(section)
    assert (got.area, got.i_x, got.i_y, got.top, got.bottom) == (10.0, 90.0, 40.0, 4.0, 5.0)
    with pytest.raises(NotMeasured, match="fibre at the side"):
        _ = got.side


def test_a_cover_plate_moves_the_centre_up() -> None:
    channel = Channel(depth=8, web=0.3125, flange=2.25, flange_thickness=0.375)
    cover = Plate(width=14, thickness=0.25)
    bare = properties(Channels(near=channel, far=channel, apart=8, toes=Toes.OUT))
    covered = properties(Channels(near=channel, far=channel, apart=8, toes=Toes.OUT, cover=cover))
    assert bare.y_bar == pytest.approx(4.0)
    # By hand: one channel 8 x 0.3125 + 2 x 1.9375 x 0.375 = 3.953125, two 7.90625; plate 3.5 at
    # 8.125: (7.90625 x 4 + 3.5 x 8.125) / 11.40625 = 60.0625 / 11.40625 = 5.26575.
    assert covered.y_bar == pytest.approx(5.26575, abs=5e-6)


def test_a_size_that_was_never_measured_is_named() -> None:
    eyebars = Eyebars(bars=(Eyebar(width=3, thickness=None, head=7, hole=2.5),))
    with pytest.raises(NotMeasured) as caught:
        area(eyebars)
    assert caught.value.what == "thickness"


def test_what_is_not_needed_may_be_unknown() -> None:
    # The area of two channels does not need their distance; the inertia does.
    channel = Channel(depth=8, web=0.25, flange=2, flange_thickness=0.25)
    section = Channels(near=channel, far=channel, apart=None, toes=Toes.OUT)
    # By hand: 2 x (8 x 0.25 + 2 x 1.75 x 0.25) = 5.75.
    assert area(section) == pytest.approx(5.75)
    with pytest.raises(NotMeasured, match="distance between the channels"):
        properties(section)


def test_channels_of_unequal_depth_are_refused() -> None:
    near = Channel(depth=8, web=0.25, flange=2, flange_thickness=0.25)
    far = Channel(depth=7, web=0.25, flange=2, flange_thickness=0.25)
    with pytest.raises(OutOfRange, match="depth of the far channel is 7"):
        properties(Channels(near=near, far=far, apart=8, toes=Toes.OUT))


def test_flanges_that_would_overlap_are_refused() -> None:
    # By hand: two flanges reach 2 x (4 - 0.25) = 7.5 in into a space of 6 in.
    channel = Channel(depth=8, web=0.25, flange=4, flange_thickness=0.25)
    with pytest.raises(OutOfRange, match="distance between the channels is 6"):
        properties(Channels(near=channel, far=channel, apart=6, toes=Toes.IN))
