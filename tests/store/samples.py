"""Records to keep: a demo bridge, and small changes of its text."""

from functools import cache
from importlib.resources import as_file

from eyebar.demo import bridge_records
from eyebar.record import Record, record_of
from eyebar.store.opened import Register
from eyebar.store.saving import Saved, add_bridge, save_revision

NAME = "wrenmallow"
WHO = "R. Alder"


@cache
def text() -> str:
    with as_file(bridge_records()[NAME]) as file:
        return file.read_text(encoding="utf-8")


@cache
def record(*, built: int = 0, place: str = "") -> Record:
    """The demo bridge, with another year or place."""
    changed = text()
    if built:
        changed = with_line(changed, f"built: {built}")
    if place:
        changed = with_line(changed, f"place: {place}")
    return record_of(changed)


def with_line(text: str, line: str) -> str:
    """The text with another line for the same key."""
    key, _, _ = line.partition(":")
    return text.replace(f"\n{line_of(text, key)}\n", f"\n{line}\n")


def line_of(text: str, key: str) -> str:
    """The line of a key at the left margin."""
    (found,) = [one for one in text.splitlines() if one.startswith(f"{key}: ")]
    return found


def added(register: Register, handle: str = "W-1", of: Record | None = None) -> Saved:
    return add_bridge(register, of or record(), person=WHO, reason="first entry", handle=handle)


def saved(register: Register, of: Record, *, onto: int, handle: str = "W-1") -> Saved:
    return save_revision(register, handle, of, onto=onto, person=WHO, reason="corrected")
