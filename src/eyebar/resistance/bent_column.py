"""What bends a column: its own weight, pins beside its centre, rust that moves the centre."""

from eyebar.bridge.parts import Bar
from eyebar.resistance.built_up import Pair, tied_buckling_load
from eyebar.resistance.column import buckling_load
from eyebar.resistance.moments import offset_left, own_weight_moment, safe_buckling_load
from eyebar.resistance.thrust_with_bending import Bent
from eyebar.resistance.whole_column import Column, capacity, channels, is_bent, run, shape_of
from eyebar.sections.closed_forms import built_up_shift
from eyebar.sections.shapes import Channels
from eyebar.terms import Method


def bent(found: Column, *, straight: float, dead_factor_dc: float) -> Bent | None:
    """The column with its moments; None where nothing bends it.

    `straight` is its push as a straight column [kip], `dead_factor_dc` the factor on its own
    weight. Raises NotMeasured (part left empty).
    """
    bar, shape = found.bar, found.shape
    offset, side_offset = _offset(found), _side_offset(found)
    weight = _weight(bar, dead_factor_dc)
    if not (weight or offset or side_offset or bar.bow):
        return None
    in_plane, out_of_plane = _amplifying(found)
    return Bent(
        weight=weight, offset=offset, side_offset=side_offset, bow=bar.bow, column=straight,
        short=capacity(found, shape.area, 0.0), buckling=in_plane, side_buckling=out_of_plane,
        area=shape.area, inertia=shape.i_x, side_inertia=shape.i_y, top=shape.top,
        bottom=shape.bottom, side=shape.side if side_offset or bar.bow else None,
        yield_stress=bar.material.yield_stress, modulus=bar.material.modulus,
        length=found.in_plane * shape.r_x, radius=shape.r_x,
    )


def _weight(bar: Bar, factor: float) -> float:
    across = run(bar)
    if not across:
        return 0.0
    area = shape_of(bar.as_built).area
    return own_weight_moment(
        factor, area, density=bar.material.density, length=bar.length, run=across
    )


def _offset(found: Column) -> float:
    """Pin below the centre of gravity of what is left [in]."""
    bar = found.bar
    if bar.left == bar.as_built or not is_bent(bar):
        return bar.pin_offset
    return offset_left(bar.pin_offset, found.shape.y_bar, shape_of(bar.as_built).y_bar)


def _side_offset(found: Column) -> float:
    """How far uneven rust has moved the centre of gravity sideways from the pins' middle [in]."""
    bar = found.bar
    if found.pair is None or bar.left == bar.as_built or not isinstance(bar.as_built, Channels):
        return 0.0
    left = _shift(found.pair, found.shape.area)
    return abs(left - _shift(channels(bar.as_built), shape_of(bar.as_built).area))


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
