"""Who may cross a small bridge, by hand and by rating again."""

from dataclasses import replace

import pytest

from eyebar.bridge.parts import Bridge, Use
from eyebar.office import Values, office_values
from eyebar.rating import rated_bridge
from eyebar.rating.crossing import Crossing, crossings, rules_of_the_road, use_by_area
from eyebar.rating.posted import posted_for
from eyebar.rating.posting import EmergencyLimits, counted
from eyebar.rating.rate import factors_of
from eyebar.terms import Answer, Combine, Condition, Pace, VehicleClass
from eyebar.vehicles import Vehicle, shipped_vehicles, spread_over
from tests.rating.bridges import PAIR, bridge, pratt, road, values, vehicle

SHIPPED = shipped_vehicles()
POSTING = {name: one for name, one in SHIPPED.items() if one.vehicle_class in (
    VehicleClass.SINGLE, VehicleClass.COMBINATION, VehicleClass.EMERGENCY)}
VALUES = values()


def made(kip_a_panel: float = 4.0, wide_ft: float = 16.0, surface: str = "rough") -> Bridge:
    """Four panels of 20 ft, 10 ft deep, trusses 20 ft apart; the chord L1-L2 alone is weak."""
    truss = pratt(4, panel_ft=20.0, depth_ft=10.0, bars={"L1-L2": {"as_built": PAIR}})
    across = road(
        "near", truss_spacing_ft=20.0, clear_width_ft=wide_ft, surface=surface,
        curb_ft={"near": (20.0 - wide_ft) / 2.0},
    )
    return bridge(truss, kip_a_panel=kip_a_panel, roadway=across)


def everyday(
    name: str, axles_kip: tuple[float, ...], spacings_ft: tuple[object, ...] = (),
    **more: object,
) -> Vehicle:
    return vehicle(
        name, axles_kip, spacings_ft, vehicle_class=VehicleClass.EVERYDAY, **more
    )


def asked(of: Bridge, *vehicles: Vehicle, by: Values = VALUES) -> list[Crossing]:
    return list(crossings(of, by, vehicles, POSTING).crossings)


def factor_under(of: Bridge, one: Vehicle, use: Use) -> float:
    """The least factor by rating the bridge from the beginning."""
    used = replace(of, roadway=replace(of.road, use=use))
    laid = replace(spread_over(one, of.road.clear_width_ft), name="own")
    found = rated_bridge(used, VALUES, {"own": laid})
    factors = counted(factors_of(found.parts, {"own": laid}), VALUES)
    return min(one.factor for one in factors if one.factor is not None)


# By hand. L1-L2 carries the moment at L1 over the depth of 10 ft. One axle P over L1 of 80 ft:
# M = P x 20 x 60 / 80 = 15 P, force 1.5 P. Dead load 4 kip at L1, L2, L3: reaction 6, M = 120 kip
# ft, force 12 kip. Strength of 4.5 in2: 0.95 x 0.90 x 26 x 4.5 = 100.04 kip (code 6: condition 1).
# RF = (100.04 - 1.25 x 12) / (1.30 x 1.33 x share x 1.5 P), share as near as it may come
# (1 - 4/20 + 1 - 10/20)/2 = 0.65, times 1.20 for one lane; in the middle and 1 ft beside it 0.55.
LEFT = 0.95 * 0.90 * 26.0 * 4.5 - 1.25 * 12.0


def by_hand(axle: float, *, share: float = 0.65, lanes: float = 1.2, shock: float = 0.33) -> float:
    return LEFT / (1.30 * (1.0 + shock) * share * lanes * 1.5 * axle)


def test_one_axle_has_the_factor_of_the_pencil() -> None:
    (found,) = asked(made(), everyday("axle", (20.0,)))
    assert found.by is not None
    assert found.by.part == "near/L1-L2"
    assert found.by.factor == pytest.approx(by_hand(20.0), rel=1e-9)
    assert found.answer is Answer.YES


