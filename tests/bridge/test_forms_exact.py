"""SymPy's truss, exact to the last fraction, bar by bar on every determinate form.

Panels and depths are legs of right triangles of whole numbers (15-20-25, 8-15-17, 20-21-29 and
their like), so that every length, and with it every force, is a fraction.
"""

import math
from fractions import Fraction

import pytest
from sympy import Rational
from sympy.physics.continuum_mechanics.truss import Truss

from eyebar.bridge.forms import Layout
from eyebar.terms import EndPosts, FloorOn, Form, SubMembers
from tests.analysis.solving import at_rest
from tests.bridge.forms import bearings, drawing, form

UPPER = {"floor": FloorOn.UPPER}
HUNG = {"floor": FloorOn.UPPER, "end_posts": EndPosts.NONE}
UPRIGHT = {"end_posts": EndPosts.VERTICAL}


def feet(*lengths: int) -> list[float]:
    return [12.0 * length for length in lengths]


def depths(letter: str = "U", **at: int) -> dict[str, float]:
    return {f"{letter}{number[1:]}": 12.0 * depth for number, depth in at.items()}


def level(*numbers: int, depth: int, letter: str = "U") -> dict[str, float]:
    return {f"{letter}{number}": 12.0 * depth for number in numbers}


CASES: dict[str, tuple[Form, list[float], dict[str, object]]] = {
    "king post": (Form.KING_POST, feet(15, 15), {}),
    "king post turned over": (Form.KING_POST, feet(15, 15), HUNG),
    "queen post, one diagonal": (Form.QUEEN_POST, feet(15, 15, 15), {"counters": ("U1-L2",)}),
    "Pratt": (Form.PRATT, feet(15, 15, 15, 15), {}),
    "Pratt deck": (Form.PRATT, feet(15, 15, 15, 15), UPPER),
    "Pratt on upright posts": (Form.PRATT, feet(15, 15, 15, 15), UPRIGHT),
    "Pratt that hangs": (Form.PRATT, feet(15, 15, 15, 15), HUNG),
    "Pratt of unequal panels": (Form.PRATT, feet(15, 21, 48, 15), {}),
    # Hips 10 ft from the bearings: 10-24-26 and 18-24-30, inner panels 32-24-40.
    "half-hip Pratt": (
        Form.HALF_HIP_PRATT, feet(28, 32, 32, 28),
        {"hip": 120.0, "depths": level(0, 1, 2, 3, 4, depth=24)},
    ),
    # 15-20-25 at the hip; chord 15-8-17; diagonal U1-L2 15-20-25.
    "Parker": (Form.PARKER, feet(15, 15, 15, 15), {"depths": depths(u1=20, u2=28, u3=20)}),
    # End diagonal 15-8-17, diagonal 21-28-35, chord 21-20-29.
    "Parker that hangs": (
        Form.PARKER, feet(15, 21, 21, 15), {**HUNG, "depths": depths("L", l1=8, l2=28, l3=8)},
    ),
    # As before, and diagonal U2-L3 21-28-35.
    "Camelback": (
        Form.CAMELBACK, feet(15, 15, 21, 21, 15, 15),
        {"depths": depths(u1=20, u2=28, u3=28, u4=28, u5=20)},
    ),
    "Warren": (Form.WARREN, feet(30, 30, 30), {}),
    "Warren deck": (Form.WARREN, feet(30, 30, 30), UPPER),
    "Warren on upright posts": (Form.WARREN, feet(30, 30), UPRIGHT),
    "Warren that hangs": (Form.WARREN, feet(30, 30, 30), HUNG),
    "Warren with verticals": (Form.WARREN_WITH_VERTICALS, feet(15, 15, 15, 15), {}),
    "Warren with verticals that hangs": (Form.WARREN_WITH_VERTICALS, feet(15, 15, 15, 15), HUNG),
    "Howe": (Form.HOWE, feet(15, 15, 15, 15), {}),
    "Howe that hangs": (Form.HOWE, feet(15, 15, 15, 15), HUNG),
    # Long panels 30-40-50, their halves 15-20-25.
    "Baltimore": (Form.BALTIMORE, feet(*[15] * 8), {"depths": level(2, 4, 6, depth=40)}),
    "Baltimore with sub-ties": (
        Form.BALTIMORE, feet(*[15] * 8),
        {"sub_members": SubMembers.TIES, "depths": level(2, 4, 6, depth=40)},
    ),
    "Baltimore that hangs": (
        Form.BALTIMORE, feet(*[15] * 8), {**HUNG, "depths": level(2, 4, 6, depth=40, letter="L")},
    ),
    # Chord 30-16-34 from 40 ft to 56 ft; the middle of U2-L4 at 20 ft, so struts 15-20-25.
    "Pennsylvania": (
        Form.PENNSYLVANIA, feet(*[15] * 8), {"depths": depths(u2=40, u4=56, u6=40)},
    ),
    "bowstring": (Form.BOWSTRING, feet(15, 15, 15, 15), {"depths": depths(u1=20, u2=28, u3=20)}),
    # Up 20 and 28 ft, down 8 and 16 ft: chords 15-20-25 and 15-8-17, diagonal 15-36-39.
    "lenticular": (
        Form.LENTICULAR, feet(15, 15, 15, 15),
        {"depths": {**depths(u1=20, u2=28, u3=20), **depths("L", l1=8, l2=16, l3=8)}},
    ),
}


