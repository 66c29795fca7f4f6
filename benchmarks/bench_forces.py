"""Forces of moving loads against dense solves, CalculiX, and trusses of more panels."""

import tempfile
import time
from collections.abc import Iterator, Sequence
from functools import partial
from importlib.resources import as_file
from pathlib import Path

import numpy as np
import pytest

from benchmarks.timing import least
from eyebar.analysis.influence import InfluenceLines, unit_forces
from eyebar.analysis.loaded import LoadedTruss
from eyebar.analysis.model import Floats
from eyebar.analysis.paths import SlackSets
from eyebar.demo import SHOWN, bridge_records
from eyebar.documents.opened import opened
from eyebar.rating.kept import loaded_states
from eyebar.rating.live import LiveForces, dead_load_forces, live_forces
from eyebar.terms import Direction
from eyebar.vehicles import Vehicle, shipped_vehicles
from tests.analysis import calculix
from tests.analysis.solving import loaded
from tests.analysis.trusses import Drawing, dead_load, double_intersection, pratt
from tests.groups import GROUPS

STEP_FT = 0.1
UNDERCUT_KIP = 1e-6
"""Dense solves leave a slack bar a billionth of its stiffness; more than that is no rounding."""
SLACK = 1e-9


def demo() -> LoadedTruss:
    """A truss of the double-intersection demo under its dead load."""
    with as_file(bridge_records()[SHOWN]) as record:
        bridge = opened(record).bridge
    states, _ = loaded_states(bridge, bridge.trusses[0])
    return next(iter(states.values()))


def fresh(truss: LoadedTruss, loads: Floats) -> Floats:
    """(n,) bar forces by a stiffness matrix put together anew, slack bars by trial."""
    model = truss.model
    working = np.ones(len(model.bars), dtype=bool)
    for _ in range(40):
        stiff = np.where(working, 1.0, SLACK) * model.stiffness
        matrix = (model.equilibrium * stiff) @ model.equilibrium.T
        stretch = model.equilibrium.T @ np.linalg.solve(matrix, loads)
        again = np.array([bar.can_push for bar in model.bars]) | (stretch > 0.0)
        if (again == working).all():
            break
        working = again
    forces: Floats = stiff * stretch
    return forces


def crossings(vehicle: Vehicle, span_ft: float) -> Iterator[tuple[Floats, Floats]]:
    """Axle positions (r, a) every tenth of a foot, a train each way; a varied spacing at three."""
    axles = np.array(vehicle.axles_kip)
    ends = (np.array(vehicle.least_spacings_ft), np.array(vehicle.greatest_spacings_ft))
    for part in (0.0, 0.5, 1.0) if vehicle.varied else (0.0,):
        behind = np.concatenate([[0.0], np.cumsum((1.0 - part) * ends[0] + part * ends[1])])
        front = np.arange(0.0, span_ft + behind[-1], STEP_FT)[:, None]
        yield front - behind, axles
        yield span_ft - front + behind, axles


def hung(positions: Floats, axles: Floats, stations: Floats) -> Floats:
    """(p,) loads on floor joints of axles at positions, each a weight on a simple stringer."""
    loads = np.zeros(len(stations))
    for at, kip in zip(positions, axles, strict=True):
        if stations[0] <= at <= stations[-1]:
            i = min(int(np.searchsorted(stations, at, "right")) - 1, len(stations) - 2)
            far = (at - stations[i]) / (stations[i + 1] - stations[i])
            loads[i] += kip * (1.0 - far)
            loads[i + 1] += kip * far
    return loads


