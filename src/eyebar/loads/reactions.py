"""Reactions of a beam on two bearings that loads reach beyond: what stands farther from the other
bearing than its own pushes with more than its weight, what stands beyond the other lifts."""

from eyebar.formula import Symbol, formula

LONG = Symbol("from the other bearing to the load", "ft", "beyond_ft", low=0.0, high=200.0)
SPAN = Symbol("span", "ft", "span_ft", low=30.0, high=200.0)


@formula(
    "r = z / L",
    result=Symbol("push or uplift of a bearing for a unit load", "1"),
    z=LONG,
    L=SPAN,
    source="statics",
)
def beyond_ordinate(beyond_ft: float, span_ft: float) -> float:
    """Push of a bearing for a unit load so far from the other one, or its uplift [1].

    It lifts where the load stands so far beyond the other bearing, on the far side of it.
    Lengths [ft]; scalars or arrays. Limits: none.
    """
    return beyond_ft / span_ft


@formula(
    "R = w * z**2 / (2 * L)",
    result=Symbol("push or uplift of a bearing by a uniform load", "kip"),
    w=Symbol("uniform load", "kip/ft", "kip_per_ft"),
    z=LONG,
    L=SPAN,
    source="statics",
)
def lane_beyond(kip_per_ft: float, beyond_ft: float, span_ft: float) -> float:
    """Push of a bearing by a load that reaches so far from the other one, or its uplift [kip].

    It lifts where the load reaches so far beyond the other bearing, on the far side of it.
    Load [kip/ft], lengths [ft]; scalars or arrays. Limits: none.
    """
    return kip_per_ft * beyond_ft**2 / (2.0 * span_ft)
