"""The `error` document: what was refused, and why."""

import dataclasses
from typing import Any

from eyebar.errors import BadRecord, EyebarError

FORMAT = "eyebar/error/1"


def error_document(refusal: EyebarError | OSError) -> dict[str, Any]:
    """A refusal, or what the system said of a file; of a record with faults all of them."""
    if isinstance(refusal, OSError):
        place = f"{refusal.filename}: " if refusal.filename else ""
        return {"format": FORMAT, "code": "file", "text": f"{place}{refusal.strerror or refusal}"}
    document: dict[str, Any] = {"format": FORMAT, "code": refusal.code, "text": str(refusal)}
    if isinstance(refusal, BadRecord):
        document["file"] = refusal.file
        document["faults"] = [dataclasses.asdict(fault) for fault in refusal.faults]
    return document
