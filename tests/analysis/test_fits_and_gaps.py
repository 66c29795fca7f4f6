"""Gaps, lacks of fit, loose pairs, broken bars and measured pulls."""

from dataclasses import replace

import numpy as np
import pytest

from eyebar.analysis.paths import SlackSets, paths, starting_sets, ties_split
from eyebar.analysis.pull import lack_of_fit
from eyebar.errors import OutOfRange
from tests.analysis.oracles import end_of_equilibrium, least_energy, statics
from tests.analysis.solving import at_rest, loaded
from tests.analysis.trusses import Drawing, bar, countered, crossed_pratt, dead_load, pratt

K_SNUG, K_LOOSE, GAP = 2.0 * 27_000.0 / 100.0, 1.0 * 27_000.0 / 100.0, 0.05
"""Two bars side by side, 100 in long, of 2 and 1 in2 [kip/in], and a gap of the second [in]."""


def side_by_side(**facts: object) -> Drawing:
    """A joint between two walls' ends on a line: one bar snug, the other as `facts` have it."""
    return Drawing(
        joints={"wall": (0.0, 0.0), "end": (100.0, 0.0), "above": (100.0, 50.0)},
        bars=(
            bar("wall", "end", 2.0),
            bar("above", "end", 1.0),
            bar("end", "wall", 1.0, **facts),
        ),
        supports={"wall": (True, True), "above": (True, True)},
        floor_joints=("wall", "end"),
    )


def shares(drawing: Drawing, kip: float) -> tuple[float, float]:
    """Forces of the snug bar and of the other under a pull along them."""
    model = drawing.model()
    growing = np.zeros(len(model.directions))
    growing[model.directions["end", 0]] = 1.0
    sets = SlackSets(model)
    fixed = (model.fixed_forces + ties_split(model))[None]
    start = starting_sets(sets, fixed)[0]
    assert start is not None
    walked = paths(
        sets, fixed, np.sign(kip) * (model.influence @ growing)[None], start=np.array([start]),
        cap=abs(kip),
    )
    forces = model.bar_forces(walked.forces[:, -1])[0]
    return float(forces[0]), float(forces[2])


def by_hand(kip: float, gap: float) -> tuple[float, float]:
    """Snug bar alone until the gap closes, then by stiffness."""
    if abs(kip) <= K_SNUG * gap:
        return kip, 0.0
    stretch = (kip + np.sign(kip) * K_LOOSE * gap) / (K_SNUG + K_LOOSE)
    return K_SNUG * stretch, kip - K_SNUG * stretch


# The gap closes at 540 kip/in x 0.05 in = 27 kip.
@pytest.mark.parametrize("kip", [10.0, 26.9, 27.1, 60.0, -10.0, -26.9, -27.1, -60.0])
def test_a_gap_both_ways_is_a_gap_in_pull_and_in_push(kip: float) -> None:
    assert shares(side_by_side(gap_in=GAP), kip) == pytest.approx(by_hand(kip, GAP), abs=1e-7)


@pytest.mark.parametrize("kip", [10.0, 60.0, -10.0, -60.0])
def test_a_loose_bar_that_cannot_push_never_does(kip: float) -> None:
    expected = by_hand(kip, GAP) if kip > 0 else (kip, 0.0)
    found = shares(side_by_side(gap_in=GAP, can_push=False), kip)
    assert found == pytest.approx(expected, abs=1e-7)


@pytest.mark.parametrize("kip", [10.0, 60.0, -10.0, -60.0])
def test_a_strut_that_cannot_pull_never_does(kip: float) -> None:
    expected = by_hand(kip, GAP) if kip < 0 else (kip, 0.0)
    found = shares(side_by_side(gap_in=GAP, can_pull=False), kip)
    assert found == pytest.approx(expected, abs=1e-7)


