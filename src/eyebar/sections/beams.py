"""A section as a beam: what bends, what shears, what holds its compressed flange from turning.

For rolled I-beams and channels, and for one web with angles and plates. Several rolled shapes side
by side act together; what turns one of them sideways is its own.
"""

from dataclasses import dataclass

from eyebar.errors import NotMeasured
from eyebar.formula import Symbol, formula
from eyebar.sections import closed_forms as form
from eyebar.sections.amounts import measured
from eyebar.sections.known import angle_sizes, plate_sizes, thickness_of_flange
from eyebar.sections.properties import properties
from eyebar.sections.shapes import Given, PlatesAndAngles, Rolled, RolledShape, Section

WEB = Symbol("web thickness", "in", "web", low=0.2, high=1.0)
FLANGE = Symbol("width of flange", "in", "flange", low=2.0, high=12.0)
FLANGE_THICKNESS = Symbol("mean flange thickness", "in", "flange_thickness", low=0.2, high=1.2)
DEPTH = Symbol("depth", "in", "depth", low=4.0, high=30.0)
GEOMETRY = "plane geometry"


@dataclass(frozen=True, slots=True, kw_only=True)
class BeamSection:
    """A section in bending about its level axis.

    `modulus` [in3] of the farther fibre and `plastic` (None: first yield is all that counts), the
    web's `depth` and thickness with the area that shears [in2], all pieces together; `one` is how
    much of `modulus` belongs to one piece. Of one piece: compressed `flange` and its thickness,
    `projection` of the part that may wave over its thickness, inertia of that flange about the
    upright axis, torsion constant [in4], `height` between the flanges' middles, radii [in].
    """

    modulus: float
    plastic: float | None
    one: float
    web: float
    web_depth: float
    web_area: float
    overall: float
    flange: float
    flange_thickness: float
    at_web: float
    projection: float
    flange_inertia: float
    torsion: float
    r_y: float
    r_t: float


@formula(
    "Z = b * t_f * (d - t_f) + t_w * (d - 2 * t_f)**2 / 4",
    result=Symbol("plastic section modulus", "in3"),
    b=FLANGE,
    t_f=FLANGE_THICKNESS,
    d=DEPTH,
    t_w=WEB,
    source=GEOMETRY,
)
def plastic_modulus(depth: float, web: float, flange: float, flange_thickness: float) -> float:
    """Plastic section modulus of an I-beam about its level axis [in3].

    Lengths [in]; scalars or arrays. Limits: flanges thinner than half of the depth.
    """
    flanges = flange * flange_thickness * (depth - flange_thickness)
    return flanges + web * (depth - 2 * flange_thickness) ** 2 / 4


@formula(
    "S = I / y",
    result=Symbol("section modulus", "in3"),
    I=Symbol("moment of inertia", "in4", "inertia", low=5.0, high=900.0),
    y=Symbol("distance of the farther fibre", "in", "fibre", low=1.0, high=15.0),
    source="definition",
)
def section_modulus(inertia: float, fibre: float) -> float:
    """Section modulus [in3].

    Inertia [in4], distance [in]; scalars or arrays. Limits: distance above 0.
    """
    return inertia / fibre


@formula(
    "J = (2 * b * t_f**3 + h * t_w**3) / 3",
    result=Symbol("torsion constant of an I-beam", "in4"),
    b=FLANGE,
    t_f=FLANGE_THICKNESS,
    h=Symbol("depth of the web between the flanges", "in", "web_depth", low=3.0, high=29.0),
    t_w=WEB,
    source="three thin plates",
)
def torsion_constant(
    flange: float, flange_thickness: float, web_depth: float, web: float
) -> float:
    """Torsion constant of two flanges and a web [in4].

    Lengths [in]; scalars or arrays. Limits: thin plates.
    """
    return (2 * flange * flange_thickness**3 + web_depth * web**3) / 3


