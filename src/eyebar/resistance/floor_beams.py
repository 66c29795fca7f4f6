"""Stringers and floorbeams: every strength along them and at their ends, by a method and level."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from eyebar.bridge.floor_joined import BeamEnds
from eyebar.bridge.floor_parts import MadeOf, Stretch, Timber
from eyebar.bridge.parts import Material
from eyebar.errors import NotMeasured
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.resistance.bending import bending_strength, part_of_yield
from eyebar.resistance.end_rivets import end_rivets
from eyebar.resistance.floor_rules import Effect, FloorRules, Strength
from eyebar.resistance.timber import Stick, TimberStrength, timber_strength
from eyebar.resistance.timber_factors import notched_shear
from eyebar.resistance.webs import (
    coped,
    crippling_strength,
    seat_area,
    seat_strength,
    web_strength,
)
from eyebar.sections.amounts import measured
from eyebar.sections.beams import BeamSection, beam_section, bending_modulus
from eyebar.sections.properties import area
from eyebar.sections.shapes import Section, Timbers
from eyebar.terms import Metal, Method

RATED_METALS = (Metal.WROUGHT_IRON, Metal.STEEL)
NO_ENDS = "seat and end rivets not recorded: what bears or holds its ends is not looked at"
KNIFE_EDGE = "width of the stringers on it not recorded: taken to stand on edges"
SERVICE = {Method.LOAD_FACTOR: "overload", Method.LOAD_AND_RESISTANCE: "Service II"}
"""Method -> name of its check under loads that come again and again."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Beam:
    """A stringer or a floorbeam as a beam.

    `unheld` of the upper edge and `unheld_below` of the lower one [in], None where not recorded;
    `both_ways`: its moment may stretch either edge. `over` is what its ends rest on or hang from,
    in a word. `sharing` like sticks stand `apart` [in] under one deck. `carries`: width of the
    stringers that stand on it [in], 0 where it is not known, None where none does.
    """

    stretches: tuple[Stretch, ...]
    as_built: Section
    made_of: MadeOf
    ends: BeamEnds
    unheld: float | None
    unheld_below: float = 0.0
    both_ways: bool = False
    over: str = "seat"
    sharing: int = 1
    apart: float | None = None
    carries: float | None = None


@formula(
    "A = 2 * b * d_n / 3",
    result=Symbol("area that makes the greatest shear stress of a rectangle", "in2"),
    b=Symbol("width of the stick", "in", "breadth", low=2.0, high=8.0),
    d_n=Symbol("depth over the notch", "in", "over_notch", low=4.0, high=18.0),
    source="statics: 3 V / (2 b d)",
)
def shear_area_of_timber(breadth: float, over_notch: float) -> float:
    """Area by which a shear is divided for the greatest shear stress of a rectangle [in2].

    Lengths [in]; scalars or arrays. Limits: none.
    """
    return 2 * breadth * over_notch / 3


def floor_beam_strengths(beam: Beam, by: FloorRules, values: Values) -> tuple[Strength, ...]:
    """Every strength of a beam by a method and level.

    None by load factor for timber. Raises NotMeasured, OutOfRange.
    """
    if isinstance(beam.made_of, Timber):
        if by.bending.method is Method.LOAD_FACTOR:
            return ()
        return _told(beam, _of_timber(beam, beam.made_of, by, values))
    if beam.made_of.metal not in RATED_METALS:
        raise NotMeasured("", f"strength of {beam.made_of.metal}, which has no rule here,")
    if beam.made_of.yield_stress <= 0.0:
        raise NotMeasured("", f"strength of {beam.made_of.name}")
    return _told(beam, _of_metal(beam, beam.made_of, by, values))


def _told(beam: Beam, strengths: Iterator[Strength]) -> tuple[Strength, ...]:
    """The strengths, each telling where nothing is recorded of the beam's ends."""
    if beam.ends.seat_recorded or beam.ends.fastening is not None:
        return tuple(strengths)
    return tuple(replace(one, remarks=(*one.remarks, NO_ENDS)) for one in strengths)


