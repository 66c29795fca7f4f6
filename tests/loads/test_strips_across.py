"""Lane loads across the road: strips by hand, by many narrow lines, by SymPy's beams, and laws."""

from collections.abc import Sequence
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray
from sympy import Rational, symbols
from sympy.physics.continuum_mechanics.beam import Beam

from eyebar.loads.across import lane_width_ft
from eyebar.loads.strips_across import Strips, strip_moved, worst_strips
from eyebar.loads.wheels_across import AcrossLine, RoadAcross, hat, worst_placings
from eyebar.office import office_values

VALUES = office_values()
Floats = NDArray[np.float64]


def laid(
    line: AcrossLine, clear_ft: float, lanes: int = 1, *, curb_ft: float = 1.0,
    held_ft: float | None = None,
) -> Strips:
    road = RoadAcross(curb_ft=curb_ft, clear_ft=clear_ft, held_ft=held_ft)
    return worst_strips([line], road, most_lanes=lanes, values=VALUES)[0][-1]


def moment(at_ft: float, span_ft: float) -> AcrossLine:
    """Moment of a floorbeam at a section for a unit load, the deck on the beam itself."""
    most = at_ft * (span_ft - at_ft) / span_ft
    return AcrossLine(places_ft=(0.0, at_ft, span_ft), ordinates=(0.0, most, 0.0))


def wheels(line: AcrossLine, clear_ft: float, lanes: int = 1) -> float:
    road = RoadAcross(curb_ft=1.0, clear_ft=clear_ft)
    return worst_placings(line, road, gauge_ft=6.0, most_lanes=lanes, values=VALUES)[-1].share


# By hand


def test_at_the_middle_of_a_floorbeam_a_strip_does_more_than_two_wheel_lines() -> None:
    # Span 18 ft: ordinates 4.5 at the middle, 2 at 4 and at 14 ft: mean (4.5 + 2) / 2 = 3.25. Two
    # lines 6 ft apart about the middle: 3 each, and as much with one of them at the middle.
    found = laid(moment(9.0, 18.0), 16.0)
    assert found.share == pytest.approx(3.25)
    assert found.edges_ft == pytest.approx((4.0,))
    assert wheels(moment(9.0, 18.0), 16.0) == pytest.approx(3.0)


def test_of_the_greatest_moments_anywhere_the_strips_is_the_greater() -> None:
    # The strip's is at the middle: L / 4 - b / 8 = 3.25 ft. That of two lines is under one of them
    # 1.5 ft from the middle: (9 - 1.5)^2 / 18 = 3.125 ft: 4 % less, not 8.
    places = np.linspace(0.5, 17.5, 341)
    strips = [laid(moment(x, 18.0), 16.0).share for x in places]
    lines = [wheels(moment(x, 18.0), 16.0) for x in places]
    assert max(strips) == pytest.approx(3.25)
    assert max(lines) == pytest.approx(3.125)


def test_near_its_ends_a_strip_does_less() -> None:
    # At 4 ft of 18: ordinate 28/9 there. Lines at 4 and 10 ft: 28/9 and 8 x 4/18 = 16/9; half the
    # sum is 22/9. The strip lies where both its edges have one ordinate, 10/18 below the top: mean
    # 28/9 x (1 - 5/18) = 2.247; its first edge is at 4 x (1 - 10/18) = 16/9 ft.
    line = moment(4.0, 18.0)
    assert wheels(line, 16.0) == pytest.approx(22 / 9)
    found = laid(line, 16.0)
    assert found.share == pytest.approx(28 / 9 * 13 / 18)
    assert found.edges_ft == pytest.approx((16 / 9,))


def test_the_end_of_a_floorbeam_bears_both_alike() -> None:
    # Outer line 2 ft from the curb, strip from the curb on: middles 5 ft from the curb, 6 ft from
    # the truss: 1 - 6/18. No shear at the end tells them apart.
    line = AcrossLine(places_ft=(0.0, 18.0), ordinates=(1.0, 0.0))
    assert laid(line, 16.0).share == pytest.approx(12 / 18)
    assert wheels(line, 16.0) == pytest.approx(12 / 18)


