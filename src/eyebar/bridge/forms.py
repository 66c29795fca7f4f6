"""The forms of truss: from panels and depth to joints and bars, and what each bar is for.

Joints of the lower chord are L0 ... Ln, of the upper chord U1 ... Un-1, counted from end 0; a bar
is named upper joint first. Lengths in inches, stations in feet.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from eyebar.errors import OutOfRange
from eyebar.terms import Kind

LEAST_PANELS_PRATT = 3
LEAST_PANELS_DOUBLE = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidBar:
    """One bar as the form lays it: `kinds` are what it may be called, the form's own word first."""

    name: str
    ends: tuple[str, str]
    kinds: tuple[Kind, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """A truss as its form lays it out, before anything is known of its sections.

    `joints` [in]; `floor_joints` (joint, station in feet); `misplaced` the counters asked for that
    cross no panel as a counter of this form does.
    """

    joints: Mapping[str, tuple[float, float]]
    bars: Mapping[str, LaidBar]
    floor_joints: tuple[tuple[str, float], ...]
    misplaced: tuple[str, ...] = ()


def pratt(
    panels: Sequence[float], depths: Mapping[str, float], counters: Iterable[str] = ()
) -> Layout:
    """A single-intersection Pratt truss: one diagonal a panel, falling towards the middle.

    `panels` one length for each [in], `depths` upper joint -> depth [in]. With an odd number of
    panels the middle one has both its diagonals, either of which is called diagonal or counter.
    Raises OutOfRange for fewer than 3 panels.
    """
    count = _counted(panels, LEAST_PANELS_PRATT)
    diagonals = [
        _bar(f"U{i}", f"L{i + 1}", Kind.DIAGONAL) for i in range(1, count - 1) if 2 * i + 2 <= count
    ]
    diagonals += [_mirrored(bar, count) for bar in diagonals]
    middle = count // 2
    if count % 2:
        crossed = (Kind.COUNTER, Kind.DIAGONAL)
        diagonals.append(_bar(f"U{middle}", f"L{middle + 1}", *crossed))
        diagonals.append(_bar(f"U{middle + 1}", f"L{middle}", *crossed))
    return _laid(panels, depths, diagonals, counters, lambda gap: gap == 1)


def double_intersection_pratt(
    panels: Sequence[float], depths: Mapping[str, float], counters: Iterable[str] = ()
) -> Layout:
    """A Pratt truss of two web systems: a diagonal passes one vertical and spans two panels.

    Besides these, the hip has a short diagonal to L2. A main diagonal falls towards the middle and
    reaches across it only where it crosses its mirror image on the middle panel point itself
    (U4-L6 and U6-L4 of ten panels); with an odd number of panels none does, and what crosses the
    middle panel is a counter. Raises OutOfRange for fewer than 6 panels.
    """
    count = _counted(panels, LEAST_PANELS_DOUBLE)
    diagonals = [_bar("U1", "L2", Kind.DIAGONAL)]
    diagonals += [
        _bar(f"U{i}", f"L{i + 2}", Kind.DIAGONAL) for i in range(1, count - 2) if 2 * i + 2 <= count
    ]
    diagonals += [_mirrored(bar, count) for bar in diagonals]
    return _laid(panels, depths, diagonals, counters, lambda gap: gap in (1, 2))


def _counted(panels: Sequence[float], least: int) -> int:
    if len(panels) < least:
        raise OutOfRange("number of panels", len(panels), f"{least} or more for this form")
    return len(panels)


def _bar(first: str, second: str, *kinds: Kind) -> LaidBar:
    return LaidBar(name=f"{first}-{second}", ends=(first, second), kinds=kinds)


def _mirrored(bar: LaidBar, count: int) -> LaidBar:
    """The bar about the middle: U1-L2 of ten panels is U9-L8."""
    first, second = (f"{joint[0]}{count - int(joint[1:])}" for joint in bar.ends)
    return _bar(first, second, *bar.kinds)


def _laid(
    panels: Sequence[float], depths: Mapping[str, float], diagonals: Iterable[LaidBar],
    counters: Iterable[str], crosses: Callable[[int], bool],
) -> Layout:
    """Chords, end posts, verticals and the web's diagonals, then the counters that fit."""
    count = len(panels)
    stations = [0.0]
    for panel in panels:
        stations.append(stations[-1] + panel)
    joints = {f"L{i}": (station, 0.0) for i, station in enumerate(stations)}
    joints |= {f"U{i}": (stations[i], depths[f"U{i}"]) for i in range(1, count)}
    bars = {bar.name: bar for bar in (*_frame(count), *diagonals)}
    misplaced = []
    for name in counters:
        if name in bars and Kind.COUNTER in bars[name].kinds:
            continue
        upper, _, lower = name.partition("-")
        fits = (
            name not in bars and upper in joints and lower in joints
            and upper[0] + lower[0] == "UL" and crosses(abs(int(upper[1:]) - int(lower[1:])))
            and lower not in ("L0", f"L{count}")
        )
        if fits:
            bars[name] = _bar(upper, lower, Kind.COUNTER)
        else:
            misplaced.append(name)
    return Layout(
        joints=joints, bars=bars, misplaced=tuple(misplaced),
        floor_joints=tuple((f"L{i}", station / 12.0) for i, station in enumerate(stations)),
    )


def _frame(count: int) -> Iterable[LaidBar]:
    """End posts, chords and verticals, which both forms have alike."""
    yield _bar("U1", "L0", Kind.END_POST)
    yield _bar(f"U{count - 1}", f"L{count}", Kind.END_POST)
    for i, j in pairwise(range(1, count)):
        yield _bar(f"U{i}", f"U{j}", Kind.TOP_CHORD)
    for i, j in pairwise(range(count + 1)):
        yield _bar(f"L{i}", f"L{j}", Kind.BOTTOM_CHORD)
    for i in range(1, count):
        kind = Kind.HIP_VERTICAL if i in (1, count - 1) else Kind.POST
        yield _bar(f"U{i}", f"L{i}", kind)
