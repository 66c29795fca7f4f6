"""Moments in a bar under thrust, and what its section is worth in bending."""

import math

from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula
from eyebar.resistance.rules import Rules
from eyebar.terms import Method

THRUST = Symbol("thrust", "kip", "thrust", low=1.0, high=150.0)
MOMENT = Symbol("moment that the section may take", "kip in")
YIELD = Symbol("yield stress", "ksi", "yield_stress", low=20.0, high=50.0)
INERTIA = Symbol("moment of inertia", "in4", "inertia", low=5.0, high=900.0)
FIBRE = Symbol("distance of the compressed fibre", "in", "fibre", low=1.0, high=10.0)
OFFSET = Symbol("pin below the centre of gravity", "in", "offset", low=-2.0, high=3.0)


@formula(
    "M_w = gamma * A * g * L * H / 8",
    result=Symbol("moment of the bar's own weight at mid-length", "kip in"),
    gamma=Symbol("dead load factor", "1", "factor", low=0.9, high=1.5),
    A=Symbol("area as built", "in2", "area", low=0.5, high=60.0),
    g=Symbol("density", "lb/in3", "density", low=0.25, high=0.3),
    L=Symbol("length", "in", "length", low=60.0, high=500.0),
    H=Symbol("horizontal distance between the bar's ends", "in", "run", low=0.0, high=500.0),
    source="simple beam, the part of the weight across the bar",
)
def own_weight_moment(
    factor: float, area: float, *, density: float, length: float, run: float
) -> float:
    """Moment of a bar's own weight at mid-length, sagging [kip in].

    Factor [1], area [in2], density [lb/in3], lengths [in]; scalars or arrays. Limits: ends taken
    as hinges even where the bar runs on.
    """
    return factor * area * density / 1000 * length * run / 8


@formula(
    "e = e_0 + y_1 - y_0",
    result=Symbol("pin below the centre of gravity of what is left", "in"),
    e_0=Symbol("pin below the centre of gravity as built", "in", "as_built", low=-2.0, high=2.0),
    y_1=Symbol("height of the centre of gravity, as left", "in", "left", low=1.0, high=10.0),
    y_0=Symbol("height of the centre of gravity, as built", "in", "built", low=1.0, high=10.0),
    source="rust moves the centre of gravity, the pin stays",
)
def offset_left(as_built: float, left: float, built: float) -> float:
    """How far the pin lies below the centre of gravity of the section as it is left [in].

    Lengths [in]; scalars or arrays. Limits: the lower edge of the section as built still stands.
    """
    return as_built + left - built


@formula(
    "M = s * (M_w - P * e) + P * b",
    result=Symbol("moment at mid-length before it is amplified", "kip in"),
    s=Symbol("1 for sagging, -1 for bending up", "1", "sense", low=-1.0, high=1.0),
    M_w=Symbol("moment of the bar's own weight", "kip in", "weight_moment", low=0.0, high=80.0),
    P=THRUST,
    e=OFFSET,
    b=Symbol("crookedness in this plane", "in", "bow", low=0.0, high=2.0),
    source="statics: thrust below the centre bends the bar up; crookedness taken to the worse side",
)
def middle_moment(
    sense: float, weight_moment: float, *, thrust: float, offset: float, bow: float
) -> float:
    """Moment at mid-length in the plane of the truss, before amplification [kip in].

    Sense [1], moment [kip in], thrust [kip], lengths [in]; scalars or arrays. Limits: none.
    """
    return sense * (weight_moment - thrust * offset) + thrust * bow


@formula(
    "M = P * e",
    result=Symbol("moment of the thrust about the centre of gravity", "kip in"),
    P=THRUST,
    e=Symbol("distance of the thrust", "in", "distance", low=0.0, high=3.0),
    source="statics",
)
def thrust_moment(thrust: float, distance: float) -> float:
    """Moment of a thrust that runs beside the centre of gravity [kip in].

    Thrust [kip], distance [in]; scalars or arrays. Limits: none.
    """
    return thrust * distance


@formula(
    "M_r = c * F_y * I / y",
    result=MOMENT,
    c=Symbol("part of the yield stress allowed", "1", "part", low=0.5, high=1.0),
    F_y=YIELD,
    I=INERTIA,
    y=FIBRE,
    source="Manual for Bridge Evaluation 6B.5.2.1, compressed flange held, from memory",
)
def allowable_moment(part: float, yield_stress: float, inertia: float, fibre: float) -> float:
    """Moment by allowable stress [kip in].

    Part [1], yield stress [ksi], inertia [in4], fibre [in]; scalars or arrays. Limits: compressed
    flange held.
    """
    return part * yield_stress * inertia / fibre


