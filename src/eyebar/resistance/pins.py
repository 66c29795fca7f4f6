"""Stresses in a pin, and the rules that compare them: bending, shear, bearing.

By load factor there is no rule for pins.
"""

import math

from eyebar.formula import Symbol, formula

DIAMETER = Symbol("diameter of the pin", "in", "diameter", low=1.5, high=6.0)
YIELD = Symbol("yield stress of the pin", "ksi", "yield_stress", low=20.0, high=50.0)
MOMENT = Symbol("resultant moment in the pin", "kip in", "moment", low=1.0, high=200.0)
SHEAR = Symbol("resultant shear in the pin", "kip", "shear", low=1.0, high=100.0)


@formula(
    "f_b = 32 * M / (pi * d**3)",
    result=Symbol("stress in the extreme fibre of the pin", "ksi"),
    M=MOMENT,
    d=DIAMETER,
    source="bending of a round bar",
)
def bending_stress(moment: float, diameter: float) -> float:
    """Bending stress in a pin [ksi].

    Moment [kip in], diameter [in]; scalars or arrays. Limits: a solid round pin.
    """
    return 32.0 * moment / (math.pi * diameter**3)


@formula(
    "f_v = 4 * V / (pi * d**2)",
    result=Symbol("average shear stress in the pin", "ksi"),
    V=SHEAR,
    d=DIAMETER,
    source="shear over the whole section; the peak is 4/3 of it",
)
def shear_stress(shear: float, diameter: float) -> float:
    """Average shear stress in a pin [ksi].

    Shear [kip], diameter [in]; scalars or arrays. Limits: a solid round pin.
    """
    return 4.0 * shear / (math.pi * diameter**2)


@formula(
    "f_p = P / (d * t)",
    result=Symbol("bearing stress between pin and bar", "ksi"),
    P=Symbol("force that bears on the pin", "kip", "force", low=1.0, high=200.0),
    d=DIAMETER,
    t=Symbol("thickness of the bearing", "in", "thickness", low=0.3, high=3.0),
    source="force over the projected area",
)
def bearing_stress(force: float, diameter: float, thickness: float) -> float:
    """Bearing stress of a bar on a pin [ksi].

    Force [kip], lengths [in]; scalars or arrays. Limits: thickness above 0.
    """
    return force / (diameter * thickness)


@formula(
    "q = 6 * M / (d**3 * F_y) + (2.2 * V / (d**2 * F_y))**3",
    result=Symbol("bending and shear of the pin together", "1"),
    M=MOMENT,
    d=DIAMETER,
    F_y=YIELD,
    V=SHEAR,
    source="LRFD Bridge Design Specifications 6.7.6.2.1, resistance factors 1, from memory",
)
def bending_with_shear(
    moment: float, shear: float, *, diameter: float, yield_stress: float
) -> float:
    """How much of a pin's strength bending and shear take together [1]; 0.95 is the limit.

    Moment [kip in], shear [kip], diameter [in], yield [ksi]; scalars or arrays. Limits: a solid
    round pin.
    """
    bent = 6.0 * moment / (diameter**3 * yield_stress)
    return bent + (2.2 * shear / (diameter**2 * yield_stress)) ** 3


@formula(
    "R = 1.5 * t * d * F_y",
    result=Symbol("force that a bar may bear on the pin", "kip"),
    t=Symbol("thickness of the bearing", "in", "thickness", low=0.3, high=3.0),
    d=DIAMETER,
    F_y=YIELD,
    source="LRFD Bridge Design Specifications 6.7.6.2.2, resistance factor 1, from memory",
)
def bearing_resistance(thickness: float, diameter: float, yield_stress: float) -> float:
    """Bearing resistance of a pin under a bar [kip].

    Lengths [in], yield [ksi]; scalars or arrays. Limits: thickness above 0.
    """
    return 1.5 * thickness * diameter * yield_stress
