"""A chord that runs on over its joints: what its own weight bends it with there and between.

Between splices, which are taken as hinges, the chord is one beam over the panel points. Clapeyron's
equation of three moments gives the moments over the joints; joints are taken as unyielding, and
thrust as straightening nothing.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from eyebar.bridge.parts import RunsOn, Span
from eyebar.formula import Symbol, formula, note, procedure, remembered

LOAD_TERM = Symbol("load term of a span, over its inertia", "kip/in2")
THREE_MOMENTS = "Clapeyron's equation of three moments, plane mechanics"


@formula(
    "B = gamma * A * g * H * L**2 / (4 * I)",
    result=LOAD_TERM,
    gamma=Symbol("dead load factor", "1", "factor", low=0.9, high=1.5),
    A=Symbol("area as built", "in2", "area", low=0.5, high=60.0),
    g=Symbol("density", "lb/in3", "density", low=0.25, high=0.3),
    H=Symbol("horizontal distance between the bar's ends", "in", "run", low=60.0, high=500.0),
    L=Symbol("length", "in", "length", low=60.0, high=500.0),
    I=Symbol("moment of inertia", "in4", "inertia", low=5.0, high=900.0),
    source=THREE_MOMENTS + "; a uniform load w L^3 / 4",
)
def weight_term(
    factor: float, area: float, *, density: float, run: float, length: float, inertia: float
) -> float:
    """Load term of a span under its own weight, over its inertia [kip/in2].

    Factor [1], area [in2], density [lb/in3], lengths [in], inertia [in4]; scalars or arrays.
    Limits: a uniform span.
    """
    return factor * area * density / 1000 * run * length**2 / (4 * inertia)


@formula(
    "M = M_w - (M_a + M_b) / 2",
    result=Symbol("moment at mid-length of a bar that runs on", "kip in"),
    M_w=Symbol("moment of the bar's own weight, were it hinged", "kip in", "weight_moment",
               low=0.0, high=80.0),
    M_a=Symbol("moment over its one joint, bending up", "kip in", "over_first", low=0.0, high=80.0),
    M_b=Symbol("moment over its other joint, bending up", "kip in", "over_second", low=0.0,
               high=80.0),
    source="statics",
)
def moment_between_joints(
    weight_moment: float, over_first: float, over_second: float
) -> float:
    """Moment at mid-length of a bar that runs on over its joints, sagging [kip in].

    Moments [kip in]; scalars or arrays. Limits: none.
    """
    return weight_moment - (over_first + over_second) / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadedSpan:
    """One span of a continuous beam: `stiff` is its length over its inertia; `near`, `far` its load
    terms over its inertia at its two ends."""

    stiff: float
    near: float
    far: float


@procedure(
    "Moments over the joints of a continuous beam",
    source=THREE_MOMENTS,
    steps=(
        "for each joint between two spans: M' L'/I' + 2 M (L'/I' + L''/I'') + M'' L''/I'' = the"
        " load terms of both spans; at the ends no moment",
        "these equations solved one after the other; what is left of the worst of them",
    ),
)
def moments_over_joints(spans: Sequence[LoadedSpan]) -> tuple[float, ...]:
    """Moments over all joints of a beam, the outer two included [kip in], bending up positive.

    Spans in order. Scalars. Limits: hinged ends, joints that do not yield.
    """
    inner = len(spans) - 1
    right = [one.far + two.near for one, two in pairwise(spans)]
    middle = [2 * (one.stiff + two.stiff) for one, two in pairwise(spans)]
    beside = [one.stiff for one in spans[1:-1]]
    pivots, loads = list(middle), list(right)
    for row in range(1, inner):
        part = beside[row - 1] / pivots[row - 1]
        pivots[row] -= part * beside[row - 1]
        loads[row] -= part * loads[row - 1]
    found = [0.0] * (inner + 2)
    for row in range(inner - 1, -1, -1):
        following = beside[row] * found[row + 2] if row < inner - 1 else 0.0
        found[row + 1] = (loads[row] - following) / pivots[row]
    left = [
        found[row] * spans[row].stiff + found[row + 1] * middle[row]
        + found[row + 2] * spans[row + 1].stiff - right[row]
        for row in range(inner)
    ]
    note("what is left of the worst equation, over its load term", "r",
         max((abs(one / load) for one, load in zip(left, right, strict=True) if load), default=0.0),
         "1")
    return tuple(found)


@remembered
def weight_over_joints(runs: RunsOn, factor: float) -> tuple[float, float]:
    """Moments of its own weight over the two joints of one bar of a run [kip in], bending up."""
    found = moments_over_joints([_loaded(span, factor) for span in runs.spans])
    first, second = found[runs.place], found[runs.place + 1]
    note("moment over the bar's first joint", "M_a", first, "kip in")
    note("moment over its second joint", "M_b", second, "kip in")
    return first, second


def _loaded(span: Span, factor: float) -> LoadedSpan:
    term = weight_term(
        factor, span.area, density=span.density, run=span.run, length=span.length,
        inertia=span.inertia,
    )
    return LoadedSpan(stiff=span.length / span.inertia, near=term, far=term)