def test_all_vehicles_both_ways_all_bars_against_a_fresh_solve_every_tenth_of_a_foot() -> None:
    truss = demo()
    vehicles = shipped_vehicles()
    share = dict.fromkeys(vehicles, 1.0)
    ours = least(lambda: live_forces(truss, vehicles, share))
    found = live_forces(truss, vehicles, share)
    dead = np.array(list(dead_load_forces(truss).values()))
    stations = truss.lines.stations_ft
    rows = [truss.model.directions.get((joint, 1)) for joint in truss.floor_joints]
    # The dead load as joint loads again, from the forces that balance it.
    still = truss.model.equilibrium @ (truss.dc + truss.dw)
    begin, solves, worst = time.perf_counter(), 0, 0.0
    for name, vehicle in vehicles.items():
        greatest, lowest = np.zeros(len(dead)), np.zeros(len(dead))
        for positions, axles in crossings(vehicle, float(stations[-1])):
            for place in positions:
                loads = still.copy()
                for row, kip in zip(rows, hung(place, axles, stations), strict=True):
                    if row is not None:
                        loads[row] -= kip
                live = fresh(truss, loads) - dead
                np.maximum(greatest, live, out=greatest)
                np.minimum(lowest, live, out=lowest)
                solves += 1
        worst = max(worst, undercut(found[name], lowest, greatest))
    dense = time.perf_counter() - begin
    print(
        f"\n{len(vehicles)} vehicles both ways, {len(dead)} bars: {1e3 * ours:.1f} ms; "
        f"{solves} dense solves {dense:.1f} s: {dense / ours:.0f} times; "
        f"dense over ours by at most {worst:.1e} kip"
    )
    assert worst < UNDERCUT_KIP
    assert dense / ours >= 100.0


def undercut(found: LiveForces, lowest: Floats, greatest: Floats) -> float:
    """By how much plain stepping found more than the sweep [kip]."""
    return float(max((greatest - found.greatest).max(), (found.least - lowest).max()))


@pytest.mark.skipif(
    not next(group for group in GROUPS if group.marker == "calculix").found(),
    reason="CalculiX is missing",
)
def test_influence_lines_against_calculix() -> None:
    drawing = double_intersection(slender=False)
    cases = [{joint: 1.0} for joint in drawing.floor_joints[1:-1]]

    def ours() -> Floats:
        model = drawing.model()
        units = unit_forces(model, drawing.floor_joints)
        sets = SlackSets(model)
        return InfluenceLines(sets, drawing.stations_ft, units).ordinates(sets.number(0))

    with tempfile.TemporaryDirectory() as folder:
        quick, slow = least(ours), least(lambda: calculix.forces(drawing, cases, Path(folder)), 3)
        theirs = calculix.forces(drawing, cases, Path(folder))
    by_calculix = np.array([[case[name] for name in drawing.names] for case in theirs])
    print(
        f"\ninfluence lines of {len(drawing.bars)} bars: {1e3 * quick:.2f} ms; CalculiX, all unit "
        f"loads in one run, {1e3 * slow:.0f} ms: {slow / quick:.0f} times"
    )
    assert np.abs(ours()[1:-1] - by_calculix).max() < 1e-5
    assert slow / quick >= 100.0


def crossed(drawing: Drawing, trains: Sequence[Vehicle]) -> None:
    """A truss made, and every train sent over it both ways."""
    truss = loaded(drawing, dead_load(drawing, floor_kip=6.0, roof_kip=1.0))
    for train in trains:
        for way in Direction:
            truss.sweep(train.axles_kip, train.spacings_ft, way, 2.0)


def test_time_from_ten_to_eighty_panels() -> None:
    vehicles = shipped_vehicles()
    trains = [vehicles[name] for name in ("HS20", "Type 3S2", "SU7")]
    took = {}
    for panels in (10, 20, 40, 80):
        run = partial(crossed, pratt(panels), trains)
        took[panels] = least(run, 3)
    power = np.log(took[80] / took[10]) / np.log(8.0)
    shown = ", ".join(f"{panels}: {1e3 * took[panels]:.0f} ms" for panels in took)
    print(f"\npanels {shown}; from 10 to 80 as the power {power:.2f}")
    assert power <= 2.0
