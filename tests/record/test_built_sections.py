"""Built-up sections as they are written: read, read back, and refused with line, rule and cure."""

from dataclasses import dataclass
from fractions import Fraction

import pytest

from eyebar.record import SectionEntry, What
from eyebar.record.checking import not_measured
from eyebar.record.sizes import pieces_of, sizes_of, unmeasured
from eyebar.sections.shapes import Loops, Placed, Thread, Toes
from tests.record.field_book import changed, faults_of, line_with, read

POSTS = (
    "      rolled: {shape: I, depth: 6 in, web: 1/4 in, flange: 3 1/2 in, "
    "flange thickness: 3/8 in}\n"
)
ROD = (
    "      rods: {number: 1, diameter: 1 1/4 in, shape: round, threads: upset, "
    "root diameter: 1 3/8 in}\n"
)
IRON = "  iron: {metal: wrought iron}\n"
OAK = "  oak: {metal: timber, modulus: 1100 ksi, source: a grader}\n"
LACING = "\n      lacing: {bar: 2 in x 1/4 in, pitch: 11 in, planes: 1}"
READINGS = "      - {part: upstream/U1-L2, place: end L2, what: thickness"


def with_posts(section: str, *readings: str) -> str:
    """The small record with other posts, and readings on one of them."""
    lines = "".join(f"      - {{part: upstream/U3-L3, {reading}}}\n" for reading in readings)
    made = "oak" if section.startswith("timber") else "iron"
    return changed(
        (f"{POSTS}    material: iron\n", f"      {section}\n    material: {made}\n"),
        (READINGS, lines + READINGS), (IRON, IRON + OAK),
    )


def posts(section: str) -> SectionEntry:
    return read(with_posts(section)).members["posts"].section


def test_angles_are_read_by_their_legs() -> None:
    section = posts(
        "angles: {number: 2, size: 3 in x 2 1/2 in x 5/16 in, placed: back to back, apart: 3/8 in}"
    )
    angles = section.angles
    assert angles is not None
    assert section.shape == "angles"
    assert angles.placed is Placed.BACK_TO_BACK
    assert str(angles.size) == "3 in x 2 1/2 in x 5/16 in"
    assert angles.size.level is not None
    assert angles.size.level.exact == Fraction(5, 2)
    assert pieces_of(section) == 2
    assert unmeasured(section) == ()
    assert sizes_of(section)[What.LEVEL_LEG_THICKNESS] == angles.size.thickness


@pytest.mark.parametrize(
    ("written", "missing"),
    [
        ("angles: {number: 1, size: not measured, placed: single}",
         ("upright leg", "level leg", "thickness")),
        ("angles: {number: 2, size: 3 in x not measured x 1/4 in, placed: star, apart: 0 in}",
         ("level leg",)),
        ("angles: {number: 2, size: 3 in x 3 in x 1/4 in, placed: star, apart: not measured}",
         ("apart",)),
        ("plates and angles: {webs: 1, web: 12 in x 3/8 in, top angles: 3 in x 3 in x "
         "not measured}", ("top angle thickness",)),
        ("flanged segments: {number: 4, inside diameter: not measured, thickness: 1/4 in, "
         "flange: 1 in, flange thickness: not measured}",
         ("inside diameter", "flange thickness")),
        ("timber: {width: 8 in, depth: not measured}", ("depth",)),
        ("rolled: {shape: I, depth: 6 in, web: 1/4 in, flange: 3 1/2 in, flange edge: 1/4 in, "
         "flange at web: not measured}", ("flange at web",)),
    ],
)
def test_what_is_not_measured_is_named_by_the_word_of_a_reading(
    written: str, missing: tuple[str, ...]
) -> None:
    assert unmeasured(posts(written)) == missing


def test_plates_with_holes_and_rivet_lines_that_are_not_measured_are_named() -> None:
    section = posts(
        "channels: {depth: 6 in, web: 1/4 in, flange: 2 in, flange thickness: 1/4 in, apart: 6 in,"
        " toes: out}\n      bottom plate: 10 in x not measured\n      bottom plate holes: {width: "
        "4 in, length: not measured, spacing: 2 ft}\n      rivet lines: not measured"
    )
    assert unmeasured(section) == (
        "bottom plate thickness", "bottom plate hole length", "rivet lines"
    )
    assert section.bottom_plate_holes is not None


