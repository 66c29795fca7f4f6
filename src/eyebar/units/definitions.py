"""The units that are known: what each measures, its exact size, its other spellings.

Sizes are definitions, not findings, so they stand here as exact fractions. Inside: inch, kip, ksi,
kip/in3, kip/in, kip/in2, degree.
"""

import re
from collections.abc import Iterable, Mapping
from enum import StrEnum
from fractions import Fraction

from eyebar.errors import Unreadable, did_you_mean, nearest, with_article


class Dimension(StrEnum):
    """What a quantity is a measure of."""

    LENGTH = "length"
    AREA = "area"
    FORCE = "force"
    STRESS = "stress"
    ANGLE = "angle"
    DENSITY = "weight of a volume"
    LINE_LOAD = "weight along a length"
    SURFACE_LOAD = "weight over an area"


INSIDE: Mapping[Dimension, str] = {
    Dimension.LENGTH: "in",
    Dimension.AREA: "in2",
    Dimension.FORCE: "kip",
    Dimension.STRESS: "ksi",
    Dimension.ANGLE: "deg",
    Dimension.DENSITY: "kip/in3",
    Dimension.LINE_LOAD: "kip/in",
    Dimension.SURFACE_LOAD: "kip/in2",
}
"""The unit that each dimension has inside the program."""

EXAMPLES: Mapping[Dimension, str] = {
    Dimension.LENGTH: "3 1/2 in",
    Dimension.AREA: "12.5 in2",
    Dimension.FORCE: "1150 lb",
    Dimension.STRESS: "26 ksi",
    Dimension.ANGLE: "74 deg",
    Dimension.DENSITY: "50 lb/ft3",
    Dimension.LINE_LOAD: "32 lb/ft",
    Dimension.SURFACE_LOAD: "12 lb/ft2",
}
"""How each dimension is written, for the cures."""

POUND_IN_NEWTON = Fraction("4.4482216152605")
"""Exact by the definitions of the pound (0.45359237 kg) and of standard gravity."""
MILLIMETRE = Fraction(5, 127)
KILONEWTON = 1 / POUND_IN_NEWTON

UNITS: Mapping[str, tuple[Dimension, Fraction]] = {
    "in": (Dimension.LENGTH, Fraction(1)),
    "ft": (Dimension.LENGTH, Fraction(12)),
    "yd": (Dimension.LENGTH, Fraction(36)),
    "mi": (Dimension.LENGTH, Fraction(63360)),
    "mm": (Dimension.LENGTH, MILLIMETRE),
    "cm": (Dimension.LENGTH, MILLIMETRE * 10),
    "m": (Dimension.LENGTH, MILLIMETRE * 1000),
    "in2": (Dimension.AREA, Fraction(1)),
    "ft2": (Dimension.AREA, Fraction(144)),
    "mm2": (Dimension.AREA, MILLIMETRE**2),
    "lb": (Dimension.FORCE, Fraction(1, 1000)),
    "kip": (Dimension.FORCE, Fraction(1)),
    "ton": (Dimension.FORCE, Fraction(2)),
    "kN": (Dimension.FORCE, KILONEWTON),
    "ksi": (Dimension.STRESS, Fraction(1)),
    "psi": (Dimension.STRESS, Fraction(1, 1000)),
    "ton/in2": (Dimension.STRESS, Fraction(2)),
    "MPa": (Dimension.STRESS, KILONEWTON / 1000 / MILLIMETRE**2),
    "deg": (Dimension.ANGLE, Fraction(1)),
    "lb/ft3": (Dimension.DENSITY, Fraction(1, 1728000)),
    "lb/in3": (Dimension.DENSITY, Fraction(1, 1000)),
    "kip/ft3": (Dimension.DENSITY, Fraction(1, 1728)),
    "kip/in3": (Dimension.DENSITY, Fraction(1)),
    "lb/ft": (Dimension.LINE_LOAD, Fraction(1, 12000)),
    "lb/in": (Dimension.LINE_LOAD, Fraction(1, 1000)),
    "kip/ft": (Dimension.LINE_LOAD, Fraction(1, 12)),
    "kip/in": (Dimension.LINE_LOAD, Fraction(1)),
    "lb/ft2": (Dimension.SURFACE_LOAD, Fraction(1, 144000)),
    "kip/ft2": (Dimension.SURFACE_LOAD, Fraction(1, 144)),
    "kip/in2": (Dimension.SURFACE_LOAD, Fraction(1)),
}
"""Unit -> what it measures, and its size in the inside unit. A ton is 2,000 lb."""

