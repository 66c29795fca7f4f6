"""What each change between two revisions does to the posting, and what all do together.

Each change is made alone in the older record and that is rated; the rest stays as it was. Changes
that only stand together cannot be rated alone, and the answer says so.
"""

import json
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from eyebar.bridge.timeline import latest_entry
from eyebar.documents.rate import rate_document
from eyebar.errors import EyebarError
from eyebar.record import Record, record_of
from eyebar.store.differing import Difference, applied, differences, plain_of
from eyebar.views.words import posting_line

MOST = 12
"""Changes that are rated one by one; each takes as long as a rating."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Effect:
    """The posting of one state: its line, and the load on which closing is decided [ton]."""

    line: str
    exact_tons: float | None
    refusal: str = ""
    """Why it could not be rated; empty where it was."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """Two revisions: the postings of both, and each change with its own effect or None."""

    on: date | None
    before: Effect
    after: Effect
    changes: tuple[tuple[Difference, Effect | None], ...]


def compared(before: str, after: str, *, office: Path | None, most: int = MOST) -> Compared:
    """Compare two texts of a record, each rated by the office's values of today.

    All are rated as on one day, the latest that either has an entry of, so that the day itself
    makes no difference.
    """
    found = differences(before, after)
    on = max(filter(None, (_latest(before), _latest(after))), default=None)
    old = plain_of(before)
    effects = [
        _effect(_text(applied(old, change)), on, office) if len(found) <= most else None
        for change in found
    ]
    return Compared(
        on=on, before=_effect(before, on, office), after=_effect(after, on, office),
        changes=tuple(zip(found, effects, strict=True)),
    )


def _latest(text: str) -> date | None:
    try:
        return latest_entry(record_of(text))
    except EyebarError:
        return None


def _text(plain: Any) -> str:
    """A record from its plain texts: JSON is YAML too."""
    return json.dumps(plain, ensure_ascii=False)


def _effect(text: str, on: date | None, office: Path | None) -> Effect:
    try:
        record: Record = record_of(text)
        posting = rate_document(record, on=on, office=office)["posting"]
    except EyebarError as refusal:
        return Effect(line="", exact_tons=None, refusal=str(refusal).splitlines()[0])
    return Effect(line=posting_line(posting), exact_tons=posting["exact_tons"])