def test_an_edge_stringer_gets_some_of_a_strip_where_no_wheel_comes() -> None:
    # Stringers from the curb on, 2 ft apart: the outer wheel stands on the second. Of the strip a
    # triangle of 2 ft comes to the first: 2 / 2 / 10.
    line = hat([1.0 + 2.0 * i for i in range(9)], 0)
    assert wheels(line, 16.0) == 0.0
    assert laid(line, 16.0).share == pytest.approx(0.1)


def test_a_strip_on_a_road_that_is_narrower_is_as_wide_as_the_road() -> None:
    # 8 ft of 10 ft: from 1 to 9 ft; moment at the middle: ordinates 2.5 and 0.5: mean 1.5.
    found = laid(moment(5.0, 10.0), 8.0)
    assert (found.width_ft, found.edges_ft) == (8.0, (1.0,))
    assert found.share == pytest.approx(1.5)


def test_strips_of_two_narrow_lanes_fill_the_road() -> None:
    # 18 ft, two lanes of 9 ft, each with its whole lane load: at the middle of 20 ft ordinates of
    # 5 and 0.5: a mean of 2.75 under both.
    found = laid(moment(10.0, 20.0), 18.0, 2)
    assert (found.width_ft, found.edges_ft) == (9.0, (1.0, 10.0))
    assert found.share == pytest.approx(2 * 2.75)


def test_strips_of_lanes_with_room_meet_where_they_do_most() -> None:
    # 28 ft of 30 ft, two lanes of 12 ft anywhere: strips on both sides of the middle, ordinates
    # 7.5 and 2.5: a mean of 5 under both.
    found = laid(moment(15.0, 30.0), 28.0, 2)
    assert found.share == pytest.approx(10.0)
    assert found.edges_ft == pytest.approx((5.0, 15.0))


def test_two_strips_that_meet_bring_a_stringer_all_that_lies_in_its_gaps() -> None:
    # A stringer at 15 ft between others at 9 and 25 ft; two lanes of 12 ft anywhere on 36 ft. Two
    # strips that meet at 15 ft cover both its gaps: an area of 16 / 2 ft, of 10 ft.
    found = laid(hat([0.0, 9.0, 15.0, 25.0, 36.0], 2), 36.0, 2, curb_ft=0.0)
    assert found.share == pytest.approx(0.8)


def test_strips_that_meet_where_no_beam_stands_are_found_exactly() -> None:
    # Moment at 13 ft of 36 ft, m = 13 x 23 / 36; two lanes of 12 ft anywhere on 36 ft. Strips that
    # meet are one of 20 ft: most where its edges have one ordinate, 20/36 below the top, the first
    # at 13 x (1 - 20/36) ft. The mean is m (1 - 10/36), under both.
    found = laid(moment(13.0, 36.0), 36.0, 2, curb_ft=0.0)
    assert found.share == pytest.approx(2 * 13 * 23 / 36 * 26 / 36)
    assert found.edges_ft == pytest.approx((13 * 16 / 36, 13 * 16 / 36 + 10.0))


def test_of_lanes_with_room_the_outer_wheel_keeps_its_distance_from_the_curb() -> None:
    # Two lanes of 12 ft anywhere on 30 ft; the first end of a beam of 30 ft. Wheels at 2 and 8 ft,
    # and 1 ft behind the lane line at 13 and 19 ft: half of (28 + 22 + 17 + 11) / 30.
    line = AcrossLine(places_ft=(0.0, 30.0), ordinates=(1.0, 0.0))
    road = RoadAcross(curb_ft=0.0, clear_ft=30.0)
    found = worst_placings(line, road, gauge_ft=6.0, most_lanes=2, values=VALUES)[-1]
    assert found.share == pytest.approx((28 + 22 + 17 + 11) / 30 / 2)
    assert found.wheels_ft == pytest.approx((2.0, 8.0, 13.0, 19.0))


def test_a_vehicle_held_beside_the_middle_holds_its_lane_load_there() -> None:
    # 16 ft from 1 ft on: the middle is at 9 ft; 1 ft beside it the strip begins at 3 to 5 ft. End
    # of an 18 ft beam: middle at 8 ft: 1 - 8/18.
    line = AcrossLine(places_ft=(0.0, 18.0), ordinates=(1.0, 0.0))
    found = laid(line, 16.0, held_ft=1.0)
    assert found.share == pytest.approx(10 / 18)
    assert found.edges_ft == pytest.approx((3.0,))


