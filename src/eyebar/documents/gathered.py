"""All documents of one bridge that a report is made from, the bridge rated once."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from functools import cache, partial
from pathlib import Path
from typing import Any

from eyebar.documents.aside import aside
from eyebar.documents.bracing import bracing_of
from eyebar.documents.cross import chosen, crossing_object
from eyebar.documents.cross import document_of as crossed
from eyebar.documents.describe import described
from eyebar.documents.explain import governing_explained
from eyebar.documents.forces import forces_of
from eyebar.documents.opened import Opened, opened
from eyebar.documents.rate import document_of
from eyebar.documents.vehicles import vehicle_objects
from eyebar.errors import NotMeasured, Unstable
from eyebar.rating import BridgeRating, rated_bridge
from eyebar.rating.first_answers import first_answers
from eyebar.rating.kept import Kept, kept_for
from eyebar.rating.posted import posted_for
from eyebar.record import Record
from eyebar.terms import Board, VehicleClass

Document = dict[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class Gathered:
    """The documents; `forces` is None, with the reason, where nobody can tell the forces.

    `explain` makes the working of a part that is rated, when asked for.
    """

    rate: Document
    describe: Document
    forces: Document | None
    no_forces: str
    vehicles: Document
    everyday: tuple[Document, ...]
    """Vehicles of every day: `vehicle`, `tons`, and what of it is `above` which limit, in words."""
    explain: Callable[[str], Document]
    board: Callable[[Board], tuple[Document, ...]]
    """The answers of a `cross` document for every vehicle of every day, when asked for."""
    bracing: Callable[[], Document]
    """The `bracing` document, when asked for."""


def gathered(
    record: Path | Record, *, on: date | None = None, office: Path | None = None
) -> Gathered:
    """The documents of a bridge on a date. Raises BadRecord, Unstable, OutOfRange."""
    one = opened(record, on=on, office=office)
    kept = kept_for(one.bridge, one.values)
    return gathered_of(one, rated_bridge(one.bridge, one.values, one.rated_vehicles, kept), kept)


def gathered_of(one: Opened, rating: BridgeRating, kept: Kept | None = None) -> Gathered:
    """The documents of a bridge that has been rated; `kept` is what its rating left, if at hand."""
    forces, why = _forces(one, kept)
    return Gathered(
        rate=document_of(one, rating), describe=described(one), forces=forces, no_forces=why,
        vehicles={"vehicles": vehicle_objects(one.rated_vehicles.values())},
        everyday=_everyday(one, rating), explain=cache(_explaining(one, rating)),
        bracing=cache(partial(bracing_of, one)),
        board=cache(_boarding(one, rating, kept)),
    )


def board_beside(of: Gathered, which: Board) -> Gathered:
    """The same documents, the board of one kind begun beside whatever comes next."""
    if which is Board.NONE:
        return of
    begun = cache(aside(partial(of.board, which)))
    return replace(of, board=lambda asked: begun() if asked is which else of.board(asked))


def _forces(one: Opened, kept: Kept | None) -> tuple[Document | None, str]:
    try:
        return forces_of(one, kept), ""
    except (NotMeasured, Unstable) as why:
        return None, str(why)


def _everyday(one: Opened, rating: BridgeRating) -> tuple[Document, ...]:
    return tuple(
        {"vehicle": vehicle.name, "tons": vehicle.weight_tons,
         "above": posted_for(vehicle, rating.posting, one.values).above}
        for vehicle in one.vehicles.values()
        if vehicle.vehicle_class is VehicleClass.EVERYDAY and vehicle.weight_tons
    )


def _explaining(one: Opened, rating: BridgeRating) -> Callable[[str], Document]:
    def explain(part: str) -> Document:
        return governing_explained(one, rating, part)

    return explain


def _boarding(
    one: Opened, rating: BridgeRating, kept: Kept | None
) -> Callable[[Board], tuple[Document, ...]]:
    def board(which: Board) -> tuple[Document, ...]:
        everyday = chosen([], one.vehicles)
        if which is Board.NONE:
            return ()
        if which is Board.CONDITIONS:
            return tuple(crossed(one, everyday)["vehicles"])
        left = kept or kept_for(one.bridge, one.values)  # large: let go where nobody gave it
        answers = first_answers(one.bridge, rating, left, everyday)
        return tuple(crossing_object(answer, rating.posting) for answer in answers)

    return board


def workings(of: Gathered, parts: Iterable[str]) -> Mapping[str, Document]:
    """Address -> `explain` document, of parts that are rated."""
    return {part: of.explain(part) for part in parts}
