"""The `explain` document: the working of one part, made again by the same formulas."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import Any

from eyebar.addresses import address
from eyebar.documents.opened import CAUTION, NOT_ASSUMED_SOUND, Opened, closing, heading, opened
from eyebar.documents.pin import pin_object
from eyebar.documents.rate import rating_object
from eyebar.errors import Unknown, nearest
from eyebar.formula import Block, Entry, Note, Step, plain
from eyebar.rating import BridgeRating, PartRating, RatedPart, rated_bridge, replayed
from eyebar.rating.posting import Posting
from eyebar.rating.rated import NO_RULE
from eyebar.record import Record
from eyebar.terms import Level, Method


def explain_document(
    record: Path | Record, part: str, *, on: date | None = None, office: Path | None = None,
    vehicle: str | None = None, method: Method | None = None, level: Level | None = None,
) -> dict[str, Any]:
    """The working of one rating of one part: that asked for, else the one that governs it.

    Raises BadRecord, Unknown, Unstable, OutOfRange.
    """
    one = opened(record, on=on, office=office)
    rating = rated_bridge(one.bridge, one.values, one.rated_vehicles)
    rated = _part(rating, part)
    return explained(one, rated, _rating(
        rating.posting, rated, one.values.names("posting.vehicles"), (vehicle, method, level)
    ))


def governing_explained(one: Opened, rating: BridgeRating, part: str) -> dict[str, Any]:
    """The working of the rating that governs a part, of a bridge that has been rated."""
    return part_explained(one, rating.posting, _part(rating, part))


def part_explained(one: Opened, posting: Posting, rated: RatedPart) -> dict[str, Any]:
    """The same of one part of a rating, of which no more than its posting is at hand."""
    vehicles = one.values.names("posting.vehicles")
    return explained(one, rated, _rating(posting, rated, vehicles, (None, None, None)))


def explained(one: Opened, rated: RatedPart, chosen: PartRating) -> dict[str, Any]:
    """The document of one rating of one part."""
    again = replayed(
        one.bridge, rated, chosen, vehicle=one.vehicles[chosen.vehicle], values=one.values
    )
    return {
        **heading("explain", 1, one),
        "part": rated.address,
        "kind": str(rated.kind),
        "rating": rating_object(chosen),
        "steps": [entry_object(entry) for entry in again.steps],
        "remarks": [
            *(chosen.limit.remarks if chosen.limit else ()),
            *((rated.provisional,) if rated.provisional else ()),
            *(rated.pin.rules if rated.pin else ()),
            *(chosen.floor.strength.remarks if chosen.floor else ()),
        ],
        "readings": list(rated.readings),
        **({} if rated.pin is None else {
            "pin": pin_object(one.bridge, rated.pin, chosen, one.values)
        }),
        "cautions": [CAUTION, NOT_ASSUMED_SOUND],
        **closing(one),
    }


def _part(rating: BridgeRating, part: str) -> RatedPart:
    wanted = address(part).part
    known = {one.address: one for one in rating.parts}
    if wanted not in known:
        raise Unknown("part", wanted, near=nearest(wanted, known), where=rating.bridge.name)
    found = known[wanted]
    if found.not_rated:
        raise Unknown("working of", f"{wanted}", where=f"this rating: {found.not_rated}")
    return found


def _rating(
    posting: Posting, part: RatedPart, vehicles: Sequence[str],
    asked: tuple[str | None, Method | None, Level | None],
) -> PartRating:
    """The least of the ratings asked for; where nothing was, of those by the posting's method for
    the vehicles that set it."""
    vehicle, method, level = asked
    everything = list(part.ratings)
    if asked == (None, None, None):
        fitting = _as_posted(posting, part, vehicles)
    else:
        fitting = [
            one for one in everything
            if vehicle in {None, one.vehicle} and method in {None, one.method}
            and level in {None, one.level}
        ]
    if not fitting:
        words = ", ".join(str(word) for word in asked if word is not None)
        near = nearest(vehicle, {one.vehicle for one in part.ratings}) if vehicle else ""
        raise Unknown("rating", words, near=near, where=part.address)
    return min(fitting, key=lambda one: float("inf") if one.factor is None else one.factor)


def _as_posted(
    posting: Posting, part: RatedPart, vehicles: Sequence[str]
) -> list[PartRating]:
    """The ratings by the posting's method and level for the vehicles that set it; where its method
    has no rule for the part, all that have one."""
    setting = [one for one in part.ratings if one.vehicle in vehicles] or list(part.ratings)
    ruled = [one for one in setting if one.reason != NO_RULE]
    posted = (posting.method, posting.level)
    return [one for one in ruled if (one.method, one.level) == posted] or [
        one for one in ruled if one.level is Level.OPERATING
    ] or ruled or setting


def entry_object(entry: Entry) -> dict[str, Any]:
    """A step of a working as an object."""
    if isinstance(entry, Block):
        return {
            "entry": "procedure",
            "title": entry.procedure.name,
            "source": entry.procedure.source,
            "steps": [entry_object(inner) for inner in entry.steps],
        }
    if isinstance(entry, Note):
        return {
            "entry": "note", "text": entry.text, "symbol": entry.symbol, "value": entry.value,
            "unit": entry.unit,
        }
    return _step(entry)


def _step(step: Step) -> dict[str, Any]:
    formula = step.formula
    return {
        "entry": "formula",
        "formula": f"{formula.module}.{formula.name}",
        "title": formula.result.meaning,
        "equation": plain(formula),
        "with_numbers": plain(step),
        "symbols": {
            name: {"meaning": symbol.meaning, "value": step.inputs[name], "unit": symbol.unit}
            for name, symbol in formula.symbols.items()
        },
        "symbol": formula.equation.left,
        "result": step.result,
        "unit": formula.result.unit,
        "source": formula.source,
    }
