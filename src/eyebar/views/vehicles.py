"""The table of vehicles, axle by axle."""

from dataclasses import dataclass

from eyebar.views import rounding
from eyebar.views.columns import Document, figure, text


@dataclass(frozen=True, slots=True, kw_only=True)
class VehicleRow:
    """One vehicle."""

    name: str = text("Vehicle", "Name of the vehicle.")
    vehicle_class: str = text("Class", "Which law it stands under.")
    tons: str = figure("Tons", "Gross weight in tons of 2,000 lb.")
    axles: str = text("Axles kip", "Weight of each axle, front to rear.")
    spacings: str = text("Spacings ft", "Between the axles, front to rear; least to greatest.")
    lane: str = text("Lane kip/ft + kip", "Uniform load, point load for moment or shear.")
    confirmed: str = text("Confirmed", "Whether anyone has confirmed it against the source.")


def vehicle_rows(document: Document) -> tuple[VehicleRow, ...]:
    """The rows of a `vehicles` document."""
    return tuple(
        VehicleRow(
            name=one["name"],
            vehicle_class=one["class"],
            tons=rounding.tons(sum(one["axles_kip"]) / 2.0),
            axles=" ".join(rounding.plain(axle) for axle in one["axles_kip"]),
            spacings=" ".join(_spacing(spacing) for spacing in one["spacings_ft"]),
            lane=_lane(one),
            confirmed="yes" if one["confirmed"] else "no",
        )
        for one in document["vehicles"]
    )


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
