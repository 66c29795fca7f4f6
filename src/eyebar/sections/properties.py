"""What a section's measures amount to: areas, centres of gravity, inertias, extreme fibres.

The upright axis lies in the plane of the truss, the level one across it; thrust that bends a bar up
or down in the plane of the truss bends it about the level axis. A channel's web, an eyebar's width
and a plate's width stand upright; the flange of a tee and the level leg of an angle lie on top.
"""

import math

from eyebar.sections import closed_forms as form
from eyebar.sections.amounts import Properties, measured, symmetric
from eyebar.sections.composed import (
    angles_parts,
    channels_parts,
    plates_and_angles_parts,
    segments_parts,
)
from eyebar.sections.gathered import Part, free_to_slant, gathered, held_in_both_planes
from eyebar.sections.known import angle_sizes, channel_sizes, plate_sizes
from eyebar.sections.rolled import ChannelProperties, channel_properties, rolled, rolled_area
from eyebar.sections.shapes import (
    Angles,
    Channels,
    Eyebars,
    FlangedSegments,
    Given,
    Plate,
    Plates,
    PlatesAndAngles,
    Rod,
    Rods,
    RodShape,
    Rolled,
    Section,
    Timbers,
)

__all__ = [
    "ChannelProperties", "Properties", "area", "channel_properties", "measured", "properties",
    "rod_area",
]


def area(section: Section) -> float:
    """Area of a section [in2], all pieces together.

    Raises NotMeasured when a size that the area needs is unknown. Source: geometry.
    """
    match section:
        case Rolled():
            return section.number * rolled_area(section)
        case Given():
            return section.area
        case FlangedSegments():
            return math.fsum(part.area for part in segments_parts(section))
        case _:
            return math.fsum(_areas(section))


def _areas(
    section: Eyebars | Rods | Channels | Angles | PlatesAndAngles | Plates | Timbers
) -> list[float]:
    """The areas of pieces that do not depend on where each piece stands [in2]."""
    match section:
        case Eyebars():
            return [form.rectangle_area(*strip) for strip in _bars(section)]
        case Rods():
            return [rod_area(rod) for rod in section.rods]
        case Channels():
            near_and_far = (section.near, section.far)
            return [
                *(form.channel_area(*channel_sizes(one)) for one in near_and_far),
                *_plate_areas(cover_plate=section.cover, bottom_plate=section.bottom),
            ]
        case Angles():
            return [form.angle_area(*angle_sizes(angle)) for angle in section.angles]
        case PlatesAndAngles(near=near, far=far):
            angles = (near.top, near.bottom, far.top, far.bottom)
            return [
                *_plate_areas(near_web=near.web, far_web=far.web, web=section.middle),
                *(form.angle_area(*angle_sizes(one)) for one in angles if one is not None),
                *_plate_areas(cover_plate=section.cover, bottom_plate=section.bottom),
            ]
        case Plates():
            return [form.rectangle_area(*plate_sizes(one, "plate")) for one in section.plates]
        case Timbers():
            return [form.rectangle_area(*strip) for strip in _sticks(section)]


def properties(section: Section) -> Properties:
    """Properties of a section as it stands.

    Pieces side by side that nothing ties together (eyebars, rods, plates, timbers, several rolled
    shapes, angles that pack rust has parted) each keep their own axis: their inertias add up, and
    nothing more. Raises NotMeasured when a size that is needed is unknown (part left empty),
    OutOfRange for pieces that do not fit each other.
    """
    match section:
        case Eyebars():
            return _strips(_bars(section))
        case Plates():
            return _strips(tuple(plate_sizes(plate, "plate") for plate in section.plates))
        case Timbers():
            return _strips(tuple((depth, width) for width, depth in _sticks(section)))
        case Rods():
            return _rods(section)
        case Channels():
            return held_in_both_planes(gathered(channels_parts(section)))
        case PlatesAndAngles():
            return held_in_both_planes(gathered(plates_and_angles_parts(section)))
        case Angles():
            parts = angles_parts(section)
            return _parted(parts) if section.separate else free_to_slant(gathered(parts))
        case FlangedSegments():
            return free_to_slant(gathered(segments_parts(section)))
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


def _bars(section: Eyebars) -> tuple[tuple[float, float], ...]:
    return tuple(
        (measured(bar.width, "width"), measured(bar.thickness, "thickness"))
        for bar in section.bars
    )


def _sticks(section: Timbers) -> tuple[tuple[float, float], ...]:
    return tuple(
        (measured(stick.width, "width of the timber"), measured(stick.depth, "depth of the timber"))
        for stick in section.sticks
    )


def _plate_areas(**plates: Plate | None) -> list[float]:
    return [
        form.rectangle_area(*plate_sizes(plate, name.replace("_", " ")))
        for name, plate in plates.items() if plate is not None
    ]


def _strips(strips: tuple[tuple[float, float], ...]) -> Properties:
    """Upright strips (width, thickness) side by side, not tied together."""
    return symmetric(
        math.fsum(form.rectangle_area(thickness, width) for width, thickness in strips),
        math.fsum(form.rectangle_inertia(thickness, width) for width, thickness in strips),
        math.fsum(form.rectangle_inertia(width, thickness) for width, thickness in strips),
        top=max(width for width, _ in strips) / 2,
        side=max(thickness for _, thickness in strips) / 2,
    )


def _parted(parts: tuple[Part, ...]) -> Properties:
    """Angles that bend each by itself: of radii the least of any, of distances the greatest."""
    alone = [free_to_slant(gathered((part,))) for part in parts]
    whole = math.fsum(one.area for one in alone)
    return Properties(
        area=whole, y_bar=gathered(parts).y, i_x=math.fsum(one.i_x for one in alone),
        i_y=math.fsum(one.i_y for one in alone), r_x=min(one.r_x for one in alone),
        r_y=min(one.r_y for one in alone), r_least=min(one.r_least for one in alone),
        top=max(one.top for one in alone), bottom=max(one.bottom for one in alone),
        farther_side=max(one.side for one in alone),
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
