"""The invented bridges: complete, believable, and with counters enough."""

from collections.abc import Iterator
from datetime import date
from functools import cache
from itertools import pairwise, product

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.optimize import linprog

from eyebar.bridge.parts import Bar, Bridge, Truss
from eyebar.bridge.state import bridge_on
from eyebar.demo import SHOWN, bridge_records
from eyebar.office import office_values
from eyebar.record import Record, record_of
from eyebar.record.checking import not_measured
from eyebar.sections.properties import area, properties, rod_area
from eyebar.sections.shapes import Eyebars, Rods, Thread
from eyebar.terms import Form, Kind
from eyebar.vehicles import Vehicle, shipped_vehicles

NAMES = sorted(bridge_records())
TODAY = date(2026, 11, 1)


@cache
def record(name: str) -> Record:
    return record_of(bridge_records()[name].read_bytes(), file=f"{name}.yaml", today=TODAY)


@cache
def bridge(name: str) -> Bridge:
    return bridge_on(record(name), None, office_values())


def bars(name: str) -> Iterator[Bar]:
    for truss in bridge(name).trusses:
        yield from truss.bars


def test_there_are_three_and_the_one_that_is_shown_is_among_them() -> None:
    assert len(NAMES) == 3
    assert SHOWN in NAMES


@pytest.mark.parametrize("name", NAMES)
def test_it_says_that_it_is_invented(name: str) -> None:
    one = record(name)
    assert all("(invented)" in text for text in (one.name, one.owner, one.place))
    assert "is invented" in one.text.splitlines()[1]


@pytest.mark.parametrize("name", NAMES)
def test_it_is_complete_to_the_last_eyebar(name: str) -> None:
    assert not_measured(record(name)) == ()
    assert [bar.address for bar in bars(name) if bar.not_rated] == []
    assert bridge(name).unknown_loads == ()
    assert all(properties(bar.left).area > 0 for bar in bars(name))


@pytest.mark.parametrize("name", NAMES)
def test_every_joint_has_a_pin_and_only_two_packings_were_not_measured(name: str) -> None:
    # Common practice: a pin of 7/8 of the widest bar on it or more, a thirty-second under the hole.
    for truss in bridge(name).trusses:
        pins = {pin.joint: pin for pin in truss.pins}
        assert set(pins) == set(truss.joints)
        assert [j for j, pin in pins.items() if pin.proposed] == (
            ["U2"] if name == "wrenmallow" else []
        )
        for bar in truss.bars:
            if isinstance(bar.as_built, Eyebars):
                for one in bar.as_built.bars:
                    for end in bar.ends:
                        built = record(name).pins[f"pin at {end}"].diameter.number
                        assert one.hole - built == 1 / 32
                        assert built >= 7 / 8 * one.width


@pytest.mark.parametrize("name", NAMES)
def test_it_was_inspected_twice_and_grew_no_better(name: str) -> None:
    one = record(name)
    first, second = sorted(one.inspections, key=lambda inspection: inspection.date)
    assert first.readings
    assert second.readings
    before = {bar.address: bar for truss in bridge_on(one, first.date, office_values()).trusses
              for bar in truss.bars}
    assert all(area(bar.left) <= area(before[bar.address].left) for bar in bars(name))


@pytest.mark.parametrize("name", NAMES)
def test_nothing_recorded_is_left_to_be_assumed(name: str) -> None:
    # Lateral points, splices and pin offsets are all there: no rule had to stand in for one.
    assert not [rule for rule in bridge(name).rules if "not recorded" in rule]


@pytest.mark.parametrize("name", NAMES)
def test_eyebar_heads_as_built_are_stronger_than_their_bodies(name: str) -> None:
    # Common practice: net width across the hole 135 % of the body, metal beyond it 75 %, holes a
    # thirty-second wider than the pin, which is 7/8 of the bar's width or more.
    for bar in bars(name):
        if isinstance(bar.as_built, Eyebars):
            for one in bar.as_built.bars:
                assert one.head is not None
                assert one.hole is not None
                assert one.width is not None
                assert one.head - one.hole >= 1.35 * one.width
                assert (one.head - one.hole) / 2 >= 0.75 * one.width
                assert one.hole - 1 / 32 >= 7 / 8 * one.width


