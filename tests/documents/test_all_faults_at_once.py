"""Every fault of a record is told at once, whoever finds it, and one cause is told once.

The record is that of a demo bridge with slips made in it by hand. What is to be told of each is
written beside it, by hand too.
"""

import json
from dataclasses import dataclass
from datetime import date
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from typer.testing import CliRunner

from eyebar.cli.commands import app
from eyebar.demo import SHOWN, bridge_records
from eyebar.documents.opened import opened
from eyebar.documents.schemas import schema
from eyebar.errors import BadRecord, Fault

GOOD = bridge_records()["quillmarsh"].read_text(encoding="utf-8")


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """A slip of the pen: what stood there, what stands there now, and what is to be told of it.

    `at` are words of the line that it must be told on; left out, the first line of `new`.
    """

    old: str
    new: str
    rule: str
    got: str = ""
    at: str = ""


def slipped(*slips: Slip) -> str:
    """The demo record with slips in it; each old text must stand there once."""
    text = GOOD
    for slip in slips:
        assert text.count(slip.old) == 1, f"{slip.old!r} stands {text.count(slip.old)} times"
        text = text.replace(slip.old, slip.new)
    return text


def line_with(text: str, words: str) -> int:
    lines = [i for i, line in enumerate(text.splitlines(), 1) if words in line]
    assert len(lines) == 1, f"{words!r} stands on lines {lines}"
    return lines[0]


def told(folder: Path, text: str) -> tuple[Fault, ...]:
    """The faults of a record, as every command would tell them."""
    path = folder / "slips.yaml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(BadRecord) as bad:
        opened(path)
    assert bad.value.file == str(path)
    return bad.value.faults


def expected(text: str, slips: tuple[Slip, ...]) -> list[tuple[int, str, str]]:
    """(line, got, rule) of every slip, in the order of the lines."""
    return sorted(
        (line_with(text, slip.at or slip.new.strip().splitlines()[0]), slip.got, slip.rule)
        for slip in slips
    )


TWELVE = (
    # Found while the text is read: what stands twice.
    Slip(old="  utilities: {}\n", at="# open",
         new="  utilities: {}\n  lanes: 1   # marked\n  lanes: 2   # open\n",
         got="'lanes'", rule="stands twice; first on line {marked}"),
    # Found while each block is read: a size without its unit, an unknown word, an unknown key.
    Slip(old="{number: 2, width: 3 in, thickness: 5/8 in, head: 7 1/2",
         new="{number: 2, width: 3, thickness: 5/8 in, head: 7 1/2",
         got="'3'", rule="has no unit"),
    Slip(old="kind: hip vertical", new="kind: hip vertcal", got="'hip vertcal'",
         rule="is not a word known here"),
    Slip(old="  railing: {weight: 32 lb/ft}", new="  railng: {weight: 32 lb/ft}", got="'railng'",
         rule="is not a key known here"),
    # Found where the blocks are held against each other. The demo has a reading on upstream/U2-L4,
    # which is no second fault.
    Slip(old="bars: [U2-L4, U8-L6]", new="bars: [U2-L44, U8-L6]", got="'U2-L44'",
         rule="goes to no joint of the truss, 'L44'"),
    Slip(old="turnbuckle area: 1.40 in2}\n    material: bar iron",
         new="turnbuckle area: 1.40 in2}\n    material: bar irn", at="bar irn", got="'bar irn'",
         rule="is no material of this record"),
    # Found in the dated entries.
    Slip(old="value: 31/32 in, gauge", new="value: 35/32 in, gauge",
         at="value: 35/32 in", got="'35/32 in'", rule="is more than the side as built, '1 in'"),
    # Found once the trusses are laid out by their form.
    Slip(old="    kind: post\n", new="    kind: diagonal   # they push\n", at="# they push",
         got="'diagonal'",
         rule="is not what U2-L2, U3-L3, U4-L4, U5-L5, U6-L6, U7-L7, U8-L8 are: posts"),
    Slip(old="bars: [U1-L3, U9-L7]", new="bars: [U1-L3]", at="members:",
         rule="has no group for U9-L7"),
    Slip(old="  clear width: 16 ft", new="  clear width: 15 ft", got="'15 ft'",
         rule="does not fit: the curbs leave 16 ft between them"),
    # Found where the state on a date is made: two coupons are too few.
    Slip(old="    metal: wrought iron ", new="    coupons: {yield: [30 ksi, 31 ksi]}\n"
         "    metal: wrought iron ", rule="number of coupons is 2; it must be 3 or more"),
    # Found where the record's own values are laid over the office's (three tons, 23 CFR 650.313).
    Slip(old="traffic: {trucks a day: 20}",
         new="values:\n  posting.closing limit: {value: 2, unit: tons, reason: the mill's truck}\n"
         "traffic: {trucks a day: 20}", at="posting.closing limit", got="2.0",
         rule="is under 3 tons, the least that makes sense here"),
)


