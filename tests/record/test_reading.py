from datetime import date
from fractions import Fraction
from hashlib import sha256

import pytest

from eyebar.record import Bearing, Decided, What
from eyebar.sections.shapes import RodShape, RolledShape, Thread, Toes
from eyebar.terms import Form, Kind, Metal
from eyebar.units import Dimension
from tests.record.field_book import SMALL, changed, faults_of, line_with, read


def test_a_field_book_is_read_with_its_sizes_as_written_and_exact() -> None:
    record = read(SMALL)
    eyebars = record.members["lower"].section.eyebars
    assert eyebars is not None
    assert eyebars.hole is not None
    assert eyebars.number == 2
    assert (eyebars.hole.text, eyebars.hole.exact) == ("2 1/2 in", Fraction(5, 2))
    assert record.trusses.form is Form.PRATT
    # By hand: 14 ft 6 in = 174 in, six times.
    assert record.trusses.panels is not None
    assert [panel.exact for panel in record.trusses.panels] == [174] * 6
    assert record.trusses.bearings.other is Bearing.FREE
    assert record.materials["iron"].metal is Metal.WROUGHT_IRON
    assert record.members["lower"].kind is Kind.BOTTOM_CHORD
    assert record.floor.curbs["upstream"].exact == 12
    assert record.floor.deck.weight.dimension is Dimension.DENSITY


def test_every_shape_of_section_is_read() -> None:
    members = read(SMALL).members
    shapes = {name: group.section.shape for name, group in members.items()}
    assert shapes == {
        "upper": "channels", "end posts": "channels", "lower": "eyebars", "hangers": "loop rods",
        "posts": "rolled", "diagonals": "plates", "rods": "rods",
    }
    upper = members["upper"].section
    assert upper.channels is not None
    assert upper.channels.toes is Toes.OUT
    assert upper.cover_plate is not None
    assert upper.cover_plate.thickness is not None
    assert upper.cover_plate.thickness.exact == Fraction(1, 4)
    assert upper.lacing is not None
    assert upper.lacing.planes == 1
    rods = members["rods"].section.rods
    assert rods is not None
    assert (rods.shape, rods.threads) == (RodShape.ROUND, Thread.UPSET)
    rolled = members["posts"].section.rolled
    assert rolled is not None
    assert rolled.shape is RolledShape.I


def test_runs_of_bars_are_spelled_out() -> None:
    assert read(SMALL).members["upper"].bars == ("U1-U2", "U2-U3", "U3-U4", "U4-U5")
    assert read(SMALL).members["upper"].runs == ("U1..U5",)


def test_properties_may_be_given_with_where_they_come_from() -> None:
    given = "{area: 4.31 in2, radius x: 2 1/2 in, source: mill catalogue of 1890}"
    text = changed((
        "rolled: {shape: I, depth: 6 in, web: 1/4 in, flange: 3 1/2 in, flange thickness: 3/8 in}",
        f"given: {given}",
    ))
    section = read(text).members["posts"].section.given
    assert section is not None
    assert section.area.exact == Fraction(431, 100)
    assert section.radius_y is None


def test_what_is_not_measured_is_none_and_no_fault() -> None:
    text = changed(
        ("thickness: 3/4 in, head: 7 in", "thickness: not measured, head: ~"),
        ("{bar: 2 in x 1/4 in, pitch: 12 in", "{bar: 2 in x not measured, pitch: not measured"),
    )
    members = read(text).members
    eyebars, lacing = members["lower"].section.eyebars, members["upper"].section.lacing
    assert eyebars is not None
    assert lacing is not None
    assert (eyebars.thickness, eyebars.head, lacing.pitch) == (None, None, None)
    assert (str(lacing.bar.width), lacing.bar.thickness) == ("2 in", None)


def test_a_size_that_is_left_out_is_a_fault_and_not_unmeasured() -> None:
    (fault,) = faults_of(changed(("thickness: 3/4 in, head: 7 in", "head: 7 in")))
    assert fault.rule == "has no 'thickness'"
    assert fault.cure == "write 'thickness:' with its size, or 'thickness: not measured'"


