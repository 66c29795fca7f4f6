"""Single angles pushed through one leg: eccentricity and what the ends hold, as one slenderness."""

from eyebar.formula import Symbol, formula
from eyebar.sections import closed_forms as form
from eyebar.sections.amounts import measured
from eyebar.sections.built import Angles, Placed
from eyebar.sections.closed_forms import radius_of_gyration
from eyebar.sections.known import angle_sizes
from eyebar.sections.shapes import Rolled, RolledShape, Section

ONE_LEG = "LRFD Bridge Design Specifications 6.9.4.4, web members of plane trusses, from memory"
MOST_UNEQUAL = 1.7
"""Longer over shorter leg up to which the rule is for."""
Legs = tuple[float, float, float, float]


@formula(
    "s = 72 + 0.75 * L / r_a if L / r_a <= 80 else 32 + 1.25 * L / r_a",
    result=Symbol("slenderness that counts for an angle held by its longer leg", "1"),
    L=Symbol("length between its joints", "in", "length", low=30.0, high=200.0),
    r_a=Symbol("radius of gyration about the axis along the leg that is held", "in", "leg_radius",
               low=0.6, high=2.0),
    source=ONE_LEG,
)
def held_by_longer_leg(length: float, leg_radius: float) -> float:
    """Slenderness that counts for an angle held by one of equal legs, or by its longer one [1].

    Lengths [in]. Scalars. Limits: held alike at both ends, by two rivets or more.
    """
    slenderness = length / leg_radius
    return 72 + 0.75 * slenderness if slenderness <= 80 else 32 + 1.25 * slenderness


@formula(
    "s = max(s_1 + 4 * ((b_l / b_s)**2 - 1), 0.95 * L / r_z)",
    result=Symbol("slenderness that counts for an angle held by its shorter leg", "1"),
    s_1=Symbol("slenderness by the rule of equal legs", "1", "equal_legs", low=72.0, high=200.0),
    b_l=Symbol("longer leg", "in", "longer", low=3.0, high=6.0),
    b_s=Symbol("shorter leg", "in", "shorter", low=2.0, high=3.0),
    L=Symbol("length between its joints", "in", "length", low=30.0, high=200.0),
    r_z=Symbol("least radius of gyration", "in", "least_radius", low=0.4, high=1.2),
    source=ONE_LEG,
)
def held_by_shorter_leg(
    equal_legs: float, longer: float, shorter: float, *, length: float, least_radius: float
) -> float:
    """Slenderness that counts for an angle held by its shorter leg [1].

    Slenderness [1], lengths [in]. Scalars. Limits: held alike at both ends, by two rivets or more.
    """
    unequal = 4 * ((longer / shorter) ** 2 - 1)
    return max(equal_legs + unequal, 0.95 * length / least_radius)


def slenderness_by_one_leg(
    section: Section, length: float
) -> tuple[float, tuple[str, ...]] | None:
    """The worst slenderness of single angles by either leg [1], and remarks; None for others.

    Raises NotMeasured (part left empty).
    """
    angles = _single_angles(section)
    if not angles:
        return None
    worst = max(_slenderness(legs, length) for legs in angles)
    remarks = ["taken as held by one leg at its ends, whichever is the worse"]
    if any(max(one[0], one[2]) > MOST_UNEQUAL * min(one[0], one[2]) for one in angles):
        remarks.append("legs more unequal than the rule of one leg is for")
    return worst, tuple(remarks)


def _single_angles(section: Section) -> tuple[Legs, ...]:
    """Legs and thicknesses of angles that stand alone: upright, its thickness, level, its."""
    match section:
        case Rolled(shape=RolledShape.ANGLE):
            return ((
                measured(section.depth, "depth"), measured(section.web, "web thickness"),
                measured(section.flange, "width of flange"),
                measured(section.flange_thickness, "flange thickness"),
            ),)
        case Angles(placed=Placed.SINGLE) | Angles(separate=True):
            return tuple(angle_sizes(angle) for angle in dict.fromkeys(section.angles))
        case _:
            return ()


def _slenderness(legs: Legs, length: float) -> float:
    upright, upright_thickness, level, level_thickness = legs
    turned = (level, level_thickness, upright, upright_thickness)
    size = form.angle_area(*legs)
    height, side = form.angle_height(*legs, area=size), form.angle_height(*turned, area=size)
    i_x = form.angle_inertia(*legs, height=height)
    i_y = form.angle_inertia(*turned, height=side)
    product = form.angle_product(*legs, side=side, height=height)
    least = radius_of_gyration(form.least_inertia(i_x, i_y, product), size)
    # The axis along the upright leg is the upright one.
    along_upright, along_level = radius_of_gyration(i_y, size), radius_of_gyration(i_x, size)
    longer, shorter = max(upright, level), min(upright, level)
    by_longer = held_by_longer_leg(length, along_upright if upright >= level else along_level)
    if longer == shorter:
        return max(by_longer, held_by_longer_leg(length, min(along_upright, along_level)))
    other = held_by_longer_leg(length, along_level if upright >= level else along_upright)
    by_shorter = held_by_shorter_leg(
        other, longer, shorter, length=length, least_radius=least
    )
    return max(by_longer, by_shorter)
