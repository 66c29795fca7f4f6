"""Upper chords of half-through bridges, held by elastic posts: effective lengths of their bars.

Each end post, the chord and the other end post are unrolled into one line, with the posts' heads as
springs. The pushes along it follow the fullest course that dead load or axles bring, whatever the
vehicle: one chord has one set of effective lengths.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np

from eyebar.analysis.elastic_posts import ElasticChord, Piece, buckling_multiple
from eyebar.analysis.loaded import LoadedTruss, dead_forces
from eyebar.analysis.model import Floats
from eyebar.bridge.parts import Bar, Bridge, Truss
from eyebar.errors import NotMeasured, OutOfRange, Unstable
from eyebar.office import Values
from eyebar.resistance.cross_frames import length_of_equal_column
from eyebar.resistance.frame_stiffness import frame_stiffness
from eyebar.resistance.whole_column import stiffness_across
from eyebar.terms import Kind, Metal

ALONG_THE_TOP = (Kind.TOP_CHORD, Kind.END_POST)
APART_FT = (0.0, 4.0, 8.0, 12.0, 16.0, 20.0, 25.0, 30.0)
"""Distances of two like axles; the longest is that of the longest design truck."""
IDLE = 0.01
"""A bar with less than this part of the greatest push is taken to have so much."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HeldChord:
    """One unrolled chord of a half-through truss, solved.

    `bars` in order from end 0; `joints` one more; `stiffness` of what holds each [kip/in], infinity
    over the bearings; `thrusts`, that of the bar pushed most being 1 kip, and the `multiple` at
    which it buckles; `lengths` the effective length of each bar [in]. `remarks` say what was not
    known; `hinged` where it is cut.
    """

    truss: str
    bars: tuple[Bar, ...]
    joints: tuple[str, ...]
    stiffness: tuple[float, ...]
    hinged: tuple[bool, ...]
    thrusts: tuple[float, ...]
    multiple: float
    lengths: tuple[float, ...]
    remarks: tuple[str, ...] = ()


def held_by_posts(
    bridge: Bridge, loaded: Callable[[Truss], LoadedTruss], values: Values
) -> tuple[Bridge, tuple[HeldChord, ...], list[str]]:
    """The bridge with the effective lengths of its half-through chords, the chords, what to say.

    A bridge that is not half-through, or whose bracing is not recorded, is returned as it is. A
    chord that cannot be solved is not rated.
    """
    if bridge.bracing is None or bridge.bracing.overhead or bridge.unknown_loads:
        return bridge, (), []
    trusses, chords, said = [], [], list(bridge.bracing.rules)
    for truss in bridge.trusses:
        try:
            chord = solved_chord(bridge, truss, loaded(truss), values)
        except (NotMeasured, OutOfRange, Unstable) as reason:
            trusses.append(_not_held(truss, f"how its posts hold it cannot be found: {reason}"))
            continue
        said += [f"{truss.name}: {one}" for one in chord.remarks]
        if not chord.multiple > 0.0:
            trusses.append(_not_held(truss, "nothing recorded holds the upper chord sideways"))
            continue
        chords.append(chord)
        trusses.append(_with_lengths(truss, chord))
    return replace(bridge, trusses=tuple(trusses)), tuple(chords), said


def _not_held(truss: Truss, reason: str) -> Truss:
    return replace(truss, bars=tuple(
        replace(bar, not_rated="; ".join(filter(None, (bar.not_rated, reason))))
        if bar.kind in ALONG_THE_TOP else bar for bar in truss.bars
    ))


def _with_lengths(truss: Truss, chord: HeldChord) -> Truss:
    lengths = {bar.name: length for bar, length in zip(chord.bars, chord.lengths, strict=True)}
    return replace(truss, bars=tuple(
        bar if bar.name not in lengths else replace(
            bar, length_out_of_plane=lengths[bar.name],
            on_posts="upper chord on elastic posts, buckles sideways when the bar pushed most has"
            f" {chord.multiple:.0f} kip: effective length {lengths[bar.name] / 12:.1f} ft",
        )
        for bar in truss.bars
    ))


def solved_chord(
    bridge: Bridge, truss: Truss, loaded: LoadedTruss, values: Values
) -> HeldChord:
    """One truss's unrolled chord. Raises NotMeasured, OutOfRange where it cannot be solved."""
    bars, joints = unrolled(truss)
    for bar in bars:
        if bar.material.metal is Metal.CAST_IRON:
            raise OutOfRange(f"metal of {bar.name}", "cast iron", "wrought iron or steel")
    remarks: list[str] = []
    stiffness = []
    for joint in joints:
        spring, why = spring_at(bridge, truss, joint, values)
        stiffness.append(spring)
        remarks += why
    assert bridge.bracing is not None
    inner, cuts = _hinges(
        truss, joints, bridge.bracing.hinged.get(truss.name, frozenset()),
        straight=values.number("bracing.straight within"),
    )
    free = not bridge.bracing.bases_held
    hinged = (free, *inner, free)
    remarks += cuts
    thrusts = shares_of_push(loaded, bars)
    rigid = [bar.material.modulus * stiffness_across(bar)[0] for bar in bars]
    multiple = buckling_multiple(ElasticChord(
        pieces=tuple(
            Piece(length=bar.length, rigidity=one, thrust=thrust)
            for bar, one, thrust in zip(bars, rigid, thrusts, strict=True)
        ),
        springs=tuple(stiffness), hinged=hinged,
    ))
    lengths = [bar.length_out_of_plane for bar in bars]
    if 0.0 < multiple < math.inf:
        # What stiffer neighbours do for a bar between two joints is not relied on.
        lengths = [
            max(bar.length, length_of_equal_column(
                bar.material.modulus, one / bar.material.modulus, multiple, thrust
            ))
            for bar, one, thrust in zip(bars, rigid, thrusts, strict=True)
        ]
    return HeldChord(
        truss=truss.name, bars=bars, joints=joints, stiffness=tuple(stiffness), hinged=hinged,
        thrusts=tuple(thrusts), multiple=multiple, lengths=tuple(lengths),
        remarks=tuple(dict.fromkeys(remarks)),
    )


