"""The table of vehicles, axle by axle."""

from dataclasses import dataclass

from eyebar.views import rounding
from eyebar.views.columns import Document, figure, text


@dataclass(frozen=True, slots=True, kw_only=True)
class VehicleRow:
    """One vehicle."""

    name: str = text("Vehicle", "Its name; * where figures of it are assumed.")
    vehicle_class: str = text("Class", "Which law it stands under.")
    tons: str = figure("Tons", "Gross weight in tons of 2,000 lb.")
    axles: str = text("Axles kip", "Weight of each axle, front to rear; or a load by area.")
    spacings: str = text("Spacings ft", "Between the axles, front to rear; least to greatest.")
    lane: str = text("Lane kip/ft + kip", "Uniform load, point load for moment or shear.")
    confirmed: str = text("Confirmed", "Whether anyone has confirmed it against the source.")


def vehicle_rows(document: Document) -> tuple[VehicleRow, ...]:
    """The rows of a `vehicles` document."""
    return tuple(
        VehicleRow(
            name=one["name"] + ("*" if one["assumed"] else ""),
            vehicle_class=one["class"],
            tons=rounding.tons(sum(one["axles_kip"]) / 2.0 or None),
            axles=_axles(one),
            spacings=" ".join(_spacing(spacing) for spacing in one["spacings_ft"]),
            lane=_lane(one),
            confirmed="yes" if one["confirmed"] else "no",
        )
        for one in document["vehicles"]
    )


def _axles(vehicle: Document) -> str:
    if vehicle["area_psf"] is not None:
        return f"{rounding.plain(vehicle['area_psf'])} lb/ft2"
    return " ".join(rounding.plain(axle) for axle in vehicle["axles_kip"])


def _spacing(spacing: float | list[float]) -> str:
    ends = spacing if isinstance(spacing, list) else [spacing]
    return " to ".join(rounding.plain(end) for end in ends)


def _lane(vehicle: Document) -> str:
    if not vehicle["lane_kip_per_ft"]:
        return rounding.NOTHING
    uniform = rounding.plain(vehicle["lane_kip_per_ft"])
    points = vehicle["lane_point_kip"]
    if points:
        uniform += f" + {' or '.join(rounding.plain(point) for point in points)}"
    return f"{uniform}, {vehicle['combine']}"
