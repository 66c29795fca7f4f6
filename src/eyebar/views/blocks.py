"""What a paper is made of: sections of paragraphs, lists, tables, figures and working.

Every string is ready to be set; a template only lays it out. A block says its `block`, by which the
template knows it.
"""

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from eyebar.views.columns import cells, columns


@dataclass(frozen=True, slots=True, kw_only=True)
class Paragraph:
    """A paragraph; its `tone` is plain, strong, accent, or small."""

    text: str
    tone: str = "plain"
    block: str = field(default="paragraph", init=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Points:
    """A list of sentences."""

    points: tuple[str, ...]
    block: str = field(default="points", init=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ticks:
    """A list of sentences, each with a box to be ticked by hand."""

    points: tuple[str, ...]
    block: str = field(default="ticks", init=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rows:
    """Captions, and what is said to each, under a heading for both."""

    headings: tuple[str, str]
    rows: tuple[tuple[str, str], ...]
    block: str = field(default="rows", init=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A table under a caption: its headings, which columns are figures, its rows, and how many
    parts of the width each column takes (0: as wide as its longest entry)."""

    caption: str
    headings: tuple[str, ...]
    figures: tuple[bool, ...]
    shares: tuple[int, ...]
    rows: tuple[tuple[str, ...], ...]
    block: str = field(default="table", init=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A drawing with its caption, and with words for those who do not see it; `wide` is the part
    of the width that it takes, in hundredths; where it `floats`, words go on while it waits for a
    page with room."""

    svg: str
    said: str
    caption: str
    wide: int = 100
    floats: bool = False
    block: str = field(default="figure", init=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Equation:
    """A formula of a working: in symbols and with numbers (as typst or MathML writes mathematics),
    how both are read aloud, what the symbols mean (symbol, how it is read, meaning), the source.
    Without title and source it goes on from the one before."""

    title: str
    symbols: str
    symbols_said: str
    numbers: str
    numbers_said: str
    meanings: tuple[tuple[str, str, str], ...]
    source: str
    depth: int = 0
    block: str = field(default="equation", init=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """A line of a working in words: a named figure, or the name of a procedure with its source."""

    text: str
    source: str = ""
    depth: int = 0
    block: str = field(default="said", init=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Blanks:
    """Lines to be filled in by hand, each under its caption."""

    captions: tuple[str, ...]
    block: str = field(default="blanks", init=False)


Block = Paragraph | Points | Ticks | Rows | Table | Figure | Equation | Said | Blanks
"""What stands in a section."""

BLOCKS = (Paragraph, Points, Ticks, Rows, Table, Figure, Equation, Said, Blanks)


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A heading of the first or second rank, and what stands under it."""

    heading: str
    blocks: tuple[Block, ...]
    rank: int = 1


def table(
    view: type, rows: Sequence[Any], *, caption: str, shares: Sequence[int] = ()
) -> Table:
    """The rows of a view under its headings; without shares, words share the width."""
    named = columns(view)
    return Table(
        caption=caption,
        headings=tuple(one.heading for one in named),
        figures=tuple(one.figure for one in named),
        shares=tuple(shares) or tuple(0 if one.figure else 1 for one in named),
        rows=tuple(tuple(cells(row)) for row in rows),
    )


def plainly(sections: Sequence[Section]) -> list[dict[str, Any]]:
    """The sections as plain objects, for a template."""
    return [dataclasses.asdict(one) for one in sections]
