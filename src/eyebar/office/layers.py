"""Three layers, the last wins: shipped rows, the office's folder, the record's exceptions.

An office's rows stand in `values.toml` and `policy.toml` as [[row]]. A row either gives value, unit
and source, or only confirms the row below it: name and `confirmed` as a table {by, licence, date,
source}. An exception of a record has a value, a unit and a reason.
"""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from math import isfinite
from pathlib import Path
from types import MappingProxyType
from typing import Any

from eyebar.errors import BadRecord, Fault, did_you_mean
from eyebar.office.shipped import KEYS, Limits, held, shipped_rows
from eyebar.office.values import Values
from eyebar.record import Record
from eyebar.sources import Row, Value, confirmation, table_rows
from eyebar.terms import Combine, Level, Method
from eyebar.vehicles import vehicles_with

OFFICE_FILES = ("values.toml", "policy.toml")

Exceptions = Mapping[str, tuple[float | str | list[str], str, str]]
"""Name -> (value, unit, reason), as a record gives them."""
Wrong = tuple[tuple[str, ...], Fault]
"""(keys below the record's `values`, what is wrong there)."""


def office_values(folder: Path | None = None, *, exceptions: Exceptions | None = None) -> Values:
    """The values in force: shipped, then the office's folder, then the record's exceptions.

    Raises BadRecord with all faults of a layer at once: of the folder first, then of the record.
    """
    values, wrong = _in_force(folder, exceptions or {})
    if wrong:
        raise BadRecord("record", tuple(fault for _, fault in wrong))
    return values


def values_of(record: Record, folder: Path | None = None) -> tuple[Values, tuple[Fault, ...]]:
    """The values in force for a bridge, and what is wrong with the exceptions in its record.

    An exception with faults is left out. Raises BadRecord with all faults of the folder.
    """
    values, wrong = _in_force(folder, record.exceptions)
    return values, tuple(
        replace(fault, line=record.line_of("values", *keys)) for keys, fault in wrong
    )


def _in_force(folder: Path | None, exceptions: Exceptions) -> tuple[Values, list[Wrong]]:
    rows, limits = shipped_rows()
    vehicles = [
        name for name, one in vehicles_with(folder).items() if one.combine is not Combine.AREA
    ]
    office: dict[str, Value] = {}
    faults: list[Fault] = []
    for name, row in _folder_rows(folder):
        found = _row_faults(row.fields, limits, vehicles, office)
        place = name if row.line is None else f"{name}, line {row.line}"
        faults += [replace(one, where=f"{place} > {one.where}") for one in found]
        if not found:
            office[row.fields["name"]] = _laid_over(rows[row.fields["name"]], row.fields)
    with_office = {**rows, **office}
    if not faults and (wrong := _policy_fault(with_office)):
        faults.append(wrong)
    if faults:
        raise BadRecord(str(folder), tuple(faults))
    record, found_wrong = _record_rows(exceptions, with_office, limits, vehicles)
    in_force = {**with_office, **record}
    if not found_wrong and (wrong := _policy_fault(in_force)):
        name = next(name for name in ("posting.level", "posting.method") if name in record)
        found_wrong.append(((name,), replace(wrong, where=f"values > {wrong.where}")))
    return Values(
        rows=MappingProxyType(in_force),
        replaced=MappingProxyType({
            **{name: rows[name] for name in office},
            **{name: with_office[name] for name in record},
        }),
    ), found_wrong


def _folder_rows(folder: Path | None) -> list[tuple[str, Row]]:
    """(file, row) of an office's folder. Raises BadRecord where a file is not TOML."""
    if folder is None:
        return []
    return [
        (name, row)
        for name in OFFICE_FILES if (folder / name).is_file()
        for row in table_rows(
            (folder / name).read_bytes(), file=str(folder / name), heading="row"
        )
    ]


def _record_rows(
    exceptions: Exceptions, rows: Mapping[str, Value], limits: Mapping[str, Limits],
    vehicles: Iterable[str],
) -> tuple[dict[str, Value], list[Wrong]]:
    """The exceptions of a record as rows, and what is wrong with those that are left out."""
    record: dict[str, Value] = {}
    wrong: list[Wrong] = []
    for name, (value, unit, reason) in exceptions.items():
        fields = {"name": name, "value": value, "unit": unit, "source": reason, "confirmed": False}
        found = _row_faults(fields, limits, vehicles, record)
        wrong += [_of_record(name, one) for one in found]
        if not found:
            record[name] = replace(
                rows[name], value=held(value), source="the record of this bridge", layer="record",
                confirmed=False, confirmation=None, reason=reason,
            )
    return record, wrong


def _of_record(name: str, fault: Fault) -> Wrong:
    """The fault in the record's words: what a table calls source is a reason there."""
    key = fault.where.removeprefix(name).removeprefix(" > ")
    if key != "source":
        return (name, key), replace(fault, where=f"values > {fault.where}")
    where = f"values > {name} > reason"
    return (name, "reason"), replace(fault, where=where, cure="say why this bridge differs")


