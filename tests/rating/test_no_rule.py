"""Parts that a method has no rule for: timber and cast iron are rated by allowable stress alone."""

from dataclasses import replace

import pytest

from eyebar.bridge.parts import AllowedStress
from eyebar.office import shipped_values
from eyebar.rating import BridgeRating, replayed
from eyebar.rating.rate import NO_RULE
from eyebar.terms import Metal, Method
from eyebar.vehicles import shipped_vehicles
from tests.rating.bridges import (
    ASR_INVENTORY,
    ASR_OPERATING,
    IRON,
    LEGAL,
    LFR_OPERATING,
    STRONG,
    TRUCK,
    bridge,
    part,
    pratt,
    rated,
    rating,
)

CAST = replace(
    IRON, metal=Metal.CAST_IRON, yield_stress=0.0, tensile_strength=0.0,
    allowed=AllowedStress(pull=None, push=1.0, column_modulus=None, source="made for this test"),
)
CHORD = "near/U1-U2"
OF_IRON = {"as_built": STRONG, "can_push": True}
OF_CAST = {**OF_IRON, "material": CAST, "can_pull": False}


def with_chord(**changes: object) -> BridgeRating:
    truss = pratt(4, bars={"U1-U2": changes})
    return rated(bridge(truss, kip_a_panel=8.0), TRUCK, shipped_vehicles()["Type 3"])


def test_a_part_without_a_rule_has_no_factor_and_is_not_unlimited() -> None:
    found = with_chord(**OF_CAST)
    assert part(found, CHORD).not_rated == ""
    for by in (LEGAL, LFR_OPERATING):
        one = rating(found, CHORD, by)
        assert (one.factor, one.reason) == (None, NO_RULE)
        again = replayed(
            found.bridge, part(found, CHORD), one, vehicle=TRUCK, values=shipped_values()
        )
        assert (again.factor, again.share, again.live_factor) == (None, one.share, one.live_factor)
    # By hand: 1 ksi on 40 in2; cast iron at operating no more than at inventory.
    for by in (ASR_INVENTORY, ASR_OPERATING):
        assert rating(found, CHORD, by).capacity == pytest.approx(40.0)


def test_the_posting_takes_such_a_part_by_the_other_method() -> None:
    # The chord of 40 kip is by far the weakest bar of a truss of bars that carry 400 and more.
    found = with_chord(**OF_CAST)
    governs = found.posting.governed_by
    assert governs is not None
    assert (governs.part, governs.method) == (CHORD, Method.ALLOWABLE_STRESS)
    strong = with_chord(**OF_IRON)
    assert rating(strong, CHORD, LEGAL).factor is not None
    assert strong.posting.governed_by is not None
    assert strong.posting.governed_by.method is Method.LOAD_AND_RESISTANCE


def test_without_a_stress_given_the_part_is_not_rated_by_any_method() -> None:
    found = with_chord(**OF_CAST | {"material": replace(CAST, allowed=None)})
    assert "strength of cast iron" in part(found, CHORD).not_rated
    assert found.posting.provisional
