"""Writes docs/gallery.md, the pictures of docs/ and the README's: python -m tests.house.gallery."""

import shlex
import tempfile
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path

from typer.testing import CliRunner

from eyebar.cli.commands import app
from eyebar.documents.forces import forces_document
from eyebar.drawings import Picture, form_picture, how_sheet, stress_sheet
from eyebar.record import record_of
from tests.bridge.filled import filled
from tests.documents import demos
from tests.house.gallery_forms import CHAPTERS, Shown

ROOT = Path(__file__).parents[2]
DOCS = ROOT / "docs"
SHEET = DOCS / "pictures" / "quillmarsh.svg"
HOW = DOCS / "pictures" / "how-wrenmallow.svg"
PAGE = DOCS / "gallery.md"
PICTURES = DOCS / "pictures" / "forms"

OPENING = """# Gallery of forms

Every form of truss that `eyebar new` begins a record of, drawn by the program as the truss stands
under its own weight and its floor's: broad and hollow what is pushed, one solid line what is
pulled, broken what is slack. The sizes are invented; [drawings](drawings.md) says how to read
the pictures, [the record](record.md) what each form allows. Counters are drawn where the command
names them: which ones a bridge has, only a look at it tells.

This page and its pictures are made by `python -m tests.house.gallery`, and a test holds them to the
program."""


def command(shown: Shown) -> str:
    """What to type."""
    return shlex.join(["eyebar", "new", *shown.arguments]).replace("'", '"')


@cache
def picture(shown: Shown) -> Picture:
    """The picture of what the command begins, its questions answered by plausible sizes."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "bridge.yaml"
        answer = CliRunner().invoke(app, ["new", *shown.arguments, "-o", str(file)])
        assert answer.exit_code == 0, answer.output
        text = filled(file.read_text(encoding="utf-8"))
    document = forces_document(record_of(text, file="bridge.yaml"))
    return form_picture(
        document["trusses"][0], title=f"{shown.name} truss, {shown.panels}", said=shown.carries
    )


def pictures() -> Mapping[str, str]:
    """Name of each file -> the picture's SVG."""
    return {shown.file: picture(shown).svg for _, chapter in CHAPTERS for shown in chapter}


def sheet() -> str:
    """The stress sheet of a demo bridge that the README shows."""
    return stress_sheet(demos.rate("quillmarsh"), demos.forces("quillmarsh")).svg


def how() -> str:
    """How a demo bridge works, drawn and told, that docs/history.md shows."""
    return how_sheet(demos.how("wrenmallow"), demos.forces("wrenmallow")).svg


def _lines() -> Iterator[str]:
    yield OPENING
    for heading, chapter in CHAPTERS:
        yield f"\n## {heading}"
        for shown in chapter:
            yield f"\n### {shown.name}\n"
            yield f"![{shown.name} truss](pictures/forms/{shown.file})\n"
            yield f"{shown.carries}\n"
            yield f"```sh\n{command(shown)}\n```"


def page() -> str:
    """The whole page."""
    return "\n".join(_lines()) + "\n"


def write() -> None:
    """Write the page and its pictures; pictures of no form are taken away."""
    PICTURES.mkdir(parents=True, exist_ok=True)
    made = pictures()
    for old in PICTURES.glob("*.svg"):
        if old.name not in made:
            old.unlink()
    for name, svg in made.items():
        (PICTURES / name).write_text(svg, encoding="utf-8", newline="\n")
    PAGE.write_text(page(), encoding="utf-8")
    SHEET.write_text(sheet(), encoding="utf-8", newline="\n")
    HOW.write_text(how(), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    write()