def test_webs_and_angles_are_read() -> None:
    section = posts(
        "plates and angles: {webs: 2, web: 12 in x 3/8 in, top angles: 3 in x 2 1/2 in x 5/16 in,"
        f" apart: 9 in, toes: in}}\n      cover plate: 18 in x 1/4 in{LACING}"
    )
    webs = section.plates_and_angles
    assert webs is not None
    assert webs.toes is Toes.IN
    assert webs.bottom_angles is None
    assert pieces_of(section) == 2
    words = set(sizes_of(section))
    assert {What.WEB, What.TOP_ANGLE_THICKNESS, What.COVER_PLATE_THICKNESS} <= words
    assert What.BOTTOM_ANGLE_THICKNESS not in words


def test_a_flange_is_read_by_its_two_thicknesses() -> None:
    # The beam of examples.md 5.7: .60 in at the edge, 1.142 in at the web.
    section = posts(
        "rolled: {shape: I, depth: 24 in, web: 0.50 in, flange: 7 in, flange edge: 0.60 in, "
        "flange at web: 1.142 in}"
    )
    assert section.rolled is not None
    assert section.rolled.tapered
    assert What.FLANGE_EDGE in sizes_of(section)
    assert What.FLANGE_THICKNESS not in sizes_of(section)


def test_rods_with_cut_threads_clevises_and_bent_loops() -> None:
    clevised = ROD.replace("upset", "cut").replace(
        "root diameter: 1 3/8 in", "root diameter: 1 1/16 in, "
        "clevis: {width: 3 in, thickness: 5/8 in, hole: 1 1/2 in}"
    )
    text = changed((ROD, clevised), ("side: 1 in, shape: square}",
                                     "side: 1 in, shape: square, loops: bent}"))
    members = read(text).members
    rods, loops = members["rods"].section.rods, members["hangers"].section.loop_rods
    assert rods is not None
    assert loops is not None
    assert rods.threads is Thread.CUT
    assert rods.clevis is not None
    assert loops.loops is Loops.BENT
    assert What.CLEVIS_HOLE in sizes_of(members["rods"].section)


def test_splices_and_pin_plates_are_read() -> None:
    said = (
        "    splice: {butted: true, plates: [10 in x 3/8 in, 6 in x 1/4 in], across: 2,\n"
        "      rivets: {number: 12, diameter: 3/4 in, sheared: 2}}\n"
        "    pin plates: {plate: 6 in x 1/2 in, hole: 2 1/2 in, beyond hole: 4 in}\n"
    )
    upper = read(changed(("    bars: [U1..U5]\n", f"    bars: [U1..U5]\n{said}"))).members["upper"]
    assert upper.splice is not None
    assert upper.splice.rivets is not None
    assert (len(upper.splice.plates), upper.splice.rivets.sheared) == (2, 2)
    assert upper.pin_plates is not None
    assert upper.pin_plates.rivets is None


def test_an_area_of_a_turnbuckle_is_a_reading() -> None:
    turnbuckle = ROD.replace("1 3/8 in}", "1 3/8 in, turnbuckle: true, turnbuckle area: 2 in2}")
    part = (
        "      - {part: upstream/U2-L3, place: turnbuckle, what: turnbuckle area, "
        "value: 1.8 in2}\n"
    )
    record = read(changed((ROD, turnbuckle), (READINGS, part + READINGS)))
    reading = record.inspections[0].readings[1]
    assert (reading.what, reading.value.number) == (What.TURNBUCKLE_AREA, 1.8)


