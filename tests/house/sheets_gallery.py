"""Writes the pictures of sheets in docs/drawings.md: python -m tests.house.sheets_gallery."""

from collections.abc import Mapping
from pathlib import Path

from eyebar.drawings.cross_section_sheet import cross_section_sheet
from eyebar.drawings.elevation_sheet import elevation_sheet
from eyebar.drawings.floor_sheet import floor_sheet
from eyebar.drawings.influence_sheet import influence_sheet
from eyebar.drawings.inspection_sheet import inspection_sheets
from eyebar.drawings.member_sheet import member_sheet
from eyebar.drawings.proportion_sheet import proportion_sheet
from eyebar.drawings.sizes import FREE, sheets_of
from tests.documents import demos
from tests.drawings import sheets

SHOWN = "wrenmallow"
PICTURES = Path(__file__).parents[2] / "docs" / "pictures" / "sheets"


def _steady(document: sheets.Document) -> sheets.Document:
    """The document without its record's hash: that changes with every key that records learn."""
    return {**document, "record_hash": "of a demo"}


def pictures() -> Mapping[str, str]:
    """Name of each file -> its SVG: one invented bridge, sheet by sheet, and one on a telephone."""
    document = _steady(sheets.drawn(SHOWN))
    drawn = {
        "elevation": elevation_sheet(document, FREE),
        "elevation-narrow": elevation_sheet(document, sheets_of(None, narrow=True)),
        "cross-section": cross_section_sheet(document, sheets.standing(SHOWN), FREE),
        "floor": floor_sheet(document, FREE),
        "member": member_sheet(document, "north/L1-L2", FREE),
        "influence": influence_sheet(_steady(sheets.influence(SHOWN, "north/U1-L1")), FREE),
        "proportion": proportion_sheet(_steady(sheets.proportion()), FREE),
        "inspection": inspection_sheets(
            document, demos.describe(SHOWN), sheets_of("ANSI B"), "north/L"
        )[0],
    }
    return {f"{name}.svg": sheet.svg for name, sheet in drawn.items()}


def write() -> None:
    """Write the pictures; those of no sheet are taken away."""
    PICTURES.mkdir(parents=True, exist_ok=True)
    made = pictures()
    for file in PICTURES.glob("*.svg"):
        if file.name not in made:
            file.unlink()
    for name, svg in made.items():
        (PICTURES / name).write_text(svg, encoding="utf-8", newline="\n")


if __name__ == "__main__":
    write()
