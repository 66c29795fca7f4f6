"""Rivet holes, jaws, offsets, welds, blocks, chords that run on, stresses that a record gives."""

from dataclasses import replace

import pytest

from eyebar.bridge.parts import Bridge
from eyebar.office import office_values
from eyebar.resistance import Condition, limits
from eyebar.resistance.seats import push_on_seat
from eyebar.sections.punching import HoleLines, Punched, RivetHoles
from eyebar.terms import Kind, Level, Metal, Method
from tests.bridge.plain import bar_of, bridge, changed, refused, truss_of

SPLICED = "    spliced at: [U3]\n"
SOUND = Condition(superstructure_condition=6, loss_measured=False)


def line_of(text: str, words: str) -> int:
    return next(n for n, line in enumerate(text.splitlines(), 1) if words in line)


def test_what_a_group_says_of_its_joints_comes_to_its_bars() -> None:
    found = bridge((SPLICED, SPLICED + (
        "    jaw: 9 in\n    other pin offset: 3/4 in\n    side offset: -1/4 in\n"
        "    welded: stay plates of 1972\n"
        "    rivet holes: {rivet: 3/4 in, holes: [{where: web, lines: 2, gauge: 3 in, "
        "stagger: 1 1/2 in}, {where: cover plate, lines: 2, gauge: not measured}]}\n"
    )), ("pitch: 12 in, planes: 1}\n    material: iron\n    pin offset: 1/2 in\n    spliced",
         "pitch: 12 in, planes: 1, rivet: 5/8 in}\n    material: iron\n    pin offset: 1/2 in\n"
         "    spliced"))
    bar = bar_of(found, "U2-U3")
    assert (bar.jaw, bar.other_pin_offset, bar.side_offset) == (9.0, 0.75, -0.25)
    assert (bar.welded, bar.lacing_rivet) == ("stay plates of 1972", 0.625)
    assert bar.holes == RivetHoles(rivet=0.75, lines=(
        HoleLines(where=Punched.WEB, lines=2, gauge=3.0, stagger=1.5),
        HoleLines(where=Punched.COVER, lines=2, gauge=None),
    ))
    assert bar_of(found, "U1-L0").holes is None


def test_an_override_says_what_differs_of_one_bar() -> None:
    found = bridge(
        (SPLICED, f"{SPLICED}    jaw: 9 in\n"),
        ("\nfloor:\n", "\noverrides:\n  left/U2-U3: {jaw: 7 in, welded: a patch, reason: seen}\n"
         "\nfloor:\n"),
    )
    assert (bar_of(found, "U2-U3").jaw, bar_of(found, "U2-U3", "right").jaw) == (7.0, 9.0)
    assert bar_of(found, "U2-U3").welded == "a patch"


def test_a_chord_is_one_beam_between_its_splices() -> None:
    found = bridge()
    for bars in (("U1-U2", "U2-U3"), ("U3-U4", "U4-U5")):
        for place, name in enumerate(bars):
            runs = bar_of(found, name).runs_on
            assert runs is not None
            assert (len(runs.spans), runs.place) == (2, place)
            # By hand: 15 ft; two channels of 2.875 in2 and a plate 12 x 1/4: 8.75 in2.
            assert runs.spans[0].length == runs.spans[0].run == 180.0
            assert runs.spans[0].area == pytest.approx(8.75)
    others = {bar.name for bar in truss_of(found).bars if bar.runs_on is not None}
    assert others == {"U1-U2", "U2-U3", "U3-U4", "U4-U5"}


def test_a_chord_of_which_no_splice_is_told_is_cut_everywhere() -> None:
    found = bridge((SPLICED, ""))
    assert all(bar.runs_on is None for bar in truss_of(found).bars)


def test_a_run_with_a_size_never_measured_makes_no_beam() -> None:
    found = bridge(
        ("\nfloor:\n", "\noverrides:\n  left/U2-U3:\n    section: {channels: {web: not measured}}\n"
         "    reason: not seen\n\nfloor:\n"),
    )
    assert bar_of(found, "U1-U2").runs_on is None
    assert bar_of(found, "U3-U4").runs_on is not None


OAK = (
    "  oak:\n    metal: timber\n    modulus: 1,100 ksi\n    density: 50 lb/ft3\n"
    "    source: grader's report 12\n"
    "    allowed: {pull: 0.5 ksi, push: 0.6 ksi, column modulus: 400 ksi, source: report 12}\n"
)
POSTS = (
    "      channels: {depth: 6 in, web: 1/4 in, flange: 2 in, flange thickness: 1/4 in, "
    "apart: 6 in, toes: out}\n      lacing: {bar: 2 in x 1/4 in, pitch: 10 in, planes: 2}\n"
    "    material: iron\n"
)
TIMBER = "      timber: {number: 2, width: 8 in, depth: 10 in}\n    material: oak\n"
STEEL = "  steel: {metal: steel}\n"


