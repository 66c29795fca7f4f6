from fractions import Fraction

import pytest

from eyebar.errors import Unreadable
from eyebar.units import Dimension, day, length, measure, pair, quantity

# Expected sizes are by hand: 15 ft 7 1/2 in = 15 x 12 + 7.5 = 187.5 in, and so on.
LENGTHS = [
    ("15 ft 7 1/2 in", Fraction(375, 2)),
    ("15'-7 1/2\"", Fraction(375, 2)),
    ("15'7 1/2\"", Fraction(375, 2)),
    ("15 feet 7 1/2 inches", Fraction(375, 2)),
    ("15 ft-7 1/2 in", Fraction(375, 2)),
    ("15\u2032-7\u00bd\u2033", Fraction(375, 2)),
    ("15\u2019 7\u00a01/2\u201d", Fraction(375, 2)),
    ("15' 7 1/2''", Fraction(375, 2)),
    ("15 ft", Fraction(180)),
    ("15.625 ft", Fraction(375, 2)),
    ("3 1/2 in", Fraction(7, 2)),
    ("3-1/2 in", Fraction(7, 2)),
    ("3\u00bd in", Fraction(7, 2)),
    ("17/32 in", Fraction(17, 32)),
    ("\u215c in", Fraction(3, 8)),
    ("\u2077\u2044\u2081\u2086 in", Fraction(7, 16)),
    ("2\u2077\u2044\u2081\u2086 in", Fraction(39, 16)),
    ("2 7\u204416 in", Fraction(39, 16)),
    ("0.75 in", Fraction(3, 4)),
    (".75 in", Fraction(3, 4)),
    ("1,200.5 in", Fraction(2401, 2)),
    ("25.4 mm", Fraction(1)),
    ("0 in", Fraction(0)),
]


@pytest.mark.parametrize(("text", "inches"), LENGTHS)
def test_a_length_is_read_however_a_field_book_writes_it(text: str, inches: Fraction) -> None:
    found = length(text)
    assert found.exact == inches
    assert found.text == text
    assert found.unit == "in"


# By hand: 26,000 lb = 26 kip; a ton is 2,000 lb; 1 ft3 = 1,728 in3; 1 ft2 = 144 in2.
OTHERS = [
    ("26 ksi", Dimension.STRESS, Fraction(26)),
    ("26,000 psi", Dimension.STRESS, Fraction(26)),
    ("26,000 lb/in2", Dimension.STRESS, Fraction(26)),
    ("26,000 lbs per sq. in.", Dimension.STRESS, Fraction(26)),
    ("26 kip/in\u00b2", Dimension.STRESS, Fraction(26)),
    ("1150 lb", Dimension.FORCE, Fraction(23, 20)),
    ("6 tons", Dimension.FORCE, Fraction(12)),
    ("3 kips", Dimension.FORCE, Fraction(3)),
    ("32 lb/ft", Dimension.LINE_LOAD, Fraction(32, 12000)),
    ("32 pounds per foot", Dimension.LINE_LOAD, Fraction(32, 12000)),
    ("50 lb/ft3", Dimension.DENSITY, Fraction(50, 1728000)),
    ("50 lb/ft\u00b3", Dimension.DENSITY, Fraction(50, 1728000)),
    ("50 pcf", Dimension.DENSITY, Fraction(50, 1728000)),
    ("50 lb per cu ft", Dimension.DENSITY, Fraction(50, 1728000)),
    ("12 lb/ft2", Dimension.SURFACE_LOAD, Fraction(12, 144000)),
    ("74 deg", Dimension.ANGLE, Fraction(74)),
    ("74\u00b0", Dimension.ANGLE, Fraction(74)),
    ("2 1/2 in2", Dimension.AREA, Fraction(5, 2)),
]


@pytest.mark.parametrize(("text", "dimension", "size"), OTHERS)
def test_forces_stresses_and_weights_are_read(
    text: str, dimension: Dimension, size: Fraction
) -> None:
    assert quantity(text, dimension).exact == size


def test_a_pound_is_the_newtons_that_its_definition_says() -> None:
    # By definition 1 lbf = 0.45359237 kg x 9.80665 m/s2 = 4.4482216152605 N.
    assert quantity("4.4482216152605 kN", Dimension.FORCE).exact == 1
    # By hand: 1 ksi = 4448.2216152605 N / (25.4 mm)^2 = 6.894757 MPa to seven digits.
    assert quantity("6.894757 MPa", Dimension.STRESS).number == pytest.approx(1.0, abs=1e-6)


