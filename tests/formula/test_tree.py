import pytest

from eyebar.formula.dimensions import UNITS, unit
from eyebar.formula.tree import Binary, Call, Name, Number, evaluated, names, parsed


def test_a_number_carries_its_unit() -> None:
    equation = parsed("I = min(50 ft / (L + 125 ft), 0.30)")
    assert equation.left == "I"
    assert equation.right == Call("min", (
        Binary("/", Number(50.0, "50", "ft"), Binary("+", Name("L"), Number(125.0, "125", "ft"))),
        Number(0.30, "0.30"),
    ))


def test_a_unit_may_be_a_quotient() -> None:
    assert parsed("w = 0.64 kip/ft + q").right == Binary(
        "+", Number(0.64, "0.64", "kip/ft"), Name("q"))


def test_a_choice_after_a_number_is_not_a_unit() -> None:
    assert names(parsed("a = 0 if x < 2 in else 1").right) == {"x"}


def test_units_are_brought_to_kip_and_inch() -> None:
    # By hand: 2 ft + 6 in = 30 in; 30 ksi x 4 in2 = 120 kip.
    assert evaluated(parsed("a = 2 ft + x").right, {"x": 6.0}) == 30.0
    assert evaluated(parsed("P = 30 ksi * A").right, {"A": 4.0}) == 120.0


def test_a_pound_an_inch_cubed_and_a_mile_an_hour_are_what_they_are() -> None:
    # By hand: 1 lb/ft3 = 0.001 kip / 1728 in3; 60 mph = 88 ft/s = 1056 in/s.
    assert unit("lb/ft3")[1] == pytest.approx(0.001 / 1728, rel=1e-15)
    assert 60 * unit("mph")[1] == pytest.approx(1056.0, rel=1e-15)
    assert unit("kip in")[0] == unit("kip")[0] * unit("in")[0]
    assert unit("ksi") == (unit("kip/in2")[0], 1.0)


def test_every_unit_of_the_table_can_be_read() -> None:
    assert all(unit(word) == found for word, found in UNITS.items())


@pytest.mark.parametrize("text", ["no equation", "a b = 2", "a = f(x)", "a = x and y", "a = x[1]"])
def test_what_the_grammar_does_not_know_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"reads .symbol|grammar"):
        parsed(text)


def test_an_unknown_unit_is_refused() -> None:
    with pytest.raises(ValueError, match="furlong"):
        unit("furlong")
