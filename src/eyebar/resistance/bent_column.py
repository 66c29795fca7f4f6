"""What bends a column: its own weight, pins beside its centre, rust that moves the centre."""

from eyebar.errors import NotMeasured
from eyebar.resistance.built_up import tied_buckling_load
from eyebar.resistance.column import buckling_load
from eyebar.resistance.continuity import moment_between_joints, weight_over_joints
from eyebar.resistance.moments import offset_left, own_weight_moment, safe_buckling_load
from eyebar.resistance.thrust_with_bending import Bent
from eyebar.resistance.whole_column import Column, capacity, run, shape_of
from eyebar.sections.built import Spread
from eyebar.sections.properties import Properties
from eyebar.sections.shapes import Given
from eyebar.terms import Method

ROUNDING = 1e-9
"""A centre of gravity that moved less [in] did not move: the rest is how numbers are held."""


def bent(
    found: Column, *, straight: float, dead_factor_dc: float
) -> tuple[Bent | None, tuple[str, ...]]:
    """The column with its moments (None where nothing bends it), and remarks.

    `straight` is its push as a straight column [kip], `dead_factor_dc` the factor on its own
    weight. Raises NotMeasured (part left empty).
    """
    bar, shape = found.bar, found.shape
    built, remarks = _as_built(found)
    greater, lesser = _offsets(found, built)
    side_offset = _side_offset(found, built)
    weight, support = _weights(found, built, dead_factor_dc)
    if not (weight or support or greater or side_offset or bar.bow):
        return None, ()
    in_plane, out_of_plane = amplifying(found)
    moments = Bent(
        weight=weight, support=support, offset=greater, other_offset=lesser,
        side_offset=side_offset, bow=bar.bow, column=straight, short=capacity(found, 0.0),
        buckling=in_plane, side_buckling=out_of_plane, area=shape.area, inertia=shape.i_x,
        side_inertia=shape.i_y, top=shape.top, bottom=shape.bottom,
        side=shape.side if side_offset or bar.bow else None,
        yield_stress=found.plates.yields(lambda: bar.material.yield_stress),
        modulus=bar.material.modulus, length=found.in_plane * shape.r_x, radius=shape.r_x,
    )
    return moments, remarks + found.plates.remarks


def _as_built(found: Column) -> tuple[Properties, tuple[str, ...]]:
    """Properties as built; those left where a size as built was never known, and a remark."""
    bar = found.bar
    if bar.as_built == bar.left or isinstance(bar.as_built, Given):
        return found.shape, ()
    try:
        return shape_of(bar.as_built), ()
    except NotMeasured as missing:
        return found.shape, (f"{missing.what} as built unknown: taken as it is left",)


def _weights(found: Column, built: Properties, factor: float) -> tuple[float, float]:
    """Moments of the bar's own weight at mid-length, and the greater over its joints [kip in]."""
    bar, across = found.bar, run(found.bar)
    if not across:
        return 0.0, 0.0
    hinged = own_weight_moment(
        factor, built.area, density=bar.material.density, length=bar.length, run=across
    )
    if bar.runs_on is None:
        return hinged, 0.0
    first, second = weight_over_joints(bar.runs_on, factor)
    return moment_between_joints(hinged, first, second), max(first, second)


def _offsets(found: Column, built: Properties) -> tuple[float, float | None]:
    """Pins below the centre of gravity of what is left [in]: where farther away, and at the other
    end (None: alike)."""
    bar = found.bar
    one = _offset(found, built, bar.pin_offset)
    if bar.other_pin_offset is None:
        return one, None
    other = _offset(found, built, bar.other_pin_offset)
    return (one, other) if abs(one) >= abs(other) else (other, one)


def _offset(found: Column, built: Properties, as_built: float) -> float:
    if built is found.shape:
        return as_built
    return _moved(offset_left(as_built, found.shape.y_bar, built.y_bar))


def _side_offset(found: Column, built: Properties) -> float:
    """How far the thrust runs beside the centre of gravity of what is left, across the truss [in].

    Which way it ran as built is not asked: the two distances add up.
    """
    return abs(found.bar.side_offset) + abs(_moved(found.shape.x_bar - built.x_bar))


def _moved(distance: float) -> float:
    return distance if abs(distance) > ROUNDING else 0.0


def amplifying(found: Column) -> tuple[float, float]:
    """Buckling loads in and out of the plane that moments are amplified with [kip]."""
    area, modulus = found.shape.area, found.bar.material.modulus
    loads = {
        Spread.UPRIGHT: buckling_load(modulus, area, found.in_plane),
        Spread.ACROSS: buckling_load(modulus, area, found.out_of_plane),
    }
    for ties in found.ties:
        if ties.stiffness is not None:
            spread = ties.tied.spread
            loads[spread] = tied_buckling_load(loads[spread], ties.stiffness)
    if found.rules.method is Method.ALLOWABLE_STRESS:
        safety = found.rules.column
        loads = {spread: safe_buckling_load(load, safety) for spread, load in loads.items()}
    return loads[Spread.UPRIGHT], loads[Spread.ACROSS]