def test_a_gap_is_a_lack_of_fit_of_minus_its_stiffness_times_it() -> None:
    loose = side_by_side(gap_in=GAP, can_push=False)
    unfit = side_by_side(initial_kip=-K_LOOSE * GAP, can_push=False)
    for kip in (10.0, 27.0, 40.0, 90.0):
        assert shares(loose, kip) == pytest.approx(shares(unfit, kip), abs=1e-9)


def test_a_bar_drawn_in_by_a_lack_of_fit_pulls_and_pushes_the_other() -> None:
    # By hand: 12 kip with the joint held; let go it keeps 12 x 540 / (540 + 270) = 8 kip.
    snug, drawn = shares(side_by_side(initial_kip=12.0), 1e-12)
    assert (snug, drawn) == pytest.approx((-8.0, 8.0), abs=1e-7)


def test_a_loose_pair_of_eyebars_is_a_second_bar_with_a_gap() -> None:
    # Two eyebars of 2 in2 each, one of them 1/32 in long. By hand, 40/3 kip at L1 alone give the
    # chord a pull of 10 x 180 / 240 = 7.5 kip, which stretches the snug one by 7.5 x 180 / 54,000 =
    # 0.025 in, under 1/32: the loose one carries nothing. Twice the load stretches it beyond.
    plain = pratt(4, counters=(), slender=False).with_bars(area={"L0-L1": 2.0})
    loose = bar("L0", "L1", 2.0, can_push=False, gap_in=1 / 32)
    pair = plain.with_more(replace(loose, name="L0-L1, second"))
    for load, snug in ((40.0 / 3, 7.5), (80.0 / 3, None)):
        forces = at_rest(pair, {"L1": load})
        both = at_rest(plain, {"L1": load})["L0-L1"]
        second = forces["L0-L1, second"]
        assert forces["L0-L1"] + second == pytest.approx(both, abs=1e-7)
        if snug is not None:
            assert (forces["L0-L1"], second) == pytest.approx((snug, 0.0), abs=1e-7)
        else:
            # 300 kip/in each: 15 = 300 u + 300 (u - 1/32).
            stiff = 2.0 * 27_000.0 / 180.0
            stretch = (15.0 + stiff / 32) / (2 * stiff)
            assert second == pytest.approx(stiff * (stretch - 1 / 32), abs=1e-7)


def test_a_broken_counter_changes_nothing_where_it_was_slack() -> None:
    drawing, even = crossed_pratt(), {f"L{i}": 12.0 for i in range(1, 6)}
    whole, broken = at_rest(drawing, even), at_rest(drawing.without("U3-L2"), even)
    assert whole["U3-L2"] == pytest.approx(0.0, abs=1e-8)
    for name, kip in broken.items():
        assert kip == pytest.approx(whole[name], abs=1e-7)


def test_a_broken_main_rod_whose_counter_cannot_push_leaves_no_equilibrium() -> None:
    # By hand: panel L2-L3 has a shear of 6 kip, and only the rod that leans the wrong way is left.
    drawing, even = crossed_pratt().without("U2-L3"), {f"L{i}": 12.0 for i in range(1, 6)}
    model = drawing.model()
    fixed = model.influence @ model.loads(even) + ties_split(model)
    assert starting_sets(SlackSets(model), fixed[None]) == [None]
    loads = statics(drawing).loads(even)
    assert end_of_equilibrium(drawing, loads, 0.0 * loads, 1.0) == -np.inf


TWELVE = {f"L{i}": 12.0 for i in range(1, 6)}


def test_ten_kip_of_lack_of_fit_is_a_small_pull() -> None:
    # Worked beforehand by another program on the same six-panel truss: 3.8 kip of pull unloaded,
    # 1.0 under the dead load of 12 kip a joint.
    tight = crossed_pratt().with_bars(initial_kip={"U3-L2": 10.0})
    assert at_rest(tight, {})["U3-L2"] == pytest.approx(3.8, abs=0.05)
    assert at_rest(tight, TWELVE)["U3-L2"] == pytest.approx(1.0, abs=0.05)
    by_energy = least_energy(tight).forces(statics(tight).loads(TWELVE))
    assert by_energy is not None
    assert at_rest(tight, TWELVE)["U3-L2"] == pytest.approx(
        by_energy[tight.names.index("U3-L2")], abs=1e-6
    )