REFUSED = [
    ("3 1/2", "has no unit", "write it like '3 1/2 in'"),
    ("15'-7 1/2", "has no unit behind its inches", "15 ft 7 1/2 in"),
    ("3 kip", "is a force", "here stands a length, like '3 1/2 in'"),
    ("3 inchs", "has the unknown unit 'inchs'", "did you mean 'inches'?"),
    ("nan in", "is not a finite number", "write it like '3 1/2 in'"),
    (".inf", "is not a finite number", "write it like '3 1/2 in'"),
    ("-3 in", "is below zero", "a length cannot be negative here"),
    ("\u22123 in", "is below zero", "a length cannot be negative here"),
    ("2 mi", "is more than 1 mi", "slip of the pen"),
    ("7 9/8 in", "has a fraction of one or more", "write it like '7 1/2 in'"),
    ("1/0 in", "divides by zero", "7 1/2 in"),
    ("15 ft 12 in", "has a foot or more in its inches", "15 ft 7 1/2 in"),
    ("3 1/2 ft 2 in", "has both a part of a foot and inches", "write whole feet"),
    ("1,5 in", "is not a length", "write it like"),
    ("2 - 3 in", "is not a length", "write it like"),
    ("2 1/2 in x 3/4 in", "has the unknown unit", "known are"),
    ("1e3 in", "has the unknown unit", "known are"),
    ("about 3 in", "is not a length", "write it like"),
    ("", "is not a length", "write it like"),
    ("9" * 200 + " in", "is not a length", "write it like"),
]


@pytest.mark.parametrize(("text", "rule", "cure"), REFUSED)
def test_what_is_not_a_length_is_refused_with_the_cure(text: str, rule: str, cure: str) -> None:
    with pytest.raises(Unreadable) as refused:
        length(text)
    assert refused.value.got == text
    assert rule in refused.value.rule
    assert cure in refused.value.cure


def test_a_coordinate_may_lie_below_zero_where_it_is_allowed() -> None:
    # By hand: -(2 x 12 + 6) in.
    assert quantity("-2 ft 6 in", Dimension.LENGTH, signed=True).exact == -30


def test_a_limit_of_its_own_is_named_in_the_refusal() -> None:
    with pytest.raises(Unreadable) as refused:
        quantity("13 ft", Dimension.LENGTH, greatest="12 ft")
    assert "more than 12 ft" in refused.value.rule


def test_a_weight_is_taken_by_volume_or_by_area_whichever_is_written() -> None:
    kinds = (Dimension.DENSITY, Dimension.SURFACE_LOAD)
    assert measure("50 lb/ft3", *kinds).dimension is Dimension.DENSITY
    assert measure("12 lb/ft2", *kinds).dimension is Dimension.SURFACE_LOAD
    with pytest.raises(Unreadable) as refused:
        measure("3 in", *kinds)
    assert "is a length" in refused.value.rule
    assert "lb/ft3" in refused.value.cure


def test_a_quantity_is_told_in_any_unit_of_its_kind_and_in_no_other() -> None:
    # By hand: 15 ft 6 in = 15.5 ft.
    assert length("15 ft 6 in").in_unit("ft") == 15.5
    with pytest.raises(Unreadable):
        length("15 ft 6 in").in_unit("kip")


def test_a_size_has_two_sides() -> None:
    assert pair("2 1/2 in x 3/4 in") == ("2 1/2 in", "3/4 in")
    assert pair("2 1/2 in \u00d7 3/4 in") == ("2 1/2 in", "3/4 in")
    for text in ("3/4 in", "1 in x 2 in x 3 in", "x 3 in"):
        with pytest.raises(Unreadable):
            pair(text)


def test_a_date_is_a_day_of_the_calendar() -> None:
    assert day("2024-02-29").isoformat() == "2024-02-29"
    for text, rule in (("2023-02-29", "no day"), ("6/15/2021", "not a date"), ("2021", "not a")):
        with pytest.raises(Unreadable) as refused:
            day(text)
        assert rule in refused.value.rule
