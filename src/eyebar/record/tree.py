"""YAML text as a tree of marked nodes: the only module that knows ruamel.

Every scalar stays the text that was written; a bare `null`, `~` or nothing is None. What makes a
YAML file dangerous is refused here: tags, anchors that explode, deep nesting, keys that stand
twice.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import lru_cache

from ruamel.yaml import YAML
from ruamel.yaml.error import MarkedYAMLError, YAMLError
from ruamel.yaml.events import (
    AliasEvent,
    DocumentStartEvent,
    Event,
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
)

from eyebar.errors import Fault

Plain = str | dict[str, "Plain"] | tuple["Plain", ...] | None
Path = tuple[str | int, ...]

DEEPEST = 12
"""Blocks inside blocks; a record needs six."""
MOST_ENTRIES = 200_000
"""Entries of a record once every anchor is spelled out."""

KEPT, KEPT_LETTERS = 8, 200_000
"""Trees kept, and the longest text of which one is; the longest demo record has 20,000 letters."""

_UNREADABLE = re.compile("[^\t\n\r\x20-\x7e\x85\xa0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")

BYTE_ORDER_MARK = "\ufeff"
"""Some editors begin a file with it; places in the text are counted behind it."""


@dataclass(slots=True, kw_only=True)
class Node:
    """A scalar, a block of keys or a list, with its place in the text (lines counted from 0)."""

    value: "str | dict[str, Node] | list[Node] | None"
    line: int
    column: int
    start: int
    end: int
    """Its first character, and the one after its last; a block ends where its last entry does."""
    flow: bool = False
    """Written in braces or brackets."""
    entries: int = 1
    """Nodes in it, anchors spelled out."""
    depth: int = 0
    """Blocks inside blocks below it, anchors spelled out."""
    keys: dict[str, int] = field(default_factory=dict)
    """Key -> its line."""
    doubled: tuple[Path, ...] = ()
    """Of the whole tree: the paths of keys that stand twice, of which only the first is kept."""

    def child(self, key: str | int) -> "Node | None":
        """What stands under a key, or at a place of a list; None when there is nothing."""
        if isinstance(self.value, dict):
            return self.value.get(str(key))
        if isinstance(self.value, list) and isinstance(key, int) and key < len(self.value):
            return self.value[key]
        return None

    def at(self, path: Iterable[str | int]) -> "Node | None":
        """What stands at the end of a path; None when there is nothing."""
        node: Node | None = self
        for key in path:
            node = node.child(key) if node else None
        return node

    def line_of(self, path: Path) -> int:
        """The line, counted from 1, of the last key of the path that is there."""
        node, line = self, self.line
        for key in path:
            below = node.child(key)
            if below is None:
                break
            line = node.keys.get(str(key), below.line)
            node = below
        return line + 1

    def plain(self) -> Plain:
        """The same without the marks: texts, None, dictionaries and tuples."""
        if isinstance(self.value, dict):
            return {key: node.plain() for key, node in self.value.items()}
        if isinstance(self.value, list):
            return tuple(node.plain() for node in self.value)
        return self.value


def place_words(path: Path) -> str:
    """A path in words, `members > posts > section`; entries of a list are counted from 1."""
    return " > ".join(str(key + 1) if isinstance(key, int) else key for key in path)


def tree_of(text: str) -> tuple[Node | None, tuple[Fault, ...]]:
    """The tree of a YAML text, and what is wrong with it; no tree where it is not YAML at all.

    One text is often asked for several times on end, and a tree is never changed: the last few are
    kept.
    """
    return _kept(text) if len(text) <= KEPT_LETTERS else _grown(text)


def _grown(text: str) -> tuple[Node | None, tuple[Fault, ...]]:
    growing = _Growing()
    try:
        for event in YAML(typ="safe", pure=True).parse(text.removeprefix(BYTE_ORDER_MARK)):
            if not growing.takes(event):
                break
    except MarkedYAMLError as error:
        problem = " ".join(str(error.problem or error.context).split())
        mark = error.problem_mark or error.context_mark
        if "end of stream" in problem:
            mark = error.context_mark or mark
        return None, (*growing.faults, _not_yaml(problem, mark.line + 1 if mark else None))
    except (YAMLError, ValueError) as error:
        if found := _UNREADABLE.search(text):
            return None, (*growing.faults, Fault(
                where="", line=text[:found.start()].count("\n") + 1, cure="take it out",
                rule=f"is not YAML: the character U+{ord(found[0]):04X} cannot stand in it",
            ))
        return None, (*growing.faults, _not_yaml(" ".join(str(error).split())[:100], None))
    if growing.root is not None:
        growing.root.doubled = tuple(growing.doubled)
    return growing.root, tuple(growing.faults)


_kept = lru_cache(KEPT)(_grown)


def _not_yaml(problem: str, line: int | None) -> Fault:
    cure = "look at the indents, colons and brackets there"
    if "mapping values" in problem:
        cure = "put a text that holds a colon between quotes"
    if "\\t" in problem:
        cure = "indent with spaces, not with tabs"
    return Fault(where="", rule=f"is not YAML: {problem}", cure=cure, line=line)


@dataclass(slots=True, kw_only=True)
class _Open:
    """A block or list that has begun and not ended."""

    node: Node
    anchor: str | None
    key: str | None = None
    """The key that waits for what it stands for."""
    doubled: list[tuple[str, int]] = field(default_factory=list)
    """The latest keys, with their lines, that all stand twice."""
    told: int = 0
    """The place of the fault that tells of them."""

    @property
    def awaits_key(self) -> bool:
        return isinstance(self.node.value, dict) and self.key is None

    @property
    def place(self) -> str | int:
        """Where the next entry will stand: its key, or its place in the list."""
        return len(self.node.value) if isinstance(self.node.value, list) else str(self.key)


@dataclass(slots=True)
class _Growing:
    """A tree that grows from the parser's events, without recursion."""

    root: Node | None = None
    faults: list[Fault] = field(default_factory=list)
    open: list[_Open] = field(default_factory=list)
    anchors: dict[str, Node] = field(default_factory=dict)
    doubled: list[Path] = field(default_factory=list)
    documents: int = 0

    def takes(self, event: Event) -> bool:
        """Take in one event; False when there is no sense in reading on."""
        if isinstance(event, MappingStartEvent | SequenceStartEvent):
            return self._begin(event)
        if isinstance(event, MappingEndEvent | SequenceEndEvent):
            return self._end(event)
        if isinstance(event, ScalarEvent):
            return self._scalar(event)
        if isinstance(event, AliasEvent):
            return self._repeat(event)
        if isinstance(event, DocumentStartEvent):
            self.documents += 1
            if self.documents > 1:
                return self._refuse(event, "begins a second record", "keep one record in a file")
        return True

    def _begin(self, event: MappingStartEvent | SequenceStartEvent) -> bool:
        if len(self.open) >= DEEPEST:
            return self._refuse(event, f"nests deeper than {DEEPEST} blocks", "a record needs six")
        if self.open and self.open[-1].awaits_key:
            return self._refuse(event, "has a block where a key is wanted", "write a key in words")
        self._check_tag(event)
        node = Node(
            value={} if isinstance(event, MappingStartEvent) else [],
            line=event.start_mark.line, column=event.start_mark.column,
            start=event.start_mark.index, end=event.start_mark.index, flow=bool(event.flow_style),
        )
        self.open.append(_Open(node=node, anchor=event.anchor))
        return True

    def _end(self, event: MappingEndEvent | SequenceEndEvent) -> bool:
        ended = self.open.pop()
        ended.node.depth += 1
        if ended.node.flow:
            ended.node.end = event.end_mark.index
        self._put(ended.node, ended.anchor, ended.node.end)
        return True

    def _scalar(self, event: ScalarEvent) -> bool:
        self._check_tag(event)
        mark, end = event.start_mark, event.end_mark
        if self.open and self.open[-1].awaits_key:
            self._key(event.value, mark.line)
            return True
        text = None if event.style is None and event.value in ("", "~", "null") else event.value
        self._put(
            Node(value=text, line=mark.line, column=mark.column, start=mark.index, end=end.index),
            event.anchor, end.index,
        )
        return True

    def _key(self, key: str, line: int) -> None:
        parent = self.open[-1]
        if key in parent.node.keys:
            self._twice(parent, key, line)
        elif len(parent.doubled) == 1:
            parent.doubled.clear()
        parent.node.keys.setdefault(key, line)
        parent.key = key

    def _twice(self, parent: "_Open", key: str, line: int) -> None:
        """Tells of a key that stands twice; of several one after the other at once, since it is
        their own block that lost its header."""
        path = tuple(above.place for above in self.open[:-1])
        self.doubled.append((*path, key))
        parent.doubled.append((key, line))
        many = len(parent.doubled) > 1
        first = parent.doubled[0]
        if not many:
            parent.told = len(self.faults)
        self.faults[parent.told:parent.told + 1] = [Fault(
            where=place_words(path), got=", ".join(f"'{one}'" for one, _ in parent.doubled),
            line=first[1] + 1,
            rule=f"{'stand' if many else 'stands'} twice; first on line "
                 f"{parent.node.keys[first[0]] + 1}",
            cure="leave them out, or write the name of their own block above them" if many
            else "leave one of them out",
        )]

    def _repeat(self, event: AliasEvent) -> bool:
        known = self.anchors.get(event.anchor)
        if known is None or (self.open and self.open[-1].awaits_key):
            return self._refuse(event, f"repeats '{event.anchor}', which no anchor above names",
                                "write the entry out")
        if len(self.open) + known.depth > DEEPEST:
            return self._refuse(event, f"nests deeper than {DEEPEST} blocks by its anchors",
                                "write the entry out")
        self._put(known, None, event.end_mark.index)
        if sum(above.node.entries for above in self.open) > MOST_ENTRIES:
            return self._refuse(event, f"grows beyond {MOST_ENTRIES:,} entries by its anchors",
                                "write the entries out")
        return True

    def _put(self, node: Node, anchor: str | None, end: int) -> None:
        if anchor:
            self.anchors[anchor] = node
        if not self.open:
            self.root = node
            return
        parent = self.open[-1]
        parent.node.entries += node.entries
        parent.node.depth = max(parent.node.depth, node.depth)
        parent.node.end = end
        if isinstance(parent.node.value, dict):
            parent.node.value.setdefault(str(parent.key), node)
            parent.key = None
        elif isinstance(parent.node.value, list):
            parent.node.value.append(node)

    def _check_tag(self, event: MappingStartEvent | SequenceStartEvent | ScalarEvent) -> None:
        if event.tag:
            self.faults.append(Fault(
                where="", got=f"'{event.tag}'", rule="is a tag, which a record has no use for",
                cure="leave it out", line=event.start_mark.line + 1,
            ))

    def _refuse(self, event: Event, rule: str, cure: str) -> bool:
        """A fault after which the rest is not read; there is no tree then."""
        self.root, self.open = None, []
        self.faults.append(Fault(where="", rule=rule, cure=cure, line=event.start_mark.line + 1))
        return False
