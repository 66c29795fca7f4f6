"""Two halves laced or battened into one column: what the ties between them take away.

The whole column bends more easily in the plane of its ties, because they stretch and bend under the
shear (Engesser). Where a plate closes one side, its stiffness in shear is left out, which is on the
safe side.
"""

import math

from eyebar.formula import Symbol, formula

MODULUS = Symbol("modulus of elasticity of the metal", "ksi", "modulus", low=2.5e4, high=3.0e4)
STIFFNESS = Symbol("stiffness in shear of the ties", "kip")
EULER = Symbol("buckling load with stiff ties", "kip", "buckling", low=10.0, high=5000.0)
TIES = Symbol("stiffness in shear of the ties", "kip", "tie_stiffness", low=50.0, high=20000.0)
ADVANCE = Symbol("advance of one lacing bar along the member", "in", "advance", low=3.0, high=20.0)
APART = Symbol("distance between the halves' centres", "in", "distance", low=5.0, high=20.0)
PLANES = Symbol("planes of ties", "1", "planes", low=1.0, high=2.0)
YIELD = Symbol("yield stress", "ksi", "yield_stress", low=20.0, high=50.0)
SLENDERNESS = Symbol(
    "slenderness were the ties stiff", "1", "slenderness", low=10.0, high=200.0
)
SHEAR = Symbol("shear in the ties over the thrust", "1")


@formula(
    "d = sqrt(a**2 + h**2)",
    result=Symbol("length of a lacing bar", "in"),
    a=ADVANCE,
    h=APART,
    source="plane geometry, the fastenings taken on the halves' centres",
)
def lacing_length(advance: float, distance: float) -> float:
    """Length of a lacing bar between its fastenings [in].

    Lengths [in]. Scalars. Limits: none.
    """
    return math.sqrt(advance**2 + distance**2)


@formula(
    "S_v = n * E * A_d * a * h**2 / d**3",
    result=STIFFNESS,
    n=PLANES,
    E=MODULUS,
    A_d=Symbol("area of a lacing bar", "in2", "bar_area", low=0.1, high=2.0),
    a=ADVANCE,
    h=APART,
    d=Symbol("length of a lacing bar", "in", "length", low=8.0, high=25.0),
    source="stretch of one bar under the shear, plane mechanics; Timoshenko, from memory",
)
def lacing_stiffness(
    planes: float, modulus: float, bar_area: float, *, advance: float, distance: float,
    length: float,
) -> float:
    """Stiffness in shear of single lacing [kip] (kip for an angle of 1).

    Planes [1], modulus [ksi], area [in2], lengths [in]; scalars or arrays. Limits: bars pinned at
    their ends, in both systems of the zigzag alike.
    """
    return planes * modulus * bar_area * advance * distance**2 / length**3


@formula(
    "S_v = 1 / (a * h / (12 * E * I_b * n) + a**2 / (24 * E * I_c))",
    result=STIFFNESS,
    a=Symbol("distance of battens, centre to centre", "in", "pitch", low=10.0, high=60.0),
    h=APART,
    E=MODULUS,
    I_b=Symbol("inertia of a batten in its plane", "in4", "batten_inertia", low=1.0, high=80.0),
    n=PLANES,
    I_c=Symbol(
        "lesser inertia of one half in the battens' plane", "in4", "half_inertia", low=0.3,
        high=20.0,
    ),
    source="Timoshenko, Theory of Elastic Stability, from memory",
)
def batten_stiffness(
    pitch: float, distance: float, *, modulus: float, batten_inertia: float, planes: float,
    half_inertia: float,
) -> float:
    """Stiffness in shear of batten plates [kip] (kip for an angle of 1).

    Lengths [in], modulus [ksi], inertias [in4], planes [1]; scalars or arrays. Limits: battens
    fastened stiffly, the halves bending between them.
    """
    bending = pitch * distance / (12 * modulus * batten_inertia * planes)
    return 1 / (bending + pitch**2 / (24 * modulus * half_inertia))


@formula(
    "s_m = s * sqrt(1 + P_e / S_v)",
    result=Symbol("slenderness with the ties' flexibility", "1"),
    s=SLENDERNESS,
    P_e=EULER,
    S_v=TIES,
    source="Engesser: P = P_e / (1 + P_e / S_v), from memory",
)
def tied_slenderness(slenderness: float, buckling: float, tie_stiffness: float) -> float:
    """Slenderness of a column whose ties yield to shear [1].

    Slenderness [1], loads [kip]. Scalars. Limits: stiffness above 0.
    """
    return slenderness * math.sqrt(1 + buckling / tie_stiffness)


@formula(
    "P_1 = P_e / (1 + P_e / S_v)",
    result=Symbol("buckling load with the ties' flexibility", "kip"),
    P_e=EULER,
    S_v=TIES,
    source="Engesser, from memory",
)
def tied_buckling_load(buckling: float, tie_stiffness: float) -> float:
    """Elastic buckling load of a column whose ties yield to shear [kip].

    Loads [kip]; scalars or arrays. Limits: stiffness above 0.
    """
    return buckling / (1 + buckling / tie_stiffness)


@formula(
    "v = 1 / (s + 10) + s * F_y / (100 * 3300 ksi)",
    result=SHEAR,
    s=SLENDERNESS,
    F_y=YIELD,
    source="Standard Specifications 10.16 in its older wording, "
    "V = (P/100) [100 / (L/r + 10) + (L/r) F_y / 3,300,000], from memory",
)
def older_shear(slenderness: float, yield_stress: float) -> float:
    """Shear in the ties of a column over its thrust, older methods [1].

    Slenderness [1], yield stress [ksi]; scalars or arrays. Limits: none.
    """
    return 1 / (slenderness + 10) + slenderness * yield_stress / (100 * 3300)


@formula(
    "v = 0.01 * (100 / (s + 10) + 8.8 * s * F_y / E)",
    result=SHEAR,
    s=SLENDERNESS,
    F_y=YIELD,
    E=MODULUS,
    source="LRFD Bridge Design Specifications 6.9.4.3, from memory",
)
def later_shear(slenderness: float, yield_stress: float, modulus: float) -> float:
    """Shear in the ties of a column over its thrust, load and resistance [1].

    Slenderness [1], yield stress, modulus [ksi]; scalars or arrays. Limits: none.
    """
    return 0.01 * (100 / (slenderness + 10) + 8.8 * slenderness * yield_stress / modulus)


@formula(
    "r = t / sqrt(12)",
    result=Symbol("radius of gyration of a flat bar", "in"),
    t=Symbol("thickness", "in", "thickness", low=0.1, high=1.0),
    source="plane geometry",
)
def flat_radius(thickness: float) -> float:
    """Least radius of gyration of a flat bar [in].

    Thickness [in]; scalars or arrays. Limits: none.
    """
    return thickness / math.sqrt(12)