def fitted(drawing: Drawing, dead: dict[str, float], pulls: dict[str, float]) -> Drawing:
    """The drawing with the lack of fit that was found."""
    model = drawing.model()
    fits = lack_of_fit(model, model.influence @ model.loads(dead), pulls)
    return drawing.with_bars(initial_kip=fits)


SEVEN = dead_load(countered(), floor_kip=7.0, roof_kip=1.5)
PULLS = [
    (crossed_pratt(), TWELVE, {"U3-L2": 1.0}),
    (crossed_pratt(), TWELVE, {"U3-L2": 1.0, "U3-L4": 2.5, "U2-L1": 0.5}),
    # A main rod tightened over its share of the dead load, and one slacker than it.
    (crossed_pratt(), TWELVE, {"U2-L3": 9.0}),
    (countered(), SEVEN, {"U5-L3": 2.0, "U5-L7": 2.5}),
    (countered(), SEVEN, {"U1-L3": 18.0}),
    (countered(), SEVEN, {"U1-L3": 24.0, "U4-L2": 1.0}),
]


@pytest.mark.parametrize(("drawing", "dead", "pulls"), PULLS)
def test_a_measured_pull_comes_back_and_least_energy_agrees(
    drawing: Drawing, dead: dict[str, float], pulls: dict[str, float]
) -> None:
    tight = fitted(drawing, dead, pulls)
    forces = at_rest(tight, dead)
    by_energy = least_energy(tight).forces(statics(tight).loads(dead))
    assert by_energy is not None
    for name, pull in pulls.items():
        assert forces[name] == pytest.approx(pull, abs=1e-7)
        assert by_energy[tight.names.index(name)] == pytest.approx(pull, abs=1e-6)


def test_the_lack_of_fit_of_one_kip_of_pull_is_ten_kip() -> None:
    # The figures of the test above, the other way round: about 10 kip for a pull of 1.0.
    model = crossed_pratt().model()
    fits = lack_of_fit(model, model.influence @ model.loads(TWELVE), {"U3-L2": 1.0})
    assert fits["U3-L2"] == pytest.approx(10.0, abs=0.2)


def test_the_pull_of_a_rod_that_alone_carries_its_panel_cannot_be_chosen() -> None:
    drawing = pratt(6, counters=())
    model = drawing.model()
    with pytest.raises(OutOfRange, match="pull of U2-L3"):
        lack_of_fit(model, model.influence @ model.loads(TWELVE), {"U2-L3": 12.0})


def test_a_pull_measured_in_a_bar_that_can_push_too_is_found_alike() -> None:
    # Two posts' bars side by side, by hand: 8 kip of pull needs 12 kip with the joint held.
    drawing = side_by_side()
    model = drawing.model()
    fits = lack_of_fit(model, np.zeros(3), {"end-wall": 8.0})
    assert fits["end-wall"] == pytest.approx(12.0, abs=1e-6)


def test_a_truss_with_pull_in_its_counters_keeps_them_working_longer() -> None:
    # Law: what is tight goes slack at no smaller multiple of the same load than what is snug.
    snug = crossed_pratt()
    tight = fitted(snug, TWELVE, {"U3-L2": 1.0})
    more = {"L3": 6.0, "L4": 6.0, "L5": 6.0}
    assert loaded(snug, TWELVE).forces(more, 0.1)["U3-L2"] == pytest.approx(0.0, abs=1e-8)
    assert loaded(tight, TWELVE).forces(more, 0.1)["U3-L2"] > 0.1
