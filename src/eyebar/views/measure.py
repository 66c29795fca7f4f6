"""What a text of a record says of itself: its faults, its fields by group, what it would change."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import Any

from eyebar.errors import BadRecord
from eyebar.record import record_of
from eyebar.record.tree import place_words
from eyebar.views import rounding, words
from eyebar.views.columns import Document, text


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

    before: str = text("Before", "The posting of the latest revision.")
    after: str = text("After", "The posting with the change.")
    tons: str = text("Safe load", "The least safe load before and after, in tons.")
    governed: str = text("Governed", "What would govern.")
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
        return tuple(
            FaultSaid(line=fault.line, said=fault.sentence(file)) for fault in bad.faults
        )
    return ()


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


def effect(before: Document, after: Document) -> Effect:
    """What lies between two `rate` documents of one bridge."""
    old, new = before["posting"], after["posting"]
    return Effect(
        before=words.posting_line(old), after=words.posting_line(new),
        tons=f"{rounding.safe_tons(old['exact_tons'])} before, "
             f"{rounding.safe_tons(new['exact_tons'])} after",
        governed=words.governed(new), parts=_moved(before, after),
    )


def _moved(before: Document, after: Document) -> tuple[tuple[str, str, str], ...]:
    """The parts whose least factor by the posting's rule changes, most first."""
    old, new = _least(before), _least(after)
    changed = [
        (part, old.get(part), new.get(part)) for part in dict.fromkeys((*old, *new))
        if old.get(part) != new.get(part)
    ]
    changed.sort(key=lambda one: -abs((one[1] or 0.0) - (one[2] or 0.0)))
    return tuple(
        (part, rounding.factor(was), rounding.factor(now)) for part, was, now in changed[:SHOWN]
        if rounding.factor(was) != rounding.factor(now)
    )


def _least(rate: Document) -> dict[str, float]:
    """Part -> its least factor."""
    found = {}
    for part in rate["parts"]:
        factors = [one["factor"] for one in part.get("ratings", ()) if one["factor"] is not None]
        if factors:
            found[part["part"]] = min(factors)
    return found
