"""Decks under wheels: planks, laminations and panels of timber; steel by a section modulus given;
slabs of concrete by `slabs`.

One wheel stands in the middle of a span for bending, beside a support for shear. How wide a strip
carries it, and how far it is spread along the span, are rules of the deck's kind.
"""

from dataclasses import dataclass

from eyebar.bridge.floor_parts import Deck, Timber
from eyebar.bridge.parts import Material
from eyebar.errors import NotMeasured, OutOfRange
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.resistance.bending import factored_stress, part_of_yield
from eyebar.resistance.floor_rules import Effect, FloorRules, Strength
from eyebar.resistance.slabs import runs_on, slab_strengths, slab_strip
from eyebar.resistance.timber import Stick, timber_strength
from eyebar.sections.amounts import measured
from eyebar.sections.closed_forms import rectangle_area
from eyebar.terms import Method

PLANK, NAILED, GLUED = "plank", "nail-laminated", "glued-laminated"
STEEL_PLANK, GRATING, CONCRETE = "steel plank", "steel grating", "concrete"
TIMBER_KINDS = (PLANK, NAILED, GLUED)
ALONG = "along"
SPAN = Symbol("span of the deck", "in", "deck_span", low=20.0, high=60.0)
SPREAD = Symbol("length of the span that the wheel lies on", "in", "spread", low=5.0, high=20.0)


@formula(
    "w = sqrt(k * P)",
    result=Symbol("width of a tyre", "in"),
    k=Symbol("area by weight", "in2/lb", "by_weight", low=0.01, high=0.05),
    P=Symbol("weight on one wheel", "kip", "wheel", low=2.0, high=16.0),
    source="Standard Specifications 3.30, quoted in a mail thread of structural engineers, 2000",
)
def tyre_width(by_weight: float, wheel: float) -> float:
    """Width of a tyre by the older methods [in].

    Area by weight [in2/lb], weight [kip]. Scalars. Limits: none.
    """
    width: float = (by_weight * 1000.0 * wheel) ** 0.5
    return width


@formula(
    "L = min(c + b / 2, c + t)",
    result=Symbol("span of a deck", "in"),
    c=Symbol("clear distance of its supports", "in", "clear", low=10.0, high=60.0),
    b=Symbol("width of a support", "in", "support_width", low=2.0, high=12.0),
    t=Symbol("thickness of the deck", "in", "thickness", low=2.0, high=8.0),
    source="Standard Specifications 3.25.1.2, from memory",
)
def deck_span(clear: float, support_width: float, thickness: float) -> float:
    """Span of a deck: clear distance and half a support, no more than clear and thickness [in].

    Lengths [in]. Scalars. Limits: none.
    """
    return min(clear + support_width / 2, clear + thickness)


@formula(
    "L = c + b / 2",
    result=Symbol("span of a slab", "in"),
    c=Symbol("clear distance of its supports", "in", "clear", low=10.0, high=60.0),
    b=Symbol("width of a support", "in", "support_width", low=2.0, high=12.0),
    source="Standard Specifications 3.24.1.2: between the edges of flanges and half of one, from "
    "memory",
)
def slab_span(clear: float, support_width: float) -> float:
    """Span of a slab on stringers [in].

    Lengths [in]; scalars or arrays. Limits: none.
    """
    return clear + support_width / 2


@formula(
    "m = c * (L / 4 - s / 8 if s <= L else L**2 / (8 * s))",
    result=Symbol("moment of a deck for a unit wheel", "in"),
    c=Symbol("part of the simple moment", "1", "part", low=0.5, high=1.0),
    L=SPAN,
    s=SPREAD,
    source="simple span, the wheel spread evenly at its middle; what continuity leaves by Standard "
    "Specifications 3.25.4, from memory",
)
def wheel_moment(part: float, deck_span: float, spread: float) -> float:
    """Moment of a deck for a unit wheel at the middle of its span [in].

    Part [1], lengths [in]. Scalars. Limits: none.
    """
    if spread <= deck_span:
        return part * (deck_span / 4 - spread / 8)
    return part * deck_span**2 / (8 * spread)


