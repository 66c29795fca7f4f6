"""A uniform beam that runs on over several supports: influence lines, dead load, trains.

Influence lines are cubics from support to support, by the equation of three moments. What a train
does is looked for with its front axle at places `STEP` of a span apart and with every axle over the
section and over every support; a greatest effect between two such places is missed by less than
0.3 % (a test compares with places twelve times as many).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from eyebar.vehicles import Vehicle

Floats = NDArray[np.float64]
STEP = 1.0 / 40.0
"""Distance of the places of a train, as a part of the shortest span."""
MOMENT, SHEAR, REACTION = "moment", "shear", "reaction"


@dataclass(frozen=True, slots=True, kw_only=True)
class ContinuousBeam:
    """Spans from end to end [ft], all of one stiffness, on supports that do not yield."""

    spans_ft: tuple[float, ...]

    @property
    def supports_ft(self) -> Floats:
        """Places of the supports from the first [ft]."""
        return np.concatenate([[0.0], np.cumsum(self.spans_ft)])

    def span_at(self, place_ft: float) -> int:
        """The span in which a place lies; of a support that before it."""
        inner = self.supports_ft[1:-1]
        return int(np.searchsorted(inner, place_ft, side="left"))

    def support_moments(self, places_ft: Floats) -> Floats:
        """(p, s) moments over the supports for a unit load at each place [ft]."""
        lengths = np.array(self.spans_ft)
        count = len(lengths)
        found = np.zeros((len(places_ft), count + 1))
        if count == 1:
            return found
        matrix = self._matrix()
        right = np.zeros((len(places_ft), count - 1))
        supports = self.supports_ft
        for span, length in enumerate(lengths):
            a = np.clip(places_ft - supports[span], 0.0, length)
            b = length - a
            if span > 0:
                right[:, span - 1] -= b * (length**2 - b**2) / length
            if span < count - 1:
                right[:, span] -= a * (length**2 - a**2) / length
        found[:, 1:-1] = np.linalg.solve(matrix, right.T).T
        return found

    def _matrix(self) -> Floats:
        lengths = np.array(self.spans_ft)
        matrix = np.diag(2.0 * (lengths[:-1] + lengths[1:]))
        return matrix + np.diag(lengths[1:-1], 1) + np.diag(lengths[1:-1], -1)

    def line(
        self, effect: str, section_ft: float, span: int, places_ft: Floats, *,
        over: Floats | None = None,
    ) -> Floats:
        """(p,) ordinates of the influence line of the moment [ft] or the shear [1] at a section of
        a span, or of the reaction of the support where the span begins [1], for unit loads at
        places; off the beam 0. A load at the section counts behind it. `over`: moments over the
        supports for those places, where they are known."""
        if over is None:
            over = self.support_moments(places_ft)
        if effect == REACTION:
            behind_it = self.line(SHEAR, section_ft, span, places_ft, over=over)
            return behind_it - self.line(SHEAR, section_ft, span - 1, places_ft, over=over)
        length, begin = self.spans_ft[span], float(self.supports_ft[span])
        s = section_ft - begin
        x = places_ft - begin
        here = (x >= 0.0) & (x <= length)
        before, behind = over[:, span], over[:, span + 1]
        if effect == MOMENT:
            simple = np.where(x <= s, x * (length - s), s * (length - x)) / length
            found = np.where(here, simple, 0.0) + before * (1 - s / length) + behind * s / length
        else:
            simple = np.where(here, np.where(x >= s, 1.0, 0.0) - x / length, 0.0)
            found = simple + (behind - before) / length
        on = (places_ft >= 0.0) & (places_ft <= self.supports_ft[-1])
        return np.where(on, found, 0.0)

    def uniform(self, effect: str, section_ft: float, span: int, loads: Sequence[float]) -> float:
        """Moment [kip ft], shear or reaction [kip] for uniform loads on the spans [kip/ft]."""
        if effect == REACTION:
            behind_it = self.uniform(SHEAR, section_ft, span, loads)
            return behind_it - self.uniform(SHEAR, section_ft, span - 1, loads)
        lengths = np.array(self.spans_ft)
        over = np.zeros(len(lengths) + 1)
        if len(lengths) > 1:
            terms = np.array(loads) * lengths**3 / 4.0
            over[1:-1] = np.linalg.solve(self._matrix(), -(terms[:-1] + terms[1:]))
        length, load = lengths[span], loads[span]
        s = section_ft - self.supports_ft[span]
        if effect == MOMENT:
            simple = load * s * (length - s) / 2.0
            return float(simple + over[span] * (1 - s / length) + over[span + 1] * s / length)
        return float(load * (length / 2.0 - s) + (over[span + 1] - over[span]) / length)


@dataclass(frozen=True, slots=True, kw_only=True)
class Extremes:
    """Greatest and least effect of a train at a section, both at least 0 in their sense, with the
    front axle's place [ft from the first support], way of travel and spacings of each."""

    greatest: float
    least: float
    greatest_at: tuple[float, int, tuple[float, ...]]
    least_at: tuple[float, int, tuple[float, ...]]


