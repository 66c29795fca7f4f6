"""Decks of concrete under wheels: a strip across the stringers, cracked, its bars pulled.

Where the slab runs on over more than two spans and has bars above, it bends both ways by a part of
the simple moment; else it is taken as simple spans. Shear is satisfied with bending by the
specifications' rule for such slabs, and not looked at.
"""

import math
from collections.abc import Iterator, Sequence
from itertools import accumulate

from eyebar.bridge.floor_parts import Bars, Deck
from eyebar.errors import NotMeasured, OutOfRange
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.resistance.bending import factored_stress, part_of_yield
from eyebar.resistance.floor_rules import Effect, FloorRules, Strength
from eyebar.sections.amounts import measured
from eyebar.terms import Method

SPAN = Symbol("span of the deck", "in", "deck_span", low=20.0, high=78.0)
STRIP = Symbol("width of the strip that carries the wheel", "in", "strip", low=30.0, high=80.0)
BAR_AREA = Symbol("bars for each inch of width", "in", "bars_an_inch", low=0.02, high=0.12)
DEPTH = Symbol("depth of the bars from the pushed face", "in", "bar_depth", low=3.0, high=8.0)
RATIO = Symbol("modulus of the bars over that of the concrete", "1", "modular_ratio", low=6.0,
               high=15.0)
CONCRETE = Symbol("strength of the concrete", "ksi", "concrete_strength", low=1.5, high=6.0)
YIELD = Symbol("yield stress of the bars", "ksi", "yield_stress", low=30.0, high=60.0)
FLEXURE = "cracked section, strains straight"
ACI_343 = ("ACI 343, 10.4.2.2, read at 1library.net, quoting the Standard Specifications: moment "
           "for a foot of width (S + 2) P / 32")
MODULUS_OF_BARS = 29_000.0
"""Modulus of the bars [ksi]."""
SIMPLE = "no bars above the stringers recorded: taken as simple spans"


@formula(
    "E = 96 in * L / (L + 24 in)",
    result=Symbol("width of the strip that carries the wheel", "in"),
    L=SPAN,
    source=ACI_343 + "; the strip that makes it of a simple span's P L / 4",
)
def strip_across(deck_span: float) -> float:
    """Width of slab that carries a wheel by the older methods [in].

    Span [in]; scalars or arrays. Limits: bars across the road, spans from 2 to 24 ft.
    """
    return 96.0 * deck_span / (deck_span + 24.0)


@formula(
    "E = min(26 in + 0.55 * L, 48 in + 0.25 * L)",
    result=Symbol("width of the strip that carries the wheel", "in"),
    L=SPAN,
    source="LRFD Bridge Design Specifications Table 4.6.2.1.3-1, the narrower of the strips for "
    "moments of both senses, from memory",
)
def equivalent_strip(deck_span: float) -> float:
    """Width of slab that carries a wheel by load and resistance [in].

    Span [in]. Scalars. Limits: concrete cast in place, bars across the road.
    """
    return min(26.0 + 0.55 * deck_span, 48.0 + 0.25 * deck_span)


@formula(
    "P_e = W * E / (E + s)",
    result=Symbol("wheel that would do as much on a strip of its own", "kip"),
    W=Symbol("wheels in a row whose strips overlap, together", "kip", "wheels_together", low=2.0,
             high=80.0),
    E=STRIP,
    s=Symbol("from the first of them to the last", "in", "row", low=0.0, high=200.0),
    source="effective widths less what they overlap, as in the code of the Indian Roads Congress, "
    "from memory",
)
def shared_strip(wheels_together: float, strip: float, row: float) -> float:
    """Wheel that does as much to a strip as several in a row, whose strips overlap [kip].

    Weight [kip], lengths [in]; scalars or arrays. Limits: each nearer to the next than a strip.
    """
    return wheels_together * strip / (strip + row)


