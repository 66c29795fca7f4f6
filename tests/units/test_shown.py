from fractions import Fraction

import pytest

from eyebar.units import Dimension, fraction_text, length_text, number_text, quantity_text


@pytest.mark.parametrize(
    ("inches", "nearest", "text"),
    [
        # By hand: 187.5 = 15 x 12 + 7 1/2; from 36 in on feet are written.
        (Fraction(375, 2), 64, "15 ft 7 1/2 in"),
        (180, 64, "15 ft"),
        (36, 64, "3 ft"),
        (Fraction(71, 2), 64, "35 1/2 in"),
        (Fraction(17, 32), 64, "17/32 in"),
        (0, 64, "0 in"),
        (-30, 64, "-30 in"),
        (-42, 64, "-3 ft 6 in"),
        # To the nearest sixteenth, 17/32 lies half-way and goes to the even one, 8/16.
        (Fraction(17, 32), 16, "1/2 in"),
        # Just under a foot rounds up to the whole of it.
        (Fraction(47999, 1000), 16, "4 ft"),
        (0.1, 16, "1/8 in"),
    ],
)
def test_a_length_is_shown_as_a_tape_reads(inches: Fraction, nearest: int, text: str) -> None:
    assert length_text(inches, nearest=nearest) == text


def test_a_number_has_its_thousands_marked_and_no_trailing_noughts() -> None:
    assert number_text(26000) == "26,000"
    assert number_text(Fraction(1, 3)) == "0.333"
    assert number_text(1.50) == "1.5"
    assert number_text(-0.0001) == "0"


def test_a_fraction_is_in_lowest_terms() -> None:
    assert fraction_text(Fraction(24, 64)) == "3/8"
    assert fraction_text(Fraction(-7, 2)) == "-3 1/2"


def test_a_weight_is_shown_in_the_unit_asked_for() -> None:
    # By hand: 32 lb/ft = 0.032 / 12 kip/in; 50 lb/ft3 = 0.05 / 1728 kip/in3.
    assert quantity_text(Fraction(32, 12000), Dimension.LINE_LOAD, unit="lb/ft") == "32 lb/ft"
    assert quantity_text(Fraction(50, 1728000), Dimension.DENSITY, unit="lb/ft3") == "50 lb/ft3"
    assert quantity_text(Fraction(53, 2), Dimension.STRESS) == "26.5 ksi"
    assert quantity_text(30, Dimension.LENGTH) == "30 in"
