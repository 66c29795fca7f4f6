"""What readings leave of built-up sections, of rods' ends, and of what pack rust parts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from eyebar.errors import OutOfRange
from eyebar.sections.attached import parted
from eyebar.sections.corroded import corroded
from eyebar.sections.properties import area, properties
from eyebar.sections.shapes import (
    Angle,
    Angles,
    Battens,
    Channel,
    Channels,
    Clevis,
    FlangedSegments,
    Lacing,
    Placed,
    Plate,
    PlatesAndAngles,
    Rod,
    Rods,
    RodShape,
    Rolled,
    RolledShape,
    Section,
    Segment,
    Side,
    Stick,
    Taper,
    Thread,
    Timbers,
    Toes,
)

ANGLE = Angle(upright=3.0, level=2.5, upright_thickness=0.375, level_thickness=0.375)
LACING = Lacing(bar=Plate(width=2.0, thickness=0.25), pitch=10.0, planes=1)
SIDE = Side(web=Plate(width=12.0, thickness=0.375), top=ANGLE, bottom=ANGLE)
CHANNEL = Channel(
    depth=8.0, web=0.3125, flange=2.25, flange_thickness=None, taper=Taper(edge=0.25, at_web=0.5)
)
PAIR = Angles(angles=(ANGLE, ANGLE), placed=Placed.BACK_TO_BACK, apart=0.375)
STAR = Angles(angles=(ANGLE,) * 4, placed=Placed.STAR, apart=0.0)
BOX = Angles(angles=(ANGLE,) * 4, placed=Placed.BOX, backs=10.0, backs_across=9.0, lacing=LACING)
WEBS = PlatesAndAngles(
    near=SIDE, far=SIDE, middle=None, apart=9.0, toes=Toes.OUT, lacing=LACING,
    cover=Plate(width=18.0, thickness=0.25), bottom=Plate(width=18.0, thickness=0.3125),
)
GIRDER = PlatesAndAngles(
    near=Side(web=None, top=ANGLE, bottom=ANGLE), far=Side(web=None, top=ANGLE, bottom=ANGLE),
    middle=Plate(width=12.0, thickness=0.375), apart=None, toes=Toes.OUT,
)
CHORD = Channels(
    near=CHANNEL, far=CHANNEL, apart=8.0, toes=Toes.IN, bottom=Plate(width=9.0, thickness=0.25),
    battens=Battens(plate=Plate(width=9.0, thickness=0.25), length=8.0, pitch=30.0, planes=1),
)
ROUND = FlangedSegments(
    segments=(Segment(thickness=0.25, flange=1.0, flange_thickness=0.25),) * 4, inside=5.0
)
TIMBER = Timbers(sticks=(Stick(width=4.0, depth=10.0),) * 2)
BEAM = Rolled(
    shape=RolledShape.I, number=1, depth=10.0, web=0.375, flange=4.5, flange_thickness=None,
    taper=Taper(edge=0.25, at_web=0.625),
)

WORDS: dict[str, tuple[Section, tuple[str, ...], int]] = {
    "two angles": (PAIR, ("thickness", "upright leg thickness", "level leg thickness",
                          "upright leg", "level leg"), 2),
    "a star": (STAR, ("thickness", "upright leg thickness"), 4),
    "a box": (BOX, ("thickness", "level leg thickness", "lacing thickness", "lacing width"), 4),
    "two webs": (WEBS, ("web", "top angle thickness", "bottom angle thickness",
                        "cover plate thickness", "bottom plate width", "lacing thickness"), 2),
    "one web": (GIRDER, ("web", "top angle thickness"), 2),
    "channels": (CHORD, ("web", "flange", "flange edge", "flange at web",
                         "bottom plate thickness", "batten thickness"), 2),
    "a round column": (ROUND, ("thickness", "flange", "flange thickness"), 4),
    "timber": (TIMBER, ("width", "depth"), 2),
    "a beam": (BEAM, ("web", "flange", "flange edge", "flange at web"), 1),
}
"""Sections, the words that may be read on each, how many pieces it has."""


@st.composite
def readings(draw: st.DrawFn) -> tuple[Section, list[tuple[str, float, int | None]]]:
    section, words, pieces = WORDS[draw(st.sampled_from(sorted(WORDS)))]
    one = st.tuples(
        st.sampled_from(words), st.floats(0.125, 12.0), st.none() | st.integers(1, pieces)
    )
    return section, draw(st.lists(one, min_size=1, max_size=4))


def after(section: Section, read: list[tuple[str, float, int | None]]) -> Section:
    for what, value, piece in read:
        section = corroded(section, what=what, value=value, piece=piece)
    return section


@given(readings(), st.randoms(use_true_random=False))
def test_the_order_of_readings_does_not_matter(
    drawn: tuple[Section, list[tuple[str, float, int | None]]], draws: object
) -> None:
    section, read = drawn
    shuffled = list(read)
    draws.shuffle(shuffled)  # type: ignore[attr-defined]
    assert after(section, read) == after(section, shuffled)
    assert after(section, [*read, *read]) == after(section, read)


@given(readings())
def test_no_reading_ever_makes_a_section_better(
    drawn: tuple[Section, list[tuple[str, float, int | None]]]
) -> None:
    # Law: what is left has no more area; about its own axes no more inertia, where its pieces stay
    # where they stood (angles, round columns' flanges and webs move inwards with what holds them).
    section, read = drawn
    left = after(section, read)
    assert area(left) <= area(section) * (1 + 1e-12)
    if isinstance(left, PlatesAndAngles | Channels):
        return  # depths and flanges that no longer fit each other are refused, not rated
    assert properties(left).i_x <= properties(section).i_x * (1 + 1e-12)


@pytest.mark.parametrize("name", WORDS)
def test_a_word_that_does_not_fit_is_refused(name: str) -> None:
    section, words, pieces = WORDS[name]
    with pytest.raises(OutOfRange):
        corroded(section, what="head", value=1.0)
    with pytest.raises(OutOfRange):
        corroded(section, what=words[0], value=0.25, piece=pieces + 1)


def test_what_is_not_there_has_no_reading() -> None:
    bare = PlatesAndAngles(
        near=Side(web=SIDE.web, top=ANGLE, bottom=None),
        far=Side(web=SIDE.web, top=ANGLE, bottom=None), middle=None, apart=9.0, toes=Toes.OUT,
    )
    for what in ("bottom angle thickness", "cover plate thickness", "lacing thickness"):
        with pytest.raises(OutOfRange, match="something this member has"):
            corroded(bare, what=what, value=0.125)


def test_a_clevis_is_read_by_its_own_words() -> None:
    rod = Rod(
        shape=RodShape.ROUND, size=1.25, threads=Thread.CUT, root_diameter=1.0625,
        clevis=Clevis(width=3.0, thickness=0.625, hole=1.5),
    )
    section: Section = Rods(rods=(rod,))
    for what, value in (("clevis width", 2.75), ("clevis thickness", 0.5), ("clevis hole", 1.625),
                        ("clevis hole", 1.5)):
        section = corroded(section, what=what, value=value, place="clevis L4")
    assert isinstance(section, Rods)
    assert section.rods[0].clevis == Clevis(width=2.75, thickness=0.5, hole=1.625)
    with pytest.raises(OutOfRange, match="of a clevis"):
        corroded(Rods(rods=(Rod(shape=RodShape.ROUND, size=1.0),)), what="clevis hole", value=1.0)


def test_what_rust_has_parted_is_never_the_stronger() -> None:
    # Law: leaving a plate or flanges out takes area; angles that part keep theirs and lose radius.
    for section in (WEBS, CHORD, ROUND):
        assert area(parted(section)) < area(section)
    for angles in (PAIR, STAR):
        assert area(parted(angles)) == area(angles)
        assert properties(parted(angles)).r_least < properties(angles).r_least
    assert [parted(one) for one in (BOX, GIRDER, TIMBER, BEAM)] == [BOX, GIRDER, TIMBER, BEAM]


def test_of_two_plates_the_one_named_is_left_out() -> None:
    one = parted(WEBS, "cover plate")
    assert isinstance(one, PlatesAndAngles)
    assert (one.cover, one.bottom) == (None, WEBS.bottom)
    both = parted(WEBS)
    assert isinstance(both, PlatesAndAngles)
    assert (both.cover, both.bottom) == (None, None)
