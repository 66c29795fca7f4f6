"""How figures are rounded for people.

What restricts is rounded to the safe side: a limit goes down to the whole ton, and a factor under 1
is never shown as 1.
"""

import math
from decimal import ROUND_FLOOR, Decimal

NOTHING = "-"
"""What stands where there is no figure."""


def factor(value: float | None) -> str:
    """A rating factor [1] to two decimals, nearest; more where 0.998 would else read 1.00."""
    if value is None:
        return NOTHING
    decimals = 2
    while value < 1.0 <= round(value, decimals) and decimals < 9:
        decimals += 1
    return _fixed(value, decimals)


def used(value: float) -> str:
    """What of a limit is used [1], to two decimals."""
    return _fixed(value, 2)


def limit(tons: float) -> str:
    """The tons [ton] of a limit, down to the whole ton."""
    return str(math.floor(tons))


def safe_tons(tons: float | None) -> str:
    """A safe load [ton] before it is made a limit: two decimals, down; 2.999 is not 3.00."""
    if tons is None:
        return NOTHING
    return str(Decimal(repr(tons)).quantize(Decimal("0.01"), rounding=ROUND_FLOOR))


def tons(value: float | None) -> str:
    """A weight, or a factor times a weight [ton], to one decimal."""
    return NOTHING if value is None else _fixed(value, 1)


def kip(value: float | None) -> str:
    """A force [kip] to one decimal."""
    return NOTHING if value is None else _fixed(value, 1)


def feet(value: float) -> str:
    """A station or a length along the road [ft] to one decimal."""
    return _fixed(value, 1)


def plain(value: float) -> str:
    """A figure that someone wrote down (an axle, a spacing, a value's row): no trailing zeros."""
    return f"{value:.6g}"


def capacity(value: float | None, unit: str) -> str:
    """A capacity in its unit: kip to one decimal, stresses and ratios to two."""
    if value is None:
        return NOTHING
    return f"{_fixed(value, 1)} kip" if unit == "kip" else f"{_fixed(value, 2)} {unit}"


def amount(value: float | None, unit: str) -> str:
    """A force [kip] to one decimal; a stress [ksi] to two, with its unit."""
    if value is None or unit != "ksi":
        return kip(value)
    return f"{_fixed(value, 2)} ksi"


def _fixed(value: float, decimals: int) -> str:
    shown = f"{value:.{decimals}f}"
    return shown.removeprefix("-") if float(shown) == 0.0 else shown
