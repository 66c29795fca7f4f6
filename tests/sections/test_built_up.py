"""Built-up sections against their outlines, integrated by Green's theorem."""

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from eyebar.errors import NotMeasured, OutOfRange
from eyebar.sections.built import Spread
from eyebar.sections.properties import area, channel_properties, properties
from eyebar.sections.shapes import (
    Angle,
    Angles,
    Channel,
    Channels,
    FlangedSegments,
    Holes,
    Placed,
    Plate,
    PlatesAndAngles,
    Section,
    Segment,
    Side,
    Stick,
    Taper,
    Timbers,
    Toes,
)
from tests.sections.outlines import (
    Outline,
    angle_outline,
    box,
    flange_outline,
    integrated,
    least_radius,
    ring_outline,
)

legs = st.floats(2.0, 6.0)
thin = st.floats(0.1875, 0.75)
gaps = st.floats(0.0, 1.0)


@st.composite
def angles(draw: st.DrawFn) -> Angle:
    return Angle(
        upright=draw(legs), level=draw(legs), upright_thickness=draw(thin),
        level_thickness=draw(thin),
    )


def outline(angle: Angle, heel: tuple[float, float], points: tuple[int, int]) -> Outline:
    return angle_outline(
        (angle.upright or 0.0, angle.level or 0.0),
        (angle.upright_thickness or 0.0, angle.level_thickness or 0.0), heel, points,
    )


def same(
    section: Section, outlines: list[Outline], *, lowest: float, near: float = 1e-9
) -> None:
    """Area, centre, inertias, product and reach of a section are those of its outlines; `lowest` is
    the height of the lowest fibre where the section is measured from."""
    size, x, y, i_x, i_y, product = integrated(outlines)
    got = properties(section)
    points = [point for one in outlines for point in one]
    assert area(section) == pytest.approx(got.area, rel=1e-12)
    assert (got.area, got.i_x, got.i_y) == pytest.approx((size, i_x, i_y), rel=near)
    assert (got.x_bar, got.y_bar) == pytest.approx((x, y), abs=near * 10)
    assert got.product == pytest.approx(product, abs=near * (i_x + i_y))
    assert (got.top, got.bottom) == pytest.approx(
        (max(py for _, py in points) - y, y - lowest), abs=near * 100
    )
    assert got.side == pytest.approx(max(abs(px - x) for px, _ in points), abs=near * 100)
    assert got.r_least**2 + got.r_greatest**2 == pytest.approx(got.r_x**2 + got.r_y**2)


def slants(section: Section, outlines: list[Outline]) -> None:
    """The least radius is the least of any axis."""
    assert properties(section).r_least == pytest.approx(
        least_radius(integrated(outlines)), rel=1e-5
    )


@given(angles())
def test_a_single_angle_bends_about_its_slanting_axis(angle: Angle) -> None:
    section = Angles(angles=(angle,), placed=Placed.SINGLE)
    drawn = [outline(angle, (0.0, 0.0), (1, -1))]
    same(section, drawn, lowest=-(angle.upright or 0.0))
    slants(section, drawn)


@given(angles(), gaps)
def test_two_angles_back_to_back_make_a_tee(angle: Angle, gap: float) -> None:
    section = Angles(angles=(angle, angle), placed=Placed.BACK_TO_BACK, apart=gap)
    drawn = [
        outline(angle, (-gap / 2, 0.0), (-1, -1)), outline(angle, (gap / 2, 0.0), (1, -1)),
    ]
    same(section, drawn, lowest=-(angle.upright or 0.0))
    assert properties(section).x_bar == pytest.approx(0.0, abs=1e-12)


@given(angles(), angles(), gaps)
def test_two_angles_in_a_star_bend_about_a_slanting_axis(
    near: Angle, far: Angle, gap: float
) -> None:
    section = Angles(angles=(near, far), placed=Placed.STAR, apart=gap)
    half = gap / 2
    drawn = [outline(near, (-half, -half), (-1, -1)), outline(far, (half, half), (1, 1))]
    same(section, drawn, lowest=-half - (near.upright or 0.0))
    slants(section, drawn)


@given(angles(), gaps)
def test_four_angles_in_a_star_are_a_cross(angle: Angle, gap: float) -> None:
    section = Angles(angles=(angle,) * 4, placed=Placed.STAR, apart=gap)
    half = gap / 2
    drawn = [
        outline(angle, (aside * half, up * half), (aside, up))
        for aside in (-1, 1) for up in (1, -1)
    ]
    same(section, drawn, lowest=-half - (angle.upright or 0.0))


