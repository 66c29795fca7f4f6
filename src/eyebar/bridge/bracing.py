"""The bracing of a record on a date: what holds the trusses sideways, and is still whole."""

import math
from collections.abc import Mapping
from itertools import pairwise
from typing import TypedDict

from eyebar.bridge.braces import (
    brace,
    is_gone,
    is_whole,
    lateral_address,
    laterals,
    strut_address,
    transverses,
)
from eyebar.bridge.bracing_parts import Bracing, CrossFrame, Laterals, Outrigger, Transverse
from eyebar.bridge.floor_beams import floorbeams_of, panels_of
from eyebar.bridge.floor_parts import Floorbeam
from eyebar.bridge.floor_said import FloorWords
from eyebar.bridge.lengths import Sideways
from eyebar.bridge.members import Member
from eyebar.bridge.others import beam_joints
from eyebar.bridge.parts import Truss
from eyebar.bridge.timeline import part_state
from eyebar.errors import NotMeasured, OutOfRange
from eyebar.office import Values
from eyebar.record import DecisionEntry, Record
from eyebar.record.bracing import Bases, BracingEntry, CrossFrameEntry, OutriggerEntry
from eyebar.record.layout import floor_joints
from eyebar.terms import Kind

Joints = Mapping[str, tuple[float, float]]
UNKNOWN = (
    "the trusses are too low for struts overhead, and what holds their upper chords sideways is not"
    " recorded (bracing)"
)


class _Braces(TypedDict):
    transverse: Mapping[str, Transverse]
    top_laterals: Laterals | None
    bottom_laterals: Laterals | None


UPRIGHT = 1.0
"""Two joints whose stations differ by less than this stand over each other [in]."""


def sideways(
    record: Record, decisions: Mapping[str, tuple[DecisionEntry, ...]], joints: Joints,
    values: Values,
) -> Sideways:
    """What the record tells of where a truss's upper chord is held sideways."""
    said = record.bracing
    if said is None:
        return Sideways(not_held=UNKNOWN if _low(record, joints, values) else "")
    if not said.overhead:
        return Sideways(half_through=True, firm=_firm(said, joints, decisions))
    points, why = _points(said, joints, decisions)
    return Sideways(points=points, not_held=why)


def _low(record: Record, joints: Joints, values: Values) -> bool:
    """Whether a through truss leaves no room for anything overhead."""
    floor = [joint for joint in floor_joints(record.trusses) if joint in joints]
    if not floor or not all(joint.startswith("L") for joint in floor):
        return False
    level = max(joints[joint][1] for joint in floor)
    depth = max(y for _, y in joints.values()) - level
    return depth < values.number("bracing.lowest overhead") * 12.0


def _firm(
    said: BracingEntry, joints: Joints, decisions: Mapping[str, tuple[DecisionEntry, ...]]
) -> Mapping[str, bool]:
    """Joint of the upper chord -> whether an outrigger holds the head of its post."""
    return {
        joint: frame.outrigger is not None and is_whole(strut_address(joint), decisions)
        for joint in joints if (frame := frame_at(said, joint)) is not None
        and (frame.outrigger is not None or frame.joint not in (None, "hung"))
    }


def frame_at(said: BracingEntry, joint: str) -> CrossFrameEntry | None:
    """What the record says of the cross frame at a joint."""
    return said.frames.get(joint, said.cross_frames)


def portal_joints(said: BracingEntry, joints: Joints) -> tuple[str | None, str | None]:
    """The joints at which the two portals stand; None where there is none."""
    upper = sorted((x, joint) for joint, (x, _) in joints.items() if joint.startswith("U"))
    portals = said.portals
    if portals is None or not upper:
        return None, None
    found = []
    for portal, (_, last) in ((portals.zero, upper[0]), (portals.other, upper[-1])):
        found.append(None if portal is None else portal.at or last)
    return found[0], found[1]


def upper_joints(said: BracingEntry, joints: Joints) -> tuple[str, ...]:
    """The joints between which the top laterals run, in order."""
    if said.top_laterals is not None and said.top_laterals.joints is not None:
        return said.top_laterals.joints
    return tuple(sorted(
        (joint for joint in joints if joint.startswith("U")), key=lambda joint: joints[joint][0]
    ))


def _points(
    said: BracingEntry, joints: Joints, decisions: Mapping[str, tuple[DecisionEntry, ...]]
) -> tuple[frozenset[str], str]:
    """Joints of the upper chord that are held sideways, or why none is.

    The portals hold the hips; from there on a strut holds as far as laterals without a gap reach.
    """
    portals = portal_joints(said, joints)
    for place, portal in zip(("zero", "other"), portals, strict=True):
        if portal is None:
            return frozenset(), f"no portal is recorded at end {place}: nothing holds the hips"
        if not is_whole(strut_address(portal), decisions):
            return frozenset(), f"the portal at {portal} is broken or loose"
    struts = {joint for group in said.struts.values() for joint in group.at}
    held = {joint for joint in portals if joint is not None}
    if said.top_laterals is None:
        return frozenset(held), ""
    row = upper_joints(said, joints)
    panels = tuple(pairwise(row))
    for order in (panels, tuple((last, first) for first, last in reversed(panels))):
        for first, last in order:
            ends = (first, last) if (first, last) in panels else (last, first)
            state = part_state(
                lateral_address(ends), (), decisions.get(lateral_address(ends), ())
            )
            works = not (is_gone(state, 1) and is_gone(state, 2))
            if first in held and works and last in struts and is_whole(
                strut_address(last), decisions
            ):
                held.add(last)
    return frozenset(held), ""


