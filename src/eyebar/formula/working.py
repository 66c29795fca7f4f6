"""The recorder: the working of a result is made by calling the same functions again under it."""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from eyebar.formula.declared import Formula, Procedure


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One formula as it was used: `inputs` by symbol, in the units the formula declares."""

    formula: "Formula"
    inputs: Mapping[str, float]
    result: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """A named step or residual of a procedure: what, under which symbol, how much, in what unit."""

    text: str
    symbol: str
    value: float
    unit: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """One procedure as it ran, with the steps inside it."""

    procedure: "Procedure"
    steps: tuple["Entry", ...]


Entry = Step | Note | Block
"""What stands in a working."""

Working = list[Entry]

open_working: ContextVar[Working | None] = ContextVar("open_working", default=None)
"""Where steps go at the moment; None while nobody records."""


@contextmanager
def recording() -> Iterator[Working]:
    """Collect every step made inside the block, in order; arrays are never recorded."""
    steps: Working = []
    token = open_working.set(steps)
    try:
        yield steps
    finally:
        open_working.reset(token)


def note(text: str, symbol: str, value: float, unit: str) -> None:
    """Add a named step or residual to the working; nothing happens while nobody records."""
    steps = open_working.get()
    if steps is not None:
        steps.append(Note(text=text, symbol=symbol, value=float(value), unit=unit))


def flat(steps: Working | tuple[Entry, ...]) -> Iterator[Step | Note]:
    """All steps and notes of a working in order, blocks opened up."""
    for entry in steps:
        if isinstance(entry, Block):
            yield from flat(entry.steps)
        else:
            yield entry


def distinct(steps: Working | tuple[Entry, ...]) -> tuple[Step | Note, ...]:
    """Each step and note of a working once, where it first stands: no formula is shown twice with
    the same numbers."""
    seen: set[tuple[object, ...]] = set()
    kept: list[Step | Note] = []
    for entry in flat(steps):
        key: tuple[object, ...] = (
            (entry.formula.module, entry.formula.name, *entry.inputs.values())
            if isinstance(entry, Step)
            else (entry.text, entry.symbol, entry.value)
        )
        if key not in seen:
            seen.add(key)
            kept.append(entry)
    return tuple(kept)
