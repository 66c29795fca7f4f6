"""Columns: slenderness, the three methods' curves, and the load at which a straight bar buckles."""

import math

from eyebar.formula import Symbol, formula
from eyebar.resistance.rules import Rules
from eyebar.terms import Method

YIELD = Symbol("yield stress", "ksi", "yield_stress", low=20.0, high=50.0)
MODULUS = Symbol("modulus of elasticity of the metal", "ksi", "modulus", low=2.5e4, high=3.0e4)
SLENDERNESS = Symbol("slenderness", "1", "slenderness", low=5.0, high=250.0)
AREA = Symbol("area", "in2", "area", low=0.5, high=60.0)
PUSH = Symbol("push that the column may take", "kip")
STANDARD_COLUMN = (
    "Civil Engineering Formulas, ch. 10, p. 250, quoting the Standard Specifications, "
    "with the metal's own modulus"
)
LRFD_COLUMN = "LRFD Bridge Design Specifications 6.9.4.1, from memory, the metal's own modulus"


@formula(
    "s = K * L / r",
    result=Symbol("slenderness", "1"),
    K=Symbol("effective length over unsupported length", "1", "factor", low=0.5, high=2.0),
    L=Symbol("unsupported length", "in", "length", low=20.0, high=500.0),
    r=Symbol("radius of gyration", "in", "radius", low=0.5, high=8.0),
    source="definition",
)
def slenderness_ratio(factor: float, length: float, radius: float) -> float:
    """Slenderness of a column [1].

    Factor [1], lengths [in]; scalars or arrays. Limits: radius above 0.
    """
    return factor * length / radius


@formula(
    "P_e = pi**2 * E * A / s**2",
    result=Symbol("load at which the straight elastic column buckles", "kip"),
    E=MODULUS,
    A=AREA,
    s=SLENDERNESS,
    source="Euler",
)
def buckling_load(modulus: float, area: float, slenderness: float) -> float:
    """Elastic buckling load [kip].

    Modulus [ksi], area [in2], slenderness [1]; scalars or arrays. Limits: slenderness above 0.
    """
    return math.pi**2 * modulus * area / slenderness**2


@formula(
    "F_a = F_y / n * (1 - F_y * s**2 / (4 * pi**2 * E)) if s < sqrt(2 * pi**2 * E / F_y)"
    " else pi**2 * E / (n * s**2)",
    result=Symbol("allowable stress of the column", "ksi"),
    F_y=YIELD,
    n=Symbol("factor of safety", "1", "safety", low=1.5, high=2.5),
    s=SLENDERNESS,
    E=MODULUS,
    source=STANDARD_COLUMN,
)
def allowable_column_stress(
    yield_stress: float, safety: float, slenderness: float, modulus: float
) -> float:
    """Stress that a column may carry by allowable stress [ksi].

    Yield stress, modulus [ksi], factor of safety, slenderness [1]. Scalars. Limits: slenderness
    of 0 and more.
    """
    return column_stress(yield_stress, slenderness, modulus) / safety


@formula(
    "F_cr = F_y * (1 - F_y * s**2 / (4 * pi**2 * E)) if s < sqrt(2 * pi**2 * E / F_y)"
    " else pi**2 * E / s**2",
    result=Symbol("stress at which the column fails", "ksi"),
    F_y=YIELD,
    s=SLENDERNESS,
    E=MODULUS,
    source=STANDARD_COLUMN,
)
def failing_column_stress(yield_stress: float, slenderness: float, modulus: float) -> float:
    """Stress at which a column fails by load factor [ksi].

    Yield stress, modulus [ksi], slenderness [1]. Scalars. Limits: slenderness of 0 and more.
    """
    return column_stress(yield_stress, slenderness, modulus)


def column_stress(yield_stress: float, slenderness: float, modulus: float) -> float:
    """The Standard Specifications' curve of columns before any safety [ksi]."""
    square = slenderness**2
    if square < 2 * math.pi**2 * modulus / yield_stress:
        return yield_stress * (1 - yield_stress * square / (4 * math.pi**2 * modulus))
    return math.pi**2 * modulus / square