def test_scalars_stay_what_was_written() -> None:
    # A number plate with dashes is no sum, `no` is no truth, and 1e3 is no thousand.
    text = changed(("built: 1891", "built: 1891\nnumber: 07-19\nowner: no\nplace: 1e3"))
    record = read(text)
    assert (record.number, record.owner, record.place) == ("07-19", "no", "1e3")


def test_dated_entries_name_parts_in_their_one_spelling() -> None:
    record = read(changed(("part: upstream/U1-L2, place: end L2", "part: upstream/L2-U1 @ end L2")))
    reading = record.inspections[0].readings[1]
    assert str(reading.address) == "upstream/U1-L2 @ end L2"
    assert reading.part.part == "upstream/U1-L2"
    assert (reading.what, reading.piece) == (What.THICKNESS, 2)
    assert record.inspections[0].date == date(2020, 5, 4)
    assert record.decisions[0].what is Decided.LOOSE


def test_an_override_gives_only_what_differs() -> None:
    text = SMALL + (
        "overrides:\n  downstream/L3-L2:\n    section:\n      eyebars: {thickness: 13/16 in}\n"
        "    reason: rolled thicker\n"
    )
    own = read(text).overrides["downstream/L2-L3"]
    assert own.section is not None
    assert own.section.eyebars is not None
    assert str(own.section.eyebars.thickness) == "13/16 in"
    assert str(own.section.eyebars.head) == "7 in"


def test_an_override_with_another_shape_takes_the_groups_place() -> None:
    text = SMALL + (
        "overrides:\n  downstream/L2-L3: {section: {plates: [4 in x 1/2 in]}, reason: replaced}\n"
    )
    own = read(text).overrides["downstream/L2-L3"]
    assert own.section is not None
    assert own.section.shape == "plates"
    assert own.section.eyebars is None


def test_a_repair_gives_only_what_differs_from_what_was_built() -> None:
    text = SMALL + (
        "overrides:\n  upstream/U1-U2: {section: {cover plate: 12 in x 3/8 in}, reason: measured}\n"
    ) + "note: end\n"
    text = text.replace("decisions:\n", (
        "decisions:\n  - date: 2022-03-01\n    what: repair\n    part: upstream/U1-U2\n"
        "    section: {lacing: {bar: 2 1/2 in x 3/8 in}}\n"
    ))
    section = read(text).decisions[0].section
    assert section is not None
    assert section.cover_plate is not None
    assert section.lacing is not None
    assert section.cover_plate.text == "12 in x 3/8 in"
    assert (section.lacing.bar.text, str(section.lacing.pitch)) == ("2 1/2 in x 3/8 in", "12 in")


def test_a_reading_is_held_against_the_section_in_force_on_its_day() -> None:
    # A bar renewed thicker in 2022 may read 7/8 in afterwards, and not before.
    repair = (
        "decisions:\n  - date: 2022-03-01\n    what: repair\n    part: upstream/L2-L3\n"
        "    section: {eyebars: {thickness: 1 in}}\n"
    )
    later = (
        "  - date: 2023-05-04\n    by: field crew\n    readings:\n"
        "      - {part: upstream/L2-L3, what: thickness, value: 7/8 in}\n\n" + repair
    )
    assert read(changed(("\ndecisions:\n", later)))
    before = later.replace("2023-05-04", "2021-05-04")
    (fault,) = faults_of(changed(("\ndecisions:\n", before)))
    assert fault.rule == "is more than the thickness as built, '3/4 in'"


def test_a_reading_may_be_out_by_its_plus_minus() -> None:
    thick = ("value: 11/16 in, plus minus: 1/32 in", "value: 25/32 in, plus minus: 1/32 in")
    assert read(changed(thick))
    (fault,) = faults_of(changed((thick[0], "value: 25/32 in, plus minus: 1/64 in")))
    assert fault.rule == "is more than the thickness as built, '3/4 in'"


