"""The worse of what is there and what was read, in one field of one piece."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from typing import TYPE_CHECKING, Any, TypeVar

from eyebar.errors import OutOfRange, did_you_mean

if TYPE_CHECKING:
    from _typeshed import DataclassInstance

    Shape = TypeVar("Shape", bound=DataclassInstance)
else:
    Shape = TypeVar("Shape")

Found = TypeVar("Found")

WEARS_WIDER = ("hole",)
"""Measures that grow when iron is lost."""


def field_named(what: str, fields: Mapping[str, Found], of: str) -> Found:
    """The field that a measure's name stands for. Raises OutOfRange."""
    if what not in fields:
        raise OutOfRange(
            "a reading", f"the {what} of {of}",
            f"one of {', '.join(fields)}; {did_you_mean(what, fields)}",
        )
    return fields[what]


def counted(piece: int | None, number: int) -> None:
    """Raises OutOfRange for a piece that is not there; pieces are counted from 1."""
    if piece is not None and not 1 <= piece <= number:
        raise OutOfRange("the piece of a reading", piece, f"from 1 to {number}")


def changed_pieces(
    pieces: tuple[Shape, ...], piece: int | None, change: Callable[[Shape], Shape]
) -> tuple[Shape, ...]:
    """One piece of a set changed, or all of them. Raises OutOfRange."""
    counted(piece, len(pieces))
    return tuple(
        change(one) if piece in (None, number) else one for number, one in enumerate(pieces, 1)
    )


def worse(thing: Shape, path: str, value: float) -> Shape:
    """The copy with the worse of what is there and what was read; `path` may lead into a part,
    `taper.edge`. Raises OutOfRange where the thing has no such part."""
    field, _, below = path.partition(".")
    there: Any = getattr(thing, field)
    if below:
        if there is None:
            raise OutOfRange("a reading", f"of a {field}", "of something this piece has")
        changed: dict[str, Any] = {field: worse(there, below, value)}
        return replace(thing, **changed)
    if there is not None:
        value = max(there, value) if field in WEARS_WIDER else min(there, value)
    changed = {field: value}
    return replace(thing, **changed)


def worse_all(thing: Shape, paths: Iterable[str], value: float) -> Shape:
    """The copy with the same reading in several fields: the legs of an angle."""
    for path in paths:
        thing = worse(thing, path, value)
    return thing
