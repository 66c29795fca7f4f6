"""What the readings up to a date leave of a bar: its section, its crookedness, and why.

Rules: of each measure the latest reading at each place on each piece holds, and of readings of one
day the worse; along a body the least of its places governs, also where lacing, battens or pin
plates hide it; heads and threads go by their own readings; a size that was never read is as it was
built. Crooked is a bar by its bow, by a kink and by what pack rust has bent, all added together.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date

from eyebar.addresses import joint_of_place
from eyebar.bridge.pieces import piece_count
from eyebar.bridge.timeline import Findings
from eyebar.record import ReadingEntry, What
from eyebar.record.words import OF_JOINTS
from eyebar.sections.attached import parted, plates_on
from eyebar.sections.corroded import HEAD_PLACES, corroded
from eyebar.sections.shapes import Angles, Eyebar, Eyebars, FlangedSegments, Section

NOT_SIZES = (What.BOW, What.KINK, What.PACK_RUST, What.GAP, What.CRACK, What.PULL, *OF_JOINTS)
CROOKED = (What.BOW, What.KINK, What.PACK_RUST)
"""What makes a bar crooked."""
OF_NO_PIECE = ("cover plate", "bottom plate", "lacing", "batten")
Key = tuple[What, str, int | None]
Held = Mapping[Key, tuple[date, list[ReadingEntry]]]
"""(what, place, piece) -> the latest day and its readings."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """A section as it is left, its crookedness [in] and the readings behind both, in words."""

    section: Section
    bow: float
    readings: tuple[str, ...]
    rules: tuple[str, ...]
    sizes_read: bool


def left_of(part: str, section: Section, findings: Findings) -> Left:
    """What the readings of a part leave of its section.

    Raises OutOfRange for a reading that does not fit the section.
    """
    held = _in_force(section, findings)
    left = section
    for (what, place, piece), (_, values) in held.items():
        if what not in NOT_SIZES:
            for reading in values:
                left = corroded(
                    left, what=what, value=reading.value.number, piece=piece, place=place
                )
    rules: list[str] = []
    if isinstance(left, Eyebars) and isinstance(section, Eyebars):
        left, rules = _heads(part, section, left, held)
    crooked = {what: _greatest(held, what) for what in CROOKED}
    rules += _crooked_words(part, crooked)
    for plate in _packed_under(left, held):
        left = parted(left, plate)
        rules.append(f"{part}: pack rust between its pieces: {_parted_words(left, plate)}")
    kept = {id(reading): (day, reading) for day, found in held.values() for reading in found}
    return Left(
        section=left, bow=sum(crooked.values()),
        readings=tuple(reading_words(day, reading) for day, reading in kept.values()),
        rules=tuple(rules), sizes_read=any(what not in NOT_SIZES for what, _, _ in held),
    )


def _greatest(held: Held, what: What) -> float:
    """The greatest reading of this that holds [in], 0 where there is none."""
    return max(
        (
            reading.value.number
            for (read, _, _), (_, values) in held.items() if read is what for reading in values
        ),
        default=0.0,
    )


def _crooked_words(part: str, crooked: Mapping[What, float]) -> Iterator[str]:
    """What a kink and pack rust are taken for, in sentences."""
    if kink := crooked[What.KINK]:
        yield (
            f"{part}: its kink of {kink:g} in is added to its crookedness in push; in pull it"
            " straightens by yielding only: look for cracks there"
        )
    if rust := crooked[What.PACK_RUST]:
        yield f"{part}: what pack rust has bent, {rust:g} in, is added to its crookedness"


def _packed_under(section: Section, held: Held) -> tuple[str, ...]:
    """The plates that pack rust has bent away; an empty word where it lies elsewhere."""
    places = {place for what, place, _ in held if what is What.PACK_RUST}
    if not places:
        return ()
    named = tuple(plate for plate in plates_on(section) if plate in places)
    return named or ("",)


def _parted_words(section: Section, plate: str) -> str:
    """What is done about a section that rust has bent apart."""
    match section:
        case Angles(separate=True):
            return "each angle is taken to bend by itself"
        case FlangedSegments():
            return "its flanges are left out"
        case _ if plate:
            return f"the {plate} is left out"
        case _:
            return "the plates on it are left out"


def reading_words(day: date, reading: ReadingEntry) -> str:
    """A reading in words: `thickness 1/2 in at head L4 on 2026-06-09 (caliper, ± 1/32 in)`."""
    where = f" at {place}" if (place := _place(reading)) else ""
    piece = f", piece {reading.piece}" if reading.piece else ""
    how = [reading.gauge] if reading.gauge else []
    how += [f"± {reading.plus_minus}"] if reading.plus_minus else []
    by = f" ({', '.join(how)})" if how else ""
    return f"{reading.what} {reading.value}{where}{piece} on {day}{by}"


def _place(reading: ReadingEntry) -> str:
    return reading.place or reading.part.place


def _in_force(section: Section, findings: Findings) -> Held:
    """The readings that hold; findings come oldest first."""
    found: dict[Key, tuple[date, list[ReadingEntry]]] = {}
    for day, reading in findings:
        for piece in _pieces(section, reading):
            key = (reading.what, _place(reading), piece)
            if key in found and found[key][0] == day:
                found[key][1].append(reading)
            else:
                found[key] = (day, [reading])
    return found


def _pieces(section: Section, reading: ReadingEntry) -> Iterable[int | None]:
    """The pieces that a reading speaks of: all of them, where it names none."""
    if reading.what in NOT_SIZES or reading.what.startswith(OF_NO_PIECE):
        return (None,)
    if reading.piece is not None:
        return (reading.piece,)
    return range(1, piece_count(section) + 1)


def _heads(
    part: str, built: Eyebars, left: Eyebars, held: Iterable[Key]
) -> tuple[Eyebars, list[str]]:
    """Heads that were not read, beside one that was, are no thicker than their body is left."""
    bars, unread = [], set()
    for number, (bar, before) in enumerate(zip(left.bars, built.bars, strict=True), 1):
        read = {
            joint_of_place(place) for what, place, piece in held
            if piece == number and what in (What.THICKNESS, What.HEAD_THICKNESS)
            and place.partition(" ")[0] in HEAD_PLACES
        }
        if before.head_thickness is None and len(read) == 1:
            unread.add(next(iter(read)))
            bars.append(_no_thicker(bar))
        else:
            bars.append(bar)
    rules = [
        f"{part}: only the head at {joint} was read; the other is taken no thicker than the body"
        for joint in sorted(unread)
    ]
    return replace(left, bars=tuple(bars)), rules


def _no_thicker(bar: Eyebar) -> Eyebar:
    if bar.head_thickness is None or bar.thickness is None:
        return bar
    return replace(bar, head_thickness=min(bar.head_thickness, bar.thickness))
