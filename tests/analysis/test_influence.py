import numpy as np
import pytest

from eyebar.analysis.influence import (
    like_signed_ft,
    loaded_parts,
    uniform_panel_loads,
    unit_forces,
    weight_at_greatest,
)
from tests.analysis.oracles import least_energy, statics
from tests.analysis.solving import loaded
from tests.analysis.trusses import COUNTERS, crossed_pratt, dead_load, double_intersection, pratt

STATIONS = np.array([0.0, 15.0, 30.0, 45.0])


def test_the_lines_of_a_single_pratt_truss_by_hand() -> None:
    # Six panels of 15 ft, 20 ft deep. A weight at Lk leaves 1 - k/6 at L0. Chord L2-L3 by moments
    # about U2 (30 ft over 20 ft), diagonal U2-L3 by the shear of panel L2-L3 times 25/20.
    drawing = pratt(6, counters=(), slender=False)
    truss = loaded(drawing, {})
    lines = truss.lines.ordinates(truss.start)
    chord = lines[:, drawing.names.index("L2-L3")]
    moment = [k / 6 * 60 if k <= 2 else (1 - k / 6) * 30 for k in range(7)]
    assert chord == pytest.approx([m / 20 for m in moment], abs=1e-12)
    web = lines[:, drawing.names.index("U2-L3")]
    shear = [-k / 6 if k <= 2 else 1 - k / 6 for k in range(7)]
    assert web == pytest.approx([s * 25 / 20 for s in shear], abs=1e-12)


def test_a_line_belongs_to_one_set_of_working_bars() -> None:
    # Law: under a dead load that leaves its set as it is, a small weight adds its ordinate.
    drawing = double_intersection(counters=COUNTERS)
    dead = dead_load(drawing, floor_kip=6.0, roof_kip=1.0)
    truss = loaded(drawing, dead)
    lines = truss.lines.ordinates(truss.start)
    energy, still = least_energy(drawing), statics(drawing)
    before = energy.forces(still.loads(dead))
    assert before is not None
    for row, joint in enumerate(drawing.floor_joints[1:-1], start=1):
        after = energy.forces(still.loads({**dead, joint: dead[joint] + 0.1}))
        assert after is not None
        assert (after - before) / 0.1 == pytest.approx(lines[row], abs=1e-6)
    everything = truss.lines.ordinates(truss.sets.number(0))
    assert np.abs(everything - lines).max() > 0.05


def test_lines_times_loads_are_a_direct_solve() -> None:
    # Law, with all bars working both ways.
    drawing = double_intersection(slender=False)
    model = drawing.model()
    weights = np.random.default_rng(2).uniform(0.0, 9.0, 11)
    by_lines = weights @ unit_forces(model, drawing.floor_joints)
    down = dict(zip(drawing.floor_joints, weights.tolist(), strict=True))
    by_energy = least_energy(drawing).forces(statics(drawing).loads(down))
    assert by_lines == pytest.approx(by_energy, abs=1e-9)


def test_the_loaded_length_of_a_chord_is_the_span_of_a_web_bar_its_like_signed_part() -> None:
    # By hand: U2-L3's line crosses zero in panel L2-L3 where -2/6 and 3/6 balance: 2/5 along it.
    drawing = pratt(6, counters=(), slender=False)
    truss = loaded(drawing, {})
    pull = truss.lines.loaded_ft(truss.start, 1)
    push = truss.lines.loaded_ft(truss.start, -1)
    chord, web = drawing.names.index("L2-L3"), drawing.names.index("U2-L3")
    assert pull[chord] == pytest.approx(90.0)
    assert push[chord] == 0.0
    assert push[web] == pytest.approx(2 * 15.0 + 0.4 * 15.0)
    assert pull[web] == pytest.approx(0.6 * 15.0 + 3 * 15.0)


def test_where_a_line_is_over_zero_in_each_panel() -> None:
    # By hand: up from -1 to 3 crosses at a quarter; down from 3 to -3 half-way.
    begin, end = loaded_parts(np.array([-1.0, 3.0, -3.0, -6.0]))
    assert begin.tolist() == [0.25, 0.0, 0.0]
    assert end.tolist() == [1.0, 0.5, 0.0]
    assert like_signed_ft(STATIONS, np.array([-1.0, 3.0, -3.0, -6.0])) == 11.25 + 7.5


def test_rounding_is_no_influence() -> None:
    assert like_signed_ft(STATIONS, np.array([0.0, 1e-14, 2.0, 0.0])) == 30.0
    assert like_signed_ft(STATIONS, np.array([0.0, -1e-14, -2.0, 0.0])) == 0.0


def test_a_uniform_load_stands_where_the_line_is_over_zero() -> None:
    # By hand, 2 kip/ft: in the first panel 11.25 ft, its middle 5.625 ft from the far joint: 22.5
    # kip, of which 22.5 x 9.375 / 15 go there; in the second the near 7.5 ft, 15 kip, 11.25 near.
    loads = uniform_panel_loads(STATIONS, np.array([-1.0, 3.0, -3.0, -6.0]), 2.0)
    assert loads == pytest.approx([8.4375, 14.0625 + 11.25, 3.75, 0.0])


def test_no_other_stretch_of_a_uniform_load_gives_more() -> None:
    # Law: load times line is greatest when all that is over zero, and nothing else, is loaded.
    line = np.array([0.0, -0.4, 0.9, 0.0])
    best = float(uniform_panel_loads(STATIONS, line, 1.0) @ line)
    fine = np.linspace(0.0, 45.0, 4501)
    ordinate = np.interp(fine, STATIONS, line)
    assert best == pytest.approx(np.trapezoid(np.maximum(ordinate, 0.0), fine), abs=1e-3)


def test_one_weight_stands_on_the_greatest_ordinate_or_nowhere() -> None:
    lines = np.array([[0.0, 0.5, 0.8, 0.0], [0.0, -0.5, -0.1, 0.0], [0.0, 0.0, 0.0, 0.0]])
    loads = weight_at_greatest(lines, 18.0)
    assert loads.tolist() == [[0, 0, 18, 0], [0, 0, 0, 0], [0, 0, 0, 0]]


def test_weights_over_the_supports_load_no_bar() -> None:
    drawing = crossed_pratt()
    units = unit_forces(drawing.model(), drawing.floor_joints)
    assert not units[[0, -1]].any()
    assert units[1:-1].any(axis=1).all()
