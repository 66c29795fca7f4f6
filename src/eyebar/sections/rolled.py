"""Rolled shapes by their measures: I-beams, channels, tees, angles."""

from dataclasses import dataclass

from eyebar.sections import closed_forms as form
from eyebar.sections import tapered
from eyebar.sections.amounts import Properties, measured, symmetric
from eyebar.sections.known import channel_sizes, taper_sizes, thickness_of_flange
from eyebar.sections.pieces import Channel, Taper
from eyebar.sections.shapes import Rolled, RolledShape


@dataclass(frozen=True, slots=True, kw_only=True)
class ChannelProperties:
    """One channel alone: `i_x` about the axis across its web, `i_y` about the one along it.

    `centre` is the distance of its centre of gravity from the back of its web [in].
    """

    area: float
    centre: float
    i_x: float
    i_y: float
    r_x: float
    r_y: float


def channel_properties(channel: Channel) -> ChannelProperties:
    """One channel alone, as it bends between two lacing points.

    Raises NotMeasured. Source: plane geometry; see `closed_forms` and `tapered`.
    """
    sizes = channel_sizes(channel)
    size = form.channel_area(*sizes)
    if channel.taper is None:
        centre = form.channel_centre(*sizes)
        i_x = form.channel_inertia(*sizes)
        i_y = form.channel_side_inertia(*sizes, centre=centre)
    else:
        depth, web, flange, _ = sizes
        edge, at_web = taper_sizes(channel.taper)
        centre = tapered.tapered_centre(
            depth, web, flange - web, flange_edge=edge, flange_at_web=at_web, area=size
        )
        i_x = _tapered_inertia(depth, web, flange, channel.taper)
        own = tapered.flange_side_inertia(web, flange - web, flange_edge=edge, flange_at_web=at_web)
        i_y = tapered.tapered_channel_side(depth, web, own, area=size, centre=centre)
    return ChannelProperties(
        area=size, centre=centre, i_x=i_x, i_y=i_y, r_x=form.radius_of_gyration(i_x, size),
        r_y=form.radius_of_gyration(i_y, size),
    )


def _tapered_inertia(depth: float, web: float, flange: float, taper: Taper) -> float:
    edge, at_web = taper_sizes(taper)
    return tapered.tapered_inertia(
        depth, web, flange, at_edges=tapered.between_flanges(depth, edge),
        clear=tapered.between_flanges(depth, at_web),
    )


def _sizes(section: Rolled) -> tuple[float, float, float, float]:
    return (
        measured(section.depth, "depth"),
        measured(section.web, "web thickness"),
        measured(section.flange, "width of flange"),
        thickness_of_flange(section.flange_thickness, section.taper),
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
            i_x, i_y = _beam(section, sizes)
            return symmetric(
                size, number * i_x, number * i_y, top=depth / 2, side=flange / 2
            )
        case RolledShape.CHANNEL:
            one = channel_properties(
                Channel(depth=depth, web=web, flange=flange, taper=section.taper,
                        flange_thickness=section.flange_thickness)
            )
            return symmetric(
                size, number * one.i_x, number * one.i_y, top=depth / 2,
                side=max(one.centre, flange - one.centre),
            )
        case RolledShape.TEE:
            height = form.angle_height(*sizes, area=size / number)
            i_x = form.angle_inertia(*sizes, height=height)
            i_y = form.i_side_inertia(depth - thickness, web, flange, 0.0)
            i_y += form.rectangle_inertia(thickness, flange)
            return _top_heavy(section, size, i_x, i_y, height)
        case RolledShape.ANGLE:
            return _angle(section, size)


def _beam(section: Rolled, sizes: tuple[float, float, float, float]) -> tuple[float, float]:
    """Inertias of one I-beam about its level and its upright axis [in4]."""
    if section.taper is None:
        return form.channel_inertia(*sizes), form.i_side_inertia(*sizes)
    depth, web, flange, _ = sizes
    edge, at_web = taper_sizes(section.taper)
    half = tapered.flange_side_inertia(
        web / 2, (flange - web) / 2, flange_edge=edge, flange_at_web=at_web
    )
    return _tapered_inertia(depth, web, flange, section.taper), tapered.tapered_i_side(
        depth, web, half
    )


def _top_heavy(
    section: Rolled, size: float, i_x: float, i_y: float, height: float
) -> Properties:
    """Properties of tees, whose flange lies on top; `i_x`, `i_y` of one piece.

    Heights are measured from the flange's back, which rust at the stem's end does not move.
    """
    depth = measured(section.depth, "depth")
    r_x = form.radius_of_gyration(i_x, size / section.number)
    r_y = form.radius_of_gyration(i_y, size / section.number)
    return Properties(
        area=size, y_bar=-height, i_x=section.number * i_x, i_y=section.number * i_y,
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
        area=size, y_bar=-height, i_x=section.number * i_x, i_y=section.number * i_y,
        r_x=form.radius_of_gyration(i_x, one), r_y=form.radius_of_gyration(i_y, one),
        r_least=form.radius_of_gyration(least, one), top=height, bottom=depth - height,
        farther_side=max(side, flange - side), x_bar=side,
        product=-section.number * product,
    )
