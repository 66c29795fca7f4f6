"""What an office gives out: ratings, signatures, postings, crossing slips, decisions."""

import json
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, func, select

from eyebar.addresses import address
from eyebar.documents.opened import opened
from eyebar.documents.rate import document_of
from eyebar.errors import OutOfRange, Unknown
from eyebar.rating import rated_bridge
from eyebar.record import record_of
from eyebar.store.asked import KnownBridge, Revision, bridge_named, revision_of
from eyebar.store.opened import Register
from eyebar.store.tables import events, postings, ratings, revisions, signatures, slips
from eyebar.store.writing import Saying, Writing, head_of, plain_text
from eyebar.views.words import posting_line


@dataclass(frozen=True, slots=True, kw_only=True)
class Given:
    """What was given out: the bridge's handle, its number, the event's hash, what it says."""

    bridge: str
    number: int
    chain: str
    says: str


def issue(
    register: Register, bridge: str, *, office: Path | None, on: date | None, person: str,
    reason: str,
) -> Given:
    """Rate the latest revision and keep the whole document, as a draft.

    Raises Unknown, and what a rating raises.
    """
    with register.reading() as connection:
        latest = revision_of(connection, bridge_named(connection, bridge))
    one = opened(record_of(latest.text, file=f"{bridge}, revision {latest.revision}"), on=on,
                 office=office)
    document = document_of(one, rated_bridge(one.bridge, one.values, one.rated_vehicles))
    return issue_document(
        register, bridge, latest, (document, one.values.digest()), person=person, reason=reason
    )


def issue_document(
    register: Register, bridge: str, revision: Revision, rated: tuple[dict[str, Any], str], *,
    person: str, reason: str,
) -> Given:
    """Keep the `rate` document of a revision, with the hash of the values it was made with.

    Raises Unknown, and OutOfRange where the document is of another record.
    """
    document, values_hash = rated
    if document["record_hash"] != revision.record_hash:
        raise OutOfRange("rating", "of another record", f"of revision {revision.revision}")
    says = posting_line(document["posting"])
    with register.writing(Saying(kind="rating issued", person=person, reason=reason)) as writing:
        known = _about(writing, bridge)
        number = writing.add(
            "ratings", bridge=known.id, revision=revision.id, date=document["date"],
            record_hash=revision.record_hash, values_hash=values_hash,
            version=document["version"], posting=says,
            exact_tons=document["posting"]["exact_tons"],
            document=json.dumps(document, ensure_ascii=False, allow_nan=False),
        )
    return Given(bridge=bridge, number=number, chain=writing.chain, says=says)


def sign(register: Register, rating: int, *, name: str, licence: str, person: str) -> Given:
    """State that a rating was checked. Raises Unknown, and OutOfRange where the record has gone on.

    What is kept is a name and a licence number, which is not a seal (NOT_A_SEAL).
    """
    plain_text(name, "the name of who signs")
    plain_text(licence, "the number of the licence")
    statement = (
        f"I, {name}, licence {licence}, have checked rating {rating} and answer for it."
    )
    saying = Saying(kind="rating signed", person=person, reason=statement)
    with register.writing(saying) as writing:
        found = rating_row(writing.connection, rating)
        bridge = KnownBridge(id=found["bridge"], handle="")
        latest = revision_of(writing.connection, bridge)
        if latest.id != found["revision"]:
            raise OutOfRange(
                "rating", rating, "of the latest revision to be signed: the record has gone on to"
                f" revision {latest.revision}; issue a new one",
            )
        writing.bridge = bridge.id
        _, head = head_of(writing.connection)
        number = writing.add(
            "signatures", rating=rating, name=name, licence=licence, statement=statement, head=head
        )
    return Given(bridge="", number=number, chain=writing.chain, says=statement)


def put_up(
    register: Register, bridge: str, legend: str, *, on: date, rating: int | None, person: str,
    reason: str,
) -> Given:
    """Write down that a sign stands at a bridge since a day."""
    plain_text(legend, "what the sign says")
    with register.writing(Saying(kind="posting put up", person=person, reason=reason)) as writing:
        known = _about(writing, bridge)
        _of_bridge(writing.connection, rating, known)
        number = writing.add(
            "postings", bridge=known.id, date=on.isoformat(), legend=legend, rating=rating
        )
    return Given(bridge=bridge, number=number, chain=writing.chain, says=legend)


