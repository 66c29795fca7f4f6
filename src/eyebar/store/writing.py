"""One event being written: its rows are gathered, hashed, and saved together."""

import unicodedata
from collections import Counter
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from sqlalchemy import Connection, func, insert, select

from eyebar.errors import Unreadable
from eyebar.store.chain import BEGINNING, chain_hash, content_hash
from eyebar.store.tables import events, metadata

LONGEST = 2000
"""Characters of a name or a reason."""

APART = {"contents": ("bytes",)}
"""Table -> columns that the hash of an event does not cover: their own hash stands elsewhere."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Saying:
    """What is done, by whom, and why. Raises Unreadable for a name or a reason that is none."""

    kind: str
    person: str
    reason: str

    def __post_init__(self) -> None:
        """Look at the texts."""
        plain_text(self.person, "the name of who does it")
        plain_text(self.reason, "the reason")


def plain_text(text: str, what: str) -> str:
    """A text that can be kept and printed. Raises Unreadable."""
    if not text.strip():
        raise Unreadable(text, f"is empty: {what} is needed")
    if len(text) > LONGEST:
        raise Unreadable(f"{text[:20]}...", f"is too long: {what} has {LONGEST} characters at most")
    for sign in text:
        if unicodedata.category(sign) in ("Cc", "Cs") and sign not in "\n\t":
            cure = f"write {what} plainly"
            raise Unreadable(text, f"holds the character U+{ord(sign):04X}", cure)
    return text


class Writing:
    """Rows of one event. The event's number is known from the start, its hash at the end."""

    def __init__(
        self, connection: Connection, saying: Saying, *, head: tuple[int, str] | None = None
    ) -> None:
        self.connection = connection
        self.saying = saying
        number, self.previous = head or head_of(connection)
        self.number = number + 1
        self.bridge: int | None = None
        """The bridge that the event is about."""
        self.chain = ""
        """The hash of the event, once it is sealed."""
        self._rows: list[tuple[str, dict[str, Any]]] = []
        self._added: Counter[str] = Counter()

    def add(self, table: str, **row: Any) -> int:
        """Add a row, and tell its number."""
        if table not in self._added:
            key = metadata.tables[table].c.id
            self._added[table] = self.connection.execute(select(func.max(key))).scalar() or 0
        self._added[table] += 1
        found = self._added[table]
        self._rows.append((table, {"id": found, "event": self.number, **row}))
        return found

    def seal(self) -> None:
        """Save the event and its rows, once; only the end of the transaction makes them last."""
        if self.chain:
            return
        covered = [
            (table, {name: row[name] for name in row if name not in APART.get(table, ())})
            for table, row in self._rows
        ]
        event = {
            "number": self.number, "at": now(), "kind": self.saying.kind,
            "person": self.saying.person, "reason": self.saying.reason, "bridge": self.bridge,
            "content": content_hash(covered), "previous": self.previous,
        }
        self.chain = chain_hash(event)
        self.connection.execute(insert(events), {**event, "chain": self.chain})
        by_table: dict[str, list[dict[str, Any]]] = {}
        for table, row in self._rows:
            by_table.setdefault(table, []).append(row)
        for table, rows in by_table.items():  # in the order in which they were first added
            self.connection.execute(insert(metadata.tables[table]), rows)


def head_of(connection: Connection) -> tuple[int, str]:
    """The number and the hash of the newest event."""
    found = connection.execute(
        select(events.c.number, events.c.chain).order_by(events.c.number.desc()).limit(1)
    ).first()
    return (int(found[0]), str(found[1])) if found else (0, BEGINNING)


def now() -> str:
    """The time in universal time, to the second."""
    return datetime.now(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")
