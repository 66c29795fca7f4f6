"""Chords that run on over their joints, and bars with unlike ends."""

import math
from dataclasses import replace

import pytest

from eyebar.bridge.parts import RunsOn, Span
from eyebar.formula import Note, flat
from eyebar.resistance.column import buckling_load
from eyebar.resistance.continuity import moments_over_joints, weight_over_joints, weight_term
from eyebar.resistance.rules import rules
from eyebar.resistance.thrust_with_bending import Bent, thrust_with_bending
from eyebar.resistance.unequal_ends import equal_offset, middle_offset, thrust_over_joint
from eyebar.terms import Level, Method
from tests.resistance.bars import (
    EVERY_LEVEL,
    LACED,
    SOUND,
    STIFF_ENDS,
    bar,
    given,
    limits_of,
    working_of,
)

CHECK = "thrust with bending"
DENSITY = 480 / 1728
SPAN = Span(length=180.0, run=180.0, area=10.0, density=DENSITY, inertia=90.0)
CHORD = given(10.0, 3.0, 4.0, top=3.0, bottom=5.0, side=6.0)
HINGED = 10 * DENSITY / 1000 * 180**2 / 8
"""Moment of the chord's weight between hinges, 11.25 kip in."""


def runs(*spans: Span, place: int = 0) -> RunsOn:
    return RunsOn(spans=spans or (SPAN,) * 3, place=place)


def test_three_equal_spans_of_a_chord_bend_over_their_joints() -> None:
    # By hand: w L^2 / 10 = 0.8 x w L^2 / 8 over both inner joints.
    hinged = HINGED
    assert hinged == pytest.approx(11.25, rel=1e-12)
    assert weight_over_joints(runs(place=1), 1.25) == pytest.approx(
        (0.8 * 1.25 * HINGED,) * 2, rel=1e-12
    )
    assert weight_over_joints(runs(place=0), 1.0) == pytest.approx((0.0, 0.8 * HINGED), rel=1e-12)


def test_unlike_spans_by_the_equation_of_three_moments() -> None:
    # By hand, two spans: 2 M (L1/I1 + L2/I2) = w1 H1 L1^2/(4 I1) + w2 H2 L2^2/(4 I2), w the weight
    # by length; the second span half as long, twice as heavy, three times as stiff, on a slope.
    other = Span(length=90.0, run=72.0, area=20.0, density=DENSITY, inertia=270.0)
    weight = DENSITY / 1000
    right = weight * (10 * 180 * 180**2 / (4 * 90) + 20 * 72 * 90**2 / (4 * 270))
    moment = right / (2 * (180 / 90 + 90 / 270))
    found = weight_over_joints(runs(SPAN, other), 1.0)
    assert found == pytest.approx((0.0, moment), rel=1e-12)
    term = weight_term(
        1.0, 20.0, density=DENSITY, run=72.0, length=90.0, inertia=270.0
    )
    assert term == pytest.approx(weight * 20 * 72 * 90**2 / (4 * 270), rel=1e-12)


@pytest.mark.parametrize("count", [2, 3, 4, 7])
def test_every_equation_is_satisfied_and_what_is_left_is_said(count: int) -> None:
    # Law: a long run of equal spans tends to w L^2 / 12 over its joints.
    spans = tuple(replace(SPAN, length=150.0 + 20 * i, inertia=80.0 + 5 * i) for i in range(count))
    chord = bar(CHORD, run=180.0, runs_on=RunsOn(spans=spans, place=1))
    _, steps = working_of(chord, Method.LOAD_FACTOR, Level.OPERATING)
    (left,) = [
        entry for entry in flat(steps)
        if isinstance(entry, Note) and entry.text.startswith("what is left of the worst")
    ]
    assert abs(left.value) < 1e-12


def test_a_long_run_of_spans_bends_as_if_fixed() -> None:
    found = weight_over_joints(RunsOn(spans=(SPAN,) * 21, place=10), 1.0)
    assert found == pytest.approx((HINGED * 8 / 12,) * 2, rel=1e-4)
    assert moments_over_joints([]) == (0.0,)


@pytest.mark.parametrize(("method", "level"), EVERY_LEVEL)
def test_a_middle_span_is_bent_over_its_joints_more_than_between(
    method: Method, level: Level
) -> None:
    # Other method: the limit of the same bar with its moments given: 0.2 of the hinged one between
    # the joints, 0.8 over them, the thrust 1 in below the centre. Given bars have the system factor
    # of a single bar.
    chord = bar(CHORD, run=180.0, pin_offset=1.0, runs_on=runs(place=1))
    found = limits_of(chord, method, level, values=STIFF_ENDS)[CHECK]
    ruled = rules(method, level, values=STIFF_ENDS, condition=SOUND, section=CHORD)
    straight = min(
        -one.force
        for one in limits_of(bar(CHORD), method, level, values=STIFF_ENDS).values()
        if one.sense < 0
    )
    safety = ruled.column if method is Method.ALLOWABLE_STRESS else 1.0
    short = {
        Method.ALLOWABLE_STRESS: 260 / safety, Method.LOAD_FACTOR: 0.85 * 260,
        Method.LOAD_AND_RESISTANCE: math.nan,
    }[method]
    bent = Bent(
        weight=0.2 * HINGED, support=0.8 * HINGED, offset=1.0, side_offset=0.0, bow=0.0,
        column=straight, short=short,
        buckling=buckling_load(27_900.0, 10.0, 60.0) / safety,
        side_buckling=buckling_load(27_900.0, 10.0, 45.0) / safety,
        area=10.0, inertia=90.0, side_inertia=160.0, top=3.0, bottom=5.0, side=None,
        yield_stress=26.0, modulus=27_900.0, length=180.0, radius=3.0,
    )
    assert -found.force == pytest.approx(thrust_with_bending(bent, ruled), rel=1e-12)


