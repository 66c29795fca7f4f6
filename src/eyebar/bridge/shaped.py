"""From a section as it is written in a record to the shape that is computed with."""

from eyebar.record import SectionEntry, Sides
from eyebar.record.sections import (
    BattenSizes,
    ChannelSizes,
    EyebarSizes,
    GivenSizes,
    LacingSizes,
    LoopRodSizes,
    RodSizes,
    RolledSizes,
)
from eyebar.sections.shapes import (
    Battens,
    Channel,
    Channels,
    Eyebar,
    Eyebars,
    Given,
    Lacing,
    Plate,
    Plates,
    Rod,
    Rods,
    Rolled,
    Section,
)
from eyebar.units import Quantity


def shaped(entry: SectionEntry) -> Section:
    """The shape that a record's section describes; sizes in inches, None where not measured."""
    match entry:
        case SectionEntry(eyebars=EyebarSizes() as eyebars):
            return _eyebars(eyebars)
        case SectionEntry(rods=RodSizes() as rods):
            return _rods(rods)
        case SectionEntry(loop_rods=LoopRodSizes() as loops):
            return Rods(rods=(_loop(loops),) * loops.number)
        case SectionEntry(channels=ChannelSizes() as channels):
            return _channels(channels, entry)
        case SectionEntry(rolled=RolledSizes() as rolled):
            return Rolled(
                shape=rolled.shape, number=rolled.number, depth=_size(rolled.depth),
                web=_size(rolled.web), flange=_size(rolled.flange),
                flange_thickness=_size(rolled.flange_thickness),
            )
        case SectionEntry(given=GivenSizes() as given):
            return _given(given)
        case _:
            return Plates(plates=tuple(_plate(sides) for sides in entry.plates or ()))


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


def _size(quantity: Quantity | None) -> float | None:
    return None if quantity is None else quantity.number


def _plate(sides: Sides) -> Plate:
    return Plate(width=_size(sides.width), thickness=_size(sides.thickness))


def _eyebars(sizes: EyebarSizes) -> Eyebars:
    bar = Eyebar(
        width=_size(sizes.width), thickness=_size(sizes.thickness), head=_size(sizes.head),
        hole=_size(sizes.hole), beyond=_size(sizes.beyond_hole),
        head_thickness=_size(sizes.head_thickness),
    )
    return Eyebars(bars=(bar,) * sizes.number)


def _rods(sizes: RodSizes) -> Rods:
    rod = Rod(
        shape=sizes.shape, size=_size(sizes.size), threads=sizes.threads,
        root_diameter=_size(sizes.root_diameter), turnbuckle=sizes.turnbuckle,
        turnbuckle_area=_size(sizes.turnbuckle_area),
    )
    return Rods(rods=(rod,) * sizes.number)


def _loop(sizes: LoopRodSizes) -> Rod:
    return Rod(shape=sizes.shape, size=_size(sizes.size), looped=True)


def _channels(sizes: ChannelSizes, entry: SectionEntry) -> Channels:
    channel = Channel(
        depth=_size(sizes.depth), web=_size(sizes.web), flange=_size(sizes.flange),
        flange_thickness=_size(sizes.flange_thickness),
    )
    return Channels(
        near=channel, far=channel, apart=_size(sizes.apart), toes=sizes.toes,
        cover=None if entry.cover_plate is None else _plate(entry.cover_plate),
        lacing=None if entry.lacing is None else _lacing(entry.lacing),
        battens=None if entry.battens is None else _battens(entry.battens),
    )


def _lacing(sizes: LacingSizes) -> Lacing:
    return Lacing(bar=_plate(sizes.bar), pitch=_size(sizes.pitch), planes=sizes.planes)


def _battens(sizes: BattenSizes) -> Battens:
    return Battens(
        plate=_plate(sizes.plate), length=_size(sizes.length), pitch=_size(sizes.pitch),
        planes=sizes.planes,
    )


def _given(sizes: GivenSizes) -> Given:
    return Given(
        area=sizes.area.number, net_area=_size(sizes.net_area), r_x=_size(sizes.radius_x),
        r_y=_size(sizes.radius_y), top=_size(sizes.top), bottom=_size(sizes.bottom),
        source=sizes.source,
    )
