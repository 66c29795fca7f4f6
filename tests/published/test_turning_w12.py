"""magedkamel.com, practice problem 5-5-6 (Steel Design Handbook): W12x30 of 50 ksi, when it turns.

Elastic turning begins at L_r = 187.24 in, where the stress is 0.7 F_y = 35 ksi, C_b 1. Its sizes by
the manual's table 1-1: flange 6.52 in x 0.440 in, S 38.6 in3, J 0.457 in4, 11.9 in between the
middles of its flanges, 12.3 in deep.
"""

import pytest

from eyebar.resistance.bending import turning_stress

FLANGE = 0.440 * 6.52**3 / 12


def turned(height: float) -> float:
    return turning_stress(
        modulus=29_000.0, flange_inertia=FLANGE, unheld=187.24, section_modulus=38.6,
        torsion=0.457, height=height,
    )


def test_the_beam_turns_at_seven_tenths_of_its_yield_stress() -> None:
    # The tables' S and J have three figures.
    assert turned(11.9) == pytest.approx(35.0, rel=2e-3)


def test_with_the_whole_depth_as_the_older_rule_has_it_the_stress_is_two_per_cent_more() -> None:
    assert 1.0 < turned(12.3) / turned(11.9) < 1.02
