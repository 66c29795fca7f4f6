"""What a section's measures amount to: areas, centres of gravity, inertias, extreme fibres.

The upright axis lies in the plane of the truss, the horizontal one across it; thrust that bends a
bar up or down in the plane of the truss bends it about the horizontal axis. A channel's web, an
eyebar's width and a plate's width stand upright; the flange of a tee and the level leg of an angle
lie on top.
"""

import math
from dataclasses import dataclass

from eyebar.errors import OutOfRange
from eyebar.sections import closed_forms as form
from eyebar.sections.amounts import Properties, measured, symmetric
from eyebar.sections.rolled import rolled, rolled_area
from eyebar.sections.shapes import (
    Channel,
    Channels,
    Eyebars,
    Given,
    Plate,
    Plates,
    Rod,
    Rods,
    RodShape,
    Rolled,
    Section,
    Toes,
)

__all__ = [
    "ChannelProperties", "Properties", "area", "channel_properties", "measured", "properties",
    "rod_area",
]


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


def area(section: Section) -> float:
    """Area of a section [in2], all pieces together.

    Raises NotMeasured when a size that the area needs is unknown. Source: geometry.
    """
    match section:
        case Eyebars():
            return math.fsum(
                form.rectangle_area(
                    measured(bar.thickness, "thickness"), measured(bar.width, "width")
                )
                for bar in section.bars
            )
        case Rods():
            return math.fsum(rod_area(rod) for rod in section.rods)
        case Channels():
            width, thickness = _plate(section.cover, "cover plate")
            return form.built_up_area(
                _channel_area(section.near), _channel_area(section.far), width, thickness
            )
        case Rolled():
            return section.number * rolled_area(section)
        case Plates():
            return math.fsum(
                form.rectangle_area(*_plate(plate, "plate")) for plate in section.plates
            )
        case Given():
            return section.area


def properties(section: Section) -> Properties:
    """Properties of a section as it stands.

    Pieces side by side that nothing ties together (eyebars, rods, plates, several rolled shapes)
    each keep their own axis: their inertias add up, and nothing more. Raises NotMeasured when a
    size that is needed is unknown (part left empty), OutOfRange for channels of unequal depth.
    """
    match section:
        case Eyebars():
            return _strips(
                tuple(
                    (measured(bar.width, "width"), measured(bar.thickness, "thickness"))
                    for bar in section.bars
                )
            )
        case Plates():
            return _strips(tuple(_plate(plate, "plate") for plate in section.plates))
        case Rods():
            return _rods(section)
        case Channels():
            return _built_up(section)
        case Rolled():
            return rolled(section)
        case Given():
            return _given(section)


def rod_area(rod: Rod) -> float:
    """Area of one rod's body [in2]. Raises NotMeasured."""
    size = measured(rod.size, "diameter" if rod.shape is RodShape.ROUND else "side")
    if rod.shape is RodShape.ROUND:
        return form.round_area(size)
    return form.rectangle_area(size, size)


def channel_properties(channel: Channel) -> ChannelProperties:
    """One channel alone, as it bends between two lacing points.

    Raises NotMeasured. Source: plane geometry; see `closed_forms`.
    """
    depth, web, flange, thickness = _channel(channel)
    size = form.channel_area(depth, web, flange, thickness)
    centre = form.channel_centre(depth, web, flange, thickness)
    i_x = form.channel_inertia(depth, web, flange, thickness)
    i_y = form.channel_side_inertia(depth, web, flange, thickness, centre=centre)
    return ChannelProperties(
        area=size,
        centre=centre,
        i_x=i_x,
        i_y=i_y,
        r_x=form.radius_of_gyration(i_x, size),
        r_y=form.radius_of_gyration(i_y, size),
    )


def _strips(strips: tuple[tuple[float, float], ...]) -> Properties:
    """Upright strips (width, thickness) side by side, not tied together."""
    return symmetric(
        math.fsum(form.rectangle_area(thickness, width) for width, thickness in strips),
        math.fsum(form.rectangle_inertia(thickness, width) for width, thickness in strips),
        math.fsum(form.rectangle_inertia(width, thickness) for width, thickness in strips),
        top=max(width for width, _ in strips) / 2,
        side=max(thickness for _, thickness in strips) / 2,
    )


