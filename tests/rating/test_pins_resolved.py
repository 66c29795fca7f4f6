"""Pins of the demo bridges rated again, from the record's lines and least-energy forces alone.

Expected values: a pin's check, worked again by hand-written statics (pins_again.py) under forces of
least complementary energy at the place and factor that the document tells, is at its limit of 1.
"""

from collections.abc import Iterator

import pytest

from tests.documents import demos
from tests.rating.pins_again import pin_again, values
from tests.rating.resolved import Rated, pin_ratings

each = pytest.mark.parametrize("name", demos.NAMES)

SAMPLED = {
    "quillmarsh": ("upstream/L4/pin", "downstream/L5/pin", "upstream/U5/pin", "upstream/L0/pin"),
    "dovetansy": ("east/L2/pin", "west/L3/pin", "west/U3/pin", "west/U1/pin"),
    "wrenmallow": ("north/L2/pin", "north/L3/pin", "south/U1/pin", "south/L1/pin"),
}
BY = {("HS20", "allowable-stress", "inventory"), ("Type 3S2", "load-and-resistance", "legal")}


def measured(name: str) -> Iterator[Rated]:
    """Ratings of pins whose packing was measured."""
    for one in pin_ratings(name):
        if pin_again(name, one.part["part"]) is not None:
            yield one


def ratios(name: str, one: Rated, multiple: float) -> dict[str, float]:
    """All checks of a pin with its vehicle at the rating's place, so many times as heavy."""
    loads = one.dead + multiple * one.axles(one.rating["at"])
    forces = dict(zip(one.truss.drawing.names, one.truss.forces(loads).tolist(), strict=True))
    pin = pin_again(name, one.part["part"])
    assert pin is not None
    return pin.ratios(
        one.truss, forces, (one.rating["method"], one.rating["level"]), values(name)
    )


@each
def test_at_its_place_and_factor_a_pin_is_at_its_limit_by_statics_along_it(name: str) -> None:
    seen = 0
    for one in measured(name):
        if one.is_of_axles and one.rating["check"] not in ("dead load", "no equilibrium"):
            found = ratios(name, one, one.rating["factor"])
            governs = max(found, key=lambda check: found[check])
            assert found[governs] == pytest.approx(1.0, abs=1e-6), str(one)
            assert one.rating["check"].startswith(governs), str(one)
            seen += 1
    assert seen > 500


@each
def test_a_pin_has_no_single_dead_or_live_force_and_its_capacity_is_a_ratio(name: str) -> None:
    for one in pin_ratings(name):
        assert one.rating["dead"] is one.rating["live"] is one.rating["limit_kip"] is None
        assert one.rating["plain_factor"] is None
        assert (one.rating["capacity"], one.rating["unit"]) in {(1.0, "ratio"), (None, "")}


@each
def test_by_load_factor_there_is_no_rule_for_a_pin(name: str) -> None:
    pins = [part for part in demos.rate(name)["parts"] if part["kind"] == "pin"]
    for part in pins:
        by_factor = [one for one in part["ratings"] if one["method"] == "load-factor"]
        assert by_factor
        assert {one["reason"] for one in by_factor} == {"no rule by this method"}


@each
def test_no_place_on_the_bridge_brings_a_pin_to_its_limit_before_its_factor(name: str) -> None:
    tried = set()
    for one in measured(name):
        by = tuple(one.rating[key] for key in ("vehicle", "method", "level"))
        part = one.part["part"]
        if part not in SAMPLED[name] or by not in BY:
            continue
        pin = pin_again(name, part)
        assert pin is not None
        for at in one.truss.places(one.rating["vehicle"], 2.0, 2):
            loads = one.dead + one.rating["factor"] * one.axles(at)
            forces = dict(zip(one.truss.drawing.names, one.truss.forces(loads), strict=True))
            found = pin.ratios(one.truss, forces, (by[1], by[2]), values(name))
            assert max(found.values()) <= 1.0 + 1e-6, f"{one} at {at}"
        tried.add(part)
    assert tried == set(SAMPLED[name])
