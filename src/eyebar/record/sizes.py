"""The sizes of a section by the word that a reading would use for each."""

from collections.abc import Mapping

from eyebar.record.fields import Entry, Sides
from eyebar.record.sections import MAIN_SHAPES, SectionEntry
from eyebar.record.words import What
from eyebar.sections.shapes import RodShape, Thread
from eyebar.units import Quantity

Sizes = Mapping[What, Quantity | None]

ON_ANY_BAR = (What.BOW, What.GAP, What.CRACK, What.PULL)
"""What may be read on a bar of any section."""
MAY_GROW = (What.HOLE, *ON_ANY_BAR)
"""What wear and use make greater; every other size can only shrink."""


def pieces_of(section: SectionEntry) -> int:
    """How many pieces a reading may tell apart: the bars of a set, two channels, the plates."""
    counted = section.eyebars or section.rods or section.loop_rods or section.rolled
    if counted is not None:
        return counted.number
    if section.channels is not None:
        return 2
    return len(section.plates or (None,))


def sizes_of(section: SectionEntry, *, piece: int = 1) -> Sizes:
    """Word -> size as built, None where not measured; a word that does not fit is not there.

    `piece` counts from 1 and matters for plates, which may differ.
    """
    if section.eyebars is not None:
        return _eyebars(section)
    if section.rods is not None or section.loop_rods is not None:
        return _rods(section)
    if section.channels is not None:
        return _channels(section)
    if section.rolled is not None:
        rolled = section.rolled
        return {
            What.DEPTH: rolled.depth, What.WEB: rolled.web, What.FLANGE: rolled.flange,
            What.FLANGE_THICKNESS: rolled.flange_thickness,
        }
    if section.plates:
        plate = section.plates[min(piece, len(section.plates)) - 1]
        return {What.WIDTH: plate.width, What.THICKNESS: plate.thickness}
    return {}


def unmeasured(section: SectionEntry) -> tuple[str, ...]:
    """The words of all sizes of a section that are not measured.

    A size that may be left out counts only where the record says that it was not measured; the open
    bars of a turnbuckle count wherever there is one.
    """
    found: list[str] = []
    for name in type(section).model_fields:
        block = getattr(section, name)
        heading = "" if name.replace("_", " ") in MAIN_SHAPES else name.replace("_", " ")
        if isinstance(block, Sides):
            found += _unmeasured_sides(heading, block)
        elif isinstance(block, Entry):
            found += _unmeasured_sizes(heading, block)
        elif block is not None:
            found += [word for sides in block for word in _unmeasured_sides("", sides)]
    rods = section.rods
    if rods is not None and rods.turnbuckle and rods.turnbuckle_area is None:
        found.append("turnbuckle area")
    return tuple(dict.fromkeys(found))


def _unmeasured_sizes(heading: str, block: Entry) -> list[str]:
    found: list[str] = []
    for name in type(block).model_fields:
        size = getattr(block, name)
        word = "" if name in ("bar", "plate") else name.replace("_", " ")
        joined = " ".join(part for part in (heading.removesuffix("s"), word) if part)
        if isinstance(size, Sides):
            found += _unmeasured_sides(joined, size)
        elif size is None and name in block.model_fields_set:
            found.append(joined)
    return found


def _unmeasured_sides(heading: str, sides: Sides) -> list[str]:
    named = {"width": sides.width, "thickness": sides.thickness}
    return [f"{heading} {name}".strip() for name, size in named.items() if size is None]


def _eyebars(section: SectionEntry) -> Sizes:
    bars = section.eyebars
    assert bars is not None
    return {
        What.WIDTH: bars.width, What.THICKNESS: bars.thickness, What.HEAD: bars.head,
        What.HOLE: bars.hole, What.BEYOND_HOLE: bars.beyond_hole,
        What.HEAD_THICKNESS: bars.head_thickness,
    }


def _rods(section: SectionEntry) -> Sizes:
    rods = section.rods or section.loop_rods
    assert rods is not None
    word = What.DIAMETER if rods.shape is RodShape.ROUND else What.SIDE
    sizes = {word: rods.size}
    if section.rods is not None and section.rods.threads is not Thread.NONE:
        sizes[What.ROOT_DIAMETER] = section.rods.root_diameter
    return sizes


def _channels(section: SectionEntry) -> Sizes:
    channels = section.channels
    assert channels is not None
    sizes = {
        What.DEPTH: channels.depth, What.WEB: channels.web, What.FLANGE: channels.flange,
        What.FLANGE_THICKNESS: channels.flange_thickness,
    }
    if section.cover_plate is not None:
        sizes[What.COVER_PLATE_WIDTH] = section.cover_plate.width
        sizes[What.COVER_PLATE_THICKNESS] = section.cover_plate.thickness
    if section.lacing is not None:
        sizes[What.LACING_WIDTH] = section.lacing.bar.width
        sizes[What.LACING_THICKNESS] = section.lacing.bar.thickness
    if section.battens is not None:
        sizes[What.BATTEN_THICKNESS] = section.battens.plate.thickness
    return sizes
