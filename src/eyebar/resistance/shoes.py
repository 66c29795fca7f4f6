"""What an end of a truss stands on: pressure under its shoe, rollers."""

from eyebar.bridge.floor_parts import Shoe
from eyebar.errors import NotMeasured, OutOfRange
from eyebar.formula import Symbol, formula
from eyebar.resistance.floor_rules import Effect, Strength
from eyebar.sections.amounts import measured
from eyebar.sections.closed_forms import rectangle_area
from eyebar.terms import Level, Method

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


def shoe_strengths(shoe: Shoe, method: Method, level: Level) -> tuple[Strength, ...]:
    """Pressure on the seat and push on the rollers, by allowable stress alone.

    Operating has no figures of its own: those of inventory serve. Raises NotMeasured.
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
    return tuple(found)