def test_timber_is_rated_by_the_stress_that_the_record_gives() -> None:
    bar = bar_of(bridge((STEEL, STEEL + OAK), (POSTS, TIMBER)), "U3-L3")
    assert bar.not_rated == ""
    allowed = bar.material.allowed
    assert allowed is not None
    assert (allowed.pull, allowed.push, allowed.column_modulus) == (0.5, 0.6, 400.0)
    assert bar.material.sources["allowed in pull"] == "0.5 ksi, report 12"
    pull = next(
        one for one in limits(
            bar, method=Method.ALLOWABLE_STRESS, level=Level.INVENTORY, dead_factor_dc=1.0,
            values=office_values(), condition=SOUND,
        ) if one.sense > 0
    )
    # By hand: 0.5 x 2 x 8 x 10 = 80 kip.
    assert pull.force == pytest.approx(80.0)


def test_timber_without_a_stress_is_not_rated() -> None:
    without = OAK.replace(
        "    allowed: {pull: 0.5 ksi, push: 0.6 ksi, column modulus: 400 ksi, source: report 12}\n",
        "",
    )
    bar = bar_of(bridge((STEEL, STEEL + without), (POSTS, TIMBER)), "U3-L3")
    assert bar.not_rated == "no strength is known here for timber; give one with its source"


CAST = (
    "  block iron:\n    metal: cast iron\n    modulus: 14,000 ksi\n    source: shop book\n"
    "    allowed: {push: 9 ksi, source: shop book of 1888}\n"
)
BLOCKS = (
    "joint blocks:\n  shoes: {joints: [L0, L6], truss: left, material: block iron, "
    "bearing: 20 in2}\n\nfloor:\n"
)


def with_blocks(*changes: tuple[str, str]) -> Bridge:
    return bridge((STEEL, STEEL + CAST), ("floor:\n", BLOCKS), *changes)


def test_a_bar_pushes_on_the_block_at_its_joint() -> None:
    found = with_blocks()
    bar = bar_of(found, "U1-L0")
    assert [seat.joint for seat in bar.seats] == ["L0"]
    assert bar_of(found, "U1-L0", "right").seats == ()
    assert bar_of(found, "L0-L1").seats == ()  # an eyebar does not push
    # By hand: 9 x 20 = 180 kip; cast iron at operating no more than at inventory.
    for level in (Level.INVENTORY, Level.OPERATING):
        one = push_on_seat(bar.seats[0], "U1-L0", level, office_values())
        assert (one.check, one.force) == ("bearing of U1-L0", pytest.approx(-180.0))


def test_a_block_with_stress_and_area_is_not_among_the_parts_that_are_not_rated() -> None:
    assert not [part for part in with_blocks().others if part.kind is Kind.JOINT_BLOCK]


def test_a_block_that_was_found_cracked_is_not_rated() -> None:
    cracked = "  - {date: 2020-05-05, what: crack found, part: left/L0/joint block}\n"
    found = with_blocks(("decisions: []\n", f"decisions:\n{cracked}"))
    (block,) = [part for part in found.others if part.kind is Kind.JOINT_BLOCK]
    assert (block.address, block.not_rated) == (
        "left/L0/joint block", "declared cracked on 2020-05-05"
    )


def test_a_block_that_no_bar_pushes_on_is_not_rated() -> None:
    found = with_blocks(("joints: [L0, L6], truss", "joints: [L1], truss"))
    (block,) = [part for part in found.others if part.kind is Kind.JOINT_BLOCK]
    assert (block.address, block.not_rated) == (
        "left/L1/joint block", "no bar that can push ends on it"
    )


@pytest.mark.parametrize(
    ("change", "reason"),
    [
        ((", bearing: 20 in2", ""), "the area that bars bear on it with is not measured"),
        (("    allowed: {push: 9 ksi, source: shop book of 1888}\n", ""),
         "no allowable stress in push is given for its cast iron; give one with its source"),
    ],
)
def test_a_block_is_among_the_parts_that_are_not_rated(
    change: tuple[str, str], reason: str
) -> None:
    found = with_blocks(change)
    blocks = [part for part in found.others if part.kind is Kind.JOINT_BLOCK]
    assert [part.address for part in blocks] == ["left/L0/joint block", "left/L6/joint block"]
    assert {part.not_rated for part in blocks} == {reason}


def test_a_block_of_iron_is_not_rated_by_this_version() -> None:
    found = with_blocks(("material: block iron", "material: iron"))
    reasons = {part.not_rated for part in found.others if part.kind is Kind.JOINT_BLOCK}
    assert reasons == {"not rated by this version"}
    seat = bar_of(found, "U1-L0").seats[0]
    assert (seat.metal, seat.allowed) == (Metal.WROUGHT_IRON, None)


