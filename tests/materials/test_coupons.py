"""What coupons prove: tolerance factors, characteristic values, refusals."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.special import ndtr

from eyebar.errors import OutOfRange
from eyebar.formula import flat, recording
from eyebar.materials import characteristic_value, tolerance_factor


@pytest.mark.parametrize("number", [3, 5, 10])
@pytest.mark.parametrize("confidence", [0.75, 0.95])
def test_so_many_samples_of_a_hundred_keep_the_promise(number: int, confidence: float) -> None:
    # Law: of many samples drawn from normal metal, `confidence` give a limit that 95 % of the
    # metal exceeds. 40,000 samples leave a standard error of 0.22 % or less; four of them are
    # allowed.
    random = np.random.default_rng(1886)
    samples = random.normal(50.0, 6.0, (40_000, number))
    factor = tolerance_factor(number, share=0.95, confidence=confidence)
    limits = samples.mean(axis=1) - factor * samples.std(axis=1, ddof=1)
    exceeded = ndtr((50.0 - limits) / 6.0)
    assert np.mean(exceeded >= 0.95) == pytest.approx(confidence, abs=0.009)


def test_the_factor_falls_to_the_plain_quantile_with_many_tests() -> None:
    # By hand: 95 % of a normal population lies above mean - 1.645 standard deviations.
    assert tolerance_factor(100_000, share=0.95, confidence=0.75) == pytest.approx(1.645, abs=0.005)


@given(st.integers(3, 60), st.floats(0.55, 0.99), st.floats(0.55, 0.99))
def test_more_coupons_ask_for_a_smaller_factor(
    number: int, share: float, confidence: float
) -> None:
    few = tolerance_factor(number, share=share, confidence=confidence)
    more = tolerance_factor(number + 1, share=share, confidence=confidence)
    assert more < few


def test_a_characteristic_value_by_hand() -> None:
    # Mean (48 + 50 + 52) / 3 = 50, deviation sqrt((4 + 0 + 4) / 2) = 2; factor for 3 tests, 95 %
    # share, 75 % confidence 3.152 (table of one-sided tolerance factors, from memory):
    # 50 - 3.152 x 2 = 43.70.
    found = characteristic_value((48.0, 50.0, 52.0), share=0.95, confidence=0.75)
    assert (found.mean, found.deviation, found.number) == (50.0, 2.0, 3)
    assert found.value == pytest.approx(43.70, abs=0.005)
    assert "3 coupons, mean 50" in found.sentence


@given(st.lists(st.floats(30, 60), min_size=3, max_size=30))
def test_it_is_never_above_the_mean(sample: list[float]) -> None:
    try:
        found = characteristic_value(sample, share=0.95, confidence=0.75)
    except OutOfRange:
        return
    # Law: 95 % at 75 % confidence always takes something off, rounding apart.
    assert found.value <= math.fsum(sample) / len(sample) + 1e-12


@pytest.mark.parametrize("sample", [(), (50.0,), (48.0, 52.0)])
def test_fewer_than_three_coupons_are_refused(sample: tuple[float, ...]) -> None:
    with pytest.raises(OutOfRange, match="number of coupons is"):
        characteristic_value(sample, share=0.95, confidence=0.75)


def test_coupons_that_scatter_too_much_are_refused() -> None:
    # By hand: mean 30, deviation 20, 30 - 3.152 x 20 < 0.
    with pytest.raises(OutOfRange, match="scatter too much"):
        characteristic_value((10.0, 30.0, 50.0), share=0.95, confidence=0.75)


@pytest.mark.parametrize("strength", [0.0, -1.0, math.nan, math.inf])
def test_a_strength_that_is_none_is_refused(strength: float) -> None:
    with pytest.raises(OutOfRange, match="strength of a coupon"):
        characteristic_value((50.0, 51.0, strength), share=0.95, confidence=0.75)


@pytest.mark.parametrize(("share", "confidence"), [(0.4, 0.75), (1.0, 0.75), (0.95, 1.0)])
def test_a_share_or_confidence_outside_the_rule_is_refused(
    share: float, confidence: float
) -> None:
    with pytest.raises(OutOfRange, match="of a characteristic value"):
        tolerance_factor(5, share=share, confidence=confidence)


def test_the_working_shows_how_the_value_came_about() -> None:
    with recording() as steps:
        found = characteristic_value((48.0, 50.0, 52.0), share=0.95, confidence=0.75)
    shown = {step.symbol: step.value for step in flat(steps) if hasattr(step, "symbol")}
    assert (shown["m"], shown["s"]) == (found.mean, found.deviation)
