"""The pictures of sheets are as the program draws them today, and the page shows each."""

import os

import pytest

from tests.house import sheets_gallery
from tests.house.tracked import ROOT


def test_the_pictures_of_sheets_are_up_to_date() -> None:
    made = sheets_gallery.pictures()
    there = {
        file.name: file.read_text(encoding="utf-8")
        for file in sheets_gallery.PICTURES.glob("*.svg")
    }
    if there == made:
        return
    if os.environ.get("CI") != "true":
        sheets_gallery.write()
    stale = sorted(name for name in {*there, *made} if there.get(name) != made.get(name))
    pytest.fail(f"{', '.join(stale)}: out of date; a run outside CI rewrites them: commit them")


def test_the_page_shows_every_picture() -> None:
    page = (ROOT / "docs" / "drawings.md").read_text(encoding="utf-8")
    assert all(
        f"(pictures/sheets/{file.name})" in page for file in sheets_gallery.PICTURES.glob("*.svg")
    )
