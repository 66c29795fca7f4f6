"""Every lane load that a pin can meet, by the directions of its resultants.

Nothing of the package is used: forces by the equilibrium of joints, moments by cutting the pin.

What all lane loads together can do to one resultant is a convex set in the plane, and the farthest
point of a convex set is the greatest, over all directions, of how far it reaches in each: for each
direction the lane stands where its influence line *in that direction* is over zero, the single
weight and the train where theirs is greatest. Directions `TURN` apart miss no more than the part
1 - cos(TURN / 2) of it. Bending and shear together are m + v^3, and v^3 is the greatest of its
tangents 3 t^2 v - 2 t^3: a third number beside the two directions.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from math import hypot, pi

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

DIRECTIONS = 720
TURN = 2.0 * pi / DIRECTIONS
COARSE, TANGENTS = 24, 6
BETTER = 8
"""Directions of one resultant alone; of each of two, with the tangents of the third power; rounds
in which directions are put where the found load points."""


@dataclass(frozen=True, slots=True)
class Frame:
    """A truss as joints [ft], bars by their two joints, and floor joints with stations [ft]; held
    at the first floor joint, and upright at the last."""

    joints: Mapping[str, tuple[float, float]]
    bars: tuple[str, ...]
    floor: tuple[tuple[str, float], ...]

    def toward(self, joint: str, bar: str) -> tuple[float, float]:
        """Unit vector from a joint along a bar."""
        first, second = bar.split("-")
        (x, y), (u, v) = (self.joints[one] for one in (
            (first, second) if first == joint else (second, first)))
        return (u - x) / hypot(u - x, v - y), (v - y) / hypot(u - x, v - y)

    def lines(self) -> Floats:
        """(b, p) forces under one kip down on each floor joint; as many bars as joints need."""
        names = list(self.joints)
        rows = {(joint, axis): 2 * i + axis for i, joint in enumerate(names) for axis in (0, 1)}
        held = [(self.floor[0][0], 0), (self.floor[0][0], 1), (self.floor[-1][0], 1)]
        count = len(rows) - len(held)
        whole = np.zeros((len(rows), count + len(held)))
        for column, bar in enumerate(self.bars):
            for joint in bar.split("-"):
                for axis in (0, 1):
                    whole[rows[joint, axis], column] = self.toward(joint, bar)[axis]
        for column, one in enumerate(held):
            whole[rows[one], count + column] = 1.0
        loads = np.zeros((len(rows), len(self.floor)))
        for column, (joint, _) in enumerate(self.floor):
            loads[rows[joint, 1], column] = 1.0  # what holds a weight of one kip pulls up
        forces: Floats = np.asarray(np.linalg.solve(whole, loads)[:count], dtype=float)
        return forces


@dataclass(frozen=True, slots=True)
class Resting:
    """One half of a pin, from outside: what bears, and how thick [in]. An empty name is the load
    hung on it."""

    joint: str
    diameter: float
    bearings: tuple[tuple[str, float], ...]
    gap: float

    def middles(self) -> list[float]:
        """Middle of each bearing from the outer end [in]."""
        ends = np.cumsum([thick + self.gap for _, thick in self.bearings])
        return [float(end - self.gap - thick / 2) for end, (_, thick) in zip(
            ends, self.bearings, strict=True)]

    def rows(self, frame: Frame) -> tuple[Floats, Floats, Floats]:
        """(k, 2, b) moments at each bearing, shears beyond it, loads on it, of one kip in each
        bar."""
        loads = np.zeros((len(self.bearings), 2, len(frame.bars)))
        for i, (name, _) in enumerate(self.bearings):
            for j, bar in enumerate(frame.bars):
                if self.joint not in bar.split("-") or name not in (bar, ""):
                    continue
                sense = 0.5 if name else -0.5
                loads[i, :, j] = sense * np.array(frame.toward(self.joint, bar))
        at = self.middles()
        moments = np.stack([
            sum(((here - there) * load for there, load in zip(at, loads, strict=True)
                 if there < here), np.zeros_like(loads[0])) for here in at
        ])
        return moments, np.cumsum(loads, axis=0), loads


@dataclass(frozen=True, slots=True)
class Lane:
    """A lane load and what moves beside it: axle loads on the floor joints, a row for each place;
    with the frame's stations [ft]."""

    stations: Floats
    kip_per_ft: float
    point_kip: float
    trains: Floats | None = None

    def most(self, lines: Floats) -> tuple[Floats, Floats]:
        """(r,) the most that it does by influence lines (r, p), and (r, p) its loads then."""
        near, far = lines[:, :-1], lines[:, 1:]
        with np.errstate(divide="ignore", invalid="ignore"):
            zero = np.clip(np.nan_to_num(near / (near - far)), 0.0, 1.0)
        begin = np.where(near > 0.0, 0.0, np.where(far > 0.0, zero, 1.0))
        end = np.where(far > 0.0, 1.0, np.where(near > 0.0, zero, begin))
        weight = self.kip_per_ft * np.diff(self.stations)
        loads = np.zeros_like(lines)
        onto_far = weight * (end**2 - begin**2) / 2
        loads[:, 1:] += onto_far
        loads[:, :-1] += weight * (end - begin) - onto_far
        row, best = np.arange(len(lines)), lines.argmax(axis=1)
        loads[row, best] += np.where(lines[row, best] > 0.0, self.point_kip, 0.0)
        if self.trains is not None:
            loads += self.trains[(lines @ self.trains.T).argmax(axis=1)]
        return (loads * lines).sum(axis=1), loads


