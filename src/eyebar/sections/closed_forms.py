"""Area, centre of gravity and moments of inertia of plates, rods and rolled shapes, in closed form.

Flanges known by their mean thickness alone enter with it: the area is then exact, and the moment of
inertia of an I-beam with the usual slope of 1 in 6 comes out about 0.2 % too large; `tapered` takes
two thicknesses. Fillets are left out, which is on the safe side. All functions take plain numbers
or arrays.
"""

import math

from eyebar.formula import Symbol, formula

MECHANICS = "plane geometry, parallel-axis theorem"

AREA = "area"
INERTIA = "moment of inertia"
DEPTH = Symbol("depth", "in", "depth")
WEB = Symbol("web thickness", "in", "web")
FLANGE = Symbol("width of flange", "in", "flange")
FLANGE_THICKNESS = Symbol("mean flange thickness", "in", "flange_thickness")


@formula(
    "r = sqrt(I / A)",
    result=Symbol("radius of gyration", "in"),
    I=Symbol(INERTIA, "in4", "inertia"),
    A=Symbol(AREA, "in2", "area"),
    source=MECHANICS,
)
def radius_of_gyration(inertia: float, area: float) -> float:
    """Radius of gyration of a section [in].

    Inertia [in4], area [in2]; scalars or arrays. Limits: inertia 0 and more, area above 0.
    Source: definition.
    """
    root: float = (inertia / area) ** 0.5
    return root


@formula(
    "A = pi * d**2 / 4",
    result=Symbol(AREA, "in2"),
    d=Symbol("diameter", "in", "diameter"),
    source=MECHANICS,
)
def round_area(diameter: float) -> float:
    """Area of a round rod [in2].

    Diameter [in]; scalars or arrays. Limits: 0 and more. Source: geometry.
    """
    return math.pi * diameter**2 / 4


@formula(
    "I = pi * d**4 / 64",
    result=Symbol(INERTIA, "in4"),
    d=Symbol("diameter", "in", "diameter"),
    source=MECHANICS,
)
def round_inertia(diameter: float) -> float:
    """Moment of inertia of a round rod [in4].

    Diameter [in]; scalars or arrays. Limits: 0 and more. Source: geometry.
    """
    return math.pi * diameter**4 / 64


@formula(
    "A = b * h",
    result=Symbol(AREA, "in2"),
    b=Symbol("width", "in", "width"),
    h=Symbol("height", "in", "height"),
    source=MECHANICS,
)
def rectangle_area(width: float, height: float) -> float:
    """Area of a rectangle [in2].

    Width, height [in]; scalars or arrays. Limits: 0 and more. Source: geometry.
    """
    return width * height


@formula(
    "I = b * h**3 / 12",
    result=Symbol(INERTIA, "in4"),
    b=Symbol("width along the axis", "in", "width"),
    h=Symbol("height across the axis", "in", "height"),
    source=MECHANICS,
)
def rectangle_inertia(width: float, height: float) -> float:
    """Moment of inertia of a rectangle [in4].

    Width along and height across the axis [in]; scalars or arrays. Limits: 0 and more. Source:
    geometry.
    """
    return width * height**3 / 12


@formula(
    "A = d * t_w + 2 * (b - t_w) * t_f",
    result=Symbol("area of one channel", "in2"),
    d=DEPTH,
    t_w=WEB,
    b=FLANGE,
    t_f=FLANGE_THICKNESS,
    source=MECHANICS,
)
def channel_area(depth: float, web: float, flange: float, flange_thickness: float) -> float:
    """Area of a channel [in2].

    Depth, web, flange from the back of the web, its mean thickness [in]; scalars or arrays.
    Limits: the flange is wider than the web is thick. Source: geometry.
    """
    return depth * web + 2 * (flange - web) * flange_thickness


