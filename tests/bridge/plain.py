"""A small invented record that the tests of this folder change, and the bridge it becomes."""

from datetime import date
from pathlib import Path

import pytest

from eyebar.bridge.parts import Bar, Bridge, Truss
from eyebar.bridge.state import bridge_on
from eyebar.errors import BadRecord
from eyebar.office import office_values
from eyebar.record import record_of

TODAY = date(2026, 11, 1)
"""The day on which the tests read: no test depends on the day it is run."""

PLAIN = (Path(__file__).parent / "plain.yaml").read_text(encoding="utf-8")

READINGS = "    readings: []\n"
DECISIONS = "decisions: []\n"
OVERRIDES = "\nfloor:\n"


def changed(*changes: tuple[str, str]) -> str:
    """The plain record with some of its text replaced; what is replaced must be there."""
    text = PLAIN
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    return text


def with_readings(*readings: str) -> tuple[str, str]:
    """The change that puts readings into the inspection of 2020-05-04."""
    lines = "".join(f"      - {{{reading}}}\n" for reading in readings)
    return READINGS, f"    readings:\n{lines}"


def inspected_on(day: str, *readings: str) -> tuple[str, str]:
    """The change that adds an inspection."""
    lines = "".join(f"      - {{{reading}}}\n" for reading in readings)
    return DECISIONS, f"  - date: {day}\n    by: crew\n    readings:\n{lines}{DECISIONS}"


def decided(*decisions: str) -> tuple[str, str]:
    """The change that adds decisions."""
    return DECISIONS, "decisions:\n" + "".join(f"  - {{{one}}}\n" for one in decisions)


def bridge(*changes: tuple[str, str], on: date | None = None) -> Bridge:
    """The plain record's bridge, with some of its text replaced."""
    record = record_of(changed(*changes), file="plain.yaml", today=TODAY)
    return bridge_on(record, on, office_values(exceptions=record.exceptions))


def refused(*changes: tuple[str, str]) -> str:
    """What is said of a record that is refused."""
    with pytest.raises(BadRecord) as caught:
        bridge(*changes)
    return str(caught.value)


def truss_of(found: Bridge, name: str = "left") -> Truss:
    """One truss of a bridge."""
    return next(truss for truss in found.trusses if truss.name == name)


def bar_of(found: Bridge, bar: str, truss: str = "left") -> Bar:
    """One bar of a bridge, in the model or broken."""
    there = truss_of(found, truss)
    return next(one for one in (*there.bars, *there.broken) if one.name == bar)