@formula(
    "A = pi * d_b**2 / (4 * s)",
    result=Symbol("area of round bars for each inch of width", "in"),
    d_b=Symbol("diameter of a bar", "in", "bar", low=0.375, high=1.0),
    s=Symbol("from bar to bar", "in", "spaced", low=3.0, high=12.0),
    source="plane geometry",
)
def round_bars(bar: float, spaced: float) -> float:
    """Area of round bars for each inch of a slab's width [in].

    Lengths [in]; scalars or arrays. Limits: none.
    """
    return math.pi * bar**2 / (4 * spaced)


@formula(
    "A = d_b**2 / s",
    result=Symbol("area of square bars for each inch of width", "in"),
    d_b=Symbol("side of a bar", "in", "bar", low=0.375, high=1.0),
    s=Symbol("from bar to bar", "in", "spaced", low=3.0, high=12.0),
    source="plane geometry",
)
def square_bars(bar: float, spaced: float) -> float:
    """Area of square bars for each inch of a slab's width [in].

    Lengths [in]; scalars or arrays. Limits: none.
    """
    return bar**2 / spaced


@formula(
    "n = E_s / (1802.5 ksi * sqrt(f_c / (1 ksi)))",
    result=Symbol("modulus of the bars over that of the concrete", "1"),
    E_s=Symbol("modulus of the bars", "ksi", "bars_modulus", low=28_000.0, high=30_000.0),
    f_c=CONCRETE,
    source="Standard Specifications 8.7.1, 57,000 times the root of the strength in psi, from "
    "memory",
)
def modular_ratio(bars_modulus: float, concrete_strength: float) -> float:
    """Modulus of steel over that of concrete of normal weight [1].

    Stresses [ksi]. Scalars. Limits: none.
    """
    ratio: float = bars_modulus / (1802.5 * concrete_strength**0.5)
    return ratio


@formula(
    "k = sqrt(2 * n * A / d + (n * A / d)**2) - n * A / d",
    result=Symbol("pushed part of the depth of the bars", "1"),
    n=RATIO,
    A=BAR_AREA,
    d=DEPTH,
    source=FLEXURE,
)
def pushed_part(modular_ratio: float, bars_an_inch: float, bar_depth: float) -> float:
    """Depth of the pushed part of a cracked slab over that of its bars [1].

    Ratio [1], area for an inch of width [in], depth [in]. Scalars. Limits: bars in one layer.
    """
    part = modular_ratio * bars_an_inch / bar_depth
    pushed: float = (2 * part + part**2) ** 0.5 - part
    return pushed


@formula(
    "S = E * A * (d - k * d / 3)",
    result=Symbol("section modulus for the stress of the bars", "in3"),
    E=STRIP,
    A=BAR_AREA,
    d=DEPTH,
    k=Symbol("pushed part of the depth", "1", "pushed", low=0.1, high=0.6),
    source=FLEXURE,
)
def bars_modulus_of(strip: float, bars_an_inch: float, bar_depth: float, pushed: float) -> float:
    """Moment over the stress of the bars of a cracked strip [in3].

    Lengths [in], area for an inch of width [in], part [1]; scalars or arrays. Limits: none.
    """
    return strip * bars_an_inch * (bar_depth - pushed * bar_depth / 3)


@formula(
    "S = E * k * d * (d - k * d / 3) / 2",
    result=Symbol("section modulus for the stress of the concrete", "in3"),
    E=STRIP,
    k=Symbol("pushed part of the depth", "1", "pushed", low=0.1, high=0.6),
    d=DEPTH,
    source=FLEXURE,
)
def concrete_modulus_of(strip: float, pushed: float, bar_depth: float) -> float:
    """Moment over the stress of the concrete's pushed face of a cracked strip [in3].

    Lengths [in], part [1]; scalars or arrays. Limits: none.
    """
    return strip * pushed * bar_depth * (bar_depth - pushed * bar_depth / 3) / 2


