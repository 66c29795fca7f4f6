"""Ratings that the workbench keeps: a revision never changes, so it is rated once.

Rating goes on beside the pages, one bridge at a time; a page that needs one waits a moment, and
then says that it is being made.
"""

from collections import OrderedDict
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from concurrent.futures import TimeoutError as NotYet
from dataclasses import dataclass, field
from pathlib import Path
from threading import Lock
from typing import Any, TypeVar

from eyebar.documents.cross import cross_document
from eyebar.documents.drawn import drawn_of
from eyebar.documents.explain import governing_explained
from eyebar.documents.force_table import force_table_document
from eyebar.documents.gathered import Gathered, gathered_of
from eyebar.documents.opened import Opened, opened
from eyebar.rating import BridgeRating, rated_bridge
from eyebar.record import record_of
from eyebar.terms import Direction
from eyebar.vehicles import Vehicle

Document = dict[str, Any]
T = TypeVar("T")

MOST = 40
"""Bridges kept; the one longest not asked for goes first."""
PATIENCE_SECONDS = 0.4


class StillRating(Exception):
    """The rating that a page needs is being made."""


@dataclass(slots=True, kw_only=True)
class Rated:
    """A revision that was rated: its bridge, its documents, and tables made when asked for."""

    one: Opened
    rating: BridgeRating
    gathered: Gathered
    tables: dict[tuple[str, str, str], Document] = field(default_factory=dict)
    drawing: Document | None = None

    @property
    def rate(self) -> Document:
        """The `rate` document."""
        return self.gathered.rate

    @property
    def forces(self) -> Document | None:
        """The `forces` document, None where nobody can tell the forces."""
        return self.gathered.forces

    @property
    def drawn(self) -> Document:
        """The `drawn` document: shapes as built and as they are left."""
        if self.drawing is None:
            self.drawing = drawn_of(self.one)
        return self.drawing

    def table(self, truss: str, vehicle: str, way: Direction) -> Document:
        """The force table of a vehicle; raises as `force_table_document` does."""
        key = truss, vehicle, way.value
        if key not in self.tables:
            self.tables[key] = force_table_document(self.one, truss, vehicle, way=way)
        return self.tables[key]

    def explained(self, part: str) -> Document:
        """The working of the rating that governs a part."""
        return governing_explained(self.one, self.rating, part)


@dataclass(slots=True, kw_only=True)
class Kept:
    """The ratings, by the text of the record; and the board of each, which takes longer."""

    office: Path | None
    jobs: OrderedDict[tuple[str, str], Future[Any]] = field(default_factory=OrderedDict)
    lock: Lock = field(default_factory=Lock)
    worker: ThreadPoolExecutor = field(
        default_factory=lambda: ThreadPoolExecutor(1, thread_name_prefix="rating")
    )

    def rated(self, text: str, file: str) -> Rated:
        """The rating of a record's text. Raises StillRating, and what a rating raises."""
        found: Rated = self._waited(("rate", text), lambda: self._rate(text, file))
        return found

    def rating(self, text: str, file: str) -> "Future[Rated]":
        """The job that rates a text, begun if need be: for whoever has time to wait for it."""
        return self._job(("rate", text), lambda: self._rate(text, file))

    def board(self, text: str, file: str) -> Document:
        """The board of who may cross."""
        found: Document = self._waited(("board", text), lambda: cross_document(
            record_of(text, file=file), [], office=self.office
        ))
        return found

    def crossing(self, text: str, file: str, vehicle: str | Vehicle) -> Document:
        """The answer for one vehicle."""
        found: Document = self._waited((f"cross {vehicle}", text), lambda: cross_document(
            record_of(text, file=file), [vehicle], office=self.office
        ))
        return found

    def made(self, name: str, text: str, make: Callable[[], T]) -> T:
        """What takes long, by its name and the record that it is made from."""
        found: T = self._waited((name, text), make)
        return found

    def close(self) -> None:
        """Begin nothing more."""
        self.worker.shutdown(wait=False, cancel_futures=True)

    def _rate(self, text: str, file: str) -> Rated:
        one = opened(record_of(text, file=file), office=self.office)
        rating = rated_bridge(one.bridge, one.values, one.rated_vehicles)
        return Rated(one=one, rating=rating, gathered=gathered_of(one, rating))

    def _job(self, key: tuple[str, str], make: Callable[[], Any]) -> "Future[Any]":
        with self.lock:
            job = self.jobs.get(key)
            if job is None:
                job = self.jobs[key] = self.worker.submit(make)
                while len(self.jobs) > MOST:
                    self.jobs.popitem(last=False)
            self.jobs.move_to_end(key)
        return job

    def _waited(self, key: tuple[str, str], make: Callable[[], Any]) -> Any:
        try:
            return self._job(key, make).result(timeout=PATIENCE_SECONDS)
        except NotYet:
            raise StillRating from None
