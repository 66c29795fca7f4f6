"""A bar as one column: its shape, its slenderness in both planes, its ties, its thin plates."""

from dataclasses import dataclass

from eyebar.bridge.parts import Bar
from eyebar.formula import remembered
from eyebar.office import Values
from eyebar.resistance.built_up import (
    batten_stiffness,
    lacing_length,
    lacing_stiffness,
    tied_slenderness,
)
from eyebar.resistance.column import (
    buckling_load,
    push_of_column,
    slenderness_ratio,
    thick_column_stress,
)
from eyebar.resistance.rules import Rules
from eyebar.resistance.thin_plates import ThinPlates, thin_plates
from eyebar.resistance.tie_strength import plate_inertia
from eyebar.sections.built import Spread
from eyebar.sections.known import plate_sizes
from eyebar.sections.local import plates_of
from eyebar.sections.pieces import Battens, Lacing
from eyebar.sections.properties import Properties, area, measured, properties
from eyebar.sections.shapes import Given, Section
from eyebar.sections.tied import Tied, tied_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Ties:
    """What ties a column's halves one way; `stiffness` in shear [kip], None where none yields."""

    tied: Tied
    stiffness: float | None
    remarks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """The whole bar as a column.

    `in_plane`, `out_of_plane`: slenderness were its ties stiff; `tied_in_plane`,
    `tied_out_of_plane`: with what they yield; `plates`: those that are thin.
    """

    bar: Bar
    rules: Rules
    shape: Properties
    plates: ThinPlates
    in_plane: float
    out_of_plane: float
    tied_in_plane: float
    tied_out_of_plane: float
    ties: tuple[Ties, ...] = ()

    def remarks(self, spread: Spread) -> tuple[str, ...]:
        """What is to be said of the ties that weaken the column this way."""
        return tuple(
            remark for one in self.ties if one.tied.spread is spread for remark in one.remarks
        )

    def slenderness(self, spread: Spread) -> float:
        """Slenderness in the plane of these ties, were they stiff [1]."""
        return self.out_of_plane if spread is Spread.ACROSS else self.in_plane


def column(bar: Bar, rules: Rules, values: Values) -> Column:
    """The bar as one column. Raises NotMeasured (part left empty), OutOfRange."""
    shape, material = _shape(bar), bar.material
    in_plane_factor = values.number("effective length.in plane")
    out_of_plane_factor = factor_out_of_plane(bar, values)
    in_plane = slenderness_ratio(in_plane_factor, bar.length_in_plane, shape.r_x)
    out_of_plane = slenderness_ratio(out_of_plane_factor, bar.length_out_of_plane, shape.r_y)
    ties = tuple(_ties(one, material.modulus) for one in halves_of(bar.left))
    tied = {Spread.UPRIGHT: in_plane, Spread.ACROSS: out_of_plane}
    effective = {
        Spread.UPRIGHT: (in_plane_factor, bar.length_in_plane),
        Spread.ACROSS: (out_of_plane_factor, bar.length_out_of_plane),
    }
    for one in ties:
        spread = one.tied.spread
        if one.stiffness is not None:
            euler = buckling_load(material.modulus, shape.area, tied[spread])
            tied[spread] = tied_slenderness(tied[spread], euler, one.stiffness)
        elif not one.tied.plates:
            tied[spread] = slenderness_ratio(*effective[spread], one.tied.radius)
    return Column(
        bar=bar, rules=rules, shape=shape, in_plane=in_plane, out_of_plane=out_of_plane,
        tied_in_plane=tied[Spread.UPRIGHT], tied_out_of_plane=tied[Spread.ACROSS], ties=ties,
        plates=thin_plates(
            strips_of(bar.left), values, area=shape.area, modulus=material.modulus,
            yield_stress=material.yield_stress,
        ),
    )


def factor_out_of_plane(bar: Bar, values: Values) -> float:
    """Effective over unsupported length across the truss [1]; 1 for what is effective already."""
    return 1.0 if bar.on_posts else values.number("effective length.out of plane")


