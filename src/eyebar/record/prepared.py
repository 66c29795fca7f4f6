"""A record's tree made ready for validation: addresses in one spelling, part sections filled in.

An override or a repair may give only what differs of a section; the rest is the group's. That is
done here, on plain texts, so that what is validated is always a whole section.
"""

from collections.abc import Callable, Iterator, Mapping
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
Section = tuple[Path, Plain]
"""A section, and where it stands."""


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
        _bar_of(part): (("overrides", part, "section"), entry["section"])
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


def bases(record: Block) -> Mapping[Path, Path | None]:
    """Path of a section of an override or a decision -> that of the one it was filled in from."""
    sections = _built_sections(record)
    found: dict[Path, Path | None] = {}
    for part, entry in _block(record, "overrides").items():
        if isinstance(entry, dict) and "section" in entry and _may_be_bar(part):
            base = sections.get(_bar_of(part))
            found["overrides", part, "section"] = base and base[0]
            sections[_bar_of(part)] = (("overrides", part, "section"), entry["section"])
    decisions = record.get("decisions")
    for i, entry in enumerate(decisions if isinstance(decisions, tuple) else ()):
        if isinstance(entry, dict) and "section" in entry and _may_be_bar(entry.get("part")):
            base = sections.get(_bar_of(entry.get("part")))
            found["decisions", i, "section"] = base and base[0]
    return found


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


def _whole(entry: Plain, base: Section | None) -> Plain:
    if base is not None and isinstance(entry, dict) and isinstance(entry.get("section"), dict):
        return {**entry, "section": merged(base[1], entry["section"])}
    return entry


def _bar_of(part: Plain) -> Bar:
    """(truss, bar) that an address names; two empty names where it names none."""
    try:
        found = address(part if isinstance(part, str) else "")
    except Unreadable:
        return "", ""
    return (found.truss, "-".join(found.bar)) if found.bar else ("", "")


def _may_be_bar(part: Plain) -> bool:
    """Whether an address names a bar, or cannot be read."""
    try:
        return address(part if isinstance(part, str) else "").bar is not None
    except Unreadable:
        return True


def _built_sections(record: Block) -> dict[Bar, Section]:
    """(truss, bar) -> section of its group, for whatever can be read of the groups."""
    names, image_of = _trusses(record.get("trusses"))
    sections: dict[Bar, Section] = {}
    for name, group in _block(record, "members").items():
        if not isinstance(group, dict):
            continue
        section = (("members", name, "section"), group.get("section"))
        own = group.get("truss")
        for truss in names if own is None else (str(own),):
            for bar in _bars(group.get("bars")):
                sections[truss, bar] = section
                sections.setdefault((truss, image_of(bar)), section)
    return sections


def _trusses(block: Plain) -> tuple[tuple[str, ...], Callable[[str], str]]:
    """The names of the trusses, and what is the mirror image of a bar, as far as can be read."""
    try:
        trusses = TrussesEntry.model_validate(block)
    except ValidationError:
        names = block.get("names") if isinstance(block, dict) else None
        names = names if isinstance(names, tuple) else ()
        return tuple(name for name in names if isinstance(name, str)), str
    if not trusses.mirrored:
        return trusses.names, str
    count, letters = panel_count(trusses), letters_between(trusses)
    return trusses.names, lambda bar: mirrored_bar(bar, count, letters)


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
