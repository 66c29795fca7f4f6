"""What one reading leaves of a section: a changed copy, never a better one.

A reading that is smaller than what is there replaces it; one that is larger is kept out, so that
readings may be applied in any order and the worst of each measure stands. For a pin hole the
larger is the worse. A measure that was unknown takes the reading.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any, TypeAlias, TypeVar

from eyebar.errors import OutOfRange, did_you_mean
from eyebar.sections.shapes import (
    Channel,
    Channels,
    Eyebar,
    Eyebars,
    Given,
    Plate,
    Plates,
    Rod,
    Rods,
    Rolled,
    Section,
)

Shape = TypeVar("Shape", Eyebar, Rod, Plate, Channel, Rolled, Given)
Change: TypeAlias = Callable[[Shape], Shape]

HEAD_PLACES = ("head", "hole", "end")
"""First words of the places that belong to a head and not to the body."""
WEARS_WIDER = ("hole",)
"""Measures that grow when iron is lost."""

_BODY: Mapping[str, str] = {
    "thickness": "thickness", "width": "width", "head": "head", "hole": "hole",
    "beyond hole": "beyond", "head thickness": "head_thickness",
}
_HEAD: Mapping[str, str] = {**_BODY, "thickness": "head_thickness", "width": "head"}
_ROD: Mapping[str, str] = {
    "diameter": "size", "side": "size", "root diameter": "root_diameter",
    "turnbuckle area": "turnbuckle_area",
}
_THREAD: Mapping[str, str] = {**_ROD, "diameter": "root_diameter"}
_ROLLED: Mapping[str, str] = {
    "depth": "depth", "web": "web", "flange": "flange", "flange thickness": "flange_thickness",
}
_PLATE: Mapping[str, str] = {"width": "width", "thickness": "thickness"}
_ATTACHED = ("cover plate", "lacing", "batten")


def corroded(
    section: Section, *, what: str, value: float, piece: int | None = None, place: str = ""
) -> Section:
    """The section as one reading leaves it.

    `what` was measured [in, or in2 for areas] at `place` ("mid", "head L4", "thread"; empty: on
    the body) on `piece`, counted from 1 (of two channels 1 is the near one); without a piece it
    holds for all of them. Raises OutOfRange for a measure or a piece that the section has not.
    """
    if value < 0:
        raise OutOfRange(what, f"{value:g}", "0 or more")
    match section:
        case Eyebars():
            fields = _HEAD if place.partition(" ")[0] in HEAD_PLACES else _BODY
            field = _field(what, fields, "eyebars")
            changed = _each(section.bars, piece, lambda bar: _worse(bar, field, value))
            return replace(section, bars=changed)
        case Rods():
            field = _field(what, _THREAD if place == "thread" else _ROD, "rods")
            return replace(
                section, rods=_each(section.rods, piece, lambda rod: _worse(rod, field, value))
            )
        case Plates():
            field = _field(what, _PLATE, "plates")
            return replace(
                section, plates=_each(section.plates, piece, lambda one: _worse(one, field, value))
            )
        case Channels():
            return _channels(section, what, value, piece)
        case Rolled():
            # Several rolled shapes are kept as one size: a reading on one of them holds for all.
            _counted(piece, section.number)
            return _worse(section, _field(what, _ROLLED, "rolled shapes"), value)
        case Given():
            _counted(piece, 1)
            field = _field(what, {"area": "area", "net area": "net_area"}, "given properties")
            return _worse(section, field, value)


def _channels(section: Channels, what: str, value: float, piece: int | None) -> Channels:
    """Two channels, or what ties them: `cover plate thickness`, `lacing width`."""
    for name in _ATTACHED:
        if what.startswith(f"{name} "):
            return _attached(section, name, what.removeprefix(f"{name} "), value)
    near, far = _each(
        (section.near, section.far), piece,
        lambda one: _worse(one, _field(what, _ROLLED, "channels"), value),
    )
    return replace(section, near=near, far=far)


def _attached(section: Channels, name: str, what: str, value: float) -> Channels:
    field = _field(what, _PLATE, f"a {name}")
    if name == "cover plate" and section.cover is not None:
        return replace(section, cover=_worse(section.cover, field, value))
    if name == "lacing" and section.lacing is not None:
        bar = _worse(section.lacing.bar, field, value)
        return replace(section, lacing=replace(section.lacing, bar=bar))
    if name == "batten" and section.battens is not None:
        plate = _worse(section.battens.plate, field, value)
        return replace(section, battens=replace(section.battens, plate=plate))
    raise OutOfRange("a reading", f"of a {name}", "of something these channels have")


def _field(what: str, fields: Mapping[str, str], of: str) -> str:
    """The field that a measure's name stands for."""
    if what not in fields:
        raise OutOfRange(
            "a reading", f"the {what} of {of}",
            f"one of {', '.join(fields)}; {did_you_mean(what, fields)}",
        )
    return fields[what]


def _counted(piece: int | None, number: int) -> None:
    if piece is not None and not 1 <= piece <= number:
        raise OutOfRange("the piece of a reading", piece, f"from 1 to {number}")


def _each(pieces: tuple[Shape, ...], piece: int | None, change: Change[Shape]) -> tuple[Shape, ...]:
    """One piece of a set changed, or all of them."""
    _counted(piece, len(pieces))
    return tuple(
        change(one) if piece in (None, number) else one for number, one in enumerate(pieces, 1)
    )


def _worse(thing: Shape, field: str, value: float) -> Shape:
    """The copy with the worse of what is there and what was read."""
    there: float | None = getattr(thing, field)
    if there is not None:
        value = max(there, value) if field in WEARS_WIDER else min(there, value)
    changed: dict[str, Any] = {field: value}
    return replace(thing, **changed)
