"""The braces of a bridge as they are on a date: struts, portals, knees, laterals, one by one."""

from collections.abc import Mapping
from dataclasses import replace
from itertools import pairwise

from eyebar.bridge.bracing_parts import Brace, Knee, Laterals, Transverse
from eyebar.bridge.floor_said import FloorWords
from eyebar.bridge.left import left_of
from eyebar.bridge.parts import Bar, Truss
from eyebar.bridge.shaped import shaped
from eyebar.bridge.timeline import PartState, part_state
from eyebar.errors import NotMeasured, OutOfRange
from eyebar.record import DecisionEntry, SectionEntry
from eyebar.record.bracing import (
    BracingEntry,
    KneeEntry,
    LateralsEntry,
    PortalEntry,
    StrutEntry,
)
from eyebar.terms import Kind

BOTH = (1, 2)
"""The two braces that cross in a panel."""


def is_whole(part: str, decisions: Mapping[str, tuple[DecisionEntry, ...]]) -> bool:
    """Whether a part of the bracing works: neither broken nor loose as a whole."""
    return not is_gone(part_state(part, (), decisions.get(part, ())), 1)


def is_gone(state: PartState, piece: int) -> bool:
    """Whether a piece of a part of the bracing is broken or loose."""
    return any(
        one is not None and (one.pieces is None or piece in one.pieces)
        for one in (state.broken, state.loose)
    )


def strut_address(joint: str) -> str:
    """The address of what is at a joint of the upper chord: strut, portal or outriggers."""
    return f"bracing/{joint}/{Kind.STRUT}"


def lateral_address(ends: tuple[str, str]) -> str:
    """The address of the two braces of one panel."""
    return f"bracing/{'-'.join(ends)}/{Kind.LATERAL}"


def brace(
    words: FloorWords, part: str, entry: object, *, length: float, kind: Kind = Kind.STRUT
) -> Bar:
    """A brace as a bar, as its readings leave it.

    `entry` has a section and a material. Raises NotMeasured, and OutOfRange for a reading that does
    not fit.
    """
    state = words.state(part)
    section: SectionEntry | None = state.section or getattr(entry, "section", None)
    if section is None:
        raise NotMeasured(part, "section")
    material = words.metal(state.material or getattr(entry, "material", None))
    built = shaped(section)
    left = left_of(part, built, state.readings)
    slender = any((section.eyebars, section.rods, section.loop_rods))
    return Bar(
        name=part.partition("/")[2], address=part, kind=kind, ends=("", ""), length=length,
        length_in_plane=length, length_out_of_plane=length, as_built=built, left=left.section,
        material=material, can_push=not slender, can_pull=True, bow=left.bow, run=0.0,
        readings=left.readings,
    )


def _known(
    words: FloorWords, part: str, entry: object, *, length: float | None, kind: Kind
) -> Brace:
    """A brace, with its bar where all of it is known, else why not."""
    state = words.state(part)
    gone = tuple(piece for piece in BOTH if is_gone(state, piece))
    if length is None:
        return Brace(address=part, gone=gone, unknown="distance of the trusses not measured")
    try:
        if state.crack:
            raise OutOfRange(part, state.crack, "whole")
        bar = brace(words, part, entry, length=length, kind=kind)
    except NotMeasured as missing:
        return Brace(address=part, gone=gone, unknown=f"{missing.what} not measured")
    except OutOfRange as reason:
        return Brace(address=part, gone=gone, unknown=str(reason))
    # A strut lies level: its own weight bends it.
    level = kind is Kind.STRUT
    return Brace(
        address=part, gone=gone, bar=replace(bar, run=bar.length) if level else bar,
        can_push=bar.can_push,
    )


def laterals(
    words: FloorWords, said: LateralsEntry | None, truss: Truss, joints: tuple[str, ...]
) -> Laterals | None:
    """The crossed braces between some joints; None where none are recorded."""
    if said is None or len(joints) < 2:
        return None
    spacing = words.record.trusses.spacing
    across = None if spacing is None else spacing.number
    panels = []
    for ends in pairwise(joints):
        along = _apart(truss, ends)
        length = None if across is None else (along**2 + across**2) ** 0.5
        panels.append(_known(
            words, lateral_address(ends), said, length=length, kind=Kind.LATERAL
        ))
    stations = [0.0]
    for ends in pairwise(joints):
        stations.append(stations[-1] + _apart(truss, ends))
    return Laterals(joints=joints, stations=tuple(stations), panels=tuple(panels))


def _apart(truss: Truss, ends: tuple[str, str]) -> float:
    (x, y), (u, v) = (truss.joints[joint] for joint in ends)
    return float(((u - x) ** 2 + (v - y) ** 2) ** 0.5)


def transverse(
    words: FloorWords, joint: str, said: PortalEntry | StrutEntry
) -> Transverse:
    """A portal, or a strut between the two chords at a joint."""
    spacing = words.record.trusses.spacing
    across = None if spacing is None else spacing.number
    part = strut_address(joint)
    portal = isinstance(said, PortalEntry)
    return Transverse(
        joint=joint,
        form=str(said.form) if isinstance(said, PortalEntry)
        else "strut with knees" if said.knee is not None else "strut",
        depth=said.depth.number if isinstance(said, PortalEntry) and said.depth else None,
        foot_width=(
            said.foot_width.number if isinstance(said, PortalEntry) and said.foot_width else None
        ),
        strut=_known(words, part, said, length=across, kind=Kind.STRUT),
        knee=None if said.knee is None else _knee(words, part, said.knee),
        portal=portal,
    )


def _knee(words: FloorWords, part: str, said: KneeEntry) -> Knee:
    """A knee. Readings and repairs of its strut are the strut's alone."""
    along, down = said.along.number, said.down.number
    length = (along**2 + down**2) ** 0.5
    bar, unknown = None, ""
    try:
        if said.section is None:
            raise NotMeasured(part, "section of the knees")
        built = shaped(said.section)
        bar = Bar(
            name=f"{part.partition('/')[2]} knee", address=f"{part} knee", kind=Kind.STRUT,
            ends=("", ""), length=length, length_in_plane=length, length_out_of_plane=length,
            as_built=built, left=built, material=words.metal(said.material), run=0.0, can_pull=True,
            can_push=not any((said.section.eyebars, said.section.rods, said.section.loop_rods)),
        )
    except NotMeasured as missing:
        unknown = f"{missing.what} not measured"
    return Knee(along=along, down=down, bar=bar, unknown=unknown)


def transverses(
    words: FloorWords, said: BracingEntry, portals: tuple[str | None, str | None]
) -> dict[str, Transverse]:
    """Joint of the upper chord -> the portal or strut that is recorded there."""
    found = {}
    told = said.portals
    if told is not None:
        for joint, portal in zip(portals, (told.zero, told.other), strict=True):
            if joint is not None and portal is not None:
                found[joint] = transverse(words, joint, portal)
    for group in said.struts.values():
        for joint in group.at:
            found.setdefault(joint, transverse(words, joint, group))
    return found
