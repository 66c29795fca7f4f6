"""A record into the register: a new bridge, or a new revision onto the one it was made from."""

import re
from dataclasses import dataclass

from sqlalchemy import select

from eyebar.bridge.timeline import latest_entry
from eyebar.errors import ChangedMeanwhile, OutOfRange, Unknown, Unreadable
from eyebar.record import Record
from eyebar.store.asked import Revision, bridge_named, revision_of
from eyebar.store.differing import differences
from eyebar.store.opened import Register
from eyebar.store.tables import bridges
from eyebar.store.writing import Saying, Writing

HANDLE = re.compile(r"[^\W_](?:[\w.-]{0,78}\w)?")


@dataclass(frozen=True, slots=True, kw_only=True)
class Saved:
    """A revision that was saved: the bridge's handle, its number, and the event's hash."""

    bridge: str
    revision: int
    event: int
    chain: str


def key_for(record: Record) -> str:
    """The handle of a new bridge: its number, else its name, in letters, figures, - and dots."""
    spelled = re.sub(r"[^\w.]+", "-", record.number or record.name, flags=re.UNICODE)
    return spelled.strip("-._")[:80] or "bridge"


def add_bridge(
    register: Register, record: Record, *, person: str, reason: str, handle: str = ""
) -> Saved:
    """A bridge that is not in the register yet, with its record as revision 1.

    Raises OutOfRange where its handle is taken, Unreadable where it is none.
    """
    named = handle or key_for(record)
    if not HANDLE.fullmatch(named):
        raise Unreadable(named, "cannot be the handle of a bridge",
                         "use letters, figures, hyphens and dots, as in '07-19'")
    with register.writing(Saying(kind="bridge added", person=person, reason=reason)) as writing:
        found = select(bridges.c.id).where(bridges.c.handle == named)
        if writing.connection.execute(found).first():
            raise OutOfRange(
                "bridge", repr(named), "one that is not in the register: save a new revision of it"
                " with: eyebar register save, or give another handle with --as",
            )
        writing.bridge = writing.add("bridges", handle=named)
        _add_revision(writing, record, 1)
    return Saved(bridge=named, revision=1, event=writing.number, chain=writing.chain)


def save_revision(
    register: Register, bridge: str, record: Record, *, onto: int, person: str, reason: str
) -> Saved:
    """A new revision of a bridge's record, made from revision `onto`.

    Raises Unknown, OutOfRange where nothing changed, and ChangedMeanwhile where another has saved
    since: nothing is saved then, and what both have changed is told.
    """
    with register.writing(Saying(kind="revision saved", person=person, reason=reason)) as writing:
        known = bridge_named(writing.connection, bridge)
        latest = revision_of(writing.connection, known)
        if onto > latest.revision or onto < 1:
            raise Unknown("revision", str(onto), near=str(latest.revision), where=known.handle)
        if onto < latest.revision:
            base = revision_of(writing.connection, known, onto)
            raise _changed_meanwhile(known.handle, base, latest, record)
        if record.text == latest.text:
            raise OutOfRange("record", "the same as the latest revision", "changed")
        writing.bridge = known.id
        _add_revision(writing, record, latest.revision + 1)
    return Saved(
        bridge=known.handle, revision=latest.revision + 1, event=writing.number,
        chain=writing.chain,
    )


def _changed_meanwhile(
    bridge: str, base: Revision, latest: Revision, record: Record
) -> ChangedMeanwhile:
    theirs = differences(base.text, latest.text)
    yours = differences(base.text, record.text)
    places = {one.place for one in theirs}
    both = tuple(dict.fromkeys(one.place for one in yours if one.place in places))
    return ChangedMeanwhile(
        bridge, base.revision, latest.revision,
        saved=f"saved by {latest.person} at {latest.at}: {latest.reason}",
        theirs=tuple(one.sentence for one in theirs), yours=tuple(one.sentence for one in yours),
        both=both,
    )


def _add_revision(writing: Writing, record: Record, number: int) -> None:
    """The rows of a revision: its text, and what it says, searchable."""
    last = latest_entry(record)
    revision = writing.add(
        "revisions", bridge=writing.bridge, revision=number, record_hash=record.hash,
        name=record.name, number=record.number, place=record.place, owner=record.owner,
        latest_entry=last.isoformat() if last else None, text=record.text,
    )
    of = {"bridge": writing.bridge, "revision": revision}
    for inspection in record.inspections:
        codes = inspection.condition
        found = writing.add(
            "inspections", **of, date=inspection.date.isoformat(), inspector=inspection.by,
            note=inspection.note,
            deck=codes.deck if codes else None,
            superstructure=codes.superstructure if codes else None,
            substructure=codes.substructure if codes else None,
            photographs=_lines(inspection.photographs),
        )
        for reading in inspection.readings:
            writing.add(
                "readings", **of, inspection=found, date=inspection.date.isoformat(),
                part=reading.address.part, place=reading.address.place, what=str(reading.what),
                written=reading.value.text, value=reading.value.number, unit=reading.value.unit,
                gauge=reading.gauge,
                plus_minus=reading.plus_minus.text if reading.plus_minus else None,
                piece=reading.piece, note=reading.note, photographs=_lines(reading.photographs),
            )
    for decision in record.decisions:
        writing.add(
            "decisions", **of, date=decision.date.isoformat(), what=str(decision.what),
            part=str(decision.part), decider=decision.by, note=decision.note,
        )


def _lines(texts: tuple[str, ...]) -> str | None:
    return "\n".join(texts) or None
