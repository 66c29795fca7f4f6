"""Least complementary energy, by non-negative least squares, at random places and multiples.

The forces of a truss whose bars cannot all push are, of all in equilibrium with the right signs,
those of least complementary energy. Trusses, trains and dead loads are drawn at random, with
gaps, lacks of fit and loose bars among them; where no forces are in equilibrium, ours must say so
too.
"""

import numpy as np
import pytest

from eyebar.analysis.paths import SlackSets, paths, starting_sets, ties_split
from eyebar.terms import Direction
from tests.analysis.oracles import axles_at, least_energy, road_loads, statics
from tests.analysis.solving import FORWARD, loaded
from tests.analysis.trusses import Drawing, dead_load, pratt, random_truss

TOLERANCE = 1e-7
"""Of the greatest force: what non-negative least squares can tell apart."""


def random_train(rng: np.random.Generator) -> tuple[list[float], list[float]]:
    axles = rng.uniform(3.0, 30.0, int(rng.integers(1, 6)))
    return axles.tolist(), rng.uniform(4.0, 20.0, len(axles) - 1).tolist()


def random_case(seed: int) -> tuple[Drawing, dict[str, float]]:
    """A truss under weights on some of its joints, which it can balance or not."""
    rng = np.random.default_rng(seed)
    drawing = random_truss(rng)
    loaded_joints = rng.choice(list(drawing.joints), size=int(rng.integers(1, 4)), replace=False)
    return drawing, {str(joint): float(rng.uniform(0.0, 12.0)) for joint in loaded_joints}


@pytest.mark.parametrize("seed", range(40))
def test_forces_under_dead_load_and_equilibrium_found_or_not(seed: int) -> None:
    drawing, down = random_case(seed)
    model = drawing.model()
    fixed = model.influence @ model.loads(down) + model.fixed_forces + ties_split(model)
    start = starting_sets(SlackSets(model), fixed[None])[0]
    by_energy = least_energy(drawing).forces(statics(drawing).loads(down))
    assert (start is None) == (by_energy is None)
    if by_energy is not None:
        found = list(loaded(drawing, down).dead().values())
        assert found == pytest.approx(by_energy, abs=TOLERANCE * max(1.0, np.abs(by_energy).max()))


def test_some_of_these_trusses_find_equilibrium_and_some_do_not() -> None:
    # The test above would be worth little otherwise.
    cases = [random_case(seed) for seed in range(40)]
    stand = [
        least_energy(drawing).forces(statics(drawing).loads(down)) is not None
        for drawing, down in cases
    ]
    assert 5 <= sum(stand) <= 36


@pytest.mark.parametrize("seed", range(40))
def test_slack_states_at_random_places_and_multiples(seed: int) -> None:
    rng = np.random.default_rng(1000 + seed)
    drawing = random_truss(rng)
    dead = dead_load(drawing, floor_kip=float(rng.uniform(3.0, 10.0)), roof_kip=1.0)
    energy, still = least_energy(drawing), statics(drawing)
    if energy.forces(still.loads(dead)) is None:
        dead = dict.fromkeys(dead, 8.0)
    truss = loaded(drawing, dead)
    axles, spacings = random_train(rng)
    way = Direction.UP if seed % 2 else Direction.DOWN
    train_ft, span_ft = sum(spacings), float(drawing.stations_ft[-1])
    for _ in range(8):
        ahead = float(rng.uniform(0.0, span_ft + train_ft))
        front = ahead if way is Direction.UP else span_ft - ahead
        moving = road_loads(drawing, axles_at(axles, spacings, front, FORWARD[way]))
        multiple = float(rng.uniform(0.0, 6.0))
        both = {j: dead.get(j, 0.0) + multiple * moving.get(j, 0.0) for j in drawing.joints}
        by_energy = energy.forces(still.loads(both))
        growing = np.array([moving[joint] for joint in drawing.floor_joints]) @ truss.units
        walked = paths(
            truss.sets, truss.fixed[None], growing[None], start=np.array([truss.start]),
            cap=multiple,
        )
        reached = walked.multiple[0, -1] == multiple
        assert reached == (by_energy is not None)
        if by_energy is not None:
            found = truss.model.bar_forces(walked.forces[:, -1])[0]
            scale = max(1.0, float(np.abs(by_energy).max()))
            assert found == pytest.approx(by_energy, abs=TOLERANCE * scale)


@pytest.mark.parametrize("panels", [5, 7, 9])
def test_both_middle_counters_slack_under_an_even_dead_load_is_no_end(panels: int) -> None:
    # The upper chord, slim, shortens more than the lower one stretches, so that both rods of the
    # middle panel go slack and the stiffness of what works is singular. Equilibrium holds, and the
    # first uneven load pulls one of them: its panel's shear by 300 / 240.
    slim = {f"U{i}-U{i + 1}": 1.0 for i in range(1, panels - 1)}
    drawing = pratt(panels).with_bars(area=slim)
    half = panels // 2
    rods = (f"U{half}-L{half + 1}", f"U{half + 1}-L{half}")
    truss = loaded(drawing, dead_load(drawing, floor_kip=6.0, roof_kip=1.0))
    dead = truss.dead()
    assert [dead[rod] for rod in rods] == pytest.approx([0.0, 0.0], abs=1e-8)
    uneven = truss.forces({f"L{half}": 3.0})
    shear = 3.0 * half / panels
    assert uneven[rods[1]] == pytest.approx(shear * 300.0 / 240.0, abs=1e-7)
    assert uneven[rods[0]] == pytest.approx(0.0, abs=1e-8)
    both = dead_load(drawing, floor_kip=6.0, roof_kip=1.0) | {f"L{half}": 9.0}
    by_energy = least_energy(drawing).forces(statics(drawing).loads(both))
    assert list(uneven.values()) == pytest.approx(by_energy, abs=1e-6)
