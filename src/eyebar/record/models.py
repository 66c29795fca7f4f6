"""The record of one bridge: as built, its inspections, the decisions taken on them.

Every measure is a `Quantity` (its text as written, its exact size in inside units); what is not
measured is None. Keys of the file have spaces where the names here have underscores.
"""

from collections.abc import Mapping

from pydantic import Field, PrivateAttr

from eyebar.addresses import bar_name
from eyebar.record.fields import Count, Entry, OfficeValue, Text, Trucks, Year
from eyebar.record.findings import ConditionEntry, DecisionEntry, InspectionEntry
from eyebar.record.floor import FloorEntry
from eyebar.record.members import BOTH_TRUSSES, MaterialEntry, MemberGroup, OverrideEntry
from eyebar.record.trusses import EndsEntry, TrussesEntry


class TrafficEntry(Entry):
    """How busy the road is."""

    trucks_a_day: Trucks | None = None
    """In one direction; left out or not measured: unknown."""


class ExceptionEntry(Entry):
    """A value that is this bridge's own, laid over the office's."""

    value: OfficeValue
    unit: Text
    reason: Text


class Record(Entry):
    """All that is known of one bridge, with the text it was read from."""

    eyebar: Count
    """Number of the format."""
    name: Text
    number: Text = ""
    owner: Text = ""
    place: Text = ""
    built: Year
    ends: EndsEntry
    trusses: TrussesEntry
    materials: Mapping[str, MaterialEntry]
    members: Mapping[str, MemberGroup] = Field(min_length=1)
    overrides: Mapping[str, OverrideEntry] = Field(default_factory=dict)
    """Address, in its one spelling -> what differs there."""
    floor: FloorEntry
    traffic: TrafficEntry = TrafficEntry()
    condition: ConditionEntry = ConditionEntry()
    inspections: tuple[InspectionEntry, ...] = ()
    decisions: tuple[DecisionEntry, ...] = ()
    values: Mapping[str, ExceptionEntry] = Field(default_factory=dict)
    note: Text | None = None

    _file: str = PrivateAttr(default="")
    _text: str = PrivateAttr(default="")
    _hash: str = PrivateAttr(default="")
    _lines: Mapping[tuple[str | int, ...], int] = PrivateAttr(default_factory=dict)

    @property
    def file(self) -> str:
        """The name of the file it was read from."""
        return self._file

    @property
    def text(self) -> str:
        """The text it was read from."""
        return self._text

    @property
    def hash(self) -> str:
        """SHA-256 of the text."""
        return self._hash

    @property
    def exceptions(self) -> dict[str, tuple[float | str | list[str], str, str]]:
        """Name -> (value, unit, reason) of the values that are this bridge's own."""
        return {
            name: (list(own.value) if isinstance(own.value, tuple) else own.value,
                   own.unit, own.reason)
            for name, own in self.values.items()
        }

    def line_of(self, *path: str | int) -> int | None:
        """The line of a key, `line_of("members", "posts", "section")`, or of what holds it."""
        while path and path not in self._lines:
            path = path[:-1]
        return self._lines.get(path)

    def group_of(self, truss: str, bar: str) -> str:
        """The name of the group that a bar belongs to; empty when it is in none."""
        wanted = bar_name(bar)
        for name, group in self.members.items():
            if wanted in group.bars and group.truss in (BOTH_TRUSSES, truss):
                return name
        return ""
