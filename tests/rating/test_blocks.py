"""Blocks at joints: rated by the bars that push on them, and seen by a posting of any method."""

from collections.abc import Sequence
from dataclasses import replace

import pytest

from eyebar.bridge.parts import OtherPart, Seat
from eyebar.office import shipped_values
from eyebar.rating import BridgeRating, replayed
from eyebar.rating.rated import NO_RULE
from eyebar.terms import Kind, Metal, Method
from eyebar.vehicles import Vehicle, shipped_vehicles
from tests.rating.bridges import (
    ASR_INVENTORY,
    ASR_OPERATING,
    LEGAL,
    LFR_OPERATING,
    TRUCK,
    bridge,
    part,
    pratt,
    rated,
    rating,
    values,
)

BLOCK = "near/L0/joint block"
SEAT = Seat(joint="L0", metal=Metal.CAST_IRON, area=20.0, allowed=1.5, source="made")
"""30 kip, where the end post is good for hundreds."""
TYPE_3 = shipped_vehicles()["Type 3"]
SHARE = 24.0 / 36.0
"""By hand: wheels 2 and 8 ft from the curb 1 ft off the truss, trusses 18 ft apart: (15 + 9) / 18
of one wheel line."""
SHOCK = 1.0 + 50.0 / 185.0
"""By hand: the whole span of 60 ft loads the end post."""


def with_block(
    seat: Seat = SEAT, others: Sequence[OtherPart] = (), vehicle: Vehicle = TRUCK
) -> BridgeRating:
    truss = pratt(4, bars={"U1-L0": {"seats": (seat,)}})
    return rated(bridge(truss, kip_a_panel=8.0, others=tuple(others)), vehicle, TYPE_3)


def test_a_block_is_used_up_by_the_push_of_its_bar() -> None:
    found = with_block()
    # By hand: 24 kip at L1, 6 kip at 29 ft: 18 + 3.1 kip at L0, 5/4 of it in the end post of 25 ft
    # on 20 ft; dead load 12 kip at L0, 15 in the post.
    live = (24.0 * 45 / 60 + 6.0 * 31 / 60) * 1.25 * SHARE
    for by in (ASR_INVENTORY, ASR_OPERATING):
        one = rating(found, BLOCK, by)
        assert (one.check, one.capacity) == ("bearing of U1-L0", pytest.approx(30.0))
        assert one.factor == pytest.approx((30.0 - 15.0) / (live * SHOCK))
        assert one.dead == pytest.approx(-15.0)
    for by in (LEGAL, LFR_OPERATING):
        assert (rating(found, BLOCK, by).factor, rating(found, BLOCK, by).reason) == (None, NO_RULE)


def test_a_posting_by_load_and_resistance_sees_the_block() -> None:
    found = with_block()
    governs = found.posting.governed_by
    assert governs is not None
    assert (governs.part, governs.method) == (BLOCK, Method.ALLOWABLE_STRESS)
    # By hand: 17, 17 and 16 kip at 15, 19 and 34 ft: 31.3 kip at L0; 25 tons.
    live = (17.0 * 45 / 60 + 17.0 * 41 / 60 + 16.0 * 26 / 60) * 1.25 * SHARE
    tons = 25.0 * (30.0 - 15.0) / (live * SHOCK)
    assert found.posting.exact_tons == pytest.approx(tons)
    assert found.posting.single_tons == int(tons)
    # Without the block nothing would restrict it.
    bare = rated(bridge(pratt(4), kip_a_panel=8.0), TRUCK, TYPE_3)
    assert bare.posting.single_tons is None


def test_the_end_post_is_rated_by_its_own_checks_alone() -> None:
    found, bare = with_block(), rated(bridge(pratt(4), kip_a_panel=8.0), TRUCK, TYPE_3)
    for by in (ASR_OPERATING, LEGAL):
        assert rating(found, "near/U1-L0", by).factor == rating(bare, "near/U1-L0", by).factor


def test_the_working_of_a_block_is_made_again() -> None:
    found = with_block()
    for one in part(found, BLOCK).ratings:
        again = replayed(
            found.bridge, part(found, BLOCK), one,
            vehicle={TRUCK.name: TRUCK}.get(one.vehicle, TYPE_3), values=values(),
        )
        assert (again.factor, again.capacity, again.impact) == (
            one.factor, one.capacity, one.impact
        )


def test_a_block_of_timber_has_no_impact_and_more_at_operating() -> None:
    found = with_block(replace(SEAT, metal=Metal.TIMBER))
    one, other = (rating(found, BLOCK, by) for by in (ASR_INVENTORY, ASR_OPERATING))
    times = shipped_values().number("timber.operating over inventory")
    assert one.impact == other.impact == 0.0
    assert (one.capacity, other.capacity) == (pytest.approx(30.0), pytest.approx(30.0 * times))


def test_a_block_against_which_something_stands_has_no_ratings() -> None:
    stopped = OtherPart(address=BLOCK, truss="near", kind=Kind.JOINT_BLOCK, not_rated="cracked")
    found = with_block(others=[stopped])
    assert [one.ratings for one in found.parts if one.address == BLOCK] == [()]
    assert part(found, BLOCK).not_rated == "cracked"
    assert found.posting.provisional


def test_without_the_dead_load_a_block_is_not_rated() -> None:
    truss = pratt(4, bars={"U1-L0": {"seats": (SEAT,)}})
    found = rated(bridge(truss, kip_a_panel=8.0, unknown_loads=("weight of deck",)), TYPE_3)
    assert "weight of deck" in part(found, BLOCK).not_rated
