"""Thrust with bending: the thrust at which weight, pin offset and crookedness use a bar up.

The use of a bar, 1 at its limit, is the larger of several lines (sagging or bent up, crooked in the
one plane or in the other, the one or the other line of the rule). Each line, multiplied by its
amplifications' denominators, is a cubic in the thrust; the least first root of all is the limit.
"""

import math
from dataclasses import dataclass

from eyebar.formula import note, procedure
from eyebar.resistance.moments import (
    middle_moment,
    moment_strength,
    secant_stress,
    thrust_at_ends,
    thrust_at_ends_askew,
    thrust_moment,
    use_in_one_plane,
    use_in_two_planes,
)
from eyebar.resistance.roots import first_root
from eyebar.resistance.rules import Rules
from eyebar.resistance.unequal_ends import equal_offset, middle_offset, thrust_over_joint
from eyebar.terms import Method


@dataclass(frozen=True, slots=True, kw_only=True)
class Bent:
    """A bar that is pushed and bent; kip, inch, ksi.

    `weight`: moment of its own weight at mid-length, factored, `support` the greater of those over
    its joints, bending up; `offset`: pin below the centre of gravity, `other_offset` at the end
    where it is less far away (None: alike); `side_offset`: thrust beside the centre of gravity;
    `bow`: crookedness, its plane unknown.
    `column`: push of the column alone, `short`: of one too short to buckle; `buckling`,
    `side_buckling`: loads the amplification is taken with; `length`, `radius`: effective length and
    radius of gyration in the plane of the truss.
    """

    weight: float
    offset: float
    side_offset: float
    bow: float
    column: float
    short: float
    buckling: float
    side_buckling: float
    area: float
    inertia: float
    side_inertia: float
    top: float
    bottom: float
    side: float | None
    """Distance to the farther side; None where nothing bends the bar that way."""
    yield_stress: float
    modulus: float
    length: float
    radius: float
    support: float = 0.0
    other_offset: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Line:
    """One line of the rule at mid-length: which way it bends, how crooked in which plane."""

    sense: float
    offset: float
    bow: float
    side_distance: float
    axial: float
    bending: float
    strength: float


_OLDER = ((1.0, 1.0),)
_LATER = ((0.5, 1.0), (1.0, 8.0 / 9.0))


@procedure(
    "Thrust with bending",
    source="Standard Specifications 10.36 and 10.54.2, LRFD Bridge Design Specifications 6.9.2.2, "
    "from memory",
    steps=(
        "what the section is worth in bending, its upper or its lower fibre compressed",
        "for each line of the rule the thrust at which it first reaches 1: first root of a cubic",
        "the thrust at which the ends reach 1, where nothing is amplified; of a chord that runs on"
        " also its joints",
        "the least of them; moments and use at that thrust, and what is left to 1",
    ),
)
def thrust_with_bending(bent: Bent, rules: Rules) -> float:
    """The thrust at which a bent bar is used up [kip], positive; 0 where its weight alone does it.

    Scalars. Limits: elastic bars, amplified as if hinged at both ends also where they run on. The
    larger of the two lines of load and resistance is taken everywhere.
    """
    strengths = {
        1.0: moment_strength(rules, bent.yield_stress, bent.inertia, bent.top),
        -1.0: moment_strength(rules, bent.yield_stress, bent.inertia, bent.bottom),
    }
    side_strength = math.inf
    if bent.side is not None:
        side_strength = moment_strength(rules, bent.yield_stress, bent.side_inertia, bent.side)
    lines = _lines(bent, rules, strengths)
    thrust, governing = math.inf, None
    for line in lines:
        # Only what is reached before the least so far is looked for.
        reached = _first(bent, line, side_strength, thrust)
        if reached is not None and reached < thrust:
            thrust, governing = reached, line
    if governing is None:
        thrust = bent.column
    ends = _ends(bent, rules, strengths, side_strength)
    if ends < thrust:
        return ends
    if governing is not None and thrust < min(bent.buckling, bent.side_buckling):
        _shown(bent, governing, thrust, side_strength)
    return thrust


def weights(rules: Rules) -> tuple[tuple[float, float], ...]:
    """The lines of a method's rule: what the thrust and what the moments count in each."""
    return _LATER if rules.method is Method.LOAD_AND_RESISTANCE else _OLDER


