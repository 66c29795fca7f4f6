"""Packings: the bearings of a pin from its outer end, as recorded, or proposed from the members."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import zip_longest

from eyebar.addresses import LOOSE
from eyebar.bridge.parts import Bar, Material, Packed
from eyebar.errors import NotMeasured
from eyebar.record import PackedEntry
from eyebar.record.pins import HUNG, POST
from eyebar.sections.shapes import (
    Channels,
    Eyebars,
    Plates,
    PlatesAndAngles,
    Rods,
)
from eyebar.terms import Kind

UPRIGHT = (Kind.POST, Kind.HIP_VERTICAL)
PUSHED_CHORD = (Kind.TOP_CHORD, Kind.END_POST)
HALF = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Lying:
    """One bearing before it has a place: what bears, thickness and gap to the next [in], and its
    part of each force; `middle` of one across the pin's middle."""

    bars: tuple[str, ...]
    hung: bool
    thickness: float
    gap: float
    share: float
    middle: bool = False


def said(
    packing: Sequence[PackedEntry], bars: Sequence[Bar], *, whole: float, gap: float
) -> list[Lying]:
    """The bearings of a recorded packing; bars that are broken are left out.

    Raises NotMeasured where a thickness is not known.
    """
    names = [names_in(entry, bars) for entry in packing]
    counts: dict[str, int] = {}
    for own, hung in names:
        for name in (*own, *([""] if hung else [])):
            counts[name] = counts.get(name, 0) + 1
    found = []
    for entry, (own, hung) in zip(packing, names, strict=True):
        if not own and not hung:
            continue
        if entry.thickness is None:
            raise NotMeasured(f"the bearing of {' and '.join(entry.bar)}", "thickness")
        plates = entry.pin_plates.number if entry.pin_plates is not None else 0.0
        count = counts[own[0] if own else ""]
        found.append(Lying(
            bars=own, hung=hung, thickness=entry.thickness.number + plates,
            gap=gap if entry.clearance is None else entry.clearance.number,
            share=whole / count if entry.share is None else entry.share, middle=entry.middle,
        ))
    return found


def names_in(entry: PackedEntry, bars: Sequence[Bar]) -> tuple[tuple[str, ...], bool]:
    """The bars at the joint that an entry means, loose pieces too, and whether the hung load."""
    uprights = [bar.name.removesuffix(LOOSE) for bar in bars if bar.kind in UPRIGHT]
    meant = {*entry.bar, *(uprights if POST in entry.bar else ())}
    own = tuple(bar.name for bar in bars if bar.name.removesuffix(LOOSE) in meant)
    return own, bool({*HUNG, POST} & {*entry.bar})


def placed(
    lying: Sequence[Lying], bars: Sequence[Bar], material: Material
) -> tuple[Packed, ...]:
    """The bearings with their places along the pin."""
    yields = {bar.name: bar.material.yield_stress for bar in bars}
    found: list[Packed] = []
    along = 0.0
    for one in lying:
        known = [yields[name] for name in one.bars if yields[name] > 0.0]
        found.append(Packed(
            bars=one.bars, hung=one.hung, along=along + one.thickness / 2.0,
            thickness=one.thickness, share=one.share,
            yield_stress=min([material.yield_stress, *known]), middle=one.middle,
        ))
        along += one.thickness + one.gap
    return tuple(found)


def out_of_balance(
    lying: Sequence[Lying], bars: Sequence[Bar], *, whole: float, hung: bool
) -> Iterator[tuple[str, float]]:
    """What the packing does not carry as a whole: its name, and by which part of its force."""
    for name in (*(bar.name for bar in bars), *([""] if hung else [])):
        got = sum(
            one.share for one in lying if name in one.bars or (name == "" and one.hung)
        )
        if abs(got - whole) > 1e-6:
            yield name or "the load hung on the pin", got - whole