SINGLE = "angles: {number: 1, size: 3 in x 3 in x 1/4 in, placed: single}"
LACED = (
    "angles: {number: 4, size: 3 in x 3 in x 1/4 in, placed: laced, apart: 1/4 in, backs: 10 in, "
    f"toes: in}}{LACING}"
)
WEBS = "plates and angles: {webs: 2, web: 12 in x 3/8 in, apart: 9 in, toes: out}"
ROUND = (
    "flanged segments: {number: 4, inside diameter: 5 in, thickness: 1/4 in, flange: 1 in, "
    "flange thickness: 1/4 in}"
)
TIMBER = "timber: {number: 2, width: 4 in, depth: 10 in}"
BEAM = (
    "rolled: {shape: I, depth: 6 in, web: 1/4 in, flange: 3 1/2 in, flange edge: 1/4 in, "
    "flange at web: 1/2 in}"
)
PLATED = (
    "channels: {depth: 6 in, web: 1/4 in, flange: 2 in, flange thickness: 1/4 in, apart: 6 in, "
    "toes: out}\n      cover plate: 12 in x 1/4 in\n      bottom plate: 12 in x 1/4 in"
)


@pytest.mark.parametrize("written", [SINGLE, LACED, WEBS, ROUND, TIMBER, BEAM, PLATED])
def test_every_new_section_is_read_back_as_it_was(written: str) -> None:
    # Law: file -> record -> file is an identity; the text is kept, and reads the same again.
    record = read(with_posts(written))
    assert read(record.text).members == record.members
    assert unmeasured(record.members["posts"].section) == ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Bad:
    """A section with one fault: `at` are words of the line it must be found on."""

    section: str
    at: str
    where: str = ""
    got: str
    rule: str
    cure: str


ANGLES, BUILT, SEGMENTS = "angles", "plates and angles", "flanged segments"