def _lines(bent: Bent, rules: Rules, strengths: dict[float, float]) -> list[_Line]:
    """Every line that can govern: the crookedness in the plane, then out of it."""
    planes = [(bent.bow, bent.side_offset)]
    if bent.bow:
        planes.append((0.0, bent.side_offset + bent.bow))
    return [
        _Line(
            sense=sense, offset=offset, bow=bow, side_distance=side, axial=axial, bending=bending,
            strength=strengths[sense],
        )
        for bow, side in planes
        for offset in _middle_offsets(bent)
        for sense in (1.0, -1.0)
        for axial, bending in weights(rules)
    ]


def _middle_offsets(bent: Bent) -> tuple[float, ...]:
    """Offsets that the middle is looked at with: of unequal ends the one that bends, and the one
    that relieves a weight."""
    if bent.other_offset is None or bent.other_offset == bent.offset:
        return (bent.offset,)
    return (
        equal_offset(bent.offset, bent.other_offset), middle_offset(bent.offset, bent.other_offset)
    )


def _first(bent: Bent, line: _Line, side_strength: float, most: float) -> float | None:
    """The least thrust at which a line reaches 1; None where that lies over `most`.

    1 - u, times (1 - P/P_x)(1 - P/P_y), with in-plane moment start + rate P and moment
    side_distance P out of the plane; where a plane has no moment its denominator is left out.
    """
    start = line.bending * line.sense * bent.weight / line.strength
    rate = line.bending * (line.bow - line.sense * line.offset) / line.strength
    side = line.bending * line.side_distance / side_strength
    x = 1.0 / bent.buckling if start or rate else 0.0
    y = 1.0 / bent.side_buckling if side else 0.0
    c = line.axial / bent.column
    coefficients = (
        1.0 - start,
        start * y - rate - side - (c + x + y),
        c * (x + y) + x * y + rate * y + side * x,
        -c * x * y,
    )
    return first_root(coefficients, min(1.0 / max(x, y, c), most))


def _ends(
    bent: Bent, rules: Rules, strengths: dict[float, float], side_strength: float
) -> float:
    """The thrust at which the ends reach 1: the use is proportional to it."""
    column = bent.column if rules.method is Method.LOAD_AND_RESISTANCE else bent.short
    strength = strengths[-1.0 if bent.offset > 0 else 1.0]
    at_pins = min(
        thrust_at_ends(
            axial=axial, column=column, bending=bending, offset=abs(bent.offset),
            moment_strength=strength,
        )
        if not bent.side_offset
        else thrust_at_ends_askew(
            axial=axial, column=column, bending=bending, offset=abs(bent.offset),
            moment_strength=strength, side_offset=bent.side_offset, side_strength=side_strength,
        )
        for axial, bending in weights(rules)
    )
    if bent.support <= 0.0:
        return at_pins
    # A pin above the centre would relieve the joint: that is not counted on.
    below = max(bent.offset, bent.other_offset or 0.0, 0.0)
    return min(at_pins, *(
        thrust_over_joint(
            bending=bending, support=bent.support, moment_strength=strengths[-1.0], axial=axial,
            column=column, offset=below,
        )
        for axial, bending in weights(rules)
    ))


def _shown(bent: Bent, line: _Line, thrust: float, side_strength: float) -> None:
    """The governing line at its thrust, and the elastic stress beside it, for the working."""
    moment = middle_moment(
        line.sense, bent.weight, thrust=thrust, offset=line.offset, bow=line.bow
    )
    if line.side_distance:
        use = use_in_two_planes(
            axial=line.axial, thrust=thrust, column=bent.column, bending=line.bending,
            moment=moment, moment_strength=line.strength, buckling=bent.buckling,
            side_moment=thrust_moment(thrust, line.side_distance), side_strength=side_strength,
            side_buckling=bent.side_buckling,
        )
    else:
        use = use_in_one_plane(
            axial=line.axial, thrust=thrust, column=bent.column, bending=line.bending,
            moment=moment, moment_strength=line.strength, buckling=bent.buckling,
        )
    note("use at this thrust less 1", "u - 1", use - 1.0, "1")
    secant_stress(
        thrust, bent.area, offset=abs(line.offset) + line.bow,
        fibre=bent.bottom if line.sense < 0 else bent.top, radius=bent.radius, length=bent.length,
        modulus=bent.modulus,
    )
