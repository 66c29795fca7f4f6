"""Columns that fail by twisting: star struts, angles, tees, channels, single I-beams.

The stress at which the elastic bar twists, or bends and twists at once, is turned into the
slenderness of a bar that would bend at it; each method's column curve then takes that slenderness.
"""

import math

from eyebar.formula import Symbol, formula, note, procedure
from eyebar.resistance.roots import first_root
from eyebar.sections.twist import Twist

MODULUS = Symbol("modulus of elasticity of the metal", "ksi", "modulus", low=2.5e4, high=3.0e4)
SLENDERNESS = Symbol("slenderness", "1", "slenderness", low=20.0, high=200.0)
AREA = Symbol("area", "in2", "area", low=1.0, high=20.0)
RADIUS = Symbol(
    "radius of gyration about the shear centre", "in", "polar_radius", low=1.5, high=4.0
)
THIN_WALLED = "theory of thin-walled bars (Timoshenko), LRFD Bridge Design Specifications 6.9.4.1.3"
TWISTING = Symbol("stress at which the bar twists", "ksi", "twisting", low=5.0, high=200.0)
NEGLIGIBLE = 1e-9
"""A product of inertia that is a smaller part of the inertias comes from rounding."""


@formula(
    "G = E / 2.6",
    result=Symbol("shear modulus", "ksi"),
    E=MODULUS,
    source="E / (2 (1 + nu)), Poisson's ratio 0.3",
)
def shear_modulus(modulus: float) -> float:
    """Shear modulus of the metal [ksi].

    Modulus [ksi]; scalars or arrays. Limits: none.
    """
    return modulus / 2.6


@formula(
    "r_0 = sqrt((I_x + I_y) / A + x_0**2 + y_0**2)",
    result=Symbol("radius of gyration about the shear centre", "in"),
    I_x=Symbol("inertia about the level axis", "in4", "inertia", low=1.0, high=99.0),
    I_y=Symbol("inertia about the upright axis", "in4", "side_inertia", low=1.0, high=99.0),
    A=AREA,
    x_0=Symbol("shear centre beside the centre of gravity", "in", "aside", low=-2.0, high=2.0),
    y_0=Symbol("shear centre above the centre of gravity", "in", "above", low=-2.0, high=2.0),
    source="parallel-axis theorem",
)
def polar_radius(
    inertia: float, side_inertia: float, *, area: float, aside: float, above: float
) -> float:
    """Radius of gyration about the shear centre [in].

    Inertias [in4], area [in2], lengths [in]. Scalars. Limits: area above 0.
    """
    return math.sqrt((inertia + side_inertia) / area + aside**2 + above**2)


@formula(
    "F_z = (G * J + pi**2 * E * C_w / L**2) / (A * r_0**2)",
    result=Symbol("stress at which the bar twists", "ksi"),
    G=Symbol("shear modulus", "ksi", "rigidity", low=9000.0, high=12000.0),
    J=Symbol("torsion constant", "in4", "torsion", low=0.05, high=10.0),
    E=MODULUS,
    C_w=Symbol("warping constant", "in6", "warping", low=0.0, high=900.0),
    L=Symbol("length between points held against twisting", "in", "length", low=40.0, high=300.0),
    A=AREA,
    r_0=RADIUS,
    source=THIN_WALLED + ", from memory",
)
def twisting_stress(
    *, rigidity: float, torsion: float, modulus: float, warping: float, length: float, area: float,
    polar_radius: float,
) -> float:
    """Stress at which a bar twists about its shear centre, were that its centre [ksi].

    Moduli [ksi], constants [in4, in6], lengths [in], area [in2]; scalars or arrays. Limits: ends
    held against twisting, free to warp.
    """
    warped = math.pi**2 * modulus * warping / length**2
    return (rigidity * torsion + warped) / (area * polar_radius**2)


@formula(
    "F_e = pi**2 * E / s**2",
    result=Symbol("stress at which the elastic bar bends", "ksi"),
    E=MODULUS,
    s=SLENDERNESS,
    source="Euler",
)
def bending_stress(modulus: float, slenderness: float) -> float:
    """Stress at which a straight elastic bar buckles by bending [ksi].

    Modulus [ksi], slenderness [1]; scalars or arrays. Limits: slenderness above 0.
    """
    return math.pi**2 * modulus / slenderness**2


@formula(
    "F = (F_e + F_z) / (2 * H) * (1 - sqrt(1 - 4 * F_e * F_z * H / (F_e + F_z)**2))",
    result=Symbol("stress at which the bar bends and twists at once", "ksi"),
    F_e=Symbol("stress at which it bends about its axis of symmetry", "ksi", "buckling_stress",
               low=5.0, high=200.0),
    F_z=TWISTING,
    H=Symbol("1 less the square of the shear centre's distance over r_0", "1", "part", low=0.4,
             high=0.95),
    source=THIN_WALLED + ", from memory",
)
def bending_and_twisting(buckling_stress: float, twisting: float, part: float) -> float:
    """Stress at which a bar with one axis of symmetry bends about it and twists [ksi].

    Stresses [ksi], part [1]. Scalars. Limits: part above 0.
    """
    both = buckling_stress + twisting
    root = math.sqrt(1 - 4 * buckling_stress * twisting * part / both**2)
    return both / (2 * part) * (1 - root)