@formula(
    "f = min(c * F_y, max(f_0, c_0 * F_y))",
    result=Symbol("stress that the bars may bear", "ksi"),
    c=Symbol("part of the yield stress", "1", "part", low=0.5, high=0.8),
    F_y=YIELD,
    f_0=Symbol("stress that none but strong bars go beyond", "ksi", "common", low=18.0, high=30.0),
    c_0=Symbol("part of the yield stress of strong bars", "1", "strong_part", low=0.4, high=0.6),
    source="own rule through the figures of the Manual for Bridge Evaluation 6B.5.2.3 for bars of "
    "33, 36, 40 and 60 ksi, at or below each, from memory",
)
def allowed_on_bars(part: float, yield_stress: float, common: float, strong_part: float) -> float:
    """Stress that reinforcing bars may bear by allowable stress [ksi].

    Parts [1], stresses [ksi]. Scalars. Limits: none.
    """
    return min(part * yield_stress, max(common, strong_part * yield_stress))


@formula(
    "A_c = min(A, 0.75 * 0.85 * max(0.65, min(0.85, 1.05 - f_c / (20 ksi))) * f_c / F_y * 87 ksi"
    " / (87 ksi + F_y) * d)",
    result=Symbol("area of bars that counts for each inch of width", "in"),
    A=BAR_AREA,
    f_c=CONCRETE,
    F_y=YIELD,
    d=DEPTH,
    source="Manual for Bridge Evaluation 6B.5.3.2: three quarters of the balanced amount at most, "
    "Standard Specifications 8.16.2.7 and 8.16.3.2, from memory",
)
def counted_bars(
    bars_an_inch: float, *, concrete_strength: float, yield_stress: float, bar_depth: float
) -> float:
    """Bars that count in the strength of a slab for each inch of width [in].

    Area for an inch of width [in], stresses [ksi], depth [in]. Scalars. Limits: none.
    """
    block = max(0.65, min(0.85, 1.05 - concrete_strength / 20.0))
    balanced = 0.85 * block * concrete_strength / yield_stress * 87.0 / (87.0 + yield_stress)
    return min(bars_an_inch, 0.75 * balanced * bar_depth)


@formula(
    "Z = E * A * (d - A * F_y / (1.7 * f_c))",
    result=Symbol("moment over the yield stress of the bars", "in3"),
    E=STRIP,
    A=BAR_AREA,
    d=DEPTH,
    F_y=YIELD,
    f_c=CONCRETE,
    source="Standard Specifications 8.16.3.2, a block of 0.85 of the concrete's strength, from "
    "memory",
)
def yielding_modulus(
    strip: float, bars_an_inch: float, *, bar_depth: float, yield_stress: float,
    concrete_strength: float,
) -> float:
    """Moment of a strip when its bars yield, over their yield stress [in3].

    Lengths [in], area for an inch of width [in], stresses [ksi]; scalars or arrays. Limits: bars
    that yield before the concrete crushes.
    """
    lever = bar_depth - bars_an_inch * yield_stress / (1.7 * concrete_strength)
    return strip * bars_an_inch * lever


def slab_strip(method: Method, span: float) -> float:
    """Width of slab that carries a wheel by a method [in]."""
    if method is Method.LOAD_AND_RESISTANCE:
        return equivalent_strip(span)
    return strip_across(span)


def wheels_on_strip(
    wheels_kip: Sequence[float], spacings_in: Sequence[float], strip: float
) -> float:
    """The wheel that does as much on a strip as the worst of a vehicle's wheels, one behind the
    other, each alone or several whose strips overlap [kip]."""
    places = [0.0, *accumulate(spacings_in)]
    worst = 0.0
    for first in range(len(wheels_kip)):
        for last in range(first, len(wheels_kip)):
            if last > first and spacings_in[last - 1] >= strip:
                break
            together = sum(wheels_kip[first:last + 1])
            worst = max(worst, shared_strip(together, strip, places[last] - places[first]))
    return worst


