"""The documentation sheet as files: PDF for an archive, Markdown with its drawings beside it."""

import re
from functools import cache
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from jsonschema import Draft202012Validator
from typer.testing import CliRunner

from eyebar.cli.commands import app
from eyebar.documents.opened import opened
from eyebar.documents.schemas import schema
from eyebar.documents.sheet import sheet_document
from eyebar.report.documentation import (
    Documented,
    documentation_markdown,
    documentation_pdf,
    documented,
)
from eyebar.views import documentation_words as words
from tests.documents import demos
from tests.report import made
from tests.report.test_validated import faults

each = pytest.mark.parametrize("name", demos.NAMES)
typst = pytest.mark.typst


@cache
def of(name: str) -> Documented:
    return documented(opened(demos.record(name)))


@cache
def pdf(name: str) -> bytes:
    return documentation_pdf(of(name))


@each
def test_the_document_is_as_its_schema_says(name: str) -> None:
    Draft202012Validator(schema("history-sheet")).validate(sheet_document(demos.record(name)))


@typst
def test_it_claims_to_be_archivable_and_accessible() -> None:
    # PDF/A-2a: ISO 19005-2; PDF/UA-1: ISO 14289-1.
    root = made.read(pdf("quillmarsh")).root_object
    metadata = root["/Metadata"].get_object().get_data()
    assert b"<pdfaid:part>2</pdfaid:part>" in metadata
    assert b"<pdfaid:conformance>A</pdfaid:conformance>" in metadata
    assert b"<pdfuaid:part>1</pdfuaid:part>" in metadata
    figures = [one for one in made.tags(root["/StructTreeRoot"]) if one["/S"] == "/Figure"]
    # An elevation, sketches of stiffness, webs and two strips, and four sheets.
    assert len(figures) == 1 + 4 + 4
    assert all(str(one.get("/Alt", "")).strip() for one in figures)


@typst
@pytest.mark.validator
def test_a_validator_finds_nothing_against_it() -> None:
    assert faults(pdf("quillmarsh")) == []


@typst
def test_its_headings_follow_the_outline() -> None:
    text = made.text(pdf("wrenmallow"))
    outline = (
        words.IDENTITY, words.SIGNIFICANCE, words.HISTORY, words.DESCRIPTION, words.AGE, words.HOW,
        words.SOURCES,
    )
    places = [text.index(one) for one in outline]
    assert places == sorted(places)
    for said in ("4 panels (4 of 14 ft 9 in)", "mill end", "16 April 2020", "a pony truss"):
        assert said in text


@typst
def test_made_twice_it_is_the_same_byte_for_byte() -> None:
    assert documentation_pdf(documented(opened(demos.record("wrenmallow")))) == pdf("wrenmallow")


@typst
def test_drawings_are_pages_of_standard_sizes() -> None:
    pages = made.read(pdf("quillmarsh")).pages
    sizes = {tuple(round(float(side) / 72.0, 2) for side in page.mediabox[2:]) for page in pages}
    # US letter, and ANSI/ASME Y14.1: B is 17 by 11 in, C is 22 by 17 in.
    assert sizes <= {(8.5, 11.0), (17.0, 11.0), (22.0, 17.0)}


@typst
def test_what_a_record_says_is_set_as_text(tmp_path: Path) -> None:
    hostile = "#panic() *x* $y$ <z>"
    file = made.changed(
        "wrenmallow", tmp_path, ("name: Wrenmallow Bridge (invented)", f"name: '{hostile}'"),
    )
    found = documented(opened(file))
    assert "#panic()" in made.text(documentation_pdf(found))
    text, _ = documentation_markdown(found, Path("a.md"))
    assert "\\<z\\>" in text
    assert "<z>" not in text


def test_a_bridge_whose_forces_are_not_known_is_described_all_the_same(tmp_path: Path) -> None:
    file = made.changed("wrenmallow", tmp_path, ("clear width: 13 ft", "clear width: not measured"))
    found = documented(opened(file))
    text, _ = documentation_markdown(found, Path("a.md"))
    assert "Not told: weight" in text
    assert f"{words.NOT_DRAWN}: {words.FLOOR_PLAN}" in text
    assert "The width of the road was not measured." in text


def test_markdown_has_its_drawings_beside_it(tmp_path: Path) -> None:
    file = tmp_path / "my sheet.md"
    answer = CliRunner().invoke(
        app, ["history", str(demos.record("wrenmallow")), "--sheet", "-o", str(file)]
    )
    assert answer.exit_code == 0, answer.output
    text = file.read_text(encoding="utf-8")
    named = [one.replace("%20", " ") for one in re.findall(r"\]\(([^)]+\.svg)\)", text)]
    assert {path.name for path in tmp_path.glob("*.svg")} == {*named}
    assert len(named) == len({*named}) == 1 + 2 + 4
    for one in named:
        root = ET.fromstring((tmp_path / one).read_text(encoding="utf-8"))
        assert root.tag.endswith("svg")
        assert "@font-face" in "".join(root.itertext())


def test_the_command_takes_the_papers_that_it_can_write(tmp_path: Path) -> None:
    record = str(demos.record("wrenmallow"))
    wrong = CliRunner().invoke(app, ["history", record, "--sheet", "-o", str(tmp_path / "a.docx")])
    assert wrong.exit_code == 2
    assert ".pdf or .md" in wrong.stderr
    two = CliRunner().invoke(app, ["history", record, "--sheet", "--how"])
    assert two.exit_code == 2
    whole = CliRunner().invoke(app, ["history", record, "--sheet", "--json"])
    assert '"format": "eyebar/history-sheet/1"' in whole.stdout
