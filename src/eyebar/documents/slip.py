"""The `slip` document: one crossing of one vehicle on one day, its conditions, and who signs."""

from datetime import date
from pathlib import Path
from typing import Any

from eyebar.documents.cross import chosen, document_of
from eyebar.documents.opened import opened
from eyebar.documents.vehicles import vehicle_objects
from eyebar.errors import OutOfRange
from eyebar.record import Record
from eyebar.terms import Answer
from eyebar.vehicles import Vehicle, vehicles_of

ROLES = ("licensed engineer", "for the owner of the bridge", "driver")
ONE_CROSSING = "This slip is for one crossing on its day; it is worth nothing until it is signed."


def slip_document(
    record: Path | Record, vehicle: str | Vehicle, day: date, *, way: int = 1,
    on: date | None = None, office: Path | None = None, file: Path | None = None,
) -> dict[str, Any]:
    """A slip for one vehicle; `way` is which of its ways, from 1, where it may cross on conditions.

    Raises as `cross_document` does, and OutOfRange where the answer is no.
    """
    one = opened(record, on=on, office=office)
    known = one.vehicles if file is None else vehicles_of(file, one.vehicles, layer="file")
    (asked,) = chosen([vehicle], known)
    return slip_of(document_of(one, [asked]), asked, day, way=way)


def slip_of(document: dict[str, Any], asked: Vehicle, day: date, *, way: int) -> dict[str, Any]:
    """A slip from the `cross` document of one vehicle. Raises OutOfRange where the answer is no."""
    (crossing,) = document["vehicles"]
    if crossing["answer"] == Answer.NO:
        raise OutOfRange(
            f"answer for {asked.name}", f"no ({crossing['reason']})", "yes, or yes on conditions"
        )
    ways = crossing["ways"]
    if ways and not 1 <= way <= len(ways):
        raise OutOfRange("way", way, f"from 1 to {len(ways)}")
    sign = document["posting"]["sign"]
    return {
        "format": "eyebar/slip/1",
        "bridge": document["bridge"],
        "date": document["date"],
        "day": day.isoformat(),
        "sign": " ".join(sign["legend"].split()) if sign else "",
        "provisional": document["posting"]["provisional"],
        "vehicle": vehicle_objects([asked])[0],
        "crossing": crossing,
        "way": ways[way - 1] if ways else None,
        "signed": [{"role": role, "name": None, "on": None} for role in ROLES],
        "cautions": [ONE_CROSSING, *document["cautions"]],
        "record_hash": document["record_hash"],
        "version": document["version"],
    }
