"""Lane loads against every pattern of loaded panels, with what moves beside them anywhere.

How a lane load stands for the worst is found by trying; so no pattern may be found that is worse.
Expected values: forces of least complementary energy from the documents alone (see resolved.py).
"""

from collections.abc import Iterator
from itertools import pairwise, product

import numpy as np
import pytest

from tests.analysis.oracles import Floats, road_loads
from tests.documents import demos
from tests.rating.resolved import Rated, Resolved, ratings

each = pytest.mark.parametrize("name", demos.NAMES)

CHORDS = ("top chord", "bottom chord")
PARTS_OF_A_PANEL = 4

LANES = {
    "quillmarsh": (("upstream/L4-L5", "H15"), ("upstream/U3-L5", "H15")),
    "dovetansy": (
        ("west/U1-L0", "H15"), ("west/U2-U3", "H20"), ("west/L3-L4", "H15"), ("east/L3-L4", "H20"),
        ("west/U2-L3", "H15"), ("west/U3-L2", "H15"), ("west/U2-L2", "H20"),
    ),
    "wrenmallow": (
        ("south/U0-L0", "H15"), ("north/U1-U2", "H20"), ("north/L1-L2", "H15"),
        ("north/U0-L1", "H20"), ("south/U1-L2", "H15"),
    ),
}
"""Chords, an end post, diagonals, a counter, a post; the middle panel has crossed rods."""

SUMS = {
    "quillmarsh": ("upstream/L4-L5", "upstream/U2-L4"),
    "dovetansy": ("west/L3-L4", "east/L3-L4", "west/U3-L4", "west/U3-U4"),
    "wrenmallow": ("north/L1-L2", "south/U1-L2", "north/U1-U2"),
}


def patterns(truss: Resolved, kip_per_ft: float, most_changes: int) -> Iterator[Floats]:
    """(d,) a uniform load on every set of whole panels with few changes from loaded to not."""
    joints, stations = truss.drawing.floor_joints, truss.drawing.stations_ft
    for on in product((0, 1), repeat=len(joints) - 1):
        if sum(a != b for a, b in pairwise(on)) <= most_changes:
            down = dict.fromkeys(joints, 0.0)
            for panel, loaded in enumerate(on):
                half = loaded * kip_per_ft * (stations[panel + 1] - stations[panel]) / 2.0
                down[joints[panel]] += half
                down[joints[panel + 1]] += half
            yield truss.equilibrium.loads(down)


def single_weights(truss: Resolved, kip: float) -> list[Floats]:
    """(d,) one weight at panel points and between them."""
    stations = truss.drawing.stations_ft
    places = np.linspace(stations[0], stations[-1], PARTS_OF_A_PANEL * (len(stations) - 1) + 1)
    return [
        truss.equilibrium.loads(road_loads(truss.drawing, [(kip, float(at))]))
        for at in places[1:-1]
    ]


def reached(one: Rated, live: Iterator[Floats]) -> float:
    """The greatest part of its limit that a part reaches under any of the loads, at its factor."""
    limit, grown = one.rating["limit_kip"], one.rating["factor"] * one.on_the_axles
    return max(
        float(one.truss.forces(one.dead + grown * loads)[one.bar] / limit) for loads in live
    )


@each
def test_no_pattern_of_loaded_panels_and_no_place_of_the_weight_is_worse(name: str) -> None:
    tried = set()
    for one in ratings(name):
        about = (one.part["part"], one.rating["vehicle"])
        by = (one.rating["method"], one.rating["level"])
        if about not in LANES[name] or by != ("load-factor", "operating"):
            continue
        if not one.rating["check"].startswith("lane load: "):
            continue
        vehicle = one.truss.vehicles[about[1]]
        kip = vehicle["lane_point_kip"][0 if one.part["kind"] in CHORDS else 1]
        weights = single_weights(one.truss, kip)
        lanes = list(patterns(one.truss, vehicle["lane_kip_per_ft"], most_changes=2))
        most = reached(one, (lane + weight for lane in lanes for weight in weights))
        assert most <= 1.0 + 1e-6, str(one)
        # Whole panels and quarter points come near the worst, which may end inside a panel.
        assert most > 0.9, str(one)
        tried.add(about)
    assert tried == set(LANES[name])


@each
def test_no_lane_load_beside_a_train_at_any_place_is_worse_than_the_sum_that_governs(
    name: str,
) -> None:
    tried = set()
    for one in ratings(name):
        about = (one.rating["vehicle"], one.rating["level"])
        if one.part["part"] not in SUMS[name] or about != ("design tandem", "operating"):
            continue
        vehicle = one.truss.vehicles[about[0]]
        # The lane load has no impact; everything is multiplied by 1 + impact later.
        lane = vehicle["lane_kip_per_ft"] / (1.0 + one.rating["impact"])
        lanes = list(patterns(one.truss, lane, most_changes=2))
        places = [one.rating["at"], *one.truss.places(about[0], 2.0, 1)]
        trains = [one.truss.axles(about[0], at) for at in places]
        most = reached(one, (lane + train for lane in lanes for train in trains))
        assert most <= 1.0 + 1e-6, str(one)
        assert most > 0.9, str(one)
        tried.add(one.part["part"])
    assert tried == set(SUMS[name])


@each
def test_where_a_lane_load_governs_the_rating_says_so_and_tells_no_place(name: str) -> None:
    with_lane = {
        vehicle["name"] for vehicle in demos.vehicles()["vehicles"]
        if vehicle["combine"] == "greater"
    }
    governed = [one.rating for one in ratings(name) if one.rating["check"].startswith("lane load")]
    assert governed
    for rating in governed:
        assert rating["vehicle"] in with_lane
        assert rating["check"].startswith("lane load: ")
        assert rating["at"] is None
