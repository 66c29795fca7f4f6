"""What is left of a record with faults in it, so that the rest can be checked in the same breath.

A block that cannot be validated is taken out, or gives way to a stub where the record cannot do
without. Nothing is ever computed from it: the record is refused in any case.
"""

from collections.abc import Mapping
from typing import Any

from pydantic import ValidationError

from eyebar.record.models import Record, Source
from eyebar.record.prepared import Block
from eyebar.record.tree import Path

STUB = "a stub in the place of something with faults"
"""The source of a section, and the name of a material, about which nothing is known."""

STUBS: Mapping[str, Any] = {
    "section": {"given": {"area": "1 in2", "source": STUB}},
    "material": STUB,
    "kind": "top chord",
    "name": STUB,
    "built": "1780",
    "ends": {"zero": STUB, "other": STUB},
    "materials": {"metal": "steel"},
    "floor": {
        "clear width": "1 ft", "curbs": {},
        "deck": {"kind": "plank", "thickness": "1 in", "weight": "1 lb/ft2"},
        "stringers": {"number": "200", "weight": "1 lb/ft", "material": "timber"},
        "floorbeams": {"weight": "1 lb"}, "surface": "rough",
    },
}
"""Key -> what stands in for a block with faults; everything else is simply taken out."""

MOST_ROUNDS = 4
"""Taking one fault out may bring another to light; after so many rounds the rest is left."""

Kept = Mapping[Path, tuple[int, ...]]
"""Path of a list -> the places that its remaining entries had at first."""


def salvaged(
    block: Block, error: ValidationError, source: Source
) -> tuple[Record | None, Kept]:
    """The record without what is at fault, and what was kept of its lists.

    No record where too little is left: without trusses and the bars of every group, nothing that
    is said of a part can be checked.
    """
    kept: Kept = {}
    for _ in range(MOST_ROUNDS):
        for found in error.errors(include_url=False):
            place = _taken(as_at_first(found["loc"], kept))
            if not place:
                return None, {}
            block = _without(block, place)
        whole, kept = _closed(block)
        try:
            return Record.model_validate(whole, context=source), kept
        except ValidationError as again:
            error = again
    return None, {}


def as_at_first(path: Path, kept: Kept) -> Path:
    """The path of an entry before others were taken out of its list."""
    found: Path = ()
    for key in path:
        places = kept.get(found)
        at = places[key] if places is not None and isinstance(key, int) else key
        found = (*found, at)
    return found


def _taken(path: Path) -> Path:
    """What to take out for a fault: one reading, one section, one decision; empty where no use."""
    head, rest = path[:1], path[1:]
    if head == ("trusses",) or (head == ("members",) and (len(rest) < 2 or rest[1] in _NEEDED)):
        return ()
    if head == ("members",):
        return path[:3]
    if head == ("inspections",):
        return path[:4] if rest[1:2] == ("readings",) and len(path) > 3 else path[:2]
    if head in (("decisions",), ("overrides",), ("values",), ("materials",)):
        return path[:2]
    return path[:1]


_NEEDED = ("bars", "truss")
"""What of a group no check of its parts can do without."""


def _without(block: Any, place: Path) -> Any:
    """The block with a hole, or a stub, at the place."""
    key, below = place[0], place[1:]
    if isinstance(block, tuple) and isinstance(key, int):
        entry = _without(block[key], below) if below else None
        return (*block[:key], entry, *block[key + 1:])
    if not isinstance(block, dict):
        return block
    if below and key == "materials":
        return {**block, key: {**block[key], below[0]: STUBS["materials"]}}
    if below:
        return {**block, key: _without(block.get(str(key)), below)}
    left = {name: value for name, value in block.items() if name != key}
    return {**left, key: STUBS[str(key)]} if key in STUBS else left


def _closed(block: Block) -> tuple[Block, Kept]:
    """The block with the holes of its lists closed, and what was kept of each list."""
    kept: dict[Path, tuple[int, ...]] = {}
    whole = dict(block)
    for name in ("inspections", "decisions"):
        entries = block.get(name)
        if isinstance(entries, tuple):
            kept[name,] = tuple(i for i, entry in enumerate(entries) if entry is not None)
            whole[name] = tuple(_readings_closed(entries[i], (name, i), kept) for i in kept[name,])
    return whole, kept


def _readings_closed(entry: Any, path: Path, kept: dict[Path, tuple[int, ...]]) -> Any:
    readings = entry.get("readings") if isinstance(entry, dict) else None
    if not isinstance(readings, tuple):
        return entry
    places = tuple(i for i, reading in enumerate(readings) if reading is not None)
    kept[*path, "readings"] = places
    return {**entry, "readings": tuple(readings[i] for i in places)}
