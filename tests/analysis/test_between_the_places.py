"""Where bars go slack, axles over panel points are not the worst places: by how much, on one
truss.

The rule that a force is worst where some axle stands over some panel point belongs to one set of
working bars. Here, three axles times three on a light double-intersection truss with counters
make a bottom chord's force greatest inside a panel, 4 % over its greatest at the places; and a
strength looked up at the places alone would pass 4 % late.
"""

from dataclasses import replace

import numpy as np
import pytest
from numpy.typing import NDArray

from eyebar.analysis.passage import extremes, spots
from eyebar.analysis.sweep import Sweep, sweeps
from eyebar.terms import Direction
from tests.analysis.oracles import axles_at, least_energy, road_loads, statics
from tests.analysis.solving import Loaded, first_passages, loaded
from tests.analysis.trusses import countered, dead_load, double_intersection

AXLES, SPACINGS = (16.0, 17.0, 17.0), (15.0, 4.0)
"""A legal truck of three axles, from memory."""
TIMES = 3.0
BAR = "L5-L6"


@pytest.fixture(scope="module")
def truss() -> Loaded:
    return loaded(countered(), dead_load(countered(), floor_kip=2.0, roof_kip=1.0))


@pytest.fixture(scope="module")
def sweep(truss: Loaded) -> Sweep:
    return truss.sweep(AXLES, SPACINGS, Direction.UP, 6.0)


def by_energy(front_ft: float, times: float) -> NDArray[np.float64]:
    """Forces of least energy with the front axle at a station."""
    drawing = countered()
    down = road_loads(drawing, axles_at(AXLES, SPACINGS, front_ft, 1))
    dead = dead_load(drawing, floor_kip=2.0, roof_kip=1.0)
    both = {joint: dead.get(joint, 0.0) + times * down.get(joint, 0.0) for joint in drawing.joints}
    forces = least_energy(drawing).forces(statics(drawing).loads(both))
    assert forces is not None
    return forces


def over_joints() -> list[float]:
    """Fronts at which an axle stands over a panel point: 0, 15 and 19 ft behind it."""
    return sorted({15.0 * k + far for k in range(11) for far in (0.0, 15.0, 19.0)})


def test_a_chord_is_pulled_hardest_inside_a_panel(truss: Loaded, sweep: Sweep) -> None:
    number = truss.model.names.index(BAR)
    _, most, _, edge, part = extremes(sweep, TIMES)
    at = spots(sweep, edge[[number]], part[edge[[number]]])
    front = float(at.front_ft[0])
    # No axle is within 2 ft of a panel point, and least energy gives the force that was found.
    assert min(abs(front - place) for place in over_joints()) > 2.0
    assert by_energy(front, TIMES)[number] == pytest.approx(most[number], abs=1e-6)
    at_places = max(by_energy(place, TIMES)[number] for place in over_joints())
    assert most[number] / at_places == pytest.approx(1.045, abs=0.005)


def test_its_neighbours_within_the_panel_have_less(truss: Loaded, sweep: Sweep) -> None:
    number = truss.model.names.index(BAR)
    _, most, _, edge, part = extremes(sweep, TIMES)
    front = float(spots(sweep, edge[[number]], part[edge[[number]]]).front_ft[0])
    for aside in (-0.05, 0.05):
        assert by_energy(front + aside, TIMES)[number] < most[number] - 1e-3


def test_places_alone_let_the_strength_pass_late(truss: Loaded, sweep: Sweep) -> None:
    number = truss.model.names.index(BAR)
    limits = np.full(len(truss.model.names), np.inf)
    limits[number] = 170.0
    first = first_passages(sweep, limits, 1).multiple[number]
    alone = replace(
        sweep.task,
        places=replace(sweep.task.places, line=np.arange(len(sweep.task.places.front_ft))),
    )
    late = first_passages(sweeps(truss.sets, [alone], 6.0)[0], limits, 1).multiple[number]
    assert first < TIMES < late
    assert late / first == pytest.approx(1.045, abs=0.01)
    # Both are right where they say they are: by least energy, the strength is met at no place by
    # the first multiple, and at one by the late one.
    at_first = max(by_energy(place, float(first))[number] for place in over_joints())
    at_late = max(by_energy(place, float(late))[number] for place in over_joints())
    assert at_first < 165.0
    assert at_late == pytest.approx(170.0, abs=1e-6)


def test_with_one_set_of_working_bars_the_places_are_enough() -> None:
    # Law: under a dead load that keeps the same bars working, extremes are at the places.
    drawing = double_intersection()
    truss = loaded(drawing, dead_load(drawing, floor_kip=60.0, roof_kip=5.0))
    sweep = truss.sweep(AXLES, SPACINGS, Direction.UP, 1.0)
    assert len(np.unique(sweep.sets[sweep.sets >= 0])) == 1
    assert len(sweep.front_ft) == len(over_joints())
    least, most, *_ = extremes(sweep, 0.8)
    alone = replace(
        sweep.task,
        places=replace(sweep.task.places, line=np.arange(len(sweep.task.places.front_ft))),
    )
    low, high, *_ = extremes(sweeps(truss.sets, [alone], 1.0)[0], 0.8)
    assert least == pytest.approx(low, abs=1e-9)
    assert most == pytest.approx(high, abs=1e-9)
