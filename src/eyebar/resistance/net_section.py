"""The net section of a member in pull: what rivet holes leave, and what one leg leaves out."""

import math

from eyebar.bridge.parts import Bar
from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula, remembered
from eyebar.office import Values
from eyebar.resistance.punched import hole_area, lines_of_holes, net_of_holes, net_width
from eyebar.resistance.rules import Rules
from eyebar.resistance.tension import assumed_net_area
from eyebar.sections.built import Angles, Placed
from eyebar.sections.closed_forms import rectangle_area
from eyebar.sections.known import angle_sizes
from eyebar.sections.properties import measured
from eyebar.sections.punching import RivetHoles, punched_plates
from eyebar.sections.shapes import Eyebars, Given, Rods, Rolled, RolledShape, Section
from eyebar.terms import Method

ONE_LEG = "taken as held by one leg at its ends"


@formula(
    "A_e = A_n - A_l / 2",
    result=Symbol("net area that counts of an angle held by one leg", "in2"),
    A_n=Symbol("net area", "in2", "net_area", low=2.0, high=12.0),
    A_l=Symbol("area of the leg that is not held", "in2", "leg_area", low=0.5, high=3.0),
    source="Standard Specifications 10.9, from memory: half the unheld leg is left out",
)
def net_by_one_leg(net_area: float, leg_area: float) -> float:
    """Net area that counts of an angle held by one leg, older methods [in2].

    Areas [in2]; scalars or arrays. Limits: none.
    """
    return net_area - leg_area / 2


@formula(
    "A_e = U * A_n",
    result=Symbol("net area that counts of an angle held by one leg", "in2"),
    U=Symbol("shear lag factor", "1", "lag", low=0.5, high=1.0),
    A_n=Symbol("net area", "in2", "net_area", low=2.0, high=12.0),
    source="LRFD Bridge Design Specifications 6.8.2.2, from memory",
)
def net_by_shear_lag(lag: float, net_area: float) -> float:
    """Net area that counts of an angle held by one leg, load and resistance [in2].

    Factor [1], area [in2]; scalars or arrays. Limits: none.
    """
    return lag * net_area


def net_area(
    bar: Bar, size: float, rules: Rules, values: Values
) -> tuple[float | None, tuple[str, ...]]:
    """Net area [in2] of a bar of this `size` and remarks; None where there is no check of it.

    Eyebars and rods are not punched: their heads and threads are checks of their own. By load and
    resistance every body is also checked against breaking. Raises NotMeasured, OutOfRange.
    """
    section = bar.left
    if isinstance(section, Eyebars | Rods):
        return (size if rules.method is Method.LOAD_AND_RESISTANCE else None), ()
    net, remarks = _punched(bar, size, values)
    legs = _unheld_legs(section)
    if not legs:
        return net, remarks
    if rules.method is Method.LOAD_AND_RESISTANCE:
        net = net_by_shear_lag(values.number("shear lag.angle by one leg"), net)
    else:
        net = net_by_one_leg(net, math.fsum(legs))
    return net, (*remarks, ONE_LEG)


def _punched(bar: Bar, size: float, values: Values) -> tuple[float, tuple[str, ...]]:
    """What the rivet holes of the record leave, or a part of the gross where it has none [in2]."""
    if isinstance(bar.left, Given) and bar.left.net_area is not None:
        return bar.left.net_area, ()
    if bar.holes is None:
        part = values.number("net section.holes not recorded")
        remark = f"holes not recorded: net section taken as {part:g} of the gross"
        return assumed_net_area(part, size), (remark,)
    return net_of_holes(size, holes_of(bar.left, bar.holes)), ()


def _holes(section: Section, holes: RivetHoles) -> float:
    """Area that all recorded lines of holes take [in2]."""
    rivet = measured(holes.rivet, "diameter of the rivets")
    plates = punched_plates(section)
    taken = []
    for line in holes.lines:
        if line.where not in plates:
            known = ", ".join(plates) or "none that is punched"
            raise OutOfRange("rivet holes", f"in a {line.where}", f"in one of its plates: {known}")
        gauge = 0.0 if line.lines == 1 else measured(line.gauge, "gauge of the rivet holes")
        for plate in plates[line.where]:
            pattern = lines_of_holes(
                plate.width, lines=line.lines, gauge=gauge, stagger=line.stagger
            )
            left = net_width(plate.width, pattern, rivet)
            taken.append(hole_area(plate.number, plate.width, left, plate.thickness))
    return math.fsum(taken)


holes_of = remembered(_holes)


def _unheld_legs(section: Section) -> list[float]:
    """Areas of the greater legs of angles that stand alone [in2]; none for other sections."""
    match section:
        case Rolled(shape=RolledShape.ANGLE):
            upright = measured(section.depth, "depth"), measured(section.web, "web thickness")
            level = (
                measured(section.flange, "width of flange"),
                measured(section.flange_thickness, "flange thickness"),
            )
            return [max(rectangle_area(*upright), rectangle_area(*level))] * section.number
        case Angles(placed=Placed.SINGLE) | Angles(separate=True):
            sizes = [angle_sizes(angle) for angle in section.angles]
            return [max(rectangle_area(*one[:2]), rectangle_area(*one[2:])) for one in sizes]
        case _:
            return []
