"""Bars that are loose, broken, pulled, or not measured; trusses that are alike and not alike."""

from dataclasses import replace
from typing import Any

import pytest

import eyebar.rating.families
from eyebar.analysis.loaded import loaded_truss
from eyebar.bridge.parts import Bridge, Truss
from eyebar.loads import joint_loads
from eyebar.rating import BridgeRating
from eyebar.rating.stiffness import stiffness_areas
from eyebar.sections.shapes import Eyebar, Eyebars
from eyebar.terms import Kind
from tests.rating.bridges import (
    ASR_OPERATING,
    LEGAL,
    PAIR,
    WHEEL,
    bar,
    bridge,
    part,
    pratt,
    rated,
    rating,
)

ONE = Eyebars(bars=PAIR.bars[:1])
"""One bar 3 in x 3/4 in, 2.25 in2."""

FACTOR_OF_AXLE = 10.0 * 2.0 / 3.0 * 1.3
"""One axle of 10 kip, share 2/3 by the lever rule, impact 0.30."""


def wheel(found: BridgeRating, address: str) -> Any:
    """The rating for one axle by allowable stress at operating."""
    return rating(found, address, ASR_OPERATING, "one axle")


def hung(gap_in: float) -> Bridge:
    """A truss whose hip vertical is two bars, one of them loose; the joint weighs 8 kip."""
    loose = bar("U1-L1 loose", Kind.HIP_VERTICAL, ONE, gap_in=gap_in)
    truss = pratt(4, bars={"U1-L1": {"as_built": ONE}}, more=(loose,))
    return bridge(truss, kip_a_panel=8.0)


# By hand: the hip vertical, 20 ft long, carries the joint and the axle over it. One bar takes
# 0.75 x 26 x 2.25 = 43.875 kip and stretches 27,900 x 2.25 / 240 = 261.5625 kip/in.
STRENGTH, STIFFNESS = 43.875, 261.5625


def test_a_loose_bar_that_stays_loose_carries_nothing() -> None:
    # By hand: 0.2 in of gap is more than the 43.875 / 261.5625 = 0.168 in at which the other fails.
    found = rated(hung(0.2), WHEEL)
    tight = wheel(found, "near/U1-L1")
    assert tight.factor == pytest.approx((STRENGTH - 8.0) / FACTOR_OF_AXLE)
    assert tight.events == ()
    # The loose one would take over what it may only after 0.2 in: 52.3125 kip on the other, and
    # then half of each further kip up to 43.875 of its own.
    loose = wheel(found, "near/U1-L1 loose")
    whole = 0.2 * STIFFNESS + 2.0 * STRENGTH
    assert loose.factor == pytest.approx((whole - 8.0) / FACTOR_OF_AXLE)


def test_a_loose_bar_that_comes_taut_takes_half_of_what_comes_after() -> None:
    # By hand: the gap of 0.1 in closes at 26.15625 kip; each bar takes half of the rest, so the
    # tight one fails at 26.15625 + 2 x (43.875 - 26.15625) = 61.59375 kip.
    found = wheel(rated(hung(0.1), WHEEL), "near/U1-L1")
    closes = 0.1 * STIFFNESS
    whole = closes + 2.0 * (STRENGTH - closes)
    assert found.factor == pytest.approx((whole - 8.0) / FACTOR_OF_AXLE)
    (event,) = found.events
    assert (event.bar, event.goes) == ("U1-L1 loose", "taut")
    assert event.factor == pytest.approx((closes - 8.0) / FACTOR_OF_AXLE)
    # The plain formula knows nothing of the loose bar.
    assert found.plain_factor == pytest.approx((STRENGTH - 8.0) / FACTOR_OF_AXLE)


def test_a_loose_bar_without_any_gap_shares_from_the_first() -> None:
    # By hand: two bars alike, half each.
    found = wheel(rated(hung(0.0), WHEEL), "near/U1-L1")
    assert found.factor == pytest.approx((2.0 * STRENGTH - 8.0) / FACTOR_OF_AXLE)


def crossed(**counter: Any) -> Truss:
    """Six panels, slender diagonals, counters beside the middle; what differs in U3-L2."""
    thin: dict[str, Any] = {"as_built": ONE}
    more = (
        bar("U3-L2", Kind.COUNTER, ONE, **counter), bar("U3-L4", Kind.COUNTER, ONE),
    )
    return pratt(6, slender=True, bars=dict.fromkeys(("U2-L3", "U4-L3", "L2-L3"), thin), more=more)


