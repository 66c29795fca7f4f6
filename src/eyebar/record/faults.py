"""A finding of the validation in the engineer's words: where, rule, what was found, the cure."""

from collections.abc import Mapping
from typing import Annotated, Any, get_args, get_origin

from pydantic_core import ErrorDetails

from eyebar.errors import Fault, did_you_mean
from eyebar.record.fields import NOT_MEASURED, Entry
from eyebar.record.models import Record
from eyebar.record.sections import MAIN_SHAPES
from eyebar.record.tree import Node, Path, place_words

CURB_KEY = "curb to upstream truss"
"""How a curb's key is written; `curbs` is only our own name for all of them."""

CURES: Mapping[str, str] = {
    "bars": "write the list of its bars, like [L0..L4, U1-L2]",
    "kind": "write what it is, in a word",
    "material": "write one of the names under 'materials'",
    "section": f"write what it is made of, one of: {', '.join(MAIN_SHAPES)}",
    "bearings": "write 'bearings: {zero: fixed, other: free}'",
    CURB_KEY: "write the distance from the truss's centre line to the face of the curb",
    "reason": "say why this one differs",
    "source": "say where the figure comes from",
    "date": "write it year-month-day, like '2021-06-15'",
    "by": "say who was there",
    "members": "write the groups of bars that are alike",
}
"""What to write for a key that is missing."""

RULES: Mapping[str, tuple[str, str]] = {
    "model_type": ("is not a block of keys", "write keys with their values below it"),
    "dict_type": ("is not a block of keys", "write keys with their values below it"),
    "tuple_type": ("is not a list", "write it in brackets, like [one, two]"),
    "too_short": ("is too short", "write at least one entry"),
    "too_long": ("is too long", "leave some entries out"),
}
"""Kind of pydantic's finding -> (rule, cure)."""


def fault_at(
    tree: Node, path: Path, rule: str, *, got: object = None, cure: str = ""
) -> Fault:
    """A fault at a place of the record, with its line; `got` is what was written there."""
    return Fault(
        where=place_words(path), rule=rule, got="" if got is None else f"'{got}'", cure=cure,
        line=tree.line_of(path),
    )


def keys_at(path: Path) -> tuple[str, ...]:
    """The keys that a block of the record may have; none where no block belongs."""
    model = _model_at(path)
    fields = model.model_fields.values() if model else ()
    return tuple(written_key(str(field.alias)) for field in fields)


def written_key(key: str) -> str:
    """A key as the file has it."""
    return CURB_KEY if key == "curbs" else key


def missing_fault(path: Path, tree: Node) -> Fault:
    """A key that a block needs and has not."""
    parent, key = path[:-1], written_key(str(path[-1]))
    if isinstance(path[-1], int):
        return fault_at(tree, parent, "has too few entries", cure=f"write {path[-1] + 1} of them")
    cure = CURES.get(key, f"write '{key}:' with its value")
    if _may_be_unmeasured(path):
        cure = f"write '{key}:' with its size, or '{key}: {NOT_MEASURED}'"
    return fault_at(tree, parent, f"has no '{key}'", cure=cure)


def wrong_fault(path: Path, tree: Node, found: ErrorDetails) -> Fault:
    """A key or a value that is there and cannot be."""
    context = found.get("ctx", {})
    if found["type"] == "fault":
        return Fault(
            where=place_words(path), rule=context["rule"], got=context["got"],
            cure=context["cure"], line=tree.line_of(path),
        )
    if found["type"] == "extra_forbidden":
        parent, key = path[:-1], str(path[-1])
        return Fault(
            where=place_words(parent), rule="is not a key known here", got=f"'{key}'",
            cure=did_you_mean(key, keys_at(parent)), line=tree.line_of(path),
        )
    rule, cure = RULES.get(found["type"], (f"cannot be read: {found['msg']}", ""))
    return fault_at(tree, path, rule, cure=cure)


def _may_be_unmeasured(path: Path) -> bool:
    """Whether a key that is missing could be written as not measured."""
    model = _model_at(path[:-1])
    fields = model.model_fields.values() if model else ()
    return any(
        field.alias == path[-1] and type(None) in get_args(field.annotation) for field in fields
    )


def _model_at(path: Path) -> type[Entry] | None:
    """The model of the block at a path; None where no block belongs."""
    annotation: Any = Record
    for key in path:
        annotation = _below(_bare(annotation), key)
    model = _bare(annotation)
    return model if isinstance(model, type) and issubclass(model, Entry) else None


def _bare(annotation: Any) -> Any:
    """An annotation without `Annotated` and without `| None`."""
    while get_origin(annotation) is Annotated:
        annotation = get_args(annotation)[0]
    choices = [choice for choice in get_args(annotation) if choice is not type(None)]
    if type(None) in get_args(annotation) and len(choices) == 1:
        return _bare(choices[0])
    return annotation


def _below(annotation: Any, key: str | int) -> Any:
    """The annotation of what stands under a key."""
    if isinstance(annotation, type) and issubclass(annotation, Entry):
        for field in annotation.model_fields.values():
            if field.alias == key:
                return field.annotation
        return None
    arguments = get_args(annotation)
    if get_origin(annotation) is tuple:
        return arguments[0] if arguments else None
    return arguments[1] if len(arguments) == 2 else None