@given(angles(), angles(), st.floats(8.0, 16.0), st.sampled_from(Toes))
def test_an_angle_laced_above_another(
    upper: Angle, lower: Angle, backs: float, toes: Toes
) -> None:
    section = Angles(angles=(upper, lower), placed=Placed.LACED, backs=backs, toes=toes)
    facing = 1 if toes is Toes.IN else -1
    drawn = [outline(upper, (0.0, backs), (1, -facing)), outline(lower, (0.0, 0.0), (1, facing))]
    lowest = 0.0 if toes is Toes.IN else -(lower.upright or 0.0)
    same(section, drawn, lowest=lowest)


@given(angles(), gaps, st.floats(8.0, 16.0))
def test_pairs_of_angles_laced_above_each_other_are_an_i(
    angle: Angle, gap: float, backs: float
) -> None:
    section = Angles(angles=(angle,) * 4, placed=Placed.LACED, apart=gap, backs=backs)
    drawn = [
        outline(angle, (aside * gap / 2, height), (aside, up))
        for aside in (-1, 1) for height, up in ((backs, -1), (0.0, 1))
    ]
    same(section, drawn, lowest=0.0)
    # By hand: of an I alike above and below the centre lies at mid-height.
    assert properties(section).y_bar == pytest.approx(backs / 2)


@given(angles(), gaps, st.floats(14.0, 20.0), st.sampled_from(Toes))
def test_pairs_of_angles_laced_side_by_side_are_an_h(
    angle: Angle, gap: float, backs: float, toes: Toes
) -> None:
    section = Angles(
        angles=(angle,) * 4, placed=Placed.LACED, apart=gap, backs_across=backs,
        spread=Spread.ACROSS, toes=toes,
    )
    facing = 1 if toes is Toes.IN else -1
    drawn = [
        outline(angle, (side * backs / 2, up * gap / 2), (-side * facing, up))
        for side in (-1, 1) for up in (1, -1)
    ]
    same(section, drawn, lowest=-gap / 2 - (angle.upright or 0.0))


@given(angles(), st.floats(13.0, 20.0), st.floats(13.0, 20.0))
def test_four_angles_at_the_corners_of_a_box(angle: Angle, height: float, width: float) -> None:
    section = Angles(
        angles=(angle,) * 4, placed=Placed.BOX, backs=height, backs_across=width
    )
    drawn = [
        outline(angle, (side * width / 2, level), (-side, up))
        for side in (-1, 1) for level, up in ((height, -1), (0.0, 1))
    ]
    same(section, drawn, lowest=0.0)


def test_rust_at_the_toes_moves_the_centre_towards_the_backs() -> None:
    whole = Angle(upright=3.0, level=2.5, upright_thickness=0.25, level_thickness=0.25)
    short = replace(whole, upright=2.5)
    # By hand: centre below the backs (.25 x 4.5 + 2.25 x .03125) / 1.3125 = .91071, and
    # (.25 x 3.125 + 2.25 x .03125) / 1.1875 = .71711.
    for angle, below in ((whole, 0.91071), (short, 0.71711)):
        got = properties(Angles(angles=(angle, angle), placed=Placed.BACK_TO_BACK, apart=0.0))
        assert got.y_bar == pytest.approx(-below, abs=1e-5)


def test_angles_that_rust_has_parted_bend_each_by_itself() -> None:
    angle = Angle(upright=3.0, level=2.5, upright_thickness=0.25, level_thickness=0.25)
    pair = Angles(angles=(angle, angle), placed=Placed.BACK_TO_BACK, apart=0.375)
    one = properties(Angles(angles=(angle,), placed=Placed.SINGLE))
    got = properties(Angles(angles=(angle, angle), placed=Placed.BACK_TO_BACK, separate=True,
                            apart=0.375))
    # Law: what nothing ties together has the sums of its inertias and the radii of one.
    assert (got.area, got.i_x) == pytest.approx((2 * one.area, 2 * one.i_x))
    assert (got.r_y, got.r_least) == pytest.approx((one.r_y, one.r_least))
    assert got.r_least < properties(pair).r_least


@st.composite
def webs(draw: st.DrawFn, *, two: bool) -> PlatesAndAngles:
    depth = draw(st.floats(10.0, 20.0))

    def side() -> Side:
        return Side(
            web=Plate(width=depth, thickness=draw(thin)) if two else None,
            top=draw(st.none() | angles()), bottom=draw(st.none() | angles()),
        )

    plate = st.none() | st.builds(Plate, width=st.floats(10, 30), thickness=thin)
    return PlatesAndAngles(
        near=side(), far=side(), middle=None if two else Plate(width=depth, thickness=draw(thin)),
        apart=draw(st.floats(13.0, 20.0)) if two else None, toes=draw(st.sampled_from(Toes)),
        cover=draw(plate), bottom=draw(plate),
    )


