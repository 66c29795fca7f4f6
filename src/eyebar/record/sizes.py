"""The sizes of a section by the word that a reading would use for each."""

from collections.abc import Iterator, Mapping

from eyebar.record.built_sections import Legs
from eyebar.record.fields import Entry, Sides
from eyebar.record.sections import MAIN_SHAPES, RodSizes, SectionEntry
from eyebar.record.words import What
from eyebar.sections.attached import TOUCHING
from eyebar.sections.shapes import RodShape, Thread
from eyebar.units import Quantity

Sizes = Mapping[What, Quantity | None]

ON_ANY_BAR = (What.BOW, What.KINK, What.GAP, What.CRACK, What.PULL)
"""What may be read on a bar of any section."""
MAY_GROW = (What.HOLE, What.CLEVIS_HOLE, What.PIN_PLATE_HOLE, What.PACK_RUST, *ON_ANY_BAR)
"""What wear and rust make greater; every other size can only shrink."""
NAMELESS = ("bar", "plate", "size", "holes")
"""Keys that add nothing to the name of what they stand in."""


def pieces_of(section: SectionEntry) -> int:
    """How many pieces a reading may tell apart: the bars of a set, two channels, the plates."""
    counted = (
        section.eyebars or section.rods or section.loop_rods or section.rolled or section.angles
        or section.flanged_segments or section.timber
    )
    if counted is not None:
        return counted.number
    if section.channels is not None or section.plates_and_angles is not None:
        return 2
    return len(section.plates or (None,))


def tied_together(section: SectionEntry) -> bool:
    """Whether the pieces of a section are one bar: none is loose or broken by itself."""
    return any((
        section.channels, section.plates_and_angles, section.angles, section.flanged_segments
    ))


def sizes_of(section: SectionEntry, *, piece: int = 1) -> Sizes:
    """Word -> size as built, None where not measured; a word that does not fit is not there.

    `piece` counts from 1 and matters for plates, which may differ.
    """
    return {**_main_sizes(section, piece), **_attached_sizes(section), **_packed(section)}


def plates_on(section: SectionEntry) -> tuple[str, ...]:
    """The words of the plates that lie on and under a section."""
    named = {"cover plate": section.cover_plate, "bottom plate": section.bottom_plate}
    return tuple(name for name, plate in named.items() if plate is not None)


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
            found += unmeasured_in(heading, block)
        elif isinstance(block, tuple):
            found += [word for sides in block for word in _unmeasured_sides("", sides)]
        elif block is None and name in section.model_fields_set and heading == "rivet lines":
            found.append(heading)
    rods = section.rods
    if rods is not None and rods.turnbuckle and rods.turnbuckle_area is None:
        found.append("turnbuckle area")
    return tuple(dict.fromkeys(found))


def unmeasured_in(heading: str, block: Entry) -> list[str]:
    """The words of all sizes of a block that are not measured, its heading before each."""
    found: list[str] = []
    for name in type(block).model_fields:
        size = getattr(block, name)
        word = "" if name in NAMELESS else name.replace("_", " ")
        joined = " ".join(part for part in (heading.removesuffix("s"), word) if part)
        if isinstance(size, Sides):
            found += _unmeasured_sides(joined, size)
        elif isinstance(size, Legs):
            found += _unmeasured_legs(joined.removesuffix("s"), size)
        elif isinstance(size, Entry):
            found += unmeasured_in(joined, size)
        elif isinstance(size, tuple):
            for one in size:
                found += unmeasured_in(joined, one) if isinstance(one, Entry) else (
                    _unmeasured_sides(joined.removesuffix("s"), one))
        elif size is None and name in block.model_fields_set:
            found.append(joined)
    return found


def _unmeasured_sides(heading: str, sides: Sides) -> list[str]:
    named = {"width": sides.width, "thickness": sides.thickness}
    return [f"{heading} {name}".strip() for name, size in named.items() if size is None]


def _unmeasured_legs(heading: str, legs: Legs) -> list[str]:
    named = {
        "upright leg": legs.upright, "level leg": legs.level, "thickness": legs.thickness,
    }
    return [f"{heading} {name}".strip() for name, size in named.items() if size is None]


