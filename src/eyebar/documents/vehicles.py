"""The `vehicles` document: every vehicle, axle by axle."""

from collections.abc import Iterable
from pathlib import Path
from typing import Any

from eyebar import __version__
from eyebar.vehicles import Vehicle, vehicles_with


def vehicles_document(*, office: Path | None = None) -> dict[str, Any]:
    """The vehicles in force: shipped, and the office's laid over them. Raises BadRecord."""
    return {
        "format": "eyebar/vehicles/1",
        "vehicles": vehicle_objects(vehicles_with(office).values()),
        "version": __version__,
    }


def vehicle_objects(vehicles: Iterable[Vehicle]) -> list[dict[str, Any]]:
    """Vehicles as objects."""
    return [
        {
            "name": one.name,
            "axles_kip": list(one.axles_kip),
            "spacings_ft": [list(s) if isinstance(s, tuple) else s for s in one.spacings_ft],
            "gauge_ft": one.gauge_ft,
            "width_ft": one.width_ft,
            "lane_kip_per_ft": one.lane_kip_per_ft,
            "lane_point_kip": None if one.lane_point_kip is None else list(one.lane_point_kip),
            "combine": one.combine.value,
            "class": one.vehicle_class.value,
            "area_psf": one.area_psf or None,
            "empty_axles_kip": list(one.empty_axles_kip),
            "posted_as": one.posted_as.value,
            "assumed": list(one.assumed),
            "source": one.source,
            "confirmed": one.confirmed,
        }
        for one in vehicles
    ]
