"""A beam trussed from below: how much the rods take, by least work.

Rods fastened at the beam's two ends are bent round one post at mid-span or two posts alike, at a
distance `drop` under the beam's middle line. One force is unknown: the pull of the rods along the
beam, which is the thrust in it.
"""

from eyebar.formula import Symbol, formula

SPAN = Symbol("span of the beam", "in", "beam_span", low=150.0, high=300.0)
POST = Symbol("from an end to the nearer post", "in", "to_post", low=50.0, high=75.0)
DROP = Symbol("from the beam's middle line to the rods", "in", "drop", low=12.0, high=40.0)
MODULUS = Symbol("modulus of elasticity of the beam", "ksi", "modulus", low=1000.0, high=3.0e4)
LEAST_WORK = "least work: W. H. Burr, Ancient and Modern Engineering (1902), article 115"


@formula(
    "u = y * (h * (L - a) / 2 - h * y**2 / (6 * a)) if y <= a else"
    " h * a * (L - a) / 2 - h * a**2 / 6 + h * (a - L / 2)**2 / 2 - h * (y - L / 2)**2 / 2",
    result=Symbol("moments of a unit load and of the rods multiplied along the beam", "in3"),
    y=Symbol("place of the load from the nearer end", "in", "load_at", low=10.0, high=75.0),
    a=POST,
    L=SPAN,
    h=DROP,
    source="the deflection that a moment as the rods' makes where the load is: statics",
)
def moments_multiplied(load_at: float, to_post: float, beam_span: float, drop: float) -> float:
    """Integral along the beam of a unit load's moment times that of a unit pull of the rods [in3].

    Lengths [in], the load from the nearer end. Scalars. Limits: posts alike about mid-span.
    """
    if load_at <= to_post:
        return load_at * (drop * (beam_span - to_post) / 2 - drop * load_at**2 / (6 * to_post))
    at_post = drop * to_post * (beam_span - to_post) / 2 - drop * to_post**2 / 6
    crown = drop * (to_post - beam_span / 2) ** 2 / 2
    return at_post + crown - drop * (load_at - beam_span / 2) ** 2 / 2


@formula(
    "f = h**2 * (L - 4 * a / 3) / (E * I) + L / (E * A)"
    " + (2 * a * (1 + (h / a)**2)**1.5 + L - 2 * a) / (E_r * A_r) + n * (m * h / a)**2 * h / C",
    result=Symbol("give of beam, rods and posts to a unit pull of the rods", "in/kip"),
    h=DROP,
    L=SPAN,
    a=POST,
    E=MODULUS,
    I=Symbol("moment of inertia of the beam", "in4", "inertia", low=50.0, high=900.0),
    A=Symbol("area of the beam", "in2", "area", low=5.0, high=150.0),
    E_r=Symbol("modulus of the rods", "ksi", "rod_modulus", low=2.5e4, high=3.0e4),
    A_r=Symbol("area of the rods", "in2", "rod_area", low=1.0, high=6.0),
    n=Symbol("posts", "1", "posts", low=1.0, high=2.0),
    m=Symbol("rods' slopes that meet at a post", "1", "slopes", low=1.0, high=2.0),
    C=Symbol("modulus times area of a post", "kip", "post_stiffness", low=5e4, high=1e6),
    source=LEAST_WORK,
)
def give_of_trussing(
    *, drop: float, beam_span: float, to_post: float, modulus: float, inertia: float, area: float,
    rod_modulus: float, rod_area: float, posts: float, slopes: float, post_stiffness: float,
) -> float:
    """How much all parts give way to a unit pull of the rods [in/kip].

    Lengths [in], moduli [ksi], inertia [in4], areas [in2], numbers [1], stiffness [kip]; scalars or
    arrays. Limits: posts alike about mid-span.
    """
    bent = drop**2 * (beam_span - 4 * to_post / 3) / (modulus * inertia)
    pushed = beam_span / (modulus * area)
    slope = drop / to_post
    rods = 2 * to_post * (1 + slope**2) ** 1.5 + beam_span - 2 * to_post
    give: float = (
        bent + pushed + rods / (rod_modulus * rod_area)
        + posts * (slopes * slope) ** 2 * drop / post_stiffness
    )
    return give


@formula(
    "H = u / (E * I * f)",
    result=Symbol("pull of the rods along the beam for a unit load", "1"),
    u=Symbol("moments multiplied along the beam", "in3", "multiplied", low=1e4, high=1e6),
    E=MODULUS,
    I=Symbol("moment of inertia of the beam", "in4", "inertia", low=50.0, high=900.0),
    f=Symbol("give to a unit pull", "in/kip", "give", low=0.001, high=0.1),
    source=LEAST_WORK,
)
def rod_pull(multiplied: float, modulus: float, inertia: float, give: float) -> float:
    """Pull of the rods along the beam for a unit load on it [1].

    Integral [in3], modulus [ksi], inertia [in4], give [in/kip]; scalars or arrays. Limits: none.
    """
    return multiplied / (modulus * inertia * give)


@formula(
    "M = H * h * min(y / a, 1)",
    result=Symbol("moment that the rods take off the beam", "kip in"),
    H=Symbol("pull of the rods along the beam", "kip", "pull", low=1.0, high=60.0),
    h=DROP,
    y=Symbol("place of the section from the nearer end", "in", "section_at", low=10.0, high=75.0),
    a=POST,
    source="statics",
)
def moment_taken(pull: float, drop: float, section_at: float, to_post: float) -> float:
    """Moment that the rods take off the beam at a section [kip in].

    Pull [kip], lengths [in] from the nearer end. Scalars. Limits: posts alike about mid-span.
    """
    return pull * drop * min(section_at / to_post, 1.0)
