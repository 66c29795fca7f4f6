"""Bridges that are closed, that cannot be rated, that are short or long: each has a whole paper."""

import json
import re
import sys
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from typer.testing import CliRunner

from eyebar.bridge.begun import Beginning, begun
from eyebar.cli.commands import app
from eyebar.documents.cross import cross_document
from eyebar.documents.gathered import gathered
from eyebar.report import typeset as typesetting
from eyebar.report.rating_report import Asked, rating_report
from eyebar.terms import Board, Form, Reader, Working
from eyebar.views.report_words import crossing
from tests.bridge.begun_bridges import begun_text
from tests.documents import demos
from tests.report import made

pytestmark = pytest.mark.typst


def reported(record: Path, file: Path, *more: str) -> tuple[int, str]:
    answer = CliRunner().invoke(app, ["report", str(record), "-o", str(file), *more])
    return answer.exit_code, " ".join((answer.stdout + answer.stderr).split())


def test_a_record_with_faults_gives_a_paper_of_all_of_them(tmp_path: Path) -> None:
    record = made.changed(
        "wrenmallow", tmp_path, ("name: Wrenmallow Bridge (invented)", "name: "), ("built: 1900",
                                                                                "built: soon"),
    )
    file = tmp_path / "missing.pdf"
    code, said = reported(record, file)
    assert code == 1
    assert "what is missing is told in" in said
    text = made.text(file.read_bytes())
    assert "This bridge is not rated" in text
    assert "Faults of the record" in text
    assert "soon" in text
    assert "WEIGHT LIMIT" not in text


def test_a_record_just_begun_gives_a_paper_of_what_is_to_be_measured(tmp_path: Path) -> None:
    record = tmp_path / "begun.yaml"
    record.write_text(begun(
        Beginning(form=Form.PRATT, panels="6 at 15 ft", depth="18 ft", name="Begun Bridge"),
        date(2026, 6, 9),
    ), encoding="utf-8")
    file = tmp_path / "missing.pdf"
    code, _ = reported(record, file)
    assert code == 1
    text = made.text(file.read_bytes())
    assert "What is missing" in text
    assert "To be measured" in text
    assert "Signature" not in text
    assert "WEIGHT LIMIT" not in text
    # The signs of the archive and of the reading aid stand in this paper too.
    assert b"<pdfuaid:part>1</pdfuaid:part>" in file.read_bytes()


def test_a_bridge_to_be_closed_says_so_before_anything_else(tmp_path: Path) -> None:
    # Bars of a tenth of their breadth cannot carry three tons.
    record = made.changed(
        "quillmarsh", tmp_path, ("side: 1 in, shape: square", "side: 3/8 in, shape: square"),
        ("value: 31/32 in", "value: 3/8 in"), ("value: 1 in, gauge", "value: 3/8 in, gauge"),
    )
    of = gathered(record)
    assert of.rate["posting"]["closed"] is True
    for reader in (Reader.ENGINEER, Reader.PUBLIC):
        asked = Asked(working=Working.NONE, reader=reader, board=Board.NONE)
        text = made.text(rating_report(of, asked))
        assert re.search(r"close", text, re.IGNORECASE).start() < 400
        assert "BRIDGE CLOSED" in text
        assert "WEIGHT LIMIT" not in text


@pytest.mark.parametrize("panels", [3, 40])
def test_short_and_long_bridges_have_their_report(tmp_path: Path, panels: int) -> None:
    record = tmp_path / "panels.yaml"
    record.write_text(begun_text(Form.PRATT, panels), encoding="utf-8")
    of = gathered(record)
    assert of.rate["posting"]["governed_by"] is not None
    # One truss is drawn: the other is like it.
    drawn = replace(of, forces={**of.forces, "trusses": of.forces["trusses"][:1]})
    pdf = rating_report(drawn, Asked(board=Board.NONE))
    text = made.text(pdf)
    assert f"{panels} panels" in text
    assert of.rate["posting"]["governed_by"]["part"] in text
    # A sheet is as wide as its figures need: none is squeezed onto a page.
    widths = {float(page.mediabox.width) for page in made.read(pdf).pages}
    assert max(widths) >= 17 * 72


