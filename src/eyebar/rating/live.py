"""Greatest and least forces that a vehicle adds to the unfactored dead load."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from eyebar.analysis.loaded import LoadedTruss, dead_forces
from eyebar.analysis.model import Floats
from eyebar.analysis.passage import ended, extremes, spots
from eyebar.analysis.paths import Ints
from eyebar.analysis.places import places
from eyebar.analysis.rays import Task
from eyebar.analysis.stability import Collapse, collapse
from eyebar.analysis.sweep import Sweep, sweeps
from eyebar.rating.rated import Place
from eyebar.terms import Direction
from eyebar.vehicles import Vehicle

DEAD_ALONE = (1.0, 1.0)
NOTHING_KIP = 1e-7
"""A change of force under this is the splitting of ties, not the vehicle."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LiveForces:
    """What a vehicle adds to each bar (n,) [kip], the empty bridge counted, and where it stands
    then; `lost` where the truss finds no equilibrium at some place, and the forces mean nothing."""

    least: Floats
    greatest: Floats
    least_at: tuple[Place | None, ...]
    greatest_at: tuple[Place | None, ...]
    lost: Collapse | None


def dead_load_forces(loaded: LoadedTruss) -> dict[str, float]:
    """Bar -> force under unfactored dead load [kip], with the bars that then work."""
    forces = dead_forces(loaded, *DEAD_ALONE)
    return dict(zip(loaded.model.names, forces.tolist(), strict=True))


def live_forces(
    loaded: LoadedTruss, vehicles: Mapping[str, Vehicle], share: Mapping[str, float]
) -> dict[str, LiveForces]:
    """Vehicle -> forces of its axle train alone, times its share, without impact.

    Raises Unstable where dead load alone finds no equilibrium.
    """
    fixed, start = loaded.dead(*DEAD_ALONE), loaded.start(*DEAD_ALONE)
    lines = loaded.lines
    tasks = []
    for vehicle in vehicles.values():
        for way in Direction:
            train = places(vehicle.axles_kip, vehicle.spacings_ft, lines.stations_ft, way)
            growing = train.loads @ lines.units
            tasks.append(Task(places=train, fixed=fixed, start=start, growing=growing))
    swept = sweeps(loaded.sets, tasks, max(share.values(), default=1.0)) if tasks else []
    dead = dead_forces(loaded, *DEAD_ALONE)
    return {
        name: _of_one(loaded, swept[2 * i : 2 * i + 2], share[name], dead)
        for i, name in enumerate(vehicles)
    }


def _of_one(
    loaded: LoadedTruss, ways: list[Sweep], share: float, dead: Floats
) -> LiveForces:
    n = len(dead)
    least, greatest = np.zeros(n), np.zeros(n)
    least_at: list[Place | None] = [None] * n
    greatest_at: list[Place | None] = [None] * n
    lost = None
    for sweep in ways:
        multiple, ray, last = ended(sweep)
        if multiple < share:
            number = int(sweep.sets[ray, sweep.count[ray] - 1])
            slack = loaded.sets.sets[number]
            lost = lost or collapse(loaded.model, slack, last, loaded.floor_joints)
            continue
        low, high, low_edge, high_edge, part = extremes(sweep, share)
        _better(sweep, (dead - low, low_edge, part), (least, least_at), -1.0)
        _better(sweep, (high - dead, high_edge, part), (greatest, greatest_at), 1.0)
    return LiveForces(
        least=least, greatest=greatest, least_at=tuple(least_at), greatest_at=tuple(greatest_at),
        lost=lost,
    )


def _better(
    sweep: Sweep, found: tuple[Floats, Ints, Floats], kept: tuple[Floats, list[Place | None]],
    sign: float,
) -> None:
    """Put what is greater in its size than what is kept in its place."""
    size, edges, part = found
    forces, at = kept
    rows = np.flatnonzero((size > NOTHING_KIP) & (size > sign * forces))
    where = spots(sweep, edges[rows], part[edges[rows]])
    for i, row in enumerate(rows):
        forces[row] = sign * size[row]
        at[row] = Place(
            front_axle_ft=where.front_ft[i],
            direction=sweep.task.places.direction,
            spacing_ft=tuple(where.spacing_ft[i]),
        )
