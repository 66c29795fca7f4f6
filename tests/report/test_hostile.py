"""A record cannot put markup into a paper, nor read files, nor make the program run for ever."""

import time
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from eyebar.documents.gathered import Gathered, gathered
from eyebar.report.rating_report import Asked, rating_report
from eyebar.report.typeset import CUT, LONGEST, Paper, cleaned, spelt_out, typeset
from eyebar.terms import Board, Reader, Working
from eyebar.views.blocks import Figure, Paragraph, Points, Rows, Section, plainly
from tests.report import made

pytestmark = pytest.mark.typst

DAY = date(2026, 6, 9)

HOSTILE = (
    '#read("/etc/passwd")',
    '#image("../../secret.png")',
    '#panic("stop")',
    "#while true {}",
    "$ 1/2 $ = heading *bold* _slant_ `code` <label> @ref [x](y) // comment /* more */",
    '"quoted" \\ back & <b>tag</b> ]]> &amp; {curly} \\u{41} ~ --- ...',
    "'; DROP TABLE bridges; --",
    "%s %n {0} ${jndi}",
)


def page(*texts: str) -> Paper:
    """A plain paper that says some texts, in every kind of block of words."""
    sections = [Section(heading=texts[0], blocks=(
        *(Paragraph(text=one) for one in texts), Points(points=texts),
        Rows(headings=(texts[0], texts[-1]), rows=tuple((one, one) for one in texts)),
    ))]
    return Paper(
        template="plain.typ",
        content={
            "kind": "k", "name": texts[0], "under": texts[-1], "verdict": "v", "cautions": texts,
            "sections": plainly(sections), "foot": texts[0], "page_word": "page", "of_word": "of",
        },
        title=texts[0], claims=(texts[0],), dated=DAY,
    )


@pytest.mark.parametrize("text", HOSTILE)
def test_what_looks_like_markup_is_set_as_it_is_written(text: str) -> None:
    said = made.text(typeset(page(text)))
    # Letters may be joined or parted by the reader; the signs themselves must all be there.
    squeezed = said.replace(" ", "")
    assert squeezed.count(text.replace(" ", "").replace("'", "'")) >= 3
    assert "root:" not in said


def names(one: object) -> Iterator[str]:
    if isinstance(one, str):
        yield one
    elif isinstance(one, dict):
        for value in one.values():
            yield from names(value)
    elif isinstance(one, list):
        for value in one:
            yield from names(value)


def test_a_bridge_with_hostile_names_has_its_report(tmp_path: Path) -> None:
    name = 'Bridge #read("x") <b> & "q" $x$ \\'
    record = made.changed(
        "wrenmallow", tmp_path,
        ("name: Wrenmallow Bridge (invented)", "name: '" + name + "'"),
    )
    of = gathered(record)
    for reader in (Reader.ENGINEER, Reader.PUBLIC):
        pdf = rating_report(of, Asked(working=Working.NONE, reader=reader, board=Board.NONE))
        assert name.replace(" ", "") in made.text(pdf).replace(" ", "")
        assert made.read(pdf).metadata.title.endswith(name)


@pytest.mark.parametrize("name", [
    "جسر النهر", "גשר הנהר", "橋の名前", "Pont 🙂 d’été", "a\u202eb\u2066c", "x\u0000y\x1bz",
])
def test_letters_of_any_script_leave_a_valid_paper(name: str) -> None:
    pdf = typeset(page(name, "plain"))
    assert pdf.startswith(b"%PDF-1.7")
    assert len(made.read(pdf).pages) == 1


def test_a_letter_that_no_face_has_is_written_as_its_number() -> None:
    # 6A4B is the number of the sign for a bridge.
    assert "[U+6A4B]" in made.text(typeset(page("\u6a4b")))
    assert spelt_out("Ä ü § α") == "Ä ü § α"


def test_signs_that_turn_a_line_round_are_left_out() -> None:
    assert cleaned("a\u202eb\u2066c\x1b[0m\nd") == "abc[0m d"


def test_an_endless_text_is_cut_and_says_so() -> None:
    cut = cleaned("x" * 10_000_000)
    assert len(cut) == LONGEST
    assert cut.endswith(CUT)


def test_a_huge_name_does_not_run_for_ever(tmp_path: Path) -> None:
    began = time.monotonic()
    pdf = typeset(page("word " * 400_000, "W" * 400_000))
    # Measured at less than a second; a minute is for ever.
    assert time.monotonic() - began < 60
    assert len(made.read(pdf).pages) < 60


def test_a_drawing_brings_no_file_in(tmp_path: Path) -> None:
    # An SVG that points to a file elsewhere: the typesetter refuses to look for it.
    secret = tmp_path / "secret.svg"
    secret.write_text("<svg xmlns='http://www.w3.org/2000/svg'><text>secret</text></svg>")
    svg = (
        "<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'>"
        f"<image href='file://{secret}' width='9' height='9'/>"
        f"<image href='{secret}' width='9' height='9'/></svg>"
    )
    figure = Figure(svg=svg, said="a drawing", caption="")
    paper = page("plain")
    sections = plainly([Section(heading="h", blocks=(figure,))])
    with pytest.raises(RuntimeError, match="not allowed"):
        typeset(replace(paper, content={**paper.content, "sections": sections}))


@pytest.fixture(scope="module")
def of() -> Gathered:
    return made.documents("wrenmallow")


def test_all_that_a_template_is_given_is_data(of: Gathered) -> None:
    # Mathematics is the one thing a template evaluates: only our own formulas write it.
    template = (Path(__file__).parents[2] / "src/eyebar/report/templates/house.typ").read_text()
    evaluated = [line for line in template.splitlines() if "eval(" in line]
    assert len(evaluated) == 2
    assert all('mode: "math"' in line for line in evaluated)
