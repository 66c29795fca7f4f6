"""The record of one bridge: as built, its inspections, the decisions taken on them.

Every measure is a `Quantity` (its text as written, its exact size in inside units); what is not
measured is None. Keys of the file have spaces where the names here have underscores.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from hashlib import sha256

from pydantic import Field, PrivateAttr

from eyebar.addresses import bar_name
from eyebar.errors import Fault
from eyebar.record.blocks import JointBlockEntry
from eyebar.record.bracing import BracingEntry
from eyebar.record.fields import Count, Entry, OfficeValue, Text, Trucks, UnsureYear
from eyebar.record.findings import ConditionEntry, DecisionEntry, InspectionEntry
from eyebar.record.floor import FloorEntry
from eyebar.record.members import BOTH_TRUSSES, MaterialEntry, MemberGroup, OverrideEntry
from eyebar.record.pins import PinEntry
from eyebar.record.tree import Node, Path, place_words
from eyebar.record.trusses import EndsEntry, TrussesEntry

Kept = Mapping[Path, tuple[int, ...]]
"""Path of a list -> the places that its remaining entries had at first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """What a record was read from: the file's name, its text, the tree that knows the lines.

    Of a record with faults also its `holes`, the paths of what was taken out of it as faulty, and
    what was `kept` of the lists that lost an entry.
    """

    file: str = ""
    text: str = ""
    tree: Node | None = None
    holes: frozenset[Path] = frozenset()
    kept: Kept = field(default_factory=dict)

    def as_written(self, path: Path) -> Path:
        """The path of an entry before others were taken out of its list."""
        found: Path = ()
        for key in path:
            places = self.kept.get(found)
            at = places[key] if places is not None and isinstance(key, int) else key
            found = (*found, at)
        return found


class TrafficEntry(Entry):
    """How busy the road is."""

    trucks_a_day: Trucks = None
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
    built: UnsureYear
    """None where nobody knows the year."""
    ends: EndsEntry
    trusses: TrussesEntry
    materials: Mapping[str, MaterialEntry]
    members: Mapping[str, MemberGroup] = Field(min_length=1)
    overrides: Mapping[str, OverrideEntry] = Field(default_factory=dict)
    """Address, in its one spelling -> what differs there."""
    joint_blocks: Mapping[str, JointBlockEntry] = Field(default_factory=dict)
    pins: Mapping[str, PinEntry] = Field(default_factory=dict)
    floor: FloorEntry
    bracing: BracingEntry | None = None
    """None where nobody recorded what holds the trusses sideways."""
    traffic: TrafficEntry = TrafficEntry()
    condition: ConditionEntry = ConditionEntry()
    inspections: tuple[InspectionEntry, ...] = ()
    decisions: tuple[DecisionEntry, ...] = ()
    details: Mapping[str, Text] = Field(default_factory=dict)
    """What tells a maker's hand -> its shape, in the office's words; no calculation reads it."""
    values: Mapping[str, ExceptionEntry] = Field(default_factory=dict)
    note: Text | None = None

    _source: Source = PrivateAttr(default=Source())

    def model_post_init(self, context: object) -> None:
        """Keeps the text that the record was read from, which validation was told."""
        if isinstance(context, Source):
            self._source = context

    @property
    def file(self) -> str:
        """The name of the file it was read from."""
        return self._source.file

    @property
    def text(self) -> str:
        """The text it was read from."""
        return self._source.text

    @property
    def hash(self) -> str:
        """SHA-256 of the text, by which a result names the record it was made from."""
        return sha256(self._source.text.encode("utf-8")).hexdigest()

    @property
    def exceptions(self) -> dict[str, tuple[float | str | list[str], str, str]]:
        """Name -> (value, unit, reason) of the values that are this bridge's own."""
        return {
            name: (list(own.value) if isinstance(own.value, tuple) else own.value,
                   own.unit, own.reason)
            for name, own in self.values.items()
        }

    @property
    def source(self) -> Source:
        """What it was read from."""
        return self._source

    def line_of(self, *path: str | int) -> int | None:
        """The line of a key, `line_of("members", "posts", "section")`, or of what holds it."""
        tree = self._source.tree
        return tree.line_of(self._source.as_written(path)) if tree else None

    def fault(
        self, path: Path, rule: str, *, got: object = None, cure: str = ""
    ) -> Fault:
        """A fault at a place of the record, with its line; `got` is what was written there."""
        return Fault(
            where=place_words(self._source.as_written(path)), rule=rule,
            got="" if got is None else f"'{got}'", cure=cure, line=self.line_of(*path),
        )

    def group_of(self, truss: str, bar: str) -> str:
        """The name of the group that a bar belongs to; empty when it is in none."""
        wanted = bar_name(bar)
        for name, group in self.members.items():
            if wanted in group.bars and group.truss in (BOTH_TRUSSES, truss):
                return name
        return ""
