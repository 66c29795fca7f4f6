"""Factors of small trusses worked out with a pencil, through the whole engine."""

from dataclasses import replace

import pytest

from eyebar.bridge.parts import Bridge
from eyebar.terms import CHORD_KINDS, Combine, Direction, Level, Method, VehicleClass
from eyebar.vehicles import shipped_vehicles
from tests.published.printing import printed
from tests.rating.bridges import (
    ASR_INVENTORY,
    ASR_OPERATING,
    H15,
    LEGAL,
    LFR_INVENTORY,
    LFR_OPERATING,
    PAIR,
    SPREAD_FT,
    TRUCK,
    WHEEL,
    bridge,
    part,
    pratt,
    rated,
    rating,
    road,
    values,
    vehicle,
)

# Four panels of 15 ft, 10 ft deep. The bottom chord L1-L2 carries the moment at L1 over the depth.
# Dead load P at L1, L2, L3: 1.5 P x 15 ft / 10 ft = 2.25 P, which is to be 22 kip.
# H15, rear axle over L1 and front axle 14 ft on: (24 x 15 x 45 + 6 x 15 x 31) / 60 / 10 = 31.65 kip
# of which the truss is to take 24: the curb is put where the lever rule gives that share.
PANEL_KIP = 22.0 / 2.25
SHARE = 24.0 / 31.65
CHORD = {"L1-L2": {"as_built": PAIR}}
# One lane: share = 1 - (curb + 2 ft + half the gauge) / spread.
ROAD = road(
    "near", truss_spacing_ft=SPREAD_FT, curb_ft={"near": SPREAD_FT * (1.0 - SHARE) - 5.0}
)
OF_PENCIL = values({
    # The worked example has an impact of 0.27 for a span of 60 ft, and no factor for one lane.
    "impact.older methods.greatest": 0.27, "multiple presence.load-and-resistance.one lane": 1.0,
})


def of_pencil(condition: int = 6) -> Bridge:
    truss = pratt(4, depth_ft=10.0, bars=CHORD)
    return bridge(
        truss, kip_a_panel=PANEL_KIP, roadway=ROAD, superstructure_condition=condition
    )


@pytest.mark.parametrize(
    ("by", "capacity", "factor"),
    [
        # By hand (area 4.5 in2, yield 26 ksi, D = 22, L = 24, I = 0.27, in LRFR 0.33):
        # 0.55 x 26 x 4.5 = 64.35; (64.35 - 22) / (24 x 1.27)
        (ASR_INVENTORY, "64.35", "1.389"),
        # 0.75 x 26 x 4.5 = 87.75; (87.75 - 22) / 30.48
        (ASR_OPERATING, "87.75", "2.157"),
        # 26 x 4.5 = 117; (117 - 1.3 x 22) / (2.17 x 30.48)
        (LFR_INVENTORY, "117.0", "1.337"),
        (LFR_OPERATING, "117.0", "2.231"),
        # 0.95 (code 5) x 0.90 (eyebars) x 0.95 x 117 = 95.03;
        # (95.03 - 1.25 x 22) / (1.30 x 24 x 1.33)
        (LEGAL, "95.03", "1.627"),
    ],
)
def test_a_bottom_chord_of_two_eyebars_has_the_factors_of_the_worked_example(
    by: tuple[Method, Level], capacity: str, factor: str
) -> None:
    found = rating(rated(of_pencil(5), TRUCK, by=OF_PENCIL), "near/L1-L2", by)
    assert found.capacity == printed(capacity)
    assert found.factor == printed(factor)
    assert found.plain_factor == pytest.approx(found.factor, rel=1e-9)
    assert (found.check, found.unit) == ("yield of the body", "kip")
    assert (found.dead, found.live) == pytest.approx((22.0, 24.0))
    assert found.tons == pytest.approx(15.0 * found.factor)
    assert found.events == ()


def test_the_truck_stands_with_its_rear_axle_over_the_hip_joint_and_its_front_towards_the_middle(
) -> None:
    found = rating(rated(of_pencil(), TRUCK, by=OF_PENCIL), "near/L1-L2", ASR_INVENTORY)
    assert found.at is not None
    assert found.at.front_axle_ft == pytest.approx(29.0)
    assert found.at.direction is Direction.UP
    assert found.at.spacing_ft == (14.0,)


