"""From plain objects and a template to the bytes of a PDF.

What a record says reaches the template as data and is set as text: none of it is ever read as
markup, and a template finds no file beside the other templates. Letters come from the fonts inside
installed packages, so that every machine sets the same page; the date is given, so that the same
input gives the same bytes.
"""

import json
import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, date, datetime, time
from functools import cache
from importlib.resources import as_file, files
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from eyebar.errors import MissingLibrary, OutOfRange

STANDARDS = ("ua-1", "a-2a")
"""PDF/UA-1 and PDF/A-2a, both at once."""

CUTS = tuple(
    f"SourceSerifPro-{cut}.ttf" for cut in ("Regular", "It", "Semibold", "SemiboldIt")
)
"""The files of the face's cuts that papers are set in."""

LONGEST = 2000
"""Letters of one text that came from outside; what is longer is cut, and says so."""

MOST = 30_000_000
"""Bytes of all that is given to a template."""

CUT = "… (cut here)"

_NO_SHAPE = re.compile(r'the text `"(.+)"` could not be displayed')


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """What a template is given: its data, the title of the file, claims kept in the file, a date.

    `claims` are words like `record=...`: whoever has the file reads them back.
    """

    template: str
    content: Mapping[str, Any]
    title: str
    claims: tuple[str, ...]
    dated: date


def typeset(paper: Paper) -> bytes:
    """The PDF. Raises MissingLibrary where typst is not installed, OutOfRange where it is too much.
    """
    typst = _typst()
    given = {**paper.content, "title": paper.title, "claims": list(paper.claims)}
    text = json.dumps(cleaned(given), ensure_ascii=False, allow_nan=False, sort_keys=True)
    if len(text) > MOST:
        raise OutOfRange("report", f"{len(text)} letters long", f"at most {MOST}")
    try:
        return _compiled(typst, paper, text)
    except typst.TypstError as fault:
        if not _NO_SHAPE.search(str(fault)):
            raise
    return _compiled(typst, paper, spelt_out(text))


def _compiled(typst: Any, paper: Paper, text: str) -> bytes:
    noon = datetime.combine(paper.dated, time(12), tzinfo=UTC)
    with as_file(files("eyebar.report") / "templates") as root, TemporaryDirectory() as cuts:
        made: bytes = typst.compile(
            str(root / paper.template), root=str(root), font_paths=_fonts(typst, Path(cuts)),
            ignore_system_fonts=True, sys_inputs={"content": text}, timestamp=noon,
            pdf_standards=list(STANDARDS), format="pdf",
            package_path=str(root), package_cache_path=str(root),
        )
    return made


def pictured(paper: Paper, *, dots_per_inch: float) -> bytes:
    """The first page as PNG. Raises MissingLibrary where typst is not installed."""
    typst = _typst()
    given = {**paper.content, "title": paper.title, "claims": list(paper.claims)}
    text = json.dumps(cleaned(given), ensure_ascii=False, allow_nan=False, sort_keys=True)
    with as_file(files("eyebar.report") / "templates") as root, TemporaryDirectory() as cuts:
        made = typst.compile(
            str(root / paper.template), root=str(root), font_paths=_fonts(typst, Path(cuts)),
            ignore_system_fonts=True, sys_inputs={"content": text}, ppi=dots_per_inch,
            package_path=str(root), package_cache_path=str(root), format="png",
        )
    first: bytes = made[0] if isinstance(made, list) else made
    return first


def needed() -> None:
    """Raises MissingLibrary where typst is not installed: said before anything is calculated."""
    _typst()


def _typst() -> Any:
    try:
        import typst
    except ImportError:
        raise MissingLibrary("typst", "a report", "office") from None
    return typst


def _fonts(typst: Any, folder: Path) -> Any:
    """The cuts used of Source Serif Pro, and what typst brings itself; no others.

    The package has each cut in two kinds of file: without a folder of their own, which of them is
    taken would be the machine's choice.
    """
    for cut in CUTS:
        (folder / cut).write_bytes((files("font_source_serif_pro") / "files" / cut).read_bytes())
    return typst.Fonts(
        include_system_fonts=False, include_embedded_fonts=True, font_paths=[str(folder)]
    )


def cleaned(thing: Any) -> Any:
    """The same with every text fit to be set: no control signs, no letters that turn the direction
    of what follows, nothing endless."""
    if isinstance(thing, str):
        return _clean(thing)
    if isinstance(thing, Mapping):
        return {key: _svg(one) if key == "svg" else cleaned(one) for key, one in thing.items()}
    if isinstance(thing, list | tuple):
        return [cleaned(one) for one in thing]
    return thing


def _svg(text: str) -> str:
    if text.replace("\n", "").isprintable():  # so are nearly all, and it is told at once
        return text
    return "".join(one for one in text if one == "\n" or unicodedata.category(one)[0] != "C")


def _clean(text: str) -> str:
    kept = text if text.isprintable() else "".join(
        " " if one in "\n\t\r" else one for one in text
        if one in "\n\t\r" or unicodedata.category(one)[0] != "C"
    )
    return kept if len(kept) <= LONGEST else kept[: LONGEST - len(CUT)] + CUT


@cache
def _known_letters() -> frozenset[int]:
    from fontTools.ttLib import TTFont

    regular = files("font_source_serif_pro") / "files" / "SourceSerifPro-Regular.ttf"
    with TTFont(BytesIO(regular.read_bytes()), lazy=True) as font:
        return frozenset(font.getBestCmap())


def spelt_out(text: str) -> str:
    """The text with every letter that the face has not written as its number: `[U+6A4B]`."""
    known = _known_letters()
    return "".join(
        one if ord(one) < 128 or ord(one) in known else f"[U+{ord(one):04X}]" for one in text
    )
