"""Tables and sentences of the register, from its documents."""

from dataclasses import dataclass

from eyebar.views import rounding
from eyebar.views.columns import Document, figure, text


@dataclass(frozen=True, slots=True, kw_only=True)
class RegisterRow:
    """One bridge of the register."""

    handle: str = text("Bridge", "The handle by which the register knows the bridge.")
    name: str = text("Name", "The name that its record gives it.")
    revision: str = figure("Rev", "Number of its latest revision.")
    latest_entry: str = text("Latest entry", "Day of the latest inspection or decision.")
    standing: str = text("Sign", "What the signs say that stand there now.")
    saved: str = text("Saved", "When the latest revision was saved, in universal time.")
    by: str = text("By", "Who saved it.")


@dataclass(frozen=True, slots=True, kw_only=True)
class RevisionRow:
    """One revision of a record."""

    revision: str = figure("Rev", "Its number, counted from 1.")
    saved: str = text("Saved", "When it was saved, in universal time.")
    by: str = text("By", "Who saved it.")
    reason: str = text("Why", "The reason that was given.")
    record: str = text("Record", "The beginning of the record's hash.")


@dataclass(frozen=True, slots=True, kw_only=True)
class InspectionRow:
    """One inspection of the latest revision."""

    date: str = text("Inspected", "The day.")
    by: str = text("By", "Who inspected.")
    codes: str = text("Codes", "Deck, superstructure and substructure, 0 to 9.")
    readings: str = figure("Readings", "How many readings were taken.")
    note: str = text("Note", "What was noted.")


@dataclass(frozen=True, slots=True, kw_only=True)
class DecisionRow:
    """One decision about a bridge."""

    date: str = text("Decided", "The day.")
    what: str = text("What", "What was decided.")
    part: str = text("Part", "The part it is about.")
    by: str = text("By", "Who decided.")
    note: str = text("Note", "What was noted.")


@dataclass(frozen=True, slots=True, kw_only=True)
class EventRow:
    """One event of the register."""

    number: str = figure("No.", "Its number in the chain.")
    at: str = text("When", "When it was saved, in universal time.")
    handle: str = text("Bridge", "The bridge it is about.")
    kind: str = text("What", "What was done.")
    person: str = text("By", "Who did it.")
    reason: str = text("Why", "The reason that was given.")
    chain: str = text("Hash", "The beginning of its hash in the chain.")


@dataclass(frozen=True, slots=True, kw_only=True)
class RegisterReadingRow:
    """One reading that was found."""

    handle: str = text("Bridge", "The bridge.")
    date: str = text("Date", "The day of the inspection.")
    part: str = text("Part", "The part, and the place on it.")
    what: str = text("What", "What was measured.")
    value: str = text("Value", "As it was written.")
    note: str = text("Note", "Gauge and note.")


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeRow:
    """One change between two revisions."""

    change: str = text("Change", "What was written and what is.")
    alone: str = text("Alone, the posting would be", "The posting if only this had changed.")


def register_rows(document: Document) -> tuple[RegisterRow, ...]:
    """The rows of a `register-list` document."""
    return tuple(
        RegisterRow(
            handle=one["handle"], name=one["name"], revision=str(one["revision"]),
            latest_entry=one["latest_entry"] or rounding.NOTHING,
            standing="; ".join(one["standing"]) or rounding.NOTHING, saved=_time(one["saved_at"]),
            by=one["saved_by"],
        )
        for one in document["bridges"]
    )


def revision_rows(document: Document) -> tuple[RevisionRow, ...]:
    """The revisions of a `register-bridge` document."""
    return tuple(
        RevisionRow(
            revision=str(one["revision"]), saved=_time(one["saved_at"]), by=one["saved_by"],
            reason=one["reason"], record=_short(one["record_hash"]),
        )
        for one in document["revisions"]
    )


def inspection_rows(document: Document) -> tuple[InspectionRow, ...]:
    """The inspections of a `register-bridge` document."""
    return tuple(
        InspectionRow(
            date=one["date"], by=one["inspector"],
            codes=" ".join(
                rounding.NOTHING if one[code] is None else str(one[code])
                for code in ("deck", "superstructure", "substructure")
            ),
            readings=str(one["readings"]), note=one["note"] or "",
        )
        for one in document["inspections"]
    )


def decision_rows(document: Document) -> tuple[DecisionRow, ...]:
    """The decisions of a `register-bridge` document."""
    return tuple(
        DecisionRow(
            date=one["date"], what=one["what"], part=one["part"] or "", by=one["decider"] or "",
            note=one["note"] or "",
        )
        for one in document["decisions"]
    )


def event_rows(document: Document) -> tuple[EventRow, ...]:
    """The rows of a `register-history` document."""
    return tuple(
        EventRow(
            number=str(one["number"]), at=_time(one["at"]), handle=one["handle"] or "",
            kind=one["kind"], person=one["person"], reason=one["reason"],
            chain=_short(one["chain"]),
        )
        for one in document["events"]
    )


def register_reading_rows(document: Document) -> tuple[RegisterReadingRow, ...]:
    """The rows of a `register-readings` document."""
    return tuple(
        RegisterReadingRow(
            handle=one["handle"], date=one["date"],
            part=" @ ".join(filter(None, (one["part"], one["place"]))),
            what=one["what"] if one["piece"] is None else f"{one['what']}, piece {one['piece']}",
            value=one["written"] + (f" ± {one['plus_minus']}" if one["plus_minus"] else ""),
            note="; ".join(filter(None, (one["gauge"], one["note"]))),
        )
        for one in document["readings"]
    )


def change_rows(document: Document) -> tuple[ChangeRow, ...]:
    """The changes of a `register-compare` document."""
    return tuple(
        ChangeRow(
            change=one["sentence"],
            alone="not rated alone" if one["alone"] is None else effect(one["alone"]),
        )
        for one in document["changes"]
    )


def effect(one: Document) -> str:
    """The posting of one state: its line, and the least safe load where there is one."""
    if one["refusal"]:
        return f"cannot be rated: {one['refusal']}"
    tons = one["exact_tons"]
    least = "" if tons is None else f" (least safe load {rounding.safe_tons(tons)} tons)"
    return f"{one['posting']}{least}"


def compared(document: Document) -> str:
    """The two postings of a `register-compare` document in one sentence."""
    before, after = effect(document["before"]), effect(document["after"])
    on = f"both as on {document['date']}" if document["date"] else "neither with a dated entry"
    return (
        f"Revision {document['from']}: {before}. Revision {document['to']}: {after};"
        f" {on}, by the values of today."
    )


def verdict(document: Document) -> str:
    """What a `register-verify` document says, in a sentence."""
    if document["sound"]:
        count = document["events"]
        return f"Sound: {count} event{'' if count == 1 else 's'}, every row as it was saved."
    return f"BROKEN after event {document['events']}: {document['broken']}."


def known_head(document: Document) -> str:
    """Where a head that stands on paper was found; empty where none was asked for."""
    if document["known_head"] is None:
        return ""
    return f"The head asked for is that of event {document['known_head']}."


def _short(found: str) -> str:
    return found[:10]


def _time(iso: str) -> str:
    return iso[:16].replace("T", " ")
