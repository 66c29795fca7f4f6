"""Laced and battened columns: formulas against a frame, by hand, and what governs in a bar."""

import math
from dataclasses import replace

import pytest

from eyebar.errors import NotMeasured
from eyebar.resistance.built_up import (
    batten_stiffness,
    lacing_length,
    lacing_stiffness,
    later_shear,
    older_shear,
    tied_buckling_load,
    tied_slenderness,
)
from eyebar.resistance.column import buckling_load
from eyebar.sections.shapes import Battens, Lacing, Plate, Toes
from eyebar.sections.tied import tied_of
from eyebar.terms import Level, Method
from tests.resistance.bars import COVERED, LACED, STIFF_ENDS, bar, limits_of
from tests.resistance.laced_frame import LacedFrame

OPERATING = (Method.LOAD_FACTOR, Level.OPERATING)
ADVANCE = DISTANCE = 12.0
CHORD_AREA = 6.0
MODULUS = 27_000.0

CHANNEL_RADIUS = math.sqrt(0.919478 / 2.59375)
"""Least radius of one channel 6 x 1/4 in, flanges 2 x 5/16 in [in], by hand: centre 0.54669 in from
its back, I_y = 6/4^3/12 + 1.5 (0.54669 - 1/8)^2 + 5/16 x 1.75^3/6 + 1.09375 (9/8 - 0.54669)^2."""


def frame(panels: int, inertia: float, lacing_area: float) -> LacedFrame:
    return LacedFrame(
        panels=panels, advance=ADVANCE, distance=DISTANCE, chord_area=CHORD_AREA,
        chord_inertia=inertia, lacing_area=lacing_area, modulus=MODULUS,
    )


def by_formula(panels: int, inertia: float, lacing_area: float) -> float:
    """Engesser's load of the column of `frame`."""
    whole = CHORD_AREA * DISTANCE**2 / 2 + 2 * inertia
    euler = math.pi**2 * MODULUS * whole / (panels * ADVANCE) ** 2
    stiffness = lacing_stiffness(
        1, MODULUS, lacing_area, advance=ADVANCE, distance=DISTANCE,
        length=lacing_length(ADVANCE, DISTANCE),
    )
    return tied_buckling_load(euler, stiffness)


@pytest.mark.parametrize(
    ("panels", "inertia", "lacing_area", "apart"),
    [
        # Other method: buckling load of a plane frame (laced_frame.py); `apart` is how far the
        # formula, which leaves out the chords' own bending in each panel, may lie below it.
        (20, 2.0, 1.0, 0.003),
        (20, 2.0, 0.25, 0.04),
        (20, 2.0, 0.0625, 0.13),
        (40, 2.0, 1.0, 0.001),
        (40, 2.0, 0.25, 0.01),
    ],
)
def test_the_laced_columns_formula_is_a_close_lower_bound_of_a_frame(
    panels: int, inertia: float, lacing_area: float, apart: float
) -> None:
    exact = frame(panels, inertia, lacing_area).buckling_load()
    assert (1 - apart) * exact <= by_formula(panels, inertia, lacing_area) <= exact


def test_slim_chords_buckle_between_lacing_points_long_before_the_column() -> None:
    # Other method: the frame finds 0.3 of the whole column's load; each chord alone on twice the
    # advance, hinged, is a lower bound of it. On one advance it would be four times as much.
    exact = frame(20, 0.5, 1.0).buckling_load()
    chord = 2 * math.pi**2 * MODULUS * 0.5 / (2 * ADVANCE) ** 2
    assert exact < 0.31 * by_formula(20, 0.5, 1.0)
    assert 0.94 * exact <= chord <= exact
    assert 4 * chord > 3 * exact


def test_shear_of_the_ties_by_the_older_rule() -> None:
    # By hand: L/r 80, yield 26,000 psi, P 100 kip: 1 (100/90 + 80 x 26000 / 3.3e6) = 1.741 kip.
    assert 100 * older_shear(80.0, 26.0) == pytest.approx(1.741, abs=5e-4)


def test_shear_of_the_ties_by_the_later_rule() -> None:
    # By hand: 0.01 x 100 (100/90 + 8.8 x 80 x 26 / 29000) = 1.1111 + 0.6312 = 1.7423 kip.
    assert 100 * later_shear(80.0, 26.0, 29_000.0) == pytest.approx(1.7423, abs=5e-5)


def test_battens_yield_by_their_own_and_the_channels_bending() -> None:
    # By hand: a 20, h 8, E 27,000, I_b 1/4 x 6^3 / 12 = 4.5, two planes, I_c 0.9:
    # 160 / (12 x 27000 x 9) + 400 / (24 x 27000 x 0.9) = 5.487e-5 + 6.859e-4 = 1/1350.0.
    found = batten_stiffness(
        20.0, 8.0, modulus=27_000.0, batten_inertia=4.5, planes=2, half_inertia=0.9
    )
    assert found == pytest.approx(1350.0, rel=1e-4)


def test_slenderness_and_load_with_yielding_ties_say_the_same() -> None:
    # Law: pi^2 E A / s_m^2 is P_e / (1 + P_e / S_v).
    euler = buckling_load(27_900.0, 5.0, 60.0)
    tied = tied_slenderness(60.0, euler, 900.0)
    assert buckling_load(27_900.0, 5.0, tied) == pytest.approx(
        tied_buckling_load(euler, 900.0), rel=1e-14
    )