def test_what_changed_since_an_earlier_result_is_said(tmp_path: Path) -> None:
    earlier = json.loads(json.dumps(demos.rate("wrenmallow")))
    by = earlier["posting"]["governed_by"]
    for part in earlier["parts"]:
        if part["part"] == by["part"]:
            for rating in part["ratings"]:
                rating["factor"] = 9.87 if rating["factor"] is not None else None
    earlier["posting"]["sign"] = None
    result = tmp_path / "earlier.json"
    result.write_text(json.dumps(earlier), encoding="utf-8")
    file = tmp_path / "report.pdf"
    since = ("--since", str(result))
    code, _ = reported(demos.record("wrenmallow"), file, *since, "--working", "none")
    assert code == 0
    text = made.text(file.read_bytes())
    assert "What changed since the earlier result" in text
    assert f"{by['part']}: factor" in text
    assert "was 9.87" in text
    proof = CliRunner().invoke(
        app, ["report", "--verify", str(file), str(demos.record("wrenmallow")), *since]
    )
    assert proof.exit_code == 0


def test_a_result_of_another_bridge_is_refused(tmp_path: Path) -> None:
    result = tmp_path / "earlier.json"
    result.write_text(json.dumps(demos.rate("dovetansy")), encoding="utf-8")
    code, said = reported(
        demos.record("wrenmallow"), tmp_path / "report.pdf", "--since", str(result)
    )
    assert code == 1
    assert "of the same bridge" in said


def test_the_inventory_items_lie_beside_the_report(tmp_path: Path) -> None:
    file = tmp_path / "report.pdf"
    code, _ = reported(demos.record("wrenmallow"), file, "--working", "none", "--board", "none")
    assert code == 0
    lines = (tmp_path / "report.inventory.csv").read_text(encoding="utf-8").splitlines()
    assert lines[0] == "old,newer,content,value,standing,record_hash"
    # The record says: deck 6; the older guide's item 58 is the deck's condition.
    deck = demos.describe("wrenmallow")["condition"]["deck"]
    assert any(line.startswith(f"58,B.C.01,condition of the deck,{deck},") for line in lines)


def test_two_pages_for_the_public() -> None:
    for name in demos.NAMES:
        pdf = rating_report(made.documents(name), Asked(reader=Reader.PUBLIC))
        assert len(made.read(pdf).pages) == 2


def test_a_missing_library_is_told_with_its_cure(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "typst", None)
    code, said = reported(demos.record("wrenmallow"), tmp_path / "report.pdf")
    assert code == 1
    assert "pip install 'eyebar[office]'" in said
    assert not (tmp_path / "report.pdf").exists()
    assert typesetting.STANDARDS == ("ua-1", "a-2a")


def test_the_board_for_the_wall_says_every_vehicle_of_the_cross_document(tmp_path: Path) -> None:
    file = tmp_path / "board.pdf"
    code, _ = reported(demos.record("wrenmallow"), file, "--for", "operator")
    assert code == 0
    text = made.text(file.read_bytes()).replace(" ", "")
    for one in cross_document(demos.record("wrenmallow"))["vehicles"]:
        assert one["vehicle"].replace(" ", "") in text


def test_on_a_bridge_to_be_closed_nothing_may_cross() -> None:
    posting = {**demos.rate("wrenmallow")["posting"], "closed": True}
    car = {"vehicle": "car", "tons": 2.5, "above": ""}
    assert crossing(posting, [car]) == ("Nothing may cross: the bridge is to be closed.",)
    open_ = {**posting, "closed": False}
    truck = {"vehicle": "milk truck", "tons": 28.0, "above": "28 tons, over the limit of 7 tons"}
    over, within = crossing(open_, [car, truck])
    assert over == "Over the sign, and so not without the owner's permit: milk truck (28.0 tons)."
    assert "car (2.5 tons)" in within
