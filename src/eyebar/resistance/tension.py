"""Strength of a body in pull: on its whole section, and on the section that holes leave."""

from eyebar.formula import Symbol, formula
from eyebar.resistance.rules import Rules
from eyebar.terms import Method

STRENGTH = Symbol("strength of the metal", "ksi", "strength", low=20.0, high=90.0)
AREA = Symbol("area", "in2", "area", low=0.2, high=60.0)
PULL = Symbol("pull that the section may take", "kip")


@formula(
    "P = c * F * A",
    result=PULL,
    c=Symbol("part of the strength allowed", "1", "part", low=0.3, high=1.0),
    F=STRENGTH,
    A=AREA,
    source="Manual for Bridge Evaluation 6B.5.2.1, from memory",
)
def allowable_pull(part: float, strength: float, area: float) -> float:
    """Pull by allowable stress [kip].

    Part [1] of yield or tensile strength [ksi], area [in2]; scalars or arrays. Limits: none.
    """
    return part * strength * area


@formula(
    "P = F * A",
    result=PULL,
    F=STRENGTH,
    A=AREA,
    source="Manual for Bridge Evaluation 6B.5.3, from memory",
)
def full_pull(strength: float, area: float) -> float:
    """Pull by load factor [kip].

    Yield or tensile strength [ksi], area [in2]; scalars or arrays. Limits: none.
    """
    return strength * area


@formula(
    "P = psi * phi * F * A",
    result=PULL,
    psi=Symbol("condition and system factor together", "1", "reduction", low=0.85, high=1.0),
    phi=Symbol("resistance factor", "1", "factor", low=0.5, high=1.0),
    F=STRENGTH,
    A=AREA,
    source="LRFD Bridge Design Specifications 6.8.2.1, Manual for Bridge Evaluation 6A.4.2.1, "
    "from memory",
)
def factored_pull(reduction: float, factor: float, strength: float, area: float) -> float:
    """Pull by load and resistance [kip].

    Factors [1], yield or tensile strength [ksi], area [in2]; scalars or arrays. Limits: none.
    """
    return reduction * factor * strength * area


@formula(
    "A_n = c * A",
    result=Symbol("net area", "in2"),
    c=Symbol("net over gross area where holes are not recorded", "1", "part", low=0.5, high=1.0),
    A=AREA,
    source="office judgement",
)
def assumed_net_area(part: float, area: float) -> float:
    """Net area of a riveted member whose holes are not recorded [in2].

    Part [1], gross area [in2]; scalars or arrays. Limits: none.
    """
    return part * area


@formula(
    "P = q * P_b",
    result=Symbol("pull of a set at which its weakest detail is used up", "kip"),
    q=Symbol("least strength of a detail over its body as built", "1", "ratio", low=0.1, high=1.5),
    P_b=Symbol("pull of all bodies as built", "kip", "body_pull", low=1.0, high=900.0),
    source="pieces of one set are stretched alike: each takes its share by its area as built",
)
def reduced_pull(ratio: float, body_pull: float) -> float:
    """Pull of a set of bars at which its weakest detail is used up [kip].

    Ratio [1], pull of the bodies as built [kip]; scalars or arrays. Limits: pieces equally tight.
    """
    return ratio * body_pull


def pull_on_area(rules: Rules, strength: float, area: float) -> float:
    """What the yield stress (`strength` [ksi]) on an area [in2] is worth by the rules [kip]."""
    match rules.method:
        case Method.ALLOWABLE_STRESS:
            return allowable_pull(rules.tension, strength, area)
        case Method.LOAD_FACTOR:
            return full_pull(strength, area)
        case Method.LOAD_AND_RESISTANCE:
            return factored_pull(rules.reduction, rules.tension, strength, area)


def pull_on_net_area(rules: Rules, strength: float, area: float) -> float:
    """What the tensile strength [ksi] on a net area [in2] is worth by the rules [kip]."""
    match rules.method:
        case Method.ALLOWABLE_STRESS:
            return allowable_pull(rules.net, strength, area)
        case Method.LOAD_FACTOR:
            return full_pull(strength, area)
        case Method.LOAD_AND_RESISTANCE:
            return factored_pull(rules.reduction, rules.net, strength, area)
