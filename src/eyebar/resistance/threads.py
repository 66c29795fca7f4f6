"""Rods where they are weaker than their body: threads, turnbuckles, welded loops."""

from eyebar.formula import Symbol, formula
from eyebar.sections.closed_forms import round_area
from eyebar.sections.properties import measured
from eyebar.sections.shapes import Loops, Rod, Rods, Thread


@formula(
    "q = A_1 / A",
    result=Symbol("area of the detail over that of the body as built", "1"),
    A_1=Symbol("area of the detail", "in2", "detail_area", low=0.1, high=5.0),
    A=Symbol("area of the body as built", "in2", "body_area", low=0.1, high=5.0),
    source="Manual for Bridge Evaluation: threads are rated at their root, turnbuckles at their "
    "open bars, from memory",
)
def area_ratio(detail_area: float, body_area: float) -> float:
    """Area of a detail over that of the body as built [1].

    Areas [in2]; scalars or arrays. Limits: body above 0.
    """
    return detail_area / body_area


@formula(
    "P = w * P_r",
    result=Symbol("pull of rods whose loops are welded", "kip"),
    w=Symbol("part of the rod's strength that a weld is trusted with", "1", "weld", low=0.1,
             high=1.0),
    P_r=Symbol("pull of the rods", "kip", "rod_pull", low=1.0, high=500.0),
    source="no figure for a forge-welded loop was found; the engineer's judgement",
)
def loop_pull(weld: float, rod_pull: float) -> float:
    """Pull of loop rods by their welds [kip].

    Part [1], pull of the rods [kip]; scalars or arrays. Limits: none.
    """
    return weld * rod_pull


def root_ratio(section: Rods, bodies: tuple[float, ...]) -> float | None:
    """Least root area of a thread over its body as built (`bodies` [in2]); None without threads.

    An upset thread is meant to be stronger than the body; what was measured decides. Raises
    NotMeasured.
    """
    return min(
        (
            _root(rod, body) for rod, body in zip(section.rods, bodies, strict=True)
            if rod.threads is not Thread.NONE
        ),
        default=None,
    )


def turnbuckle_ratio(section: Rods, bodies: tuple[float, ...]) -> float | None:
    """Least area of a turnbuckle's open bars over its body as built; None where there is none.

    Raises NotMeasured: a turnbuckle that nobody measured is not taken as sound.
    """
    return min(
        (
            _turnbuckle(rod, body) for rod, body in zip(section.rods, bodies, strict=True)
            if rod.turnbuckle
        ),
        default=None,
    )


def is_looped(section: Rods) -> bool:
    """Whether a rod of the set ends in loops."""
    return any(rod.looped for rod in section.rods)


def is_bent(section: Rods) -> bool:
    """Whether a rod of the set ends in loops that are bent round and not welded."""
    return any(rod.looped and rod.loops is Loops.BENT for rod in section.rods)


def _root(rod: Rod, body: float) -> float:
    root = round_area(measured(rod.root_diameter, "root diameter of the threads"))
    return area_ratio(root, body)


def _turnbuckle(rod: Rod, body: float) -> float:
    return area_ratio(
        measured(rod.turnbuckle_area, "area of the turnbuckle's open bars"), body
    )