_SPELLINGS: Mapping[str, str] = {
    '"': "in", "inch": "in", "inches": "in", "in.": "in",
    "'": "ft", "foot": "ft", "feet": "ft", "ft.": "ft",
    "yard": "yd", "yards": "yd", "mile": "mi", "miles": "mi",
    "lbs": "lb", "lb.": "lb", "lbs.": "lb", "pound": "lb", "pounds": "lb",
    "kips": "kip", "tons": "ton", "kn": "kN", "mpa": "MPa",
    "degree": "deg", "degrees": "deg", "°": "deg",
    "pcf": "lb/ft3", "psf": "lb/ft2", "plf": "lb/ft", "klf": "kip/ft",
    "lb/in2": "psi", "sq in": "in2", "sq in.": "in2", "sq ft": "ft2",
}
"""Other ways to write a unit, after `²`, `³`, `per` and capitals have been evened out."""

_POWERED = re.compile(r"(cu|sq)\.? (ft|in)\.?")
_POWERS: Mapping[str, str] = {"sq": "2", "cu": "3"}

GREATEST: Mapping[Dimension, tuple[Fraction, str]] = {
    Dimension.LENGTH: (Fraction(12 * 5280), "1 mi"),
    Dimension.AREA: (Fraction(10000), "10,000 in2"),
    Dimension.FORCE: (Fraction(20000), "20,000 kip"),
    Dimension.STRESS: (Fraction(50000), "50,000 ksi"),
    Dimension.ANGLE: (Fraction(360), "360 deg"),
    Dimension.DENSITY: (Fraction(1000, 1728000), "1,000 lb/ft3"),
    Dimension.LINE_LOAD: (Fraction(100, 12), "100 kip/ft"),
    Dimension.SURFACE_LOAD: (Fraction(10, 144), "10 kip/ft2"),
}
"""Beyond these a text is taken for a slip of the pen."""


def spelled_here(unit: str) -> str:
    """The unit in its own spelling here where it is known in another; else as it was written."""
    unit = re.sub(r"\s*(?:/|\bper\b)\s*", "/", unit.strip())
    if unit in UNITS:
        return unit
    above, slash, below = unit.lower().replace("^", "").partition("/")
    below = _POWERED.sub(lambda found: found[2] + _POWERS[found[1]], below)
    spelled = _SPELLINGS.get(above, above) + slash + _SPELLINGS.get(below, below)
    return _SPELLINGS.get(spelled, spelled)


def unit_size(text: str, unit: str, dimension: Dimension) -> Fraction:
    """The size of a unit in the inside unit of the dimension.

    Raises Unreadable, naming the whole `text`, for a unit that is not known or measures another
    thing.
    """
    spelled = spelled_here(unit)
    if spelled == "kip/in2" and dimension is Dimension.STRESS:
        spelled = "ksi"
    if spelled not in UNITS:
        near = nearest(spelled, _fitting(dimension, (*UNITS, *_SPELLINGS)))
        cure = f"did you mean '{near}'?" if near else did_you_mean("", _fitting(dimension, UNITS))
        raise Unreadable(text, f"has the unknown unit '{unit}'", cure)
    found, size = UNITS[spelled]
    if found is not dimension:
        wanted = f"here stands {with_article(dimension)}, {example(dimension)}"
        raise Unreadable(text, f"is {with_article(found)}", wanted)
    return size


def _fitting(dimension: Dimension, names: Iterable[str]) -> list[str]:
    """Those of the names that are units of the dimension, in whatever spelling."""
    return [name for name in names if UNITS[_SPELLINGS.get(name, name)][0] is dimension]


def example(dimension: Dimension) -> str:
    """How such a quantity is written: `like '3 1/2 in'`."""
    return f"like '{EXAMPLES[dimension]}'"
