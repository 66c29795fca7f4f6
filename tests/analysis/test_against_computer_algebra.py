"""SymPy's truss, exact to the last fraction, bar by bar on determinate trusses.

Panels of 15 ft on 20 ft of depth make diagonals of 25 ft, so that every force is a fraction.
"""

from fractions import Fraction

import pytest
from sympy import Rational
from sympy.physics.continuum_mechanics.truss import Truss

from tests.analysis.solving import at_rest, loaded
from tests.analysis.trusses import Drawing, bar, pratt

PITCH, DEPTH = 15, 20
SCALE = 12.0
"""Inches to a foot: forces do not care."""


def exact(drawing: Drawing, down: dict[str, Fraction]) -> dict[str, Fraction]:
    """Force of each bar by SymPy, from whole feet and fractions of a kip."""
    truss = Truss()
    whole = [(joint, *(round(c / SCALE) for c in at)) for joint, at in drawing.joints.items()]
    truss.add_node(*((joint, Rational(x), Rational(y)) for joint, x, y in whole))
    truss.add_member(*((b.name, *b.ends) for b in drawing.bars))
    truss.apply_support(("L0", "pinned"), (drawing.floor_joints[-1], "roller"))
    weights = {joint: kip for joint, kip in down.items() if kip}
    truss.apply_load(
        *((j, Rational(w.numerator, w.denominator), Rational(270)) for j, w in weights.items())
    )
    truss.solve()
    found = {}
    for name, force in truss.internal_forces.items():
        reduced = Rational(force)
        found[str(name)] = Fraction(int(reduced.p), int(reduced.q))
    return found


def straight(panels: int) -> Drawing:
    """A Pratt truss of panels of 15 ft, 20 ft deep, one diagonal a panel that may push."""
    return pratt(panels, counters=(), pitch=SCALE * PITCH, depth=SCALE * DEPTH, slender=False)


def bent() -> Drawing:
    """A six-panel truss with a bent upper chord: posts of 20 and 28 ft, one diagonal a panel."""
    plain = straight(6)
    raised = {f"U{i}": (SCALE * PITCH * i, SCALE * 28.0) for i in (2, 3, 4)}
    return Drawing(
        joints={**plain.joints, **raised}, bars=plain.bars, supports=plain.supports,
        floor_joints=plain.floor_joints,
    )


def warren() -> Drawing:
    """Four panels of a Warren truss with posts: determinate, diagonals both ways."""
    plain = straight(4)
    turned = plain.without("U1-L2", "U3-L2")
    return turned.with_more(bar("U2", "L1", 2.0), bar("U2", "L3", 2.0))


CASES = {
    "four panels, even": (
        straight(4),
        {"L1": Fraction(10), "L2": Fraction(10), "L3": Fraction(10)},
    ),
    "four panels, one weight": (
        straight(4),
        {"L1": Fraction(22, 3)},
    ),
    "four panels, Warren with posts": (warren(), {"L1": Fraction(7), "U2": Fraction(3, 2)}),
    "six panels, uneven, upper joints too": (
        straight(6),
        {"L1": Fraction(3), "L4": Fraction(17, 2), "U3": Fraction(5, 4)},
    ),
}


@pytest.mark.parametrize("case", CASES)
def test_every_bar_of_a_determinate_truss(case: str) -> None:
    drawing, down = CASES[case]
    fractions = exact(drawing, down)
    assert set(fractions) == set(drawing.names)
    forces = at_rest(drawing, {joint: float(kip) for joint, kip in down.items()})
    for name, fraction in fractions.items():
        assert forces[name] == pytest.approx(float(fraction), rel=1e-9, abs=1e-10), name


def test_the_four_panel_truss_in_fractions_by_hand() -> None:
    # 10 kip at L1 to L3: reactions 15; chord 15 x 15/20, end post 15 x 25/20, diagonal 5 x 25/20.
    drawing, down = CASES["four panels, even"]
    fractions = exact(drawing, down)
    assert fractions["L0-L1"] == Fraction(45, 4)
    assert fractions["U1-U2"] == -15
    assert fractions["U1-L0"] == Fraction(-75, 4)
    assert fractions["U1-L1"] == 10
    assert fractions["U2-L2"] == 0
    assert fractions["U1-L2"] == Fraction(25, 4)


def test_influence_lines_of_a_determinate_truss() -> None:
    drawing = straight(4)
    truss = loaded(drawing, {})
    ordinates = truss.lines.ordinates(truss.start)
    for row, joint in enumerate(drawing.floor_joints[1:-1], start=1):
        fractions = exact(drawing, {joint: Fraction(1)})
        for name, ordinate in zip(drawing.names, ordinates[row], strict=True):
            assert ordinate == pytest.approx(float(fractions[name]), rel=1e-9, abs=1e-12)
    assert not ordinates[[0, -1]].any()


def test_a_bent_upper_chord_is_beyond_fractions_but_not_beyond_agreement() -> None:
    # Lengths are roots here, so SymPy's own figures are compared as decimals.
    drawing = bent()
    truss = Truss()
    truss.add_node(*(
        (joint, *(Rational(round(c / SCALE)) for c in at)) for joint, at in drawing.joints.items()
    ))
    truss.add_member(*((b.name, *b.ends) for b in drawing.bars))
    truss.apply_support(("L0", "pinned"), ("L6", "roller"))
    truss.apply_load(("L2", Rational(9), Rational(270)))
    truss.solve()
    forces = at_rest(drawing, {"L2": 9.0})
    for name, force in truss.internal_forces.items():
        assert forces[str(name)] == pytest.approx(float(force.evalf()), abs=1e-9), name
