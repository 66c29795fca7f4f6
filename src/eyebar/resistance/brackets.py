"""Brackets of sidewalks as cantilevers from the post: bending and shear where they spring."""

from eyebar.bridge.floor_parts import Bracket
from eyebar.errors import NotMeasured
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.resistance.bending import bending_strength
from eyebar.resistance.floor_rules import Effect, FloorRules, Strength
from eyebar.resistance.webs import web_strength
from eyebar.sections.amounts import measured
from eyebar.sections.beams import beam_section
from eyebar.terms import Metal

RATED_METALS = (Metal.WROUGHT_IRON, Metal.STEEL)
ROOT = "how the bracket is fastened to its post is not looked at"


@formula(
    "P = q * b * l",
    result=Symbol("load of a walk on one bracket", "kip"),
    q=Symbol("load by area", "kip/ft2", "kip_per_ft2", low=0.01, high=0.15),
    b=Symbol("width of the walk", "ft", "walk_ft", low=3.0, high=8.0),
    l=Symbol("length of it that the bracket carries", "ft", "long_ft", low=8.0, high=25.0),
    source="statics: half of both panels",
)
def walk_load(kip_per_ft2: float, walk_ft: float, long_ft: float) -> float:
    """Load of a walk on one bracket [kip].

    Load by area [kip/ft2], lengths [ft]; scalars or arrays. Limits: none.
    """
    return kip_per_ft2 * walk_ft * long_ft


def bracket_strengths(bracket: Bracket, by: FloorRules, values: Values) -> tuple[Strength, ...]:
    """Every strength of a bracket by a method and level. Raises NotMeasured."""
    metal = bracket.made_of
    if metal.metal not in RATED_METALS:
        raise NotMeasured("", f"strength of {metal.metal}, which has no rule here,")
    # Its lower flange is the one that is pushed.
    section = beam_section(bracket.left, sense=-1)
    arm = measured(bracket.arm, "reach of the bracket")
    return (
        Strength(
            check="bending of the bracket", effect=Effect.BRACKET, unit="ksi",
            capacity=bending_strength(
                section, by.bending, values, yield_stress=metal.yield_stress,
                modulus=metal.modulus, unheld=measured(bracket.unheld, "reach of the bracket"),
            ),
            divisor=section.modulus / arm, remarks=(*by.bending.remarks, ROOT),
        ),
        Strength(
            check="shear of the bracket", effect=Effect.BRACKET, unit="ksi",
            capacity=web_strength(
                section, by.shear, values, yield_stress=metal.yield_stress,
                modulus=metal.modulus, reduction=by.shear.reduction,
            ),
            divisor=section.web_area, remarks=(*by.shear.remarks, ROOT),
        ),
    )
