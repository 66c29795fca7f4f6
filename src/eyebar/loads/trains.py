"""Trains of axles on simple spans, all vehicles at once: sections, supports, two panels.

A moment at a section is greatest with an axle over the section. Between two places where an axle
enters or leaves the span that moment is a parabola in the section's place, so that a factor, which
is what is left beside a dead load (a parabola too) over it, has its least at an end of the stretch
or where a quadratic equation says. Spacings that vary are at their least, as `simple_beam` says.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from eyebar.terms import Combine
from eyebar.vehicles import Vehicle

Floats = NDArray[np.float64]
UP, DOWN = 1, -1


@dataclass(frozen=True, slots=True, kw_only=True)
class Trains:
    """Vehicles as arrays: axles (v, k) [kip], how far each is behind the front one (v, k) [ft]
    with missing axles far away and weightless; lane load (v,) [kip/ft] and its single weights for
    moment and shear (v,) [kip]."""

    names: tuple[str, ...]
    axles: Floats
    behind: Floats
    lane: Floats
    point_moment: Floats
    point_shear: Floats
    beside: Floats
    """Lane load (v,) that stands on the road beside the axles [kip/ft]."""
    alone: NDArray[np.bool_]
    """Whether the lane load may stand in the place of the axles (v,)."""


@dataclass(frozen=True, slots=True)
class Pieces:
    """Moment with an axle over the section, as parabolas (v, m) a x² + b x + c on [low, high];
    `axle` and `way` (m,) tell which axle and direction of travel a column is of."""

    low: Floats
    high: Floats
    a: Floats
    b: Floats
    c: Floats
    axle: NDArray[np.intp]
    way: NDArray[np.intp]

    def rows(self, rows: NDArray[np.intp]) -> "Pieces":
        """Those of some vehicles."""
        return Pieces(
            low=self.low[rows], high=self.high[rows], a=self.a[rows], b=self.b[rows],
            c=self.c[rows], axle=self.axle, way=self.way,
        )

    def times(self, share: Floats) -> "Pieces":
        """A part (v,) of the moments."""
        over = share[:, None]
        return Pieces(
            low=self.low, high=self.high, a=over * self.a, b=over * self.b, c=over * self.c,
            axle=self.axle, way=self.way,
        )


@dataclass(frozen=True, slots=True)
class Least:
    """The least factor of each vehicle (v,), the section where it arises [ft], the axle that stands
    over it and the way of travel."""

    factor: Floats
    section: Floats
    axle: NDArray[np.intp]
    way: NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class Greatest:
    """The greatest effect of each vehicle (v,), its axle over the place, and the way of travel."""

    effect: Floats
    axle: NDArray[np.intp]
    way: NDArray[np.intp]


FAR = 1e6
"""Where an axle stands that a vehicle has not [ft behind its front axle]."""


def trains(vehicles: Mapping[str, Vehicle]) -> Trains:
    """The vehicles as arrays, varied spacings at their least."""
    most = max((len(v.axles_kip) for v in vehicles.values()), default=0) or 1
    axles = np.zeros((len(vehicles), most))
    behind = np.full((len(vehicles), most), FAR)
    for row, v in enumerate(vehicles.values()):
        axles[row, : len(v.axles_kip)] = v.axles_kip
        behind[row, : len(v.axles_kip)] = v.behind_front_ft()[: len(v.axles_kip)]
    beside = [v.lane_kip_per_ft if v.combine is Combine.SUM else 0.0 for v in vehicles.values()]
    alone = [v.combine in (Combine.GREATER, Combine.AREA) for v in vehicles.values()]
    points = [v.lane_point_kip or (0.0, 0.0) for v in vehicles.values()]
    return Trains(
        names=tuple(vehicles), axles=axles, behind=behind,
        lane=np.array([v.lane_kip_per_ft for v in vehicles.values()]),
        point_moment=np.array([p[0] for p in points]), point_shear=np.array([p[1] for p in points]),
        beside=np.array(beside), alone=np.array(alone, dtype=bool),
    )


@dataclass(slots=True)
class Spans:
    """What trains do on simple spans, each span's answers kept."""

    of: Trains
    known_pieces: dict[tuple[float, float, float], Pieces] = field(default_factory=dict)
    known_ahead: Floats | None = None
    known_shears: dict[tuple[float, float, bytes], Greatest] = field(default_factory=dict)
    known_reactions: dict[tuple[float, float], Greatest] = field(default_factory=dict)

    def ahead(self) -> Floats:
        """(v, 2, k, k) how far towards the far end axle l stands of axle j, for both ways."""
        if self.known_ahead is None:
            behind = self.of.behind
            up = behind[:, :, None] - behind[:, None, :]
            self.known_ahead = np.stack([up, -up], axis=1)
        return self.known_ahead

    def pieces(self, span_ft: float, low_ft: float, high_ft: float) -> Pieces:
        """Moments with an axle over sections between two places of a simple span [kip ft]."""
        key = (span_ft, low_ft, high_ft)
        if key not in self.known_pieces:
            self.known_pieces[key] = _pieces(self, *key)
        return self.known_pieces[key]

    def shear(self, span_ft: float, section_ft: float, over: Floats | float = 1.0) -> Greatest:
        """Greatest shear just right of a section, an axle just right of it [kip].

        `over` (v,) is what that axle counts, all others 1.
        """
        weight = np.broadcast_to(np.asarray(over, dtype=float), len(self.of.axles))
        key = (span_ft, section_ft, weight.tobytes())
        if key not in self.known_shears:
            place = section_ft + self.ahead()
            on = (place >= 0.0) & (place <= span_ft)
            ordinate = np.where(on, -place / span_ft + (place >= section_ft), 0.0)
            self.known_shears[key] = _greatest(self, ordinate, weight)
        return self.known_shears[key]

    def reaction(self, before_ft: float, behind_ft: float) -> Greatest:
        """Greatest reaction of two simple spans on the beam between them [kip]."""
        key = (before_ft, behind_ft)
        if key not in self.known_reactions:
            self.known_reactions[key] = self._reaction(before_ft, behind_ft)
        return self.known_reactions[key]

    def _reaction(self, before_ft: float, behind_ft: float) -> Greatest:
        far = self.ahead()
        length = np.where(far < 0.0, before_ft, behind_ft)
        with np.errstate(divide="ignore", invalid="ignore"):
            ordinate = np.where(length > 0.0, np.maximum(1.0 - np.abs(far) / length, 0.0), 0.0)
        ordinate = np.where(far == 0.0, 1.0, ordinate)
        return _greatest(self, ordinate, np.ones(len(self.of.axles)))


