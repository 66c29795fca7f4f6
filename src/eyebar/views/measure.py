"""What a text of a record says of itself: its faults, its fields by group, what it would change."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby
from pathlib import Path
from typing import Any

from eyebar.documents.opened import opened
from eyebar.errors import BadRecord
from eyebar.record import record_of
from eyebar.record.tree import place_words
from eyebar.views import rounding, words
from eyebar.views.columns import Document, text
from eyebar.views.rating import Choice, governing
from eyebar.views.register import effect as posting_words


@dataclass(frozen=True, slots=True, kw_only=True)
class FaultSaid:
    """One fault of a text."""

    line: int | None = text("Line", "Where it stands; None for the whole text.")
    said: str = text("Fault", "What, where, rule, got, cure.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """One text of a record in a form."""

    number: int = text("Number", "Which of all texts of the record it is.")
    name: str = text("Name", "Its place within the group, in words.")
    value: str = text("Value", "As it is written.")


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldGroup:
    """The texts of a record that belong together."""

    name: str = text("Group", "Its place in the record, in words.")
    fields: tuple[Field, ...] = text("Fields", "Its texts.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Effect:
    """What a change would do to the posting."""

    before: str = text("Before", "The posting of the latest revision, and the least safe load.")
    after: str = text("After", "The same with the change.")
    why: tuple[str, ...] = text("Why", "Why it cannot be rated; empty where it can.")
    governed: str = text("Governed", "What would govern; empty where it cannot be rated.")
    parts: tuple[tuple[str, str, str], ...] = text(
        "Parts", "Parts whose least factor changes most: address, before, after."
    )


SHOWN = 12
"""Parts shown of those whose factor changes."""
BY_NAME = ("members", "floor", "overrides", "materials", "pins")
"""Blocks of a record whose entries are groups of their own."""


def faults_of(content: str, file: str) -> tuple[FaultSaid, ...]:
    """The faults of a text, all at once."""
    try:
        record_of(content, file=file)
    except BadRecord as bad:
        return _said(bad)
    return ()


def faults_of_bridge(content: str, file: str, office: Path | None) -> tuple[FaultSaid, ...]:
    """The faults of a text; where it has none as a record, those that only the form of the trusses,
    the office's values and the state on the day show."""
    try:
        opened(record_of(content, file=file), office=office)
    except BadRecord as bad:
        return _said(bad)
    return ()


def _said(bad: BadRecord) -> tuple[FaultSaid, ...]:
    return tuple(
        FaultSaid(line=fault.line, said=fault.said) for fault in bad.faults
    )


def groups_of(leaves: Sequence[Any]) -> tuple[FieldGroup, ...]:
    """The texts of a record by group, in its order."""
    numbered = [(path, value, number) for number, (path, value) in enumerate(leaves)]

    def group(one: tuple[Any, str, int]) -> tuple[Any, ...]:
        path = one[0]
        if path[0] in BY_NAME or (len(path) > 1 and isinstance(path[1], int)):
            return tuple(path[:2]) if len(path) > 2 else tuple(path[:1])
        return ("heading",) if len(path) == 1 else (path[0],)

    found: dict[tuple[Any, ...], list[Field]] = {}
    for key, several in groupby(numbered, key=group):
        depth = 0 if key == ("heading",) else len(key)
        found.setdefault(key, []).extend(
            Field(number=number, name=place_words(path[depth:]) or place_words(path), value=value)
            for path, value, number in several
        )
    return tuple(
        FieldGroup(name=place_words(key), fields=tuple(fields)) for key, fields in found.items()
    )


def effect(before: Document | str, after: Document | str) -> Effect:
    """What lies between two `rate` documents of one bridge; in the place of one that cannot be
    made stands the reason."""
    both = not isinstance(before, str) and not isinstance(after, str)
    return Effect(
        before=posting_words(_state(before)), after=posting_words(_state(after)),
        why=tuple(after.splitlines()) if isinstance(after, str) else (),
        governed="" if isinstance(after, str) else words.governed(after["posting"]),
        parts=_moved(_least(before), _least(after)) if both else (),
    )


def _state(rate: Document | str) -> Document:
    if isinstance(rate, str):
        return {"posting": None, "exact_tons": None, "refusal": rate.splitlines()[0]}
    return {
        "posting": words.posting_line(rate["posting"]), "refusal": None,
        "exact_tons": rate["posting"]["exact_tons"],
    }


def _moved(
    old: Mapping[str, float | None], new: Mapping[str, float | None]
) -> tuple[tuple[str, str, str], ...]:
    """The parts whose least factor by the posting's rule changes, most first."""
    changed = [
        (part, old.get(part), new.get(part)) for part in dict.fromkeys((*old, *new))
        if old.get(part) != new.get(part)
    ]
    changed.sort(key=lambda one: -abs((one[1] or 0.0) - (one[2] or 0.0)))
    return tuple(
        (part, rounding.factor(was), rounding.factor(now)) for part, was, now in changed[:SHOWN]
        if rounding.factor(was) != rounding.factor(now)
    )


def _least(rate: Document | str) -> dict[str, float | None]:
    """Part -> its least factor by the posting's rule; None where it has none."""
    if isinstance(rate, str):
        return {}
    by_part = {part["part"]: governing(part, Choice(), rate["posting"]) for part in rate["parts"]}
    return {part: None if by is None else float(by["factor"]) for part, by in by_part.items()}
