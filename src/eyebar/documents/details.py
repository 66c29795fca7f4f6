"""The `history-details` document: which bridges of an office share a bridge's details."""

from datetime import date
from pathlib import Path
from typing import Any

from eyebar.documents.opened import closing, heading, opened
from eyebar.history.habits import Seen, catalogue, habits
from eyebar.record import Record

NO_MAKER = (
    "A shared detail is a hint to look further. Makers copied each other and bought of the same "
    "mills, and bridges were mended with what was at hand: it says of no bridge who made it."
)
COUNTS = (
    "A count says how many of the bridges on which the thing was looked for have it; most of an "
    "office's bridges may have it, whoever made them."
)


def details_document(
    record: Path | Record, *, office: Path, on: date | None = None
) -> dict[str, Any]:
    """The details of a bridge, and who shares them. Raises BadRecord."""
    rows = catalogue(office)
    one = opened(record, on=on, office=office)
    own = tuple(
        Seen(bridge=one.bridge.number or one.bridge.name, what=what, shape=shape)
        for what, shape in one.record.details.items()
    )
    found = habits(own, rows, names=(one.bridge.number, one.bridge.name))
    return {
        **heading("history-details", 1, one),
        "details": [
            {**_seen(shared.detail), "others": list(shared.others), "known": shared.known}
            for shared in found.details
        ],
        "bridges": [
            {
                "bridge": like.bridge, "compared": like.compared,
                "shared": [_seen(detail) for detail in like.shared],
            }
            for like in found.bridges
        ],
        "near": list(found.near),
        "cautions": [NO_MAKER, COUNTS],
        **closing(one),
    }


def _seen(detail: Seen) -> dict[str, Any]:
    return {
        "what": detail.what, "shape": detail.shape,
        "seen": detail.seen and detail.seen.isoformat(), "by": detail.by, "note": detail.note,
    }