def _of_metal(
    beam: Beam, material: Material, by: FloorRules, values: Values
) -> Iterator[Strength]:
    remarks = by.bending.remarks
    for stretch in beam.stretches:
        section = beam_section(stretch.section)
        for sense in (1, -1) if beam.both_ways else (1,):
            bent = section if sense > 0 else beam_section(stretch.section, sense=sense)
            for one in _bending(beam, material, bent, by, values, sense=sense):
                yield replace(one, begin_ft=stretch.begin_ft, end_ft=stretch.end_ft)
        yield Strength(
            check="shear of the web", effect=Effect.SHEAR, unit="ksi", divisor=section.web_area,
            capacity=web_strength(
                section, by.shear, values, yield_stress=material.yield_stress,
                modulus=material.modulus, reduction=by.shear.reduction,
            ),
            remarks=remarks, begin_ft=stretch.begin_ft, end_ft=stretch.end_ft,
        )
    if beam.carries is not None:
        yield _under_stringers(beam, material, by, values, beam.carries)
    for end, stretch in ((0, beam.stretches[0]), (1, beam.stretches[-1])):
        yield from _end_of_metal(
            beam, material, beam_section(stretch.section), by, values, end=end
        )


def _bending(
    beam: Beam, material: Material, section: BeamSection, by: FloorRules, values: Values, *,
    sense: int,
) -> Iterator[Strength]:
    unheld = measured(beam.unheld, "how its compressed flange is held") if sense > 0 else (
        beam.unheld_below)
    held = "held" if unheld == 0.0 else "not held"
    where = "" if sense > 0 else " over a floorbeam" if beam.over == "seat" else " upwards"
    yield Strength(
        check=f"bending{where}, flange {held}", effect=Effect.MOMENT, unit="ksi", sense=sense,
        capacity=bending_strength(
            section, by.bending, values, yield_stress=material.yield_stress,
            modulus=material.modulus, unheld=unheld,
        ),
        divisor=section.modulus, remarks=by.bending.remarks,
    )
    if by.bending.method in SERVICE:
        yield Strength(
            check=SERVICE[by.bending.method], effect=Effect.MOMENT, unit="ksi", sense=sense,
            capacity=part_of_yield(
                values.number("service.part of yield"), material.yield_stress
            ),
            divisor=section.modulus, service=True,
        )


def _under_stringers(
    beam: Beam, material: Material, by: FloorRules, values: Values, width: float
) -> Strength:
    """Push that the weakest web of a beam may bear under a stringer that stands on it: before it
    yields or before it cripples, whichever is less."""
    said = () if width > 0.0 else (KNIFE_EDGE,)
    found: list[Strength] = []
    for stretch in beam.stretches:
        section = beam_section(stretch.section)
        area = seat_area(
            section.web, width, values.number("beam.spread under what stands on it"),
            section.at_web,
        ) * section.modulus / section.one
        stress = seat_strength(
            by.shear, values, yield_stress=material.yield_stress, reduction=by.shear.reduction
        )
        cripples = crippling_strength(
            section, by.shear, values, stands=width, yield_stress=material.yield_stress,
            modulus=material.modulus, at_end=False,
        )
        found.append(Strength(
            check="web under a stringer", effect=Effect.STRINGER, unit="ksi", capacity=stress,
            divisor=area, remarks=said,
        ) if stress * area <= cripples else Strength(
            check="crippling of the web under a stringer", effect=Effect.STRINGER, unit="kip",
            capacity=cripples, divisor=1.0, remarks=said,
        ))
    return min(found, key=lambda one: one.capacity * one.divisor)


def _end_of_metal(
    beam: Beam, material: Material, section: BeamSection, by: FloorRules, values: Values, *,
    end: int,
) -> Iterator[Strength]:
    ends, stress = beam.ends, material.yield_stress
    if ends.seat_recorded:
        seat = measured(ends.seat, f"length of the {beam.over}")
        area = seat_area(
            section.web, seat, values.number("beam.spread over the seat"), section.at_web
        ) * section.modulus / section.one
        yield Strength(
            check=f"web over the {beam.over}", effect=Effect.REACTION, unit="ksi", end=end,
            capacity=seat_strength(
                by.shear, values, yield_stress=stress, reduction=by.shear.reduction
            ),
            divisor=area,
        )
        if not ends.stiffened:
            yield Strength(
                check=f"crippling of the web over the {beam.over}", effect=Effect.REACTION,
                unit="kip", end=end, divisor=1.0,
                capacity=crippling_strength(
                    section, by.shear, values, stands=seat, yield_stress=stress,
                    modulus=material.modulus, at_end=True,
                ),
            )
    if ends.cope is not None:
        left = coped(section, ends.cope)
        yield Strength(
            check="shear of the coped web", effect=Effect.REACTION, unit="ksi", end=end,
            capacity=web_strength(
                section, by.shear, values, yield_stress=stress, modulus=material.modulus,
                reduction=by.shear.reduction,
            ),
            divisor=left.area,
        )
        yield Strength(
            check="bending at the cope", effect=Effect.REACTION, unit="ksi", end=end,
            capacity=bending_strength(
                section, by.bending, values, yield_stress=stress, modulus=material.modulus,
                unheld=0.0,
            ) if by.bending.method is Method.ALLOWABLE_STRESS else part_of_yield(
                by.bending.bending * by.bending.reduction, stress
            ),
            divisor=left.modulus / left.length,
            remarks=("buckling of the coped web is not looked at",),
        )
    if ends.fastening is not None:
        yield from end_rivets(ends.fastening, material, by, values, end=end)


