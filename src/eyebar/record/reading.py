"""Text -> validated record: all faults at once, each with its line."""

from collections.abc import Callable, Iterator, Mapping
from datetime import date, datetime
from pathlib import Path as FilePath

from pydantic import ValidationError

from eyebar.errors import BadRecord, Fault
from eyebar.record.consistency import Known, inconsistencies
from eyebar.record.faults import fault_at, validation_faults
from eyebar.record.models import Record, Source
from eyebar.record.plausible import implausible
from eyebar.record.prepared import Block, filled_in, spelled_out
from eyebar.record.salvaged import salvaged
from eyebar.record.tree import Node, tree_of

LARGEST = 2_000_000
"""Bytes of a record; a larger one is refused before it is looked at."""
FORMAT = 1
"""The number of the format that is written today; it stands in the record's first line."""
FORMAT_KEY = "eyebar"

READERS: Mapping[int, Callable[[Block], Block]] = {1: filled_in}
"""Format -> what makes its plain texts those of today's models. Old ones are never taken out."""


def read_record(path: FilePath, *, today: date | None = None) -> Record:
    """The record in a file. Raises BadRecord with all its faults."""
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
    return record_of(content, file=file, today=today)


def record_of(content: str | bytes, *, file: str = "record", today: date | None = None) -> Record:
    """The record that a text holds. Raises BadRecord with all its faults.

    `today` is the day after which no entry may be dated; left out, the day it is here.
    """
    text = _decoded(content, file)
    tree, faults = tree_of(text)
    if tree is None or not isinstance(tree.value, dict):
        if not faults:
            faults = (Fault(where="", rule="is not a record: it holds no keys",
                            cure=f"begin it with '{FORMAT_KEY}: {FORMAT}'", line=1),)
        raise BadRecord(file, faults)
    reader = READERS[_format_number(tree, file)]
    faults = (*faults, *spelled_out(tree))
    source = Source(file=file, text=text, tree=tree)
    record, found = _validated(reader(_plain_block(tree)), source, today)
    if faults or found or record is None:
        in_order = sorted((*faults, *found), key=lambda fault: fault.line or 0)
        raise BadRecord(file, tuple(dict.fromkeys(in_order)))
    return record


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


def _format_number(tree: Node, file: str) -> int:
    """The format's number. Raises BadRecord where it is missing, unknown, or not first."""
    assert isinstance(tree.value, dict)
    first = next(iter(tree.keys), "")
    if first != FORMAT_KEY:
        rule = "does not begin with the number of its format"
        raise BadRecord(file, (Fault(
            where="", rule=rule, cure=f"write '{FORMAT_KEY}: {FORMAT}' as its first line", line=1,
        ),))
    written = tree.value[FORMAT_KEY].value
    known = isinstance(written, str) and written.isascii() and written.isdigit()
    number = int(str(written)[:9]) if known else -1
    if number in READERS:
        return number
    rule, cure = "is not a number of a format", f"write '{FORMAT_KEY}: {FORMAT}'"
    if number > FORMAT:
        rule = f"is a newer format than this program reads, which is {FORMAT}"
        cure = "read it with a newer eyebar"
    elif number >= 0:
        rule = "is a format that never was; the first is 1"
    raise BadRecord(
        file, (fault_at(tree, (FORMAT_KEY,), rule, got=written, cure=cure),)
    )


def _plain_block(tree: Node) -> Block:
    plain = tree.plain()
    assert isinstance(plain, dict)
    return plain


def _validated(
    block: Block, source: Source, today: date | None
) -> tuple[Record | None, tuple[Fault, ...]]:
    """The record, and what is wrong with it; no record where its blocks are not in order.

    What can still be checked of a record with faults is checked, so that all are told at once.
    """
    tree = source.tree
    assert tree is not None
    day = today or datetime.now().astimezone().date()
    try:
        record = Record.model_validate(block, context=source)
    except ValidationError as error:
        rest, kept = salvaged(block, error, source)
        told = tuple(validation_faults(error, tree))
        return None, (*told, *(_agreement(Known(record=rest, tree=tree, kept=kept), day)
                               if rest else ()))
    return record, tuple(_agreement(Known(record=record, tree=tree), day))


def _agreement(known: Known, day: date) -> Iterator[Fault]:
    """Where the blocks of a record contradict each other, or cannot be true."""
    yield from inconsistencies(known)
    yield from implausible(known, day)
