"""What readings leave of a section."""

from itertools import permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from eyebar.errors import OutOfRange
from eyebar.sections.corroded import corroded
from eyebar.sections.properties import area, properties
from eyebar.sections.shapes import (
    Battens,
    Channel,
    Channels,
    Eyebar,
    Eyebars,
    Given,
    Lacing,
    Plate,
    Plates,
    Rod,
    Rods,
    RodShape,
    Rolled,
    RolledShape,
    Section,
    Thread,
    Toes,
)

BAR = Eyebar(width=3.0, thickness=0.75, head=7.0, hole=2.5)
PAIR = Eyebars(bars=(BAR, BAR))
CHANNEL = Channel(depth=8.0, web=0.3125, flange=2.25, flange_thickness=0.375)
CHORD = Channels(
    near=CHANNEL, far=CHANNEL, apart=8.0, toes=Toes.OUT, cover=Plate(width=14.0, thickness=0.25),
    lacing=Lacing(bar=Plate(width=2.0, thickness=0.25), pitch=14.0, planes=1),
)
ROD = Rods(
    rods=(
        Rod(
            shape=RodShape.ROUND, size=1.25, threads=Thread.UPSET, root_diameter=1.375,
            turnbuckle=True, turnbuckle_area=2.0,
        ),
    )
)


def test_a_bar_thinned_by_half_has_half_its_area() -> None:
    # By hand: 2 x 3 x 0.75 = 4.5 in2; all at 0.375: 2.25; one of them: 3.375.
    assert area(corroded(PAIR, what="thickness", value=0.375)) == pytest.approx(2.25)
    assert area(corroded(PAIR, what="thickness", value=0.375, piece=2)) == pytest.approx(3.375)


def test_a_thinned_head_leaves_the_body_alone() -> None:
    left = corroded(PAIR, what="thickness", value=0.5, place="head L4")
    assert isinstance(left, Eyebars)
    assert [bar.thickness for bar in left.bars] == [0.75, 0.75]
    assert [bar.head_thickness for bar in left.bars] == [0.5, 0.5]


def test_a_width_measured_at_a_head_is_the_width_of_the_head() -> None:
    left = corroded(PAIR, what="width", value=6.75, place="head L4", piece=1)
    assert isinstance(left, Eyebars)
    assert [bar.head for bar in left.bars] == [6.75, 7.0]
    assert [bar.width for bar in left.bars] == [3.0, 3.0]


def test_a_hole_wears_wider_and_everything_else_smaller() -> None:
    worn = corroded(PAIR, what="hole", value=2.625, place="hole L4")
    better = corroded(corroded(worn, what="hole", value=2.5), what="thickness", value=0.875)
    assert better == worn


def test_a_measure_that_was_unknown_takes_the_reading() -> None:
    unknown = Eyebars(bars=(Eyebar(width=3.0, thickness=None, head=7.0, hole=2.5),))
    assert area(corroded(unknown, what="thickness", value=0.6875)) == pytest.approx(2.0625)


def test_a_cover_plate_that_rusts_lowers_the_centre_of_gravity() -> None:
    # Law: metal taken off the top moves the centre down, away from a pin offset measured as built.
    before, after = properties(CHORD), properties(
        corroded(CHORD, what="cover plate thickness", value=0.125)
    )
    assert after.y_bar < before.y_bar
    # By hand: 14 x 0.125 = 1.75 in2 gone.
    assert before.area - after.area == pytest.approx(1.75)


def test_one_channel_that_rusts_is_the_near_or_the_far_one() -> None:
    near = corroded(CHORD, what="web", value=0.25, piece=1)
    far = corroded(CHORD, what="web", value=0.25, piece=2)
    assert isinstance(near, Channels)
    assert isinstance(far, Channels)
    assert (near.near, near.far) == (far.far, far.near)


@pytest.mark.parametrize(
    ("section", "what", "place", "field"),
    [
        (ROD, "diameter", "", "size"),
        (ROD, "diameter", "thread", "root_diameter"),
        (ROD, "root diameter", "mid", "root_diameter"),
        (ROD, "turnbuckle area", "turnbuckle", "turnbuckle_area"),
    ],
)
def test_readings_on_a_rod(section: Rods, what: str, place: str, field: str) -> None:
    left = corroded(section, what=what, value=1.0, place=place)
    assert isinstance(left, Rods)
    assert getattr(left.rods[0], field) == 1.0


def test_readings_on_lacing_and_battens() -> None:
    laced = corroded(CHORD, what="lacing thickness", value=0.125)
    assert isinstance(laced, Channels)
    assert laced.lacing is not None
    assert laced.lacing.bar == Plate(width=2.0, thickness=0.125)
    battened = Channels(
        near=CHANNEL, far=CHANNEL, apart=8.0, toes=Toes.OUT,
        battens=Battens(
            plate=Plate(width=8.0, thickness=0.25), length=6.0, pitch=30.0, planes=2
        ),
    )
    left = corroded(battened, what="batten thickness", value=0.1875)
    assert isinstance(left, Channels)
    assert left.battens is not None
    assert left.battens.plate.thickness == 0.1875


def test_readings_on_plates_rolled_shapes_and_given_properties() -> None:
    plates = Plates(plates=(Plate(width=8.0, thickness=0.5), Plate(width=8.0, thickness=0.5)))
    assert area(corroded(plates, what="thickness", value=0.25, piece=1)) == pytest.approx(6.0)
    angles = Rolled(
        shape=RolledShape.ANGLE, number=2, depth=3.0, web=0.375, flange=3.0, flange_thickness=0.375
    )
    # By hand: 2 x (3 x 0.25 + 2.75 x 0.375) = 3.5625; a reading on one angle holds for both.
    assert area(corroded(angles, what="web", value=0.25, piece=2)) == pytest.approx(3.5625)
    given_section = Given(
        area=10.0, net_area=9.0, r_x=3.0, r_y=2.0, top=4.0, bottom=5.0, source="a drawing"
    )
    assert area(corroded(given_section, what="area", value=9.5)) == 9.5


@pytest.mark.parametrize(
    ("section", "what", "piece"),
    [
        (PAIR, "web", None), (PAIR, "thickness", 3), (ROD, "thickness", None), (ROD, "diameter", 0),
        (CHORD, "thickness", None), (CHORD, "batten thickness", None), (CHORD, "web", 3),
    ],
)
def test_a_measure_or_a_piece_that_is_not_there_is_refused(
    section: Section, what: str, piece: int | None
) -> None:
    with pytest.raises(OutOfRange):
        corroded(section, what=what, value=0.25, piece=piece)


def test_a_reading_below_zero_is_refused() -> None:
    with pytest.raises(OutOfRange, match="0 or more"):
        corroded(PAIR, what="thickness", value=-0.125)


@given(st.lists(st.floats(0.0, 1.0), min_size=1, max_size=4))
def test_rust_never_adds_area(readings: list[float]) -> None:
    # Law: whatever is read, and in whatever order, what is left is the least of it all.
    for order in list(permutations(readings))[:6]:
        section: Section = PAIR
        for value in order:
            section = corroded(section, what="thickness", value=value)
        assert area(section) == pytest.approx(6.0 * min(0.75, *readings))
