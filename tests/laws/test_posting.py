"""The posting never lets through what a part cannot carry.

For any factors from under nothing to over one, by any of the three methods, with any vehicles of
the policy rated.
"""

from hypothesis import given
from hypothesis import strategies as st

from eyebar.office import office_values
from eyebar.rating.posting import Governing, Posting
from eyebar.rating.safe_load import safe_load
from eyebar.terms import Level, Method, VehicleClass
from tests.rating.cases import one, policy, posted

NAMES = ("Type 3", "Type 3S2", "Type 3-3", "SU4", "SU5", "SU6", "SU7", "EV2", "EV3")
POLICIES = {
    (Method.LOAD_AND_RESISTANCE, Level.LEGAL): office_values(),
    (Method.LOAD_FACTOR, Level.OPERATING): policy("load-factor", "operating"),
    (Method.ALLOWABLE_STRESS, Level.OPERATING): policy("allowable-stress", "operating"),
}
rated = st.dictionaries(
    st.tuples(st.sampled_from(NAMES), st.sampled_from(["a", "b"])),
    st.floats(-0.5, 2.0), min_size=1,
)
methods = st.sampled_from(list(POLICIES))


def factors(of: dict[tuple[str, str], float], by: tuple[Method, Level]) -> list[Governing]:
    return [one(name, factor, by, part) for (name, part), factor in of.items()]


def limits(found: Posting) -> list[float]:
    """Limits that only come down: a closed bridge lets nothing through, none needed lets all."""
    if found.closed is not False:
        return [0.0] * 5
    given = (
        found.single_tons, found.combination_tons, found.emergency.single_axle_tons,
        found.emergency.tandem_tons, found.emergency.gross_tons,
    )
    return [float("inf") if tons is None else float(tons) for tons in given]


@given(rated, methods)
def test_no_limit_is_above_the_safe_load_of_a_vehicle_it_is_for(
    of: dict[tuple[str, str], float], by: tuple[Method, Level]
) -> None:
    values = POLICIES[by]
    found = posted(factors(of, by), values=values)
    single, combination, _, _, gross = limits(found)
    for each in factors(of, by):
        assert each.factor is not None
        safe = safe_load(each.vehicle.weight_tons, each.factor, each.method, values)
        kind = each.vehicle.vehicle_class
        limit = {
            VehicleClass.SINGLE: single, VehicleClass.COMBINATION: combination,
            VehicleClass.EMERGENCY: gross,
        }[kind]
        # A kind without a limit lets through the vehicle as it is: then its factor is 1 or more.
        assert min(limit, each.vehicle.weight_tons) <= safe
        if found.exact_tons is not None and kind is not VehicleClass.EMERGENCY:
            assert found.exact_tons <= safe


@given(rated, methods, st.floats(0.0, 1.0))
def test_lesser_factors_never_raise_a_limit_or_open_a_bridge(
    of: dict[tuple[str, str], float], by: tuple[Method, Level], scale: float
) -> None:
    # Condition: positive factors; scaling a negative one down raises it.
    positive = {key: abs(factor) for key, factor in of.items()}
    lesser = {key: factor * scale for key, factor in positive.items()}
    before = posted(factors(positive, by), values=POLICIES[by])
    after = posted(factors(lesser, by), values=POLICIES[by])
    assert all(b <= a for a, b in zip(limits(before), limits(after), strict=True))
    assert after.closed or not before.closed


@given(rated, methods)
def test_closed_means_under_three_tons_and_open_means_three_or_more(
    of: dict[tuple[str, str], float], by: tuple[Method, Level]
) -> None:
    found = posted(factors(of, by), values=POLICIES[by])
    if found.exact_tons is not None:
        assert found.closed is (found.exact_tons < 3.0)
    else:
        assert found.closed is not True


@given(rated, methods, st.randoms(use_true_random=False))
def test_the_order_of_the_factors_does_not_matter(
    of: dict[tuple[str, str], float], by: tuple[Method, Level], random: object
) -> None:
    listed = factors(of, by)
    shuffled = list(listed)
    random.shuffle(shuffled)  # type: ignore[attr-defined]
    one_way = posted(listed, values=POLICIES[by])
    other_way = posted(shuffled, values=POLICIES[by])
    assert limits(one_way) == limits(other_way)
    assert (one_way.closed, one_way.exact_tons) == (other_way.closed, other_way.exact_tons)


@given(rated, methods)
def test_the_part_that_governs_is_among_those_that_were_rated(
    of: dict[tuple[str, str], float], by: tuple[Method, Level]
) -> None:
    listed = factors(of, by)
    assert posted(listed, values=POLICIES[by]).governed_by in listed
