"""The description of a documentation sheet: its figures against the record, both ways."""

import copy
import re
from functools import cache
from itertools import pairwise

import pytest

from eyebar.documents.history import history_document
from eyebar.documents.sheet import sheet_document
from eyebar.units.shown import fraction_text
from eyebar.views import documentation_words as words
from eyebar.views.blocks import Blanks, Paragraph, Points, Rows, Section, Table
from eyebar.views.documentation import Told, documentation, general, part_words
from eyebar.views.markdown import markdown, plain
from tests.documents import demos

Document = demos.Document
each = pytest.mark.parametrize("name", demos.NAMES)


@cache
def sheet(name: str) -> Document:
    return sheet_document(demos.record(name))


@cache
def history(name: str) -> Document:
    return history_document(demos.record(name))


def sections(document: Document, name: str = "wrenmallow") -> tuple[Section, ...]:
    return documentation(Told(
        sheet=document, history=history(name), how=None, no_how="Not told: no reason.", figures={},
    ))


def told(section: Section) -> str:
    """All that a section says."""
    said = [section.heading]
    for block in section.blocks:
        match block:
            case Paragraph():
                said.append(block.text)
            case Points():
                said += block.points
            case Rows() | Table():
                said += [" ".join(row) for row in block.rows]
            case Blanks():
                said += block.captions
            case _:
                pass
    return " ".join(said)


def under(document: Document, heading: str, name: str = "wrenmallow") -> str:
    """What stands under one heading."""
    return told(next(one for one in sections(document, name) if one.heading == heading))


def written(name: str) -> str:
    """The record as it was written, without its comments."""
    text = demos.record(name).read_text(encoding="utf-8")
    return re.sub(r"#.*", "", text)


# Each row: what the record says, what the sheet then says, under which heading; read from the
# records of the demos by eye.
FIGURES = [
    ("wrenmallow", "panels: 4 at 14 ft 9 in", "4 panels (4 of 14 ft 9 in), 59 ft between",
     words.GENERAL),
    ("wrenmallow", "depth: 7 ft 3 in", "7 ft 3 in deep", words.GENERAL),
    ("wrenmallow", "clear width: 13 ft", "13 ft wide between its curbs", words.GENERAL),
    ("wrenmallow", "spacing: 15 ft 2 in", "15 ft 2 in apart", words.GENERAL),
    ("wrenmallow", "overhead: false", "a pony truss", words.GENERAL),
    ("wrenmallow", "spliced at: [U2]", "spliced: at U2", words.JOINTS),
    ("wrenmallow", "diameter: 2 1/4 in", "Pins of 2 1/4 in at L0", words.JOINTS),
    ("wrenmallow", "thickness: 3 in", "Deck: plank, thickness 3 in", words.FLOOR),
    ("wrenmallow", "number: 7", "Stringers: number 7, spacing 2 ft 2 in", words.FLOOR),
    ("wrenmallow", "zero: mill end", "counted from the mill end", words.ENDS),
    ("wrenmallow", "2020-04-16", "16 April 2020", words.LATER),
    ("wrenmallow", "substructure: 6", "substructure 6", words.CONDITION),
    ("quillmarsh", "panels: 10 at 15 ft", "10 panels (10 of 15 ft), 150 ft between",
     words.GENERAL),
    ("quillmarsh", "depth: 26 ft", "26 ft deep", words.GENERAL),
    ("quillmarsh", "built: 1886", "1886, by the record", words.IDENTITY),
    ("quillmarsh", "cover plate: 14 in x 5/16 in", "cover plate: width 14, thickness 5/16",
     words.MEMBERS),
    ("quillmarsh", "width: 2 1/2 in, thickness: 9/16 in", "eyebars: width 2 1/2, thickness 9/16",
     words.MEMBERS),
    ("dovetansy", "overhead: true", "a through truss", words.GENERAL),
    ("dovetansy", "form: lattice", "Portal at south abutment: form lattice", words.BRACING),
]


@pytest.mark.parametrize(("name", "record", "said", "heading"), FIGURES)
def test_what_the_record_says_is_in_the_description(
    name: str, record: str, said: str, heading: str
) -> None:
    assert record in written(name)
    assert said in under(sheet(name), heading, name)


@each
def test_every_size_of_a_member_is_one_that_the_record_writes(name: str) -> None:
    # The other way: each size in the table of members stands in the record, in inches; gathered
    # pieces (two open bars of a turnbuckle) and thickness by weight have no text of their own.
    record = written(name)
    for truss in sheet(name)["trusses"]:
        for member in truss["members"]:
            for piece in member["pieces"]:
                for what, size in piece["sizes_in"].items():
                    text = re.escape(f"{fraction_text(size, nearest=64)} in")
                    found = re.search(rf"(?<![\d/])(?<!\d ){text}(?![a-z0-9])", record)
                    assert found, f"{member['bars'][0]} {piece['name']} {what} {size}"


