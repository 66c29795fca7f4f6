"""Every bad input that a record may hold: what, where, rule, got, cure; and nothing is written."""

from dataclasses import dataclass
from pathlib import Path

import pytest

from eyebar.errors import BadRecord, Fault
from eyebar.record import LARGEST, override_in_file, read_record
from tests.record.field_book import SMALL, TODAY, changed, faults_of, line_with


@dataclass(frozen=True, slots=True, kw_only=True)
class Bad:
    """A text with one fault, and the fault: `at` are words of the line it must be found on."""

    text: str
    at: str
    where: str
    rule: str
    got: str = ""
    cure: str


EYEBARS = "{number: 2, width: 3 in, thickness: 3/4 in, head: 7 in, hole: 2 1/2 in}"
LOWER = "members > lower > section > eyebars"


def of_eyebars(old: str, new: str) -> str:
    return changed((EYEBARS, EYEBARS.replace(old, new)))


BAD = {
    "no unit": Bad(
        text=of_eyebars("width: 3 in", "width: 3 1/2"), at="width: 3 1/2,",
        where=f"{LOWER} > width", got="'3 1/2'", rule="has no unit",
        cure="write it like '3 1/2 in'",
    ),
    "wrong unit": Bad(
        text=of_eyebars("width: 3 in", "width: 3 kip"), at="width: 3 kip",
        where=f"{LOWER} > width", got="'3 kip'", rule="is a force",
        cure="here stands a length, like '3 1/2 in'",
    ),
    "NaN": Bad(
        text=of_eyebars("width: 3 in", "width: .nan"), at="width: .nan",
        where=f"{LOWER} > width", got="'.nan'", rule="is not a finite number",
        cure="write it like '3 1/2 in'",
    ),
    "infinity": Bad(
        text=changed(("weight: 900 lb", "weight: inf lb")), at="inf lb",
        where="floor > floorbeams > weight", got="'inf lb'", rule="is not a finite number",
        cure="write it like '32 lb/ft'",
    ),
    "negative": Bad(
        text=of_eyebars("thickness: 3/4 in", "thickness: -3/4 in"), at="thickness: -3/4",
        where=f"{LOWER} > thickness", got="'-3/4 in'", rule="is below zero",
        cure="a length cannot be negative here",
    ),
    "nothing": Bad(
        text=of_eyebars("thickness: 3/4 in", "thickness: 0 in"), at="thickness: 0 in",
        where=f"{LOWER} > thickness", got="'0 in'", rule="is not greater than zero",
        cure="write its size, or 'not measured'",
    ),
    "absurd": Bad(
        text=of_eyebars("width: 3 in", "width: 30 ft"), at="width: 30 ft",
        where=f"{LOWER} > width", got="'30 ft'",
        rule="is more than 12 ft, which no bridge of this kind has",
        cure="look for a slip of the pen in the number or its unit",
    ),
    "a bar named twice": Bad(
        text=changed(("bars: [U1-L1, U5-L5]", "bars: [U1-L1, U5-L5, L3-U3]")), at="bars: [U2-L2",
        where="members > posts > bars", got="'U3-L3'", rule="is named twice; first in 'hangers'",
        cure="leave it out of one of the groups",
    ),
    "a bar named twice in one list": Bad(
        text=changed(("bars: [L0..L6]", "bars: [L0..L6, L3-L2]")), at="[L0..L6, L3-L2]",
        where="members > lower > bars", got="'L2-L3'", rule="is named twice as a bar",
        cure="leave one of them out",
    ),
    "a bar to no joint": Bad(
        text=changed(("[U1-L2, U5-L4]", "[U1-L2, U5-L4, U5-L66]")), at="U5-L66",
        where="members > diagonals > bars", got="'U5-L66'",
        rule="goes to no joint of the truss, 'L66'", cure="did you mean 'L6'?",
    ),
    "a bar's name with a slash": Bad(
        text=changed(("[U1-L2, U5-L4]", "[U1-L2, U5/L4]")), at="U5/L4",
        where="members > diagonals > bars > 2", got="'U5/L4'", rule="is not the name of a bar",
        cure="write its two joints, like 'U2-L4'",
    ),
    "a truss's name with a slash": Bad(
        text=changed(("[upstream, downstream]", "[upstream, down/stream]")), at="down/stream",
        where="trusses > names > 2", got="'down/stream'", rule="cannot be the name of a truss",
        cure="use letters, figures and spaces, as in 'upstream', and not 'floor'",
    ),
    "a missing section": Bad(
        text=changed((
            "    section:\n      loop rods: {number: 2, side: 1 in, shape: square}\n", ""
        )),
        at="hangers:", where="members > hangers", rule="has no 'section'",
        cure="write what it is made of, one of: eyebars, rods, loop rods, channels, angles, "
             "plates and angles, flanged segments, rolled, plates, timber, given",
    ),
    "no supports": Bad(
        text=changed(("  bearings: {zero: fixed, other: free}\n", "")), at="trusses:",
        where="trusses", rule="has no 'bearings'",
        cure="write 'bearings: {zero: fixed, other: free}'",
    ),
    "both bearings free": Bad(
        text=changed(("zero: fixed, other: free", "zero: free, other: free")), at="zero: free",
        where="trusses > bearings", got="'free'",
        rule="stands at both ends, so nothing keeps the truss from rolling",
        cure="write 'fixed' at one end",
    ),
    "both bearings under one joint": Bad(
        text=changed(("zero: fixed, other: free", "zero: fixed, other: free, at: [L6, L6]")),
        at="at: [L6, L6]", where="trusses > bearings", got="'L6'",
        rule="is named twice as the joint of a bearing", cure="leave one of them out",
    ),
    "a head smaller than its body": Bad(
        text=of_eyebars("head: 7 in", "head: 2 7/8 in"), at="head: 2 7/8 in", where=LOWER,
        got="'2 7/8 in'", rule="is a head smaller than its body of '3 in'",
        cure="measure the head across the hole, and the body",
    ),
    "a hole wider than its head": Bad(
        text=of_eyebars("hole: 2 1/2 in", "hole: 7 1/2 in"), at="hole: 7 1/2 in", where=LOWER,
        got="'7 1/2 in'", rule="is a hole no narrower than its head of '7 in'",
        cure="measure the hole, and the head across it",
    ),
    "a loss greater than the thickness": Bad(
        text=changed(("value: 11/16 in", "value: -1/16 in")), at="value: -1/16 in",
        where="inspections > 1 > readings > 1 > value", got="'-1/16 in'", rule="is below zero",
        cure="a length cannot be negative here",
    ),
    "a loss where what is left is wanted": Bad(
        text=changed(("what: thickness, value: 11/16 in", "what: loss, value: 1 in")),
        at="what: loss", where="inspections > 1 > readings > 1 > what", got="'loss'",
        rule="is not a word known here",
        cure="write what is left, as in 'what: thickness, value: 5/16 in'",
    ),
    "a reading thicker than the bar was built": Bad(
        text=changed(("value: 11/16 in", "value: 13/16 in")), at="value: 13/16 in",
        where="inspections > 1 > readings > 1 > value", got="'13/16 in'",
        rule="is more than the thickness as built, '3/4 in'",
        cure="look at the gauge; or correct the section as built",
    ),
    "duplicate keys": Bad(
        text=changed(("  surface: smooth", "  surface: smooth\n  surface: rough")),
        at="surface: rough", where="floor", got="'surface'",
        rule=f"stands twice; first on line {line_with(SMALL, 'surface: smooth')}",
        cure="leave one of them out",
    ),
    "unknown key": Bad(
        text=of_eyebars("thickness", "thikness"), at="thikness", where=LOWER, got="'thikness'",
        rule="is not a key known here", cure="did you mean 'thickness'?",
    ),
    "unknown word": Bad(
        text=changed(("kind: hip vertical", "kind: hip vertcal")), at="hip vertcal",
        where="members > hangers > kind", got="'hip vertcal'", rule="is not a word known here",
        cure="did you mean 'hip vertical'?",
    ),
    "unknown material": Bad(
        text=changed(("shape: square}\n    material: iron", "shape: square}\n    material: irn")),
        at="material: irn", where="members > hangers > material", got="'irn'",
        rule="is no material of this record", cure="did you mean 'iron'?",
    ),
    "unknown part": Bad(
        text=changed(("part: upstream/L2-L3", "part: upstrem/L2-L3")), at="upstrem/L2-L3",
        where="inspections > 1 > readings > 1 > part", got="'upstrem/L2-L3'",
        rule="names no truss of this bridge, 'upstrem'", cure="did you mean 'upstream'?",
    ),
    "a date in the future": Bad(
        text=changed(("date: 2021-08-09", "date: 2026-11-02")), at="2026-11-02",
        where="decisions > 1 > date", got="'2026-11-02'",
        rule="lies in the future; today is 2026-11-01",
        cure="write the day on which it was done",
    ),
    "a date before the bridge": Bad(
        text=changed(("date: 2020-05-04", "date: 1820-05-04")), at="1820-05-04",
        where="inspections > 1 > date", got="'1820-05-04'",
        rule="lies before the bridge was built, 1891", cure="look for a slip of the pen",
    ),
    "no day of the calendar": Bad(
        text=changed(("date: 2020-05-04", "date: 2020-02-30")), at="2020-02-30",
        where="inspections > 1 > date", got="'2020-02-30'", rule="is no day of the calendar",
        cure="look at its month and day",
    ),
    "zero lanes": Bad(
        text=changed(("  surface: smooth", "  surface: smooth\n  lanes: 0")), at="lanes: 0",
        where="floor > lanes", got="'0'", rule="is not from 1 to 6",
        cure="look for a slip of the pen",
    ),
    "a file outside the folder": Bad(
        text=changed(("    by: field crew", "    by: field crew\n    photographs: [../L4.jpg]")),
        at="L4.jpg", where="inspections > 1 > photographs > 1", got="'../L4.jpg'",
        rule="leads outside the record's folder",
        cure="write a path inside it, like 'photographs/L4.jpg'",
    ),
    "an absolute path": Bad(
        text=changed(("    by: field crew", "    by: field crew\n    photographs: [/etc/L4.jpg]")),
        at="L4.jpg", where="inspections > 1 > photographs > 1", got="'/etc/L4.jpg'",
        rule="leads outside the record's folder",
        cure="write a path inside it, like 'photographs/L4.jpg'",
    ),
    "an older format": Bad(
        text=changed(("eyebar: 1", "eyebar: 0")), at="eyebar: 0", where="eyebar", got="'0'",
        rule="is a format that never was; the first is 1", cure="write 'eyebar: 1'",
    ),
    "a newer format": Bad(
        text=changed(("eyebar: 1", "eyebar: 2")), at="eyebar: 2", where="eyebar", got="'2'",
        rule="is a newer format than this program reads, which is 1",
        cure="read it with a newer eyebar",
    ),
    "no format": Bad(
        text=changed(("eyebar: 1\n", "")), at="# Sedgewater", where="",
        rule="does not begin with the number of its format",
        cure="write 'eyebar: 1' as its first line",
    ),
    "two overrides of one field": Bad(
        text=SMALL + "overrides:\n  upstream/U1-L2: {material: iron, reason: one}\n"
                     "  upstream/L2-U1: {material: iron, reason: two}\n",
        at="reason: two", where="overrides > upstream/L2-U1", got="'upstream/L2-U1'",
        rule="overrides the same part as 'upstream/U1-L2' on line "
             f"{len(SMALL.splitlines()) + 2}",
        cure="write one override for a part",
    ),
    "a piece that is not there": Bad(
        text=changed(("value: 9/16 in, piece: 2", "value: 9/16 in, piece: 3")), at="piece: 3",
        where="inspections > 1 > readings > 2 > piece", got="'3'",
        rule="is more than the 2 that the part has", cure="write 1 to 2",
    ),
    "a size that the section has not": Bad(
        text=changed(("place: mid, what: thickness", "place: mid, what: web")), at="what: web",
        where="inspections > 1 > readings > 1 > what", got="'web'",
        rule="is not measured on eyebars", cure="known are: width, thickness, head, hole",
    ),
    "a place at another joint": Bad(
        text=changed(("place: end L2", "place: end L3")), at="place: end L3",
        where="inspections > 1 > readings > 2 > part", got="'upstream/U1-L2 @ end L3'",
        rule="is at joint L3, where this bar does not end", cure="write U1 or L2",
    ),
    "a decision that does not say enough": Bad(
        text=changed(("what: loose, part: downstream/U2-L3, gap: 1/8 in",
                      "what: pull accepted, part: downstream/U2-L3")),
        at="pull accepted", where="decisions > 1", rule="says 'pull accepted' and gives no 'pull'",
        cure="write 'pull:' with its value",
    ),
    "an exception without a reason": Bad(
        text=SMALL + "values:\n  impact.rough: {value: 0.33, unit: '1'}\n", at="impact.rough",
        where="values > impact.rough", rule="has no 'reason'", cure="say why this one differs",
    ),
    "figures without a source": Bad(
        text=changed(("{metal: wrought iron}", "{metal: wrought iron, yield: 26 ksi}")),
        at="yield: 26 ksi", where="materials > iron", got="'26 ksi'", rule="has no source",
        cure="write 'source:', where the figure comes from",
    ),
    "a shape of truss and joints": Bad(
        text=changed(("  depth: 18 ft\n", "")), at="trusses:", where="trusses",
        rule="is not one depth", cure="write 'depth: 26 ft', or 'depths: {U1: 20 ft, U2: 24 ft}'",
    ),
    "a counter that no group has": Bad(
        text=changed(("counters: [U4-L3, U2-L3]", "counters: [U4-L3, U2-L3, U3-L4]")),
        at="U3-L4]", where="trusses > counters", got="'U3-L4'",
        rule="is a counter that no group has",
        cure="add it to the bars of a group, or leave it out",
    ),
}