BAD = {
    "an angle of two sides": Bad(
        section=SINGLE.replace("3 in x 3 in x 1/4 in", "3 in x 1/4 in"), at="angles:",
        where=f"{ANGLES} > size", got="'3 in x 1/4 in'", rule="is not the size of an angle",
        cure="write it like '3 in x 2 1/2 in x 5/16 in'",
    ),
    "an angle thicker than its leg": Bad(
        section=SINGLE.replace("3 in x 3 in x 1/4 in", "3 in x 1/4 in x 3 in"), at="angles:",
        where=f"{ANGLES} > size", got="'3 in x 1/4 in x 3 in'",
        rule="is an angle with a leg no longer than it is thick",
        cure="write it like '3 in x 2 1/2 in x 5/16 in'",
    ),
    "three angles in a star": Bad(
        section="angles: {number: 3, size: 3 in x 3 in x 1/4 in, placed: star, apart: 0 in}",
        at="angles:", where=ANGLES, got="'3'", rule="is not how many angles are placed 'star'",
        cure="write 2 or 4",
    ),
    "an angle placed nowhere": Bad(
        section=SINGLE.replace("single", "singel"), at="angles:", where=f"{ANGLES} > placed",
        got="'singel'", rule="is not a word known here", cure="did you mean 'single'?",
    ),
    "a pair without its distance": Bad(
        section="angles: {number: 2, size: 3 in x 3 in x 1/4 in, placed: back to back}",
        at="angles:", where=ANGLES, got="'back to back'", rule="needs 'apart'",
        cure="write 'apart:' with its size, or 'apart: not measured'",
    ),
    "a distance of one angle": Bad(
        section=SINGLE.replace("single}", "single, apart: 1/4 in}"), at="angles:", where=ANGLES,
        got="'apart'", rule="has no sense for angles placed 'single'", cure="leave it out",
    ),
    "laced angles that stand both ways": Bad(
        section=LACED.replace("toes", "backs across: 8 in, toes"), at="angles:", where=ANGLES,
        got="'laced'", rule="needs one of 'backs' and 'backs across'",
        cure="write 'backs' for angles one above the other",
    ),
    "laced angles without lacing": Bad(
        section=LACED.removesuffix(LACING), at="posts:", got="'laced'",
        rule="has no lacing or battens", cure="write 'lacing:' or 'battens:' beside the angles",
    ),
    "lacing on one angle": Bad(
        section=SINGLE + LACING, at="posts:", got="'single'", rule="has lacing or battens",
        cure="angles that are tied so are placed 'laced' or 'box'",
    ),
    "three webs": Bad(
        section=WEBS.replace("webs: 2", "webs: 3"), at="plates and angles:", where=BUILT,
        got="'3'", rule="is more than two webs", cure="write 1 or 2",
    ),
    "two webs nowhere": Bad(
        section=WEBS.replace("apart: 9 in, ", ""), at="plates and angles:", where=BUILT,
        got="'2 webs'", rule="need 'apart'", cure="write 'apart:'",
    ),
    "one web with toes": Bad(
        section=WEBS.replace("webs: 2", "webs: 1").replace("apart: 9 in, ", ""),
        at="plates and angles:", where=BUILT, got="'toes'", rule="has no sense for one web",
        cure="leave it out",
    ),
    "one web that is laced": Bad(
        section=f"plates and angles: {{webs: 1, web: 12 in x 3/8 in}}{LACING}", at="posts:",
        got="'1 web'", rule="has lacing or battens", cure="leave them out, or write 'webs: 2'",
    ),
    "five segments": Bad(
        section=ROUND.replace("number: 4", "number: 5"), at="flanged segments:", where=SEGMENTS,
        got="'5'", rule="is no number of segments that were rolled for columns",
        cure="write 4, 6 or 8",
    ),
    "a plate on a round column": Bad(
        section=f"{ROUND}\n      cover plate: 12 in x 1/4 in", at="posts:", got="'cover plate'",
        rule="belongs to channels or plates and angles, not to flanged segments",
        cure="leave it out, or write the channels",
    ),
    "holes in no plate": Bad(
        section=f"{WEBS}\n      cover plate holes: {{width: 4 in, length: 9 in, spacing: 2 ft}}",
        at="posts:", got="'cover plate holes'", rule="has no cover plate to be in",
        cure="write 'cover plate:'",
    ),
    "a shape by its name": Bad(
        section="rolled: {shape: I, name: S 6 x 12.5}", at="rolled:", where="rolled",
        got="'S 6 x 12.5'", rule="names a shape, and no table of old shapes is at hand",
        cure="measure its depth, web, flange and the flange's two thicknesses",
    ),
    "no flange thickness": Bad(
        section=BEAM.replace(", flange edge: 1/4 in, flange at web: 1/2 in", ""), at="rolled:",
        where="rolled", got="nothing", rule="does not tell how thick the flange is",
        cure="write 'flange thickness', or 'flange edge' and 'flange at web'",
    ),
    "a flange of three thicknesses": Bad(
        section=BEAM.replace("flange edge", "flange thickness: 3/8 in, flange edge"),
        at="rolled:", where="rolled", got="'flange thickness and flange edge and flange at web'",
        rule="does not tell how thick the flange is",
        cure="write 'flange thickness', or 'flange edge' and 'flange at web'",
    ),
    "a flange that thins towards its web": Bad(
        section=BEAM.replace("flange edge: 1/4 in", "flange edge: 5/8 in"), at="rolled:",
        where="rolled", got="'5/8 in'", rule="is thicker at the flange's edge than at the web",
        cure="flanges grow thicker towards the web",
    ),
    "an angle that tapers": Bad(
        section=BEAM.replace("shape: I", "shape: angle"), at="rolled:", where="rolled",
        got="'angle'", rule="has one flange thickness", cure="write 'flange thickness'",
    ),
    "timber of nothing": Bad(
        section=TIMBER.replace("10 in", "0 in"), at="timber:", where="timber > depth",
        got="'0 in'", rule="is not greater than zero", cure="write its size",
    ),
}


@pytest.mark.parametrize("name", BAD)
def test_one_fault_is_told_with_its_line_rule_and_cure(name: str) -> None:
    bad, text = BAD[name], with_posts(BAD[name].section)
    faults = faults_of(text)
    assert len(faults) == 1, [fault.sentence("bridge.yaml") for fault in faults]
    fault = faults[0]
    place = "members > posts > section"
    assert fault.where == (f"{place} > {bad.where}" if bad.where else place)
    assert (fault.got, fault.rule) == (bad.got, bad.rule)
    assert fault.cure.startswith(bad.cure)
    assert fault.line
    if bad.where:
        assert fault.line == line_with(text, bad.at)


