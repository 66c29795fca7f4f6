"""Vehicles: axles, gauges, widths and lane loads; one vehicle for loads and road."""

from eyebar.vehicles.tables import OFFICE_FILE, shipped_vehicles, vehicles_read, vehicles_with
from eyebar.vehicles.vehicle import Spacing, Vehicle

__all__ = [
    "OFFICE_FILE", "Spacing", "Vehicle", "shipped_vehicles", "vehicles_read", "vehicles_with",
]
