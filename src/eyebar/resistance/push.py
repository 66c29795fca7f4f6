"""A bar in push: the whole column, its channels between their ties, its lacing, and bent."""

from dataclasses import dataclass, replace

from eyebar.bridge.parts import Bar
from eyebar.formula import note
from eyebar.office import Values
from eyebar.resistance.bent_column import bent
from eyebar.resistance.built_up import (
    flat,
    flat_radius,
    lacing_length,
    later_shear,
    older_shear,
    thrust_of_lacing,
)
from eyebar.resistance.column import slenderness_ratio
from eyebar.resistance.rules import Rules
from eyebar.resistance.thrust_with_bending import thrust_with_bending
from eyebar.resistance.whole_column import Column, capacity, column
from eyebar.sections.properties import measured
from eyebar.sections.shapes import Channels
from eyebar.terms import Method


@dataclass(frozen=True, slots=True, kw_only=True)
class Push:
    """One check in push: its name, the thrust at which it is reached [kip], and remarks."""

    check: str
    thrust: float
    is_ratio: bool = False
    remarks: tuple[str, ...] = ()


def _found(check: str, thrust: float, remarks: tuple[str, ...] = ()) -> Push:
    """The check with its thrust, which the working names too."""
    note(check, "P", thrust, "kip")
    return Push(check=check, thrust=thrust, remarks=remarks)


def pushes(bar: Bar, rules: Rules, values: Values, dead_factor_dc: float) -> list[Push]:
    """Every check of a bar in push. Raises NotMeasured (part left empty), OutOfRange."""
    found = column(bar, rules, values)
    checks = _straight(found, values)
    local = _between_ties(found, values)
    if local is not None:
        checks.append(local)
    straight = min(one.thrust for one in checks)
    lacing = _lacing_bar(found, values)
    if lacing is not None:
        checks.append(lacing)
    moments, remarks = bent(found, straight=straight, dead_factor_dc=dead_factor_dc)
    if moments is not None:
        thrust = thrust_with_bending(moments, rules)
        checks.append(replace(_found("thrust with bending", thrust, remarks), is_ratio=True))
    return checks


def _straight(found: Column, values: Values) -> list[Push]:
    """The whole column about both axes, and about its slanting one where that is the least."""
    shape, limit = found.shape, values.number("slenderness.column")
    about = [
        ("column in the plane of the truss", found.in_plane, ()),
        ("column out of the plane of the truss", found.tied, found.remarks),
    ]
    if shape.r_least < min(shape.r_x, shape.r_y):
        length = max(found.in_plane * shape.r_x, found.out_of_plane * shape.r_y)
        slanting = slenderness_ratio(1.0, length, shape.r_least)
        about.append(("column about its least axis", slanting, ()))
    return [
        _found(
            check, capacity(found, shape.area, slenderness),
            remarks + _slender(slenderness, limit),
        )
        for check, slenderness, remarks in about
    ]


def _slender(slenderness: float, limit: float) -> tuple[str, ...]:
    return (f"slenderness {slenderness:.0f} over {limit:g}",) * (slenderness > limit)


def _between_ties(found: Column, values: Values) -> Push | None:
    """One channel between its fastenings; in zigzag lacing it is held at every second bar only."""
    section, both = found.bar.left, found.pair
    if both is None or not isinstance(section, Channels):
        return None
    if section.lacing is not None:
        pitch, ties = measured(section.lacing.pitch, "pitch of the lacing"), "lacing points"
    elif section.battens is not None:
        pitch, ties = measured(section.battens.pitch, "distance of the battens"), "battens"
    else:
        return None
    slenderness = slenderness_ratio(1.0, pitch, both.radius)
    part = values.number("slenderness.between lacing points.part of the column's")
    limit = min(
        values.number("slenderness.between lacing points"),
        part * max(found.in_plane, found.out_of_plane),
    )
    return _found(
        f"channel between {ties}", capacity(found, found.shape.area, slenderness),
        _slender(slenderness, limit),
    )


def _lacing_bar(found: Column, values: Values) -> Push | None:
    """The thrust at which the shear that comes with it uses a lacing bar up."""
    section, both = found.bar.left, found.pair
    if both is None or not isinstance(section, Channels) or section.lacing is None:
        return None
    width, thickness = flat(section.lacing.bar, "lacing bar")
    length = lacing_length(
        measured(section.lacing.pitch, "pitch of the lacing") / 2, both.distance
    )
    slenderness = slenderness_ratio(1.0, length, flat_radius(thickness))
    covered = section.cover is not None
    thrust = thrust_of_lacing(
        section.lacing.planes + covered, capacity(found, width * thickness, slenderness),
        distance=both.distance, shear_part=_shear(found), length=length,
    )
    shared = ("cover plate takes its share of the shear",) * covered
    limit = values.number("slenderness.lacing bar")
    return _found("lacing bar", thrust, shared + _slender(slenderness, limit))


def _shear(found: Column) -> float:
    """Shear in the ties over the thrust, by the method's rule [1]."""
    material = found.bar.material
    if found.rules.method is Method.LOAD_AND_RESISTANCE:
        return later_shear(found.out_of_plane, material.yield_stress, material.modulus)
    return older_shear(found.out_of_plane, material.yield_stress)
