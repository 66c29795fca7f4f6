"""Built-up sections as the parts that `gathered` adds up: which part stands where.

y = 0 is the lower edge of channels and webs, of a single angle and of angles back to back the back
of their level legs, of a star its middle, of laced angles the back of the lower ones or the middle
between pieces side by side, of a round column its centre; x = 0 is the middle, of a single angle
the back of its upright leg.
"""

import math

from eyebar.errors import OutOfRange
from eyebar.sections import arcs
from eyebar.sections import closed_forms as form
from eyebar.sections.amounts import measured
from eyebar.sections.built import (
    Angles,
    Channels,
    FlangedSegments,
    Placed,
    PlatesAndAngles,
    Segment,
    Side,
    Spread,
)
from eyebar.sections.gathered import Part, angle_at, block, level_plate
from eyebar.sections.known import plate_sizes
from eyebar.sections.pieces import Toes
from eyebar.sections.rolled import channel_properties

COVER, BOTTOM = "cover plate", "bottom plate"
FOUR = ("near upper angle", "near lower angle", "far upper angle", "far lower angle")


def channels_parts(section: Channels) -> tuple[Part, ...]:
    """Two channels with what lies on and under them.

    Raises NotMeasured, OutOfRange for channels of unequal depth or flanges that overlap.
    """
    near, far = channel_properties(section.near), channel_properties(section.far)
    depth = measured(section.near.depth, "depth")
    if section.far.depth != depth:
        raise OutOfRange(
            "depth of the far channel", f"{section.far.depth} in", f"that of the near one, {depth}"
        )
    half = _apart(section) / 2
    parts = []
    for side, name, channel, found in (
        (-1, "near channel", section.near, near), (1, "far channel", section.far, far)
    ):
        web = measured(channel.web, "web thickness")
        flange = measured(channel.flange, "width of flange")
        # With toes out the back of the web is its inner face, with toes in its outer one.
        out = section.toes is Toes.OUT
        inner, outer = (half, half + flange) if out else (half + web - flange, half + web)
        centre = half + (found.centre if out else web - found.centre)
        parts.append(
            Part(
                name=name, area=found.area, x=side * centre, y=depth / 2, i_x=found.i_x,
                i_y=found.i_y, product=0.0, left=min(side * inner, side * outer),
                right=max(side * inner, side * outer), bottom=0.0, top=depth,
            )
        )
    return (*parts, *_level_plates(section, depth))


def plates_and_angles_parts(section: PlatesAndAngles) -> tuple[Part, ...]:
    """Webs, the angles along their edges, and the plates on and under them. Raises NotMeasured."""
    parts: list[Part] = []
    depth = depth_of_webs(section)
    if section.middle is not None:
        height, thickness = plate_sizes(section.middle, "web")
        parts.append(block("web", width=thickness, height=height, x=0.0, y=height / 2))
    for aside, name, side in ((-1, "near", section.near), (1, "far", section.far)):
        inner, outer = _faces(section, side, name)
        if side.web is not None:
            height, thickness = plate_sizes(side.web, f"{name} web")
            parts.append(
                block(f"{name} web", width=thickness, height=height,
                      x=aside * (inner + outer) / 2, y=height / 2)
            )
        inwards = section.toes is Toes.IN and section.middle is None
        face, points = (inner, -aside) if inwards else (outer, aside)
        for where, angle, heel, up in (
            ("top", side.top, depth, -1), ("bottom", side.bottom, 0.0, 1)
        ):
            if angle is not None:
                parts.append(
                    angle_at(angle, f"{name} {where} angle", heel=(aside * face, heel),
                             aside=points, up=up)
                )
    return (*parts, *_level_plates(section, depth))


def depth_of_webs(section: PlatesAndAngles) -> float:
    """Depth of the web plates, which must be alike [in]. Raises NotMeasured, OutOfRange."""
    webs = [web for web in (section.middle, section.near.web, section.far.web) if web is not None]
    depths = {measured(web.width, "depth of the web") for web in webs}
    if len(depths) != 1:
        raise OutOfRange(
            "depth of the webs", " and ".join(f"{one:g} in" for one in sorted(depths)) or "unknown",
            "the same on both sides",
        )
    return depths.pop()


def _faces(section: PlatesAndAngles, side: Side, name: str) -> tuple[float, float]:
    """Inner and outer face of a side's web, from the middle [in]."""
    if section.middle is not None:
        half = plate_sizes(section.middle, "web")[1] / 2
        return half, half
    inner = measured(section.apart, "distance between the webs") / 2
    thickness = 0.0 if side.web is None else plate_sizes(side.web, f"{name} web")[1]
    return inner, inner + thickness


def angles_parts(section: Angles) -> tuple[Part, ...]:
    """The angles of a section where they stand. Raises NotMeasured."""
    return tuple(
        angle_at(angle, name, heel=heel, aside=aside, up=up)
        for angle, name, (heel, aside, up) in zip(
            section.angles, _names(section), _corners(section), strict=True
        )
    )


def _names(section: Angles) -> tuple[str, ...]:
    match len(section.angles):
        case 1:
            return ("angle",)
        case 2 if section.placed is Placed.LACED and section.spread is Spread.UPRIGHT:
            return "upper angle", "lower angle"
        case 2:
            return "near angle", "far angle"
        case _:
            return FOUR


Corner = tuple[tuple[float, float], int, int]
"""Where an angle's heel is, and which way its level and its upright leg point from there."""


