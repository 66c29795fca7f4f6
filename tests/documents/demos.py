"""Documents of the invented bridges, each made once in a test run, whichever process asks first."""

import json
import os
import re
from collections.abc import Callable
from functools import cache, wraps
from pathlib import Path
from typing import Any

from eyebar.demo import bridge_records
from eyebar.documents.check import check_document
from eyebar.documents.describe import describe_document
from eyebar.documents.explain import governing_explained
from eyebar.documents.forces import forces_document
from eyebar.documents.how import how_document
from eyebar.documents.opened import Opened, opened
from eyebar.documents.rate import document_of, rate_document
from eyebar.documents.vehicles import vehicles_document
from eyebar.rating import BridgeRating, rated_bridge
from eyebar.record import Record, record_of

NAMES = tuple(bridge_records())

Document = dict[str, Any]

FOLDER: Path | None = None
"""Where the processes of one test run leave documents for each other; None where there is one."""


def once(make: Callable[..., Document]) -> Callable[..., Document]:
    """Makes a document of the arguments once in a process, and once in a run if it has a folder.

    The reader gets it out of its JSON text.
    """

    @cache
    @wraps(make)
    def found(*of: str) -> Document:
        if FOLDER is None:
            return _read(_written(make(*of)))
        file = FOLDER / ("-".join((make.__name__, *of)).replace("/", "_") + ".json")
        if not file.exists():
            # Two that begin at once both make it: that takes no longer than to wait.
            part = file.with_suffix(f".{os.getpid()}")
            part.write_text(_written(make(*of)), encoding="utf-8")
            part.replace(file)
        return _read(file.read_text(encoding="utf-8"))

    return found


def record(name: str) -> Path:
    """The record of a demo bridge."""
    return Path(str(bridge_records()[name]))


@cache
def rated(name: str) -> tuple[Opened, BridgeRating]:
    """A demo bridge and its rating."""
    one = opened(record(name))
    return one, rated_bridge(one.bridge, one.values, one.rated_vehicles)


@once
def rate(name: str) -> Document:
    """The `rate` document of a demo."""
    return document_of(*rated(name))


@once
def rate_without_pins(name: str) -> Document:
    """Its `rate` document."""
    return rate_document(without_pins(name))


@cache
def without_pins(name: str) -> Record:
    """A demo bridge as it is known while nobody has recorded its pins: open, provisional."""
    text = record(name).read_text(encoding="utf-8")
    whole = re.sub(r"^pins:\n(?:[ #].*\n|\n)*", "", text, flags=re.MULTILINE)
    return record_of(re.sub(r"^.*part: \S+/pin\b.*\n", "", whole, flags=re.MULTILINE))


@once
def forces(name: str) -> Document:
    """The `forces` document of a demo."""
    return forces_document(record(name))


@once
def explain(name: str, part: str) -> Document:
    """The `explain` document of one part of a demo."""
    return governing_explained(*rated(name), part)


@once
def check(name: str) -> Document:
    """The `check` document of a demo."""
    return check_document(record(name))


@once
def describe(name: str) -> Document:
    """The `describe` document of a demo."""
    return describe_document(record(name))


@once
def how(name: str) -> Document:
    """The `history-how` document of a demo."""
    return how_document(record(name))


@once
def vehicles() -> Document:
    """The `vehicles` document."""
    return vehicles_document()


def _written(document: Document) -> str:
    return json.dumps(document, allow_nan=False)


def _read(text: str) -> Document:
    found: Document = json.loads(text)
    return found
