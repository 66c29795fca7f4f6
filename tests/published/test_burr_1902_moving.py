"""W. H. Burr, Ancient and Modern Engineering and the Isthmian Canal (1902), sections 90-92.

Read as Project Gutenberg no. 75910, pp. 102-108. Formula tables of the greatest stresses in a
Pratt, a Howe and a Warren truss of seven panels: W the moving load of a panel, on the lower
joints; W' and W1 the dead load of a panel on the upper and the lower joints; sec and tan of a,
the web's angle from the upright; D = W + W' + W1. The moving load is put on by full panels. In
print the counter's c1 = 3/7 W sec leaves out the dead load's shear, which relieves it.
"""

import itertools

import numpy as np
import pytest

from tests.analysis.solving import loaded
from tests.analysis.trusses import Drawing, bar, pratt

W, W_UP, W_LOW = 5.0, 0.7, 1.3
D = W + W_UP + W_LOW
PITCH, DEPTH = 180.0, 216.0
SEC, TAN = float(np.hypot(PITCH, DEPTH)) / DEPTH, PITCH / DEPTH
HALF_SEC, HALF_TAN = float(np.hypot(PITCH / 2, DEPTH)) / DEPTH, PITCH / 2 / DEPTH
PANELS = 7


def greatest(drawing: Drawing) -> dict[str, tuple[float, float]]:
    """Bar -> (least, greatest) force over all ways to load the six lower joints."""
    upper = [joint for joint in drawing.joints if joint not in drawing.floor_joints]
    dead = dict.fromkeys(upper, W_UP) | dict.fromkeys(drawing.floor_joints[1:-1], W_LOW)
    truss = loaded(drawing, dead)
    patterns = itertools.product((0.0, W), repeat=PANELS - 1)
    forces = [
        list(truss.forces(dict(zip(drawing.floor_joints[1:-1], weights, strict=True))).values())
        for weights in patterns
    ]
    least, most = np.min(forces, axis=0), np.max(forces, axis=0)
    return {
        name: (float(low), float(high))
        for name, low, high in zip(drawing.names, least, most, strict=True)
    }


def howe() -> Drawing:
    """Braces of timber rise towards the middle and cannot pull; upright rods cannot push."""
    plain = pratt(PANELS, counters=(), pitch=PITCH, depth=DEPTH)
    braces = [("U2", "L1"), ("U3", "L2"), ("U5", "L6"), ("U4", "L5"), ("U4", "L3"), ("U3", "L4")]
    counters = [("U2", "L3"), ("U5", "L4")]
    rods = {f"U{i}-L{i}": False for i in range(1, PANELS)}
    kept = plain.without(*(b.name for b in plain.bars if not b.can_push)).with_bars(can_push=rods)
    return kept.with_more(*(bar(*ends, 6.0, can_pull=False) for ends in (*braces, *counters)))


def warren() -> Drawing:
    """Seven upper joints, half a panel from the lower ones; every web bar works both ways."""
    joints = {f"L{i}": (PITCH * i, 0.0) for i in range(PANELS + 1)}
    joints |= {f"U{i}": (PITCH * (i - 0.5), DEPTH) for i in range(1, PANELS + 1)}
    bars = [bar(f"L{i}", f"L{i + 1}", 5.0) for i in range(PANELS)]
    bars += [bar(f"U{i}", f"U{i + 1}", 8.0) for i in range(1, PANELS)]
    bars += [bar(f"U{i}", f"L{i - 1}", 4.0) for i in range(1, PANELS + 1)]
    bars += [bar(f"U{i}", f"L{i}", 4.0) for i in range(1, PANELS + 1)]
    return Drawing(
        joints=joints, bars=tuple(bars), supports={"L0": (True, True), "L7": (False, True)},
        floor_joints=tuple(f"L{i}" for i in range(PANELS + 1)),
    )


def burr_pratt() -> Drawing:
    """Counters beside the middle, both rods in it. The upper chord shortens more than the lower one
    stretches, so that of two crossed rods one is always slack, as the tables take it."""
    plain = pratt(PANELS, counters=("U3-L2", "U4-L5"), pitch=PITCH, depth=DEPTH)
    return plain.with_bars(area={f"U{i}-U{i + 1}": 2.0 for i in range(1, PANELS - 1)})


PRATT = greatest(burr_pratt())
HOWE = greatest(howe())
WARREN = greatest(warren())

