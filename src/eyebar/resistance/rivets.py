"""Rivets: what one of them carries in shear and in bearing, by each method.

Shear is taken on the rivet as it was before driving; bearing on the thinner of what it holds. No
tables of iron rivets survive in the standards: before the year that the office names they are those
of unknown origin.
"""

import math

from eyebar.bridge.parts import Material
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.resistance.rules import Rules
from eyebar.terms import Method

RIVET = Symbol("diameter of the rivet", "in", "rivet", low=0.5, high=1.25)
SHEARED = Symbol("pull or push that one rivet may carry in shear", "kip")
BEARING = Symbol("pull or push that one rivet may carry in bearing", "kip")
STRESS = Symbol("shear stress that the rivet may carry", "ksi", "stress", low=5.0, high=30.0)
TENSILE = Symbol("tensile strength of what it holds", "ksi", "tensile_strength", low=40.0,
                 high=70.0)
THINNER = Symbol("thinner of what it holds", "in", "thinner", low=0.2, high=1.0)
CUTS = Symbol("sections that are sheared", "1", "cuts", low=1.0, high=2.0)
WEAK_MEMORY = "strength of rivets weakly remembered: the office confirms its own"
"""A remark on every limit that rivets set."""


@formula(
    "P = m * f * pi * d_r**2 / 4",
    result=SHEARED,
    m=CUTS,
    f=STRESS,
    d_r=RIVET,
    source="Manual for Bridge Evaluation 6A.6.12.5.1 and 6B.5.2, from memory, the figures weak",
)
def rivet_shear(cuts: float, stress: float, rivet: float) -> float:
    """What one rivet carries in shear, before condition and system [kip].

    Sections [1], stress [ksi], diameter [in]; scalars or arrays. Limits: none.
    """
    return cuts * stress * math.pi * rivet**2 / 4


@formula(
    "P = f_b * min(1, F_u / F_0) * d_r * t",
    result=BEARING,
    f_b=Symbol("bearing stress allowed on structural steel", "ksi", "bearing", low=30.0, high=60.0),
    F_u=TENSILE,
    F_0=Symbol("tensile strength of that steel", "ksi", "of_steel", low=50.0, high=60.0),
    d_r=RIVET,
    t=THINNER,
    source="Civil Engineering Formulas, ch. 10, p. 258, structural rivets; on weaker metal in the "
    "proportion of its strength, own rule on the safe side",
)
def allowable_bearing(
    bearing: float, tensile_strength: float, *, of_steel: float, rivet: float, thinner: float
) -> float:
    """What one rivet carries in bearing by allowable stress [kip].

    Stresses [ksi], lengths [in]. Scalars. Limits: none.
    """
    return bearing * min(1.0, tensile_strength / of_steel) * rivet * thinner


@formula(
    "P = c * F_u * d_r * t",
    result=BEARING,
    c=Symbol("bearing over tensile strength", "1", "part", low=1.5, high=2.5),
    F_u=TENSILE,
    d_r=RIVET,
    t=THINNER,
    source="Standard Specifications 10.56.1.3, LRFD Bridge Design Specifications 6.13.2.9, "
    "from memory",
)
def full_bearing(part: float, tensile_strength: float, *, rivet: float, thinner: float) -> float:
    """What one rivet carries in bearing by load factor and by load and resistance [kip].

    Part [1], strength [ksi], lengths [in]; scalars or arrays. Limits: edges two diameters away.
    """
    return part * tensile_strength * rivet * thinner


@formula(
    "P = psi * P_r",
    result=Symbol("pull or push that one rivet may carry", "kip"),
    psi=Symbol("condition and system factor together", "1", "reduction", low=0.85, high=1.0),
    P_r=Symbol("strength of one rivet with its resistance factor", "kip", "rivet_strength",
               low=1.0, high=40.0),
    source="Manual for Bridge Evaluation 6A.4.2.1, from memory",
)
def factored_rivet(reduction: float, rivet_strength: float) -> float:
    """What one rivet carries by load and resistance [kip].

    Factor [1], strength [kip]; scalars or arrays. Limits: none.
    """
    return reduction * rivet_strength


def rivet_pull(
    rules: Rules, values: Values, material: Material, *, rivet: float, cuts: int,
    thinner: float | None,
) -> float:
    """What one rivet carries by the rules, in shear or in bearing, whichever is less [kip].

    `thinner`: thickness of the thinner side that it holds [in]; None: bearing is not asked for.
    """
    shear = rivet_shear(cuts, _shear_stress(rules, values, material), rivet)
    least = shear
    if thinner is not None:
        least = min(shear, _bearing(rules, values, material, rivet=rivet, thinner=thinner))
    if rules.method is Method.LOAD_AND_RESISTANCE:
        return factored_rivet(rules.reduction, least)
    return least


def _shear_stress(rules: Rules, values: Values, material: Material) -> float:
    later = material.built >= values.number("rivet.later from")
    age = "later" if later else "earlier"
    if rules.method is Method.ALLOWABLE_STRESS:
        return values.number(f"rivet.shear.allowable.{age}.{rules.level}")
    return values.number(f"rivet.shear.factored.{age}")


def _bearing(
    rules: Rules, values: Values, material: Material, *, rivet: float, thinner: float
) -> float:
    strength = material.tensile_strength
    if rules.method is Method.ALLOWABLE_STRESS:
        return allowable_bearing(
            values.number(f"rivet.bearing.allowable.{rules.level}"), strength,
            of_steel=values.number("rivet.bearing.of steel"), rivet=rivet, thinner=thinner,
        )
    part = values.number(f"rivet.bearing.{rules.method}")
    return full_bearing(part, strength, rivet=rivet, thinner=thinner)
