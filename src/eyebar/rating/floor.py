"""The ratings of the floor: every recorded part for every vehicle, method and level.

Parts alike but for their place along the road are worked out once.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from eyebar.bridge.floor_parts import (
    Bracket,
    Deck,
    Floor,
    Floorbeam,
    FloorPart,
    Hanger,
    Shoe,
    Stringer,
)
from eyebar.bridge.parts import Bridge
from eyebar.errors import NotMeasured, OutOfRange
from eyebar.loads.floor_dead import hanger_dead
from eyebar.office import Values
from eyebar.rating.asked import EVERYTHING, Asked, Wanted, asked_of
from eyebar.rating.entries import tons_of
from eyebar.rating.families import LANE_PREFIX
from eyebar.rating.floor_asking import Asking
from eyebar.rating.floor_brackets import BracketLoads
from eyebar.rating.floor_context import FloorContext, FloorKept, floor_context
from eyebar.rating.floor_deck import DeckLoads
from eyebar.rating.floor_ends import HangerLoads, TrussSide
from eyebar.rating.floor_facts import FloorFacts, Met, plain_factor
from eyebar.rating.floor_floorbeams import FloorbeamLoads, floorbeam_loads
from eyebar.rating.floor_reactions import panel_point
from eyebar.rating.floor_running import RunningLoads, running_loads
from eyebar.rating.floor_search import Loads, Wish, least_facts
from eyebar.rating.floor_shoes import ShoeLoads, shoe_loads
from eyebar.rating.floor_stringers import StringerLoads, stringer_loads
from eyebar.rating.rated import NO_RULE, PartRating, Place, RatedPart
from eyebar.resistance import Condition
from eyebar.terms import Direction, Kind, Level, Method
from eyebar.vehicles import Vehicle

AnyLoads = (
    StringerLoads | RunningLoads | FloorbeamLoads | HangerLoads | ShoeLoads | DeckLoads
    | BracketLoads
)
Known = dict[tuple[object, ...], dict[float, tuple[PartRating, ...]]]
"""What parts alike depend on -> their ratings by their place along the road [ft]."""
KINDS: Mapping[type, Kind] = {
    Stringer: Kind.STRINGER, Floorbeam: Kind.FLOORBEAM, Hanger: Kind.HANGER, Deck: Kind.DECK,
    Shoe: Kind.BEARING, Bracket: Kind.BRACKET,
}


def rated_floor(
    bridge: Bridge, values: Values, vehicles: Mapping[str, Vehicle], condition: Condition, *,
    wanted: Wanted = EVERYTHING, kept: FloorKept | None = None,
) -> list[RatedPart]:
    """Every recorded part of the floor with its ratings, or the reason for which it has none.

    `kept` is of an earlier rating of the same floor, and is added to.
    """
    floor, roadway = bridge.floor, bridge.roadway
    if floor is None:
        return []
    unknown = floor.unknown or (("the road's widths",) if roadway is None else ())
    if unknown or roadway is None:
        reason = f"dead load not known: {'; '.join(unknown)}"
        return [_rated(one, one.not_rated or reason, ()) for one in floor.parts]
    context = floor_context(
        roadway, floor, values, condition=condition, vehicles=vehicles, kept=kept
    )
    asking = Asking(wanted, context.kept, *(
        tuple(asked_of(
            context.vehicles, trucks_a_day=roadway.trucks_a_day,
            surfacing_measured=roadway.surfacing_measured, values=values, ways=ways,
        ))
        for ways in (wanted.of, wanted.of_ruled)
    ))
    refused = [
        PartRating(vehicle=name, method=one.method, level=one.level, factor=None, reason=reason)
        for name, reason in context.refused.items()
        for one in asked_of(
            {name: vehicles[name]}, trucks_a_day=roadway.trucks_a_day,
            surfacing_measured=roadway.surfacing_measured, values=values, ways=wanted.of,
        )
    ]
    known: Known = {}
    return [_part(bridge, context, one, asking, known=known, refused=refused)
            for one in floor.parts]


ANY_WHEEL = 10.0
"""A wheel [kip] under which a deck is looked at when no vehicle is asked for."""


def unrated_floor(
    bridge: Bridge, values: Values, condition: Condition,
    ways: Sequence[tuple[Method, Level]],
) -> list[tuple[str, str]]:
    """(address, reason) of every recorded part of the floor whose strength cannot be found."""
    floor, roadway = bridge.floor, bridge.roadway
    if floor is None or roadway is None:
        return []
    context = floor_context(roadway, floor, values, condition=condition, vehicles={})
    found = []
    for part in floor.parts:
        reason = part.not_rated or _reason(bridge, context, part, ways)
        if reason:
            found.append((part.address, reason))
    return found


def _reason(
    bridge: Bridge, context: FloorContext, part: FloorPart, ways: Sequence[tuple[Method, Level]]
) -> str:
    """Why a part's strength cannot be found; empty where it can."""
    try:
        loads = loads_of(bridge, context, part)
        for method, level in ways:
            if isinstance(loads, DeckLoads):
                loads.strengths_under(method, level, ANY_WHEEL)
            else:
                loads.strengths(method, level)
    except (NotMeasured, OutOfRange) as refusal:
        return _said(part, refusal)
    return ""


