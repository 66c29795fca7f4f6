"""A linear programme for the end of a path: the greatest multiple that any forces can carry.

Where counters are missing, bars that cannot push leave a panel without shear before any bar has
reached its strength. The programme knows equilibrium and signs, nothing of stiffness.
"""

import numpy as np
import pytest

from eyebar.analysis.passage import ended
from eyebar.analysis.paths import END, SlackSets, paths, starting_sets, ties_split
from eyebar.analysis.stability import collapse, collapse_under
from eyebar.terms import Direction
from tests.analysis.oracles import axles_at, end_of_equilibrium, road_loads, statics
from tests.analysis.solving import FORWARD, Loaded, loaded
from tests.analysis.trusses import (
    COUNTERS,
    Drawing,
    bar,
    countered,
    dead_load,
    double_intersection,
    pratt,
)
from tests.published.test_burr_1902_moving import howe

HS15 = ((6.0, 24.0, 24.0), (14.0, 14.0))
"""H15's tractor and a trailer's axle, from memory; any train would do."""

CAP_AT = 60.0
TRUSSES = {
    "no counters": double_intersection(),
    "two counters": double_intersection(counters=COUNTERS[:2]),
    "four counters": countered(),
    "single, no counters": pratt(8, counters=()),
    "single, counters in the middle": pratt(8, counters=("U4-L3", "U4-L5")),
}


def held(drawing: Drawing) -> Loaded:
    return loaded(drawing, dead_load(drawing, floor_kip=7.0, roof_kip=1.5))


def by_programme(truss: Loaded, front_ft: float, way: Direction) -> float:
    """The end of equilibrium of the train at a place."""
    still = statics(truss.drawing)
    axles = axles_at(*HS15, front_ft, FORWARD[way])
    return end_of_equilibrium(
        truss.drawing, still.loads(dead_load(truss.drawing, floor_kip=7.0, roof_kip=1.5)),
        still.loads(road_loads(truss.drawing, axles)), CAP_AT,
    )


@pytest.mark.parametrize("way", list(Direction))
@pytest.mark.parametrize("name", TRUSSES)
def test_a_path_ends_where_the_programme_says(name: str, way: Direction) -> None:
    truss = held(TRUSSES[name])
    sweep = truss.sweep(*HS15, way, CAP_AT)
    rays = np.random.default_rng(3).integers(0, len(sweep.front_ft), 12)
    for ray in rays:
        ours = min(float(sweep.ends[ray]), CAP_AT)
        # The programme's own tolerance is about 1e-7 of a load.
        assert ours == pytest.approx(by_programme(truss, sweep.front_ft[ray], way), rel=1e-5)


@pytest.mark.parametrize("way", list(Direction))
@pytest.mark.parametrize("name", TRUSSES)
def test_no_place_between_loses_equilibrium_earlier(name: str, way: Direction) -> None:
    truss = held(TRUSSES[name])
    sweep = truss.sweep(*HS15, way, CAP_AT)
    least, ray, _ = ended(sweep)
    ends = [by_programme(truss, front, way) for front in np.arange(-1.0, 180.0, 4.1)]
    assert min(least, CAP_AT) <= min(ends) * (1.0 + 1e-6)
    if ray >= 0:
        assert least == pytest.approx(by_programme(truss, sweep.front_ft[ray], way), rel=1e-5)


def test_too_few_counters_end_the_path_before_its_cap_and_enough_do_not() -> None:
    ends = {
        name: min(ended(held(drawing).sweep(*HS15, way, CAP_AT))[0] for way in Direction)
        for name, drawing in TRUSSES.items()
    }
    assert ends["no counters"] <= ends["two counters"] < CAP_AT
    assert ends["two counters"] < ends["four counters"]
    assert ends["single, no counters"] < ends["single, counters in the middle"] < CAP_AT
    # Crossed rods carry any shear either way.
    crossed = held(pratt(8))
    assert ended(crossed.sweep(*HS15, Direction.UP, CAP_AT)) == (np.inf, -1, -1)


def named_end(drawing: Drawing, way: Direction) -> tuple[str, str, tuple[str, ...], str]:
    """(panel, missing counter, slack bars, sentence) at the least end of a sweep."""
    truss = held(drawing)
    sweep = truss.sweep(*HS15, way, CAP_AT)
    _, ray, last = ended(sweep)
    slack = truss.sets.sets[int(sweep.sets[ray, sweep.count[ray] - 1])]
    fall = collapse(truss.model, slack, last, drawing.floor_joints)
    return fall.panel, fall.missing, fall.slack, fall.sentence


