"""The plates of a section that may buckle by themselves."""

from eyebar.sections.local import Held, StripKind, plates_of
from eyebar.sections.shapes import (
    Channel,
    Channels,
    Plate,
    Plates,
    Rolled,
    RolledShape,
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
