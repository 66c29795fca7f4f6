"""How carefully the maker shared out the metal: what each bar needs against what it was given.

Metal counts by strength, in square inches of the body as it was built: what is needed is the part
of it that would just carry the force, what is left the part that would carry as much as the bar
carries now.
"""

from eyebar.formula import Symbol, formula

SOURCE = "proportion: strength taken as growing with the area, at the stress that the bar bears"


@formula(
    "A_n = A * P / C",
    result=Symbol("metal needed", "in2"),
    A=Symbol("area as built", "in2", "area", low=0.5, high=30.0),
    P=Symbol("force under factored loads, towards what limits the bar", "kip", "force", low=1.0,
             high=200.0),
    C=Symbol("force at which the limit is reached, as built", "kip", "limit", low=5.0, high=400.0),
    source=SOURCE,
)
def metal_needed(area: float, force: float, limit: float) -> float:
    """Metal that would just carry a force [in2].

    Area [in2], forces [kip] of one sense; scalars or arrays. Limits: a limit other than zero; the
    stress that a bar bears is taken as that of the bar as built, also where a leaner bar would
    buckle sooner.
    """
    return area * force / limit


@formula(
    "A_l = A * C_l / C",
    result=Symbol("metal left, by what it carries", "in2"),
    A=Symbol("area as built", "in2", "area", low=0.5, high=30.0),
    C_l=Symbol("force at which the limit is reached now", "kip", "limit_now", low=5.0, high=400.0),
    C=Symbol("force at which the limit is reached, as built", "kip", "limit", low=5.0, high=400.0),
    source=SOURCE,
)
def metal_left(area: float, limit_now: float, limit: float) -> float:
    """Metal as built that would carry what the bar carries now [in2].

    Area [in2], forces [kip] of one sense; scalars or arrays. Limits: a limit other than zero.
    """
    return area * limit_now / limit
