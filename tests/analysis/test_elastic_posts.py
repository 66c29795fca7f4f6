"""A chord on elastic posts: closed forms, limits, and what can only help or only harm."""

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from eyebar.analysis.elastic_posts import ElasticChord, Piece, buckling_multiple
from eyebar.errors import OutOfRange

RIGIDITY = 29_000.0 * 40.0
PANEL = 150.0
HELD = math.inf


def chord(
    thrusts: tuple[float, ...], springs: tuple[float, ...], *, hinged: tuple[int, ...] = ()
) -> ElasticChord:
    """Panels of 150 in; hinged at both ends and at the joints named."""
    count = len(thrusts)
    return ElasticChord(
        pieces=tuple(Piece(length=PANEL, rigidity=RIGIDITY, thrust=one) for one in thrusts),
        springs=springs,
        hinged=tuple(i in (0, count, *hinged) for i in range(count + 1)),
    )


def euler(length: float) -> float:
    return math.pi**2 * RIGIDITY / length**2


def test_posts_without_stiffness_leave_the_whole_length() -> None:
    found = buckling_multiple(chord((1.0,) * 6, (HELD, 0, 0, 0, 0, 0, HELD)))
    assert found == pytest.approx(euler(6 * PANEL), rel=1e-6)


def test_posts_that_do_not_give_leave_the_panel() -> None:
    # Law: with equal panels and an even thrust every panel is a column between hinges, K = 1.
    for spring in (HELD, 1e7):
        found = buckling_multiple(chord((1.0,) * 6, (HELD, *(spring,) * 5, HELD)))
        assert found == pytest.approx(euler(PANEL), rel=1e-4)


def test_one_spring_in_the_middle_of_two_links() -> None:
    # By hand: two straight links of length a, hinged in the middle on a spring C: the thrust P puts
    # 2 P v / a across at the middle against C v, so P = C a / 2. Bending has no part in it.
    found = buckling_multiple(chord((1.0, 1.0), (HELD, 3.0, HELD), hinged=(1,)))
    assert found == pytest.approx(3.0 * PANEL / 2, rel=1e-6)


@pytest.mark.parametrize("part", [0.02, 0.1, 0.3])
def test_many_posts_are_engessers_chord(part: float) -> None:
    # Other method: a long chord under an even thrust, P = 2 sqrt(E I C / a), while the half wave is
    # some panels long (F. Engesser). Here 1.6 to 1.2 panels or more, and 40 panels in all.
    spring = part * euler(PANEL) ** 2 * PANEL / (4 * RIGIDITY)
    closed = 2 * math.sqrt(RIGIDITY * spring / PANEL)
    found = buckling_multiple(chord((1.0,) * 40, (HELD, *(spring,) * 39, HELD)))
    assert found == pytest.approx(closed, rel=0.05 if part > 0.2 else 0.01)


def _by_stability_functions(spring: float) -> float:
    """Two panels, a spring between, an even thrust: the root of the differential equation's own
    condition. Half of a shape that is even about the middle: v = A sin k x + B x, v(0) = 0,
    v'(a) = 0, shear at the middle: E I v''' + P v' = -C v / 2 at x = a."""
    def condition(k: float) -> float:
        # With A = 1: B = -k cos ka. Shear: -E I k^3 cos ka + P (k cos ka + B) = -E I k^3 cos ka.
        deflection = math.sin(k * PANEL) - k * PANEL * math.cos(k * PANEL)
        return RIGIDITY * k**3 * math.cos(k * PANEL) - (-spring / 2 * deflection)
    first = math.pi / 2 / PANEL
    k = brentq(condition, first * 1.0000001, 2 * first * 0.9999999)
    return RIGIDITY * k**2


@pytest.mark.parametrize("part", [0.3, 0.6, 0.9])
def test_two_panels_by_the_differential_equation(part: float) -> None:
    # Both panels' own load is reached at C = 4 P_e / (2 a): below it the even shape governs.
    spring = part * 16 * euler(2 * PANEL) / (2 * PANEL)
    found = buckling_multiple(chord((1.0, 1.0), (HELD, spring, HELD)))
    assert found == pytest.approx(_by_stability_functions(spring), rel=1e-5)


