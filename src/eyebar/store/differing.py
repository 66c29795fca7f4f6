"""What changed between two texts of a record, in words, change by change.

Comments and the order of keys are no change of what a record says. Inspections are told apart by
day and person, readings by part, place and kind, decisions by day, kind and part; any other list is
one value.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from eyebar.errors import BadRecord
from eyebar.record.tree import tree_of

KEYS = {
    "inspections": ("date", "by"),
    "readings": ("part", "place", "what", "piece"),
    "decisions": ("date", "what", "part"),
}
"""List -> what tells its entries apart."""
SHORT = 90
"""Characters of a value in a sentence."""

Plain = Any
"""A text, None, a mapping or a list of them."""


@dataclass(frozen=True, slots=True)
class Nth:
    """The entry of a list that has these texts under the list's keys; the n-th of several."""

    keys: tuple[str | None, ...]
    n: int

    def __str__(self) -> str:
        told = ", ".join(text for text in self.keys if text)
        return f"{told} ({self.n})" if self.n > 1 else told


Path = tuple[str | Nth, ...]
MISSING = object()
"""In the place of a value that is not there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """One change: where, what stood there and what stands there now (or MISSING)."""

    path: Path
    was: Plain
    now: Plain

    @property
    def place(self) -> str:
        """The place in words: `members > posts > section > channels > depth`."""
        return " > ".join(str(step) for step in self.path)

    @property
    def sentence(self) -> str:
        """The change in words."""
        if self.was is MISSING:
            return f"{self.place}: added{_told(self.path, self.now)}"
        if self.now is MISSING:
            return f"{self.place}: taken out{_told(self.path, self.was)}"
        return f"{self.place}: was {shown(self.was)}, is {shown(self.now)}"


def differences(before: str, after: str) -> tuple[Difference, ...]:
    """What the second text says otherwise than the first; nothing where only comments differ."""
    return tuple(_of_mappings((), plain_of(before), plain_of(after)))


def plain_of(text: str) -> Plain:
    """The plain texts of a record, as a tree. Raises BadRecord where it is not YAML."""
    tree, faults = tree_of(text)
    if tree is None:
        raise BadRecord("record", faults)
    plain = _with_lists(tree.plain())
    return plain if isinstance(plain, dict) else {}


def _with_lists(plain: Plain) -> Plain:
    if isinstance(plain, dict):
        return {str(key): _with_lists(value) for key, value in plain.items()}
    return [_with_lists(value) for value in plain] if isinstance(plain, tuple | list) else plain


def applied(plain: Plain, change: Difference) -> Plain:
    """The tree with one change made in it, and nothing else."""
    return _applied(plain, change.path, change.now, name="")


def _applied(plain: Plain, path: Path, now: Plain, *, name: str) -> Plain:
    if not path:
        return now
    step, rest = path[0], path[1:]
    if isinstance(step, Nth):
        entries = dict(_entries(plain or [], name))
        changed = _applied(entries.get(step), rest, now, name="")
        return _with(entries, step, changed, as_list=True)
    block = dict(plain) if isinstance(plain, dict) else {}
    return _with(block, step, _applied(block.get(step), rest, now, name=step), as_list=False)


def _with(block: dict[Any, Plain], key: Any, value: Plain, *, as_list: bool) -> Plain:
    block = {**block, key: value}
    if value is MISSING:
        del block[key]
    return list(block.values()) if as_list else block


def _of_mappings(path: Path, before: Plain, after: Plain) -> Iterator[Difference]:
    for key in (*before, *(one for one in after if one not in before)):
        was, now = before.get(key, MISSING), after.get(key, MISSING)
        if was != now:
            yield from _of_values((*path, key), was, now)


def _of_values(path: Path, was: Plain, now: Plain) -> Iterator[Difference]:
    name = path[-1]
    if isinstance(was, dict) and isinstance(now, dict):
        yield from _of_mappings(path, was, now)
    elif name in KEYS and _keyed(was) and _keyed(now):
        yield from _of_mappings(
            path, dict(_entries(_list(was), str(name))), dict(_entries(_list(now), str(name)))
        )
    else:
        yield Difference(path=path, was=was, now=now)


def _list(value: Plain) -> list[Plain]:
    return value if isinstance(value, list) else []


def _keyed(value: Plain) -> bool:
    if value is MISSING or value is None:
        return True
    return isinstance(value, list) and all(isinstance(one, dict) for one in value)


def _entries(values: list[Plain], name: str) -> Iterator[tuple[Nth, Plain]]:
    seen: dict[tuple[str | None, ...], int] = {}
    for value in values:
        keys = tuple(_text(value.get(key)) for key in KEYS[name])
        seen[keys] = seen.get(keys, 0) + 1
        yield Nth(keys, seen[keys]), value


def _text(value: Plain) -> str | None:
    return value if isinstance(value, str) else None


def _told(path: Path, value: Plain) -> str:
    """What is said of an entry that came or went, besides what tells it apart."""
    if not isinstance(path[-1], Nth):
        return f", {shown(value)}" if not isinstance(value, dict) else f": {shown(value)}"
    known = KEYS.get(str(path[-2]), ())
    rest = {key: one for key, one in value.items() if key not in known}
    count = len(_list(rest.pop("readings", None)))
    parts = [f"{key} {shown(one)}" for key, one in rest.items()]
    if count:
        parts.append(f"{count} reading{'s' if count > 1 else ''}")
    return f": {', '.join(parts)}" if parts else ""


def shown(value: Plain) -> str:
    """A value as a record would write it on one line, cut where it is long."""
    if value is None:
        return "empty"
    text = value if isinstance(value, str) else _flow(value)
    text = " ".join(text.split())
    text = text if len(text) <= SHORT else f"{text[:SHORT - 3]}..."
    return f"'{text}'" if isinstance(value, str) else text


def _flow(value: Plain) -> str:
    if isinstance(value, dict):
        return "{" + ", ".join(f"{key}: {_flow(one)}" for key, one in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(_flow(one) for one in value) + "]"
    return "" if value is None else str(value)
