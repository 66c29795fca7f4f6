"""Ratings and forces of the demo bridges, solved again by other methods from documents alone.

Expected values: forces of least complementary energy by non-negative least squares, the end of
equilibrium by a linear programme, and dense stepping, which no extreme may undercut. Parts of the
floor are passed by here: `test_floor_resolved.py` and `test_floor_stepped.py` resolve them.
"""

from collections.abc import Mapping
from typing import Any

import numpy as np
import pytest

from tests.documents import demos
from tests.rating.resolved import NOTHING_KIP, Rated, pin_ratings, ratings, trusses

each = pytest.mark.parametrize("name", demos.NAMES)

TIES_KIP = 1e-7
"""Ties are split by lacks of fit of 1e-9 kip a bar and a little more: no force is surer."""

STEP_FT = 0.25

STEPPED = ("H15", "HS20", "design tandem", "Type 3S2", "SU7", "EV2")
"""Vehicles that are stepped along the bridge: short and long, of two and of many axles, one with a
spacing that varies."""

SAMPLED = {
    "quillmarsh": (
        "upstream/U1-L0", "upstream/U4-U5", "upstream/L4-L5", "upstream/U1-L1", "upstream/U4-L4",
        "upstream/U2-L4", "upstream/U1-L2", "upstream/U5-L3",
    ),
    "dovetansy": (
        "west/U1-L0", "west/U3-U4", "west/L3-L4", "west/U3-L3", "west/U2-L3", "west/U3-L4",
        "west/U3-L2",
    ),
    "wrenmallow": (
        "south/U0-L0", "north/U1-U2", "north/L1-L2", "south/U1-L1", "north/U0-L1", "south/U1-L2",
        "south/U2-L3",
    ),
}
"""A bar of every kind, those beside the middle among them."""

BY = {
    ("HS20", "allowable-stress", "inventory"), ("H15", "load-factor", "operating"),
    ("Type 3S2", "load-and-resistance", "legal"),
}


def worst(errors: Mapping[str, float]) -> tuple[float, str]:
    """The greatest error, and of what."""
    return max((error, what) for what, error in errors.items())


@each
def test_at_its_place_and_factor_a_part_carries_exactly_its_limit(name: str) -> None:
    errors = {}
    for one in ratings(name):
        limit = one.rating["limit_kip"]
        if one.is_of_axles and limit is not None:
            loads = one.dead + one.rating["factor"] * one.axles(one.rating["at"])
            errors[str(one)] = abs(one.truss.forces(loads)[one.bar] / limit - 1.0)
    assert len(errors) > 1000
    assert worst(errors)[0] < 1e-6, worst(errors)


@each
def test_events_are_where_bars_come_to_nothing_and_there_are_no_others(name: str) -> None:
    seen = 0
    for one in ratings(name):
        if one.is_of_axles:
            _follow(one)
            seen += len(one.rating["events"])
    assert seen > 1000


def _follow(one: Rated) -> None:
    """Along the path of one rating: forces at events, and working bars half-way between them."""
    working = set(one.truss.working(one.dead))
    axles, names = one.axles(one.rating["at"]), one.truss.drawing.names
    before = 0.0
    for event in (*one.rating["events"], {"factor": one.rating["factor"]}):
        if event["factor"] - before > 1e-5:
            half_way = one.dead + 0.5 * (before + event["factor"]) * axles
            assert one.truss.working(half_way) == working, f"{one} before {event}"
        before = event["factor"]
        if "bar" in event:
            forces = one.truss.forces(one.dead + before * axles)
            assert abs(forces[names.index(event["bar"])]) < NOTHING_KIP, f"{one} at {event}"
            (working.discard if event["goes"] == "slack" else working.add)(event["bar"])


@each
def test_where_no_event_lies_on_the_path_the_plain_formula_gives_the_factor(name: str) -> None:
    without = [one.rating for one in ratings(name) if not one.rating["events"]]
    assert len(without) > 50
    for rating in without:
        assert rating["plain_factor"] == pytest.approx(rating["factor"], rel=1e-9)


@each
def test_the_plain_factor_is_the_limit_less_factored_dead_load_over_factored_live(
    name: str,
) -> None:
    for one in ratings(name):
        rating, dead = one.rating, one.truss.forces(one.dead)[one.bar]
        if rating["plain_factor"] is None:
            # By the bars that work under dead load the vehicle does not act towards the limit.
            assert rating["check"] == "no equilibrium" or rating["live"] * rating["limit_kip"] <= 0
            continue
        live = rating["live_factor"] * rating["live"] * (1.0 + rating["impact"])
        plain = (rating["limit_kip"] - dead) / live
        assert rating["plain_factor"] == pytest.approx(plain, rel=1e-8)