def with_own_weight(lying: Sequence[Lying], bars: Sequence[Bar]) -> list[Lying]:
    """The bearings of a pin on which no load hangs: what its bars leave over is their own weight,
    which goes to the pushed chord's bearings, else to an upright's, else to those of any bar."""
    if any(one.hung for one in lying) or not lying:
        return list(lying)
    first = [bar.name for kinds in (PUSHED_CHORD, UPRIGHT) for bar in bars if bar.kind in kinds]
    takes = [*first, *lying[-1].bars][0]
    return [replace(one, hung=takes in one.bars) for one in lying]


def proposed(bars: Sequence[Bar], *, hung: bool, gap: float) -> list[Lying]:
    """Half a packing that is sensible for these bars: chord outside, web inside, load innermost.

    Raises NotMeasured where a bar does not tell how thick it bears.
    """
    chords = [_pieces(bar, gap) for bar in bars if bar.kind is Kind.BOTTOM_CHORD]
    chords.sort(key=len, reverse=True)
    pushed = [bar for bar in bars if bar.kind in PUSHED_CHORD]
    web = [bar for bar in bars if bar.kind in (Kind.DIAGONAL, Kind.COUNTER)]
    uprights = [bar for bar in bars if bar.kind in UPRIGHT]
    found = [one for row in zip_longest(*chords) for one in row if one is not None]
    if pushed:
        found += _as_one(pushed, gap)
    found += [one for bar in (*web, *uprights) for one in _pieces(bar, gap)]
    inner = [one for one in found if one.middle]
    found = [one for one in found if not one.middle]
    if hung:
        thickness = (found or inner)[-1].thickness
        found.append(Lying(bars=(), hung=True, thickness=thickness, gap=gap, share=HALF))
    if len(inner) > 1:
        # Several single bars cannot all stand across the middle: they lie beside each other, each
        # counted as if half of it lay in each half, which is how far they can be from it.
        inner = [Lying(bars=one.bars, hung=False, thickness=one.thickness, gap=gap, share=one.share)
                 for one in inner]
    return [*found, *inner]


def _as_one(bars: Sequence[Bar], gap: float) -> list[Lying]:
    """Pushed chords and end posts, whose plates lie in one line: the pin takes their difference."""
    pieces = [_pieces(bar, gap) for bar in bars]
    names = tuple(bar.name for bar in bars)
    thickness = min(one.thickness for its in pieces for one in its)
    return [Lying(bars=names, hung=False, thickness=thickness, gap=gap, share=HALF)]


def _pieces(bar: Bar, gap: float) -> list[Lying]:
    """The pieces of a bar that lie in one half, the one across the middle last."""
    thicknesses = _thicknesses(bar)
    count = len(thicknesses)
    least = min(thicknesses)
    found = [
        Lying(bars=(bar.name,), hung=False, thickness=least, gap=gap, share=1.0 / count)
        for _ in range(count // 2)
    ]
    if count % 2:
        found.append(Lying(
            bars=(bar.name,), hung=False, thickness=least, gap=gap, share=HALF / count,
            middle=True,
        ))
    return found


def _thicknesses(bar: Bar) -> list[float]:
    """How thick each piece of a bar bears on its pin [in]. Raises NotMeasured."""
    match bar.left:
        case Eyebars(bars=pieces):
            found = [one.head_thickness or one.thickness for one in pieces]
        case Rods(rods=rods):
            found = [
                one.size if one.clevis is None
                else None if one.clevis.thickness is None else 2.0 * one.clevis.thickness
                for one in rods
            ]
        case Channels(near=near, far=far):
            found = [near.web, far.web]
        case PlatesAndAngles(middle=None, near=near, far=far):
            found = [None if one.web is None else one.web.thickness for one in (near, far)]
        case Plates(plates=plates):
            found = [one.thickness for one in plates]
        case _:
            raise NotMeasured(bar.address, "bearing on its pin")
    plate = bar.pin_plates.plate if bar.pin_plates is not None else None
    more = plate.thickness if plate is not None and plate.thickness is not None else 0.0
    known = [one + more for one in found if one is not None]
    if len(known) < len(found) or not known:
        raise NotMeasured(bar.address, "thickness at its pin")
    return known
