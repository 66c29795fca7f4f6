"""The analysis under test, asked the questions that the tests of a truss ask."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from eyebar.analysis.influence import InfluenceLines, unit_forces
from eyebar.analysis.model import Floats, Model
from eyebar.analysis.passage import Passages, passages
from eyebar.analysis.paths import SlackSets, paths, solved, starting_sets, ties_split
from eyebar.analysis.places import Spacing, places
from eyebar.analysis.rays import Task
from eyebar.analysis.sweep import Sweep, sweeps
from eyebar.terms import Direction
from tests.analysis.trusses import Drawing

FORWARD = {Direction.UP: 1, Direction.DOWN: -1}


@dataclass(frozen=True, slots=True, kw_only=True)
class Loaded:
    """A truss with dead load, its slack sets and what a unit weight on each floor joint does."""

    drawing: Drawing
    model: Model
    sets: SlackSets
    fixed: Floats
    start: int
    units: Floats

    @property
    def lines(self) -> InfluenceLines:
        """Influence lines by slack set."""
        return InfluenceLines(self.sets, self.drawing.stations_ft, self.units)

    def forces(self, down: Mapping[str, float], multiple: float = 1.0) -> dict[str, float]:
        """Force of each bar with weights on floor joints besides the dead load, times a multiple.
        """
        growing = np.array([down.get(joint, 0.0) for joint in self.drawing.floor_joints])
        walked = paths(
            self.sets, self.fixed[None], (growing @ self.units)[None],
            start=np.array([self.start]), cap=multiple,
        )
        assert walked.multiple[0, -1] == multiple, "equilibrium ended before"
        return self.named(walked.forces[0, -1])

    def dead(self) -> dict[str, float]:
        """Force of each bar under dead load alone."""
        elements, _ = solved(self.model, self.sets.sets[self.start], self.fixed[None])
        return self.named(elements[0])

    def named(self, elements: Floats) -> dict[str, float]:
        """Bar forces by name from element forces."""
        forces = self.model.bar_forces(elements[None])[0]
        return dict(zip(self.model.names, forces.tolist(), strict=True))

    def sweep(
        self, axles: Sequence[float], spacings: Sequence[Spacing], way: Direction, cap: float
    ) -> Sweep:
        """The sweep of one train in one direction."""
        stand = places(axles, spacings, self.drawing.stations_ft, way)
        task = Task(
            places=stand, fixed=self.fixed, start=self.start, growing=stand.loads @ self.units
        )
        return sweeps(self.sets, [task], cap)[0]


def loaded(drawing: Drawing, dead: Mapping[str, float]) -> Loaded:
    """A drawing under dead load [kip, down, by joint]; fails where it finds no equilibrium."""
    model = drawing.model()
    sets = SlackSets(model)
    fixed = model.influence @ model.loads(dead) + model.fixed_forces + ties_split(model)
    start = starting_sets(sets, fixed[None])[0]
    assert start is not None, "no equilibrium under dead load"
    return Loaded(
        drawing=drawing, model=model, sets=sets, fixed=fixed, start=start,
        units=unit_forces(model, drawing.floor_joints),
    )


def first_passages(sweep: Sweep, limits: Floats, sense: int) -> Passages:
    """Where sense * force first reaches each limit (n,) [kip]."""
    return passages(sweep.bundle, limits, sense)[sweep.place]


def least_multiples(
    truss: Loaded, growing: Floats, limits: Floats, sense: int, *, cap: float
) -> Floats:
    """(n,) least multiple of any of the loads (r, e) at which sense * force passes sense * limit,
    each load by its own path; infinity where none does."""
    walked = paths(
        truss.sets, np.broadcast_to(truss.fixed, growing.shape), growing,
        start=np.full(len(growing), truss.start), cap=cap,
    )
    forces, over = sense * truss.model.bar_forces(walked.forces), sense * limits
    best = np.full(len(limits), np.inf)
    for step in range(walked.multiple.shape[1] - 1):
        low, high = forces[:, step], forces[:, step + 1]
        crossed = (low < over) & (high >= over)
        part = (over - low) / np.where(crossed, high - low, 1.0)
        begin, end = walked.multiple[:, step, None], walked.multiple[:, step + 1, None]
        there = np.where(crossed, begin + part * (end - begin), np.inf)
        best = np.minimum(best, there.min(axis=0))
    return best


def at_rest(drawing: Drawing, down: Mapping[str, float]) -> dict[str, float]:
    """Force of each bar under weights on joints [kip, down]."""
    return loaded(drawing, down).dead()


def pulled(
    drawing: Drawing, loads: Mapping[str, tuple[float, float]]
) -> tuple[dict[str, float], dict[tuple[str, str], float]]:
    """Bar forces, all bars working, and motions by (joint, axis), under loads (x, y) on joints."""
    model = drawing.model()
    vector = np.zeros(len(model.directions))
    for (joint, axis), row in model.directions.items():
        vector[row] = loads.get(joint, (0.0, 0.0))[axis]
    forces = model.influence @ vector
    # By unit loads: a joint moves by the sum of N n L / EA, n the forces of a unit load there.
    motions = model.influence.T @ (forces / model.stiffness)
    motion = {
        (joint, "xy"[axis]): float(motions[row])
        for (joint, axis), row in model.directions.items()
    }
    return dict(zip(model.names, forces.tolist(), strict=True)), motion
