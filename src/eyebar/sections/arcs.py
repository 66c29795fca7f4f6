"""Closed forms of a round hollow column made of flanged segments: its curved walls.

A wall is a piece of a ring between two radii, as wide as a segment; its bisector is the ray from
the column's centre through its middle. All functions take plain numbers or arrays.
"""

import math

from eyebar.formula import Symbol, formula

GEOMETRY = "plane geometry, integrated in polar coordinates"

OUTER = Symbol("outer radius", "in", "outer", low=2.5, high=8.0)
INNER = Symbol("inner radius", "in", "inner", low=1.5, high=2.4)
HALF = Symbol("half the angle of a segment", "rad", "half_angle", low=0.3, high=0.8)


@formula(
    "a = pi / n",
    result=Symbol("half the angle of a segment", "rad"),
    n=Symbol("number of segments", "1", "segments", low=4.0, high=8.0),
    source="plane geometry",
)
def half_angle(segments: float) -> float:
    """Half the angle that each of so many equal segments takes of the round [rad].

    A number [1]; scalars or arrays. Limits: at least one. Source: plane geometry.
    """
    return math.pi / segments


@formula(
    "A = a * (R**2 - r**2)",
    result=Symbol("area of a segment's wall", "in2"),
    a=HALF,
    R=OUTER,
    r=INNER,
    source=GEOMETRY,
)
def arc_area(half_angle: float, outer: float, inner: float) -> float:
    """Area of a piece of a ring [in2].

    Half angle [rad], radii [in]; scalars or arrays. Limits: none. Source: plane geometry.
    """
    return half_angle * (outer**2 - inner**2)


@formula(
    "u = 2 * sin(a) * (R**3 - r**3) / (3 * a * (R**2 - r**2))",
    result=Symbol("distance of a wall's centre of gravity from the column's centre", "in"),
    a=HALF,
    R=OUTER,
    r=INNER,
    source=GEOMETRY,
)
def arc_centre(half_angle: float, outer: float, inner: float) -> float:
    """Distance of the centre of gravity of a piece of a ring from the ring's centre [in].

    Half angle [rad], radii [in]. Scalars. Limits: outer above inner radius, half angle above 0.
    Source: plane geometry.
    """
    whole = 3 * half_angle * (outer**2 - inner**2)
    return 2 * math.sin(half_angle) * (outer**3 - inner**3) / whole


@formula(
    "I_u = (R**4 - r**4) / 4 * (a + sin(a) * cos(a)) - a * (R**2 - r**2) * u**2",
    result=Symbol("inertia of a wall across its bisector", "in4"),
    a=HALF,
    R=OUTER,
    r=INNER,
    u=Symbol("its centre of gravity from the column's centre", "in", "centre", low=1.5, high=6.0),
    source=GEOMETRY,
)
def arc_inertia_across(
    half_angle: float, outer: float, inner: float, *, centre: float
) -> float:
    """Second moment of a piece of a ring along its bisector, about its own centre [in4].

    That is: about the axis through its centre that crosses the bisector. Half angle [rad], lengths
    [in]. Scalars. Limits: none. Source: plane geometry.
    """
    about_column = (outer**4 - inner**4) / 4 * (
        half_angle + math.sin(half_angle) * math.cos(half_angle)
    )
    return about_column - half_angle * (outer**2 - inner**2) * centre**2


@formula(
    "I_v = (R**4 - r**4) / 4 * (a - sin(a) * cos(a))",
    result=Symbol("inertia of a wall about its bisector", "in4"),
    a=HALF,
    R=OUTER,
    r=INNER,
    source=GEOMETRY,
)
def arc_inertia_along(half_angle: float, outer: float, inner: float) -> float:
    """Moment of inertia of a piece of a ring about its bisector [in4].

    Half angle [rad], radii [in]. Scalars. Limits: none. Source: plane geometry.
    """
    shape = half_angle - math.sin(half_angle) * math.cos(half_angle)
    return (outer**4 - inner**4) / 4 * shape


@formula(
    "I_x = I_1 * sin(q)**2 + I_2 * cos(q)**2",
    result=Symbol("inertia about the level axis of a part that is turned", "in4"),
    I_1=Symbol("its second moment along its own ray", "in4", "along", low=0.1, high=20.0),
    I_2=Symbol("its second moment across its own ray", "in4", "across", low=0.1, high=20.0),
    q=Symbol("angle of its ray from the level axis", "rad", "angle", low=0.0, high=6.3),
    source="turning of axes",
)
def turned_inertia(along: float, across: float, angle: float) -> float:
    """Moment of inertia about the level axis of a part whose ray stands at an angle [in4].

    Second moments of its area along and across its own ray, about its own centre [in4], angle
    [rad]. Scalars. Limits: none. Source: turning of axes.
    """
    return along * math.sin(angle) ** 2 + across * math.cos(angle) ** 2


@formula(
    "P = (I_1 - I_2) * sin(q) * cos(q)",
    result=Symbol("product of inertia of a part that is turned", "in4"),
    I_1=Symbol("its second moment along its own ray", "in4", "along", low=0.1, high=20.0),
    I_2=Symbol("its second moment across its own ray", "in4", "across", low=0.1, high=20.0),
    q=Symbol("angle of its ray from the level axis", "rad", "angle", low=0.0, high=6.3),
    source="turning of axes",
)
def turned_product(along: float, across: float, angle: float) -> float:
    """Product of inertia of a part whose ray stands at an angle, about its own centre [in4].

    Second moments along and across its own ray [in4], angle [rad]. Scalars. Limits: none. Source:
    turning of axes.
    """
    return (along - across) * math.sin(angle) * math.cos(angle)
