"""Every path of a train that moves over a truss, exactly, between its places too.

Between two neighbouring places the loads are P = fixed + a * P1 + b * P2 with a, b >= 0 (multiple
a + b, place b / (a + b)). In the (a, b) plane each slack set rules a convex polygon in which forces
are planes. Where the paths at the two places meet the same sets in the same order, those polygons
are known between them: their edges are straight from event to event. Where the orders differ, the
corner at which they part is found and a place put on either side of it, until all are known. What
lies between two places nearer than `rays.SLIVER_FT` is not looked at; forces are continuous there.

So every greatest force at a given multiple, and every least multiple at which a force reaches a
strength, lies on an edge: of a path, or between two paths.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

import numpy as np

from eyebar.analysis.faces import inside
from eyebar.analysis.model import Floats, Model
from eyebar.analysis.paths import END, Ints, SlackSets
from eyebar.analysis.rays import Rays, Task, followed


@dataclass(frozen=True, slots=True, kw_only=True)
class Bundle:
    """Points and edges of t neighbouring sweeps on one dead load, to be looked up in one go.

    `multiple` (q,), `forces` (q, n), `edges` (h, 2) as in Sweep, but of all of them; `point_at`,
    `edge_at` (t+1,) where each one's points and edges begin; `begin`, `end` (h,) the points of each
    edge and `edge_sweep` (h,) the sweep it is of.
    """

    multiple: Floats
    forces: Floats
    edges: Ints
    point_at: Ints
    edge_at: Ints
    begin: Ints
    end: Ints
    edge_sweep: Ints


@dataclass(frozen=True, slots=True, kw_only=True)
class Sweep:
    """What became of a task: points (multiple, place, all bar forces) and the edges between them.

    With q points, n bars, h edges and r rays (places with those put in between) of k stretches:
    `multiple` (q,), `forces` (q, n), `ray` (q,); `edges` (h, 2) pairs of points; `front_ft` (r,),
    `spacing_ft` (r, a-1), `growing` (r, e), `ends` (r,) multiple at which equilibrium ends, or
    infinity; `first` (r,) first point of each ray; `count` (r,), `event_multiple` (r, k+1),
    `event`, `sets` (r, k) as in Paths. `bundle` holds it with its neighbours, at `place`.
    """

    task: Task
    multiple: Floats
    forces: Floats
    ray: Ints
    edges: Ints
    front_ft: Floats
    spacing_ft: Floats
    growing: Floats
    ends: Floats
    first: Ints
    count: Ints
    event_multiple: Floats
    event: Ints
    sets: Ints
    bundle: Bundle
    place: int


def sweeps(sets: SlackSets, tasks: Sequence[Task], cap: float) -> list[Sweep]:
    """The sweeps of several tasks on one truss, followed together up to multiple `cap`.

    Neighbouring tasks that share their array of fixed forces come in one bundle.
    """
    ground, rays, cells = followed(sets, tasks, cap)
    within = inside(ground, rays, tasks)
    if len(within):
        cells = np.concatenate([cells, within])
    return _views(sets.model, tasks, rays, cells)


def _views(model: Model, tasks: Sequence[Task], rays: Rays, cells: Ints) -> list[Sweep]:
    """One Sweep a task: slices of arrays in which rays, points and edges stand task by task."""
    order = np.argsort(rays.task, kind="stable")
    count, multiple, task = rays.count[order], rays.multiple[order], rays.task[order]
    offset = np.cumsum(count + 1) - (count + 1)
    used = np.arange(multiple.shape[1]) <= count[:, None]
    ray, _ = np.nonzero(used)
    edges, edge_task = _edges(rays, cells, order, offset)
    ray_at = np.searchsorted(task, np.arange(len(tasks) + 1))
    point_at = np.append(offset, len(ray))[ray_at]
    edge_at = np.searchsorted(edge_task, np.arange(len(tasks) + 1))
    forces = _point_forces(rays, model, order, offset, len(ray))
    last = rays.event[order, count - 1] <= END
    ends = np.where(last, multiple[np.arange(len(count)), count], np.inf)
    event, sets, flat = rays.event[order], rays.sets[order], multiple[used]
    front, spacing = rays.front[order], rays.spacing[order]
    growing = rays.rates(order)
    bundles = _bundles(tasks, (flat, forces, edges), point_at, edge_at)
    views = []
    for number, one in enumerate(tasks):
        bundle, place = bundles[number]
        r = slice(ray_at[number], ray_at[number + 1])
        q = slice(point_at[number], point_at[number + 1])
        h = slice(edge_at[number], edge_at[number + 1])
        views.append(
            Sweep(
                task=one,
                multiple=flat[q],
                forces=forces[q],
                ray=ray[q] - r.start,
                edges=edges[h] - q.start,
                front_ft=front[r],
                spacing_ft=spacing[r, : one.places.spacing_ft.shape[1]],
                growing=growing[r],
                ends=ends[r],
                first=offset[r] - q.start,
                count=count[r],
                event_multiple=multiple[r],
                event=event[r],
                sets=sets[r],
                bundle=bundle,
                place=place,
            )
        )
    return views


def _bundles(
    tasks: Sequence[Task],
    arrays: tuple[Floats, Floats, Ints],
    point_at: Ints,
    edge_at: Ints,
) -> list[tuple[Bundle, int]]:
    """For each task its bundle and its place in it."""
    multiple, forces, edges = arrays
    found: list[tuple[Bundle, int]] = []
    for _, run in groupby(range(len(tasks)), key=lambda i: id(tasks[i].fixed)):
        members = list(run)
        a, b = members[0], members[-1] + 1
        q, h = slice(point_at[a], point_at[b]), slice(edge_at[a], edge_at[b])
        mine, begun = edges[h] - q.start, edge_at[a : b + 1] - h.start
        bundle = Bundle(
            multiple=multiple[q],
            forces=forces[q],
            edges=mine,
            point_at=point_at[a : b + 1] - q.start,
            edge_at=begun,
            begin=np.ascontiguousarray(mine[:, 0]),
            end=np.ascontiguousarray(mine[:, 1]),
            edge_sweep=np.repeat(np.arange(b - a), np.diff(begun)),
        )
        found += [(bundle, i - a) for i in members]
    return found


def _point_forces(
    rays: Rays,
    model: Model,
    order: Ints,
    offset: Ints,
    points: int,
) -> Floats:
    """Bar forces (q, n) of all points, in the order of their tasks."""
    place = np.empty_like(offset)
    place[order] = offset
    forces = np.empty((points, len(model.bars)))
    begin = 0
    for chunk in rays.forces:
        rows = slice(begin, begin + len(chunk))
        ray, step = np.nonzero(np.arange(chunk.shape[1]) <= rays.count[rows][:, None])
        forces[place[rows][ray] + step] = model.bar_forces(chunk[ray, step])
        begin += len(chunk)
    return forces


def _edges(rays: Rays, cells: Ints, order: Ints, offset: Ints) -> tuple[Ints, Ints]:
    """All edges (h, 2) as pairs of points, task by task, and the task of each (h,)."""
    place = np.empty_like(offset)
    place[order] = offset
    ray, step = np.nonzero(np.arange(rays.sets.shape[1]) < rays.count[:, None])
    begin = place[ray] + step
    a, b = cells.T
    ending = rays.event[a, rays.count[a] - 1] <= END
    inner = np.arange(rays.sets.shape[1] + 1) < (rays.count[a] + ending)[:, None]
    inner[:, 0] = False
    cell, across = np.nonzero(inner)
    edges = np.concatenate(
        [
            np.stack([begin, begin + 1], axis=1),
            np.stack([place[a[cell]] + across, place[b[cell]] + across], axis=1),
        ]
    )
    task = np.concatenate([rays.task[ray], rays.task[a[cell]]])
    by_task = np.argsort(task, kind="stable")
    return edges[by_task], task[by_task]
