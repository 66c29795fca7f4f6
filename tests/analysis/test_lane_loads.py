"""Lane loads against every pattern of loaded panels, the single weight at any joint or between.

How a uniform load must lie to be worst for a bar depends on the bars that then work. What is
found by trying is held against all 2^n patterns of whole panels with the weight at places along
the road.
"""

from itertools import product

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.optimize import linprog

from eyebar.analysis.passage import spots
from eyebar.analysis.places import Places, places
from eyebar.analysis.rays import Task
from eyebar.analysis.sweep import sweeps
from eyebar.analysis.uniform import Lane, LaneWish, lane_tasks
from eyebar.terms import Direction
from tests.analysis.oracles import least_energy, statics
from tests.analysis.solving import Loaded, first_passages, least_multiples, loaded
from tests.analysis.trusses import (
    COUNTERS,
    Drawing,
    dead_load,
    double_intersection,
    pratt,
    wild_truss,
)
from tests.rating.resolved import trusses

Floats = NDArray[np.float64]

CAP = 40.0
LANE = Lane(kip_per_ft=0.3, point_kip=12.0)
TRUSSES = {
    "crossed rods": pratt(6),
    "crossed rods, odd": pratt(7),
    "counters in the middle": pratt(8, counters=("U4-L3", "U4-L5", "U3-L2", "U5-L6")),
    "four counters": double_intersection(counters=COUNTERS, depth=312.0),
}
WILD = (0, 1, 3, 7, 11, 44, 45)
SOUGHT = 8.0
"""Beyond this multiple a pattern may be worse on trusses of wildly unequal areas."""
names = pytest.mark.parametrize("name", TRUSSES)


def held(drawing: Drawing) -> Loaded:
    return loaded(drawing, dead_load(drawing, floor_kip=5.0, roof_kip=1.2))


def chords(drawing: Drawing) -> NDArray[np.bool_]:
    """Which bars lie level."""
    return np.array([drawing.joints[a][1] == drawing.joints[b][1] for a, b in
                     (bar.ends for bar in drawing.bars)])


def lane_task(
    truss: Loaded, bars: NDArray[np.intp], lane: Lane, train: Places | None = None
) -> Task:
    """The lane loads that are taken for the worst for some bars."""
    wish = LaneWish(
        bars=bars, chords=chords(truss.drawing), lane=lane, fixed=truss.fixed, start=truss.start,
        train=train,
    )
    task = lane_tasks(truss.lines, [wish], CAP)[0]
    assert task is not None
    return task


def patterns(truss: Loaded, lane: Lane, moving: Floats) -> Floats:
    """(r, p) loads of every pattern of loaded panels with each of some moving loads (k, p)."""
    stations = truss.drawing.stations_ft
    rows = []
    for on in product((0.0, 1.0), repeat=len(stations) - 1):
        half = 0.5 * lane.kip_per_ft * np.diff(stations) * on
        rows.append(np.append(half, 0.0) + np.append(0.0, half))
    every: Floats = np.array(rows)[:, None, :] + moving[None]
    return every.reshape(-1, len(stations))


def by_patterns(truss: Loaded, loads: Floats, limits: Floats, sense: int) -> Floats:
    """(n,) least multiple at which each limit is reached, or infinity, each load by its own path.
    """
    return least_multiples(truss, loads @ truss.units, sense * limits, sense, cap=CAP)


@pytest.mark.parametrize("sense", [1, -1])
@names
def test_no_pattern_of_loaded_panels_reaches_a_strength_earlier(name: str, sense: int) -> None:
    truss = held(TRUSSES[name])
    bars = np.arange(len(truss.drawing.bars))
    task = lane_task(truss, bars, LANE)
    swept = sweeps(truss.sets, [task], CAP)[0]
    weights = LANE.point_kip * np.eye(len(truss.drawing.floor_joints))
    between = 0.5 * (weights[:-1] + weights[1:])
    every = patterns(truss, LANE, np.concatenate([weights, between]))
    dead = np.array(list(truss.dead().values()))
    for extra in (8.0, 30.0, 70.0):
        limits = np.maximum(sense * dead, 0.0) + extra
        ours = first_passages(swept, limits, sense).multiple
        theirs = by_patterns(truss, every, limits, sense)
        met = np.isfinite(theirs)
        assert (ours[met] <= theirs[met] * (1.0 + 1e-9)).all()


