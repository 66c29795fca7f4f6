"""Units and dimensions, as far as equations need them.

Everything is measured in kip, inch, second and dollar; a unit is a dimension and a factor to these.
An angle is a plain number. Temperature does not occur.
"""

import math
import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache


@dataclass(frozen=True, slots=True)
class Dimension:
    """Exponents of force, length, time and money."""

    force: Fraction = Fraction(0)
    length: Fraction = Fraction(0)
    time: Fraction = Fraction(0)
    money: Fraction = Fraction(0)

    def __mul__(self, other: "Dimension") -> "Dimension":
        return Dimension(
            self.force + other.force, self.length + other.length,
            self.time + other.time, self.money + other.money,
        )

    def __truediv__(self, other: "Dimension") -> "Dimension":
        return self * other ** Fraction(-1)

    def __pow__(self, exponent: Fraction) -> "Dimension":
        return Dimension(
            self.force * exponent, self.length * exponent,
            self.time * exponent, self.money * exponent,
        )

    def __str__(self) -> str:
        pairs = (
            ("kip", self.force), ("in", self.length), ("s", self.time), ("dollar", self.money),
        )
        return " ".join(f"{name}^{power}" for name, power in pairs if power) or "1"


NUMBER = Dimension()
"""The dimension of a plain number."""

_FORCE = Dimension(force=Fraction(1))
_LENGTH = Dimension(length=Fraction(1))
_TIME = Dimension(time=Fraction(1))
_MONEY = Dimension(money=Fraction(1))
_STRESS = Dimension(force=Fraction(1), length=Fraction(-2))
_YEAR = 365.25 * 24 * 3600

UNITS: dict[str, tuple[Dimension, float]] = {
    "1": (NUMBER, 1.0), "rad": (NUMBER, 1.0), "deg": (NUMBER, math.pi / 180),
    "kip": (_FORCE, 1.0), "lb": (_FORCE, 0.001), "ton": (_FORCE, 2.0),
    "in": (_LENGTH, 1.0), "ft": (_LENGTH, 12.0), "mile": (_LENGTH, 63360.0),
    "ksi": (_STRESS, 1.0), "psi": (_STRESS, 0.001),
    "s": (_TIME, 1.0), "hour": (_TIME, 3600.0), "day": (_TIME, 86400.0), "year": (_TIME, _YEAR),
    "mph": (_LENGTH / _TIME, 63360.0 / 3600.0), "Hz": (NUMBER / _TIME, 1.0),
    "dollar": (_MONEY, 1.0),
}
"""Unit -> (dimension, factor to kip, inch, second and dollar)."""

UNIT_WORD = "(?:" + "|".join(sorted((w for w in UNITS if w != "1"), key=len, reverse=True)) + ")"
_PIECE = re.compile(rf"({UNIT_WORD}|1)\^?(\d?)$")


@cache
def unit(text: str) -> tuple[Dimension, float]:
    """Dimension and factor of a unit such as `in4`, `kip in`, `kip/ft`, `1/year`.

    Everything after a stroke divides. Raises ValueError on an unknown word.
    """
    dimension, factor = NUMBER, 1.0
    for place, group in enumerate(text.split("/")):
        for word in re.split(r"[ *]+", group.strip()):
            match = _PIECE.match(word)
            if match is None:
                raise ValueError(f"unknown unit {word!r} in {text!r}")
            base, base_factor = UNITS[match[1]]
            power = int(match[2] or 1) * (1 if place == 0 else -1)
            dimension *= base ** Fraction(power)
            factor *= base_factor**power
    return dimension, factor
