"""Edits by the program: an override under the part's own name, every other line left as it was.

The text is spliced, never written anew, so that comments, quotes and the order of keys survive.
What comes out is read back before anything is written.
"""

import os
import re
import tempfile
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path as FilePath

from eyebar.addresses import address
from eyebar.errors import BadRecord, Fault, Unreadable
from eyebar.record.models import Record
from eyebar.record.reading import read_record, record_of
from eyebar.record.tree import BYTE_ORDER_MARK, Node, Path, Plain, tree_of

INDENT = 2
Differing = Mapping[str, "str | Differing"]
"""Key -> text, or the keys below it: `{"section": {"eyebars": {"thickness": "1/2 in"}}}`."""

_PLAIN = re.compile(r"[^\W_](?:[\w/.+()°'\"-]| (?=[^ #]))*")
"""Texts that stand without quotes, in braces too."""
_UNPRINTABLE = re.compile("[\x00-\x1f\x7f-\x9f\u2028\u2029\ufeff\ud800-\udfff\ufffe\uffff]")


@dataclass(frozen=True, slots=True)
class _Splice:
    """Characters `start` to `end` of a text, and what stands there afterwards."""

    start: int
    end: int
    text: str


def with_override(text: str, part: str, differing: Differing, *, reason: str) -> str:
    """The text of a record with an override for one part, beside those it has.

    A field that the part overrides already gets the new value in its place. Raises Unreadable for
    an address that is none, BadRecord where the text cannot be edited so.
    """
    key = str(address(part))
    tree = _tree(text)
    for name, value in (*differing.items(), ("reason", reason)):
        text, tree = _with(text, tree, ("overrides", key, name), value)
    return text


def spliced(text: str, path: Path, value: str) -> str:
    """The text of a record with another text at a path. Raises BadRecord where it cannot be."""
    return _with(text, _tree(text), path, value)[0]


def override_in_file(
    path: FilePath, part: str, differing: Differing, *, reason: str, today: date | None = None
) -> Record:
    """Writes an override into a record's file, and gives the record that stands there now.

    Raises BadRecord, with nothing written, where the record was bad before or would be.
    """
    text = read_record(path, today=today).text
    edited = with_override(text, part, differing, reason=reason)
    record = record_of(edited, file=str(path), today=today)
    write_whole(path, edited)
    return record


def write_whole(path: FilePath, text: str) -> None:
    """Writes a file so that, whatever happens, it holds all of the old text or all of the new."""
    mode = path.stat().st_mode & 0o777 if path.exists() else 0o644
    descriptor, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.", suffix=".part")
    part = FilePath(name)
    try:
        with os.fdopen(descriptor, "wb") as file:
            file.write(text.encode("utf-8"))
            file.flush()
            os.fsync(file.fileno())
        part.chmod(mode)
        part.replace(path)
    except BaseException:
        part.unlink(missing_ok=True)
        raise
    folder = os.open(path.parent, os.O_RDONLY)
    try:
        os.fsync(folder)
    finally:
        os.close(folder)


def _with(text: str, tree: Node, path: Path, value: str | Differing) -> tuple[str, Node]:
    """The text, and its tree, with a value at a path; blocks of keys are entered key by key."""
    path = _as_written(tree, path)
    if isinstance(value, Mapping) and tree.at(path) is not None:
        for key, below in value.items():
            text, tree = _with(text, tree, (*path, key), below)
        return text, tree
    shift = len(text) - len(text.removeprefix(BYTE_ORDER_MARK))
    edited = text
    for splice in sorted(_splices(tree, text[shift:], path, value), key=lambda one: -one.start):
        start, end = splice.start + shift, splice.end + shift
        edited = edited[:start] + splice.text + edited[end:]
    after = _tree(edited)
    if after.plain() != _set(tree.plain(), path, value):
        raise _by_hand(tree, path)
    return edited, after


def _as_written(tree: Node, path: Path) -> Path:
    """The path with the part as the record spells it, which may be lower joint first."""
    overrides = tree.child("overrides")
    for written in overrides.keys if overrides and path[0] == "overrides" else ():
        try:
            if str(address(written)) == path[1]:
                return ("overrides", written, *path[2:])
        except Unreadable:
            continue
    return path


