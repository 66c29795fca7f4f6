"""Forces in every form of truss whose slender bars go slack.

What a form usually has of eyebars, rods and loops cannot push; counters as they fall, of any areas.
Laws of forms whose bars all work both ways stand apart.
"""

from collections.abc import Mapping

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from eyebar.analysis.paths import END, SlackSets, paths, starting_sets
from eyebar.bridge.begun_members import BOX, LACED, USUAL
from eyebar.bridge.forms import Layout
from eyebar.terms import EndPosts, Form
from tests.analysis.oracles import statics
from tests.analysis.solving import Loaded, loaded
from tests.analysis.trusses import Drawing, bar, dead_load
from tests.bridge.forms import bearings, counts, drawing, form, ways

MOST = 10
some = settings(deadline=None, max_examples=25)
multiples = st.floats(0.05, 2.0)
areas = st.floats(0.8, 9.0)
CASES = [(word, how) for word in Form for how in ways(word)]


def counters_of(word: Form, panels: int, how: Mapping[str, object]) -> list[str]:
    """Every counter that a form has a place for, found by asking for all lines there might be."""
    near = range(panels + 1)
    asked = tuple(
        f"{first}{i}-{second}{j}" for first, second in ("UL", "UM", "ML")
        for i in near for j in near if 0 < abs(i - j) < 3
    )
    misplaced = {*form(word, panels, counters=asked, **how).misplaced}
    return [one for one in asked if one not in misplaced]


def slender(layout: Layout) -> set[str]:
    """Bars that are usually no channels: they cannot push."""
    return {one.name for one in layout.bars.values() if USUAL.get(one.called) not in (BOX, LACED)}


@st.composite
def trusses(draw: st.DrawFn) -> tuple[Drawing, list[tuple[str, str]]]:
    """A truss, and the ends of the counters that are not there."""
    word, how = draw(st.sampled_from(CASES))
    panels = draw(st.sampled_from(counts(word, MOST)))
    possible = counters_of(word, panels, how)
    chosen = draw(st.sets(st.sampled_from(possible))) if possible else set()
    if word is Form.QUEEN_POST:
        chosen = {*possible}
    layout = form(word, panels, counters=tuple(sorted(chosen)), **how)
    thin = slender(layout)
    found = drawing(layout).with_bars(
        can_push=dict.fromkeys(thin, False), area={name: draw(areas) for name in layout.bars},
    )
    joined = {frozenset(one.ends) for one in found.bars}
    missing = [one.split("-") for one in possible if one not in chosen]
    return found, [
        (upper, lower) for upper, lower in missing
        if frozenset((upper, lower)) not in joined
        and upper in found.joints and lower in found.joints
    ]


def dead(of: Drawing) -> dict[str, float]:
    """Weights [kip] on every joint that is not over a bearing."""
    return dead_load(of, floor_kip=6.0, roof_kip=1.0)


def standing(of: Drawing) -> Loaded:
    """The truss under its dead load; the example is left out where it finds no equilibrium."""
    model = of.model()
    fixed = model.influence @ model.loads(dead(of))
    assume(starting_sets(SlackSets(model), fixed[None])[0] is not None)
    return loaded(of, dead(of))


def walked(truss: Loaded, down: Mapping[str, float], multiple: float) -> dict[str, float] | None:
    """Forces at a multiple of weights on the road, None where equilibrium ends before."""
    growing = np.array([down.get(joint, 0.0) for joint in truss.drawing.floor_joints])
    path = paths(
        truss.sets, truss.fixed[None], (growing @ truss.units)[None],
        start=np.array([truss.start]), cap=multiple,
    )
    ended = path.event[0, path.count[0] - 1] <= END
    return None if ended else truss.named(path.forces[0, -1])


@st.composite
def weights(draw: st.DrawFn, of: Drawing) -> dict[str, float]:
    free = [joint for joint in of.floor_joints if joint not in of.supports]
    return {joint: draw(st.floats(0.0, 15.0)) for joint in free}


@some
@given(st.data(), trusses(), multiples)
def test_every_joint_is_in_equilibrium_and_no_slender_bar_pushes(
    data: st.DataObject, made: tuple[Drawing, object], multiple: float
) -> None:
    of, _ = made
    down = data.draw(weights(of))
    found = walked(standing(of), down, multiple)
    assume(found is not None)
    assert found is not None
    still = statics(of)
    loads = still.loads({
        joint: kip + multiple * down.get(joint, 0.0) for joint, kip in dead(of).items()
    })
    scale = 1.0 + np.abs(loads).max()
    forces = np.array(list(found.values()))
    assert np.abs(still.matrix @ forces - loads).max() < 1e-7 * scale * 10
    for one, force in zip(of.bars, forces, strict=True):
        assert one.can_push or force > -1e-7 * scale * 10, one.name


@some
@given(st.data(), trusses(), multiples)
def test_a_mirrored_truss_has_mirrored_forces(
    data: st.DataObject, made: tuple[Drawing, object], multiple: float
) -> None:
    # Upright loads push no roller sideways, so which end is held does not matter.
    of, _ = made
    down = data.draw(weights(of))
    found = walked(standing(of), down, multiple)
    other = walked(standing(of.mirrored()), down, multiple)
    assert (found is None) == (other is None)
    if found is not None and other is not None:
        scale = 1.0 + max(map(abs, found.values()))
        for name, kip in found.items():
            assert other[name] == pytest.approx(kip, abs=1e-6 * scale), name


@some
@given(st.data(), trusses(), multiples, areas)
def test_the_work_of_the_loads_never_grows_when_a_counter_is_added(
    data: st.DataObject, made: tuple[Drawing, list[tuple[str, str]]], multiple: float, area: float
) -> None:
    # Conditions: no lack of fit and no gap, and equilibrium without the counter.
    of, missing = made
    assume(missing)
    down = data.draw(weights(of))
    before = walked(standing(of), down, multiple)
    assume(before is not None)
    assert before is not None
    ends = data.draw(st.sampled_from(missing))
    more = of.with_more(bar(*ends, area, can_push=False))
    after = walked(standing(more), down, multiple)
    assert after is not None
    assert _work(more, after) <= _work(of, before) * (1.0 + 1e-7)


def _work(of: Drawing, found: Mapping[str, float]) -> float:
    """What the loads do, twice the energy of the bars: the sum of N N L / EA."""
    return sum(
        found[one.name] ** 2
        * np.hypot(*np.subtract(of.joints[one.ends[1]], of.joints[one.ends[0]]))
        / (one.area * one.modulus)
        for one in of.bars
    )


def test_every_form_is_under_these_laws() -> None:
    assert {word for word, _ in CASES} == set(Form)
    assert {how["end_posts"] for _, how in CASES} == set(EndPosts)
    assert bearings(form(Form.PRATT, 4)) == ("L0", "L4")
