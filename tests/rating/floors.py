"""Floors of the demo bridges with some words of their records changed, rated alone."""

from collections.abc import Mapping, Sequence
from datetime import date
from functools import cache
from importlib.resources import files

from eyebar.bridge.parts import Bridge
from eyebar.bridge.state import bridge_on
from eyebar.office import Values, office_values
from eyebar.rating import PartRating, RatedPart
from eyebar.rating.floor import AnyLoads, loads_of, rated_floor
from eyebar.rating.floor_context import FloorContext, floor_context
from eyebar.record import record_of
from eyebar.resistance import Condition
from eyebar.terms import Level, Method
from eyebar.vehicles import Vehicle, shipped_vehicles

TODAY = date(2026, 11, 1)
"""The day on which the tests read: no test depends on the day it is run."""
SOUND = Condition(superstructure_condition=7, loss_measured=False)
Change = tuple[str, str]


@cache
def floor_bridge(name: str, *changes: Change) -> Bridge:
    """A demo bridge with some of its record's text replaced; what is replaced must be there."""
    text = (files("eyebar.demo") / "bridges" / f"{name}.yaml").read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    return bridge_on(record_of(text, today=TODAY), None, office_values())


def some(*names: str) -> Mapping[str, Vehicle]:
    """Shipped vehicles by their names."""
    known = shipped_vehicles()
    return {name: known[name] for name in names}


def rated(
    bridge: Bridge, vehicles: Mapping[str, Vehicle], values: Values | None = None
) -> dict[str, RatedPart]:
    """Address -> part of the floor with its ratings."""
    found = rated_floor(bridge, values or office_values(), vehicles, SOUND)
    return {one.address: one for one in found}


def entry(part: RatedPart, vehicle: str, by: tuple[Method, Level]) -> PartRating:
    """One rating of a part."""
    assert not part.not_rated, part.not_rated
    return next(
        one for one in part.ratings if (one.vehicle, (one.method, one.level)) == (vehicle, by)
    )


def context_of(bridge: Bridge, vehicles: Mapping[str, Vehicle]) -> FloorContext:
    """The floor's context."""
    assert bridge.floor is not None
    return floor_context(
        bridge.road, bridge.floor, office_values(), condition=SOUND, vehicles=vehicles
    )


def part_loads(bridge: Bridge, address: str, vehicles: Mapping[str, Vehicle]) -> AnyLoads:
    """A part of the floor with what vehicles do to it."""
    assert bridge.floor is not None
    part = next(one for one in bridge.floor.parts if one.address == address)
    return loads_of(bridge, context_of(bridge, vehicles), part)


def checks(loads: AnyLoads, by: tuple[Method, Level]) -> Sequence[str]:
    """Names of all checks of a part."""
    return [one.check for one in loads.strengths(*by)]
