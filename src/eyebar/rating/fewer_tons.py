"""How much may stay on a vehicle that is too heavy with all of it.

1 over the factor of a part grows with the load along a straight line as long as no bar changes its
state, and over all parts and places along the greatest of such lines: between two loads it is no
more than the chord says. So the chord from a load that is safe to the whole one gives a load that
is safe too. That is a guess only: every load that is told has been rated.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from math import floor

from eyebar.rating.safe_load import Governing
from eyebar.vehicles import Vehicle, loaded_by

CHORDS = 2
"""Chords that are drawn, each from the last safe load."""

Rated = Callable[[Sequence[Vehicle]], list[Governing | None]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Search:
    """One vehicle with its least factor `full` loaded, and the greatest part of its load that was
    rated and is safe: `part` [1] with `by`; None where none is known."""

    number: int
    vehicle: Vehicle
    full: Governing | None
    part: float | None = None
    by: Governing | None = None


def least_taken_off(
    searches: Sequence[Search], rated: Rated, step_tons: float
) -> dict[int, tuple[Vehicle, Governing | None]]:
    """Number -> the vehicle with the most on it that was found safe, and the factor then.

    `rated` tells the least factors of some vehicles; gross weights are whole steps [tons], or what
    the vehicle weighs empty. A vehicle that is not safe empty is left out.
    """
    if not searches:
        return {}
    state = _tried(searches, [0.0] * len(searches), rated)
    state = [one for one in state if one.part is not None]
    for _ in range(CHORDS):
        parts = [_chord(one, step_tons) for one in state]
        state = _tried(state, parts, rated)
    return {
        one.number: (loaded_by(one.vehicle, one.part), one.by)
        for one in state if one.part is not None
    }


def _tried(state: Sequence[Search], parts: Sequence[float], rated: Rated) -> list[Search]:
    """The searches after rating a part of each load, where that is more than is known."""
    new = [
        (one, part) for one, part in zip(state, parts, strict=True)
        if one.part is None or part > one.part
    ]
    least = rated([loaded_by(one.vehicle, part) for one, part in new]) if new else []
    better = {
        one.number: replace(one, part=part, by=by)
        for (one, part), by in zip(new, least, strict=True)
        if by is None or not by.restricts
    }
    return [better.get(one.number, one) for one in state]


def _over(by: Governing | None) -> float:
    """1 over the factor."""
    if by is None or by.factor is None:
        return 0.0
    return 1.0 / by.factor if by.factor > 0.0 else float("inf")


def _chord(one: Search, step_tons: float) -> float:
    """The part of the load [1] at which the chord reaches 1, its weight down to a whole step."""
    assert one.part is not None
    low, top = _over(one.by), _over(one.full)
    part = one.part
    if top > low and top != float("inf"):
        part += (1.0 - one.part) * (1.0 - low) / (top - low)
    empty = loaded_by(one.vehicle, 0.0).weight_tons
    load = one.vehicle.weight_tons - empty
    gross = floor((empty + min(part, 1.0) * load) / step_tons + 1e-9) * step_tons
    return min(max((gross - empty) / load, 0.0), 1.0) if load > 0.0 else 0.0
