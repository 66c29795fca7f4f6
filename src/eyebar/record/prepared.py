"""A record's tree made ready for validation: addresses in one spelling, part sections filled in.

An override or a repair may give only what differs of a section; the rest is the group's. That is
done here, on plain texts, so that what is validated is always a whole section.
"""

from collections.abc import Iterator
from typing import Any

from pydantic import ValidationError

from eyebar.addresses import address, bars_of
from eyebar.errors import Fault, Unreadable
from eyebar.record.faults import fault_at
from eyebar.record.layout import letters_between, mirrored_bar, panel_count
from eyebar.record.sections import MAIN_SHAPES
from eyebar.record.tree import Node, Path, Plain
from eyebar.record.trusses import TrussesEntry

Block = dict[str, Any]
Bar = tuple[str, str]
"""Truss and bar."""


def spelled_out(tree: Node) -> Iterator[tuple[Path, Fault]]:
    """Puts the addresses of overrides into their one spelling; tells of those that are none.

    Two overrides of one part would be two overrides of one field: a fault. What is told of is
    taken out of the tree; its path comes with its fault.
    """
    overrides = tree.child("overrides")
    if overrides is None or not isinstance(overrides.value, dict):
        return
    spelled: dict[str, str] = {}
    for written in list(overrides.value):
        path: Path = ("overrides", written)
        try:
            part = str(address(written))
        except Unreadable as unreadable:
            yield path, fault_at(tree, path, unreadable.rule, got=unreadable.got,
                                 cure=unreadable.cure)
            del overrides.value[written]
            continue
        if part in spelled:
            yield path, fault_at(
                tree, path, f"overrides the same part as '{spelled[part]}' on "
                f"line {overrides.keys[spelled[part]] + 1}", got=written,
                cure="write one override for a part",
            )
            del overrides.value[written]
            continue
        spelled[part] = written
        overrides.value[part] = overrides.value.pop(written)
        overrides.keys.setdefault(part, overrides.keys[written])


def filled_in(record: Block) -> Block:
    """The record with the sections of overrides and decisions made whole.

    An override's from its group's; a repair's from what the part was built as, override and all.
    """
    sections = _built_sections(record)
    overrides = {
        part: _whole(entry, sections.get(_bar_of(part)))
        for part, entry in _block(record, "overrides").items()
    }
    sections |= {
        _bar_of(part): entry["section"]
        for part, entry in overrides.items() if isinstance(entry, dict) and "section" in entry
    }
    filled = dict(record)
    if isinstance(record.get("overrides"), dict):
        filled["overrides"] = overrides
    decisions = record.get("decisions")
    if isinstance(decisions, tuple):
        filled["decisions"] = tuple(
            _whole(entry, sections.get(_bar_of(entry.get("part"))))
            if isinstance(entry, dict) else entry
            for entry in decisions
        )
    return filled


def merged(section: Plain, differing: Plain) -> Plain:
    """A section with what differs laid over it; one of another shape takes its place whole."""
    if not (isinstance(section, dict) and isinstance(differing, dict)):
        return differing
    if any(shape in differing and shape not in section for shape in MAIN_SHAPES):
        return differing
    laid = dict(section)
    for key, value in differing.items():
        below = section.get(key)
        both = isinstance(below, dict) and isinstance(value, dict)
        laid[key] = {**below, **value} if both else value  # type: ignore[dict-item]
    return laid


def _whole(entry: Plain, section: Plain) -> Plain:
    if isinstance(entry, dict) and isinstance(entry.get("section"), dict):
        return {**entry, "section": merged(section, entry["section"])}
    return entry


def _bar_of(part: Plain) -> Bar:
    """(truss, bar) that an address names; two empty names where it names none."""
    try:
        found = address(part if isinstance(part, str) else "")
    except Unreadable:
        return "", ""
    return (found.truss, "-".join(found.bar)) if found.bar else ("", "")


def _built_sections(record: Block) -> dict[Bar, Plain]:
    """(truss, bar) -> section of its group, for whatever can be read of the groups."""
    try:
        trusses = TrussesEntry.model_validate(record.get("trusses"))
    except ValidationError:
        return {}
    count = panel_count(trusses) if trusses.mirrored else 0
    letters = letters_between(trusses)
    sections: dict[Bar, Plain] = {}
    for group in _block(record, "members").values():
        if not isinstance(group, dict):
            continue
        for truss in trusses.names if group.get("truss") is None else (group["truss"],):
            for bar in _bars(group.get("bars")):
                sections[truss, bar] = group.get("section")
                if count:
                    image = mirrored_bar(bar, count, letters)
                    sections.setdefault((truss, image), group.get("section"))
    return sections


def _block(record: Block, key: str) -> Block:
    block = record.get(key)
    return block if isinstance(block, dict) else {}


def _bars(runs: Plain) -> Iterator[str]:
    """The bars of a list of runs, as far as it can be read."""
    for run in runs if isinstance(runs, tuple) else ():
        try:
            yield from bars_of(run) if isinstance(run, str) else ()
        except Unreadable:
            continue
