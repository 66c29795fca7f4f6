"""The ends of built members about their pins: pin plates, their rivets, jaws.

A member riveted together of plates and shapes is stronger at its pin than in its body where the
section through the hole is 140 % of the body's net area and the metal behind the pin 100 % of it;
less than that takes as much from the body's pull. Pin plates share the pin's pressure with the web
by thickness, and their rivets carry that share into the member.
"""

from dataclasses import dataclass

from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula

NET = Symbol("net area of the body", "in2", "net_area", low=4.0, high=40.0)
WEBS = Symbol("webs", "1", "webs", low=1.0, high=2.0)
WEB = Symbol("web thickness", "in", "web", low=0.2, high=1.0)
PLATES = Symbol("thickness of the pin plates on one web", "in", "pin_plates", low=0.25, high=1.5)
HOLE = Symbol("diameter of the hole", "in", "hole", low=1.0, high=4.0)
PINNED_MEMBERS = (
    "Standard Specifications 10.25, from memory; so Waddell, De Pontibus (1898), p. 176, with 50 % "
    "through the hole and 65 % of that beyond it"
)


@formula(
    "A_p = A_w - n * h * t_w + n * (w_p - h) * t_p",
    result=Symbol("net area through the pin hole", "in2"),
    A_w=Symbol("area of what is not cut away at the pin", "in2", "standing", low=20.0, high=60.0),
    n=WEBS,
    h=HOLE,
    t_w=WEB,
    w_p=Symbol("width of the pin plates", "in", "plate_width", low=5.0, high=18.0),
    t_p=PLATES,
    source="geometry",
)
def area_through_hole(
    standing: float, webs: float, *, hole: float, web: float, plate_width: float,
    pin_plates: float,
) -> float:
    """Net area of a built member through its pin hole [in2].

    Areas [in2], webs [1], lengths [in]. Scalars. Limits: the plates are wider than the hole
    (OutOfRange).
    """
    if pin_plates and not plate_width > hole:
        raise OutOfRange(
            "width of the pin plates", f"{plate_width:g} in", f"more than the hole, {hole:g} in"
        )
    return standing - webs * hole * web + webs * (plate_width - hole) * pin_plates


@formula(
    "A_b = n * e * (t_w + t_p)",
    result=Symbol("area of the metal behind the pin", "in2"),
    n=WEBS,
    e=Symbol("metal behind the pin hole", "in", "beyond", low=1.0, high=6.0),
    t_w=WEB,
    t_p=PLATES,
    source="geometry",
)
def area_behind_pin(webs: float, beyond: float, web: float, pin_plates: float) -> float:
    """Area of the metal behind the pin, along the member [in2].

    Webs [1], lengths [in]; scalars or arrays. Limits: none.
    """
    return webs * beyond * (web + pin_plates)


@formula(
    "q = A_1 / (k * A_n)",
    result=Symbol("strength about the pin over that of the body", "1"),
    A_1=Symbol("area through the hole, or behind the pin", "in2", "pin_area", low=3.0, high=50.0),
    k=Symbol("proportion that makes the end the stronger", "1", "proportion", low=1.0, high=1.5),
    A_n=NET,
    source=PINNED_MEMBERS + ", turned into a ratio",
)
def pin_ratio(pin_area: float, proportion: float, net_area: float) -> float:
    """Strength of a built member about its pin over that of its body [1].

    Areas [in2], proportion [1]; scalars or arrays. Limits: net area above 0.
    """
    return pin_area / (proportion * net_area)


@formula(
    "P = n * n_r * P_r * (t_w + t_p) / t_p",
    result=Symbol("force at which the rivets of the pin plates are used up", "kip"),
    n=WEBS,
    n_r=Symbol("rivets that hold the pin plates to one web", "1", "rivets", low=2.0, high=20.0),
    P_r=Symbol("what one rivet carries", "kip", "rivet_force", low=1.0, high=15.0),
    t_w=WEB,
    t_p=PLATES,
    source="web and pin plates share the pin's pressure by their thickness",
)
def force_of_pin_plate_rivets(
    webs: float, rivets: float, rivet_force: float, *, web: float, pin_plates: float
) -> float:
    """Force in the member at which the rivets of its pin plates are used up [kip].

    Webs, rivets [1], force of one [kip], lengths [in]; scalars or arrays. Limits: pin plates above
    0.
    """
    return webs * rivets * rivet_force * (web + pin_plates) / pin_plates


@formula(
    "t_j = t_w + t_p",
    result=Symbol("thickness of one jaw", "in"),
    t_w=WEB,
    t_p=PLATES,
    source="web and pin plates riveted together",
)
def jaw_thickness(web: float, pin_plates: float) -> float:
    """Thickness of one jaw [in].

    Lengths [in]; scalars or arrays. Limits: none.
    """
    return web + pin_plates


@dataclass(frozen=True, slots=True, kw_only=True)
class Webs:
    """The webs that pins go through: how many, how thick, how deep [in]."""

    number: int
    thickness: float
    depth: float
