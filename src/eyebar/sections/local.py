"""The flat plates that a section is made of, as each of them may buckle by itself.

Widths are those that standards measure slenderness by: between the flanges or the rivet lines that
hold a plate's edges, or from the line that holds it to the free edge. Where rivet lines were not
recorded a plate is taken as wide as it can be, which is the safe side.
"""

from dataclasses import dataclass
from enum import StrEnum

from eyebar.sections.amounts import measured
from eyebar.sections.composed import depth_of_webs
from eyebar.sections.known import angle_sizes, channel_sizes, thickness_of_flange
from eyebar.sections.shapes import (
    Angle,
    Angles,
    Channel,
    Channels,
    FlangedSegments,
    Placed,
    Plate,
    PlatesAndAngles,
    Rolled,
    RolledShape,
    Section,
    Side,
    Toes,
)


class Held(StrEnum):
    """Which of a plate's long edges are held straight."""

    ONE = "one"
    BOTH = "both"


class StripKind(StrEnum):
    """What a plate is in its section, by which standards give its greatest slenderness."""

    FLANGE = "projecting flange"
    LEG = "angle leg"
    COVER = "cover plate"
    WEB = "web"
    PERFORATED = "perforated plate"


HELD_ON_ONE_EDGE = (StripKind.FLANGE, StripKind.LEG)


@dataclass(frozen=True, slots=True, kw_only=True)
class PlateStrip:
    """Flat plates of a section that are alike: `width`, `thickness` [in], by the name that reports
    use, and how many of them there are."""

    name: str
    width: float
    thickness: float
    kind: StripKind
    number: int = 1

    @property
    def held(self) -> Held:
        """Held on one edge, or on both."""
        return Held.ONE if self.kind in HELD_ON_ONE_EDGE else Held.BOTH

    @property
    def perforated(self) -> bool:
        """Whether it has access holes along its middle."""
        return self.kind is StripKind.PERFORATED


def plates_of(section: Section) -> tuple[PlateStrip, ...]:
    """The plates of a section that can buckle under its thrust; none for rods, bars and plates.

    Solid pieces are short of flat plates: their buckling is that of the column itself. The curved
    walls of a round column are left out: they are far too stocky to buckle. Raises NotMeasured
    (part left empty), OutOfRange.
    """
    match section:
        case Channels():
            return _channels(section)
        case PlatesAndAngles():
            return _plates_and_angles(section)
        case Angles():
            return _angles(section)
        case FlangedSegments():
            return tuple(
                PlateStrip(
                    name=f"flanges of segment {number}", number=2, kind=StripKind.FLANGE,
                    width=measured(one.flange, "flange of the segment"),
                    thickness=measured(
                        one.flange_thickness, "thickness of the flange of the segment"
                    ),
                )
                for number, one in enumerate(section.segments, 1)
                if one.flange != 0.0
            )
        case Rolled():
            return _rolled(section)
        case _:
            return ()


def _channels(section: Channels) -> tuple[PlateStrip, ...]:
    reach = measured(section.apart, "distance between the channels") if _plated(section) else 0.0
    if section.toes is Toes.OUT:
        reach += sum(
            measured(one.flange, "width of flange") for one in (section.near, section.far)
        )
    else:
        reach += sum(measured(one.web, "web thickness") for one in (section.near, section.far))
    return (
        *_channel(section.near, "near"), *_channel(section.far, "far"),
        *_level_plates(section, reach),
    )


def _channel(channel: Channel, side: str) -> tuple[PlateStrip, PlateStrip]:
    depth, web, flange, thickness = channel_sizes(channel)
    return (
        PlateStrip(
            name=f"web of the {side} channel", width=depth - 2 * thickness, thickness=web,
            kind=StripKind.WEB,
        ),
        PlateStrip(
            name=f"flanges of the {side} channel", width=flange, thickness=thickness,
            kind=StripKind.FLANGE, number=2,
        ),
    )


def _plated(section: Channels | PlatesAndAngles) -> bool:
    return section.cover is not None or section.bottom is not None


def _level_plates(section: Channels | PlatesAndAngles, reach: float) -> tuple[PlateStrip, ...]:
    """Plates on and under a member: held along two rivet lines no farther apart than `reach`."""
    return tuple(
        strip
        for name, plate in (("cover plate", section.cover), ("bottom plate", section.bottom))
        if plate is not None
        for strip in _level_plate(name, plate, reach, section.rivet_lines)
    )


def _level_plate(
    name: str, plate: Plate, reach: float, rivet_lines: float | None
) -> tuple[PlateStrip, ...]:
    width = measured(plate.width, f"width of {name}")
    thickness = measured(plate.thickness, f"thickness of {name}")
    between = min(width, reach if rivet_lines is None else rivet_lines)
    kind = StripKind.COVER if plate.holes is None else StripKind.PERFORATED
    strip = PlateStrip(name=name, width=between, thickness=thickness, kind=kind)
    if rivet_lines is None or width <= rivet_lines:
        return (strip,)
    return strip, PlateStrip(
        name=f"{name} beyond its rivets", width=(width - rivet_lines) / 2, thickness=thickness,
        kind=StripKind.FLANGE, number=2,
    )