def stiffness_across(bar: Bar) -> tuple[float, float | None]:
    """Inertia of what is left of a bar against bending across the truss [in4], and the stiffness in
    shear of what ties its halves [kip], None where none yields. Raises NotMeasured."""
    shape = shape_of(bar.left)
    for one in halves_of(bar.left):
        if one.spread is Spread.ACROSS:
            ties = _ties(one, bar.material.modulus)
            if ties.stiffness is None and not one.plates:
                return sum(half.inertia for half in one.halves), None
            return shape.i_y, ties.stiffness
    return shape.i_y, None


area_of = remembered(area)
halves_of = remembered(tied_of)
shape_of = remembered(properties)
strips_of = remembered(plates_of)


def capacity(found: Column, slenderness: float) -> float:
    """What the column is worth in push at this slenderness, its thin plates counted [kip]."""
    material, rules = found.bar.material, found.rules
    left = found.plates.yields(
        lambda: thick_column_stress(
            rules.method, slenderness, yield_stress=material.yield_stress,
            modulus=material.modulus,
        )
    )
    return push_of_column(
        rules, found.shape.area, slenderness, yield_stress=left, modulus=material.modulus
    )


def run(bar: Bar) -> float:
    """Horizontal distance between the bar's ends [in]; where not known, the whole length."""
    return bar.length if bar.run is None else bar.run


def _shape(bar: Bar) -> Properties:
    """Properties of what is left; given ones need no extreme fibres while nothing bends the bar."""
    section: Section = bar.left
    bends = (bar.pin_offset, bar.other_pin_offset, bar.side_offset, bar.bow, run(bar))
    if not isinstance(section, Given) or any(bends):
        return shape_of(section)
    r_x = measured(section.r_x, "radius of gyration about the horizontal axis")
    r_y = measured(section.r_y, "radius of gyration about the upright axis")
    return Properties(
        area=section.area, y_bar=0.0, i_x=section.area * r_x**2, i_y=section.area * r_y**2,
        r_x=r_x, r_y=r_y, r_least=min(r_x, r_y), top=0.0, bottom=0.0, farther_side=None,
    )


def _ties(tied: Tied, modulus: float) -> Ties:
    """The ties of one direction. Raises NotMeasured."""
    shared = ("a plate's stiffness in shear left out, the safe side",) * bool(tied.plates)
    if tied.lacing is not None:
        stiffness = _stiffness_of_lacing(tied.lacing, tied.distance, modulus)
        return Ties(tied=tied, stiffness=stiffness, remarks=shared)
    if tied.battens is not None:
        stiffness = _stiffness_of_battens(tied.battens, tied, modulus)
        return Ties(tied=tied, stiffness=stiffness, remarks=shared)
    if tied.plates > 1:
        return Ties(tied=tied, stiffness=None)
    remark = (
        "no lacing or battens recorded: the plate alone ties its halves" if tied.plates
        else "nothing recorded that ties its halves: each bends by itself"
    )
    return Ties(tied=tied, stiffness=None, remarks=(remark,))


def _stiffness_of_lacing(lacing: Lacing, distance: float, modulus: float) -> float:
    width, thickness = plate_sizes(lacing.bar, "lacing bar")
    advance = measured(lacing.pitch, "pitch of the lacing") / 2
    return lacing_stiffness(
        lacing.planes, modulus, width * thickness, advance=advance, distance=distance,
        length=lacing_length(advance, distance),
    )


def _stiffness_of_battens(battens: Battens, tied: Tied, modulus: float) -> float:
    _, thickness = plate_sizes(battens.plate, "battens")
    length = measured(battens.length, "length of the battens")
    return batten_stiffness(
        measured(battens.pitch, "distance of the battens"), tied.distance, modulus=modulus,
        batten_inertia=plate_inertia(thickness, length), planes=battens.planes,
        half_inertia=min(half.inertia for half in tied.halves),
    )