def without_counter() -> Truss:
    whole = crossed()
    broken = tuple(one for one in whole.bars if one.name == "U3-L2")
    left = tuple(one for one in whole.bars if one.name != "U3-L2")
    return replace(whole, bars=left, broken=broken)


def test_a_broken_bar_is_not_rated_and_the_truss_does_without_it() -> None:
    # By hand: with its counter gone panel L2-L3 is the first to lose equilibrium, with 4 kip of
    # shear under dead load, of which the axle on L2 takes 1/3 of itself. With the counter it is the
    # panel before: 2.5 x 8 - 8 = 12 kip, of which an axle on L1 takes 1/6.
    found = rated(bridge(without_counter(), kip_a_panel=8.0), WHEEL)
    assert part(found, "near/U3-L2").not_rated == "declared broken"
    assert part(found, "near/U3-L2").ratings == ()
    assert found.posting.provisional
    assert "near/U3-L2" in found.posting.not_rated
    post = wheel(found, "near/U2-L2")
    assert post.check == "no equilibrium"
    assert post.factor == pytest.approx(4.0 / (FACTOR_OF_AXLE / 3.0))
    whole = wheel(rated(bridge(crossed(), kip_a_panel=8.0), WHEEL), "near/U2-L2")
    assert whole.factor == pytest.approx(12.0 / (FACTOR_OF_AXLE / 6.0))


def fitted(truss: Truss, of: Bridge) -> Truss:
    """The truss with its measured pull turned into the lack of fit that gives it."""
    areas, _ = stiffness_areas(truss)
    pulls = {one.name: one.pull_kip for one in truss.bars if one.pull_kip is not None}
    loads = joint_loads(truss, of.weights[truss.name], areas)
    model = loaded_truss(truss, areas, loads, pulls=pulls).model
    initial = {one.name: one.initial_kip for one in model.bars}
    bars = tuple(
        replace(one, initial_kip=initial[one.name], pull_kip=None) for one in truss.bars
    )
    return replace(truss, bars=bars)


def test_a_measured_pull_is_rated_with_it_and_without_and_the_lesser_is_kept() -> None:
    # Law: the lesser of two bridges, one whose counter is as found slack, one whose counter has the
    # lack of fit that gives the pull.
    truss = crossed(pull_kip=25.0)
    of = bridge(truss, kip_a_panel=8.0)
    both = rated(of, WHEEL)
    none = rated(replace(of, trusses=(crossed(),)), WHEEL)
    pulled = rated(replace(of, trusses=(fitted(truss, of),)), WHEEL)
    kept = {}
    for one in truss.bars:
        for by in (ASR_OPERATING, LEGAL):
            found, first, second = (
                rating(r, one.address, by, "one axle") for r in (both, none, pulled)
            )
            factors = [f for f in (first.factor, second.factor) if f is not None]
            if not factors:
                assert found.factor is None
                continue
            assert found.factor == pytest.approx(min(factors), rel=1e-7)
            if found.factor < 0.999 * max(factors):
                assert found.pull == ("none" if first.factor == min(factors) else "measured")
                kept[one.name] = found.pull
    # By hand: the pull stretches the diagonal it crosses and the counter; the chord it relieves.
    assert (kept["U2-L3"], kept["U3-L2"], kept["L2-L3"]) == ("measured", "measured", "none")


def test_a_pull_makes_the_diagonal_that_it_crosses_weaker_while_both_work() -> None:
    # By hand: in the crossed panel the counter's pull T adds as much to the main diagonal, whose
    # dead-load force is 4 kip of shear x 25/20 = 5 kip; with T = 6 it carries 11. The chord below
    # loses T x 15/25 of its (2.5 x 8 x 30 - 8 x 15) / 20 = 24 kip.
    truss = crossed(pull_kip=6.0)
    of = bridge(truss, kip_a_panel=8.0)
    pulled = rated(replace(of, trusses=(fitted(truss, of),)), WHEEL)
    assert wheel(pulled, "near/U2-L3").dead == pytest.approx(11.0)
    assert wheel(pulled, "near/U3-L2").dead == pytest.approx(6.0)
    assert wheel(pulled, "near/L2-L3").dead == pytest.approx(24.0 - 3.6)
    # As found slack the counter works too, for the panel is sheared; still both balance the 4 kip.
    found = rated(of, WHEEL)
    main, counter = (wheel(found, f"near/{name}").dead for name in ("U2-L3", "U3-L2"))
    assert main - counter == pytest.approx(5.0)