def _splices(tree: Node, text: str, path: Path, value: str | Differing) -> list[_Splice]:
    """What to change in the text so that the value stands at the path."""
    there = tree.at(path)
    if there is not None:
        if not isinstance(there.value, str) or isinstance(value, Mapping):
            raise _by_hand(tree, path)
        return [_Splice(there.start, there.end, quoted(value))]
    depth = next(n for n in range(len(path) - 1, -1, -1) if _holds_keys(tree, path[:n]))
    block = tree.at(path[:depth])
    assert block is not None
    for key in reversed(path[depth + 1:]):
        value = {str(key): value}
    key = str(path[depth])
    if block.flow and block.value:
        last = text.rindex("}", block.start, block.end)
        comma = "" if text[:last].rstrip().endswith(",") else ","
        return [_Splice(len(text[:last].rstrip()), last, f"{comma} {_flow(key, value)}")]
    return _new_lines(tree, text, path[:depth], _lines(key, value))


def _holds_keys(tree: Node, path: Path) -> bool:
    """Whether a block of keys stands there, or nothing where one may begin."""
    node = tree.at(path)
    return node is not None and (node.value is None or isinstance(node.value, dict))


def _new_lines(tree: Node, text: str, path: Path, lines: list[str]) -> list[_Splice]:
    """Lines below the last entry of a block; an empty block begins below its own key."""
    block = tree.at(path)
    assert block is not None
    feed = "\r\n" if "\r\n" in text else "\n"
    splices = []
    if block.value:
        indent, at = block.column, block.end
    else:
        parent = tree.at(path[:-1])
        assert parent is not None
        indent, at = parent.column + INDENT, block.end
        if block.end > block.start:
            before = len(text[:block.start].rstrip(" "))
            splices.append(_Splice(before, block.end, ""))
    end_of_line = text.find("\n", max(at - 1, 0))
    body = "".join(f"{' ' * indent}{line}{feed}" for line in lines)
    if end_of_line < 0:
        return [*splices, _Splice(len(text), len(text), feed + body)]
    return [*splices, _Splice(end_of_line + 1, end_of_line + 1, body)]


def _lines(key: str, value: str | Differing) -> list[str]:
    """A key and its value as lines of a block; sizes below a shape stand on one line."""
    if isinstance(value, str):
        return [f"{quoted(key)}: {quoted(value)}"]
    if value and not any(isinstance(below, Mapping) for below in value.values()):
        return [f"{quoted(key)}: {_flow_block(value)}"]
    lines = [f"{quoted(key)}:"]
    for name, below in value.items():
        lines += [" " * INDENT + line for line in _lines(name, below)]
    return lines


def _flow(key: str, value: str | Differing) -> str:
    return f"{quoted(key)}: {quoted(value) if isinstance(value, str) else _flow_block(value)}"


def _flow_block(block: Differing) -> str:
    return "{" + ", ".join(_flow(key, value) for key, value in block.items()) + "}"


def quoted(text: str) -> str:
    """A text as a YAML scalar that is read back as it was, quoted only where it must be."""
    if _PLAIN.fullmatch(text) and text != "null":
        return text
    if not _UNPRINTABLE.search(text) and text == text.strip():
        return "'" + text.replace("'", "''") + "'"
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return '"' + _UNPRINTABLE.sub(lambda found: f"\\u{ord(found[0]):04x}", escaped) + '"'


def _set(plain: Plain, path: Path, value: str | Differing) -> Plain:
    """The plain tree with a value at a path."""
    if not path:
        return value if isinstance(value, str) else _plain(value)
    if isinstance(plain, tuple):
        place = int(path[0])
        return (*plain[:place], _set(plain[place], path[1:], value), *plain[place + 1:])
    block = plain if isinstance(plain, dict) else {}
    key = str(path[0])
    return {**block, key: _set(block.get(key), path[1:], value)}


def _plain(value: str | Differing) -> Plain:
    if isinstance(value, str):
        return value
    return {key: _plain(below) for key, below in value.items()}


def _tree(text: str) -> Node:
    tree, faults = tree_of(text)
    if tree is None or faults:
        raise BadRecord("record", faults)
    return tree


def _by_hand(tree: Node, path: Path) -> BadRecord:
    fault = Fault(
        where=" > ".join(str(key) for key in path),
        rule="is written in a way that cannot be edited",
        cure="edit the file by hand", line=tree.line_of(path),
    )
    return BadRecord("record", (fault,))
