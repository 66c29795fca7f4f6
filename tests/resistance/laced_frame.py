"""The other road to a laced column: a plane frame of its channels and bars, and its buckling load.

Two chords run through, rigid from panel to panel; lacing bars are pinned in one zigzag; stiff end
battens; hinged at both ends. Linear buckling: the chords' thrust softens them, the
lacing carries none. Elements are cubic beams, two to a panel.
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
from scipy.linalg import eigh

Matrix = npt.NDArray[np.float64]

PIECES = 2
"""Beam elements of one chord in one panel."""
STIFF = 1e4
"""How much stiffer than a chord the end battens are."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LacedFrame:
    """Panels of length `advance`, chords `distance` apart; kip and inch."""

    panels: int
    advance: float
    distance: float
    chord_area: float
    chord_inertia: float
    lacing_area: float
    modulus: float = 27_000.0

    @property
    def length(self) -> float:
        """Length of the column."""
        return self.panels * self.advance

    def buckling_load(self) -> float:
        """Least thrust on both chords together at which the frame buckles."""
        across = self.panels * PIECES + 1
        size = 6 * across
        stiff, soft = np.zeros((size, size)), np.zeros((size, size))
        piece = self.advance / PIECES
        for chord in range(2):
            for place in range(across - 1):
                one = 3 * (chord * across + place)
                where = list(range(one, one + 6))
                elastic, geometric = self._piece(piece)
                stiff[np.ix_(where, where)] += elastic
                soft[np.ix_(where, where)] += geometric
        for panel in range(self.panels):
            low, high = panel * PIECES, (panel + 1) * PIECES
            ends = (low, across + high) if panel % 2 == 0 else (across + low, high)
            self._add_bar(stiff, ends)
        for place in (0, across - 1):
            self._add_batten(stiff, place, across + place)
        held = self._held(across)
        free = [one for one in range(size) if one not in held]
        found = eigh(
            soft[np.ix_(free, free)], stiff[np.ix_(free, free)], eigvals_only=True,
            subset_by_index=[len(free) - 1, len(free) - 1],
        )
        return 2.0 / float(found[0])

    def _piece(self, length: float) -> tuple[Matrix, Matrix]:
        """Elastic stiffness of a chord's piece, and its softening under a thrust of 1."""
        ea = self.modulus * self.chord_area / length
        ei = self.modulus * self.chord_inertia
        bending = np.array([
            [12, 6 * length, -12, 6 * length],
            [6 * length, 4 * length**2, -6 * length, 2 * length**2],
            [-12, -6 * length, 12, -6 * length],
            [6 * length, 2 * length**2, -6 * length, 4 * length**2],
        ]) * ei / length**3
        softening = np.array([
            [36, 3 * length, -36, 3 * length],
            [3 * length, 4 * length**2, -3 * length, -(length**2)],
            [-36, -3 * length, 36, -3 * length],
            [3 * length, -(length**2), -3 * length, 4 * length**2],
        ]) / (30 * length)
        elastic, geometric = np.zeros((6, 6)), np.zeros((6, 6))
        along, rest = [0, 3], [1, 2, 4, 5]
        elastic[np.ix_(along, along)] = ea * np.array([[1, -1], [-1, 1]])
        elastic[np.ix_(rest, rest)] = bending
        geometric[np.ix_(rest, rest)] = softening
        return elastic, geometric

    def _add_bar(self, stiff: Matrix, ends: tuple[int, int]) -> None:
        """A pinned bar from the one chord (across 0) to the other (across `distance`)."""
        first, second = min(ends), max(ends)
        across = stiff.shape[0] // 6
        run = self.advance if second - across > first else -self.advance
        length = float(np.hypot(run, self.distance))
        direction = np.array([run, self.distance]) / length
        pull = np.concatenate([-direction, direction])
        where = [3 * first, 3 * first + 1, 3 * second, 3 * second + 1]
        stiff[np.ix_(where, where)] += (
            self.modulus * self.lacing_area / length * np.outer(pull, pull)
        )

    def _add_batten(self, stiff: Matrix, first: int, second: int) -> None:
        """A stiff plate that turns and moves with the ends of both chords."""
        h = self.distance
        much = STIFF * self.modulus * self.chord_area / h
        # Alike across and in turning; along, the second moves by -turn times the distance.
        rows = np.zeros((4, 6))
        rows[0, [1, 4]] = 1, -1
        rows[1, [2, 5]] = h, -h
        rows[2, [0, 3, 2]] = 1, -1, -h
        rows[3, [0, 3, 5]] = 1, -1, -h
        where = [3 * first, 3 * first + 1, 3 * first + 2]
        where += [3 * second, 3 * second + 1, 3 * second + 2]
        stiff[np.ix_(where, where)] += much * rows.T @ rows

    def _held(self, across: int) -> set[int]:
        """Both ends held across; the whole held along at mid-length of one chord."""
        last = across - 1
        middle = across // 2
        return {1, 3 * last + 1, 3 * middle}
