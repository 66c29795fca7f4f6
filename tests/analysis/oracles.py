"""Other roads to the forces of a truss whose bars may go slack. Nothing here is of the package.

Equilibrium is written down again from the drawing; forces come from least complementary energy by
non-negative least squares, the end of equilibrium from a linear programme, extremes from stepping.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.linalg import null_space
from scipy.optimize import linprog, nnls

from tests.analysis.trusses import Drawing

Floats = NDArray[np.float64]

ROUNDING = 1e-10
"""What is less than this is nothing, beside numbers of about 1."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Statics:
    """Equilibrium of a drawing: `matrix` (d, n) @ forces = loads; rows are (joint, axis)."""

    drawing: Drawing
    rows: tuple[tuple[str, int], ...]
    matrix: Floats

    def loads(self, down: Mapping[str, float]) -> Floats:
        """Load vector (d,) for weights on joints [kip]."""
        return np.array([-down.get(joint, 0.0) if axis else 0.0 for joint, axis in self.rows])

    def units(self) -> Floats:
        """(p, d) load vectors of 1 kip down on each floor joint."""
        return np.stack([self.loads({joint: 1.0}) for joint in self.drawing.floor_joints])


def statics(drawing: Drawing) -> Statics:
    """At a free joint the pulls of its bars, along the bars, and the load add up to nothing."""
    rows = tuple(
        (joint, axis)
        for joint in drawing.joints
        for axis in (0, 1)
        if not drawing.supports.get(joint, (False, False))[axis]
    )
    matrix = np.zeros((len(rows), len(drawing.bars)))
    for row, (joint, axis) in enumerate(rows):
        for column, bar in enumerate(drawing.bars):
            if joint in bar.ends:
                other = bar.ends[0] if bar.ends[1] == joint else bar.ends[1]
                here, there = np.array(drawing.joints[joint]), np.array(drawing.joints[other])
                # The bar pulls the joint towards its other end; the load is what balances it.
                matrix[row, column] = -(there - here)[axis] / np.hypot(*(there - here))
    return Statics(drawing=drawing, rows=rows, matrix=matrix)


@dataclass(frozen=True, slots=True, kw_only=True)
class LeastEnergy:
    """Least complementary energy of a drawing as a least-distance problem, made once.

    A bar that cannot push has force >= 0, one that cannot pull <= 0; a bar with a gap both ways is
    a pull and a push, each paying gap * force. Columns (e) are those halves; `of_bar` (n, e).
    """

    of_bar: Floats
    sign: Floats
    one_way: NDArray[np.bool_]
    particular: Floats
    """(e, d) some forces in equilibrium with each load."""
    shift: Floats
    """(e, e) from forces less those with joints held, to the part that least energy takes away."""
    initial: Floats
    back: Floats
    """(e, r) forces in equilibrium without load, of energy x.x / 2 for amounts x (r,)."""

    def forces(self, loads: Floats) -> Floats | None:
        """(n,) forces under loads (d,); None where no forces are in equilibrium with the signs."""
        particular = self.particular @ loads
        base = particular - self.shift @ (particular - self.initial)
        signed = self.sign[:, None] * self.back
        x = least_distance(signed[self.one_way], -(self.sign * base)[self.one_way])
        return None if x is None else self.of_bar @ (base + self.back @ x)


