"""What rivet holes leave of a plate: chains of holes from edge to edge, straight or zigzag.

A punched hole is counted wider than its rivet; each step of a chain aslant to the next line of
holes gives back s^2 / (4 g). The chain that leaves least counts.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, bare, formula, procedure

NET_SECTION = (
    "Standard Specifications 10.16.14, LRFD Bridge Design Specifications 6.8.3, from memory"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Hole:
    """One hole of a plate: `along` it from anywhere, `across` from its edge [in]."""

    along: float
    across: float


@formula(
    "d_h = d_r + 1 in / 8",
    result=Symbol("width of a hole as it counts", "in"),
    d_r=Symbol("diameter of the rivet", "in", "rivet", low=0.5, high=1.25),
    source=NET_SECTION,
)
def hole_width(rivet: float) -> float:
    """Width with which a punched hole counts [in].

    Diameter of the rivet [in]; scalars or arrays. Limits: none.
    """
    return rivet + 1 / 8


@formula(
    "z = s**2 / (4 * g)",
    result=Symbol("width that one step aslant gives back", "in"),
    s=Symbol("distance of two holes along the plate", "in", "stagger", low=0.5, high=4.0),
    g=Symbol("distance of two holes across the plate", "in", "gauge", low=1.5, high=6.0),
    source=NET_SECTION + "; the rule of Cochrane (1922)",
)
def step_width(stagger: float, gauge: float) -> float:
    """Width that one step of a chain aslant gives back [in].

    Lengths [in]; scalars or arrays. Limits: gauge above 0.
    """
    return stagger**2 / (4 * gauge)


@formula(
    "w_n = w - n * d_h + z",
    result=Symbol("net width of a chain", "in"),
    w=Symbol("width of the plate", "in", "width", low=6.0, high=24.0),
    n=Symbol("holes in the chain", "1", "holes", low=1.0, high=4.0),
    d_h=Symbol("width of a hole as it counts", "in", "hole_width", low=0.6, high=1.25),
    z=Symbol("what the chain's steps aslant give back", "in", "steps", low=0.0, high=1.5),
    source=NET_SECTION,
)
def chain_width(width: float, holes: float, hole_width: float, steps: float) -> float:
    """Net width of one chain of holes from edge to edge [in].

    Lengths [in], holes [1]; scalars or arrays. Limits: none.
    """
    return width - holes * hole_width + steps


@procedure(
    "Net width by chains of holes",
    source=NET_SECTION,
    steps=(
        "the holes in the order of their distance across the plate",
        "for each hole the least width of any chain that ends in it: straight from the edge, or a"
        " step from a hole nearer to the edge, less the hole, with what the step gives back",
        "the least of all, its holes and its steps",
    ),
)
def net_width(width: float, holes: Sequence[Hole], rivet: float) -> float:
    """Least net width of a plate over all chains of its holes [in].

    Lengths [in]; no holes: the whole width. Scalars. Limits: holes inside the plate and more than
    nothing left (OutOfRange); a plate pulled evenly.
    """
    if any(not 0 < hole.across < width for hole in holes):
        raise OutOfRange("place of a hole", "outside the plate", f"within its {width:g} in")
    counted = hole_width(rivet)
    chain = _weakest(holes, counted)
    steps = math.fsum(
        step_width(after.along - before.along, after.across - before.across)
        for before, after in pairwise(chain) if after.along != before.along
    )
    left = chain_width(width, len(chain), counted, steps)
    if left <= 0:
        raise OutOfRange("net width", f"{left:g} in", "more than nothing")
    return left


def _weakest(holes: Sequence[Hole], counted: float) -> tuple[Hole, ...]:
    """The chain that takes most from a plate; of equal ones the one nearest to its edge."""
    ends: list[tuple[float, tuple[Hole, ...]]] = []
    for hole in sorted(holes, key=lambda one: one.across):
        taken, before = max(
            (
                (taken - _step(chain[-1], hole), chain)
                for taken, chain in ends if chain[-1].across < hole.across
            ),
            key=lambda one: one[0], default=(0.0, ()),
        )
        if taken <= 0.0:
            taken, before = 0.0, ()
        ends.append((taken + counted, (*before, hole)))
    return max(ends, key=lambda one: one[0], default=(0.0, ()))[1]


_give_back = bare(step_width)


def _step(before: Hole, hole: Hole) -> float:
    return _give_back(hole.along - before.along, hole.across - before.across)


def lines_of_holes(
    width: float, *, lines: int, gauge: float, stagger: float
) -> tuple[Hole, ...]:
    """Holes on so many lines about the middle of a plate, every other line shifted [in].

    Two of each line, so that every chain of the endless pattern is among them. A single line needs
    no gauge.
    """
    first = width / 2 - gauge * (lines - 1) / 2
    return tuple(
        Hole(along=turn * 2 * stagger + (line % 2) * stagger, across=first + line * gauge)
        for line in range(lines) for turn in range(2 if stagger else 1)
    )


@formula(
    "A_h = n * (w - w_n) * t",
    result=Symbol("area that holes take from plates alike", "in2"),
    n=Symbol("plates alike", "1", "number", low=1.0, high=4.0),
    w=Symbol("width of the plate", "in", "width", low=6.0, high=24.0),
    w_n=Symbol("net width of its weakest chain", "in", "net", low=3.0, high=6.0),
    t=Symbol("thickness of a plate or a bar", "in", "thickness", low=0.2, high=1.0),
    source="definition",
)
def hole_area(number: float, width: float, net: float, thickness: float) -> float:
    """Area that holes take from plates alike [in2].

    Number [1], lengths [in]; scalars or arrays. Limits: none.
    """
    return number * (width - net) * thickness


@formula(
    "A_n = A - A_h",
    result=Symbol("net area", "in2"),
    A=Symbol("area", "in2", "area", low=5.0, high=60.0),
    A_h=Symbol("area that holes take", "in2", "holes_area", low=0.0, high=4.0),
    source="definition",
)
def net_of_holes(area: float, holes_area: float) -> float:
    """Net area of a punched member [in2].

    Areas [in2]. Scalars. Limits: something is left (OutOfRange).
    """
    if not holes_area < area:
        raise OutOfRange("area of the holes", f"{holes_area:g} in2", f"less than {area:g} in2")
    return area - holes_area