def runs_on(deck: Deck) -> bool:
    """Whether a slab bends over its stringers as a beam that runs on: it does, and has bars for
    it."""
    return deck.continuous and deck.upper is not None


def slab_strengths(
    deck: Deck, by: FloorRules, values: Values, *, strip: float, moment: float
) -> Iterator[Strength]:
    """Strengths of the strip of slab under a wheel; `moment` for a unit wheel [in].

    Raises NotMeasured, OutOfRange.
    """
    strength = measured(deck.concrete, "strength of the concrete")
    if deck.lower is None:
        raise NotMeasured("", "bars of the slab")
    said = () if runs_on(deck) or not deck.continuous else (SIMPLE,)
    places = [("", deck.lower)]
    if runs_on(deck) and deck.upper is not None:
        places.append((" over the stringers", deck.upper))
    for where, bars in places:
        area, depth = _area(bars), _depth(deck, bars, upper=bool(where))
        stress = measured(bars.yield_stress, "yield stress of the bars")
        if by.bending.method is not Method.ALLOWABLE_STRESS:
            counted = counted_bars(
                area, concrete_strength=strength, yield_stress=stress, bar_depth=depth
            )
            yield Strength(
                check=f"bending of the slab{where}", effect=Effect.PLANK_MOMENT, unit="ksi",
                capacity=_factored(by, values, stress), remarks=(*by.bending.remarks, *said),
                divisor=yielding_modulus(
                    strip, counted, bar_depth=depth, yield_stress=stress,
                    concrete_strength=strength,
                ) / moment,
            )
            continue
        level = by.bending.level
        pushed = pushed_part(modular_ratio(MODULUS_OF_BARS, strength), area, depth)
        yield Strength(
            check=f"pull of the slab's bars{where}", effect=Effect.PLANK_MOMENT, unit="ksi",
            capacity=allowed_on_bars(
                values.number(f"slab.bars.part.{level}"), stress,
                values.number(f"slab.bars.common.{level}"),
                values.number(f"slab.bars.strong part.{level}"),
            ),
            divisor=bars_modulus_of(strip, area, depth, pushed) / moment, remarks=said,
        )
        yield Strength(
            check=f"push of the slab's concrete{where}", effect=Effect.PLANK_MOMENT, unit="ksi",
            capacity=part_of_yield(values.number(f"slab.concrete.{level}"), strength),
            divisor=concrete_modulus_of(strip, pushed, depth) / moment, remarks=said,
        )


def _factored(by: FloorRules, values: Values, stress: float) -> float:
    factor = values.number("resistance factor.slab")
    if by.bending.method is Method.LOAD_FACTOR:
        return part_of_yield(factor, stress)
    return factored_stress(by.bending.reduction, factor, stress)


def _area(bars: Bars) -> float:
    across = measured(bars.diameter, "diameter of the slab's bars")
    every = measured(bars.every, "spacing of the slab's bars")
    return square_bars(across, every) if bars.square else round_bars(across, every)


def _depth(deck: Deck, bars: Bars, *, upper: bool) -> float:
    """Depth of bars from the pushed face [in]: whatever is lost of the slab is taken off it, as it
    may have been lost from that face."""
    left = measured(deck.thickness, "thickness of the deck")
    built = measured(deck.built, "thickness of the deck as built")
    cover = measured(bars.cover, "cover of the slab's bars")
    if upper and built - left >= cover:
        raise OutOfRange("wear of the slab", f"{built - left:g} in",
                         "less than the cover of its upper bars, which lie bare else")
    depth = left - cover - measured(bars.built, "diameter of the slab's bars as built") / 2.0
    if depth <= 0.0:
        raise OutOfRange("cover of the slab's bars", f"{cover:g} in", "less than the slab")
    return depth
