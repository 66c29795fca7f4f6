"""Ratings that the workbench keeps: a revision never changes, so it is rated once.

Rating goes on beside the pages, one bridge at a time, by default in a process of its own; a page
that needs one waits a moment, and then says that it is being made.
"""

import math
import time
from collections import OrderedDict
from collections.abc import Callable, Hashable, Iterator, Sequence
from concurrent.futures import Future, ThreadPoolExecutor, wait
from dataclasses import dataclass, field
from enum import StrEnum
from itertools import count
from pathlib import Path
from threading import Lock
from typing import Any, TypeVar

from eyebar.documents.cross import chosen
from eyebar.documents.drawn import drawn_of
from eyebar.documents.explain import part_explained
from eyebar.documents.opened import Opened
from eyebar.terms import Direction
from eyebar.vehicles import Vehicle
from eyebar.web import making
from eyebar.web.beside import Beside
from eyebar.web.making import Answer, Document, Source

Key = tuple[str, str]
"""What is made, and the text of the record that it is made from."""
T = TypeVar("T")

MOST = 24
"""Ratings, boards and papers kept; the one longest not asked for goes first. A rating with its
documents takes some 30 MB."""
PATIENCE_SECONDS = 0.4
SOON_SECONDS = 1.2
"""How long a page waits for what takes less than a rating, where nothing else is being made: it
then comes at once, not after it was asked for again."""
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

    source: Source
    one: Opened
    answer: Answer
    found: dict[Hashable, Any] = field(default_factory=dict)
    """What was made of it since, by what it is."""

    @property
    def text(self) -> str:
        """The text of its record."""
        return self.source.text

    @property
    def rate(self) -> Document:
        """The `rate` document."""
        return self.answer.rate

    @property
    def describe(self) -> Document:
        """The `describe` document."""
        return self.answer.describe

    @property
    def forces(self) -> Document | None:
        """The `forces` document, None where nobody can tell the forces."""
        return self.answer.forces

    @property
    def drawn(self) -> Document:
        """The `drawn` document: shapes as built and as they are left."""
        return self.once("drawn", lambda: drawn_of(self.one))

    def explained(self, part: str) -> Document:
        """The working of the rating that governs a part that is rated."""
        return part_explained(self.one, self.answer.posting, self.answer.parts[part])

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
    beside: Beside = field(default_factory=lambda: Beside(here=True))
    """Where they are made."""
    turns: Iterator[int] = field(default_factory=count)
    jobs: OrderedDict[Key, Future[Any]] = field(default_factory=OrderedDict)
    asked: dict[Key, float] = field(default_factory=dict)
    """When somebody last asked for what is not made yet; infinite for who waits in any case."""
    lock: Lock = field(default_factory=Lock)
    worker: ThreadPoolExecutor = field(
        default_factory=lambda: ThreadPoolExecutor(1, thread_name_prefix="rating")
    )

    def begin(self) -> None:
        """Have the process for ratings there before the first is asked for."""
        self.worker.submit(self.beside.call, making.ready)

    def rated(self, text: str, file: str) -> Rated:
        """The rating of a record's text. Raises StillRating, and what a rating raises."""
        found: Rated = self._waited(
            ("rate", text), lambda: self._rate(text, file), Making.RATING
        )
        return found

    def rating(self, text: str, file: str) -> "Future[Rated]":
        """The job that rates a text, begun if need be: for whoever has time to wait for it."""
        return self._job(("rate", text), lambda: self._rate(text, file), now=math.inf)

    @property
    def rating_all(self) -> bool:
        """Whether ratings are under way that are made in any case, asked for by a page or not."""
        with self.lock:
            return any(
                key[0] == "rate" and self.asked.get(key) == math.inf and not job.done()
                for key, job in self.jobs.items()
            )

    def board(self, found: Rated) -> Document:
        """The board of who may cross."""
        return self._crossed("board", found, chosen([], found.one.vehicles))

    def crossing(self, found: Rated, vehicle: str | Vehicle) -> Document:
        """The answer for one vehicle. Raises Unknown and OutOfRange for one that cannot cross."""
        asked = chosen([vehicle], found.one.vehicles)
        return self._crossed(f"cross {asked}", found, asked)

    def _crossed(self, name: str, found: Rated, asked: Sequence[Vehicle]) -> Document:
        document: Document = self._waited(
            (name, found.text),
            lambda: self.beside.call(making.crossing, found.source, tuple(asked)),
            Making.CROSSING,
        )
        return document

    def table(self, found: Rated, truss: str, vehicle: str, way: Direction) -> Document:
        """The force table of a vehicle; raises as `force_table_document` does."""
        return self._of(
            found, f"table {truss} {vehicle} {way}",
            lambda: self.beside.call(making.table, found.source, truss, vehicle, way),
            Making.TABLE,
        )

    def rate(self, found: Rated, vehicle: Vehicle) -> Document:
        """Posting and parts of the `rate` document; of a vehicle that is not among those rated,
        the parts rated for it alone, in the same way."""
        if vehicle.name in found.one.rated_vehicles:
            return found.rate
        parts = self._of(
            found, f"rate {vehicle.name}",
            lambda: self.beside.call(making.parts_of_vehicle, found.source, vehicle),
            Making.CROSSING,
        )
        return {"posting": found.rate["posting"], "parts": parts}

    def _of(self, found: Rated, name: str, make: Callable[[], T], what: Making) -> T:
        """What is made of a rating beside the pages, and kept with it."""
        if name not in found.found:
            key = name, found.text
            found.found[name] = self._waited(key, make, what, SOON_SECONDS)
            with self.lock:
                self._drop(key)
        made: T = found.found[name]
        return made

    def paper(self, name: str, text: str, make: Callable[..., bytes], *given: object) -> bytes:
        """A paper, by its name, made by a function of `making`."""
        return self.made(name, text, lambda: self.beside.call(make, *given))

    def made(self, name: str, text: str, make: Callable[[], T], what: Making = Making.PAPER) -> T:
        """What takes long, by its name and the record that it is made from."""
        found: T = self._waited((name, text), make, what)
        return found

    def close(self) -> None:
        """Begin nothing more."""
        self.worker.shutdown(wait=False, cancel_futures=True)
        self.beside.close()

    def _rate(self, text: str, file: str) -> Rated:
        source = Source(text=text, file=file, office=self.office, turn=next(self.turns))
        answer = self.beside.call(making.rating, source)
        return Rated(source=source, one=source.opened(), answer=answer)

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

    def _waited(
        self, key: Key, make: Callable[[], Any], what: Making, patience: float = PATIENCE_SECONDS
    ) -> Any:
        """What a job has made. One that failed says so once, and is tried again when it is asked
        for again: what it lacked may be there then."""
        job = self._job(key, make, time.monotonic())
        if patience > PATIENCE_SECONDS and self._others(job):
            patience = PATIENCE_SECONDS
        if not wait([job], timeout=patience).done:
            raise StillRating(what)
        with self.lock:
            self.asked.pop(key, None)
            if (job.cancelled() or job.exception() is not None) and self.jobs.get(key) is job:
                self._drop(key)
        try:
            return job.result()
        except NobodyWaits:
            raise StillRating(what) from None

    def _others(self, job: "Future[Any]") -> bool:
        """Whether anything else is to be made too."""
        with self.lock:
            return any(other is not job and not other.done() for other in self.jobs.values())

    def _drop(self, key: Key) -> None:
        """Keep a job no longer; by whoever holds the lock."""
        self.jobs.pop(key, None)
        self.asked.pop(key, None)