@pytest.mark.parametrize(
    ("said", "where", "got", "rule"),
    [
        ("splice: {butted: perhaps}", "splice > butted", "'perhaps'", "is neither true nor false"),
        ("splice: {butted: true, rivets: {number: 8, diameter: 3/4 in, sheared: 3}}",
         "splice > rivets", "'3'", "is more sections than one rivet has here"),
        ("splice: {butted: true, plates: [10 in]}", "splice > plates > 1", "'10 in'",
         "is not a size of two sides"),
        ("pin plates: {plate: 6 in x 1/2 in, hole: 2 1/2, beyond hole: 4 in}",
         "pin plates > hole", "'2 1/2'", "has no unit"),
    ],
)
def test_what_is_wrong_about_splices_and_pin_plates_is_told(
    said: str, where: str, got: str, rule: str
) -> None:
    text = changed(("    bars: [U1..U5]\n", f"    bars: [U1..U5]\n    {said}\n"))
    (fault,) = faults_of(text)
    assert (fault.where, fault.got, fault.rule) == (f"members > upper > {where}", got, rule)
    assert fault.line == line_with(text, said)
    assert fault.cure


@pytest.mark.parametrize(
    ("section", "reading", "rule"),
    [
        (SINGLE, "what: web, value: 1/4 in", "is not measured on angles"),
        (SINGLE, "what: upright leg thickness, value: 3/8 in",
         "is more than the upright leg thickness as built, '1/4 in'"),
        (SINGLE, "what: pack rust, value: 1/4 in", "is not measured on angles"),
        (TIMBER, "what: depth, value: 9 in, piece: 3", "is more than the 2 that the part has"),
        (PLATED, "what: pack rust, value: 1/4 in", "does not tell which plate the rust lies under"),
        (WEBS, "place: cover plate, what: web, value: 1/4 in",
         "is not there on plates and angles without one"),
        (BEAM, "what: flange thickness, value: 1/4 in", "is not measured on rolled"),
    ],
)
def test_a_reading_that_does_not_fit_is_refused(section: str, reading: str, rule: str) -> None:
    (fault,) = faults_of(with_posts(section, reading))
    assert fault.rule == rule
    assert fault.cure
    assert fault.line


def test_a_clevis_wears_wider_like_any_hole() -> None:
    clevised = ROD.replace("1 3/8 in}", "1 3/8 in, clevis: {width: 3 in, thickness: 5/8 in, "
                           "hole: 1 1/2 in}}")

    def rules(value: str) -> list[str]:
        part = (
            "      - {part: upstream/U2-L3, place: clevis L3, what: clevis hole, "
            f"value: {value}}}\n"
        )
        text = changed((ROD, clevised), (READINGS, part + READINGS))
        return [fault.rule for fault in faults_of(text)]

    assert rules("1 3/8 in") == ["is less than the hole as built, '1 1/2 in'"]
    assert rules("3 in") == ["is a hole no narrower than its head of '3 in'"]


def test_what_nobody_measured_of_joints_and_blocks_is_listed() -> None:
    said = (
        "    splice: {butted: true, plates: [10 in x not measured],\n"
        "      rivets: {number: 12, diameter: not measured}}\n"
        "    pin plates: {plate: not measured, hole: 2 1/2 in, beyond hole: not measured}\n"
        "    rivet holes: {rivet: 3/4 in, holes: [{where: web, lines: 2, gauge: not measured}]}\n"
        "    jaw: not measured\n"
    )
    record = read(changed(
        ("    bars: [U1..U5]\n", f"    bars: [U1..U5]\n{said}"),
        ("\nfloor:\n", "\njoint blocks: {hips: {joints: [U1], truss: upstream, material: iron}}\n"
         "\nfloor:\n"),
    ))
    of_chord = [one.what for one in not_measured(record) if one.part == "downstream/U2-U3"]
    assert of_chord == [
        "splice plate thickness", "splice rivet diameter", "pin plate width",
        "pin plate thickness", "pin plate beyond hole", "rivet hole gauge", "jaw",
    ]
    of_blocks = [one for one in not_measured(record) if one.what == "bearing"]
    assert [one.part for one in of_blocks] == ["upstream/U1/joint block"]