@pytest.mark.parametrize("number", WILD)
def test_no_pattern_reaches_a_strength_earlier_where_areas_are_wildly_unequal(number: int) -> None:
    # Trusses 3 and 44 are worst for a web bar where a rod is about to go slack: by a load that is
    # worst with it working, or without it, its strength was reached up to 1.4 % late.
    truss = held(wild_truss(number))
    bars = np.arange(len(truss.drawing.bars))
    swept = sweeps(truss.sets, [lane_task(truss, bars, LANE)], CAP)[0]
    every = patterns(truss, LANE, LANE.point_kip * np.eye(len(truss.drawing.floor_joints)))
    dead = np.array(list(truss.dead().values()))
    for sense in (1, -1):
        for extra in (8.0, 70.0):
            limits = np.maximum(sense * dead, 0.0) + extra
            theirs = by_patterns(truss, every, limits, sense)
            met = theirs < SOUGHT
            ours = first_passages(swept, limits, sense).multiple
            assert (ours[met] <= theirs[met] * (1.0 + 1e-9)).all()


@names
def test_a_lane_load_reaches_the_strength_where_it_says(name: str) -> None:
    # By least energy, at the place and multiple of the passage; and the load is no more than the
    # whole lane and its one weight.
    truss = held(TRUSSES[name])
    bars = np.arange(len(truss.drawing.bars))
    swept = sweeps(truss.sets, [lane_task(truss, bars, LANE)], CAP)[0]
    weight, span = LANE.point_kip, float(truss.drawing.stations_ft[-1])
    assert swept.task.places.loads.min() >= -1e-12
    assert swept.task.places.loads.sum(axis=1).max() <= LANE.kip_per_ft * span + weight + 1e-9
    energy, still = least_energy(truss.drawing), statics(truss.drawing)
    dead = still.loads(dead_load(truss.drawing, floor_kip=5.0, roof_kip=1.2))
    limits = np.full(len(bars), 45.0)
    found = first_passages(swept, limits, 1)
    some = np.flatnonzero(np.isfinite(found.multiple) & (found.multiple > 0.0))
    assert len(some) >= 6
    at = spots(swept, found.edge[some], found.part[some])
    for row, bar in enumerate(some):
        loads = np.linalg.lstsq(truss.units.T, at.growing[row], rcond=None)[0]
        by_energy = energy.forces(dead + found.multiple[bar] * (loads @ still.units()))
        assert by_energy is not None
        assert by_energy[bar] == pytest.approx(45.0, abs=1e-5)


@pytest.mark.parametrize("way", list(Direction))
@pytest.mark.parametrize(
    ("axles", "spacings"), [((25.0, 25.0), (4.0,)), ((8.0, 32.0, 32.0), (14.0, 14.0))]
)
@pytest.mark.parametrize("name", ["crossed rods", "crossed rods, odd"])
def test_a_train_beside_the_lane_load_is_worse_at_no_other_place(
    name: str, axles: tuple[float, ...], spacings: tuple[float, ...], way: Direction
) -> None:
    # All patterns, with the train at each of its places.
    truss = held(TRUSSES[name])
    train = places(axles, spacings, truss.drawing.stations_ft, way)
    lane = Lane(kip_per_ft=0.3, point_kip=0.0)
    bars = np.arange(len(truss.drawing.bars))
    swept = sweeps(truss.sets, [lane_task(truss, bars, lane, train)], CAP)[0]
    every = patterns(truss, lane, train.loads)
    dead = np.array(list(truss.dead().values()))
    for sense, extra in ((1, 40.0), (-1, 40.0), (1, 70.0)):
        limits = np.maximum(sense * dead, 0.0) + extra
        theirs = by_patterns(truss, every, limits, sense)
        met = np.isfinite(theirs)
        ours = first_passages(swept, limits, sense).multiple
        assert (ours[met] <= theirs[met] * (1.0 + 1e-9)).all()


def test_a_chord_of_a_determinate_truss_takes_the_whole_lane_and_the_weight_at_its_moment() -> None:
    # By hand: six panels of 15 ft, 20 ft deep. Chord L2-L3 about U2: 0.3 kip/ft x 30 x 60 / 2 = 270
    # kip-ft, 12 x 30 x 60 / 90 = 240 kip-ft; over 20 ft 25.5 kip a multiple.
    truss = loaded(pratt(6, counters=(), slender=False), {})
    bar = truss.model.names.index("L2-L3")
    swept = sweeps(truss.sets, [lane_task(truss, np.array([bar]), LANE)], CAP)[0]
    limits = np.full(len(truss.model.names), 51.0)
    assert first_passages(swept, limits, 1).multiple[bar] == pytest.approx(2.0, abs=1e-9)


