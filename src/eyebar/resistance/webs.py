"""Webs of beams: shear, push over a seat, and what a cope leaves at the end."""

from dataclasses import dataclass

from eyebar.bridge.floor_parts import Cope
from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.resistance.bending import MODULUS, YIELD, factored_stress, part_of_yield
from eyebar.resistance.rules import Rules
from eyebar.sections import closed_forms as form
from eyebar.sections.amounts import measured
from eyebar.sections.beams import BeamSection, section_modulus
from eyebar.terms import Method

UNSTIFFENED = 5.0
"""Coefficient of a long web without stiffeners."""
WEB = Symbol("web thickness", "in", "web", low=0.2, high=1.0)


@formula(
    "C = 1 if l <= 1.12 * sqrt(5 * E / F_y) else (1.12 * sqrt(5 * E / F_y) / l"
    " if l <= 1.4 * sqrt(5 * E / F_y) else 1.57 * 5 * E / F_y / l**2)",
    result=Symbol("part of its shear that a slender web keeps", "1"),
    l=Symbol("depth of the web over its thickness", "1", "web_ratio", low=20.0, high=200.0),
    E=MODULUS,
    F_y=YIELD,
    source="LRFD Bridge Design Specifications 6.10.9.3.2, no stiffeners; the older specification's "
    "10.34.3 and 10.48.8 have nearly the same, from memory",
)
def web_waving(web_ratio: float, modulus: float, yield_stress: float) -> float:
    """Part of its shear strength that the waving of a slender web leaves [1].

    Ratio [1], stresses [ksi]. Scalars. Limits: no stiffeners.
    """
    first = 1.12 * (UNSTIFFENED * modulus / yield_stress) ** 0.5
    if web_ratio <= first:
        return 1.0
    if web_ratio <= 1.4 * (UNSTIFFENED * modulus / yield_stress) ** 0.5:
        return float(first / web_ratio)
    return 1.57 * UNSTIFFENED * modulus / yield_stress / web_ratio**2


@formula(
    "F_v = C * c * F_y",
    result=Symbol("shear stress that the web may bear", "ksi"),
    C=Symbol("part of its shear that a slender web keeps", "1", "waving", low=0.2, high=1.0),
    c=Symbol("shear over yield stress", "1", "part", low=0.3, high=0.6),
    F_y=YIELD,
    source="Manual for Bridge Evaluation 6B.5.2.1, Standard Specifications 10.48.8, LRFD Bridge "
    "Design Specifications 6.10.9, from memory",
)
def web_shear_stress(waving: float, part: float, yield_stress: float) -> float:
    """Shear stress that a web may bear, before condition and system [ksi].

    Parts [1], stress [ksi]; scalars or arrays. Limits: none.
    """
    return waving * part * yield_stress


@formula(
    "A = t_w * (N + k * t_k)",
    result=Symbol("area of the web that stands over the seat", "in2"),
    t_w=WEB,
    N=Symbol("length of the seat along the beam", "in", "seat", low=2.0, high=12.0),
    k=Symbol("flange thicknesses that the push spreads by", "1", "spread_by", low=1.0, high=5.0),
    t_k=Symbol("thickness of the flange at the web", "in", "at_web", low=0.2, high=1.5),
    source="LRFD Bridge Design Specifications D6.5.2, fillet left out, from memory",
)
def seat_area(web: float, seat: float, spread_by: float, at_web: float) -> float:
    """Area of a web that stands over the seat at a beam's end [in2].

    Lengths [in], number [1]; scalars or arrays. Limits: none.
    """
    return web * (seat + spread_by * at_web)


@dataclass(frozen=True, slots=True, kw_only=True)
class CopedEnd:
    """What a cope leaves of a beam: area in shear [in2], section modulus [in3], the distance from
    the end to where the cope stops [in]."""

    area: float
    modulus: float
    length: float


def web_strength(
    section: BeamSection, rules: Rules, values: Values, *, yield_stress: float, modulus: float,
    reduction: float,
) -> float:
    """Shear stress that the web may bear by the rules [ksi]; `reduction` is that of shear."""
    waving = web_waving(section.web_depth / section.web, modulus, yield_stress)
    if rules.method is Method.ALLOWABLE_STRESS:
        part = values.number(f"allowable.shear.{rules.level}")
        return web_shear_stress(waving, part, yield_stress)
    nominal = web_shear_stress(
        waving, values.number("shear.part of yield stress"), yield_stress
    )
    if rules.method is Method.LOAD_FACTOR:
        return nominal
    return factored_stress(reduction, values.number("resistance factor.shear"), nominal)


def seat_strength(
    rules: Rules, values: Values, *, yield_stress: float, reduction: float
) -> float:
    """Stress that a web may bear over its seat by the rules [ksi]."""
    if rules.method is Method.ALLOWABLE_STRESS:
        return part_of_yield(values.number(f"beam.over its seat.{rules.level}"), yield_stress)
    if rules.method is Method.LOAD_FACTOR:
        return part_of_yield(1.0, yield_stress)
    return factored_stress(reduction, values.number("resistance factor.shear"), yield_stress)


def coped(section: BeamSection, cope: Cope) -> CopedEnd:
    """What a cope leaves of a beam: a web on its lower flange, or a bare web.

    Raises NotMeasured, OutOfRange where nothing of the web is left.
    """
    depth = measured(cope.depth, "depth of the cope")
    length = measured(cope.length, "length of the cope")
    pieces = section.modulus / section.one
    height = section.overall - (2.0 if cope.both else 1.0) * depth
    if height <= section.flange_thickness:
        raise OutOfRange("depth of the cope", f"{depth:g} in", "less than the web")
    if cope.both:
        inertia = form.rectangle_inertia(section.web, height)
        modulus = section_modulus(inertia, height / 2)
        return CopedEnd(
            area=pieces * form.rectangle_area(section.web, height), modulus=pieces * modulus,
            length=length,
        )
    sizes = (height, section.web, section.flange, section.flange_thickness)
    whole = form.angle_area(*sizes)
    centre = form.angle_height(*sizes, area=whole)
    inertia = form.angle_inertia(*sizes, height=centre)
    modulus = section_modulus(inertia, max(centre, height - centre))
    return CopedEnd(
        area=pieces * form.rectangle_area(section.web, height), modulus=pieces * modulus,
        length=length,
    )