def test_a_poor_superstructure_is_held_up_by_the_least_product_of_the_factors() -> None:
    # By hand: 0.85 (code 4) x 0.90 = 0.765, under the least product 0.85: 0.85 x 0.95 x 117.
    found = rating(rated(of_pencil(4), TRUCK, by=OF_PENCIL), "near/L1-L2", LEGAL)
    assert found.capacity == pytest.approx(94.4775)


def test_h15_is_rated_by_the_older_methods_and_the_design_load_by_the_later_one() -> None:
    design = shipped_vehicles()["design truck"]
    found = part(rated(of_pencil(), H15, design, TRUCK, by=OF_PENCIL), "near/L1-L2")
    by = {name: {str(r.method) for r in found.ratings if r.vehicle == name}
          for name in ("H15", "design truck", "15-ton truck")}
    assert by["H15"] == {"allowable-stress", "load-factor"}
    assert by["design truck"] == {"load-and-resistance"}
    assert by["15-ton truck"] == by["H15"] | by["design truck"]
    assert all(r.tons is None for r in found.ratings if r.vehicle == "design truck")


def test_the_lane_load_of_h15_weighs_1_48_times_its_truck_on_the_chord_of_a_120_ft_truss() -> None:
    # By hand, moment at the middle: 0.48 x 120^2 / 8 + 13.5 x 30 = 1269 kip ft; truck
    # 24 x 30 + 6 x 23 = 858. Same strength, dead load and impact: factors go as 1 over them.
    truss = pratt(8)
    of = bridge(truss, kip_a_panel=8.0)
    alone = replace(H15, name="H15 without lane load", combine=Combine.NONE)
    found = rated(of, H15, alone)
    with_lane = rating(found, "near/U3-U4", ASR_INVENTORY, "H15")
    without = rating(found, "near/U3-U4", ASR_INVENTORY, "H15 without lane load")
    assert without.factor / with_lane.factor == printed("1.48")
    assert without.factor / with_lane.factor == pytest.approx(1269.0 / 858.0)
    assert with_lane.check.startswith("lane load: ")
    assert with_lane.at is None
    # By hand: share 1 - (1 + 2 + 3) / 18 = 2/3, depth 20 ft.
    assert with_lane.live == pytest.approx(-1269.0 / 20.0 * 2.0 / 3.0)
    assert with_lane.impact == pytest.approx(50.0 / 245.0)


def test_a_design_load_takes_its_lane_load_without_impact_beside_its_axles_with_it() -> None:
    # By hand, moment at the middle of 120 ft: truck 32 x 30 + 32 x 23 + 8 x 23 = 1880; lane
    # 0.64 x 120^2 / 8 = 1152. Plain: 1.75 x (1.33 x 1880 + 1152) / 20 x 2/3 x 1.2 for one lane.
    truss = pratt(8)
    design = shipped_vehicles()["design truck"]
    by = (LEGAL[0], ASR_INVENTORY[1])
    found = rating(
        rated(bridge(truss, kip_a_panel=8.0), design), "near/U3-U4", by, "design truck"
    )
    live = (1.33 * 1880.0 + 1152.0) / 20.0 * 2.0 / 3.0 * 1.2
    # Dead load by hand: 8 kip x (3.5 x 60 - 45 - 30 - 15) / 20 = 48 kip of thrust.
    assert found.limit_kip is not None
    assert found.factor == pytest.approx((-found.limit_kip - 1.25 * 48.0) / (1.75 * live))
    assert (found.share, found.impact) == pytest.approx((0.8, 0.33))
    assert found.at is not None
    # Front axle leads by 14 ft, the rear one follows at the least spacing: both ways are alike.
    assert found.at.spacing_ft == (14.0, 14.0)
    assert {round(found.at.front_axle_ft, 9), found.at.direction} in (
        {74.0, Direction.UP}, {46.0, Direction.DOWN}
    )


