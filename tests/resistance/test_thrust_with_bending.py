"""Thrust with bending: the limit against closed roots, dense stepping, and what bends what."""

import math
from dataclasses import replace

import pytest

from eyebar.errors import OutOfRange
from eyebar.formula import Block, Note, flat
from eyebar.resistance.column import buckling_load
from eyebar.resistance.moments import secant_stress
from eyebar.resistance.roots import first_root
from eyebar.resistance.rules import Rules, rules
from eyebar.resistance.thrust_with_bending import Bent, thrust_with_bending
from eyebar.sections.properties import properties
from eyebar.terms import Level, Method
from tests.resistance.bars import (
    COVERED,
    EVERY_LEVEL,
    IRON,
    LACED,
    SOUND,
    STIFF_ENDS,
    bar,
    given,
    greatest_push,
    limits_of,
    working_of,
)

CHECK = "thrust with bending"
CHORD = given(10.0, 3.0, 4.0, top=3.0, bottom=5.0, side=6.0)

BENT = Bent(
    weight=20.0, offset=0.5, side_offset=0.0, bow=0.0, column=150.0, short=170.0, buckling=900.0,
    side_buckling=1500.0, area=10.0, inertia=90.0, side_inertia=160.0, top=3.0, bottom=5.0,
    side=None, yield_stress=26.0, modulus=27_900.0, length=180.0, radius=3.0,
)


def of(method: Method, level: Level) -> Rules:
    return rules(method, level, values=STIFF_ENDS, condition=SOUND, section=LACED)


def by_quadratic(axial: float, bending: float, start: float, rate: float) -> float:
    """First root of a P/P_c + k (start + rate P) / (1 - P/P_x) = 1, from the quadratic formula."""
    c, x = axial / BENT.column, 1 / BENT.buckling
    one = -(c + x + bending * rate)
    zero = 1 - bending * start
    two = c * x
    if one**2 < 4 * two * zero:
        return math.inf
    return (-one - math.sqrt(one**2 - 4 * two * zero)) / (2 * two)


@pytest.mark.parametrize(
    ("method", "level", "lines", "strength"),
    [
        # What a section is worth at first yield: 0.55 and 0.75 of 26 ksi, 26, 0.90 (system) of 26.
        (Method.ALLOWABLE_STRESS, Level.INVENTORY, [(1.0, 1.0)], 14.3),
        (Method.ALLOWABLE_STRESS, Level.OPERATING, [(1.0, 1.0)], 19.5),
        (Method.LOAD_FACTOR, Level.OPERATING, [(1.0, 1.0)], 26.0),
        (Method.LOAD_AND_RESISTANCE, Level.LEGAL, [(0.5, 1.0), (1.0, 8 / 9)], 23.4),
    ],
)
def test_the_limit_is_the_least_root_of_the_lines(
    method: Method, level: Level, lines: list[tuple[float, float]], strength: float
) -> None:
    # Other method: each line by the quadratic formula; sagging compresses the upper fibre, bending
    # up the lower one; at the pins (load and resistance: with the column's push) nothing relieves.
    up, down = strength * 90 / 5, strength * 90 / 3
    roots = [
        by_quadratic(axial, bending, sense * 20 / section, -sense * 0.5 / section)
        for axial, bending in lines
        for sense, section in ((1, down), (-1, up))
    ]
    column = 150.0 if method is Method.LOAD_AND_RESISTANCE else 170.0
    roots += [1 / (axial / column + bending * 0.5 / up) for axial, bending in lines]
    found = thrust_with_bending(BENT, of(method, level))
    assert found == pytest.approx(min(roots), rel=1e-12)


@pytest.mark.parametrize(("method", "level"), EVERY_LEVEL)
@pytest.mark.parametrize(
    "changed",
    [
        {"weight": 0.0}, {"weight": 120.0}, {"offset": 2.0}, {"offset": -1.0},
        {"bow": 0.75, "side": 6.0}, {"side_offset": 0.4, "side": 6.0},
        {"weight": 200.0, "offset": 1.5, "bow": 0.25, "side": 6.0, "side_offset": 0.2},
    ],
)
def test_dense_stepping_passes_the_limit_nowhere_before_it(
    method: Method, level: Level, changed: dict[str, float]
) -> None:
    # Other method: the use of the bar written out again, at 4,000 steps up to the limit and just
    # beyond it.
    bent, found = replace(BENT, **changed), of(method, level)
    limit = thrust_with_bending(bent, found)
    assert all(use(bent, found, limit * step / 4000) < 1 for step in range(4000))
    assert use(bent, found, limit * (1 + 1e-9)) >= 1


