"""Hangers, deck and shoes of a record on a date."""

from collections.abc import Mapping, Sequence

from eyebar.bridge.floor_beams import SIZE, declared
from eyebar.bridge.floor_joined import Yoke
from eyebar.bridge.floor_parts import Bars, Deck, Floorbeam, Hanger, MadeOf, Rollers, Shoe, Stringer
from eyebar.bridge.floor_said import FloorWords, anchors, fastening
from eyebar.bridge.left import left_of, reading_words
from eyebar.bridge.parts import Bar, Material, Truss
from eyebar.bridge.shaped import shaped
from eyebar.bridge.shaped_built import size
from eyebar.bridge.timeline import Findings
from eyebar.errors import NotMeasured, OutOfRange
from eyebar.record import What
from eyebar.record.floor import DeckEntry, SlabBarsEntry
from eyebar.record.floor_members import HangerEntry, ShoeEntry, YokeEntry
from eyebar.record.words import DeckKind
from eyebar.sections.shapes import Rolled, Section, Timbers
from eyebar.terms import Kind

INCHES = 12.0
NAMED = "not recorded"


def hangers_of(
    words: FloorWords, truss: Truss, beams: Mapping[str, Floorbeam], joints: Sequence[str]
) -> tuple[tuple[Hanger, ...], dict[str, str]]:
    """The hangers of one truss that are recorded, and address -> why one is not.

    `beams` are the recorded floorbeams by joint; a beam riveted to its posts is its own hanger.
    """
    found: list[Hanger] = []
    refused: dict[str, str] = {}
    stations = dict(truss.floor_joints)
    order = [joint for joint, _ in truss.floor_joints]
    for joint in joints:
        part = f"{truss.name}/{joint}/hanger"
        at = order.index(joint)
        before, behind = (
            abs(stations[order[at]] - stations[order[at + step]]) if
            0 <= at + step < len(order) else 0.0 for step in (-1, 1)
        )
        own = words.record.overrides.get(part)
        entry = (own and own.hanger) or words.record.floor.hangers
        beam = beams.get(joint)
        try:
            if entry is None and beam is not None and beam.riveted:
                found.append(_riveted(words, truss, beam, part))
            elif entry is None:
                refused[part] = SIZE
            else:
                found.append(_hanger(
                    words, truss, entry, part, joint=joint, station_ft=stations[joint],
                    panels_ft=(before, behind),
                ))
        except NotMeasured as missing:
            refused[part] = f"{missing.what} of {part} not recorded"
        except OutOfRange as outside:
            refused[part] = f"a reading does not fit it: {outside}"
    return tuple(found), refused


def _riveted(words: FloorWords, truss: Truss, beam: Floorbeam, part: str) -> Hanger:
    if not isinstance(beam.made_of, Material):
        raise NotMeasured("", "metal")
    if beam.beam_ends.fastening is None:
        raise NotMeasured("", "rivets to the post")
    return Hanger(
        address=part, truss=truss.name, joint=beam.joint, station_ft=beam.station_ft,
        before_ft=beam.before_ft, behind_ft=beam.behind_ft, bar=None, made_of=beam.made_of,
        fastening=beam.beam_ends.fastening, not_rated=declared(words, part),
    )


