"""Webs of beams: shear, push over a seat, and what a cope leaves at the end."""

from dataclasses import dataclass

from eyebar.bridge.floor_joined import Cope
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
SEAT = Symbol("length along the beam of what it stands on, or of what stands on it", "in", "seat",
              low=2.0, high=12.0)
DEPTH = Symbol("depth of the beam", "in", "depth", low=8.0, high=36.0)
CRIPPLES = Symbol("push at which the web cripples", "kip", "push", low=5.0, high=200.0)
BORNE = Symbol("push that the web may bear before it cripples", "kip")


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


@formula(
    "q = 3 * N / d if N / d <= 0.2 else 4 * N / d - 0.2",
    result=Symbol("what the seat's length adds to a web's strength at an end", "1"),
    N=SEAT,
    d=DEPTH,
    source="LRFD Bridge Design Specifications D6.5.3, from memory; its first slope, for all "
    "lengths, is in equation 9.58 of Civil Engineering Formulas, p. 223, read",
)
def seat_part_at_end(seat: float, depth: float) -> float:
    """What the length of a seat adds to the strength of a web at a beam's end [1].

    Lengths [in]. Scalars. Limits: the seat at the very end.
    """
    long = seat / depth
    return 3 * long if long <= 0.2 else 4 * long - 0.2


@formula(
    "q = 3 * N / d",
    result=Symbol("what the length of what stands on a beam adds to its web's strength", "1"),
    N=SEAT,
    d=DEPTH,
    source="equation 9.57 of Civil Engineering Formulas, p. 223, read",
)
def stand_part(seat: float, depth: float) -> float:
    """What the length of what stands on a beam adds to the strength of its web [1].

    Lengths [in]; scalars or arrays. Limits: half of the depth from an end.
    """
    return 3 * seat / depth


@formula(
    "R = c * t_w**2 * (1 + q * (t_w / t_f)**1.5) * sqrt(E * F_y * t_f / t_w)",
    result=Symbol("push at which the web cripples", "kip"),
    c=Symbol("coefficient: 0.8, beside an end 0.4", "1", "coefficient", low=0.3, high=0.9),
    t_w=WEB,
    q=Symbol("what the length adds", "1", "length_part", low=0.1, high=4.0),
    t_f=Symbol("thickness of the flange", "in", "flange_thickness", low=0.2, high=1.5),
    E=MODULUS,
    F_y=YIELD,
    source="LRFD Bridge Design Specifications D6.5.3, from memory; half of it is equations 9.57 "
    "and 9.58 of Civil Engineering Formulas, p. 223, read",
)
def crippling_push(
    coefficient: float, web: float, length_part: float, *, flange_thickness: float,
    modulus: float, yield_stress: float,
) -> float:
    """Push at which the web of a beam cripples [kip].

    Numbers [1], lengths [in], stresses [ksi]; scalars or arrays. Limits: no stiffener.
    """
    root: float = (modulus * yield_stress * flange_thickness / web) ** 0.5
    push: float = coefficient * web**2 * (1 + length_part * (web / flange_thickness) ** 1.5) * root
    return push


def crippling_at_end(web: float, seat: float, *, depth: float, **about: float) -> float:
    """Push over a seat at which the web of a beam's end cripples [kip]; `about` as in
    `crippling_push`."""
    return crippling_push(0.4, web, seat_part_at_end(seat, depth), **about)


def crippling_between(web: float, seat: float, *, depth: float, **about: float) -> float:
    """Push at which a web cripples under what stands on the beam, away from its ends [kip]."""
    return crippling_push(0.8, web, stand_part(seat, depth), **about)


@formula(
    "P = R / n",
    result=BORNE,
    R=CRIPPLES,
    n=Symbol("safety against crippling", "1", "safety", low=1.2, high=2.5),
    source="Specification for Structural Steel Buildings (1989) K1.4, as quoted in Civil "
    "Engineering Formulas, p. 223",
)
def safe_push(push: float, safety: float) -> float:
    """Push that a web may bear by allowable stress before it cripples [kip].

    Push [kip], safety [1]; scalars or arrays. Limits: none.
    """
    return push / safety


@formula(
    "P = psi * phi * R",
    result=BORNE,
    psi=Symbol("condition and system factor together", "1", "reduction", low=0.85, high=1.0),
    phi=Symbol("resistance factor", "1", "factor", low=0.5, high=1.0),
    R=CRIPPLES,
    source="LRFD Bridge Design Specifications 6.5.4.2 and D6.5.3, from memory",
)
def factored_push(reduction: float, factor: float, push: float) -> float:
    """Push that a web may bear with its resistance factor before it cripples [kip].

    Factors [1], push [kip]; scalars or arrays. Limits: none.
    """
    return reduction * factor * push


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


def crippling_strength(
    section: BeamSection, rules: Rules, values: Values, *, stands: float, yield_stress: float,
    modulus: float, at_end: bool,
) -> float:
    """Push that an unstiffened web may bear before it cripples, all pieces together [kip]; `stands`
    is the length of what it stands on or of what stands on it [in]. By load factor as by load and
    resistance, as the older specification has no rule of its own."""
    cripples = crippling_at_end if at_end else crippling_between
    push = section.modulus / section.one * cripples(
        section.web, stands, depth=section.overall, flange_thickness=section.flange_thickness,
        modulus=modulus, yield_stress=yield_stress,
    )
    if rules.method is Method.ALLOWABLE_STRESS:
        return safe_push(push, values.number(f"beam.safety against crippling.{rules.level}"))
    return factored_push(rules.reduction, values.number("resistance factor.crippling"), push)


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

