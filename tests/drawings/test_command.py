"""`eyebar draw`: the demo bridges drawn, and what is refused leaves nothing behind."""

import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from eyebar.cli.commands import app
from eyebar.demo import SHOWN, bridge_records
from eyebar.documents.opened import CAUTION, NOT_ASSUMED_SOUND
from eyebar.drawings import stress_sheet
from eyebar.terms import Leaf
from tests.documents import demos
from tests.drawings.apart import faults


def alone(name: str, folder: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The record of a demo in an empty folder, which is the one we are in."""
    monkeypatch.chdir(folder)
    return Path(shutil.copy(demos.record(name), folder / f"{name}.yaml"))


@pytest.fixture
def record(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    return alone(SHOWN, tmp_path, monkeypatch)


@pytest.fixture
def small_record(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    return alone("wrenmallow", tmp_path, monkeypatch)


def draw(*arguments: str) -> Result:
    return CliRunner().invoke(app, ["draw", *arguments])


@pytest.mark.parametrize("name", sorted(bridge_records()))
def test_every_demo_bridge_is_drawn_clearly(name: str) -> None:
    rate, forces = demos.rate(name), demos.forces(name)
    for truss in forces["trusses"]:
        for leaf in Leaf:
            sheet = stress_sheet(rate, forces, truss=truss["truss"], leaf=leaf)
            assert faults(sheet) == []
            assert {bar.figures.bar for bar in sheet.bars} == set(truss["bars"])
            assert sheet.view.cautions[-2:] == (CAUTION, NOT_ASSUMED_SOUND)


def test_the_drawing_lies_beside_under_the_records_name(record: Path) -> None:
    answer = draw(record.name)
    assert answer.exit_code == 0, answer.output
    assert Path(f"{SHOWN}.svg").read_text(encoding="utf-8").startswith("<svg ")
    assert answer.stdout.splitlines()[0].startswith("WEIGHT LIMIT")
    assert f"{SHOWN}.svg" in answer.stdout.splitlines()[-1]
    assert max(map(len, answer.stdout.splitlines())) <= 100


def test_a_truss_a_vehicle_a_date_and_a_narrow_page_can_be_chosen(record: Path) -> None:
    answer = draw(
        record.name, "-o", "there.svg", "--truss", "downstream", "--vehicle", "SU4",
        "--on", "2021-06-15", "--paper", "field-book",
    )
    assert answer.exit_code == 0, answer.output
    svg = Path("there.svg").read_text(encoding="utf-8")
    assert 'width="4.25in"' in svg
    for words in ("downstream truss", "15 June 2021", "Weakest under SU4"):
        assert words in svg


@pytest.mark.parametrize(
    ("arguments", "code"),
    [(("--truss", "nroth"), 1), (("--vehicle", "SU44"), 1), (("-o", "wrenmallow.yaml"), 2)],
)
def test_what_is_refused_writes_nothing(
    small_record: Path, arguments: tuple[str, ...], code: int
) -> None:
    before = small_record.read_bytes()
    answer = draw(small_record.name, *arguments)
    assert answer.exit_code == code
    assert list(Path().iterdir()) == [Path(small_record.name)]
    assert small_record.read_bytes() == before


@pytest.mark.parametrize(
    "arguments",
    [("--truss", "upstrem"), ("--vehicle", "HS21"), ("-o", "stress.dxf")],
)
def test_what_cannot_be_drawn_is_refused_before_the_bridge_is_rated(
    arguments: tuple[str, ...], record: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def rated(*_: object) -> None:
        raise AssertionError("it was rated")

    monkeypatch.setattr("eyebar.cli.drawn.rated_bridge", rated)
    answer = draw(record.name, *arguments)
    assert isinstance(answer.exception, SystemExit), answer.exception
    assert answer.exit_code == 1
    assert [one.name for one in record.parent.iterdir()] == [record.name]
