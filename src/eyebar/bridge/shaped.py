"""From a section as it is written in a record to the shape that is computed with."""

from eyebar.bridge.shaped_built import (
    angles,
    channels,
    flanged_segments,
    plate,
    plates_and_angles,
    size,
    taper,
    timbers,
)
from eyebar.record import SectionEntry
from eyebar.record.built_sections import (
    AngleSizes,
    ClevisSizes,
    FlangedSegmentSizes,
    PlateAngleSizes,
    TimberSizes,
)
from eyebar.record.sections import (
    ChannelSizes,
    EyebarSizes,
    GivenSizes,
    LoopRodSizes,
    RodSizes,
    RolledSizes,
)
from eyebar.sections.shapes import (
    Clevis,
    Eyebar,
    Eyebars,
    Given,
    Plates,
    Rod,
    Rods,
    Rolled,
    Section,
)


def shaped(entry: SectionEntry) -> Section:
    """The shape that a record's section describes; sizes in inches, None where not measured."""
    match entry:
        case SectionEntry(eyebars=EyebarSizes() as eyebars):
            return _eyebars(eyebars)
        case SectionEntry(rods=RodSizes() as rods):
            return _rods(rods)
        case SectionEntry(loop_rods=LoopRodSizes() as loops):
            return Rods(rods=(_loop(loops),) * loops.number)
        case SectionEntry(channels=ChannelSizes() as sizes):
            return channels(sizes, entry)
        case SectionEntry(angles=AngleSizes() as sizes):
            return angles(sizes, entry)
        case SectionEntry(plates_and_angles=PlateAngleSizes() as sizes):
            return plates_and_angles(sizes, entry)
        case SectionEntry(flanged_segments=FlangedSegmentSizes() as sizes):
            return flanged_segments(sizes)
        case SectionEntry(timber=TimberSizes() as sizes):
            return timbers(sizes)
        case SectionEntry(rolled=RolledSizes() as rolled):
            return Rolled(
                shape=rolled.shape, number=rolled.number, depth=size(rolled.depth),
                web=size(rolled.web), flange=size(rolled.flange),
                flange_thickness=size(rolled.flange_thickness), taper=taper(rolled),
            )
        case SectionEntry(given=GivenSizes() as given):
            return _given(given)
        case _:
            return Plates(plates=tuple(plate(sides) for sides in entry.plates or ()))


def left_open(entry: SectionEntry) -> tuple[str, ...]:
    """What of a section is written down as not measured though leaving it out means something.

    An eyebar's head that is left out is as thick as its body, a rod's thread at its root is not
    needed without threads; but where the record says `not measured` nothing is to be assumed.
    """
    eyebars = entry.eyebars
    if eyebars is None:
        return ()
    named = {"beyond_hole": eyebars.beyond_hole, "head_thickness": eyebars.head_thickness}
    return tuple(
        name.replace("_", " ") for name, size in named.items()
        if size is None and name in eyebars.model_fields_set
    )


def _eyebars(sizes: EyebarSizes) -> Eyebars:
    bar = Eyebar(
        width=size(sizes.width), thickness=size(sizes.thickness), head=size(sizes.head),
        hole=size(sizes.hole), beyond=size(sizes.beyond_hole),
        head_thickness=size(sizes.head_thickness),
    )
    return Eyebars(bars=(bar,) * sizes.number)


def _rods(sizes: RodSizes) -> Rods:
    rod = Rod(
        shape=sizes.shape, size=size(sizes.size), threads=sizes.threads,
        root_diameter=size(sizes.root_diameter), turnbuckle=sizes.turnbuckle,
        turnbuckle_area=size(sizes.turnbuckle_area),
        clevis=None if sizes.clevis is None else _clevis(sizes.clevis),
    )
    return Rods(rods=(rod,) * sizes.number)


def _clevis(sizes: ClevisSizes) -> Clevis:
    return Clevis(
        width=size(sizes.width), thickness=size(sizes.thickness), hole=size(sizes.hole),
        beyond=size(sizes.beyond_hole),
    )


def _loop(sizes: LoopRodSizes) -> Rod:
    return Rod(shape=sizes.shape, size=size(sizes.size), looped=True, loops=sizes.loops)


def _given(sizes: GivenSizes) -> Given:
    return Given(
        area=sizes.area.number, net_area=size(sizes.net_area), r_x=size(sizes.radius_x),
        r_y=size(sizes.radius_y), top=size(sizes.top), bottom=size(sizes.bottom),
        source=sizes.source,
    )
