"""The `rate` document: every part's factors, and the posting."""

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
from eyebar.office import Values
from eyebar.rating import BridgeRating, PartRating, Place, RatedPart, rated_bridge
from eyebar.rating.kept import Kept
from eyebar.rating.posting import Posting
from eyebar.rating.weakest import Weak, weakest
from eyebar.record import Record
from eyebar.vehicles import Vehicle


def rate_document(
    record: Path | Record, *, on: date | None = None, office: Path | None = None
) -> dict[str, Any]:
    """The whole rating of a bridge on a date, as `docs/documents.md` has it.

    Raises BadRecord, Unstable, OutOfRange.
    """
    one = opened(record, on=on, office=office)
    return document_of(one, rated_bridge(one.bridge, one.values, one.rated_vehicles))


def document_of(one: Opened, rating: BridgeRating) -> dict[str, Any]:
    """The document of a rating that has been made."""
    closed = rating.posting.closed
    first = [CLOSE] if closed else []
    posted = rating.posting.cautions[1:] if closed else rating.posting.cautions
    return {
        **heading("rate", 1, one),
        "posting": {
            **posting_object(rating.posting),
            "vehicles": list(one.values.names("posting.vehicles")),
        },
        "parts": [_part(part) for part in rating.parts],
        "weakest": [
            _weak(each) for each in weakest(rating, one.rated_vehicles, one.values)
        ],
        "values_used": _values(one.values, rating.values_used),
        "unconfirmed": list(rating.unconfirmed),
        "cautions": [*first, CAUTION, NOT_ASSUMED_SOUND, *rating.cautions, *posted],
        **closing(one),
    }


def vehicle_parts(
    one: Opened, vehicle: Vehicle, kept: Kept | None = None
) -> list[dict[str, Any]]:
    """The parts of the document, rated for one vehicle alone that need not be of the posting;
    `kept` is what a rating of the same bridge left, if at hand."""
    return [_part(part) for part in rated_bridge(
        one.bridge, one.values, {vehicle.name: vehicle}, kept
    ).parts]


def posting_object(posting: Posting) -> dict[str, Any]:
    """The posting as an object."""
    by, sign = posting.governed_by, posting.sign
    return {
        "closed": posting.closed,
        "provisional": posting.provisional,
        "not_rated": list(posting.not_rated),
        "provisional_parts": list(posting.provisional_parts),
        "single_tons": posting.single_tons,
        "combination_tons": posting.combination_tons,
        "emergency": {
            "single_axle_tons": posting.emergency.single_axle_tons,
            "tandem_tons": posting.emergency.tandem_tons,
            "gross_tons": posting.emergency.gross_tons,
        },
        "exact_tons": posting.exact_tons,
        "method": str(posting.method),
        "level": str(posting.level),
        "governed_by": by and {
            "part": by.part, "check": by.check, "vehicle": by.vehicle.name,
            "method": str(by.method), "level": str(by.level),
        },
        "sign": sign and {"designation": sign.designation, "legend": sign.legend},
    }


def _part(part: RatedPart) -> dict[str, Any]:
    head = {"part": part.address, "truss": part.truss, "kind": str(part.kind)}
    if part.not_rated:
        return {**head, "not_rated": part.not_rated}
    if part.provisional:
        head["provisional"] = part.provisional
    return {**head, "ratings": [rating_object(one) for one in part.ratings]}


def _weak(weak: Weak) -> dict[str, Any]:
    by = weak.by
    return {
        "parts": list(weak.parts), "kind": str(weak.kind), "safe_tons": weak.safe_tons,
        "factor": by.factor, "vehicle": by.vehicle.name, "check": by.check,
        "method": str(by.method), "level": str(by.level),
        "without": if_no_limit(weak.without), "without_kind": if_no_limit(weak.without_kind),
    }


def if_no_limit(posting: Posting) -> dict[str, Any]:
    """The posting if something were no limit, as far as it may differ."""
    whole = posting_object(posting)
    wanted = ("closed", "single_tons", "combination_tons", "exact_tons", "governed_by")
    return {key: whole[key] for key in wanted}


def rating_object(one: PartRating) -> dict[str, Any]:
    """One rating of a part as an object."""
    reason = {"reason": one.reason} if one.factor is None else {}
    return {
        "vehicle": one.vehicle,
        "method": one.method.value,
        "level": one.level.value,
        "factor": one.factor,
        **reason,
        "plain_factor": one.plain_factor,
        "tons": one.tons,
        "check": one.check,
        "capacity": one.capacity,
        "unit": one.unit,
        "limit_kip": one.limit_kip,
        "dead": one.dead,
        "live": one.live,
        "dead_factors": {"dc": one.dead_factors[0], "dw": one.dead_factors[1]},
        "live_factor": one.live_factor,
        "impact": one.impact,
        "share": one.share,
        "lanes": one.lanes,
        "pull": one.pull,
        "at": place_object(one.at),
        "events": [
            {"factor": event.factor, "bar": event.bar, "goes": event.goes} for event in one.events
        ],
    }


def place_object(at: Place | None) -> dict[str, Any] | None:
    """Where a vehicle stands, as an object."""
    if at is None:
        return None
    return {
        "front_axle_ft": at.front_axle_ft,
        "direction": at.direction.value,
        "spacing_ft": list(at.spacing_ft),
    }


def _values(values: Values, names: tuple[str, ...]) -> list[dict[str, Any]]:
    return [
        {
            "name": row.name,
            "value": list(row.value) if isinstance(row.value, tuple) else row.value,
            "unit": row.unit,
            "source": row.source,
            "confirmed": row.confirmed,
            "layer": row.layer,
        }
        for row in (values[name] for name in names)
    ]
