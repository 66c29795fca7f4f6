from dataclasses import replace

import pytest

from eyebar.errors import NotMeasured, OutOfRange
from eyebar.loads.dead import dead_sets, factored, joint_loads, panel_lengths_ft
from eyebar.office import office_values, shipped_values
from eyebar.sections.shapes import Plate, Plates
from eyebar.terms import Method
from tests.loads.made import bar, section, truss, weight

STATIONS = {"L0": 0.0, "L1": 10.0, "L2": 30.0}
# 0.25 lb/in3 x 4 in2 x 100 in = 100 lb; 0.25 x 2 x 200 = 100 lb.
LOWER = bar("L0", "L1", area=4.0, length=100.0, density=0.25)
UPPER = bar("U1", "L1", area=2.0, length=200.0, density=0.25)
TRUSS = truss(LOWER, UPPER, stations_ft=STATIONS)


def test_half_of_a_bars_weight_lies_at_each_of_its_ends() -> None:
    # By hand: 0.05 kip at each end of either bar, both at L1.
    loads = joint_loads(TRUSS, ())
    assert {joint: dc for joint, (dc, _) in loads.items()} == pytest.approx(
        {"L0": 0.05, "L1": 0.1, "L2": 0.0, "U1": 0.05}
    )


def test_a_weight_along_the_floor_goes_to_its_joints_by_panels() -> None:
    # By hand, 0.2 kip/ft on panels of 10 and 20 ft: 1, 3 and 2 kip.
    deck = weight("deck", wearing=False, kip_per_ft=0.2)
    bare = joint_loads(TRUSS, ())
    loads = joint_loads(TRUSS, [deck])
    added = {joint: loads[joint][0] - bare[joint][0] for joint in loads}
    assert added == pytest.approx({"L0": 1.0, "L1": 3.0, "L2": 2.0, "U1": 0.0})


def test_what_may_be_taken_off_is_kept_apart_from_what_stays() -> None:
    gravel = weight("gravel", wearing=True, kip_per_ft=0.1)
    beam = weight("floorbeam", wearing=False, kip_at_joints={"L1": 0.6})
    loads = joint_loads(TRUSS, [gravel, beam])
    assert loads["L1"] == (pytest.approx(0.7), pytest.approx(1.5))
    assert loads["U1"][1] == 0.0


def test_every_pound_of_the_bridge_arrives_at_a_joint() -> None:
    # Law: the sum of joint loads is the sum of weights; here 0.2 kip of bars, 6 + 3 + 0.6.
    items = [
        weight("deck", wearing=False, kip_per_ft=0.2),
        weight("gravel", wearing=True, kip_per_ft=0.1),
        weight("floorbeam", wearing=False, kip_at_joints={"L1": 0.6}),
    ]
    loads = joint_loads(TRUSS, items)
    assert sum(dc + dw for dc, dw in loads.values()) == pytest.approx(9.8)


def test_pieces_that_hang_beside_a_bar_weigh_at_its_ends() -> None:
    # By hand: one piece of 2 in2 hangs beside the 4 in2 that work: 0.25 x 2 x 100 / 2 = 25 lb more.
    beside = truss(replace(LOWER, hanging=section(2.0)), UPPER, stations_ft=STATIONS)
    loads = joint_loads(beside, ())
    assert (loads["L0"][0], loads["L1"][0]) == (pytest.approx(0.075), pytest.approx(0.125))


def test_a_broken_bar_still_weighs() -> None:
    hanging = truss(LOWER, stations_ft=STATIONS, broken=(UPPER,))
    # The same weights at the same joints, in another order of adding.
    assert joint_loads(hanging, ()) == joint_loads(TRUSS, ())


def test_an_area_that_stands_in_is_weighed_in_the_place_of_an_unmeasured_one() -> None:
    # By hand: 0.25 x 8 x 100 = 200 lb, 0.1 kip at L0.
    assert joint_loads(TRUSS, (), {"L0-L1": 8.0})["L0"][0] == pytest.approx(0.1)


def test_a_bar_whose_size_is_unknown_is_named() -> None:
    unknown = replace(LOWER, as_built=Plates(plates=(Plate(width=3.0, thickness=None),)))
    with pytest.raises(NotMeasured, match="thickness of plate of near/L0-L1 not measured"):
        joint_loads(truss(unknown, stations_ft=STATIONS), ())


def test_a_weight_on_a_joint_that_is_not_there_is_refused() -> None:
    lamp = weight("lamp", wearing=False, kip_at_joints={"L9": 0.1})
    with pytest.raises(OutOfRange, match="joint that lamp hangs on is L9"):
        joint_loads(TRUSS, [lamp])


def test_an_end_has_a_panel_on_one_side_only() -> None:
    assert panel_lengths_ft([0.0, 10.0, 30.0]) == [(0.0, 10.0), (10.0, 20.0), (20.0, 0.0)]


@pytest.mark.parametrize(
    ("method", "greatest", "least"),
    [
        # By hand: the method's factor on DC x 1.10 for details, DW as it is; factors from memory.
        (Method.ALLOWABLE_STRESS, (1.1, 1.0), (1.0, 1.0)),
        (Method.LOAD_FACTOR, (1.43, 1.3), (1.0, 1.0)),
        (Method.LOAD_AND_RESISTANCE, (1.375, 1.5), (0.9, 0.65)),
    ],
)
def test_the_allowance_for_details_is_in_the_greatest_dead_load_alone(
    method: Method, greatest: tuple[float, float], least: tuple[float, float]
) -> None:
    most, fewest = dead_sets(method, surfacing_measured=False, values=shipped_values())
    assert (most.name, most.dc, most.dw) == ("greatest", pytest.approx(greatest[0]), greatest[1])
    assert (fewest.name, fewest.dc, fewest.dw) == ("least", *least)


def test_a_measured_surfacing_has_the_smaller_factor_by_load_and_resistance_only() -> None:
    values = shipped_values()
    for method, dw in ((Method.LOAD_AND_RESISTANCE, 1.25), (Method.LOAD_FACTOR, 1.3)):
        assert dead_sets(method, surfacing_measured=True, values=values)[0].dw == dw


def test_the_office_sets_the_allowance() -> None:
    values = office_values(exceptions={"allowance for details": (0.2, "1", "heavy pin plates")})
    most, _ = dead_sets(Method.ALLOWABLE_STRESS, surfacing_measured=True, values=values)
    assert most.dc == pytest.approx(1.2)
    assert "allowance for details" in values.used


def test_a_dead_load_set_factors_loads_not_forces() -> None:
    # By hand: 1.375 x 2 + 1.5 x 1 = 4.25.
    most, _ = dead_sets(
        Method.LOAD_AND_RESISTANCE, surfacing_measured=False, values=shipped_values()
    )
    assert factored({"L1": (2.0, 1.0)}, most)["L1"] == pytest.approx(4.25)
