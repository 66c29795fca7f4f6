"""Whether the blocks of a record agree with each other: bars, joints, trusses, materials."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping

from eyebar.addresses import address, bars_of, ends_of
from eyebar.errors import Fault, did_you_mean
from eyebar.record.blocks import JointBlockEntry
from eyebar.record.bracing_faults import bracing_faults
from eyebar.record.doubt import in_doubt, may_be
from eyebar.record.floor_faults import OVERRIDES, floor_faults
from eyebar.record.known import Known
from eyebar.record.members import BOTH_TRUSSES, MemberGroup
from eyebar.record.pins import PinEntry
from eyebar.record.salvaged import STUB
from eyebar.record.tree import Path
from eyebar.record.wood import wood_faults
from eyebar.terms import CHORD_KINDS, Kind


def inconsistencies(known: Known) -> Iterator[Fault]:
    """Where the blocks of a record do not agree with each other."""
    yield from _bars(known)
    yield from _groups(known)
    yield from _trusses(known)
    yield from _overrides(known)
    yield from _at_joints(known, "joint blocks", known.record.joint_blocks, "block")
    yield from _at_joints(known, "pins", known.record.pins, "pin")
    yield from wood_faults(known)
    yield from _floor(known)
    yield from floor_faults(known)
    yield from bracing_faults(known)


def _bars(known: Known) -> Iterator[Fault]:
    """Bars to no joint, and bars named twice: once for each two groups that share some."""
    shared: dict[tuple[str, str], dict[str, None]] = defaultdict(dict)
    for truss in known.record.trusses.names:
        taken: dict[str, str] = {}
        for name, group in known.record.members.items():
            if group.truss in (BOTH_TRUSSES, truss) and not _doubled(known, name):
                for bar in group.bars:
                    if bar in taken:
                        shared[taken[bar], name][bar] = None
                    taken.setdefault(bar, name)
    for (first, name), bars in shared.items():
        rule = "is named twice" if len(bars) == 1 else "are named twice"
        yield known.fault(
            ("members", name, "bars"), f"{rule}; first in '{first}'", got="', '".join(bars),
            cure="leave it out of one of the groups" if len(bars) == 1
            else "leave them out of one of the groups",
        )
    for name, group in known.record.members.items():
        if name != STUB and known.joints_known:
            yield from _runs(known, ("members", name, "bars"), group)


def _doubled(known: Known, group: str) -> bool:
    """Whether a group has two lists of bars."""
    return ("members", group, "bars") in known.record.source.holes


def _runs(known: Known, path: Path, group: MemberGroup) -> Iterator[Fault]:
    """Bars to no joint; a run is told once, with the first joint that is not there."""
    for run in group.runs:
        unknown = dict.fromkeys(
            joint for bar in bars_of(run) for joint in ends_of(bar) if joint not in known.joints
        )
        for joint in [*unknown][:1 if ".." in run else None]:
            yield known.fault(path, f"goes to no joint of the truss, '{joint}'", got=run,
                              cure=did_you_mean(joint, known.joints))


def _joints(known: Known, path: Path, joints: Iterable[str]) -> Iterator[Fault]:
    """Joints that the truss has not."""
    for joint in joints if known.joints_known else ():
        if joint not in known.joints:
            yield known.fault(path, "is no joint of the truss", got=joint,
                              cure=did_you_mean(joint, known.joints))


def _groups(known: Known) -> Iterator[Fault]:
    """Trusses, materials and joints that a group names and the record has not."""
    record = known.record
    for name, group in record.members.items():
        path = ("members", name)
        yield from known.truss_faults((*path, "truss"), group.truss)
        yield from known.material_faults((*path, "material"), group.material)
        yield from _joints(known, (*path, "spliced at"), group.spliced_at or ())
        yield from _joints(known, (*path, "lateral points"), group.lateral_points or ())
        doubtful = in_doubt(record, *path, "kind")
        if group.spliced_at and group.kind not in CHORD_KINDS and not doubtful:
            yield known.fault((*path, "spliced at"), f"has no sense for {group.kind}s",
                              cure="only chords run through their joints; leave it out")


def _trusses(known: Known) -> Iterator[Fault]:
    """Counters that no group has, floor joints and bearings that are nowhere."""
    trusses = known.record.trusses
    bars = {bar for bars in known.bars.values() for bar in bars}
    for counter in trusses.counters:
        if counter not in bars and not may_be(counter, known.lost):
            yield known.fault(("trusses", "counters"), "is a counter that no group has",
                              got=counter, cure="add it to the bars of a group, or leave it out")
    if isinstance(trusses.floor, tuple):
        yield from _joints(known, ("trusses", "floor"), trusses.floor)
    yield from _joints(known, ("trusses", "bearings", "at"), trusses.bearings.at or ())


def _overrides(known: Known) -> Iterator[Fault]:
    """Overrides of parts that are nowhere, or of what the part has not."""
    for written, entry in known.record.overrides.items():
        path: Path = ("overrides", written)
        part = address(written)
        if fault := known.part_fault(path, part):
            yield fault
        yield from known.material_faults((*path, "material"), entry.material)
        yield from _joints(known, (*path, "spliced at"), entry.spliced_at or ())
        yield from _joints(known, (*path, "lateral points"), entry.lateral_points or ())
        fields = entry.model_fields_set - {"reason"}
        if not fields and not in_doubt(known.record, *path):
            yield known.fault(path, "overrides nothing", cure="write what differs, or leave it out")
        fitting = _BAR_FIELDS if part.bar else {"note"}
        if part.kind in OVERRIDES:
            fitting = {OVERRIDES[part.kind], "note"}
        if part.kind is Kind.BEARING:
            fitting |= {"bearing"}
        if part.kind is Kind.PIN:
            fitting = {"diameter", "material", "packing", "half", "note"}
        if part.kind in (Kind.STRUT, Kind.LATERAL):
            fitting = {"note"}
        for name in sorted(fields - fitting):
            key = name.replace("_", " ")
            yield known.fault((*path, key), f"does not belong to {part}", got=key,
                              cure="leave it out")


def _at_joints(
    known: Known, block: str, entries: Mapping[str, JointBlockEntry | PinEntry], what: str
) -> Iterator[Fault]:
    """Blocks or pins at joints that are nowhere, of a material not there, or named twice."""
    taken: dict[tuple[str, str], str] = {}
    names = known.record.trusses.names
    for name, entry in entries.items():
        path = (block, name)
        if entry.truss not in (BOTH_TRUSSES, *names):
            yield known.fault((*path, "truss"), "is no truss of this bridge", got=entry.truss,
                              cure=did_you_mean(entry.truss, names))
        yield from known.material_faults((*path, "material"), entry.material)
        yield from _joints(known, (*path, "joints"), entry.joints)
        for joint in entry.joints:
            for truss in names if entry.truss == BOTH_TRUSSES else (entry.truss,):
                first = taken.setdefault((truss, joint), name)
                if first != name:
                    yield known.fault((*path, "joints"), f"has a {what} already, in '{first}'",
                                      got=joint, cure="leave it out of one of them")
                    break


_BAR_FIELDS = {
    "kind", "section", "material", "pin_offset", "spliced_at", "lateral_points", "ends",
    "can_push", "can_pull", "splice", "pin_plates", "jaw", "rivet_holes", "other_pin_offset",
    "side_offset", "welded", "note",
}


def _floor(known: Known) -> Iterator[Fault]:
    """Curbs and weights on trusses that are nowhere; what is said to be measured and is not."""
    floor = known.record.floor
    for truss in floor.curbs:
        yield from known.truss_faults(("floor", f"curb to {truss} truss"), truss)
    for block in ("utilities", "others"):
        for name, entry in getattr(floor, block).items():
            yield from known.truss_faults(("floor", block, name, "truss"), entry.truss)
    if floor.bracing is not None:
        yield from known.truss_faults(("floor", "bracing", "truss"), floor.bracing.truss)
    surfacing = floor.surfacing
    if surfacing is not None and surfacing.measured and surfacing.thickness is None:
        yield known.fault(("floor", "surfacing", "measured"), "says that it was measured, and its "
                          "thickness is not", cure="write the thickness, or 'measured: false'")