@dataclass(slots=True)
class Worst:
    """The worst lane load of one resultant, or of two together: `value` of the check that a load
    that was found brings about, `bound` what none can pass."""

    value: float = 0.0
    bound: float = 0.0
    loads: Floats = field(default_factory=lambda: np.zeros(0))


def worst_single(row: Floats, dead: Floats, lines: Floats, lane: Lane) -> Worst:
    """Of one resultant: `row` (2, b) in parts of its limit, under bar forces `dead` (b,)."""
    turn = np.arange(DIRECTIONS) * TURN
    units = np.stack([np.cos(turn), np.sin(turn)], axis=1)
    most, loads = lane.most(units @ row @ lines)
    reach = units @ (row @ dead) + most
    best = int(reach.argmax())
    found = Worst(bound=float(reach[best] / np.cos(TURN / 2)), loads=loads[best])
    for _ in range(BETTER):
        at = row @ (dead + lines @ found.loads)
        found.value = max(found.value, float(np.hypot(*at)))
        found.loads = lane.most((at @ row @ lines)[None])[1][0]
    return found


def worst_joint(moment: Floats, shear: Floats, dead: Floats, lines: Floats, lane: Lane) -> Worst:
    """Of a moment and a shear together, each (2, b) in parts of its limit: m + v^3."""
    turn = 2.0 * pi / COARSE
    units = np.stack([np.cos(turn * np.arange(COARSE)), np.sin(turn * np.arange(COARSE))], axis=1)
    tops = (np.arange(TANGENTS) + 0.5) / TANGENTS
    a, b, t = (one.ravel() for one in np.meshgrid(
        np.arange(COARSE), np.arange(COARSE), tops, indexing="ij"))
    rows = units[a] @ moment + (3.0 * t**2)[:, None] * (units[b] @ shear)
    most, loads = lane.most(rows @ lines)
    reach = rows @ dead + most - 2.0 * t**3
    best = np.argsort(reach)[-6:]
    # A third power lies over its nearest tangent by no more than 3 (1/2 of the step)^2.
    spill = 3.0 * (0.5 / TANGENTS) ** 2
    found = Worst(bound=float((reach.max() + 2.0) / np.cos(turn / 2) - 2.0 + spill))
    for start in best:
        load = loads[start]
        for _ in range(BETTER):
            forces = dead + lines @ load
            m, v = moment @ forces, shear @ forces
            size = float(np.hypot(*m) + np.hypot(*v) ** 3)
            if size > found.value:
                found.value, found.loads = size, load
            slope = m @ moment / max(np.hypot(*m), 1e-12) + 3.0 * np.hypot(*v) * (v @ shear)
            load = lane.most((slope @ lines)[None])[1][0]
    return found


def train_loads(
    axles: Sequence[tuple[float, float]], stations: Floats
) -> Floats:
    """(q, p) loads on the floor joints of axles (kip, ft behind the first), for every place at
    which one of them stands over a joint, both ways."""
    places = []
    for way in (1.0, -1.0):
        for station in stations:
            for _, over in axles:
                at = [station + way * (over - behind) for _, behind in axles]
                places.append(sum(
                    (kip * _shared(x, stations) for (kip, _), x in zip(axles, at, strict=True)),
                    np.zeros(len(stations)),
                ))
    return np.array(places)


def _shared(x: float, stations: Floats) -> Floats:
    """(p,) what the two joints beside an axle take of it; nothing off the span."""
    if not stations[0] <= x <= stations[-1]:
        return np.zeros(len(stations))
    return np.array([np.interp(x, stations, one) for one in np.eye(len(stations))])
