"""What takes long, made of a record's text: in the process beside the pages, which keeps the last
bridges rated, or in this one. What is given and what is answered can be sent between the two.
"""

import pickle
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

from eyebar.documents.cross import document_of as crossed
from eyebar.documents.force_table import force_table_document
from eyebar.documents.gathered import Gathered, gathered_of
from eyebar.documents.opened import Opened, opened
from eyebar.documents.rate import vehicle_parts
from eyebar.drawings import stress_sheet
from eyebar.rating import BridgeRating, RatedPart, rated_bridge
from eyebar.rating.kept import Kept, kept_for
from eyebar.rating.posting import Posting
from eyebar.record import record_of
from eyebar.report.board_report import board_report
from eyebar.report.missing_report import missing_report, rated_at_all
from eyebar.report.rating_report import Asked, rating_report
from eyebar.terms import Direction, Leaf, Reader, Working
from eyebar.vehicles import Vehicle

Document = dict[str, Any]

MOST = 3
"""Bridges that are held rated."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """A record's text, how its file is called in faults, and the office's folder."""

    text: str
    file: str
    office: Path | None
    turn: int = 0
    """Grows with every rating asked for: what an earlier one left never serves for a later."""

    def opened(self) -> Opened:
        """The bridge, with values and vehicles. Raises BadRecord."""
        return opened(record_of(self.text, file=self.file), office=self.office)


class Shelf(Mapping[str, RatedPart]):
    """The parts of a rating by their addresses; sent between processes, each is unpacked when it
    is asked for, since a page shows one of hundreds."""

    def __init__(self, parts: Mapping[str, RatedPart | bytes]) -> None:
        self.parts = dict(parts)

    def __getitem__(self, address: str) -> RatedPart:
        found = self.parts[address]
        if isinstance(found, bytes):
            found = self.parts[address] = pickle.loads(found)
        return found

    def __iter__(self) -> Any:
        return iter(self.parts)

    def __len__(self) -> int:
        return len(self.parts)

    def __reduce__(self) -> tuple[type["Shelf"], tuple[dict[str, bytes]]]:
        return Shelf, ({name: pickle.dumps(self[name]) for name in self},)


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """A rating: its documents, as of `Gathered`, and its parts for their workings."""

    rate: Document
    describe: Document
    forces: Document | None
    no_forces: str
    posting: Posting
    parts: Shelf


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """A bridge that was rated, with all that is at hand."""

    one: Opened
    rating: BridgeRating
    gathered: Gathered


_left: dict[Source, Kept] = {}
"""What the last rating left for the next vehicles of that bridge: 100 MB and more, so that it is
kept of one bridge alone, and not with the documents."""


@lru_cache(MOST)
def _made(of: Source) -> Made:
    one = of.opened()
    kept = kept_for(one.bridge, one.values)
    rating = rated_bridge(one.bridge, one.values, one.rated_vehicles, kept)
    _left.clear()
    _left[of] = kept
    return Made(one=one, rating=rating, gathered=gathered_of(one, rating))


def ready() -> None:
    """Nothing; but whoever is asked for it has read this module and all that it needs."""


def rating(of: Source) -> Answer:
    """The rating of a bridge. Raises BadRecord, Unstable, OutOfRange."""
    made = _made(of)
    documents = made.gathered
    return Answer(
        rate=documents.rate, describe=documents.describe, forces=documents.forces,
        no_forces=documents.no_forces, posting=made.rating.posting,
        parts=Shelf({part.address: part for part in made.rating.parts}),
    )


def crossing(of: Source, asked: Iterable[Vehicle]) -> Document:
    """The `cross` document of some vehicles."""
    return crossed(_made(of).one, list(asked))


def table(of: Source, truss: str, vehicle: str, way: Direction) -> Document:
    """The force table of a vehicle; raises as `force_table_document` does."""
    return force_table_document(_made(of).one, truss, vehicle, way=way)


def parts_of_vehicle(of: Source, vehicle: Vehicle) -> list[Document]:
    """The parts of a `rate` document, rated for one vehicle alone."""
    return vehicle_parts(_made(of).one, vehicle, _left.get(of))


def sheet(of: Source, leaf: Leaf) -> bytes:
    """The stress sheet, as SVG."""
    found = _made(of).gathered
    assert found.forces is not None
    return bytes(stress_sheet(found.rate, found.forces, leaf=leaf).svg, "utf-8")


def report(of: Source, working: Working, reader: Reader) -> bytes:
    """The report, as PDF; of a bridge of which no part is rated, what is missing."""
    found = _made(of).gathered
    if not rated_at_all(found):
        return missing_report(found, None)
    return rating_report(found, Asked(working=working, reader=reader))


def board_paper(cross: Document) -> bytes:
    """The board of a `cross` document, as PDF."""
    return board_report(cross, None)
