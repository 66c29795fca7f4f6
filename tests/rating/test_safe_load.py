import pytest

from eyebar.office import shipped_values
from eyebar.rating.safe_load import (
    heaviest_group,
    safe_load,
    safe_load_by_factor,
    safe_load_by_formula,
)
from eyebar.terms import Method
from eyebar.vehicles import shipped_vehicles

VALUES = shipped_values()


@pytest.mark.parametrize(
    ("tons", "factor", "safe"),
    [
        # By hand: W / 0.7 (RF - 0.3).
        (25.0, 0.65, 12.5), (36.0, 0.5, 36 / 3.5), (40.0, 0.4, 40 / 7), (40.0, 0.3, 0.0),
        (40.0, 0.1, 0.0), (40.0, -0.4, 0.0), (40.0, 1.0, 40.0), (40.0, 1.7, 40.0),
    ],
)
def test_the_posting_formula_of_load_and_resistance(
    tons: float, factor: float, safe: float
) -> None:
    assert safe_load_by_formula(tons, factor, 0.3, 0.7) == pytest.approx(safe)
    assert safe_load(tons, factor, Method.LOAD_AND_RESISTANCE, VALUES) == pytest.approx(safe)


@pytest.mark.parametrize(
    ("tons", "factor", "safe"),
    [(25.0, 0.65, 16.25), (36.0, 0.1, 3.6), (40.0, -0.4, 0.0), (40.0, 1.0, 40.0), (40.0, 2, 40.0)],
)
def test_the_older_methods_take_factor_times_weight(
    tons: float, factor: float, safe: float
) -> None:
    assert safe_load_by_factor(tons, factor) == pytest.approx(safe)
    for method in (Method.ALLOWABLE_STRESS, Method.LOAD_FACTOR):
        assert safe_load(tons, factor, method, VALUES) == pytest.approx(safe)


@pytest.mark.parametrize(("tons", "factor"), [(9.6, 0.38), (14.0, 0.35)])
def test_the_formula_reaches_three_tons_where_the_trade_says(tons: float, factor: float) -> None:
    # By hand: W (RF - 0.3) / 0.7 = 3 at RF = 0.3 + 2.1 / W; 25 tons 0.384, 40 tons 0.3525. Weight
    # times factor is then 9.6 and 14.1 tons.
    weight = tons / factor
    assert safe_load_by_formula(weight, 0.3 + 2.1 / weight, 0.3, 0.7) == pytest.approx(3.0)
    assert 0.3 + 2.1 / weight == pytest.approx(factor, abs=0.005)


@pytest.mark.parametrize(
    ("name", "tons", "axles"),
    [
        # By hand: EV2 rear axle 33.5 kip; EV3 two of 31 kip 4 ft apart; Type 3 two of 17 kip.
        ("EV2", 16.75, 1), ("EV3", 31.0, 2), ("Type 3", 17.0, 2),
    ],
)
def test_the_heaviest_group_is_an_axle_or_a_tandem(name: str, tons: float, axles: int) -> None:
    assert heaviest_group(shipped_vehicles()[name], 8.0) == (tons, axles)
