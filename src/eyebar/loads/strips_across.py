"""Lane loads across the road: a strip of each lane, evenly loaded, anywhere in its lane.

A strip does what the mean of the ordinates under it says. That is a parabola in its place between
the places where one of its edges lies over a beam, so that the worst place is exact.
"""

from dataclasses import dataclass

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


def strip_moved(line: AcrossLine, width_ft: float) -> Moved:
    """The mean ordinate under a strip so wide, by the place of its first edge."""
    kinks = np.array(line.places_ft)
    breaks = np.unique(np.concatenate([kinks, kinks - width_ft]))

    def slope(edges_ft: Floats) -> Floats:
        return (line.over(edges_ft + width_ft) - line.over(edges_ft)) / width_ft

    def mean(edges_ft: Floats) -> Floats:
        return (line.area_to(edges_ft + width_ft) - line.area_to(edges_ft)) / width_ft

    at = slope(breaks)
    before, behind = at[:-1], at[1:]
    with np.errstate(divide="ignore", invalid="ignore"):
        flat = breaks[:-1] + before / (before - behind) * np.diff(breaks)
    return Moved(
        effect=mean, slope=slope,
        tops=np.concatenate([breaks, flat[(before > 0.0) & (behind < 0.0)]]),
    )


def worst_strips(
    line: AcrossLine, road: RoadAcross, *, most_lanes: int, values: Values
) -> tuple[Strips, ...]:
    """The worst place of the lane loads of one to `most_lanes` lanes.

    A strip is as wide as the office says, or as its lane where this is narrower, and then has the
    whole load. Lanes that do not fill the road lie side by side anywhere on it.
    """
    return tuple(_worst(line, road, lanes, values) for lanes in range(1, most_lanes + 1))


def _worst(line: AcrossLine, road: RoadAcross, lanes: int, values: Values) -> Strips:
    lane = lane_width_ft(road.clear_ft, lanes, values)
    width = min(values.number("lanes.load width"), lane)
    play = lane - width
    begins = road.curb_ft + lane * np.arange(lanes)
    starts = np.array([0.0])
    if lanes == 1 and road.held_ft is not None:
        beside = max(play / 2.0 - road.held_ft, 0.0)
        begins, play = begins + beside, play - 2.0 * beside
    elif (spare := road.clear_ft - lanes * lane) > 0.0:
        starts = np.array([0.0, spare])

    def rooms(starts_ft: Floats) -> tuple[Floats, Floats]:
        low = starts_ft[:, None] + begins
        return low, low + play

    share, edges = greatest_together(strip_moved(line, width), rooms, starts)
    return Strips(lanes=lanes, share=round(max(share, 0.0), 12), width_ft=width, edges_ft=edges)
