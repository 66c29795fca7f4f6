"""Lengths, forces, stresses and weights as an engineer writes them, kept exact.

Inside: inch, kip, ksi, kip/in3, kip/in, kip/in2, degree, all as `fractions.Fraction`, so that what
was written is printed back and nothing is lost on the way in. The text is always kept.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from fractions import Fraction

from eyebar.errors import Unreadable, did_you_mean


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

_UNITS: Mapping[str, tuple[Dimension, Fraction]] = {
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

_GREATEST: Mapping[Dimension, tuple[Fraction, str]] = {
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

_SUPERSCRIPTS = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789")
_SUBSCRIPTS = str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789")
_VULGAR: Mapping[str, str] = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5",
    "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅐": "1/7", "⅛": "1/8", "⅜": "3/8",
    "⅝": "5/8", "⅞": "7/8", "⅑": "1/9", "⅒": "1/10",
}
_EVEN = {
    **{ord(mark): "'" for mark in "′’‘´"},
    **{ord(mark): '"' for mark in "″”“"},
    **{ord(mark): "-" for mark in "−–‐‑"},
    **{ord(mark): " " for mark in "\u00a0\u2009\u202f\t"},
    ord("⁄"): "/", ord("×"): "x", ord("²"): "2", ord("³"): "3",
    **{ord(mark): f" {text}" for mark, text in _VULGAR.items()},
}
_STACKED = re.compile(r"([⁰¹²³⁴⁵⁶⁷⁸⁹]+)[⁄/]([₀₁₂₃₄₅₆₇₈₉]+)")

_WHOLE = r"(?:\d{1,3}(?:,\d{3})+|\d+)"
_NUMBER = rf"(?:{_WHOLE}[ -]+\d+ ?/ ?\d+|\d+ ?/ ?\d+|{_WHOLE}(?:\.\d*)?|\.\d+)"
_QUANTITY = re.compile(rf"(?P<sign>[-+] ?)?(?P<number>{_NUMBER}) ?(?P<unit>[^\d\s.,/-].*)?")
_FEET_AND_INCHES = re.compile(
    rf"(?P<sign>[-+] ?)?(?P<feet>{_NUMBER}) ?(?:ft\.?|feet|foot|') ?-? ?"
    rf"(?P<inches>{_NUMBER}) ?(?:inches|inch|in\.?|\")",
    re.IGNORECASE,
)
_NOT_FINITE = re.compile(r"[-+]?\.?(nan|inf|infinity|∞)\b.*", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Quantity:
    """A measure as it was written, and its exact size in the inside unit of its dimension."""

    text: str
    exact: Fraction
    dimension: Dimension

    @property
    def number(self) -> float:
        """The size in the inside unit (`unit`)."""
        return float(self.exact)

    @property
    def unit(self) -> str:
        """The inside unit of the dimension: in, in2, kip, ksi, deg, kip/in3, kip/in, kip/in2."""
        return INSIDE[self.dimension]

    def in_unit(self, unit: str) -> float:
        """The size in another unit of the same dimension, `in_unit("ft")`; raises Unreadable."""
        return float(self.exact / _unit(self.text, unit, self.dimension)[1])

    def __str__(self) -> str:
        return self.text


def even(text: str) -> str:
    """The text with typographic fractions, primes, dashes and spaces replaced by plain ones."""
    if not text.isascii():
        text = _STACKED.sub(
            lambda found: f" {found[1].translate(_SUPERSCRIPTS)}/{found[2].translate(_SUBSCRIPTS)}",
            text,
        ).translate(_EVEN)
    text = text.replace("''", '"')
    return " ".join(text.split())


def quantity(
    text: str, dimension: Dimension, *, signed: bool = False, greatest: str = ""
) -> Quantity:
    """The measure that a text states, of the dimension that is wanted.

    `signed` allows values below zero; `greatest` (a quantity in words, `10 ft`) is a limit tighter
    than the one for slips of the pen. Raises Unreadable with the rule and the cure.
    """
    plain = even(text)
    exact = _feet_and_inches(text, plain) if dimension is Dimension.LENGTH else None
    if exact is None:
        exact = _number_and_unit(text, plain, dimension)
    if exact < 0 and not signed:
        raise Unreadable(text, "is below zero", f"a {dimension} cannot be negative here")
    limit, words = _GREATEST[dimension]
    if greatest:
        limit, words = quantity(greatest, dimension).exact, greatest
    if abs(exact) > limit:
        raise Unreadable(
            text, f"is more than {words}, which no bridge of this kind has",
            "look for a slip of the pen in the number or its unit",
        )
    return Quantity(text, exact, dimension)


def length(text: str) -> Quantity:
    """A length not below zero [in]; raises Unreadable."""
    return quantity(text, Dimension.LENGTH)


def force(text: str) -> Quantity:
    """A force or weight not below zero [kip]; raises Unreadable."""
    return quantity(text, Dimension.FORCE)


def stress(text: str) -> Quantity:
    """A stress not below zero [ksi]; raises Unreadable."""
    return quantity(text, Dimension.STRESS)


def measure(text: str, *dimensions: Dimension) -> Quantity:
    """A measure of whichever of the dimensions its unit belongs to; raises Unreadable.

    For what may be given in more than one way, as a deck's weight by volume or by area.
    """
    found = _QUANTITY.fullmatch(even(text))
    unit = _spelled(found["unit"] or "") if found else ""
    for dimension in dimensions:
        if unit in _UNITS and _UNITS[unit][0] is dimension:
            return quantity(text, dimension)
    if unit in _UNITS:
        wanted = " or ".join(f"a {dimension}, like {EXAMPLES[dimension]!r}"
                             for dimension in dimensions)
        raise Unreadable(text, f"is a {_UNITS[unit][0]}", f"here stands {wanted}")
    return quantity(text, dimensions[0])


def pair(text: str) -> tuple[str, str]:
    """The two sides of a size `2 1/2 in x 3/4 in`, as written; raises Unreadable."""
    sides = re.split(r"\s*[x×X]\s*", text.strip())
    if len(sides) != 2 or not all(sides):
        raise Unreadable(text, "is not a size of two sides", "write it like '2 1/2 in x 3/4 in'")
    return sides[0], sides[1]


def day(text: str) -> date:
    """A date written year-month-day; raises Unreadable."""
    try:
        if re.fullmatch(r"\d{4}-\d{2}-\d{2}", text):
            return date.fromisoformat(text)
    except ValueError as impossible:
        raise Unreadable(
            text, "is no day of the calendar", "write it like '2021-06-15'"
        ) from impossible
    raise Unreadable(text, "is not a date", "write it year-month-day, like '2021-06-15'")


def converted(number: float, unit: str, into: str) -> float:
    """The number turned from one unit into another of the same dimension; raises Unreadable."""
    dimension, size = _UNITS[_known(unit)]
    return number * float(size / _unit(str(number), into, dimension)[1])


def number_text(exact: Fraction | float, *, places: int = 3) -> str:
    """A number with thousands marked and no trailing noughts, rounded to `places` decimals."""
    text = f"{round(Fraction(exact), places):,.{places}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text


def fraction_text(exact: Fraction | float, *, nearest: int = 64) -> str:
    """A number as whole and fraction, `7 1/2`, to the nearest 1/`nearest`."""
    rounded = Fraction(round(Fraction(exact) * nearest), nearest)
    whole, rest = divmod(abs(rounded), 1)
    parts = [str(whole)] if whole or not rest else []
    if rest:
        parts.append(f"{rest.numerator}/{rest.denominator}")
    return ("-" if rounded < 0 else "") + " ".join(parts)


def length_text(inches: Fraction | float, *, nearest: int = 64) -> str:
    """A length [in] for people: `7 1/2 in`, and from 3 ft on `15 ft 7 1/2 in`."""
    rounded = Fraction(round(Fraction(inches) * nearest), nearest)
    if abs(rounded) < 36:
        return f"{fraction_text(rounded, nearest=nearest)} in"
    feet, rest = divmod(abs(rounded), 12)
    sign = "-" if rounded < 0 else ""
    tail = f" {fraction_text(rest, nearest=nearest)} in" if rest else ""
    return f"{sign}{feet} ft{tail}"


def quantity_text(exact: Fraction | float, dimension: Dimension, unit: str = "") -> str:
    """A size [inside unit] written in a unit, `32 lb/ft`; a length without unit in feet, inches."""
    if dimension is Dimension.LENGTH and not unit:
        return length_text(exact)
    unit = unit or INSIDE[dimension]
    return f"{number_text(Fraction(exact) / _unit('', unit, dimension)[1])} {unit}"


def _feet_and_inches(text: str, plain: str) -> Fraction | None:
    """Inches of a length in feet and inches; None when it is not written so."""
    found = _FEET_AND_INCHES.fullmatch(plain)
    if not found:
        return None
    feet, inches = _number(text, found["feet"]), _number(text, found["inches"])
    if feet.denominator != 1:
        raise Unreadable(text, "has both a part of a foot and inches", "write whole feet")
    if inches >= 12:
        raise Unreadable(text, "has a foot or more in its inches", "write '15 ft 7 1/2 in'")
    total = feet * 12 + inches
    return -total if (found["sign"] or "").strip() == "-" else total


def _number_and_unit(text: str, plain: str, dimension: Dimension) -> Fraction:
    """Inside size of `number unit`; raises Unreadable."""
    example = EXAMPLES[dimension]
    if _NOT_FINITE.fullmatch(plain):
        raise Unreadable(text, "is not a number", f"write it like '{example}'")
    found = _QUANTITY.fullmatch(plain)
    if not found:
        raise Unreadable(text, f"is not a {dimension}", f"write it like '{example}'")
    size = _number(text, found["number"])
    if not found["unit"]:
        suggested = f"{plain} {example.rsplit(' ', 1)[1]}"
        raise Unreadable(text, "has no unit", f"write it like '{suggested}'")
    size *= _unit(text, found["unit"], dimension)[1]
    return -size if (found["sign"] or "").strip() == "-" else size


def _number(text: str, written: str) -> Fraction:
    """The exact value of `7 1/2`, `7-1/2`, `17/32`, `26,000` or `0.75`."""
    if "/" not in written:
        return Fraction(written.replace(",", ""))
    pieces = re.fullmatch(rf"(?:({_WHOLE})[ -]+)?(\d+) ?/ ?(\d+)", written)
    if pieces is None or int(pieces[3]) == 0:
        raise Unreadable(text, "has a fraction with nothing below its line", "write '7 1/2 in'")
    value = Fraction(int(pieces[2]), int(pieces[3]))
    if pieces[1]:
        if value >= 1:
            raise Unreadable(
                text, "has a fraction of one or more after a whole number", "write '7 1/2 in'"
            )
        value += int(pieces[1].replace(",", ""))
    return value


def _spelled(unit: str) -> str:
    """The unit in its own spelling here, if it is known in any."""
    unit = unit.strip().replace(" per ", "/")
    if unit in _UNITS:
        return unit
    lower = re.sub(r"\s*/\s*", "/", unit.lower()).replace("^", "")
    lower = _SPELLINGS.get(lower, lower)
    upper, _, below = lower.partition("/")
    joined = _SPELLINGS.get(upper, upper) + (f"/{below}" if below else "")
    below_known = re.sub(r"^(cu|sq) (ft|in)\.?$", _powered, below)
    joined = f"{_SPELLINGS.get(upper, upper)}/{below_known}" if below else joined
    return _SPELLINGS.get(joined, joined)


def _powered(found: re.Match[str]) -> str:
    """`cu ft` -> `ft3`, `sq in` -> `in2`."""
    return found[2] + ("3" if found[1] == "cu" else "2")


def _known(unit: str) -> str:
    """The unit's spelling here; raises Unreadable for one that is not known."""
    spelled = _spelled(unit)
    if spelled not in _UNITS:
        raise Unreadable(unit, "is not a unit known here", did_you_mean(spelled, _UNITS))
    return spelled


def _unit(text: str, unit: str, dimension: Dimension) -> tuple[Dimension, Fraction]:
    """What the unit measures and its inside size; raises Unreadable for one of another kind."""
    spelled = _spelled(unit)
    fitting = [name for name, (kind, _) in _UNITS.items() if kind is dimension]
    if spelled not in _UNITS:
        raise Unreadable(
            text or unit, f"has the unknown unit {unit!r}", did_you_mean(spelled, fitting)
        )
    found = _UNITS[spelled]
    if found[0] is not dimension:
        raise Unreadable(
            text or unit, f"is a {found[0]}",
            f"here stands a {dimension}, like {EXAMPLES[dimension]!r}",
        )
    return found
