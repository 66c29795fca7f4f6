"""The heading and the help text that a field of a view carries with it."""

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

Document = dict[str, Any]
"""A document as it stands in JSON: what the views are made from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """One field of a view: its name, its heading, what it means, and whether it is a figure."""

    name: str
    heading: str
    help: str
    figure: bool


def text(heading: str, meaning: str) -> Any:
    """A field of words, with its heading and its help text."""
    return dataclasses.field(metadata={"heading": heading, "help": meaning, "figure": False})


def figure(heading: str, meaning: str) -> Any:
    """A field that holds a figure: tables set it to the right."""
    return dataclasses.field(metadata={"heading": heading, "help": meaning, "figure": True})


def columns(view: type) -> tuple[Column, ...]:
    """The columns of a view's class, in the order of its fields."""
    return tuple(
        Column(
            name=field.name,
            heading=field.metadata["heading"],
            help=field.metadata["help"],
            figure=field.metadata["figure"],
        )
        for field in dataclasses.fields(view)
    )


def cells(row: Any) -> Sequence[str]:
    """The strings of one row, in the order of its columns."""
    return [getattr(row, field.name) for field in dataclasses.fields(row)]
