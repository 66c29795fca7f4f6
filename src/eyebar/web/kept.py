"""Ratings that the workbench keeps: a revision never changes, so it is rated once.

Rating goes on beside the pages, one bridge at a time; a page that needs one waits a moment, and
then says that it is being made.
"""

import math
import time
from collections import OrderedDict
from collections.abc import Callable, Hashable
from concurrent.futures import Future, ThreadPoolExecutor, wait
from dataclasses import dataclass, field
from enum import StrEnum
from pathlib import Path
from threading import Lock
from typing import Any, TypeVar

from eyebar.documents.cross import chosen
from eyebar.documents.cross import document_of as crossed
from eyebar.documents.drawn import drawn_of
from eyebar.documents.force_table import force_table_document
from eyebar.documents.gathered import Gathered, gathered_of
from eyebar.documents.opened import Opened, opened
from eyebar.documents.rate import vehicle_parts
from eyebar.rating import BridgeRating, rated_bridge
from eyebar.record import record_of
from eyebar.terms import Direction
from eyebar.vehicles import Vehicle

Document = dict[str, Any]
Key = tuple[str, str]
"""What is made, and the text of the record that it is made from."""
T = TypeVar("T")

MOST = 24
"""Ratings, boards and papers kept; the one longest not asked for goes first. A rating with its
documents takes some 30 MB."""
PATIENCE_SECONDS = 0.4
GONE_SECONDS = 10.0
"""A page that waits asks again every two seconds: whoever did not for so long has gone."""


class Making(StrEnum):
    """What takes long."""

    RATING = "rating"
    CROSSING = "crossing"
    TABLE = "table"
    PAPER = "paper"
    COMPARISON = "comparison"


class NobodyWaits(Exception):
    """What was to be made is wanted by nobody any longer, as by a page of an older revision."""


class StillRating(Exception):
    """What a page needs is being made."""

    def __init__(self, what: Making) -> None:
        super().__init__(what)
        self.what = what


@dataclass(slots=True, kw_only=True)
class Rated:
    """A revision that was rated: its bridge, its documents, and tables made when asked for."""

    one: Opened
    rating: BridgeRating
    gathered: Gathered
    found: dict[Hashable, Any] = field(default_factory=dict)
    """What was made of it since, by what it is."""

    @property
    def text(self) -> str:
        """The text of its record."""
        return self.one.record.text

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
        return self.once("drawn", lambda: drawn_of(self.one))

    def once(self, key: Hashable, make: Callable[[], T]) -> T:
        """What is made of this rating when it is asked for, and not again; two who ask at once may
        both make it."""
        if key not in self.found:
            self.found[key] = make()
        made: T = self.found[key]
        return made


@dataclass(slots=True, kw_only=True)
class Kept:
    """The ratings, by the text of the record; and the board of each, which takes longer."""

    office: Path | None
    jobs: OrderedDict[Key, Future[Any]] = field(default_factory=OrderedDict)
    asked: dict[Key, float] = field(default_factory=dict)
    """When somebody last asked for what is not made yet; infinite for who waits in any case."""
    lock: Lock = field(default_factory=Lock)
    worker: ThreadPoolExecutor = field(
        default_factory=lambda: ThreadPoolExecutor(1, thread_name_prefix="rating")
    )

    def rated(self, text: str, file: str) -> Rated:
        """The rating of a record's text. Raises StillRating, and what a rating raises."""
        found: Rated = self._waited(
            ("rate", text), lambda: self._rate(text, file), Making.RATING
        )
        return found

    def rating(self, text: str, file: str) -> "Future[Rated]":
        """The job that rates a text, begun if need be: for whoever has time to wait for it."""
        return self._job(("rate", text), lambda: self._rate(text, file), now=math.inf)

    def board(self, found: Rated) -> Document:
        """The board of who may cross."""
        document: Document = self._waited(
            ("board", found.text), lambda: crossed(found.one, chosen([], found.one.vehicles)),
            Making.CROSSING,
        )
        return document

    def crossing(self, found: Rated, vehicle: str | Vehicle) -> Document:
        """The answer for one vehicle. Raises Unknown and OutOfRange for one that cannot cross."""
        asked = chosen([vehicle], found.one.vehicles)
        document: Document = self._waited(
            (f"cross {asked}", found.text), lambda: crossed(found.one, asked), Making.CROSSING
        )
        return document

    def table(self, found: Rated, truss: str, vehicle: str, way: Direction) -> Document:
        """The force table of a vehicle; raises as `force_table_document` does."""
        return self._of(
            found, f"table {truss} {vehicle} {way}",
            lambda: force_table_document(found.one, truss, vehicle, way=way), Making.TABLE,
        )

    def rate(self, found: Rated, vehicle: Vehicle) -> Document:
        """Posting and parts of the `rate` document; of a vehicle that is not among those rated,
        the parts rated for it alone, in the same way."""
        if vehicle.name in found.one.rated_vehicles:
            return found.rate
        parts = self._of(found, f"rate {vehicle.name}", lambda: vehicle_parts(found.one, vehicle),
                         Making.CROSSING)
        return {"posting": found.rate["posting"], "parts": parts}

    def _of(self, found: Rated, name: str, make: Callable[[], T], what: Making) -> T:
        """What is made of a rating beside the pages, and kept with it."""
        if name not in found.found:
            key = name, found.text
            found.found[name] = self._waited(key, make, what)
            with self.lock:
                self._drop(key)
        made: T = found.found[name]
        return made

    def made(self, name: str, text: str, make: Callable[[], T], what: Making = Making.PAPER) -> T:
        """What takes long, by its name and the record that it is made from."""
        found: T = self._waited((name, text), make, what)
        return found

    def close(self) -> None:
        """Begin nothing more."""
        self.worker.shutdown(wait=False, cancel_futures=True)

    def _rate(self, text: str, file: str) -> Rated:
        one = opened(record_of(text, file=file), office=self.office)
        rating = rated_bridge(one.bridge, one.values, one.rated_vehicles)
        return Rated(one=one, rating=rating, gathered=gathered_of(one, rating))

    def _job(self, key: Key, make: Callable[[], Any], now: float) -> "Future[Any]":
        """The job of a key, begun if need be."""
        with self.lock:
            job = self.jobs.get(key)
            if job is None:
                job = self.jobs[key] = self.worker.submit(self._wanted, key, make)
                while len(self.jobs) > MOST:
                    self._drop(next(iter(self.jobs)))
            self.jobs.move_to_end(key)
            if not job.done():
                self.asked[key] = max(now, self.asked.get(key, 0.0))
        return job

    def _wanted(self, key: Key, make: Callable[[], Any]) -> Any:
        """What a job makes, if somebody waits for it still."""
        with self.lock:
            if time.monotonic() - self.asked.get(key, 0.0) > GONE_SECONDS:
                self._drop(key)
                raise NobodyWaits
        return make()

    def _waited(self, key: Key, make: Callable[[], Any], what: Making) -> Any:
        """What a job has made. One that failed says so once, and is tried again when it is asked
        for again: what it lacked may be there then."""
        job = self._job(key, make, time.monotonic())
        if not wait([job], timeout=PATIENCE_SECONDS).done:
            raise StillRating(what)
        with self.lock:
            self.asked.pop(key, None)
            if (job.cancelled() or job.exception() is not None) and self.jobs.get(key) is job:
                self._drop(key)
        try:
            return job.result()
        except NobodyWaits:
            raise StillRating(what) from None

    def _drop(self, key: Key) -> None:
        """Keep a job no longer; by whoever holds the lock."""
        self.jobs.pop(key, None)
        self.asked.pop(key, None)
