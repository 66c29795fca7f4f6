"""Shares of stringers under a slab of concrete on steel that the standards have beside their table.

By the newer one they are parts of a lane that have the multiple presence inside. They are for
stringers 3 1/2 to 16 ft apart and of 20 ft upwards; nearer and shorter ones get more by them.
"""

from eyebar.formula import Symbol, formula
from eyebar.loads.across import multiple_presence
from eyebar.office import Values
from eyebar.terms import Method

SPACING = Symbol("spacing of the stringers", "ft", "spacing_ft", low=2.0, high=8.0)
SPAN = Symbol("span of the stringer", "ft", "span_ft", low=10.0, high=40.0)
STIFFNESS = Symbol("figure of their stiffness against the slab's", "1", "stiffness", 0.8, 1.2)
OF_LANE = Symbol("part of a lane that an inner stringer takes, multiple presence counted", "1")
INSIDE = Symbol("how far an edge stringer is inside its curb", "ft", "inside_ft", -1.0, 5.5)
BENDING = "LRFD Bridge Design Specifications Table 4.6.2.2.2b-1, from memory"
SHEAR = "LRFD Bridge Design Specifications Table 4.6.2.2.3a-1, from memory"


@formula(
    "g = S / max(D, a + S / 4)",
    result=Symbol("least part of a wheel line that an edge stringer takes", "1"),
    S=SPACING,
    D=Symbol("figure up to 6 ft", "ft", "near_ft", low=5.0, high=6.0),
    a=Symbol("figure beyond", "ft", "far_ft", low=3.5, high=4.5),
    source="Standard Specifications 3.23.2.3.1.5, four or more steel stringers under concrete: "
    "S / 5.5, over 6 ft S / (4.0 + 0.25 S), from memory",
)
def edge_share(spacing_ft: float, near_ft: float, far_ft: float) -> float:
    """Least part of a wheel line that an edge stringer takes under a slab [1].

    Spacing of the edge stringer and the next, figures [ft]. Scalars. Limits: up to 14 ft apart.
    """
    return spacing_ft / max(near_ft, far_ft + spacing_ft / 4.0)


@formula(
    "g = 0.06 + (S / (14 ft))**0.4 * (S / L)**0.3 * k",
    result=OF_LANE, S=SPACING, L=SPAN, k=STIFFNESS, source=f"{BENDING}, one lane loaded",
)
def bending_one_lane(spacing_ft: float, span_ft: float, stiffness: float) -> float:
    """Part of the moment of one lane that a stringer takes under a slab [1].

    Lengths [ft], figure [1]; scalars or arrays. Limits: none here.
    """
    part: float = (spacing_ft / 14.0) ** 0.4 * (spacing_ft / span_ft) ** 0.3
    return 0.06 + part * stiffness


@formula(
    "g = 0.075 + (S / (9.5 ft))**0.6 * (S / L)**0.2 * k",
    result=OF_LANE, S=SPACING, L=SPAN, k=STIFFNESS, source=f"{BENDING}, two lanes or more",
)
def bending_lanes(spacing_ft: float, span_ft: float, stiffness: float) -> float:
    """Part of the moment of a lane that a stringer takes under a slab with several loaded [1].

    Lengths [ft], figure [1]; scalars or arrays. Limits: none here.
    """
    part: float = (spacing_ft / 9.5) ** 0.6 * (spacing_ft / span_ft) ** 0.2
    return 0.075 + part * stiffness


@formula(
    "g = 0.36 + S / (25 ft)", result=OF_LANE, S=SPACING, source=f"{SHEAR}, one lane loaded",
)
def shear_one_lane(spacing_ft: float) -> float:
    """Part of the shear of one lane that a stringer takes under a slab [1].

    Spacing [ft]; scalars or arrays. Limits: none here.
    """
    return 0.36 + spacing_ft / 25.0


@formula(
    "g = 0.2 + S / (12 ft) - (S / (35 ft))**2",
    result=OF_LANE, S=SPACING, source=f"{SHEAR}, two lanes or more",
)
def shear_lanes(spacing_ft: float) -> float:
    """Part of the shear of a lane that a stringer takes under a slab with several loaded [1].

    Spacing [ft]; scalars or arrays. Limits: none here.
    """
    return 0.2 + spacing_ft / 12.0 - (spacing_ft / 35.0) ** 2


@formula(
    "e = 0.77 + d / (9.1 ft)",
    result=Symbol("share of an edge stringer over that of an inner one, bending", "1"), d=INSIDE,
    source="LRFD Bridge Design Specifications Table 4.6.2.2.2d-1, two lanes or more, from memory",
)
def edge_bending(inside_ft: float) -> float:
    """Share of an edge stringer over that of an inner one in bending [1].

    Distance [ft]; scalars or arrays. Limits: none here.
    """
    return 0.77 + inside_ft / 9.1


@formula(
    "e = 0.6 + d / (10 ft)",
    result=Symbol("share of an edge stringer over that of an inner one, shear", "1"), d=INSIDE,
    source="LRFD Bridge Design Specifications Table 4.6.2.2.3b-1, two lanes or more, from memory",
)
def edge_shear(inside_ft: float) -> float:
    """Share of an edge stringer over that of an inner one in shear [1].

    Distance [ft]; scalars or arrays. Limits: none here.
    """
    return 0.6 + inside_ft / 10.0


def slab_share(
    spacing_ft: float, span_ft: float, *, lanes: int, inside_ft: float | None, values: Values
) -> float:
    """Share of the axles by the newer formulas, the greater of bending and shear, without multiple
    presence [1]. `inside_ft` of an edge stringer; nothing of one with one lane loaded, which has
    the lever rule alone."""
    stiffness = values.number("wheel share.concrete.on steel.stiffness")
    within = multiple_presence(Method.LOAD_AND_RESISTANCE, min(lanes, 2), values)
    if lanes == 1:
        found = max(
            bending_one_lane(spacing_ft, span_ft, stiffness), shear_one_lane(spacing_ft)
        )
        return found / within if inside_ft is None else 0.0
    bending, shear = bending_lanes(spacing_ft, span_ft, stiffness), shear_lanes(spacing_ft)
    if inside_ft is not None:
        bending, shear = bending * edge_bending(inside_ft), shear * edge_shear(inside_ft)
    return max(bending, shear) / within
