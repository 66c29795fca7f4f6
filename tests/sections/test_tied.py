"""The two halves of a built-up member and what ties them."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from eyebar.errors import NotMeasured
from eyebar.sections.built import Spread
from eyebar.sections.properties import channel_properties, properties
from eyebar.sections.shapes import (
    Angle,
    Angles,
    Battens,
    Channel,
    Channels,
    Lacing,
    Placed,
    Plate,
    Plates,
    PlatesAndAngles,
    Section,
    Side,
    Toes,
)
from eyebar.sections.tied import tied_of
from tests.sections.outlines import angle_outline, box, integrated, least_radius

ANGLE = Angle(upright=3.0, level=2.5, upright_thickness=0.25, level_thickness=0.25)
CHANNEL = Channel(depth=8.0, web=0.3125, flange=2.25, flange_thickness=0.375)
LACING = Lacing(bar=Plate(width=2.0, thickness=0.25), pitch=10.0, planes=1)
BATTENS = Battens(plate=Plate(width=9.0, thickness=0.25), length=8.0, pitch=30.0, planes=2)
PAIR = Channels(near=CHANNEL, far=CHANNEL, apart=8.0, toes=Toes.OUT, lacing=LACING)
WEBS = PlatesAndAngles(
    near=Side(web=Plate(width=12.0, thickness=0.375), top=ANGLE, bottom=ANGLE),
    far=Side(web=Plate(width=12.0, thickness=0.375), top=ANGLE, bottom=ANGLE),
    middle=None, apart=9.0, toes=Toes.OUT, cover=Plate(width=18.0, thickness=0.25), battens=BATTENS,
)
BOX = Angles(angles=(ANGLE,) * 4, placed=Placed.BOX, backs=12.0, backs_across=10.0, lacing=LACING)
ABOVE = Angles(angles=(ANGLE, ANGLE), placed=Placed.LACED, backs=12.0, lacing=LACING)
BESIDE = Angles(
    angles=(ANGLE,) * 4, placed=Placed.LACED, apart=0.25, backs_across=10.0, lacing=LACING,
    spread=Spread.ACROSS,
)


def test_two_channels_are_a_near_and_a_far_half() -> None:
    (tied,) = tied_of(PAIR)
    one = channel_properties(CHANNEL)
    assert tied.spread is Spread.ACROSS
    assert (tied.lacing, tied.battens, tied.plates) == (LACING, None, 0)
    near, far = tied.halves
    assert near == replace(far, name="near channel")
    assert (near.area, near.inertia, near.radius) == pytest.approx((one.area, one.i_y, one.r_y))
    # By hand: toes out, 4 in to the web's back and on to the channel's centre; twice that.
    assert tied.distance == pytest.approx(2 * (4.0 + one.centre))


def test_webs_and_their_angles_bend_together_between_the_battens() -> None:
    (tied,) = tied_of(WEBS)
    assert (tied.plates, tied.battens) == (1, BATTENS)
    near, far = tied.halves
    # By hand: 12 x 3/8 + 2 x (3 + 2.25) x 1/4 = 7.125 in2; the plate belongs to neither half.
    assert (near.area, far.area) == pytest.approx((7.125, 7.125))
    legs, thick = (3.0, 2.5), (0.25, 0.25)
    drawn = [
        box(-4.875, 0.0, -4.5, 12.0), angle_outline(legs, thick, (-4.875, 12.0), (-1, -1)),
        angle_outline(legs, thick, (-4.875, 0.0), (-1, 1)),
    ]
    assert near.radius == pytest.approx(least_radius(integrated(drawn)))
    assert near.name == "near web and near top angle and near bottom angle"


def test_angles_one_above_the_other_are_tied_in_the_plane() -> None:
    (tied,) = tied_of(ABOVE)
    assert tied.spread is Spread.UPRIGHT
    one = properties(Angles(angles=(ANGLE,), placed=Placed.SINGLE))
    # By hand: backs 12 in apart, each centre so far inside its back.
    assert tied.distance == pytest.approx(12.0 - 2 * one.top)
    assert tied.halves[0].inertia == pytest.approx(one.i_x)
    assert tied.radius == pytest.approx(one.r_least)
    assert [half.name for half in tied.halves] == ["lower angle", "upper angle"]


def test_pairs_of_angles_meet_at_their_fastenings_only() -> None:
    (tied,) = tied_of(BESIDE)
    one = properties(Angles(angles=(ANGLE,), placed=Placed.SINGLE))
    assert tied.spread is Spread.ACROSS
    assert tied.halves[0].area == pytest.approx(2 * one.area)
    assert tied.radius == pytest.approx(one.r_least)
    assert tied.halves[1].name == "far upper angle and far lower angle"


def test_a_box_is_tied_both_ways() -> None:
    across, upright = tied_of(BOX)
    one = properties(Angles(angles=(ANGLE,), placed=Placed.SINGLE))
    assert (across.spread, upright.spread) == (Spread.ACROSS, Spread.UPRIGHT)
    assert across.distance == pytest.approx(10.0 - 2 * one.x_bar)
    assert upright.distance == pytest.approx(12.0 - 2 * one.top)


def test_what_is_solid_or_not_tied_has_no_halves() -> None:
    for section in (
        Plates(plates=(Plate(width=8.0, thickness=0.5),)),
        Angles(angles=(ANGLE, ANGLE), placed=Placed.STAR, apart=0.375),
        replace(WEBS, middle=WEBS.near.web, near=Side(web=None, top=ANGLE, bottom=None),
                far=Side(web=None, top=ANGLE, bottom=None), apart=None),
    ):
        assert tied_of(section) == ()


def test_a_distance_that_was_never_measured_is_named() -> None:
    with pytest.raises(NotMeasured, match="distance between the backs across"):
        tied_of(replace(BESIDE, backs_across=None))


@pytest.mark.parametrize("section", [PAIR, ABOVE, BESIDE, BOX])
@given(grown=st.floats(0.0, 10.0))
def test_the_halves_make_up_the_whole(section: Section, grown: float) -> None:
    # Law: without plates the whole's inertia is that of the halves about its own centre.
    if isinstance(section, Channels):
        section = replace(section, apart=8.0 + grown)
    elif isinstance(section, Angles) and section.backs_across is not None:
        section = replace(section, backs_across=10.0 + grown)
    whole = properties(section)
    for tied in tied_of(section):
        inertia = whole.i_y if tied.spread is Spread.ACROSS else whole.i_x
        assert sum(
            half.inertia + half.area * half.arm**2 for half in tied.halves
        ) == pytest.approx(inertia)
        assert sum(half.area for half in tied.halves) == pytest.approx(whole.area)