def _corners(section: Angles) -> tuple[Corner, ...]:
    four = len(section.angles) == 4
    match section.placed:
        case Placed.SINGLE:
            return (((0.0, 0.0), 1, -1),)
        case Placed.BACK_TO_BACK:
            half = _gap(section) / 2
            return (((-half, 0.0), -1, -1), ((half, 0.0), 1, -1))
        case Placed.STAR:
            half = _gap(section) / 2
            near, far = (-half, -half), (half, half)
            if not four:
                return ((near, -1, -1), (far, 1, 1))
            return (
                ((-half, half), -1, 1), (near, -1, -1), (far, 1, 1), ((half, -half), 1, -1)
            )
        case Placed.BOX:
            height = measured(section.backs, "distance between the backs")
            half = measured(section.backs_across, "distance between the backs across") / 2
            return (
                ((-half, height), 1, -1), ((-half, 0.0), 1, 1),
                ((half, height), -1, -1), ((half, 0.0), -1, 1),
            )
        case Placed.LACED:
            return _laced(section)


def _laced(section: Angles) -> tuple[Corner, ...]:
    """Two pieces, or two pairs, that face each other across their lacing."""
    four = len(section.angles) == 4
    half = _gap(section) / 2 if four else 0.0
    facing = 1 if section.toes is Toes.IN else -1
    if section.spread is Spread.UPRIGHT:
        height = measured(section.backs, "distance between the backs")
        upper, lower = (height, -facing), (0.0, facing)
        sides = ((-half, -1), (half, 1)) if four else ((0.0, 1),)
        return tuple(((x, y), aside, up) for x, aside in sides for y, up in (upper, lower))
    width = measured(section.backs_across, "distance between the backs across") / 2
    levels = ((half, 1), (-half, -1)) if four else ((0.0, -1),)
    return tuple(
        ((x, y), aside, up)
        for x, aside in ((-width, facing), (width, -facing)) for y, up in levels
    )


def _gap(section: Angles) -> float:
    return measured(section.apart, "distance between the angles")


def segments_parts(section: FlangedSegments) -> tuple[Part, ...]:
    """The walls of a round column and the flanges along their edges; raises NotMeasured.

    Rust is taken off outside, where it costs the most stiffness.
    """
    inner = measured(section.inside, "inside diameter of the column") / 2
    half = arcs.half_angle(len(section.segments))
    parts: list[Part] = []
    for number, segment in enumerate(section.segments):
        middle = (2 * number + 1) * half
        parts.append(_wall(segment, f"segment {number + 1}", inner, half, middle))
        parts += _flanges(segment, f"flanges of segment {number + 1}", inner, half, middle)
    return tuple(parts)


def _wall(segment: Segment, name: str, inner: float, half: float, middle: float) -> Part:
    outer = inner + measured(segment.thickness, "thickness of the segment")
    size, centre = arcs.arc_area(half, outer, inner), arcs.arc_centre(half, outer, inner)
    along = arcs.arc_inertia_across(half, outer, inner, centre=centre)
    across = arcs.arc_inertia_along(half, outer, inner)
    quarters = [step * math.pi / 2 for step in range(5)]
    rays = [middle - half, middle + half, *(one for one in quarters if abs(one - middle) <= half)]
    return _turned(
        name, size, (centre * math.cos(middle), centre * math.sin(middle)), middle,
        along=along, across=across,
        corners=[
            (radius * math.cos(ray), radius * math.sin(ray))
            for ray in rays for radius in (inner, outer)
        ],
    )


def _flanges(
    segment: Segment, name: str, inner: float, half: float, middle: float
) -> tuple[Part, Part]:
    """A segment's two flanges, each along its own side of the ray where segments meet."""
    outer = inner + measured(segment.thickness, "thickness of the segment")
    length = measured(segment.flange, "flange of the segment")
    thickness = measured(segment.flange_thickness, "thickness of the flange of the segment")
    first, second = (
        _flange(name, outer, (length, thickness), ray=ray, towards=towards)
        for ray, towards in ((middle - half, 1), (middle + half, -1))
    )
    return first, second


def _flange(
    name: str, outer: float, sizes: tuple[float, float], *, ray: float, towards: int
) -> Part:
    length, thickness = sizes
    cos, sin = math.cos(ray), math.sin(ray)

    def point(along: float, beside: float) -> tuple[float, float]:
        return along * cos - towards * beside * sin, along * sin + towards * beside * cos

    x, y = point(outer + length / 2, thickness / 2)
    return _turned(
        name, form.rectangle_area(thickness, length), (x, y), ray,
        along=form.rectangle_inertia(thickness, length),
        across=form.rectangle_inertia(length, thickness),
        corners=[
            point(along, beside)
            for along in (outer, outer + length) for beside in (0.0, thickness)
        ],
    )


def _turned(
    name: str, area: float, centre: tuple[float, float], ray: float, *, along: float,
    across: float, corners: list[tuple[float, float]],
) -> Part:
    """A part whose ray stands at an angle, with its second moments along and across that ray."""
    x, y = centre
    return Part(
        name=name, area=area, x=x, y=y, i_x=arcs.turned_inertia(along, across, ray),
        i_y=arcs.turned_inertia(across, along, ray),
        product=arcs.turned_product(along, across, ray),
        left=min(one for one, _ in corners), right=max(one for one, _ in corners),
        bottom=min(one for _, one in corners), top=max(one for _, one in corners),
    )


def _level_plates(section: Channels | PlatesAndAngles, depth: float) -> tuple[Part, ...]:
    parts: tuple[Part, ...] = ()
    if section.cover is not None:
        parts += level_plate(section.cover, COVER, y=depth, up=1)
    if section.bottom is not None:
        parts += level_plate(section.bottom, BOTTOM, y=0.0, up=-1)
    return parts


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
