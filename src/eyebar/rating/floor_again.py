"""The working of one rating of a part of the floor, made again by what made the rating."""

from collections.abc import Callable
from dataclasses import replace

from eyebar.bridge.floor_parts import FloorPart
from eyebar.bridge.parts import Bridge
from eyebar.loads.floor_dead import stringer_dead
from eyebar.loads.live import live_factor
from eyebar.office import Values
from eyebar.rating.asked import dead_factors, service_factor
from eyebar.rating.floor import finished, loads_of, place_of
from eyebar.rating.floor_context import floor_context
from eyebar.rating.floor_deck import DeckLoads
from eyebar.rating.floor_facts import FloorFacts
from eyebar.rating.floor_stringers import StringerLoads
from eyebar.rating.rated import PartRating
from eyebar.resistance import Condition
from eyebar.resistance.floor_rules import Strength
from eyebar.vehicles import Vehicle


def floor_replay(
    bridge: Bridge, part: FloorPart, rating: PartRating, *, vehicle: Vehicle, values: Values,
    condition: Condition,
) -> Callable[[], PartRating]:
    """What makes one rating of a part of the floor again, every strength and effect of it anew.

    What the part shares with others (places, weights, lanes) is found at once, so that a recorder
    around the call sees the part's own steps alone.
    """
    floor, facts, road = bridge.floor, rating.floor, bridge.road
    assert floor is not None
    if facts is None:
        return lambda: rating
    context = floor_context(
        road, floor, values, condition=condition, vehicles={vehicle.name: vehicle}
    )
    loads = loads_of(bridge, context, part)

    def again() -> PartRating:
        if isinstance(loads, DeckLoads):
            strengths = loads.strengths_for(rating.method, rating.level, vehicle)
        else:
            strengths = loads.strengths(rating.method, rating.level)
        if isinstance(loads, StringerLoads):
            stringer_dead(floor, loads.stringer, loads.line)
        made = replace(facts, strength=next(one for one in strengths if _same(one, facts)))
        dead = dead_factors(
            rating.method, surfacing_measured=road.surfacing_measured, values=values
        )
        return finished(
            made, loads.met(made, rating.method, vehicle), dead[facts.dead_set], vehicle=vehicle,
            about=(rating.method, rating.level), impact=loads.shock(vehicle, rating.method),
            live_factor=_live_factor(bridge, rating, made, vehicle, values),
            at=None if isinstance(loads, DeckLoads) else place_of(loads, made, vehicle),
        )

    return again


def _live_factor(
    bridge: Bridge, rating: PartRating, facts: FloorFacts, vehicle: Vehicle, values: Values
) -> float:
    if facts.strength.service:
        return service_factor(rating.method, rating.level, vehicle.vehicle_class, values)
    return live_factor(
        method=rating.method, level=rating.level, vehicle_class=vehicle.vehicle_class,
        trucks_a_day=bridge.road.trucks_a_day, values=values,
    )


def _same(strength: Strength, facts: FloorFacts) -> bool:
    """Whether a strength is that of the facts: the check at the same place."""
    known = facts.strength
    keys = ("check", "effect", "begin_ft", "end_ft", "end", "sense", "service")
    return all(getattr(strength, key) == getattr(known, key) for key in keys)
