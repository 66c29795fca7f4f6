"""Portals of the textbooks against a plane frame solved by stiffness: posts that run on past their
knees, a strut hinged to their heads, knees hinged at both ends."""

import numpy as np
import pytest

from eyebar.analysis.portals import KNEES, Portal, portal_forces

LENGTH, SPACING, DOWN, ALONG, WIND = 288.0, 192.0, 72.0, 48.0, 8.0
MODULUS = 29000.0
STIFF_AREA = 1e4
"""Bars that do not change their length, as the textbooks have them [in2]."""
NODES = {
    "f0": (0.0, 0.0), "k0": (0.0, LENGTH - DOWN), "h0": (0.0, LENGTH),
    "f1": (SPACING, 0.0), "k1": (SPACING, LENGTH - DOWN), "h1": (SPACING, LENGTH),
    "s0": (ALONG, LENGTH), "s1": (SPACING - ALONG, LENGTH),
}
NUMBER = {name: i for i, name in enumerate(NODES)}
HINGES = {("h0", "s0"): 24, ("s1", "h1"): 25}
"""The strut's ends turn by themselves: their own directions behind the three of every node."""
BEAMS = [("f0", "k0"), ("k0", "h0"), ("f1", "k1"), ("k1", "h1"), ("h0", "s0"), ("s0", "s1"),
         ("s1", "h1")]
TIES = [("k0", "s0"), ("k1", "s1")]


def directions(ends: tuple[str, str]) -> list[int]:
    """Across, up and turn of both ends of a beam."""
    found = [3 * NUMBER[node] + i for node in ends for i in range(3)]
    if ends in HINGES:
        found[2 if ends[0].startswith("h") else 5] = HINGES[ends]
    return found


def stiffness(ends: tuple[str, str], inertia: float) -> tuple[np.ndarray, np.ndarray]:
    """Of one bar in its own directions, and the turn into those of the frame."""
    (x, y), (u, v) = (NODES[node] for node in ends)
    length = float(np.hypot(u - x, v - y))
    c, s = (u - x) / length, (v - y) / length
    turn = np.kron(np.eye(2), np.array([[c, s, 0.0], [-s, c, 0.0], [0.0, 0.0, 1.0]]))
    axial, bend = MODULUS * STIFF_AREA / length, MODULUS * inertia / length**3
    own = np.zeros((6, 6))
    own[np.ix_((0, 3), (0, 3))] = axial * np.array([[1.0, -1.0], [-1.0, 1.0]])
    own[np.ix_((1, 2, 4, 5), (1, 2, 4, 5))] = bend * np.array([
        [12, 6 * length, -12, 6 * length],
        [6 * length, 4 * length**2, -6 * length, 2 * length**2],
        [-12, -6 * length, 12, -6 * length],
        [6 * length, 2 * length**2, -6 * length, 4 * length**2],
    ])
    return own, turn


def solved(*, held: bool) -> dict[tuple[str, str], np.ndarray]:
    """Forces at the ends of every bar: along, across, moment, twice."""
    count = 3 * len(NODES) + len(HINGES)
    whole = np.zeros((count, count))
    # A strut that hardly bends beside its posts, as the textbooks have it.
    inertia = {beam: 1e5 if beam[0][0] in "hs" else 100.0 for beam in BEAMS}
    inertia |= dict.fromkeys(TIES, 0.0)
    for bar in inertia:
        own, turn = stiffness(bar, inertia[bar])
        whole[np.ix_(directions(bar), directions(bar))] += turn.T @ own @ turn
    load = np.zeros(count)
    load[3 * NUMBER["h0"]] = WIND
    fixed = [3 * NUMBER[foot] + i for foot in ("f0", "f1") for i in range(3 if held else 2)]
    free = [i for i in range(count) if i not in fixed]
    moved = np.zeros(count)
    moved[free] = np.linalg.solve(whole[np.ix_(free, free)], load[free])
    found = {}
    for bar in inertia:
        own, turn = stiffness(bar, inertia[bar])
        found[bar] = own @ turn @ moved[directions(bar)]
    return found


def portal(**other: float) -> Portal:
    return Portal(
        form=KNEES, length=LENGTH, spacing=SPACING, down=DOWN, along=ALONG, **other
    )


def test_on_hinges_a_frame_has_the_forces_of_the_textbook() -> None:
    frame, told = solved(held=False), portal_forces(portal(), WIND)
    assert frame["f1", "k1"][0] == pytest.approx(told.thrust, rel=1e-3)
    assert abs(frame["f1", "k1"][5]) == pytest.approx(told.fastening, rel=1e-3)
    assert frame["k1", "s1"][0] == pytest.approx(told.knee, rel=1e-3)
    assert -frame["k0", "s0"][0] == pytest.approx(told.knee, rel=1e-3)
    assert frame["h0", "s0"][0] == pytest.approx(told.strut, rel=1e-3)
    assert abs(frame["s0", "s1"][2]) == pytest.approx(told.strut_moment, rel=1e-3)


def test_feet_held_fast_do_not_bend_a_little_above_the_middle_of_the_free_post() -> None:
    # The textbook's half is for a post that cannot turn at its fastening; it turns a little, which
    # puts the still point higher and the foot's moment up, by less than a quarter.
    frame = solved(held=True)["f1", "k1"]
    free = LENGTH - DOWN
    still = abs(frame[2] / frame[1])
    assert 0.5 * free < still < 0.625 * free
    told = portal_forces(portal(thrust=1e6, foot_width=10.0), WIND)
    assert told.foot < abs(frame[2]) < 1.25 * told.foot
    assert abs(frame[5]) < told.fastening
    assert frame[0] < told.thrust
