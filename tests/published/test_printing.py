import pytest

from tests.published.printing import printed


def test_a_figure_is_met_within_half_a_unit_of_its_last_digit() -> None:
    assert printed("8.57") == 8.574
    assert printed("8.57") == 8.565
    assert printed("8.57") != 8.576
    assert printed("8.57") != 8.564


def test_trailing_zeros_may_stand_for_nothing() -> None:
    assert printed("13,700", unit=100) == 13666.0
    assert printed("13,700") != 13666.0


def test_a_looser_tolerance_needs_a_sentence() -> None:
    with pytest.raises(ValueError, match="needs a sentence"):
        printed("35,100", within=200)
    assert printed("35,100", within=200, because="found graphically") == 35200.0