@each
def test_live_is_the_vehicles_force_by_the_bars_that_work_under_factored_dead_load(
    name: str,
) -> None:
    seen = 0
    for one in ratings(name):
        if one.is_of_axles:
            working = one.truss.working(one.dead)
            axles = one.truss.axles(one.rating["vehicle"], one.rating["at"])
            forces = one.truss.sure_forces(working, one.rating["share"] * axles)
            assert forces is not None, "the bars that work under dead load are too few"
            force = forces.get(one.truss.drawing.names[one.bar], 0.0)
            assert one.rating["live"] == pytest.approx(force, rel=1e-9, abs=1e-9)
            seen += 1
    assert seen > 1000


@each
def test_where_equilibrium_ends_no_forces_with_the_right_signs_carry_more(name: str) -> None:
    # A lane load is looked at in tests/analysis/test_lane_loads.py.
    for one in (*ratings(name), *pin_ratings(name)):
        if one.rating["check"] == "no equilibrium" and one.is_of_axles:
            end = one.truss.end(one.dead, one.axles(one.rating["at"]))
            assert one.rating["factor"] == pytest.approx(end, rel=1e-8)
            elsewhere = min(
                one.truss.end(one.dead, one.axles(at))
                for at in one.truss.places(one.rating["vehicle"], 2.0, 3)
            )
            assert one.rating["factor"] <= elsewhere * (1.0 + 1e-8)


@each
def test_no_place_on_the_bridge_brings_a_part_to_its_limit_before_its_factor(name: str) -> None:
    tried = set()
    for one in ratings(name):
        by = tuple(one.rating[key] for key in ("vehicle", "method", "level"))
        if one.part["part"] in SAMPLED[name] and by in BY and one.rating["limit_kip"]:
            limit, factor = one.rating["limit_kip"], one.rating["factor"]
            for at in one.truss.places(one.rating["vehicle"], 1.0, 3):
                axles = one.axles(at)
                for part in (0.6, 1.0):
                    forces = one.truss.forces(one.dead + part * factor * axles)
                    assert forces[one.bar] / limit <= 1.0 + 1e-6, f"{one} at {at}"
            tried.add(one.part["part"])
    assert tried == set(SAMPLED[name])


@each
def test_dead_load_forces_are_those_of_least_energy(name: str) -> None:
    for truss in demos.forces(name)["trusses"]:
        again = trusses(name)[truss["truss"]]
        forces = again.forces(again.dead({"dc": 1.0, "dw": 1.0}))
        said = [truss["dead"][bar] for bar in again.drawing.names]
        assert said == pytest.approx(forces.tolist(), rel=1e-8, abs=TIES_KIP)


def _live(truss: Mapping[str, Any], name: str, vehicle: str, at: Mapping[str, Any]) -> Any:
    """(n,) what one vehicle at a place adds to the dead load, `one_lane` share, no impact."""
    again = trusses(name)[truss["truss"]]
    dead = again.dead({"dc": 1.0, "dw": 1.0})
    share = truss["share"][vehicle]["one_lane"]
    return again.forces(dead + share * again.axles(vehicle, at)) - again.forces(dead)


@each
def test_extremes_are_attained_where_they_are_said_to_be(name: str) -> None:
    for truss in demos.forces(name)["trusses"]:
        number = {bar: i for i, bar in enumerate(trusses(name)[truss["truss"]].drawing.names)}
        for vehicle, bars in truss["live"].items():
            for bar, found in bars.items():
                for end in ("min", "max"):
                    at = found[f"{end}_at"]
                    force = 0.0 if at is None else _live(truss, name, vehicle, at)[number[bar]]
                    assert found[end] == pytest.approx(force, rel=1e-8, abs=TIES_KIP)


@each
@pytest.mark.parametrize("vehicle", STEPPED)
def test_dense_stepping_never_finds_more_than_the_extremes(name: str, vehicle: str) -> None:
    truss = demos.forces(name)["trusses"][0]
    again = trusses(name)[truss["truss"]]
    forces = np.array([
        _live(truss, name, vehicle, at) for at in again.places(vehicle, STEP_FT, 3)
    ])
    bars = [truss["live"][vehicle][bar] for bar in again.drawing.names]
    least, most = forces.min(axis=0), forces.max(axis=0)
    assert (np.array([bar["min"] for bar in bars]) <= least + TIES_KIP).all()
    assert (np.array([bar["max"] for bar in bars]) >= most - TIES_KIP).all()
    # A step of 0.25 ft can miss no more than the influence line rises within it: 1 % of the most.
    assert max(bar["max"] for bar in bars) == pytest.approx(most.max(), rel=0.01)
    assert min(bar["min"] for bar in bars) == pytest.approx(least.min(), rel=0.01)
