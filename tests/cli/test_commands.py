"""Each command parses, calls one function of the library, and prints; refusals exit with 1."""

import json
import sys
from datetime import date
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest
from typer.testing import CliRunner, Result

from eyebar.cli.commands import app
from eyebar.demo import SHOWN, bridge_records
from eyebar.errors import BadRecord, Fault, Unknown
from tests.views import samples

CAUTION = "This is a calculation."


class Library(ModuleType):
    """Stands in for the documents, answers with samples, and remembers what it was asked."""

    def __init__(self) -> None:
        super().__init__("eyebar.documents")
        self.asked: list[tuple[Any, ...]] = []
        self.refusal: Exception | None = None

    def _answer(self, document: dict[str, Any], *asked: Any) -> dict[str, Any]:
        if self.refusal:
            raise self.refusal
        self.asked.append(asked)
        return document

    def rate_document(self, record: Path, *, on: date | None, office: Path | None) -> Any:
        return self._answer(samples.rate(), record, on, office)

    def forces_document(self, record: Path, *, on: date | None, office: Path | None) -> Any:
        return self._answer(samples.forces(), record, on, office)

    def check_document(self, record: Path, *, on: date | None, office: Path | None) -> Any:
        document = {
            "format": "eyebar/check/1", "bridge": {"name": "Sedgebarrow", "number": "1"},
            "date": "2026-06-09", "trusses": 2, "bars": 40, "rules": [],
            "not_measured": [{"part": "upstream/U2-L4", "what": ["thickness"]}],
            "not_rated": [{"part": "upstream/U2-L4", "not_rated": "thickness not measured"}],
        }
        return self._answer(document, record, on, office)

    def vehicles_document(self, *, office: Path | None) -> Any:
        return self._answer(samples.vehicles(), office)

    def cross_document(self, record: Path, vehicles: list[Any], **chosen: Any) -> Any:
        document = samples.cross()
        if vehicles:
            document["vehicles"] = document["vehicles"][:1]
        return self._answer(document, record, vehicles, chosen)

    def use_document(self, record: Path, *, on: date | None, office: Path | None) -> Any:
        return self._answer(samples.use(), record, on, office)

    def slip_document(self, record: Path, vehicle: Any, day: date, **chosen: Any) -> Any:
        return self._answer(samples.slip(), record, vehicle, day, chosen)

    def explain_document(self, record: Path, part: str, **chosen: Any) -> Any:
        return self._answer(samples.explain(), record, part, chosen)


@pytest.fixture
def library(monkeypatch: pytest.MonkeyPatch) -> Library:
    stand_in = Library()
    for name in vars(Library):
        if name.endswith("_document"):
            module = f"eyebar.documents.{name.removesuffix('_document')}"
            monkeypatch.setitem(sys.modules, module, stand_in)
    return stand_in


def typed(*arguments: str) -> Result:
    return CliRunner().invoke(app, list(arguments), prog_name="eyebar")


def test_rate_says_the_posting_before_anything_else(library: Library) -> None:
    answer = typed("rate", "a.yaml")
    assert answer.exit_code == 0
    assert answer.stdout.splitlines()[0] == "PROVISIONAL WEIGHT LIMIT 6 TONS"
    assert "Governed by upstream/U2-L4" in answer.stdout
    assert CAUTION in answer.stdout
    assert library.asked == [(Path("a.yaml"), None, None)]


def test_a_vehicle_that_wants_to_cross_gets_its_answer_first(library: Library) -> None:
    answer = typed("cross", "a.yaml", "milk truck")
    assert answer.exit_code == 0
    assert answer.stdout.startswith("milk truck, 28.0 tons: provisionally yes, if")
    assert "- Or if it weighs no more than 17 tons" in answer.stdout
    assert CAUTION in answer.stdout
    assert library.asked[0][:2] == (Path("a.yaml"), ["milk truck"])


def test_what_a_use_of_the_road_is_worth_is_said_in_a_table(library: Library) -> None:
    answer = typed("use", "a.yaml")
    assert answer.exit_code == 0
    assert answer.stdout.splitlines()[0] == "PROVISIONAL WEIGHT LIMIT 6 TONS"
    assert "a curb that holds traffic to the middle" in answer.stdout
    assert CAUTION in answer.stdout


def test_the_board_says_the_posting_and_every_vehicle(library: Library) -> None:
    answer = typed("cross", "a.yaml", "--all")
    assert answer.stdout.splitlines()[0] == "PROVISIONAL WEIGHT LIMIT 6 TONS"
    for name in ("milk truck*", "buggy", "combine", "crowd"):
        assert name in answer.stdout
    assert library.asked[0][1] == []


