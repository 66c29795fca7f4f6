"""Heads of eyebars and clevises: whether the eye is stronger than the body, or how much weaker."""

from dataclasses import dataclass

from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.sections.properties import measured
from eyebar.sections.shapes import Clevis, Eyebar, Eyebars, Rods

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


@formula(
    "e = e_0 - (d - d_0)",
    result=Symbol("metal beyond a hole that has worn long", "in"),
    e_0=Symbol("metal beyond the hole as built", "in", "as_built", low=1.0, high=4.0),
    d=Symbol("diameter of the hole", "in", "hole", low=2.0, high=2.5),
    d_0=Symbol("diameter of the hole as built", "in", "built_hole", low=1.6, high=2.0),
    source="the pin wears the hole towards the end of the bar: all that it grew by is lost there",
)
def worn_beyond(as_built: float, hole: float, built_hole: float) -> float:
    """Metal beyond a hole that has worn long [in].

    Lengths [in]. Scalars. Limits: something is left (OutOfRange).
    """
    left = as_built - (hole - built_hole)
    if not left > 0:
        raise OutOfRange("metal beyond the hole", f"{left:g} in", "more than none: it is worn out")
    return left


@formula(
    "q = (h - d) * t_h / A_b",
    result=Symbol("net area of the head over that of the body as built", "1"),
    h=Symbol("width of the head across the hole", "in", "head", low=6.0, high=14.0),
    d=Symbol("diameter of the hole", "in", "hole", low=1.0, high=5.0),
    t_h=HEAD_THICKNESS,
    A_b=BODY,
    source="geometry",
)
def head_net_ratio(head: float, hole: float, head_thickness: float, body_area: float) -> float:
    """Net area of a head across its hole over the body's area as built [1].

    Lengths [in], area [in2]; scalars or arrays. Limits: none.
    """
    return (head - hole) * head_thickness / body_area


@dataclass(frozen=True, slots=True, kw_only=True)
class Heads:
    """Least ratios of head to body in a set, across and beyond the hole by proportion, `net` by
    area alone, and remarks."""

    across: float
    beyond: float
    net: float
    remarks: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Eye:
    """The eye of one bar: width, hole and metal beyond it, thickness of all its sides [in]."""

    width: float
    hole: float
    beyond: float
    thickness: float


def heads(
    section: Eyebars, built: Eyebars, bodies: tuple[float, ...], values: Values
) -> Heads:
    """The weakest heads of a set as it is left; `bodies` [in2] are its pieces' areas as `built`.

    A piece takes its share of the pull by its area as built, so that rust on its body never
    relieves its head. Raises NotMeasured, OutOfRange.
    """
    slim = values.number("eyebar.width over thickness")
    before = built.bars if len(built.bars) == len(section.bars) else section.bars
    eyes = [_eye(bar, one) for bar, one in zip(section.bars, before, strict=True)]
    ratios = [_ratios(eye, body, values) for eye, body in zip(eyes, bodies, strict=True)]
    wide = any((bar.width or 0.0) > slim * (bar.thickness or 0.0) for bar in section.bars)
    return Heads(
        across=min(across for across, _ in ratios), beyond=min(beyond for _, beyond in ratios),
        net=min(
            head_net_ratio(eye.width, eye.hole, eye.thickness, body)
            for eye, body in zip(eyes, bodies, strict=True)
        ),
        remarks=(f"body wider than {slim:g} thicknesses",) * wide,
    )


def clevises(
    section: Rods, bodies: tuple[float, ...], values: Values
) -> tuple[float | None, float | None]:
    """The weakest clevises of rods, both jaws together, across and beyond their holes by the
    proportions of heads [1]; None where there are none. Raises NotMeasured, OutOfRange."""
    ratios = [
        _ratios(_jaws(rod.clevis), body, values)
        for rod, body in zip(section.rods, bodies, strict=True) if rod.clevis is not None
    ]
    if not ratios:
        return None, None
    return min(across for across, _ in ratios), min(beyond for _, beyond in ratios)


def _ratios(eye: _Eye, body: float, values: Values) -> tuple[float, float]:
    return (
        head_across(
            eye.width, eye.hole, head_thickness=eye.thickness, body_area=body,
            proportion=values.number("eyebar.head across the hole"),
        ),
        head_beyond(
            eye.beyond, head_thickness=eye.thickness, body_area=body,
            proportion=values.number("eyebar.head beyond the hole"),
        ),
    )


def _eye(bar: Eyebar, built: Eyebar) -> _Eye:
    """A head as it is left: what its hole has grown by is lost beyond it."""
    head, hole = measured(bar.head, "width of head"), measured(bar.hole, "diameter of hole")
    thickness = measured(
        bar.thickness if bar.head_thickness is None else bar.head_thickness, "thickness of head"
    )
    beyond = round_beyond(head, hole) if bar.beyond is None else bar.beyond
    if built.hole is not None and hole > built.hole:
        as_built = built.beyond
        if as_built is None and built.head is not None:
            as_built = round_beyond(built.head, built.hole)
        if as_built is not None:
            beyond = min(beyond, worn_beyond(as_built, hole, built.hole))
    return _Eye(width=head, hole=hole, beyond=beyond, thickness=thickness)


def _jaws(clevis: Clevis) -> _Eye:
    """The two jaws of a clevis as one eye."""
    width = measured(clevis.width, "width of the clevis")
    hole = measured(clevis.hole, "diameter of the clevis's hole")
    return _Eye(
        width=width, hole=hole, thickness=2 * measured(clevis.thickness, "thickness of the clevis"),
        beyond=round_beyond(width, hole) if clevis.beyond is None else clevis.beyond,
    )