@formula(
    "H = 1 - (x_0**2 + y_0**2) / r_0**2",
    result=Symbol("1 less the square of the shear centre's distance over r_0", "1"),
    x_0=Symbol("shear centre beside the centre of gravity", "in", "aside", low=-1.0, high=1.0),
    y_0=Symbol("shear centre above the centre of gravity", "in", "above", low=-1.0, high=1.0),
    r_0=RADIUS,
    source=THIN_WALLED + ", from memory",
)
def twisting_part(aside: float, above: float, polar_radius: float) -> float:
    """How far bending and twisting go apart: 1 where shear centre and centre are one [1].

    Lengths [in]; scalars or arrays. Limits: none.
    """
    return 1 - (aside**2 + above**2) / polar_radius**2


@formula(
    "s = pi * sqrt(E / F)",
    result=Symbol("slenderness of a bar that bends at this stress", "1"),
    E=MODULUS,
    F=Symbol("stress at which the elastic bar fails", "ksi", "stress", low=5.0, high=200.0),
    source="Euler, solved for the slenderness",
)
def equal_slenderness(modulus: float, stress: float) -> float:
    """Slenderness at which a bar bends at the stress at which another twists [1].

    Modulus, stress [ksi]. Scalars. Limits: stress above 0.
    """
    return math.pi * math.sqrt(modulus / stress)


@procedure(
    "Bending and twisting about no axis of symmetry",
    source=THIN_WALLED + ", from memory",
    steps=(
        "the principal axes, and the shear centre's coordinates (u, v) along them",
        "the stresses F_u, F_v at which the bar bends about them, F_z at which it twists",
        "the least root of (F - F_u)(F - F_v)(F - F_z) - F^2 (F - F_v)(u/r_0)^2"
        " - F^2 (F - F_u)(v/r_0)^2 = 0, and what is left of it",
    ),
)
def slanting_twist(
    piece: Twist, *, modulus: float, twisting: float, polar_radius: float, length: float
) -> float:
    """Stress at which a bar without symmetry (an angle, a star of two) bends and twists [ksi].

    Modulus, stress [ksi], lengths [in]. Scalars. Limits: the same length about both axes.
    """
    turn = 0.5 * math.atan2(-2 * piece.product, piece.i_x - piece.i_y)
    cos, sin = math.cos(turn), math.sin(turn)
    greatest = piece.i_x * cos**2 + piece.i_y * sin**2 - 2 * piece.product * sin * cos
    least = piece.i_x + piece.i_y - greatest
    u, v = piece.aside * cos + piece.above * sin, piece.above * cos - piece.aside * sin
    about_u, about_v = (
        bending_stress(modulus, length / math.sqrt(inertia / piece.area))
        for inertia in (greatest, least)
    )
    coefficients = _cubic(about_u, about_v, twisting, (u / polar_radius, v / polar_radius))
    found = first_root(coefficients, min(about_u, about_v, twisting))
    stress = min(about_u, about_v, twisting) if found is None else found
    note("stress at which the bar bends and twists", "F", stress, "ksi")
    c0, c1, c2, c3 = coefficients
    left = c0 + stress * (c1 + stress * (c2 + stress * c3))
    note("what is left of the cubic, over its constant", "r", left / c0, "1")
    return stress


def _cubic(
    about_u: float, about_v: float, twisting: float, centre: tuple[float, float]
) -> tuple[float, float, float, float]:
    """The cubic with its sign turned, above zero at F = 0."""
    p, q = centre[0] ** 2, centre[1] ** 2
    return (
        about_u * about_v * twisting,
        -(about_u * about_v + about_u * twisting + about_v * twisting),
        about_u + about_v + twisting - about_v * p - about_u * q,
        -(1 - p - q),
    )


def least_twisting_stress(
    piece: Twist, *, modulus: float, in_plane: float, out_of_plane: float, length: float
) -> float:
    """Stress at which one open piece twists, or bends and twists at once [ksi].

    `in_plane`, `out_of_plane`: its slenderness about the level and the upright axis [1]; `length`:
    the longer of its unsupported lengths [in], for twisting and about slanting axes.
    """
    radius = polar_radius(
        piece.i_x, piece.i_y, area=piece.area, aside=piece.aside, above=piece.above
    )
    twisting = twisting_stress(
        rigidity=shear_modulus(modulus), torsion=piece.torsion, modulus=modulus,
        warping=piece.warping, length=length, area=piece.area, polar_radius=radius,
    )
    if abs(piece.product) > NEGLIGIBLE * (piece.i_x + piece.i_y):
        return slanting_twist(
            piece, modulus=modulus, twisting=twisting, polar_radius=radius, length=length
        )
    return _symmetrical(piece, twisting, radius, bending_stress(
        modulus, in_plane if abs(piece.aside) > abs(piece.above) else out_of_plane
    ))


def _symmetrical(piece: Twist, twisting: float, radius: float, bending: float) -> float:
    """A piece bends about its axis of symmetry, on which the shear centre lies, and twists."""
    part = twisting_part(piece.aside, piece.above, radius)
    return twisting if part > 1 - NEGLIGIBLE else bending_and_twisting(bending, twisting, part)
