from dataclasses import replace

import pytest

from eyebar.office import office_values
from eyebar.rating.posting import EmergencyLimits
from eyebar.terms import Level, Method, VehicleClass
from tests.rating.cases import (
    INVENTORY,
    OPERATING,
    RESISTANCE,
    VEHICLES,
    all_of,
    one,
    policy,
    posted,
)


def test_where_every_vehicle_may_cross_no_limit_is_needed() -> None:
    found = posted(all_of({}))
    assert found.closed is False
    assert (found.single_tons, found.combination_tons, found.exact_tons) == (None, None, None)
    assert found.emergency == EmergencyLimits()
    assert found.sign is None
    assert found.governed_by is not None


def test_the_least_factor_governs_where_nothing_restricts() -> None:
    found = posted(all_of({"SU5": 1.2}))
    assert found.governed_by is not None
    assert found.governed_by.vehicle.name == "SU5"


def test_a_limit_is_the_least_safe_load_rounded_down() -> None:
    # By hand: Type 3 25/0.7 (0.65 - 0.3) = 12.5; SU7 38.75/0.7 x 0.2 = 11.07; Type 3S2
    # 36/0.7 x 0.35 = 18.0; all others at 0.9 are higher.
    found = posted(all_of({"Type 3": 0.65, "SU7": 0.5, "Type 3S2": 0.66}, otherwise=0.9))
    assert (found.single_tons, found.combination_tons) == (11, 18)
    assert found.exact_tons == pytest.approx(38.75 / 3.5)
    assert found.governed_by is not None
    assert found.governed_by.vehicle.name == "SU7"
    assert found.sign is not None
    assert found.sign.legend == "WEIGHT LIMIT 11 TONS SINGLE UNIT, 18 TONS COMBINATION"


def test_a_vehicle_that_may_cross_counts_with_its_own_weight() -> None:
    # By hand: SU7 38.75/0.7 x 0.6 = 33.2, but Type 3 may weigh its 25 tons and no more is known.
    found = posted(all_of({"SU7": 0.9, "Type 3": 1.05}))
    assert found.single_tons == 25
    assert found.exact_tons == 25.0
    assert found.combination_tons is None
    assert found.governed_by is not None
    assert found.governed_by.vehicle.name == "SU7"


def test_combinations_alone_may_be_limited() -> None:
    # By hand: 40/0.7 x 0.5 = 28.57; Type 3S2 36 tons at 1.5.
    found = posted(all_of({"Type 3-3": 0.8}))
    assert (found.single_tons, found.combination_tons) == (None, 28)
    assert found.sign is not None
    assert found.sign.designation == "R12-5"


def test_one_number_is_posted_where_the_combinations_is_the_lower() -> None:
    # By hand: single 25/0.7 x 0.4 = 14.3; combination 36/0.7 x 0.2 = 10.29.
    found = posted(all_of({"Type 3": 0.7, "Type 3S2": 0.5}))
    assert (found.single_tons, found.combination_tons) == (10, 10)
    assert found.sign is not None
    assert (found.sign.designation, found.sign.legend) == ("R12-1", "WEIGHT LIMIT 10 TONS")


def test_the_weakest_part_of_all_sets_the_limit() -> None:
    # By hand: 25/0.7 x 0.2 = 7.14 on the second part.
    parts = [*all_of({}), one("Type 3", 0.5, part="downstream/U2-L4")]
    found = posted(parts)
    assert found.single_tons == 7
    assert found.governed_by is not None
    assert (found.governed_by.part, found.governed_by.check) == ("downstream/U2-L4", "body")


@pytest.mark.parametrize(
    ("safe_tons", "closed"),
    [(3.0, False), (2.99, True), (2.9999, True), (3.01, False), (0.0, True)],
)
def test_three_tons_do_not_close_and_a_hair_less_does(safe_tons: float, closed: bool) -> None:
    # 23 CFR 650.313. By allowable stress the safe load is factor x weight; H20 weighs 20 tons.
    values = office_values(exceptions={
        "posting.method": ("allowable-stress", "word", "trial"),
        "posting.level": ("operating", "word", "trial"),
        "posting.vehicles": (["H20"], "vehicles", "trial"),
    })
    found = posted([one("H20", safe_tons / 20.0, OPERATING)], values=values)
    assert found.closed is closed
    assert found.exact_tons == pytest.approx(safe_tons)
    assert found.single_tons == (None if closed else 3)