@pytest.mark.parametrize("name", NAMES)
def test_upset_threads_and_turnbuckles_are_stronger_than_their_rods(name: str) -> None:
    # Period practice: the root of an upset thread is greater than the body.
    for bar in bars(name):
        if isinstance(bar.as_built, Rods):
            for rod in bar.as_built.rods:
                if rod.threads is Thread.UPSET:
                    assert rod.root_diameter is not None
                    assert rod.size is not None
                    assert rod.root_diameter > rod.size
                if rod.turnbuckle:
                    assert rod.turnbuckle_area is not None
                    assert rod.turnbuckle_area > rod_area(rod)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize(
    "vehicle", sorted(name for name, one in shipped_vehicles().items() if one.axles_kip)
)
def test_every_vehicle_finds_equilibrium_at_every_place(name: str, vehicle: str) -> None:
    # Other method: a linear programme asks whether any forces balance dead load and the vehicle
    # with no bar pushing that cannot. Loads that balance are a convex set, and between two places
    # where an axle stands over a panel point the loads go straight: the places are enough.
    for truss in bridge(name).trusses:
        equilibrium, rows = _equilibrium(truss)
        bounds = [(None if bar.can_push else 0.0, None) for bar in truss.bars]
        dead = _dead(bridge(name), truss, rows)
        for live in _places(truss, shipped_vehicles()[vehicle], rows):
            found = linprog(
                np.zeros(len(truss.bars)), A_eq=equilibrium, b_eq=dead + live, bounds=bounds
            )
            assert found.status == 0, (truss.name, live)


Rows = dict[tuple[str, int], int]


def _equilibrium(truss: Truss) -> tuple[NDArray[np.float64], Rows]:
    free = [
        (joint, axis) for joint in truss.joints for axis in (0, 1)
        if not truss.supports.get(joint, (False, False))[axis]
    ]
    rows = {one: row for row, one in enumerate(free)}
    matrix = np.zeros((len(rows), len(truss.bars)))
    for column, bar in enumerate(truss.bars):
        first, second = (np.array(truss.joints[joint]) for joint in bar.ends)
        along = (second - first) / np.linalg.norm(second - first)
        for joint, sense in zip(bar.ends, (1.0, -1.0), strict=True):
            for axis in (0, 1):
                if (joint, axis) in rows:
                    matrix[rows[joint, axis], column] += sense * along[axis]
    return matrix, rows


def _dead(found: Bridge, truss: Truss, rows: Rows) -> NDArray[np.float64]:
    """Weights hung on the joints, reckoned apart from the package's own loads."""
    hung = dict.fromkeys(truss.joints, 0.0)
    for bar in truss.bars:
        for joint in bar.ends:
            hung[joint] += area(bar.as_built) * bar.length * bar.material.density / 2000.0
    for weight in found.weights[truss.name]:
        for joint, kip in weight.kip_at_joints.items():
            hung[joint] += kip
        for (first, here), (second, there) in pairwise(truss.floor_joints):
            for joint in (first, second):
                hung[joint] += weight.kip_per_ft * (there - here) / 2
    vector = np.zeros(len(rows))
    for joint, kip in hung.items():
        if (joint, 1) in rows:
            vector[rows[joint, 1]] += kip
    return vector


def _places(truss: Truss, vehicle: Vehicle, rows: Rows) -> Iterator[NDArray[np.float64]]:
    """Joint loads of the vehicle, one lane, wherever an axle stands over a panel point."""
    stations = np.array([station for _, station in truss.floor_joints])
    share = 24.0 / 36.0  # no less than the lever rule gives either of the two
    choices = [one if isinstance(one, tuple) else (one,) for one in vehicle.spacings_ft]
    for spacing in product(*choices):
        behind = np.concatenate([[0.0], np.cumsum(spacing)])
        for way in (1.0, -1.0):
            for front in {round(x + way * b, 9) for x in stations for b in behind}:
                vector = np.zeros(len(rows))
                for kip, at in zip(vehicle.axles_kip, front - way * behind, strict=True):
                    for panel, (here, there) in enumerate(pairwise(stations)):
                        if here <= at < there:
                            part = (at - here) / (there - here)
                            for joint, of in ((panel, 1 - part), (panel + 1, part)):
                                row = rows.get((truss.floor_joints[joint][0], 1))
                                if row is not None:
                                    vector[row] += share * kip * of
                if vector.any():
                    yield vector


def test_the_third_is_a_low_half_hip_pratt_of_1900_on_pins_with_hung_floorbeams() -> None:
    # What the trade calls so: end posts shorter than a panel, no vertical under the hip; nothing
    # overhead to hold the upper chord at its ends; every floorbeam hangs from a lower pin.
    one, found = record("wrenmallow"), bridge("wrenmallow")
    trusses = one.trusses
    assert (trusses.form, one.built) == (Form.HALF_HIP_PRATT, 1900)
    assert trusses.hip is not None
    assert trusses.panels is not None
    assert trusses.hip.exact < trusses.panels[0].exact
    kinds = {bar.name: bar.kind for bar in found.trusses[0].bars}
    assert Kind.HIP_VERTICAL not in kinds.values()
    assert {"U0", "U4"}.isdisjoint(one.members["top chord"].lateral_points or ())
    for truss in found.trusses:
        assert {f"{truss.name}/L{i}/pin" for i in range(5)} <= {pin.address for pin in truss.pins}
    for truss in ("north", "south"):
        assert found.floor is not None
        hung = {one.address for one in found.floor.hangers}
        assert {f"{truss}/L{i}/hanger" for i in (1, 2, 3)} <= hung
