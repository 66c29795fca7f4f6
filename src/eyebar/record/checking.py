"""What `eyebar check` says of a record: every fault, and what nobody has measured."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path as FilePath

from eyebar.errors import BadRecord, Fault
from eyebar.record.layout import bars_in, section_on
from eyebar.record.models import Record
from eyebar.record.reading import read_record
from eyebar.record.sizes import unmeasured, unmeasured_in


@dataclass(frozen=True, slots=True, kw_only=True)
class Unmeasured:
    """A size that nobody has measured: `part` is an address, `what` the word for the size.

    What is of no one part stands under `bridge`, `trusses` or `floor`.
    """

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
    found += [*_of_joints(record), *_of_blocks(record), *_of_no_bar(record)]
    return tuple(Unmeasured(part=part, what=what) for part, what in found
                 if (part, what) not in read)


JOINTS = ("splice", "pin plates", "rivet holes")
"""What a group says of the joints of its bars, in blocks of sizes."""


def _of_joints(record: Record) -> Iterator[tuple[str, str]]:
    """Splices, pin plates, jaws and rivet holes with a size that is not measured, bar by bar."""
    for truss in record.trusses.names:
        for bar, group in bars_in(record, truss).items():
            part = f"{truss}/{bar}"
            said = (record.overrides.get(part), record.members[group])
            entries = [entry for entry in said if entry is not None]
            for name in JOINTS:
                field = name.replace(" ", "_")
                blocks = [block for entry in entries if (block := getattr(entry, field))]
                if blocks:
                    yield from ((part, what) for what in unmeasured_in(name, blocks[0]))
            jaws = [entry.jaw for entry in entries if "jaw" in entry.model_fields_set]
            if jaws and jaws[0] is None:
                yield part, "jaw"


def _of_blocks(record: Record) -> Iterator[tuple[str, str]]:
    """Blocks at joints whose bearing is not measured."""
    for entry in record.joint_blocks.values():
        if entry.bearing is None:
            for truss in (entry.truss,) if entry.truss else record.trusses.names:
                yield from ((f"{truss}/{joint}/joint block", "bearing") for joint in entry.joints)


def _of_no_bar(record: Record) -> Iterator[tuple[str, str]]:
    """What of bridge, trusses, road and floor is not measured."""
    floor, stringers = record.floor, record.floor.stringers
    size = stringers.size
    skew_asked = record.ends.skew is None and "skew" in record.ends.model_fields_set
    asked: tuple[tuple[str, str, object], ...] = (
        ("bridge", "year", record.built),
        ("bridge", "skew", None if skew_asked else ""),
        ("trusses", "spacing", record.trusses.spacing),
        ("floor", "clear width", floor.clear_width),
        *(("floor", f"curb to {truss} truss", curb) for truss, curb in floor.curbs.items()),
        ("floor/deck", "deck thickness", floor.deck.thickness),
        ("floor/deck", "surfacing thickness", floor.surfacing is None or floor.surfacing.thickness),
        ("floor", "number of stringers", stringers.number),
        ("floor", "size of stringers", size is None or (size.width and size.thickness)),
        ("floor", "weight of stringers", stringers.weight),
        ("floor", "weight of floorbeams", floor.floorbeams.weight),
        ("floor", "weight of railing", floor.railing is None or floor.railing.weight),
        ("floor", "weight of bracing", floor.bracing is None or floor.bracing.weight),
        *(("floor", f"weight of {name}", line.weight)
          for name, line in {**floor.utilities, **floor.others}.items()),
    )
    yield from ((part, what) for part, what, known in asked if known is None)
