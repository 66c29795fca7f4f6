"""Figures are rounded for people, and never to the unsafe side where they restrict."""

import pytest

from eyebar.views import rounding

# Expected values by hand from the rules of the module.


@pytest.mark.parametrize(
    ("value", "shown"),
    [(0.456, "0.46"), (1.0, "1.00"), (0.996, "0.996"), (0.99996, "0.99996"), (1.004, "1.00"),
     (-0.001, "0.00"), (-0.4, "-0.40"), (None, "-")],
)
def test_a_factor_has_two_decimals_and_never_rises_to_one(
    value: float | None, shown: str
) -> None:
    assert rounding.factor(value) == shown


@pytest.mark.parametrize(("tons", "shown"), [(6.999, "6"), (6.0, "6"), (12.5, "12")])
def test_a_limit_goes_down_to_the_whole_ton(tons: float, shown: str) -> None:
    assert rounding.limit(tons) == shown


@pytest.mark.parametrize(
    ("tons", "shown"), [(2.9999999, "2.99"), (3.0, "3.00"), (2.4, "2.40"), (None, "-")]
)
def test_a_load_just_under_three_tons_is_not_shown_as_three(
    tons: float | None, shown: str
) -> None:
    assert rounding.safe_tons(tons) == shown


def test_a_force_of_almost_nothing_has_no_sign() -> None:
    assert rounding.kip(-0.04) == "0.0"
    assert rounding.kip(-0.06) == "-0.1"


def test_a_figure_that_was_written_down_keeps_its_digits() -> None:
    assert rounding.plain(11.5) == "11.5"
    assert rounding.plain(8.0) == "8"
    assert rounding.plain(0.64) == "0.64"


def test_a_capacity_is_shown_in_its_unit() -> None:
    assert rounding.capacity(61.04, "kip") == "61.0 kip"
    assert rounding.capacity(0.987, "ratio") == "0.99 ratio"
    assert rounding.capacity(None, "") == "-"