def _said(part: FloorPart, refusal: NotMeasured | OutOfRange) -> str:
    if isinstance(refusal, NotMeasured):
        return f"{refusal.what} of {part.address} not measured"
    return f"no strength can be found: {refusal}"


def _rated(part: FloorPart, reason: str, ratings: Sequence[PartRating]) -> RatedPart:
    return RatedPart(
        address=part.address,
        truss=part.truss if isinstance(part, Hanger | Shoe | Bracket) else None,
        kind=KINDS[type(part)], not_rated=reason, ratings=tuple(ratings), floor=part,
    )


def _part(
    bridge: Bridge, context: FloorContext, part: FloorPart, asking: Asking, *,
    known: Known, refused: Sequence[PartRating],
) -> RatedPart:
    if part.not_rated:
        return _rated(part, part.not_rated, ())
    try:
        loads = loads_of(bridge, context, part)
        if isinstance(loads, DeckLoads):
            return _rated(part, "", [*_deck_ratings(loads, asking.everything), *refused])
        key = (type(part), *loads.likeness())
        at = loads.base_ft
        alike = known.setdefault(key, {})
        if not alike:
            alike[at] = tuple(_ratings(loads, part.address, asking))
        if at not in alike:
            first, ratings = next(iter(alike.items()))
            alike[at] = tuple(_moved(one, at - first) for one in ratings)
        return _rated(part, "", [*alike[at], *refused])
    except (NotMeasured, OutOfRange) as refusal:
        return _rated(part, _said(part, refusal), ())



def _moved(rating: PartRating, by_ft: float) -> PartRating:
    """The rating of a part alike that stands elsewhere along the road."""
    if by_ft == 0.0 or rating.at is None:
        return rating
    at = Place(
        front_axle_ft=rating.at.front_axle_ft + by_ft, direction=rating.at.direction,
        spacing_ft=rating.at.spacing_ft,
    )
    return rating.elsewhere(at)


def loads_of(bridge: Bridge, context: FloorContext, part: FloorPart) -> AnyLoads:
    """A part with what vehicles and dead load do to it. Raises NotMeasured, OutOfRange."""
    match part:
        case Stringer():
            own = stringer_loads(context, part)
            return running_loads(own) if part.continuous else own
        case Floorbeam():
            return floorbeam_loads(context, part, _panel_before(context.floor, part.joint))
        case Hanger():
            point = panel_point(
                context, station_ft=part.station_ft, before_ft=part.before_ft,
                behind_ft=part.behind_ft, panel_before=_panel_before(context.floor, part.joint),
            )
            return HangerLoads(
                context=context, hanger=part, side=TrussSide(context=context, truss=part.truss),
                point=point,
                dead=hanger_dead(part, bridge.weights[part.truss], point.dead_length_ft),
            )
        case Deck():
            return DeckLoads(context=context, deck=part)
        case Shoe():
            return shoe_loads(bridge, context, part)
        case Bracket():
            return BracketLoads(context=context, bracket=part)


def _panel_before(floor: Floor, joint: str) -> int:
    """The number of the panel that ends at a joint."""
    return min((one.panel for one in floor.stringers if one.ends[1] == joint), default=0)


def _ratings(loads: Loads, address: str, asking: Asking) -> list[PartRating]:
    """All ratings of a part, in the order of vehicles, methods and levels."""
    rows: dict[int, list[PartRating]] = {}
    for one in asking.of(loads, address):
        facts = least_facts(loads, one, asking.strengths(loads, address, one))
        for i, row in enumerate(one.rows.tolist()):
            vehicle = loads.context.listed([row])[0]
            if not facts:
                rating = _no_rule(vehicle, one)
            else:
                rating = _rating(loads, one, i, facts[i], vehicle)
            rows.setdefault(row, []).append(rating)
    return [rating for row in sorted(rows) for rating in rows[row]]


