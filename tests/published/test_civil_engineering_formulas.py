"""Civil Engineering Formulas, ch. 10 (highway bridge design), p. 250, and ch. 9, p. 223.

Quotes the Standard Specifications: C_c = sqrt(2 pi^2 E / F_y); F_a = (F_y / 2.12)(1 - (KL/r)^2 /
(2 C_c^2)) below it, pi^2 E / (2.12 (KL/r)^2) = 135,000 / (KL/r)^2 ksi above; load factor: P_u =
0.85 A_s F_cr, F_cr = pi^2 E / (KL/r)^2 = 286,220 / (KL/r)^2 ksi above. E = 29,000 ksi. Table 10.1
prints C_c and F_a for two yields.

P. 223 (read at digilib.universitaspertamina.ac.id, page 289 of the reader), quoting the building
specification: a web cripples, safety counted, at R = 67.5 t_w² (1 + 3 (N / d) (t_w / t_f)^1.5)
sqrt(F_yw t_f / t_w), beside an end (equation 9.58) at 34 in the place of 67.5.
"""

import math

import pytest

from eyebar.resistance.column import (
    allowable_column_stress,
    failing_column_stress,
    load_factor_push,
)
from eyebar.resistance.webs import crippling_at_end, crippling_between, safe_push
from tests.published.printing import printed

MODULUS = 29_000.0


@pytest.mark.parametrize(
    ("strength", "boundary", "start", "fall"),
    [(36.0, "126.1", "16.98", "0.00053"), (50.0, "107.0", "23.58", "0.00103")],
)
def test_table_10_1(strength: float, boundary: str, start: str, fall: str) -> None:
    at_rest = allowable_column_stress(strength, 2.12, 0.0, MODULUS)
    assert at_rest == printed(start)
    fallen = at_rest - allowable_column_stress(strength, 2.12, 50.0, MODULUS)
    assert fallen / 2500 == printed(fall)
    # The boundary is where the stress has fallen to half of what it is at rest.
    edge = float(boundary.replace(",", ""))
    below, above = (
        allowable_column_stress(strength, 2.12, edge + step, MODULUS) for step in (-0.05, 0.05)
    )
    assert above < at_rest / 2 < below
    assert math.sqrt(2 * math.pi**2 * MODULUS / strength) == printed(boundary)


@pytest.mark.parametrize("slenderness", [130.0, 160.0, 200.0])
def test_a_slender_columns_allowable_stress_is_135000_over_the_square(slenderness: float) -> None:
    stress = allowable_column_stress(36.0, 2.12, slenderness, MODULUS)
    assert stress * slenderness**2 == printed("135,000", unit=1000)


@pytest.mark.parametrize("slenderness", [130.0, 160.0, 200.0])
def test_a_slender_column_fails_at_286220_over_the_square(slenderness: float) -> None:
    stress = failing_column_stress(36.0, slenderness, MODULUS)
    assert stress * slenderness**2 == printed("286,220", unit=10)
    assert load_factor_push(0.85, stress, 10.0) == pytest.approx(8.5 * stress, rel=1e-15)


def test_a_web_cripples_at_67_5_under_a_load_and_at_34_beside_an_end() -> None:
    # What is left of the formula without bracket and root, a web and flange alike, N / d = 0.1.
    sizes = {"depth": 20.0, "flange_thickness": 0.5, "modulus": MODULUS, "yield_stress": 36.0}
    rest = 0.5**2 * (1 + 3 * 0.1) * 36.0**0.5
    rounded = "the book's figure stands for 0.4 sqrt(29,000) = 68.1, rounded down"
    between = safe_push(crippling_between(0.5, 2.0, **sizes), 2.0)
    assert between / rest == printed("67.5", within=0.7, because=rounded)
    end = safe_push(crippling_at_end(0.5, 2.0, **sizes), 2.0)
    assert end / rest == printed("34", within=0.5, because=rounded)
