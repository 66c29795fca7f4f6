"""What holds a chord sideways where nothing joins the two chords overhead: posts and floorbeams.

The two chords are taken to lean apart, or together, by the same force: the floorbeam then bends
evenly from truss to truss, which is the softest way.
"""

import math

from eyebar.formula import Symbol, formula

MODULUS = Symbol("modulus of elasticity of the metal", "ksi", "modulus", low=2.5e4, high=3.0e4)
FLEXIBILITY = "how far a unit of force at the chord moves it sideways"
HEIGHT = Symbol(
    "height of the chord above the floorbeam's middle", "in", "height", low=40.0, high=150.0
)
TEXTBOOK = (
    "Computational Analysis and Design of Bridge Structures, 14.2.2.2, after Timoshenko: a post on "
    "a floorbeam"
)


@formula(
    "d = a**3 / (3 * E * I)",
    result=Symbol(f"{FLEXIBILITY}, by its post", "in/kip"),
    a=Symbol("length of post that is free to bend", "in", "clear_height", low=30.0, high=140.0),
    E=MODULUS,
    I=Symbol("inertia of the post across the truss", "in4", "post_inertia", low=2.0, high=300.0),
    source=TEXTBOOK,
)
def post_flexibility(clear_height: float, modulus: float, post_inertia: float) -> float:
    """How far a unit of force bends a post that is fast at its foot [in/kip].

    Length [in], modulus [ksi], inertia [in4]; scalars or arrays. Limits: inertia above 0.
    """
    return clear_height**3 / (3 * modulus * post_inertia)


@formula(
    "d = a / S",
    result=Symbol(f"{FLEXIBILITY}, by the post's lacing", "in/kip"),
    a=Symbol("length of post that is free to bend", "in", "clear_height", low=30.0, high=140.0),
    S=Symbol("stiffness in shear of what ties the post", "kip", "tie_stiffness", low=100.0,
             high=9000.0),
    source="definition",
)
def lacing_flexibility(clear_height: float, tie_stiffness: float) -> float:
    """How far a unit of force shears a laced post [in/kip].

    Length [in], stiffness [kip]; scalars or arrays. Limits: stiffness above 0.
    """
    return clear_height / tie_stiffness


@formula(
    "d = h**2 * b / (2 * E * I)",
    result=Symbol(f"{FLEXIBILITY}, by its floorbeam", "in/kip"),
    h=HEIGHT,
    b=Symbol("distance of the trusses", "in", "spacing", low=120.0, high=260.0),
    E=MODULUS,
    I=Symbol("inertia of the floorbeam", "in4", "beam_inertia", low=20.0, high=2000.0),
    source=TEXTBOOK,
)
def beam_flexibility(
    height: float, spacing: float, modulus: float, beam_inertia: float
) -> float:
    """How far a unit of force on both chords turns the floorbeam's ends [in/kip].

    Lengths [in], modulus [ksi], inertia [in4]; scalars or arrays. Limits: inertia above 0.
    """
    return height**2 * spacing / (2 * modulus * beam_inertia)


@formula(
    "d = f * h**2",
    result=Symbol(f"{FLEXIBILITY}, by the joint of post and floorbeam", "in/kip"),
    f=Symbol("turn of the joint under a unit of moment", "1/kip in", "turn", low=1e-6, high=1e-5),
    h=HEIGHT,
    source="BS 5400-3:2000 9.6.4.1.4, from memory",
)
def joint_flexibility(turn: float, height: float) -> float:
    """How far a unit of force turns the joint of post and floorbeam [in/kip].

    Turn [1/kip in], height [in]; scalars or arrays. Limits: none.
    """
    return turn * height**2


@formula(
    "d = (h / g)**2 * (l**3 / (c**2 * E * A_o) + g**3 / (c**2 * E * A_p)"
    " + g**2 * (c / 3 + b / 2) / (E * I_b)) + (h - g)**2 * h / (3 * E * I_p)",
    result=Symbol(f"{FLEXIBILITY}, held by an outrigger", "in/kip"),
    h=HEIGHT,
    g=Symbol("height of the outrigger's head above the floorbeam's middle", "in", "head",
             low=30.0, high=40.0),
    l=Symbol("length of the outrigger", "in", "length", low=40.0, high=150.0),
    c=Symbol("from the truss to the outrigger's foot", "in", "foot", low=10.0, high=60.0),
    E=MODULUS,
    A_o=Symbol("area of the outrigger", "in2", "outrigger_area", low=0.5, high=5.0),
    A_p=Symbol("area of the post", "in2", "post_area", low=1.5, high=20.0),
    b=Symbol("distance of the trusses", "in", "spacing", low=120.0, high=260.0),
    I_b=Symbol("inertia of the floorbeam", "in4", "beam_inertia", low=20.0, high=2000.0),
    I_p=Symbol("inertia of the post across the truss", "in4", "post_inertia", low=2.0, high=300.0),
    source="virtual work: outrigger, post and floorbeam as a triangle hinged at its corners, the "
    "post running on above the outrigger's head",
)
def outrigger_flexibility(
    *, height: float, head: float, length: float, foot: float, modulus: float,
    outrigger_area: float, post_area: float, spacing: float, beam_inertia: float,
    post_inertia: float,
) -> float:
    """How far a unit of force on both chords moves them, held by outriggers [in/kip].

    Lengths [in], modulus [ksi], areas [in2], inertias [in4]; scalars or arrays. Limits: the
    outrigger's head is not above the chord.
    """
    strained = (length**3 / outrigger_area + head**3 / post_area) / (foot**2 * modulus)
    bent = head**2 * (foot / 3 + spacing / 2) / (modulus * beam_inertia)
    above = (height - head) ** 2 * height / (3 * modulus * post_inertia)
    return (height / head) ** 2 * (strained + bent) + above


@formula(
    "C = 1 / d",
    result=Symbol("force that moves the chord sideways by a unit", "kip/in"),
    d=Symbol(f"{FLEXIBILITY}, all together", "in/kip", "flexibility", low=0.01, high=5.0),
    source="definition",
)
def head_stiffness(flexibility: float) -> float:
    """What a cross frame holds a chord with [kip/in].

    Flexibility [in/kip]; scalars or arrays. Limits: flexibility above 0.
    """
    return 1 / flexibility


@formula(
    "L_e = pi * sqrt(E * I / (m * N))",
    result=Symbol("length between hinges of a column that buckles under the same thrust", "in"),
    E=MODULUS,
    I=Symbol("inertia of the bar across the truss", "in4", "inertia", low=2.0, high=500.0),
    m=Symbol("multiple of its thrust at which the chord buckles", "1", "multiple", low=0.5,
             high=20.0),
    N=Symbol("thrust of the bar", "kip", "bar_thrust", low=1.0, high=300.0),
    source="Euler",
)
def length_of_equal_column(
    modulus: float, inertia: float, multiple: float, bar_thrust: float
) -> float:
    """Effective length of a bar whose chord buckles at a multiple of its thrust [in].

    Modulus [ksi], inertia [in4], multiple [1], thrust [kip]. Scalars. Limits: multiple and thrust
    above 0.
    """
    return math.pi * math.sqrt(modulus * inertia / (multiple * bar_thrust))
