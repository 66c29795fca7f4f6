"""Loads that move across the road, each within its lane, while the lanes may move too: the worst
place of all together, found exactly.

What a load does by its place is straight, or a parabola, between a few places. While lanes move
together the sum over them is greatest where the room of one ends at such a place, or where the sum
over those that are at an end of their rooms neither grows nor falls. All these are tried.
"""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise, product

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Rooms = Callable[[Floats], tuple[Floats, Floats]]
"""Starts of the lanes (s,) [ft] -> least and greatest place of each load (s, n) [ft], straight
between the starts that are told with it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """What a load does by its place: `effect` of places of any shape. It is straight between `tops`
    where `slope` is None; else a parabola, its slope given, whose highest places are in `tops`
    too."""

    effect: Callable[[Floats], Floats]
    tops: Floats
    slope: Callable[[Floats], Floats] | None = None


def greatest_together(
    moved: Moved, rooms: Rooms, starts_ft: Floats
) -> tuple[float, tuple[float, ...]]:
    """The greatest sum of like loads, one in each lane, and their places [ft].

    `starts_ft`: one start, or the least and the greatest with those between at which rooms change.
    """
    if len(starts_ft) == 1:
        low, high = rooms(starts_ft)
        each = [_greatest(moved, *room) for room in zip(low[0], high[0], strict=True)]
        return sum(most for most, _ in each), tuple(at for _, at in each)
    low, high = rooms(_starts(moved, rooms, starts_ft))
    shape = (*low.shape, len(moved.tops))
    inner = np.broadcast_to(moved.tops, shape)
    within = (inner > low[..., None]) & (inner < high[..., None])
    at = np.concatenate([low[..., None], high[..., None], inner], axis=-1)
    does = np.concatenate([
        moved.effect(low)[..., None], moved.effect(high)[..., None],
        np.where(within, moved.effect(moved.tops), -np.inf),
    ], axis=-1)
    most = does.max(axis=-1)
    row = int(most.sum(axis=-1).argmax())
    places = np.where(does[row] == most[row][:, None], at[row], -np.inf).max(axis=-1)
    return float(most[row].sum()), tuple(places.tolist())


def _greatest(moved: Moved, low: float, high: float) -> tuple[float, float]:
    """The greatest effect of one load between two places, and its place."""
    tops = moved.tops
    at = np.concatenate([[low, high], tops[(tops > low) & (tops < high)]])
    does = moved.effect(at)
    most = does.max()
    return float(most), float(at[does == most].max())


def _starts(moved: Moved, rooms: Rooms, starts_ft: Floats) -> Floats:
    """The starts of the lanes among which the worst is."""
    ends = np.concatenate(rooms(starts_ft), axis=-1)
    found = [starts_ft]
    for (a, b), (p, q) in zip(pairwise(starts_ft.tolist()), pairwise(ends), strict=True):
        with np.errstate(divide="ignore", invalid="ignore"):
            part = (moved.tops[:, None] - p) / (q - p)
        found.append(a + part[(part > 0.0) & (part < 1.0)] * (b - a))
    events = np.unique(np.concatenate(found))
    if moved.slope is None:
        return events
    low, high = rooms(events)
    slopes = np.stack([np.zeros_like(low), moved.slope(low), moved.slope(high)])
    lanes = np.arange(low.shape[1])
    sums = np.array([slopes[choice, :, lanes].sum(axis=0)
                     for choice in product(range(3), repeat=len(lanes))])
    before, behind = sums[:, :-1], sums[:, 1:]
    with np.errstate(divide="ignore", invalid="ignore"):
        flat = events[:-1] + before / (before - behind) * np.diff(events)
    return np.concatenate([events, flat[(before > 0.0) & (behind < 0.0)]])
