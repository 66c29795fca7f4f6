"""Loads of the floor: across the road by the lever rule, along it by tables, SymPy and statics."""

from itertools import pairwise
from math import hypot

import numpy as np
import pytest
from sympy import Rational, symbols
from sympy.physics.continuum_mechanics.beam import Beam

from eyebar.loads.continuous import MOMENT, REACTION, SHEAR, ContinuousBeam, train_extremes
from eyebar.loads.simple_beam import greatest_end_shear, greatest_moment
from eyebar.loads.trains import Spans, least_factor, trains
from eyebar.loads.trussed import (
    give_of_trussing,
    moment_taken,
    moments_multiplied,
    rod_pull,
)
from eyebar.loads.wheels_across import (
    AcrossLine,
    RoadAcross,
    hat,
    share_by_table,
    table_share,
    worst_placings,
)
from eyebar.office import office_values
from eyebar.vehicles import shipped_vehicles

VALUES = office_values()
ALL = {name: one for name, one in shipped_vehicles().items() if one.axles_kip}


def placed(line: AcrossLine, clear_ft: float, lanes: int = 1, curb_ft: float = 1.0) -> float:
    """The share of the axles with so many lanes loaded, gauge 6 ft."""
    road = RoadAcross(curb_ft=curb_ft, clear_ft=clear_ft)
    return worst_placings(line, road, gauge_ft=6.0, most_lanes=lanes, values=VALUES)[-1].share


# Across the road


@pytest.mark.parametrize(
    ("lanes", "wheel_line", "presence", "lane"),
    # Rows of the two tables for planks: S / 4.0 and S / 3.75 of a wheel line, S / 6.7 and S / 7.5
    # of a lane, which has two wheel lines; the second has the multiple presence inside.
    [(1, 4.0, 1.2, 6.7), (2, 3.75, 1.0, 7.5)],
)
def test_the_two_tables_of_shares_are_one(
    lanes: int, wheel_line: float, presence: float, lane: float
) -> None:
    assert presence * table_share(1.0, wheel_line) / 2 == pytest.approx(1 / lane, rel=6e-3)
    found = share_by_table(
        "plank", 2.5, lanes=lanes, gauge_ft=6.0, values=VALUES, widest_ft=2.5
    )
    assert found == pytest.approx(2.5 / wheel_line)


def test_an_edge_stringer_takes_a_wheel_by_the_lever_rule() -> None:
    # By hand: stringers at 1, 4, 7 ... 16 ft, road from 1 to 17 ft: the outer wheel at 3 ft, a
    # third of it on the stringer at 1 ft; the other at 9 ft gives it nothing.
    assert placed(hat([1.0, 4.0, 7.0, 10.0, 13.0, 16.0], 0), 16.0) == pytest.approx(1 / 3 / 2)


def test_a_deck_that_hangs_over_gives_its_edge_stringer_more_than_the_wheel() -> None:
    # By hand: the outer stringer at 4 ft, the next at 7: a wheel at 3 ft gives 1 + 1/3; the other
    # at 9 ft nothing.
    assert placed(hat([4.0, 7.0, 11.0, 14.0], 0), 16.0) == pytest.approx((1 + 1 / 3) / 2)


def test_a_narrow_cart_has_both_wheels_near_one_stringer() -> None:
    # By hand: gauge 4 ft over stringers 3 ft apart, one wheel on the stringer: the other is a whole
    # spacing and more away. Over stringers 8 ft apart: 1 and a half.
    road = RoadAcross(curb_ft=0.0, clear_ft=24.0)
    for spacing, share in ((3.0, 0.5), (8.0, (1.0 + 0.5) / 2)):
        line = hat([i * spacing for i in range(int(24 / spacing) + 1)], 2)
        found = worst_placings(line, road, gauge_ft=4.0, most_lanes=1, values=VALUES)
        assert found[0].share == pytest.approx(share)


def test_two_lanes_on_a_wide_road_meet_over_the_middle_of_a_floorbeam() -> None:
    # By hand: a floorbeam of 30 ft, moment at its middle; lanes of 12 ft anywhere on 30 ft. One
    # truck 1 ft from the lane line on either side of the middle: wheels at 8, 14, 16 and 22 ft:
    # ordinates y / 2 and (30 - y) / 2: 4, 7, 7, 4.
    line = AcrossLine(places_ft=(0.0, 15.0, 30.0), ordinates=(0.0, 7.5, 0.0))
    assert placed(line, 30.0, 2, curb_ft=0.0) == pytest.approx((4 + 7 + 7 + 4) / 2)


# Trains on simple spans: against the search along one beam, which the moment tables prove


