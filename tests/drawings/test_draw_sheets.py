"""`eyebar draw --sheet`: the file's ending decides what is written; what is refused writes nothing.
"""

import io
import shutil
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from PIL import Image
from pypdf import PdfReader
from typer.testing import CliRunner, Result

from eyebar.cli.commands import app
from eyebar.drawings import pin_drawing, stress_sheet
from eyebar.drawings.sizes import sheets_of
from eyebar.errors import OutOfRange
from tests.documents import demos
from tests.drawings import made
from tests.drawings.apart import faults

POINTS = 72.0


@pytest.fixture
def record(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The demo that is cheapest to rate, in an empty folder, which is the one we are in."""
    monkeypatch.chdir(tmp_path)
    return Path(shutil.copy(demos.record("wrenmallow"), tmp_path / "wrenmallow.yaml"))


def draw(*arguments: str) -> Result:
    return CliRunner().invoke(app, ["draw", "wrenmallow.yaml", *arguments])


@pytest.mark.parametrize(
    ("arguments", "file"),
    [
        (("--sheet", "floor"), "wrenmallow floor.svg"),
        (("--sheet", "member", "--part", "north/L1-L2"), "wrenmallow north L1-L2 member.svg"),
        (("--sheet", "influence", "--bar", "U1-L1"), "wrenmallow U1-L1 influence.svg"),
        (("--sheet", "cross-section", "--vehicle", "Type 3S2", "--part",
          "floor/panel 2/stringer 3", "--size", "A3"),
         "wrenmallow floor panel 2 stringer 3 cross-section.svg"),
        (("--sheet", "elevation", "--truss", "south", "--paper", "field-book"),
         "wrenmallow elevation.svg"),
    ],
)
def test_a_sheet_is_drawn_under_its_own_name(
    record: Path, arguments: tuple[str, ...], file: str
) -> None:
    answer = draw(*arguments)
    assert answer.exit_code == 0, answer.output
    assert ET.fromstring((record.parent / file).read_text(encoding="utf-8")).tag.endswith("svg")
    assert "is drawn in" in answer.output


def test_a_pdf_has_a_page_of_the_sheets_size_and_its_words_for_those_who_do_not_see(
    record: Path
) -> None:
    assert draw("--sheet", "elevation", "--size", "ARCH B", "-o", "e.pdf").exit_code == 0
    pdf = PdfReader(io.BytesIO((record.parent / "e.pdf").read_bytes()))
    assert len(pdf.pages) == 1
    # Published: ARCH B is 18 by 12 inches.
    assert [float(side) / POINTS for side in pdf.pages[0].mediabox[2:]] == pytest.approx([18, 12])
    assert "Elevation of the north truss" in str(pdf.metadata and pdf.metadata.title)
    assert "/StructTreeRoot" in pdf.trailer["/Root"]


def test_many_sheets_are_one_pdf_or_numbered_pictures(record: Path) -> None:
    asked = ("--sheet", "inspection", "--part", "north")
    assert draw(*asked, "-o", "i.pdf").exit_code == 0
    pages = len(PdfReader(io.BytesIO((record.parent / "i.pdf").read_bytes())).pages)
    assert draw(*asked, "-o", "i.svg").exit_code == 0
    assert len(list(record.parent.glob("i *.svg"))) == pages > 1


def test_a_picture_has_two_dots_where_a_page_has_three_halves_of_a_unit(record: Path) -> None:
    assert draw("--sheet", "floor", "--size", "ANSI A", "-o", "f.png").exit_code == 0
    with Image.open(record.parent / "f.png") as picture:
        assert picture.size == (11 * 144, 8.5 * 144)
        # Not blank: ink in the title's band.
        assert picture.convert("L").crop((0, 0, 11 * 144, 200)).getextrema()[0] < 80


def test_dxf_is_of_three_sheets_and_no_others(record: Path) -> None:
    assert draw("--sheet", "elevation", "-o", "e.dxf").exit_code == 0
    assert (record.parent / "e.dxf").read_bytes().startswith(b"  0\nSECTION")
    answer = draw("--sheet", "member", "--part", "north/L1-L2", "-o", "m.dxf")
    assert answer.exit_code == 1
    assert "elevation, cross-section or floor" in " ".join(answer.output.split())
    assert not (record.parent / "m.dxf").exists()


@pytest.mark.parametrize(
    ("arguments", "code", "said"),
    [
        (("--sheet", "floor", "-o", "f.bmp"), 2, "does not end in"),
        (("--sheet", "plan"), 2, "floor"),
        (("--sheet", "floor", "--size", "ANSI Q"), 1, "ANSI"),
        (("--sheet", "member", "--part", "north/L1-L22"), 1, "did you mean 'north/L1-L2'"),
        (("--sheet", "member"), 1, "no member"),
        (("--sheet", "elevation", "--truss", "sud"), 1, "no truss 'sud'"),
    ],
)
def test_what_is_refused_leaves_nothing_behind(
    record: Path, arguments: tuple[str, ...], code: int, said: str
) -> None:
    answer = draw(*arguments)
    assert answer.exit_code == code
    assert said in " ".join(answer.output.split())
    assert [file.name for file in record.parent.iterdir()] == ["wrenmallow.yaml"]


def test_a_stress_sheet_and_a_pin_stand_on_a_standard_sheet_too() -> None:
    rate, forces = made.documents(made.pratt(8))
    sheet = stress_sheet(rate, forces, papers=sheets_of("ANSI C"))
    assert (sheet.width, sheet.height) == (22 * 96, 17 * 96)
    assert faults(sheet) == []
    assert "where the sheet is ANSI C" in sheet.svg
    with pytest.raises(OutOfRange, match="size of sheet"):
        stress_sheet(rate, forces, papers=sheets_of("A4"))
    document = demos.explain("wrenmallow", "north/L1/pin")
    pin = pin_drawing(document, sheets_of("ARCH C"))
    assert (pin.laid.paper.width, pin.laid.height) == (24 * 96, 18 * 96)
    assert faults(pin) == []
    with pytest.raises(OutOfRange, match="size of sheet"):
        pin_drawing(document, sheets_of("ANSI A"))