def unrolled(truss: Truss) -> tuple[tuple[Bar, ...], tuple[str, ...]]:
    """The bars of a truss's upper chord and its end posts from end 0, and their joints.

    Raises OutOfRange where they are no one line.
    """
    along = sorted(
        (bar for bar in truss.bars if bar.kind in ALONG_THE_TOP),
        key=lambda bar: sum(truss.joints[joint][0] for joint in bar.ends),
    )
    ends = [set(bar.ends) for bar in along]
    joints: list[str] = []
    for i, here in enumerate(ends):
        if i + 1 < len(ends):
            shared = here & ends[i + 1]
            if len(shared) != 1:
                raise OutOfRange("upper chord", f"{along[i].name}, {along[i + 1].name}", "one line")
            if not joints:
                joints += here - shared
            joints += shared
    if len(along) < 2:
        raise OutOfRange("upper chord", len(along), "one line of several bars")
    joints += ends[-1] - {joints[-1]}
    return tuple(along), tuple(joints)


def _hinges(
    truss: Truss, joints: Sequence[str], cut: frozenset[str], *, straight: float
) -> tuple[tuple[bool, ...], list[str]]:
    """Where the line turns too sharply or is cut, and what to say of that."""
    said, hinged = [], []
    for joint in joints[1:-1]:
        turn = _turn(truss, joints, joint)
        why = f"turns by {turn:.0f} deg" if turn > straight else "is spliced" * (joint in cut)
        if why:
            said.append(f"the upper chord {why} at {joint}: taken as hinged there across the truss")
        hinged.append(bool(why))
    return tuple(hinged), said


def _turn(truss: Truss, joints: Sequence[str], joint: str) -> float:
    """By how much the line turns at an inner joint [deg]."""
    i = list(joints).index(joint)
    (x, y), (u, v), (p, q) = (truss.joints[one] for one in joints[i - 1:i + 2])
    before, after = math.atan2(v - y, u - x), math.atan2(q - v, p - u)
    return abs(math.degrees(after - before))


def spring_at(
    bridge: Bridge, truss: Truss, joint: str, values: Values
) -> tuple[float, list[str]]:
    """What holds a joint of the line sideways [kip/in], and what to say of it."""
    assert bridge.bracing is not None
    if joint in truss.supports:
        return math.inf, []
    frame = bridge.bracing.frames.get(truss.name, {}).get(joint)
    if frame is None:
        return 0.0, [f"no cross frame at {joint}: nothing is taken to hold it"]
    beam = frame.beam
    post = next((bar for bar in truss.bars if bar.name == frame.post), None)
    if beam is None or beam.not_rated or post is None or not post.can_push:
        known = beam is not None and not beam.not_rated
        what = "a post that can bend" if known else "a floorbeam of known size"
        return 0.0, [f"the cross frame at {joint} has not {what}: nothing is taken to hold it"]
    try:
        found = frame_stiffness(frame, post, beam, values)
    except NotMeasured as missing:
        return 0.0, [f"{missing.what} not measured at {joint}: nothing is taken to hold it"]
    why = list(frame.assumed)
    if not found:
        why = [f"the floorbeam hangs at {joint}, or how it is fastened is not known, and no"
               " outrigger holds the post: nothing is taken to hold the chord there"]
    return found, why


def shares_of_push(loaded: LoadedTruss, bars: Sequence[Bar]) -> list[float]:
    """Push of each bar over that of the bar pushed most [1], the fullest course along the chord.

    Of the dead load, of an even load, of one axle and of pairs of like axles up to 30 ft apart,
    each at its worst place for every bar, the greatest share is taken. All of them act at once,
    which no vehicle at one place can do: the safe side.
    """
    model = loaded.model
    rows = [next(i for i, one in enumerate(model.bars) if one.name == bar.name) for bar in bars]
    dead = np.maximum(-dead_forces(loaded, 1.0, 1.0)[rows], 0.0)
    stations = np.array([station for _, station in loaded.truss.floor_joints])
    lines = _lines(loaded, rows)
    pushes = [dead, np.maximum(lines, 0.0).sum(axis=1)]
    pushes += [_pushes_of_pair(lines, stations, apart) for apart in APART_FT]
    shares = [one / one.max() for one in pushes if one.max() > 0.0]
    if not shares:
        raise OutOfRange("push of the upper chord", 0.0, "over zero")
    return [float(one) for one in np.maximum(np.max(np.stack(shares), axis=0), IDLE)]


def _lines(loaded: LoadedTruss, rows: Sequence[int]) -> Floats:
    """(bars, floor joints) push of each bar for a unit of weight on each floor joint [1], by the
    bars that work under the dead load."""
    working = loaded.lines.ordinates(loaded.start(1.0, 1.0))
    lines: Floats = -working.T[list(rows)]
    return lines


def _pushes_of_pair(lines: Floats, stations: Floats, apart_ft: float) -> Floats:
    """(bars,) greatest push of two axles of 1 kip, one of them over each panel point in turn."""
    found = np.zeros(len(lines))
    for way in (1.0, -1.0):
        at = np.stack([stations, stations + way * apart_ft], axis=1)
        there = (at >= stations[0]) & (at <= stations[-1])
        for row, line in enumerate(lines):
            pushes = (np.interp(at, stations, line) * there).sum(axis=1)
            found[row] = max(found[row], float(pushes.max()))
    return found
