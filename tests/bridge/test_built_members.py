"""Built-up members from the record to what is left of them: readings, pack rust, kinks, splices."""

import pytest

from eyebar.bridge.parts import Bar, Bridge
from eyebar.sections.built import Spread
from eyebar.sections.properties import area, properties
from eyebar.sections.shapes import (
    Angles,
    Channels,
    Eyebars,
    FlangedSegments,
    Loops,
    Placed,
    PlatesAndAngles,
    Rods,
    Rolled,
    Timbers,
)
from tests.bridge.plain import bar_of, bridge, decided, refused, truss_of, with_readings

POSTS = (
    "      channels: {depth: 6 in, web: 1/4 in, flange: 2 in, flange thickness: 1/4 in, "
    "apart: 6 in, toes: out}\n      lacing: {bar: 2 in x 1/4 in, pitch: 10 in, planes: 2}\n"
)
PAIR = "angles: {number: 2, size: 3 in x 3 in x 3/8 in, placed: back to back, apart: 3/8 in}"
WEBS = (
    "plates and angles: {webs: 2, web: 12 in x 3/8 in, top angles: 3 in x 3 in x 3/8 in,"
    " apart: 9 in, toes: out}\n      cover plate: 18 in x 1/4 in"
    "\n      lacing: {bar: 2 in x 1/4 in, pitch: 12 in, planes: 1}"
)
ROUND = (
    "flanged segments: {number: 4, inside diameter: 5 in, thickness: 1/4 in, flange: 1 in, "
    "flange thickness: 1/4 in}"
)


def with_post(section: str, *readings: str) -> Bridge:
    """The plain bridge with other posts, and readings on the left truss's middle one."""
    read = [with_readings(*(f"part: left/U3-L3, {one}" for one in readings))] if readings else []
    return bridge((POSTS, f"      {section}\n"), *read)


def post(section: str, *readings: str) -> Bar:
    return bar_of(with_post(section, *readings), "U3-L3")


def said(found: Bridge, words: str) -> bool:
    return any(words in rule for rule in found.rules)


def test_a_reading_on_one_leg_of_one_angle_is_left_of_it_alone() -> None:
    left = post(PAIR, "what: upright leg thickness, value: 1/4 in, piece: 2, place: mid").left
    assert isinstance(left, Angles)
    near, far = left.angles
    assert (near.upright_thickness, near.level_thickness) == (0.375, 0.375)
    assert (far.upright_thickness, far.level_thickness) == (0.25, 0.375)
    # By hand: 2 x (3 + 2.625) x .375 = 4.21875, less 3 x .125; but the level leg begins behind a
    # thinner upright one: + .125 x .375.
    assert area(left) == pytest.approx(4.21875 - 0.375 + 0.046875)


def test_loss_hidden_by_lacing_battens_and_pin_plates_counts_for_the_body() -> None:
    for place in ("lacing", "batten", "pin plate U3"):
        found = with_post(WEBS, f"what: web, value: 5/16 in, piece: 1, place: {place}")
        left = bar_of(found, "U3-L3").left
        assert isinstance(left, PlatesAndAngles)
        assert left.near.web is not None
        assert left.far.web is not None
        assert (left.near.web.thickness, left.far.web.thickness) == (0.3125, 0.375)
        assert f"web 5/16 in at {place}, piece 1 on 2020-05-04" in bar_of(found, "U3-L3").readings


def test_an_angle_of_a_web_is_read_on_either_leg() -> None:
    left = post(WEBS, "what: top angle thickness, value: 1/4 in, piece: 1").left
    assert isinstance(left, PlatesAndAngles)
    assert left.near.top is not None
    assert left.far.top is not None
    assert left.near.top.upright_thickness == left.near.top.level_thickness == 0.25
    assert left.far.top.level_thickness == 0.375


def test_a_plate_that_pack_rust_has_bent_away_is_left_out() -> None:
    found = with_post(WEBS, "what: pack rust, value: 3/8 in, place: mid")
    bar = bar_of(found, "U3-L3")
    assert isinstance(bar.left, PlatesAndAngles)
    assert bar.left.cover is None
    assert isinstance(bar.as_built, PlatesAndAngles)
    assert bar.as_built.cover is not None
    assert bar.bow == 0.375
    assert said(found, "pack rust between its pieces: the plates on it are left out")
    assert said(found, "what pack rust has bent, 0.375 in, is added to its crookedness")


def test_of_two_plates_only_the_one_over_the_rust_is_left_out() -> None:
    plated = WEBS.replace("\n      lacing", "\n      bottom plate: 18 in x 5/16 in\n      lacing")
    found = with_post(plated, "what: pack rust, value: 1/4 in, place: bottom plate")
    left = bar_of(found, "U3-L3").left
    assert isinstance(left, PlatesAndAngles)
    assert left.bottom is None
    assert left.cover is not None
    assert said(found, "the bottom plate is left out")