@formula(
    "v = (L - t - s / 2) / L if s <= L - t else (L - t)**2 / (2 * s * L)",
    result=Symbol("shear of a deck for a unit wheel", "1"),
    L=SPAN,
    t=Symbol("thickness of the deck", "in", "thickness", low=2.0, high=8.0),
    s=SPREAD,
    source="simple span, the wheel's edge one thickness from the support; so for beams by National "
    "Design Specification 3.4.3, from memory",
)
def wheel_shear(deck_span: float, thickness: float, spread: float) -> float:
    """Shear of a deck for a unit wheel beside a support [1].

    Lengths [in]. Scalars. Limits: thickness less than the span.
    """
    reach = deck_span - thickness
    if spread <= reach:
        return (reach - spread / 2) / deck_span
    return reach**2 / (2 * spread * deck_span)


@formula(
    "S = b * t**2 / 6",
    result=Symbol("section modulus of a strip of deck", "in3"),
    b=Symbol("width of the strip that carries the wheel", "in", "strip", low=8.0, high=24.0),
    t=Symbol("thickness of the deck", "in", "thickness", low=2.0, high=8.0),
    source="plane geometry",
)
def strip_modulus(strip: float, thickness: float) -> float:
    """Section modulus of a strip of deck [in3].

    Lengths [in]; scalars or arrays. Limits: none.
    """
    return strip * thickness**2 / 6


@dataclass(frozen=True, slots=True, kw_only=True)
class Patch:
    """A tyre on the deck [in]: `across` the road and `along` it."""

    across: float
    along: float