def _row_faults(
    fields: Mapping[str, Any], limits: Mapping[str, Limits], vehicles: Iterable[str],
    taken: Mapping[str, Value],
) -> list[Fault]:
    """What is wrong with a row that would be laid over a shipped one."""
    name = fields.get("name")
    if not isinstance(name, str) or not name:
        return [Fault(where="row", rule="has no name")]
    if name not in limits:
        return [Fault(where=name, rule="is no value of ours", cure=did_you_mean(name, limits))]
    if name in taken:
        return [Fault(where=name, rule="stands twice")]
    faults = [
        Fault(where=f"{name} > {key}", rule="is unknown", cure=did_you_mean(key, KEYS))
        for key in fields if key not in KEYS
    ]
    confirmed = fields.get("confirmed", False)
    faults += [
        replace(one, where=f"{name} > {one.where}") for one in confirmation(confirmed)[2]
    ]
    if "value" not in fields and isinstance(confirmed, Mapping):
        return faults
    return faults + _missing_or_wrong(name, fields, limits[name], vehicles)


def _missing_or_wrong(
    name: str, fields: Mapping[str, Any], limits: Limits, vehicles: Iterable[str]
) -> list[Fault]:
    shipped = shipped_rows()[0][name]
    faults = []
    if "value" not in fields:
        faults.append(Fault(where=f"{name} > value", rule="is missing"))
    if fields.get("unit") != shipped.unit:
        got = repr(fields["unit"]) if fields.get("unit") else ""
        faults.append(Fault(
            where=f"{name} > unit", got=got, cure=f"this value is kept in {shipped.unit!r}",
            rule="is not the unit of this value" if got else "is missing",
        ))
    elif "value" in fields and (rule := _wrong(fields["value"], shipped, limits, vehicles)):
        faults.append(Fault(where=f"{name} > value", rule=rule, got=repr(fields["value"])))
    source = fields.get("source") or _source_of(fields.get("confirmed"))
    if not isinstance(source, str) or not source.strip():
        faults.append(Fault(where=f"{name} > source", rule="is missing",
                            cure="say where the figure comes from"))
    return faults


def _wrong(value: Any, shipped: Value, limits: Limits, vehicles: Iterable[str]) -> str:
    """The rule that a value breaks; empty where it breaks none."""
    if isinstance(shipped.value, tuple):
        return _wrong_names(value, vehicles)
    if isinstance(shipped.value, str):
        if value in limits.choices:
            return ""
        return f"must be one of: {', '.join(limits.choices)}"
    if isinstance(value, bool) or not isinstance(value, int | float) or not isfinite(value):
        return "is not a number"
    if limits.least is not None and value < limits.least:
        return f"is under {limits.least:g} {shipped.unit}, the least that makes sense here"
    if limits.greatest is not None and value > limits.greatest:
        return f"is over {limits.greatest:g} {shipped.unit}, the greatest that makes sense here"
    return ""


def _wrong_names(value: Any, vehicles: Iterable[str]) -> str:
    if not (isinstance(value, list | tuple) and value and all(isinstance(v, str) for v in value)):
        return "is not a list of vehicles"
    known = tuple(vehicles)
    unknown = [name for name in value if name not in known]
    if unknown:
        return f"names no vehicle with {unknown[0]!r}; {did_you_mean(unknown[0], known)}"
    return "" if len(set(value)) == len(value) else "names a vehicle twice"


def _source_of(confirmed: object) -> object:
    return confirmed.get("source") if isinstance(confirmed, Mapping) else None


def _policy_fault(rows: Mapping[str, Value]) -> Fault | None:
    """The posting's method and level must go together; each may be right for itself."""
    method, level = rows["posting.method"].value, rows["posting.level"].value
    by_resistance = method == Method.LOAD_AND_RESISTANCE
    if by_resistance == (level == Level.LEGAL):
        return None
    choose = Level.LEGAL if by_resistance else f"{Level.INVENTORY} or {Level.OPERATING}"
    rule = f"does not go with posting.method {method!r}"
    return Fault(where="posting.level", got=repr(level), rule=rule, cure=f"choose {choose}")


def _laid_over(below: Value, fields: Mapping[str, Any]) -> Value:
    """The office's row in the place of the one below; a mere confirmation keeps its value."""
    confirmed, by_whom, _ = confirmation(fields.get("confirmed", False))
    if "value" not in fields:
        return replace(below, confirmed=confirmed, confirmation=by_whom, layer="office")
    return replace(
        below, value=held(fields["value"]), layer="office", confirmed=confirmed,
        confirmation=by_whom, source=fields.get("source") or str(_source_of(fields["confirmed"])),
    )