def test_closing_comes_before_everything_else() -> None:
    # By hand: SU7 at 0.35 may weigh 38.75/0.7 x 0.05 = 2.77 tons by the formula.
    found = posted([*all_of({"SU7": 0.35}), one("EV2", 0.5)])
    assert found.closed is True
    assert found.exact_tons == pytest.approx(2.7679, abs=5e-5)
    assert (found.single_tons, found.combination_tons) == (None, None)
    assert found.emergency == EmergencyLimits()
    assert found.sign is not None
    assert (found.sign.designation, found.sign.legend) == ("R11-2", "BRIDGE CLOSED")
    assert "cannot carry 3 tons is to be closed" in found.cautions[0]
    assert "posting formula" in found.cautions[1]


@pytest.mark.parametrize("factor", [0.3, 0.1, 0.0, -0.5])
def test_a_factor_of_three_tenths_leaves_nothing_by_the_formula(factor: float) -> None:
    found = posted(all_of({"SU4": factor}))
    assert (found.closed, found.exact_tons) == (True, 0.0)


@pytest.mark.parametrize(
    ("method", "level", "single"),
    [
        # By hand: 25 x 0.4 = 10 and 25 x 0.24 = 6 tons.
        ("load-factor", "operating", 10), ("load-factor", "inventory", 6),
    ],
)
def test_an_older_method_posts_factor_times_weight_at_the_policys_level(
    method: str, level: str, single: int
) -> None:
    factors = [
        one("Type 3", 0.4, (Method.LOAD_FACTOR, Level.OPERATING)),
        one("Type 3", 0.24, (Method.LOAD_FACTOR, Level.INVENTORY)),
        one("Type 3", 0.9, RESISTANCE),
    ]
    found = posted(factors, values=policy(method, level))
    assert found.single_tons == single
    assert (found.method, found.level) == (method, level)


def test_closing_is_decided_at_operating_even_where_the_office_posts_at_inventory() -> None:
    # By hand: operating 25 x 0.4 = 10 tons; inventory 25 x 0.24 = 6.
    factors = [one("Type 3", 0.4, OPERATING), one("Type 3", 0.24, INVENTORY)]
    found = posted(factors, values=policy("allowable-stress", "inventory"))
    assert found.closed is False
    assert found.exact_tons == pytest.approx(10.0)
    assert found.single_tons == 6


def test_the_owner_decides_where_only_the_offices_lower_level_is_under_three_tons() -> None:
    # By hand: operating 25 x 0.2 = 5 tons; inventory 25 x 0.11 = 2.75.
    factors = [one("Type 3", 0.2, OPERATING), one("Type 3", 0.11, INVENTORY)]
    found = posted(factors, values=policy("allowable-stress", "inventory"))
    assert found.closed is None
    assert found.exact_tons == pytest.approx(5.0)
    assert (found.single_tons, found.combination_tons) == (None, None)
    assert "the owner must decide between closing the bridge and posting" in found.cautions[0]
    assert found.sign is not None
    assert "OWNER DECIDES" in found.sign.legend


def test_under_three_tons_at_operating_the_owner_is_not_asked() -> None:
    factors = [one("Type 3", 0.11, OPERATING), one("Type 3", 0.06, INVENTORY)]
    assert posted(factors, values=policy("allowable-stress", "inventory")).closed is True


def test_a_part_without_a_rule_takes_the_policys_other_method() -> None:
    # By hand: timber at 0.5 by allowable stress 25 x 0.5 = 12.5; the bar 25/0.7 x 0.6 = 21.4.
    factors = [
        one("Type 3", 0.9), one("Type 3", 0.2, OPERATING),
        one("Type 3", 0.5, OPERATING, part="floor/deck"),
    ]
    found = posted(factors)
    assert found.single_tons == 12
    assert found.governed_by is not None
    assert found.governed_by.part == "floor/deck"
    assert any("Parts without a rule" in said for said in found.cautions)