def use(bent: Bent, found: Rules, thrust: float) -> float:
    """The greatest use of a bar under a thrust, line by line."""
    strength = found.bending * found.reduction * bent.yield_stress
    later = found.method is Method.LOAD_AND_RESISTANCE
    uses = []
    for axial, bending in [(0.5, 1.0), (1.0, 8 / 9)] if later else [(1.0, 1.0)]:
        for bow, side in ((bent.bow, bent.side_offset), (0.0, bent.side_offset + bent.bow)):
            out = thrust * side * (bent.side or 0.0) / (strength * bent.side_inertia)
            out /= 1 - thrust / bent.side_buckling
            for sense, fibre in ((1, bent.top), (-1, bent.bottom)):
                moment = sense * (bent.weight - thrust * bent.offset) + thrust * bow
                bends = max(moment, 0.0) * fibre / (strength * bent.inertia)
                bends /= 1 - thrust / bent.buckling
                uses.append(axial * thrust / bent.column + bending * (bends + out))
        at_ends = axial * thrust / (bent.column if later else bent.short)
        fibre = bent.bottom if bent.offset > 0 else bent.top
        at_ends += bending * thrust * abs(bent.offset) * fibre / (strength * bent.inertia)
        at_ends += (
            bending * thrust * bent.side_offset * (bent.side or 0.0)
            / (strength * bent.side_inertia)
        )
        uses.append(at_ends)
    return max(uses)


def test_a_bar_that_its_own_weight_uses_up_carries_nothing() -> None:
    heavy = replace(BENT, weight=14.3 * 90 / 3 + 1)
    assert thrust_with_bending(heavy, of(Method.ALLOWABLE_STRESS, Level.INVENTORY)) == 0.0


def test_weight_relieves_what_a_low_pin_bends_and_the_ends_then_govern() -> None:
    # By hand: with a weight moment of 60 the middle is bent less than the pins, where nothing
    # relieves: P = 1 / (1/170 + 0.5 x 5 / (14.3 x 90)) = 127.8 kip.
    relieved = replace(BENT, weight=60.0)
    found = thrust_with_bending(relieved, of(Method.ALLOWABLE_STRESS, Level.INVENTORY))
    assert found == pytest.approx(1 / (1 / 170 + 2.5 / 1287), rel=1e-12)
    assert found > thrust_with_bending(BENT, of(Method.ALLOWABLE_STRESS, Level.INVENTORY))


@pytest.mark.parametrize(("method", "level"), EVERY_LEVEL)
def test_the_limit_of_a_bent_chord_is_a_ratio_of_one(method: Method, level: Level) -> None:
    chord = bar(CHORD, run=180.0, pin_offset=0.5)
    limit = limits_of(chord, method, level)[CHECK]
    assert (limit.sense, limit.capacity, limit.unit) == (-1, 1.0, "ratio")
    straight = limits_of(chord, method, level)["column in the plane of the truss"]
    assert straight.force < limit.force < 0


def test_own_weight_acts_as_factored_and_by_the_part_across_the_bar() -> None:
    # By hand: 10 in2 x 480/1728 lb/in3 x 180 x 90 / 8 = 5.625 kip in; x 1.25 = 7.03125. At yield
    # 26 x 90 / 3 = 780; F_cr 26 (1 - 26 x 60^2 / (4 pi^2 x 27900)) = 23.7905, x 0.85 x 10 =
    # 202.219; P_x = pi^2 x 27900 x 10 / 3600 = 764.894. Quadratic: P^2/(P_c P_x) - P (1/P_c +
    # 1/P_x) + 1 - 7.03125/780 = 0.
    inclined = bar(CHORD, run=90.0)
    found = limits_of(
        inclined, Method.LOAD_FACTOR, Level.OPERATING, dead_factor_dc=1.25, values=STIFF_ENDS
    )
    column, buckling = 0.85 * 237.905, 764.894
    b, c = 1 / column + 1 / buckling, 1 - 7.03125 / 780
    root = (b - math.sqrt(b**2 - 4 * c / (column * buckling))) / (2 / (column * buckling))
    assert -found[CHECK].force == pytest.approx(root, rel=1e-5)


def test_a_run_that_is_not_known_is_taken_as_the_whole_length() -> None:
    unknown, level = bar(CHORD, run=None), bar(CHORD, run=180.0)
    method = (Method.LOAD_FACTOR, Level.OPERATING)
    assert limits_of(unknown, *method) == limits_of(level, *method)


def test_a_cover_plate_lost_moves_the_centre_and_the_thrust_bends_the_bar() -> None:
    # By hand: the centre of two channels (5.1875 in2, centre at 3) and a plate 11 x 1/4 at 6.125 is
    # (15.5625 + 16.84375) / 7.9375 = 4.08268 in up; with 11 x 1/8 at 6.0625, (15.5625 + 8.33594) /
    # 6.5625 = 3.64167. A pin at the centre as built is then 0.44101 in above the centre.
    thin = replace(COVERED, cover=replace(COVERED.cover, thickness=0.125))  # type: ignore[type-var]
    rusted = bar(COVERED, left=thin)
    method = (Method.LOAD_FACTOR, Level.OPERATING)
    same = bar(thin, pin_offset=3.64167 - 4.08268)
    assert CHECK not in limits_of(bar(COVERED), *method)
    assert limits_of(rusted, *method)[CHECK].force == pytest.approx(
        limits_of(same, *method)[CHECK].force, rel=1e-5
    )


