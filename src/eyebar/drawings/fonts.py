"""The one face of lettering: its measures, and the letters used put into the drawing itself.

Source Serif Pro (SIL Open Font License) comes inside a package that is installed with eyebar, so
that every machine measures and shows the same letters.
"""

import base64
import io
import unicodedata
from enum import StrEnum
from functools import cache
from importlib.resources import files
from threading import RLock
from typing import Any

FAMILY = "Source Serif Pro"


class Face(StrEnum):
    """The three cuts that a sheet is lettered in; the value is the file's name."""

    UPRIGHT = "SourceSerifPro-Regular"
    SLANTED = "SourceSerifPro-It"
    STRONG = "SourceSerifPro-Semibold"


STYLES = {
    Face.UPRIGHT: ("normal", "400"),
    Face.SLANTED: ("italic", "400"),
    Face.STRONG: ("normal", "600"),
}
"""Style and weight of each face, as style sheets name them."""

FOREIGN_ADVANCE = 0.62
"""Width [em] of a letter that the face has not: another face will show it, squeezed to this."""
FOREIGN_BOUNDS = (-0.3, 1.0)
"""How low and how high [em] it is taken to reach."""


def advance(face: Face, letter: str) -> float:
    """How far a letter moves the pen on [em]."""
    if letter in _letters(face):
        return _measured(face, letter)[0]
    if unicodedata.combining(letter):
        return 0.0
    return 1.0 if unicodedata.east_asian_width(letter) in "WF" else FOREIGN_ADVANCE


def bounds(face: Face, letter: str) -> tuple[float, float]:
    """How low (below zero: under the line) and how high a letter's ink reaches [em]."""
    if letter in _letters(face):
        return _measured(face, letter)[1:]
    return FOREIGN_BOUNDS


def embedded(face: Face, letters: str) -> str:
    """A `data:` address that holds the face's shapes of these letters, and no more."""
    from fontTools import subset

    options = subset.Options(
        hinting=False, layout_features=[], name_IDs=[0, 1, 2, 13, 14], notdef_outline=True,
        recalc_timestamp=False, drop_tables=[*subset.Options().drop_tables, "GDEF", "GPOS", "GSUB"],
    )
    font = _font(face)
    chosen = subset.Subsetter(options)
    chosen.populate(unicodes=[ord(letter) for letter in letters])
    chosen.subset(font)
    written = io.BytesIO()
    font.save(written, reorderTables=False)
    return f"data:font/ttf;base64,{base64.b64encode(written.getvalue()).decode('ascii')}"


def _font(face: Face) -> Any:
    """The face's file, opened afresh: a subset is cut out of it in place."""
    from fontTools.ttLib import TTFont

    file = files("font_source_serif_pro") / "files" / f"{face.value}.ttf"
    return TTFont(io.BytesIO(file.read_bytes()), recalcTimestamp=False, lazy=True)


READING = RLock()
"""Held while an opened face is read: it reads a table when that is first asked for, and shows it
half read to whoever asks in that moment. Pages are drawn several at once."""


@cache
def _opened(face: Face) -> Any:
    return _font(face)


@cache
def _letters(face: Face) -> dict[str, str]:
    """Letter -> name of its shape."""
    with READING:
        return {chr(code): name for code, name in _opened(face).getBestCmap().items()}


@cache
def _measured(face: Face, letter: str) -> tuple[float, float, float]:
    """Advance, and how low and how high the ink of a letter reaches [em]."""
    with READING:
        font, name = _opened(face), _letters(face)[letter]
        em = float(font["head"].unitsPerEm)
        shape = font["glyf"][name]
        low, high = (shape.yMin, shape.yMax) if shape.numberOfContours else (0, 0)
        return font["hmtx"][name][0] / em, low / em, high / em
