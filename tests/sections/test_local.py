"""The plates of a section that may buckle by themselves."""

from dataclasses import replace

from eyebar.sections.local import Held, StripKind, plates_of
from eyebar.sections.shapes import (
    Angle,
    Angles,
    Channel,
    Channels,
    FlangedSegments,
    Holes,
    Placed,
    Plate,
    Plates,
    PlatesAndAngles,
    Rolled,
    RolledShape,
    Section,
    Segment,
    Side,
    Taper,
    Toes,
)

CHANNEL = Channel(depth=8.0, web=0.3125, flange=2.25, flange_thickness=0.375)


def test_channels_have_webs_held_on_both_edges_and_flanges_on_one() -> None:
    strips = plates_of(Channels(near=CHANNEL, far=CHANNEL, apart=8.0, toes=Toes.OUT))
    # By hand: between the flanges 8 - 2 x 0.375 = 7.25 in; the whole flange 2.25 in.
    assert [(one.width, one.thickness, one.held) for one in strips] == [
        (7.25, 0.3125, Held.BOTH), (2.25, 0.375, Held.ONE),
    ] * 2


def test_a_cover_plate_is_no_wider_than_the_flanges_that_hold_it() -> None:
    # By hand: 8 in between the webs and two flanges of 2.25 in: 12.5 in of a plate of 14 in.
    section = Channels(
        near=CHANNEL, far=CHANNEL, apart=8.0, toes=Toes.OUT, cover=Plate(width=14, thickness=0.25)
    )
    cover = plates_of(section)[-1]
    assert (cover.name, cover.kind, cover.width) == ("cover plate", StripKind.COVER, 12.5)
    assert not cover.perforated


def test_half_a_flange_projects_from_an_i_beam_and_a_whole_leg_from_an_angle() -> None:
    def widths(shape: RolledShape) -> list[float]:
        section = Rolled(
            shape=shape, number=1, depth=10.0, web=0.5, flange=5.0, flange_thickness=0.75
        )
        return [one.width for one in plates_of(section)]

    # By hand: 10 - 2 x 0.75 = 8.5; 5 / 2 = 2.5.
    assert widths(RolledShape.I) == [8.5, 2.5]
    assert widths(RolledShape.TEE) == [10.0, 2.5]
    assert widths(RolledShape.ANGLE) == [10.0, 5.0]


def test_plates_that_are_alike_are_counted() -> None:
    # By hand: of two I-beams two webs and eight halves of flanges; of a channel two flanges.
    beams = Rolled(
        shape=RolledShape.I, number=2, depth=10.0, web=0.5, flange=5.0, flange_thickness=0.75
    )
    assert [one.number for one in plates_of(beams)] == [2, 8]
    pair = Channels(near=CHANNEL, far=CHANNEL, apart=8.0, toes=Toes.OUT)
    assert [one.number for one in plates_of(pair)] == [1, 2, 1, 2]


def test_bars_that_are_plates_themselves_have_none() -> None:
    assert plates_of(Plates(plates=(Plate(width=8, thickness=0.5),))) == ()


ANGLE = Angle(upright=3.0, level=2.5, upright_thickness=0.25, level_thickness=0.3125)
SIDE = Side(web=Plate(width=12.0, thickness=0.375), top=ANGLE, bottom=ANGLE)


def found(section: Section) -> list[tuple[str, float, float, StripKind]]:
    return [(one.name, one.width, one.thickness, one.kind) for one in plates_of(section)]


def test_a_plate_is_as_wide_as_its_rivet_lines_and_projects_beyond_them() -> None:
    section = Channels(
        near=CHANNEL, far=CHANNEL, apart=8.0, toes=Toes.OUT, rivet_lines=11.0,
        cover=Plate(width=14, thickness=0.25), bottom=Plate(
            width=10.0, thickness=0.25, holes=Holes(width=4.0, length=9.0, spacing=24.0)
        ),
    )
    # By hand: (14 - 11) / 2 = 1.5 in beyond the rivets; the narrower plate is whole between them.
    assert found(section)[-3:] == [
        ("cover plate", 11.0, 0.25, StripKind.COVER),
        ("cover plate beyond its rivets", 1.5, 0.25, StripKind.FLANGE),
        ("bottom plate", 10.0, 0.25, StripKind.PERFORATED),
    ]
    assert plates_of(section)[-1].perforated
    assert plates_of(section)[-1].held is Held.BOTH


