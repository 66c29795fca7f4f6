"""What bends a column: its own weight, pins beside its centre, rust that moves the centre."""

from eyebar.errors import NotMeasured
from eyebar.resistance.built_up import Pair, tied_buckling_load
from eyebar.resistance.column import buckling_load
from eyebar.resistance.moments import offset_left, own_weight_moment, safe_buckling_load
from eyebar.resistance.thrust_with_bending import Bent
from eyebar.resistance.whole_column import Column, capacity, channels, run, shape_of
from eyebar.sections.closed_forms import built_up_shift
from eyebar.sections.properties import Properties
from eyebar.sections.shapes import Channels, Given
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
    offset, side_offset = _moved(_offset(found, built)), _moved(_side_offset(found))
    weight = _weight(found, built, dead_factor_dc)
    if not (weight or offset or side_offset or bar.bow):
        return None, ()
    in_plane, out_of_plane = _amplifying(found)
    moments = Bent(
        weight=weight, offset=offset, side_offset=side_offset, bow=bar.bow, column=straight,
        short=capacity(found, shape.area, 0.0), buckling=in_plane, side_buckling=out_of_plane,
        area=shape.area, inertia=shape.i_x, side_inertia=shape.i_y, top=shape.top,
        bottom=shape.bottom, side=shape.side if side_offset or bar.bow else None,
        yield_stress=bar.material.yield_stress, modulus=bar.material.modulus,
        length=found.in_plane * shape.r_x, radius=shape.r_x,
    )
    return moments, remarks


def _as_built(found: Column) -> tuple[Properties, tuple[str, ...]]:
    """Properties as built; those left where a size as built was never known, and a remark."""
    bar = found.bar
    if bar.as_built == bar.left or isinstance(bar.as_built, Given):
        return found.shape, ()
    try:
        return shape_of(bar.as_built), ()
    except NotMeasured as missing:
        return found.shape, (f"{missing.what} as built unknown: taken as it is left",)


def _weight(found: Column, built: Properties, factor: float) -> float:
    """Moment of the bar's own weight at mid-length [kip in]."""
    bar, across = found.bar, run(found.bar)
    if not across:
        return 0.0
    return own_weight_moment(
        factor, built.area, density=bar.material.density, length=bar.length, run=across
    )


def _offset(found: Column, built: Properties) -> float:
    """Pin below the centre of gravity of what is left [in]."""
    if built is found.shape:
        return found.bar.pin_offset
    return offset_left(found.bar.pin_offset, found.shape.y_bar, built.y_bar)


def _side_offset(found: Column) -> float:
    """How far uneven rust has moved the centre of gravity sideways from the pins' middle [in]."""
    bar = found.bar
    if found.pair is None or bar.left == bar.as_built or not isinstance(bar.as_built, Channels):
        return 0.0
    left = _shift(found.pair, found.shape.area)
    try:
        return abs(left - _shift(channels(bar.as_built), shape_of(bar.as_built).area))
    except NotMeasured:
        return abs(left)


def _moved(distance: float) -> float:
    return distance if abs(distance) > ROUNDING else 0.0


def _shift(both: Pair, area: float) -> float:
    return built_up_shift(
        both.near.area, both.far.area, both.near_arm, both.far_arm, area=area
    )


def _amplifying(found: Column) -> tuple[float, float]:
    """Buckling loads in and out of the plane that moments are amplified with [kip]."""
    area, modulus = found.shape.area, found.bar.material.modulus
    in_plane = buckling_load(modulus, area, found.in_plane)
    out_of_plane = buckling_load(modulus, area, found.out_of_plane)
    if found.stiffness is not None:
        out_of_plane = tied_buckling_load(out_of_plane, found.stiffness)
    if found.rules.method is not Method.ALLOWABLE_STRESS:
        return in_plane, out_of_plane
    safety = found.rules.column
    return safe_buckling_load(in_plane, safety), safe_buckling_load(out_of_plane, safety)
