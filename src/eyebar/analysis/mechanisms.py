"""Where equilibrium ends under loads on the road: which bar lets go last, and what makes it."""

from dataclasses import dataclass, field

import numpy as np

from eyebar.analysis.influence import InfluenceLines
from eyebar.analysis.model import Floats, Model
from eyebar.analysis.paths import END, Ints, Paths, paths

Triple = tuple[int, int, int]
"""A bar's number, the sense in which loads act on it, the number of a slack set."""


@dataclass(slots=True)
class Mechanisms:
    """Where equilibrium ends: the bar last to let go, the sense of what makes it, the set before.
    """

    lines: InfluenceLines
    cap: float
    known: dict[int, set[Triple]] = field(default_factory=dict)

    def under(self, fixed: Floats, start: int) -> set[Triple]:
        """Those that loads from either end of the road, or on one joint, lead to under a dead
        load."""
        if id(fixed) not in self.known:
            one = np.eye(len(self.lines.stations_ft))
            loads = np.concatenate([one, np.cumsum(one, axis=0), np.cumsum(one[::-1], axis=0)])
            growing = loads @ self.lines.units
            walked = paths(
                self.lines.sets, np.broadcast_to(fixed, growing.shape), growing,
                start=np.full(len(growing), start), cap=self.cap,
            )
            self.known[id(fixed)] = lost(self.lines.sets.model, walked, np.arange(len(growing)))
        return self.known[id(fixed)]


def lost(model: Model, walked: Paths, rows: Ints) -> set[Triple]:
    """(bar, sense, slack set) of the bar last to let go on each of some paths that ends: loads
    that act on it in that sense end equilibrium."""
    last_one = walked.count[rows] - 1
    event, number = walked.event[rows, last_one], walked.sets[rows, last_one]
    ended = np.flatnonzero(event <= END)
    last = END - event[ended]
    bars = model.element_bar[model.unilateral[last]]
    senses = -np.sign(model.sense[last]).astype(np.intp)
    return set(zip(bars.tolist(), senses.tolist(), number[ended].tolist(), strict=True))
