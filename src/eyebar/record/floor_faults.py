"""Whether the words on the floor agree with each other and with the rest of the record."""

from collections.abc import Iterator

from eyebar.errors import Fault, did_you_mean
from eyebar.record.doubt import in_doubt
from eyebar.record.fields import Entry
from eyebar.record.known import Known
from eyebar.record.layout import floor_joints
from eyebar.record.tree import Path
from eyebar.terms import Kind, Metal

OVERRIDES = {
    Kind.STRINGER: "stringer", Kind.FLOORBEAM: "floorbeam", Kind.HANGER: "hanger",
    Kind.BEARING: "shoe",
}
"""Kind of a part of the floor -> what an override of it says."""


def floor_faults(known: Known) -> Iterator[Fault]:
    """Materials, joints, panels and trusses that the floor names and the record has not."""
    floor = known.record.floor
    stringers = floor.stringers
    path: Path = ("floor", "stringers")
    yield from _materials(known, path, stringers)
    yield from _materials(known, ("floor", "floorbeams"), floor.floorbeams)
    yield from _materials(known, ("floor", "deck"), floor.deck)
    yield from _materials(known, ("floor", "hangers"), floor.hangers)
    for end in ("zero", "other"):
        yield from _materials(known, ("floor", "shoes", end), getattr(floor.shoes, end))
    for name, group in stringers.groups.items():
        yield from _materials(known, (*path, "groups", name), group)
    for written, entry in known.record.overrides.items():
        for what in OVERRIDES.values():
            yield from _materials(
                known, ("overrides", written, what), getattr(entry, what)
            )
    for truss, walk in floor.sidewalks.items():
        yield from _materials(known, ("floor", "sidewalks", truss, "bracket"), walk.bracket)
        yield from known.truss_faults(("floor", "sidewalks", truss), truss)
    if known.joints_known:
        yield from _along(known)


def _materials(known: Known, path: Path, entry: Entry | None) -> Iterator[Fault]:
    """What an entry is said to be made of, what is fastened to it too: a timber of the floor, a
    material, or a metal of the bridge's own year, by its word alone."""
    if in_doubt(known.record, "floor", "timbers"):
        return
    others = (*known.record.floor.timbers, *Metal)
    for key in ("material", "post material"):
        name = getattr(entry, key.replace(" ", "_"), None)
        yield from known.material_faults((*path, key), name, others)
    for within in ("truss rods", "anchors", "yoke"):
        one = getattr(entry, within.replace(" ", "_"), None)
        if one is not None:
            yield from _materials(known, (*path, within), one)


def _along(known: Known) -> Iterator[Fault]:
    """Panels and joints of stringers that are nowhere; groups that share a panel."""
    record = known.record
    joints = floor_joints(record.trusses)
    stringers = record.floor.stringers
    path: Path = ("floor", "stringers")
    for joint in stringers.cut_at or ():
        if joint not in joints:
            yield known.fault((*path, "cut at"), "is no joint of the floor", got=joint,
                              cure=did_you_mean(joint, joints))
    if stringers.cut_at and not stringers.continuous:
        yield known.fault((*path, "cut at"), "has no sense for stringers of one panel each",
                          cure="leave it out, or write 'continuous: true'")
    taken: dict[int, str] = {}
    for name, group in stringers.groups.items():
        for panel in group.panels:
            if panel > len(joints) - 1:
                yield known.fault((*path, "groups", name, "panels"), "is no panel of the floor",
                                  got=panel, cure=f"it has {len(joints) - 1}")
            elif taken.setdefault(panel, name) != name:
                yield known.fault(
                    (*path, "groups", name, "panels"), f"is in '{taken[panel]}' already",
                    got=panel, cure="leave it out of one of them",
                )