def taken_down(register: Register, posting: int, *, on: date, person: str, reason: str) -> Given:
    """Write down that a sign was taken down on a day. Raises Unknown and OutOfRange."""
    with register.writing(
        Saying(kind="posting taken down", person=person, reason=reason)
    ) as writing:
        asked = select(postings).where(postings.c.id == posting, postings.c.takes_down.is_(None))
        sign_up = writing.connection.execute(asked).mappings().first()
        if sign_up is None:
            raise Unknown("posting", str(posting), where="the register")
        gone = select(postings.c.id).where(postings.c.takes_down == posting)
        if writing.connection.execute(gone).first():
            raise OutOfRange("posting", posting, "one that still stands")
        if on.isoformat() < sign_up["date"]:
            raise OutOfRange("day", on, f"not before {sign_up['date']}, when it was put up")
        writing.bridge = sign_up["bridge"]
        number = writing.add(
            "postings", bridge=sign_up["bridge"], date=on.isoformat(), legend=sign_up["legend"],
            takes_down=posting, note=reason,
        )
    return Given(bridge="", number=number, chain=writing.chain, says=sign_up["legend"])


@dataclass(frozen=True, slots=True, kw_only=True)
class Crossing:
    """A leave to cross: which vehicle, whose, from when until when, under which conditions."""

    vehicle: str
    holder: str
    begins: date
    ends: date
    conditions: str
    rating: int | None = None


def give_slip(
    register: Register, bridge: str, crossing: Crossing, *, person: str, reason: str
) -> Given:
    """Write down a crossing slip that was given. Raises Unknown and OutOfRange."""
    for text, what in (
        (crossing.vehicle, "the vehicle"), (crossing.holder, "the holder"),
        (crossing.conditions, "the conditions"),
    ):
        plain_text(text, what)
    if crossing.ends < crossing.begins:
        raise OutOfRange("last day", crossing.ends, f"not before the first, {crossing.begins}")
    with register.writing(
        Saying(kind="crossing slip given", person=person, reason=reason)
    ) as writing:
        known = _about(writing, bridge)
        _of_bridge(writing.connection, crossing.rating, known)
        number = writing.add(
            "slips", bridge=known.id, begins=crossing.begins.isoformat(),
            ends=crossing.ends.isoformat(), vehicle=crossing.vehicle, holder=crossing.holder,
            conditions=crossing.conditions, rating=crossing.rating,
        )
    return Given(bridge=bridge, number=number, chain=writing.chain, says=crossing.vehicle)


def decide(
    register: Register, bridge: str, what: str, *, on: date, part: str, person: str, reason: str
) -> Given:
    """Write down a decision about a bridge that belongs in no record, such as one of the board."""
    plain_text(what, "what was decided")
    named = str(address(part)) if part else None
    with register.writing(Saying(kind="decision taken", person=person, reason=reason)) as writing:
        known = _about(writing, bridge)
        number = writing.add(
            "decisions", bridge=known.id, date=on.isoformat(), what=what, part=named,
            decider=person, note=reason,
        )
    return Given(bridge=bridge, number=number, chain=writing.chain, says=what)


def _about(writing: Writing, bridge: str) -> KnownBridge:
    known = bridge_named(writing.connection, bridge)
    writing.bridge = known.id
    return known


def _of_bridge(connection: Connection, rating: int | None, bridge: KnownBridge) -> None:
    """Refuse a rating that is another bridge's."""
    if rating is not None and rating_row(connection, rating)["bridge"] != bridge.id:
        raise Unknown("rating", str(rating), where=f"bridge {bridge.handle}")


def rating_row(connection: Connection, rating: int) -> dict[str, Any]:
    """A rating that was issued. Raises Unknown."""
    found = connection.execute(select(ratings).where(ratings.c.id == rating)).mappings().first()
    if found is None:
        raise Unknown("rating", str(rating), where="the register")
    return dict(found)


def ratings_of(connection: Connection, bridge: KnownBridge) -> list[dict[str, Any]]:
    """The ratings of a bridge without their documents, each with its statements."""
    wanted = [column for column in ratings.c if column.name != "document"]
    found = connection.execute(
        select(*wanted, revisions.c.revision.label("number"))
        .join(revisions, revisions.c.id == ratings.c.revision)
        .where(ratings.c.bridge == bridge.id).order_by(ratings.c.id)
    ).mappings().all()
    signed: dict[int, list[str]] = {}
    for rating, statement in connection.execute(
        select(signatures.c.rating, signatures.c.statement)
        .join(ratings, ratings.c.id == signatures.c.rating)
        .where(ratings.c.bridge == bridge.id).order_by(signatures.c.id)
    ):
        signed.setdefault(rating, []).append(statement)
    return [{**row, "statements": signed.get(row["id"], [])} for row in found]


