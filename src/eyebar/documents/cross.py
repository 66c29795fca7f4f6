"""The `cross` document: for each vehicle whether it may cross, on which conditions, and why not."""

from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path
from typing import Any

from eyebar.documents.opened import (
    CAUTION,
    CLOSE,
    NOT_ASSUMED_SOUND,
    Opened,
    closing,
    heading,
    opened,
)
from eyebar.documents.rate import posting_object
from eyebar.errors import OutOfRange, Unknown, nearest
from eyebar.rating.crossing import Crossing, Must, Way, crossings
from eyebar.rating.posting import Posting
from eyebar.record import Record
from eyebar.terms import Combine, VehicleClass
from eyebar.vehicles import Vehicle, vehicles_of

PERMIT = (
    "Over the posted weight nothing crosses without a permit of the owner, whatever its axles say."
)
RATED = (
    "A vehicle is rated by the posting's method and level; alone on the bridge no factor for "
    "several at once counts, and at walking pace the office's figure for shock."
)
BY_AREA = (
    "A crowd, a herd and snow lie all over the clear width, wherever they add, with {beside} "
    "beside them."
)
ASSUMED = (
    "Figures of vehicles are assumed where it is said: a scale ticket and a tape replace them."
)


def cross_document(
    record: Path | Record, vehicles: Sequence[str | Vehicle] = (), *, on: date | None = None,
    office: Path | None = None, file: Path | None = None,
) -> dict[str, Any]:
    """The answers for some vehicles, by name or as they are; for all everyday ones by default.

    `file` is a table of vehicles or scale tickets laid over the office's. Raises BadRecord,
    Unknown, Unstable, OutOfRange, NotMeasured.
    """
    one = opened(record, on=on, office=office)
    known = one.vehicles if file is None else vehicles_of(file, one.vehicles, layer="file")
    asked = chosen(vehicles, known)
    return document_of(one, asked)


def chosen(wanted: Sequence[str | Vehicle], known: Mapping[str, Vehicle]) -> list[Vehicle]:
    """The vehicles that are asked for. Raises Unknown, and OutOfRange for a design load."""
    if not wanted:
        return [one for one in known.values() if one.vehicle_class is VehicleClass.EVERYDAY]
    found = []
    for one in wanted:
        if isinstance(one, str) and one not in known:
            raise Unknown("vehicle", one, near=nearest(one, known))
        vehicle = known[one] if isinstance(one, str) else one
        if vehicle.vehicle_class is VehicleClass.DESIGN:
            raise OutOfRange("vehicle", vehicle.name, "one that can cross: a design load cannot")
        found.append(vehicle)
    return found


def document_of(one: Opened, asked: Sequence[Vehicle]) -> dict[str, Any]:
    """The document of a bridge that was opened."""
    names = one.values.names("crossing.beside a load by area")
    beside = [one.vehicles[name] for name in names]
    made = crossings(
        one.bridge, one.values, asked, one.rated_vehicles, beside=beside
    )
    posting = made.rating.posting
    areas = any(vehicle.combine is Combine.AREA for vehicle in asked)
    used = sorted(made.values.used)
    return {
        **heading("cross", 1, one),
        "posting": {
            **posting_object(posting), "vehicles": list(one.values.names("posting.vehicles")),
        },
        "vehicles": [crossing_object(each, posting) for each in made.crossings],
        "unconfirmed": [row.name for row in made.values.unconfirmed(used)],
        "cautions": [
            *([CLOSE] if posting.closed else []), CAUTION, NOT_ASSUMED_SOUND, PERMIT, RATED,
            *([BY_AREA.format(beside=", ".join(names) or "no vehicle")] if areas else []),
            *([ASSUMED] if any(v.assumed for v in asked) else []),
            *made.rating.cautions,
        ],
        **closing(one),
    }


def crossing_object(one: Crossing, posting: Posting) -> dict[str, Any]:
    """One answer as an object."""
    by = one.by
    return {
        "vehicle": one.vehicle.name,
        "tons": one.vehicle.weight_tons or None,
        "answer": str(one.answer),
        "reason": one.reason,
        "decided_by": by and by.part,
        "check": by.check if by else "",
        "factor": by and by.factor,
        "method": str(by.method if by else posting.method),
        "level": str(by.level if by else posting.level),
        "posted_tons": one.posted.limit_tons,
        "above_posting": one.posted.above,
        "conditions": [_must(must) for must in one.ways[0].conditions] if one.ways else [],
        "ways": [_way(way) for way in one.ways],
        "assumed": list(one.vehicle.assumed),
        "source": one.vehicle.source,
    }


def _way(way: Way) -> dict[str, Any]:
    by = way.by
    return {
        "conditions": [_must(must) for must in way.conditions],
        "tons": way.vehicle.weight_tons or None,
        "decided_by": by and by.part,
        "check": by.check if by else "",
        "factor": by and by.factor,
    }


def _must(must: Must) -> dict[str, Any]:
    return {
        "condition": str(must.condition), "within_ft": must.within_ft, "tons": must.tons,
        "spacing_ft": must.spacing_ft, "psf": must.psf,
    }
