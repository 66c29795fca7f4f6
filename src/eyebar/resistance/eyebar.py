"""Heads of eyebars: whether the eye is stronger than the body, and by how much it is weaker."""

from dataclasses import dataclass

from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.sections.properties import measured
from eyebar.sections.shapes import Eyebar, Eyebars

RATIO = Symbol("strength of the head over that of the body as built", "1")
HEAD_THICKNESS = Symbol("thickness of the head", "in", "head_thickness", low=0.25, high=2.0)
BODY = Symbol("area of the body as built", "in2", "body_area", low=0.5, high=12.0)
PROPORTIONS = "LRFD Bridge Design Specifications 6.8.6.2, turned into a ratio, from memory"


@formula(
    "q = (h - d) * t_h / (k * A_b)",
    result=RATIO,
    h=Symbol("width of the head across the hole", "in", "head", low=6.0, high=14.0),
    d=Symbol("diameter of the hole", "in", "hole", low=1.0, high=5.0),
    t_h=HEAD_THICKNESS,
    k=Symbol("proportion that makes the head the stronger", "1", "proportion", low=1.0, high=1.5),
    A_b=BODY,
    source=PROPORTIONS,
)
def head_across(
    head: float, hole: float, *, head_thickness: float, proportion: float, body_area: float
) -> float:
    """Strength of a head across its hole over that of the body [1].

    Lengths [in], area [in2], proportion [1]. Scalars. Limits: the hole is narrower than the head
    (OutOfRange).
    """
    if not head > hole:
        raise OutOfRange("width of the head", f"{head:g} in", f"more than its hole, {hole:g} in")
    return (head - hole) * head_thickness / (proportion * body_area)


@formula(
    "q = e * t_h / (k * A_b)",
    result=RATIO,
    e=Symbol("metal beyond the hole", "in", "beyond", low=0.5, high=5.0),
    t_h=HEAD_THICKNESS,
    k=Symbol("proportion that makes the head the stronger", "1", "proportion", low=0.5, high=1.0),
    A_b=BODY,
    source=PROPORTIONS,
)
def head_beyond(
    beyond: float, *, head_thickness: float, proportion: float, body_area: float
) -> float:
    """Strength of a head beyond its hole over that of the body [1].

    Lengths [in], area [in2], proportion [1]; scalars or arrays. Limits: none.
    """
    return beyond * head_thickness / (proportion * body_area)


@formula(
    "e = (h - d) / 2",
    result=Symbol("metal beyond the hole of a round head", "in"),
    h=Symbol("width of the head across the hole", "in", "head", low=6.0, high=14.0),
    d=Symbol("diameter of the hole", "in", "hole", low=1.0, high=5.0),
    source="a round head with its hole in the middle",
)
def round_beyond(head: float, hole: float) -> float:
    """Metal beyond the hole of a head that is a circle about it [in].

    Lengths [in]; scalars or arrays. Limits: none.
    """
    return (head - hole) / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Heads:
    """Least ratios of head to body in a set, across and beyond the hole, and remarks."""

    across: float
    beyond: float
    remarks: tuple[str, ...]


def heads(section: Eyebars, bodies: tuple[float, ...], values: Values) -> Heads:
    """The weakest heads of a set as it is left; `bodies` [in2] are its pieces' areas as built.

    A piece takes its share of the pull by its area as built, so that rust on its body never
    relieves its head. Raises NotMeasured, OutOfRange.
    """
    across = values.number("eyebar.head across the hole")
    beyond = values.number("eyebar.head beyond the hole")
    slim = values.number("eyebar.width over thickness")
    ratios = [
        _head(bar, body, across, beyond)
        for bar, body in zip(section.bars, bodies, strict=True)
    ]
    wide = any((bar.width or 0.0) > slim * (bar.thickness or 0.0) for bar in section.bars)
    return Heads(
        across=min(ratio for ratio, _ in ratios),
        beyond=min(ratio for _, ratio in ratios),
        remarks=(f"body wider than {slim:g} thicknesses",) * wide,
    )


def _head(bar: Eyebar, body: float, across: float, beyond: float) -> tuple[float, float]:
    head, hole = measured(bar.head, "width of head"), measured(bar.hole, "diameter of hole")
    thickness = measured(
        bar.thickness if bar.head_thickness is None else bar.head_thickness, "thickness of head"
    )
    metal = round_beyond(head, hole) if bar.beyond is None else bar.beyond
    return (
        head_across(
            head, hole, head_thickness=thickness, proportion=across, body_area=body
        ),
        head_beyond(metal, head_thickness=thickness, proportion=beyond, body_area=body),
    )
