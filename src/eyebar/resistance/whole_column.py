"""A bar as one column: its shape, its slenderness in both planes, what ties its channels."""

from dataclasses import dataclass

from eyebar.bridge.parts import Bar
from eyebar.formula import remembered
from eyebar.office import Values
from eyebar.resistance.built_up import (
    Pair,
    pair,
    stiffness_of_battens,
    stiffness_of_lacing,
    tied_slenderness,
)
from eyebar.resistance.column import buckling_load, push_of_column, slenderness_ratio
from eyebar.resistance.rules import Rules
from eyebar.sections.properties import Properties, measured, properties
from eyebar.sections.shapes import Channels, Given, Section


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """The whole bar as a column.

    `in_plane`, `out_of_plane`: slenderness; `tied`: the latter with the ties' flexibility;
    `stiffness`: theirs in shear [kip], None where there are none that yield; `pair`: its channels,
    None where it has none.
    """

    bar: Bar
    rules: Rules
    shape: Properties
    in_plane: float
    out_of_plane: float
    tied: float
    pair: Pair | None = None
    stiffness: float | None = None
    remarks: tuple[str, ...] = ()


def column(bar: Bar, rules: Rules, values: Values) -> Column:
    """The bar as one column. Raises NotMeasured (part left empty), OutOfRange."""
    shape = _shape(bar)
    in_plane = slenderness_ratio(
        values.number("effective length.in plane"), bar.length_in_plane, shape.r_x
    )
    factor = values.number("effective length.out of plane")
    out_of_plane = slenderness_ratio(factor, bar.length_out_of_plane, shape.r_y)
    if not isinstance(bar.left, Channels):
        return Column(
            bar=bar, rules=rules, shape=shape, in_plane=in_plane, out_of_plane=out_of_plane,
            tied=out_of_plane,
        )
    both = channels(bar.left)
    stiffness, remarks = _ties(bar.left, both, bar.material.modulus)
    tied = out_of_plane
    if stiffness is not None:
        euler = buckling_load(bar.material.modulus, shape.area, out_of_plane)
        tied = tied_slenderness(out_of_plane, euler, stiffness)
    elif bar.left.cover is None:
        tied = slenderness_ratio(factor, bar.length_out_of_plane, both.radius)
    return Column(
        bar=bar, rules=rules, shape=shape, in_plane=in_plane, out_of_plane=out_of_plane,
        tied=tied, pair=both, stiffness=stiffness, remarks=remarks,
    )


channels = remembered(pair)
shape_of = remembered(properties)


def capacity(found: Column, area: float, slenderness: float) -> float:
    """What an area [in2] of the column's metal at this slenderness is worth in push [kip]."""
    material = found.bar.material
    return push_of_column(
        found.rules, area, slenderness, yield_stress=material.yield_stress,
        modulus=material.modulus,
    )


def run(bar: Bar) -> float:
    """Horizontal distance between the bar's ends [in]; where not known, the whole length."""
    return bar.length if bar.run is None else bar.run


def _shape(bar: Bar) -> Properties:
    """Properties of what is left; given ones need no extreme fibres while nothing bends the bar."""
    section: Section = bar.left
    if not isinstance(section, Given) or bar.pin_offset or bar.bow or run(bar):
        return shape_of(section)
    r_x = measured(section.r_x, "radius of gyration about the horizontal axis")
    r_y = measured(section.r_y, "radius of gyration about the upright axis")
    return Properties(
        area=section.area, y_bar=0.0, i_x=section.area * r_x**2, i_y=section.area * r_y**2,
        r_x=r_x, r_y=r_y, r_least=min(r_x, r_y), top=0.0, bottom=0.0, farther_side=None,
    )


def _ties(
    section: Channels, both: Pair, modulus: float
) -> tuple[float | None, tuple[str, ...]]:
    """Stiffness in shear of what ties the channels [kip], None where nothing yields; remarks."""
    remarks: tuple[str, ...] = ()
    if section.cover is not None:
        remarks = ("cover plate's stiffness in shear left out, the safe side",)
    if section.lacing is not None:
        return stiffness_of_lacing(section.lacing, both.distance, modulus), remarks
    if section.battens is not None:
        return stiffness_of_battens(section.battens, both, modulus), remarks
    if section.cover is not None:
        return None, ("no lacing or battens recorded: the cover plate alone ties the channels",)
    return None, ("nothing recorded that ties the channels: each bends by itself",)
