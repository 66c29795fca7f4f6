"""What bridge people know of Pratt trusses: a fact of the trade, common practice.

For through trusses with parallel chords, single and double intersection, without gaps or lack of
fit, under even loads and under trucks that cross. Hip verticals hang and are left apart.
"""

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from eyebar.analysis.passage import extremes
from eyebar.terms import Direction
from tests.analysis.solving import at_rest, loaded
from tests.analysis.trusses import (
    COUNTERS,
    LONG_DIAGONALS,
    SHORT_DIAGONALS,
    Drawing,
    dead_load,
    double_intersection,
    pratt,
)
from tests.laws.trusses import snug_trusses, trains

ROUNDING = 1e-7


def even(drawing: Drawing, kip: float) -> dict[str, float]:
    """Force of each bar under the same weight on every floor joint."""
    return at_rest(drawing, dict.fromkeys(drawing.floor_joints, kip))


def upper_chord(drawing: Drawing) -> list[str]:
    return [name for name in drawing.names if name[0] == name.split("-")[1][0] == "U"]


def lower_chord(drawing: Drawing) -> list[str]:
    return [name for name in drawing.names if name[0] == name.split("-")[1][0] == "L"]


def end_posts(drawing: Drawing) -> list[str]:
    last = drawing.floor_joints[-1]
    return [name for name in drawing.names if name.split("-")[1] in ("L0", last) and name[0] == "U"]


def posts(drawing: Drawing) -> list[str]:
    """Uprights but for the hip verticals."""
    inner = len(drawing.floor_joints) - 2
    return [f"U{i}-L{i}" for i in range(2, inner)]


@settings(max_examples=40, deadline=None)
@given(snug_trusses(), st.floats(1.0, 20.0))
def test_under_an_even_load_the_upper_chord_and_end_posts_push_and_the_lower_chord_pulls(
    drawing: Drawing, kip: float
) -> None:
    forces = even(drawing, kip)
    assert all(forces[name] < 0.0 for name in (*upper_chord(drawing), *end_posts(drawing)))
    assert all(forces[name] > 0.0 for name in lower_chord(drawing))


@settings(max_examples=40, deadline=None)
@given(snug_trusses(), st.floats(1.0, 20.0))
def test_under_an_even_load_hip_verticals_pull_the_weight_of_their_own_joint(
    drawing: Drawing, kip: float
) -> None:
    # Condition: no counter ends at the first joint.
    assume("U2-L1" not in drawing.names)
    forces = even(drawing, kip)
    last = len(drawing.floor_joints) - 2
    assert forces["U1-L1"] == pytest.approx(kip, rel=1e-7)
    assert forces[f"U{last}-L{last}"] == pytest.approx(kip, rel=1e-7)


@settings(max_examples=40, deadline=None)
@given(st.integers(4, 10), st.floats(180.0, 320.0), st.floats(1.0, 20.0), st.data())
def test_under_an_even_load_diagonals_of_a_single_pratt_pull_and_posts_push(
    panels: int, depth: float, kip: float, data: st.DataObject
) -> None:
    # Condition: one diagonal a panel, so that areas do not matter; both rods in a middle panel.
    drawing = pratt(panels, counters=(), depth=depth)
    drawing = drawing.with_bars(
        area={name: data.draw(st.floats(0.8, 9.0)) for name in drawing.names}
    )
    forces = even(drawing, kip)
    half = panels // 2
    for i in range(1, half):
        assert forces[f"U{i}-L{i + 1}"] > 0.0
    for name in posts(drawing):
        assert forces[name] <= ROUNDING * kip


@pytest.mark.parametrize("counters", [(), COUNTERS])
def test_under_an_even_load_diagonals_of_a_double_intersection_pull_and_posts_push(
    counters: tuple[str, ...],
) -> None:
    forces = even(double_intersection(counters=counters), 10.0)
    assert all(forces[name] > 0.0 for name in (*SHORT_DIAGONALS, *LONG_DIAGONALS))
    assert all(forces[name] <= ROUNDING for name in posts(double_intersection()))


Train = tuple[tuple[float, ...], tuple[float, ...]]


def greatest(drawing: Drawing, train: Train) -> dict[str, float]:
    """Greatest pull of each bar under dead load and a train either way."""
    truss = loaded(drawing, dead_load(drawing, floor_kip=8.0, roof_kip=1.5))
    most = [extremes(truss.sweep(*train, way, 1.5), 1.0)[1] for way in Direction]
    return dict(zip(drawing.names, np.max(most, axis=0).tolist(), strict=True))


SYSTEMS = [
    (pratt(6), ("U1-L2", "U2-L3")),
    (pratt(8), ("U1-L2", "U2-L3", "U3-L4")),
    (pratt(9), ("U1-L2", "U2-L3", "U3-L4", "U4-L5")),
    (double_intersection(counters=COUNTERS), ("U1-L2", "U2-L4", "U4-L6")),
    (double_intersection(counters=COUNTERS), ("U1-L3", "U3-L5")),
]


@settings(max_examples=12, deadline=None)
@given(trains)
@pytest.mark.parametrize(("drawing", "system"), SYSTEMS)
def test_within_one_web_system_the_greatest_pulls_fall_from_the_end_to_the_middle(
    drawing: Drawing,
    system: tuple[str, ...],
    train: Train,
) -> None:
    pulls = greatest(drawing, train)
    row = [pulls[name] for name in system]
    assert row == sorted(row, reverse=True)
    assert len(set(row)) == len(row)


@settings(max_examples=12, deadline=None)
@given(trains)
def test_chords_grow_from_the_ends_to_the_middle(
    train: Train,
) -> None:
    pulls = greatest(pratt(8), train)
    row = [pulls[f"L{i}-L{i + 1}"] for i in range(4)]
    assert row[0] == pytest.approx(row[1])
    assert row[1] < row[2] < row[3]