def laid(case: str) -> Layout:
    word, panels, how = CASES[case]
    if "depths" not in how:
        depth_of = {"U": 240.0, "L": 240.0}
        plain = form(word, panels, **how)
        how = {**how, "depths": {
            joint: depth_of[joint[0]] for joint in plain.joints if plain.joints[joint][1]}}
    return form(word, panels, **how)


def exact(layout: Layout, down: dict[str, Fraction]) -> dict[str, Fraction]:
    """Force of each bar by SymPy, from feet and kips as fractions."""
    truss = Truss()
    whole = {joint: tuple(Fraction(c) / 12 for c in at) for joint, at in layout.joints.items()}
    truss.add_node(*(
        (joint, *(Rational(c.numerator, c.denominator) for c in at)) for joint, at in whole.items()
    ))
    truss.add_member(*((name, *bar.ends) for name, bar in layout.bars.items()))
    first, last = bearings(layout)
    truss.apply_support((first, "pinned"), (last, "roller"))
    truss.apply_load(*(
        (joint, Rational(kip.numerator, kip.denominator), Rational(270))
        for joint, kip in down.items()
    ))
    truss.solve()
    found = {}
    for name, force in truss.internal_forces.items():
        reduced = Rational(force)
        found[str(name)] = Fraction(int(reduced.p), int(reduced.q))
    return found


@pytest.mark.parametrize("case", CASES)
def test_every_length_is_a_fraction(case: str) -> None:
    layout = laid(case)
    for bar in layout.bars.values():
        (ax, ay), (bx, by) = (layout.joints[joint] for joint in bar.ends)
        square = ((ax - bx) / 3) ** 2 + ((ay - by) / 3) ** 2  # in quarter feet
        assert math.isqrt(round(square)) ** 2 == square, bar.name


@pytest.mark.parametrize("case", CASES)
def test_every_bar_has_the_force_of_the_exact_solution(case: str) -> None:
    # Weights differ from joint to joint, so that no bar is idle by symmetry alone.
    layout = laid(case)
    inner = [joint for joint, _ in layout.floor_joints if joint not in bearings(layout)]
    down = {joint: Fraction(3 + 2 * i, 2) for i, joint in enumerate(inner)}
    fractions = exact(layout, down)
    forces = at_rest(drawing(layout), {joint: float(kip) for joint, kip in down.items()})
    assert set(fractions) == set(layout.bars)
    for name, fraction in fractions.items():
        assert forces[name] == pytest.approx(float(fraction), rel=1e-9, abs=1e-9), name


def test_every_form_that_can_be_determinate_is_there() -> None:
    # Two webs are indeterminate; a small Pratt is a Pratt, whose middle panel is crossed.
    left_out = {
        Form.DOUBLE_INTERSECTION_PRATT, Form.DOUBLE_INTERSECTION_WARREN, Form.SMALL_PRATT,
    }
    assert {word for word, _, _ in CASES.values()} == set(Form) - left_out
