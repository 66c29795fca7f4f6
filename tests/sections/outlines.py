"""Another road to areas and inertias: closed outlines, integrated by Green's theorem."""

import math

from eyebar.sections.shapes import Channel, RolledShape, Toes

Outline = list[tuple[float, float]]
Moments = tuple[float, float, float, float, float, float]


def integrated(outlines: list[Outline]) -> Moments:
    """Area, x, y, I_x, I_y, product about the common centre, by Green's theorem."""
    sums = [0.0] * 6
    for points in outlines:
        for (x1, y1), (x2, y2) in zip(points, [*points[1:], points[0]], strict=True):
            cross = x1 * y2 - x2 * y1
            sums[0] += cross / 2
            sums[1] += cross * (x1 + x2) / 6
            sums[2] += cross * (y1 + y2) / 6
            sums[3] += cross * (y1**2 + y1 * y2 + y2**2) / 12
            sums[4] += cross * (x1**2 + x1 * x2 + x2**2) / 12
            sums[5] += cross * (x1 * y2 + 2 * x1 * y1 + 2 * x2 * y2 + x2 * y1) / 24
    size, x, y = sums[0], sums[1] / sums[0], sums[2] / sums[0]
    return size, x, y, sums[3] - size * y**2, sums[4] - size * x**2, sums[5] - size * x * y


def least_radius(moments: Moments) -> float:
    """By the eigenvalues of the inertia tensor, not by Mohr's formula."""
    size, _, _, i_x, i_y, product = moments
    half = (i_x + i_y) / 2
    least = half - math.sqrt(max(half**2 - (i_x * i_y - product**2), 0.0))
    return math.sqrt(max(least, 0.0) / size)


def box(x1: float, y1: float, x2: float, y2: float) -> Outline:
    """A rectangle between two corners, whichever way they are given."""
    left, right = sorted((x1, x2))
    lower, upper = sorted((y1, y2))
    return [(left, lower), (right, lower), (right, upper), (left, upper)]


def angle_outline(
    legs: tuple[float, float], thicknesses: tuple[float, float], heel: tuple[float, float],
    points: tuple[int, int],
) -> Outline:
    """An angle as one closed L: upright and level leg, their thicknesses, where its heel is and
    which way its level and its upright leg point."""
    (d, b), (t_u, t_l) = legs, thicknesses
    aside, up = points
    corners = [(0.0, 0.0), (b, 0.0), (b, t_l), (t_u, t_l), (t_u, d), (0.0, d)]
    placed = [(heel[0] + aside * x, heel[1] + up * y) for x, y in corners]
    return placed if aside * up > 0 else placed[::-1]


def ring_outline(
    inner: float, outer: float, first: float, last: float, steps: int = 400
) -> Outline:
    """A piece of a ring between two angles, its arcs drawn as many short chords."""
    angles = [first + (last - first) * step / steps for step in range(steps + 1)]
    out = [(outer * math.cos(angle), outer * math.sin(angle)) for angle in angles]
    back = [(inner * math.cos(angle), inner * math.sin(angle)) for angle in reversed(angles)]
    return out + back


def flange_outline(
    ray: float, towards: int, start: float, length: float, thickness: float
) -> Outline:
    """A rectangle along a ray from the origin, on that side of it that `towards` tells."""
    cos, sin = math.cos(ray), math.sin(ray)
    corners = [
        (start, 0.0), (start + length, 0.0), (start + length, towards * thickness),
        (start, towards * thickness),
    ]
    placed = [(u * cos - v * sin, u * sin + v * cos) for u, v in corners]
    return placed if towards > 0 else placed[::-1]


def channel_outlines(channel: Channel, inner: float, *, right: bool, toes: Toes) -> list[Outline]:
    """A channel as one closed C, its web's inner face at `inner` from the middle."""
    d, w, b, t = channel.depth, channel.web, channel.flange, channel.flange_thickness
    assert d is not None
    assert w is not None
    assert b is not None
    assert t is not None
    # Drawn with its back at 0 and its toes towards +x, counter-clockwise.
    points = [(0.0, 0.0), (b, 0.0), (b, t), (w, t), (w, d - t), (b, d - t), (b, d), (0.0, d)]
    if toes is Toes.OUT:
        moved = [(inner + x, y) for x, y in points]
    else:
        moved = [(inner + w - x, y) for x, y in reversed(points)]
    if right:
        return [moved]
    return [[(-x, y) for x, y in reversed(moved)]]


ROLLED_OUTLINES = {
    RolledShape.I: lambda d, w, b, t: [
        (0, 0), (b, 0), (b, t), ((b + w) / 2, t), ((b + w) / 2, d - t), (b, d - t), (b, d), (0, d),
        (0, d - t), ((b - w) / 2, d - t), ((b - w) / 2, t), (0, t),
    ],
    RolledShape.CHANNEL: lambda d, w, b, t: [
        (0, 0), (b, 0), (b, t), (w, t), (w, d - t), (b, d - t), (b, d), (0, d),
    ],
    RolledShape.TEE: lambda d, w, b, t: [
        ((b - w) / 2, 0), ((b + w) / 2, 0), ((b + w) / 2, d - t), (b, d - t), (b, d), (0, d),
        (0, d - t), ((b - w) / 2, d - t),
    ],
    RolledShape.ANGLE: lambda d, w, b, t: [
        (0, 0), (w, 0), (w, d - t), (b, d - t), (b, d), (0, d),
    ],
}
