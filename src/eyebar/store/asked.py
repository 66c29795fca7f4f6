"""Questions to the register, answered without its long texts where they are not asked for."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from sqlalchemy import Connection, Select, and_, func, or_, select

from eyebar.errors import Unknown, nearest
from eyebar.store.tables import bridges, decisions, events, inspections, readings, revisions


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownBridge:
    """A bridge of the register: its number there and its handle."""

    id: int
    handle: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Revision:
    """A revision with its text, and when it was saved, by whom and why."""

    id: int
    revision: int
    record_hash: str
    text: str
    at: str
    person: str
    reason: str


def bridge_named(connection: Connection, handle: str) -> KnownBridge:
    """The bridge of a handle. Raises Unknown with the nearest."""
    found = connection.execute(
        select(bridges.c.id, bridges.c.handle).where(bridges.c.handle == handle)
    ).first()
    if found is None:
        known = connection.execute(select(bridges.c.handle)).scalars().all()
        raise Unknown("bridge", handle, near=nearest(handle, known), where="the register")
    return KnownBridge(id=found.id, handle=found.handle)


def revision_of(connection: Connection, bridge: KnownBridge, number: int | None = None) -> Revision:
    """A revision of a bridge; the latest where no number is given. Raises Unknown."""
    asked = (
        select(
            revisions.c.id, revisions.c.revision, revisions.c.record_hash, revisions.c.text,
            events.c.at, events.c.person, events.c.reason,
        )
        .join(events, events.c.number == revisions.c.event)
        .where(revisions.c.bridge == bridge.id)
        .order_by(revisions.c.revision.desc())
        .limit(1)
    )
    if number is not None:
        asked = asked.where(revisions.c.revision == number)
    found = connection.execute(asked).mappings().first()
    if found is None:
        raise Unknown("revision", str(number), where=f"bridge {bridge.handle}")
    return Revision(**found)


def revision_before(connection: Connection, bridge: KnownBridge, event: int) -> Revision:
    """The revision of a bridge that was the latest when an event was written. Raises Unknown."""
    number = connection.execute(
        select(func.max(revisions.c.revision))
        .where(revisions.c.bridge == bridge.id, revisions.c.event < event)
    ).scalar_one()
    return revision_of(connection, bridge, number or 0)


def _latest() -> Select[Any]:
    """Bridge -> the number of its latest revision."""
    return select(
        revisions.c.bridge, func.max(revisions.c.revision).label("revision")
    ).group_by(revisions.c.bridge)


def latest_of_all(connection: Connection) -> Sequence[Any]:
    """One row for each bridge: handle, and what its latest revision says of itself."""
    latest = _latest().subquery()
    return connection.execute(
        select(
            bridges.c.id, bridges.c.handle, revisions.c.revision, revisions.c.name,
            revisions.c.number, revisions.c.place, revisions.c.latest_entry, events.c.at,
            events.c.person,
        )
        .join(latest, latest.c.bridge == bridges.c.id)
        .join(revisions, and_(
            revisions.c.bridge == latest.c.bridge, revisions.c.revision == latest.c.revision
        ))
        .join(events, events.c.number == revisions.c.event)
        .order_by(bridges.c.handle)
    ).mappings().all()


CODES = ("deck", "superstructure", "substructure")


def last_inspections(connection: Connection) -> dict[int, dict[str, Any]]:
    """Bridge -> of what its latest revision has: the day of the last inspection, `date`, and the
    latest condition code of each component, None where none was given."""
    latest = _latest().subquery()
    rows = connection.execute(
        select(revisions.c.bridge, inspections.c.date, *(inspections.c[one] for one in CODES))
        .join(latest, and_(
            latest.c.bridge == revisions.c.bridge, latest.c.revision == revisions.c.revision
        ))
        .join(inspections, inspections.c.revision == revisions.c.id)
        .order_by(inspections.c.date, inspections.c.id)
    ).mappings()
    found: dict[int, dict[str, Any]] = {}
    for row in rows:
        one = found.setdefault(row["bridge"], dict.fromkeys(CODES))
        one["date"] = row["date"]
        one.update({code: row[code] for code in CODES if row[code] is not None})
    return found


def revisions_of(connection: Connection, bridge: KnownBridge) -> Sequence[Any]:
    """Every revision of a bridge without its text, the oldest first."""
    return connection.execute(
        select(
            revisions.c.revision, revisions.c.record_hash, revisions.c.latest_entry,
            revisions.c.name, events.c.at, events.c.person, events.c.reason,
        )
        .join(events, events.c.number == revisions.c.event)
        .where(revisions.c.bridge == bridge.id)
        .order_by(revisions.c.revision)
    ).mappings().all()


def events_of(connection: Connection, bridge: KnownBridge | None = None) -> Sequence[Any]:
    """Every event, or those of one bridge, the oldest first."""
    asked = select(
        events.c.number, events.c.at, events.c.kind, events.c.person, events.c.reason,
        events.c.chain, bridges.c.handle.label("handle"),
    ).join(bridges, bridges.c.id == events.c.bridge, isouter=True).order_by(events.c.number)
    if bridge is not None:
        asked = asked.where(events.c.bridge == bridge.id)
    return connection.execute(asked).mappings().all()


def inspections_of(connection: Connection, revision: int) -> Sequence[Any]:
    """The inspections of a revision (its id), by date, with how many readings each has."""
    count = (
        select(func.count())
        .where(readings.c.revision == revision, readings.c.inspection == inspections.c.id)
        .scalar_subquery()
    )
    return connection.execute(
        select(inspections, count.label("readings"))
        .where(inspections.c.revision == revision)
        .order_by(inspections.c.date, inspections.c.id)
    ).mappings().all()


def decisions_of(connection: Connection, bridge: KnownBridge, revision: int) -> Sequence[Any]:
    """The decisions that a revision (its id) has, and those taken down in the register itself."""
    return connection.execute(
        select(decisions)
        .where(
            decisions.c.bridge == bridge.id,
            or_(decisions.c.revision == revision, decisions.c.revision.is_(None)),
        )
        .order_by(decisions.c.date, decisions.c.id)
    ).mappings().all()


@dataclass(frozen=True, slots=True, kw_only=True)
class Search:
    """Which readings are wanted; what is left empty binds nothing."""

    bridge: str = ""
    part: str = ""
    """An address, or the beginning of one: `upstream/` finds all of a truss."""
    what: str = ""
    since: str = ""
    until: str = ""
    words: str = ""
    """Somewhere in the note or the gauge, capitals or not."""


def readings_found(connection: Connection, search: Search) -> Sequence[Any]:
    """The readings of the latest revisions that fit, by bridge, date and part."""
    latest = _latest().subquery()
    asked = (
        select(bridges.c.handle, readings)
        .join(bridges, bridges.c.id == readings.c.bridge)
        .join(revisions, revisions.c.id == readings.c.revision)
        .join(latest, and_(
            latest.c.bridge == revisions.c.bridge, latest.c.revision == revisions.c.revision
        ))
        .order_by(bridges.c.handle, readings.c.date, readings.c.part, readings.c.id)
    )
    if search.bridge:
        asked = asked.where(bridges.c.id == bridge_named(connection, search.bridge).id)
    if search.part:
        asked = asked.where(readings.c.part.startswith(search.part, autoescape=True))
    if search.what:
        asked = asked.where(readings.c.what == search.what)
    if search.since:
        asked = asked.where(readings.c.date >= search.since)
    if search.until:
        asked = asked.where(readings.c.date <= search.until)
    if search.words:
        asked = asked.where(or_(
            readings.c.note.icontains(search.words, autoescape=True),
            readings.c.gauge.icontains(search.words, autoescape=True),
        ))
    return connection.execute(asked).mappings().all()