def bracing_on(
    words: FloorWords, trusses: tuple[Truss, ...], said_of: Mapping[str, Mapping[str, Member]]
) -> Bracing | None:
    """The bracing as it is; None where the record tells nothing of it.

    `said_of` is what the record says of each bar, by truss.
    """
    said = words.record.bracing
    if said is None:
        return None
    spacing = words.record.trusses.spacing
    frames: dict[str, Mapping[str, CrossFrame]] = {}
    rules: list[str] = []
    beams = {} if said.overhead else _beams(words, trusses)
    for truss in trusses if not said.overhead else ():
        its, why = _frames(words, said, truss, beams)
        frames[truss.name] = its
        rules += [f"{truss.name}: {one}" for one in why]
    return Bracing(
        overhead=said.overhead, spacing=None if spacing is None else spacing.number,
        frames=frames, bases_held=said.bases is Bases.HELD,
        hinged={
            name: _cuts(bars) - frozenset(said.stiff_joints) for name, bars in said_of.items()
        },
        rules=tuple(dict.fromkeys(rules)), **_overhead(words, said, trusses),
    )


def _overhead(
    words: FloorWords, said: BracingEntry, trusses: tuple[Truss, ...]
) -> _Braces:
    """Portals, struts and laterals, by the joints of the first truss."""
    truss = trusses[0]
    joints = truss.joints
    lower = said.bottom_laterals and said.bottom_laterals.joints
    return _Braces(
        transverse=transverses(words, said, portal_joints(said, joints)) if said.overhead else {},
        top_laterals=laterals(words, said.top_laterals, truss, upper_joints(said, joints)),
        bottom_laterals=laterals(
            words, said.bottom_laterals, truss,
            lower or tuple(joint for joint, _ in truss.floor_joints),
        ),
    )


def _beams(words: FloorWords, trusses: tuple[Truss, ...]) -> dict[str, Floorbeam]:
    """The floorbeams by their joint, wherever the stringers lie on them."""
    spacing = words.record.trusses.spacing
    if spacing is None:
        return {}
    beams, _ = floorbeams_of(
        words, panels_of(trusses), beam_joints(trusses[0]), span_ft=spacing.in_unit("ft"),
        places_ft=(),
    )
    return {beam.joint: beam for beam in beams}


def _cuts(said: Mapping[str, Member]) -> frozenset[str]:
    """Joints at which the upper chord is cut: those recorded, or both ends of each of its bars."""
    found: set[str] = set()
    for bar in said.values():
        if bar.kind is Kind.TOP_CHORD:
            found |= bar.spliced_at if bar.spliced_at is not None else {*bar.bar.split("-")}
    return frozenset(found)


def _frames(
    words: FloorWords, said: BracingEntry, truss: Truss, beams: Mapping[str, Floorbeam]
) -> tuple[dict[str, CrossFrame], list[str]]:
    """The cross frames of one truss by joint of its upper chord; what stands in the way of one."""
    found: dict[str, CrossFrame] = {}
    rules: list[str] = []
    floor = {joint for joint, _ in truss.floor_joints if joint not in truss.supports}
    for bar in truss.bars:
        upper, lower = bar.ends
        if bar.kind not in (Kind.POST, Kind.HIP_VERTICAL) or lower not in floor:
            continue
        if abs(truss.joints[upper][0] - truss.joints[lower][0]) > UPRIGHT:
            continue
        entry = frame_at(said, upper)
        if entry is None or entry.height is None:
            what = "cross frame" if entry is None else "height of the chord above the floorbeam"
            rules.append(f"{what} at {upper} not recorded: nothing is taken to hold it there")
            continue
        outrigger, why = _outrigger(words, truss, upper, entry)
        rules += why
        height = entry.height.number
        clear = entry.clear_height
        found[upper] = CrossFrame(
            joint=upper, post=bar.name, beam=beams.get(lower), fastened=str(entry.joint or ""),
            height=height, clear_height=height if clear is None else clear.number,
            outrigger=outrigger,
            assumed=() if clear is not None else (
                f"the post at {upper} is taken as free to bend over its whole height",),
        )
    return found, rules


def _outrigger(
    words: FloorWords, truss: Truss, joint: str, entry: CrossFrameEntry
) -> tuple[Outrigger | None, list[str]]:
    """The outrigger at a joint as it is left; None where there is none, or none that works."""
    if entry.outrigger is None:
        return None, []
    part = strut_address(joint)
    state = words.state(part)
    piece = list(words.record.trusses.names).index(truss.name) + 1
    if is_gone(state, piece):
        return None, [f"the outrigger at {joint} is broken or loose and holds nothing"]
    try:
        bar = brace(words, part, entry.outrigger, length=_length(entry.outrigger))
    except (NotMeasured, OutOfRange) as unknown:
        return None, [f"the outrigger at {joint} is taken to hold nothing: {unknown}"]
    return Outrigger(
        bar=bar, foot=entry.outrigger.foot.number, head=entry.outrigger.head.number
    ), []


def _length(outrigger: OutriggerEntry) -> float:
    return math.hypot(outrigger.foot.number, outrigger.head.number)
