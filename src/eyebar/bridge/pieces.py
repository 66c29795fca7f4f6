"""Sets of like pieces: how many there are, and a set with only some of them."""

from collections.abc import Iterable
from dataclasses import replace

from eyebar.errors import OutOfRange
from eyebar.sections.shapes import (
    Angles,
    Channels,
    Eyebars,
    FlangedSegments,
    Plates,
    PlatesAndAngles,
    Rods,
    Rolled,
    Section,
    Timbers,
)


def piece_count(section: Section) -> int:
    """Pieces that a reading or a decision may tell apart: bars of a set, two channels or sides of
    webs and angles, angles, segments, sticks, plates."""
    match section:
        case Eyebars():
            return len(section.bars)
        case Rods():
            return len(section.rods)
        case Plates():
            return len(section.plates)
        case Rolled():
            return section.number
        case Channels() | PlatesAndAngles():
            return 2
        case Angles():
            return len(section.angles)
        case FlangedSegments():
            return len(section.segments)
        case Timbers():
            return len(section.sticks)
        case _:
            return 1


def only(section: Section, pieces: Iterable[int]) -> Section:
    """The set with these pieces left, counted from 1.

    Raises OutOfRange for a piece that is not there, and for built-up bars, whose pieces are tied
    together.
    """
    chosen = sorted(set(pieces))
    count = piece_count(section)
    if any(not 1 <= piece <= count for piece in chosen):
        raise OutOfRange("a piece of the bar", chosen[-1], f"from 1 to {count}")
    if len(chosen) == count:
        return section
    match section:
        case Eyebars():
            return replace(section, bars=tuple(section.bars[i - 1] for i in chosen))
        case Rods():
            return replace(section, rods=tuple(section.rods[i - 1] for i in chosen))
        case Plates():
            return replace(section, plates=tuple(section.plates[i - 1] for i in chosen))
        case Rolled():
            return replace(section, number=len(chosen))
        case Timbers():
            return replace(section, sticks=tuple(section.sticks[i - 1] for i in chosen))
        case _:
            raise OutOfRange(
                "one piece of a built-up bar", "taken by itself", "the whole bar: its pieces are"
                " tied together"
            )
