"""Hangers of floorbeams: legs that share unevenly, rods bent over a pin, bearing on it."""

from dataclasses import dataclass, replace
from math import pi

from eyebar.bridge.floor_parts import Hanger
from eyebar.errors import NotMeasured
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.resistance.bending import factored_stress, part_of_yield
from eyebar.resistance.end_rivets import end_rivets
from eyebar.resistance.eyebar import head_across, head_beyond
from eyebar.resistance.floor_rules import Effect, FloorRules, Strength
from eyebar.resistance.limit import Condition
from eyebar.resistance.of_bar import limits
from eyebar.resistance.rules import rules
from eyebar.resistance.tension import pull_on_area, reduced_pull
from eyebar.resistance.threads import is_looped
from eyebar.resistance.yokes import NOT_RECORDED, yoke_strengths
from eyebar.sections.amounts import measured
from eyebar.sections.properties import area
from eyebar.sections.shapes import Eyebars, Plates, Rods, RodShape, Section
from eyebar.terms import Method

OFF_CENTRE = "the beam hangs beside the middle of its legs"
LEGS = 2
"""Legs of one bent rod."""
ROD = Symbol("diameter of the rod", "in", "rod", low=0.5, high=2.0)
INSIDE = Symbol("radius of the bend's middle line", "in", "bend_radius", low=1.0, high=3.0)


@formula(
    "k = 1 / (1 + 2 * e / s)",
    result=Symbol("part of its strength that uneven legs leave a hanger", "1"),
    e=Symbol("beam beside the middle of the legs", "in", "off_centre", low=0.0, high=2.0),
    s=Symbol("distance of the legs", "in", "legs_apart", low=3.0, high=12.0),
    source="statics: the nearer leg takes 1/2 + e / s of the load",
)
def uneven_legs(off_centre: float, legs_apart: float) -> float:
    """Part of its strength that a hanger keeps whose beam hangs beside its middle [1].

    Lengths [in]; scalars or arrays. Limits: the beam between the legs.
    """
    return 1 / (1 + 2 * off_centre / legs_apart)


@formula(
    "m = R * (1 - R * (pi / 2 - 1) / (pi * R / 2 + l)) / 2",
    result=Symbol("moment over the pin for a unit load on the bent rod", "in"),
    R=INSIDE,
    l=Symbol("length of a leg", "in", "leg", low=6.0, high=40.0),
    source="half ring with two straight legs whose ends do not turn, loaded at its crown: least "
    "work; legs of no length give R / pi, a ring's, endless ones R / 2",
)
def bend_moment(bend_radius: float, leg: float) -> float:
    """Moment over the pin in a rod bent to a half ring, for a unit load on both legs [in].

    Lengths [in]; scalars or arrays. Limits: the bend touches the pin at its crown alone.
    """
    held = bend_radius * (pi / 2 - 1) / (pi * bend_radius / 2 + leg)
    return bend_radius * (1 - held) / 2


@formula(
    "s = pi * d_r**3 / 32",
    result=Symbol("section modulus of a round rod", "in3"),
    d_r=ROD,
    source="plane geometry",
)
def rod_modulus(rod: float) -> float:
    """Section modulus of a round rod [in3].

    Diameter [in]; scalars or arrays. Limits: none.
    """
    return pi * rod**3 / 32


@formula(
    "z = d_r**3 / 6",
    result=Symbol("plastic section modulus of a round rod", "in3"),
    d_r=ROD,
    source="plane geometry",
)
def rod_plastic_modulus(rod: float) -> float:
    """Plastic section modulus of a round rod [in3].

    Diameter [in]; scalars or arrays. Limits: none.
    """
    return rod**3 / 6


@dataclass(frozen=True, slots=True, kw_only=True)
class _Bend:
    """A rod bent over a pin: its diameter, how many lie over the pin, radius of its middle line."""

    rod: float
    over: int
    radius: float


def hanger_strengths(
    hanger: Hanger, by: FloorRules, values: Values, condition: Condition
) -> tuple[Strength, ...]:
    """Every strength of a hanger by a method and level. Raises NotMeasured, OutOfRange."""
    found: list[Strength] = []
    if hanger.bar is not None:
        keeps = _keeps(hanger)
        single = _single(hanger, by, values, condition)
        remarks = (OFF_CENTRE,) * (keeps != 1.0) + (NOT_RECORDED,) * (hanger.yoke is None)
        found += [
            Strength(
                check=one.check, effect=Effect.HUNG, unit="kip", divisor=1.0,
                capacity=one.force * keeps * single, remarks=one.remarks + remarks,
            )
            for one in limits(
                hanger.bar, method=by.bending.method, level=by.bending.level, dead_factor_dc=1.0,
                values=values, condition=condition,
            )
        ]
        found += _on_the_pin(hanger, by, values, keeps)
        found += yoke_strengths(hanger, by, values)
    if hanger.fastening is not None:
        metal = hanger.made_of
        if metal is None:
            raise NotMeasured("", "metal of what its rivets hold")
        found += end_rivets(hanger.fastening, metal, by, values, effect=Effect.HUNG)
    if not found:
        raise NotMeasured("", "how the floorbeam hangs")
    return tuple(found)


def _single(hanger: Hanger, by: FloorRules, values: Values, condition: Condition) -> float:
    """What the system factor of a single bar leaves of that by its section: the two legs of one
    bent rod are one bar."""
    assert hanger.bar is not None
    section = hanger.bar.left
    if not hanger.bent or not isinstance(section, Rods) or len(section.rods) > LEGS:
        return 1.0
    several = rules(
        by.bending.method, by.bending.level, values=values, condition=condition, section=section
    )
    return by.bending.reduction / several.reduction