def the_fault(bad: Bad) -> Fault:
    """The only fault of a text."""
    faults = faults_of(bad.text)
    assert len(faults) == 1, [fault.sentence("bridge.yaml") for fault in faults]
    return faults[0]


@pytest.mark.parametrize("name", BAD)
def test_one_fault_is_told_with_its_line_rule_and_cure(name: str) -> None:
    bad, fault = BAD[name], the_fault(BAD[name])
    assert fault.line == line_with(bad.text, bad.at)
    assert fault.where == bad.where
    assert fault.rule == bad.rule
    assert fault.got == (bad.got or fault.got)
    assert fault.cure.startswith(bad.cure)


@pytest.mark.parametrize("name", BAD)
def test_nothing_is_written_where_a_record_is_refused(name: str, tmp_path: Path) -> None:
    path = tmp_path / "bridge.yaml"
    path.write_text(BAD[name].text, encoding="utf-8")
    with pytest.raises(BadRecord):
        override_in_file(path, "upstream/U3-L3", {"material": "iron"}, reason="no", today=TODAY)
    assert path.read_text(encoding="utf-8") == BAD[name].text
    assert list(tmp_path.iterdir()) == [path]


def test_the_sentence_of_a_fault_reads_as_the_house_writes_it() -> None:
    # The form of the house plan, section 6: file:line: where: got rule; cure.
    text = BAD["no unit"].text
    assert the_fault(BAD["no unit"]).sentence("bridge.yaml") == (
        f"bridge.yaml:{line_with(text, 'width: 3 1/2,')}: members > lower > section > eyebars > "
        "width: '3 1/2' has no unit; write it like '3 1/2 in'"
    )


