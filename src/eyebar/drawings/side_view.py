"""A vehicle from the side, to scale along the road: wheels at its axles, a plain body over them."""

from collections.abc import Sequence

from eyebar.drawings.ink import FINE, MIDDLE, Circle, Ink, Plate
from eyebar.drawings.lettering import INK, PAPER

WHEEL_IN = 20.0
"""Radius of a wheel [in], where the scale lets it be seen."""
BODY_FT = 2.5
"""How far the body stands out beyond the outer axles [ft]."""


def side_view(
    xs: Sequence[float], level: float, units_per_foot: float, *, colour: str = INK
) -> tuple[tuple[Ink, ...], float]:
    """The vehicle with its axles at these places of the sheet, standing on a level; and its top."""
    wheel = max(1.8, min(WHEEL_IN / 12.0 * units_per_foot, 12.0))
    out = BODY_FT * units_per_foot
    high = max(14.0, min(7.0 * units_per_foot, 56.0))
    top = level - wheel * 1.2 - high
    ink: list[Ink] = [Plate(
        left=min(xs) - out, right=max(xs) + out, top=top, bottom=level - wheel * 1.2, round=3.0,
        fill=PAPER, weight=MIDDLE, colour=colour,
    )]
    ink += [
        Circle(centre=(x, level - wheel), radius=wheel, fill=PAPER, weight=FINE, colour=colour)
        for x in xs
    ]
    return tuple(ink), top
