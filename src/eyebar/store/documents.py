"""The documents of the register: what its commands answer, for machines."""

from datetime import date
from pathlib import Path
from typing import Any

from sqlalchemy import Connection

from eyebar import __version__
from eyebar.documents.opened import CAUTION, NOT_ASSUMED_SOUND
from eyebar.store import asked, issued
from eyebar.store.effects import Effect, compared
from eyebar.store.files import files_of
from eyebar.store.opened import Register
from eyebar.store.verified import verified
from eyebar.store.writing import head_of

Document = dict[str, Any]

TAMPER = (
    "The chain of hashes makes a change evident to whoever holds its head on paper; it does not"
    " make a change impossible."
)


def _heading(name: str, register: Register) -> Document:
    return {"format": f"eyebar/register-{name}/1", "register": register.place.shown}


def list_document(register: Register) -> Document:
    """Every bridge with its latest revision."""
    with register.reading() as connection:
        found = asked.latest_of_all(connection)
        standing = issued.standing(connection)
        ratings = issued.latest_ratings(connection)
        inspected = asked.last_inspections(connection)
    return {
        **_heading("list", register),
        "bridges": [
            {
                "handle": one["handle"], "name": one["name"], "number": one["number"],
                "place": one["place"], "revision": one["revision"],
                "latest_entry": one["latest_entry"], "saved_at": one["at"],
                "saved_by": one["person"], "standing": standing.get(one["id"], []),
                "last_inspection": (inspected.get(one["id"]) or {}).get("date"),
                "condition": {
                    code: (inspected.get(one["id"]) or {}).get(code) for code in asked.CODES
                },
                "rating": _latest_rating(ratings.get(one["id"])),
            }
            for one in found
        ],
        "version": __version__,
    }


def _latest_rating(row: dict[str, Any] | None) -> Document | None:
    return row and {
        "rating": row["id"], "revision": row["revision"], "date": row["date"],
        "posting": row["posting"], "exact_tons": row["exact_tons"],
        "governed_by": row["governed_by"], "signed": bool(row["signed"]),
    }


def bridge_document(register: Register, handle: str) -> Document:
    """All that is kept of one bridge, the texts of its records apart. Raises Unknown."""
    with register.reading() as connection:
        bridge = asked.bridge_named(connection, handle)
        latest = asked.revision_of(connection, bridge)
        revisions = asked.revisions_of(connection, bridge)
        inspections = asked.inspections_of(connection, latest.id)
        decisions = asked.decisions_of(connection, bridge, latest.id)
        given = _given(connection, bridge)
    return {
        **_heading("bridge", register),
        "handle": bridge.handle,
        "name": revisions[-1]["name"],
        "revision": latest.revision,
        "record_hash": latest.record_hash,
        "revisions": [
            {
                "revision": one["revision"], "record_hash": one["record_hash"],
                "latest_entry": one["latest_entry"], "saved_at": one["at"],
                "saved_by": one["person"], "reason": one["reason"],
            }
            for one in revisions
        ],
        "inspections": [
            {
                "date": one["date"], "inspector": one["inspector"], "note": one["note"],
                "deck": one["deck"], "superstructure": one["superstructure"],
                "substructure": one["substructure"], "readings": one["readings"],
            }
            for one in inspections
        ],
        "decisions": [
            {
                "date": one["date"], "what": one["what"], "part": one["part"],
                "decider": one["decider"], "note": one["note"],
                "in_record": one["revision"] is not None,
            }
            for one in decisions
        ],
        **given,
        "version": __version__,
    }


