"""The force table of a vehicle: where it must stand for all bar forces to be known everywhere.

Between two neighbouring rows every bar force is a straight line in the place of the front axle: a
row stands wherever an axle is over a panel point, or a bar goes slack or taut.
"""

from dataclasses import dataclass, replace

import numpy as np

from eyebar.analysis.loaded import LoadedTruss
from eyebar.analysis.model import Floats
from eyebar.analysis.passage import cut, ended, spots
from eyebar.analysis.paths import Ints, paths
from eyebar.analysis.places import panel_loads, places
from eyebar.analysis.rays import Task
from eyebar.analysis.stability import Collapse, collapse
from eyebar.analysis.sweep import sweeps
from eyebar.rating.live import DEAD_ALONE
from eyebar.terms import Direction
from eyebar.vehicles import Vehicle

SAME_FT = 1e-6
"""Rows nearer to each other than this are one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ForceTable:
    """Rows of one vehicle in one direction on one truss, by rising place of its front axle.

    `front_ft` (r,); `forces` (r, n) of all bars [kip], dead load in them; `empty` the bars that are
    slack under dead load alone, `slack` (r-1,) those that are between two rows. `lost` where the
    truss finds no equilibrium at some place: there are no rows then.
    """

    empty: tuple[str, ...]
    front_ft: Floats
    forces: Floats
    slack: tuple[tuple[str, ...], ...]
    lost: Collapse | None = None


def force_table(
    loaded: LoadedTruss, vehicle: Vehicle, way: Direction, share: float
) -> ForceTable:
    """The table of a vehicle's axle train times its share, without impact, on unfactored dead load.

    A varied spacing is at its least. Raises Unstable where dead load alone finds no equilibrium.
    """
    train = replace(vehicle, spacings_ft=vehicle.least_spacings_ft)
    lines = loaded.lines
    where = places(train.axles_kip, train.spacings_ft, lines.stations_ft, way)
    task = Task(
        places=where, fixed=loaded.dead(*DEAD_ALONE), start=loaded.start(*DEAD_ALONE),
        growing=where.loads @ lines.units,
    )
    sweep = sweeps(loaded.sets, [task], share)[0]
    multiple, ray, last = ended(sweep)
    empty = _slack(loaded, loaded.start(*DEAD_ALONE))
    if multiple < share:
        slack = loaded.sets.sets[int(sweep.sets[ray, sweep.count[ray] - 1])]
        return ForceTable(
            empty=empty, front_ft=np.zeros(0), forces=np.zeros((0, len(loaded.model.names))),
            slack=(),
            lost=collapse(loaded.model, slack, last, loaded.floor_joints),
        )
    edges, parts, forces = cut(sweep, share)
    front = np.array(spots(sweep, edges, parts).front_ft)
    order = np.argsort(front, kind="stable")
    front, forces = front[order], forces[order]
    keep = np.concatenate([[True], np.diff(front) > SAME_FT])
    front, forces = front[keep], forces[keep]
    between = (front[1:] + front[:-1]) / 2.0
    sets = _sets(loaded, train, (way, share), between)
    return ForceTable(
        empty=empty, front_ft=front, forces=forces,
        slack=tuple(_slack(loaded, int(number)) for number in sets),
    )


def train_positions(vehicle: Vehicle, way: Direction, front_ft: Floats) -> Floats:
    """Stations (..., a) of all axles, the front one's being given (...) [ft]."""
    forward = 1.0 if way is Direction.UP else -1.0
    stations: Floats = front_ft[..., None] - forward * np.asarray(vehicle.behind_front_ft())
    return stations


def _sets(
    loaded: LoadedTruss, vehicle: Vehicle, going: tuple[Direction, float], front_ft: Floats
) -> Ints:
    """The slack set (r,) with the front axle at each place."""
    way, share = going
    stations = train_positions(vehicle, way, front_ft)
    loads = panel_loads(stations, np.asarray(vehicle.axles_kip), loaded.lines.stations_ft)
    fixed = np.broadcast_to(loaded.dead(*DEAD_ALONE), (len(front_ft), len(loaded.dc)))
    start = np.full(len(front_ft), loaded.start(*DEAD_ALONE))
    walked = paths(loaded.sets, fixed, loads @ loaded.lines.units, start=start, cap=share)
    last: Ints = walked.sets[np.arange(len(front_ft)), walked.count - 1]
    return last


def _slack(loaded: LoadedTruss, number: int) -> tuple[str, ...]:
    """The bars none of whose elements works in a slack set."""
    model = loaded.model
    gone = np.zeros(len(model.element_bar), dtype=bool)
    gone[model.unilateral[loaded.sets.sets[number].members]] = True
    working = np.bincount(model.element_bar, weights=~gone, minlength=len(model.bars))
    return tuple(model.names[bar] for bar in np.flatnonzero(working == 0))