@formula(
    "r_t = b / sqrt(12 * (1 + h * t_w / (6 * b * t_f)))",
    result=Symbol("radius of gyration of the compressed flange with a third of its web", "in"),
    b=FLANGE,
    h=Symbol("depth of the web between the flanges", "in", "web_depth", low=3.0, high=29.0),
    t_w=WEB,
    t_f=FLANGE_THICKNESS,
    source="LRFD Bridge Design Specifications 6.10.8.2.3, half of the web compressed, from memory",
)
def flange_radius(
    flange: float, flange_thickness: float, web_depth: float, web: float
) -> float:
    """Radius of gyration of the compressed flange and a third of the compressed web [in].

    Lengths [in]. Scalars. Limits: a flange of one thickness; half of the web is compressed.
    """
    part = web_depth * web / (6 * flange * flange_thickness)
    radius: float = flange / (12 * (1 + part)) ** 0.5
    return radius


def beam_section(section: Section, *, sense: int = 1) -> BeamSection:
    """A section as a beam. Raises NotMeasured for a size that is unknown or a shape that is none.

    The flange that is compressed is the upper one, with `sense` -1 the lower one; where a given
    section tells only its inertia, what needs its plates is not known.
    """
    match section:
        case Rolled(shape=RolledShape.I | RolledShape.CHANNEL):
            return _rolled(section)
        case PlatesAndAngles(middle=middle) if middle is not None:
            return _riveted(section, sense)
        case _:
            raise NotMeasured("", "its web and flanges, which a beam is rated by,")


def bending_modulus(section: Section) -> float:
    """Section modulus of the farther fibre [in3]. Raises NotMeasured."""
    found = properties(section)
    return section_modulus(found.i_x, max(found.top, found.bottom))


def is_given(section: Section) -> bool:
    """Whether a section is known by its properties alone."""
    return isinstance(section, Given)


def _rolled(section: Rolled) -> BeamSection:
    depth, web = measured(section.depth, "depth"), measured(section.web, "web thickness")
    flange = measured(section.flange, "width of flange")
    thick = thickness_of_flange(section.flange_thickness, section.taper)
    taper = section.taper
    at_web = thick if taper is None else measured(taper.at_web, "thickness of flange at the web")
    number, is_i = section.number, section.shape is RolledShape.I
    modulus = bending_modulus(section)
    inner = depth - 2 * thick
    # A channel turns as an I-beam of its one flange would; loaded beside its shear centre it also
    # twists, which the deck must hold: its plastic reserve is not counted.
    return BeamSection(
        modulus=modulus, one=modulus / number, web=web, web_depth=inner,
        plastic=number * plastic_modulus(depth, web, flange, thick) if is_i else None,
        web_area=number * form.rectangle_area(web, depth), overall=depth, flange=flange,
        flange_thickness=thick, at_web=at_web,
        projection=(flange / 2 if is_i else flange) / thick,
        flange_inertia=form.rectangle_inertia(thick, flange),
        torsion=torsion_constant(flange, thick, inner, web), r_y=properties(section).r_y,
        r_t=flange_radius(flange, thick, inner, web),
    )


def _riveted(section: PlatesAndAngles, sense: int) -> BeamSection:
    assert section.middle is not None
    height, web = plate_sizes(section.middle, "web")
    both = (section.near, section.far)
    angles = [
        angle for angle in (side.top if sense > 0 else side.bottom for side in both)
        if angle is not None
    ]
    if not angles:
        raise NotMeasured("", f"angles along its {'upper' if sense > 0 else 'lower'} edge")
    cover = section.cover if sense > 0 else section.bottom
    _, _, level, thick = angle_sizes(angles[0])
    flange = len(angles) * level + web
    whole = thick
    inertia = form.rectangle_inertia(thick, flange)
    if cover is not None:
        width, plate = plate_sizes(cover, "cover plate")
        inertia += form.rectangle_inertia(plate, width)
        whole = thick + plate
        flange = max(flange, width)
    modulus = bending_modulus(section)
    return BeamSection(
        modulus=modulus, one=modulus, plastic=None, web=web, web_depth=height,
        web_area=form.rectangle_area(web, height), overall=height, flange=flange,
        flange_thickness=whole, at_web=thick, projection=level / thick, flange_inertia=inertia,
        torsion=torsion_constant(flange, whole, height, web), r_y=properties(section).r_y,
        r_t=flange_radius(flange, whole, height, web),
    )

