"""The same input gives the same bytes, and a report is proven to belong to its record."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from typer.testing import CliRunner

from eyebar.cli.commands import app
from eyebar.report.rating_report import Asked, rating_report
from eyebar.report.verified import claims_of
from eyebar.terms import Board, Working
from tests.documents import demos
from tests.report import made

pytestmark = pytest.mark.typst

NAME = "wrenmallow"
BRIEF = Asked(working=Working.NONE, board=Board.NONE)


def verified(pdf: bytes, folder: Path, *more: str, record: str = NAME) -> tuple[int, str]:
    file = folder / "report.pdf"
    file.write_bytes(pdf)
    answer = CliRunner().invoke(
        app, ["report", "--verify", str(file), str(demos.record(record)), *more]
    )
    return answer.exit_code, " ".join((answer.stdout + answer.stderr).split())


def test_made_twice_it_is_the_same_byte_for_byte() -> None:
    again = rating_report(made.documents(NAME), BRIEF)
    assert again == made.brief(NAME)


def test_its_date_is_the_ratings_unless_another_is_given() -> None:
    # The demo's latest entry is its date; it stands in the file as the day it was made.
    on = demos.rate(NAME)["date"]
    assert f"<xmp:CreateDate>{on}T".encode() in made.brief(NAME)
    other = rating_report(made.documents(NAME), replace(BRIEF, dated=date(2027, 1, 2)))
    assert b"<xmp:CreateDate>2027-01-02T" in other
    assert on.encode() not in other.split(b"<xmp:CreateDate>")[1][:10]


def test_a_report_is_proven_to_belong_to_its_record(tmp_path: Path) -> None:
    code, said = verified(made.brief(NAME), tmp_path)
    assert code == 0
    assert "byte for byte" in said


def test_a_signature_that_was_added_behind_it_does_not_break_the_proof(tmp_path: Path) -> None:
    code, said = verified(made.brief(NAME) + b"\n% signed\n", tmp_path)
    assert code == 0
    assert "added behind it" in said


def test_a_changed_figure_breaks_the_proof(tmp_path: Path) -> None:
    pdf = made.brief(NAME)
    middle = len(pdf) // 2
    code, said = verified(pdf[:middle] + bytes([pdf[middle] ^ 1]) + pdf[middle + 1:], tmp_path)
    assert code == 1
    assert "changed after it was made" in said


def test_another_record_is_told_apart(tmp_path: Path) -> None:
    code, said = verified(made.brief(NAME), tmp_path, record="dovetansy")
    assert code == 1
    assert "does not belong" in said


def test_a_report_of_another_version_is_not_proven(tmp_path: Path) -> None:
    pdf = made.brief(NAME)
    version = f"eyebar={claims_of(pdf).version}".encode()
    code, said = verified(pdf.replace(version, b"eyebar=0.0.0"), tmp_path)
    assert code == 1
    assert "only that version" in said


def test_a_file_that_is_no_report_is_refused(tmp_path: Path) -> None:
    code, said = verified(b"%PDF-1.7 nothing", tmp_path)
    assert code == 1
    assert "no report" in said or "rating report" in said
