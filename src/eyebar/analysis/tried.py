"""The lane loads that were tried for the bars of a truss, and what they came to.

At some multiples the greatest force of every bar is looked for among all that was tried. Where the
load that is worst in the slack set of that force leads into the same set, none that is near it is
worse; where it leads into another, a worse one may stand between the two.
"""

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from eyebar.analysis.influence import InfluenceLines
from eyebar.analysis.model import Floats
from eyebar.analysis.paths import Ints, Paths

LEVELS = (0.4, 0.7, 1.0, 1.5, 2.5, 4.0, 8.0, 20.0)
"""Multiples at which what was found is looked over."""
MORE_KIP = 1e-6


@dataclass(frozen=True, slots=True)
class Rows:
    """Rows (r,), each the worst for pull or push of one bar in one slack set `number`.

    `lane` (r, p) lane loads; `place` (r,) of what moves beside them, -1 where nothing does; `loads`
    (r, p) of both.
    """

    bar: Ints
    sense: Ints
    number: Ints
    lane: Floats
    place: Ints
    loads: Floats


@dataclass(slots=True)
class Tried:
    """What was tried for a wish: its rows, round by round, with slack sets (r, l) and bar forces
    (r, l, n) at LEVELS multiples; not numbers where equilibrium has ended."""

    asked: set[tuple[int, int, int]] = field(default_factory=set)
    rows: list[Rows] = field(default_factory=list)
    sets: list[Ints] = field(default_factory=list)
    forces: list[Floats] = field(default_factory=list)

    def best(self, bars: Ints) -> tuple[Ints, Ints, Ints]:
        """(bar, sense, slack set) of the greatest force of each bar in each sense at each level."""
        sets, forces = np.concatenate(self.sets), np.concatenate(self.forces)[:, :, bars]
        found = []
        for sense in (1, -1):
            row = _standing(sense * forces).argmax(axis=0)
            number = sets[row, np.arange(len(row))[:, None]]
            found.append((np.tile(bars, len(row)), np.full(row.size, sense), number.ravel()))
        bar, sign, number = (np.concatenate(column) for column in zip(*found, strict=True))
        return bar, sign, number

    def more(self, forces: Floats, bars: Ints) -> NDArray[np.bool_]:
        """(r,) which other rows' forces (r, l, n) are over all that were found, at some level."""
        over = np.zeros(len(forces), dtype=bool)
        known = np.concatenate(self.forces)[:, :, bars]
        for sense in (1, -1):
            greatest = _standing(sense * known).max(axis=0) + MORE_KIP
            over |= (_standing(sense * forces[:, :, bars]) > greatest).any(axis=(1, 2))
        return over

    def unstable(self, bars: Ints) -> set[tuple[int, int, int, int]]:
        """(bar, sense, slack set, slack set): where the greatest force that was found belongs to
        one set, and the load that is worst in that set leads into the other."""
        number = np.concatenate([part.number for part in self.rows])
        bar = np.concatenate([part.bar for part in self.rows])
        sense = np.concatenate([part.sense for part in self.rows])
        own = {one: i for i, one in enumerate(
            zip(bar.tolist(), sense.tolist(), number.tolist(), strict=True)
        )}
        sets = np.concatenate(self.sets)
        found = set()
        best = zip(*(column.tolist() for column in self.best(bars)), strict=True)
        for i, (which, sign, one) in enumerate(best):
            row = own.get((which, sign, one))
            other = one if row is None else int(sets[row, i // len(bars) % len(LEVELS)])
            if other not in (one, -1):
                found.add((which, sign, min(one, other), max(one, other)))
        return found


def _standing(forces: Floats) -> Floats:
    """Forces, infinitely small where there is no equilibrium."""
    return np.where(np.isnan(forces), -np.inf, forces)


def at_levels(lines: InfluenceLines, walked: Paths) -> tuple[Ints, Floats]:
    """Slack sets (r, l), -1 where equilibrium has ended, and bar forces (r, l, n) at LEVELS."""
    row = np.arange(len(walked.count))
    sets, forces = [], []
    bars = lines.sets.model.bar_forces(walked.forces)
    for level in LEVELS:
        step = np.minimum((walked.multiple[:, 1:] < level).sum(axis=1), walked.count - 1)
        begin, end = walked.multiple[row, step], walked.multiple[row, step + 1]
        far = (level - begin) / np.where(end > begin, end - begin, 1.0)
        low, high = bars[row, step], bars[row, step + 1]
        gone = level > end
        forces.append(np.where(gone[:, None], np.nan, low + far[:, None] * (high - low)))
        sets.append(np.where(gone, -1, walked.sets[row, step]))
    return np.stack(sets, axis=1), np.stack(forces, axis=1)