def test_a_bar_that_nothing_on_the_road_loads_has_no_lane_load() -> None:
    # By joints: the middle post of an even Pratt truss with nothing on its upper joint.
    truss = loaded(pratt(6, counters=(), slender=False), {})
    post = truss.model.names.index("U3-L3")
    wish = LaneWish(
        bars=np.array([post]), chords=chords(truss.drawing), lane=LANE, fixed=truss.fixed,
        start=truss.start,
    )
    task = lane_tasks(truss.lines, [wish], CAP)[0]
    if task is not None:
        forces = truss.model.bar_forces(task.growing)[:, post]
        assert forces == pytest.approx(0.0, abs=1e-9)


def end_by_programme(
    drawing: Drawing, dead: Floats, lane: Lane, moving: Floats, loads: Floats
) -> tuple[float, list[Floats]]:
    """The end of equilibrium under a load (p,), and the lane loads with what moves beside them that
    are worst for the mechanism in which it ends: linear programmes alone.

    The shadow prices of a programme's equations are how far the joints go down in its mechanism.
    """
    of_joints = statics(drawing)
    units = of_joints.units()
    bounds: list[tuple[float | None, float | None]] = [
        (None if bar.can_push else 0.0, None if bar.can_pull else 0.0) for bar in drawing.bars
    ]
    found = linprog(
        np.append(np.zeros(len(drawing.bars)), -1.0),
        A_eq=np.column_stack([of_joints.matrix, -(loads @ units)]),
        b_eq=dead,
        bounds=[*bounds, (0.0, CAP)],
    )
    assert found.status == 0
    if -found.fun >= CAP:
        return CAP, []
    down = units @ found.eqlin.marginals
    fine = np.linspace(0.0, 1.0, 2001)[1:] - 0.5 / 2000
    worst = np.zeros(len(down))
    for panel, length in enumerate(np.diff(drawing.stations_ft)):
        on = (1.0 - fine) * down[panel] + fine * down[panel + 1] > 0.0
        piece = lane.kip_per_ft * length / len(fine)
        worst[panel] += piece * (1.0 - fine)[on].sum()
        worst[panel + 1] += piece * fine[on].sum()
    return float(-found.fun), [worst + moving[(moving @ down).argmax()]]


def least_end(drawing: Drawing, dead: Floats, lane: Lane, moving: Floats) -> float:
    """The least end that programmes find, each begun with what moves (k, p) alone at a place."""
    tried: set[tuple[float, ...]] = set()
    least, open_loads = CAP, list(moving)
    while open_loads:
        loads = open_loads.pop()
        key = tuple(np.round(loads, 6))
        if key not in tried and loads.any():
            tried.add(key)
            end, more = end_by_programme(drawing, dead, lane, moving, loads)
            least = min(least, end)
            open_loads += more
    return least


@pytest.mark.parametrize("name", [*TRUSSES, "invented bridge"])
def test_no_lane_load_ends_equilibrium_earlier(name: str) -> None:
    # The invented bridge was told to hold under a fifth more than the lane load that ends it: only
    # loads worst for the strength of single bars had been tried.
    lane, drawing = LANE, TRUSSES.get(name)
    if drawing is None:
        again = next(iter(trusses("quillmarsh").values()))
        lane, drawing, dead = Lane(kip_per_ft=0.48, point_kip=19.5), again.drawing, again.dc
        down = -dead.reshape(-1)
        truss = loaded(drawing, {
            joint: float(down[i]) for i, (joint, axis) in enumerate(again.equilibrium.rows) if axis
        })
    else:
        truss = held(drawing)
        dead = statics(drawing).loads(dead_load(drawing, floor_kip=5.0, roof_kip=1.2))
    weights = lane.point_kip * np.eye(len(drawing.floor_joints))
    task = lane_task(truss, np.arange(len(drawing.bars)), lane)
    ours = float(sweeps(truss.sets, [task], CAP)[0].ends.min(initial=CAP))
    # The programme's lane ends within a two-thousandth of a panel of where the line is zero.
    assert ours == pytest.approx(least_end(drawing, dead, lane, weights), rel=1e-6)
