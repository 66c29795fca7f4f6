"""From a record on disk to the bridge on a date, with the values and vehicles in force."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from eyebar import __version__
from eyebar.bridge.checks import own_faults
from eyebar.bridge.parts import Bridge
from eyebar.bridge.state import bridge_faults, bridge_on
from eyebar.errors import BadRecord
from eyebar.office import Values, values_of
from eyebar.record import Record
from eyebar.record.reading import Examined, examined_file
from eyebar.terms import VehicleClass
from eyebar.vehicles import Vehicle, vehicles_with

CAUTION = (
    "This is a calculation from the measurements given; it must be checked and signed by a "
    "licensed engineer under the rules in force at the place, and the owner's rules and the law "
    "come before it."
)
NOT_ASSUMED_SOUND = "What is not measured is not assumed sound."
CLOSE = (
    "Close this bridge: a bridge that cannot carry three tons is to be closed (23 CFR 650.313, "
    "unconfirmed)."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Opened:
    """A record read, its bridge on the date, and the office's values and vehicles."""

    record: Record
    bridge: Bridge
    values: Values
    vehicles: Mapping[str, Vehicle]

    @property
    def rated_vehicles(self) -> Mapping[str, Vehicle]:
        """The vehicles of a rating: design, legal and emergency; everyday ones only cross, but for
        those by which the office posts."""
        setting = {
            *self.values.names("posting.vehicles"), *self.values.names("posting.emergency vehicles")
        }
        return {
            name: vehicle for name, vehicle in self.vehicles.items()
            if vehicle.vehicle_class is not VehicleClass.EVERYDAY or name in setting
        }


def opened(record: Path | Record, *, on: date | None = None, office: Path | None = None) -> Opened:
    """Read a record and make the bridge's state on a date.

    Raises BadRecord with all faults of the office's folder, or with all of the record: its own,
    those of its exceptions to the office's values, those that only the form of its trusses and the
    state on the date show.
    """
    vehicles = vehicles_with(office)
    found = examined_file(record) if isinstance(record, Path) else Examined(
        file=record.file, record=record
    )
    if found.record is None:
        raise BadRecord(found.file, found.faults)
    values, wrong = values_of(found.record, office)
    if found.faults or wrong:
        raise BadRecord(found.file, (
            *own_faults(found), *wrong, *bridge_faults(found.record, on, values)
        ))
    return Opened(
        record=found.record, bridge=bridge_on(found.record, on, values), values=values,
        vehicles=vehicles,
    )


def heading(name: str, number: int, one: Opened) -> dict[str, Any]:
    """The keys at the head of every document on a bridge."""
    return {
        "format": f"eyebar/{name}/{number}",
        "bridge": {"name": one.bridge.name, "number": one.bridge.number},
        "date": one.bridge.on.isoformat(),
    }


def closing(one: Opened) -> dict[str, Any]:
    """The keys at the foot of every document on a bridge."""
    return {"record_hash": one.record.hash, "version": __version__}
