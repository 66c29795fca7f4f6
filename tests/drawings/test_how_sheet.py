"""The column on how a truss works: nothing touches, every bar is drawn as it works."""

from xml.etree import ElementTree as ET

import pytest

from eyebar.drawings import HowSheet, how_figures, how_sheet
from eyebar.drawings.ink import letterings
from eyebar.errors import Unknown
from eyebar.terms import Form
from eyebar.views.how import chapters
from tests.documents import demos
from tests.drawings.apart import met
from tests.history.solved import SOLVABLE, documents
from tests.views.reading import grade

each = pytest.mark.parametrize("name", demos.NAMES)


def test_no_lettering_of_a_demo_touches_another_or_leaves_the_column() -> None:
    for name in demos.NAMES:
        keeps_apart(how_sheet(demos.how(name), demos.forces(name)))


@pytest.mark.parametrize("word", SOLVABLE)
def test_no_lettering_of_any_form_touches_another_or_leaves_the_column(word: Form) -> None:
    told, forces = documents(word)
    keeps_apart(how_sheet(told, forces))
    assert grade(" ".join(
        sentence for one in chapters(told["trusses"][0]) for sentence in one.sentences
    )) < 6.5


def keeps_apart(sheet: HowSheet) -> None:
    """No lettering of a column touches another, or stands out of it."""
    named = [
        ("".join(run.text for run in one.runs), one.box.corners) for one in sheet.letterings
    ]
    pairs = met(named, named)
    for one, _ in named:
        pairs.remove(f"{one} | {one}")  # each meets itself once in the sweep
    assert pairs == []
    for one, corners in named:
        assert all(0.0 < x < sheet.laid.paper.width for x, _ in corners), one
        assert all(0.0 < y < sheet.laid.height for _, y in corners), one


@each
def test_it_says_what_the_words_say_and_shows_every_bar(name: str) -> None:
    sheet = how_sheet(demos.how(name), demos.forces(name))
    root = ET.fromstring(sheet.svg)
    parts = {one.get("data-part") for one in root.iter() if one.get("data-part")}
    truss = demos.how(name)["trusses"][0]
    assert {f"{truss['truss']}/{one['bar']}" for one in truss["bars"]} <= parts
    assert sheet.said in "".join(root.itertext()).replace("\n", " ")


def test_a_truss_is_drawn_by_its_name_and_an_unknown_one_refused() -> None:
    documents = demos.how("dovetansy"), demos.forces("dovetansy")
    assert "east truss" in how_sheet(*documents, truss="east").title
    with pytest.raises(Unknown, match="did you mean 'west'"):
        how_sheet(*documents, truss="wst")


def test_a_double_system_has_its_webs_drawn_and_a_single_one_has_not() -> None:
    figures = how_figures(demos.how("quillmarsh"))
    assert [len(figures[one]) for one in figures] == [1, 0, 1, 2]
    words = ["".join(run.text for run in one.runs)
             for one in letterings(*figures["Two webs share the load"][0].ink)]
    assert {"L2", "L3", "L4", "L5"} <= {*words}
    assert "Two webs share the load" not in how_figures(demos.how("wrenmallow"))