@pytest.mark.parametrize(
    ("drawing", "way"),
    [
        (double_intersection(), Direction.UP),
        (double_intersection(), Direction.DOWN),
        (double_intersection(counters=COUNTERS[:2]), Direction.UP),
        (pratt(8, counters=()), Direction.DOWN),
        (pratt(8, counters=("U4-L3", "U4-L5")), Direction.UP),
    ],
)
def test_the_end_names_a_panel_whose_diagonals_are_all_slack_and_a_counter_that_helps(
    drawing: Drawing, way: Direction
) -> None:
    panel, missing, slack, sentence = named_end(drawing, way)
    # By statics: only diagonals carry a panel's shear between parallel chords, so all are slack.
    near, far = (drawing.joints[joint][0] for joint in panel.split("-"))
    crossing = {
        b.name
        for b in drawing.bars
        if b.name[0] != b.name.split("-")[1][0] and _spans(drawing, b.ends, near, far)
    }
    assert crossing == set(slack)
    # The counter is no bar yet, crosses the panel, and once there puts the end off at every place.
    assert missing not in drawing.names
    ends = tuple(missing.split("-"))
    assert _spans(drawing, ends, near, far)
    more = drawing.with_more(bar(*ends, 1.5, can_push=False))
    before = ended(held(drawing).sweep(*HS15, way, CAP_AT))[0]
    truss = held(more)
    places = held(drawing).sweep(*HS15, way, CAP_AT)
    worst = places.front_ft[int(np.argmin(places.ends))]
    assert by_programme(truss, float(worst), way) > 1.02 * before
    assert panel in sentence
    assert missing in sentence
    assert all(name in sentence for name in slack)


def _spans(drawing: Drawing, ends: tuple[str, ...], near: float, far: float) -> bool:
    low, high = sorted(drawing.joints[joint][0] for joint in ends)
    return low <= near and far <= high and low < high


def test_a_truss_of_one_diagonal_a_panel_loses_the_panel_beside_the_middle() -> None:
    # By hand, dead load 7 kip low and 1.5 high: panel L3-L4 carries a dead shear of 4.25 kip. A
    # weight W at L3 takes 3/8 W of it away, so it ends at W = 11.333 kip.
    drawing = pratt(8, counters=())
    truss = held(drawing)
    walked = paths(
        truss.sets, truss.fixed[None], truss.units[3][None], start=np.array([truss.start]),
        cap=CAP_AT,
    )
    assert walked.multiple[0, -1] == pytest.approx(4.25 * 8 / 3, abs=1e-6)
    event = int(walked.event[0, walked.count[0] - 1])
    assert event <= END
    slack = truss.sets.sets[int(walked.sets[0, walked.count[0] - 1])]
    fall = collapse(truss.model, slack, END - event, drawing.floor_joints)
    assert (fall.panel, fall.missing, fall.slack) == ("L3-L4", "U4-L3", ("U3-L4",))
    assert fall.sentence == (
        "panel L3-L4 can shear, for U3-L4 cannot push; a counter U4-L3 would hold it"
    )


def test_no_equilibrium_under_dead_load_names_the_panel() -> None:
    # By hand: a weight at L2 alone turns the shear of panel L2-L3, and U2-L3 leans the wrong way.
    drawing = pratt(6, counters=())
    model = drawing.model()
    fixed = model.influence @ model.loads({"L2": 10.0}) + ties_split(model)
    sets = SlackSets(model)
    assert starting_sets(sets, fixed[None]) == [None]
    fall = collapse_under(sets, fixed, drawing.floor_joints)
    assert (fall.panel, fall.missing, fall.slack) == ("L2-L3", "U3-L2", ("U2-L3",))


def test_a_bar_that_nothing_loads_does_not_end_equilibrium_by_rounding() -> None:
    # Eyebars cannot push. Weights on the upper joints alone leave the hip verticals without force,
    # and the programme finds equilibrium.
    drawing = countered()
    down = dead_load(drawing, floor_kip=0.0, roof_kip=1.0)
    still = statics(drawing)
    loads = still.loads(down)
    assert end_of_equilibrium(drawing, loads, 0.0 * loads, 1.0) == 1.0
    dead = loaded(drawing, down).dead()
    assert dead["U1-L1"] == pytest.approx(0.0, abs=1e-8)
    assert dead["U9-L9"] == pytest.approx(0.0, abs=1e-8)


def test_braces_that_only_butt_are_said_to_be_unable_to_pull() -> None:
    # By hand, a Howe truss without counterbraces, a weight at L1 alone: beyond it every panel has a
    # shear of a seventh of the weight against its brace, which would have to pull.
    drawing = howe().without("U2-L3", "U5-L4")
    model = drawing.model()
    fixed = model.influence @ model.loads({"L1": 10.0}) + ties_split(model)
    sets = SlackSets(model)
    assert starting_sets(sets, fixed[None]) == [None]
    fall = collapse_under(sets, fixed, drawing.floor_joints)
    assert set(fall.slack) & {"U2-L1", "U3-L2"}
    assert "cannot pull" in fall.sentence
    rods = [name for name in fall.slack if name[1] == name.split("-")[1][1]]
    assert ("cannot push" in fall.sentence) is bool(rods)
