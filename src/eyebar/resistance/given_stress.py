"""Cast iron and timber: only with stresses that the record gives, each with its source.

A stress given is an allowable one, as it stands for the loads of the road (moisture, duration and
size counted): inventory takes it as it is, operating as much of it as the office says. The other
two methods have no rule here.
"""

import math

from eyebar.bridge.parts import AllowedStress, Bar
from eyebar.errors import NotMeasured
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.resistance.found import Pull, Push, pulled, pushed
from eyebar.resistance.rules import Rules
from eyebar.resistance.whole_column import factor_out_of_plane
from eyebar.sections.properties import area, measured
from eyebar.sections.shapes import Timbers
from eyebar.terms import Level, Metal

STRESS = Symbol("allowable stress that the record gives", "ksi", "allowed", low=0.4, high=12.0)
TIMES = Symbol("allowed at this level over what is given", "1", "times", low=1.0, high=1.4)
AREA = Symbol("area", "in2", "area", low=10.0, high=200.0)
COLUMNS_OF_TIMBER = "National Design Specification for Wood Construction 3.7, from memory"


@formula(
    "P = m * F * A",
    result=Symbol("force that the section may carry", "kip"),
    m=TIMES,
    F=STRESS,
    A=AREA,
    source="the record's own source for the stress; Manual for Bridge Evaluation 6B.5.2.7 for "
    "operating on timber, from memory",
)
def force_at_given_stress(times: float, allowed: float, area: float) -> float:
    """Force that a section may carry at a stress that the record gives [kip].

    Times [1], stress [ksi], area [in2]; scalars or arrays. Limits: pulled or pushed through the
    centre.
    """
    return times * allowed * area


@formula(
    "s = K * L / d",
    result=Symbol("effective length over the stick's side", "1"),
    K=Symbol("effective length over unsupported length", "1", "factor", low=0.5, high=2.0),
    L=Symbol("unsupported length", "in", "length", low=20.0, high=300.0),
    d=Symbol("side of the stick in the plane it bends in", "in", "side", low=3.0, high=16.0),
    source="definition",
)
def stick_slenderness(factor: float, length: float, side: float) -> float:
    """Effective length of a stick over its side [1].

    Factor [1], lengths [in]; scalars or arrays. Limits: none.
    """
    return factor * length / side


@formula(
    "F_cE = 0.822 * E_min / s**2",
    result=Symbol("stress at which the stick buckles, with its safety", "ksi"),
    E_min=Symbol("modulus for columns that the record gives", "ksi", "column_modulus", low=300.0,
                 high=800.0),
    s=Symbol("effective length over the stick's side", "1", "side_ratio", low=5.0, high=50.0),
    source=COLUMNS_OF_TIMBER,
)
def stick_buckling_stress(column_modulus: float, side_ratio: float) -> float:
    """Stress at which a stick of timber buckles, safety within the modulus [ksi].

    Modulus [ksi], ratio [1]. Scalars. Limits: rectangular sticks with a ratio of 50 at most.
    """
    return 0.822 * column_modulus / side_ratio**2


@formula(
    "C_P = (1 + r) / (2 * c) - sqrt(((1 + r) / (2 * c))**2 - r / c)",
    result=Symbol("column stability factor", "1"),
    r=Symbol("stress at which the stick buckles over the stress allowed", "1", "ratio", low=0.1,
             high=5.0),
    c=Symbol("constant of sawn timber", "1", "sawn", low=0.75, high=0.9),
    source=COLUMNS_OF_TIMBER,
)
def column_stability(ratio: float, sawn: float) -> float:
    """Part of the stress that the slenderness of a timber column leaves [1].

    Ratio, constant [1]. Scalars. Limits: ratio above 0.
    """
    half = (1 + ratio) / (2 * sawn)
    return half - math.sqrt(half**2 - ratio / sawn)


@formula(
    "F_c = C_P * F",
    result=Symbol("allowable stress of the column", "ksi"),
    C_P=Symbol("column stability factor", "1", "stability", low=0.1, high=1.0),
    F=STRESS,
    source=COLUMNS_OF_TIMBER,
)
def stable_stress(stability: float, allowed: float) -> float:
    """Allowable stress of a timber column [ksi].

    Factor [1], stress [ksi]; scalars or arrays. Limits: none.
    """
    return stability * allowed


MOST_SLENDER = 50.0
"""Effective length over side above which no stick is a column."""


def allowed_of(bar: Bar) -> AllowedStress:
    """The stresses that the record gives for a bar's material. Raises NotMeasured."""
    if bar.material.allowed is None:
        raise NotMeasured("", f"strength of {bar.material.metal}, which has no rule here,")
    return bar.material.allowed


def pulls_by_given_stress(bar: Bar, rules: Rules, values: Values) -> list[Pull]:
    """The one check in pull of a bar of cast iron or timber; holes are the record's to count."""
    stress = measured(allowed_of(bar).pull, f"allowable stress of {bar.material.metal} in pull")
    force = force_at_given_stress(_times(bar, rules, values), stress, area(bar.left))
    return [pulled("stress given, in pull", force, _said(bar))]


def pushes_by_given_stress(bar: Bar, rules: Rules, values: Values) -> list[Push]:
    """A bar of cast iron or timber in push; timber with its slenderness about both sides."""
    given = allowed_of(bar)
    stress = measured(given.push, f"allowable stress of {bar.material.metal} in push")
    times, size = _times(bar, rules, values), area(bar.left)
    if not isinstance(bar.left, Timbers):
        remarks = ("slenderness taken to be in the stress that is given", *_said(bar))
        force = force_at_given_stress(times, stress, size)
        return [pushed("stress given, in push", force, remarks)]
    modulus = measured(given.column_modulus, "modulus for columns of timber")
    thin = [
        (measured(one.depth, "depth of the timber"), measured(one.width, "width of the timber"))
        for one in bar.left.sticks
    ]
    found = []
    for where, length, factor, side in (
        ("in the plane of the truss", bar.length_in_plane,
         values.number("effective length.in plane"), min(d for d, _ in thin)),
        ("out of the plane of the truss", bar.length_out_of_plane,
         factor_out_of_plane(bar, values), min(w for _, w in thin)),
    ):
        ratio = stick_slenderness(factor, length, side)
        if ratio > MOST_SLENDER:
            raise NotMeasured(
                "", f"strength of a stick {ratio:.0f} times as long as its side (no rule over"
                f" {MOST_SLENDER:g})"
            )
        buckling = stick_buckling_stress(modulus, ratio)
        part = column_stability(buckling / stress, values.number("timber.column.sawn"))
        push = force_at_given_stress(times, stable_stress(part, stress), size)
        found.append(pushed(f"timber column {where}", push, _said(bar)))
    return found


def _times(bar: Bar, rules: Rules, values: Values) -> float:
    if rules.level is not Level.OPERATING:
        return 1.0
    kind = "timber" if bar.material.metal is Metal.TIMBER else "cast iron"
    return values.number(f"{kind}.operating over inventory")


def _said(bar: Bar) -> tuple[str, ...]:
    return (f"stress given by the record: {allowed_of(bar).source}",)
