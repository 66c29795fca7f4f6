"""Flanges that grow thicker towards the web: I-beams and channels as they were rolled.

Old beams are known by depth, web, width of flange and the flange's thickness at its edge and at the
web; properties made of these miss those of the mills' tables by about 0.1 % (fillets are left out,
on the safe side). All functions take plain numbers or arrays; a flange as thick at its edge as at
its web gives the closed forms for flanges of one thickness.
"""

from eyebar.formula import Symbol, formula

GEOMETRY = "plane geometry, integrated over the trapezoids of the flanges"

DEPTH = Symbol("depth", "in", "depth", low=3.0, high=24.0)
WEB = Symbol("web thickness", "in", "web", low=0.2, high=1.0)
FLANGE = Symbol("width of flange", "in", "flange", low=2.0, high=8.0)
EDGE = Symbol("thickness of the flange at its edge", "in", "flange_edge", low=0.1, high=0.7)
AT_WEB = Symbol("thickness of the flange at the web", "in", "flange_at_web", low=0.2, high=1.2)
AREA = Symbol("area", "in2", "area", low=1.0, high=40.0)


@formula(
    "t_f = (t_e + t_r) / 2",
    result=Symbol("mean thickness of a flange", "in"),
    t_e=EDGE,
    t_r=AT_WEB,
    source="plane geometry",
)
def mean_thickness(flange_edge: float, flange_at_web: float) -> float:
    """Mean thickness of a tapered flange, which gives its area [in].

    Lengths [in]; scalars or arrays. Limits: none. Source: plane geometry.
    """
    return (flange_edge + flange_at_web) / 2


@formula(
    "I = (b * d**3 - (b - t_w) * (h + l) * (h**2 + l**2) / 4) / 12",
    result=Symbol("moment of inertia of an I-beam or a channel, axis across the web", "in4"),
    d=DEPTH,
    t_w=WEB,
    b=FLANGE,
    h=Symbol("distance between the flanges' inner faces at their edges", "in", "at_edges",
             low=2.0, high=23.0),
    l=Symbol("distance between the flanges' inner faces at the web", "in", "clear", low=1.5,
             high=22.0),
    source="a rectangle less the trapezoids beside the web; so the mills' handbooks, from memory",
)
def tapered_inertia(
    depth: float, web: float, flange: float, *, at_edges: float, clear: float
) -> float:
    """Moment of inertia about the axis that cuts the web at mid-depth, with its taper [in4].

    Depth, web, whole width of flange, distances between the inner faces [in]; scalars or arrays.
    Limits: the flange is wider than the web is thick. Source: plane geometry.
    """
    void = (flange - web) * (at_edges + clear) * (at_edges**2 + clear**2) / 4
    return (flange * depth**3 - void) / 12


@formula(
    "l = d - 2 * t",
    result=Symbol("distance between the flanges' inner faces", "in"),
    d=DEPTH,
    t=Symbol("thickness of the flange there", "in", "thickness", low=0.1, high=1.2),
    source="plane geometry",
)
def between_flanges(depth: float, thickness: float) -> float:
    """Distance between the inner faces of two flanges [in].

    Lengths [in]; scalars or arrays. Limits: none. Source: plane geometry.
    """
    return depth - 2 * thickness


@formula(
    "x = (d * t_w**2 / 2 + p * ((t_e + t_r) * t_w + p * (2 * t_e + t_r) / 3)) / A",
    result=Symbol("centre of gravity of one channel, from the back of its web", "in"),
    d=DEPTH,
    t_w=WEB,
    p=Symbol("projection of the flange from the web's face", "in", "projection", low=1.0, high=4.0),
    t_e=EDGE,
    t_r=AT_WEB,
    A=AREA,
    source=GEOMETRY,
)
def tapered_centre(
    depth: float, web: float, projection: float, *, flange_edge: float, flange_at_web: float,
    area: float,
) -> float:
    """Distance of a channel's centre of gravity from the back of its web, with its taper [in].

    Lengths [in], area [in2]; scalars or arrays. Limits: area above 0. Source: moments of area.
    """
    beside = (flange_edge + flange_at_web) * web
    beyond = projection * (2 * flange_edge + flange_at_web) / 3
    return (depth * web**2 / 2 + projection * (beside + beyond)) / area


@formula(
    "I_f = t_r * ((a + p)**3 - a**3) / 3"
    " - (t_r - t_e) * (a**2 * p / 2 + 2 * a * p**2 / 3 + p**3 / 4)",
    result=Symbol("inertia of one flange's projection about an axis along the web", "in4"),
    a=Symbol("distance of the axis from the root of the projection", "in", "root", low=0.1,
             high=1.0),
    p=Symbol("projection of the flange", "in", "projection", low=1.0, high=4.0),
    t_e=EDGE,
    t_r=AT_WEB,
    source=GEOMETRY,
)
def flange_side_inertia(
    root: float, projection: float, *, flange_edge: float, flange_at_web: float
) -> float:
    """Inertia of a tapered projection about an axis along the web, not through its centre [in4].

    Lengths [in]; scalars or arrays. Limits: none. Source: plane geometry.
    """
    whole = flange_at_web * ((root + projection) ** 3 - root**3) / 3
    taken = root**2 * projection / 2 + 2 * root * projection**2 / 3 + projection**3 / 4
    return whole - (flange_at_web - flange_edge) * taken


@formula(
    "I = d * t_w**3 / 3 + 2 * I_f - A * x**2",
    result=Symbol("moment of inertia of one channel, axis along the web", "in4"),
    d=DEPTH,
    t_w=WEB,
    I_f=Symbol("inertia of one flange's projection about the back of the web", "in4",
               "flange_inertia", low=1.0, high=40.0),
    A=AREA,
    x=Symbol("centre of gravity from the back of the web", "in", "centre", low=0.2, high=1.5),
    source="parallel-axis theorem",
)
def tapered_channel_side(
    depth: float, web: float, flange_inertia: float, *, area: float, centre: float
) -> float:
    """Moment of inertia of a channel about the axis along its web through its centre [in4].

    Lengths [in], inertia [in4], area [in2]; scalars or arrays. Limits: none. Source:
    parallel-axis theorem.
    """
    return depth * web**3 / 3 + 2 * flange_inertia - area * centre**2


@formula(
    "I = d * t_w**3 / 12 + 4 * I_f",
    result=Symbol("moment of inertia of an I-beam, axis along the web", "in4"),
    d=DEPTH,
    t_w=WEB,
    I_f=Symbol("inertia of one half flange about the middle of the web", "in4", "flange_inertia",
               low=1.0, high=40.0),
    source="sum of parts",
)
def tapered_i_side(depth: float, web: float, flange_inertia: float) -> float:
    """Moment of inertia of an I-beam about its web, with its taper [in4].

    Lengths [in], inertia [in4]; scalars or arrays. Limits: none. Source: plane geometry.
    """
    return depth * web**3 / 12 + 4 * flange_inertia
