"""Forces in trusses whose bars may go slack.

For trusses of three forms, of any areas, panels and depths within reason, with slack and tight rods
and gaps where the law allows them, under an even dead load and weights on the road.
"""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from eyebar.analysis.passage import extremes
from eyebar.analysis.paths import END, paths
from eyebar.terms import Direction
from tests.analysis.oracles import statics
from tests.analysis.solving import Loaded, first_passages, loaded
from tests.analysis.trusses import Drawing, bar, dead_load
from tests.laws.trusses import snug_trusses, trains, trusses, weights

some = settings(max_examples=40, deadline=None)
few = settings(max_examples=15, deadline=None)
multiples = st.floats(0.05, 3.0)
ways = st.sampled_from(Direction)


def held(drawing: Drawing) -> Loaded:
    return loaded(drawing, dead_load(drawing, floor_kip=6.0, roof_kip=1.0))


def walked(truss: Loaded, down: dict[str, float], multiple: float) -> dict[str, float] | None:
    """Forces at a multiple of weights on the road, None where equilibrium ends before."""
    growing = np.array([down.get(joint, 0.0) for joint in truss.drawing.floor_joints])
    path = paths(
        truss.sets, truss.fixed[None], (growing @ truss.units)[None],
        start=np.array([truss.start]), cap=multiple,
    )
    ended = path.event[0, path.count[0] - 1] <= END
    return None if ended else truss.named(path.forces[0, -1])


def all_weights(drawing: Drawing, down: dict[str, float], multiple: float) -> dict[str, float]:
    dead = dead_load(drawing, floor_kip=6.0, roof_kip=1.0)
    return {joint: dead[joint] + multiple * down.get(joint, 0.0) for joint in dead}


@some
@given(st.data(), trusses(), multiples)
def test_every_joint_is_in_equilibrium_and_no_bar_does_what_it_cannot(
    data: st.DataObject, drawing: Drawing, multiple: float
) -> None:
    down = data.draw(weights(drawing))
    found = walked(held(drawing), down, multiple)
    assume(found is not None)
    assert found is not None
    forces = np.array(list(found.values()))
    still = statics(drawing)
    loads = still.loads(all_weights(drawing, down, multiple))
    scale = 1.0 + np.abs(loads).max()
    assert np.abs(still.matrix @ forces - loads).max() < 1e-7 * scale
    for one, force in zip(drawing.bars, forces, strict=True):
        assert one.can_push or force > -1e-7 * scale


@few
@given(trusses(), trains, ways)
def test_every_point_of_a_sweep_is_in_equilibrium(
    drawing: Drawing, train: tuple[tuple[float, ...], tuple[float, ...]], way: Direction
) -> None:
    truss = held(drawing)
    sweep = truss.sweep(*train, way, 3.0)
    still = statics(drawing)
    dead = still.loads(dead_load(drawing, floor_kip=6.0, roof_kip=1.0))
    # The moving loads of a place, from what they do to bars that all work.
    moving = np.linalg.lstsq(truss.units.T, sweep.growing.T, rcond=None)[0].T @ still.units()
    loads = dead + sweep.multiple[:, None] * moving[sweep.ray]
    off = np.abs(sweep.forces @ still.matrix.T - loads).max(axis=1)
    assert off.max() < 1e-6 * (1.0 + np.abs(loads).max())


@some
@given(st.data(), trusses(), multiples)
def test_reactions_are_the_loads(data: st.DataObject, drawing: Drawing, multiple: float) -> None:
    down = data.draw(weights(drawing))
    found = walked(held(drawing), down, multiple)
    assume(found is not None)
    assert found is not None
    up = sideways = moment = 0.0
    for joint in drawing.supports:
        for one in drawing.bars:
            if joint in one.ends:
                other = one.ends[0] if one.ends[1] == joint else one.ends[1]
                way = np.subtract(drawing.joints[other], drawing.joints[joint])
                x, y = found[one.name] * way / np.hypot(*way)
                sideways, up = sideways - x, up - y
                moment -= drawing.joints[joint][0] * y
    loads = all_weights(drawing, down, multiple)
    whole = sum(loads.values())
    assert up == pytest.approx(whole, rel=1e-7)
    assert sideways == pytest.approx(0.0, abs=1e-7 * whole)
    first = sum(drawing.joints[joint][0] * kip for joint, kip in loads.items())
    assert moment == pytest.approx(first, rel=1e-7)


@some
@given(st.data(), trusses(), multiples)
def test_a_mirrored_truss_has_mirrored_forces(
    data: st.DataObject, drawing: Drawing, multiple: float
) -> None:
    # Upright loads push no roller sideways, so which end is held does not matter.
    down = data.draw(weights(drawing))
    found = walked(held(drawing), down, multiple)
    mirrored = walked(held(drawing.mirrored()), down, multiple)
    assert (found is None) == (mirrored is None)
    if found is not None and mirrored is not None:
        scale = 1.0 + max(map(abs, found.values()))
        for name, kip in found.items():
            assert mirrored[name] == pytest.approx(kip, abs=1e-7 * scale), name


@few
@given(snug_trusses(), trains)
def test_a_train_the_other_way_over_the_mirrored_truss_has_the_same_extremes(
    drawing: Drawing, train: tuple[tuple[float, ...], tuple[float, ...]]
) -> None:
    up = held(drawing).sweep(*train, Direction.UP, 2.0)
    down = held(drawing.mirrored()).sweep(*train, Direction.DOWN, 2.0)
    assert up.ends.min() == pytest.approx(down.ends.min(), rel=1e-6)
    at = min(1.0, 0.9 * float(up.ends.min()))
    for one, other in zip(extremes(up, at)[:2], extremes(down, at)[:2], strict=True):
        assert one == pytest.approx(other, abs=1e-6 * (1.0 + np.abs(one).max()))