@formula(
    "F_n = 0.658**(F_y * s**2 / (pi**2 * E)) * F_y if pi**2 * E >= 0.44 * F_y * s**2"
    " else 0.877 * pi**2 * E / s**2",
    result=Symbol("nominal stress of the column", "ksi"),
    F_y=YIELD,
    s=SLENDERNESS,
    E=MODULUS,
    source=LRFD_COLUMN,
)
def nominal_column_stress(yield_stress: float, slenderness: float, modulus: float) -> float:
    """Stress at which a column fails by load and resistance [ksi].

    Yield stress, modulus [ksi], slenderness [1]. Scalars. Limits: slenderness of 0 and more.
    """
    square = slenderness**2
    if math.pi**2 * modulus >= 0.44 * yield_stress * square:
        return float(0.658 ** (yield_stress * square / (math.pi**2 * modulus))) * yield_stress
    return 0.877 * math.pi**2 * modulus / square


@formula(
    "P = F_a * A",
    result=PUSH,
    F_a=Symbol("allowable stress of the column", "ksi", "stress", low=2.0, high=20.0),
    A=AREA,
    source="definition",
)
def allowable_push(stress: float, area: float) -> float:
    """Push by allowable stress [kip].

    Stress [ksi], area [in2]; scalars or arrays. Limits: none.
    """
    return stress * area


@formula(
    "P = c * F_cr * A",
    result=PUSH,
    c=Symbol("part of the column's strength", "1", "part", low=0.8, high=1.0),
    F_cr=Symbol("stress at which the column fails", "ksi", "stress", low=2.0, high=50.0),
    A=AREA,
    source="Civil Engineering Formulas, ch. 10, p. 250, quoting the Standard Specifications",
)
def load_factor_push(part: float, stress: float, area: float) -> float:
    """Push by load factor [kip].

    Part [1], stress [ksi], area [in2]; scalars or arrays. Limits: none.
    """
    return part * stress * area


@formula(
    "P = psi * phi * F_n * A",
    result=PUSH,
    psi=Symbol("condition and system factor together", "1", "reduction", low=0.85, high=1.0),
    phi=Symbol("resistance factor of columns", "1", "factor", low=0.85, high=1.0),
    F_n=Symbol("nominal stress of the column", "ksi", "stress", low=2.0, high=50.0),
    A=AREA,
    source=LRFD_COLUMN,
)
def factored_push(reduction: float, factor: float, stress: float, area: float) -> float:
    """Push by load and resistance [kip].

    Factors [1], stress [ksi], area [in2]; scalars or arrays. Limits: none.
    """
    return reduction * factor * stress * area


def thick_column_stress(
    method: Method, slenderness: float, *, yield_stress: float, modulus: float
) -> float:
    """Stress at which a column of thick plates fails by the method, before any safety [ksi]."""
    if method is Method.LOAD_AND_RESISTANCE:
        return nominal_column_stress(yield_stress, slenderness, modulus)
    return failing_column_stress(yield_stress, slenderness, modulus)


def push_of_column(
    rules: Rules, area: float, slenderness: float, *, yield_stress: float, modulus: float
) -> float:
    """What a column of this area [in2] and slenderness [1] is worth by the rules [kip]."""
    match rules.method:
        case Method.ALLOWABLE_STRESS:
            stress = allowable_column_stress(yield_stress, rules.column, slenderness, modulus)
            return allowable_push(stress, area)
        case Method.LOAD_FACTOR:
            stress = failing_column_stress(yield_stress, slenderness, modulus)
            return load_factor_push(rules.column, stress, area)
        case Method.LOAD_AND_RESISTANCE:
            stress = nominal_column_stress(yield_stress, slenderness, modulus)
            return factored_push(rules.reduction, rules.column, stress, area)
