"""What the ties themselves carry: lacing bars and their rivets, battens, the halves between them.

A column that bends brings a shear with its thrust; each rule gives the thrust at which that shear
uses a tie up. The planes of ties share the shear alike.
"""

from eyebar.formula import Symbol, formula

PLANES = Symbol("planes that share the shear", "1", "planes", low=1.0, high=2.0)
SHEAR_PART = Symbol("shear in the ties over the thrust", "1", "shear_part", low=0.01, high=0.05)
APART = Symbol("distance between the halves' centres", "in", "distance", low=5.0, high=20.0)
LENGTH = Symbol("length of a lacing bar", "in", "length", low=8.0, high=25.0)
ADVANCE = Symbol("advance of one lacing bar along the member", "in", "advance", low=3.0, high=20.0)
PITCH = Symbol("distance of battens, centre to centre", "in", "pitch", low=10.0, high=60.0)
VIERENDEEL = "equilibrium of a frame whose pieces bend to and fro, hinges half-way between battens"


@formula(
    "P = n * P_d * h / (v * d)",
    result=Symbol("thrust at which a lacing bar is used up", "kip"),
    n=PLANES,
    P_d=Symbol("force that one lacing bar may take", "kip", "bar_force", low=0.5, high=20.0),
    h=APART,
    v=SHEAR_PART,
    d=LENGTH,
    source="equilibrium of a plane of single lacing",
)
def thrust_of_lacing(
    planes: float, bar_force: float, *, distance: float, shear_part: float, length: float
) -> float:
    """Thrust in the column at which its lacing bars are used up [kip].

    Planes, shear [1], force in a bar [kip], lengths [in]; scalars or arrays. Limits: one bar of
    each plane cut by a section.
    """
    return planes * bar_force * distance / (shear_part * length)


@formula(
    "P = n * P_r * h / (v * max(d, 2 * a))",
    result=Symbol("thrust at which the rivets of the lacing are used up", "kip"),
    n=PLANES,
    P_r=Symbol("what one rivet carries", "kip", "rivet_force", low=1.0, high=15.0),
    h=APART,
    v=SHEAR_PART,
    d=LENGTH,
    a=ADVANCE,
    source="equilibrium: one rivet at the end of a bar, or at the meeting of two, whose forces add "
    "up along the member; the worse is taken",
)
def thrust_of_lacing_rivets(
    planes: float, rivet_force: float, *, distance: float, shear_part: float, length: float,
    advance: float,
) -> float:
    """Thrust in the column at which the rivets of its lacing are used up [kip].

    Planes, shear [1], force of a rivet [kip], lengths [in]. Scalars. Limits: one rivet at each
    fastening.
    """
    return planes * rivet_force * distance / (shear_part * max(length, 2 * advance))


@formula(
    "P = n * V_b * h / (v * a)",
    result=Symbol("thrust at which a batten is sheared off", "kip"),
    n=PLANES,
    V_b=Symbol("shear that one batten may take", "kip", "batten_shear", low=2.0, high=60.0),
    h=APART,
    v=SHEAR_PART,
    a=PITCH,
    source=VIERENDEEL,
)
def thrust_of_sheared_battens(
    planes: float, batten_shear: float, *, distance: float, shear_part: float, pitch: float
) -> float:
    """Thrust in the column at which its battens are sheared off [kip].

    Planes, part [1], shear of a batten [kip], lengths [in]; scalars or arrays. Limits: battens
    alike.
    """
    return planes * batten_shear * distance / (shear_part * pitch)


@formula(
    "P = 2 * n * M_b / (v * a)",
    result=Symbol("thrust at which a batten is bent", "kip"),
    n=PLANES,
    M_b=Symbol("moment that one batten may take in its plane", "kip in", "batten_moment", low=10.0,
               high=400.0),
    v=SHEAR_PART,
    a=PITCH,
    source=VIERENDEEL + "; the moment at the centres of the halves, the safe side",
)
def thrust_of_bent_battens(
    planes: float, batten_moment: float, *, shear_part: float, pitch: float
) -> float:
    """Thrust in the column at which its battens are used up in bending [kip].

    Planes, part [1], moment of a batten [kip in], length [in]; scalars or arrays. Limits: battens
    alike.
    """
    return 2 * planes * batten_moment / (shear_part * pitch)


@formula(
    "e = v * a / 4",
    result=Symbol("moment in one half between battens, over the thrust", "in"),
    v=SHEAR_PART,
    a=PITCH,
    source=VIERENDEEL + ", the shear shared by both halves",
)
def offset_between_battens(shear_part: float, pitch: float) -> float:
    """Moment that bends one half beside a batten, over the whole thrust [in].

    Part [1], length [in]; scalars or arrays. Limits: halves alike.
    """
    return shear_part * pitch / 4


@formula(
    "V = psi * c * F_y * b * t",
    result=Symbol("shear that a plate may take", "kip"),
    psi=Symbol("condition and system factor together", "1", "reduction", low=0.85, high=1.0),
    c=Symbol("shear stress over yield stress", "1", "part", low=0.3, high=0.6),
    F_y=Symbol("yield stress", "ksi", "yield_stress", low=20.0, high=50.0),
    b=Symbol("width of the plate", "in", "width", low=4.0, high=14.0),
    t=Symbol("thickness of a plate or a bar", "in", "thickness", low=0.2, high=0.75),
    source="Manual for Bridge Evaluation 6B.5.2.1, Standard Specifications 10.48.8, LRFD Bridge "
    "Design Specifications 6.10.9, from memory",
)
def plate_shear(
    reduction: float, part: float, yield_stress: float, *, width: float, thickness: float
) -> float:
    """Shear that a stocky plate may take in its plane [kip].

    Factors [1], yield stress [ksi], lengths [in]; scalars or arrays. Limits: a plate too stocky to
    buckle in shear.
    """
    return reduction * part * yield_stress * width * thickness


@formula(
    "I = t * b**3 / 12",
    result=Symbol("inertia of a plate in its plane", "in4"),
    t=Symbol("thickness of a plate or a bar", "in", "thickness", low=0.2, high=0.75),
    b=Symbol("width of the plate", "in", "width", low=4.0, high=14.0),
    source="plane geometry",
)
def plate_inertia(thickness: float, width: float) -> float:
    """Inertia of a plate that bends in its own plane [in4].

    Lengths [in]; scalars or arrays. Limits: none.
    """
    return thickness * width**3 / 12
