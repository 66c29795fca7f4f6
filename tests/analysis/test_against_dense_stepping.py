"""Plain stepping in position, spacing and load never finds more than the sweep does.

Extremes by the sweep are held against forces on a grid of places, a tenth of a foot apart, and
for a varied spacing a few spacings; first passages against the load grown in small steps at every
place. The grid's forces are found one place at a time by the path alone, and some of them by
least energy.
"""

import numpy as np
import pytest
from numpy.typing import NDArray

from eyebar.analysis.passage import extremes, spots
from eyebar.analysis.paths import paths
from eyebar.analysis.sweep import Sweep
from eyebar.terms import Direction
from tests.analysis.oracles import axles_at, least_energy, road_loads, statics
from tests.analysis.solving import FORWARD, Loaded, first_passages, loaded
from tests.analysis.trusses import (
    COUNTERS,
    Drawing,
    countered,
    dead_load,
    double_intersection,
    pratt,
)

Floats = NDArray[np.float64]

UNDERCUT_KIP = 1e-7
TRAINS = {
    # Axles [kip] and spacings [ft], from memory; any trains would do.
    "three axles": ((16.0, 17.0, 17.0), (15.0, 4.0)),
    "five axles": ((10.0, 15.5, 15.5, 15.5, 15.5), (11.0, 4.0, 22.0, 4.0)),
    "varied": ((8.0, 32.0, 32.0), (14.0, (14.0, 30.0))),
}
TRUSSES = {
    "four counters": countered(),
    "four counters, deep": double_intersection(counters=COUNTERS),
    "crossed rods": pratt(6),
    "crossed rods, odd": pratt(7),
    "unequal panels": double_intersection(
        counters=COUNTERS,
        pitches=(150.0, 200.0, 170.0, 180.0, 190.0, 160.0, 210.0, 180.0, 150.0, 190.0),
    ),
}


def held(drawing: Drawing) -> Loaded:
    return loaded(drawing, dead_load(drawing, floor_kip=5.0, roof_kip=1.2))


Where = tuple[float, tuple[float, ...]]
"""A place: station of the front axle, spacings [ft]."""


def grid(
    truss: Loaded, train: str, way: Direction, step_ft: float
) -> tuple[Floats, list[Where]]:
    """Moving loads (r, e), all bars working, at places (front, spacings) a step apart."""
    axles, spacings = TRAINS[train]
    span = float(truss.drawing.stations_ft[-1])
    rows, where = [], []
    for spread in (14.0, 17.3, 21.0, 25.9, 30.0) if train == "varied" else (0.0,):
        apart = tuple(spread if isinstance(s, tuple) else s for s in spacings)
        far = sum(apart)
        begin = 0.0 if way is Direction.UP else -far
        for front in np.arange(begin, begin + span + far, step_ft).tolist():
            down = road_loads(truss.drawing, axles_at(axles, apart, front, FORWARD[way]))
            rows.append([down[joint] for joint in truss.drawing.floor_joints])
            where.append((front, apart))
    return np.array(rows) @ truss.units, where


def stepped(truss: Loaded, growing: Floats, multiple: float) -> Floats:
    """Bar forces (r, n) at a multiple, each place by its own path."""
    walked = paths(
        truss.sets, np.broadcast_to(truss.fixed, growing.shape), growing,
        start=np.full(len(growing), truss.start), cap=multiple,
    )
    assert (walked.multiple[:, -1] == multiple).all()
    return truss.model.bar_forces(walked.forces[:, -1])


def swept(truss: Loaded, train: str, way: Direction, cap: float) -> Sweep:
    axles, spacings = TRAINS[train]
    return truss.sweep(axles, spacings, way, cap)


@pytest.mark.parametrize("way", list(Direction))
@pytest.mark.parametrize("train", TRAINS)
@pytest.mark.parametrize("name", TRUSSES)
def test_no_place_a_tenth_of_a_foot_apart_has_more_force(
    name: str, train: str, way: Direction
) -> None:
    truss = held(TRUSSES[name])
    sweep = swept(truss, train, way, 2.0)
    growing, _ = grid(truss, train, way, 0.1 if train != "varied" else 0.5)
    for multiple in (0.7, 1.6):
        least, most, *_ = extremes(sweep, multiple)
        forces = stepped(truss, growing, multiple)
        assert (forces.max(axis=0) - most).max() < UNDERCUT_KIP
        assert (least - forces.min(axis=0)).max() < UNDERCUT_KIP
        # And no more than stepping could have missed: a tenth of a foot on a panel of 12 at least.
        missed = 0.06 * (most - least).max()
        assert (most - forces.max(axis=0)).max() < missed
        assert (forces.min(axis=0) - least).max() < missed