def _plates_and_angles(section: PlatesAndAngles) -> tuple[PlateStrip, ...]:
    depth = depth_of_webs(section)
    strips: list[PlateStrip] = []
    if section.middle is not None:
        sides = (section.near, section.far)
        strips.append(_web("web", section.middle, depth, sides))
    for name, side in (("near", section.near), ("far", section.far)):
        if side.web is not None:
            strips.append(_web(f"{name} web", side.web, depth, (side,)))
        for where, angle in (("top", side.top), ("bottom", side.bottom)):
            if angle is not None:
                _, _, width, thickness = angle_sizes(angle, f"{name} {where} angle")
                strips.append(
                    PlateStrip(name=f"level leg of the {name} {where} angle", width=width,
                               thickness=thickness, kind=StripKind.LEG)
                )
    return (*strips, *_level_plates(section, _reach(section)))


def _web(name: str, web: Plate, depth: float, sides: tuple[Side, ...]) -> PlateStrip:
    """A web between the level legs of its angles, where rivets can be at the farthest."""
    taken = sum(
        max(
            (angle_sizes(angle)[3] for angle in angles if angle is not None), default=0.0
        )
        for angles in ([side.top for side in sides], [side.bottom for side in sides])
    )
    return PlateStrip(
        name=name, width=depth - taken, thickness=measured(web.thickness, f"thickness of {name}"),
        kind=StripKind.WEB,
    )


def _reach(section: PlatesAndAngles) -> float:
    """The farthest that the rivet lines of a plate on top or below can be apart [in]."""
    if not _plated(section):
        return 0.0
    webs = [one for one in (section.middle, section.near.web, section.far.web) if one is not None]
    thick = sum(measured(web.thickness, "thickness of the web") for web in webs)
    apart = 0.0
    if section.middle is None:
        apart = measured(section.apart, "distance between the webs")
        if section.toes is Toes.IN:
            return apart
    legs = (
        max(
            (angle_sizes(angle)[2] for angle in (side.top, side.bottom) if angle is not None),
            default=0.0,
        )
        for side in (section.near, section.far)
    )
    return apart + thick + sum(legs)


def _angles(section: Angles) -> tuple[PlateStrip, ...]:
    # Backs that touch hold each other; everywhere else a leg stands alone.
    touching = (
        section.placed is Placed.BACK_TO_BACK and section.apart == 0.0 and not section.separate
    )
    kind = StripKind.FLANGE if touching else StripKind.LEG
    return tuple(
        strip
        for number, angle in enumerate(section.angles, 1)
        for strip in _legs(angle, number if len(section.angles) > 1 else 0, kind)
    )


def _legs(angle: Angle, number: int, kind: StripKind) -> tuple[PlateStrip, PlateStrip]:
    of = f" of angle {number}" if number else ""
    upright, upright_thickness, level, level_thickness = angle_sizes(angle)
    return (
        PlateStrip(
            name=f"upright leg{of}", width=upright, thickness=upright_thickness, kind=kind
        ),
        PlateStrip(name=f"level leg{of}", width=level, thickness=level_thickness, kind=kind),
    )


def _rolled(section: Rolled) -> tuple[PlateStrip, ...]:
    depth, web = measured(section.depth, "depth"), measured(section.web, "web thickness")
    flange, thickness = (
        measured(section.flange, "width of flange"),
        thickness_of_flange(section.flange_thickness, section.taper),
    )
    number = section.number
    match section.shape:
        case RolledShape.I:
            return (
                PlateStrip(
                    name="web", width=depth - 2 * thickness, thickness=web, kind=StripKind.WEB,
                    number=number,
                ),
                PlateStrip(
                    name="flanges", width=flange / 2, thickness=thickness, kind=StripKind.FLANGE,
                    number=4 * number,
                ),
            )
        case RolledShape.CHANNEL:
            return (
                PlateStrip(
                    name="web", width=depth - 2 * thickness, thickness=web, kind=StripKind.WEB,
                    number=number,
                ),
                PlateStrip(
                    name="flanges", width=flange, thickness=thickness, kind=StripKind.FLANGE,
                    number=2 * number,
                ),
            )
        case RolledShape.TEE:
            return (
                PlateStrip(
                    name="stem", width=depth, thickness=web, kind=StripKind.FLANGE, number=number
                ),
                PlateStrip(
                    name="flange", width=flange / 2, thickness=thickness, kind=StripKind.FLANGE,
                    number=2 * number,
                ),
            )
        case RolledShape.ANGLE:
            return (
                PlateStrip(
                    name="upright leg", width=depth, thickness=web, kind=StripKind.LEG,
                    number=number,
                ),
                PlateStrip(
                    name="level leg", width=flange, thickness=thickness, kind=StripKind.LEG,
                    number=number,
                ),
            )