def test_twelve_faults_of_twelve_kinds_are_all_told_and_no_more(tmp_path: Path) -> None:
    text = slipped(*TWELVE)
    assert [(f.line, f.got, f.rule) for f in told(tmp_path, text)] == [
        (line, got, rule.format(marked=line_with(text, "# marked")))
        for line, got, rule in expected(text, TWELVE)
    ]


@pytest.mark.parametrize("command", ["check", "rate", "forces", "explain"])
def test_every_command_tells_all_faults_and_writes_nothing(
    command: str, tmp_path: Path
) -> None:
    record = tmp_path / "slips.yaml"
    record.write_text(slipped(*TWELVE), encoding="utf-8")
    part = ["upstream/U2-L4"] if command == "explain" else []
    answer = CliRunner().invoke(app, [command, str(record), *part])
    assert (answer.exit_code, answer.stdout) == (1, "")
    assert len(answer.stderr.splitlines()) == len(TWELVE)
    as_json = CliRunner().invoke(app, [command, str(record), *part, "--json"])
    document = json.loads(as_json.stdout)
    Draft202012Validator(schema("error")).validate(document)
    assert (as_json.exit_code, document["code"], document["file"]) == (
        1, "bad-record", str(record),
    )
    lines = [fault["line"] for fault in document["faults"]]
    assert lines == sorted(lines)
    assert len(lines) == len(TWELVE)
    assert list(tmp_path.iterdir()) == [record]
    assert record.read_text(encoding="utf-8") == slipped(*TWELVE)