@formula(
    "I = t_w * d**3 / 12 + (b - t_w) * t_f**3 / 6 + (b - t_w) * t_f * (d - t_f)**2 / 2",
    result=Symbol("moment of inertia of one channel, axis across the web", "in4"),
    d=DEPTH,
    t_w=WEB,
    b=FLANGE,
    t_f=FLANGE_THICKNESS,
    source=MECHANICS,
)
def channel_inertia(depth: float, web: float, flange: float, flange_thickness: float) -> float:
    """Moment of inertia of a channel about the axis that cuts its web at mid-depth [in4].

    Depth, web, flange from the back of the web, its mean thickness [in]; scalars or arrays.
    Limits: the flange is wider than the web is thick. Source: parallel-axis theorem.
    """
    projection = flange - web
    return (
        web * depth**3 / 12
        + projection * flange_thickness**3 / 6
        + projection * flange_thickness * (depth - flange_thickness) ** 2 / 2
    )


@formula(
    "x = (d * t_w**2 / 2 + (b - t_w) * t_f * (b + t_w)) / (d * t_w + 2 * (b - t_w) * t_f)",
    result=Symbol("centre of gravity of one channel, from the back of its web", "in"),
    d=DEPTH,
    t_w=WEB,
    b=FLANGE,
    t_f=FLANGE_THICKNESS,
    source=MECHANICS,
)
def channel_centre(depth: float, web: float, flange: float, flange_thickness: float) -> float:
    """Distance of a channel's centre of gravity from the back of its web [in].

    Depth, web, flange from the back of the web, its mean thickness [in]; scalars or arrays.
    Limits: the flange is wider than the web is thick. Source: moments of area.
    """
    flanges = (flange - web) * flange_thickness
    return (depth * web**2 / 2 + flanges * (flange + web)) / (depth * web + 2 * flanges)


@formula(
    "I = d * t_w**3 / 12 + d * t_w * (x - t_w / 2)**2 + t_f * (b - t_w)**3 / 6"
    " + 2 * (b - t_w) * t_f * ((b + t_w) / 2 - x)**2",
    result=Symbol("moment of inertia of one channel, axis along the web", "in4"),
    d=DEPTH,
    t_w=WEB,
    b=FLANGE,
    t_f=FLANGE_THICKNESS,
    x=Symbol("centre of gravity from the back of the web", "in", "centre"),
    source=MECHANICS,
)
def channel_side_inertia(
    depth: float, web: float, flange: float, flange_thickness: float, *, centre: float
) -> float:
    """Moment of inertia of a channel about the axis through its centre along its web [in4].

    Depth, web, flange from the back of the web, its mean thickness [in], centre [in]; scalars
    or arrays. Limits: the flange is wider than the web is thick. Source: parallel-axis theorem.
    """
    projection = flange - web
    return (
        depth * web**3 / 12
        + depth * web * (centre - web / 2) ** 2
        + flange_thickness * projection**3 / 6
        + 2 * projection * flange_thickness * ((flange + web) / 2 - centre) ** 2
    )


@formula(
    "I = d * t_w**3 / 12 + t_f * (b**3 - t_w**3) / 6",
    result=Symbol("moment of inertia of an I-beam, axis along the web", "in4"),
    d=DEPTH,
    t_w=WEB,
    b=FLANGE,
    t_f=FLANGE_THICKNESS,
    source=MECHANICS,
)
def i_side_inertia(depth: float, web: float, flange: float, flange_thickness: float) -> float:
    """Moment of inertia of an I-beam about its web [in4].

    Depth, web, whole width of flange, its mean thickness [in]; scalars or arrays. Limits: the
    flange is wider than the web is thick. Source: differences of rectangles.
    """
    return depth * web**3 / 12 + flange_thickness * (flange**3 - web**3) / 6


@formula(
    "A = d * t_w + (b - t_w) * t_f",
    result=Symbol("area of an angle or tee", "in2"),
    d=DEPTH,
    t_w=WEB,
    b=FLANGE,
    t_f=FLANGE_THICKNESS,
    source=MECHANICS,
)
def angle_area(depth: float, web: float, flange: float, flange_thickness: float) -> float:
    """Area of an angle or a tee [in2].

    Upright leg (stem) d x t_w, level leg (flange) b x t_f [in]; scalars or arrays. Limits: each
    leg is longer than the other is thick. Source: geometry.
    """
    return depth * web + (flange - web) * flange_thickness


