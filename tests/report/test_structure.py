"""The file as an archive and a reading aid want it: looked at with a library that is not ours."""

import re
from itertools import pairwise
from typing import Any

import pytest

from tests.documents import demos
from tests.report import made

pytestmark = pytest.mark.typst
each = pytest.mark.parametrize("name", demos.NAMES)


@each
def test_it_claims_to_be_archivable_and_accessible(name: str) -> None:
    # PDF/A-2a: ISO 19005-2, pdfaid part 2, conformance A; PDF/UA-1: ISO 14289-1, pdfuaid part 1.
    metadata = made.read(made.report(name)).root_object["/Metadata"].get_object().get_data()
    assert b"<pdfaid:part>2</pdfaid:part>" in metadata
    assert b"<pdfaid:conformance>A</pdfaid:conformance>" in metadata
    assert b"<pdfuaid:part>1</pdfuaid:part>" in metadata


@each
def test_its_language_and_title_are_said_and_it_is_tagged(name: str) -> None:
    root = made.read(made.report(name)).root_object
    assert root["/Lang"] == "en-US"
    assert root["/MarkInfo"]["/Marked"].value is True
    assert root["/ViewerPreferences"]["/DisplayDocTitle"].value is True
    assert demos.rate(name)["bridge"]["name"] in made.read(made.report(name)).metadata.title


@each
def test_every_figure_and_every_equation_has_words(name: str) -> None:
    root = made.read(made.report(name)).root_object
    wanted = ("/Figure", "/Formula")
    found = [one for one in made.tags(root["/StructTreeRoot"]) if one["/S"] in wanted]
    kinds = {one["/S"] for one in found}
    assert kinds == {"/Figure", "/Formula"}
    assert [one for one in found if not str(one.get("/Alt", "")).strip()] == []


@each
def test_every_table_has_a_row_of_headings(name: str) -> None:
    root = made.read(made.brief(name)).root_object
    tables = [one for one in made.tags(root["/StructTreeRoot"]) if one["/S"] == "/Table"]
    assert tables
    with_heads = [one for one in tables if any(cell["/S"] == "/TH" for cell in made.tags(one))]
    assert len(with_heads) == len(tables)


@each
def test_all_letters_are_inside(name: str) -> None:
    fonts: dict[str, Any] = {}
    for page in made.read(made.brief(name)).pages:
        fonts |= page["/Resources"].get("/Font", {})
    assert fonts
    for one in fonts.values():
        described = one.get_object()["/DescendantFonts"][0].get_object()["/FontDescriptor"]
        assert {"/FontFile2", "/FontFile3"} & set(described.get_object())


def test_nothing_in_it_acts_or_leads_outside() -> None:
    pdf = made.report("quillmarsh")
    for word in (rb"/JavaScript", rb"/Launch", rb"/URI", rb"/EmbeddedFile", rb"/OpenAction"):
        assert not re.search(word + rb"\b", pdf)


def test_the_headings_step_down_one_rank_at_a_time() -> None:
    root = made.read(made.report("quillmarsh")).root_object
    ranks = [
        int(str(one["/S"])[2:]) for one in made.tags(root["/StructTreeRoot"])
        if re.fullmatch(r"/H\d", str(one["/S"]))
    ]
    assert ranks[0] == 1
    assert all(after - before <= 1 for before, after in pairwise(ranks))