@pytest.mark.parametrize(
    ("wanted", "conditions", "change"),
    [
        # By hand: each rule's own change of the rating factor; the axle is chosen just under it.
        (1.10, [Condition.ALONE], {"lanes": 1.0}),
        (1.205, [Condition.WALKING], {"shock": 0.10}),
        (1.40, [Condition.ALONE, Condition.WALKING], {"lanes": 1.0, "shock": 0.10}),
        # On a smooth road alone and in the middle is more than alone and walking: see below.
        (1.60, [Condition.ALONE, Condition.MIDDLE, Condition.WALKING],
         {"lanes": 1.0, "shock": 0.10, "share": 0.55}),
    ],
)
def test_the_lightest_rules_that_are_enough_are_found(
    wanted: float, conditions: list[Condition], change: dict[str, float]
) -> None:
    axle = by_hand(1.0) * wanted
    one = everyday("axle", (axle,), posted_as=VehicleClass.COMBINATION)
    (found,) = asked(made(), one)
    assert found.answer is Answer.CONDITIONS
    way = found.ways[0]
    rules = [must.condition for must in way.conditions if must.condition is not Condition.PERMIT]
    assert rules == conditions
    assert way.by is not None
    assert way.by.factor == pytest.approx(by_hand(axle, **change), rel=1e-9)
    assert way.by.factor == pytest.approx(factor_under(made(), one, way.use), rel=1e-12)


def test_a_smooth_road_has_no_shock_at_walking_pace_by_load_and_resistance() -> None:
    smooth = made(surface="smooth")
    one = everyday("axle", (20.0,))
    still = factor_under(smooth, one, Use(pace=Pace.STILL))
    assert factor_under(smooth, one, Use(pace=Pace.WALKING)) == still
    assert still == pytest.approx(by_hand(20.0, shock=0.0), rel=1e-9)


def test_what_nothing_makes_safe_is_refused() -> None:
    (found,) = asked(made(), everyday("axle", (200.0,)))
    assert found.answer is Answer.NO
    assert "no condition" in found.reason
    assert not found.ways


def test_fewer_tons_are_found_by_half_tons() -> None:
    # By hand: the part of 1 that the axle may weigh, down to half tons, one kip empty.
    greatest = by_hand(1.0)
    one = everyday("cart", (greatest * 3.0,), empty_axles_kip=(1.0,))
    (found,) = asked(made(), one)
    (way,) = found.ways
    less = next(m for m in way.conditions if m.condition is Condition.FEWER_TONS)
    assert less.tons == pytest.approx(int(greatest / 2.0 / 0.5) * 0.5)
    assert way.by is not None
    assert way.by.factor == pytest.approx(by_hand(2.0 * less.tons), rel=1e-9)


def test_axles_that_may_be_drawn_out_are_a_condition() -> None:
    # By hand: 10 ft apart the second axle stands half way between L1 and L2, at ordinate 1.25
    # of 1.5; 40 ft apart at 0.5. The pair is chosen between the two.
    axle = by_hand(1.0) * 1.5 / (1.5 + 0.9) * 1.65
    one = everyday("pair", (axle, axle), ((10.0, 40.0),))
    (found,) = asked(made(), one)
    assert found.answer is Answer.CONDITIONS
    spread = [m for m in found.ways[0].conditions if m.condition is Condition.SPREAD]
    assert [m.spacing_ft for m in spread] == [40.0]


def test_over_the_sign_there_is_no_plain_yes() -> None:
    weak = made(kip_a_panel=8.0)
    rating = crossings(weak, VALUES, [], POSTING).rating
    limit = rating.posting.single_tons
    assert limit is not None
    axles = (2.0 * limit + 1.0) / 10.0
    long = everyday("long", (axles,) * 10, (30.0,) * 9)
    (found,) = asked(weak, long)
    assert found.answer is Answer.CONDITIONS
    assert found.by is not None
    assert not found.by.restricts
    assert [m.condition for m in found.ways[0].conditions] == [Condition.PERMIT]
    assert found.posted.above


def test_a_closed_bridge_answers_no_to_a_buggy() -> None:
    closed = made(kip_a_panel=16.0)
    assert crossings(closed, VALUES, [], POSTING).rating.posting.closed is True
    for found in asked(closed, SHIPPED["buggy"], SHIPPED["snow"]):
        assert (found.answer, found.ways) == (Answer.NO, ())
        assert "closed" in found.reason


def test_a_bridge_without_a_rating_answers_no() -> None:
    (found,) = crossings(made(), VALUES, [SHIPPED["car"]], {}).crossings
    assert found.answer is Answer.NO
    assert "no load can be called safe" in found.reason


def test_while_the_owner_has_not_decided_nothing_crosses() -> None:
    # By hand, allowable stress: 64.35 - 3 x 20.5 = 2.9 kip are left at inventory, 26.3 else.
    by = office_values(exceptions={
        "posting.method": ("allowable-stress", "word", "trial"),
        "posting.level": ("inventory", "word", "trial"),
    })
    made_of = crossings(made(20.5), by, [SHIPPED["buggy"]], POSTING)
    assert made_of.rating.posting.closed is None
    (found,) = made_of.crossings
    assert found.answer is Answer.NO
    assert "owner must decide" in found.reason


