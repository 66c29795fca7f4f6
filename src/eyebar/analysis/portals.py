"""A portal under wind: two posts, what joins their heads, and the points where they do not bend.

The method of the textbooks of 1900: both posts hold half of the wind each; a post whose foot is
held does not bend half-way up to its lowest fastening, one on a hinge does not bend at its foot.
"""

from dataclasses import dataclass

from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula, procedure

METHOD = (
    "textbooks of about 1900 on portal bracing (J. B. Johnson and others, Modern Framed Structures;"
    " M. S. Ketchum), from memory"
)
SHEAR = Symbol("what each post holds of the wind", "kip", "shear", low=0.5, high=20.0)
WIND = Symbol("wind at the posts' heads", "kip", "wind", low=1.0, high=40.0)
LENGTH = Symbol("length of a post", "in", "length", low=150.0, high=400.0)
FREE = Symbol("from the foot to the lowest thing fastened to the post", "in", "free", low=80.0,
              high=149.0)
STILL = Symbol("from the foot to where the post does not bend", "in", "still", low=0.0, high=75.0)
SPACING = Symbol("distance of the posts", "in", "spacing", low=140.0, high=300.0)
DOWN = Symbol("from the head down to the lower fastening", "in", "down", low=20.0, high=60.0)
ALONG = Symbol("along the strut to the knee's upper end", "in", "knee_along", low=20.0, high=60.0)
KNEE = Symbol("part across of the knee's force, or a flange's force at the post", "kip",
              "held_across", low=1.0, high=60.0)
STRUT = "strut"
KNEES = "strut with knees"
PUSH_OF_STRUT = Symbol("push of the strut beside the windward post", "kip")


@formula(
    "x_0 = min(c / 2, N * a / (2 * H))",
    result=Symbol("from the foot to where the post does not bend", "in"),
    c=FREE,
    N=Symbol("thrust at the foot that is always there", "kip", "held_down", low=0.0, high=60.0),
    a=Symbol("width over which the foot bears", "in", "width", low=0.0, high=20.0),
    H=SHEAR,
    source=METHOD + ": a foot is held as far as its thrust, at the edge of what it bears on, holds "
    "it down",
)
def still_point(free: float, held_down: float, width: float, shear: float) -> float:
    """How far above its foot a post does not bend [in]: half-way up, or less.

    Lengths [in], forces [kip]; width 0 is a hinge. Scalars. Limits: shear above 0.
    """
    return min(free / 2, held_down * width / (2 * shear))


@formula(
    "T = R * (l - x_0) / b",
    result=Symbol("push of the leeward post and pull of the windward one", "kip"),
    R=WIND,
    l=LENGTH,
    x_0=STILL,
    b=SPACING,
    source=METHOD,
)
def post_thrust(wind: float, length: float, still: float, spacing: float) -> float:
    """What the wind adds to the leeward post's push and takes from the windward one's [kip].

    Force [kip], lengths [in]. Scalars or arrays. Limits: spacing above 0.
    """
    return wind * (length - still) / spacing


@formula(
    "M = H * x_0",
    result=Symbol("moment at the post's foot", "kip in"),
    H=SHEAR,
    x_0=STILL,
    source=METHOD,
)
def moment_at_foot(shear: float, still: float) -> float:
    """Moment of a post at its foot [kip in].

    Force [kip], length [in]. Scalars or arrays. Limits: none.
    """
    return shear * still


@formula(
    "M = H * (c - x_0)",
    result=Symbol("moment of the post at its lowest fastening", "kip in"),
    H=SHEAR,
    c=FREE,
    x_0=STILL,
    source=METHOD,
)
def moment_at_fastening(shear: float, free: float, still: float) -> float:
    """Moment of a post where the lowest thing is fastened to it [kip in].

    Force [kip], lengths [in]. Scalars or arrays. Limits: none.
    """
    return shear * (free - still)


@formula(
    "K = H * (l - x_0) / d",
    result=Symbol("part across of the knee's force, or a flange's force at the post", "kip"),
    H=SHEAR,
    l=LENGTH,
    x_0=STILL,
    d=DOWN,
    source=METHOD + ": moments of one post about its head",
)
def force_across(shear: float, length: float, still: float, down: float) -> float:
    """What the lower fastening gives the post across the bridge [kip].

    Force [kip], lengths [in]. Scalars or arrays. Limits: down above 0.
    """
    return shear * (length - still) / down


@formula(
    "F = K * sqrt(e**2 + d**2) / e",
    result=Symbol("force of a knee", "kip"),
    K=KNEE,
    e=ALONG,
    d=DOWN,
    source="statics",
)
def knee_force(held_across: float, knee_along: float, down: float) -> float:
    """Force along a knee, pull windward and push leeward [kip].

    Force [kip], lengths [in]. Scalars or arrays. Limits: along above 0.
    """
    return float(held_across * (knee_along**2 + down**2) ** 0.5 / knee_along)


