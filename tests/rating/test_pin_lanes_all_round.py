"""Lane loads on pins against the worst of all that a lane load can be, while no bar goes slack.

The other road (pin_patterns.py): the pin's resultants looked at from every side, the lane standing
in each wherever it does harm, whole panels or parts of them. What it finds is a load that is there,
and what it bounds none can pass. Condition: every bar can push, so that forces are straight in the
loads. Three packings were drawn once by lot; on the second bridge shear of its hip pin counts
beside bending, and neither the worst for the one nor for the other is the worst for both. Others
are drawn anew from seeds, with trusses, dead loads and lane loads of their own; two hundred in
`make soak`.
"""

import os
from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import pytest

from eyebar.bridge.parts import Packed, Pin, Truss
from eyebar.rating import PartRating
from eyebar.terms import Level, Method
from eyebar.vehicles import Vehicle, shipped_vehicles
from tests.rating import bridges
from tests.rating.pin_patterns import (
    Floats,
    Frame,
    Lane,
    Resting,
    Worst,
    train_loads,
    worst_joint,
    worst_single,
)

YIELD_KSI = 26.0
STRESSES = {Level.INVENTORY: (0.80, 0.40, 0.80), Level.OPERATING: (1.10, 0.55, 1.10)}
"""Bending, shear, bearing over yield: docs/pins.md, after Manual for Bridge Evaluation 6B.5.2.1."""
SINGLE = 0.85
"""System factor of a single bar; the bridge is in good order."""
TOGETHER = 0.95
DEAD = {Method.ALLOWABLE_STRESS: (1.0,), Method.LOAD_AND_RESISTANCE: (1.25, 0.90)}
DRAWN = range(200) if os.environ.get("EYEBAR_LAWS") == "soak" else (1, 3, 4, 8)
"""Seeds of packings that are drawn by lot; else short ones, of which one needs every climb."""

LOWER = Resting("L2", 3.0, (
    ("L1-L2", 1.0), ("L2-L3", 1.0), ("U1-L2", 0.75), ("U2-L2", 1.5), ("", 0.5),
), 0.0625)
MIDDLE = Resting("L3", 3.5, (
    ("L3-L4", 0.75), ("U2-L3", 0.5), ("", 0.5), ("U4-L3", 0.75), ("U3-L3", 0.5), ("L2-L3", 1.0),
), 0.0625)
HIP = Resting("U1", 4.0, (
    ("U1-U2", 1.0), ("U1-L2", 0.75), ("U1-L1", 0.5), ("U1-L0", 1.5),
), 0.0625)


def pin_of(truss: Truss, frame: Frame, rest: Resting) -> Pin:
    return Pin(
        address=f"{truss.name}/{rest.joint}/pin", joint=rest.joint, diameter=rest.diameter,
        material=bridges.IRON, whole=0.5, proposed=False,
        toward={bar: frame.toward(rest.joint, bar) for bar in frame.bars
                if rest.joint in bar.split("-")},
        packing=tuple(
            Packed(
                bars=(name,) if name else (), hung=not name, along=at, thickness=thick, share=0.5,
                yield_stress=YIELD_KSI,
            )
            for (name, thick), at in zip(rest.bearings, rest.middles(), strict=True)
        ),
    )


def frame_of(truss: Truss) -> Frame:
    return Frame(
        {joint: (x / 12.0, y / 12.0) for joint, (x, y) in truss.joints.items()},
        tuple(one.name for one in truss.bars), truss.floor_joints,
    )


def worst(
    rest: Resting, frame: Frame, one: PartRating, lane: Lane, dead: Floats
) -> list[Worst]:
    """The worst of every check of a pin under factored dead forces (b,)."""
    lines, d = frame.lines(), rest.diameter
    moments, shears, loads = rest.rows(frame)
    if one.method is Method.ALLOWABLE_STRESS:
        bend, cut, bear = STRESSES[one.level]
        rows = [
            *(m * 32.0 / (np.pi * d**3) / (bend * YIELD_KSI) for m in moments),
            *(v * 4.0 / (np.pi * d**2) / (cut * YIELD_KSI) for v in shears),
            *(r / (d * thick * bear * YIELD_KSI)
              for r, (_, thick) in zip(loads, rest.bearings, strict=True)),
        ]
        return [worst_single(row, dead, lines, lane) for row in rows]
    moments = 6.0 * moments / (SINGLE * d**3 * YIELD_KSI)
    shears = 2.2 * shears / (SINGLE * d**2 * YIELD_KSI)
    found = []
    beside = [*zip(moments, shears, strict=True), *zip(moments[1:], shears, strict=False)]
    for m, v in beside:
        both = worst_joint(m, v, dead, lines, lane)
        found.append(Worst(value=both.value / TOGETHER, bound=both.bound / TOGETHER))
    return found + [
        worst_single(r / (SINGLE * 1.5 * thick * d * YIELD_KSI), dead, lines, lane)
        for r, (_, thick) in zip(loads, rest.bearings, strict=True)
    ]


@pytest.mark.parametrize(("panels", "panel_ft", "depth_ft", "dead_kip", "rests"), [
    (6, 15.0, 20.0, 6.0, (LOWER,)),
    (8, 15.0, 16.0, 2.0, (HIP,)),
    (6, 12.0, 16.0, 4.0, (MIDDLE,)),
])
def test_no_lane_load_at_all_brings_a_pin_to_its_limit_before_its_factor(
    panels: int, panel_ft: float, depth_ft: float, dead_kip: float, rests: tuple[Resting, ...]
) -> None:
    vehicles = [shipped_vehicles()[name] for name in ("H15", "design tandem")]
    truss = bridges.pratt(panels, panel_ft=panel_ft, depth_ft=depth_ft)
    assert reached(truss, dead_kip, rests, vehicles) >= len(rests)