def test_an_emergency_vehicle_goes_under_its_own_limits_and_that_of_single_vehicles() -> None:
    posting = replace(
        crossings(made(8.0), VALUES, [], POSTING).rating.posting, single_tons=20,
        emergency=EmergencyLimits(single_axle_tons=8, tandem_tons=12, gross_tons=15),
    )
    # By hand: 14 tons gross is within 15, its axle of 9 tons is over 8; 16 tons is over 15.
    fire = {"posted_as": VehicleClass.EMERGENCY}
    axle = posted_for(everyday("a", (10.0, 18.0), (15.0,), **fire), posting, VALUES)
    gross = posted_for(everyday("b", (14.0, 18.0), (15.0,), **fire), posting, VALUES)
    tandem = posted_for(everyday("c", (4.0, 13.0, 13.0), (15.0, 4.0), **fire), posting, VALUES)
    assert (axle.limit_tons, axle.above) == (15, "an axle of 9 tons, over the limit of 8 tons")
    assert gross.above == "16 tons, over the limit of 15 tons"
    assert tandem.above == "a group of axles of 13 tons, over the limit of 12 tons"
    assert posted_for(everyday("d", (10.0, 18.0), (15.0,)), posting, VALUES).above == ""


def test_what_is_wider_than_the_road_is_refused_with_the_reason() -> None:
    (found,) = asked(made(), everyday("combine", (10.0,), gauge_ft=14.0, width_ft=16.5))
    assert found.answer is Answer.NO
    assert "16.5 ft wide" in found.reason


def test_a_crowd_takes_its_share_of_the_whole_width() -> None:
    # By hand: 90 lb/ft2 x 16 ft = 1.44 kip/ft, half of it to a truss; moment at L1 of a
    # uniform load w: w x 20 x 60 / 2 = 600 w kip ft, force 60 w; one lane, alone, no shock.
    crowd = SHIPPED["crowd"]
    factor = LEFT / (1.30 * 0.5 * 60.0 * 1.44)
    assert factor_under(made(), crowd, use_by_area(crowd)) == pytest.approx(factor, rel=1e-6)
    (found,) = asked(made(), crowd)
    assert found.by is not None
    assert found.by.factor == pytest.approx(factor, rel=1e-6)


def test_a_herd_walks_and_snow_lies_still() -> None:
    assert use_by_area(SHIPPED["cattle herd"]).pace is Pace.WALKING
    assert use_by_area(SHIPPED["snow"]).pace is Pace.STILL


def test_too_much_by_area_is_lessened_to_what_is_safe() -> None:
    heavy = replace(SHIPPED["crowd"], area_psf=400.0)
    (found,) = asked(made(), heavy)
    assert found.answer is Answer.CONDITIONS
    (must,) = found.ways[0].conditions
    assert found.by is not None
    # By hand: the load grows with the factor, so the safe part is the factor itself.
    assert must.psf == int((found.by.factor or 0.0) * 400.0)
    assert found.ways[0].vehicle.combine is Combine.AREA


def test_the_rules_are_ordered_from_the_lightest_to_the_strictest() -> None:
    *_, strictest = rules_of_the_road(VALUES)
    assert set(strictest[0]) == {Condition.ALONE, Condition.MIDDLE, Condition.WALKING}


def test_a_vehicle_beside_a_crowd_is_rated_with_the_crowd_as_weight() -> None:
    # By hand: 90 lb/ft2 x 16 ft, half to the truss, lasting: 0.72 kip/ft x 60 = 43.2 kip in the
    # chord, times 1.50; an axle of 20 kip on what is left of the strength.
    crowd, axle = SHIPPED["crowd"], everyday("axle", (20.0,))
    alone, = crossings(made(), VALUES, [crowd], POSTING).crossings
    beside, = crossings(made(), VALUES, [crowd], POSTING, beside=[axle]).crossings
    left = LEFT - 1.5 * 43.2
    factor = left / (1.30 * 1.33 * 0.65 * 1.2 * 1.5 * 20.0)
    assert factor < 1.0
    assert alone.answer is Answer.YES
    assert beside.answer is Answer.CONDITIONS
    assert beside.by is not None
    assert beside.by.factor == pytest.approx(factor, rel=1e-6)
    assert [m.condition for m in beside.ways[0].conditions] == [Condition.ALONE]
    light = everyday("light axle", (2.0,))
    assert crossings(made(), VALUES, [crowd], POSTING, beside=[light]).crossings == (alone,)
