"""AISC, Specification for Structural Steel Buildings, commentary, benchmark problem 1.

A pinned bar of 28 ft, I 484 in4, A 14.1 in2, E 29,000 ksi, under 0.2 kip/ft across it and a thrust
of 0, 150, 300 and 450 kip. Printed moments at mid-length (second order, bending alone): 235, 269,
313, 375 kip in. Read as quoted in the tests of an open general frame library.
"""

import math

import pytest

from eyebar.resistance.column import buckling_load, slenderness_ratio
from eyebar.resistance.moments import own_weight_moment, use_in_one_plane
from eyebar.sections.closed_forms import radius_of_gyration
from tests.published.printing import printed

LENGTH = 28 * 12.0
RADIUS = radius_of_gyration(484.0, 14.1)
EULER = buckling_load(29_000.0, 14.1, slenderness_ratio(1.0, LENGTH, RADIUS))
# 0.2 kip/ft of a bar of 14.1 in2: so many lb/in3.
DENSITY = 1000 * 0.2 / 12 / 14.1
FIRST = own_weight_moment(1.0, 14.1, density=DENSITY, length=LENGTH, run=LENGTH)
PRINTED = [(0.0, "235"), (150.0, "269"), (300.0, "313"), (450.0, "375")]


def exact(thrust: float) -> float:
    """The closed form of the moment: 2 (sec u - 1) / u^2 times that without thrust."""
    if not thrust:
        return FIRST
    u = math.pi / 2 * math.sqrt(thrust / EULER)
    return FIRST * 2 * (1 / math.cos(u) - 1) / u**2


def by_the_rule(thrust: float) -> float:
    """The moment as the rule amplifies it: its use alone, of a moment of 1."""
    return use_in_one_plane(
        axial=1.0, thrust=thrust, column=math.inf, bending=1.0, moment=FIRST,
        moment_strength=1.0, buckling=EULER,
    )


@pytest.mark.parametrize(("thrust", "text"), PRINTED)
def test_the_closed_form_meets_the_print(thrust: float, text: str) -> None:
    assert exact(thrust) == printed(
        text, within=0.6, because="the print is of a finite element model of few pieces"
    )


@pytest.mark.parametrize(("thrust", "text"), PRINTED)
def test_the_rules_amplification_lies_within_one_percent_below(thrust: float, text: str) -> None:
    assert by_the_rule(thrust) <= exact(thrust)
    assert by_the_rule(thrust) == printed(
        text, within=0.0115 * float(text),
        because="1 / (1 - P/P_e) leaves out 0.03 P/P_e of the exact sine series",
    )
