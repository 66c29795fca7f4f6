"""Details that bridges share: counted by hand in a small catalogue of invented bridges."""

from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from typer.testing import CliRunner

from eyebar.cli.commands import app
from eyebar.documents.details import details_document
from eyebar.documents.schemas import schema
from eyebar.errors import BadRecord
from eyebar.history.habits import FILE, Seen, catalogue, habits
from eyebar.record import record_of
from eyebar.views.details import NO_DETAILS, shared_details
from tests.documents import demos

ROWS = """
[[row]]
bridge = "Alderfen"
what = "portal"
shape = "flat lattice"
seen = 2024-06-03
by = "county bridge crew"
[[row]]
bridge = "Alderfen"
what = "plaque"
shape = "oval"
[[row]]
bridge = "Birchmoss"
what = "Portal"
shape = "Flat  lattice"
[[row]]
bridge = "Birchmoss"
what = "plaque"
shape = "square"
[[row]]
bridge = "Cressholm"
what = "portal"
shape = "flat latice"
[[row]]
bridge = "31-08"
what = "shoe"
shape = "cast, two ribs"
"""
OWN = "details:\n  portal: flat lattice\n  plaque: oval\n"


def office(folder: Path, rows: str = ROWS) -> Path:
    (folder / FILE).write_text(rows, encoding="utf-8")
    return folder


def record(details: str = OWN) -> str:
    return demos.record("wrenmallow").read_text(encoding="utf-8") + details


def test_each_detail_is_counted_among_the_bridges_on_which_it_was_looked_for(
    tmp_path: Path,
) -> None:
    # By hand: of three portals two are alike, whatever their capitals and spaces; of two plaques
    # one. The bridge's own row under its number, 31-08, is a detail of its own, seen nowhere else.
    document = details_document(record_of(record()), office=office(tmp_path))
    Draft202012Validator(schema("history-details")).validate(document)
    counted = {one["what"]: (one["others"], one["known"]) for one in document["details"]}
    assert counted == {
        "portal": (["Alderfen", "Birchmoss"], 3), "plaque": (["Alderfen"], 2), "shoe": ([], 0),
    }


def test_the_bridge_that_shares_most_stands_first(tmp_path: Path) -> None:
    document = details_document(record_of(record()), office=office(tmp_path))
    counted = [(one["bridge"], len(one["shared"]), one["compared"]) for one in document["bridges"]]
    assert counted == [("Alderfen", 2, 2), ("Birchmoss", 1, 2)]
    view = shared_details(document)
    assert [row.count for row in view.bridges] == ["2 of 2", "1 of 2"]
    assert "portal: flat lattice; plaque: oval" in view.bridges[0].shared


def test_a_shape_spelled_almost_alike_is_told_and_not_counted(tmp_path: Path) -> None:
    document = details_document(record_of(record()), office=office(tmp_path))
    (near,) = document["near"]
    assert "'flat lattice' here, 'flat latice' elsewhere" in near


def test_no_answer_names_a_maker_and_each_says_why(tmp_path: Path) -> None:
    said = " ".join(details_document(record_of(record()), office=office(tmp_path))["cautions"])
    assert "hint" in said
    assert "says of no bridge who made it" in said


def test_a_bridge_of_which_no_detail_is_written_down_says_what_to_write(tmp_path: Path) -> None:
    rows = ROWS.replace("31-08", "Dunmere")
    document = details_document(record_of(record("")), office=office(tmp_path, rows))
    assert document["details"] == document["bridges"] == []
    assert shared_details(document).remarks == (NO_DETAILS,)


def test_the_same_detail_in_record_and_catalogue_counts_once() -> None:
    own = Seen(bridge="1", what="portal", shape="flat lattice")
    rows = (Seen(bridge="1", what="Portal", shape="flat lattice"),)
    (one,) = habits((own,), rows, names=("1", "")).details
    assert (one.others, one.known) == ((), 0)


def test_all_faults_of_a_catalogue_are_told_at_once_with_their_lines(tmp_path: Path) -> None:
    rows = (
        '[[row]]\nbridge = "A"\nwhat = "portal"\n'
        '[[row]]\nbridge = "B"\nwhat = "shoe"\nshape = "flat"\nsen = 2024-06-03\n'
        '[[row]]\nbridge = "C"\nwhat = "shoe"\nshape = "flat"\nseen = "June"\n'
        '[[row]]\nbridge = "D"\nwhat = "shoe"\nshape = "flat"\n'
        '[[row]]\nbridge = "D"\nwhat = "shoe"\nshape = "flat"\n'
        '[[row]]\nbridge = 7\nwhat = ""\nshape = "flat"\nnote = 3\n'
    )
    with pytest.raises(BadRecord) as refused:
        catalogue(office(tmp_path, rows))
    told = [fault.sentence("details.toml") for fault in refused.value.faults]
    assert told == [
        "details.toml:1: A > shape: is missing",
        "details.toml:4: B > sen: is unknown; did you mean 'seen'?",
        "details.toml:9: C > seen: 'June' is not a date; write it like 2024-06-03, without "
        "quotation marks",
        "details.toml:18: D > shoe: stands twice",
        "details.toml:22: bridge: is not a text",
        "details.toml:22: what: is not a text",
        "details.toml:22: note: 3 is not a text",
    ]


def test_the_command_needs_an_office_and_a_catalogue(tmp_path: Path) -> None:
    file = str(demos.record("wrenmallow"))
    without = CliRunner().invoke(app, ["history", file, "--details"])
    assert without.exit_code == 2
    assert "--office" in without.stderr
    empty = CliRunner().invoke(app, ["history", file, "--details", "--office", str(tmp_path)])
    assert empty.exit_code == 1
    assert "is not there; begin it with [[row]]" in empty.stderr
    both = CliRunner().invoke(app, ["history", file, "--details", "--how"])
    assert both.exit_code == 2
    folder = str(office(tmp_path))
    told = CliRunner().invoke(app, ["history", file, "--details", "--office", folder])
    assert told.exit_code == 0
    assert "cast, two ribs" in told.stdout
