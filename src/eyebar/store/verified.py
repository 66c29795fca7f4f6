"""Whether every row is as it was saved: the chain walked from its beginning, hash by hash."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from sqlalchemy import Connection, func, select, text
from sqlalchemy.exc import DBAPIError

from eyebar.errors import NoRegister
from eyebar.store.chain import BEGINNING, chain_hash, content_hash
from eyebar.store.opened import Register
from eyebar.store.tables import CHAINED, SCHEMA, events
from eyebar.store.writing import APART

AT_ONCE = 200
"""Events whose rows are in memory together."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Verified:
    """What the walk found: how many events are sound, the head, and the first break or "".

    `known_head` is where a head given on paper stands: the number of its event, or None.
    """

    events: int
    head: str
    broken: str
    known_head: int | None = None


def verified(register: Register, *, head: str = "") -> Verified:
    """Walk the whole register; `head` is one that stands on a report, to be found in the chain."""
    try:
        with register.reading() as connection:
            return walked(connection, head=head)
    except NoRegister as refusal:
        return Verified(events=0, head=BEGINNING, broken=f"it cannot be read: {refusal.rule}")


def walked(connection: Connection, *, head: str = "") -> Verified:
    """The same on a connection, which may hold what is not saved yet."""
    sound, last, known = 0, BEGINNING, None
    fault = ""
    try:
        for number, chain, fault in _walked(connection):
            if fault:
                break
            sound, last = number, chain
            if head and chain.startswith(head.lower()):
                known = number
        fault = fault or _beyond(connection, sound) or _damaged(connection)
    except (DBAPIError, UnicodeError, ValueError, TypeError) as error:
        fault = f"the database cannot be read: {_short(error)}"
    if not fault and head and known is None:
        fault = f"no event has the head {head}: what was saved then was changed or taken out"
    return Verified(events=sound, head=last, broken=fault, known_head=known)


def _walked(connection: Connection) -> Iterator[tuple[int, str, str]]:
    """(number, hash, "") of each sound event; the last may carry what is broken instead."""
    previous, expected = BEGINNING, 1
    while True:
        span = (expected, expected + AT_ONCE - 1)
        found = connection.execute(
            select(events).where(events.c.number.between(*span)).order_by(events.c.number)
        ).mappings().all()
        rows = _rows(connection, span)
        for event in found:
            fault = _fault(dict(event), expected, previous, rows.get(event["number"], []))
            fault = fault or _bytes_fault(connection, rows.get(event["number"], []))
            yield expected, event["chain"], fault
            if fault:
                return
            previous, expected = event["chain"], expected + 1
        if len(found) < AT_ONCE:
            return


def _rows(
    connection: Connection, span: tuple[int, int]
) -> dict[int, list[tuple[str, dict[str, Any]]]]:
    """Event -> its rows, without what has a hash of its own."""
    found: dict[int, list[tuple[str, dict[str, Any]]]] = {}
    for table in CHAINED:
        wanted = [column for column in table.c if column.name not in APART.get(table.name, ())]
        asked = select(*wanted).where(table.c.event.between(*span))
        for row in connection.execute(asked).mappings():
            found.setdefault(row["event"], []).append((table.name, dict(row)))
    return found


def _fault(
    event: dict[str, Any], expected: int, previous: str, rows: list[tuple[str, dict[str, Any]]]
) -> str:
    """What is wrong with one event; empty where nothing is."""
    what = f"event {event['number']} ({event['at']}, {event['kind']}, {event['person']})"
    if event["number"] != expected:
        return f"event {expected} is missing; the next that is there is {what}"
    if event["previous"] != previous:
        return f"{what} does not follow on the event before it"
    if chain_hash(event) != event["chain"]:
        return f"{what} is not as it was saved"
    if content_hash(rows) != event["content"]:
        tables = ", ".join(dict.fromkeys(table for table, _ in rows)) or "none is left"
        return f"a row of {what} is not as it was saved, or was taken out or put in (in: {tables})"
    return ""


def _bytes_fault(connection: Connection, rows: list[tuple[str, dict[str, Any]]]) -> str:
    """What is wrong with the bytes of the files among the rows; empty where nothing is."""
    files = [row for table, row in rows if table == "files"]
    if not files:
        return ""
    from eyebar.store.files import bytes_fault

    return next(filter(None, (bytes_fault(connection, row) for row in files)), "")


def _beyond(connection: Connection, last: int) -> str:
    """Events or rows behind the last that is sound; empty where there are none."""
    for table in (events, *CHAINED):
        number = table.c.number if table is events else table.c.event
        outside = select(func.count()).select_from(table).where((number > last) | (number < 1))
        if connection.execute(outside).scalar():
            return f"{table.name} holds rows of events that are not there"
    if not last:
        return "there is no event at all"
    schema = connection.execute(text("SELECT version_num FROM alembic_version")).scalars().all()
    return "" if schema == [SCHEMA] else "the number of the schema is not as it was saved"


def _damaged(connection: Connection) -> str:
    """What SQLite finds wrong with its own file; empty where it is sound."""
    if connection.dialect.name != "sqlite":
        return ""
    found = connection.exec_driver_sql("PRAGMA integrity_check(1)").scalar()
    return "" if found == "ok" else f"the file is damaged: {found}"


def _short(error: Exception) -> str:
    return " ".join(str(getattr(error, "orig", error)).split())[:200]
