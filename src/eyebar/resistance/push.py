"""A bar in push: the whole column, its halves between their ties, its ties, and bent."""

from collections.abc import Iterable
from dataclasses import replace

from eyebar.bridge.parts import Bar
from eyebar.formula import remembered
from eyebar.office import Values
from eyebar.resistance.bent_column import bent
from eyebar.resistance.column import slenderness_ratio
from eyebar.resistance.ends import pushes_of_ends
from eyebar.resistance.found import Push, pushed, slender
from eyebar.resistance.one_leg import slenderness_by_one_leg
from eyebar.resistance.rules import Rules
from eyebar.resistance.thrust_with_bending import thrust_with_bending
from eyebar.resistance.ties import between_ties, tie_checks
from eyebar.resistance.twisting import NEGLIGIBLE, equal_slenderness, least_twisting_stress
from eyebar.resistance.whole_column import Column, capacity, column
from eyebar.sections.built import Spread
from eyebar.sections.shapes import Given
from eyebar.sections.twist import twists


def pushes(bar: Bar, rules: Rules, values: Values, dead_factor_dc: float) -> list[Push]:
    """Every check of a bar in push. Raises NotMeasured (part left empty), OutOfRange."""
    found = column(bar, rules, values)
    checks = [*_straight(found, values), *_twisting(found), *_by_one_leg(found, values)]
    for ties in found.ties:
        checks += between_ties(found, ties, values)
    straight = min(one.thrust for one in checks)
    for ties in found.ties:
        checks += tie_checks(found, ties, values)
    checks += pushes_of_ends(bar, rules, values)
    moments, remarks = bent(found, straight=straight, dead_factor_dc=dead_factor_dc)
    if moments is not None:
        thrust = thrust_with_bending(moments, rules)
        checks.append(replace(pushed("thrust with bending", thrust, remarks), is_ratio=True))
    return checks


def _straight(found: Column, values: Values) -> Iterable[Push]:
    """The whole column about both axes, and about its slanting one where that is the least."""
    shape, limit = found.shape, values.number("slenderness.column")
    given = ("widths of its plates not recorded: thin plates not looked for",) * isinstance(
        found.bar.left, Given
    )
    about = [
        ("in the plane of the truss", found.tied_in_plane, found.remarks(Spread.UPRIGHT)),
        ("out of the plane of the truss", found.tied_out_of_plane,
         found.remarks(Spread.ACROSS) + (found.bar.on_posts,) * bool(found.bar.on_posts)),
    ]
    if shape.r_least < min(shape.r_x, shape.r_y):
        slanting = slenderness_ratio(1.0, _longer(found), shape.r_least)
        about.append(("about its least axis", slanting, ()))
    for where, slenderness, remarks in about:
        yield pushed(
            f"column {where}", capacity(found, slenderness),
            remarks + found.plates.remarks + given + slender(slenderness, limit),
        )


def _longer(found: Column) -> float:
    """The longer of the effective lengths [in]."""
    shape = found.shape
    return max(found.in_plane * shape.r_x, found.out_of_plane * shape.r_y)


twists_of = remembered(twists)


def _twisting(found: Column) -> Iterable[Push]:
    """Open sections that twist, or bend and twist at once; of several pieces the weakest."""
    bar, modulus = found.bar, found.bar.material.modulus
    pieces = twists_of(bar.left)
    if not pieces:
        return
    stress = min(
        least_twisting_stress(
            piece, modulus=modulus, in_plane=found.in_plane, out_of_plane=found.out_of_plane,
            length=max(bar.length_in_plane, bar.length_out_of_plane),
        )
        for piece in pieces
    )
    bends = any(abs(one.aside) + abs(one.above) > NEGLIGIBLE for one in pieces)
    yield pushed(
        "column bending and twisting" if bends else "column twisting",
        capacity(found, equal_slenderness(modulus, stress)), found.plates.remarks,
    )


def _by_one_leg(found: Column, values: Values) -> Iterable[Push]:
    """A single angle, whose ends are taken to be held by one leg."""
    worst = slenderness_by_one_leg(
        found.bar.left, max(found.bar.length_in_plane, found.bar.length_out_of_plane)
    )
    if worst is None:
        return
    slenderness, remarks = worst
    yield pushed(
        "column, an angle held by one leg", capacity(found, slenderness),
        remarks + found.plates.remarks + slender(slenderness, values.number("slenderness.column")),
    )