def test_blocks_of_a_mirrored_half_stand_at_the_images_too() -> None:
    half = (
        ("panels: 6 at 15 ft", "mirrored: true\n  span: 90 ft\n  panels: 3 at 15 ft"),
        ("counters: [U3-L2, U3-L4]", "counters: [U3-L2]"),
        ("bars: [U1..U5]", "bars: [U1..U3]"), ("bars: [U1-L0, U5-L6]", "bars: [U1-L0]"),
        ("bars: [L0..L6]", "bars: [L0..L3]"), ("bars: [U1-L1, U5-L5]", "bars: [U1-L1]"),
        ("bars: [U2-L2, U3-L3, U4-L4]", "bars: [U2-L2, U3-L3]"),
        ("bars: [U1-L2, U5-L4]", "bars: [U1-L2]"), ("bars: [U2-L3, U4-L3]", "bars: [U2-L3]"),
        ("bars: [U3-L2, U3-L4]", "bars: [U3-L2]"),
        ("lateral points: [U1, U2, U3, U4, U5]", "lateral points: [U1, U2, U3]"),
        ("joints: [L0, L6]", "joints: [L0]"),
    )
    found = with_blocks(*half)
    assert {bar.name for bar in truss_of(found).bars if bar.seats} == {"U1-L0", "U5-L6"}


@pytest.mark.parametrize(
    ("change", "where", "said"),
    [
        (("joints: [L0, L6]", "joints: [L0, L66]"), "joint blocks > shoes > joints",
         "'L66' is no joint of the truss; did you mean 'L6'?"),
        (("truss: left, material", "truss: lefd, material"), "joint blocks > shoes > truss",
         "'lefd' is no truss of this bridge; did you mean 'left'?"),
        (("material: block iron", "material: blok iron"), "joint blocks > shoes > material",
         "'blok iron' is no material of this record; did you mean 'block iron'?"),
        (("bearing: 20 in2", "bearing: 20 in"), "joint blocks > shoes > bearing",
         "'20 in' is a length; here stands an area, like '12.5 in2'"),
        (("\nfloor:\n", "\n  more: {joints: [L0], material: block iron}\n\nfloor:\n"),
         "joint blocks > more > joints",
         "'L0' has a block already, in 'shoes'; leave it out of one of them"),
        (("metal: cast iron", "metal: wrought iron"), "materials > block iron",
         "'wrought iron' has stresses that the methods themselves allow; leave 'allowed' out"),
        (("allowed: {push: 9 ksi, source: shop book of 1888}", "allowed: {push: 9 ksi}"),
         "materials > block iron > allowed", "has no 'source'; say where the figure comes from"),
    ],
)
def test_what_is_wrong_about_blocks_and_stresses_is_told(
    change: tuple[str, str], where: str, said: str
) -> None:
    base = ((STEEL, STEEL + CAST), ("floor:\n", BLOCKS))
    text = refused(*base, change)
    assert f": {where}: {said}" in text
    first = line_of(changed(*base, change), "joint blocks:" if "blocks" in where else "block iron:")
    assert int(text.split(":")[1]) >= first


@pytest.mark.parametrize(
    ("said", "rule"),
    [
        ("{rivet: 3/4 in, holes: [{where: web, lines: 2}]}",
         "'2 lines' need the gauge between them; write 'gauge: 3 in'"),
        ("{rivet: 3/4 in, holes: [{where: webb, lines: 1}]}",
         "'webb' is not a word known here; did you mean 'web'?"),
        ("{rivet: 3/4 in, holes: [{where: web, lines: 1}, {where: web, lines: 1}]}",
         "'web' is given twice; leave one of them out"),
        ("{rivet: 3/4 in, holes: []}", "is too short; write at least one entry"),
        ("{holes: [{where: web, lines: 1}]}", "has no 'rivet'; write 'rivet:' with its size"),
    ],
)
def test_what_is_wrong_about_rivet_holes_is_told(said: str, rule: str) -> None:
    text = refused((SPLICED, f"{SPLICED}    rivet holes: {said}\n"))
    assert "members > upper > rivet holes" in text
    assert rule in text


def test_a_detail_of_a_pin_is_no_override() -> None:
    said = refused(
        ("\nfloor:\n", "\noverrides:\n  left/L2/pin: {jaw: 7 in, reason: seen}\n\nfloor:\n")
    )
    assert "'jaw' does not belong to left/L2/pin" in said


def test_other_bars_are_as_they_were() -> None:
    # Law: blocks touch the bars that bear on them and no others.
    with_, without = with_blocks(), bridge((STEEL, STEEL + CAST))
    bare = [replace(bar, seats=()) for bar in truss_of(with_).bars]
    assert bare == list(truss_of(without).bars)


@pytest.mark.parametrize(
    ("changes", "where", "said"),
    [
        (((POSTS, TIMBER.replace("oak", "iron")),), "members > posts > material",
         "'iron' is wrought iron, and its section is timber; name a material of timber"),
        (((POSTS, POSTS.replace("material: iron", "material: oak")),), "members > posts > material",
         "'oak' is timber, and its section is channels; write the 'timber' that it is, or a metal"),
        (((POSTS, TIMBER),
          ("\nfloor:\n", "\noverrides:\n  left/U3-L3: {material: iron, reason: seen}\n\nfloor:\n")),
         "overrides > left/U3-L3",
         "'iron' is wrought iron, and its section is timber; name a material of timber"),
    ],
)
def test_sticks_are_of_timber_and_nothing_else_is(
    changes: tuple[tuple[str, str], ...], where: str, said: str
) -> None:
    assert f": {where}: {said}" in refused((STEEL, STEEL + OAK), *changes)