def test_what_lifts_everywhere_is_left_out() -> None:
    assert laid(AcrossLine(places_ft=(0.0, 18.0), ordinates=(-1.0, -1.0)), 16.0).share == 0.0


# By another road: SymPy's beams, and steps over many narrow lines


@pytest.mark.parametrize("at", [Rational(5, 2), Rational(9), Rational(12)])
def test_a_strip_bends_a_floorbeam_as_sympy_says(at: Rational) -> None:
    found = laid(moment(float(at), 18.0), 16.0)
    begin = Rational(found.edges_ft[0]).limit_denominator(100)
    modulus, inertia = symbols("E I")
    beam = Beam(18, modulus, inertia)
    first, last = symbols("R1 R2")
    beam.apply_load(first, 0, -1)
    beam.apply_load(last, 18, -1)
    beam.apply_load(Rational(-1, 10), begin, 0, end=begin + 10)
    beam.solve_for_reaction_loads(first, last)
    bent = beam.bending_moment().subs(beam.variable, at).doit()
    assert abs(float(bent)) == pytest.approx(found.share, rel=1e-3)


def stepped(line: AcrossLine, clear_ft: float, lanes: int, step_ft: float) -> float:
    """The greatest sum of means, strips stepped over their lanes and lanes over the road, every
    strip 60 narrow lines; the road begins at 1 ft."""
    lane = lane_width_ft(clear_ft, lanes, VALUES)
    width = min(10.0, lane)
    offsets = (np.arange(60) + 0.5) / 60 * width
    spare = max(clear_ft - lanes * lane, 0.0)
    best = -np.inf
    for start in np.arange(0.0, spare + 1e-9, step_ft):
        total = 0.0
        for i in range(lanes):
            begin = 1.0 + start + i * lane
            edges = np.append(np.arange(begin, begin + lane - width, step_ft), begin + lane - width)
            places = edges[:, None] + offsets
            total += float(np.interp(places, line.places_ft, line.ordinates).mean(axis=1).max())
        best = max(best, total)
    return best


def uneven_line(random: np.random.Generator, last_ft: float, *, both: bool) -> AcrossLine:
    gaps = random.uniform(1.5, 5.0, 40)
    places = np.concatenate([[0.0], np.cumsum(gaps)])
    places = np.append(places[places < last_ft - 1.0], last_ft)
    ordinates = random.uniform(-1.0 if both else 0.0, 1.0, len(places))
    return AcrossLine(places_ft=tuple(places.tolist()), ordinates=tuple(ordinates.tolist()))


@pytest.mark.parametrize("lanes", [1, 2, 3])
@pytest.mark.parametrize("seed", range(6))
def test_no_step_finds_worse_than_the_worst_place(lanes: int, seed: int) -> None:
    random = np.random.default_rng(100 * lanes + seed)
    clear = float(random.uniform(*((8.0, 20.0), (18.0, 33.0), (36.0, 45.0))[lanes - 1]))
    line = uneven_line(random, clear + 2.0, both=seed % 2 == 1)
    ours, tried = laid(line, clear, lanes).share, stepped(line, clear, lanes, 0.05)
    # Sixty lines are not quite a strip: kinks of the line inside one sixtieth of 10 ft.
    assert tried <= ours + 2e-3 * lanes
    assert max(tried, 0.0) >= ours - 1e-2 * lanes


@pytest.mark.parametrize("seed", range(6))
def test_no_place_of_lanes_with_room_is_worse_for_wheels(seed: int) -> None:
    random = np.random.default_rng(seed)
    clear = float(random.uniform(24.5, 35.5))
    line = uneven_line(random, clear + 2.0, both=seed % 2 == 1)
    best = -np.inf
    for start in np.linspace(0.0, clear - 24.0, 200):
        total = 0.0
        for i in (0, 1):
            # 2 ft from a curb, 1 ft from the lane's line, whichever is farther in.
            low = max(start + 12.0 * i + 1.0, 2.0)
            high = min(start + 12.0 * (i + 1) - 1.0, clear - 2.0) - 6.0
            first = 1.0 + np.linspace(low, high, 200)
            both = np.interp(first, line.places_ft, line.ordinates)
            both += np.interp(first + 6.0, line.places_ft, line.ordinates)
            total += float(both.max()) / 2.0
        best = max(best, total)
    assert best <= wheels(line, clear, 2) + 1e-9
    assert best >= wheels(line, clear, 2) - 0.05


