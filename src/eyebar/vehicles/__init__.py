"""Vehicles: axles, gauges, widths and lane loads; one vehicle for loads and road."""

from eyebar.vehicles.tables import (
    OFFICE_FILE,
    shipped_vehicles,
    vehicles_of,
    vehicles_read,
    vehicles_with,
)
from eyebar.vehicles.typed import typed_vehicle
from eyebar.vehicles.vehicle import Spacing, Vehicle, axles_spread, loaded_by, spread_over

__all__ = [
    "OFFICE_FILE", "Spacing", "Vehicle", "axles_spread", "loaded_by", "shipped_vehicles",
    "spread_over", "typed_vehicle", "vehicles_of", "vehicles_read", "vehicles_with",
]
