"""Cast iron and timber: nothing without a stress that the record gives."""

from dataclasses import replace

import pytest

from eyebar.bridge.parts import AllowedStress, Material
from eyebar.errors import NotMeasured
from eyebar.resistance.given_stress import column_stability, stick_buckling_stress
from eyebar.sections.shapes import Stick, Timbers
from eyebar.terms import Level, Metal, Method
from tests.resistance.bars import IRON, STIFF_ENDS, bar, given, limits_of

ALLOWED = AllowedStress(
    pull=0.9, push=1.1, column_modulus=580.0, source="grading of 2026, made for this test"
)
TIMBER = replace(IRON, metal=Metal.TIMBER, yield_stress=0.0, tensile_strength=0.0, allowed=ALLOWED)
CAST = replace(
    IRON, metal=Metal.CAST_IRON, yield_stress=0.0, tensile_strength=0.0,
    allowed=AllowedStress(pull=None, push=8.0, column_modulus=None, source="made for this test"),
)
STICKS = Timbers(sticks=(Stick(width=6.0, depth=10.0), Stick(width=6.0, depth=10.0)))
INVENTORY = (Method.ALLOWABLE_STRESS, Level.INVENTORY)
OPERATING = (Method.ALLOWABLE_STRESS, Level.OPERATING)


def test_timber_pulls_at_the_stress_given_and_a_third_more_at_operating() -> None:
    # By hand: 2 x 60 in2 x 0.9 ksi = 108 kip; x 1.33.
    brace = bar(STICKS, material=TIMBER, can_push=False)
    found = limits_of(brace, *INVENTORY)["stress given, in pull"]
    assert found.force == pytest.approx(108.0, rel=1e-12)
    assert found.remarks == ("stress given by the record: grading of 2026, made for this test",)
    assert limits_of(brace, *OPERATING)["stress given, in pull"].force == pytest.approx(
        1.33 * 108.0, rel=1e-12
    )


def test_timber_pushes_as_a_column_about_both_sides() -> None:
    # By hand, 120 in: depth 10, s 12: F_cE 0.822 x 580/144 = 3.310833, over 1.1 ksi 3.009848; C_P =
    # 2.506155 - sqrt(2.506155^2 - 3.762311) = 0.919176; width 6, s 20: 1.1919, 1.083545; C_P =
    # 1.302216 - sqrt(1.302216^2 - 1.354432) = 0.717978. On 120 in2 at 1.1 ksi: 121.331 and 94.773.
    found = limits_of(
        bar(STICKS, material=TIMBER, length=120.0, can_pull=False), *INVENTORY, values=STIFF_ENDS
    )
    assert -found["timber column in the plane of the truss"].force == pytest.approx(
        121.331, rel=1e-5
    )
    assert -found["timber column out of the plane of the truss"].force == pytest.approx(
        94.773, rel=1e-5
    )


def test_a_stocky_stick_keeps_its_stress_and_a_slim_one_its_buckling_stress() -> None:
    # Law: C_P tends to 1 for a great ratio, to the ratio itself for a small one.
    assert column_stability(1000.0, 0.8) == pytest.approx(1.0, abs=1e-3)
    assert column_stability(0.001, 0.8) == pytest.approx(0.001, rel=1e-3)
    assert stick_buckling_stress(580.0, 50.0) == pytest.approx(0.822 * 580 / 2500, rel=1e-12)


def test_a_stick_slimmer_than_fifty_is_no_column() -> None:
    slim = bar(STICKS, material=TIMBER, length=310.0)
    with pytest.raises(NotMeasured, match="52 times as long as its side"):
        limits_of(slim, *INVENTORY, values=STIFF_ENDS)


def test_cast_iron_pushes_at_the_stress_given_and_must_be_told_its_pull() -> None:
    # By hand: 8 ksi on 12 in2, at operating no more.
    column = bar(given(12.0, 2.0, 2.0), material=CAST, can_pull=False)
    for level in (INVENTORY, OPERATING):
        found = limits_of(column, *level)["stress given, in push"]
        assert found.force == pytest.approx(-96.0, rel=1e-12)
        assert "slenderness taken to be in the stress that is given" in found.remarks
    with pytest.raises(NotMeasured, match="allowable stress of cast iron in pull"):
        limits_of(replace(column, can_pull=True), *INVENTORY)


@pytest.mark.parametrize("material", [TIMBER, CAST])
@pytest.mark.parametrize(
    ("method", "level"),
    [(Method.LOAD_FACTOR, Level.OPERATING), (Method.LOAD_AND_RESISTANCE, Level.LEGAL)],
)
def test_the_other_methods_have_no_rule(material: Material, method: Method, level: Level) -> None:
    assert limits_of(bar(STICKS, material=material), method, level) == {}


def test_without_a_stress_given_no_method_rates_them() -> None:
    for method, level in (INVENTORY, (Method.LOAD_AND_RESISTANCE, Level.LEGAL)):
        with pytest.raises(NotMeasured, match="strength of timber, which has no rule here"):
            limits_of(bar(STICKS, material=replace(TIMBER, allowed=None)), method, level)


@pytest.mark.parametrize("field", ["pull", "push", "column_modulus"])
def test_a_figure_that_is_not_given_is_not_guessed(field: str) -> None:
    part = replace(ALLOWED, **{field: None})
    with pytest.raises(NotMeasured, match=r"allowable stress|modulus for columns"):
        limits_of(bar(STICKS, material=replace(TIMBER, allowed=part)), *INVENTORY)