@some
@given(st.data(), trusses(), st.floats(0.0, 0.2), st.floats(0.0, 0.2))
def test_increments_add_up_while_one_set_of_bars_works(
    data: st.DataObject, drawing: Drawing, a: float, b: float
) -> None:
    first, second = data.draw(weights(drawing)), data.draw(weights(drawing))
    truss = held(drawing)
    both = {joint: a * first[joint] + b * second[joint] for joint in first}
    cases = [(first, a), (second, b), (both, 1.0)]
    paths_ = []
    for down, multiple in cases:
        growing = np.array([down.get(joint, 0.0) for joint in drawing.floor_joints]) @ truss.units
        paths_.append(paths(
            truss.sets, truss.fixed[None], growing[None], start=np.array([truss.start]),
            cap=multiple,
        ))
    # The condition: none of the three loads makes a bar go slack or taut.
    assume(all(path.count[0] == 1 and path.event[0, 0] > END for path in paths_))
    dead = truss.model.bar_forces(paths_[0].forces[:, 0])[0]
    one, two, sum_ = (truss.model.bar_forces(path.forces[:, -1])[0] - dead for path in paths_)
    assert one + two == pytest.approx(sum_, abs=1e-8 * (1.0 + np.abs(sum_).max()))


def work(drawing: Drawing, found: dict[str, float]) -> float:
    """What the loads do, twice the energy of the bars: the sum of N N L / EA."""
    return sum(
        found[one.name] ** 2
        * np.hypot(*np.subtract(drawing.joints[one.ends[1]], drawing.joints[one.ends[0]]))
        / (one.area * one.modulus)
        for one in drawing.bars
    )


@some
@given(st.data(), snug_trusses(), multiples, st.floats(0.3, 6.0), st.booleans())
def test_the_work_of_the_loads_never_grows_when_a_bar_is_added(
    data: st.DataObject, drawing: Drawing, multiple: float, area: float, pushes: bool
) -> None:
    # Conditions: no lack of fit and no gap, and equilibrium without the bar.
    down = data.draw(weights(drawing))
    before = walked(held(drawing), down, multiple)
    assume(before is not None)
    assert before is not None
    joined = {frozenset(one.ends) for one in drawing.bars}
    free = [
        (upper, lower)
        for upper in drawing.joints for lower in drawing.joints
        if upper < lower and frozenset((upper, lower)) not in joined
    ]
    ends = data.draw(st.sampled_from(free))
    more = drawing.with_more(bar(*ends, area, can_push=pushes))
    after = walked(held(more), down, multiple)
    assert after is not None
    assert work(more, after) <= work(drawing, before) * (1.0 + 1e-8)


@few
@given(trusses(), trains, ways, st.floats(20.0, 120.0))
def test_doubled_axles_reach_every_strength_at_half_the_multiple(
    drawing: Drawing,
    train: tuple[tuple[float, ...], tuple[float, ...]],
    way: Direction,
    strength: float,
) -> None:
    axles, spacings = train
    truss = held(drawing)
    once = truss.sweep(axles, spacings, way, 4.0)
    twice = truss.sweep(tuple(2.0 * kip for kip in axles), spacings, way, 2.0)
    limits = np.full(len(drawing.bars), strength)
    for sense in (1, -1):
        one = first_passages(once, limits, sense).multiple
        two = first_passages(twice, limits, sense).multiple
        assert 2.0 * two == pytest.approx(one, rel=1e-6)


@some
@given(st.data(), snug_trusses(), multiples, st.floats(0.2, 5.0))
def test_forces_do_not_care_about_the_scale_of_all_areas(
    data: st.DataObject, drawing: Drawing, multiple: float, scale: float
) -> None:
    # Condition: no lack of fit and no gap, which are lengths.
    down = data.draw(weights(drawing))
    scaled = drawing.with_bars(area={one.name: scale * one.area for one in drawing.bars})
    found, other = (walked(held(one), down, multiple) for one in (drawing, scaled))
    assert (found is None) == (other is None)
    if found is not None and other is not None:
        most = 1.0 + max(map(abs, found.values()))
        assert list(found.values()) == pytest.approx(list(other.values()), abs=1e-7 * most)


@some
@given(st.data(), trusses(), multiples)
def test_the_order_of_bars_and_their_ends_does_not_matter(
    data: st.DataObject, drawing: Drawing, multiple: float
) -> None:
    down = data.draw(weights(drawing))
    order = data.draw(st.permutations(range(len(drawing.bars))))
    shuffled = [drawing.bars[i] for i in order]
    turned = replace(
        drawing, bars=tuple(replace(one, ends=one.ends[::-1]) for one in shuffled)
    )
    found, other = walked(held(drawing), down, multiple), walked(held(turned), down, multiple)
    assert (found is None) == (other is None)
    if found is not None and other is not None:
        most = 1.0 + max(map(abs, found.values()))
        for name, kip in found.items():
            assert other[name] == pytest.approx(kip, abs=1e-7 * most), name


@some
@given(snug_trusses(), st.floats(-4.0, 8.0), st.floats(0.1, 5.0), st.data())
def test_a_bar_that_is_tightened_never_pulls_less(
    drawing: Drawing, fit: float, more: float, data: st.DataObject
) -> None:
    name = data.draw(st.sampled_from(drawing.names))
    slack, tight = (
        held(drawing.with_bars(initial_kip={name: kip})).dead()[name] for kip in (fit, fit + more)
    )
    assert tight >= slack - 1e-7