@pytest.mark.parametrize("lanes", [1, 2])
def test_lines_of_the_same_places_are_found_together_as_each_alone(lanes: int) -> None:
    # To the bit: a rating finds many at once, its working one.
    random = np.random.default_rng(lanes)
    places = tuple(np.cumsum(random.uniform(1.0, 3.0, 12)).tolist())
    lines = [
        AcrossLine(places_ft=places, ordinates=tuple(random.uniform(-1.0, 1.0, 12).tolist()))
        for _ in range(30)
    ]
    for clear in (9.0, 16.0, 18.5, 29.0):
        road = RoadAcross(curb_ft=0.5, clear_ft=clear)
        together = worst_strips(lines, road, most_lanes=lanes, values=VALUES)
        assert together == [
            worst_strips([one], road, most_lanes=lanes, values=VALUES)[0] for one in lines
        ]


# Laws

ANYWHERE = (-20.0, 60.0)
ORDINATES = st.lists(st.floats(-1.0, 1.0), min_size=3, max_size=9)


def line_of(ordinates: Sequence[float]) -> AcrossLine:
    places = tuple(2.5 * i for i in range(len(ordinates)))
    return AcrossLine(places_ft=places, ordinates=tuple(ordinates))


@given(ordinates=ORDINATES, edge=st.floats(-5.0, 25.0), width=st.floats(0.5, 12.0))
@settings(deadline=None)
def test_a_strip_does_the_mean_of_what_its_halves_do(
    ordinates: list[float], edge: float, width: float
) -> None:
    # Condition: none.
    line, at = line_of(ordinates), np.array([edge])
    half = strip_moved(line, width / 2.0, *ANYWHERE).effect
    whole = strip_moved(line, width, *ANYWHERE).effect(at)
    assert whole == pytest.approx((half(at) + half(at + width / 2.0)) / 2.0, abs=1e-9)
    assert whole * width == pytest.approx(line.under(edge, edge + width), abs=1e-9)


@given(ordinates=ORDINATES, edge=st.floats(-5.0, 25.0))
@settings(deadline=None)
def test_a_strip_of_no_width_is_a_wheel_line(ordinates: list[float], edge: float) -> None:
    # Condition: so narrow that the line hardly changes under it.
    line = line_of(ordinates)
    found = strip_moved(line, 1e-6, *ANYWHERE).effect(np.array([edge]))[0]
    assert found == pytest.approx(line.at(edge), abs=1e-5)


@given(ordinates=ORDINATES, clear=st.floats(10.0, 17.9))
@settings(deadline=None)
def test_a_strip_is_never_above_the_worst_pair_of_lines_that_may_stand_in_it(
    ordinates: list[float], clear: float
) -> None:
    # A strip of 10 ft is the mean of pairs of lines 5 ft apart, each as far from the curb as it is.
    line = line_of(ordinates)
    ours = laid(line, clear).share
    first = {1.0, 1.0 + clear - 5.0}
    for place in line.places_ft:
        first |= {x for x in (place, place - 5.0) if 1.0 < x < 1.0 + clear - 5.0}
    pairs = [(line.at(x) + line.at(x + 5.0)) / 2.0 for x in first]
    assert ours <= max(*pairs, 0.0) + 1e-9


@given(ordinates=ORDINATES, widths=st.lists(st.floats(10.0, 40.0), min_size=2, max_size=2))
@settings(deadline=None)
def test_on_a_wider_road_a_strip_does_no_less(ordinates: list[float], widths: list[float]) -> None:
    # Condition: one lane; the strip has its whole width on both roads.
    line, shares = line_of(ordinates), [laid(line_of(ordinates), w).share for w in sorted(widths)]
    assert all(a <= b + 1e-9 for a, b in pairwise(shares))
    assert shares[-1] <= max(*line.ordinates, line.at(1.0), line.at(41.0), 0.0) + 1e-9
