"""What is left of a record with faults in it, so that the rest can be checked in the same breath.

What cannot be validated is taken out, or gives way to a stub where the record cannot do without.
Its path is one of the record's holes, by which later checks know what they must not judge. Nothing
is ever computed from such a record: it is refused in any case.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from eyebar.addresses import bars_of
from eyebar.errors import Fault, Unreadable, nearest
from eyebar.record.doubt import NOT_ITS_SHAPE, shapes
from eyebar.record.faults import keys_at
from eyebar.record.models import Kept, Record, Source
from eyebar.record.prepared import Block
from eyebar.record.told import found_by, validation_faults
from eyebar.record.tree import Path

STUB = "a stub"
"""What stands for a name or a text that has faults."""

_SECTION = {"given": {"area": "1 in2", "source": STUB}}
_GROUP = {"kind": "top chord", "bars": ("U1-U2",), "section": _SECTION, "material": STUB}
_SHAPE = {"form": "Pratt", "panels": "3 at 1 ft", "depth": "1 ft"}
_TRUSSES = {
    "names": (STUB,), "spacing": "1 ft", "bearings": {"zero": "fixed", "other": "free"}, **_SHAPE,
}
_FLOOR = {
    "clear width": "1 ft", "curbs": {}, "surface": "rough",
    "deck": {"kind": "plank", "thickness": "1 in", "weight": "1 lb/ft2"},
    "stringers": {"number": "200", "weight": "1 lb/ft", "material": "timber"},
    "floorbeams": {"weight": "1 lb"},
}
ANY = "*"
"""Any key, in the path of a stub."""
STUBS: Mapping[Path, Any] = {
    ("eyebar",): "1", ("name",): STUB, ("built",): "1780",
    ("ends",): {"zero": STUB, "other": STUB},
    ("trusses",): _TRUSSES, **{("trusses", key): stub for key, stub in _TRUSSES.items()},
    ("materials",): {STUB: {"metal": "steel"}}, ("materials", ANY): {"metal": "steel"},
    ("members",): {STUB: _GROUP},
    **{("members", ANY, key): stub for key, stub in _GROUP.items() if key != "bars"},
    ("floor",): _FLOOR, **{("floor", key): stub for key, stub in _FLOOR.items()},
    ("overrides", ANY, "reason"): STUB,
    ("inspections", ANY, "by"): STUB, ("inspections", ANY, "date"): "2200-01-01",
    ("decisions", ANY, "date"): "2200-01-01",
}
"""Path -> what stands in for something with faults; everything else is simply taken out."""

DEPTHS: Mapping[str, int] = {
    "members": 3, "overrides": 3, "inspections": 3, "decisions": 3, "floor": 2, "trusses": 2,
    "materials": 2, "values": 2, "joint blocks": 2, "pins": 2,
}
"""Block -> how many keys lead to what is taken out of it; of others the whole."""
WHOLE = {"members": ("truss",), "decisions": ("what", "part")}
"""Block -> keys without which nothing can be said of an entry, which is then taken out whole."""

MOST_ROUNDS = 6
"""Taking one fault out may bring another to light; after so many rounds the rest is left."""


def salvaged(
    block: Block, error: ValidationError, source: Source
) -> tuple[Record | None, tuple[Fault, ...]]:
    """The record without what is at fault, and what came to light once that was out.

    No record where too little is left.
    """
    told: list[Fault] = []
    for _ in range(MOST_ROUNDS):
        holes = set()
        for path, found in found_by(error):
            for hole in _holes(source.as_written(path), found, block):
                holes.add(hole)
                block = _without(block, hole)
        source = replace(source, holes=source.holes | holes)
        whole, kept = _closed(block)
        source = replace(source, kept=kept)
        try:
            return Record.model_validate(whole, context=source), tuple(told)
        except ValidationError as again:
            error = again
            told += _come_to_light(error, source)
    return None, tuple(told)


def _come_to_light(error: ValidationError, source: Source) -> Iterator[Fault]:
    """Rules of ours that could not be looked at before; what is missing now was taken out."""
    found = [
        (source.as_written(path), one) for path, one in found_by(error) if one["type"] == "fault"
    ]
    if source.tree is not None:
        yield from validation_faults(
            ((path, one) for path, one in found
             if not any(path[:len(hole)] == hole for hole in source.holes)),
            source.tree,
        )


def _holes(path: Path, found: ErrorDetails, block: Block) -> Iterator[Path]:
    """What to take out for a fault: one reading, one section, one date.

    A key that is not known may be another one misspelt, which then is a hole too.
    """
    if path == ("trusses",) and found["type"] == "fault":
        path = ("trusses", "panels")
    if found["type"] == "extra_forbidden":
        meant = (*path[:-1], nearest(str(path[-1]), keys_at(path[:-1])))
        if meant[-1] and _at(block, meant) is None:
            yield _hole(meant)
    yield _hole(path)


def _hole(path: Path) -> Path:
    head, third = str(path[0]), path[2] if len(path) > 2 else ""
    if head == "inspections" and third == "readings":
        return path[:4]
    if head == "members" and third == "bars":
        return path[:4]
    if head == "floor" and len(path) > 1 and path[1] in ("utilities", "others"):
        return path[:3]
    if third in WHOLE.get(head, ()):
        return path[:2]
    return path[:DEPTHS.get(head, 1)]


def _without(block: Block, hole: Path) -> Block:
    """The block with a stub at the hole, or nothing."""
    if hole[0] == "members" and len(hole) > 2 and hole[2] == "bars":
        return _with_bars_that_can_be_read(block, hole[:2])
    if len(hole) > 1 and shapes(hole):
        shapeless = {
            key: value for key, value in (_at(block, ("trusses",)) or {}).items()
            if key in NOT_ITS_SHAPE
        }
        return _laid(block, ("trusses",), {**shapeless, **_SHAPE})
    stub = next((stub for path, stub in STUBS.items() if _matches(hole, path)), None)
    return _laid(block, hole, stub)


def _matches(hole: Path, pattern: Path) -> bool:
    return len(hole) == len(pattern) and all(
        wanted in (ANY, key) for key, wanted in zip(hole, pattern, strict=True)
    )


def _with_bars_that_can_be_read(block: Block, group: Path) -> Block:
    """A group with those of its bars that can be read, each once; without any, no group."""
    runs = _at(block, (*group, "bars"))
    bars: dict[str, None] = {}
    for run in runs if isinstance(runs, tuple) else ():
        try:
            bars |= dict.fromkeys(bars_of(run) if isinstance(run, str) else ())
        except Unreadable:
            continue
    return _laid(block, (*group, "bars"), tuple(bars)) if bars else _laid(block, group, None)


def _at(block: Any, path: Path) -> Any:
    """What stands at a path of a block; None where nothing does."""
    for key in path:
        if isinstance(block, tuple):
            block = block[key] if isinstance(key, int) and key < len(block) else None
        else:
            block = block.get(key) if isinstance(block, dict) else None
    return block


def _laid(block: Block, path: Path, value: Any) -> Block:
    """The record's block with a value at a path."""
    whole: Block = _set(block, path, value)
    return whole


def _set(block: Any, path: Path, value: Any) -> Any:
    """The block with a value at a path; None takes out of a block, and leaves a gap in a list."""
    if not path:
        return value
    key, below = path[0], path[1:]
    if isinstance(block, tuple) and isinstance(key, int):
        return (*block[:key], _set(block[key], below, value), *block[key + 1:])
    if not isinstance(block, dict):
        return block
    there = _set(block.get(str(key)), below, value)
    if there is None:
        return {name: entry for name, entry in block.items() if name != key}
    return {**block, str(key): there}


def _closed(block: Block) -> tuple[Block, Kept]:
    """The block with the gaps of its lists closed, and what was kept of each list."""
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
