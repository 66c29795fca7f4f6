"""What lies between the lines on which a train of varied spacing has been followed.

The lines cut the plane of position and spacing into convex faces, in each of which panel loads are
flat. All paths that meet the same slack sets in the same order fill a convex piece of a face: what
lies between two such paths meets those sets in that order too. So

- a face with one order all around its rim has that order within, and nothing new;
- where, along the rim, another order stands between two stretches of one order, it is cut off by a
  straight line from end to end of its own stretch, and what is worst on that line lies between the
  two rays beside it;
- in a face that cannot be taken apart so, a further line is followed along the edge at which two
  orders part, which makes two lesser faces of it.

What is narrower than `rays.SLIVER_FT` is not looked at.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import groupby

import numpy as np

from eyebar.analysis.model import Floats
from eyebar.analysis.paths import Ints
from eyebar.analysis.places import Places
from eyebar.analysis.rays import (
    SLIVER_FT,
    Ground,
    Rays,
    Task,
    added,
    parted,
    partings,
    settled,
)
from eyebar.terms import Direction

BESIDE_FT = 1e-6
"""How far beside an edge a further line runs."""
NARROW_FT = 1e-8
"""Between neighbours on such a line that are nearer than this nothing is looked for."""
ON_FT = 2e-8
"""A ray is on the rim of a face that it is nearer to than this."""
NARROW_FACE_FT = 1e-5
LEVELS = 30

Run = tuple[object, list[int]]
"""An order and the rays that have it, along a rim."""

Cut = tuple[list[int], tuple[list[int], float], tuple[list[int], float]]
"""Part of a rim, and the two ends of the line that cuts it off."""


def inside(ground: Ground, rays: Rays, tasks: Sequence[Task]) -> Ints:
    """Pairs (c, 2) of rays that meet the same slack sets in the same order, between which there is
    what the lines have not shown; rays are added where they are needed.

    Raises ArithmeticError where faces cannot be taken apart.
    """
    chosen = [i for i, task in enumerate(tasks) if task.places.varied >= 0]
    if not chosen:
        return np.zeros((0, 2), dtype=np.intp)
    rows = np.flatnonzero(np.isin(rays.task, chosen))
    part = _of(rays, rows)
    plane = _Plane(ground, part, tasks)
    rims = [rim for i in chosen for rim in _rims(part, i, tasks[i].places)]
    for level in range(LEVELS):
        stuck = [runs for runs in map(plane.taken_apart, rims) if runs]
        if not stuck:
            break
        rims = plane.halves(stuck, level)
    else:
        raise ArithmeticError(f"{len(stuck)} faces between varied spacings cannot be taken apart")
    return _put_back(rays, part, rows, np.array(plane.known, dtype=np.intp).reshape(-1, 2))


def _of(rays: Rays, rows: Ints) -> Rays:
    """Some of the rays (r,) by themselves."""
    return replace(
        rays, task=rays.task[rows], line=rays.line[rows], front=rays.front[rows],
        spacing=rays.spacing[rows], growing=[rays.rates(rows)], count=rays.count[rows],
        multiple=rays.multiple[rows], event=rays.event[rows], sets=rays.sets[rows], forces=[],
    )


def _put_back(rays: Rays, part: Rays, rows: Ints, known: Ints) -> Ints:
    """Append the rays that `part` has beyond its first (r,); pairs by their numbers in `rays`."""
    old, new = len(rays.task), slice(len(rows), None)
    if len(part.task) > len(rows):
        rays.append(
            task=part.task[new], line=part.line[new], front=part.front[new],
            spacing=part.spacing[new], growing=part.rates(np.arange(len(rows), len(part.task))),
            count=part.count[new], multiple=part.multiple[new], event=part.event[new],
            sets=part.sets[new], forces=part.forces,
        )
    number = np.concatenate([rows, old + np.arange(len(part.task) - len(rows))])
    pairs: Ints = number[known]
    return pairs


def _flat(rays: Rays, rows: Ints | slice, places: Places) -> Floats:
    """(r, 2) position along the way of travel and varied spacing [ft]."""
    forward = 1.0 if places.direction is Direction.UP else -1.0
    return np.stack([forward * rays.front[rows], rays.spacing[rows, places.varied]], axis=1)


def _rims(rays: Rays, number: int, places: Places) -> list[list[int]]:
    """The rays around each face of a task, in order, from the lines its places lie on."""
    rows = np.flatnonzero(rays.task == number)
    position, spacing = _flat(rays, rows, places).T
    upright, slanting = _lines_of(places)
    least, most = spacing.min(), spacing.max()
    u, d = np.meshgrid(np.arange(len(upright) - 1), np.arange(len(slanting) - 1), indexing="ij")
    widest = upright[u + 1] - slanting[d] - least
    there = (widest > SLIVER_FT) & (upright[u] - slanting[d + 1] < most - SLIVER_FT)
    u, d = u[there], d[there]
    behind = position - spacing
    on = (position >= upright[u][:, None] - ON_FT) & (position <= upright[u + 1][:, None] + ON_FT)
    on &= (behind >= slanting[d][:, None] - ON_FT) & (behind <= slanting[d + 1][:, None] + ON_FT)
    face, ray = np.nonzero(on)
    size = np.maximum(np.bincount(face, minlength=len(u)), 1)
    middle = np.stack([
        np.bincount(face, weights=by[ray], minlength=len(u)) / size for by in (position, spacing)
    ])
    angle = np.arctan2(spacing[ray] - middle[1][face], position[ray] - middle[0][face])
    order = np.lexsort((angle, face))
    return [rim.tolist() for rim in np.split(rows[ray[order]], np.cumsum(size)[:-1])]


def _lines_of(places: Places) -> tuple[Floats, Floats]:
    """Where an axle ahead of the varied spacing stays over a joint, and where one behind it does:
    positions, and positions less the spacing [ft]."""
    forward = 1.0 if places.direction is Direction.UP else -1.0
    position, spacing = forward * places.front_ft, places.spacing_ft[:, places.varied]
    begin = np.flatnonzero(np.diff(places.line, prepend=-1))
    end = np.append(begin[1:], len(position)) - 1
    upright = np.abs(position[begin] - position[end]) < ON_FT
    behind = position - spacing
    slanting = (np.abs(behind[begin] - behind[end]) < ON_FT) & ~upright
    return np.sort(position[begin[upright]]), np.sort(behind[begin[slanting]])


@dataclass(slots=True)
class _Plane:
    """Faces of all tasks being taken apart; `known` pairs of rays found so far."""

    ground: Ground
    rays: Rays
    tasks: Sequence[Task]
    known: list[tuple[int, int]]

    def __init__(self, ground: Ground, rays: Rays, tasks: Sequence[Task]) -> None:
        self.ground, self.rays, self.tasks, self.known = ground, rays, tasks, []

    def taken_apart(self, rim: Sequence[int]) -> list[Run]:
        """The runs around what is left of a face once all that can be is cut off; [] if nothing is.
        """
        runs = self._runs(rim)
        place = 0
        while len(runs) > 2 and place < len(runs):
            before, run, after = runs[place - 1], runs[place], runs[(place + 1) % len(runs)]
            if before[0] != after[0]:
                place += 1
                continue
            self._cut_off(run)
            runs[place - 1] = (before[0], before[1] + after[1])
            for gone in sorted((place, (place + 1) % len(runs)), reverse=True):
                del runs[gone]
            place = 0
        if len(runs) > 2:
            return runs if self._wide(runs) else []
        if len(runs) == 2:
            self._cut_off(runs[0])
        return []

    def _runs(self, rim: Sequence[int]) -> list[Run]:
        rays = self.rays
        rows = np.array(rim, dtype=np.intp)
        ended = rays.event[rows, rays.count[rows] - 1] == -1
        keys = [(one.tobytes(), end) for one, end in zip(rays.sets[rows], ended, strict=True)]
        both = groupby(zip(keys, rim, strict=True), key=lambda pair: pair[0])
        runs: list[Run] = [(key, [ray for _, ray in run]) for key, run in both]
        if len(runs) > 1 and runs[0][0] == runs[-1][0]:
            last = runs.pop()
            runs[0] = (last[0], last[1] + runs[0][1])
        return runs

    def _cut_off(self, run: Run) -> None:
        if run[1][0] != run[1][-1]:
            self.known.append((run[1][0], run[1][-1]))

    def _wide(self, runs: Sequence[Run]) -> bool:
        rows = np.array([ray for _, run in runs for ray in run], dtype=np.intp)
        flat = _flat(self.rays, rows, self.tasks[int(self.rays.task[rows[0]])].places)
        across = np.linalg.svd(flat - flat.mean(axis=0), compute_uv=False)[1]
        return bool(across > NARROW_FACE_FT)

    def halves(self, faces: Sequence[Sequence[Run]], level: int) -> list[list[int]]:
        """The rims of what two further lines, on either side of an edge, leave of each face."""
        cuts = [cut for runs in faces for cut in self._cuts(runs, level)]
        pairs = np.array([pair for _, *ends in cuts for pair, _ in ends], dtype=np.intp)
        parts = np.array([part for _, *ends in cuts for _, part in ends])
        line = int(self.rays.line.max()) + 1 + np.arange(len(cuts))
        first = added(self.ground, self.rays, pairs, parts, line=np.repeat(line, 2))
        ends = first + np.arange(2 * len(cuts)).reshape(-1, 2)
        self.known += map(tuple, settled(self.ground, self.rays, ends, NARROW_FT).tolist())
        rims = []
        for (rim, *_), number in zip(cuts, line, strict=True):
            on = np.flatnonzero(self.rays.line == number)
            away = np.abs(self.rays.front[on] - self.rays.front[on[0]])
            away += np.abs(self.rays.spacing[on] - self.rays.spacing[on[0]]).sum(axis=1)
            rims.append(rim + on[np.argsort(away, kind="stable")].tolist())
        return rims

    def _cuts(self, runs: Sequence[Run], level: int) -> list[Cut]:
        """The two parts of a rim that lies on either side of an edge, and where the line that cuts
        each off begins and ends: between two rays, and how far from one to the other.

        Of the edges that begin at the rim it is the one that is met at the least multiple; at a
        later level, where that one did not help, the next.
        """
        rim = [ray for _, run in runs for ray in run]
        last = np.cumsum([len(run) for _, run in runs]) - 1
        corners = np.array([(rim[i], rim[(i + 1) % len(rim)]) for i in last], dtype=np.intp)
        step, _ = parted(self.rays, corners)
        by_multiple = self.rays.multiple[corners[:, 0], step + 1].argsort(kind="stable")
        corner = int(by_multiple[level % len(corners)])
        rim = rim[last[corner] + 1 :] + rim[: last[corner] + 1]
        rows = np.array(rim, dtype=np.intp)
        flat = _flat(self.rays, rows, self.tasks[int(self.rays.task[rim[0]])].places)
        along = self._along(corners[corner], rows, flat)
        # Seen from the edge: the rim in one way around ends beside it, in the other too.
        return [_cut(rim, flat, along), _cut(rim[::-1], flat[::-1], along)]

    def _along(self, corner: Ints, rim: Ints, flat: Floats) -> Floats:
        """(2,) the way of the edge at which the orders of two rays part."""
        refs = _apart(flat)
        lines = partings(self.ground, self.rays, corner[None], rim[None, refs])
        first, second = (line[:, 0] for line in lines)
        height = second[0] * first[1:] - first[0] * second[1:]
        slope = np.linalg.lstsq(flat[refs[1:]] - flat[refs[0]], height[1:] - height[0])[0]
        size = float(np.hypot(*slope))
        if not size > 0.0:
            middle: Floats = flat[len(flat) // 2] - flat[-1]
            return middle
        way: Floats = np.array([-slope[1], slope[0]]) / size
        return way


def _cut(rim: list[int], flat: Floats, along: Floats) -> Cut:
    """The part of a rim, from where a line leaves the face to where it begins beside its last ray.
    """
    back = flat[-2] - flat[-1]
    begin = min(0.5, BESIDE_FT / max(float(np.hypot(*back)), 1e-300))
    side = (flat - flat[-1] - begin * back) @ np.array([-along[1], along[0]])
    side *= 1.0 if side[-1] >= 0.0 else -1.0
    crossed = np.flatnonzero((side[:-2] >= 0.0) & (side[1:-1] < 0.0))
    out = int(crossed[0]) + 1 if len(crossed) else len(rim) // 2
    before, after = side[out - 1], side[out]
    part = before / (before - after) if before >= 0.0 > after else 0.5
    return rim[out:-1], ([rim[-1], rim[-2]], begin), ([rim[out - 1], rim[out]], float(part))


def _apart(flat: Floats) -> list[int]:
    """Three points (r, 2) far from each other and from one line."""
    first = flat - flat[0]
    second = int((first**2).sum(axis=1).argmax())
    across = np.abs(first[:, 0] * first[second, 1] - first[:, 1] * first[second, 0])
    return [0, second, int(across.argmax())]
