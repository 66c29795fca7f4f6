"""What `eyebar check` says of a record: every fault, and what nobody has measured."""

from dataclasses import dataclass
from datetime import date
from pathlib import Path as FilePath

from eyebar.errors import BadRecord, Fault
from eyebar.record.layout import bars_in, section_on
from eyebar.record.models import Record
from eyebar.record.reading import read_record
from eyebar.record.sizes import unmeasured


@dataclass(frozen=True, slots=True, kw_only=True)
class Unmeasured:
    """A size that nobody has measured: `part` is an address, `what` the word for the size."""

    part: str
    what: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """What a check found. `record` is None when there are faults."""

    file: str
    record: Record | None
    faults: tuple[Fault, ...]
    not_measured: tuple[Unmeasured, ...]


def checked(path: FilePath, *, today: date | None = None) -> Checked:
    """The faults of a record's file and, where there are none, what is not measured."""
    try:
        record = read_record(path, today=today)
    except BadRecord as bad:
        return Checked(file=bad.file, record=None, faults=bad.faults, not_measured=())
    return Checked(
        file=record.file, record=record, faults=(), not_measured=not_measured(record)
    )


def not_measured(record: Record) -> tuple[Unmeasured, ...]:
    """Every size that a strength or a weight needs and that no one has measured, part by part.

    A size that was not known when the record was begun and has been read since is not listed.
    """
    read = {
        (reading.part.part, str(reading.what))
        for inspection in record.inspections for reading in inspection.readings
    }
    found = [
        (f"{truss}/{bar}", what)
        for truss in record.trusses.names
        for bar, group in bars_in(record, truss).items()
        for what in unmeasured(section_on(record, f"{truss}/{bar}", group, date.max))
    ]
    floor = record.floor
    if floor.deck.thickness is None:
        found.append(("floor/deck", "deck thickness"))
    if floor.surfacing is not None and floor.surfacing.thickness is None:
        found.append(("floor/deck", "surfacing thickness"))
    return tuple(Unmeasured(part=part, what=what) for part, what in found
                 if (part, what) not in read)