@formula(
    "M_r = F_y * I / y",
    result=MOMENT,
    F_y=YIELD,
    I=INERTIA,
    y=FIBRE,
    source="Standard Specifications 10.48.2, compressed flange held, from memory",
)
def yield_moment(yield_stress: float, inertia: float, fibre: float) -> float:
    """Moment by load factor, at first yield [kip in].

    Yield stress [ksi], inertia [in4], fibre [in]; scalars or arrays. Limits: compressed flange
    held.
    """
    return yield_stress * inertia / fibre


@formula(
    "M_r = psi * phi * F_y * I / y",
    result=MOMENT,
    psi=Symbol("condition and system factor together", "1", "reduction", low=0.85, high=1.0),
    phi=Symbol("resistance factor", "1", "factor", low=0.5, high=1.0),
    F_y=YIELD,
    I=INERTIA,
    y=FIBRE,
    source="LRFD Bridge Design Specifications 6.12, compressed flange held, from memory",
)
def factored_moment(
    reduction: float, factor: float, *, yield_stress: float, inertia: float, fibre: float
) -> float:
    """Moment by load and resistance, at first yield [kip in].

    Factors [1], yield stress [ksi], inertia [in4], fibre [in]; scalars or arrays. Limits:
    compressed flange held.
    """
    return reduction * factor * yield_stress * inertia / fibre


@formula(
    "P_a = P_e / n",
    result=Symbol("buckling load that the amplification is taken with", "kip"),
    P_e=Symbol("elastic buckling load in this plane", "kip", "buckling", low=10.0, high=5000.0),
    n=Symbol("factor of safety", "1", "safety", low=1.5, high=2.5),
    source="Standard Specifications 10.36, from memory: F'_e = pi^2 E / (FS (K L / r)^2)",
)
def safe_buckling_load(buckling: float, safety: float) -> float:
    """Buckling load with its factor of safety, for amplification by allowable stress [kip].

    Load [kip], factor [1]; scalars or arrays. Limits: none.
    """
    return buckling / safety


AXIAL = Symbol("weight of the thrust in this line of the rule", "1", "axial", low=0.5, high=1.0)
BENDING = Symbol("weight of the moments in this line", "1", "bending", low=0.8, high=1.0)
COLUMN = Symbol("push of the column alone", "kip", "column", low=20.0, high=400.0)
MOMENT_X = Symbol("moment in the plane of the truss", "kip in", "moment", low=0.0, high=300.0)
STRENGTH_X = Symbol(
    "moment it may be, in that plane", "kip in", "moment_strength", low=99.0, high=900.0
)
STRENGTH_Y = Symbol(
    "moment it may be, out of the plane", "kip in", "side_strength", low=99.0, high=900.0
)
BUCKLING_X = Symbol("buckling load in that plane", "kip", "buckling", low=160.0, high=3000.0)
INTERACTION = (
    "Standard Specifications 10.36 and 10.54.2, LRFD Bridge Design Specifications 6.9.2.2 and "
    "4.5.3.2.2b with C_m = 1, from memory"
)


@formula(
    "u = a * P / P_c + k * M_x / (M_rx * (1 - P / P_x))",
    result=Symbol("use of thrust with bending at mid-length", "1"),
    a=AXIAL,
    P=THRUST,
    P_c=COLUMN,
    k=BENDING,
    M_x=MOMENT_X,
    M_rx=STRENGTH_X,
    P_x=BUCKLING_X,
    source=INTERACTION,
)
def use_in_one_plane(
    *, axial: float, thrust: float, column: float, bending: float, moment: float,
    moment_strength: float, buckling: float,
) -> float:
    """Use of a bar under thrust with an amplified moment, 1 when it is used up [1].

    Weights [1], loads [kip], moments [kip in]. Scalars. Limits: thrust below the buckling load
    (OutOfRange).
    """
    if not thrust < buckling:
        raise OutOfRange("thrust", f"{thrust:g} kip", "below the load at which the bar buckles")
    return axial * thrust / column + bending * moment / (moment_strength * (1 - thrust / buckling))


@formula(
    "u = a * P / P_c + k * (M_x / (M_rx * (1 - P / P_x)) + M_y / (M_ry * (1 - P / P_y)))",
    result=Symbol("use of thrust with bending at mid-length, in two planes", "1"),
    a=AXIAL,
    P=THRUST,
    P_c=COLUMN,
    k=BENDING,
    M_x=MOMENT_X,
    M_rx=STRENGTH_X,
    P_x=BUCKLING_X,
    M_y=Symbol("moment out of the plane", "kip in", "side_moment", low=0.0, high=300.0),
    M_ry=STRENGTH_Y,
    P_y=Symbol("buckling load out of the plane", "kip", "side_buckling", low=160.0, high=3000.0),
    source=INTERACTION + "; the second plane added",
)
def use_in_two_planes(
    *, axial: float, thrust: float, column: float, bending: float, moment: float,
    moment_strength: float, buckling: float, side_moment: float, side_strength: float,
    side_buckling: float,
) -> float:
    """Use of a bar under thrust with amplified moments in both planes [1].

    Weights [1], loads [kip], moments [kip in]. Scalars. Limits: thrust below both buckling loads
    (OutOfRange).
    """
    if not (thrust < buckling and thrust < side_buckling):
        raise OutOfRange("thrust", f"{thrust:g} kip", "below the load at which the bar buckles")
    in_plane = moment / (moment_strength * (1 - thrust / buckling))
    out_of_plane = side_moment / (side_strength * (1 - thrust / side_buckling))
    return axial * thrust / column + bending * (in_plane + out_of_plane)


