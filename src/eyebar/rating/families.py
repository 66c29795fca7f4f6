"""Loads of one shape, swept once for all vehicles that have it.

H15 is three quarters of H20 axle by axle, HS20 and the design truck are the same train: forces of
one follow from the other's by a scale, whatever bars go slack. A family is such a shape: a train, a
lane load, or the sum of both.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from eyebar.analysis.loaded import LoadedTruss
from eyebar.analysis.model import Floats
from eyebar.analysis.passage import Passages, joined, passages
from eyebar.analysis.places import Places, places
from eyebar.analysis.rays import Task
from eyebar.analysis.sweep import Sweep, sweeps
from eyebar.analysis.uniform import Lane, LaneWish, lane_tasks
from eyebar.terms import CHORD_KINDS, Combine, Direction
from eyebar.vehicles import Vehicle
from eyebar.vehicles.vehicle import Spacing

CAP = 1e3
"""Multiples beyond this are not looked for: such a load does nothing to the part."""

LANE_PREFIX = "lane load: "

Key = tuple[tuple[object, ...], tuple[float, float]]
"""A shape of load and a pair of dead-load factors."""


@dataclass(frozen=True, slots=True)
class Family:
    """One shape of load: axles [kip] and spacings [ft] of a train, a lane load in kip/ft with its
    single weights for moment and shear [kip]; empty or 0 where there is none."""

    axles_kip: tuple[float, ...]
    spacings_ft: tuple[Spacing, ...]
    lane_kip_per_ft: float
    lane_point_kip: tuple[float, float]

    def shape(self) -> tuple[object, ...]:
        """What is the same for all loads of one shape."""
        size = self.size
        return (
            tuple(round(axle / size, 9) for axle in self.axles_kip),
            self.spacings_ft,
            round(self.lane_kip_per_ft / size, 9),
            tuple(round(point / size, 9) for point in self.lane_point_kip),
        )

    @property
    def size(self) -> float:
        """What a scale is measured by: the first axle, or the lane's weight [kip or kip/ft]."""
        return self.axles_kip[0] if self.axles_kip else self.lane_kip_per_ft


def families_of(vehicle: Vehicle, axle_impact: float) -> tuple[Family, ...]:
    """The loads of a vehicle: its train, its lane load beside it, or the sum of both.

    In a sum the lane load has no impact: it is divided here by 1 + `axle_impact` [1], by which the
    factor multiplies all of it later.
    """
    lane, point = vehicle.lane_kip_per_ft, vehicle.lane_point_kip or (0.0, 0.0)
    train = (vehicle.axles_kip, vehicle.spacings_ft)
    if vehicle.combine is Combine.SUM:
        over = 1.0 + axle_impact
        return (Family(*train, lane / over, (point[0] / over, point[1] / over)),)
    if vehicle.combine is Combine.AREA:
        return (Family((), (), lane, point),)
    alone = Family(*train, 0.0, (0.0, 0.0))
    if vehicle.combine is Combine.GREATER:
        return (alone, Family((), (), lane, point))
    return (alone,)


@dataclass(frozen=True, slots=True, kw_only=True)
class Swept:
    """One sweep of a `family` on one truss: `bars` (n,) those it is meant for, what its checks are
    called, and whether its places are places of a train."""

    loaded: LoadedTruss
    sweep: Sweep
    dead: tuple[float, float]
    family: Family
    bars: NDArray[np.bool_]
    prefix: str
    placed: bool


