"""What the readings up to a date leave of a bar: its section, its crookedness, and why.

Rules: of each measure the latest reading at each place on each piece holds, and of readings of one
day the worse; along a body the least of its places governs; heads go by their own readings; a size
that was never read is as it was built.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date

from eyebar.addresses import joint_of_place
from eyebar.bridge.pieces import piece_count
from eyebar.bridge.timeline import Findings
from eyebar.record import ReadingEntry, What
from eyebar.sections.corroded import HEAD_PLACES, corroded
from eyebar.sections.shapes import Eyebar, Eyebars, Section

NOT_SIZES = (What.BOW, What.GAP, What.CRACK, What.PULL)
OF_NO_PIECE = ("cover plate", "lacing", "batten")
Key = tuple[What, str, int | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """A section as it is left, the bow [in] and the readings behind both, in words."""

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
    bows = [
        max(reading.value.number for reading in values)
        for (what, _, _), (_, values) in held.items() if what is What.BOW
    ]
    kept = {id(reading): (day, reading) for day, found in held.values() for reading in found}
    return Left(
        section=left, bow=max(bows, default=0.0),
        readings=tuple(reading_words(day, reading) for day, reading in kept.values()),
        rules=tuple(rules), sizes_read=any(what not in NOT_SIZES for what, _, _ in held),
    )


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


def _in_force(
    section: Section, findings: Findings
) -> dict[Key, tuple[date, list[ReadingEntry]]]:
    """(what, place, piece) -> the latest day and its readings; findings come oldest first."""
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
