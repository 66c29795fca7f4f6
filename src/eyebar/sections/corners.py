"""The corners of pieces: of rectangles, rolled shapes, channels, angles; corners are sharp."""

import math
from collections.abc import Sequence

from eyebar.sections.gathered import Part
from eyebar.sections.known import angle_sizes
from eyebar.sections.pieces import Angle
from eyebar.sections.shapes import RolledShape

Point = tuple[float, float]
Corners = tuple[Point, ...]


def rectangle(left: float, bottom: float, right: float, top: float) -> Corners:
    """The corners of an upright rectangle."""
    return (left, bottom), (right, bottom), (right, top), (left, top)


def rolled_outline(
    shape: RolledShape, sizes: tuple[float, float, float, float]
) -> Corners:
    """A rolled shape of a depth, web, flange and flange thickness [in], its lower edge at 0."""
    d, w, b, t = sizes
    match shape:
        case RolledShape.I:
            return (
                (-b / 2, 0), (b / 2, 0), (b / 2, t), (w / 2, t), (w / 2, d - t), (b / 2, d - t),
                (b / 2, d), (-b / 2, d), (-b / 2, d - t), (-w / 2, d - t), (-w / 2, t), (-b / 2, t),
            )
        case RolledShape.CHANNEL:
            return channel_outline((d, w, b, t), back=0.0, out=1)
        case RolledShape.TEE:
            return (
                (-w / 2, 0), (w / 2, 0), (w / 2, d - t), (b / 2, d - t), (b / 2, d), (-b / 2, d),
                (-b / 2, d - t), (-w / 2, d - t),
            )
        case RolledShape.ANGLE:
            return (0, 0), (w, 0), (w, d - t), (b, d - t), (b, d), (0, d)


def moved(points: Sequence[Point], x: float, y: float) -> Corners:
    """Corners moved."""
    return tuple((px + x, py + y) for px, py in points)


def channel_outline(
    sizes: tuple[float, float, float, float], *, back: float, out: int
) -> Corners:
    """A channel whose back stands upright at `back`, its flanges pointing `out`."""
    d, w, b, t = sizes
    shape = ((0, 0), (b, 0), (b, t), (w, t), (w, d - t), (b, d - t), (b, d), (0, d))
    return tuple((back + out * x, float(y)) for x, y in shape)


def angle_outline(angle: Angle, part: Part) -> Corners:
    """An L in the room its part takes, its heel at the corner that its centre lies nearest to."""
    _, web, _, thickness = angle_sizes(angle, "angle")
    near_left = part.x - part.left < part.right - part.x
    near_bottom = part.y - part.bottom < part.top - part.y
    x, aside = (part.left, 1) if near_left else (part.right, -1)
    y, up = (part.bottom, 1) if near_bottom else (part.top, -1)
    wide, high = part.right - part.left, part.top - part.bottom
    shape = ((0.0, 0.0), (wide, 0.0), (wide, thickness), (web, thickness), (web, high), (0.0, high))
    return tuple((x + aside * px, y + up * py) for px, py in shape)


def flange_edge(tip: float, outer: float, beside: float, ray: float) -> tuple[Point, Point, Point]:
    """A flange along a ray: its tip on the ray, its tip beside it, its foot beside it."""
    cos, sin = math.cos(ray), math.sin(ray)

    def at(along: float, off: float) -> Point:
        return along * cos - off * sin, along * sin + off * cos

    return at(tip, 0.0), at(tip, beside), at(outer, beside)