def _hanger(
    words: FloorWords, truss: Truss, entry: HangerEntry, part: str, *, joint: str,
    station_ft: float, panels_ft: tuple[float, float],
) -> Hanger:
    """A hanger with its legs as they are left. Raises NotMeasured, OutOfRange."""
    state = words.state(part)
    metal = words.metal(state.material or entry.material)
    section = state.section or entry.section
    pin = next((one for one in truss.pins if one.joint == joint), None)
    bar = None
    if section is not None:
        built = shaped(section)
        bar = _bar(part, joint, built, left_of(part, built, state.readings).section, metal,
                   length=size(entry.leg))
    return Hanger(
        address=part, truss=truss.name, joint=joint, station_ft=station_ft,
        before_ft=panels_ft[0], behind_ft=panels_ft[1], bar=bar, bent=entry.bent,
        inside=size(entry.inside), leg=size(entry.leg),
        pin=size(entry.pin) if entry.pin is not None else None if pin is None else pin.diameter,
        hole=size(entry.hole), beyond=size(entry.beyond),
        pin_yield=None if pin is None else pin.material.yield_stress,
        off_centre=size(entry.off_centre) or 0.0, apart=size(entry.apart),
        fastening=fastening(entry.rivets, entry.post_rivets, entry.thinner), made_of=metal,
        yoke=_yoke(words, entry.yoke),
        not_rated=declared(words, part),
        readings=tuple(reading_words(day, one) for day, one in state.readings),
    )


def _yoke(words: FloorWords, entry: YokeEntry | None) -> Yoke | None:
    """What lies under the floorbeam on a hanger's nuts. Raises NotMeasured."""
    if entry is None:
        return None
    plate = entry.plate
    return Yoke(
        plate=None if plate is None else (size(plate.width), size(plate.thickness)),
        section=None if entry.section is None else shaped(entry.section), number=entry.number,
        material=words.metal(entry.material), on_it=size(entry.on_it),
    )


def _bar(
    part: str, joint: str, built: Section, left: Section, metal: Material, *,
    length: float | None,
) -> Bar:
    long = length or INCHES
    return Bar(
        name="hanger", address=part, kind=Kind.HANGER, ends=(joint, joint), length=long,
        length_in_plane=long, length_out_of_plane=long, as_built=built, left=left, material=metal,
        can_push=False, can_pull=True,
    )


def deck_of(
    words: FloorWords, findings: Findings, stringers: Sequence[Stringer]
) -> tuple[Deck | None, str]:
    """The deck where it is recorded, else why it is not."""
    entry = words.record.floor.deck
    concrete = entry.kind is DeckKind.CONCRETE
    made_of: MadeOf | None = None
    try:
        if not concrete:
            made_of = words.made_of(entry.material)
    except NotMeasured as missing:
        return None, f"{missing.what} of the deck not recorded"
    if entry.runs is None:
        return None, "which way the deck spans not recorded"
    support = size(entry.support) if entry.support is not None else width_of(stringers)
    built = size(entry.thickness)
    return Deck(
        address="floor/deck", kind=str(entry.kind), runs=str(entry.runs or ""),
        thickness=_thinnest(entry, findings), built=built, plank_width=size(entry.plank_width),
        clear=size(entry.clear) if entry.clear is not None else _clear(stringers, support),
        support=support, made_of=made_of, continuous=entry.continuous, joined=entry.joined,
        modulus=size(entry.section_modulus), bars_apart=size(entry.bars_apart),
        concrete=size(entry.concrete_strength),
        lower=_bars(entry.lower_bars, findings), upper=_bars(entry.upper_bars, findings),
        not_rated=declared(words, "floor/deck"),
        readings=tuple(reading_words(day, one) for day, one in findings),
    ), ""


def _bars(entry: SlabBarsEntry | None, findings: Findings) -> Bars | None:
    """Bars of a slab, all as thin as the thinnest that the latest readings found."""
    if entry is None:
        return None
    built = size(entry.diameter)
    return Bars(
        diameter=_least(What.DIAMETER, built, findings), built=built, every=size(entry.every),
        cover=size(entry.cover), square=entry.square, yield_stress=size(entry.yield_stress),
    )


def _thinnest(entry: DeckEntry, findings: Findings) -> float | None:
    """What wear and rot leave of the deck [in]: the least of the latest readings, each at its
    place; as built where none was read."""
    return _least(What.DECK_THICKNESS, size(entry.thickness), findings)