def test_a_part_that_a_vehicle_does_not_touch_takes_no_other_method() -> None:
    factors = [*all_of({}), one("Type 3", None, part="x"), one("Type 3", 0.2, OPERATING, part="x")]
    assert posted(factors).single_tons is None


def test_vehicles_outside_the_policys_list_set_nothing() -> None:
    assert posted([*all_of({}), one("HS20", 0.2), one("EV3", 1.2)]).single_tons is None


def test_while_a_part_is_not_rated_the_posting_is_provisional_and_the_sign_says_so() -> None:
    found = posted(all_of({"Type 3": 0.65}), not_rated=("upstream/L4/pin", "floor/deck"))
    assert found.provisional
    assert found.not_rated == ("upstream/L4/pin", "floor/deck")
    assert found.sign is not None
    assert found.sign.legend == "PROVISIONAL WEIGHT LIMIT 12 TONS SINGLE UNIT"
    assert not posted(all_of({"Type 3": 0.65})).provisional


def test_emergency_vehicles_have_axle_tandem_and_gross_limits() -> None:
    # By hand, (RF - 0.3)/0.7: EV2 at 0.86 0.8 x 16.75 = 13.4 and 0.8 x 28.75 = 23.0 less a hair;
    # EV3 at 0.65 0.5 x 31 = 15.5 and 0.5 x 43 = 21.5.
    found = posted([*all_of({}), one("EV2", 0.86), one("EV3", 0.65)])
    assert found.emergency == EmergencyLimits(
        single_axle_tons=13, tandem_tons=15, gross_tons=21
    )
    assert (found.single_tons, found.closed) == (None, False)
    assert found.sign is not None
    assert found.sign.designation == "R12-7"


def test_an_emergency_vehicle_that_may_cross_counts_with_its_own_weights() -> None:
    # By hand: EV2 rear axle 16.75 tons as it is; EV3 at 0.86 0.8 x 31 = 24.8 and 34.4 gross, but
    # EV2's own 28.75.
    found = posted([*all_of({}), one("EV2", 1.1), one("EV3", 0.86)])
    assert found.emergency == EmergencyLimits(
        single_axle_tons=16, tandem_tons=24, gross_tons=28
    )


def test_a_light_vehicle_that_may_cross_does_not_close_the_bridge() -> None:
    buggy = replace(
        VEHICLES["Type 3"], name="buggy", axles_kip=(0.8, 0.9, 1.0),
        vehicle_class=VehicleClass.EVERYDAY,
    )
    values = office_values()
    listed = replace(
        values, rows={**values.rows, "posting.vehicles": replace(
            values["posting.vehicles"], value=("Type 3", "buggy"),
        )},
    )
    crossing = replace(one("Type 3", 2.0), vehicle=buggy)
    found = posted([one("Type 3", 0.65), crossing], values=listed)
    assert (found.closed, found.single_tons) == (False, 12)
    stopped = posted([one("Type 3", 0.65), replace(crossing, factor=0.8)], values=listed)
    assert stopped.closed is True


def test_without_any_rated_part_nothing_is_called_safe() -> None:
    found = posted([], not_rated=("upstream/U1-L2",))
    assert (found.closed, found.exact_tons, found.governed_by) == (None, None, None)
    assert "no load is called safe" in found.cautions[0]
    assert found.sign is not None
    assert found.sign.legend.startswith("NOT RATED")


def test_a_rating_without_the_vehicles_of_the_policy_still_names_what_governs() -> None:
    found = posted([one("HS20", 0.9, OPERATING), one("H15", 0.7, OPERATING)])
    assert found.closed is None
    assert found.governed_by is not None
    assert found.governed_by.vehicle.name == "H15"


def test_an_office_may_round_to_larger_steps() -> None:
    # By hand: 12.5 tons down to a multiple of 5.
    values = office_values(exceptions={"posting.step": (5.0, "tons", "trial")})
    assert posted(all_of({"Type 3": 0.65}), values=values).single_tons == 10
