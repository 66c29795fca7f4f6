"""The sections that the page on the record shows in place of others are read, and have an area."""

import re
from pathlib import Path

import pytest

from eyebar.bridge.shaped import shaped
from eyebar.record.sections import MAIN_SHAPES
from eyebar.record.sizes import unmeasured
from eyebar.sections.properties import area, properties
from eyebar.sections.shapes import Loops, Placed
from tests.record.field_book import changed, read

PAGE = (Path(__file__).parents[2] / "docs" / "record.md").read_text(encoding="utf-8")
(PIECE,) = re.findall(r"```yaml\n# in place of a section\n(.*?)```", PAGE, re.DOTALL)
SHOWN = dict(re.findall(r"^(\S.*?):\n((?: .*\n)+)", PIECE, re.MULTILINE))
IRON = "  iron: {metal: wrought iron}\n"
OAK = "  oak: {metal: timber, modulus: 1100 ksi, source: a grader}\n"
POSTS = (
    "      rolled: {shape: I, depth: 6 in, web: 1/4 in, flange: 3 1/2 in, "
    "flange thickness: 3/8 in}\n"
)


@pytest.mark.parametrize("name", SHOWN)
def test_a_section_that_is_shown_is_read_and_computed(name: str) -> None:
    indented = re.sub(r"^", "    ", SHOWN[name].rstrip(), flags=re.MULTILINE)
    made = "oak" if "timber:" in indented else "iron"
    text = changed(
        (f"{POSTS}    material: iron\n", f"{indented}\n    material: {made}\n"), (IRON, IRON + OAK)
    )
    section = read(text).members["posts"].section
    assert unmeasured(section) == ()
    shape = shaped(section)
    assert 0 < area(shape) == pytest.approx(properties(shape).area)


def test_every_new_kind_of_section_is_shown_once_at_least() -> None:
    assert len(SHOWN) == 11
    shown = {shape for shape in MAIN_SHAPES if re.search(rf"^ +{shape}: ", PIECE, re.MULTILINE)}
    assert shown == {
        "angles", "plates and angles", "flanged segments", "rolled", "timber", "rods"
    }


@pytest.mark.parametrize("word", [*Placed, *Loops])
def test_the_page_names_every_word_of_a_section(word: str) -> None:
    assert f"`{word}`" in PAGE
