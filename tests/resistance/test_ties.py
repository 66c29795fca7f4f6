"""Lacing bars in pull, their rivets, battens, and members tied in other ways than two channels."""

from dataclasses import replace

import pytest

from eyebar.errors import NotMeasured
from eyebar.resistance.built_up import tied_slenderness
from eyebar.sections.built import Spread
from eyebar.sections.properties import properties
from eyebar.sections.shapes import (
    Angle,
    Angles,
    Battens,
    Lacing,
    Placed,
    Plate,
    PlatesAndAngles,
    Side,
    Toes,
)
from eyebar.terms import Level, Method
from tests.resistance.bars import COVERED, EVERY_LEVEL, LACED, STIFF_ENDS, bar, limits_of

OPERATING = (Method.LOAD_FACTOR, Level.OPERATING)
BATTENED = replace(
    LACED, lacing=None,
    battens=Battens(plate=Plate(width=9.0, thickness=0.25), length=6.0, pitch=24.0, planes=2),
)
LEG = Angle(upright=3.0, level=3.0, upright_thickness=0.25, level_thickness=0.25)
BAR = Lacing(bar=Plate(width=2.0, thickness=0.25), pitch=12.0, planes=2)
BOX = Angles(
    angles=(LEG,) * 4, placed=Placed.BOX, backs=12.0, backs_across=8.0, lacing=BAR
)


def test_lacing_is_checked_in_pull_and_at_its_rivets_where_they_are_known() -> None:
    # By hand, load factor, rivets 5/8 in; h 7.09339, d 8.67856, v 0.0205959, 2 planes (see the
    # lacing bar in test_built_up): bar in pull 26 x 0.4375 = 11.375, at its hole 48 x (1.75 - 0.75)
    # x 0.25 = 12: 2 x 11.375 h / (v d) = 902.83; rivet 18 x 0.306796 = 5.52233, two bars meet in
    # it: 2 x 5.52233 h / (v x 10) = 380.39.
    found = limits_of(bar(LACED, lacing_rivet=0.625), *OPERATING, values=STIFF_ENDS)
    assert -found["lacing bar in pull"].force == pytest.approx(902.83, rel=1e-4)
    rivets = found["rivets of the lacing"]
    assert -rivets.force == pytest.approx(380.39, rel=1e-4)
    assert any("weakly remembered" in remark for remark in rivets.remarks)


def test_rivets_never_recorded_are_said_to_be_unchecked() -> None:
    found = limits_of(bar(LACED), *OPERATING)
    assert "rivets of the lacing" not in found
    assert (
        "rivets of the lacing not recorded: neither they nor its holes are checked"
        in found["lacing bar"].remarks
    )


@pytest.mark.parametrize(
    ("check", "kip"),
    [
        # By hand, load factor: v 0.0205959 as above; batten 1/4 x 6 in: I 4.5, 26 x 4.5 / 3 = 39
        # kip in, 2 x 2 x 39 / (v x 24) = 315.60; shear 0.58 x 26 x 1.5 = 22.62, 2 x 22.62 x 7.09339
        # / (v x 24) = 649.21; a channel: pushed 110.247 at slenderness 40.309, bent 26 x 0.919478 /
        # 1.45331 = 16.4496 by an offset of v x 24/4 = 0.1235754: 60.303.
        ("battens in bending", 315.60),
        ("battens in shear", 649.21),
        ("channel between battens", 110.247),
        ("channel bent between battens", 60.303),
    ],
)
def test_battens_and_what_lies_between_them(check: str, kip: float) -> None:
    found = limits_of(bar(BATTENED), *OPERATING, values=STIFF_ENDS)
    assert -found[check].force == pytest.approx(kip, rel=1e-4)


