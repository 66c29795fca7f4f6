"""The chain of hashes: each event covers its own rows and the event before it.

It makes a change evident; it does not make one impossible. Whoever holds the head of the chain on
paper, as a signed report has it, can tell that nothing before it was changed since.
"""

import json
from collections.abc import Iterable, Mapping
from hashlib import sha256
from typing import Any

BEGINNING = "0" * 64
"""What the first event has in the place of a hash before it."""

LINKED = ("number", "at", "kind", "person", "reason", "bridge", "content", "previous")
"""What of an event its own hash covers."""

Row = Mapping[str, Any]

_ENCODER = json.JSONEncoder(
    sort_keys=True, ensure_ascii=False, separators=(",", ":"), allow_nan=False
)


def canonical(row: Row) -> str:
    """A row as one line, equal on both databases; empty fields are left out.

    So a column that a later schema adds does not change what is hashed of an older row.
    """
    filled = {name: value for name, value in row.items() if value is not None}
    return _ENCODER.encode(filled)


def content_hash(rows: Iterable[tuple[str, Row]]) -> str:
    """The hash of the rows that one event brought: (table, row), in any order."""
    lines = sorted(f"{table} {canonical(row)}" for table, row in rows)
    return digest("\n".join(lines).encode("utf-8", "surrogatepass"))


def chain_hash(event: Row) -> str:
    """The hash of an event, with that of the one before it inside."""
    linked = canonical({name: event[name] for name in LINKED})
    return digest(linked.encode("utf-8", "surrogatepass"))


def digest(content: bytes) -> str:
    """SHA-256, hexadecimal."""
    return sha256(content).hexdigest()