def test_two_lanes_on_twenty_feet_put_more_on_a_truss_than_one() -> None:
    # By hand: one vehicle with its middle 1 + 2 + 3 ft from the truss: 16/22; the other in its
    # half, 1 ft from the lane line: middle 1 + 10 + 1 + 3 = 15 ft: 7/22. Together 23/22; one alone
    # by load and resistance 1.2 x 16/22, which is less.
    wide = road("near", clear_width_ft=20.0, truss_spacing_ft=22.0)
    of = replace(of_pencil(), roadway=wide)
    found = rated(of, TRUCK)
    for by in (ASR_INVENTORY, LFR_OPERATING, LEGAL):
        one = rating(found, "near/L1-L2", by)
        assert (one.lanes, one.share) == (2, pytest.approx(23.0 / 22.0))


def test_on_one_lane_only_the_later_method_has_its_factor_for_one_lane() -> None:
    # By hand: 1 - 6/18 = 2/3, by load and resistance 1.2 times that.
    found = rated(replace(of_pencil(), roadway=road("near")), TRUCK)
    assert rating(found, "near/L1-L2", ASR_INVENTORY).share == pytest.approx(2.0 / 3.0)
    assert rating(found, "near/L1-L2", LEGAL).share == pytest.approx(0.8)


def test_of_three_lanes_as_many_are_loaded_as_make_it_worst_by_the_method() -> None:
    # By hand, spread 38 ft, lanes of 12 ft, middles of the vehicles 6, 17 and 29 ft from the truss:
    # 32, 53 and 62 of 38. Older methods 1.0, 1.0, 0.9: 55.8; later 1.2, 1.0, 0.85: 53.
    wide = road("near", clear_width_ft=36.0, truss_spacing_ft=38.0)
    found = rated(replace(of_pencil(), roadway=wide), TRUCK)
    older, later = (rating(found, "near/L1-L2", by) for by in (LFR_OPERATING, LEGAL))
    assert (older.lanes, older.share) == (3, pytest.approx(55.8 / 38.0))
    assert (later.lanes, later.share) == (2, pytest.approx(53.0 / 38.0))


def test_traffic_that_nobody_counted_is_taken_as_heavy() -> None:
    unknown = replace(of_pencil(), roadway=replace(ROAD, trucks_a_day=None))
    light, heavy = (
        rating(rated(of, TRUCK, by=OF_PENCIL), "near/L1-L2", LEGAL)
        for of in (of_pencil(), unknown)
    )
    assert (light.live_factor, heavy.live_factor) == (1.30, 1.45)
    assert heavy.factor / light.factor == pytest.approx(1.30 / 1.45)


def test_impact_goes_by_the_span_on_chords_and_by_the_like_signed_length_on_diagonals() -> None:
    # By hand: span 60 ft: 50/185. U1-L2: in its panel the line runs from -15/60 to 30/60, zero at
    # 5 ft; like-signed length 10 + 30 = 40 ft for its pull: 50/165, capped at 0.30.
    # A longer truss, 8 panels: 120 ft: 50/245; U3-L4, line -45/120 to 60/120 over 15 ft, zero at
    # 45/7 ft: 60/7 + 60 = 480/7 ft: 50 / (480/7 + 125).
    short = rated(of_pencil(), TRUCK)
    assert rating(short, "near/L1-L2", ASR_INVENTORY).impact == pytest.approx(50.0 / 185.0)
    assert rating(short, "near/U1-L2", ASR_INVENTORY).impact == pytest.approx(0.30)
    longer = rated(bridge(pratt(8), kip_a_panel=8.0), TRUCK)
    assert rating(longer, "near/U3-U4", ASR_INVENTORY).impact == pytest.approx(50.0 / 245.0)
    diagonal = rating(longer, "near/U3-L4", ASR_INVENTORY)
    assert diagonal.impact == pytest.approx(50.0 / (480.0 / 7.0 + 125.0))


def test_dead_load_beyond_the_strength_is_a_factor_of_nothing_and_says_what_it_lacks() -> None:
    # By hand: 100 kip of dead load in a chord that takes 64.35 by allowable stress at inventory:
    # (64.35 - 100) / 30.48, and 87.75 at operating; 117 by load factor is less than 1.3 x 100.
    of = bridge(
        pratt(4, depth_ft=10.0, bars=CHORD), kip_a_panel=100.0 / 2.25, roadway=ROAD
    )
    found = rated(of, TRUCK, by=OF_PENCIL)
    for by, plain in (
        (ASR_INVENTORY, (64.35 - 100.0) / 30.48), (ASR_OPERATING, (87.75 - 100.0) / 30.48),
        (LFR_OPERATING, (117.0 - 130.0) / 30.48 / 1.3),
    ):
        one = rating(found, "near/L1-L2", by)
        assert (one.factor, one.check, one.tons) == (0.0, "dead load", 0.0)
        assert one.plain_factor == pytest.approx(plain)
        assert (one.at, one.events) == (None, ())


