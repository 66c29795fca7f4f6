"""Texts read into exact quantities: `15'-7 1/2"`, `26,000 psi`, `50 lb/ft3`, `74 deg`."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from eyebar.errors import Unreadable, with_article
from eyebar.units.definitions import (
    EXAMPLES,
    GREATEST,
    INSIDE,
    UNITS,
    Dimension,
    example,
    spelled_here,
    unit_size,
)

LONGEST_TEXT = 80
"""Characters of a quantity; more is taken for something else."""

_SUPERSCRIPTS = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789")
_SUBSCRIPTS = str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789")
_VULGAR: Mapping[str, str] = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5",
    "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅐": "1/7", "⅛": "1/8", "⅜": "3/8",
    "⅝": "5/8", "⅞": "7/8", "⅑": "1/9", "⅒": "1/10",
}
_PLAIN: Mapping[int, str] = {
    **dict.fromkeys(map(ord, "\u2032\u2019\u2018\u00b4"), "'"),  # prime, curly quotes, acute
    **dict.fromkeys(map(ord, "\u2033\u201d\u201c"), '"'),  # double prime, curly quotes
    **dict.fromkeys(map(ord, "\u2212\u2013\u2010\u2011"), "-"),  # minus, dash, hyphens
    **dict.fromkeys(map(ord, "\u00a0\u2009\u202f\t"), " "),  # spaces that do not break
    ord("\u2044"): "/", ord("\u00d7"): "x", ord("²"): "2", ord("³"): "3",
    **{ord(mark): f" {text}" for mark, text in _VULGAR.items()},
}
_STACKED = re.compile("([⁰¹²³⁴⁵⁶⁷⁸⁹]+)[\u2044/]([₀₁₂₃₄₅₆₇₈₉]+)")

_WHOLE = r"(?:\d{1,3}(?:,\d{3})+|\d+)"
_NUMBER = rf"(?:{_WHOLE}[ -]\d+ ?/ ?\d+|\d+ ?/ ?\d+|{_WHOLE}(?:\.\d*)?|\.\d+)"
_MIXED = re.compile(rf"(?:({_WHOLE})[ -])?(\d+) ?/ ?(\d+)", re.ASCII)
_QUANTITY = re.compile(
    rf"(?P<sign>[-+] ?)?(?P<number>{_NUMBER})(?: ?(?P<unit>[^\d\s.,/-].*))?", re.ASCII
)
_FEET_AND_INCHES = re.compile(
    rf"(?P<sign>[-+] ?)?(?P<feet>{_NUMBER}) ?(?:ft\.?|feet|foot|') ?-? ?"
    rf"(?P<inches>{_NUMBER}) ?(?P<unit>inches|inch|in\.?|\")?",
    re.ASCII | re.IGNORECASE,
)
_NOT_FINITE = re.compile(r"[-+]?\.?(?:nan|inf|infinity|∞)\b.*", re.IGNORECASE)


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
        return float(self.exact / unit_size(self.text, unit, self.dimension))

    def __str__(self) -> str:
        return self.text


def plain(text: str) -> str:
    """The text with typographic fractions, primes, dashes and spaces replaced by plain ones."""
    if not text.isascii():
        text = _STACKED.sub(
            lambda found: f" {found[1].translate(_SUPERSCRIPTS)}/{found[2].translate(_SUBSCRIPTS)}",
            text,
        ).translate(_PLAIN)
    return " ".join(text.replace("''", '"').split())


def quantity(
    text: str, dimension: Dimension, *, signed: bool = False, greatest: str = ""
) -> Quantity:
    """The measure of the wanted dimension that a text states.

    `signed` allows values below zero; `greatest` (itself a text, `10 ft`) is a limit tighter than
    the one for slips of the pen. Raises Unreadable with the rule and the cure.
    """
    even = plain(text)
    if len(even) > LONGEST_TEXT:
        raise _unlike(text, dimension)
    exact = _feet_and_inches(text, even) if dimension is Dimension.LENGTH else None
    if exact is None:
        exact = _number_and_unit(text, even, dimension)
    if exact < 0 and not signed:
        cure = f"{with_article(dimension)} cannot be negative here"
        raise Unreadable(text, "is below zero", cure)
    limit, words = GREATEST[dimension]
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


def measure(text: str, *dimensions: Dimension) -> Quantity:
    """A measure of whichever of the dimensions its unit belongs to; raises Unreadable.

    For what may be given in more than one way, as a deck's weight by volume or by area.
    """
    found = _QUANTITY.fullmatch(plain(text))
    kind = UNITS.get(spelled_here((found and found["unit"]) or ""), (None,))[0]
    if kind is None or kind in dimensions:
        return quantity(text, kind or dimensions[0])
    wanted = " or ".join(
        f"{with_article(dimension)}, {example(dimension)}" for dimension in dimensions
    )
    raise Unreadable(text, f"is {with_article(kind)}", f"here stands {wanted}")


def pair(text: str) -> tuple[str, str]:
    """The two sides of a size `2 1/2 in x 3/4 in`, as written; raises Unreadable."""
    sides = [side.strip() for side in re.split(r"[xX\u00d7]", text)]
    if len(sides) != 2 or not all(sides):
        raise Unreadable(text, "is not a size of two sides", "write it like '2 1/2 in x 3/4 in'")
    return sides[0], sides[1]


def day(text: str) -> date:
    """A date written year-month-day; raises Unreadable."""
    if not re.fullmatch(r"\d{4}-\d{2}-\d{2}", text, re.ASCII):
        raise Unreadable(text, "is not a date", "write it year-month-day, like '2021-06-15'")
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise Unreadable(text, "is no day of the calendar", "look at its month and day") from None


def _unlike(text: str, dimension: Dimension) -> Unreadable:
    """The refusal of a text that is no measure of this dimension."""
    return Unreadable(text, f"is not {with_article(dimension)}", f"write it {example(dimension)}")


def _feet_and_inches(text: str, even: str) -> Fraction | None:
    """Inches of a length in feet and inches; None when it is not written so."""
    found = _FEET_AND_INCHES.fullmatch(even)
    if not found:
        return None
    feet, inches = _number(text, found["feet"]), _number(text, found["inches"])
    if not found["unit"]:
        raise Unreadable(text, "has no unit behind its inches", "write it like '15 ft 7 1/2 in'")
    if feet.denominator != 1:
        raise Unreadable(text, "has both a part of a foot and inches", "write whole feet")
    if inches >= 12:
        raise Unreadable(text, "has a foot or more in its inches", "write it like '15 ft 7 1/2 in'")
    return _signed(found["sign"], feet * 12 + inches)


def _number_and_unit(text: str, even: str, dimension: Dimension) -> Fraction:
    """Inside size of `number unit`; raises Unreadable."""
    if _NOT_FINITE.fullmatch(even):
        raise Unreadable(text, "is not a finite number", f"write it {example(dimension)}")
    found = _QUANTITY.fullmatch(even)
    if not found:
        raise _unlike(text, dimension)
    size = _number(text, found["number"])
    if not found["unit"]:
        unit = EXAMPLES[dimension].rsplit(" ", 1)[1]
        raise Unreadable(text, "has no unit", f"write it like '{even} {unit}'")
    return _signed(found["sign"], size * unit_size(text, found["unit"], dimension))


def _signed(sign: str | None, size: Fraction) -> Fraction:
    return -size if sign and "-" in sign else size


def _number(text: str, written: str) -> Fraction:
    """The exact value of `7 1/2`, `7-1/2`, `17/32`, `26,000` or `0.75`; raises Unreadable."""
    pieces = _MIXED.fullmatch(written)
    if not pieces:
        return Fraction(written.replace(",", ""))
    whole, above, below = pieces[1], int(pieces[2]), int(pieces[3])
    if below == 0:
        raise Unreadable(text, "divides by zero", "write its fraction like '7 1/2 in'")
    if whole and above >= below:
        raise Unreadable(text, "has a fraction of one or more after a whole number",
                         "write it like '7 1/2 in'")
    return Fraction(above, below) + int((whole or "0").replace(",", ""))
