"""Rods where they are weaker than their body: threads, turnbuckles, welded loops."""

from eyebar.formula import Symbol, formula
from eyebar.sections.closed_forms import round_area
from eyebar.sections.properties import measured, rod_area
from eyebar.sections.shapes import Rod, Rods, Thread


@formula(
    "q = A_1 / A",
    result=Symbol("area of the detail over that of the body", "1"),
    A_1=Symbol("area of the detail", "in2", "detail_area", low=0.1, high=5.0),
    A=Symbol("area of the body", "in2", "body_area", low=0.1, high=5.0),
    source="Manual for Bridge Evaluation: threads are rated at their root, turnbuckles at their "
    "open bars, from memory",
)
def area_ratio(detail_area: float, body_area: float) -> float:
    """Area of a detail over that of the body [1].

    Areas [in2]; scalars or arrays. Limits: body above 0.
    """
    return detail_area / body_area


def root_ratio(section: Rods) -> float | None:
    """Least root area of a thread over its rod's body [1]; None where no rod has threads.

    An upset thread is meant to be stronger than the body; what was measured decides. Raises
    NotMeasured.
    """
    threaded = [rod for rod in section.rods if rod.threads is not Thread.NONE]
    return min((_root(rod) for rod in threaded), default=None)


def turnbuckle_ratio(section: Rods) -> float | None:
    """Least area of a turnbuckle's open bars over its rod's body [1]; None where there is none.

    Raises NotMeasured: a turnbuckle that nobody measured is not taken as sound.
    """
    return min((_turnbuckle(rod) for rod in section.rods if rod.turnbuckle), default=None)


def is_looped(section: Rods) -> bool:
    """Whether a rod of the set ends in welded loops."""
    return any(rod.looped for rod in section.rods)


def _root(rod: Rod) -> float:
    root = round_area(measured(rod.root_diameter, "root diameter of the threads"))
    return area_ratio(root, rod_area(rod))


def _turnbuckle(rod: Rod) -> float:
    area = measured(rod.turnbuckle_area, "area of the turnbuckle's open bars")
    return area_ratio(area, rod_area(rod))
