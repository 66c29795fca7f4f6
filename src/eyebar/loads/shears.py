"""Shear of simple beams: ordinates, uniform loads, and the rule of timber under wheels."""

from eyebar.formula import Symbol, formula


@formula(
    "v = 1 - z / L",
    result=Symbol("shear at a section for a unit load beyond it", "1"),
    z=Symbol("place of the load", "ft", "load_ft", low=0.0, high=30.0),
    L=Symbol("span", "ft", "span_ft", low=30.0, high=200.0),
    source="statics",
)
def shear_ordinate(load_ft: float, span_ft: float) -> float:
    """Shear of a simple beam at a section for a unit load beyond it [1].

    Place from the end before the section, span [ft]; scalars or arrays. Limits: load on the span.
    """
    return 1.0 - load_ft / span_ft


@formula(
    "V = w * (L - x)**2 / (2 * L)",
    result=Symbol("shear of a uniform load beyond the section", "kip"),
    w=Symbol("uniform load", "kip/ft", "kip_per_ft"),
    x=Symbol("place of the section", "ft", "section_ft", low=0.0, high=30.0),
    L=Symbol("span", "ft", "span_ft", low=30.0, high=200.0),
    source="statics",
)
def partial_shear(kip_per_ft: float, section_ft: float, span_ft: float) -> float:
    """Shear of a uniform load that stands beyond the section alone [kip].

    Load [kip/ft], lengths [ft]; scalars or arrays. Limits: the section on the span.
    """
    return kip_per_ft * (span_ft - section_ft) ** 2 / (2.0 * span_ft)


@formula(
    "s = h * (u / 2 + g)",
    result=Symbol("share of the axles in the shear of timber under wheels", "1"),
    h=Symbol("mean of the two shears", "1", "half", low=0.4, high=0.6),
    u=Symbol("part of the shear of a wheel line that is not shared", "1", "undistributed",
             low=0.5, high=0.7),
    g=Symbol("share of the axles by the table", "1", "share", low=0.1, high=0.6),
    source="Standard Specifications 13.6.5.2: V = 0.50 (0.60 V_LU + V_LD), V_LU of a wheel line, "
    "which is half of the axles, from memory",
)
def timber_shear_share(half: float, undistributed: float, share: float) -> float:
    """Share of the axles that shears timber along the grain [1].

    Numbers [1]; scalars or arrays. Limits: none.
    """
    return half * (undistributed / 2.0 + share)


@formula(
    "x = min(n * d, p * L)",
    result=Symbol("from the support to the load that shears timber", "ft"),
    n=Symbol("depths", "1", "depths", low=2.0, high=4.0),
    d=Symbol("depth of the stick", "ft", "depth_ft", low=0.5, high=2.0),
    p=Symbol("part of the span", "1", "part", low=0.2, high=0.3),
    L=Symbol("span", "ft", "span_ft", low=8.0, high=40.0),
    source="Standard Specifications 13.6.5.2, from memory",
)
def timber_load_place(depths: float, depth_ft: float, part: float, span_ft: float) -> float:
    """From the support to the load that shears timber most by the rule [ft].

    Numbers [1], lengths [ft]. Scalars. Limits: none.
    """
    return min(depths * depth_ft, part * span_ft)