def test_axles_are_typed_on_the_line(library: Library) -> None:
    answer = typed("cross", "a.yaml", "--axles", "10 kip, 12 ft, 18 kip", "--gauge", "7 ft")
    assert answer.exit_code == 0
    (vehicle,) = library.asked[0][1]
    assert (vehicle.axles_kip, vehicle.gauge_ft) == ((10.0, 18.0), 7.0)
    wrong = typed("cross", "a.yaml", "--axles", "10 kip, -12 ft, 18 kip")
    assert wrong.exit_code == 1
    assert "below zero" in wrong.stderr


@pytest.mark.parametrize(
    "arguments",
    [(), ("milk truck", "--all"), ("--all", "--axles", "10 kip"), ("--all", "--slip", "a.txt")],
)
def test_what_is_asked_for_must_be_one_thing(
    library: Library, arguments: tuple[str, ...], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert typed("cross", "a.yaml", *arguments).exit_code == 2
    assert list(tmp_path.iterdir()) == []


def test_a_slip_is_written_as_text_or_as_a_document(library: Library, tmp_path: Path) -> None:
    text, document = tmp_path / "slip.txt", tmp_path / "slip.json"
    day = ("--day", "2026-10-04")
    assert typed("cross", "a.yaml", "milk truck", "--slip", str(text), *day).exit_code == 0
    assert text.read_text(encoding="utf-8").startswith("SLIP FOR ONE CROSSING")
    assert typed("cross", "a.yaml", "milk truck", "--slip", str(document), *day).exit_code == 0
    assert json.loads(document.read_text(encoding="utf-8")) == samples.slip()
    assert library.asked[0][2] == date(2026, 10, 4)


@pytest.mark.typst
def test_a_slip_is_written_as_a_page(library: Library, tmp_path: Path) -> None:
    page = tmp_path / "slip.pdf"
    assert typed("cross", "a.yaml", "milk truck", "--slip", str(page)).exit_code == 0
    assert page.read_bytes().startswith(b"%PDF-1.7")


def test_a_refused_slip_writes_nothing(library: Library, tmp_path: Path) -> None:
    library.refusal = Unknown("vehicle", "x")
    assert typed("cross", "a.yaml", "x", "--slip", str(tmp_path / "s.txt")).exit_code == 1
    assert list(tmp_path.iterdir()) == []


def test_the_list_of_the_weakest_says_the_posting_first_and_what_each_is_worth(
    library: Library,
) -> None:
    answer = typed("weakest", "a.yaml")
    assert answer.stdout.splitlines()[0] == "PROVISIONAL WEIGHT LIMIT 6 TONS"
    assert "If the diagonals were no limit" in answer.stdout
    assert "stringer 3 and 1 alike" in answer.stdout
    assert "floor/panel 2/stringer 3" in typed("weakest", "a.yaml", "--open").stdout
    assert CAUTION in answer.stdout


def test_every_line_stays_within_a_hundred_columns(library: Library) -> None:
    for arguments in (
        ("rate", "a.yaml", "--all", "--values"), ("forces", "a.yaml"), ("vehicles",),
        ("cross", "a.yaml", "--all"), ("cross", "a.yaml", "milk truck"),
        ("use", "a.yaml"), ("weakest", "a.yaml"), ("weakest", "a.yaml", "--open"),
        ("explain", "a.yaml", "upstream/U2-L4"), ("check", "a.yaml"),
    ):
        answer = typed(*arguments)
        assert answer.exit_code == 0, answer.output
        assert max(len(line) for line in answer.stdout.splitlines()) <= 100


def test_date_and_office_reach_the_library(library: Library) -> None:
    typed("forces", "a.yaml", "--on", "2021-12-31", "--office", "ours")
    assert library.asked == [(Path("a.yaml"), date(2021, 12, 31), Path("ours"))]


def test_a_date_that_is_none_is_not_understood(library: Library) -> None:
    answer = typed("rate", "a.yaml", "--on", "yesterday")
    assert answer.exit_code == 2
    assert "write it like 2026-06-09" in answer.stderr
    assert library.asked == []


@pytest.mark.parametrize(
    "arguments",
    [
        ("rate", "a.yaml"), ("forces", "a.yaml"), ("vehicles",), ("check", "a.yaml"),
        ("explain", "a.yaml", "upstream/U2-L4"),
    ],
)
def test_json_prints_the_document_and_nothing_else(
    library: Library, arguments: tuple[str, ...]
) -> None:
    answer = typed(*arguments, "--json")
    assert answer.exit_code == 0
    assert json.loads(answer.stdout)["format"].startswith("eyebar/")


def test_explain_passes_the_choice_of_rating_on(library: Library) -> None:
    typed("explain", "a.yaml", "upstream/U2-L4", "--vehicle", "SU4", "--method", "load-factor")
    ((_, part, chosen),) = library.asked
    assert part == "upstream/U2-L4"
    assert (chosen["vehicle"], chosen["method"], chosen["level"]) == ("SU4", "load-factor", None)


def test_faults_of_a_record_are_all_said_and_exit_with_one(library: Library) -> None:
    faults = tuple(
        Fault(where=f"members > {name}", rule="has no unit", got="'3'", line=line)
        for line, name in ((4, "a"), (9, "b"))
    )
    library.refusal = BadRecord("a.yaml", faults)
    answer = typed("check", "a.yaml")
    assert (answer.exit_code, answer.stdout) == (1, "")
    assert answer.stderr.splitlines() == [
        "a.yaml:4: members > a: '3' has no unit", "a.yaml:9: members > b: '3' has no unit",
    ]


def test_a_refusal_in_json_carries_its_stable_code_and_its_faults(library: Library) -> None:
    library.refusal = BadRecord("a.yaml", (Fault(where="", rule="is not YAML", line=2),))
    answer = typed("rate", "a.yaml", "--json")
    document = json.loads(answer.stdout)
    assert answer.exit_code == 1
    assert (document["code"], document["file"]) == ("bad-record", "a.yaml")
    assert document["faults"][0]["line"] == 2


def test_an_unknown_part_is_refused_with_the_nearest(library: Library) -> None:
    library.refusal = Unknown("part", "upstream/U2-L5", near="upstream/U2-L4")
    answer = typed("explain", "a.yaml", "upstream/U2-L5")
    assert answer.exit_code == 1
    assert "did you mean 'upstream/U2-L4'?" in answer.stderr


def test_a_file_that_cannot_be_read_is_refused_without_a_traceback(library: Library) -> None:
    library.refusal = FileNotFoundError(2, "No such file or directory", "a.yaml")
    answer = typed("rate", "a.yaml")
    assert (answer.exit_code, answer.stderr.strip()) == (1, "a.yaml: No such file or directory")
    assert json.loads(typed("rate", "a.yaml", "--json").stdout)["code"] == "file"


def test_an_unknown_vehicle_in_the_forces_is_refused(library: Library) -> None:
    answer = typed("forces", "a.yaml", "--vehicle", "Type 33")
    assert answer.exit_code == 1
    assert "did you mean 'Type 3'?" in answer.stderr


def test_the_demo_writes_records_and_result_and_says_what_to_type(
    library: Library, tmp_path: Path
) -> None:
    folder = tmp_path / "there"
    answer = typed("demo", "--write", str(folder))
    assert answer.exit_code == 0, answer.output
    lines = answer.stdout.splitlines()
    assert "PROVISIONAL WEIGHT LIMIT 6 TONS" in lines
    assert any(line.endswith("explain " + str(folder / "bridges" / f"{SHOWN}.yaml")
                             + " upstream/U2-L4") for line in lines)
    written = {path.name for path in (folder / "bridges").iterdir()}
    assert written == {f"{name}.yaml" for name in bridge_records()}
    result = json.loads((folder / f"{SHOWN}.rate.json").read_text(encoding="utf-8"))
    assert result == samples.rate()


def test_the_demo_keeps_a_record_that_the_user_has_changed(
    library: Library, tmp_path: Path
) -> None:
    own = tmp_path / "bridges" / f"{SHOWN}.yaml"
    own.parent.mkdir()
    own.write_text("mine", encoding="utf-8")
    assert typed("demo", "--write", str(tmp_path)).exit_code == 0
    assert own.read_text(encoding="utf-8") == "mine"
    assert library.asked == [(own, None, None)]


def test_a_refused_demo_writes_nothing(library: Library, tmp_path: Path) -> None:
    library.refusal = Unknown("demo", "x")
    assert typed("demo", "--write", str(tmp_path / "there")).exit_code == 1
    assert list(tmp_path.iterdir()) == []


def test_help_lists_every_command_whole() -> None:
    answer = typed("--help")
    assert answer.exit_code == 0
    assert "..." not in answer.stdout.split("Commands:")[1]
