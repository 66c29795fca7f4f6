"""Columns that twist: by hand, against closed forms, and which bars have the check."""

import math
from dataclasses import replace

import pytest

from eyebar.formula import Note, flat
from eyebar.resistance.column import buckling_load
from eyebar.resistance.twisting import (
    bending_and_twisting,
    bending_stress,
    least_twisting_stress,
    polar_radius,
    shear_modulus,
    slanting_twist,
    twisting_part,
    twisting_stress,
)
from eyebar.sections.shapes import Angle, Angles, Placed, Rolled, RolledShape
from eyebar.sections.twist import twists
from eyebar.terms import Level, Method
from tests.resistance.bars import COVERED, LACED, bar, eyebars, limits_of, working_of

OPERATING = (Method.LOAD_FACTOR, Level.OPERATING)
LEG = Angle(upright=3.0, level=3.0, upright_thickness=0.25, level_thickness=0.25)
STAR = Angles(angles=(LEG,) * 4, placed=Placed.STAR, apart=0.0)
IRON = 27_900.0


def angle(thickness: float, *, depth: float = 4.0, flange: float = 4.0) -> Rolled:
    return Rolled(
        shape=RolledShape.ANGLE, number=1, depth=depth, web=thickness, flange=flange,
        flange_thickness=thickness,
    )


def test_a_short_star_strut_fails_by_twisting() -> None:
    # By hand: four angles 3 x 3 x 1/4 in are a cross of two bars 6 x 1/2 in less the middle: A
    # 5.75, I 0.0625 + 9 - 0.5^4/12 = 9.057292 both ways; torsion constant 4 x 5.75 x 0.25^3/3 =
    # 0.119792; G 27900/2.6; F_z 10730.77 x 0.119792 / 18.114583 = 70.9625 ksi (G (t/b)^2 is 74.5),
    # as slender as 62.293; 0.85 x 26 (1 - 26 x 62.293^2 / (4 pi^2 27900)) x 5.75 = 115.435 kip.
    found = limits_of(bar(STAR, length=36.0), *OPERATING)
    twisting = found["column twisting"]
    assert -twisting.force == pytest.approx(115.435, rel=1e-5)
    assert twisting.force == max(one.force for one in found.values() if one.sense < 0)


def test_a_long_star_strut_bends_first() -> None:
    found = limits_of(bar(STAR, length=120.0), *OPERATING)
    assert found["column twisting"].force < found["column in the plane of the truss"].force


def test_an_equal_angle_bends_about_its_axis_of_symmetry_and_twists() -> None:
    # Other method: the closed form of one axis of symmetry. By hand, 4 x 4 x 1/8 in, 40 in long:
    # I_u 2.544250, I_v 0.637504, A 0.984375, shear centre 1.391766 in away, r_0^2 5.169271, H
    # 0.625283, J 0.005126953; F_u 444.82, F_z 10.8119, together 10.7128 ksi, far under F_v 111.46.
    (piece,) = twists(angle(0.125))
    radius = polar_radius(
        piece.i_x, piece.i_y, area=piece.area, aside=piece.aside, above=piece.above
    )
    assert radius**2 == pytest.approx(5.169271, rel=1e-6)
    twisting = twisting_stress(
        rigidity=shear_modulus(IRON), torsion=piece.torsion, modulus=IRON, warping=0.0, length=40.0,
        area=piece.area, polar_radius=radius,
    )
    assert twisting == pytest.approx(10.8119, abs=5e-5)
    found = slanting_twist(
        piece, modulus=IRON, twisting=twisting, polar_radius=radius, length=40.0
    )
    assert found == pytest.approx(10.7128, abs=5e-5)
    about_u = bending_stress(IRON, 40.0 / math.sqrt(2.544250 / 0.984375))
    closed = bending_and_twisting(
        about_u, twisting, twisting_part(piece.aside, piece.above, radius)
    )
    assert found == pytest.approx(closed, rel=1e-6)


@pytest.mark.parametrize(("depth", "flange"), [(5.0, 3.0), (3.0, 5.0), (6.0, 3.5)])
def test_an_unequal_angle_lies_under_all_three_of_its_stresses(
    depth: float, flange: float
) -> None:
    # Law: bending and twisting together never take more than either alone; what is left of the
    # cubic is rounding.
    bare = bar(angle(0.25, depth=depth, flange=flange), length=60.0)
    found, steps = working_of(bare, *OPERATING)
    (piece,) = twists(bare.left)
    stress = least_twisting_stress(
        piece, modulus=IRON, in_plane=1.0, out_of_plane=1.0, length=60.0
    )
    least = found["column about its least axis"].force
    assert found["column bending and twisting"].force > least
    half = (piece.i_x + piece.i_y) / 2
    swing = math.hypot((piece.i_x - piece.i_y) / 2, piece.product)
    for inertia in (half - swing, half + swing):
        assert stress < bending_stress(IRON, 60.0 / math.sqrt(inertia / piece.area))
    (left,) = [
        entry for entry in flat(steps)
        if isinstance(entry, Note) and entry.text.startswith("what is left of the cubic")
    ]
    assert abs(left.value) < 1e-9