BEGINNING = 20_000
"""Letters of a rating's document that hold its posting, which stands near its beginning."""


def latest_ratings(connection: Connection) -> dict[int, dict[str, Any]]:
    """Bridge -> the latest rating issued: its number, date, revision, posting on one line, exact
    tons, whether somebody signed it, and the part that governs; without the long documents."""
    latest = select(func.max(ratings.c.id).label("id")).group_by(ratings.c.bridge).subquery()
    signed = select(func.count()).where(signatures.c.rating == ratings.c.id).scalar_subquery()
    found = connection.execute(
        select(
            ratings.c.id, ratings.c.bridge, ratings.c.date, ratings.c.posting,
            ratings.c.exact_tons, revisions.c.revision, signed.label("signed"),
        )
        .join(latest, latest.c.id == ratings.c.id)
        .join(revisions, revisions.c.id == ratings.c.revision)
    ).mappings().all()
    begins = _beginnings(connection, [row["id"] for row in found])
    return {row["bridge"]: {**row, "governed_by": _governed(begins[row["id"]])} for row in found}


def _beginnings(connection: Connection, numbers: Sequence[int]) -> dict[int, str]:
    """Rating -> the beginning of its document. SQLite would read the whole of a text to cut it:
    there the text is opened, and no more than its beginning is read."""
    if connection.dialect.name != "sqlite":
        beginning = func.substr(ratings.c.document, 1, BEGINNING)
        rows = connection.execute(select(ratings.c.id, beginning).where(ratings.c.id.in_(numbers)))
        return {one.id: one[1] for one in rows}
    database: Any = connection.connection.driver_connection
    found = {}
    for number in numbers:
        with database.blobopen("ratings", "document", number, readonly=True) as text:
            found[number] = text.read(BEGINNING).decode("utf-8", "ignore")
    return found


def _governed(beginning: str) -> str | None:
    """The part that governs, from the beginning of a `rate` document."""
    _, found, rest = beginning.partition('"posting": ')
    try:
        posting, _ = json.JSONDecoder().raw_decode(rest) if found else ({}, 0)
    except ValueError:  # a posting so long that the beginning does not hold it
        return None
    by = posting.get("governed_by")
    return str(by["part"]) if by else None


def postings_of(connection: Connection, bridge: KnownBridge) -> list[dict[str, Any]]:
    """The signs of a bridge, each with the day it was taken down or None."""
    down = postings.alias()
    found = connection.execute(
        select(postings, down.c.date.label("down"))
        .join(down, down.c.takes_down == postings.c.id, isouter=True)
        .where(postings.c.bridge == bridge.id, postings.c.takes_down.is_(None))
        .order_by(postings.c.date, postings.c.id)
    )
    return [dict(row) for row in found.mappings()]


def standing(connection: Connection) -> dict[int, list[str]]:
    """Bridge -> what the signs say that stand there now."""
    down = postings.alias()
    found: dict[int, list[str]] = {}
    for bridge, legend in connection.execute(
        select(postings.c.bridge, postings.c.legend)
        .join(down, down.c.takes_down == postings.c.id, isouter=True)
        .where(postings.c.takes_down.is_(None), down.c.id.is_(None))
        .order_by(postings.c.id)
    ):
        found.setdefault(bridge, []).append(legend)
    return found


def slips_of(connection: Connection, bridge: KnownBridge) -> list[dict[str, Any]]:
    """The crossing slips of a bridge."""
    found = connection.execute(
        select(slips).where(slips.c.bridge == bridge.id).order_by(slips.c.begins, slips.c.id)
    )
    return [dict(row) for row in found.mappings()]


def slip_given(connection: Connection, bridge: KnownBridge, number: int) -> dict[str, Any]:
    """A crossing slip of a bridge, with who gave it (`person`), when (`at`) and why (`reason`).

    Raises Unknown.
    """
    found = connection.execute(
        select(slips, events.c.at, events.c.person, events.c.reason)
        .join(events, events.c.number == slips.c.event)
        .where(slips.c.bridge == bridge.id, slips.c.id == number)
    ).mappings().first()
    if found is None:
        raise Unknown("slip", str(number), where=f"bridge {bridge.handle}")
    return dict(found)