@pytest.mark.parametrize(("method", "level"), EVERY_LEVEL)
def test_batten_shear_by_each_method(method: Method, level: Level) -> None:
    # By hand: 0.33, 0.45, 0.58 and 0.90 (system) x 0.58 of 26 ksi on 1.5 in2; h 7.09339 over the
    # method's shear, which for load and resistance is 0.01 (100/60.0510 + 8.8 x 50.0510 x
    # 26/27900) = 0.0207571.
    part = {
        (Method.ALLOWABLE_STRESS, Level.INVENTORY): 0.33,
        (Method.ALLOWABLE_STRESS, Level.OPERATING): 0.45,
        (Method.LOAD_FACTOR, Level.OPERATING): 0.58,
        (Method.LOAD_AND_RESISTANCE, Level.LEGAL): 0.90 * 0.58,
    }[method, level]
    shear = 0.0207571 if method is Method.LOAD_AND_RESISTANCE else 0.0205959
    found = limits_of(bar(BATTENED), method, level, values=STIFF_ENDS)["battens in shear"]
    kip = 2 * part * 26 * 1.5 * 7.09339 / (shear * 24)
    assert -found.force == pytest.approx(kip, rel=1e-4)


def test_a_box_of_angles_is_weakened_both_ways() -> None:
    found = limits_of(bar(BOX, length=240.0), *OPERATING)
    assert [check for check, one in found.items() if one.sense < 0] == [
        "column in the plane of the truss", "column out of the plane of the truss",
        "angle between lacing points", "angle between lacing points in the plane of the truss",
        "lacing bar", "lacing bar in the plane of the truss",
    ]
    # By hand: one angle's slanting radius sqrt((1.244240 - 0.739810) / 1.4375) = 0.592375; both
    # checks of an angle are alike, 12 / 0.592375 = 20.258 slender.
    first, second = (
        found[f"angle between lacing points{where}"].force
        for where in ("", " in the plane of the truss")
    )
    assert first == second
    stiff = limits_of(
        bar(replace(BOX, lacing=replace(BAR, bar=Plate(width=2.0, thickness=25.0))), length=240.0),
        *OPERATING,
    )
    for where in ("in the plane of the truss", "out of the plane of the truss"):
        assert stiff[f"column {where}"].force < found[f"column {where}"].force


def test_angles_laced_one_above_the_other_yield_in_the_plane_of_the_truss() -> None:
    # By hand: four angles in two pairs, backs 12 in apart one above the other: the tied slenderness
    # is the plane's; across the truss nothing yields.
    upright = Angles(
        angles=(LEG,) * 4, placed=Placed.LACED, apart=0.25, backs=12.0, spread=Spread.UPRIGHT,
        lacing=replace(BAR, planes=1),
    )
    found = limits_of(bar(upright, length=240.0), *OPERATING, values=STIFF_ENDS)
    assert "lacing bar in the plane of the truss" in found
    assert "lacing bar" not in found
    shape = properties(upright)
    pair = 12.0 - 2 * 0.842391  # centres of the pairs
    stiffness = 27_900 * 0.5 * 6 * pair**2 / (36 + pair**2) ** 1.5
    euler = 9.8696044 * 27_900 * shape.area / (240 / shape.r_x) ** 2
    tied = tied_slenderness(240 / shape.r_x, euler, stiffness)
    stress = 26 * (1 - 26 * tied**2 / (4 * 9.8696044 * 27_900))
    assert -found["column in the plane of the truss"].force == pytest.approx(
        0.85 * stress * shape.area, rel=1e-5
    )


def test_a_side_of_web_and_angles_is_one_piece_between_lacing_points() -> None:
    side = Side(web=Plate(width=12.0, thickness=0.375), top=LEG, bottom=LEG)
    built = PlatesAndAngles(
        near=side, far=side, middle=None, apart=9.0, toes=Toes.OUT,
        cover=Plate(width=18.0, thickness=0.5), lacing=replace(BAR, planes=1),
    )
    found = limits_of(bar(built, length=240.0), *OPERATING)
    assert "web with its angles between lacing points" in found
    assert "a plate takes its share of the shear" in found["lacing bar"].remarks


def test_a_member_closed_above_and_below_has_no_ties_to_yield() -> None:
    closed = replace(COVERED, bottom=Plate(width=10.0, thickness=0.25), lacing=None)
    found = limits_of(bar(closed), *OPERATING)
    assert found["column out of the plane of the truss"].remarks == ()
    assert not any("lacing" in check or "batten" in check for check in found)


def test_battens_never_measured_are_not_taken_as_sound() -> None:
    assert BATTENED.battens is not None
    unknown = replace(BATTENED, battens=replace(BATTENED.battens, length=None))
    with pytest.raises(NotMeasured, match="length of the battens"):
        limits_of(bar(unknown), *OPERATING)