def web_outlines(section: PlatesAndAngles) -> tuple[list[Outline], float]:
    """The outlines of webs, angles and plates, and the height of the lowest fibre."""
    middle, half = section.middle, (section.apart or 0.0) / 2
    depth = next(
        web.width or 0.0 for web in (middle, section.near.web, section.far.web) if web is not None
    )
    drawn = []
    if middle is not None:
        half = (middle.thickness or 0.0) / 2
        drawn.append(box(-half, 0.0, half, depth))
    for aside, side in ((-1, section.near), (1, section.far)):
        thick = 0.0 if side.web is None else side.web.thickness or 0.0
        if side.web is not None:
            drawn.append(box(aside * half, 0.0, aside * (half + thick), depth))
        outwards = middle is not None or section.toes is Toes.OUT
        face, points = (half + thick, aside) if outwards else (half, -aside)
        if side.top is not None:
            drawn.append(outline(side.top, (aside * face, depth), (points, -1)))
        if side.bottom is not None:
            drawn.append(outline(side.bottom, (aside * face, 0.0), (points, 1)))
    lowest = 0.0
    for plate, level, up in ((section.cover, depth, 1), (section.bottom, 0.0, -1)):
        if plate is not None:
            wide, thick = (plate.width or 0.0) / 2, plate.thickness or 0.0
            drawn.append(box(-wide, level, wide, level + up * thick))
            lowest = min(lowest, level + up * thick)
    return drawn, lowest


@given(webs(two=True))
def test_two_webs_with_angles_and_plates(section: PlatesAndAngles) -> None:
    drawn, lowest = web_outlines(section)
    same(section, drawn, lowest=lowest)


@given(webs(two=False))
def test_one_web_with_angles_on_both_faces(section: PlatesAndAngles) -> None:
    drawn, lowest = web_outlines(section)
    same(section, drawn, lowest=lowest)


CHANNEL = Channel(depth=8.0, web=0.3125, flange=2.25, flange_thickness=0.375)
COVER = Plate(width=14.0, thickness=0.25)


def test_a_plate_above_and_one_like_it_below_leave_the_centre_where_it_was() -> None:
    got = properties(
        Channels(near=CHANNEL, far=CHANNEL, apart=8, toes=Toes.OUT, cover=COVER, bottom=COVER)
    )
    # By hand: two channels 7.90625 in2 and two plates of 3.5; I_x of a channel 8^3 x .3125 / 12 +
    # 2 x 1.9375 x .375 x 3.8125^2 + 1.9375 x .375^3 / 6 = 13.3333 + 21.1218 + .0170 = 34.4721; of a
    # plate 3.5 x 4.125^2 + 14 x .25^3 / 12 = 59.5547 + .0182 = 59.5729.
    assert (got.area, got.y_bar) == pytest.approx((14.90625, 4.0))
    assert got.i_x == pytest.approx(2 * 34.4721 + 2 * 59.5729, abs=2e-3)
    assert (got.top, got.bottom) == pytest.approx((4.25, 4.25))


def test_a_plate_below_does_not_move_what_heights_are_measured_from() -> None:
    # By hand: 7.90625 in2 at 4 and 3.5 in2 at -0.125: (31.625 - .4375) / 11.40625 = 2.73425.
    got = properties(Channels(near=CHANNEL, far=CHANNEL, apart=8, toes=Toes.OUT, bottom=COVER))
    assert got.y_bar == pytest.approx(2.73425, abs=5e-6)
    assert got.bottom == pytest.approx(2.98425, abs=5e-6)


def test_access_holes_are_taken_out_of_a_plate() -> None:
    holed = Plate(
        width=14.0, thickness=0.25, holes=Holes(width=4.0, length=9.0, spacing=24.0)
    )
    got = properties(Channels(near=CHANNEL, far=CHANNEL, apart=8, toes=Toes.OUT, cover=holed))
    whole = properties(Channels(near=CHANNEL, far=CHANNEL, apart=8, toes=Toes.OUT, cover=COVER))
    # By hand: 4 x .25 = 1 in2 gone; about the upright axis .25 x 4^3 / 12 = 1.3333 in4.
    assert whole.area - got.area == pytest.approx(1.0)
    assert whole.i_y - got.i_y == pytest.approx(4 / 3)
    with pytest.raises(OutOfRange, match="holes in cover plate is 14 in"):
        area(
            Channels(near=CHANNEL, far=CHANNEL, apart=8, toes=Toes.OUT, cover=Plate(
                width=14, thickness=0.25, holes=Holes(width=14.0, length=9.0, spacing=24.0)
            ))
        )