def test_a_channel_twists_about_a_centre_behind_its_back() -> None:
    # By hand: web 8 x 1/4, flanges 2 1/2 x 0.4 in: shear centre 0.890625 in behind the web's
    # middle, warping constant 22.56861; torsion (7.2 x 0.25^3 + 5 x 0.4^3)/3 = 0.1441667; centre of
    # gravity 8 x 0.25^2/2 + 0.9 x 2.75 = 2.725 over 3.8 in2, 0.717105 in from the back.
    (piece,) = twists(
        Rolled(
            shape=RolledShape.CHANNEL, number=2, depth=8.0, web=0.25, flange=2.5,
            flange_thickness=0.4,
        )
    )
    assert piece.area == pytest.approx(3.8, rel=1e-12)
    assert piece.torsion == pytest.approx(0.1441667, rel=1e-6)
    assert piece.warping == pytest.approx(22.56861, rel=1e-6)
    assert piece.aside == pytest.approx(0.125 - 0.890625 - 0.717105, abs=1e-6)


def test_a_tee_and_angles_back_to_back_turn_about_their_flange() -> None:
    # By hand, tee of stem 4 x 1/4, flange 4 x 1/4 in: A 1.9375, centre (0.25 x 8 + 3.75 x 0.03125)
    # / 1.9375 = 1.0927 in below the flange's face, the shear centre 0.125 in below it.
    (tee,) = twists(
        Rolled(
            shape=RolledShape.TEE, number=1, depth=4.0, web=0.25, flange=4.0, flange_thickness=0.25
        )
    )
    assert (tee.aside, tee.warping) == (0.0, 0.0)
    assert tee.above == pytest.approx(1.0927 - 0.125, abs=5e-5)
    pair = Angles(angles=(LEG, LEG), placed=Placed.BACK_TO_BACK, apart=0.375)
    (two,) = twists(pair)
    # By hand: centre of one angle 0.842391 in below the level leg's face.
    assert two.above == pytest.approx(0.842391 - 0.125, abs=1e-6)
    assert two.aside == pytest.approx(0.0, abs=1e-12)
    found = limits_of(bar(pair, length=60.0), *OPERATING)
    assert "column bending and twisting" in found


def test_angles_that_rust_has_parted_twist_one_by_one() -> None:
    pair = Angles(angles=(LEG, LEG), placed=Placed.BACK_TO_BACK, apart=0.0)
    parted = replace(pair, separate=True)
    alone = Angles(angles=(LEG,), placed=Placed.SINGLE)
    assert twists(parted) == twists(alone)
    whole, loose = (
        limits_of(bar(pair, left=left, length=60.0), *OPERATING)["column bending and twisting"]
        for left in (pair, parted)
    )
    assert loose.force > whole.force


def test_an_i_beam_twists_by_torsion_and_warping() -> None:
    # By hand: flanges 4 x 1/2, web 7 x 1/4 in: I_y 2 x 0.5 x 64/12 + 7/768 = 5.342448; warping
    # constant 5.342448 x 7.5^2/4 = 75.1282; torsion (8 x 0.125 + 7/64)/3 = 0.369792.
    (piece,) = twists(
        Rolled(
            shape=RolledShape.I, number=1, depth=8.0, web=0.25, flange=4.0, flange_thickness=0.5
        )
    )
    assert piece.warping == pytest.approx(75.1282, rel=1e-6)
    assert piece.torsion == pytest.approx(0.369792, rel=1e-6)
    stress = least_twisting_stress(
        piece, modulus=IRON, in_plane=30.0, out_of_plane=90.0, length=100.0
    )
    polar = (piece.i_x + piece.i_y)
    assert stress == pytest.approx(
        (IRON / 2.6 * 0.369792 + math.pi**2 * IRON * 75.1282 / 1e4) / polar, rel=1e-6
    )


@pytest.mark.parametrize("section", [LACED, COVERED, eyebars(2)])
def test_laced_hollow_and_solid_bars_do_not_twist(section: object) -> None:
    assert twists(section) == ()  # type: ignore[arg-type]


def test_the_twisting_column_takes_each_methods_curve() -> None:
    # By hand: the equal slenderness 62.293 of the star, elastic load pi^2 E A / s^2 = F_z A.
    assert buckling_load(IRON, 5.75, 62.292738) / 5.75 == pytest.approx(70.9625, rel=1e-5)
    older = limits_of(bar(STAR, length=36.0), Method.ALLOWABLE_STRESS, Level.INVENTORY)
    assert -older["column twisting"].force == pytest.approx(115.435 / 0.85 / 2.12, rel=1e-5)