def test_holes_wear_wider_and_never_narrower() -> None:
    old = "what: thickness, value: 11/16 in, plus minus: 1/32 in"
    assert read(changed((old, "what: hole, value: 2 5/8 in")))
    (fault,) = faults_of(changed((old, "what: hole, value: 2 3/8 in")))
    assert fault.rule == "is less than the hole as built, '2 1/2 in'"
    (fault,) = faults_of(changed((old, "what: hole, value: 7 in")))
    assert fault.rule == "is a hole no narrower than its head of '7 in'"


def test_a_head_is_held_against_the_head_as_built() -> None:
    thicker = ("hole: 2 1/2 in}", "hole: 2 1/2 in, head thickness: 1 in}")
    old = "place: mid, what: thickness, value: 11/16 in"
    assert read(changed(thicker, (old, "place: head L2, what: thickness, value: 31/32 in")))
    assert read(changed((old, "place: head L2, what: width, value: 6 7/8 in")))
    (fault,) = faults_of(changed(thicker, (old, "place: mid, what: thickness, value: 31/32 in")))
    assert fault.rule == "is more than the thickness as built, '3/4 in'"
    (fault,) = faults_of(
        changed(thicker, (old, "place: head L2, what: thickness, value: 1 1/8 in"))
    )
    assert fault.rule == "is more than the head thickness as built, '1 in'"


def test_the_same_thing_read_twice_on_a_day_is_a_fault() -> None:
    line = "      - {part: upstream/L2-L3, place: mid, what: thickness, value: 5/8 in}\n"
    text = changed(("\ndecisions:", line + "\ndecisions:"))
    (fault,) = faults_of(text)
    assert fault.rule == "reads the same as reading 1 of that day"
    assert fault.line == line_with(text, "value: 5/8 in")


def test_a_record_knows_its_text_and_the_line_of_every_key() -> None:
    record = read(SMALL)
    assert record.text == SMALL
    assert record.file == "bridge.yaml"
    assert record.hash == sha256(SMALL.encode()).hexdigest()
    assert record.line_of("members", "lower", "section", "eyebars", "hole") == line_with(
        SMALL, "hole: 2 1/2 in"
    )
    assert record.line_of("inspections", 0, "readings", 1) == line_with(SMALL, "end L2")
    # What is not there has the line of what would hold it.
    assert record.line_of("members", "lower", "note") == line_with(SMALL, "  lower:")


def test_a_mark_at_the_head_of_the_file_and_windows_line_ends_change_nothing() -> None:
    windows = "\ufeff" + SMALL.replace("\n", "\r\n")
    record = read(windows.encode("utf-8"))
    assert record.members == read(SMALL).members
    assert record.line_of("floor") == line_with(SMALL, "floor:")
    assert record.text == windows


def test_an_anchor_may_spare_writing_a_section_twice() -> None:
    text = changed(
        ("      plates: [3 in x 1/2 in, 3 in x 5/8 in]", "      plates: &two [3 in x 1/2 in]"),
        ("rolled: {shape: I, depth: 6 in, web: 1/4 in, flange: 3 1/2 in, flange thickness: 3/8 in}",
         "plates: [3 in x 3/4 in]"),
        ("loop rods: {number: 2, side: 1 in, shape: square}", "plates: [3 in x 1 in]"),
        ("rods: {number: 1, diameter: 1 1/4 in, shape: round, threads: upset, "
         "root diameter: 1 3/8 in}", "plates: *two"),
        (", piece: 2", ""), ("value: 9/16 in", "value: 7/16 in"),
    )
    assert read(text).members["rods"].section == read(text).members["diagonals"].section