def test_all_faults_are_told_at_once_in_the_order_of_their_lines() -> None:
    # One of each stage: YAML, shape of the truss's blocks, agreement between them, dated entries.
    text = changed(
        ("  surface: smooth", "  surface: smooth\n  surface: rough"),
        (EYEBARS, EYEBARS.replace("width: 3 in", "width: 3")),
        ("[U1-L2, U5-L4]", "[U1-L2, U5-L4, U5-L66]"),
        ("date: 2020-05-04", "date: 2030-05-04"),
        ("part: upstream/U1-L2", "part: upstream/U1-L22"),
    )
    faults = faults_of(text)
    assert [fault.line for fault in faults] == [
        line_with(text, words) for words in
        ("width: 3,", "U5-L66", "surface: rough", "2030-05-04", "U1-L22")
    ]


def test_a_faulty_reading_does_not_hide_the_faults_of_its_neighbours() -> None:
    text = changed(
        ("value: 11/16 in", "value: 11/16"),
        ("value: 9/16 in, piece: 2", "value: 9/16 in, piece: 4"),
    )
    assert [(fault.where, fault.rule) for fault in faults_of(text)] == [
        ("inspections > 1 > readings > 1 > value", "has no unit"),
        ("inspections > 1 > readings > 2 > piece", "is more than the 2 that the part has"),
    ]


