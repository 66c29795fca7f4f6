"""The JSON Schemas of the documents, shipped beside this module; documents read back."""

import json
from importlib.resources import files
from typing import Any

from eyebar.errors import OutOfRange, Unknown, nearest

NAMES = (
    "rate", "forces", "force-table", "drawn", "influence", "proportion", "vehicles", "check",
    "describe", "explain", "history", "history-how", "history-details",
    "history-sheet", "cross", "slip", "use", "bracing", "error",
    "register-list", "register-bridge", "register-history", "register-readings",
    "register-compare", "register-verify", "register-done",
)


def schema(name: str) -> dict[str, Any]:
    """The JSON Schema of one document. Raises Unknown."""
    if name not in NAMES:
        raise Unknown("document", name, near=nearest(name, NAMES))
    text = files("eyebar.documents").joinpath("schemas", f"{name}.json").read_text("utf-8")
    found: dict[str, Any] = json.loads(text)
    return found


def document_read(text: str | bytes) -> dict[str, Any]:
    """A document from its JSON text, of a kind and a version that this eyebar knows.

    Raises OutOfRange where it is no eyebar document, or one of a newer version.
    """
    try:
        read = json.loads(text)
    except ValueError as error:
        raise OutOfRange("document", f"not JSON ({error})", "a JSON object") from None
    kind = read.get("format") if isinstance(read, dict) else None
    known = {schema(name)["properties"]["format"]["const"] for name in NAMES}
    if kind not in known:
        raise OutOfRange("format of the document", repr(kind), f"one of {', '.join(sorted(known))}")
    found: dict[str, Any] = read
    return found
