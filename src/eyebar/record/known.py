"""What a record speaks of, gathered once: the names that its other entries may use."""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from datetime import date
from functools import cached_property

from eyebar.addresses import Address, joint_of_place, nearest_part
from eyebar.errors import Fault, did_you_mean
from eyebar.record.doubt import (
    in_doubt,
    lost_bars,
    may_be,
    names_known,
    parts_in_doubt,
    shape_known,
)
from eyebar.record.layout import bars_in, floor_joints, joint_names, lateral_panels, section_on
from eyebar.record.models import Record
from eyebar.record.salvaged import STUB
from eyebar.record.sections import SectionEntry
from eyebar.record.tree import Path
from eyebar.terms import Kind


@dataclass(frozen=True)
class Known:
    """The names in a record, and what is wrong with a name that is used and is not among them."""

    record: Record
    unplaced: dict[Fault, Address] = field(default_factory=dict)
    """Faults told of bars that no group has, between joints that are there."""
    named: dict[tuple[Path, str], list[Fault]] = field(default_factory=dict)
    """(block, name that it has not) -> the faults told where it is used."""

    @cached_property
    def joints(self) -> tuple[str, ...]:
        """Every joint of a truss."""
        return joint_names(self.record.trusses)

    @cached_property
    def joints_known(self) -> bool:
        """Whether these are the joints that the record means."""
        return shape_known(self.record)

    @cached_property
    def trusses_known(self) -> bool:
        """Whether the trusses have the names that the record gives them."""
        return names_known(self.record)

    @cached_property
    def bars(self) -> dict[str, dict[str, str]]:
        """Truss -> bar -> name of its group."""
        return {truss: dict(bars_in(self.record, truss)) for truss in self.record.trusses.names}

    @cached_property
    def lost(self) -> tuple[str, ...]:
        """Texts of bars that are meant and are nowhere."""
        return lost_bars(self.record)

    @cached_property
    def parts(self) -> tuple[str, ...]:
        """The addresses of all bars, for the nearest known word."""
        return tuple(f"{truss}/{bar}" for truss, bars in self.bars.items() for bar in bars)

    @cached_property
    def doubtful(self) -> frozenset[str]:
        """The bars, by address, of which an override or a repair is at fault, or that are named
        twice: which of their groups is right is open."""
        named: Counter[str] = Counter()
        for group in self.record.members.values():
            for truss in (group.truss,) if group.truss else self.record.trusses.names:
                named.update(f"{truss}/{bar}" for bar in group.bars)
        twice = (part for part, times in named.items() if times > 1)
        return parts_in_doubt(self.record, self.parts) | frozenset(twice)

    @cached_property
    def doubtful_sections(self) -> frozenset[str]:
        """The groups whose section is at fault."""
        record = self.record
        return frozenset(
            name for name in record.members if in_doubt(record, "members", name, "section")
        )

    def fault(self, path: Path, rule: str, *, got: object = None, cure: str = "") -> Fault:
        """A fault at a place of this record."""
        return self.record.fault(path, rule, got=got, cure=cure)

    def once(self, found: Iterable[Fault]) -> Iterator[Fault]:
        """The faults, with a name that is not there told once, at its block, where it is used
        more than once: it is there that a name was changed or left out."""
        often = {key: told for key, told in self.named.items() if len(set(told)) > 1}
        replaced = {fault for told in often.values() for fault in told}
        for (path, name), told in often.items():
            yield self.fault(path, f"has no '{name}', which is named {len(set(told))} times",
                             cure=told[0].cure)
        yield from (fault for fault in found if fault not in replaced)

    def _named(self, block: Path, name: str, fault: Fault) -> Fault:
        self.named.setdefault((block, name), []).append(fault)
        return fault

    def section_on(self, part: Address, day: date) -> SectionEntry | None:
        """The section of a bar on a day; None for what is no bar, and where it is in doubt."""
        name = "-".join(part.bar or ())
        address = f"{part.truss}/{name}"
        group = self.bars.get(part.truss, {}).get(name)
        if group is None or group in self.doubtful_sections:
            return None
        return None if address in self.doubtful else section_on(self.record, address, group, day)

    def material_faults(
        self, path: Path, material: str | None, beside: Iterable[str] = ()
    ) -> Iterator[Fault]:
        """A material that the record has not; other names `beside` them may stand there too."""
        known = (*self.record.materials, *beside)
        if material in (None, STUB, *known) or self._materials_lost:
            return
        yield self._named(("materials",), str(material), self.fault(
            path, "is no material of this record", got=material,
            cure=did_you_mean(str(material), known),
        ))

    @cached_property
    def _materials_lost(self) -> bool:
        """Whether a material may have gone with a block that is at fault, or lost its header."""
        source = self.record.source
        twice = source.tree.doubled if source.tree else ()
        return ("materials",) in source.holes or any(path[0] == "materials" for path in twice)

    def truss_faults(self, path: Path, truss: str | None) -> Iterator[Fault]:
        """A truss that the record has not."""
        names = self.record.trusses.names
        if truss and truss not in names and self.trusses_known:
            yield self._named(("trusses", "names"), truss, self.fault(
                path, "is no truss of this bridge", got=truss, cure=did_you_mean(truss, names),
            ))

    def part_fault(self, path: Path, part: Address) -> Fault | None:
        """What is wrong with an address that the record uses; None when nothing is, or may be."""
        trusses = self.record.trusses.names
        if part.truss and part.truss not in trusses:
            return self._named(("trusses", "names"), part.truss, self.fault(
                path, f"names no truss of this bridge, '{part.truss}'", got=part.part,
                cure=did_you_mean(part.truss, trusses),
            )) if self.trusses_known else None
        if part.bar:
            return self._bar_fault(path, part, part.bar)
        if not self.joints_known:
            return None
        if part.joint and part.joint not in self.joints:
            return self.fault(path, f"names no joint of this truss, '{part.joint}'", got=part.part,
                              cure=did_you_mean(part.joint, self.joints))
        if part.kind in (Kind.STRUT, Kind.LATERAL):
            return self._bracing_fault(path, part)
        return self._floor_fault(path, part)

    def _bracing_fault(self, path: Path, part: Address) -> Fault | None:
        if self.record.bracing is None:
            return None if in_doubt(self.record, "bracing") else self.fault(
                path, "is of a bracing that the record has not", got=part.part,
                cure="write 'bracing:' with what is there",
            )
        panels = lateral_panels(self.record)
        if part.kind is Kind.STRUT or part.between in panels:
            return None
        return self.fault(path, "is no panel with laterals", got=part.part, cure=did_you_mean(
            "-".join(part.between), ["-".join(panel) for panel in panels]))

    def _bar_fault(self, path: Path, part: Address, ends: tuple[str, str]) -> Fault | None:
        name = "-".join(ends)
        if name not in self.bars[part.truss]:
            if may_be(name, self.lost):
                return None
            fault = self.fault(path, "is no bar of this truss", got=part.part,
                               cure=nearest_part(part.part, self.parts))
            if all(joint in self.joints for joint in ends):
                self.unplaced[fault] = part
            return fault
        joint = joint_of_place(part.place)
        if joint and joint not in ends:
            return self.fault(path, f"is at joint {joint}, where this bar does not end",
                              got=part, cure=f"write {ends[0]} or {ends[1]}")
        return None

    def _floor_fault(self, path: Path, part: Address) -> Fault | None:
        panels = len(floor_joints(self.record.trusses)) - 1
        stringers = self.record.floor.stringers.number or part.stringer
        if part.kind is Kind.STRINGER and (part.panel > panels or part.stringer > stringers):
            return self.fault(path, "is no stringer of this floor", got=part.part,
                              cure=f"it has {panels} panels of {stringers} stringers")
        return None