@pytest.mark.parametrize("name", TRUSSES)
def test_the_paths_of_the_grid_are_least_energy(name: str) -> None:
    truss = held(TRUSSES[name])
    energy, still = least_energy(truss.drawing), statics(truss.drawing)
    growing, where = grid(truss, "five axles", Direction.UP, 0.1)
    rows = np.random.default_rng(7).integers(0, len(where), 15)
    forces = stepped(truss, growing[rows], 1.6)
    dead = dead_load(truss.drawing, floor_kip=5.0, roof_kip=1.2)
    for row, found in zip(rows, forces, strict=True):
        front, apart = where[row]
        down = road_loads(
            truss.drawing, axles_at(TRAINS["five axles"][0], apart, front, 1)
        )
        both = {j: dead.get(j, 0.0) + 1.6 * down.get(j, 0.0) for j in truss.drawing.joints}
        assert found == pytest.approx(energy.forces(still.loads(both)), abs=1e-6)


@pytest.mark.parametrize("way", list(Direction))
@pytest.mark.parametrize("train", TRAINS)
@pytest.mark.parametrize("name", ["four counters", "crossed rods", "unequal panels"])
def test_no_first_passage_is_above_that_of_a_load_grown_in_steps(
    name: str, train: str, way: Direction
) -> None:
    # Strengths are drawn so that each is reached at some multiple between nothing and 3.
    truss = held(TRUSSES[name])
    sweep = swept(truss, train, way, 3.0)
    growing, _ = grid(truss, train, way, 0.5 if train != "varied" else 2.0)
    dead = stepped(truss, growing[:1], 0.0)[0]
    rng = np.random.default_rng(11)
    for sense in (1, -1):
        end = stepped(truss, growing, 3.0)
        reach = (sense * end).max(axis=0) - sense * dead
        limits = sense * dead + rng.uniform(0.05, 0.9, len(dead)) * reach
        limits[reach < 1.0] = np.inf
        first = first_passages(sweep, limits, sense).multiple
        by_steps = np.full(len(dead), np.inf)
        for multiple in np.arange(0.05, 3.0, 0.05):
            forces = stepped(truss, growing, float(multiple))
            reached = (sense * forces >= limits).any(axis=0)
            by_steps[reached] = np.minimum(by_steps[reached], multiple)
        assert (first <= by_steps + 1e-9).all()
        if train != "varied":
            # Stepping in load overshoots by a step, in place by what half a foot may miss; a grid
            # of a few spacings may miss anything.
            met = np.isfinite(by_steps)
            assert (by_steps[met] <= 1.06 * first[met] + 0.05).all()


@pytest.mark.parametrize("way", list(Direction))
@pytest.mark.parametrize("train", TRAINS)
@pytest.mark.parametrize("name", TRUSSES)
def test_at_the_place_and_multiple_of_a_passage_the_force_is_the_limit(
    name: str, train: str, way: Direction
) -> None:
    truss = held(TRUSSES[name])
    drawing, energy, still = truss.drawing, least_energy(truss.drawing), statics(truss.drawing)
    sweep = swept(truss, train, way, 6.0)
    dead = dead_load(drawing, floor_kip=5.0, roof_kip=1.2)
    limits = np.random.default_rng(5).uniform(20.0, 90.0, len(drawing.bars))
    for sense in (1, -1):
        found = first_passages(sweep, limits, sense)
        bars = np.flatnonzero(np.isfinite(found.multiple) & (found.multiple > 0.0))
        at = spots(sweep, found.edge[bars], found.part[bars])
        for row in range(0, len(bars), 4):
            bar, front = int(bars[row]), at.front_ft[row]
            axles = axles_at(TRAINS[train][0], at.spacing_ft[row], front, FORWARD[way])
            down = road_loads(drawing, axles)
            times = float(found.multiple[bar])
            both = {j: dead.get(j, 0.0) + times * down.get(j, 0.0) for j in drawing.joints}
            by_energy = energy.forces(still.loads(both))
            assert by_energy is not None
            assert sense * by_energy[bar] == pytest.approx(limits[bar], abs=2e-6)