def _keeps(hanger: Hanger) -> float:
    if hanger.off_centre == 0.0:
        return 1.0
    return uneven_legs(hanger.off_centre, measured(hanger.apart, "distance of its legs"))


def _on_the_pin(
    hanger: Hanger, by: FloorRules, values: Values, keeps: float
) -> list[Strength]:
    """Eyes of plates, bearing on the pin, and bending of a rod that does not fit it; of the latter
    two no rule by load factor."""
    assert hanger.bar is not None
    section, stress = hanger.bar.left, hanger.bar.material.yield_stress
    eyes = _eyes(hanger, section, by, values, keeps=keeps) if isinstance(section, Plates) else []
    if by.bending.method is Method.LOAD_FACTOR or not (hanger.bent or _hung_by_eyes(section)):
        return eyes
    pin = measured(hanger.pin, "diameter of the pin that it hangs on")
    weaker = min(stress, hanger.pin_yield or stress)
    if not hanger.bent:
        return [*eyes, _bearing(by, values, weaker, pin * _width_on_pin(section) * keeps)]
    bend = _bend(hanger, section)
    found = [_bearing(by, values, weaker, pin * bend.rod * bend.over * keeps)]
    inside = measured(hanger.inside, "clear width between its legs")
    if inside - pin > values.number("hanger.fits its pin"):
        moment = bend_moment(bend.radius, measured(hanger.leg, "length of its legs"))
        found.append(replace(_bent(by, values, stress, bend, moment), remarks=(
            f"bent {inside:g} in wide over a pin of {pin:g} in: it bears on its crown alone",
        )))
        found[-1] = replace(found[-1], divisor=found[-1].divisor * keeps)
    return found


def _hung_by_eyes(section: Section) -> bool:
    match section:
        case Plates() | Eyebars():
            return True
        case Rods():
            return is_looped(section)
        case _:
            return False


def _width_on_pin(section: Section) -> float:
    """Thickness of all eyes together [in]. Raises NotMeasured."""
    match section:
        case Plates():
            return sum(measured(one.thickness, "thickness") for one in section.plates)
        case Eyebars():
            return sum(
                measured(one.thickness if one.head_thickness is None else one.head_thickness,
                         "thickness of head")
                for one in section.bars
            )
        case Rods():
            return sum(measured(one.size, "size") for one in section.rods)
        case _:
            raise NotMeasured("", "what bears on its pin")


def _eyes(
    hanger: Hanger, section: Plates, by: FloorRules, values: Values, *, keeps: float
) -> list[Strength]:
    """Plates at their pin's hole, by the proportions of heads. Raises NotMeasured, OutOfRange."""
    assert hanger.bar is not None
    hole = measured(hanger.hole, "diameter of the hole")
    beyond = measured(hanger.beyond, "metal beyond the hole")
    built = hanger.bar.as_built
    body = pull_on_area(by.bending, hanger.bar.material.yield_stress, area(built))
    wide = min(measured(one.width, "width") for one in section.plates)
    left = sum(measured(one.thickness, "thickness") for one in section.plates)
    found = []
    for check, ratio in (
        ("plate across its pin hole", head_across(
            wide, hole, head_thickness=left, body_area=area(built),
            proportion=values.number("eyebar.head across the hole"),
        )),
        ("plate beyond its pin hole", head_beyond(
            beyond, head_thickness=left, body_area=area(built),
            proportion=values.number("eyebar.head beyond the hole"),
        )),
    ):
        if ratio < 1.0:
            found.append(Strength(
                check=check, effect=Effect.HUNG, capacity=reduced_pull(ratio, body) * keeps,
                unit="kip", divisor=1.0, remarks=by.bending.remarks,
            ))
    return found


def _bend(hanger: Hanger, section: object) -> _Bend:
    if not isinstance(section, Rods) or any(one.shape is not RodShape.ROUND
                                            for one in section.rods):
        raise NotMeasured("", "diameter of its bent rod")
    rod = min(measured(one.size, "diameter") for one in section.rods)
    inside = measured(hanger.inside, "clear width between its legs")
    return _Bend(rod=rod, over=max(len(section.rods) // 2, 1), radius=(inside + rod) / 2)


def _bearing(by: FloorRules, values: Values, stress: float, on: float) -> Strength:
    """Bearing on the pin, `on` its projected area [in2]."""
    if by.bending.method is Method.ALLOWABLE_STRESS:
        part = values.number(f"hanger.bearing on the pin.{by.bending.level}")
        capacity = part_of_yield(part, stress)
    else:
        part = values.number("hanger.bearing on the pin.load-and-resistance")
        capacity = factored_stress(by.bending.reduction, part, stress)
    return Strength(
        check="bearing on the pin", effect=Effect.HUNG, capacity=capacity, unit="ksi", divisor=on
    )


def _bent(
    by: FloorRules, values: Values, stress: float, bend: _Bend, moment: float
) -> Strength:
    """Bending over the pin; by load and resistance to the plastic moment, as for pins."""
    if by.bending.method is Method.ALLOWABLE_STRESS:
        part = values.number(f"hanger.bent over its pin.{by.bending.level}")
        capacity, modulus = part_of_yield(part, stress), rod_modulus(bend.rod)
    else:
        factor = values.number("resistance factor.flexure")
        capacity = factored_stress(by.bending.reduction, factor, stress)
        modulus = rod_plastic_modulus(bend.rod)
    return Strength(
        check="bending of the rod over its pin", effect=Effect.HUNG, capacity=capacity, unit="ksi",
        divisor=modulus * bend.over / moment,
    )


def hanger_area(hanger: Hanger) -> float:
    """Area of all its legs [in2]. Raises NotMeasured."""
    if hanger.bar is None:
        raise NotMeasured(hanger.address, "section")
    return area(hanger.bar.left)
