"""Two trusses worked beforehand by a separate stiffness program and by CalculiX, to 1.4e-5 kip.

The ten-panel double-intersection Pratt (15 ft panels, 30 ft deep, E 27,000 ksi; lower chord 6,
upper 12, end posts 14, posts 4, hip verticals 2, diagonals 3 in2), which is twice redundant; and
the six-panel Pratt with crossed rods in its four inner panels (20 ft deep; lower chord 4, upper
chord and end posts 8, verticals 3, rods 1.5 in2), four times redundant.
"""

import numpy as np
import pytest

from eyebar.analysis.paths import SlackSets, starting_sets, ties_split
from tests.analysis.oracles import end_of_equilibrium, statics
from tests.analysis.solving import at_rest, pulled
from tests.analysis.trusses import COUNTERS, Drawing, crossed_pratt, double_intersection

EVERYWHERE = {f"L{i}": 10.0 for i in range(1, 10)}
WORKING = {
    "L0-L1": 22.5, "L1-L2": 22.5, "L2-L3": 32.5, "L3-L4": 47.5, "L4-L5": 55.84, "U1-U2": -47.5,
    "U2-U3": -57.5, "U3-U4": -62.5, "U4-U5": -64.16, "U1-L0": -50.312, "U1-L1": 10.0,
    "U2-L2": -10.0, "U3-L3": -5.0, "U4-L4": -1.66, "U1-L2": 22.361, "U1-L3": 21.213,
    "U2-L4": 14.142, "U3-L5": 7.071, "U4-L6": 2.348,
}
"""10 kip on each of L1 to L9: bars as they were worked, to the digits that were kept."""


def everything(drawing: Drawing) -> Drawing:
    """With every bar able to push, as the first of the two programs took it."""
    return drawing.with_bars(can_push=dict.fromkeys(drawing.names, True))


@pytest.mark.parametrize("slender", [True, False])
def test_the_double_intersection_truss_under_an_even_load(slender: bool) -> None:
    # No bar wants to push that cannot, so that it makes no difference.
    forces = at_rest(double_intersection(slender=slender), EVERYWHERE)
    for name, kip in WORKING.items():
        decimals = len(str(kip).partition(".")[2])
        assert forces[name] == pytest.approx(kip, abs=0.5 * 10.0**-decimals + 1e-6), name


def test_its_middle_goes_down() -> None:
    loads = {joint: (0.0, -kip) for joint, kip in EVERYWHERE.items()}
    _, motion = pulled(double_intersection(slender=False), loads)
    assert motion["L5", "y"] == pytest.approx(-0.8067, abs=5e-5)


APART = {"L3": 10.0 * 7 / 10 * np.sqrt(2.0), "L7": 10.0 * 3 / 10 * np.sqrt(2.0)}
"""By hand, the two systems apart: the odd one's end shear under 10 kip, at 45 degrees."""


@pytest.mark.parametrize(("joint", "kip"), [("L3", 10.518), ("L7", 3.624)])
def test_the_long_diagonal_at_the_hip_under_one_panel_load(joint: str, kip: float) -> None:
    forces = at_rest(double_intersection(slender=False), {joint: 10.0})
    assert forces["U1-L3"] == pytest.approx(kip, abs=5e-4)
    assert abs(forces["U1-L3"] - APART[joint]) > 0.6


@pytest.mark.parametrize("joint", APART)
def test_one_panel_load_finds_no_equilibrium_without_counters(joint: str) -> None:
    # Right of the load the shear turns, and no diagonal leans that way; a linear programme agrees.
    drawing = double_intersection()
    by_itself = statics(drawing).loads({joint: 10.0})
    assert end_of_equilibrium(drawing, by_itself, 0.0 * by_itself, 1.0) == -np.inf
    model = drawing.model()
    fixed = model.influence @ model.loads({joint: 10.0}) + ties_split(model)
    assert starting_sets(SlackSets(model), fixed[None]) == [None]


@pytest.mark.parametrize("joint", APART)
def test_with_counters_one_panel_load_takes_its_own_system_alone(joint: str) -> None:
    # The other system's bars go slack, and what is left is determinate.
    forces = at_rest(double_intersection(counters=COUNTERS), {joint: 10.0})
    assert forces["U1-L3"] == pytest.approx(APART[joint], abs=1e-7)


def test_the_treatment_as_two_systems_is_near_but_beside_the_middle() -> None:
    # By hand, two systems apart: U4-L6 belongs to the even one, whose shear there is nothing.
    forces = at_rest(double_intersection(), EVERYWHERE)
    assert forces["U1-L3"] == pytest.approx(15.0 * np.sqrt(2.0), abs=1e-2)
    assert forces["U4-L6"] == pytest.approx(2.348, abs=5e-4)


CROSSED = [
    ("U1-L2", 15.098, 22.5), ("U2-L1", -7.402, 0.0), ("U2-L3", 5.632, 7.5), ("U3-L2", -1.868, 0.0),
    ("U3-L4", -1.868, 0.0), ("U4-L3", 5.632, 7.5), ("U4-L5", -7.402, 0.0), ("U5-L4", 15.098, 22.5),
]
TWELVE = {f"L{i}": 12.0 for i in range(1, 6)}


@pytest.mark.parametrize(("rod", "elastic", "slack"), CROSSED)
def test_crossed_rods_that_go_slack(rod: str, elastic: float, slack: float) -> None:
    # By joints, slack: the panel's shear, 18 and 6 kip, times 300 / 240.
    assert at_rest(crossed_pratt(), TWELVE)[rod] == pytest.approx(slack, abs=1e-6)
    assert at_rest(everything(crossed_pratt()), TWELVE)[rod] == pytest.approx(elastic, abs=5e-4)


def test_rods_taken_as_able_to_push_hide_a_third_of_the_worst_pull() -> None:
    shared = at_rest(everything(crossed_pratt()), TWELVE)["U1-L2"]
    alone = at_rest(crossed_pratt(), TWELVE)["U1-L2"]
    assert 1.0 - shared / alone == pytest.approx(1.0 / 3.0, abs=0.01)
