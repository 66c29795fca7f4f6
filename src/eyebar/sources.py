"""Where a number comes from, whether anyone has confirmed it, and the tables numbers stand in."""

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from eyebar.errors import BadRecord, Fault

LARGEST_TABLE = 2_000_000
"""Bytes of the largest file of values or vehicles that is read."""

_AT_LINE = re.compile(r" *\(at line (\d+), column \d+\)")


@dataclass(frozen=True, slots=True, kw_only=True)
class Confirmation:
    """Who confirmed a value against their own copy of the standard, when, and by which page."""

    by: str
    licence: str
    on: date
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Value:
    """One row of a table, with its unit, its source and its standing.

    `name` is the dotted key (`live factor.legal.low traffic`), `layer` whence it came: `shipped`,
    `office` or `record`. `value` is a number, a word of policy, or a list of names. A value that is
    not `confirmed` is listed as such in every result that used it. `reason` is the record's, for an
    exception of one bridge.
    """

    name: str
    value: float | str | tuple[str, ...]
    unit: str
    source: str
    confirmed: bool
    layer: str = "shipped"
    confirmation: Confirmation | None = None
    reason: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One row of a TOML table as it was written, and the line on which it begins."""

    fields: Mapping[str, Any]
    line: int | None


def table_rows(content: bytes, *, file: str, heading: str) -> tuple[Row, ...]:
    """The rows `[[heading]]` of a TOML table.

    Raises BadRecord where the file is too large, not UTF-8, not TOML, or holds anything else.
    """
    text = _decoded(content, file)
    try:
        whole = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise _not_toml(file, str(error)) from None
    except RecursionError:
        raise BadRecord(file, (Fault(where="", rule="nested too deeply"),)) from None
    rows = whole.pop(heading, [])
    faults = [
        Fault(where=name, rule=f"has no place here; rows begin with [[{heading}]]")
        for name in whole
    ]
    if not (isinstance(rows, list) and all(isinstance(row, dict) for row in rows)):
        faults.append(Fault(where=heading, rule=f"is not a row; rows begin with [[{heading}]]"))
    if faults:
        raise BadRecord(file, tuple(faults))
    lines = _lines(text, heading)
    if len(lines) != len(rows):
        return tuple(Row(fields=row, line=None) for row in rows)
    return tuple(Row(fields=row, line=line) for row, line in zip(rows, lines, strict=True))


def _decoded(content: bytes, file: str) -> str:
    if len(content) > LARGEST_TABLE:
        limit = f"{LARGEST_TABLE / 1e6:g} MB"
        raise BadRecord(file, (Fault(where="", rule=f"is larger than {limit}, the limit"),))
    try:
        return content.decode("utf-8")
    except UnicodeDecodeError:
        raise BadRecord(file, (Fault(where="", rule="is not UTF-8 text"),)) from None


def _not_toml(file: str, said: str) -> BadRecord:
    found = _AT_LINE.search(said)
    line = int(found.group(1)) if found else None
    fault = Fault(where="", rule=f"is not TOML: {_AT_LINE.sub('', said)}", line=line)
    return BadRecord(file, (fault,))


def _lines(text: str, heading: str) -> list[int]:
    header = re.compile(rf"\s*\[\[\s*{re.escape(heading)}\s*\]\]")
    return [n for n, line in enumerate(text.splitlines(), start=1) if header.match(line)]


def confirmation(written: object) -> tuple[bool, Confirmation | None, tuple[Fault, ...]]:
    """A row's `confirmed`: true, false, or a table {by, licence, date, source}; and its faults."""
    if isinstance(written, bool):
        return written, None, ()
    wanted = ("by", "licence", "date", "source")
    if not isinstance(written, Mapping):
        cure = 'write {by = "...", licence = "...", date = 2026-05-04, source = "..."}'
        rule = "is neither true, false nor a table"
        return False, None, (Fault(where="confirmed", rule=rule, got=repr(written), cure=cure),)
    faults = [
        Fault(where=f"confirmed > {name}", rule="is missing" if name in wanted else "is unknown")
        for name in (*(w for w in wanted if w not in written), *(set(written) - set(wanted)))
    ]
    faults += [
        Fault(where=f"confirmed > {name}", rule="is not a text", got=repr(written[name]))
        for name in ("by", "licence", "source")
        if name in written and not _is_text(written[name])
    ]
    on = written.get("date")
    if "date" in written and type(on) is not date:
        faults.append(Fault(where="confirmed > date", rule="is not a date", got=repr(on),
                            cure="write it like 2026-05-04, without quotation marks"))
    if faults or type(on) is not date:
        return False, None, tuple(faults)
    known = Confirmation(
        by=written["by"], licence=written["licence"], on=on, source=written["source"]
    )
    return True, known, ()


def _is_text(written: object) -> bool:
    return isinstance(written, str) and bool(written.strip())
