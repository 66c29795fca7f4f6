"""Lane loads across the road: a strip of each lane, evenly loaded, anywhere in its lane.

A strip does what the mean of the ordinates under it says. That is a parabola in its place between
the places where one of its edges lies over a beam, so that the worst place is exact.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from eyebar.loads.across import lane_width_ft
from eyebar.loads.moved_across import Moved, greatest_together
from eyebar.loads.wheels_across import AcrossLine, RoadAcross
from eyebar.office import Values

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True)
class Strips:
    """The worst place of the lane loads of `lanes` lanes: `share` of one of them [1], the sum of
    the mean ordinates under the strips, which are `width_ft` wide and begin at `edges_ft`."""

    lanes: int
    share: float
    width_ft: float
    edges_ft: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Points:
    """Places on lines of some kinks: the kink before each, the part of the way to the next, and the
    distance from it [ft]."""

    before: NDArray[np.intp]
    part: Floats
    beyond: Floats


@dataclass(frozen=True, slots=True, kw_only=True)
class _Edges:
    """Places of a strip's first edge between which what it does is a parabola, and where both its
    edges then are on the lines; `gaps` of the lines' kinks."""

    places: Floats
    first: _Points
    last: _Points
    gaps: Floats
    width: float

    def slopes(self, ordinates: Floats) -> Floats:
        """(m, e) growth of the means by the place, for lines of `ordinates` (m, k)."""
        return (_over(ordinates, self.last) - _over(ordinates, self.first)) / self.width

    def means(self, ordinates: Floats) -> Floats:
        """(m, e) mean ordinates under the strip."""
        pieces = self.gaps * (ordinates[:, :-1] + ordinates[:, 1:]) / 2.0
        areas = np.concatenate([np.zeros_like(ordinates[:, :1]), np.cumsum(pieces, axis=1)], axis=1)
        last, first = (_area(ordinates, areas, one) for one in (self.last, self.first))
        return (last - first) / self.width


def _over(ordinates: Floats, at: _Points) -> Floats:
    found: Floats = ordinates[:, at.before] * (1.0 - at.part)
    return found + ordinates[:, at.before + 1] * at.part


def _area(ordinates: Floats, areas: Floats, at: _Points) -> Floats:
    found: Floats = ordinates[:, at.before] + _over(ordinates, at)
    return areas[:, at.before] + at.beyond * found / 2.0


@lru_cache(maxsize=512)
def _edges(kinks_ft: tuple[float, ...], width: float, low: float, high: float) -> _Edges:
    """The edges from `low` to `high` [ft]."""
    kinks = np.array(kinks_ft)
    breaks = np.unique(np.concatenate([kinks, kinks - width]))
    places = np.concatenate([[low], breaks[(breaks > low) & (breaks < high)], [high]])

    def points(at: Floats) -> _Points:
        before = np.searchsorted(kinks[1:-1], at, side="right")
        beyond = at - kinks[before]
        return _Points(
            before=before, part=beyond / (kinks[before + 1] - kinks[before]), beyond=beyond
        )

    return _Edges(
        places=places, first=points(places), last=points(places + width), gaps=np.diff(kinks),
        width=width,
    )


def strip_moved(line: AcrossLine, width_ft: float, low_ft: float, high_ft: float) -> Moved:
    """The mean ordinate under a strip so wide, by the place of its first edge between two."""
    edges, ordinates = _edges(line.places_ft, width_ft, low_ft, high_ft), np.array(line.ordinates)
    tops, _ = _tops(edges, ordinates[None, :])

    def slope(edges_ft: Floats) -> Floats:
        return (line.over(edges_ft + width_ft) - line.over(edges_ft)) / width_ft

    def mean(edges_ft: Floats) -> Floats:
        return (line.area_to(edges_ft + width_ft) - line.area_to(edges_ft)) / width_ft

    return Moved(
        effect=mean, slope=slope,
        tops=np.concatenate([edges.places, tops[np.isfinite(tops)]]),
    )


def _tops(edges: _Edges, ordinates: Floats) -> tuple[Floats, Floats]:
    """(m, e - 1) the highest places between the edges where there are any, else nan, and how much
    higher than at the edge before."""
    slopes = edges.slopes(ordinates)
    before, behind = slopes[:, :-1], slopes[:, 1:]
    with np.errstate(divide="ignore", invalid="ignore"):
        on = np.where((before > 0.0) & (behind < 0.0), before / (before - behind), np.nan)
    on = on * np.diff(edges.places)
    return edges.places[:-1] + on, before * on / 2.0


def _between(edges: _Edges, ordinates: Floats) -> tuple[Floats, Floats]:
    """(m,) the greatest mean of each line under a strip that is somewhere between, and where."""
    means = edges.means(ordinates)
    tops, higher = _tops(edges, ordinates)
    every = np.concatenate([means, np.nan_to_num(means[:, :-1] + higher, nan=-np.inf)], axis=1)
    at = np.concatenate([np.broadcast_to(edges.places, means.shape), tops], axis=1)
    best, rows = every.argmax(axis=1), np.arange(len(ordinates))
    return every[rows, best], at[rows, best]


def worst_strips(
    lines: Sequence[AcrossLine], road: RoadAcross, *, most_lanes: int, values: Values
) -> list[tuple[Strips, ...]]:
    """The worst place of the lane loads of one to `most_lanes` lanes for each line; all lines have
    the same places.

    A strip is as wide as the office says, or as its lane where this is narrower, and then has the
    whole load. Lanes that do not fill the road lie side by side anywhere on it.
    """
    found = [_worst(lines, road, lanes, values) for lanes in range(1, most_lanes + 1)]
    return list(zip(*found, strict=True))


def _worst(
    lines: Sequence[AcrossLine], road: RoadAcross, lanes: int, values: Values
) -> list[Strips]:
    lane = lane_width_ft(road.clear_ft, lanes, values)
    width = min(values.number("lanes.load width"), lane)
    play, spare = lane - width, road.clear_ft - lanes * lane
    begins = road.curb_ft + lane * np.arange(lanes)
    if lanes == 1 and road.held_ft is not None:
        beside = max(play / 2.0 - road.held_ft, 0.0)
        begins, play = begins + beside, play - 2.0 * beside
    if spare > 0.0:
        last = begins[-1] + play + spare

        def rooms(starts_ft: Floats) -> tuple[Floats, Floats]:
            low = starts_ft[:, None] + begins
            return low, low + play

        each = [
            greatest_together(
                strip_moved(line, width, float(begins[0]), float(last)), rooms,
                np.array([0.0, spare]),
            )
            for line in lines
        ]
    else:
        kinks, ordinates = lines[0].places_ft, np.array([one.ordinates for one in lines])
        of_lanes = [
            _between(_edges(kinks, width, begin, begin + play), ordinates)
            for begin in begins.tolist()
        ]
        shares = np.sum([one for one, _ in of_lanes], axis=0).tolist()
        places = np.stack([at for _, at in of_lanes], axis=1).tolist()
        each = [(share, tuple(at)) for share, at in zip(shares, places, strict=True)]
    return [
        # Rounded far below anything measured, so that beams alike are alike to the bit.
        Strips(lanes=lanes, share=round(max(share, 0.0), 12), width_ft=width, edges_ft=at)
        for share, at in each
    ]
