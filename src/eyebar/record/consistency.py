"""Whether the blocks of a record agree with each other: bars, joints, trusses, materials."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from datetime import date
from functools import cached_property

from eyebar.addresses import Address, address, ends_of, joint_of_place, nearest_part
from eyebar.errors import Fault, did_you_mean
from eyebar.record.faults import fault_at
from eyebar.record.layout import bars_in, floor_joints, joint_names, section_on
from eyebar.record.members import BOTH_TRUSSES
from eyebar.record.models import Record
from eyebar.record.salvaged import STUB, Kept, as_at_first
from eyebar.record.sections import SectionEntry
from eyebar.record.tree import Node, Path
from eyebar.terms import CHORD_KINDS, Kind


@dataclass(frozen=True)
class Known:
    """What a record speaks of, gathered once: the names that its other entries may use."""

    record: Record
    tree: Node
    kept: Kept = field(default_factory=dict)
    """What was kept of the lists of a record that has faults elsewhere."""

    @cached_property
    def joints(self) -> tuple[str, ...]:
        """Every joint of a truss."""
        return joint_names(self.record.trusses)

    @cached_property
    def bars(self) -> dict[str, dict[str, str]]:
        """Truss -> bar -> name of its group."""
        return {truss: dict(bars_in(self.record, truss)) for truss in self.record.trusses.names}

    @cached_property
    def parts(self) -> tuple[str, ...]:
        """The addresses of all bars, for the nearest known word."""
        return tuple(f"{truss}/{bar}" for truss, bars in self.bars.items() for bar in bars)

    def fault(self, path: Path, rule: str, *, got: object = None, cure: str = "") -> Fault:
        """A fault at a place of this record."""
        return fault_at(self.tree, as_at_first(path, self.kept), rule, got=got, cure=cure)

    def section_on(self, part: Address, day: date) -> SectionEntry | None:
        """The section of a bar on a day; None for parts that are no bars of a truss."""
        name = "-".join(part.bar or ())
        group = self.bars.get(part.truss, {}).get(name)
        if group is None:
            return None
        return section_on(self.record, f"{part.truss}/{name}", group, day)

    def material_faults(self, path: Path, material: str | None) -> Iterator[Fault]:
        """A material that the record has not."""
        if material not in (None, STUB) and material not in self.record.materials:
            yield self.fault(path, "is no material of this record", got=material,
                             cure=did_you_mean(str(material), self.record.materials))

    def part_fault(self, path: Path, part: Address) -> Fault | None:
        """What is wrong with an address that the record uses; None when the part is there."""
        trusses = self.record.trusses.names
        if part.truss and part.truss not in trusses:
            return self.fault(path, f"names no truss of this bridge, '{part.truss}'", got=part.part,
                              cure=did_you_mean(part.truss, trusses))
        if part.bar:
            name = "-".join(part.bar)
            if name not in self.bars[part.truss]:
                return self.fault(path, "is no bar of this truss", got=part.part,
                                  cure=nearest_part(part.part, self.parts))
            joint = joint_of_place(part.place)
            if joint and joint not in part.bar:
                return self.fault(path, f"is at joint {joint}, where this bar does not end",
                                  got=part, cure=f"write {part.bar[0]} or {part.bar[1]}")
            return None
        if part.joint and part.joint not in self.joints:
            return self.fault(path, f"names no joint of this truss, '{part.joint}'", got=part.part,
                              cure=did_you_mean(part.joint, self.joints))
        return self._floor_fault(path, part)

    def _floor_fault(self, path: Path, part: Address) -> Fault | None:
        panels = len(floor_joints(self.record.trusses)) - 1
        stringers = self.record.floor.stringers.number or part.stringer
        if part.kind is Kind.STRINGER and (part.panel > panels or part.stringer > stringers):
            return self.fault(path, "is no stringer of this floor", got=part.part,
                              cure=f"it has {panels} panels of {stringers} stringers")
        return None


def inconsistencies(known: Known) -> Iterator[Fault]:
    """Where the blocks of a record do not agree with each other."""
    yield from _bars(known)
    yield from _groups(known)
    yield from _trusses(known)
    yield from _overrides(known)
    yield from _floor(known)


def _bars(known: Known) -> Iterator[Fault]:
    """Bars to no joint, and bars named twice."""
    for truss in known.record.trusses.names:
        taken: dict[str, str] = {}
        for name, group in known.record.members.items():
            if group.truss not in (BOTH_TRUSSES, truss):
                continue
            for bar in group.bars:
                if bar in taken and not _told(known, truss, name, taken[bar]):
                    yield known.fault(
                        ("members", name, "bars"), f"is named twice; first in '{taken[bar]}'",
                        got=bar, cure="leave it out of one of the groups",
                    )
                taken.setdefault(bar, name)
    for name, group in known.record.members.items():
        for bar in group.bars:
            yield from _joints(known, ("members", name, "bars"), ends_of(bar), bar)


def _told(known: Known, truss: str, name: str, first: str) -> bool:
    """Whether a bar named twice in both trusses was told at the first truss already."""
    groups = (known.record.members[name], known.record.members[first])
    return truss != known.record.trusses.names[0] and all(
        group.truss == BOTH_TRUSSES for group in groups
    )


def _joints(
    known: Known, path: Path, joints: Iterable[str], got: str = ""
) -> Iterator[Fault]:
    """Joints that the truss has not."""
    for joint in joints:
        if joint not in known.joints:
            yield known.fault(path, f"goes to no joint of the truss, '{joint}'" if got
                              else "is no joint of the truss", got=got or joint,
                              cure=did_you_mean(joint, known.joints))


def _groups(known: Known) -> Iterator[Fault]:
    """Trusses, materials and joints that a group names and the record has not."""
    record = known.record
    for name, group in record.members.items():
        path = ("members", name)
        if group.truss not in (BOTH_TRUSSES, *record.trusses.names):
            yield known.fault((*path, "truss"), "is no truss of this bridge", got=group.truss,
                              cure=did_you_mean(group.truss, record.trusses.names))
        yield from known.material_faults((*path, "material"), group.material)
        yield from _joints(known, (*path, "spliced at"), group.spliced_at or ())
        yield from _joints(known, (*path, "lateral points"), group.lateral_points or ())
        if group.spliced_at and group.kind not in CHORD_KINDS:
            yield known.fault((*path, "spliced at"), f"has no sense for a {group.kind}",
                              cure="only chords run through their joints; leave it out")


def _trusses(known: Known) -> Iterator[Fault]:
    """Counters that no group has, floor joints and bearings that are nowhere."""
    trusses = known.record.trusses
    bars = {bar for bars in known.bars.values() for bar in bars}
    for counter in trusses.counters:
        if counter not in bars:
            yield known.fault(("trusses", "counters"), "is a counter that no group has",
                              got=counter, cure="add it to the bars of a group, or leave it out")
    if trusses.joints is not None:
        path: Path = ("trusses", "floor")
        given = known.joints if trusses.mirrored else tuple(trusses.joints)
        for joint in trusses.floor or ():
            if joint not in given:
                yield known.fault(path, "is no joint of the truss", got=joint,
                                  cure=did_you_mean(joint, given))
    yield from _joints(known, ("trusses", "bearings", "at"), trusses.bearings.at or ())


def _overrides(known: Known) -> Iterator[Fault]:
    """Overrides of parts that are nowhere, or of what the part has not."""
    for written, entry in known.record.overrides.items():
        path = ("overrides", written)
        part = address(written)
        if fault := known.part_fault(path, part):
            yield fault
        yield from known.material_faults((*path, "material"), entry.material)
        yield from _joints(known, (*path, "spliced at"), entry.spliced_at or ())
        yield from _joints(known, (*path, "lateral points"), entry.lateral_points or ())
        fields = entry.model_fields_set - {"reason"}
        if not fields:
            yield known.fault(path, "overrides nothing", cure="write what differs, or leave it out")
        fitting = _BAR_FIELDS if part.bar else {"note"}
        if part.kind is Kind.BEARING:
            fitting = {"bearing", "note"}
        for name in sorted(fields - fitting):
            key = name.replace("_", " ")
            yield known.fault((*path, key), f"does not belong to {part}", got=key,
                              cure="leave it out")


_BAR_FIELDS = {
    "kind", "section", "material", "pin_offset", "spliced_at", "lateral_points", "ends",
    "can_push", "can_pull", "splice", "pin_plates", "jaw", "rivet_holes", "other_pin_offset",
    "side_offset", "welded", "note",
}


def _floor(known: Known) -> Iterator[Fault]:
    """Curbs and weights on trusses that are nowhere; what is said to be measured and is not."""
    floor, names = known.record.floor, known.record.trusses.names
    for truss in floor.curbs:
        if truss not in names:
            yield known.fault(("floor", f"curb to {truss} truss"), "is no truss of this bridge",
                              got=truss, cure=did_you_mean(truss, names))
    for block in ("utilities", "others"):
        for name, entry in getattr(floor, block).items():
            if entry.truss is not None and entry.truss not in names:
                yield known.fault(("floor", block, name, "truss"), "is no truss of this bridge",
                                  got=entry.truss, cure=did_you_mean(entry.truss, names))
    surfacing = floor.surfacing
    if surfacing is not None and surfacing.measured and surfacing.thickness is None:
        yield known.fault(("floor", "surfacing", "measured"), "says that it was measured, and its "
                          "thickness is not", cure="write the thickness, or 'measured: false'")
