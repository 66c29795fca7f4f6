"""Beams of metal in bending: the stress that a flange held, or not held, may bear.

Every strength is a stress on the elastic section modulus [ksi], so that a plastic moment stands
here as F_y Z / S. Wrought iron enters with its own modulus.
"""

import math

from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.resistance.rules import Rules
from eyebar.sections.beams import BeamSection
from eyebar.terms import Method

YIELD = Symbol("yield stress", "ksi", "yield_stress", low=20.0, high=50.0)
MODULUS = Symbol("modulus of elasticity of the metal", "ksi", "modulus", low=2.5e4, high=3.0e4)
STRESS = Symbol("bending stress that the beam may bear", "ksi")
BUCKLING = Symbol("bending stress at which the beam turns over", "ksi", "turning", low=5.0,
                  high=90.0)
PART = Symbol("part of the yield stress", "1", "part", low=0.3, high=1.0)
UNHELD = Symbol("length over which nothing holds the compressed flange", "in", "unheld", low=30.0,
                high=300.0)
RADIUS_T = Symbol("radius of the compressed flange with a third of its web", "in", "flange_radius",
                  low=0.6, high=3.0)
LRFD = "LRFD Bridge Design Specifications 6.10.8.2, from memory"


@formula(
    "F = c * F_y",
    result=STRESS,
    c=PART,
    F_y=YIELD,
    source="Manual for Bridge Evaluation 6B.5.2.1, from memory",
)
def part_of_yield(part: float, yield_stress: float) -> float:
    """Stress as a part of the yield stress [ksi].

    Part [1], stress [ksi]; scalars or arrays. Limits: none.
    """
    return part * yield_stress


@formula(
    "F_t = pi * E * I_f / (L_b * S) * sqrt(0.772 * J / I_f + (pi * h / L_b)**2)",
    result=Symbol("bending stress at which the beam turns over", "ksi"),
    E=MODULUS,
    I_f=Symbol("inertia of the compressed flange about the upright axis", "in4", "flange_inertia",
               low=0.5, high=60.0),
    L_b=UNHELD,
    S=Symbol("section modulus", "in3", "section_modulus", low=5.0, high=120.0),
    J=Symbol("torsion constant", "in4", "torsion", low=0.05, high=10.0),
    h=Symbol("depth", "in", "height", low=4.0, high=30.0),
    source="Standard Specifications 10.32.1 and 10.48.4.1 with C_b 1 and the metal's own modulus: "
    "91,000,000 is pi times 29,000,000 psi, from memory; Timoshenko's beam of two flanges",
)
def turning_stress(
    *, modulus: float, flange_inertia: float, unheld: float, section_modulus: float,
    torsion: float, height: float,
) -> float:
    """Bending stress at which an elastic beam turns over sideways [ksi].

    Modulus [ksi], inertias [in4], lengths [in], section modulus [in3]. Scalars. Limits: moment
    alike over the length (the safe side).
    """
    root = math.hypot(math.sqrt(0.772 * torsion / flange_inertia), math.pi * height / unheld)
    return math.pi * modulus * flange_inertia / (unheld * section_modulus) * root


@formula(
    "F = min(c * F_y, F_t / n)",
    result=STRESS,
    c=PART,
    F_y=YIELD,
    F_t=BUCKLING,
    n=Symbol("factor of safety", "1", "safety", low=1.2, high=2.0),
    source="Standard Specifications Table 10.32.1A, Manual for Bridge Evaluation 6B.5.2.1, "
    "from memory",
)
def allowable_not_held(part: float, yield_stress: float, *, turning: float, safety: float) -> float:
    """Allowable bending stress of a beam whose flange is not held [ksi].

    Part, factor [1], stresses [ksi]. Scalars. Limits: none.
    """
    return min(part * yield_stress, turning / safety)


@formula(
    "F = min(F_y, F_t)",
    result=STRESS,
    F_y=YIELD,
    F_t=BUCKLING,
    source="Standard Specifications 10.48.4.1, from memory",
)
def greatest_not_held(yield_stress: float, turning: float) -> float:
    """Bending stress by load factor of a beam whose flange is not held [ksi].

    Stresses [ksi]. Scalars. Limits: none.
    """
    return min(yield_stress, turning)


