"""Lengths, forces, stresses and weights as an engineer writes them, kept exact.

Inside: inch, kip, ksi, kip/in3, kip/in, kip/in2 and degree, as `fractions.Fraction`, so that what
was written is printed back and nothing is lost on the way in. The text is always kept.
"""

from eyebar.units.definitions import EXAMPLES, GREATEST, INSIDE, UNITS, Dimension
from eyebar.units.shown import fraction_text, length_text, number_text, quantity_text
from eyebar.units.written import Quantity, day, length, measure, pair, plain, quantity

__all__ = [
    "EXAMPLES",
    "GREATEST",
    "INSIDE",
    "UNITS",
    "Dimension",
    "Quantity",
    "day",
    "fraction_text",
    "length",
    "length_text",
    "measure",
    "number_text",
    "pair",
    "plain",
    "quantity",
    "quantity_text",
]
