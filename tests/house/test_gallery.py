"""The gallery shows every form as the program draws it today."""

import os

import pytest

from eyebar.terms import Form
from tests.drawings.apart import faults
from tests.house import gallery
from tests.house.gallery_forms import CHAPTERS, Shown

SHOWN = [shown for _, chapter in CHAPTERS for shown in chapter]


def test_the_gallery_is_up_to_date() -> None:
    made = {
        gallery.PAGE.name: gallery.page(), gallery.SHEET.name: gallery.sheet(),
        gallery.HOW.name: gallery.how(), **gallery.pictures(),
    }
    files = (gallery.PAGE, gallery.SHEET, gallery.HOW, *gallery.PICTURES.glob("*.svg"))
    there = {file.name: file.read_text(encoding="utf-8") for file in files if file.exists()}
    if there == made:
        return
    if os.environ.get("CI") != "true":
        gallery.write()
    stale = sorted(name for name in {*there, *made} if there.get(name) != made.get(name))
    pytest.fail(f"{', '.join(stale)}: out of date; a run outside CI rewrites them: commit them")


def test_every_form_is_shown() -> None:
    assert {shown.form for shown in SHOWN} == set(Form)


def test_every_picture_has_a_file_of_its_own() -> None:
    assert len({shown.file for shown in SHOWN}) == len(SHOWN)


@pytest.mark.parametrize("shown", SHOWN, ids=lambda shown: shown.name)
def test_each_form_is_told_of_in_two_sentences(shown: Shown) -> None:
    assert shown.carries.endswith(".")
    assert shown.carries.count(". ") == 1


@pytest.mark.parametrize("shown", SHOWN, ids=lambda shown: shown.name)
def test_no_lettering_of_a_picture_touches_anything(shown: Shown) -> None:
    assert faults(gallery.picture(shown)) == []