@each
def test_every_bar_stands_in_one_row_of_its_truss_with_its_metal(name: str) -> None:
    for truss in sheet(name)["trusses"]:
        rows = [bar for one in truss["members"] for bar in one["bars"]]
        assert len(rows) == len({*rows}) == next(
            one["bars"] for one in demos.describe(name)["trusses"] if one["truss"] == truss["truss"]
        )
        metals = {one["metal"] for one in truss["members"]}
        assert metals <= {one["metal"] for one in demos.describe(name)["materials"]}


@each
def test_panels_and_depth_are_those_of_the_joints(name: str) -> None:
    for truss, solved in zip(sheet(name)["trusses"], demos.forces(name)["trusses"], strict=True):
        along = sorted(solved["joints"][joint][0] for joint, _ in solved["floor_joints"])
        assert truss["panels_in"] == pytest.approx([b - a for a, b in pairwise(along)])
        heights = [y for _, y in solved["joints"].values()]
        assert truss["depth_in"] == pytest.approx(max(heights) - min(heights))


@each
def test_alterations_are_the_records_decisions_by_date(name: str) -> None:
    document = sheet(name)
    dates = [one["when"] for one in document["alterations"] if one["when"]]
    assert dates == sorted(one["date"] for one in demos.describe(name)["decisions"])
    for one in demos.describe(name)["decisions"]:
        assert one["note"] in under(document, words.LATER)


def test_a_bridge_without_a_year_or_a_form_or_a_road_says_so() -> None:
    document = copy.deepcopy(sheet("wrenmallow"))
    document |= {"built": None, "road": None, "overhead": None, "bracing": [], "alterations": [],
                 "unlike": []}
    for truss in document["trusses"]:
        truss |= {"form": None, "pins": []}
    assert f"Built {words.UNKNOWN}" in under(document, words.IDENTITY)
    whole = under(document, words.GENERAL)
    assert "trusses of none of the known forms" in whole
    assert "width of the road was not measured" in whole
    assert "is not recorded" in whole
    assert "pin-connected" not in whole
    assert words.NO_PINS in under(document, words.JOINTS)
    assert words.NO_BRACING in under(document, words.BRACING)
    assert words.NO_LATER in under(document, words.LATER)


def test_trusses_that_differ_are_told_each_by_itself() -> None:
    document = copy.deepcopy(sheet("wrenmallow"))
    document["trusses"][1]["depth_in"] = 96.0
    said = " ".join(general(document))
    assert "The north truss is a pin-connected half-hip Pratt truss." in said
    assert "8 ft deep" in said
    assert "alike" not in said


def test_bars_that_differ_from_truss_to_truss_stand_under_its_name() -> None:
    # Dovetansy: the rod U3-L4 of the west truss was replaced; the east one has none like it.
    said = under(sheet("dovetansy"), words.MEMBERS, "dovetansy")
    assert "root diameter 1 1/16 wrought iron west: U3-L4" in said
    assert "west: U4-L3; east: U3-L4, U4-L3" in said
    assert said.count("hip vertical") == 1


def test_panels_of_unequal_length_are_told_in_their_order() -> None:
    document = copy.deepcopy(sheet("wrenmallow"))
    for truss in document["trusses"]:
        truss["panels_in"] = [168.0, 180.0, 180.0, 168.0]
    assert "4 panels (1 of 14 ft, 2 of 15 ft, 1 of 14 ft), 58 ft between" in " ".join(
        general(document)
    )


def test_significance_is_left_to_the_historian() -> None:
    one = under(sheet("quillmarsh"), words.SIGNIFICANCE, "quillmarsh")
    assert all(question in one for question in words.ASKED_OF_SIGNIFICANCE)
    assert "?" in one
    assert "Quillmarsh" not in one
    assert "for the historian" in under(sheet("quillmarsh"), words.SOURCES, "quillmarsh")


def test_the_year_that_facts_contradict_is_told() -> None:
    # The demo says 1900 and has members of wrought iron, usual until 1895.
    assert "Contradiction: built 1900" in under(sheet("wrenmallow"), words.AGE)


def test_a_part_of_which_nothing_is_recorded_says_so() -> None:
    nothing = {"part": "deck", "recorded": {}, "pieces": []}
    assert part_words(nothing) == "Deck: no more is recorded."


def test_what_a_record_says_is_no_markup_in_markdown() -> None:
    assert plain("a *b* | <c> [d](e) `f`") == "a \\*b\\* \\| \\<c\\> \\[d\\](e) \\`f\\`"
    assert [plain(one) for one in ("- a", "1. a", "31-08", "a\n# b")] == [
        "\\- a", "1\\. a", "31-08", "a \\# b",
    ]


def test_markdown_holds_all_that_is_told() -> None:
    found = sections(sheet("quillmarsh"), "quillmarsh")
    text, files = markdown("Title", ("Under.",), found, "sheet")
    assert text.startswith("# Title\n\nUnder.\n\n## Identity\n")
    assert files == {}
    bare = text.replace("\\", "")
    for section in found:
        for block in section.blocks:
            if isinstance(block, Points):
                assert all(f"- {one}" in bare for one in block.points)
            if isinstance(block, Table):
                assert all(f"| {' | '.join(row)} |" in bare for row in block.rows)
