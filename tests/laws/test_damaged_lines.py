"""One line of a record damaged: there is a bridge, or a refusal that names a line; nothing else."""

from datetime import date
from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from eyebar.demo import bridge_records
from eyebar.documents.opened import opened
from eyebar.errors import BadRecord, Fault

RECORDS = {name: record.read_text(encoding="utf-8") for name, record in bridge_records().items()}
PIECES = st.sampled_from([
    "", ":", "{", "}", "[", "]", "-", "#", "'", "\t", "&a", "*a", "!x", "|", "~", "not measured",
    "0", "1", "100", "-1 in", "0 in", "9 in", "nan", "true", "L0..L9", "upstream/U2-L4", "a: b",
    "\u00bd", "\x00", "section: {}", "2020-01-01", "given", "3 in x 1/4 in",
])


@cache
def words(name: str) -> tuple[str, ...]:
    """The words of a record, which a slip of the hand may put elsewhere."""
    return tuple(sorted(set(RECORDS[name].replace(",", " ").split())))


@st.composite
def damaged(draw: st.DrawFn) -> str:
    """A demo record with one line taken out, doubled, moved in, or changed."""
    name = draw(st.sampled_from(sorted(RECORDS)))
    lines = RECORDS[name].splitlines()
    at = draw(st.integers(0, len(lines) - 1))
    line = lines[at]
    match draw(st.integers(0, 5)):
        case 0:
            del lines[at]
        case 1:
            lines.insert(at, lines[draw(st.integers(0, len(lines) - 1))])
        case 2:
            lines[at] = "  " + line
        case 3:
            pieces = line.split(" ")
            place = draw(st.integers(0, len(pieces) - 1))
            pieces[place] = draw(st.one_of(PIECES, st.sampled_from(words(name))))
            lines[at] = " ".join(pieces)
        case 4:
            place = draw(st.integers(0, len(line)))
            lines[at] = line[:place] + draw(PIECES) + line[place:]
        case _:
            place = draw(st.integers(0, max(len(line) - 1, 0)))
            lines[at] = line[:place] + line[place + 1:]
    return "\n".join(lines) + "\n"


@settings(
    deadline=None, max_examples=80,
    # The folder is only where the next example is written over the last.
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(text=damaged(), on=st.sampled_from([None, date(2022, 1, 1)]))
def test_one_damaged_line_gives_a_bridge_or_a_refusal_that_names_a_line(
    tmp_path: Path, text: str, on: date | None
) -> None:
    path = tmp_path / "damaged.yaml"
    path.write_text(text, encoding="utf-8")
    faults: tuple[Fault, ...] = ()
    bridge = None
    try:
        bridge = opened(path, on=on).bridge
    except BadRecord as bad:
        faults = bad.faults
    assert bridge is not None or any(fault.line for fault in faults)
    lines = [fault.line or 0 for fault in faults]
    assert lines == sorted(lines)
    assert len(set(faults)) == len(faults)
    assert path.read_text(encoding="utf-8") == text


@pytest.mark.parametrize("name", sorted(RECORDS))
def test_a_record_without_a_damaged_line_gives_a_bridge(name: str, tmp_path: Path) -> None:
    path = tmp_path / "whole.yaml"
    path.write_text(RECORDS[name], encoding="utf-8")
    assert len(opened(path).bridge.trusses) == 2
