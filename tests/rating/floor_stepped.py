"""What vehicles do to a floor, found by small steps along and across, with statics alone."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


def behind(vehicle: Mapping[str, Any]) -> Floats:
    """How far each axle stands behind the front one [ft], spacings that vary at their least."""
    gaps = [gap if isinstance(gap, int | float) else gap[0] for gap in vehicle["spacings_ft"]]
    return np.concatenate([[0.0], np.cumsum(gaps)])


def axle_places(vehicle: Mapping[str, Any], length_ft: float, step_ft: float) -> list[Floats]:
    """Places of all axles, the train stepped over a length both ways."""
    back = behind(vehicle)
    fronts = np.arange(0.0, length_ft + back[-1] + step_ft, step_ft)
    return [
        place for front in fronts
        for place in (front - back, length_ft - front + back)
    ]


def moments(vehicle: Mapping[str, Any], span_ft: float, step_ft: float = 0.1) -> Floats:
    """(s, 2) sections of a simple beam and the greatest moment there [ft, kip ft]."""
    weights = np.array(vehicle["axles_kip"])
    sections = np.arange(step_ft, span_ft - step_ft / 2, step_ft)
    best = np.zeros(len(sections))
    for places in axle_places(vehicle, span_ft, step_ft):
        on = (places >= 0.0) & (places <= span_ft)
        x, s = places[on], sections[:, None]
        ordinates = np.where(x <= s, x * (span_ft - s), s * (span_ft - x)) / span_ft
        best = np.maximum(best, ordinates @ weights[on])
    return np.column_stack([sections, best])


def least_factor(
    found: Floats, *, capacity: float, dead_kip_per_ft: float, span_ft: float, times: float
) -> float:
    """Least of (capacity - dead moment) / (times x moment) over the sections; moments in kip ft."""
    x, moment = found[:, 0], found[:, 1]
    dead = dead_kip_per_ft * x * (span_ft - x) / 2.0
    return float(((capacity - dead) / (times * moment)).min())


def greatest_on_joint(
    vehicle: Mapping[str, Any], before_ft: float, behind_ft: float, step_ft: float = 0.05
) -> float:
    """Greatest load on a floorbeam between two panels of simple stringers [kip]."""
    weights, best = np.array(vehicle["axles_kip"]), 0.0
    for places in axle_places(vehicle, before_ft + behind_ft, step_ft):
        x = places - before_ft
        ordinates = np.where(x < 0.0, 1.0 + x / before_ft, 1.0 - x / behind_ft)
        best = max(best, float(np.maximum(ordinates, 0.0) @ weights))
    return best


def stringer_reactions(stringers_ft: Sequence[float], wheels_ft: Sequence[float]) -> Floats:
    """What each stringer takes of unit wheels, the deck cut over every stringer."""
    found = np.zeros(len(stringers_ft))
    spans = list(enumerate(pairwise(stringers_ft)))
    for wheel in wheels_ft:
        i, (a, b) = next(
            ((i, span) for i, span in spans if wheel <= span[1]), spans[-1]
        )
        found[i] += (b - wheel) / (b - a)
        found[i + 1] += (wheel - a) / (b - a)
    return found


def greatest_across(
    stringers_ft: Sequence[float], *, span_ft: float, curb_ft: float, clear_ft: float,
    step_ft: float = 0.02,
) -> tuple[float, float]:
    """(greatest moment [ft], greatest end reaction [1]) of a floorbeam for one unit axle of 6 ft
    gauge, half of it on each wheel line, anywhere between 2 ft from either curb."""
    places = np.array(stringers_ft)
    moment = reaction = 0.0
    for first in np.arange(curb_ft + 2.0, curb_ft + clear_ft - 8.0 + 1e-9, step_ft):
        loads = 0.5 * stringer_reactions(stringers_ft, [first, first + 6.0])
        end = float(loads @ (1.0 - places / span_ft))
        other = float(loads.sum()) - end
        reaction = max(reaction, end, other)
        for at in places:
            moment = max(moment, end * at - float(loads @ np.maximum(at - places, 0.0)))
    return moment, reaction


def moments_across(
    stringers_ft: Sequence[float], *, span_ft: float, curb_ft: float, clear_ft: float,
    step_ft: float = 0.02, lines: int = 200,
) -> list[tuple[float, float]]:
    """(of one unit axle of 6 ft gauge, of a unit lane load 10 ft wide) greatest moments [ft] of a
    floorbeam under each stringer; the strip as so many lines between the curbs."""
    def bent(loads: Floats, at: float) -> float:
        end = float(loads @ (1.0 - np.array(stringers_ft) / span_ft))
        return end * at - float(loads @ np.maximum(at - np.array(stringers_ft), 0.0))

    wheels = [
        0.5 * stringer_reactions(stringers_ft, [first, first + 6.0])
        for first in np.arange(curb_ft + 2.0, curb_ft + clear_ft - 8.0 + 1e-9, step_ft)
    ]
    offsets = (np.arange(lines) + 0.5) / lines * 10.0
    strips = [
        stringer_reactions(stringers_ft, (edge + offsets).tolist()) / lines
        for edge in np.arange(curb_ft, curb_ft + clear_ft - 10.0 + 1e-9, 5 * step_ft)
    ]
    return [
        (max(bent(one, at) for one in wheels), max(bent(one, at) for one in strips))
        for at in stringers_ft
    ]