def _greatest(spans: Spans, ordinate: Floats, weight: Floats) -> Greatest:
    axles = spans.of.axles
    effect = np.einsum("vdjk,vk->vdj", ordinate, axles)
    count = len(axles[0])
    own = np.einsum("vdjj->vdj", ordinate) * axles[:, None, :]
    effect = effect + (weight - 1.0)[:, None, None] * own
    flat = np.where(axles[:, None, :] > 0.0, effect, -np.inf).reshape(len(axles), -1)
    best = flat.argmax(axis=1)
    most = flat[np.arange(len(axles)), best]
    return Greatest(
        effect=np.where(np.isfinite(most), most, 0.0), axle=best % count,
        way=np.where(best < count, UP, DOWN),
    )


def _pieces(spans: Spans, span: float, low: float, high: float) -> Pieces:
    axles, far = spans.of.axles, spans.ahead()
    v, _, k, _ = far.shape
    edges = np.concatenate([-far, span - far], axis=-1)
    edges = np.sort(np.clip(edges, low, high), axis=-1)
    ends = np.concatenate([
        np.full((v, 2, k, 1), low), edges, np.full((v, 2, k, 1), high)
    ], axis=-1)
    begin, end = ends[..., :-1], ends[..., 1:]
    middle = (begin + end) / 2.0
    place = middle[..., None] + far[:, :, :, None, :]
    weight = np.where((place >= 0.0) & (place <= span), axles[:, None, None, None, :], 0.0)
    away = np.where(weight > 0.0, far[:, :, :, None, :], 0.0)
    whole = weight.sum(axis=-1)
    moved = (weight * away).sum(axis=-1)
    left = (weight * np.minimum(away, 0.0)).sum(axis=-1)
    present = (axles[:, None, :, None] > 0.0) & (end > begin)
    shape = (v, -1)
    index = np.arange(2 * k).reshape(2, k, 1) + np.zeros((2, k, begin.shape[-1]), dtype=np.intp)
    columns = index.reshape(-1)
    return Pieces(
        low=np.where(present, begin, np.nan).reshape(shape), high=end.reshape(shape),
        a=(-whole / span).reshape(shape),
        b=((whole * span - moved) / span).reshape(shape), c=left.reshape(shape),
        axle=columns % k, way=np.where(columns < k, UP, DOWN),
    )


def least_factor(
    pieces: Pieces, *, capacity: float, dead_kip_per_ft: float, span_ft: float,
    times: Floats, lane: Floats,
) -> Least:
    """Least of (capacity - dead moment) / (times x moment) over the pieces, for each vehicle.

    `capacity` [kip ft]; a uniform dead load; `times` (v,) multiplies the moments, `lane` (v,)
    [kip/ft] is a lane load that stands on the span besides.
    """
    half = lane[:, None] / 2.0
    a, b, c = pieces.a - half, pieces.b + half * span_ft, pieces.c
    n2, n1, n0 = dead_kip_per_ft / 2.0, -dead_kip_per_ft * span_ft / 2.0, capacity
    p, q, r = n2 * b - a * n1, 2.0 * (n2 * c - a * n0), n1 * c - n0 * b
    with np.errstate(divide="ignore", invalid="ignore"):
        root = np.sqrt(q**2 - 4.0 * p * r)
        # The form that loses no figures where the equation is nearly a straight line's.
        far = -0.5 * (q + np.where(q >= 0.0, root, -root))
        places = np.stack([pieces.low, pieces.high, far / p, r / far])
        places = np.clip(np.where(np.isfinite(places), places, pieces.low), pieces.low, pieces.high)
        moment = (a * places + b) * places + c
        factor = ((n2 * places + n1) * places + n0) / moment
    factor = np.where((moment > 0.0) & np.isfinite(factor), factor, np.inf)
    rows = np.arange(factor.shape[1])
    flat = factor.transpose(1, 2, 0).reshape(len(rows), -1)
    best = flat.argmin(axis=1)
    column, which = best // len(places), best % len(places)
    return Least(
        factor=flat[rows, best] / times, section=places[which, rows, column],
        axle=pieces.axle[column], way=pieces.way[column],
    )
