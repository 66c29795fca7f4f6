"""Sections of a floorbeam, with what their influence lines across give every vehicle."""

from dataclasses import dataclass, field

import numpy as np

from eyebar.loads.trains import Floats
from eyebar.loads.wheels_across import AcrossLine
from eyebar.rating.floor_context import FloorContext


@dataclass(frozen=True, slots=True, kw_only=True)
class Looked:
    """Sections `at` (s,) [ft] looked at for a strength, their `end`, influence lines across, dead
    load and crowd (s,) there."""

    end: int
    at: Floats
    lines: tuple[AcrossLine, ...]
    dc: Floats
    dw: Floats
    crowd: Floats
    known: dict[int, tuple[Floats, Floats]] = field(default_factory=dict)

    def shares(self, context: FloorContext, lanes: int) -> tuple[Floats, Floats]:
        """(s, v) shares of the axles and of the lane load, where they add."""
        if lanes not in self.known:
            if len({one.places_ft for one in self.lines}) == 1 and context.spans.of.lane.any():
                context.know_strips(self.lines)
            self.known[lanes] = (
                np.maximum([context.placed(one, lanes) for one in self.lines], 0.0),
                np.maximum([context.laid(one, lanes) for one in self.lines], 0.0),
            )
        return self.known[lanes]


def line_by(places_ft: tuple[float, ...], ordinates: list[float]) -> AcrossLine:
    """An influence line by its ordinates; of one place alone level."""
    if len(places_ft) == 1:
        return AcrossLine(
            places_ft=(places_ft[0], places_ft[0] + 1.0), ordinates=(ordinates[0],) * 2
        )
    return AcrossLine(places_ft=places_ft, ordinates=tuple(ordinates))
