"""How open sections stand against twisting: torsion constant, warping constant, shear centre.

Thin plates that meet in one point (angles, tees, stars) do not warp: their shear centre is that
point. Fillets and tapers are left out, which is on the safe side. Hollow and laced sections are
stiff against twisting and have no entry here.
"""

import math
from dataclasses import dataclass, replace

from eyebar.formula import Symbol, formula
from eyebar.sections.amounts import measured
from eyebar.sections.built import Angles, Placed
from eyebar.sections.composed import angles_parts
from eyebar.sections.gathered import gathered
from eyebar.sections.known import angle_sizes, thickness_of_flange
from eyebar.sections.pieces import Angle, Channel
from eyebar.sections.rolled import channel_properties, rolled
from eyebar.sections.shapes import Rolled, RolledShape, Section

REACH = Symbol("width of flange from the middle of the web", "in", "reach", low=1.5, high=4.0)
FLANGE_THICKNESS = Symbol("mean flange thickness", "in", "flange_thickness", low=0.2, high=0.9)
WEB = Symbol("web thickness", "in", "web", low=0.2, high=0.9)
BETWEEN = Symbol(
    "distance between the middles of the flanges", "in", "flange_distance", low=4.0, high=20.0
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Twist:
    """What twisting needs of one open piece.

    `area` [in2], inertias and their product about its level and upright axes [in4], `torsion`
    [in4], `warping` [in6], and its shear centre, `aside` and `above` its centre of gravity [in].
    """

    area: float
    i_x: float
    i_y: float
    product: float
    torsion: float
    warping: float
    aside: float
    above: float


@formula(
    "J = b * t**3 / 3",
    result=Symbol("torsion constant of a thin plate", "in4"),
    b=Symbol("width of the plate", "in", "width", low=2.0, high=20.0),
    t=Symbol("thickness", "in", "thickness", low=0.2, high=1.0),
    source="Saint-Venant, thin plates",
)
def plate_torsion(width: float, thickness: float) -> float:
    """Torsion constant of a thin plate [in4].

    Lengths [in]; scalars or arrays. Limits: a plate much wider than thick; the ends are counted
    full, which makes up for the fillets left out.
    """
    return width * thickness**3 / 3


@formula(
    "C_w = I_y * h**2 / 4",
    result=Symbol("warping constant of an I-beam", "in6"),
    I_y=Symbol("moment of inertia about the web", "in4", "side_inertia", low=1.0, high=90.0),
    h=BETWEEN,
    source="theory of thin-walled bars, from memory",
)
def i_warping(side_inertia: float, flange_distance: float) -> float:
    """Warping constant of an I-beam with flanges alike [in6].

    Inertia [in4], length [in]; scalars or arrays. Limits: none.
    """
    return side_inertia * flange_distance**2 / 4


@formula(
    "C_w = t_f * b_m**3 * h**2 / 12 * (3 * b_m * t_f + 2 * h * t_w) / (6 * b_m * t_f + h * t_w)",
    result=Symbol("warping constant of a channel", "in6"),
    t_f=FLANGE_THICKNESS,
    b_m=REACH,
    h=BETWEEN,
    t_w=WEB,
    source="theory of thin-walled bars, from memory",
)
def channel_warping(
    flange_thickness: float, reach: float, flange_distance: float, web: float
) -> float:
    """Warping constant of a channel [in6].

    Lengths [in]; scalars or arrays. Limits: none.
    """
    shape = (3 * reach * flange_thickness + 2 * flange_distance * web) / (
        6 * reach * flange_thickness + flange_distance * web
    )
    return flange_thickness * reach**3 * flange_distance**2 / 12 * shape


@formula(
    "x_s = 3 * b_m**2 * t_f / (6 * b_m * t_f + h * t_w)",
    result=Symbol("shear centre of a channel, behind the middle of its web", "in"),
    b_m=REACH,
    t_f=FLANGE_THICKNESS,
    h=BETWEEN,
    t_w=WEB,
    source="theory of thin-walled bars, from memory",
)
def channel_shear_centre(
    reach: float, flange_thickness: float, flange_distance: float, web: float
) -> float:
    """Distance of a channel's shear centre from the middle of its web, behind its back [in].

    Lengths [in]; scalars or arrays. Limits: none.
    """
    return 3 * reach**2 * flange_thickness / (6 * reach * flange_thickness + flange_distance * web)


def twists(section: Section) -> tuple[Twist, ...]:
    """What twisting needs of each different piece of a section; none where it has no say.

    Raises NotMeasured (part left empty).
    """
    match section:
        case Rolled():
            return (_rolled(section),)
        case Angles(separate=True):
            alone = (Angles(angles=(one,), placed=Placed.SINGLE) for one in section.angles)
            return tuple(_angles(one) for one in dict.fromkeys(alone))
        case Angles(placed=Placed.SINGLE | Placed.BACK_TO_BACK | Placed.STAR):
            return (_angles(section),)
        case _:
            return ()


def _rolled(section: Rolled) -> Twist:
    depth, web = measured(section.depth, "depth"), measured(section.web, "web thickness")
    flange = measured(section.flange, "width of flange")
    thickness = thickness_of_flange(section.flange_thickness, section.taper)
    whole = rolled(replace(section, number=1))
    between, warping, aside, above = depth - thickness, 0.0, 0.0, 0.0
    flanges = 2 if section.shape in (RolledShape.I, RolledShape.CHANNEL) else 1
    match section.shape:
        case RolledShape.I:
            warping = i_warping(whole.i_y, between)
        case RolledShape.CHANNEL:
            reach = flange - web / 2
            warping = channel_warping(thickness, reach, between, web)
            behind = channel_shear_centre(reach, thickness, between, web)
            aside = web / 2 - behind - _centre(section)
        case RolledShape.TEE:
            above = whole.top - thickness / 2
        case RolledShape.ANGLE:
            aside, above = web / 2 - whole.x_bar, whole.top - thickness / 2
    torsion = plate_torsion(depth - flanges * thickness, web)
    torsion += flanges * plate_torsion(flange, thickness)
    return Twist(
        area=whole.area, i_x=whole.i_x, i_y=whole.i_y, product=whole.product, torsion=torsion,
        warping=warping, aside=aside, above=above,
    )


def _centre(section: Rolled) -> float:
    """Centre of gravity of a channel, from the back of its web [in]."""
    one = Channel(
        depth=section.depth, web=section.web, flange=section.flange, taper=section.taper,
        flange_thickness=section.flange_thickness,
    )
    return channel_properties(one).centre


def _angles(section: Angles) -> Twist:
    parts = angles_parts(section)
    whole = gathered(parts)
    x, y = 0.0, 0.0
    if section.placed is not Placed.STAR:
        _, upright, _, level = angle_sizes(section.angles[0])
        y = max(part.top for part in parts) - level / 2
        x = upright / 2 if section.placed is Placed.SINGLE else 0.0
    return Twist(
        area=whole.area, i_x=whole.i_x, i_y=whole.i_y, product=whole.product,
        torsion=math.fsum(_angle_torsion(angle) for angle in section.angles), warping=0.0,
        aside=x - whole.x, above=y - whole.y,
    )


def _angle_torsion(angle: Angle) -> float:
    upright, upright_thickness, level, level_thickness = angle_sizes(angle)
    return plate_torsion(upright - level_thickness, upright_thickness) + plate_torsion(
        level, level_thickness
    )
