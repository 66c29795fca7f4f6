"""The standard sizes of sheets, lying, and which of them a drawing is put on."""

from collections.abc import Sequence

from eyebar.drawings.paper import FIELD_BOOK, Paper
from eyebar.errors import Unknown, nearest

MILLIMETRES_IN_AN_INCH = 25.4
_IN_INCHES = {
    "ANSI A": (11.0, 8.5), "ANSI B": (17.0, 11.0), "ANSI C": (22.0, 17.0),
    "ANSI D": (34.0, 22.0), "ANSI E": (44.0, 34.0),
    "ARCH A": (12.0, 9.0), "ARCH B": (18.0, 12.0), "ARCH C": (24.0, 18.0),
    "ARCH D": (36.0, 24.0), "ARCH E1": (42.0, 30.0), "ARCH E": (48.0, 36.0),
}
"""ANSI/ASME Y14.1, and the sizes of architects."""
_IN_MILLIMETRES = {
    "A4": (297.0, 210.0), "A3": (420.0, 297.0), "A2": (594.0, 420.0), "A1": (841.0, 594.0),
    "A0": (1189.0, 841.0),
}
"""ISO 216 and ISO 5457."""


def _paper(name: str, width_in: float, height_in: float) -> Paper:
    margin = 0.375 if width_in < 30.0 else 0.5
    return Paper(
        width_in=width_in, least_height_in=height_in, margin_in=margin,
        deepest_in=0.45 * height_in, height_in=height_in, name=name,
    )


STANDARD = {
    **{name: _paper(name, *size) for name, size in _IN_INCHES.items()},
    **{
        name: _paper(name, *(side / MILLIMETRES_IN_AN_INCH for side in size))
        for name, size in _IN_MILLIMETRES.items()
    },
}
"""Name -> sheet."""
FREE = tuple(STANDARD[name] for name in ("ANSI A", "ANSI B", "ANSI C", "ANSI D", "ANSI E"))
"""The sheets tried where none is asked for, smallest first."""


def sheets_of(size: str | None, *, narrow: bool = False) -> Sequence[Paper]:
    """The sheets to try: that of a size, a page of the field book, or all of one series.

    Raises Unknown for a size that is no standard.
    """
    if narrow:
        return (FIELD_BOOK,)
    if size is None:
        return FREE
    known = {name.lower().replace(" ", ""): one for name, one in STANDARD.items()}
    asked = size.lower().replace(" ", "").replace("-", "")
    if asked not in known:
        raise Unknown("size of sheet", size, near=nearest(size, STANDARD))
    return (known[asked],)