@formula(
    "F = F_y * Z / S",
    result=STRESS,
    F_y=YIELD,
    Z=Symbol("plastic section modulus", "in3", "plastic", low=6.0, high=130.0),
    S=Symbol("section modulus", "in3", "section_modulus", low=5.0, high=120.0),
    source="Standard Specifications 10.48.1, LRFD Bridge Design Specifications 6.10.7 and "
    "appendix A6, compact section, from memory",
)
def plastic_stress(yield_stress: float, plastic: float, section_modulus: float) -> float:
    """Plastic moment as a stress on the elastic modulus [ksi].

    Stress [ksi], moduli [in3]; scalars or arrays. Limits: compact section, flange held.
    """
    return yield_stress * plastic / section_modulus


@formula(
    "L_p = r_t * sqrt(E / F_y)",
    result=Symbol("unheld length up to which the flange does not turn", "in"),
    r_t=RADIUS_T,
    E=MODULUS,
    F_y=YIELD,
    source=LRFD,
)
def plastic_length(flange_radius: float, modulus: float, yield_stress: float) -> float:
    """Unheld length up to which the flange does not turn, load and resistance [in].

    Radius [in], stresses [ksi]. Scalars. Limits: none.
    """
    return flange_radius * math.sqrt(modulus / yield_stress)


@formula(
    "L_r = pi * r_t * sqrt(E / (c * F_y))",
    result=Symbol("unheld length from which the flange turns elastically", "in"),
    r_t=RADIUS_T,
    E=MODULUS,
    c=PART,
    F_y=YIELD,
    source=LRFD,
)
def elastic_length(
    flange_radius: float, modulus: float, part: float, yield_stress: float
) -> float:
    """Unheld length from which the flange turns elastically, load and resistance [in].

    Radius [in], stresses [ksi], part [1]. Scalars. Limits: none.
    """
    return math.pi * flange_radius * math.sqrt(modulus / (part * yield_stress))


BETWEEN = Symbol("where between the two lengths, or the two proportions", "1", "between", low=0.0,
                 high=1.0)


@formula(
    "F = F_y * (1 - (1 - c) * q)",
    result=STRESS,
    F_y=YIELD,
    c=PART,
    q=BETWEEN,
    source=LRFD,
)
def straight_between(yield_stress: float, part: float, between: float) -> float:
    """Bending stress on the straight line from full to reduced yield [ksi].

    Stress [ksi], parts [1]; scalars or arrays. Limits: `between` 0 to 1.
    """
    return yield_stress * (1 - (1 - part) * between)


@formula(
    "F = pi**2 * E / (L_b / r_t)**2",
    result=STRESS,
    E=MODULUS,
    L_b=UNHELD,
    r_t=RADIUS_T,
    source=LRFD,
)
def elastic_turning(modulus: float, unheld: float, flange_radius: float) -> float:
    """Bending stress at which the flange turns elastically, load and resistance [ksi].

    Modulus [ksi], lengths [in]; scalars or arrays. Limits: C_b 1, the safe side.
    """
    return math.pi**2 * modulus / (unheld / flange_radius) ** 2


@formula(
    "F_r = psi * phi * F",
    result=STRESS,
    psi=Symbol("condition and system factor together", "1", "reduction", low=0.85, high=1.0),
    phi=Symbol("resistance factor", "1", "factor", low=0.5, high=1.0),
    F=Symbol("nominal stress", "ksi", "nominal", low=5.0, high=50.0),
    source="Manual for Bridge Evaluation 6A.4.2.1, from memory",
)
def factored_stress(reduction: float, factor: float, nominal: float) -> float:
    """Stress by load and resistance [ksi].

    Factors [1], stress [ksi]; scalars or arrays. Limits: none.
    """
    return reduction * factor * nominal


@formula(
    "l = c * sqrt(E / F_y)",
    result=Symbol("proportion of a plate", "1"),
    c=Symbol("coefficient of the rule", "1", "coefficient", low=0.3, high=6.0),
    E=MODULUS,
    F_y=YIELD,
    source="Standard Specifications 10.48, LRFD Bridge Design Specifications 6.10, from memory",
)
def proportion(coefficient: float, modulus: float, yield_stress: float) -> float:
    """A limit of width over thickness [1].

    Coefficient [1], stresses [ksi]. Scalars. Limits: none.
    """
    return coefficient * math.sqrt(modulus / yield_stress)


