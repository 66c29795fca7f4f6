"""`eyebar new`: a record where no file was, and the commands that read it."""

import json
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from eyebar.cli.commands import app

PRATT = ("new", "--form", "Pratt", "--panels", "7 at 15 ft", "--depth", "20 ft")


def typed(*arguments: str) -> Result:
    return CliRunner().invoke(app, list(arguments), prog_name="eyebar")


def test_new_writes_a_record_that_check_passes_and_rate_calls_provisional(tmp_path: Path) -> None:
    file = tmp_path / "bridge.yaml"
    begun = typed(*PRATT, "--name", "Alder Ford", "-o", str(file))
    assert begun.exit_code == 0, begun.output
    assert f"check {file}" in begun.stdout
    check = typed("check", str(file))
    assert check.exit_code == 0
    assert check.stdout.startswith("No fault. Alder Ford")
    assert "Not measured" in check.stdout
    assert max(map(len, check.stdout.splitlines())) <= 100
    rate = typed("rate", str(file))
    assert rate.exit_code == 0
    assert "provisional" in rate.stdout.lower()
    assert "dead load not known" in rate.stdout


def test_check_tells_the_questions_in_its_document(tmp_path: Path) -> None:
    file = tmp_path / "bridge.yaml"
    typed(*PRATT, "-o", str(file))
    document = json.loads(typed("check", str(file), "--json").stdout)
    asked = {part["part"]: part["what"] for part in document["not_measured"]}
    assert asked["trusses"] == ["spacing"]
    assert asked["bridge"] == ["year", "skew"]
    assert asked["upstream/L0-L1"] == ["width", "thickness", "head", "hole"]


def test_new_never_writes_over_a_file(tmp_path: Path) -> None:
    file = tmp_path / "bridge.yaml"
    file.write_text("mine", encoding="utf-8")
    answer = typed(*PRATT, "-o", str(file))
    assert answer.exit_code == 1
    assert "nothing is overwritten" in answer.stderr
    assert file.read_text(encoding="utf-8") == "mine"


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--panels", "7 at 15"), "'15' has no unit"),
        (("--panels", "2 at 15 ft"), "'2' panels must be 3 or more for this form"),
        (("--depth", "200 ft"), "is no depth of such a truss"),
        (("--counters", "U1-L5"), "'U1-L5' is no counter of this form"),
    ],
)
def test_what_is_senseless_is_refused_and_nothing_is_written(
    tmp_path: Path, arguments: tuple[str, ...], said: str
) -> None:
    answer = typed(*PRATT, *arguments, "-o", str(tmp_path / "bridge.yaml"))
    assert answer.exit_code == 1
    assert said in answer.stderr
    assert list(tmp_path.iterdir()) == []


def test_a_form_that_is_none_is_no_command() -> None:
    answer = typed("new", "--form", "lattice", "--panels", "7 at 15 ft", "--depth", "20 ft")
    assert answer.exit_code == 2


def test_a_folder_that_is_not_there_is_named(tmp_path: Path) -> None:
    answer = typed(*PRATT, "-o", str(tmp_path / "nowhere" / "bridge.yaml"))
    assert answer.exit_code == 1
    assert "nowhere" in answer.stderr


@pytest.mark.parametrize(
    "arguments",
    [
        ("--form", "Camelback", "--panels", "7 at 18 ft", "--depth", "26 ft", "--rise", "5 ft",
         "--shoulder", "U3"),
        ("--form", "lenticular", "--panels", "10 at 12 ft", "--depth", "22 ft", "--sag", "10 ft",
         "--curve", "circle"),
        ("--form", "half-hip Pratt", "--panels", "4 at 15 ft", "--depth", "7 ft", "--hip", "8 ft",
         "--floor", "pony"),
        ("--form", "Baltimore", "--panels", "12 at 12 ft", "--depth", "30 ft", "--sub-members",
         "sub-ties"),
        ("--form", "Warren", "--panels", "4 at 20 ft", "--depth", "15 ft", "--floor", "deck",
         "--end-posts", "none"),
    ],
)
def test_sizes_of_every_sort_reach_the_record(tmp_path: Path, arguments: tuple[str, ...]) -> None:
    file = tmp_path / "bridge.yaml"
    begun = typed("new", *arguments, "-o", str(file))
    assert begun.exit_code == 0, begun.output
    text = file.read_text(encoding="utf-8")
    sizes = [size for size in arguments if size[0].isdigit() or size.startswith("U")]
    assert all(size in text for size in sizes)
    assert typed("check", str(file)).exit_code == 0