def test_with_toes_in_a_plate_reaches_over_the_webs_alone() -> None:
    # By hand: 8 + 2 x 0.3125 = 8.625 in of a plate of 14 in.
    section = Channels(
        near=CHANNEL, far=CHANNEL, apart=8.0, toes=Toes.IN, cover=Plate(width=14, thickness=0.25)
    )
    assert plates_of(section)[-1].width == 8.625


def test_a_tapering_flange_counts_with_its_mean_thickness() -> None:
    # By hand: (0.25 + 0.5) / 2 = 0.375.
    channel = Channel(
        depth=8.0, web=0.3125, flange=2.25, flange_thickness=None,
        taper=Taper(edge=0.25, at_web=0.5),
    )
    section = Channels(near=channel, far=channel, apart=8.0, toes=Toes.OUT)
    alike = Channels(near=CHANNEL, far=CHANNEL, apart=8.0, toes=Toes.OUT)
    assert plates_of(section) == plates_of(alike)


def test_the_legs_of_angles_stand_alone_unless_their_backs_touch() -> None:
    apart = Angles(angles=(ANGLE, ANGLE), placed=Placed.BACK_TO_BACK, apart=0.375)
    touching = Angles(angles=(ANGLE, ANGLE), placed=Placed.BACK_TO_BACK, apart=0.0)
    single = Angles(angles=(ANGLE,), placed=Placed.SINGLE)
    assert found(single) == [
        ("upright leg", 3.0, 0.25, StripKind.LEG), ("level leg", 2.5, 0.3125, StripKind.LEG),
    ]
    assert [one.name for one in plates_of(apart)] == [
        "upright leg of angle 1", "level leg of angle 1", "upright leg of angle 2",
        "level leg of angle 2",
    ]
    assert {one.kind for one in plates_of(apart)} == {StripKind.LEG}
    assert {one.kind for one in plates_of(touching)} == {StripKind.FLANGE}
    parted = Angles(
        angles=(ANGLE, ANGLE), placed=Placed.BACK_TO_BACK, apart=0.0, separate=True
    )
    assert {one.kind for one in plates_of(parted)} == {StripKind.LEG}


def test_a_web_is_held_between_the_level_legs_of_its_angles() -> None:
    section = PlatesAndAngles(
        near=SIDE, far=SIDE, middle=None, apart=9.0, toes=Toes.OUT,
        cover=Plate(width=20.0, thickness=0.25),
    )
    # By hand: 12 - 2 x 0.3125 = 11.375; plate 9 + 2 x 0.375 + 2 x 2.5 = 14.75 of its 20 in.
    strips = found(section)
    assert strips[0] == ("near web", 11.375, 0.375, StripKind.WEB)
    assert strips[1] == ("level leg of the near top angle", 2.5, 0.3125, StripKind.LEG)
    assert strips[-1] == ("cover plate", 14.75, 0.25, StripKind.COVER)
    inside = PlatesAndAngles(
        near=SIDE, far=SIDE, middle=None, apart=9.0, toes=Toes.IN,
        cover=Plate(width=20.0, thickness=0.25),
    )
    assert found(inside)[-1][1] == 9.0


def test_one_web_has_angles_on_both_faces() -> None:
    side = Side(web=None, top=ANGLE, bottom=None)
    section = PlatesAndAngles(
        near=side, far=side, middle=Plate(width=12.0, thickness=0.375), apart=None, toes=Toes.OUT,
        bottom=Plate(width=8.0, thickness=0.25),
    )
    # By hand: 12 - 0.3125 = 11.6875; nothing but the web holds the plate below: 0.375 + 2 x 2.5.
    assert found(section)[0] == ("web", 11.6875, 0.375, StripKind.WEB)
    assert [one.name for one in plates_of(section)][1:] == [
        "level leg of the near top angle", "level leg of the far top angle", "bottom plate",
    ]
    assert found(section)[-1][1] == 5.375


def test_of_a_round_column_only_the_flanges_are_flat() -> None:
    segment = Segment(thickness=0.25, flange=1.25, flange_thickness=0.3125)
    section = FlangedSegments(segments=(segment,) * 4, inside=5.0)
    assert [(one.width, one.thickness, one.number) for one in plates_of(section)] == [
        (1.25, 0.3125, 2)
    ] * 4
    gone = FlangedSegments(segments=(replace(segment, flange=0.0),) * 4, inside=5.0)
    assert plates_of(gone) == ()
