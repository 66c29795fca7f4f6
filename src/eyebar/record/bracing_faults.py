"""Whether the words on the bracing agree with each other and with the rest of the record."""

from collections.abc import Iterable, Iterator

from eyebar.errors import Fault, did_you_mean
from eyebar.record.bracing import (
    BracingEntry,
    CrossFrameEntry,
    KneeEntry,
    LateralsEntry,
)
from eyebar.record.doubt import in_doubt
from eyebar.record.fields import Entry
from eyebar.record.known import Known
from eyebar.record.tree import Path
from eyebar.terms import Kind, Metal

TOLD_BY_BRACING = (Kind.TOP_CHORD, Kind.END_POST, Kind.POST)
"""Bars whose lateral points follow from the bracing."""
HERE: Path = ("bracing",)


def bracing_faults(known: Known) -> Iterator[Fault]:
    """Joints and materials that the bracing names and the record has not; what is said twice."""
    said = known.record.bracing
    if said is None:
        return
    for path, entry in _entries(said):
        material = getattr(entry, "material", None)
        yield from known.material_faults((*path, "material"), material, Metal)
        if isinstance(entry, CrossFrameEntry):
            yield from _frame(known, path, entry)
        if isinstance(entry, KneeEntry):
            yield from _knee(known, path, entry)
        if isinstance(entry, LateralsEntry):
            yield from _joints(known, (*path, "joints"), entry.joints or ())
    yield from _joints(known, (*HERE, "frames"), said.frames)
    yield from _joints(known, (*HERE, "stiff joints"), said.stiff_joints)
    for end in ("zero", "other"):
        portal = getattr(said.portals, end, None)
        if portal is not None and portal.at is not None:
            yield from _joints(known, (*HERE, "portals", end, "at"), (portal.at,))
    yield from _struts(known, said)
    yield from _said_twice(known)


def _entries(said: BracingEntry) -> Iterator[tuple[Path, Entry]]:
    """Every block that may name a material, with its path."""
    blocks: list[tuple[Path, Entry | None]] = [
        ((*HERE, "cross frames"), said.cross_frames),
        *(((*HERE, "frames", joint), frame) for joint, frame in said.frames.items()),
        *(((*HERE, "portals", end), getattr(said.portals, end, None))
          for end in ("zero", "other")),
        *(((*HERE, "struts", name), group) for name, group in said.struts.items()),
        ((*HERE, "top laterals"), said.top_laterals),
        ((*HERE, "bottom laterals"), said.bottom_laterals),
    ]
    for path, block in blocks:
        if block is not None:
            yield path, block
            for inner in ("knee", "outrigger"):
                if (one := getattr(block, inner, None)) is not None:
                    yield (*path, inner), one


def _joints(known: Known, path: Path, joints: Iterable[str]) -> Iterator[Fault]:
    for joint in joints if known.joints_known else ():
        if joint not in known.joints:
            yield known.fault(path, "is no joint of the truss", got=joint,
                              cure=did_you_mean(joint, known.joints))


def _frame(known: Known, path: Path, frame: CrossFrameEntry) -> Iterator[Fault]:
    height, clear, outrigger = frame.height, frame.clear_height, frame.outrigger
    if height is None:
        return
    if clear is not None and clear.exact > height.exact:
        yield known.fault((*path, "clear height"), f"is more than the whole height, '{height}'",
                          got=clear, cure="measure it from the top of the post's joint")
    if outrigger is not None and outrigger.head.exact > height.exact:
        yield known.fault((*path, "outrigger", "head"), f"is above the chord, at '{height}'",
                          got=outrigger.head, cure="measure it from the floorbeam's middle")


def _knee(known: Known, path: Path, knee: KneeEntry) -> Iterator[Fault]:
    spacing = known.record.trusses.spacing
    if in_doubt(known.record, "trusses", "spacing"):
        return
    if spacing is not None and 2 * knee.along.exact >= spacing.exact:
        yield known.fault((*path, "along"), f"is past the middle between trusses '{spacing}' apart",
                          got=knee.along, cure="measure it from the nearer truss's centre line")


def _struts(known: Known, said: BracingEntry) -> Iterator[Fault]:
    taken: dict[str, str] = {}
    for name, group in said.struts.items():
        path = (*HERE, "struts", name, "at")
        yield from _joints(known, path, group.at)
        for joint in group.at:
            if taken.setdefault(joint, name) != name:
                yield known.fault(path, f"has a strut already, in '{taken[joint]}'", got=joint,
                                  cure="leave it out of one of them")


def _said_twice(known: Known) -> Iterator[Fault]:
    """Lateral points of bars that the bracing holds."""
    for name, group in known.record.members.items():
        path = ("members", name, "lateral points")
        if group.lateral_points is not None and group.kind in TOLD_BY_BRACING and not in_doubt(
            known.record, "members", name, "kind"
        ):
            yield known.fault(path, "says what the bracing says", cure="leave it out: it follows"
                              " from 'bracing', and from what of it still works")
