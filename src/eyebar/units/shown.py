"""Quantities for people: fractions of an inch, feet and inches, decimals with thousands marked."""

from fractions import Fraction

from eyebar.units.definitions import INSIDE, Dimension, unit_size

FROM_HERE_IN_FEET = 36
"""Inches from which a length is written in feet and inches."""


def number_text(exact: Fraction | float, *, places: int = 3) -> str:
    """A number with thousands marked and no trailing noughts, rounded to `places` decimals."""
    text = f"{float(round(Fraction(exact), places)):,.{places}f}"
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
    if abs(rounded) < FROM_HERE_IN_FEET:
        return f"{fraction_text(rounded, nearest=nearest)} in"
    feet, rest = divmod(abs(rounded), 12)
    sign = "-" if rounded < 0 else ""
    tail = f" {fraction_text(rest, nearest=nearest)} in" if rest else ""
    return f"{sign}{feet} ft{tail}"


def quantity_text(
    exact: Fraction | float, dimension: Dimension, *, unit: str = "", places: int = 3
) -> str:
    """A size [inside unit of its dimension] written in a unit: `32 lb/ft`.

    Without a unit, a length in feet and inches, anything else in its inside unit. Raises
    Unreadable for a unit of another dimension.
    """
    if dimension is Dimension.LENGTH and not unit:
        return length_text(exact)
    unit = unit or INSIDE[dimension]
    size = Fraction(exact) / unit_size(unit, unit, dimension)
    return f"{number_text(size, places=places)} {unit}"
