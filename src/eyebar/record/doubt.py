"""What of a record with faults is not to be judged, so that one cause is told once.

Such a record is looked over without what is at fault in it (record/salvaged.py). What then seems
to be missing, or not to fit, may be a consequence of that. A record without faults has no holes,
and nothing of it is in doubt.
"""

import re
from collections.abc import Collection, Iterator

from eyebar.addresses import address, bars_of, ends_of
from eyebar.errors import Unreadable, nearest
from eyebar.record.faults import keys_at
from eyebar.record.layout import joint_names
from eyebar.record.members import BOTH_TRUSSES
from eyebar.record.models import Record
from eyebar.record.tree import Node, Path

NOT_ITS_SHAPE = ("names", "spacing", "bearings", "counters")
"""Keys of `trusses` that do not decide which joints there are."""

_JOINTS = re.compile(r"[^\W\d_]+\d+")


def in_doubt(record: Record, *path: str | int) -> bool:
    """Whether what stands at a path, something in it, or what holds it was taken out as faulty."""
    if not (holes := record.source.holes):
        return False
    here = record.source.as_written(path)
    return any(here[:len(hole)] == hole[:len(here)] for hole in holes)


def names_known(record: Record) -> bool:
    """Whether the trusses of the record have the names that it gives them."""
    return not in_doubt(record, "trusses", "names")


def shape_known(record: Record) -> bool:
    """Whether the joints of the trusses are those that the record means."""
    return not any(map(shapes, record.source.holes))


def shapes(path: Path) -> bool:
    """Whether what stands at a path decides which joints there are."""
    if path[:1] != ("trusses",):
        return False
    return len(path) == 1 or path[1] in {*keys_at(("trusses",))} - {*NOT_ITS_SHAPE}


def lost_bars(record: Record) -> tuple[str, ...]:
    """The bars, as they are written, that are meant and are nowhere; an empty text may be any.

    Names that cannot be read, bars of a truss that is not there, bars to no joint.
    """
    found = [text for hole in record.source.holes for text in _lost_in(record, hole)]
    joints = set(joint_names(record.trusses)) if shape_known(record) else None
    for group in record.members.values():
        if names_known(record) and group.truss not in (BOTH_TRUSSES, *record.trusses.names):
            found += group.bars
        elif joints is not None:
            found += (bar for bar in group.bars if not joints.issuperset(ends_of(bar)))
    return tuple(found)


def _lost_in(record: Record, hole: Path) -> tuple[str, ...]:
    """The bars that are lost with one hole, in the members or in what may have swallowed some."""
    tree = record.source.tree
    if tree is None or hole[0] != "members":
        swallowed = tree is not None and len(hole) == 1 and (
            hole in tree.doubled or _is_strange_block(tree, hole)
        )
        return ("",) if swallowed else ()
    if len(hole) > 2 and hole[2] not in ("bars", "truss"):
        return ()
    if len(hole) == 1 or hole in tree.doubled:
        return ("",)
    written = tree.at((*hole[:2], "bars"))
    texts = written.plain() if written is not None else None
    if not isinstance(texts, tuple):
        return ("",)
    group = record.members.get(str(hole[1]))
    kept = set(group.bars) if group is not None else set()
    return tuple(
        text if isinstance(text, str) else ""
        for text in texts if not isinstance(text, str) or not kept.intersection(_bars(text))
    )


def _is_strange_block(tree: Node, hole: Path) -> bool:
    """Whether a block of keys stands there under a name that no record has."""
    node = tree.at(hole)
    return node is not None and isinstance(node.value, dict) and hole[0] not in keys_at(())


def may_be(bar: str, lost: Collection[str]) -> bool:
    """Whether a bar may be meant by one of the texts that name none: they share a joint or run."""
    ends = set(ends_of(bar))
    letters = {joint.rstrip("0123456789") for joint in ends}
    for text in lost:
        joints = set(_JOINTS.findall(text))
        of_text = {joint.rstrip("0123456789") for joint in joints}
        if not joints or joints & ends:
            return True
        if (".." in text or len(of_text) == 1) and letters <= of_text:
            return True
    return False


def parts_in_doubt(record: Record, parts: Collection[str]) -> frozenset[str]:
    """Those of the bars, by address, whose override or new section is at fault, or may be."""
    if {("overrides",), ("decisions",)} & record.source.holes:
        return frozenset(parts)
    found = set()
    for text in (*_overrides_astray(record, parts), *_repairs_astray(record, parts)):
        part = _part(text)
        found.add(part if part in parts else nearest(text, parts))
    return frozenset(found - {""})


def _overrides_astray(record: Record, parts: Collection[str]) -> Iterator[str]:
    for hole in record.source.holes:
        if hole[0] == "overrides":
            yield str(hole[1])
    for written in record.overrides:
        if written not in parts:
            yield written


def _repairs_astray(record: Record, parts: Collection[str]) -> Iterator[str]:
    tree = record.source.tree
    for hole in record.source.holes:
        entry = tree.at(hole[:2]) if tree is not None and hole[0] == "decisions" else None
        part = entry.child("part") if entry is not None and entry.child("section") else None
        if part is not None and isinstance(part.value, str):
            yield part.value
    for decision in record.decisions:
        if decision.section is not None and decision.part.part not in parts:
            yield decision.part.part


def _bars(text: str) -> tuple[str, ...]:
    try:
        return bars_of(text)
    except Unreadable:
        return ()


def _part(text: str) -> str:
    try:
        return address(text).part
    except Unreadable:
        return ""