@pytest.mark.parametrize("seed", DRAWN)
def test_no_lane_load_at_all_is_worse_for_a_packing_drawn_by_lot(seed: int) -> None:
    random = np.random.default_rng(1900 + seed)
    panels = int(random.choice([4, 6, 8, 10]))
    truss = bridges.pratt(
        panels, panel_ft=float(random.uniform(11.0, 20.0)),
        depth_ft=float(random.uniform(14.0, 28.0)),
    )
    joints = [f"{chord}{i}" for chord in "LU" for i in range(1, panels)]
    rests = [drawn(random, truss, joints[i]) for i in random.permutation(len(joints))[:2].tolist()]
    dead = float(random.uniform(0.5, 5.0))
    assert reached(truss, dead, rests, loads_drawn(random)) >= 1


def drawn(random: np.random.Generator, truss: Truss, joint: str) -> Resting:
    """A packing of half a pin: its bars, and at a floor joint what hangs there, in any order."""
    names = [one.name for one in truss.bars if joint in one.name.split("-")]
    names += [""] if joint.startswith("L") else []
    thick = (random.integers(4, 13, len(names)) / 8.0).tolist()
    order = random.permutation(len(names)).tolist()
    return Resting(
        joint, float(random.integers(22, 41)) / 8.0, tuple((names[i], thick[i]) for i in order),
        float(random.integers(0, 5)) / 16.0,
    )


def loads_drawn(random: np.random.Generator) -> list[Vehicle]:
    """A lane load that stands for axles with any single weight, and one beside two or three axles:
    a tandem, or a truck."""
    known = shipped_vehicles()
    alone = replace(
        known[str(random.choice(["H15", "HS20"]))], name="alone",
        lane_kip_per_ft=float(random.uniform(0.2, 1.2)),
        lane_point_kip=(0.0, float(random.uniform(0.0, 40.0))),
    )
    beside = replace(
        known["design truck"], name="beside", lane_kip_per_ft=float(random.uniform(0.2, 1.2)),
        axles_kip=(8.0, 32.0, 32.0), spacings_ft=(14.0, float(random.uniform(14.0, 30.0))),
    )
    if random.random() < 0.5:
        apart = float(random.uniform(3.0, 12.0))
        beside = replace(beside, axles_kip=(25.0, 25.0), spacings_ft=(apart,))
    return [alone, beside]


def reached(
    truss: Truss, dead_kip: float, rests: Sequence[Resting], vehicles: Sequence[Vehicle]
) -> int:
    """How many ratings of pins a lane load brings to their limit at their factor, when no load
    that it can be brings any over it."""
    frame = frame_of(truss)
    truss = replace(truss, pins=tuple(pin_of(truss, frame, rest) for rest in rests))
    found = bridges.rated(bridges.bridge(truss, kip_a_panel=dead_kip), *vehicles)
    stations = np.array([station for _, station in frame.floor])
    down = np.pad(np.full(len(stations) - 2, dead_kip), 1)
    count = 0
    for rest in rests:
        for one in bridges.part(found, f"near/{rest.joint}/pin").ratings:
            if one.method is Method.LOAD_FACTOR or one.level is Level.OPERATING:
                continue
            assert one.factor is not None
            if one.factor == 0.0:
                continue  # dead load alone is too much
            vehicle = next(other for other in vehicles if other.name == one.vehicle)
            grown = one.factor * one.live_factor * (1.0 + one.impact) * one.share
            summed = one.method is Method.LOAD_AND_RESISTANCE  # the lane load without impact
            axles = list(zip(vehicle.axles_kip, vehicle.behind_front_ft(), strict=True))
            lane = Lane(
                stations,
                vehicle.lane_kip_per_ft * grown / (1.0 + one.impact if summed else 1.0),
                max(vehicle.lane_point_kip or (0.0,)) * grown,
                train_loads(axles, stations) * grown if summed else None,
            )
            checks = [
                check for factor in DEAD[one.method]
                for check in worst(rest, frame, one, lane, frame.lines() @ (factor * down))
            ]
            value, bound = (max(getattr(check, what) for check in checks)
                            for what in ("value", "bound"))
            assert value <= 1.0 + 1e-6, str((rest.joint, one.vehicle))
            if one.method is Method.ALLOWABLE_STRESS:
                assert bound <= 1.0 + 3e-5  # proven: 1 / cos(1/4 degree) is 1 + 1e-5
            if summed or one.check.startswith("lane load"):
                assert value == pytest.approx(1.0, abs=1e-6)  # and no factor is less than it must
                count += 1
    return count


def test_the_farthest_of_patterns_is_found_from_all_sides() -> None:
    # By hand: a line that pulls across and one that pulls up, triangles 1 high on 20 ft each, so
    # 10 ft under each, at 0.5 kip/ft: 5 kip both ways.
    stations = np.array([0.0, 10.0, 20.0, 30.0, 40.0])
    lines = np.array([[0.0, 1.0, 0.0, 0.0, 0.0], [0.0, 0.0, 0.0, 1.0, 0.0]])
    lane = Lane(stations, 0.5, 0.0)
    both = worst_single(np.eye(2), np.zeros(2), lines, lane)
    assert both.value == pytest.approx(np.hypot(5.0, 5.0), rel=1e-9)
    assert both.value <= both.bound <= both.value * 1.0001
