"""Influence lines of one set of working bars: forces for a unit weight on each floor joint."""

from dataclasses import dataclass, field

import numpy as np

from eyebar.analysis.model import Floats, Model
from eyebar.analysis.paths import SlackSets, solved


def unit_forces(model: Model, floor_joints: tuple[str, ...]) -> Floats:
    """(p, e) element forces for 1 kip down on each floor joint, all bars working; 0 on supports."""
    forces = np.zeros((len(floor_joints), len(model.stiffness)))
    for row, joint in enumerate(floor_joints):
        column = model.directions.get((joint, 1))
        if column is not None:
            forces[row] = -model.influence[:, column]
    return forces


@dataclass(slots=True)
class InfluenceLines:
    """Influence lines by slack set, each worked out once.

    `stations_ft` (p,) of the floor joints, `units` (p, e) as `unit_forces` gives them.
    """

    sets: SlackSets
    stations_ft: Floats
    units: Floats
    known: dict[int, Floats] = field(default_factory=dict)
    lengths: dict[int, tuple[Floats, Floats]] = field(default_factory=dict)

    def ordinates(self, number: int) -> Floats:
        """(p, n) bar forces for 1 kip on each floor joint, with one slack set."""
        if number not in self.known:
            elements, _ = solved(self.sets.model, self.sets.sets[number], self.units)
            self.known[number] = self.sets.model.bar_forces(elements)
        return self.known[number]

    def loaded_ft(self, number: int, sense: int) -> Floats:
        """(n,) length of road on which a weight pulls (+1) or pushes (-1) each bar [ft]."""
        if number not in self.lengths:
            ordinates = self.ordinates(number).T
            self.lengths[number] = (
                like_signed_ft(self.stations_ft, ordinates),
                like_signed_ft(self.stations_ft, -ordinates),
            )
        return self.lengths[number][0 if sense > 0 else 1]


NOISE = 1e-9
"""An ordinate under this part of the line's greatest is nothing: rounding, not influence."""


def loaded_parts(ordinates: Floats) -> tuple[Floats, Floats]:
    """Where in each panel the line is over zero: from and to (..., p-1), as parts of the panel."""
    quiet = NOISE * np.abs(ordinates).max(axis=-1, keepdims=True)
    lifted = np.where(np.abs(ordinates) <= quiet, 0.0, ordinates)
    near, far = lifted[..., :-1], lifted[..., 1:]
    change = near - far
    with np.errstate(divide="ignore", invalid="ignore"):
        zero = np.where(change != 0.0, near / change, 0.0)
    begin = np.where(near > 0.0, 0.0, np.where(far > 0.0, zero, 0.0))
    end = np.where(far > 0.0, 1.0, np.where(near > 0.0, zero, 0.0))
    return begin, end


def like_signed_ft(stations_ft: Floats, ordinates: Floats) -> Floats:
    """Length (...) of the parts of influence lines (..., p) that are over zero [ft]."""
    begin, end = loaded_parts(ordinates)
    length: Floats = ((end - begin) * np.diff(stations_ft)).sum(axis=-1)
    return length


def uniform_panel_loads(stations_ft: Floats, ordinates: Floats, kip_per_ft: float) -> Floats:
    """(..., p) loads on floor joints of a uniform load that stands where the line is over zero."""
    begin, end = loaded_parts(ordinates)
    weight = kip_per_ft * np.diff(stations_ft)
    far = 0.5 * (end**2 - begin**2) * weight
    near = (end - begin) * weight - far
    loads = np.zeros_like(ordinates)
    loads[..., :-1] += near
    loads[..., 1:] += far
    return loads


def weight_at_greatest(ordinates: Floats, kip: float) -> Floats:
    """(..., p) loads of one weight on the joint where each line is greatest, if that is over 0."""
    loads = np.zeros_like(ordinates)
    best = ordinates.argmax(axis=-1)[..., None]
    greatest = np.take_along_axis(ordinates, best, axis=-1)
    np.put_along_axis(loads, best, np.where(greatest > 0.0, kip, 0.0), axis=-1)
    return loads
