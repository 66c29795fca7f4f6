"""How old a bridge may be: what its details say, each with its reason, and where they disagree.

The years stand in `details.toml`; they are common practice, so the bracket is a hint and no date.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any

from eyebar.bridge.parts import Bridge
from eyebar.record import EndFixing
from eyebar.sections.built import FlangedSegments
from eyebar.sections.shapes import Eyebars, Loops, Rod, Rods
from eyebar.sources import table_rows
from eyebar.terms import Form, Metal


@dataclass(frozen=True, slots=True, kw_only=True)
class Detail:
    """One row of the table: years between which something was usual, None where nothing is said."""

    name: str
    says: str
    first: int | None
    last: int | None
    source: str
    confirmed: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """Spans [ft] between which a form was usually built."""

    least_ft: float
    greatest_ft: float
    source: str
    confirmed: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Age:
    """What the details say of the year.

    `details` found on the bridge; `first`, `last` the bracket that all of them leave open, None on
    a side of which none says anything; `contradictions` in sentences. Where two details exclude
    each other the bracket is empty, and both ends are None.
    """

    details: tuple[Detail, ...]
    first: int | None
    last: int | None
    contradictions: tuple[str, ...]


def age(
    bridge: Bridge, forms: Iterable[Form | None], joined: Iterable[EndFixing] = ()
) -> Age:
    """The bracket of years of a bridge whose trusses are of these forms, its members joined so."""
    table = details()
    seen = (*_seen(bridge, forms), *(f"{fixing} joints" for fixing in joined))
    found = [table[name] for name in dict.fromkeys(seen) if name in table]
    return _bracket(found, bridge.built)


def _bracket(found: Sequence[Detail], built: int | None) -> Age:
    early = max((one for one in found if one.first), key=lambda one: one.first or 0, default=None)
    late = min((one for one in found if one.last), key=lambda one: one.last or 0, default=None)
    against = [*_each_other(early, late), *_the_year(found, built)]
    first = early.first if early else None
    last = late.last if late else None
    if first and last and first > last:
        first = last = None
    return Age(details=tuple(found), first=first, last=last, contradictions=tuple(against))


def _each_other(early: Detail | None, late: Detail | None) -> Iterator[str]:
    if early and late and early.first and late.last and early.first > late.last:
        yield (
            f"{early.says} were not usual before {early.first}, and {late.says} not after "
            f"{late.last}: one of them came later, or was used again"
        )


def _the_year(found: Iterable[Detail], built: int | None) -> Iterator[str]:
    """What speaks against the year that the record gives."""
    if built is None:
        return
    for one in found:
        if one.first and built < one.first:
            yield f"built {built} by the record; usual from {one.first} on: {one.says}"
        elif one.last and built > one.last:
            yield f"built {built} by the record; usual until {one.last}: {one.says}"


def _seen(bridge: Bridge, forms: Iterable[Form | None]) -> Iterator[str]:
    """Names of the rows that speak of something on this bridge."""
    bars = [bar for truss in bridge.trusses for bar in (*truss.bars, *truss.broken)]
    if any(truss.pins for truss in bridge.trusses) or any(
        isinstance(bar.as_built, Eyebars) for bar in bars
    ):
        yield "pins"
    metals = {bar.material.metal for bar in bars}
    for metal in (Metal.WROUGHT_IRON, Metal.STEEL):
        if metal in metals:
            yield str(metal)
    if any(seat.metal is Metal.CAST_IRON for bar in bars for seat in bar.seats):
        yield "cast-iron blocks"
    if any(isinstance(bar.as_built, FlangedSegments) for bar in bars):
        yield "flanged segments"
    if any(_forged(rod) for bar in bars if isinstance(bar.as_built, Rods)
           for rod in bar.as_built.rods):
        yield "loop rods"
    yield from (str(form) for form in forms if form is not None)


def _forged(rod: Rod) -> bool:
    return rod.looped and rod.loops is Loops.WELDED


@cache
def details() -> Mapping[str, Detail]:
    """The table of details by name."""
    return {
        row["name"]: Detail(
            name=row["name"], says=row["says"], first=row["from"] or None, last=row["to"] or None,
            source=row["source"], confirmed=row["confirmed"],
        )
        for row in _rows("details.toml")
    }


@cache
def usual_spans() -> Mapping[str, Span]:
    """The usual spans by form."""
    return {
        row["name"]: Span(
            least_ft=row["least_ft"], greatest_ft=row["greatest_ft"], source=row["source"],
            confirmed=row["confirmed"],
        )
        for row in _rows("spans.toml")
    }


def _rows(name: str) -> list[Mapping[str, Any]]:
    content = files("eyebar.history").joinpath(name).read_bytes()
    return [row.fields for row in table_rows(content, file=name, heading="row")]
