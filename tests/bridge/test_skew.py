"""A skew bridge: panel points staggered along one road."""

import math

import pytest

from eyebar.documents.forces import forces_document
from eyebar.record import record_of
from tests.bridge.plain import TODAY, bridge, changed, refused, truss_of

SKEW = ("skew: 0 deg", "skew: 20 deg")
HALF = 9.0 * math.tan(math.radians(20.0))
"""By hand: half of the 18 ft between the trusses times the tangent of the skew, 3.276 ft."""


def test_each_truss_stands_half_the_distance_times_the_tangent_before_or_behind() -> None:
    found = bridge(SKEW)
    near, far = truss_of(found, "left"), truss_of(found, "right")
    assert pytest.approx(3.2757, abs=1e-4) == HALF
    assert [s for _, s in near.floor_joints] == pytest.approx([15.0 * i - HALF for i in range(7)])
    assert [s for _, s in far.floor_joints] == pytest.approx([15.0 * i + HALF for i in range(7)])


def test_the_trusses_themselves_are_alike_and_not_moved() -> None:
    found = bridge(SKEW)
    assert truss_of(found, "left").joints == truss_of(found, "right").joints
    assert truss_of(found, "left").joints["L1"] == (180.0, 0.0)


def test_a_skew_the_other_way_turns_the_stagger_round() -> None:
    found = bridge(("skew: 0 deg", "skew: -20 deg"))
    assert truss_of(found, "left").floor_joints[0][1] == pytest.approx(HALF)


def test_the_result_says_how_the_skew_was_taken() -> None:
    (said,) = [rule for rule in bridge(SKEW).rules if "skew" in rule]
    assert "skew of 20 deg" in said
    assert "right truss stand 3.28 ft further" in said
    assert not [rule for rule in bridge().rules if "skew" in rule]


def test_a_skew_that_nobody_measured_is_taken_as_square_and_said() -> None:
    found = bridge(("skew: 0 deg", "skew: not measured"))
    assert truss_of(found, "left").floor_joints[0][1] == 0.0
    assert any("skew not measured" in rule for rule in found.rules)


def test_both_trusses_meet_the_vehicle_on_one_road() -> None:
    # Law: the trusses are alike, so a vehicle has the same greatest effect on each, and stands
    # twice the stagger further along the road for the one that stands further.
    record = record_of(changed(SKEW), file="skew.yaml", today=TODAY)
    near, far = forces_document(record)["trusses"]
    for bar, live in near["live"]["Type 3"].items():
        other = far["live"]["Type 3"][bar]
        for which in ("min", "max"):
            assert other[which] == pytest.approx(live[which], abs=1e-6)
            if live[f"{which}_at"] is None:
                assert other[f"{which}_at"] is None
                continue
    place, there = (truss["live"]["Type 3"]["U1-U2"]["min_at"] for truss in (near, far))
    assert place["direction"] == there["direction"]
    assert there["front_axle_ft"] - place["front_axle_ft"] == pytest.approx(2.0 * HALF)


def test_the_span_of_a_skew_bridge_is_that_of_its_trusses() -> None:
    stations = [s for _, s in truss_of(bridge(SKEW), "left").floor_joints]
    assert stations[-1] - stations[0] == pytest.approx(90.0)


def test_a_skew_of_no_bridge_is_refused() -> None:
    assert "is no skew of a bridge" in refused(("skew: 0 deg", "skew: 85 deg"))