def _no_rule(vehicle: Vehicle, asked: Asked) -> PartRating:
    return PartRating(
        vehicle=vehicle.name, method=asked.method, level=asked.level, factor=None,
        reason=NO_RULE,
    )


def _rating(
    loads: Loads,
    asked: Asked, i: int, facts: FloorFacts | None, vehicle: Vehicle,
) -> PartRating:
    live = float(asked.live[i])
    if facts is None:
        return PartRating(
            vehicle=vehicle.name, method=asked.method, level=asked.level, factor=None,
            reason=f"{vehicle.name} does nothing to this part that its strength would limit",
            live_factor=live,
        )
    if facts.strength.service:
        live = float(asked.service_live[i])
    shock = loads.shock(vehicle, asked.method)
    met = loads.met(facts, asked.method, vehicle)
    return finished(
        facts, met, asked.dead[facts.dead_set], vehicle=vehicle,
        about=(asked.method, asked.level), live_factor=live, impact=shock,
        at=place_of(loads, facts, vehicle),
    )


def finished(
    facts: FloorFacts, met: Met, factors: tuple[float, float], *, vehicle: Vehicle,
    about: tuple[Method, Level], live_factor: float, impact: float, at: Place | None,
) -> PartRating:
    """A rating from what its check meets, by the declared formulas."""
    plain = plain_factor(
        facts.strength, met, factors, live_factor=live_factor, impact=impact
    )
    begun = plain <= 0.0
    factor = max(plain, 0.0)
    prefix = LANE_PREFIX if facts.lane_only else ""
    return PartRating(
        vehicle=vehicle.name, method=about[0], level=about[1], factor=factor, plain_factor=plain,
        tons=tons_of(vehicle, factor),
        check="dead load" if begun else prefix + facts.strength.check,
        capacity=facts.strength.capacity, unit=facts.strength.unit,
        dead=met.dead.dc + met.dead.dw, live=met.live, dead_factors=factors,
        live_factor=live_factor, impact=impact, share=met.share, lanes=facts.lanes,
        at=None if begun or facts.lane_only else at, floor=facts,
    )


def place_of(
    loads: Loads,
    facts: FloorFacts, vehicle: Vehicle,
) -> Place:
    """Where the vehicle of the facts stands."""
    station = loads.station(facts)
    if facts.front_ft is None:
        station += facts.way * vehicle.behind_front_ft()[facts.axle]
    return Place(
        front_axle_ft=station, direction=Direction.UP if facts.way > 0 else Direction.DOWN,
        spacing_ft=facts.spacings_ft or vehicle.least_spacings_ft,
    )


def _deck_ratings(loads: DeckLoads, asked: Sequence[Asked]) -> list[PartRating]:
    rows: dict[int, list[PartRating]] = {}
    for one in asked:
        for i, row in enumerate(one.rows.tolist()):
            vehicle = loads.context.listed([row])[0]
            single = replace(
                one, rows=one.rows[i : i + 1], live=one.live[i : i + 1],
                service_live=one.service_live[i : i + 1],
            )
            rows.setdefault(row, []).append(_deck_rating(loads, single, vehicle))
    return [rating for row in sorted(rows) for rating in rows[row]]


def _deck_rating(loads: DeckLoads, asked: Asked, vehicle: Vehicle) -> PartRating:
    strengths = loads.strengths_for(asked.method, asked.level, vehicle)
    if not strengths:
        return _no_rule(vehicle, asked)
    shock = loads.shock(vehicle, asked.method)
    best: FloorFacts | None = None
    least = float("inf")
    for strength in strengths:
        wish = Wish(
            strength=strength, asked=asked, lanes=1, dead=asked.dead["greatest"], live=asked.live,
            times=asked.live * (1.0 + shock), over=asked.live,
            presence=loads.presence(asked.method),
        )
        for found in loads.found(wish, vehicle):
            if best is None or found.factor[0] < least:
                least, best = float(found.factor[0]), found.facts(0, wish, "greatest")
    assert best is not None
    return finished(
        best, loads.met(best, asked.method, vehicle), asked.dead["greatest"], vehicle=vehicle,
        about=(asked.method, asked.level), live_factor=float(asked.live[0]), impact=shock, at=None,
    )
