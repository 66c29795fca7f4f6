"""What readings leave of a beam of the floor, stretch by stretch.

A reading with a place holds half-way to the next place that was read, and to the beam's end where
none is; one without a place holds all along. Where only an end was read, all of the beam is taken
to be so: read its middle too.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from eyebar.bridge.floor_parts import Stretch
from eyebar.bridge.left import left_of, reading_words
from eyebar.bridge.timeline import Findings
from eyebar.errors import OutOfRange
from eyebar.record import What
from eyebar.sections.shapes import Section
from eyebar.units import length

MIDDLE = "mid"


@dataclass(frozen=True, slots=True, kw_only=True)
class BeamLeft:
    """Stretches of a beam as they are left, and the readings behind them, in words."""

    stretches: tuple[Stretch, ...]
    readings: tuple[str, ...]


def place_along(place: str, ends: Sequence[str], span_ft: float) -> float:
    """Where a place on a beam is, from its first end [ft].

    `ends` are the names by which its two ends go. Raises OutOfRange for a place that is not there.
    """
    if place == MIDDLE:
        return span_ft / 2.0
    distance, _, end = place.rpartition(" from ")
    if not distance:
        word, _, end = place.rpartition(" ")
        distance = "0 in" if word == "end" else ""
    if end not in ends or not distance:
        where = " or ".join(f"'end {one}'" for one in ends)
        raise OutOfRange("place of a reading", f"'{place}'", f"'{MIDDLE}', {where}, or '3 ft from'"
                         " one of them")
    away = length(distance).in_unit("ft")
    if away > span_ft:
        raise OutOfRange("place of a reading", f"'{place}'", f"within the span of {span_ft:g} ft")
    return away if end == ends[0] else span_ft - away


def beam_left(
    part: str, built: Section, findings: Findings, *, ends: Sequence[str], span_ft: float,
    deep: Callable[[float, Section], Section] | None = None,
) -> BeamLeft:
    """What the readings of a beam leave of its section, stretch by stretch.

    `deep` gives the section as built so far from the nearer end of a beam that tapers [ft]. Raises
    OutOfRange for a reading that does not fit.
    """
    sizes = tuple(one for one in findings if one[1].what is not What.CRACK)
    by_place: dict[float, list[str]] = {}
    for _, reading in sizes:
        if place := reading.place or reading.part.place:
            by_place.setdefault(place_along(place, ends, span_ft), []).append(place)
    marks = sorted(by_place)
    cuts = [0.0, *((a + b) / 2.0 for a, b in pairwise(marks)), span_ft]
    stretches = []
    for i, (begin, end) in enumerate(pairwise(cuts)):
        names = ("", *(by_place[marks[i]] if marks else ()))
        held = tuple(
            one for one in sizes if (one[1].place or one[1].part.place) in names
        )
        for first, last in _tapering(begin, end, span_ft) if deep else ((begin, end),):
            near = min(first, span_ft - first, last, span_ft - last)
            whole = deep(near, built) if deep else built
            stretches.append(Stretch(
                begin_ft=first, end_ft=last, section=left_of(part, whole, held).section
            ))
    return BeamLeft(
        stretches=tuple(stretches),
        readings=tuple(reading_words(day, reading) for day, reading in findings),
    )


PIECES = 16
"""Pieces that a beam which tapers is cut into, each as deep as at its shallower end."""


def _tapering(begin: float, end: float, span_ft: float) -> list[tuple[float, float]]:
    cuts = sorted({begin, end, *(
        span_ft * i / PIECES for i in range(PIECES + 1) if begin < span_ft * i / PIECES < end
    )})
    return list(pairwise(cuts))