@pytest.mark.parametrize("span", [8.0, 14.75, 17.5, 30.0])
def test_without_dead_load_the_least_factor_is_that_of_the_greatest_moment(span: float) -> None:
    spans = Spans(of=trains(ALL))
    ones = np.ones(len(ALL))
    least = least_factor(
        spans.pieces(span, 0.0, span), capacity=100.0, dead_kip_per_ft=0.0, span_ft=span,
        times=ones, lane=0.0 * ones,
    )
    for vehicle, factor in zip(ALL.values(), least.factor, strict=True):
        assert 100.0 / factor == pytest.approx(greatest_moment(vehicle, span).value, rel=1e-9)


@pytest.mark.parametrize("span", [8.0, 14.75, 30.0])
def test_shear_at_the_end_is_the_greatest_end_shear(span: float) -> None:
    spans = Spans(of=trains(ALL))
    found = spans.shear(span, 0.0).effect
    for vehicle, shear in zip(ALL.values(), found, strict=True):
        assert shear == pytest.approx(greatest_end_shear(vehicle, span).value, rel=1e-9)


def test_two_panels_bring_what_steps_along_them_find() -> None:
    spans = Spans(of=trains(ALL))
    found = spans.reaction(12.0, 17.0).effect
    for vehicle, reaction in zip(ALL.values(), found, strict=True):
        behind = np.array(vehicle.behind_front_ft())
        fronts = np.arange(-70.0, 70.0, 0.05)[:, None]
        places = np.concatenate([fronts - behind, fronts + behind])
        ordinate = np.where(places < 0.0, 1.0 + places / 12.0, 1.0 - places / 17.0)
        stepped = (np.maximum(ordinate, 0.0) @ np.array(vehicle.axles_kip)).max()
        assert stepped <= reaction + 1e-9
        assert reaction == pytest.approx(stepped, rel=6e-3)


# Stringers that run on: SymPy's beams


def sympy_beam(spans: tuple[int, ...], load_at: Rational) -> dict[str, float]:
    """Moments over the inner supports and reactions of a beam for a unit load, by SymPy."""
    supports = [sum(spans[:i]) for i in range(len(spans) + 1)]
    unknown = symbols(f"R0:{len(supports)}")
    beam = Beam(supports[-1], 1, 1)
    for place, force in zip(supports, unknown, strict=True):
        beam.apply_load(force, place, -1)
        beam.bc_deflection.append((place, 0))
    beam.apply_load(-1, load_at, -1)
    beam.solve_for_reaction_loads(*unknown)
    loads = beam.reaction_loads
    found = {f"R{i}": float(loads[one]) for i, one in enumerate(unknown)}
    reactions = [loads[one] for one in unknown]
    for i, place in enumerate(supports[1:-1], start=1):
        moment = sum(r * (place - at) for r, at in zip(reactions, supports, strict=True)
                     if at < place)
        found[f"M{i}"] = float(moment - max(place - load_at, 0))
    return found


@pytest.mark.parametrize("spans", [(15, 15), (12, 18, 15), (15, 15, 15, 15)])
def test_influence_lines_of_stringers_that_run_on_are_those_of_sympy(
    spans: tuple[int, ...]
) -> None:
    beam = ContinuousBeam(spans_ft=tuple(float(one) for one in spans))
    total = sum(spans)
    for place in (Rational(7, 2), Rational(total, 2) - 1, Rational(total) - Rational(29, 4)):
        expected = sympy_beam(spans, place)
        at = np.array([float(place)])
        moments = beam.support_moments(at)[0]
        for i in range(1, len(spans)):
            support = float(beam.supports_ft[i])
            assert moments[i] == pytest.approx(expected[f"M{i}"], abs=1e-9)
            reaction = beam.line(REACTION, support, i, at)[0]
            assert reaction == pytest.approx(expected[f"R{i}"], abs=1e-9)
        shear = beam.line(SHEAR, 0.0, 0, at)[0]
        assert shear == pytest.approx(expected["R0"], abs=1e-9)
        # A section of the second span, from what stands before it.
        section = spans[0] + 5.0
        before = expected["R0"] * section + expected["R1"] * 5.0
        moment = before - max(section - float(place), 0.0)
        assert beam.line(MOMENT, section, 1, at)[0] == pytest.approx(moment, abs=1e-9)


def test_equal_spans_under_a_uniform_load_bear_as_every_handbook_has_it() -> None:
    # Two spans: 3/8, 5/4; three: 0.4, 1.1; four: 0.929 on the middle support. Common tables.
    for count, support, part in ((2, 1, 1.25), (3, 1, 1.1), (4, 1, 8 / 7), (4, 2, 13 / 14)):
        beam = ContinuousBeam(spans_ft=(15.0,) * count)
        at = float(beam.supports_ft[support])
        found = beam.uniform(REACTION, at, support, [1.0] * count)
        assert found == pytest.approx(part * 15.0)