def _least(what: What, built: float | None, findings: Findings) -> float | None:
    """The least of a size as built and of the latest readings of it, each at its place [in]."""
    latest: dict[str, float] = {}
    for _, reading in findings:
        if reading.what is what:
            latest[reading.place or reading.part.place] = reading.value.number
    known = [*latest.values(), *([] if built is None else [built])]
    return min(known, default=None)


def width_of(stringers: Sequence[Stringer]) -> float | None:
    """Width of stringers [in], the least of them; None where one is not known."""
    widths = []
    for one in stringers:
        match one.as_built:
            case Timbers(sticks=sticks):
                widths.append(sticks[0].width)
            case Rolled(flange=flange):
                widths.append(flange)
            case _:
                widths.append(None)
    known = [width for width in widths if width is not None]
    return min(known) if known and len(known) == len(widths) else None


def _clear(stringers: Sequence[Stringer], support: float | None) -> float | None:
    """Clear distance of the stringers [in], the greatest."""
    gaps = [gap for one in stringers for gap in one.gaps_ft if gap is not None]
    return None if support is None or not gaps else INCHES * max(gaps) - support


def deck_word(entry: DeckEntry, findings: Findings, *, on_timber: bool) -> str:
    """The deck's row among the shares of a wheel line, by its least thickness; empty where that is
    not known. Laminations of less than 4 in share no better than planks."""
    on = "on timber" if on_timber else "on steel"
    if entry.kind is DeckKind.CONCRETE:
        return f"concrete.{on}"
    if entry.kind in (DeckKind.PLANK, DeckKind.STEEL_PLANK):
        return str(entry.kind)
    thick = _thinnest(entry, findings)
    if entry.thickness is None or thick is None:
        return ""
    if entry.kind is DeckKind.STEEL_GRATING:
        return f"{entry.kind}.{'thick' if thick >= THICK_GRATING else 'thin'}"
    if thick < LAMINATED:
        return str(DeckKind.PLANK)
    if thick < THICK_LAMINATED:
        return f"{entry.kind}.thin"
    return f"{entry.kind}.thick{f' {on}' if entry.kind is DeckKind.GLUED_LAMINATED else ''}"


LAMINATED, THICK_LAMINATED, THICK_GRATING = 4.0, 6.0, 4.0
"""Thickness [in] from which the table of shares has other figures."""


def shoes_of(words: FloorWords, truss: Truss) -> tuple[tuple[Shoe, ...], dict[str, str]]:
    """What the ends of one truss stand on, and address -> why one is not rated."""
    found: list[Shoe] = []
    refused: dict[str, str] = {}
    ends = sorted(truss.supports, key=lambda joint: truss.joints[joint][0])
    for joint in ends:
        part = f"{truss.name}/{joint}/bearing"
        own = words.record.overrides.get(part)
        shoes = words.record.floor.shoes
        at_zero = joint == ends[0]
        entry = (own and own.shoe) or (shoes.zero if at_zero else shoes.other)
        if entry is None:
            refused[part] = SIZE
            continue
        try:
            found.append(_shoe(words, truss, entry, part, joint=joint, at_zero=at_zero))
        except NotMeasured as missing:
            refused[part] = f"{missing.what} of {part} not recorded"
    return tuple(found), refused


def _shoe(
    words: FloorWords, truss: Truss, entry: ShoeEntry, part: str, *, joint: str, at_zero: bool
) -> Shoe:
    plate = entry.plate
    return Shoe(
        address=part, truss=truss.name, joint=joint, at_zero=at_zero,
        plate=None if plate is None else (size(plate.width), size(plate.thickness)),
        allowed=size(entry.pressure), source=entry.source or "",
        rollers=None if entry.rollers is None else Rollers(
            number=entry.rollers.number, diameter=size(entry.rollers.diameter),
            length=size(entry.rollers.length),
        ),
        material=None if entry.material is None else words.metal(entry.material),
        anchors=anchors(words, entry.anchors),
        not_rated=declared(words, part),
        readings=tuple(reading_words(day, one) for day, one in words.state(part).readings),
    )
