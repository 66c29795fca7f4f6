"""Curves on which the joints of a chord lie."""

import math

from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula

_SYMBOLS = {
    "x": Symbol("distance from the end of the curve", "in", "distance", low=0.0, high=200.0),
    "s": Symbol("distance between the ends of the curve", "in", "curve_span", 400.0, 2000.0),
    "r": Symbol("rise of the curve at its crown", "in", "rise", low=20.0, high=190.0),
}


@formula(
    "y = 4 * r * x * (s - x) / s**2",
    result=Symbol("height of the curve over the line between its ends", "in"),
    source="geometry of the parabola whose crown lies over the middle",
    **_SYMBOLS,
)
def parabola(distance: float, curve_span: float, rise: float) -> float:
    """Height of a parabola over the line between its ends [in].

    Distance from an end, span and rise [in]. Scalars or arrays. Limits: none.
    """
    return 4.0 * rise * distance * (curve_span - distance) / curve_span**2


@formula(
    "R = s**2 / (8 * r) + r / 2",
    result=Symbol("radius of the circle", "in"),
    s=_SYMBOLS["s"], r=_SYMBOLS["r"],
    source="geometry: the rise and the half span are sides of a right triangle with the radius",
)
def circle_radius(curve_span: float, rise: float) -> float:
    """Radius of the circle through both ends of a curve and its crown [in].

    Span and rise [in]. Scalars or arrays. Limits: none.
    """
    return curve_span**2 / (8.0 * rise) + rise / 2.0


@formula(
    "y = sqrt(R**2 - (x - s / 2)**2) - (R - r)",
    result=Symbol("height of the curve over the line between its ends", "in"),
    R=Symbol("radius of the circle", "in", "radius", low=2000.0, high=9000.0),
    source="geometry of the circle whose crown lies over the middle",
    **_SYMBOLS,
)
def circle(distance: float, curve_span: float, rise: float, *, radius: float) -> float:
    """Height of a circle over the line between its ends [in].

    Distance from an end, span, rise and radius [in]. Scalars. Limits: inside the circle
    (OutOfRange).
    """
    beside = distance - curve_span / 2.0
    if abs(beside) > radius:
        raise OutOfRange("distance from the crown", f"{abs(beside):g} in",
                         f"no more than the radius, {radius:g} in")
    return math.sqrt(radius**2 - beside**2) - (radius - rise)
