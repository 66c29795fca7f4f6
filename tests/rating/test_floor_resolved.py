"""Ratings of the demo floors, reckoned again from the documents alone.

What the documents do not tell of a floor (sizes, places across) is reckoned from the field book in
`test_floor_stepped.py`; here every factor follows from its own figures, and every place of a train
gives the load that is said of it.
"""

from collections.abc import Iterator, Mapping
from typing import Any

import pytest

from eyebar.terms import BAR_KINDS
from tests.documents import demos

each = pytest.mark.parametrize("name", demos.NAMES)
FLOOR_KINDS = {"stringer", "floorbeam", "hanger", "deck", "bearing"}
RESOLVED_ELSEWHERE = {"pin"}
"""Kinds whose own tests resolve them."""
VEHICLES: Mapping[str, Any] = {one["name"]: one for one in demos.vehicles()["vehicles"]}
Entry = dict[str, Any]


def floor_entries(name: str) -> Iterator[tuple[Entry, Entry]]:
    """(part, rating) of every rating of the floor that has a factor."""
    for part in demos.rate(name)["parts"]:
        if part["kind"] in FLOOR_KINDS:
            for rating in part.get("ratings", ()):
                if rating["factor"] is not None:
                    yield part, rating


@each
def test_every_part_is_a_bar_a_part_of_the_floor_or_a_pin(name: str) -> None:
    kinds = {part["kind"] for part in demos.rate(name)["parts"]}
    assert kinds <= {str(kind) for kind in BAR_KINDS} | FLOOR_KINDS | RESOLVED_ELSEWHERE


@each
def test_the_demo_floors_are_complete(name: str) -> None:
    for part in demos.rate(name)["parts"]:
        if part["kind"] in FLOOR_KINDS:
            assert not part.get("not_rated"), part["part"]


@each
def test_a_factor_is_what_is_left_beside_dead_load_over_the_live_load(name: str) -> None:
    seen = 0
    for part, rating in floor_entries(name):
        live = rating["live_factor"] * rating["live"] * (1.0 + rating["impact"])
        # The document gives dead load in one figure: its two factors are bounds.
        least, most = sorted(rating["dead_factors"].values())
        high = (rating["capacity"] - least * rating["dead"]) / live
        low = (rating["capacity"] - most * rating["dead"]) / live
        slack = 1e-9 * abs(high)
        assert low - slack <= rating["plain_factor"] <= high + slack, part["part"]
        assert rating["factor"] == max(rating["plain_factor"], 0.0)
        seen += 1
    assert seen > 1000


@each
def test_units_lanes_and_places_are_as_the_documents_page_has_them(name: str) -> None:
    for _, rating in floor_entries(name):
        assert rating["unit"] in ("kip", "ksi")
        assert rating["lanes"] == 1  # none of the roads is 18 ft wide
        lane = rating["check"].startswith("lane load: ")
        assert lane <= (rating["at"] is None)
        if rating["check"] in ("overload", "Service II"):
            assert rating["unit"] == "ksi"
            # A tenth more on what stays: the office's allowance for details.
            assert rating["dead_factors"] == {"dc": 1.1, "dw": 1.0}


def on_joint(name: str, joint: str, rating: Entry) -> float:
    """What the train at its place brings to a joint of the floor, panels as simple spans [kip]."""
    stations = dict(demos.forces(name)["trusses"][0]["floor_joints"])
    order = list(stations.values())
    here = order.index(stations[joint])
    vehicle, at = VEHICLES[rating["vehicle"]], rating["at"]
    way = 1.0 if at["direction"] == "up" else -1.0
    place, whole = at["front_axle_ft"], 0.0
    for i, axle in enumerate(vehicle["axles_kip"]):
        if i:
            place -= way * at["spacing_ft"][i - 1]
        if order[here - 1] < place <= order[here]:
            whole += axle * (place - order[here - 1]) / (order[here] - order[here - 1])
        elif order[here] < place < order[here + 1]:
            whole += axle * (order[here + 1] - place) / (order[here + 1] - order[here])
    return whole


def of_axles(rating: Entry) -> bool:
    return rating["at"] is not None and VEHICLES[rating["vehicle"]]["combine"] != "sum"


@each
def test_a_hanger_bears_its_share_of_the_train_at_its_place(name: str) -> None:
    seen = 0
    for part, rating in floor_entries(name):
        if part["kind"] == "hanger" and rating["unit"] == "kip" and of_axles(rating):
            joint = part["part"].split("/")[1]
            live = on_joint(name, joint, rating) * rating["share"]
            assert rating["live"] == pytest.approx(live, rel=1e-9), part["part"]
            seen += 1
    assert seen > 100


@each
def test_vehicles_strain_a_floorbeam_as_the_loads_that_they_bring_to_its_joint(name: str) -> None:
    # All vehicles have one gauge, so that a check of one floorbeam has one worst placing across.
    ratios: dict[tuple[str, ...], list[float]] = {}
    for part, rating in floor_entries(name):
        if part["kind"] == "floorbeam" and of_axles(rating):
            joint = part["part"].split("/")[1]
            key = (part["part"], rating["check"], rating["method"])
            ratio = rating["live"] / on_joint(name, joint, rating)
            ratios.setdefault(key, []).append(ratio)
    assert len(ratios) > 3
    for key, found in ratios.items():
        assert max(found) == pytest.approx(min(found), rel=2e-2), key
