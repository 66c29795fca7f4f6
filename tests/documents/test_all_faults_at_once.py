"""Every fault of a record is told at once, whoever finds it, and one cause is told once.

The record is that of a demo bridge with slips made in it by hand. What is to be told of each is
written beside it, by hand too.
"""

import json
from dataclasses import dataclass
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from typer.testing import CliRunner

from eyebar.cli.commands import app
from eyebar.demo import bridge_records
from eyebar.documents import opened, schema
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
    Slip(old="  utilities: {}\n",
         new="  utilities: {}\n  lanes: 1   # marked\n  lanes: 2   # open\n",
         at="# open", got="'lanes'", rule="stands twice; first on line {marked}"),
    # Found while each block is read: a size without its unit, an unknown word, an unknown key.
    Slip(old="{number: 2, width: 3 in, thickness: 5/8 in, head: 7 1/2",
         new="{number: 2, width: 3, thickness: 5/8 in, head: 7 1/2",
         got="'3'", rule="has no unit"),
    Slip(old="kind: hip vertical", new="kind: hip vertcal", got="'hip vertcal'",
         rule="is not a word known here"),
    Slip(old="    lateral points: [U1, L0, U9, L10]", new="    latral points: [U1, L0, U9, L10]",
         got="'latral points'", rule="is not a key known here"),
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