def _sticks(section: Section) -> tuple[tuple[float, float], ...]:
    """Width and depth of each stick [in]. Raises NotMeasured."""
    if not isinstance(section, Timbers):
        raise NotMeasured("", "width and depth of the timber")
    return tuple(
        (measured(one.width, "width of the timber"), measured(one.depth, "depth of the timber"))
        for one in section.sticks
    )


def _timber(
    beam: Beam, timber: Timber, left: Section, by: FloorRules, values: Values, *, unheld: float
) -> TimberStrength:
    breadth, depth = _sticks(beam.as_built)[0]
    now = min(_sticks(left))
    return timber_strength(
        timber,
        Stick(
            breadth=breadth, depth=depth, unheld=unheld, left_breadth=now[0], left_depth=now[1],
            sharing=beam.sharing, apart=beam.apart,
        ),
        method=by.bending.method, level=by.bending.level, reduction=by.bending.reduction,
        shear_reduction=by.shear.reduction, values=values,
    )


def _of_timber(
    beam: Beam, timber: Timber, by: FloorRules, values: Values
) -> Iterator[Strength]:
    remarks = by.bending.remarks
    upper = measured(beam.unheld, "how its compressed edge is held")
    for stretch in beam.stretches:
        for sense, unheld in ((1, upper), (-1, beam.unheld_below))[: 2 if beam.both_ways else 1]:
            strength = _timber(beam, timber, stretch.section, by, values, unheld=unheld)
            yield Strength(
                check="bending of the timber" + (" over a floorbeam" if sense < 0 else ""),
                effect=Effect.MOMENT, unit="ksi", capacity=strength.bending, sense=sense,
                divisor=bending_modulus(stretch.section), begin_ft=stretch.begin_ft,
                end_ft=stretch.end_ft, remarks=remarks,
            )
    for end, stretch in ((0, beam.stretches[0]), (1, beam.stretches[-1])):
        yield from _end_of_timber(beam, timber, stretch.section, by, values, end=end)
        yield from _thinner_of_timber(beam, timber, by, values, end=end)


def _thinner_of_timber(
    beam: Beam, timber: Timber, by: FloorRules, values: Values, *, end: int
) -> Iterator[Strength]:
    """Shear where the half of a stick next to an end is thinner than at the end itself: as great
    as there, the safe side."""
    middle = beam.stretches[-1].end_ft / 2.0
    half = [
        one for one in beam.stretches
        if (one.begin_ft < middle if end == 0 else one.end_ft > middle)
    ]
    at_end = beam.stretches[0 if end == 0 else -1]
    thinnest = min(half, key=lambda one: area(one.section))
    if area(thinnest.section) >= area(at_end.section):
        return
    strength = _timber(beam, timber, thinnest.section, by, values, unheld=0.0)
    sticks = _sticks(thinnest.section)
    depth = min(depth for _, depth in sticks)
    yield Strength(
        check="shear along the grain where it is thinnest", effect=Effect.TIMBER_SHEAR, unit="ksi",
        capacity=strength.shear, end=end, begin_ft=depth / 12.0,
        divisor=shear_area_of_timber(sum(width for width, _ in sticks), depth),
    )


def _end_of_timber(
    beam: Beam, timber: Timber, section: Section, by: FloorRules, values: Values, *, end: int
) -> Iterator[Strength]:
    sticks = _sticks(section)
    strength = _timber(beam, timber, section, by, values, unheld=0.0)
    notch = measured(beam.ends.notch, "depth of the notch at its end")
    depth = min(depth for _, depth in sticks)
    shear = strength.shear if notch == 0.0 else notched_shear(strength.shear, depth - notch, depth)
    yield Strength(
        check="shear along the grain", effect=Effect.TIMBER_SHEAR, unit="ksi", capacity=shear,
        divisor=shear_area_of_timber(sum(width for width, _ in sticks), depth - notch),
        end=end, begin_ft=depth / 12.0,
    )
    if beam.ends.seat_recorded:
        seat = measured(beam.ends.seat, f"length of the {beam.over}")
        yield Strength(
            check=f"push across the grain on the {beam.over}", effect=Effect.REACTION, unit="ksi",
            capacity=strength.across, divisor=seat * sum(width for width, _ in sticks), end=end,
        )