def test_angles_that_pack_rust_has_parted_bend_each_by_itself() -> None:
    found = with_post(PAIR, "what: pack rust, value: 1/2 in, place: mid")
    bar = bar_of(found, "U3-L3")
    assert isinstance(bar.left, Angles)
    assert bar.left.separate
    assert properties(bar.left).r_least < properties(bar.as_built).r_least
    assert area(bar.left) == area(bar.as_built)
    assert said(found, "each angle is taken to bend by itself")


def test_flanges_that_pack_rust_has_parted_are_left_out() -> None:
    bar = post(ROUND, "what: pack rust, value: 1/4 in")
    assert isinstance(bar.left, FlangedSegments)
    # By hand: the ring alone, pi (2.75^2 - 2.5^2) = 4.12334 in2.
    assert area(bar.left) == pytest.approx(4.12334, abs=1e-5)


def test_a_kink_and_a_bow_add_up() -> None:
    found = with_post(
        PAIR, "what: bow, value: 1/2 in, place: mid", "what: kink, value: 3/8 in, place: mid",
        "what: bow, value: 1/4 in, place: 4 ft from L3",
    )
    # By hand: the greater bow 1/2 in and the kink 3/8 in.
    assert bar_of(found, "U3-L3").bow == 0.875
    assert said(found, "left/U3-L3: its kink of 0.375 in is added to its crookedness in push")


def test_a_cracked_bar_is_not_rated_and_says_what_to_do() -> None:
    bar = post(PAIR, "what: crack, value: 1 in, place: pin plate L3, piece: 1")
    assert bar.not_rated == (
        "a crack was read on 2020-05-04: decide on it, repair the bar, or declare it broken"
    )


def test_laced_angles_stand_as_their_backs_tell() -> None:
    lacing = "\n      lacing: {bar: 2 in x 1/4 in, pitch: 10 in, planes: 1}"
    size = "size: 3 in x 3 in x 1/4 in, placed: laced, toes: in"
    above = post(f"angles: {{number: 2, {size}, backs: 10 in}}{lacing}").left
    beside = post(
        f"angles: {{number: 4, {size}, apart: 1/4 in, backs across: 10 in}}{lacing}"
    ).left
    assert isinstance(above, Angles)
    assert isinstance(beside, Angles)
    assert (above.placed, above.spread) == (Placed.LACED, Spread.UPRIGHT)
    assert beside.spread is Spread.ACROSS
    assert len(beside.angles) == 4


OAK = (
    "  steel: {metal: steel}\n",
    "  steel: {metal: steel}\n  oak: {metal: timber, modulus: 1100 ksi, source: a grader}\n",
)


def sticks(number: int) -> tuple[str, str]:
    """Posts of so many sticks of oak."""
    return (
        f"{POSTS}    material: iron\n",
        f"      timber: {{number: {number}, width: 4 in, depth: 10 in}}\n    material: oak\n",
    )


def test_timber_is_left_by_what_is_sound_of_each_stick() -> None:
    left = bar_of(
        bridge(OAK, sticks(2),
               with_readings("part: left/U3-L3, what: depth, value: 8 in, piece: 2")), "U3-L3",
    ).left
    assert isinstance(left, Timbers)
    # By hand: 4 x 10 + 4 x 8.
    assert area(left) == 72.0


def test_a_flange_of_two_thicknesses_loses_at_its_edge() -> None:
    left = post(
        "rolled: {shape: I, depth: 6 in, web: 1/4 in, flange: 3 1/4 in, flange edge: 1/4 in, "
        "flange at web: 1/2 in}", "what: flange edge, value: 1/8 in",
    ).left
    assert isinstance(left, Rolled)
    assert left.taper is not None
    assert (left.taper.edge, left.taper.at_web) == (0.125, 0.5)
    # By hand: 6 x 1/4 + 4 x 1.5 x (.125 + .5) / 2 = 3.375.
    assert area(left) == pytest.approx(3.375)


def test_two_webs_without_a_pin_offset_have_their_pins_at_mid_depth() -> None:
    found = with_post(WEBS)
    # By hand: webs 9 in2 at 6; two angles of 3 x .375 + 2.625 x .375 = 2.109375 in2, their centres
    # (.375 x 4.5 + 2.625 x .0703125) / 2.109375 = .8875 below 12; plate 4.5 at 12.125: the centre
    # lies at (54 + 4.21875 x 11.1125 + 54.5625) / 17.71875 = 8.77282, 2.77282 above mid-depth.
    assert bar_of(found, "U3-L3").pin_offset == pytest.approx(2.77282, abs=1e-4)
    assert said(found, "the pins are taken at mid-depth of the webs, 2.77 in below the centre")


def test_a_plate_below_draws_the_centre_below_the_pins() -> None:
    below = POSTS.replace("      lacing", "      bottom plate: 10 in x 1/4 in\n      lacing", 1)
    found = bridge((POSTS, below))
    # By hand: channels 2 x 2.375 in2 at 3, plate 2.5 at -.125: 13.9375 / 7.25 = 1.92241.
    assert bar_of(found, "U3-L3").pin_offset == pytest.approx(1.92241 - 3.0, abs=1e-4)
    assert said(found, "1.08 in above the centre of gravity that what is below draws down")