def _main_sizes(section: SectionEntry, piece: int) -> Sizes:
    if section.eyebars is not None:
        return _eyebars(section)
    if section.rods is not None or section.loop_rods is not None:
        return _rods(section)
    flanged = section.channels or section.rolled
    if flanged is not None:
        sizes = {What.DEPTH: flanged.depth, What.WEB: flanged.web, What.FLANGE: flanged.flange}
        if flanged.tapered:
            return {**sizes, What.FLANGE_EDGE: flanged.flange_edge,
                    What.FLANGE_AT_WEB: flanged.flange_at_web}
        return {**sizes, What.FLANGE_THICKNESS: flanged.flange_thickness}
    if section.plates:
        plate = section.plates[min(piece, len(section.plates)) - 1]
        return {What.WIDTH: plate.width, What.THICKNESS: plate.thickness}
    return dict(_built_up(section))


def _built_up(section: SectionEntry) -> Iterator[tuple[What, Quantity | None]]:
    angles, webs = section.angles, section.plates_and_angles
    segments, timber = section.flanged_segments, section.timber
    if angles is not None:
        size = angles.size
        yield What.UPRIGHT_LEG, size.upright
        yield What.LEVEL_LEG, size.level
        yield What.THICKNESS, size.thickness
        yield What.UPRIGHT_LEG_THICKNESS, size.thickness
        yield What.LEVEL_LEG_THICKNESS, size.thickness
    if webs is not None:
        yield What.DEPTH, webs.web.width
        yield What.WEB, webs.web.thickness
        if webs.top_angles is not None:
            yield What.TOP_ANGLE_THICKNESS, webs.top_angles.thickness
        if webs.bottom_angles is not None:
            yield What.BOTTOM_ANGLE_THICKNESS, webs.bottom_angles.thickness
    if segments is not None:
        yield What.THICKNESS, segments.thickness
        yield What.FLANGE, segments.flange
        yield What.FLANGE_THICKNESS, segments.flange_thickness
    if timber is not None:
        yield What.WIDTH, timber.width
        yield What.DEPTH, timber.depth


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
    return {**sizes, **_rod_ends(section.rods)} if section.rods is not None else sizes


def _rod_ends(rods: RodSizes) -> Sizes:
    sizes: dict[What, Quantity | None] = {}
    if rods.threads is not Thread.NONE:
        sizes[What.ROOT_DIAMETER] = rods.root_diameter
    if rods.turnbuckle:
        sizes[What.TURNBUCKLE_AREA] = rods.turnbuckle_area
    if rods.clevis is not None:
        sizes[What.CLEVIS_WIDTH] = rods.clevis.width
        sizes[What.CLEVIS_THICKNESS] = rods.clevis.thickness
        sizes[What.CLEVIS_HOLE] = rods.clevis.hole
    return sizes


def _attached_sizes(section: SectionEntry) -> Sizes:
    sizes: dict[What, Quantity | None] = {}
    if section.cover_plate is not None:
        sizes[What.COVER_PLATE_WIDTH] = section.cover_plate.width
        sizes[What.COVER_PLATE_THICKNESS] = section.cover_plate.thickness
    if section.bottom_plate is not None:
        sizes[What.BOTTOM_PLATE_WIDTH] = section.bottom_plate.width
        sizes[What.BOTTOM_PLATE_THICKNESS] = section.bottom_plate.thickness
    if section.lacing is not None:
        sizes[What.LACING_WIDTH] = section.lacing.bar.width
        sizes[What.LACING_THICKNESS] = section.lacing.bar.thickness
    if section.battens is not None:
        sizes[What.BATTEN_THICKNESS] = section.battens.plate.thickness
    return sizes


def _packed(section: SectionEntry) -> Sizes:
    """Pack rust can be read where surfaces lie on each other."""
    touching = section.angles is not None and section.angles.placed in TOUCHING
    if plates_on(section) or touching or section.flanged_segments is not None:
        return {What.PACK_RUST: None}
    return {}