@settings(max_examples=25, deadline=None)
@given(
    st.lists(st.floats(0.1, 2.0), min_size=3, max_size=7),
    st.floats(0.01, 20.0), st.floats(1.0, 5.0), st.data(),
)
def test_a_stiffer_post_never_lowers_the_load(
    thrusts: list[float], spring: float, times: float, data: st.DataObject
) -> None:
    springs = [HELD, *(spring,) * (len(thrusts) - 1), HELD]
    before = buckling_multiple(chord(tuple(thrusts), tuple(springs)))
    springs[data.draw(st.integers(1, len(thrusts) - 1))] *= times
    after = buckling_multiple(chord(tuple(thrusts), tuple(springs)))
    assert after >= before * (1 - 1e-9)


@settings(max_examples=25, deadline=None)
@given(st.lists(st.floats(0.1, 2.0), min_size=3, max_size=7), st.floats(0.01, 20.0), st.data())
def test_more_push_in_one_panel_never_raises_the_load(
    thrusts: list[float], spring: float, data: st.DataObject
) -> None:
    springs = (HELD, *(spring,) * (len(thrusts) - 1), HELD)
    before = buckling_multiple(chord(tuple(thrusts), springs))
    thrusts[data.draw(st.integers(0, len(thrusts) - 1))] *= 1.3
    assert buckling_multiple(chord(tuple(thrusts), springs)) <= before * (1 + 1e-9)


@settings(max_examples=25, deadline=None)
@given(st.lists(st.floats(0.1, 2.0), min_size=2, max_size=6), st.floats(0.01, 20.0))
def test_a_chord_seen_from_the_other_side_is_the_same(thrusts: list[float], spring: float) -> None:
    springs = (HELD, *(spring * (i + 1) for i in range(len(thrusts) - 1)), HELD)
    one = chord(tuple(thrusts), springs)
    other = replace(one, pieces=one.pieces[::-1], springs=springs[::-1], hinged=one.hinged[::-1])
    assert buckling_multiple(other) == pytest.approx(buckling_multiple(one), rel=1e-9)


def test_twice_the_thrust_halves_the_multiple() -> None:
    springs = (HELD, 2.0, 3.0, HELD)
    assert buckling_multiple(chord((2.0, 4.0, 2.0), springs)) == pytest.approx(
        buckling_multiple(chord((1.0, 2.0, 1.0), springs)) / 2
    )


def test_a_hinge_that_nothing_holds_lets_the_chord_go() -> None:
    assert buckling_multiple(chord((1.0, 1.0), (HELD, 0.0, HELD), hinged=(1,))) == 0.0


def test_a_chord_that_is_not_pushed_does_not_buckle() -> None:
    assert buckling_multiple(chord((-1.0, -2.0), (HELD, 1.0, HELD))) == math.inf


def test_a_cantilever_is_a_column_of_twice_its_length() -> None:
    one = ElasticChord(
        pieces=(Piece(length=PANEL, rigidity=RIGIDITY, thrust=1.0),), springs=(HELD, 0.0),
        hinged=(False, True),
    )
    assert buckling_multiple(one) == pytest.approx(euler(2 * PANEL), rel=1e-5)


@pytest.mark.parametrize(
    ("springs", "hinged"),
    [((HELD, HELD), (True, True)), ((HELD, -1.0, HELD), (True,) * 3),
     ((HELD, math.nan, HELD), (True,) * 3), ((HELD, 1.0, HELD), (True, True))],
)
def test_senseless_joints_are_refused(
    springs: tuple[float, ...], hinged: tuple[bool, ...]
) -> None:
    pieces = (Piece(length=PANEL, rigidity=RIGIDITY, thrust=1.0),) * 2
    with pytest.raises(OutOfRange):
        ElasticChord(pieces=pieces, springs=springs, hinged=hinged)


@pytest.mark.parametrize(("length", "rigidity"), [(0.0, 1.0), (1.0, 0.0), (np.nan, 1.0)])
def test_senseless_pieces_are_refused(length: float, rigidity: float) -> None:
    with pytest.raises(OutOfRange):
        ElasticChord(
            pieces=(Piece(length=length, rigidity=rigidity, thrust=1.0),), springs=(HELD, HELD),
            hinged=(True, True),
        )
