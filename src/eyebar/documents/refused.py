"""The `error` document: what was refused, and why."""

import dataclasses
from typing import Any

from eyebar.errors import BadRecord, EyebarError

FORMAT = "eyebar/error/1"


def error_document(refusal: EyebarError | OSError) -> dict[str, Any]:
    """A refusal, or what the system said of a file; of a record with faults all of them."""
    if isinstance(refusal, OSError):
        place = f"{refusal.filename}: " if refusal.filename else ""
        return error_of("file", f"{place}{refusal.strerror or refusal}")
    document = error_of(refusal.code, str(refusal))
    if isinstance(refusal, BadRecord):
        document["file"] = refusal.file
        document["faults"] = [dataclasses.asdict(fault) for fault in refusal.faults]
    return document


def error_of(code: str, text: str) -> dict[str, Any]:
    """What goes wrong outside our own refusals: a code, and what is said."""
    return {"format": FORMAT, "code": code, "text": text}
