"""The flat plates that a section is made of, as each of them may buckle by itself.

Widths are those that standards measure slenderness by: between the flanges or the rivet lines that
hold a plate's edges, or from the line that holds it to the free edge. Where rivet lines were not
recorded a plate is taken as wide as it can be, which is the safe side.
"""

from dataclasses import dataclass
from enum import StrEnum

from eyebar.sections.amounts import measured
from eyebar.sections.shapes import Channel, Channels, Plate, Rolled, RolledShape, Section


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

    Solid pieces are short of flat plates: their buckling is that of the column itself. Raises
    NotMeasured (part left empty).
    """
    match section:
        case Channels():
            return _channels(section)
        case Rolled():
            return _rolled(section)
        case _:
            return ()


def _channels(section: Channels) -> tuple[PlateStrip, ...]:
    strips = [*_channel(section.near, "near"), *_channel(section.far, "far")]
    if section.cover is not None:
        strips += [_cover(section.cover, section)]
    return tuple(strips)


def _channel(channel: Channel, side: str) -> tuple[PlateStrip, PlateStrip]:
    depth = measured(channel.depth, "depth")
    web, thickness = measured(channel.web, "web thickness"), _flange_thickness(channel)
    return (
        PlateStrip(
            name=f"web of the {side} channel", width=depth - 2 * thickness, thickness=web,
            kind=StripKind.WEB,
        ),
        PlateStrip(
            name=f"flanges of the {side} channel",
            width=measured(channel.flange, "width of flange"), thickness=thickness,
            kind=StripKind.FLANGE, number=2,
        ),
    )


def _flange_thickness(shape: Channel | Rolled) -> float:
    return measured(shape.flange_thickness, "flange thickness")


def _cover(cover: Plate, section: Channels) -> PlateStrip:
    width = measured(cover.width, "width of cover plate")
    reach = measured(section.apart, "distance between the channels") + sum(
        measured(one.flange, "width of flange") for one in (section.near, section.far)
    )
    return PlateStrip(
        name="cover plate", width=min(width, reach),
        thickness=measured(cover.thickness, "thickness of cover plate"), kind=StripKind.COVER,
    )


def _rolled(section: Rolled) -> tuple[PlateStrip, ...]:
    depth, web = measured(section.depth, "depth"), measured(section.web, "web thickness")
    flange, thickness = measured(section.flange, "width of flange"), _flange_thickness(section)
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