def tyre(method: Method, wheel_kip: float, values: Values) -> Patch:
    """The patch of one wheel by a method [in]; the wheel's weight [kip]."""
    if method is Method.LOAD_AND_RESISTANCE:
        return Patch(across=values.number("tyre.width"), along=values.number("tyre.length"))
    width = tyre_width(values.number("tyre.area by weight"), wheel_kip)
    return Patch(across=width, along=width * values.number("tyre.length over width"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """The strip of deck that carries a wheel: its span, its width, how far the wheel lies along the
    span [in], and effects of a unit wheel: moment [in] and shear [1]."""

    span: float
    width: float
    spread: float
    moment: float
    shear: float


def strip_of(
    deck: Deck, patch: Patch, wheel_kip: float, values: Values, *,
    method: Method = Method.ALLOWABLE_STRESS,
) -> Strip:
    """The strip that carries a wheel. Raises NotMeasured; OutOfRange for a span so wide that more
    than one wheel may stand on it."""
    thickness = measured(deck.thickness, "thickness of the deck")
    clear = measured(deck.clear, "clear distance of the deck's supports")
    support = measured(deck.support, "width of the deck's supports")
    if deck.kind == CONCRETE:
        return _strip_of_slab(deck, patch, method, slab_span(clear, support), values)
    span = deck_span(clear, support, thickness)
    alone = values.number("deck.wheel alone up to")
    if span > alone:
        raise OutOfRange(
            "span of the deck", f"{span:g} in",
            f"{alone:g} in at most: on a wider one more than one wheel may stand at once",
        )
    lies, along_the_strip = (
        (patch.along, patch.across) if deck.runs == ALONG else (patch.across, patch.along)
    )
    part = values.number("deck.part of simple moment") if deck.continuous else 1.0
    return Strip(
        span=span, spread=lies,
        width=_width(deck, along_the_strip, 2.0 * wheel_kip, thickness, values),
        moment=wheel_moment(part, span, lies), shear=wheel_shear(span, thickness, lies),
    )


def _strip_of_slab(
    deck: Deck, patch: Patch, method: Method, span: float, values: Values
) -> Strip:
    """The strip of a slab that carries a wheel: by the older methods the wheel is a point."""
    if deck.runs == ALONG:
        raise OutOfRange("slab", "spanning along the road", "across it, from stringer to stringer")
    alone = values.number("slab.wheel alone up to")
    if span > alone:
        raise OutOfRange(
            "span of the slab", f"{span:g} in",
            f"{alone:g} in at most: on a wider one wheels of two vehicles may do more than one",
        )
    spread = patch.across if method is Method.LOAD_AND_RESISTANCE else 0.0
    part = values.number("slab.part of simple moment") if runs_on(deck) else 1.0
    moment = wheel_moment(part, span, spread)
    return Strip(
        span=span, width=slab_strip(method, span), spread=spread, moment=moment, shear=0.0
    )


def _width(
    deck: Deck, tyre_in: float, axle_kip: float, thickness: float, values: Values
) -> float:
    """Width of deck that carries one wheel [in]."""
    match deck.kind:
        case "plank" if deck.runs == ALONG:
            return tyre_in
        case "plank":
            plank = measured(deck.plank_width, "width of the planks")
            return max(plank, values.number("deck.plank strip"))
        case "nail-laminated" | "glued-laminated" if deck.runs == ALONG:
            return tyre_in + (2.0 * thickness if deck.joined else 0.0)
        case "nail-laminated" | "glued-laminated":
            strip = values.number("deck.laminated strip")
            return strip + (thickness if deck.joined else 0.0)
        case "steel grating":
            by_axle = values.number("deck.grating strip by axle") * axle_kip / 2.0
            return by_axle + 2.0 * measured(deck.bars_apart, "spacing of the main bars")
        case _:
            return tyre_in + 2.0 * thickness


def deck_strengths(
    deck: Deck, strip: Strip, by: FloorRules, values: Values
) -> tuple[Strength, ...]:
    """Strengths of the strip under a wheel; none where the method has no rule.

    Raises NotMeasured, OutOfRange.
    """
    if deck.kind == CONCRETE:
        return tuple(slab_strengths(deck, by, values, strip=strip.width, moment=strip.moment))
    if isinstance(deck.made_of, Timber):
        if by.bending.method is Method.LOAD_FACTOR:
            return ()
        return _of_timber(deck, deck.made_of, strip, by, values)
    if deck.made_of is None:
        raise NotMeasured("", "what the deck is made of")
    return _of_steel(deck, deck.made_of, strip, by, values)


def _of_timber(
    deck: Deck, timber: Timber, strip: Strip, by: FloorRules, values: Values
) -> tuple[Strength, ...]:
    thickness = measured(deck.thickness, "thickness of the deck")
    built = measured(deck.built, "thickness of the deck as built")
    broad = measured(deck.plank_width, "width of the planks or laminations")
    flat = deck.kind == PLANK
    breadth, depth = (broad, built)
    strength = timber_strength(
        timber,
        Stick(
            breadth=breadth, depth=depth, flat=flat, left_breadth=breadth, left_depth=thickness,
            # Laminations nailed to each other share, plank by plank they do not.
            sharing=1 if flat else 1000, apart=None if flat else breadth,
        ),
        method=by.bending.method, level=by.bending.level, reduction=by.bending.reduction,
        shear_reduction=by.shear.reduction, values=values,
    )
    section = strip_modulus(strip.width, thickness)
    support = measured(deck.support, "width of the deck's supports")
    return (
        Strength(
            check="bending of the deck", effect=Effect.PLANK_MOMENT, unit="ksi",
            capacity=strength.bending, divisor=section / strip.moment, remarks=by.bending.remarks,
        ),
        Strength(
            check="shear of the deck along its grain", effect=Effect.PLANK_SHEAR, unit="ksi",
            capacity=strength.shear,
            divisor=rectangle_area(strip.width, thickness) / 1.5 / strip.shear,
        ),
        Strength(
            check="push across the deck's grain on its supports", effect=Effect.PLANK_PUSH,
            unit="ksi", capacity=strength.across,
            divisor=rectangle_area(strip.width, support),
        ),
    )


def _of_steel(
    deck: Deck, material: Material, strip: Strip, by: FloorRules, values: Values
) -> tuple[Strength, ...]:
    modulus = measured(deck.modulus, "section modulus of the deck")
    if deck.thickness is not None and deck.built is not None and deck.thickness < deck.built:
        raise NotMeasured("", "section modulus of what rust has left of the deck")
    if by.bending.method is Method.ALLOWABLE_STRESS:
        capacity = part_of_yield(by.bending.bending, material.yield_stress)
    elif by.bending.method is Method.LOAD_FACTOR:
        capacity = part_of_yield(1.0, material.yield_stress)
    else:
        capacity = factored_stress(
            by.bending.reduction, values.number("resistance factor.flexure"),
            material.yield_stress,
        )
    return (
        Strength(
            check="bending of the deck", effect=Effect.PLANK_MOMENT, unit="ksi",
            capacity=capacity, divisor=modulus * strip.width / strip.moment,
            remarks=by.bending.remarks,
        ),
    )