def test_over_a_joint_weight_and_a_low_pin_add_up() -> None:
    # By hand: M_r 26 x 90 / 5 = 468 kip in; (1 - 9/468) / (1/221 + 1/468) = 147.2 kip.
    found = thrust_over_joint(
        bending=1.0, support=9.0, moment_strength=468.0, axial=1.0, column=221.0, offset=1.0
    )
    assert found == pytest.approx((1 - 9 / 468) / (1 / 221 + 1 / 468), rel=1e-12)
    used_up = thrust_over_joint(
        bending=1.0, support=500.0, moment_strength=468.0, axial=1.0, column=221.0, offset=1.0
    )
    assert used_up == 0.0


def test_a_chord_whose_weight_alone_uses_it_up_over_a_joint_carries_nothing() -> None:
    heavy = replace(SPAN, density=DENSITY * 80)
    chord = bar(CHORD, run=180.0, runs_on=runs(heavy, heavy, place=0))
    found = limits_of(chord, Method.ALLOWABLE_STRESS, Level.INVENTORY)[CHECK]
    # By hand: w L^2 / 8 = 80 x 11.25 = 900 kip in over 14.3 x 90 / 5 = 257.4.
    assert found.force == 0.0


@pytest.mark.parametrize(
    ("greater", "lesser", "equal", "middle"),
    [
        # By hand: e_1 (0.6 + 0.4 e_2 / e_1), not below 0.4 e_1; the mean.
        (2.0, 2.0, 2.0, 2.0),
        (2.0, 1.0, 1.6, 1.5),
        (2.0, 0.0, 1.2, 1.0),
        (2.0, -2.0, 0.8, 0.0),
        (-2.0, -1.0, -1.6, -1.5),
        (-2.0, 1.0, -0.8, -0.5),
    ],
)
def test_unlike_ends_bend_as_equal_ones_of_less(
    greater: float, lesser: float, equal: float, middle: float
) -> None:
    assert equal_offset(greater, lesser) == pytest.approx(equal, rel=1e-12)
    assert middle_offset(greater, lesser) == pytest.approx(middle, rel=1e-12, abs=1e-15)


@pytest.mark.parametrize(("method", "level"), EVERY_LEVEL)
def test_unlike_ends_lie_between_the_better_and_the_worse_alike(
    method: Method, level: Level
) -> None:
    # Law, nothing else bending the bar: with one end better the bar is no weaker than with both
    # ends as bad as the worse, and no stronger than with both as good as the better.
    both, mixed, turned, less = (
        limits_of(
            bar(CHORD, length=240.0, run=0.0, pin_offset=one, other_pin_offset=other),
            method, level,
        )[CHECK].force
        for one, other in ((2.0, None), (2.0, 0.5), (0.5, 2.0), (0.5, None))
    )
    assert -both <= -mixed <= -less
    assert mixed == turned


def test_a_weight_is_relieved_by_no_more_than_the_mean_of_unlike_ends() -> None:
    # By hand: between the joints the weight sags the bar by 200, pins 1 in and 0 below the centre
    # lift it by half a thrust. Other method: the same bar with both pins 0.5 in below; its pins
    # themselves are looked at with 1 in.
    bent = Bent(
        weight=200.0, offset=1.0, other_offset=0.0, side_offset=0.0, bow=0.0, column=150.0,
        short=1e9, buckling=900.0, side_buckling=1500.0, area=10.0, inertia=90.0,
        side_inertia=160.0, top=5.0, bottom=5.0, side=None, yield_stress=26.0, modulus=27_900.0,
        length=180.0, radius=3.0,
    )
    found = rules(
        Method.LOAD_FACTOR, Level.OPERATING, values=STIFF_ENDS, condition=SOUND, section=LACED
    )
    alike = replace(bent, offset=0.5, other_offset=None)
    assert thrust_with_bending(bent, found) == thrust_with_bending(alike, found)


def test_a_thrust_beside_the_centre_across_the_truss_bends_the_bar_sideways() -> None:
    beside = bar(CHORD, side_offset=0.5)
    rusted = bar(CHORD, side_offset=-0.5)
    found = limits_of(beside, Method.LOAD_FACTOR, Level.OPERATING)
    assert found[CHECK] == limits_of(rusted, Method.LOAD_FACTOR, Level.OPERATING)[CHECK]
    straight = limits_of(bar(CHORD), Method.LOAD_FACTOR, Level.OPERATING)
    assert CHECK not in straight
    assert found[CHECK].force > max(one.force for one in straight.values() if one.sense < 0)
