"""The commands on a demo bridge, from its record to what is printed."""

import json
from pathlib import Path
from typing import Any

import pytest
from typer.testing import CliRunner

from eyebar.cli.commands import app
from eyebar.demo import SHOWN
from eyebar.views.words import posting_line


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """What `eyebar demo` wrote."""
    there = tmp_path_factory.mktemp("demo")
    answer = CliRunner().invoke(app, ["demo", "--write", str(there)])
    assert answer.exit_code == 0, answer.output
    return there


@pytest.fixture(scope="module")
def result(folder: Path) -> Any:
    """The result that the demo left."""
    return json.loads((folder / f"{SHOWN}.rate.json").read_text(encoding="utf-8"))


def answered(*arguments: str) -> str:
    answer = CliRunner().invoke(app, list(arguments))
    assert answer.exit_code == 0, answer.output
    return answer.stdout


def test_rate_on_the_written_record_gives_the_result_that_the_demo_left(
    folder: Path, result: Any
) -> None:
    record = str(folder / "bridges" / f"{SHOWN}.yaml")
    assert json.loads(answered("rate", record, "--json")) == result


def test_the_first_line_is_the_posting_and_all_stays_within_a_hundred_columns(
    folder: Path, result: Any
) -> None:
    record = str(folder / "bridges" / f"{SHOWN}.yaml")
    lines = answered("rate", record, "--all", "--values").splitlines()
    assert lines[0] == posting_line(result["posting"])
    assert max(map(len, lines)) <= 100


def test_the_part_that_governs_can_be_explained(folder: Path, result: Any) -> None:
    record = str(folder / "bridges" / f"{SHOWN}.yaml")
    part = result["posting"]["governed_by"]["part"]
    working = answered("explain", record, part)
    assert working.startswith(f"{part} | ")
    assert "source: " in working
    assert max(map(len, working.splitlines())) <= 100


def test_a_rating_of_an_earlier_date_names_that_date(folder: Path) -> None:
    record = str(folder / "bridges" / f"{SHOWN}.yaml")
    earlier = json.loads(answered("forces", record, "--on", "2021-06-15", "--json"))
    assert earlier["date"] == "2021-06-15"
    assert max(map(len, answered("forces", record).splitlines())) <= 100


def test_the_vehicles_fit_a_terminal() -> None:
    assert max(map(len, answered("vehicles").splitlines())) <= 100


def test_a_slip_of_the_pen_is_refused_with_its_line(folder: Path, tmp_path: Path) -> None:
    good = (folder / "bridges" / f"{SHOWN}.yaml").read_text(encoding="utf-8")
    record = tmp_path / "slip.yaml"
    record.write_text(good.replace("depth: 26 ft", "depth: 26"), encoding="utf-8")
    line = 1 + good[: good.index("depth: 26 ft")].count("\n")
    answer = CliRunner().invoke(app, ["check", str(record)])
    assert answer.exit_code == 1
    assert f"slip.yaml:{line}: " in answer.stderr
    assert list(tmp_path.iterdir()) == [record]


def test_a_record_that_is_not_there_is_refused_without_a_traceback(tmp_path: Path) -> None:
    answer = CliRunner().invoke(app, ["rate", str(tmp_path / "none.yaml")])
    assert answer.exit_code == 1
    assert "none.yaml" in answer.stderr
    assert isinstance(answer.exception, SystemExit)
