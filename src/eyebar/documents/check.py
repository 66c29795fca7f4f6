"""The `check` document of a record without faults; faults come as BadRecord."""

from datetime import date
from pathlib import Path
from typing import Any

from eyebar.documents.opened import CAUTION, NOT_ASSUMED_SOUND, closing, heading, opened
from eyebar.rating.not_rated import unrated_parts
from eyebar.record import Record, not_measured


def check_document(
    record: Path | Record, *, on: date | None = None, office: Path | None = None
) -> dict[str, Any]:
    """What a record holds on a date, and which parts cannot be rated as it stands.

    Raises BadRecord with every fault at once.
    """
    one = opened(record, on=on, office=office)
    trusses = one.bridge.trusses
    return {
        **heading("check", 1, one),
        "trusses": len(trusses),
        "bars": sum(len(truss.bars) + len(truss.broken) for truss in trusses),
        "rules": list(one.bridge.rules),
        "not_measured": [
            {"part": part, "what": list(what)}
            for part, what in sizes_not_measured(one.record).items()
        ],
        "not_rated": [
            {"part": address, "not_rated": reason}
            for address, reason in unrated_parts(one.bridge, one.values)
        ],
        "cautions": [CAUTION, NOT_ASSUMED_SOUND],
        **closing(one),
    }


def sizes_not_measured(record: Record) -> dict[str, list[str]]:
    """Part -> the sizes of it that nobody has measured."""
    found: dict[str, list[str]] = {}
    for size in not_measured(record):
        found.setdefault(size.part, []).append(size.what)
    return found
