"""Which findings of the validation are told: one for each cause, each with the line of its key.

A slip of the pen often breaks more than one rule: a key that is misspelt is missing too, a section
that lost its header doubles its neighbour's keys. Told is what the hand that wrote it must change.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from eyebar.errors import Fault, nearest
from eyebar.record.faults import (
    CURB_KEY,
    fault_at,
    keys_at,
    missing_fault,
    written_key,
    wrong_fault,
)
from eyebar.record.tree import Node, Path, place_words

Found = tuple[Path, ErrorDetails]
"""A finding, and its path as the file has it."""
Bases = Mapping[Path, Path | None]
"""Path of a section that gives only what differs -> that of the section it was filled in from."""


def found_by(error: ValidationError) -> list[Found]:
    """Each finding of the validation, with its path as the file has it."""
    return [(_written_path(one["loc"]), one) for one in error.errors(include_url=False)]


def validation_faults(
    found: Iterable[Found], tree: Node, bases: Bases | None = None
) -> Iterator[Fault]:
    """The findings that are causes, as faults."""
    causes = [
        one for one in found
        if not any(_within(one[0], doubled) for doubled in tree.doubled)
    ]
    astray = _blocks_astray(causes)
    strangers = {path[:-1] for path, one in causes if _of_a_block_astray((path, one), astray)}
    causes = [
        one for one in causes
        if not _of_its_base(one, causes, tree, bases or {}) and not _of_a_block_astray(one, astray)
        and not _empty_by_indent(one, causes, tree)
        and not (one[1]["type"] == "missing" and one[0][:-1] in strangers)
    ]
    strange: dict[Path, list[Found]] = defaultdict(list)
    missing: dict[Path, list[Path]] = defaultdict(list)
    for path, one in causes:
        if one["type"] == "extra_forbidden":
            strange[path[:-1]].append((path, one))
        elif one["type"] == "missing":
            if tree.at(path[:-1]) is not None and not _is_elsewhere(path, causes):
                missing[path[:-1]].append(path)
        elif tree.at(path) is not None and not (
            one["type"] == "too_short" and any(_within(p, path) and p != path for p, _ in causes)
        ):
            yield wrong_fault(path, tree, one)
    for block in dict.fromkeys((*strange, *missing)):
        if sum(doubled[:-1] == block for doubled in tree.doubled) > 1:
            continue  # a block that lost its header, whose name is what is not known here
        yield from _keys_of_block(strange[block], missing[block], tree)


def all_faults(found: Iterable[Found], tree: Node) -> Iterator[Fault]:
    """Every finding as a fault, whatever brought it about."""
    for path, one in found:
        yield missing_fault(path, tree) if one["type"] == "missing" else wrong_fault(
            path, tree, one)


def _keys_of_block(strange: list[Found], missing: list[Path], tree: Node) -> Iterator[Fault]:
    """Keys of one block that are not known there, and keys that it lacks."""
    near = {path: nearest(str(path[-1]), keys_at(path[:-1])) for path, _ in strange}
    lacking = [path for path in missing if written_key(str(path[-1])) not in near.values()]
    unlike = [(path, one) for path, one in strange if not near[path]]
    yield from (wrong_fault(path, tree, one) for path, one in strange if near[path])
    if len(unlike) > 1:
        yield _not_known(unlike, tree, cure="look at the indents, and at the key above them")
    elif len(unlike) == len(lacking) == 1:
        key = written_key(str(lacking[0][-1]))
        yield _not_known(unlike, tree, cure=f"is it meant for '{key}', which is missing here?")
        return
    else:
        yield from (wrong_fault(path, tree, one) for path, one in unlike)
    if len(lacking) > 2:
        names = ", ".join(f"'{written_key(str(path[-1]))}'" for path in lacking)
        yield fault_at(tree, lacking[0][:-1], f"has no {names}",
                       cure="write each with its value, or take the block out")
        return
    yield from (missing_fault(path, tree) for path in lacking)


def _not_known(strange: list[Found], tree: Node, *, cure: str) -> Fault:
    first = strange[0][0]
    rule = "is not a key known here" if len(strange) == 1 else "are not keys known here"
    return Fault(
        where=place_words(first[:-1]), rule=rule, cure=cure, line=tree.line_of(first),
        got=", ".join(f"'{path[-1]}'" for path, _ in strange),
    )


def _within(path: Path, block: Path) -> bool:
    return path[:len(block)] == block


def _is_elsewhere(path: Path, found: list[Found]) -> bool:
    """Whether a key that a block lacks stands deeper in it, by a slip of the indent."""
    return any(
        other[-1:] == path[-1:] and len(other) > len(path) and _within(other, path[:-1])
        and one["type"] not in ("fault", "missing")
        for other, one in found
    )


def _blocks_astray(found: list[Found]) -> tuple[str, ...]:
    """The blocks of the record that are missing, whose keys may stand in another by an indent."""
    return tuple(
        str(path[0]) for path, one in found if one["type"] == "missing" and len(path) == 1
    )


def _of_a_block_astray(one: Found, astray: tuple[str, ...]) -> bool:
    """Whether a key that is not known in its block is one of a block that is missing."""
    path, found = one
    return found["type"] == "extra_forbidden" and any(
        belongs(path[1:], block) for block in astray if path[0] != block
    )


def belongs(below: Path, block: str) -> bool:
    """Whether a path below one block would be one of another; or is its very name."""
    if below == (block,):
        return True
    if not 0 < len(below) < 3:
        return False
    key = CURB_KEY if str(below[-1]).startswith("curb to ") else below[-1]
    return key in keys_at((block, *below[:-1]))


def _empty_by_indent(one: Found, found: list[Found], tree: Node) -> bool:
    """Whether a block is empty because what follows it is indented too little."""
    path, finding = one
    node = tree.at(path)
    if node is None or node.value is not None or not finding["type"].endswith("_type"):
        return False
    after = tree.line_of(path) + 1
    others = (other for other, _ in found if other != path)
    return any(
        other[:-1] == path[:len(other) - 1] and tree.line_of(other) == after
        for other in (*others, *tree.doubled)
    )


def _of_its_base(one: Found, found: list[Found], tree: Node, bases: Bases) -> bool:
    """Whether a finding in a section that was filled in belongs to what it was filled in from.

    Sizes that are written in the section itself are its own.
    """
    path = one[0]
    base_of = next((base for base in bases if _within(path, base)), None)
    if base_of is None:
        return False
    written = tree.at(path)
    if written is not None and isinstance(written.value, str):
        return False
    base = bases[base_of]
    return base is None or any(
        _within(other, base) for other in (*(path for path, _ in found), *tree.doubled)
    )


def _written_path(location: tuple[int | str, ...]) -> Path:
    """A path as the file has it: a curb's key names its truss, and no mark of a mapping's key."""
    path = tuple(key for key in location if key != "[key]")
    if path[:2] == ("floor", "curbs") and len(path) > 2:
        return ("floor", f"curb to {path[2]} truss", *path[3:])
    return path
