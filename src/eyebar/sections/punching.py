"""Where a riveted member is punched: lines of rivet holes along its plates.

All lengths in inches; `None` stands for what was never measured.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from eyebar.sections.amounts import measured
from eyebar.sections.composed import depth_of_webs
from eyebar.sections.known import angle_sizes, channel_sizes, plate_sizes, thickness_of_flange
from eyebar.sections.shapes import (
    Angles,
    Channels,
    Plate,
    Plates,
    PlatesAndAngles,
    Rolled,
    RolledShape,
    Section,
)


class Punched(StrEnum):
    """Which of a member's plates rivet holes are in."""

    WEB = "web"
    FLANGE = "flange"
    LEG = "leg"
    COVER = "cover plate"
    BOTTOM = "bottom plate"
    PLATE = "plate"


@dataclass(frozen=True, slots=True, kw_only=True)
class HoleLines:
    """Lines of holes along each plate of one kind, where the member has most of them.

    `gauge` between neighbouring lines (one line needs none), `stagger` the shift of every other
    line along the plate, 0 for holes side by side.
    """

    where: Punched
    lines: int
    gauge: float | None = None
    stagger: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class RivetHoles:
    """The rivet holes that a member's net section loses: rivets of one diameter, by lines."""

    rivet: float | None
    lines: tuple[HoleLines, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PunchedPlate:
    """Plates alike that may be punched: how many, how wide, how thick [in]."""

    number: int
    width: float
    thickness: float


def punched_plates(section: Section) -> Mapping[Punched, tuple[PunchedPlate, ...]]:
    """The plates of a section that rivets may go through, by kind; none for bars and rods.

    Raises NotMeasured (part left empty).
    """
    match section:
        case Channels():
            return _channels(section)
        case PlatesAndAngles():
            return _plates_and_angles(section)
        case Angles():
            return {Punched.LEG: tuple(
                one for angle in section.angles for one in _legs(*angle_sizes(angle))
            )}
        case Rolled():
            return _rolled(section)
        case Plates():
            return {Punched.PLATE: tuple(
                PunchedPlate(number=1, width=width, thickness=thickness)
                for width, thickness in (plate_sizes(one, "plate") for one in section.plates)
            )}
        case _:
            return {}


def _legs(
    upright: float, upright_thickness: float, level: float, level_thickness: float
) -> tuple[PunchedPlate, PunchedPlate]:
    return (
        PunchedPlate(number=1, width=upright, thickness=upright_thickness),
        PunchedPlate(number=1, width=level, thickness=level_thickness),
    )


def _channels(section: Channels) -> dict[Punched, tuple[PunchedPlate, ...]]:
    sizes = [channel_sizes(one) for one in (section.near, section.far)]
    return {
        Punched.WEB: tuple(
            PunchedPlate(number=1, width=depth, thickness=web) for depth, web, _, _ in sizes
        ),
        Punched.FLANGE: tuple(
            PunchedPlate(number=2, width=flange, thickness=thickness)
            for _, _, flange, thickness in sizes
        ),
        **_level(section.cover, section.bottom),
    }


def _plates_and_angles(section: PlatesAndAngles) -> dict[Punched, tuple[PunchedPlate, ...]]:
    depth = depth_of_webs(section)
    webs = [one for one in (section.middle, section.near.web, section.far.web) if one is not None]
    angles = [
        angle for side in (section.near, section.far) for angle in (side.top, side.bottom)
        if angle is not None
    ]
    return {
        Punched.WEB: tuple(
            PunchedPlate(
                number=1, width=depth, thickness=measured(web.thickness, "thickness of the web")
            )
            for web in webs
        ),
        Punched.LEG: tuple(one for angle in angles for one in _legs(*angle_sizes(angle))),
        **_level(section.cover, section.bottom),
    }


def _level(
    cover: Plate | None, bottom: Plate | None
) -> dict[Punched, tuple[PunchedPlate, ...]]:
    """Plates on and under a member; one with access holes as wide as those leave it."""
    found: dict[Punched, tuple[PunchedPlate, ...]] = {}
    for where, plate in ((Punched.COVER, cover), (Punched.BOTTOM, bottom)):
        if plate is not None:
            width, thickness = plate_sizes(plate, where)
            found[where] = (PunchedPlate(number=1, width=width, thickness=thickness),)
    return found


def _rolled(section: Rolled) -> dict[Punched, tuple[PunchedPlate, ...]]:
    depth, web = measured(section.depth, "depth"), measured(section.web, "web thickness")
    flange = measured(section.flange, "width of flange")
    thickness = thickness_of_flange(section.flange_thickness, section.taper)
    number = section.number
    upright = PunchedPlate(number=number, width=depth, thickness=web)
    level = PunchedPlate(number=number, width=flange, thickness=thickness)
    match section.shape:
        case RolledShape.ANGLE:
            return {Punched.LEG: (upright, level)}
        case RolledShape.TEE:
            return {Punched.WEB: (upright,), Punched.FLANGE: (level,)}
        case _:
            return {
                Punched.WEB: (upright,),
                Punched.FLANGE: (
                    PunchedPlate(number=2 * number, width=flange, thickness=thickness),
                ),
            }
