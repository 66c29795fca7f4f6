"""The `history` document: the form of each truss from its lines alone, and what tells its age."""

from datetime import date
from pathlib import Path
from typing import Any

from eyebar.bridge.parts import Truss
from eyebar.documents.opened import Opened, closing, heading, opened
from eyebar.history import Detail, Recognised, age, lines_of, recognised
from eyebar.history.age import usual_spans
from eyebar.record import Record
from eyebar.terms import Form

CAUTIONS = (
    "The years are common practice, not law: they are a hint to the historian, and no date.",
    "Whether a bridge is of historic worth is for the historian and the state's office to say.",
)


def history_document(
    record: Path | Record, *, on: date | None = None, office: Path | None = None
) -> dict[str, Any]:
    """What a bridge is and how old it may be. Raises BadRecord; OutOfRange where bars do not meet.
    """
    return history_of(opened(record, on=on, office=office))


def history_of(one: Opened) -> dict[str, Any]:
    """The document of a record that has been opened. Raises as `history_document` does."""
    found = {truss.name: _recognised(truss) for truss in one.bridge.trusses}
    joined = (group.ends for group in one.record.members.values() if group.ends)
    of_age = age(one.bridge, (each.form for each in found.values()), joined)
    return {
        **heading("history", 1, one),
        "trusses": [
            _truss(truss, found[truss.name], one.record.trusses.form)
            for truss in one.bridge.trusses
        ],
        "age": {
            "built": one.bridge.built, "from": of_age.first, "to": of_age.last,
            "details": [_detail(detail) for detail in of_age.details],
            "contradictions": list(of_age.contradictions),
        },
        "cautions": list(CAUTIONS),
        **closing(one),
    }


def _recognised(truss: Truss) -> Recognised:
    return recognised(lines_of(
        truss.joints, (bar.ends for bar in (*truss.bars, *truss.broken))
    ))


def _truss(truss: Truss, found: Recognised, recorded: Form | None) -> dict[str, Any]:
    """One truss: the form from its lines, and the record's own word for it."""
    along = [x for x, _ in truss.joints.values()]
    usual = usual_spans().get(str(found.form)) if found.form else None
    return {
        "truss": truss.name,
        "form": found.form,
        "recorded_form": recorded,
        "features": list(found.features),
        "doubts": list(found.doubts),
        "same_lines": list(found.same_lines),
        "span_ft": (max(along) - min(along)) / 12.0,
        "usual_span_ft": usual and [usual.least_ft, usual.greatest_ft],
    }


def _detail(detail: Detail) -> dict[str, Any]:
    return {
        "detail": detail.says, "from": detail.first, "to": detail.last,
        "source": detail.source, "confirmed": detail.confirmed,
    }