@formula(
    "y = (t_w * d**2 / 2 + (b - t_w) * t_f**2 / 2) / A",
    result=Symbol("centre of gravity, from the outer face of the level leg", "in"),
    d=DEPTH,
    t_w=WEB,
    b=FLANGE,
    t_f=FLANGE_THICKNESS,
    A=Symbol(AREA, "in2", "area"),
    source=MECHANICS,
)
def angle_height(
    depth: float, web: float, flange: float, flange_thickness: float, *, area: float
) -> float:
    """Distance of the centre of an angle or tee from its flange's outer face [in].

    Upright leg (stem) d x t_w, level leg (flange) b x t_f [in], area [in2]; scalars or arrays.
    Limits: area above 0. Source: moments of area.
    """
    return (web * depth**2 / 2 + (flange - web) * flange_thickness**2 / 2) / area


@formula(
    "I = t_w * d**3 / 12 + d * t_w * (d / 2 - y)**2 + (b - t_w) * t_f**3 / 12"
    " + (b - t_w) * t_f * (y - t_f / 2)**2",
    result=Symbol("moment of inertia about the axis along the flange", "in4"),
    d=DEPTH,
    t_w=WEB,
    b=FLANGE,
    t_f=FLANGE_THICKNESS,
    y=Symbol("centre of gravity from the flange's outer face", "in", "height"),
    source=MECHANICS,
)
def angle_inertia(
    depth: float, web: float, flange: float, flange_thickness: float, *, height: float
) -> float:
    """Moment of inertia of an angle or tee about the axis along its flange [in4].

    Upright leg (stem) d x t_w, level leg (flange) b x t_f [in], height [in]; scalars or arrays.
    Limits: each leg is longer than the other is thick. Source: parallel-axis theorem.
    """
    projection = flange - web
    return (
        web * depth**3 / 12
        + depth * web * (depth / 2 - height) ** 2
        + projection * flange_thickness**3 / 12
        + projection * flange_thickness * (height - flange_thickness / 2) ** 2
    )


@formula(
    "P = d * t_w * (d / 2 - y) * (t_w / 2 - x)"
    " + (b - t_w) * t_f * (t_f / 2 - y) * ((b + t_w) / 2 - x)",
    result=Symbol("product of inertia of an angle", "in4"),
    d=DEPTH,
    t_w=WEB,
    b=FLANGE,
    t_f=FLANGE_THICKNESS,
    x=Symbol("centre of gravity from the upright leg's outer face", "in", "side"),
    y=Symbol("centre of gravity from the level leg's outer face", "in", "height"),
    source=MECHANICS,
)
def angle_product(
    depth: float, web: float, flange: float, flange_thickness: float, *, side: float,
    height: float,
) -> float:
    """Product of inertia of an angle about axes along its legs through its centre [in4].

    Upright leg (stem) d x t_w, level leg (flange) b x t_f [in], side, height [in]; scalars or
    arrays. Limits: each leg is longer than the other is thick. Source: parallel-axis theorem.
    """
    return depth * web * (depth / 2 - height) * (web / 2 - side) + (
        flange - web
    ) * flange_thickness * (flange_thickness / 2 - height) * ((flange + web) / 2 - side)


@formula(
    "I_z = (I_x + I_y) / 2 - sqrt(((I_x - I_y) / 2)**2 + P**2)",
    result=Symbol("least moment of inertia", "in4"),
    I_x=Symbol("moment of inertia about the level axis", "in4", "inertia"),
    I_y=Symbol("moment of inertia about the upright axis", "in4", "side_inertia"),
    P=Symbol("product of inertia", "in4", "product"),
    source="principal axes (Mohr's circle)",
)
def least_inertia(inertia: float, side_inertia: float, product: float) -> float:
    """Least moment of inertia of a section, about whichever axis that is [in4].

    Inertias and product [in4]; scalars or arrays. Limits: inertias of 0 and more. Source:
    Mohr's circle.
    """
    half = (inertia - side_inertia) / 2
    radius: float = (half**2 + product**2) ** 0.5
    return (inertia + side_inertia) / 2 - radius
