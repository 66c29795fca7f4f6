"""Inspection sheets: every part once, every place of it, last readings beside, room to write."""

from typing import Any

import pytest

from eyebar.drawings.framed import FramedSheet
from eyebar.drawings.inspection_sheet import LINE, inspection_sheets
from eyebar.drawings.sizes import FREE, sheets_of
from eyebar.errors import Unknown
from eyebar.views.inspection import Asked, inspection_parts
from eyebar.views.member_sheet import known_members
from tests.documents import demos
from tests.drawings import sheets
from tests.drawings.test_sheets import NARROW, lettered, parts, sound


def of(name: str, papers: Any, wanted: str = "") -> list[FramedSheet]:
    return inspection_sheets(sheets.drawn(name), demos.describe(name), papers, wanted)


@pytest.mark.parametrize("papers", [FREE, NARROW, sheets_of("ARCH C")])
def test_every_part_stands_on_one_of_the_sheets(papers: Any) -> None:
    pages = of("wrenmallow", papers)
    found: list[str] = []
    for page in pages:
        sound(page)
        found += parts(page)
    assert len(found) == len(set(found))
    assert set(known_members(sheets.drawn("wrenmallow"))) <= set(found)
    assert {"north/L2/pin", "floor/deck"} <= set(found)
    assert pages[-1].content.page == f"sheet {len(pages)} of {len(pages)}"


def test_a_set_of_eyebars_is_asked_for_at_both_heads_with_what_was_read_last() -> None:
    # From the record: of north/U0-L1 the head at L1 was read in 2019, on both bars in 2025.
    (part,) = inspection_parts(
        sheets.drawn("wrenmallow"), demos.describe("wrenmallow"), "north/U0-L1"
    )
    assert Asked(place="head U0", what="thickness", built="13/16", last="") in part.rows
    assert Asked(place="head L1", what="thickness, piece 1", built="", last="11/16 in, 2025") in (
        part.rows)
    assert any(row.what == "tight or loose" for row in part.rows)


def test_rows_are_high_enough_to_write_in() -> None:
    assert LINE >= 96 / 4  # a quarter of an inch


def test_a_part_alone_is_asked_for_by_the_beginning_of_its_address() -> None:
    pages = of("wrenmallow", FREE, "north/L")
    assert all(part.startswith("north/L") for page in pages for part in parts(page))
    assert "Inspected by" in lettered(pages[0])
    with pytest.raises(Unknown):
        of("wrenmallow", FREE, "nowhere")
