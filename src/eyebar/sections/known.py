"""The sizes of a piece that must be known; NotMeasured where one is not."""

from eyebar.errors import OutOfRange
from eyebar.sections.amounts import measured
from eyebar.sections.pieces import Angle, Channel, Plate, Taper
from eyebar.sections.tapered import mean_thickness


def plate_sizes(plate: Plate, name: str) -> tuple[float, float]:
    """Width and thickness [in]; a plate with access holes is as wide as they leave it.

    Raises NotMeasured, OutOfRange for holes as wide as the plate.
    """
    width = measured(plate.width, f"width of {name}")
    thickness = measured(plate.thickness, f"thickness of {name}")
    return width - hole_width(plate, name), thickness


def hole_width(plate: Plate, name: str) -> float:
    """Width of a plate's access holes [in], 0 where it has none. Raises NotMeasured, OutOfRange."""
    if plate.holes is None:
        return 0.0
    hole = measured(plate.holes.width, f"width of the holes in {name}")
    width = measured(plate.width, f"width of {name}")
    if hole >= width:
        raise OutOfRange(
            f"width of the holes in {name}", f"{hole:g} in", f"less than its width, {width:g} in"
        )
    return hole


def angle_sizes(angle: Angle, name: str = "angle") -> tuple[float, float, float, float]:
    """Upright leg and its thickness, level leg and its thickness [in]. Raises NotMeasured."""
    return (
        measured(angle.upright, f"upright leg of {name}"),
        measured(angle.upright_thickness, f"thickness of the upright leg of {name}"),
        measured(angle.level, f"level leg of {name}"),
        measured(angle.level_thickness, f"thickness of the level leg of {name}"),
    )


def channel_sizes(channel: Channel) -> tuple[float, float, float, float]:
    """Depth, web, flange and the flange's mean thickness [in]. Raises NotMeasured."""
    return (
        measured(channel.depth, "depth"),
        measured(channel.web, "web thickness"),
        measured(channel.flange, "width of flange"),
        thickness_of_flange(channel.flange_thickness, channel.taper),
    )


def thickness_of_flange(mean: float | None, taper: Taper | None) -> float:
    """Mean thickness of a flange [in], by its taper where it has one. Raises NotMeasured."""
    if taper is None:
        return measured(mean, "flange thickness")
    return mean_thickness(*taper_sizes(taper))


def taper_sizes(taper: Taper) -> tuple[float, float]:
    """Thickness of a flange at its edge and at the web [in]. Raises NotMeasured."""
    return (
        measured(taper.edge, "flange thickness at its edge"),
        measured(taper.at_web, "flange thickness at the web"),
    )