def test_one_channel_lost_more_than_the_other_bends_the_bar_sideways() -> None:
    # By hand: near channel 2.59375 in2, its centre 3.54669 in from mid-width; far one with a web of
    # 1/8 in 1.921875 in2, 3.672257 in from it. Their centre lies (1.921875 x 3.672257 - 2.59375 x
    # 3.54669) / 4.515625 = -0.474265 in from mid-width.
    thin = replace(LACED.far, web=0.125)
    rusted = bar(LACED, left=replace(LACED, far=thin))
    alike = bar(replace(LACED, far=thin))
    found = limits_of(rusted, Method.LOAD_FACTOR, Level.OPERATING)
    assert properties(rusted.left).x_bar == pytest.approx(-0.474265, abs=1e-6)
    assert CHECK not in limits_of(alike, Method.LOAD_FACTOR, Level.OPERATING)
    assert -found[CHECK].force < greatest_push(alike, Method.LOAD_FACTOR, Level.OPERATING)


def test_a_crooked_bar_is_tried_in_both_planes() -> None:
    # Law: the limit of a bar crooked in an unknown plane is that of the worse plane. A section that
    # is wide out of the plane is the worse in it, and the other way round.
    method = (Method.LOAD_FACTOR, Level.OPERATING)
    one = given(10.0, 3.0, 5.0, top=4.0, bottom=4.0, side=7.0)
    other = given(10.0, 5.0, 3.0, top=7.0, bottom=7.0, side=4.0)
    first, second = (
        limits_of(bar(section, bow=0.5), *method, values=STIFF_ENDS)[CHECK].force
        for section in (one, other)
    )
    assert first == pytest.approx(second, rel=1e-12)


def test_the_working_shows_the_use_at_the_limit_and_what_is_left_to_one() -> None:
    _, steps = working_of(
        bar(CHORD, run=180.0, pin_offset=0.5), Method.LOAD_AND_RESISTANCE, Level.LEGAL
    )
    (block,) = [entry for entry in steps if isinstance(entry, Block)]
    assert block.procedure.name == "Thrust with bending"
    (residual,) = [entry for entry in block.steps if isinstance(entry, Note)]
    assert abs(residual.value) < 1e-12
    assert [entry for entry in flat(block.steps) if entry is residual]


def test_the_standards_amplification_lies_a_little_under_the_exact_one() -> None:
    # Other method: the secant formula is exact for a thrust beside the centre. At P/P_e = 0.3 it
    # amplifies the moment sec(pi/2 sqrt(0.3)) = 1.533 times, the rule 1/(1 - 0.3) = 1.429 times:
    # 7 % less of the moment part, and less than that below.
    shape = properties(LACED)
    euler = buckling_load(IRON.modulus, shape.area, 180.0 / shape.r_x)
    for part in (0.05, 0.1, 0.2, 0.3):
        thrust = part * euler
        exact = secant_stress(
            thrust, shape.area, offset=0.5, fibre=3.0, radius=shape.r_x, length=180.0,
            modulus=IRON.modulus,
        )
        bending = exact - thrust / shape.area
        standard = thrust * 0.5 * 3.0 / shape.i_x / (1 - part)
        assert 0.93 * bending < standard < bending


def test_the_secant_formula_ends_where_the_bar_buckles() -> None:
    euler = buckling_load(27_900.0, 5.0, 90.0)
    sizes = {"offset": 0.5, "fibre": 3.0, "radius": 2.0, "length": 180.0, "modulus": 27_900.0}
    assert secant_stress(euler * 0.999, 5.0, **sizes) > 100.0
    with pytest.raises(OutOfRange, match="buckles"):
        secant_stress(euler * 1.001, 5.0, **sizes)


@pytest.mark.parametrize(
    ("coefficients", "upper", "root"),
    [
        # By hand: (1 - x)(1 - x/2)(1 - x/3) and its like.
        ((1.0, -11 / 6, 1.0, -1 / 6), 10.0, 1.0),
        ((1.0, -1.0, 0.0, 0.0), 10.0, 1.0),
        ((1.0, -1.5, 0.5, 0.0), 10.0, 1.0),
        ((0.0, 1.0, 0.0, 0.0), 10.0, 0.0),
        ((-1.0, 1.0, 0.0, 0.0), 10.0, 0.0),
        ((1.0, 0.0, 0.0, 0.0), 10.0, None),
        ((1.0, -1.0, 0.0, 0.0), 0.5, None),
        # A double root at 2 touches zero from above; rounding must not step over it by much.
        ((4.0, -4.0, 1.0, 0.0), 10.0, 2.0),
        # Down to a bottom at 1 (value 0.5) and up again, then down through zero at last.
        ((1.0, -1.0, 0.5, 0.0), 10.0, None),
    ],
)
def test_the_first_root_of_a_cubic(
    coefficients: tuple[float, float, float, float], upper: float, root: float | None
) -> None:
    found = first_root(coefficients, upper)
    assert found == (None if root is None else pytest.approx(root, rel=1e-7))