SPLICE = (
    "    spliced at: [U3]\n",
    "    spliced at: [U3]\n    splice: {butted: true, plates: [10 in x 3/8 in], across: 2,\n"
    "      rivets: {number: 12, diameter: 3/4 in, sheared: 2}}\n",
)


def test_only_the_bars_at_a_splice_are_spliced() -> None:
    found = bridge(SPLICE)
    spliced = {bar.name for bar in truss_of(found).bars if bar.splice is not None}
    assert spliced == {"U2-U3", "U3-U4"}
    splice = bar_of(found, "U2-U3").splice
    assert splice is not None
    assert splice.rivets is not None
    assert (splice.butted, splice.across, splice.rivets.number) == (True, 2, 12)
    assert (splice.rivets.diameter, splice.rivets.cuts) == (0.75, 2)
    assert [plate.width for plate in splice.plates] == [10.0]


def test_pin_plates_and_bent_loops_come_to_the_bar() -> None:
    found = bridge(
        ("    spliced at: [U3]\n", "    spliced at: [U3]\n    pin plates: {plate: 6 in x 1/2 in, "
         "hole: 2 1/2 in, beyond hole: not measured}\n"),
        ("side: 1 in, shape: square}", "side: 1 in, shape: square, loops: bent}"),
    )
    plates = bar_of(found, "U1-U2").pin_plates
    assert plates is not None
    assert plates.plate is not None
    assert (plates.plate.thickness, plates.hole, plates.beyond) == (0.5, 2.5, None)
    loops = bar_of(found, "U1-L1").left
    assert isinstance(loops, Rods)
    assert [rod.loops for rod in loops.rods] == [Loops.BENT] * 2


CLEVIS = (
    "      rods: {number: 1, diameter: 1 in, shape: round, threads: none}\n",
    "      rods: {number: 1, diameter: 1 in, shape: round, threads: cut, root diameter: 7/8 in,\n"
    "        clevis: {width: 3 in, thickness: 5/8 in, hole: 1 1/2 in}}\n",
)


def test_a_clevis_loses_metal_and_its_hole_wears_wider() -> None:
    found = bridge(
        CLEVIS,
        with_readings(
            "part: left/U3-L2, place: clevis L2, what: clevis thickness, value: 1/2 in",
            "part: left/U3-L2, place: clevis L2, what: clevis hole, value: 1 5/8 in",
            "part: left/U3-L2, place: thread U3, what: diameter, value: 13/16 in",
        ),
    )
    left = bar_of(found, "U3-L2").left
    assert isinstance(left, Rods)
    rod = left.rods[0]
    assert rod.clevis is not None
    assert (rod.clevis.thickness, rod.clevis.hole, rod.clevis.width) == (0.5, 1.625, 3.0)
    assert (rod.root_diameter, rod.size) == (0.8125, 1.0)


@pytest.mark.parametrize("count", [2, 4, 6])
def test_of_a_set_of_eyebars_some_may_be_loose(count: int) -> None:
    # By hand: `count` bars of 2 x 1/2 in, two of them loose: 1 in2 each.
    found = bridge(
        ("eyebars: {number: 4, width: 2 in", f"eyebars: {{number: {count}, width: 2 in"),
        decided("date: 2021-01-01, what: loose, part: left/U1-L2, pieces: [1, 2], gap: 1/8 in"),
    )
    loose = next(
        bar for bar in truss_of(found).bars
        if bar.name == ("U1-L2" if count == 2 else "U1-L2 loose")
    )
    assert isinstance(loose.as_built, Eyebars)
    assert (area(loose.as_built), loose.gap_in) == (2.0, 0.125)
    if count > 2:
        assert area(bar_of(found, "U1-L2").as_built) == count - 2


@pytest.mark.parametrize("section", [PAIR, WEBS, ROUND])
def test_pieces_that_are_tied_together_cannot_be_loose_by_themselves(section: str) -> None:
    said_of = refused(
        (POSTS, f"      {section}\n"),
        decided("date: 2021-01-01, what: loose, part: left/U3-L3, pieces: [1], gap: 1/8 in"),
    )
    assert "tied together" in said_of


def test_one_stick_of_timber_may_be_broken() -> None:
    found = bridge(
        OAK, sticks(3),
        decided("date: 2021-01-01, what: broken, part: left/U3-L3, pieces: [2]"),
    )
    assert area(bar_of(found, "U3-L3").left) == 80.0


def test_a_bottom_plate_read_thinner_is_thinner() -> None:
    below = POSTS.replace("      lacing", "      bottom plate: 10 in x 1/4 in\n      lacing", 1)
    left = bar_of(
        bridge((POSTS, below),
               with_readings("part: left/U3-L3, what: bottom plate thickness, value: 3/16 in")),
        "U3-L3",
    ).left
    assert isinstance(left, Channels)
    assert left.bottom is not None
    assert left.bottom.thickness == 0.1875
