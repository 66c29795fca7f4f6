"""Members joined end to end: splice plates and their rivets in pull, butted ends in push."""

from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.resistance.rules import Rules
from eyebar.terms import Method


@formula(
    "P = n_r * P_r",
    result=Symbol("force at which the rivets of the splice are used up", "kip"),
    n_r=Symbol("rivets on one side of the joint", "1", "rivets", low=2.0, high=40.0),
    P_r=Symbol("what one rivet carries", "kip", "rivet_force", low=1.0, high=15.0),
    source="rivets of a splice are taken to share alike",
)
def force_of_splice_rivets(rivets: float, rivet_force: float) -> float:
    """Force at which the rivets of a splice are used up [kip].

    Rivets [1], force of one [kip]; scalars or arrays. Limits: a group that the force runs through
    the middle of.
    """
    return rivets * rivet_force


@formula(
    "P = psi * c * F_y * A",
    result=Symbol("push that butted ends may carry", "kip"),
    psi=Symbol("condition and system factor together", "1", "reduction", low=0.85, high=1.0),
    c=Symbol("bearing over yield stress", "1", "part", low=0.5, high=1.5),
    F_y=Symbol("yield stress", "ksi", "yield_stress", low=20.0, high=50.0),
    A=Symbol("area", "in2", "area", low=4.0, high=60.0),
    source="Civil Engineering Formulas, ch. 10, p. 258, milled surfaces, with the yield stress for "
    "the strength named there, the safe side; LRFD Bridge Design Specifications 6.10.11.2.3, from "
    "memory",
)
def push_of_butt(reduction: float, part: float, yield_stress: float, area: float) -> float:
    """Push that ends which bear on each other may carry [kip].

    Factors [1], yield stress [ksi], area [in2]; scalars or arrays. Limits: ends in contact all
    over.
    """
    return reduction * part * yield_stress * area


def bearing_part(rules: Rules, values: Values) -> float:
    """Bearing stress of butted ends over the yield stress, by the rules [1]."""
    if rules.method is Method.ALLOWABLE_STRESS:
        return values.number(f"butt.bearing.allowable.{rules.level}")
    return values.number(f"butt.bearing.{rules.method}")