def least_energy(drawing: Drawing) -> LeastEnergy:
    """The problem of a drawing."""
    columns: list[tuple[int, float, bool, float]] = []
    length = [
        np.hypot(*np.subtract(drawing.joints[b.ends[1]], drawing.joints[b.ends[0]]))
        for b in drawing.bars
    ]
    for i, bar in enumerate(drawing.bars):
        k = bar.area * bar.modulus / length[i]
        if bar.can_push and bar.can_pull and bar.gap_in == 0.0:
            columns.append((i, 1.0, False, bar.initial_kip))
            continue
        # Energy N^2 / 2k + gap |N| is that of a force -k gap with the joints held, in its sense.
        if bar.can_pull:
            columns.append((i, 1.0, True, bar.initial_kip - k * bar.gap_in))
        if bar.can_push:
            columns.append((i, -1.0, True, bar.initial_kip + k * bar.gap_in))
    which = np.array([column[0] for column in columns])
    matrix = statics(drawing).matrix[:, which]
    of_bar = np.zeros((len(drawing.bars), len(columns)))
    of_bar[which, np.arange(len(columns))] = 1.0
    stiffness = np.array([b.area * b.modulus for b in drawing.bars]) / np.array(length)
    weight = 1.0 / np.sqrt(stiffness[which])
    free = null_space(matrix)
    # Energy of forces p + free y is |weight (p - initial) + q r y|^2 / 2; x = r y + what p gives.
    q, r = np.linalg.qr(weight[:, None] * free)
    back = free @ np.linalg.inv(r)
    return LeastEnergy(
        of_bar=of_bar,
        sign=np.array([column[1] for column in columns]),
        one_way=np.array([column[2] for column in columns]),
        particular=np.linalg.pinv(matrix),
        shift=(back @ q.T) * weight,
        initial=np.array([column[3] for column in columns]),
        back=back,
    )


def least_distance(g: Floats, h: Floats) -> Floats | None:
    """The shortest x with g x >= h, by non-negative least squares; None where there is none.

    Lawson and Hanson, Solving Least Squares Problems (1974), chapter 23, problem LDP. Rows in which
    x has no say are looked at alone; the others are brought to one scale.
    """
    size = np.linalg.norm(g, axis=1)
    fixed = size < 1e-12 * size.max(initial=1e-300)
    if (h[fixed] > ROUNDING).any():
        return None
    g, h = g[~fixed] / size[~fixed, None], h[~fixed] / size[~fixed]
    scale = np.abs(h).max(initial=0.0)
    if scale < ROUNDING:
        return np.zeros(g.shape[1])
    system = np.vstack([g.T, h[None] / scale])
    target = np.zeros(len(system))
    target[-1] = 1.0
    weights, _ = nnls(system, target, maxiter=50 * system.shape[1])
    residual = system @ weights - target
    if abs(residual[-1]) < ROUNDING:
        return None
    x: Floats = -residual[:-1] / residual[-1]
    assert (g @ x - h / scale).min() > -1e-7, "non-negative least squares did not settle"
    return x * scale


def end_of_equilibrium(drawing: Drawing, dead: Floats, live: Floats, cap: float) -> float:
    """The greatest multiple of `live` (d,) that any forces with the right signs can carry.

    Linear programme: most m, with matrix @ N - m live = dead and the signs; m at most `cap`. Minus
    infinity where not even the dead load can be carried.
    """
    matrix = statics(drawing).matrix
    bounds = [
        (None if bar.can_push else 0.0, None if bar.can_pull else 0.0) for bar in drawing.bars
    ]
    found = linprog(
        np.concatenate([np.zeros(len(drawing.bars)), [-1.0]]),
        A_eq=np.concatenate([matrix, -live[:, None]], axis=1),
        b_eq=dead,
        bounds=[*bounds, (0.0, cap)],
    )
    return float(-found.fun) if found.status == 0 else -np.inf


def road_loads(drawing: Drawing, axles: Sequence[tuple[float, float]]) -> dict[str, float]:
    """Weights on floor joints from (kip, station in feet) of axles, panel by panel as simple
    beams.
    """
    down = dict.fromkeys(drawing.floor_joints, 0.0)
    stations = drawing.stations_ft
    for kip, at in axles:
        for panel in range(len(stations) - 1):
            a, b = stations[panel], stations[panel + 1]
            if a <= at < b or (at == b == stations[-1]):
                down[drawing.floor_joints[panel]] += kip * (b - at) / (b - a)
                down[drawing.floor_joints[panel + 1]] += kip * (at - a) / (b - a)
                break
    return down


def axles_at(
    axles_kip: Sequence[float], spacings_ft: Sequence[float], front_ft: float, forward: int
) -> list[tuple[float, float]]:
    """(kip, station) of a train whose front axle stands at `front_ft`, heading up (+1), down
    (-1).
    """
    behind = np.concatenate([[0.0], np.cumsum(spacings_ft)])
    return [
        (kip, front_ft - forward * float(far)) for kip, far in zip(axles_kip, behind, strict=True)
    ]