@pytest.mark.parametrize("vehicle", ["Type 3", "Type 3S2", "SU7"])
def test_a_train_on_two_spans_is_missed_by_less_than_said(vehicle: str) -> None:
    beam = ContinuousBeam(spans_ft=(15.0, 15.0))
    for effect, section, span in ((MOMENT, 6.0, 0), (MOMENT, 15.0, 0), (REACTION, 15.0, 1)):
        coarse, fine = (
            train_extremes(beam, ALL[vehicle], effect=effect, section_ft=section, span=span,
                           step=step) for step in (1 / 40, 1 / 480)
        )
        assert fine.greatest >= coarse.greatest - 1e-9
        assert coarse.greatest == pytest.approx(fine.greatest, rel=3e-3, abs=1e-6)
        assert coarse.least == pytest.approx(fine.least, rel=3e-3, abs=1e-6)


# Trussed beams: by the stiffness of a plane frame


def framed(load_at: float, posts: int) -> tuple[float, float]:
    """(pull of the rods along the beam, moment at mid-span) of a trussed beam of 240 in for a unit
    load, by stiffness: beam of two-dimensional frame elements, rods and posts as bars."""
    span, drop, post_at = 240.0, 20.0, 120.0 if posts == 1 else 80.0
    modulus, inertia, area, rod, post = 1600.0, 1000.0, 100.0, 2.0, 30.0
    count = 24
    nodes = [(span * i / count, 0.0) for i in range(count + 1)]
    feet = [post_at] if posts == 1 else [post_at, span - post_at]
    nodes += [(x, -drop) for x in feet]
    stiff = np.zeros((3 * len(nodes),) * 2)

    def bar(a: int, b: int, axial: float) -> None:
        (x, y), (u, v) = nodes[a], nodes[b]
        length = hypot(u - x, v - y)
        line = np.zeros(len(stiff))
        line[[3 * a, 3 * a + 1, 3 * b, 3 * b + 1]] = np.array(
            [x - u, y - v, u - x, v - y]) / length
        stiff[:] += axial / length * np.outer(line, line)

    for i in range(count):
        bar(i, i + 1, modulus * area)
        length = span / count
        k = modulus * inertia / length**3 * np.array([
            [12, 6 * length, -12, 6 * length],
            [6 * length, 4 * length**2, -6 * length, 2 * length**2],
            [-12, -6 * length, 12, -6 * length],
            [6 * length, 2 * length**2, -6 * length, 4 * length**2],
        ])
        rows = [3 * i + 1, 3 * i + 2, 3 * i + 4, 3 * i + 5]
        stiff[np.ix_(rows, rows)] += k
    chain = [0, *range(count + 1, len(nodes)), count]
    for a, b in pairwise(chain):
        bar(a, b, 29_000.0 * rod)
    for foot, x in enumerate(feet):
        bar(count + 1 + foot, round(x / span * count), 29_000.0 * post)
    held = {0, 1, 3 * count + 1} | {3 * n + 2 for n in range(count + 1, len(nodes))}
    free = [i for i in range(len(stiff)) if i not in held]
    loads = np.zeros(len(stiff))
    loads[3 * round(load_at / span * count) + 1] = -1.0
    moved = np.zeros(len(stiff))
    moved[free] = np.linalg.solve(stiff[np.ix_(free, free)], loads[free])
    a, b = chain[0], chain[1]
    (x, y), (u, v) = nodes[a], nodes[b]
    length = hypot(u - x, v - y)
    stretch = ((moved[3 * b] - moved[3 * a]) * (u - x) + (moved[3 * b + 1] - moved[3 * a + 1])
               * (v - y)) / length
    pull = 29_000.0 * rod / length * stretch * (u - x) / length
    half = count // 2
    turn = moved[3 * half - 1], moved[3 * half + 2]
    drop_of = moved[3 * half - 2], moved[3 * half + 1]
    element = span / count
    moment = modulus * inertia / element**2 * (
        6 * (drop_of[0] - drop_of[1]) + element * (2 * turn[0] + 4 * turn[1])
    )
    return pull, float(moment)


@pytest.mark.parametrize(("posts", "load_at"), [(1, 120.0), (1, 60.0), (2, 80.0), (2, 120.0)])
def test_a_trussed_beam_is_that_of_a_frames_stiffness(posts: int, load_at: float) -> None:
    to_post = 120.0 if posts == 1 else 80.0
    give = give_of_trussing(
        drop=20.0, beam_span=240.0, to_post=to_post, modulus=1600.0, inertia=1000.0, area=100.0,
        rod_modulus=29_000.0, rod_area=2.0, posts=float(posts),
        slopes=2.0 if posts == 1 else 1.0, post_stiffness=29_000.0 * 30.0,
    )
    pull = rod_pull(
        moments_multiplied(min(load_at, 240.0 - load_at), to_post, 240.0, 20.0), 1600.0, 1000.0,
        give,
    )
    expected, moment = framed(load_at, posts)
    assert pull == pytest.approx(expected, rel=2e-3)
    own = min(load_at, 240.0 - load_at) / 2.0 - moment_taken(pull, 20.0, 120.0, to_post)
    assert own == pytest.approx(moment, rel=2e-3, abs=0.02)
