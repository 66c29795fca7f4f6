"""Dead load: what each joint carries of the bridge itself (DC) and of what is laid on it (DW).

Factors act on loads, not on bar forces, so DC and DW are kept apart, joint by joint, and every
rating is run with the greatest and with the least dead load that may act.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from types import MappingProxyType

from eyebar.bridge.parts import Bar, Truss, Weight
from eyebar.bridge.pieces import piece_count
from eyebar.errors import NotMeasured, OutOfRange
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.sections.properties import area
from eyebar.terms import Method

JointLoads = Mapping[str, tuple[float, float]]
"""Joint -> (DC, DW) [kip, down]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DeadSet:
    """One pair of dead-load factors: `greatest` or `least`, on DC and on DW [1]."""

    name: str
    dc: float
    dw: float


@formula(
    "P = g * A * l / 2",
    result=Symbol("weight that a bar brings to each of its joints", "kip"),
    g=Symbol("weight of its metal by volume", "lb/in3", "density"),
    A=Symbol("area as built", "in2", "bar_area"),
    l=Symbol("length between joints", "in", "length"),
    source="statics",
)
def bar_end_weight(density: float, bar_area: float, length: float) -> float:
    """Half of a bar's own weight [kip].

    Density [lb/in3], area [in2], length [in]. Scalars or arrays. Limits: none.
    """
    return density * bar_area * length / 2000.0


@formula(
    "P = w * (a + b) / 2",
    result=Symbol("weight at a floor joint", "kip"),
    w=Symbol("weight along the floor, one truss", "kip/ft", "kip_per_ft"),
    a=Symbol("panel before the joint", "ft", "before_ft"),
    b=Symbol("panel behind the joint", "ft", "behind_ft"),
    source="statics: stringers as simple spans from panel point to panel point",
)
def floor_joint_weight(kip_per_ft: float, before_ft: float, behind_ft: float) -> float:
    """What a floor joint carries of a weight uniform along the floor [kip].

    Weight [kip/ft], panels [ft], 0 beyond an end. Scalars or arrays. Limits: none.
    """
    return kip_per_ft * (before_ft + behind_ft) / 2.0


@formula(
    "g = f * (1 + d)",
    result=Symbol("greatest factor on DC", "1"),
    f=Symbol("factor of the method", "1", "factor"),
    d=Symbol("allowance for details, as a part of DC", "1", "details"),
    source="pins, heads, lacing, rivets and plates are not counted one by one: office judgement",
)
def factor_with_details(factor: float, details: float) -> float:
    """Factor on DC with the allowance for details inside it [1].

    Factor and allowance [1]. Scalars or arrays. Limits: none.
    """
    return factor * (1.0 + details)


def dead_sets(
    method: Method, *, surfacing_measured: bool, values: Values
) -> tuple[DeadSet, DeadSet]:
    """The greatest and the least dead load of a method, in this order.

    The allowance for details belongs to the greatest DC alone: where dead load relieves, what was
    not counted is not counted on. By load and resistance a surfacing whose thickness was measured
    has the smaller factor.
    """
    row = f"dead factor.{method}"
    measured = surfacing_measured and method is Method.LOAD_AND_RESISTANCE
    greatest = DeadSet(
        name="greatest",
        dc=factor_with_details(
            values.number(f"{row}.greatest.dc"), values.number("allowance for details")
        ),
        dw=values.number(f"{row}.greatest.dw measured" if measured else f"{row}.greatest.dw"),
    )
    least = DeadSet(
        name="least", dc=values.number(f"{row}.least.dc"), dw=values.number(f"{row}.least.dw")
    )
    return greatest, least


def joint_loads(
    truss: Truss, weights: Iterable[Weight], areas: Mapping[str, float] | None = None
) -> JointLoads:
    """Joint -> (DC, DW) [kip, down] of one truss, every joint named; frozen.

    The bars' own weight is that of their sections as built, or of `areas` (bar -> in2) where it
    names them, half of it at each end; a bar or a piece of a set that is broken or loose still
    hangs there and weighs. Raises
    NotMeasured with the bar's address where a size is unknown, OutOfRange where a weight hangs on a
    joint that is not there.
    """
    dc = dict.fromkeys(truss.joints, 0.0)
    dw = dict.fromkeys(truss.joints, 0.0)
    for bar in (*truss.bars, *truss.broken):
        known = (areas or {}).get(bar.name)
        in2 = _area(bar) if known is None else known
        half = bar_end_weight(bar.material.density, in2 + _hanging(bar, in2), bar.length)
        for joint in bar.ends:
            dc[joint] += half
    for weight in weights:
        on = dw if weight.wearing else dc
        for joint, kip in _of_one(weight, truss):
            on[joint] += kip
    return MappingProxyType({joint: (dc[joint], dw[joint]) for joint in truss.joints})


def _area(bar: Bar) -> float:
    try:
        return area(bar.as_built)
    except NotMeasured as missing:
        raise NotMeasured(bar.address, missing.what) from None


def _hanging(bar: Bar, in2: float) -> float:
    """Area of the pieces that hang beside a bar of `in2` and carry nothing [in2]."""
    if bar.hanging is None:
        return 0.0
    try:
        return area(bar.hanging)
    except NotMeasured:
        return in2 * piece_count(bar.hanging) / piece_count(bar.as_built)


def _of_one(weight: Weight, truss: Truss) -> list[tuple[str, float]]:
    """(joint, kip) of one item."""
    strangers = [joint for joint in weight.kip_at_joints if joint not in truss.joints]
    if strangers:
        known = f"a joint of the truss {truss.name}"
        raise OutOfRange(f"joint that {weight.name} hangs on", strangers[0], known)
    found = list(weight.kip_at_joints.items())
    if weight.kip_per_ft:
        panels = panel_lengths_ft([station for _, station in truss.floor_joints])
        found += [
            (joint, floor_joint_weight(weight.kip_per_ft, before, behind))
            for (joint, _), (before, behind) in zip(truss.floor_joints, panels, strict=True)
        ]
    return found


def panel_lengths_ft(stations_ft: Sequence[float]) -> list[tuple[float, float]]:
    """(length of the panel before, behind) each floor joint [ft]; 0 beyond the ends."""
    panels = [b - a for a, b in pairwise(stations_ft)]
    return list(zip((0.0, *panels), (*panels, 0.0), strict=True))


def factored(loads: JointLoads, dead: DeadSet) -> Mapping[str, float]:
    """Joint -> load under one dead-load set [kip, down]; frozen."""
    return MappingProxyType(
        {joint: dead.dc * dc + dead.dw * dw for joint, (dc, dw) in loads.items()}
    )