def _rods(section: Rods) -> Properties:
    size = math.fsum(rod_area(rod) for rod in section.rods)
    inertia = math.fsum(
        form.round_inertia(rod.size or 0.0)
        if rod.shape is RodShape.ROUND
        else form.rectangle_inertia(rod.size or 0.0, rod.size or 0.0)
        for rod in section.rods
    )
    half = max(rod.size or 0.0 for rod in section.rods) / 2
    return symmetric(size, inertia, inertia, top=half, side=half)


def _built_up(section: Channels) -> Properties:
    """Two channels and their cover plate; channels of unequal loss move the centre sideways."""
    near, far = channel_properties(section.near), channel_properties(section.far)
    depth = measured(section.near.depth, "depth")
    if section.far.depth != depth:
        raise OutOfRange(
            "depth of the far channel", f"{section.far.depth} in", f"that of the near one, {depth}"
        )
    width, thickness = _plate(section.cover, "cover plate")
    half = _apart(section) / 2
    near_distance = half + _centre_from_inner_face(section.near, near.centre, section.toes)
    far_distance = half + _centre_from_inner_face(section.far, far.centre, section.toes)
    size = form.built_up_area(near.area, far.area, width, thickness)
    height = form.built_up_height(
        near.area, far.area, depth=depth, width=width, thickness=thickness, area=size
    )
    i_x = form.built_up_inertia(
        near.i_x, far.i_x, near.area, far.area,
        depth=depth, width=width, thickness=thickness, height=height,
    )
    shift = form.built_up_shift(near.area, far.area, near_distance, far_distance, area=size)
    i_y = form.built_up_side_inertia(
        near.i_y, far.i_y, near.area, far.area, near_distance=near_distance,
        far_distance=far_distance, shift=shift, width=width, thickness=thickness,
    )
    r_x, r_y = form.radius_of_gyration(i_x, size), form.radius_of_gyration(i_y, size)
    outer = max(
        half + _outer_face(section.near, section.toes) + shift,
        half + _outer_face(section.far, section.toes) - shift,
        width / 2 + abs(shift),
    )
    return Properties(
        area=size, y_bar=height, i_x=i_x, i_y=i_y, r_x=r_x, r_y=r_y, r_least=min(r_x, r_y),
        top=depth + thickness - height, bottom=height, farther_side=outer,
    )


def _apart(section: Channels) -> float:
    """Distance between the webs' inner faces; flanges that point inwards must fit between them."""
    apart = measured(section.apart, "distance between the channels")
    if section.toes is Toes.IN:
        reach = math.fsum(
            measured(channel.flange, "width of flange") - measured(channel.web, "web thickness")
            for channel in (section.near, section.far)
        )
        if reach > apart:
            raise OutOfRange(
                "distance between the channels", f"{apart:g} in",
                f"{reach:g} in or more, or their flanges overlap",
            )
    return apart


def _centre_from_inner_face(channel: Channel, centre: float, toes: Toes) -> float:
    """From the web's inner face outwards: with toes in the back of the web is the outer face."""
    return centre if toes is Toes.OUT else measured(channel.web, "web thickness") - centre


def _outer_face(channel: Channel, toes: Toes) -> float:
    """From the web's inner face to the channel's outermost fibre."""
    if toes is Toes.OUT:
        return measured(channel.flange, "width of flange")
    return measured(channel.web, "web thickness")


def _channel(channel: Channel) -> tuple[float, float, float, float]:
    return (
        measured(channel.depth, "depth"),
        measured(channel.web, "web thickness"),
        measured(channel.flange, "width of flange"),
        measured(channel.flange_thickness, "flange thickness"),
    )


def _channel_area(channel: Channel) -> float:
    return form.channel_area(*_channel(channel))


def _plate(plate: Plate | None, name: str) -> tuple[float, float]:
    """Width and thickness; a plate that is not there has none of either."""
    if plate is None:
        return 0.0, 0.0
    return (
        measured(plate.width, f"width of {name}"),
        measured(plate.thickness, f"thickness of {name}"),
    )


def _given(section: Given) -> Properties:
    """Properties given as numbers."""
    r_x = measured(section.r_x, "radius of gyration about the horizontal axis")
    r_y = measured(section.r_y, "radius of gyration about the upright axis")
    top = measured(section.top, "distance to the upper fibre")
    bottom = measured(section.bottom, "distance to the lower fibre")
    return Properties(
        area=section.area, y_bar=bottom, i_x=section.area * r_x**2, i_y=section.area * r_y**2,
        r_x=r_x, r_y=r_y, r_least=min(r_x, r_y), top=top, bottom=bottom,
        farther_side=section.side,
    )