def test_a_bar_that_no_load_reaches_has_no_factor_and_says_why() -> None:
    # Under a straight top chord without load on it the middle post of four panels carries nothing.
    found = rating(rated(of_pencil(), TRUCK), "near/U2-L2", ASR_INVENTORY)
    assert found.factor is None
    assert found.tons is None
    assert "does nothing to this part" in found.reason
    assert found.dead == pytest.approx(0.0, abs=1e-9)


def test_a_vehicle_wider_than_the_road_has_no_factor_and_says_why() -> None:
    wide = replace(TRUCK, name="house on wheels", width_ft=17.0)
    found = rated(of_pencil(), TRUCK, wide)
    for one in part(found, "near/L1-L2").ratings:
        if one.vehicle == "house on wheels":
            assert one.factor is None
            assert "too wide to cross" in one.reason
        else:
            assert one.factor is not None
    assert len(part(found, "near/L1-L2").ratings) == 10


def test_a_truss_without_counters_ends_where_dead_load_holds_its_diagonals_taut_no_more() -> None:
    # By hand, six panels, P = 8 on each joint: panel 3 has 2.5 P - 2 P = 4 kip of shear. One axle
    # of 10 kip on L2, share 2/3, takes 1/3 of itself off it: 4 / (10 x 2/3 / 3) axles with impact,
    # each part's own: chords 50/215 (span 90 ft), all others 0.30 (a short length). By load factor
    # over 1.3, the least dead load being that of allowable stress. All other limits are farther.
    truss = pratt(6, slender=True)
    found = rated(bridge(truss, kip_a_panel=8.0), WHEEL)
    rated_parts = [one for one in found.parts if one.ratings]
    assert len(rated_parts) == len(truss.bars)
    for one in rated_parts:
        impact = 50.0 / 215.0 if one.kind in CHORD_KINDS else 0.30
        ends = 4.0 / (10.0 * 2.0 / 3.0 / 3.0) / (1.0 + impact)
        for by, factor in ((ASR_OPERATING, ends), (LFR_OPERATING, ends / 1.3)):
            (made,) = [r for r in one.ratings if (r.method, r.level) == by]
            assert made.check == "no equilibrium"
            assert made.factor == pytest.approx(factor)
            assert (made.capacity, made.unit, made.limit_kip) == (None, "", None)
            assert made.at is not None
            assert made.at.front_axle_ft in (pytest.approx(30.0), pytest.approx(60.0))


def test_a_part_that_fails_before_the_truss_ends_keeps_its_own_check() -> None:
    # By hand: U1-L1 hangs the joint L1: 8 kip of dead load and the axle; one bar 1 in x 1/2 in,
    # strong 0.75 x 26 x 0.5 = 9.75 kip: (9.75 - 8) / (10 x 2/3 x 1.3) = 0.2019 of the axle.
    thin = replace(PAIR, bars=(replace(PAIR.bars[0], width=1.0, thickness=0.5, head=6.0),))
    truss = pratt(6, slender=True, bars={"U1-L1": {"as_built": thin}})
    found = rated(bridge(truss, kip_a_panel=8.0), WHEEL)
    hanger = rating(found, "near/U1-L1", ASR_OPERATING, "one axle")
    assert hanger.check == "yield of the body"
    assert hanger.factor == pytest.approx(1.75 / (10.0 * 2.0 / 3.0 * 1.3))
    assert rating(found, "near/U2-L2", ASR_OPERATING, "one axle").check == "no equilibrium"


def test_the_emergency_factor_is_its_own() -> None:
    engine = vehicle("engine", (24.0, 33.5), (15.0,), vehicle_class=VehicleClass.EMERGENCY)
    heavy = replace(of_pencil(), roadway=replace(ROAD, trucks_a_day=None))
    assert rating(rated(heavy, engine), "near/L1-L2", LEGAL, "engine").live_factor == 1.3
