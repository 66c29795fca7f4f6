"""Yokes of hangers: the plate or beam that lies under a floorbeam and hangs on the legs' nuts."""

from collections.abc import Iterator

from eyebar.bridge.floor_joined import Yoke
from eyebar.bridge.floor_parts import Hanger
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.resistance.bending import factored_stress, part_of_yield
from eyebar.resistance.floor_rules import Effect, FloorRules, Strength
from eyebar.resistance.rules import Rules
from eyebar.resistance.webs import web_shear_stress
from eyebar.sections.amounts import measured
from eyebar.sections.beams import beam_section
from eyebar.sections.closed_forms import rectangle_area
from eyebar.terms import Method

NOT_RECORDED = "yoke under the floorbeam not recorded: not looked at"
PLATES = Symbol("plates alike", "1", "count", low=1.0, high=4.0)
WIDE = Symbol("width of a plate that lies flat", "in", "plate_width", low=3.0, high=8.0)
THICK = Symbol("its thickness", "in", "plate_thickness", low=0.5, high=2.0)
ENDS = 2.0
"""Ends of a yoke, each of which bears half of the load."""


@formula(
    "m = s / 4 - min(b, s) / 8",
    result=Symbol("moment of a yoke for a unit load", "in"),
    s=Symbol("distance of the legs", "in", "legs_apart", low=3.0, high=12.0),
    b=Symbol("width of the beam that lies on it", "in", "on_it", low=0.0, high=14.0),
    source="statics: a simple span from leg to leg, the beam spread evenly about its middle",
)
def yoke_moment(legs_apart: float, on_it: float) -> float:
    """Moment of a yoke for a unit load of the floorbeam on it [in].

    Lengths [in]. Scalars. Limits: the beam at the middle, where it bends the yoke most.
    """
    return legs_apart / 4 - min(on_it, legs_apart) / 8


@formula(
    "S = n * w * t**2 / 6",
    result=Symbol("section modulus of plates that lie flat", "in3"),
    n=PLATES,
    w=WIDE,
    t=THICK,
    source="plane geometry",
)
def flat_modulus(count: float, plate_width: float, plate_thickness: float) -> float:
    """Section modulus of plates that lie flat [in3].

    Number [1], lengths [in]; scalars or arrays. Limits: none.
    """
    return count * plate_width * plate_thickness**2 / 6


@formula(
    "Z = n * w * t**2 / 4",
    result=Symbol("plastic section modulus of plates that lie flat", "in3"),
    n=PLATES,
    w=WIDE,
    t=THICK,
    source="plane geometry",
)
def flat_plastic(count: float, plate_width: float, plate_thickness: float) -> float:
    """Plastic section modulus of plates that lie flat [in3].

    Number [1], lengths [in]; scalars or arrays. Limits: none.
    """
    return count * plate_width * plate_thickness**2 / 4


def yoke_strengths(hanger: Hanger, by: FloorRules, values: Values) -> Iterator[Strength]:
    """Bending and shear of a hanger's yoke, none where it is not recorded. Raises NotMeasured."""
    yoke = hanger.yoke
    if yoke is None:
        return
    apart = measured(hanger.apart, "distance of its legs")
    moment = yoke_moment(apart, 0.0 if yoke.on_it is None else yoke.on_it)
    modulus, area = _section(yoke, by.bending.method)
    stress = yoke.material.yield_stress
    yield Strength(
        check="bending of the yoke", effect=Effect.HUNG, unit="ksi", divisor=modulus / moment,
        capacity=_bending(by.bending, values, stress), remarks=by.bending.remarks,
    )
    yield Strength(
        check="shear of the yoke", effect=Effect.HUNG, unit="ksi", divisor=ENDS * area,
        capacity=_shear(by.shear, values, stress), remarks=by.shear.remarks,
    )


def _section(yoke: Yoke, method: Method) -> tuple[float, float]:
    """Modulus [in3] and area in shear [in2]: of flat plates plastic but by allowable stress."""
    count = float(yoke.number)
    if yoke.plate is not None:
        width = measured(yoke.plate[0], "width of the yoke")
        thick = measured(yoke.plate[1], "thickness of the yoke")
        of = flat_modulus if method is Method.ALLOWABLE_STRESS else flat_plastic
        return of(count, width, thick), count * rectangle_area(width, thick)
    assert yoke.section is not None
    one = beam_section(yoke.section)
    return count * one.modulus, count * one.web_area


def _bending(rules: Rules, values: Values, stress: float) -> float:
    if rules.method is Method.ALLOWABLE_STRESS:
        return part_of_yield(rules.bending, stress)
    if rules.method is Method.LOAD_FACTOR:
        return part_of_yield(1.0, stress)
    return factored_stress(rules.reduction, values.number("resistance factor.flexure"), stress)


def _shear(rules: Rules, values: Values, stress: float) -> float:
    if rules.method is Method.ALLOWABLE_STRESS:
        return web_shear_stress(1.0, values.number(f"allowable.shear.{rules.level}"), stress)
    nominal = web_shear_stress(1.0, values.number("shear.part of yield stress"), stress)
    if rules.method is Method.LOAD_FACTOR:
        return nominal
    return factored_stress(rules.reduction, values.number("resistance factor.shear"), nominal)
