import pytest

from eyebar.signs import (
    closed_sign,
    emergency_sign,
    together,
    undecided_sign,
    unrated_sign,
    weight_limit_sign,
)


def test_one_limit_for_all_has_the_plain_sign() -> None:
    # MUTCD 2003 rev. 1, 2B.49: R12-1, WEIGHT LIMIT XX TONS.
    sign = weight_limit_sign(single_tons=6, combination_tons=6)
    assert sign is not None
    assert (sign.designation, sign.legend) == ("R12-1", "WEIGHT LIMIT 6 TONS")
    assert sign.confirmed


@pytest.mark.parametrize(
    ("single", "combination", "legend"),
    [
        (12, 20, "WEIGHT LIMIT 12 TONS SINGLE UNIT, 20 TONS COMBINATION"),
        (12, None, "WEIGHT LIMIT 12 TONS SINGLE UNIT"),
        (None, 20, "WEIGHT LIMIT 20 TONS COMBINATION"),
    ],
)
def test_limits_by_kind_of_vehicle_have_the_sign_with_silhouettes(
    single: int | None, combination: int | None, legend: str
) -> None:
    # MUTCD 2003 rev. 1, 2B.49: R12-5.
    sign = weight_limit_sign(single_tons=single, combination_tons=combination)
    assert sign is not None
    assert (sign.designation, sign.legend) == ("R12-5", legend)


def test_emergency_vehicles_have_a_sign_of_their_own_from_memory() -> None:
    sign = emergency_sign(single_axle_tons=14, tandem_tons=22, gross_tons=24)
    assert sign is not None
    assert sign.designation == "R12-7"
    assert sign.legend == (
        "EMERGENCY VEHICLE WEIGHT LIMIT SINGLE AXLE 14 TONS, TANDEM 22 TONS, GROSS 24 TONS"
    )
    assert not sign.confirmed


def test_without_a_limit_there_is_no_sign() -> None:
    nothing = weight_limit_sign(single_tons=None, combination_tons=None)
    assert nothing is None
    assert emergency_sign(single_axle_tons=None, tandem_tons=None, gross_tons=None) is None
    assert together(nothing, provisional=True) is None


def test_the_word_provisional_stands_inside_the_legend() -> None:
    sign = together(weight_limit_sign(single_tons=6, combination_tons=6), provisional=True)
    assert sign is not None
    assert sign.legend == "PROVISIONAL WEIGHT LIMIT 6 TONS"


def test_two_signs_are_named_together() -> None:
    sign = together(
        weight_limit_sign(single_tons=6, combination_tons=6),
        emergency_sign(single_axle_tons=4, tandem_tons=None, gross_tons=5),
        provisional=False,
    )
    assert sign is not None
    assert sign.designation == "R12-1, R12-7"
    assert sign.legend == (
        "WEIGHT LIMIT 6 TONS; EMERGENCY VEHICLE WEIGHT LIMIT SINGLE AXLE 4 TONS, GROSS 5 TONS"
    )
    assert not sign.confirmed


def test_a_closed_bridge_says_so_and_the_sign_is_from_memory() -> None:
    assert (closed_sign().designation, closed_sign().legend) == ("R11-2", "BRIDGE CLOSED")
    assert not closed_sign().confirmed


def test_where_no_sign_stands_for_an_answer_there_is_no_designation() -> None:
    assert undecided_sign().designation == ""
    assert unrated_sign().designation == ""
