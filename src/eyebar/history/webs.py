"""Two webs over each other in one truss: which joints belong to each, and what each brings."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import dist

from eyebar.history.lines import Bar, Lines


@dataclass(frozen=True, slots=True, kw_only=True)
class Web:
    """One web, in the half at end 0: its bars, and its panel points on the lower chord.

    `first` is its bar at the hip, `brings` the upright part of that bar's force [kip].
    """

    bars: tuple[Bar, ...]
    below: tuple[str, ...]
    first: Bar
    brings: float


def webs(lines: Lines, dead: Mapping[Bar, float]) -> tuple[Web, ...]:
    """The two webs of a truss of double intersection; none where they cannot be told apart.

    In the half at end 0: over the middle an odd number of panels makes one web into the other.
    """
    hips = {lines.upper[0], lines.upper[1], lines.upper[-1], lines.upper[-2]}
    hips |= {lines.lower[0], lines.lower[-1]}
    half = [
        bar for bar in (*lines.diagonals, *lines.verticals)
        if all(lines.joints[joint][0] <= lines.middle + 1.0 for joint in bar)
    ]
    parts = _apart([bar for bar in half if hips.isdisjoint(bar)])
    at_hips = [bar for bar in half if not hips.isdisjoint(bar)]
    found = [web for part in parts if (web := _web(part, at_hips, lines, dead))]
    found.sort(key=lambda web: lines.joints[web.below[0]][0])
    return tuple(found) if len(found) == 2 else ()


def _web(
    part: tuple[Bar, ...], at_hips: list[Bar], lines: Lines, dead: Mapping[Bar, float]
) -> Web | None:
    joints = {joint for bar in part for joint in bar}
    below = tuple(one for one in lines.lower if one in joints)
    first = [bar for bar in at_hips if not joints.isdisjoint(bar)]
    if len(first) > 1:
        first = [bar for bar in first if bar in lines.diagonals]
    if not below or len(first) != 1 or {first[0], *part}.isdisjoint(lines.diagonals):
        return None
    (low, high) = sorted(first[0], key=lambda joint: lines.joints[joint][1])
    rise = lines.joints[high][1] - lines.joints[low][1]
    length = dist(lines.joints[high], lines.joints[low])
    force = dead.get(first[0], dead.get((first[0][1], first[0][0]), 0.0))
    return Web(
        bars=(first[0], *part), below=below, first=first[0], brings=abs(force) * rise / length,
    )


def _apart(bars: list[Bar]) -> list[tuple[Bar, ...]]:
    """Bars that hang together, part by part."""
    parts: list[tuple[Bar, ...]] = []
    for bar in bars:
        met = [part for part in parts if any(not {*bar}.isdisjoint(other) for other in part)]
        rest = [part for part in parts if part not in met]
        parts = [*rest, (*(other for part in met for other in part), bar)]
    return parts