@dataclass(slots=True)
class Sweeps:
    """All sweeps of one truss in one state, by shape and dead-load factors."""

    loaded: LoadedTruss
    reference: dict[tuple[object, ...], Family] = field(default_factory=dict)
    found: dict[Key, list[Swept]] = field(default_factory=dict)
    passed: dict[tuple[object, ...], list[tuple[Floats, list[Passages]]]] = field(
        default_factory=dict
    )

    def passages(
        self, swept: Swept, limits: Floats, sense: int, about: tuple[str, str]
    ) -> Passages:
        """First passages of limits (n,) in one sense on one sweep.

        All sweeps of its bundle are looked up at once; what is known of equal limits serves again.
        `about` (method, level) says which limits are likely to be alike.
        """
        bundle = swept.sweep.bundle
        before = self.passed.setdefault((id(bundle), *about, sense), [])
        for known, found in before:
            if known is limits:
                return found[swept.sweep.place]
        if not before:
            found = passages(bundle, limits, sense)
        else:
            known, first = before[0]
            new = np.flatnonzero(known != limits)
            fresh = passages(bundle, limits, sense, new) if len(new) else first
            found = [joined(a, b, new) for a, b in zip(first, fresh, strict=True)]
        before.append((limits, found))
        return found[swept.sweep.place]

    def scale(self, family: Family) -> float:
        """The family's size over that of its shape's reference [1]."""
        return family.size / self.reference[family.shape()].size

    def of(self, family: Family, dead: tuple[float, float]) -> list[Swept]:
        """The sweeps of a family's shape under one pair of dead-load factors."""
        return self.found[family.shape(), dead]

    def add(self, wanted: Iterable[tuple[Family, tuple[float, float]]]) -> None:
        """Sweep what is wanted and not yet there, all together."""
        tasks: list[Task] = []
        about: list[tuple[Key, NDArray[np.bool_], str]] = []
        lanes: list[tuple[LaneWish, NDArray[np.bool_], str, Key]] = []
        for family, dead in wanted:
            shape = family.shape()
            self.reference.setdefault(shape, family)
            key = (shape, dead)
            if key in self.found:
                continue
            self.found[key] = []
            if family.lane_kip_per_ft:
                wishes = _wishes(self.loaded, self.reference[shape], dead)
                lanes += [(*wish, key) for wish in wishes]
            else:
                everything = np.ones(len(self.loaded.model.bars), dtype=bool)
                for task in _train_tasks(self.loaded, self.reference[shape], dead):
                    tasks.append(task)
                    about.append((key, everything, ""))
        made = lane_tasks(self.loaded.lines, [wish for wish, _, _, _ in lanes], CAP)
        for lane, (_, bars, prefix, key) in zip(made, lanes, strict=True):
            if lane is not None:
                tasks.append(lane)
                about.append((key, bars, prefix))
        if tasks:
            self._sweep(tasks, about)

    def _sweep(
        self, tasks: list[Task], about: list[tuple[Key, NDArray[np.bool_], str]]
    ) -> None:
        """Sweep tasks, those of one dead load beside each other."""
        order = sorted(range(len(tasks)), key=lambda i: about[i][0][1])
        done = sweeps(self.loaded.sets, [tasks[i] for i in order], CAP)
        for sweep, i in zip(done, order, strict=True):
            key, bars, prefix = about[i]
            self.found[key].append(
                Swept(
                    loaded=self.loaded, sweep=sweep, dead=key[1], family=self.reference[key[0]],
                    bars=bars, prefix=prefix, placed=not prefix,
                )
            )


def trains_of(loaded: LoadedTruss, family: Family) -> list[Places]:
    """The places of a family's train in both directions; none where it has no axles."""
    return [
        places(family.axles_kip, family.spacings_ft, loaded.lines.stations_ft, way)
        for way in Direction
        if family.axles_kip
    ]


def _train_tasks(loaded: LoadedTruss, family: Family, dead: tuple[float, float]) -> list[Task]:
    fixed, start = loaded.dead(*dead), loaded.start(*dead)
    return [
        Task(places=train, fixed=fixed, start=start, growing=train.loads @ loaded.lines.units)
        for train in trains_of(loaded, family)
    ]


def _wishes(
    loaded: LoadedTruss, family: Family, dead: tuple[float, float]
) -> list[tuple[LaneWish, NDArray[np.bool_], str]]:
    """Lane loads to be found, each with the bars (n,) that they are meant for: chords have the
    moment's single weight, all others the shear's."""
    everything = np.ones(len(loaded.model.bars), dtype=bool)
    chords = np.array([bar.kind in CHORD_KINDS for bar in loaded.truss.bars])
    moment, shear = family.lane_point_kip
    groups = [(everything, moment)] if moment == shear else [(chords, moment), (~chords, shear)]
    trains: list[Places | None] = [*trains_of(loaded, family)] or [None]
    return [
        (
            LaneWish(
                bars=np.flatnonzero(bars), chords=chords,
                lane=Lane(kip_per_ft=family.lane_kip_per_ft, point_kip=point),
                fixed=loaded.dead(*dead), start=loaded.start(*dead), train=train,
            ),
            bars,
            LANE_PREFIX if train is None else "",
        )
        for train in trains
        for bars, point in groups
    ]