def test_a_faulty_section_raises_no_second_fault_at_its_readings() -> None:
    text = changed((EYEBARS, EYEBARS.replace("width: 3 in", "width: 3")))
    assert len(faults_of(text)) == 1


def test_anchors_that_explode_are_refused_before_they_do() -> None:
    # By hand: a has 11 entries, each next one ten of the one above and itself: b 111, c 1,111,
    # d 11,111, e 111,111 on line 6; f on line 7 would pass the limit of 200,000.
    lines = ["eyebar: 1", "a: &a [x, x, x, x, x, x, x, x, x, x]"]
    for above, here in zip("abcdef", "bcdefg", strict=True):
        lines.append(f"{here}: &{here} [{', '.join([f'*{above}'] * 10)}]")
    (fault,) = faults_of("\n".join(lines))
    assert fault.rule == "grows beyond 200,000 entries by its anchors"
    assert fault.line == 7


def test_an_anchor_inside_itself_is_refused() -> None:
    (fault,) = faults_of("eyebar: 1\nname: &a [*a]\n")
    assert (fault.line, fault.rule) == (2, "repeats 'a', which no anchor above names")


def test_deep_nesting_is_refused() -> None:
    (fault,) = faults_of("eyebar: 1\nname: " + "[" * 100_000)
    assert (fault.line, fault.rule) == (2, "nests deeper than 12 blocks")


