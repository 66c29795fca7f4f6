"""Text -> validated record: all faults at once, each with its line."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from pathlib import Path as FilePath

from pydantic import ValidationError

from eyebar.addresses import Address
from eyebar.errors import BadRecord, Fault, nearest
from eyebar.record.consistency import inconsistencies
from eyebar.record.faults import fault_at
from eyebar.record.known import Known
from eyebar.record.models import Record, Source
from eyebar.record.plausible import implausible
from eyebar.record.prepared import Block, bases, filled_in, spelled_out
from eyebar.record.salvaged import salvaged
from eyebar.record.told import Found, all_faults, belongs, found_by, validation_faults
from eyebar.record.tree import Node, tree_of

LARGEST = 2_000_000
"""Bytes of a record; a larger one is refused before it is looked at."""
FORMAT = 1
"""The number of the format that is written today; it stands in the record's first line."""
FORMAT_KEY = "eyebar"

NEEDED = tuple(
    str(key.alias) for key in Record.model_fields.values() if key.is_required()
)
"""The keys that no record can do without."""

READERS: Mapping[int, Callable[[Block], Block]] = {1: filled_in}
"""Format -> what makes its plain texts those of today's models. Old ones are never taken out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Examined:
    """A record as far as it can be read, and all its faults.

    With faults `record` is only good for looking for more of them: it has holes (record/doubt.py),
    and is None where too little is left. `unplaced` are those of the faults that speak of a bar
    which no group has, with the bar: a form of truss may tell better what is wrong there.
    """

    file: str
    record: Record | None
    faults: tuple[Fault, ...] = ()
    unplaced: Mapping[Fault, Address] = field(default_factory=dict)


def read_record(path: FilePath, *, today: date | None = None) -> Record:
    """The record in a file. Raises BadRecord with all its faults."""
    return _sound(examined_file(path, today=today))


def record_of(content: str | bytes, *, file: str = "record", today: date | None = None) -> Record:
    """The record that a text holds. Raises BadRecord with all its faults.

    `today` is the day after which no entry may be dated; left out, the day it is here.
    """
    return _sound(examined(content, file=file, today=today))


def examined_file(path: FilePath, *, today: date | None = None) -> Examined:
    """The record in a file and its faults. Raises BadRecord where there is none to look into."""
    file = str(path)
    try:
        size = path.stat().st_size
        if size > LARGEST:
            raise BadRecord(file, (_too_large(size),))
        content = path.read_bytes()
    except OSError as error:
        fault = Fault(where="", rule=f"cannot be read: {error.strerror or error}",
                      cure="look at the name of the file")
        raise BadRecord(file, (fault,)) from None
    return examined(content, file=file, today=today)


def examined(
    content: str | bytes, *, file: str = "record", today: date | None = None
) -> Examined:
    """The record in a text and its faults. Raises BadRecord where there is none to look into."""
    text = _decoded(content, file)
    tree, faults = tree_of(text)
    if tree is None or not isinstance(tree.value, dict):
        if not faults:
            faults = (Fault(where="", rule="is not a record: it holds no keys",
                            cure=f"begin it with '{FORMAT_KEY}: {FORMAT}'", line=1),)
        raise BadRecord(file, faults)
    number, unread = _format_number(tree, file)
    missing = tuple(key for key in NEEDED if key not in tree.keys)
    astray = tuple(
        (path, fault) for path, fault in spelled_out(tree)
        if not any(belongs(path[1:], key) for key in missing)
    )
    source = Source(
        file=file, text=text, tree=tree,
        holes=frozenset((*tree.doubled, *(path for path, _ in astray))),
    )
    block = READERS[number](_plain_block(tree))
    return _validated(
        {**block, FORMAT_KEY: str(number)}, source, today,
        told=(*faults, *unread, *(fault for _, fault in astray)),
    )


def _sound(found: Examined) -> Record:
    if found.record is None or found.faults:
        raise BadRecord(found.file, found.faults)
    return found.record


def _decoded(content: str | bytes, file: str) -> str:
    """The text of a record's bytes. Raises BadRecord where it is too large or not UTF-8."""
    encoded = content.encode("utf-8", "surrogatepass") if isinstance(content, str) else content
    if len(encoded) > LARGEST:
        raise BadRecord(file, (_too_large(len(encoded)),))
    try:
        return encoded.decode("utf-8")
    except UnicodeDecodeError as error:
        line = encoded[:error.start].count(b"\n") + 1
        fault = Fault(where="", rule="is not written in UTF-8", line=line,
                      got=f"'{encoded[error.start:error.start + 1].hex()}' (hexadecimal)",
                      cure="save the file as UTF-8")
        raise BadRecord(file, (fault,)) from None


def _too_large(size: int) -> Fault:
    return Fault(
        where="", got=f"{size:,} bytes", rule=f"is more than the limit of {LARGEST:,}",
        cure="keep photographs and reports in files of their own",
    )


def _format_number(tree: Node, file: str) -> tuple[int, tuple[Fault, ...]]:
    """The format's number, and what is wrong with it; the newest where it cannot be told.

    Raises BadRecord for a newer format, of which nothing else is known.
    """
    assert isinstance(tree.value, dict)
    first = next(iter(tree.keys), "")
    if FORMAT_KEY not in tree.keys and nearest(first, (FORMAT_KEY,)):
        return FORMAT, ()  # told as a key that is misspelt
    if first != FORMAT_KEY:
        rule = "does not begin with the number of its format"
        cure = f"write '{FORMAT_KEY}: {FORMAT}' as its first line"
        return FORMAT, (Fault(where="", rule=rule, cure=cure, line=1),)
    written = tree.value[FORMAT_KEY].value
    known = isinstance(written, str) and written.isascii() and written.isdigit()
    number = int(str(written)[:9]) if known else -1
    if number in READERS:
        return number, ()
    rule, cure = "is not a number of a format", f"write '{FORMAT_KEY}: {FORMAT}'"
    if number > FORMAT:
        rule = f"is a newer format than this program reads, which is {FORMAT}"
        cure = "read it with a newer eyebar"
    elif number >= 0:
        rule = "is a format that never was; the first is 1"
    fault = fault_at(tree, (FORMAT_KEY,), rule, got=written, cure=cure)
    if number > FORMAT:
        raise BadRecord(file, (fault,))
    return FORMAT, (fault,)


def _plain_block(tree: Node) -> Block:
    plain = tree.plain()
    assert isinstance(plain, dict)
    return plain


def _validated(
    block: Block, source: Source, today: date | None, *, told: tuple[Fault, ...]
) -> Examined:
    """The record and its faults, those `told` already among them.

    What can still be checked of a record with faults is checked, so that all are told at once.
    """
    tree = source.tree
    found: tuple[Found, ...] = ()
    assert tree is not None
    record: Record | None
    try:
        record = Record.model_validate(block, context=source)
    except ValidationError as error:
        found = tuple(found_by(error))
        record, later = salvaged(block, error, source)
        told = (*told, *validation_faults(found, tree, bases(_plain_block(tree))), *later)
    known = None if record is None else Known(record=record)
    if known is not None:
        day = today or datetime.now().astimezone().date()
        told = (*told, *known.once((*inconsistencies(known), *implausible(known, day))))
    return Examined(
        file=source.file, record=record, faults=told or tuple(all_faults(found, tree)),
        unplaced={} if known is None else known.unplaced,
    )