def test_no_sheet_is_drawn_of_a_record_with_faults(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    record = tmp_path / "slips.yaml"
    record.write_text(slipped(*TWELVE), encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    for arguments in ([], ["-o", str(tmp_path / "sheet.svg")]):
        answer = CliRunner().invoke(app, ["draw", str(record), *arguments])
        assert answer.exit_code == 1
        assert len(answer.stderr.splitlines()) == len(TWELVE)
    assert list(tmp_path.iterdir()) == [record]


def alone(*slips: Slip) -> tuple[Slip, ...]:
    """Slips whose faults are all that is to be told."""
    return slips


ONE_CAUSE = {
    # A bar that is misspelt is missing in its group, and has a reading in the demo.
    "a bar that is misspelt": alone(
        Slip(old="bars: [U2-L4, U8-L6]", new="bars: [U2/L4, U8-L6]", got="'U2/L4'",
             rule="is not the name of a bar"),
    ),
    "a bar of no form, where another is missing": alone(
        Slip(old="bars: [U2-L4, U8-L6]", new="bars: [U2-L5, U8-L6]", got="'U2-L5'",
             rule="is no bar of a double-intersection Pratt truss of 10 panels"),
    ),
    "a run that is written as a bar": alone(
        Slip(old="bars: [L3..L7]", new="bars: [L3-L7]", got="'L3-L7'",
             rule="is no bar of a double-intersection Pratt truss of 10 panels"),
    ),
    "a bar left out that has readings": alone(
        Slip(old="bars: [U2-L4, U8-L6]", new="bars: [U8-L6]", at="members:",
             rule="has no group for U2-L4"),
    ),
    "a counter that is misspelt in its group": alone(
        Slip(old="bars: [U5-L3, U5-L7, U4-L2, U6-L8]", new="bars: [U5-L3, U5-L7, U4-L2, U6-L88]",
             got="'U6-L88'", rule="goes to no joint of the truss, 'L88'"),
    ),
    "a counter that is misspelt among the counters": alone(
        Slip(old="counters: [U5-L3, U5-L7, U4-L2, U6-L8]",
             new="counters: [U5-L3, U5-L7, U4-L2, U6-L9]", got="'U6-L9'",
             rule="is a counter that no group has"),
    ),
    "no counters": alone(
        Slip(old="  counters: [U5-L3, U5-L7, U4-L2, U6-L8]\n", new="", at="bars: [U5-L3",
             got="'U5-L3', 'U5-L7', 'U4-L2', 'U6-L8'",
             rule="are no bars of a double-intersection Pratt truss of 10 panels"),
    ),
    "a bar in two groups of different kinds": alone(
        Slip(old="bars: [U1-L1, U9-L9]", new="bars: [U1-L1, U9-L9, U5-L5]", at="bars: [U2-L2",
             got="'U5-L5'", rule="is named twice; first in 'hip verticals'"),
    ),
    "a group of a truss that is not there": alone(
        Slip(old="    kind: hip vertical\n", new="    truss: upstrem\n    kind: hip vertical\n",
             got="'upstrem'", rule="is no truss of this bridge"),
    ),
    "a truss with another name": alone(
        Slip(old="names: [upstream, downstream]", new="names: [upstream, downstrean]",
             # By hand: four readings, a decision and a curb.
             rule="has no 'downstream', which is named 6 times"),
    ),
    "a material with another name": alone(
        # By hand: thirteen groups of members, twenty pins, floorbeams, hangers and rollers.
        Slip(old="  bar iron:\n", new="  wrought bars:\n", at="materials:",
             rule="has no 'bar iron', which is named 45 times"),
    ),
    "a kind and what follows from it": alone(
        Slip(old="    kind: top chord\n    bars: [U1..U3, U7..U9]",
             new="    kind: top cord\n    bars: [U1..U3, U7..U9]", got="'top cord'",
             rule="is not a word known here"),
    ),
    "panels that cannot be read": alone(
        Slip(old="panels: 10 at 15 ft", new="panels: 10 at 15", got="'15'", rule="has no unit"),
    ),
    "a floor that cannot be read": alone(
        Slip(old="  curb to upstream truss: 1 ft ", new="  curb to upstream truss: 1 ",
             got="'1'", rule="has no unit"),
    ),
    "a section that lost its header": alone(
        Slip(old="  counters:\n    kind: counter\n", new="    kind: counter\n",
             got="'kind', 'bars', 'section', 'material'",
             rule="stand twice; first on line {first}"),
    ),
    "a repair that cannot be read, and a reading after it": alone(
        Slip(old="    part: downstream/U5-L3\n",
             new="    section: {rods: {diameter: 2}}\n    part: downstream/U5-L3\n", got="'2'",
             rule="has no unit"),
        Slip(old="      - {part: floor/deck, what", rule="nothing is told here",
             new="      - {part: downstream/U5-L3, place: mid, what: diameter, value: 1 1/2 in}\n"
                 "      - {part: floor/deck, what"),
    ),
    # By hand: two flanges of 2 in, less their webs of 1/4 in, reach 3.5 in. Told at the group, not
    # bar by bar, whatever else would be reckoned with it.
    "channels that do not fit each other": alone(
        Slip(old="    section:\n      channels: {depth: 6 in, web: 1/4 in, flange: 2 in, flange"
                 " thickness: 5/16 in, apart: 6 in, toes: out}",
             new="    section:   # of the posts\n      channels: {depth: 6 in, web: 1/4 in, flange:"
                 " 2 in, flange thickness: 5/16 in, apart: 3 in, toes: in}",
             at="# of the posts",
             rule="distance between the channels is 3 in; it must be 3.5 in or more, or their"
                  " flanges overlap"),
    ),
    "a piece of what is tied together": alone(
        Slip(old="    note: turnbuckle freed, rod brought snug\n",
             new="    note: turnbuckle freed, rod brought snug\n"
                 "  - {date: 2024-01-01, what: loose, part: upstream/U5-L5, pieces: [1]}\n",
             at="upstream/U5-L5, pieces", got="'1'",
             rule="cannot be loose by itself: its 2 pieces are tied together"),
    ),
}


@pytest.mark.parametrize("name", ONE_CAUSE)
def test_one_cause_is_told_once(name: str, tmp_path: Path) -> None:
    slips = ONE_CAUSE[name]
    text = slipped(*slips)
    first = 1 + GOOD[:GOOD.index("kind: diagonal\n    bars: [U3-L5")].count("\n")
    wanted = tuple(slip for slip in slips if slip.rule != "nothing is told here")
    assert [(f.line, f.got, f.rule) for f in told(tmp_path, text)] == [
        (line, got, rule.format(first=first)) for line, got, rule in expected(text, wanted)
    ]


def test_faults_in_one_entry_and_its_neighbours_are_all_told(tmp_path: Path) -> None:
    # An inspection without who was there, on a day that is none, still has its readings looked at;
    # so has a decision whose date is none its part.
    text = slipped(
        Slip(old="  - date: 2021-06-15\n    by: county bridge crew\n",
             new="  - date: 2021-06-31\n", rule=""),
        Slip(old="what: thickness, value: 1/2 in", new="what: thicknes, value: 1/2 in", rule=""),
        Slip(old="{part: upstream/L4-L5, place: mid, what: thickness, value: 11/16",
             new="{part: upstream/L4-L55, place: mid, what: thickness, value: 11/16", rule=""),
        Slip(old="  - date: 2023-09-20", new="  - date: 2023-09-31", rule=""),
        Slip(old="part: downstream/U5-L3", new="part: downstream/U5-L33", rule=""),
        Slip(old="spacing: 18 ft", new="spacing: 18", rule=""),
        Slip(old="    kind: plank\n", new="    kind: plan\n", rule=""),
        Slip(old="  railing: {weight: 32 lb/ft}", new="  railing: {weight: 32 lb}", rule=""),
    )
    assert sorted((f.line or 0, f.got, f.rule) for f in told(tmp_path, text)) == sorted([
        (line_with(text, "spacing: 18"), "'18'", "has no unit"),
        (line_with(text, "    kind: plan"), "'plan'", "is not a word known here"),
        (line_with(text, "weight: 32 lb}"), "'32 lb'", "is a force"),
        (line_with(text, "2021-06-31"), "", "has no 'by'"),
        (line_with(text, "2021-06-31"), "'2021-06-31'", "is no day of the calendar"),
        (line_with(text, "thicknes,"), "'thicknes'", "is not a word known here"),
        (line_with(text, "L4-L55"), "'upstream/L4-L55'", "is no bar of this truss"),
        (line_with(text, "2023-09-31"), "'2023-09-31'", "is no day of the calendar"),
        (line_with(text, "U5-L33"), "'downstream/U5-L33'", "is no bar of this truss"),
    ])


def test_faults_of_a_record_are_told_before_a_date_that_is_too_early(tmp_path: Path) -> None:
    path = tmp_path / "slips.yaml"
    path.write_text(slipped(TWELVE[1]), encoding="utf-8")
    with pytest.raises(BadRecord, match="has no unit"):
        opened(path, on=date(1800, 1, 1))


def test_the_policy_of_one_bridge_is_told_where_it_is_written(tmp_path: Path) -> None:
    # `legal` belongs to the method by load and resistance alone.
    text = slipped(Slip(
        old="traffic: {trucks a day: 20}", rule="",
        new="values:\n  posting.method: {value: load-factor, unit: word, reason: as ever}\n"
            "traffic: {trucks a day: 20}",
    ))
    (fault,) = told(tmp_path, text)
    assert fault.line == line_with(text, "posting.method")
    assert "does not go with" in fault.rule


def test_a_demo_that_is_refused_leaves_its_folder_as_it_was(tmp_path: Path) -> None:
    own = tmp_path / "bridges" / f"{SHOWN}.yaml"
    own.parent.mkdir()
    own.write_text("eyebar: 1\nname: no bridge\n", encoding="utf-8")
    answer = CliRunner().invoke(app, ["demo", "--write", str(tmp_path)])
    assert answer.exit_code == 1
    assert [path for path in tmp_path.rglob("*") if path.is_file()] == [own]
    assert own.read_text(encoding="utf-8") == "eyebar: 1\nname: no bridge\n"


def test_an_office_that_is_refused_leaves_everything_as_it_was(tmp_path: Path) -> None:
    office = tmp_path / "office"
    office.mkdir()
    (office / "values.toml").write_text("[[row]]\nname = 'no such'\n", encoding="utf-8")
    record = tmp_path / "good.yaml"
    record.write_text(GOOD, encoding="utf-8")
    for command in (["check", str(record)], ["rate", str(record)], ["forces", str(record)],
                    ["vehicles"], ["explain", str(record), "upstream/U2-L4"]):
        answer = CliRunner().invoke(app, [*command, "--office", str(office / "values.toml")])
        assert answer.exit_code == 1, command
        answer = CliRunner().invoke(app, [*command, "--office", str(office)])
        assert answer.exit_code == (0 if command == ["vehicles"] else 1), command
    assert sorted(path.name for path in tmp_path.rglob("*")) == [
        "good.yaml", "office", "values.toml",
    ]
    assert record.read_text(encoding="utf-8") == GOOD