def _given(connection: Connection, bridge: asked.KnownBridge) -> Document:
    """What was given out for a bridge, and the files kept with it."""
    return {
        "ratings": [
            {
                "rating": one["id"], "revision": one["number"], "date": one["date"],
                "posting": one["posting"], "exact_tons": one["exact_tons"],
                "values_hash": one["values_hash"], "made_by": one["version"],
                "statements": one["statements"],
            }
            for one in issued.ratings_of(connection, bridge)
        ],
        "postings": [
            {
                "posting": one["id"], "legend": one["legend"], "up": one["date"],
                "down": one["down"], "rating": one["rating"],
            }
            for one in issued.postings_of(connection, bridge)
        ],
        "slips": [
            {
                "slip": one["id"], "begins": one["begins"], "ends": one["ends"],
                "vehicle": one["vehicle"], "holder": one["holder"],
                "conditions": one["conditions"], "rating": one["rating"],
            }
            for one in issued.slips_of(connection, bridge)
        ],
        "files": [
            {
                "file": one["id"], "name": one["name"], "media_type": one["media_type"],
                "part": one["part"], "note": one["note"], "taken": one["taken"],
                "size": one["size"], "sha256": one["sha256"],
                "given_sha256": one["given_sha256"], "withdrawn": one["withdrawn"],
            }
            for one in files_of(connection, bridge.id)
        ],
    }


def history_document(register: Register, handle: str | None = None) -> Document:
    """Every event, or those of one bridge, the oldest first. Raises Unknown."""
    with register.reading() as connection:
        bridge = asked.bridge_named(connection, handle) if handle else None
        found = asked.events_of(connection, bridge)
        _, head = head_of(connection)
    return {
        **_heading("history", register),
        "events": [
            {
                "number": one["number"], "at": one["at"], "kind": one["kind"],
                "handle": one["handle"], "person": one["person"], "reason": one["reason"],
                "chain": one["chain"],
            }
            for one in found
        ],
        "head": head,
        "version": __version__,
    }


def readings_document(register: Register, search: asked.Search) -> Document:
    """The readings of the latest revisions that fit a search. Raises Unknown."""
    with register.reading() as connection:
        found = asked.readings_found(connection, search)
    return {
        **_heading("readings", register),
        "readings": [
            {
                "handle": one["handle"], "date": one["date"], "part": one["part"],
                "place": one["place"], "what": one["what"], "written": one["written"],
                "value": one["value"], "unit": one["unit"], "plus_minus": one["plus_minus"],
                "piece": one["piece"], "gauge": one["gauge"], "note": one["note"],
            }
            for one in found
        ],
        "version": __version__,
    }


def compare_document(
    register: Register, handle: str, *, between: tuple[int, int | None], office: Path | None,
    most: int,
) -> Document:
    """What changed between two revisions, and what each change did to the posting.

    Raises Unknown, and BadRecord for an office's folder with faults.
    """
    with register.reading() as connection:
        bridge = asked.bridge_named(connection, handle)
        before = asked.revision_of(connection, bridge, between[0])
        after = asked.revision_of(connection, bridge, between[1])
    found = compared(before.text, after.text, office=office, most=most)
    on: date | None = found.on
    return {
        **_heading("compare", register),
        "handle": bridge.handle,
        "from": before.revision,
        "to": after.revision,
        "date": on.isoformat() if on else None,
        "before": _effect(found.before),
        "after": _effect(found.after),
        "changes": [
            {
                "place": change.place, "sentence": change.sentence,
                "alone": None if effect is None else _effect(effect),
            }
            for change, effect in found.changes
        ],
        "cautions": [CAUTION, NOT_ASSUMED_SOUND],
        "version": __version__,
    }


def _effect(effect: Effect) -> Document:
    return {
        "posting": effect.line or None, "exact_tons": effect.exact_tons,
        "refusal": effect.refusal or None,
    }


def verify_document(register: Register, head: str = "") -> Document:
    """Whether everything is as it was saved, and the first break where it is not."""
    found = verified(register, head=head)
    return {
        **_heading("verify", register),
        "sound": not found.broken,
        "events": found.events,
        "head": found.head,
        "broken": found.broken or None,
        "known_head": found.known_head,
        "cautions": [TAMPER],
        "version": __version__,
    }


def done_document(
    register: Register, done: str, *, handle: str | None = None, number: int | None = None,
    chain: str | None = None, file: Path | None = None, cautions: tuple[str, ...] = (),
) -> Document:
    """What a command that changes or writes something has done."""
    return {
        **_heading("done", register),
        "done": done,
        "handle": handle,
        "number": number,
        "chain": chain,
        "file": None if file is None else str(file),
        "said": list(register.said),
        "cautions": list(cautions),
        "version": __version__,
    }
