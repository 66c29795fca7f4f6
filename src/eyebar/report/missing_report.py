"""The paper of a bridge that cannot be rated, instead of a report that only looks whole."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path

from eyebar import __version__
from eyebar.documents.gathered import Gathered
from eyebar.documents.opened import CAUTION, NOT_ASSUMED_SOUND
from eyebar.errors import BadRecord, EyebarError
from eyebar.report.typeset import Paper, typeset
from eyebar.views import report_missing, report_words
from eyebar.views.blocks import Section, plainly
from eyebar.views.sheet_words import long_date


def rated_at_all(of: Gathered) -> bool:
    """Whether any part of the bridge is rated."""
    return of.rate["posting"]["governed_by"] is not None


def missing_report(of: Gathered, dated: date | None) -> bytes:
    """What a record without faults still needs. Raises MissingLibrary."""
    rate = of.rate
    return _paper(
        rate["bridge"]["name"], report_missing.of_documents(rate, of.describe),
        under=f"{report_words.as_on(rate)}", dated=dated or date.fromisoformat(rate["date"]),
        claims=(f"record={rate['record_hash']}", f"eyebar={rate['version']}"),
    )


def refused_report(record: Path, refusal: EyebarError, dated: date) -> bytes:
    """The faults of a record, or why its trusses cannot be rated. Raises MissingLibrary."""
    faults = refusal.faults if isinstance(refusal, BadRecord) else ()
    sections = (
        report_missing.of_faults(faults) if faults else report_missing.of_refusal(str(refusal))
    )
    return _paper(record.name, sections, under="", dated=dated, claims=(f"eyebar={__version__}",))


def _paper(
    name: str, sections: Sequence[Section], *, under: str, dated: date, claims: tuple[str, ...]
) -> bytes:
    return typeset(Paper(
        template="plain.typ",
        content={
            "kind": report_missing.TITLE, "name": name, "under": under,
            "verdict": report_missing.NOT_RATED,
            "cautions": [CAUTION, NOT_ASSUMED_SOUND, report_missing.NOT_SIGNED],
            "sections": plainly(sections),
            "foot": f"{name} · {long_date(dated.isoformat())} · eyebar {__version__}",
            "page_word": report_words.PAGE, "of_word": report_words.OF,
        },
        title=f"{report_missing.TITLE}: {name}",
        claims=claims, dated=dated,
    ))