def test_the_dead_load_force_that_is_told_is_that_of_the_state_that_governs() -> None:
    # By hand, as above: with the pull 5 + 25 kip in the main diagonal.
    found = wheel(rated(bridge(crossed(pull_kip=25.0), kip_a_panel=8.0), WHEEL), "near/U2-L3")
    assert found.pull == "measured"
    assert found.dead == pytest.approx(30.0)


UNMEASURED = Eyebars(bars=(Eyebar(width=3.0, thickness=None, head=7.0, hole=2.5),) * 2)


def unmeasured() -> Bridge:
    bars: dict[str, dict[str, Any]] = {
        name: {"as_built": PAIR} for name in ("L0-L1", "L1-L2", "L3-L4")
    }
    bars["L2-L3"] = {"as_built": UNMEASURED}
    return bridge(pratt(4, bars=bars), kip_a_panel=8.0)


def test_a_bar_that_was_not_measured_is_not_rated_and_the_posting_is_provisional() -> None:
    found = rated(unmeasured(), WHEEL)
    silent = part(found, "near/L2-L3")
    assert silent.ratings == ()
    assert silent.not_rated == "thickness of near/L2-L3 not measured"
    assert found.posting.provisional
    assert found.posting.not_rated == ("near/L2-L3",)
    assert wheel(found, "near/L1-L2").factor is not None


def test_for_stiffness_an_unmeasured_bar_is_taken_like_its_kind_and_this_is_said() -> None:
    # By hand: the other bottom chords have 2 x 3 x 3/4 = 4.5 in2.
    (said,) = [s for s in rated(unmeasured(), WHEEL).cautions if "near/L2-L3" in s]
    assert "was not measured" in said
    assert "taken as 4.50 in2" in said


def test_a_reason_that_the_record_gives_is_the_parts_reason() -> None:
    truss = pratt(4, bars={"U1-L2": {"not_rated": "crack in the head at U1"}})
    found = rated(bridge(truss, kip_a_panel=8.0), WHEEL)
    assert part(found, "near/U1-L2").not_rated == "crack in the head at U1"
    assert part(found, "near/U1-L2").ratings == ()


def thinned(truss: Truss) -> Truss:
    """The truss with half of one bottom chord rusted away: strength, not stiffness."""
    bars = tuple(
        replace(one, left=ONE) if one.name == "L1-L2" else one for one in truss.bars
    )
    return replace(truss, bars=bars)


def test_trusses_alike_are_swept_once_and_keep_their_own_strengths(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    # Law: each truss of the bridge is rated as it would be alone.
    near = pratt(4, bars={"L1-L2": {"as_built": PAIR}})
    far = thinned(pratt(4, name="far", bars={"L1-L2": {"as_built": PAIR}}))
    swept: list[int] = []
    real = eyebar.rating.families.sweeps

    def counted(*arguments: Any) -> Any:
        swept.append(len(arguments[1]))
        return real(*arguments)

    monkeypatch.setattr(eyebar.rating.families, "sweeps", counted)
    both = rated(bridge(near, far, kip_a_panel=8.0), WHEEL)
    together = sum(swept)
    alone = {
        truss.name: rated(bridge(truss, kip_a_panel=8.0), WHEEL) for truss in (near, far)
    }
    assert sum(swept) == 3 * together
    for name, found in alone.items():
        for one in found.parts:
            assert part(both, one.address).ratings == one.ratings
        assert wheel(found, f"{name}/L1-L2") == wheel(both, f"{name}/L1-L2")
    # By hand: half the strength, the same 8 kip x 22.5 / 20 = 9 kip of dead load.
    whole, half = (wheel(both, f"{name}/L1-L2").factor for name in ("near", "far"))
    assert half / whole == pytest.approx((STRENGTH - 9.0) / (2.0 * STRENGTH - 9.0))


def test_trusses_that_carry_different_weights_are_swept_each() -> None:
    near, far = pratt(4), pratt(4, name="far")
    of = bridge(near, far, kip_a_panel=8.0)
    heavy = tuple(
        replace(w, kip_at_joints={j: 2.0 * k for j, k in w.kip_at_joints.items()})
        for w in of.weights["far"]
    )
    found = rated(replace(of, weights={**of.weights, "far": heavy}), WHEEL)
    assert wheel(found, "near/L1-L2").dead == pytest.approx(9.0)
    assert wheel(found, "far/L1-L2").dead == pytest.approx(18.0)
    assert wheel(found, "far/L1-L2").factor < wheel(found, "near/L1-L2").factor