def bending_strength(
    section: BeamSection, rules: Rules, values: Values, *, yield_stress: float, modulus: float,
    unheld: float,
) -> float:
    """What the section may bear in bending by the rules [ksi], `unheld` [in] 0 where it is held.

    Raises OutOfRange for a web so slender that the rules do not hold.
    """
    slender = proportion(values.number("beam.slender web"), modulus, yield_stress)
    if section.web_depth / section.web > slender:
        raise OutOfRange(
            "depth of the web over its thickness", f"{section.web_depth / section.web:.0f}",
            f"{slender:.0f} at most: there is no rule here for a web more slender",
        )
    if rules.method is Method.ALLOWABLE_STRESS:
        # The older rule only limits how thin a flange may be; thinner ones lose as by the newer.
        wavy = _flange_stress(section, values, yield_stress=yield_stress, modulus=modulus)
        if unheld == 0.0:
            return part_of_yield(rules.bending, wavy)
        return allowable_not_held(
            rules.bending, wavy,
            turning=_turning(section, modulus, unheld),
            safety=values.number(f"beam.safety against buckling.{rules.level}"),
        )
    nominal = _nominal(
        section, rules, values, yield_stress=yield_stress, modulus=modulus, unheld=unheld
    )
    if rules.method is Method.LOAD_FACTOR:
        return nominal
    return factored_stress(rules.reduction, rules.bending, nominal)


def _turning(section: BeamSection, modulus: float, unheld: float) -> float:
    return turning_stress(
        modulus=modulus, flange_inertia=section.flange_inertia, unheld=unheld,
        section_modulus=section.one, torsion=section.torsion, height=section.overall,
    )


def _nominal(
    section: BeamSection, rules: Rules, values: Values, *, yield_stress: float, modulus: float,
    unheld: float,
) -> float:
    """Stress at which the beam fails, before any factor [ksi]."""
    wavy = _flange_stress(section, values, yield_stress=yield_stress, modulus=modulus)
    if _compact(section, rules, values, yield_stress=yield_stress, modulus=modulus, unheld=unheld):
        assert section.plastic is not None
        return plastic_stress(yield_stress, section.plastic, section.modulus)
    if unheld == 0.0:
        return wavy
    if rules.method is Method.LOAD_FACTOR:
        return min(wavy, greatest_not_held(yield_stress, _turning(section, modulus, unheld)))
    return min(wavy, _turned(
        section, values, yield_stress=yield_stress, modulus=modulus, unheld=unheld
    ))


def _turned(
    section: BeamSection, values: Values, *, yield_stress: float, modulus: float, unheld: float
) -> float:
    """Stress at which the flange turns sideways, load and resistance [ksi]."""
    part = values.number("beam.yield left by rolling")
    short = plastic_length(section.r_t, modulus, yield_stress)
    long = elastic_length(section.r_t, modulus, part, yield_stress)
    if unheld <= short:
        return yield_stress
    if unheld <= long:
        return straight_between(yield_stress, part, (unheld - short) / (long - short))
    return elastic_turning(modulus, unheld, section.r_t)


def _flange_stress(
    section: BeamSection, values: Values, *, yield_stress: float, modulus: float
) -> float:
    """Stress at which the compressed flange itself waves [ksi]; by load factor the same rule, of
    which the older specification has only the beginning."""
    part = values.number("beam.yield left by rolling")
    compact = proportion(
        values.number("beam.compact.flange.load-and-resistance"), modulus, yield_stress
    ) / 2
    slender = proportion(
        values.number("plate.projecting flange.limit"), modulus, part * yield_stress
    )
    if section.projection <= compact:
        return yield_stress
    if section.projection > slender:
        raise OutOfRange(
            "width of flange over thickness", f"{section.projection:.1f}",
            f"{slender:.1f} at most: there is no rule here for a flange more slender",
        )
    between = (section.projection - compact) / (slender - compact)
    return straight_between(yield_stress, part, between)


def _compact(
    section: BeamSection, rules: Rules, values: Values, *, yield_stress: float, modulus: float,
    unheld: float,
) -> bool:
    """Whether the section reaches its plastic moment."""
    if section.plastic is None:
        return False
    flange, web = (
        proportion(values.number(f"beam.compact.{plate}.{rules.method}"), modulus, yield_stress)
        for plate in ("flange", "web")
    )
    if 2 * section.projection > flange or section.web_depth / section.web > web:
        return False
    if rules.method is Method.LOAD_FACTOR:
        held = values.number("beam.compact.held.load-factor") * modulus / yield_stress
        return unheld <= held * section.r_y
    return unheld <= plastic_length(section.r_t, modulus, yield_stress)
