"""The rows that come with the package: every *.toml beside this module, read once.

A shipped row says, beside its value, what may be laid over it: `least` and `greatest` of a number,
`choices` of a word.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from eyebar.errors import BadRecord, Fault
from eyebar.office.values import Values
from eyebar.sources import Value, confirmation, table_rows

KEYS = ("name", "value", "unit", "source", "confirmed")
BOUNDS = ("least", "greatest", "choices")


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """What an office may put in a row's place."""

    least: float | None = None
    greatest: float | None = None
    choices: tuple[str, ...] = ()


@cache
def shipped_rows() -> tuple[Mapping[str, Value], Mapping[str, Limits]]:
    """The shipped rows and their limits by name; frozen. Raises BadRecord on a faulty table."""
    rows: dict[str, Value] = {}
    limits: dict[str, Limits] = {}
    tables = (one for one in files("eyebar.office").iterdir() if one.name.endswith(".toml"))
    for table in sorted(tables, key=lambda one: one.name):
        for row in table_rows(table.read_bytes(), file=table.name, heading="row"):
            fault = _fault(row.fields, rows)
            if fault:
                raise BadRecord(table.name, (Fault(where="row", rule=fault, line=row.line),))
            name = row.fields["name"]
            rows[name] = _value(row.fields)
            limits[name] = Limits(
                least=row.fields.get("least"), greatest=row.fields.get("greatest"),
                choices=tuple(row.fields.get("choices", ())),
            )
    return MappingProxyType(rows), MappingProxyType(limits)


def shipped_values() -> Values:
    """The shipped rows alone, none used yet."""
    return Values(rows=shipped_rows()[0])


def _fault(fields: Mapping[str, Any], rows: Mapping[str, Value]) -> str:
    missing = [name for name in KEYS if name not in fields]
    unknown = sorted(set(fields) - {*KEYS, *BOUNDS})
    if missing or unknown:
        return f"{', '.join(missing or unknown)} {'missing' if missing else 'unknown'}"
    return f"{fields['name']} stands twice" if fields["name"] in rows else ""


def _value(fields: Mapping[str, Any]) -> Value:
    confirmed, by_whom, _ = confirmation(fields["confirmed"])
    return Value(
        name=fields["name"], value=held(fields["value"]), unit=fields["unit"],
        source=fields["source"], confirmed=confirmed, confirmation=by_whom,
    )


def held(written: Any) -> float | str | tuple[str, ...]:
    """A value as rows hold it: a whole number as float, a list as tuple."""
    if isinstance(written, list | tuple):
        return tuple(written)
    return written if isinstance(written, str) else float(written)
