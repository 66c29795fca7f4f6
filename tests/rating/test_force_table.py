"""Force tables against what a truss must obey at any place of the vehicle.

Other method: at places between the rows, forces read off the table must balance at every joint,
fit together in length with the bars that work, and leave the bars that carry nothing short of
being stretched. Those laws have one solution alone. Loads on the joints are by hand: each axle
goes to the two panel points beside it by the lever.
"""

from functools import cache
from itertools import pairwise

import numpy as np
import pytest

from eyebar.documents.force_table import force_table_document
from eyebar.documents.opened import Opened, opened
from eyebar.errors import OutOfRange, Unknown
from eyebar.terms import Direction
from eyebar.views.standing import forces_at, standing
from tests.documents import demos

CASES = [
    ("wrenmallow", "grain cart", Direction.UP), ("wrenmallow", "milk truck", Direction.DOWN),
    ("dovetansy", "tractor with one wagon", Direction.UP),
    ("quillmarsh", "large school bus full", Direction.DOWN),
]


SPLIT_KIP = 1e-5
"""Ties between bars that would go slack together are split by forces far less than this."""


@cache
def bridge(name: str) -> Opened:
    return opened(demos.record(name))


@cache
def table(name: str, vehicle: str, way: Direction) -> dict:
    one = bridge(name)
    return force_table_document(one, one.bridge.trusses[0].name, vehicle, way=way)


def lever(document: dict, front_ft: float) -> dict[str, float]:
    """Joint -> load of the vehicle's axles [kip], each shared by the lever within its panel."""
    forward = 1.0 if document["direction"] == "up" else -1.0
    stations = document["stations_ft"]
    loads = {joint: 0.0 for joint, _ in stations}
    axles = zip(document["behind_front_ft"], document["vehicle"]["axles_kip"], strict=True)
    for behind, kip in axles:
        at = front_ft - forward * behind
        for (left, a), (right, b) in pairwise(stations):
            if a <= at < b or (at == b == stations[-1][1]):
                loads[left] += document["share"] * kip * (b - at) / (b - a)
                loads[right] += document["share"] * kip * (at - a) / (b - a)
    return loads


@pytest.mark.parametrize(("name", "vehicle", "way"), CASES)
def test_between_its_rows_the_table_obeys_balance_fit_and_slackness(
    name: str, vehicle: str, way: Direction
) -> None:
    document, solved = table(name, vehicle, way), demos.forces(name)["trusses"][0]
    assert all(bar["initial_kip"] == bar["gap_in"] == 0.0 for bar in solved["bars"].values())
    fronts = [row["front_axle_ft"] for row in document["rows"]]
    rng = np.random.default_rng(20261128)
    for front in rng.uniform(fronts[0], fronts[-1], 12):
        forces = dict(zip(document["bars"], forces_at(document, float(front)), strict=True))
        loads = lever(document, float(front))
        for joint, dead in solved["dead_loads"].items():
            loads[joint] = loads.get(joint, 0.0) + dead["dc_kip"] + dead["dw_kip"]
        _balance(solved, forces, loads)
        _fit(solved, forces)


def _balance(solved: dict, forces: dict[str, float], loads: dict[str, float]) -> None:
    pull = {joint: np.zeros(2) for joint in solved["joints"]}
    for bar, of in solved["bars"].items():
        first, second = of["ends"]
        along = np.subtract(solved["joints"][second], solved["joints"][first])
        along /= np.hypot(*along)
        pull[first] += forces[bar] * along
        pull[second] -= forces[bar] * along
    for joint, left in pull.items():
        left[1] -= loads.get(joint, 0.0)
        held = solved["supports"].get(joint, (False, False))
        assert all(abs(left[i]) < 1e-6 for i in range(2) if not held[i]), joint


def _fit(solved: dict, forces: dict[str, float]) -> None:
    """Joints move so that every working bar is stretched by its force, and no slack one is."""
    free = [
        (joint, axis) for joint in solved["joints"] for axis in range(2)
        if not solved["supports"].get(joint, (False, False))[axis]
    ]
    rows, stretch, names = [], [], []
    for bar, of in solved["bars"].items():
        first, second = of["ends"]
        along = np.subtract(solved["joints"][second], solved["joints"][first])
        length = np.hypot(*along)
        along = along / length
        row = [
            along[axis] * ((joint == second) - (joint == first)) for joint, axis in free
        ]
        rows.append(row)
        names.append(bar)
        stretch.append(forces[bar] * length / (of["area_in2"] * of["modulus_ksi"]))
    slack = [
        not (solved["bars"][bar]["can_push"] and solved["bars"][bar]["can_pull"])
        and abs(forces[bar]) < SPLIT_KIP for bar in names
    ]
    working = ~np.array(slack)
    matrix, wanted = np.array(rows), np.array(stretch)
    moves, *_ = np.linalg.lstsq(matrix[working], wanted[working], rcond=None)
    assert np.abs(matrix[working] @ moves - wanted[working]).max() < SPLIT_KIP
    for bar, along in zip(np.array(names)[~working], matrix[~working] @ moves, strict=True):
        assert along < SPLIT_KIP if not solved["bars"][bar]["can_push"] else along > -SPLIT_KIP
    for bar, of in solved["bars"].items():
        assert of["can_push"] or forces[bar] > -SPLIT_KIP
        assert of["can_pull"] or forces[bar] < SPLIT_KIP


def test_off_the_bridge_a_vehicle_leaves_dead_load_alone() -> None:
    document = table("wrenmallow", "grain cart", Direction.UP)
    last = dict(zip(document["bars"], document["rows"][-1]["forces_kip"], strict=True))
    # Law: the last row stands where the last axle leaves over the end support.
    assert last == pytest.approx(document["dead_kip"], abs=SPLIT_KIP)


def test_bars_that_go_slack_and_come_in_are_told_in_words() -> None:
    document = table("quillmarsh", "large school bus full", Direction.DOWN)
    idle = set(document["slack_empty"])
    for row, slack in enumerate(document["slack_between"]):
        middle = (
            document["rows"][row]["front_axle_ft"] + document["rows"][row + 1]["front_axle_ft"]
        ) / 2.0
        said = standing(document, middle).said
        assert all(bar in said for bar in idle ^ set(slack))
        assert ("The same bars work" in said) == (idle == set(slack))


def test_a_vehicle_without_axles_or_too_wide_has_no_table() -> None:
    one = bridge("wrenmallow")
    truss = one.bridge.trusses[0].name
    with pytest.raises(OutOfRange, match="number of axles"):
        force_table_document(one, truss, "crowd")
    with pytest.raises(Unknown, match="no vehicle"):
        force_table_document(one, truss, "milk lorry")
    with pytest.raises(Unknown, match="no truss"):
        force_table_document(one, "upside", "milk truck")
