"""Documents of the invented bridges, each made once in a test run."""

import json
import re
from functools import cache
from pathlib import Path
from typing import Any

from eyebar.demo import bridge_records
from eyebar.documents.check import check_document
from eyebar.documents.describe import describe_document
from eyebar.documents.explain import explain_document
from eyebar.documents.forces import forces_document
from eyebar.documents.how import how_document
from eyebar.documents.rate import rate_document
from eyebar.documents.vehicles import vehicles_document
from eyebar.record import Record, record_of

NAMES = tuple(bridge_records())

Document = dict[str, Any]


def record(name: str) -> Path:
    """The record of a demo bridge."""
    return Path(str(bridge_records()[name]))


@cache
def rate(name: str) -> Document:
    """The `rate` document of a demo, as its reader gets it: out of the JSON text."""
    return _read(rate_document(record(name)))


@cache
def rate_without_pins(name: str) -> Document:
    """Its `rate` document."""
    return _read(rate_document(without_pins(name)))


@cache
def without_pins(name: str) -> Record:
    """A demo bridge as it is known while nobody has recorded its pins: open, provisional."""
    text = record(name).read_text(encoding="utf-8")
    whole = re.sub(r"^pins:\n(?:[ #].*\n|\n)*", "", text, flags=re.MULTILINE)
    return record_of(re.sub(r"^.*part: \S+/pin\b.*\n", "", whole, flags=re.MULTILINE))


@cache
def forces(name: str) -> Document:
    """The `forces` document of a demo, out of the JSON text."""
    return _read(forces_document(record(name)))


@cache
def explain(name: str, part: str) -> Document:
    """The `explain` document of one part of a demo, out of the JSON text."""
    return _read(explain_document(record(name), part))


@cache
def check(name: str) -> Document:
    """The `check` document of a demo, out of the JSON text."""
    return _read(check_document(record(name)))


@cache
def describe(name: str) -> Document:
    """The `describe` document of a demo, out of the JSON text."""
    return _read(describe_document(record(name)))


@cache
def how(name: str) -> Document:
    """The `history-how` document of a demo, out of the JSON text."""
    return _read(how_document(record(name)))


@cache
def vehicles() -> Document:
    """The `vehicles` document, out of the JSON text."""
    return _read(vehicles_document())


def _read(document: Document) -> Document:
    found: Document = json.loads(json.dumps(document, allow_nan=False))
    return found
