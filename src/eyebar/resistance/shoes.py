"""What an end of a truss stands on: pressure under its shoe, rollers."""

from eyebar.bridge.floor_joined import Anchors
from eyebar.bridge.floor_parts import Shoe
from eyebar.errors import NotMeasured, OutOfRange
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.resistance.floor_rules import Effect, Strength, floor_rules
from eyebar.resistance.limit import Condition
from eyebar.resistance.rules import Rules
from eyebar.resistance.tension import pull_on_area
from eyebar.sections.amounts import measured
from eyebar.sections.closed_forms import rectangle_area, round_area
from eyebar.terms import Level, Method

NO_ANCHORS = "no anchorage measured: dead load alone is counted to hold it down"
IN_THE_MASONRY = "how the masonry holds the anchors is not looked at"
GREATEST_ROLLER = 25.0
"""Diameter [in] up to which the rule holds."""


@formula(
    "p = (F_y - 13 ksi) / (20 ksi) * 0.6 ksi * d",
    result=Symbol("push that an inch of roller may bear", "kip/in"),
    F_y=Symbol("yield stress", "ksi", "yield_stress", low=20.0, high=50.0),
    d=Symbol("diameter", "in", "diameter", low=1.0, high=24.0),
    source="Civil Engineering Formulas, ch. 10, p. 258, equation 10.40, quoting the Standard "
    "Specifications",
)
def roller_push(yield_stress: float, diameter: float) -> float:
    """Push that an inch of a roller's length may bear at inventory [kip/in].

    Yield stress of the weaker metal [ksi], diameter [in]. Scalars. Limits: diameters up to 25 in
    (OutOfRange).
    """
    if diameter > GREATEST_ROLLER:
        raise OutOfRange("diameter of the rollers", f"{diameter:g} in", "25 in at most")
    return (yield_stress - 13.0) / 20.0 * 0.6 * diameter


@formula(
    "P = n * p * l",
    result=Symbol("push that a nest of rollers may bear", "kip"),
    n=Symbol("rollers", "1", "count", low=2.0, high=8.0),
    p=Symbol("push that an inch of roller may bear", "kip/in", "push_an_inch", low=0.5, high=10.0),
    l=Symbol("length of a roller", "in", "roller_length", low=6.0, high=30.0),
    source="statics, all rollers alike",
)
def rollers_push(count: float, push_an_inch: float, roller_length: float) -> float:
    """Push that a nest of rollers may bear at inventory [kip].

    Number [1], push [kip/in], length [in]; scalars or arrays. Limits: none.
    """
    return count * push_an_inch * roller_length


@formula(
    "T = n * T_1",
    result=Symbol("pull that the anchors may bear together", "kip"),
    n=Symbol("anchors", "1", "count", low=1.0, high=8.0),
    T_1=Symbol("pull that one may bear at the root of its thread", "kip", "one_anchor", low=2.0,
               high=40.0),
    source="alike in all of them",
)
def anchors_pull(count: float, one_anchor: float) -> float:
    """Pull that the anchors of an end may bear together [kip].

    Number [1], pull [kip]; scalars or arrays. Limits: what holds them in the masonry is another
    matter.
    """
    return count * one_anchor


def anchored(anchors: Anchors, rules: Rules) -> float:
    """Pull that anchors may bear at the root of their threads [kip]. Raises NotMeasured."""
    root = round_area(measured(anchors.root, "root diameter of its anchors"))
    one = pull_on_area(rules, anchors.material.yield_stress, root)
    return anchors_pull(float(anchors.number), one)


def _uplift(shoe: Shoe, rules: Rules) -> Strength:
    return Strength(
        check="uplift", effect=Effect.TRUSS_UPLIFT, unit="kip", divisor=1.0,
        capacity=0.0 if shoe.anchors is None else anchored(shoe.anchors, rules),
        remarks=(NO_ANCHORS if shoe.anchors is None else IN_THE_MASONRY,),
    )


def shoe_strengths(
    shoe: Shoe, method: Method, level: Level, *, values: Values, condition: Condition,
    lifts: bool = False,
) -> tuple[Strength, ...]:
    """Pressure on the seat and push on the rollers, by allowable stress alone, and what holds down
    an end that may be lifted (`lifts`).

    Operating has no figures of its own for pressure: those of inventory serve. Raises NotMeasured.
    """
    if method is not Method.ALLOWABLE_STRESS:
        return ()
    said = () if level is Level.INVENTORY else ("no figure for operating: that of inventory",)
    found = []
    if shoe.rollers is not None:
        if shoe.material is None or shoe.material.yield_stress <= 0.0:
            raise NotMeasured("", "strength of the rollers")
        push = roller_push(
            shoe.material.yield_stress, measured(shoe.rollers.diameter, "diameter of the rollers")
        )
        length = measured(shoe.rollers.length, "length of the rollers")
        found.append(Strength(
            check="push on the rollers", effect=Effect.TRUSS_REACTION, unit="kip", divisor=1.0,
            capacity=rollers_push(float(shoe.rollers.number), push, length), remarks=said,
        ))
    if shoe.plate is not None:
        width, length = (measured(side, "size of the shoe's plate") for side in shoe.plate)
        found.append(Strength(
            check="pressure under the shoe", effect=Effect.TRUSS_REACTION, unit="ksi",
            divisor=rectangle_area(width, length),
            capacity=measured(shoe.allowed, "pressure that the seat may bear"),
            remarks=(f"pressure given by the record: {shoe.source}", *said),
        ))
    if not found:
        raise NotMeasured("", "plate and rollers of the shoe")
    if lifts:
        by = floor_rules(method, level, system="single bar", values=values, condition=condition)
        found.append(_uplift(shoe, by.bending))
    return tuple(found)
