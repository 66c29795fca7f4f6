"""Continuous beams: Civil Engineering Formulas, table 2.1 (p. 50), and two pages of problems.

Civil Engineering Formulas: moments over the supports of equal spans under a uniform load, two spans
0.125 w L^2. piping-designer.com, three equal spans: 0.100 w L^2 over the supports, 0.025 w L^2 in
the middle of the middle span. mathalino.com, problem 826: spans of 4, 4 and 3 m, load terms of 8 |
32, 32 | 20 kN m2 on the two inner supports: M2 = -1.6923, M3 = -3.2307 kN m.
"""

from eyebar.resistance.continuity import LoadedSpan, moment_between_joints, moments_over_joints
from tests.published.printing import printed

# w = 1, L = 1, I = 1: load terms of w L^3 / 4.
UNIFORM = LoadedSpan(stiff=1.0, near=0.25, far=0.25)


def test_two_and_three_equal_spans() -> None:
    assert moments_over_joints([UNIFORM] * 2)[1] == printed("0.125")
    first, second = moments_over_joints([UNIFORM] * 3)[1:3]
    assert first == printed("0.100")
    assert moment_between_joints(1 / 8, first, second) == printed("0.025")


def test_one_span_has_no_moment_over_its_ends() -> None:
    assert moments_over_joints([UNIFORM]) == (0.0, 0.0)


def test_unlike_spans_with_any_load() -> None:
    found = moments_over_joints([
        LoadedSpan(stiff=4.0, near=0.0, far=8.0),
        LoadedSpan(stiff=4.0, near=32.0, far=32.0),
        LoadedSpan(stiff=3.0, near=20.0, far=0.0),
    ])
    assert found[1] == printed("1.6923")
    # -42 / 13 = -3.23077 is printed cut off, not rounded.
    assert found[2] == printed("3.2307", within=1e-4, because="the print cuts off the last digit")