@formula(
    "S = H + K",
    result=PUSH_OF_STRUT,
    H=SHEAR,
    K=KNEE,
    source=METHOD + ": the joint at the windward head, with all of the wind there",
)
def strut_push(shear: float, held_across: float) -> float:
    """Push of a portal's strut, or its upper flange, beside the windward post [kip].

    Forces [kip]. Scalars or arrays. Limits: none.
    """
    return shear + held_across


@formula(
    "M = H * (l - x_0) * (b - 2 * e) / b",
    result=Symbol("moment of the strut at the knees, or at the posts without knees", "kip in"),
    H=SHEAR,
    l=LENGTH,
    x_0=STILL,
    b=SPACING,
    e=Symbol("along the strut to the knee's upper end, 0 without knees", "in", "knee_along",
             low=0.0, high=60.0),
    source=METHOD,
)
def strut_moment(
    *, shear: float, length: float, still: float, spacing: float, knee_along: float
) -> float:
    """Moment of a portal's strut at the upper ends of its knees [kip in].

    Force [kip], lengths [in]. Scalars or arrays. Limits: along under half of the spacing.
    """
    return shear * (length - still) * (spacing - 2 * knee_along) / spacing


@dataclass(frozen=True, slots=True, kw_only=True)
class Portal:
    """Two posts of a `length` at a `spacing` [in], their heads joined in one of the `form`s.

    `down` from the head to the lower fastening, `along` to a knee's upper end [in], both 0 for a
    plain strut fast to the posts; `thrust` at a foot that is always there [kip] and `foot_width`
    over which it bears [in], 0 for a hinge.
    """

    form: str
    length: float
    spacing: float
    down: float = 0.0
    along: float = 0.0
    thrust: float = 0.0
    foot_width: float = 0.0

    def __post_init__(self) -> None:
        if not (0.0 <= self.down < self.length and 0.0 <= 2.0 * self.along < self.spacing):
            raise OutOfRange(
                "portal", f"fastened {self.down:g} in down, {self.along:g} in along",
                f"within posts of {self.length:g} in, {self.spacing:g} in apart",
            )
        if self.form != STRUT and not self.down > 0.0:
            raise OutOfRange(f"depth of a portal ({self.form})", self.down, "over zero")


@dataclass(frozen=True, slots=True, kw_only=True)
class PortalForces:
    """What wind does to a portal: forces [kip], moments [kip in], lengths [in].

    `shear` of each post, `still` where it does not bend above the foot, `thrust` of the leeward
    post (the windward one is pulled as much); moments at `foot` and lowest `fastening`; `knee` (or
    lower flange) pull or push; `strut` push (of a lattice or plate its upper flange), `strut_pull`
    at the other end; `strut_moment`, 0 for lattice and plate; `web_shear` between the posts.
    """

    shear: float
    still: float
    thrust: float
    foot: float
    fastening: float
    knee: float
    strut: float
    strut_pull: float
    strut_moment: float
    web_shear: float


@procedure(
    "portal under wind",
    source=METHOD,
    steps=(
        "each post holds half of the wind at its foot",
        "where the posts do not bend: at the foot, or as high as its thrust holds it, half-way at "
        "most",
        "thrust by moments of the whole, moments of the posts",
        "knees or flanges by moments of one post about its head; the strut by its joints",
    ),
)
def portal_forces(portal: Portal, wind: float) -> PortalForces:
    """Forces and moments of a portal under a wind at its windward head.

    Wind [kip]. Scalars. Limits: posts alike; what joins them is much stiffer than they are.
    """
    shear = wind / 2.0
    free = portal.length - portal.down
    held = portal.foot_width > 0.0 and portal.thrust > 0.0 and shear > 0.0
    still = still_point(free, portal.thrust, portal.foot_width, shear) if held else 0.0
    thrust = post_thrust(wind, portal.length, still, portal.spacing)
    if portal.form == STRUT:
        across = knee = 0.0
        push = pull = shear
    else:
        across = force_across(shear, portal.length, still, portal.down)
        knee = (
            knee_force(across, portal.along, portal.down) if portal.form == KNEES else across
        )
        push, pull = strut_push(shear, across), max(across - shear, 0.0)
    bends = portal.form in (STRUT, KNEES)
    return PortalForces(
        shear=shear, still=still, thrust=thrust, foot=moment_at_foot(shear, still),
        fastening=moment_at_fastening(shear, free, still), knee=knee, strut=push,
        strut_pull=pull if portal.form != STRUT else 0.0,
        strut_moment=strut_moment(
            shear=shear, length=portal.length, still=still, spacing=portal.spacing,
            knee_along=portal.along,
        ) if bends else 0.0,
        web_shear=thrust,
    )
