"""Makers' habits: details that an office has seen on its bridges, and which bridges share them.

A shared detail is a hint to look further. It says of no bridge who made it.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import Any

from eyebar.errors import BadRecord, Fault, did_you_mean, nearest
from eyebar.sources import table_rows

FILE = "details.toml"
"""The catalogue, in the office's folder."""
MUST = ("bridge", "what", "shape")
MAY = ("seen", "by", "note")


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """A detail that was seen on a bridge: what it is (`portal`), and its shape (`flat lattice`)."""

    bridge: str
    what: str
    shape: str
    seen: date | None = None
    by: str = ""
    note: str = ""

    @property
    def named(self) -> tuple[str, str]:
        """What and shape, by which details are alike."""
        return plain(self.what), plain(self.shape)


@dataclass(frozen=True, slots=True, kw_only=True)
class Shared:
    """One detail of a bridge: the others that have it, of so many whose `what` was written down."""

    detail: Seen
    others: tuple[str, ...]
    known: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Like:
    """Another bridge: the details that it shares, of so many that both have written down."""

    bridge: str
    shared: tuple[Seen, ...]
    compared: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Habits:
    """What a bridge shares with the others of a catalogue; `near` tells of shapes that are spelled
    almost alike, in sentences."""

    details: tuple[Shared, ...]
    bridges: tuple[Like, ...]
    near: tuple[str, ...]


def plain(text: str) -> str:
    """A text without regard to capitals and spaces."""
    return " ".join(text.split()).casefold()


def catalogue(folder: Path) -> tuple[Seen, ...]:
    """The details of an office's folder. Raises BadRecord with all faults at once."""
    file = folder / FILE
    if not file.is_file():
        raise BadRecord(str(file), (Fault(
            where="", rule="is not there",
            cure="begin it with [[row]], and bridge, what and shape below",
        ),))
    rows: list[Seen] = []
    faults: list[Fault] = []
    for row in table_rows(file.read_bytes(), file=str(file), heading="row"):
        found = list(_faults(row.fields))
        if not found and (seen := _seen(row.fields)) in rows:
            found = [Fault(where=f"{seen.bridge} > {seen.what}", rule="stands twice")]
        faults += [replace(one, line=row.line) for one in found]
        if not found:
            rows.append(_seen(row.fields))
    if faults:
        raise BadRecord(str(file), tuple(faults))
    return tuple(rows)


def habits(
    own: Iterable[Seen], rows: Sequence[Seen], *, names: Iterable[str]
) -> Habits:
    """What a bridge shares with others; `names` are its number and name, under which it may stand
    in the catalogue itself."""
    called = {plain(name) for name in names if name.strip()}
    mine = {
        one.named: one for one in (*rows, *own)
        if one in own or plain(one.bridge) in called
    }
    others: dict[str, list[Seen]] = {}
    for one in rows:
        if plain(one.bridge) not in called:
            others.setdefault(plain(one.bridge), []).append(one)
    return Habits(
        details=tuple(_shared(one, others) for one in mine.values()),
        bridges=tuple(sorted(
            filter(None, (_like(seen, mine) for seen in others.values())),
            key=lambda one: (-len(one.shared), one.compared, one.bridge),
        )),
        near=tuple(dict.fromkeys(
            said for one in mine.values() if (said := _near(one, others))
        )),
    )


def _shared(detail: Seen, others: Mapping[str, Sequence[Seen]]) -> Shared:
    what, _ = detail.named
    known = [seen for seen in others.values() if any(one.named[0] == what for one in seen)]
    return Shared(
        detail=detail, known=len(known),
        others=tuple(
            seen[0].bridge for seen in known if any(one.named == detail.named for one in seen)
        ),
    )


def _like(seen: Sequence[Seen], mine: Mapping[tuple[str, str], Seen]) -> Like | None:
    shared = tuple(one for one in seen if one.named in mine)
    kinds = {what for what, _ in mine}
    compared = {one.named[0] for one in seen if one.named[0] in kinds}
    if not shared:
        return None
    return Like(bridge=seen[0].bridge, shared=shared, compared=len(compared))


def _near(detail: Seen, others: Mapping[str, Sequence[Seen]]) -> str:
    """A shape of the same thing that is written almost alike, and would not count."""
    what, shape = detail.named
    shapes = {
        one.named[1]: one.shape for seen in others.values() for one in seen
        if one.named[0] == what and one.named[1] != shape
    }
    found = nearest(shape, shapes)
    return found and (
        f"{detail.what}: '{detail.shape}' here, '{shapes[found]}' elsewhere: write both alike if "
        "they are the same"
    )


def _faults(fields: Mapping[str, Any]) -> Iterable[Fault]:
    place = fields.get("bridge") if isinstance(fields.get("bridge"), str) else ""
    where = f"{place} > " if place else ""
    for key in MUST:
        if not isinstance(fields.get(key), str) or not fields[key].strip():
            yield Fault(where=f"{where}{key}", rule="is not a text" if key in fields
                        else "is missing")
    for key in ("by", "note"):
        if not isinstance(fields.get(key, ""), str):
            yield Fault(where=f"{where}{key}", rule="is not a text", got=repr(fields[key]))
    if "seen" in fields and type(fields["seen"]) is not date:
        yield Fault(where=f"{where}seen", rule="is not a date", got=repr(fields["seen"]),
                    cure="write it like 2024-06-03, without quotation marks")
    for key in fields:
        if key not in (*MUST, *MAY):
            yield Fault(where=f"{where}{key}", rule="is unknown",
                        cure=did_you_mean(key, (*MUST, *MAY)))


def _seen(fields: Mapping[str, Any]) -> Seen:
    return Seen(
        bridge=fields["bridge"].strip(), what=fields["what"].strip(), shape=fields["shape"].strip(),
        seen=fields.get("seen"), by=fields.get("by", ""), note=fields.get("note", ""),
    )