NOWHERE: tuple[float, int, tuple[float, ...]] = (0.0, 1, ())
"""Where a load without axles has its front axle, its way of travel and its spacings."""


def train_extremes(
    beam: ContinuousBeam, vehicle: Vehicle, *, effect: str, section_ft: float, span: int,
    step: float = STEP,
) -> Extremes:
    """What a train does to a moment or a shear at a section, both ways, varied spacings tried at
    five sizes."""
    if not vehicle.axles_kip:
        return Extremes(greatest=0.0, least=0.0, greatest_at=NOWHERE, least_at=NOWHERE)
    best: list[tuple[float, float, int, tuple[float, ...]]] = []
    for spacings in _sizes(vehicle):
        behind = np.array(vehicle.behind_front_ft(spacings))
        for way in (1, -1):
            known = _standing(beam, tuple(way * behind), step)
            own = section_ft + way * behind
            places = own[:, None] - way * behind
            lines = np.concatenate([
                beam.line(effect, section_ft, span, known.places, over=known.over),
                beam.line(effect, section_ft, span, places.ravel()),
            ]).reshape(-1, len(behind))
            fronts = np.concatenate([known.fronts, own])
            effects = lines @ np.array(vehicle.axles_kip)
            best += [
                (float(effects[i]), float(fronts[i]), way, spacings)
                for i in (int(effects.argmax()), int(effects.argmin()))
            ]
    most, least = max(best), min(best)
    return Extremes(
        greatest=max(most[0], 0.0), least=min(least[0], 0.0), greatest_at=most[1:],
        least_at=least[1:],
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """Where a train is tried on a beam whatever is looked for: front axles (f,), places of all its
    axles (f x k,) and the moments over the supports for unit loads there (f x k, s)."""

    fronts: Floats
    places: Floats
    over: Floats


@lru_cache(maxsize=64)
def _standing(beam: ContinuousBeam, reach: tuple[float, ...], step: float) -> Standing:
    """The places of a train whose axles stand `reach` [ft] before the front one: a step apart, and
    with every axle over every support."""
    apart, back = step * min(beam.spans_ft), np.array(reach)
    length = float(beam.supports_ft[-1])
    low, high = min(0.0, back.min()), length + max(0.0, back.max())
    fronts = np.concatenate([
        np.arange(low, high + apart, apart), (beam.supports_ft[:, None] + back).ravel()
    ])
    places = (fronts[:, None] - back).ravel()
    return Standing(fronts=fronts, places=places, over=beam.support_moments(places))


def lane_extremes(
    beam: ContinuousBeam, *, kip_per_ft: float, point_kip: float, effect: str,
    section_ft: float, span: int,
) -> tuple[float, float]:
    """Greatest and least effect of a lane load with one single weight at a section.

    The uniform load stands wherever it adds: the influence line is summed by its ordinates at
    places `STEP` of a span apart.
    """
    length = float(beam.supports_ft[-1])
    count = int(np.ceil(length / (STEP * min(beam.spans_ft))))
    edges = np.union1d(np.linspace(0.0, length, count + 1), [*beam.supports_ft, section_ft])
    middles = (edges[1:] + edges[:-1]) / 2.0
    line = beam.line(effect, section_ft, span, middles)
    at = beam.line(effect, section_ft, span, edges)
    areas = line * np.diff(edges)
    return (
        kip_per_ft * float(areas[areas > 0].sum()) + point_kip * max(float(at.max()), 0.0),
        kip_per_ft * float(areas[areas < 0].sum()) + point_kip * min(float(at.min()), 0.0),
    )


def _sizes(vehicle: Vehicle) -> list[tuple[float, ...]]:
    least, most = vehicle.least_spacings_ft, vehicle.greatest_spacings_ft
    if least == most:
        return [least]
    return [
        tuple(a + part * (b - a) for a, b in zip(least, most, strict=True))
        for part in (0.0, 0.25, 0.5, 0.75, 1.0)
    ]
