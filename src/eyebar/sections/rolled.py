"""Rolled shapes by their measures: I-beams, channels, tees, angles."""

from eyebar.sections import closed_forms as form
from eyebar.sections.amounts import Properties, measured, symmetric
from eyebar.sections.shapes import Rolled, RolledShape


def _sizes(section: Rolled) -> tuple[float, float, float, float]:
    return (
        measured(section.depth, "depth"),
        measured(section.web, "web thickness"),
        measured(section.flange, "width of flange"),
        measured(section.flange_thickness, "flange thickness"),
    )


def rolled_area(section: Rolled) -> float:
    """Area of one piece [in2]. Raises NotMeasured."""
    sizes = _sizes(section)
    if section.shape in (RolledShape.I, RolledShape.CHANNEL):
        return form.channel_area(*sizes)
    return form.angle_area(*sizes)


def rolled(section: Rolled) -> Properties:
    """Properties of rolled shapes side by side. Raises NotMeasured."""
    number = section.number
    depth, web, flange, thickness = sizes = _sizes(section)
    size = number * rolled_area(section)
    match section.shape:
        case RolledShape.I:
            return symmetric(
                size, number * form.channel_inertia(*sizes),
                number * form.i_side_inertia(*sizes), top=depth / 2, side=flange / 2,
            )
        case RolledShape.CHANNEL:
            centre = form.channel_centre(*sizes)
            return symmetric(
                size, number * form.channel_inertia(*sizes),
                number * form.channel_side_inertia(*sizes, centre=centre),
                top=depth / 2, side=max(centre, flange - centre),
            )
        case RolledShape.TEE:
            height = form.angle_height(*sizes, area=size / number)
            i_x = form.angle_inertia(*sizes, height=height)
            i_y = form.i_side_inertia(depth - thickness, web, flange, 0.0)
            i_y += form.rectangle_inertia(thickness, flange)
            return _top_heavy(section, size, i_x, i_y, height)
        case RolledShape.ANGLE:
            return _angle(section, size)


def _top_heavy(
    section: Rolled, size: float, i_x: float, i_y: float, height: float
) -> Properties:
    """Properties of tees, whose flange lies on top; `i_x`, `i_y` of one piece."""
    depth = measured(section.depth, "depth")
    r_x = form.radius_of_gyration(i_x, size / section.number)
    r_y = form.radius_of_gyration(i_y, size / section.number)
    return Properties(
        area=size, y_bar=depth - height, i_x=section.number * i_x, i_y=section.number * i_y,
        r_x=r_x, r_y=r_y, r_least=min(r_x, r_y), top=height, bottom=depth - height,
        farther_side=measured(section.flange, "width of flange") / 2,
    )


def _angle(section: Rolled, size: float) -> Properties:
    """An angle bends first about neither of its legs: `r_least` is about its slanting axis."""
    depth, web, flange, thickness = sizes = _sizes(section)
    one = size / section.number
    height = form.angle_height(*sizes, area=one)
    # The same formulas with the two legs exchanged give the other axis.
    turned = (flange, thickness, depth, web)
    side = form.angle_height(*turned, area=one)
    i_x = form.angle_inertia(*sizes, height=height)
    i_y = form.angle_inertia(*turned, height=side)
    product = form.angle_product(*sizes, side=side, height=height)
    least = form.least_inertia(i_x, i_y, product)
    return Properties(
        area=size, y_bar=depth - height, i_x=section.number * i_x, i_y=section.number * i_y,
        r_x=form.radius_of_gyration(i_x, one), r_y=form.radius_of_gyration(i_y, one),
        r_least=form.radius_of_gyration(least, one), top=height, bottom=depth - height,
        farther_side=max(side, flange - side),
    )
