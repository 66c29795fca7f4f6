"""From a built-up section as it is written to the shape that is computed with."""

from eyebar.record import SectionEntry, Sides
from eyebar.record.built_sections import (
    AngleSizes,
    FlangedSegmentSizes,
    HoleSizes,
    Legs,
    PlateAngleSizes,
    TimberSizes,
)
from eyebar.record.sections import BattenSizes, ChannelSizes, LacingSizes, RolledSizes
from eyebar.sections.built import Spread
from eyebar.sections.shapes import (
    Angle,
    Angles,
    Battens,
    Channel,
    Channels,
    FlangedSegments,
    Holes,
    Lacing,
    Plate,
    PlatesAndAngles,
    Segment,
    Side,
    Stick,
    Taper,
    Timbers,
    Toes,
)
from eyebar.units import Quantity


def size(quantity: Quantity | None) -> float | None:
    """A size in inches (an area in square inches); None where not measured."""
    return None if quantity is None else quantity.number


def plate(sides: Sides, holes: HoleSizes | None = None) -> Plate:
    """A plate by its two sides, with access holes where it has them."""
    return Plate(
        width=size(sides.width), thickness=size(sides.thickness),
        holes=None if holes is None else Holes(
            width=size(holes.width), length=size(holes.length), spacing=size(holes.spacing)
        ),
    )


def taper(sizes: ChannelSizes | RolledSizes) -> Taper | None:
    """The two thicknesses of a flange; None where it is given by its mean."""
    if not sizes.tapered:
        return None
    return Taper(edge=size(sizes.flange_edge), at_web=size(sizes.flange_at_web))


def channels(sizes: ChannelSizes, entry: SectionEntry) -> Channels:
    """Two channels and what joins them."""
    channel = Channel(
        depth=size(sizes.depth), web=size(sizes.web), flange=size(sizes.flange),
        flange_thickness=size(sizes.flange_thickness), taper=taper(sizes),
    )
    return Channels(
        near=channel, far=channel, apart=size(sizes.apart), toes=sizes.toes,
        cover=_cover(entry), bottom=_bottom(entry), lacing=_lacing(entry.lacing),
        battens=_battens(entry.battens), rivet_lines=size(entry.rivet_lines),
    )


def angles(sizes: AngleSizes, entry: SectionEntry) -> Angles:
    """Like angles as they are placed."""
    across = "backs_across" in sizes.model_fields_set and "backs" not in sizes.model_fields_set
    return Angles(
        angles=(_angle(sizes.size),) * sizes.number, placed=sizes.placed, apart=size(sizes.apart),
        backs=size(sizes.backs), backs_across=size(sizes.backs_across),
        spread=Spread.ACROSS if across else Spread.UPRIGHT, toes=sizes.toes or Toes.IN,
        lacing=_lacing(entry.lacing), battens=_battens(entry.battens),
    )


def plates_and_angles(sizes: PlateAngleSizes, entry: SectionEntry) -> PlatesAndAngles:
    """Webs, angles along their edges, plates on top and below."""
    web = plate(sizes.web)
    two = sizes.webs == 2
    side = Side(
        web=web if two else None,
        top=None if sizes.top_angles is None else _angle(sizes.top_angles),
        bottom=None if sizes.bottom_angles is None else _angle(sizes.bottom_angles),
    )
    return PlatesAndAngles(
        near=side, far=side, middle=None if two else web, apart=size(sizes.apart),
        toes=sizes.toes or Toes.OUT, cover=_cover(entry), bottom=_bottom(entry),
        lacing=_lacing(entry.lacing), battens=_battens(entry.battens),
        rivet_lines=size(entry.rivet_lines),
    )


def flanged_segments(sizes: FlangedSegmentSizes) -> FlangedSegments:
    """A round column of like segments."""
    segment = Segment(
        thickness=size(sizes.thickness), flange=size(sizes.flange),
        flange_thickness=size(sizes.flange_thickness),
    )
    return FlangedSegments(
        segments=(segment,) * sizes.number, inside=size(sizes.inside_diameter)
    )


def timbers(sizes: TimberSizes) -> Timbers:
    """Like sticks side by side."""
    return Timbers(sticks=(Stick(width=size(sizes.width), depth=size(sizes.depth)),) * sizes.number)


def _angle(legs: Legs) -> Angle:
    return Angle(
        upright=size(legs.upright), level=size(legs.level),
        upright_thickness=size(legs.thickness), level_thickness=size(legs.thickness),
    )


def _cover(entry: SectionEntry) -> Plate | None:
    if entry.cover_plate is None:
        return None
    return plate(entry.cover_plate, entry.cover_plate_holes)


def _bottom(entry: SectionEntry) -> Plate | None:
    if entry.bottom_plate is None:
        return None
    return plate(entry.bottom_plate, entry.bottom_plate_holes)


def _lacing(sizes: LacingSizes | None) -> Lacing | None:
    if sizes is None:
        return None
    return Lacing(bar=plate(sizes.bar), pitch=size(sizes.pitch), planes=sizes.planes)


def _battens(sizes: BattenSizes | None) -> Battens | None:
    if sizes is None:
        return None
    return Battens(
        plate=plate(sizes.plate), length=size(sizes.length), pitch=size(sizes.pitch),
        planes=sizes.planes,
    )
