"""Sheets of paper, and the scale that a truss is drawn to on them."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

UNITS_PER_INCH = 96.0
"""The sheet's unit is 1/96 inch: a screen that knows its size shows the sheet at its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """A sheet [in]: its width, the least height it is cut to, its margin, the most a truss is high.

    The height is cut to need, so that long trusses lie on long strips, as they did on a roll.
    """

    width_in: float
    least_height_in: float
    margin_in: float
    deepest_in: float
    height_in: float | None = None
    """Of a standard size: it is not cut."""
    name: str = ""
    """Of a standard size."""

    @property
    def height(self) -> float | None:
        """Height of a standard sheet in the sheet's unit; None where it is cut to need."""
        return None if self.height_in is None else self.height_in * UNITS_PER_INCH

    @property
    def said(self) -> str:
        """Its size in words, as in `where the sheet is ...`."""
        return self.name or f"{self.width_in:g} inches wide"

    @property
    def width(self) -> float:
        """Width in the sheet's unit."""
        return self.width_in * UNITS_PER_INCH

    def cut(self, height: float) -> float:
        """The height [1/96 in] that a sheet is cut to: the next half inch, not below the least.

        A standard sheet keeps its own.
        """
        if self.height is not None:
            return self.height
        half_inches = math.ceil(height / UNITS_PER_INCH * 2.0 - 1e-9)
        return max(half_inches / 2.0, self.least_height_in) * UNITS_PER_INCH

    @property
    def margin(self) -> float:
        """Margin in the sheet's unit."""
        return self.margin_in * UNITS_PER_INCH


SHEETS = tuple(
    Paper(width_in=width, least_height_in=11.0, margin_in=0.375, deepest_in=0.25 * width)
    for width in (17.0, 22.0, 28.0, 34.0, 44.0)
)
"""The widths that common printers and plotters take, narrowest first."""

FIELD_BOOK = Paper(width_in=4.25, least_height_in=5.5, margin_in=0.125, deepest_in=3.0)
"""A page of a field book; a telephone held upright shows it at its own size."""

_IN_INCHES_TO_THE_FOOT = (
    "1 1/2", "1", "3/4", "1/2", "3/8", "1/4", "3/16", "1/8", "3/32", "1/16",
)
_IN_FEET_TO_THE_INCH = (10, 12, 20, 24, 30, 40, 50, 60, 80, 100, 120, 150, 200, 300, 400, 500, 1000)


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """So many inches of paper to the foot, as a draughtsman says it."""

    inches_to_the_foot: Fraction
    said: str

    @property
    def units_per_inch(self) -> float:
        """Units of the sheet for one inch of the bridge."""
        return float(self.inches_to_the_foot) * UNITS_PER_INCH / 12.0

    @property
    def units_per_foot(self) -> float:
        """Units of the sheet for one foot of the bridge."""
        return float(self.inches_to_the_foot) * UNITS_PER_INCH


def _mixed(text: str) -> Fraction:
    return sum((Fraction(piece) for piece in text.split()), Fraction(0))


SCALES = tuple(sorted(
    (
        *(Scale(inches_to_the_foot=_mixed(text), said=f"{text} inch to the foot")
          for text in _IN_INCHES_TO_THE_FOOT),
        *(Scale(inches_to_the_foot=Fraction(1, feet), said=f"{feet} feet to the inch")
          for feet in _IN_FEET_TO_THE_INCH),
    ),
    key=lambda scale: -scale.inches_to_the_foot,
))
"""The scales of the drawing office, largest first."""


DETAIL_SCALES = tuple(
    Scale(inches_to_the_foot=Fraction(inches), said=said)
    for inches, said in ((24, "twice full size"), (12, "full size"), (6, "half size"),
                         (3, "quarter size"))
) + SCALES
"""Those of details besides, largest first."""


def drawing_scale(
    size_in: tuple[float, float], room: tuple[float, float], scales: Sequence[Scale] = SCALES
) -> Scale:
    """The largest scale at which a size of the bridge [in] fits the room on the sheet [units]."""
    for scale in scales:
        if all(
            size * scale.units_per_inch <= space + 1e-6
            for size, space in zip(size_in, room, strict=True)
        ):
            return scale
    return scales[-1]


def ruler_step_ft(scale: Scale, least: float) -> int:
    """The feet between the marks of the sheet's ruler, at least so many units apart."""
    for step in (1, 2, 5, 10, 20, 25, 50, 100, 200):
        if step * scale.units_per_foot >= least:
            return step
    return 500