@given(
    depth=st.floats(4, 15), web=thin, flange=st.floats(1.5, 4), edge=st.floats(0.1, 0.5),
    more=st.floats(0.0, 0.5),
)
def test_a_channel_whose_flanges_taper(
    depth: float, web: float, flange: float, edge: float, more: float
) -> None:
    channel = Channel(
        depth=depth, web=web, flange=flange, flange_thickness=None,
        taper=Taper(edge=edge, at_web=edge + more),
    )
    root = edge + more
    drawn = [[
        (0.0, 0.0), (flange, 0.0), (flange, edge), (web, root), (web, depth - root),
        (flange, depth - edge), (flange, depth), (0.0, depth),
    ]]
    size, x, _, i_x, i_y, _ = integrated(drawn)
    got = channel_properties(channel)
    assert (got.area, got.centre, got.i_x, got.i_y) == pytest.approx((size, x, i_x, i_y), rel=1e-9)


@st.composite
def columns(draw: st.DrawFn) -> FlangedSegments:
    segment = st.builds(
        Segment, thickness=thin, flange=st.floats(0.75, 2.0), flange_thickness=thin
    )
    number = draw(st.sampled_from([4, 6, 8]))
    return FlangedSegments(
        segments=tuple(draw(segment) for _ in range(number)), inside=draw(st.floats(3.0, 12.0))
    )


@settings(deadline=None)  # thousands of chords are drawn
@given(columns())
def test_a_round_column_of_unequal_segments(section: FlangedSegments) -> None:
    inner = (section.inside or 0.0) / 2
    step = 2 * math.pi / len(section.segments)
    drawn = []
    for number, one in enumerate(section.segments):
        first, last = number * step, (number + 1) * step
        outer = inner + (one.thickness or 0.0)
        drawn.append(ring_outline(inner, outer, first, last))
        for ray, towards in ((first, 1), (last, -1)):
            drawn.append(
                flange_outline(ray, towards, outer, one.flange or 0.0, one.flange_thickness or 0.0)
            )
    # The chords miss the arcs by their angle squared over six, (1.6 / 400)^2 / 6 = 3e-6.
    same(section, drawn, lowest=min(y for one in drawn for _, y in one), near=1e-5)
    slants(section, drawn)


def test_a_round_column_of_equal_segments_is_alike_about_every_axis() -> None:
    segment = Segment(thickness=0.25, flange=1.125, flange_thickness=0.3125)
    for number in (4, 6, 8):
        got = properties(FlangedSegments(segments=(segment,) * number, inside=5.0))
        # By hand: ring pi (2.75^2 - 2.5^2) = 4.12334 in2, and a flange on either edge of each.
        assert got.area == pytest.approx(4.12334 + 2 * number * 1.125 * 0.3125, abs=1e-5)
        assert got.r_x == pytest.approx(got.r_y) == pytest.approx(got.r_least)


def test_sticks_of_timber_bend_each_by_itself() -> None:
    got = properties(Timbers(sticks=(Stick(width=4.0, depth=10.0), Stick(width=6.0, depth=10.0))))
    # By hand: 40 + 60 in2; 10 x 1000 / 12 = 833.33; 10 x (64 + 216) / 12 = 233.33.
    assert (got.area, got.i_x, got.i_y) == pytest.approx((100.0, 833.3333, 233.3333), abs=1e-3)
    assert (got.top, got.side) == (5.0, 3.0)


def test_the_area_needs_no_distances() -> None:
    side = Side(
        web=Plate(width=12.0, thickness=0.375),
        top=Angle(upright=3.0, level=3.0, upright_thickness=0.25, level_thickness=0.25),
        bottom=None,
    )
    section = PlatesAndAngles(near=side, far=side, middle=None, apart=None, toes=Toes.OUT)
    # By hand: 2 x (12 x .375 + 3 x .25 + 2.75 x .25) = 11.875.
    assert area(section) == pytest.approx(11.875)
    with pytest.raises(NotMeasured, match="distance between the webs"):
        properties(section)


def test_webs_of_unequal_depth_are_refused() -> None:
    near, far = (
        Side(web=Plate(width=width, thickness=0.375), top=None, bottom=None)
        for width in (12.0, 11.0)
    )
    with pytest.raises(OutOfRange, match="depth of the webs is 11 in and 12 in"):
        properties(PlatesAndAngles(near=near, far=far, middle=None, apart=9.0, toes=Toes.OUT))


@given(columns(), st.floats(0.05, 0.99))
def test_a_thinner_wall_never_has_more_of_anything(
    section: FlangedSegments, part: float
) -> None:
    # Law: rust outside takes area and inertia about every axis.
    thinner = replace(
        section, segments=tuple(
            replace(one, thickness=(one.thickness or 0.0) * part) for one in section.segments
        ),
    )
    before, after = properties(section), properties(thinner)
    assert after.area < before.area
    assert after.i_x <= before.i_x * (1 + 1e-12)
    assert after.i_y <= before.i_y * (1 + 1e-12)
