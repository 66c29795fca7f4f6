"""Sections as Markdown: what an archive or a wiki takes, with its drawings as files beside it."""

import re
from collections.abc import Iterable, Iterator, Sequence

from eyebar.views.blocks import (
    Blanks,
    Block,
    Equation,
    Figure,
    Paragraph,
    Points,
    Rows,
    Said,
    Section,
    Table,
)

LINE = "\\_" * 30
_BEGINS = re.compile(r"^(\d+(?=[.)])|)([-+.)])")
"""What would make a list of a line that begins with it."""
_SIGNS = str.maketrans({one: f"\\{one}" for one in "\\`*_[]<>|#"})


def markdown(
    heading: str, opening: Iterable[str], sections: Sequence[Section], stem: str
) -> tuple[str, dict[str, str]]:
    """The text, and file name -> SVG of each drawing in it; `stem` begins the names.

    What the record says is never markup.
    """
    files: dict[str, str] = {}
    lines = [f"# {plain(heading)}", *(plain(one) for one in opening)]
    for section in sections:
        lines.append(f"{'#' * (section.rank + 1)} {plain(section.heading)}")
        for block in section.blocks:
            lines += _block(block, files, stem)
    return "\n\n".join(lines) + "\n", files


def plain(text: str) -> str:
    """A text on one line, in which no sign means anything to Markdown."""
    found = " ".join(text.split()).translate(_SIGNS)
    return _BEGINS.sub(r"\1\\\2", found)


def _block(block: Block, files: dict[str, str], stem: str) -> Iterator[str]:
    match block:
        case Paragraph():
            yield f"**{plain(block.text)}**" if block.tone == "strong" else plain(block.text)
        case Points():
            yield "\n".join(f"- {plain(one)}" for one in block.points)
        case Rows():
            yield _rows(("", ""), block.rows)
        case Table():
            yield f"*{plain(block.caption)}*"
            yield _rows(block.headings, block.rows)
        case Figure():
            name = f"{stem}-{len(files) + 1}.svg"
            files[name] = block.svg
            yield f"![{plain(block.said)}]({name.replace(' ', '%20')})"
            if block.caption:
                yield f"*{plain(block.caption)}*"
        case Blanks():
            yield "\n\n".join(f"{plain(one)} {LINE}".strip() for one in block.captions)
        case Said():
            yield plain(block.text)
        case Equation():
            yield plain(": ".join(filter(None, (block.title, block.numbers_said))))


def _rows(headings: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    return "\n".join((
        f"| {' | '.join(map(plain, headings))} |", f"|{'---|' * len(headings)}",
        *(f"| {' | '.join(map(plain, row))} |" for row in rows),
    ))