PRATT_TABLE = {
    "U1-L0": -3 * D * SEC,
    "U1-L2": (15 / 7 * W + 2 * W_UP + 2 * W_LOW) * SEC,
    "U2-L3": (10 / 7 * W + W_UP + W_LOW) * SEC,
    "U3-L4": 6 / 7 * W * SEC,
    "U1-L1": W + W_LOW,
    "U2-L2": -(10 / 7 * W + 2 * W_UP + W_LOW),
    "U3-L3": -(6 / 7 * W + W_UP),
    "L0-L1": 3 * D * TAN, "L1-L2": 3 * D * TAN, "L2-L3": 5 * D * TAN, "L3-L4": 6 * D * TAN,
    "U1-U2": -5 * D * TAN, "U2-U3": -6 * D * TAN, "U3-U4": -6 * D * TAN,
}
HOWE_TABLE = {
    "U1-L0": -3 * D * SEC,
    "U2-L1": -(15 / 7 * W + 2 * W_UP + 2 * W_LOW) * SEC,
    "U3-L2": -(10 / 7 * W + W_UP + W_LOW) * SEC,
    "U4-L3": -6 / 7 * W * SEC,
    "U1-L1": 3 * W + 2 * W_UP + 3 * W_LOW,
    "U2-L2": 15 / 7 * W + W_UP + 2 * W_LOW,
    "U3-L3": 10 / 7 * W + W_LOW,
    "L0-L1": 3 * D * TAN, "L1-L2": 5 * D * TAN, "L2-L3": 6 * D * TAN, "L3-L4": 6 * D * TAN,
    "U1-U2": -3 * D * TAN, "U2-U3": -5 * D * TAN, "U3-U4": -6 * D * TAN,
}
WARREN_TABLE = {
    "U1-L0": -(3 * W + 3.5 * W_UP + 3 * W_LOW) * HALF_SEC,
    "U1-L1": (3 * W + 2.5 * W_UP + 3 * W_LOW) * HALF_SEC,
    "U2-L1": -(15 / 7 * W + 2.5 * W_UP + 2 * W_LOW) * HALF_SEC,
    "U2-L2": (15 / 7 * W + 1.5 * W_UP + 2 * W_LOW) * HALF_SEC,
    "U3-L2": -(10 / 7 * W + 1.5 * W_UP + W_LOW) * HALF_SEC,
    "U3-L3": (10 / 7 * W + 0.5 * W_UP + W_LOW) * HALF_SEC,
    "U4-L3": -(6 / 7 * W + 0.5 * W_UP) * HALF_SEC,
    "L0-L1": (3 * D + W_UP / 2) * HALF_TAN, "L1-L2": (8 * D + W_UP / 2) * HALF_TAN,
    "L2-L3": (11 * D + W_UP / 2) * HALF_TAN, "L3-L4": (12 * D + W_UP / 2) * HALF_TAN,
    "U1-U2": -6 * D * HALF_TAN, "U2-U3": -10 * D * HALF_TAN, "U3-U4": -12 * D * HALF_TAN,
}
WARREN_REVERSED = {
    "U3-L2": (3 / 7 * W - 1.5 * W_UP - W_LOW) * HALF_SEC,
    "U3-L3": -(3 / 7 * W - 0.5 * W_UP - W_LOW) * HALF_SEC,
    "U4-L3": (6 / 7 * W - 0.5 * W_UP) * HALF_SEC,
}


def greater(extremes: tuple[float, float], sign: float) -> float:
    """The greatest pull, or the greatest push."""
    return extremes[1] if sign > 0 else extremes[0]


@pytest.mark.parametrize("name", PRATT_TABLE)
def test_a_bar_of_the_pratt_truss(name: str) -> None:
    formula = PRATT_TABLE[name]
    assert greater(PRATT[name], formula) == pytest.approx(formula, rel=1e-8)


def test_the_pratt_trusss_counter_is_relieved_by_the_dead_shear_that_the_print_leaves_out() -> None:
    # By joints: the counter's panel keeps a dead shear of W' + W1, against it.
    assert PRATT["U3-L2"][1] == pytest.approx((3 / 7 * W - W_UP - W_LOW) * SEC, rel=1e-7)
    assert PRATT["U3-L2"][1] < 3 / 7 * W * SEC


@pytest.mark.parametrize("name", HOWE_TABLE)
def test_a_bar_of_the_howe_truss(name: str) -> None:
    formula = HOWE_TABLE[name]
    assert greater(HOWE[name], formula) == pytest.approx(formula, rel=1e-8)


@pytest.mark.parametrize("name", WARREN_TABLE)
def test_a_bar_of_the_warren_truss(name: str) -> None:
    formula = WARREN_TABLE[name]
    assert greater(WARREN[name], formula) == pytest.approx(formula, rel=1e-8)


@pytest.mark.parametrize("name", WARREN_REVERSED)
def test_a_web_bar_of_the_warren_truss_at_its_other_extreme(name: str) -> None:
    other = greater(WARREN[name], -WARREN_TABLE[name])
    assert other == pytest.approx(WARREN_REVERSED[name], rel=1e-8)