def test_channels_with_toes_in_have_their_centres_inside_their_webs() -> None:
    # By hand: centre (6 x 0.25^2/2 + 1.75 x 0.3125 x 2.25) / 2.59375 = 0.54669 in from the back;
    # toes out 6 + 2 x 0.54669; toes in 6 + 2 x (0.25 - 0.54669).
    centre = (6 * 0.25**2 / 2 + 1.75 * 0.3125 * 2.25) / 2.59375
    (outward,) = tied_of(LACED)
    assert outward.distance == pytest.approx(6 + 2 * centre, rel=1e-12)
    (inward,) = tied_of(replace(LACED, toes=Toes.IN))
    assert inward.distance == pytest.approx(6 + 2 * (0.25 - centre), rel=1e-12)


def test_a_laced_bar_has_four_checks_in_push() -> None:
    found = limits_of(bar(LACED), *OPERATING)
    assert [check for check, limit in found.items() if limit.sense < 0] == [
        "column in the plane of the truss", "column out of the plane of the truss",
        "channel between lacing points", "lacing bar",
    ]


def test_lacing_takes_away_from_the_column_out_of_the_plane_alone() -> None:
    weak = replace(
        LACED, lacing=Lacing(bar=Plate(width=0.5, thickness=0.125), pitch=10.0, planes=2)
    )
    usual = limits_of(bar(LACED), *OPERATING)
    weakened = limits_of(bar(weak), *OPERATING)
    in_plane, out_of_plane = (
        f"column {where} the plane of the truss" for where in ("in", "out of")
    )
    assert weakened[in_plane].force == usual[in_plane].force
    assert weakened[out_of_plane].force > usual[out_of_plane].force


def test_one_channel_between_lacing_points_is_as_long_as_the_pitch() -> None:
    # With a pitch of 100 in the slenderness is 100 / 0.5954 = 168, elastic: 0.85 pi^2 E A / s^2.
    slim = replace(LACED, lacing=replace(LACED.lacing, pitch=100.0))  # type: ignore[type-var]
    found = limits_of(bar(slim), *OPERATING)["channel between lacing points"]
    assert -found.force == pytest.approx(
        0.85 * buckling_load(27_900.0, 5.1875, 100.0 / CHANNEL_RADIUS), rel=1e-4
    )
    assert found.remarks == ("slenderness 168 over 40",)


def test_the_lacing_bar_is_a_column_that_shares_the_shear() -> None:
    # By hand, load factor at operating: h 7.09339, d sqrt(25 + h^2) = 8.67856; bar 1 3/4 x 1/4 in,
    # r 0.0721688, slenderness 120.253; F_cr 26 (1 - 26 s^2 / (4 pi^2 E)) = 17.1247; P_d 0.85 x
    # 17.1247 x 0.4375 = 6.36825 kip. r_y^2 = 0.5954^2 + 3.54670^2 = 12.9336, r_y 3.59633;
    # s = 180 / r_y = 50.0510; v = 1/60.0510 + 50.0510 x 26 / 330000 = 0.0205959.
    # P = 2 x 6.36825 x 7.09339 / (0.0205959 x 8.67856) = 505.45 kip.
    found = limits_of(bar(LACED), *OPERATING, values=STIFF_ENDS)["lacing bar"]
    assert -found.force == pytest.approx(505.45, rel=1e-4)


def test_a_cover_plate_takes_a_plane_of_the_shear_and_lends_no_stiffness() -> None:
    found = limits_of(bar(COVERED), *OPERATING)
    assert "a plate takes its share of the shear" in found["lacing bar"].remarks
    (remark,) = found["column out of the plane of the truss"].remarks
    assert remark == "a plate's stiffness in shear left out, the safe side"


def test_battens_are_ties_too() -> None:
    battened = replace(
        LACED, lacing=None,
        battens=Battens(plate=Plate(width=9.0, thickness=0.25), length=6.0, pitch=24.0, planes=2),
    )
    found = limits_of(bar(battened), *OPERATING)
    assert "channel between battens" in found
    assert "lacing bar" not in found
    laced = limits_of(bar(LACED), *OPERATING)["column out of the plane of the truss"]
    assert found["column out of the plane of the truss"].force > laced.force


def test_channels_that_nothing_ties_bend_each_by_itself_and_that_is_said() -> None:
    loose = replace(LACED, lacing=None)
    found = limits_of(bar(loose), *OPERATING)["column out of the plane of the truss"]
    # By hand: slenderness 0.875 x 180 / 0.5954 = 264.5.
    assert -found.force == pytest.approx(
        0.85 * buckling_load(27_900.0, 5.1875, 0.875 * 180 / CHANNEL_RADIUS), rel=1e-4
    )
    assert found.remarks[0].startswith("nothing recorded that ties its halves")


def test_a_cover_plate_alone_is_remarked_on() -> None:
    open_below = replace(COVERED, lacing=None)
    found = limits_of(bar(open_below), *OPERATING)["column out of the plane of the truss"]
    assert found.remarks == (
        "no lacing or battens recorded: the plate alone ties its halves",
    )


@pytest.mark.parametrize(
    ("lacing", "what"),
    [
        (Lacing(bar=Plate(width=None, thickness=0.25), pitch=10.0, planes=2), "width of lacing"),
        (Lacing(bar=Plate(width=2.0, thickness=None), pitch=10.0, planes=2), "thickness of lac"),
        (Lacing(bar=Plate(width=2.0, thickness=0.25), pitch=None, planes=2), "pitch of the lacing"),
    ],
)
def test_lacing_never_measured_is_not_taken_as_sound(lacing: Lacing, what: str) -> None:
    with pytest.raises(NotMeasured, match=what):
        limits_of(bar(replace(LACED, lacing=lacing)), *OPERATING)