JOINTS = """\
  joints:
    L0: [0 ft, 0 ft]
    L1: [14 ft 6 in, 0 ft]
    L2: [29 ft, 0 ft]
    L3: [43 ft 6 in, 0 ft]
    U1: [14 ft 6 in, 18 ft]
    U2: [29 ft, 18 ft]
    U3: [43 ft 6 in, 18 ft]
    L4: [58 ft, -3 in]
    L5: [72 ft 6 in, 0 ft]
    L6: [87 ft, 0 ft]
    U4: [58 ft, 18 ft]
    U5: [72 ft 6 in, 18 ft]
  floor: [L0, L1, L2, L3, L4, L5, L6]
"""
BY_FORM = "  form: Pratt\n  panels: 6 at 14 ft 6 in\n  depth: 18 ft\n"


def test_a_truss_may_be_given_joint_by_joint() -> None:
    record = read(changed((BY_FORM, JOINTS)))
    assert record.trusses.joints is not None
    # By hand: 58 ft = 696 in, 3 in below the line of the others.
    assert [quantity.exact for quantity in record.trusses.joints["L4"]] == [696, -3]


@pytest.mark.parametrize(
    ("change", "rule"),
    [
        ((BY_FORM, BY_FORM + JOINTS), "stand beside a form"),
        ((BY_FORM, JOINTS.replace("  floor: [L0, L1, L2, L3, L4, L5, L6]\n", "")),
         "tells which joints carry the floor"),
        ((BY_FORM, ""), "tells the shape of the truss"),
        ((BY_FORM, JOINTS.replace("L6]", "L7]")), "is no joint of the truss"),
        ((BY_FORM, BY_FORM + "  depths: {U1: 18 ft}\n"), "is not one depth"),
        ((BY_FORM, JOINTS + "  mirrored: true\n"), "needs the whole span"),
        ((BY_FORM, BY_FORM.replace("6 at", "six at")), "has no count of panels from 1 to 200"),
        ((BY_FORM, BY_FORM.replace("6 at 14 ft 6 in", "0 at 14 ft")),
         "has no count of panels from 1 to 200"),
    ],
)
def test_a_truss_is_given_one_way_and_whole(change: tuple[str, str], rule: str) -> None:
    assert rule in [fault.rule for fault in faults_of(changed(change))]


def test_panels_may_differ() -> None:
    panels = "[14 ft, 14 ft 6 in, 15 ft, 15 ft, 14 ft 6 in, 14 ft]"
    record = read(changed(("6 at 14 ft 6 in", panels)))
    assert record.trusses.panels is not None
    # By hand: 2 x (168 + 174 + 180) in = 87 ft.
    assert sum(panel.exact for panel in record.trusses.panels) == 87 * 12


def test_trusses_may_be_given_apart() -> None:
    lower = changed(("    bars: [L0..L6]\n", "    bars: [L0..L6]\n    truss: upstream\n"))
    other = lower.replace("  hangers:\n", (
        "  lower, downstream:\n    kind: bottom chord\n    bars: [L0..L6]\n    truss: downstream\n"
        "    section:\n      eyebars: {number: 2, width: 4 in, thickness: 1 in, head: 9 in, "
        "hole: 3 in}\n    material: iron\n  hangers:\n"
    ))
    record = read(other)
    assert record.group_of("upstream", "L2-L3") == "lower"
    assert record.group_of("downstream", "L3-L2") == "lower, downstream"
    # The same bar in a group of one truss and in one of both is named twice there.
    (fault,) = faults_of(other.replace("    truss: upstream\n", ""))
    assert fault.rule == "are named twice; first in 'lower'"
    assert fault.got == "'L0-L1', 'L1-L2', 'L2-L3', 'L3-L4', 'L4-L5', 'L5-L6'"


def test_the_records_own_values_come_with_unit_and_reason() -> None:
    text = SMALL + (
        "values:\n  impact.rough: {value: 0.33, unit: '1', reason: short approach}\n"
        "  posting.vehicles: {value: [SU4, SU5], unit: '-', reason: quarry}\n"
    )
    assert read(text).exceptions == {
        "impact.rough": (0.33, "1", "short approach"),
        "posting.vehicles": (["SU4", "SU5"], "-", "quarry"),
    }