def test_more_than_two_megabytes_are_refused_by_size(tmp_path: Path) -> None:
    path = tmp_path / "bridge.yaml"
    path.write_bytes(b"\xff" * (LARGEST + 1))
    with pytest.raises(BadRecord) as bad:
        read_record(path)
    (fault,) = bad.value.faults
    assert (fault.got, fault.rule) == ("2,000,001 bytes", "is more than the limit of 2,000,000")
    (fault,) = faults_of(b"\xff" * (LARGEST + 1))
    assert fault.rule == "is more than the limit of 2,000,000"


def test_what_is_not_utf_8_is_refused_with_its_line() -> None:
    (fault,) = faults_of(SMALL.encode().replace(b"gravel", b"grav\xe9l"))
    assert fault.rule == "is not written in UTF-8"
    assert fault.line == line_with(SMALL, "gravel")
    assert fault.got == "'e9' (hexadecimal)"
    assert fault.cure == "save the file as UTF-8"


@pytest.mark.parametrize(
    ("text", "line", "cure"),
    [
        ("eyebar: 1\nname: 'open\n", 2, "look at the indents"),
        ("eyebar: 1\nname: a: b\n", 2, "put a text that holds a colon between quotes"),
        ("eyebar: 1\n\tname: a\n", 2, "indent with spaces, not with tabs"),
        ("eyebar: 1\n- name\n", 2, "look at the indents"),
        ("eyebar: 1\nname: \x00\n", 2, "take it out"),
    ],
)
def test_what_is_not_yaml_is_refused(text: str, line: int | None, cure: str) -> None:
    (fault,) = faults_of(text)
    assert fault.rule.startswith("is not YAML")
    assert fault.line == line
    assert fault.cure.startswith(cure)


@pytest.mark.parametrize("text", ["", "# nothing\n", "- a\n- b\n", "just a text\n"])
def test_what_holds_no_keys_is_no_record(text: str) -> None:
    (fault,) = faults_of(text)
    assert fault.rule == "is not a record: it holds no keys"
    assert fault.cure == "begin it with 'eyebar: 1'"


def test_a_tag_is_refused() -> None:
    faults = faults_of(changed(("built: 1891", "built: !!python/object:os.system 1891")))
    assert "is a tag, which a record has no use for" in [fault.rule for fault in faults]


def test_a_second_record_in_the_file_is_refused() -> None:
    (fault,) = faults_of(SMALL + "---\neyebar: 1\n")
    assert fault.rule == "begins a second record"


def test_a_file_that_is_not_there_is_refused(tmp_path: Path) -> None:
    with pytest.raises(BadRecord) as bad:
        read_record(tmp_path / "none.yaml")
    assert "cannot be read" in bad.value.faults[0].rule