AT_ENDS = Symbol("thrust at which the bar is used up at its pins", "kip")
END_COLUMN = Symbol(
    "push of the column, or of one too short to buckle", "kip", "column", low=20.0, high=400.0
)
BESIDE = Symbol("thrust beside the centre, in the plane", "in", "offset", low=0.0, high=3.0)
INTERACTION_AT_ENDS = (
    "Standard Specifications 10.36 and 10.54.2, LRFD Bridge Design Specifications 6.9.2.2, from "
    "memory; nothing is amplified at the pins, so that the use is proportional to the thrust"
)


@formula(
    "P = 1 / (a / P_c + k * e_x / M_rx)",
    result=AT_ENDS,
    a=AXIAL,
    P_c=END_COLUMN,
    k=BENDING,
    e_x=BESIDE,
    M_rx=STRENGTH_X,
    source=INTERACTION_AT_ENDS,
)
def thrust_at_ends(
    *, axial: float, column: float, bending: float, offset: float, moment_strength: float
) -> float:
    """Thrust at which a bar is used up at its pins, over or under its centre [kip].

    Weights [1], loads [kip], lengths [in], moments [kip in]; scalars or arrays. Limits: none.
    """
    return 1 / (axial / column + bending * offset / moment_strength)


@formula(
    "P = 1 / (a / P_c + k * (e_x / M_rx + e_y / M_ry))",
    result=AT_ENDS,
    a=AXIAL,
    P_c=END_COLUMN,
    k=BENDING,
    e_x=BESIDE,
    M_rx=STRENGTH_X,
    e_y=Symbol("thrust beside the centre, out of the plane", "in", "side_offset", low=0.0, high=2),
    M_ry=STRENGTH_Y,
    source=INTERACTION_AT_ENDS,
)
def thrust_at_ends_askew(
    *, axial: float, column: float, bending: float, offset: float, moment_strength: float,
    side_offset: float, side_strength: float,
) -> float:
    """Thrust at which a bar is used up at its pins, beside its centre in both planes [kip].

    Weights [1], loads [kip], lengths [in], moments [kip in]; scalars or arrays. Limits: none.
    """
    moments = offset / moment_strength + side_offset / side_strength
    return 1 / (axial / column + bending * moments)


@formula(
    "sigma = P / A * (1 + e * y / r**2 / cos(L / (2 * r) * sqrt(P / (E * A))))",
    result=Symbol("greatest stress by the secant formula", "ksi"),
    P=Symbol("thrust", "kip", "thrust", low=1.0, high=40.0),
    A=Symbol("area", "in2", "area", low=4.0, high=60.0),
    e=Symbol("offset of the thrust, crookedness with it", "in", "offset", low=0.0, high=4.0),
    y=FIBRE,
    r=Symbol("radius of gyration", "in", "radius", low=2.0, high=8.0),
    L=Symbol("effective length", "in", "length", low=60.0, high=250.0),
    E=Symbol("modulus of elasticity of the metal", "ksi", "modulus", low=2.5e4, high=3.0e4),
    source="secant formula, plane mechanics: mechanics of materials, ecoursesbook.com, section 9.3",
)
def secant_stress(
    thrust: float, area: float, *, offset: float, fibre: float, radius: float, length: float,
    modulus: float,
) -> float:
    """Greatest stress in a pinned bar whose thrust runs beside its centre [ksi].

    Thrust [kip], area [in2], lengths [in], modulus [ksi]. Scalars. Limits: thrust below the load
    at which the bar buckles (OutOfRange); weight left out.
    """
    angle = length / (2 * radius) * math.sqrt(thrust / (modulus * area))
    if not angle < math.pi / 2:
        raise OutOfRange("thrust", f"{thrust:g} kip", "below the load at which the bar buckles")
    return thrust / area * (1 + offset * fibre / radius**2 / math.cos(angle))


def moment_strength(rules: Rules, yield_stress: float, inertia: float, fibre: float) -> float:
    """What a section is worth in bending by the rules, at first yield [kip in]."""
    match rules.method:
        case Method.ALLOWABLE_STRESS:
            return allowable_moment(rules.bending, yield_stress, inertia, fibre)
        case Method.LOAD_FACTOR:
            return yield_moment(yield_stress, inertia, fibre)
        case Method.LOAD_AND_RESISTANCE:
            return factored_moment(
                rules.reduction, rules.bending, yield_stress=yield_stress, inertia=inertia,
                fibre=fibre,
            )
