"""Lane loads on pins against every pattern of loaded panels, the single weight at every joint.

The other road: no influence line and no climbing; each of the patterns is followed alone along its
path, and the check looked at on all its points. Condition: panels loaded whole or not at all, which
is a part of all that the lane load may do; so a pin may be reached earlier than here, never later.
"""

from collections.abc import Iterator
from itertools import product

import numpy as np
import pytest

from eyebar.analysis.paths import Paths, paths
from eyebar.bridge.parts import Pin
from eyebar.documents.opened import opened
from eyebar.rating import rated_bridge
from eyebar.rating.families import Swept
from eyebar.rating.kept import kept_for
from eyebar.rating.pin_checks import PinCheck, pin_check
from eyebar.rating.pin_table import PinTable
from tests.documents import demos

MOST = 50.0
NAMES = ("dovetansy", "wrenmallow")
"""Of seven and four panels: 128 and 16 patterns."""


def patterns(swept: Swept) -> np.ndarray:
    """(r, p) panel loads [kip]: every choice of whole panels, with the weight nowhere or at any
    joint between the ends."""
    lines, family = swept.loaded.lines, swept.family
    panels = np.diff(lines.stations_ft) * family.lane_kip_per_ft / 2.0
    loaded = np.array(list(product([0.0, 1.0], repeat=len(panels)))) * panels
    lane = np.pad(loaded, ((0, 0), (0, 1))) + np.pad(loaded, ((0, 0), (1, 0)))
    count = len(panels) + 1
    weights = np.eye(count)[1:-1] * max(family.lane_point_kip)
    weights = np.concatenate([np.zeros((1, count)), weights])
    return (lane[:, None] + weights).reshape(-1, count)


def walked(swept: Swept) -> Paths:
    loads, task = patterns(swept), swept.sweep.task
    return paths(
        swept.loaded.sets, np.repeat(task.fixed[None], len(loads), axis=0),
        loads @ swept.loaded.lines.units, start=np.full(len(loads), task.start), cap=MOST,
    )


def least(check: PinCheck, forces: np.ndarray, multiples: np.ndarray) -> float:
    """The least multiple at which a check is reached on paths, by halving; MOST where none is."""
    values = check(forces)
    row, step = np.nonzero((values[:, :-1] < 1.0) & (values[:, 1:] >= 1.0))
    low, high = np.zeros(len(row)), np.ones(len(row))
    begin, change = forces[row, step], forces[row, step + 1] - forces[row, step]
    for _ in range(50):
        middle = 0.5 * (low + high)
        over = check(begin + middle[:, None] * change) >= 1.0
        low, high = np.where(over, low, middle), np.where(over, middle, high)
    first, second = multiples[row, step], multiples[row, step + 1]
    return float((first + high * (second - first)).min(initial=MOST))


def reached(table: PinTable, pin: Pin, swept: list[Swept]) -> Iterator[tuple[PinCheck, float]]:
    """Each rule's check of a pin with the least multiple that the rating finds for a lane load."""
    number = table.alike(pin)
    more = [one for one, meant in table.lanes_of(swept[0]) if number in meant]
    for by in table.rules.values():
        known = [
            table.passed_by(pin, by, one).multiple[one.sweep.place] for one in (*swept, *more)
            if (id(one.sweep.bundle), id(by), number) in table.passed
        ]
        if known:
            yield pin_check(table.rows_of(pin), by), min(known)


@pytest.mark.parametrize("name", NAMES)
def test_no_pattern_of_loaded_panels_brings_a_pin_to_its_limit_earlier(name: str) -> None:
    one = opened(demos.record(name))
    kept = kept_for(one.bridge, one.values)
    vehicles = {key: one.rated_vehicles[key] for key in ("H15", "HS20")}
    rated_bridge(one.bridge, one.values, vehicles, kept)
    table, truss, near, far = kept.pins, one.bridge.trusses[0], 0, 0
    assert table.lanes
    sweeps = kept.states[0][0].sweeps
    for swept in sweeps.found.values():
        if not swept[0].family.lane_kip_per_ft:
            continue
        found = walked(swept[0])
        forces = swept[0].loaded.model.bar_forces(found.forces)
        for pin in truss.pins:
            columns = table.columns_of(swept[0], table.rows_of(pin))
            for check, multiple in reached(table, pin, swept):
                pattern = least(check, forces[..., columns], found.multiple)
                assert pattern >= multiple * (1.0 - 1e-9), pin.address
                near += pattern < multiple * 1.001
                far += 1
    assert far >= 40
    assert near > far / 10  # some pins are worst under whole panels: the test can fail
