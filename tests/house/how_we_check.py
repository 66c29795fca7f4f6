"""Writes docs/how-we-check.md from the tests themselves: python -m tests.house.how_we_check."""

import ast
import textwrap
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from tests.history.results import chapter as forms_recognised

TESTS = Path(__file__).parents[1]
WIDTH = 100
PAGE = TESTS.parent / "docs" / "how-we-check.md"

OPENING = """# How we check

Every expected value in the tests has an origin: it is published, worked by hand beside the test,
found by another method, or a law with the condition under which it is true. This page lists the
sources and the laws; it is written by the tests themselves.
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Chapter:
    """One folder of tests as a chapter of the page."""

    folder: str
    heading: str
    opening: str


CHAPTERS = (
    Chapter(
        folder="published",
        heading="Published examples",
        opening="Inputs as printed, answers compared to the printed digits: within half a unit of "
        "the last one, unless a sentence beside the test says why not.",
    ),
    Chapter(
        folder="laws",
        heading="Laws",
        opening="What must hold for every bridge of a kind, tried on many made at random, each "
        "with the condition under which it is true.",
    ),
    Chapter(
        folder="analysis",
        heading="Another road to the same number",
        opening="The same question put to a general finite element program, to computer algebra, "
        "to an optimiser or to plain stepping.",
    ),
    Chapter(
        folder="roads",
        heading="Another road to parts",
        opening="Columns as frames of a general finite element program, sections as outlines cut "
        "into triangles by a general library.",
    ),
)


def sentence(name: str) -> str:
    """A test's name as a sentence: `test_a_bar_pulls` is `A bar pulls`."""
    words = name.removeprefix("test_").replace("_", " ")
    return words[:1].upper() + words[1:]


def section(source: str) -> str:
    """One test file: its opening words, then what each test says; empty where it has none."""
    tree = ast.parse(source)
    title, _, rest = (ast.get_docstring(tree) or "").partition("\n")
    if not title:
        return ""
    said = [
        f"- {sentence(node.name)}."
        for node in tree.body
        if isinstance(node, ast.FunctionDef) and node.name.startswith("test_")
    ]
    return "\n".join([f"### {title.rstrip('.')}", *([rest] if rest.strip() else []), "", *said, ""])


def chapters() -> Iterator[str]:
    """The chapters of the folders that are there, their files by name."""
    for chapter in CHAPTERS:
        files = sorted((TESTS / chapter.folder).glob("test_*.py"))
        sections = [section(file.read_text(encoding="utf-8")) for file in files]
        if sections:
            yield f"## {chapter.heading}\n\n{textwrap.fill(chapter.opening, WIDTH)}\n"
            yield from filter(None, sections)


def page() -> str:
    """The whole page."""
    return "\n".join([OPENING, *chapters(), forms_recognised()])


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
