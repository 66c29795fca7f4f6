"""Condition and system factors."""

import pytest

from eyebar.office import shipped_values
from eyebar.resistance.limit import Condition
from eyebar.resistance.rules import Rules, rules
from eyebar.sections.shapes import Section
from eyebar.terms import Level, Method
from tests.resistance.bars import LACED, eyebars, given


def by_load_and_resistance(
    code: int | None, section: Section, *, measured: bool = False
) -> Rules:
    return rules(
        Method.LOAD_AND_RESISTANCE, Level.LEGAL, values=shipped_values(),
        condition=Condition(superstructure_condition=code, loss_measured=measured),
        section=section,
    )


@pytest.mark.parametrize(
    ("code", "measured", "product"),
    [
        # By hand, system factor 0.90: condition 1.00 from code 6 up, 0.95 at 5, 0.85 below; raised
        # by 0.05 where the loss was measured, not above 1; product not below 0.85.
        (9, False, 0.90),
        (6, False, 0.90),
        (6, True, 0.90),
        (5, False, 0.855),
        (5, True, 0.90),
        (4, False, 0.85),
        (4, True, 0.85),
        (0, False, 0.85),
    ],
)
def test_condition_and_system_factor_have_a_floor(
    code: int, measured: bool, product: float
) -> None:
    assert by_load_and_resistance(code, eyebars(2), measured=measured).reduction == (
        pytest.approx(product, rel=1e-12)
    )


def test_a_superstructure_without_a_code_is_taken_as_poor_and_that_is_said() -> None:
    found = by_load_and_resistance(None, LACED)
    assert found.reduction == 0.85
    assert "not coded" in found.remarks[0]


def test_a_bar_of_given_properties_is_taken_as_a_single_bar_and_that_is_said() -> None:
    found = by_load_and_resistance(7, given(4.0, 1.0, 1.0))
    assert found.reduction == 0.85
    assert "single bar" in found.remarks[0]


def test_a_riveted_bar_has_the_riveted_factor() -> None:
    assert by_load_and_resistance(7, LACED).reduction == 0.90


def test_the_older_methods_know_neither_condition_nor_system() -> None:
    values = shipped_values()
    poor = Condition(superstructure_condition=None, loss_measured=False)
    for method in (Method.ALLOWABLE_STRESS, Method.LOAD_FACTOR):
        found = rules(
            method, Level.INVENTORY, values=values, condition=poor, section=eyebars(1)
        )
        assert (found.reduction, found.remarks) == (1.0, ())
    assert not any(name.startswith("condition") for name in values.used)
