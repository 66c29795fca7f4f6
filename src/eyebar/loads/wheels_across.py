"""Wheels across the road: what part of an axle a stringer, or a section of a floorbeam, takes.

Across the road an effect is told by its influence line, straight between the beams that carry the
deck and beyond the outer ones. A vehicle stands anywhere on the road, several each anywhere in its
own lane; the worst place lies where a wheel stands over a beam, or where the vehicle can go no
further.
"""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from eyebar.formula import Symbol, formula
from eyebar.loads.across import lane_width_ft
from eyebar.loads.moved_across import Moved, Rooms, greatest_together
from eyebar.office import Values

Floats = NDArray[np.float64]
ONE_LANE, TWO_LANES = "one lane", "two lanes"


@dataclass(frozen=True, slots=True, kw_only=True)
class AcrossLine:
    """An influence line across: `ordinates` at `places_ft`, at least two places in order."""

    places_ft: tuple[float, ...]
    ordinates: tuple[float, ...]

    def at(self, place_ft: float) -> float:
        """Its ordinate at a place, on the outer straight lines beyond its ends."""
        places = self.places_ft
        i = min(max(bisect_right(places, place_ft), 1), len(places) - 1)
        part = (place_ft - places[i - 1]) / (places[i] - places[i - 1])
        return self.ordinates[i - 1] * (1.0 - part) + self.ordinates[i] * part

    def over(self, places_ft: Floats) -> Floats:
        """Its ordinates at places of any shape."""
        places, ordinates = np.array(self.places_ft), np.array(self.ordinates)
        i = np.searchsorted(places[1:-1], places_ft, side="right")
        part = (places_ft - places[i]) / (places[i + 1] - places[i])
        over: Floats = ordinates[i] * (1.0 - part) + ordinates[i + 1] * part
        return over

    def area_to(self, places_ft: Floats) -> Floats:
        """Its area from its first place to others, of any shape, less than nothing before it."""
        places, ordinates = np.array(self.places_ft), np.array(self.ordinates)
        i = np.searchsorted(places[1:-1], places_ft, side="right")
        pieces = np.diff(places) * (ordinates[:-1] + ordinates[1:]) / 2.0
        before = np.concatenate([[0.0], np.cumsum(pieces)])[i]
        area: Floats = before + (places_ft - places[i]) * (
            ordinates[i] + self.over(places_ft)) / 2.0
        return area

    def under(self, first_ft: float, last_ft: float) -> float:
        """Its area between two places [ft, times the ordinate's unit]."""
        cuts = [first_ft, *(p for p in self.places_ft if first_ft < p < last_ft), last_ft]
        return sum(
            (b - a) * (self.at(a) + self.at(b)) / 2.0
            for a, b in pairwise(cuts)
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class RoadAcross:
    """The road as wheels see it: place of the curb at the first truss, clear width [ft]."""

    curb_ft: float
    clear_ft: float
    held_ft: float | None = None
    """How far from the road's middle a vehicle's may be; None: anywhere."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Placing:
    """The worst placing with `lanes` lanes loaded: `share` of the axles [1], half of the sum of the
    ordinates under the wheel lines, which stand at `wheels_ft`."""

    lanes: int
    share: float
    wheels_ft: tuple[float, ...]


@formula(
    "g = S / D",
    result=Symbol("part of a wheel line that the stringer takes", "1"),
    S=Symbol("spacing of the stringers", "ft", "spacing_ft", low=1.0, high=5.0),
    D=Symbol("figure of the table", "ft", "table_ft", low=3.0, high=8.0),
    source="Standard Specifications Table 3.23.1; half of it, with the multiple presence, is the "
    "share of a lane of LRFD Bridge Design Specifications Table 4.6.2.2.2a-1, from memory",
)
def table_share(spacing_ft: float, table_ft: float) -> float:
    """Part of a wheel line that an inner stringer takes by the table [1].

    Spacing, figure [ft]; scalars or arrays. Limits: spacings up to the row's own greatest.
    """
    return spacing_ft / table_ft


@formula(
    "S = (a + b) / 2",
    result=Symbol("spacing that counts for a stringer", "ft"),
    a=Symbol("distance to the next on one side", "ft", "before_gap_ft", low=1.0, high=5.0),
    b=Symbol("distance to the next on the other side", "ft", "behind_gap_ft", low=1.0, high=5.0),
    source="width of deck that an inner stringer carries",
)
def mean_spacing(before_gap_ft: float, behind_gap_ft: float) -> float:
    """Spacing that counts for an inner stringer whose neighbours stand unevenly [ft].

    Distances [ft]; scalars or arrays. Limits: none.
    """
    return (before_gap_ft + behind_gap_ft) / 2.0


def share_by_table(
    row: str, spacing_ft: float, *, lanes: int, gauge_ft: float, values: Values, widest_ft: float
) -> float | None:
    """Part of a wheel line by the deck's row [1]; None where the table is not for it: another
    gauge, or a spacing on either side (`widest_ft` the wider) beyond its range."""
    if not row or gauge_ft != values.number("wheel share.gauge"):
        return None
    words = f"wheel share.{row}.{ONE_LANE if lanes == 1 else TWO_LANES}"
    if widest_ft > values.number(f"{words}.greatest spacing"):
        return None
    return table_share(spacing_ft, values.number(words))


def hat(places_ft: Sequence[float], which: int) -> AcrossLine:
    """Influence line of the reaction of one of several beams under a deck cut over each of them."""
    if len(places_ft) == 1:
        place = places_ft[0]
        return AcrossLine(places_ft=(place, place + 1.0), ordinates=(1.0, 1.0))
    return AcrossLine(
        places_ft=tuple(places_ft),
        ordinates=tuple(1.0 if i == which else 0.0 for i in range(len(places_ft))),
    )


def worst_placings(
    line: AcrossLine, road: RoadAcross, *, gauge_ft: float, most_lanes: int, values: Values
) -> tuple[Placing, ...]:
    """The worst placing of like vehicles for one to `most_lanes` lanes loaded.

    The outer wheel line is no nearer to the curb than the office's clearance, an inner one up to
    its clearance from a lane line; where that does not fit, the clearances shrink alike.
    """
    kinks = np.array(line.places_ft)
    moved = Moved(
        effect=lambda at: line.over(at) + line.over(at + gauge_ft),
        tops=np.concatenate([kinks, kinks - gauge_ft]),
    )
    found = []
    for lanes in range(1, most_lanes + 1):
        total, places = greatest_together(moved, *_room(road, lanes, gauge_ft, values))
        found.append(Placing(
            # Rounded far below anything measured, so that beams alike are alike to the bit.
            lanes=lanes, share=round(total / 2.0, 12),
            wheels_ft=tuple(w for at in places for w in (at, at + gauge_ft)),
        ))
    return tuple(found)


def placed_all_over(line: AcrossLine, road: RoadAcross) -> Placing:
    """A load by area on the clear width, wherever it adds; its share is of all that the whole width
    would hold."""
    first, last = road.curb_ft, road.curb_ft + road.clear_ft
    cuts = sorted({first, last, *(p for p in (*line.places_ft, *_zeros(line)) if first < p < last)})
    adds = sum(
        max(line.at((a + b) / 2.0), 0.0) * (b - a) for a, b in pairwise(cuts)
    )
    return Placing(lanes=1, share=round(adds / road.clear_ft, 12), wheels_ft=())


def _zeros(line: AcrossLine) -> list[float]:
    """Where an influence line, or its straight run beyond an end, passes through nothing."""
    found = []
    last = len(line.places_ft) - 2
    for i, ((a, b), (p, q)) in enumerate(
        zip(pairwise(line.places_ft), pairwise(line.ordinates), strict=True)
    ):
        if p == q:
            continue
        at = a + (b - a) * p / (p - q)
        if (at >= a or i == 0) and (at <= b or i == last):
            found.append(at)
    return found


def _room(
    road: RoadAcross, lanes: int, gauge_ft: float, values: Values
) -> tuple[Rooms, Floats]:
    """Where the first wheel line of each of several vehicles may stand while their lanes begin so
    far from the curb, and the starts of the lanes at which that changes.

    Lanes that do not fill the road lie side by side anywhere on it.
    """
    at_curb, at_line = values.number("clearance.curb"), values.number("clearance.lane line")
    clear, curb = road.clear_ft, road.curb_ft
    if lanes == 1:
        margin = min(at_curb, max(clear - gauge_ft, 0.0) / 2.0)
        low, high = curb + margin, curb + clear - margin - gauge_ft
        if road.held_ft is not None:
            middle = curb + (clear - gauge_ft) / 2.0
            low, high = max(low, middle - road.held_ft), min(high, middle + road.held_ft)
        return (lambda _: (np.array([[low]]), np.array([[high]]))), np.array([0.0])
    width = lane_width_ft(clear, lanes, values)
    shrunk = min(1.0, max(width - gauge_ft, 0.0) / (at_curb + at_line))
    spare = clear - lanes * width
    offsets = width * np.arange(lanes)

    def rooms(starts_ft: Floats) -> tuple[Floats, Floats]:
        begin = starts_ft[:, None] + offsets
        before = np.maximum(at_line, at_curb - begin)
        behind = np.maximum(at_line, at_curb - (clear - begin - width))
        first = curb + begin + shrunk * before
        return first, np.maximum(curb + begin + width - shrunk * behind - gauge_ft, first)

    if spare <= 0.0:
        return rooms, np.array([0.0])
    near = at_curb - at_line
    changes = [x for x in (near, spare - near) if 0.0 < x < spare]
    return rooms, np.unique([0.0, *changes, spare])
