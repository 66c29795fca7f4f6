"""Additions by the program: sizes written in place of others, and an inspection with its readings.

The text is spliced, as in `editing`, and what comes out is read back before it is given.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from eyebar.errors import BadRecord, Fault
from eyebar.record.editing import quoted, spliced
from eyebar.record.tree import Node, Path, Plain, tree_of

INSPECTIONS = "inspections"


@dataclass(frozen=True, slots=True, kw_only=True)
class Read:
    """One reading as it was typed; what is empty is left out."""

    part: str
    what: str
    value: str
    place: str = ""
    gauge: str = ""
    plus_minus: str = ""
    piece: str = ""
    note: str = ""

    @property
    def entry(self) -> str:
        """The reading as an entry of a record."""
        pairs = (
            ("part", self.part), ("place", self.place), ("what", self.what),
            ("value", self.value), ("piece", self.piece), ("gauge", self.gauge),
            ("plus minus", self.plus_minus), ("note", self.note),
        )
        return "{" + ", ".join(f"{key}: {quoted(text)}" for key, text in pairs if text) + "}"


def leaves(text: str) -> tuple[tuple[Path, str], ...]:
    """Every text of a record and its path, in the order of the record. Raises BadRecord."""
    return tuple(_leaves(_tree(text), ()))


def with_values(text: str, values: Mapping[Path, str]) -> str:
    """The text of a record with other texts at paths where texts stand already.

    Raises BadRecord where there is none to be replaced.
    """
    for path, value in values.items():
        there = _tree(text).at(path)
        if there is None or not isinstance(there.value, str):
            raise _no_place(path)
        text = spliced(text, path, value)
    return text


def with_inspection(
    text: str, on: date, by: str, readings: Sequence[Read], *, note: str = ""
) -> str:
    """The text of a record with one more inspection at the end of its inspections.

    Raises BadRecord where the inspections of the record are written in a way that cannot be added
    to.
    """
    tree = _tree(text)
    there = tree.child(INSPECTIONS)
    lines = _lines(on, by, readings, note)
    feed = "\r\n" if "\r\n" in text else "\n"
    if there is None:
        body = [f"{INSPECTIONS}:", *(f"  {line}" for line in lines)]
        edited = text + ("" if text.endswith("\n") else feed) + feed + feed.join(body) + feed
    elif there.flow or not isinstance(there.value, list) or not there.value:
        raise _no_place((INSPECTIONS,))
    else:
        last = there.value[-1]
        start = text.rfind("\n", 0, last.start) + 1
        indent = text[start:last.start].find("-")
        if indent < 0:
            raise _no_place((INSPECTIONS,))
        end = text.find("\n", there.end)
        at = len(text) if end < 0 else end + 1
        before = "" if text[:at].endswith("\n") else feed
        body = [" " * indent + line for line in lines]
        edited = text[:at] + before + feed.join(body) + feed + text[at:]
    _proven(edited, tree.plain(), len(readings))
    return edited


def _lines(on: date, by: str, readings: Sequence[Read], note: str) -> list[str]:
    lines = [f"- date: {on.isoformat()}", f"  by: {quoted(by)}"]
    if note:
        lines.append(f"  note: {quoted(note)}")
    if readings:
        lines += ["  readings:", *(f"    - {one.entry}" for one in readings)]
    return lines


def _proven(edited: str, before: Plain, count: int) -> None:
    """Look that one inspection with its readings came in and nothing else changed.

    Raises BadRecord where that is not so.
    """
    after = _tree(edited)
    whole, earlier = after.plain(), before
    assert isinstance(whole, dict)
    assert isinstance(earlier, dict)
    there = after.child(INSPECTIONS)
    entries = there.value if there else None
    if not isinstance(entries, list):
        raise _no_place((INSPECTIONS,))
    readings = entries[-1].child("readings")
    came = readings.value if readings else []
    was = earlier.get(INSPECTIONS) or ()
    same = {**whole, INSPECTIONS: was} == {**earlier, INSPECTIONS: was}
    if not same or tuple(one.plain() for one in entries[:-1]) != was or (
        not isinstance(came, list) or len(came) != count
    ):
        raise _no_place((INSPECTIONS,))


def _leaves(node: Node, path: Path) -> list[tuple[Path, str]]:
    if isinstance(node.value, str):
        return [(path, node.value)]
    if isinstance(node.value, dict):
        return [
            one for key, below in node.value.items() for one in _leaves(below, (*path, key))
        ]
    return [
        one for i, below in enumerate(node.value or ()) for one in _leaves(below, (*path, i))
    ]


def _tree(text: str) -> Node:
    tree, faults = tree_of(text)
    if tree is None or faults:
        raise BadRecord("record", faults)
    return tree


def _no_place(path: Path) -> BadRecord:
    return BadRecord("record", (Fault(
        where=" > ".join(str(key) for key in path),
        rule="is written in a way that cannot be added to", cure="edit the text by hand",
    ),))
