"""Who measures and who signs, by a file of the office: for a workbench on one machine."""

import tomllib
from dataclasses import dataclass
from pathlib import Path

from eyebar.errors import BadRecord, Fault
from eyebar.terms import Role


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """A person: the name, what they may do, and the licence of one who signs."""

    name: str
    role: Role
    licence: str = ""


def people_of(file: Path) -> tuple[Person, ...]:
    """The people in a TOML file of `[[person]]` with `name`, `role` and perhaps `licence`.

    Raises BadRecord with all its faults.
    """
    try:
        read = tomllib.loads(file.read_text(encoding="utf-8"))
    except (OSError, tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise BadRecord(str(file), (Fault(where="", rule=f"cannot be read: {error}"),)) from None
    found, faults = [], []
    entries = read.get("person")
    if not isinstance(entries, list) or not entries:
        faults.append(Fault(where="person", rule="is not there", cure="write [[person]] for each"))
        entries = []
    for number, entry in enumerate(entries, start=1):
        where = f"person {number}"
        unknown = set(entry) - {"name", "role", "licence"}
        faults += [Fault(where=f"{where} > {key}", rule="is no key of a person",
                         cure="name, role and licence are") for key in sorted(unknown)]
        role = entry.get("role")
        if not isinstance(entry.get("name"), str) or not entry["name"].strip():
            faults.append(Fault(where=where, rule="has no name", cure='write name = "..."'))
        elif role not in set(Role):
            faults.append(Fault(where=f"{where} > role", got=repr(role), rule="is no role",
                                cure=f"write one of {', '.join(Role)}"))
        elif role == Role.ENGINEER and not str(entry.get("licence", "")).strip():
            faults.append(Fault(where=where, rule="signs, and has no licence",
                                cure='write licence = "..."'))
        else:
            found.append(Person(name=entry["name"].strip(), role=Role(role),
                                licence=str(entry.get("licence", "")).strip()))
    if faults:
        raise BadRecord(str(file), faults)
    return tuple(found)
