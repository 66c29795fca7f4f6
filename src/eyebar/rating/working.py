"""The working of one rating, made again on demand by the formulas that made the result."""

from eyebar.bridge.floor_parts import FloorPart
from eyebar.bridge.parts import Bar, Bridge, Truss
from eyebar.errors import Unknown
from eyebar.formula import note, recording
from eyebar.loads import lane_cases, live_factor, shares, worst_case
from eyebar.office import Values
from eyebar.rating.blocks import bearing_bar
from eyebar.rating.entries import WEIGHTLESS
from eyebar.rating.floor_again import floor_replay
from eyebar.rating.formulas import (
    multiple_at_limit,
    plain_rating_factor,
    rated_tons,
    rating_factor,
)
from eyebar.rating.lookup import impact_on
from eyebar.rating.pin_working import pin_replayed
from eyebar.rating.rated import PartRating, RatedPart
from eyebar.rating.replay import Replay
from eyebar.resistance import Condition, limits
from eyebar.resistance.seats import push_on_seat
from eyebar.vehicles import Vehicle


def replayed(
    bridge: Bridge, part: RatedPart, rating: PartRating, *, vehicle: Vehicle, values: Values,
) -> Replay:
    """The working of one rating of one part.

    Calls the strength, the shares, the impact and the factor again under a recorder. Raises Unknown
    where the part is not rated.
    """
    bar = part.bar if part.seat is None else _on_block(bridge, part, rating)
    if part.pin is not None and not part.not_rated:
        return pin_replayed(bridge, part, rating, vehicle=vehicle, values=values)
    if part.floor is not None and not part.not_rated:
        return _of_floor(bridge, part.floor, rating, vehicle, values)
    if bar is None or part.not_rated:
        raise Unknown("working of", part.address, where=f"the rating: {part.not_rated}")
    with recording() as steps:
        limit = _limit(bridge, part, rating, bar, values)
        across = shares(bridge.road, part.truss or "", vehicle, values)
        case = worst_case(lane_cases(across, rating.method, values))
        note("share with multiple presence", "s", case.total, "1")
        factor_of_load = live_factor(
            method=rating.method, level=rating.level, vehicle_class=vehicle.vehicle_class,
            trucks_a_day=bridge.road.trucks_a_day, values=values,
        )
        note("live load factor", "gL", factor_of_load, "1")
        facts = rating.facts
        stations = [station for _, station in _truss(bridge, part).floor_joints]
        shock = 0.0 if facts is None else impact_on(
            bar, facts.loaded_ft, method=rating.method, vehicle_class=vehicle.vehicle_class,
            roadway=bridge.road, span_ft=stations[-1] - stations[0], values=values,
        )
        if facts is not None:
            note("impact", "I", shock, "1")
        factor, plain = _factors(rating, limit, (factor_of_load, shock, case.total))
        tons = None
        if factor is not None and vehicle.combine not in WEIGHTLESS:
            tons = rated_tons(factor, vehicle.weight_tons)
    return Replay(
        steps=tuple(steps), limit_kip=limit[0], capacity=limit[1], share=case.total,
        live_factor=factor_of_load, impact=shock, factor=factor, plain_factor=plain, tons=tons,
    )


def _of_floor(
    bridge: Bridge, part: FloorPart, rating: PartRating, vehicle: Vehicle, values: Values
) -> Replay:
    """The working of a part of the floor."""
    made = floor_replay(
        bridge, part, rating, vehicle=vehicle, values=values,
        condition=Condition(
            superstructure_condition=bridge.superstructure_condition,
            loss_measured=bridge.condition_measured,
        ),
    )
    with recording() as steps:
        again = made()
        note("share with multiple presence", "s", again.share, "1")
        note("live load factor", "gL", again.live_factor, "1")
        note("impact", "I", again.impact, "1")
    return Replay(
        steps=tuple(steps), limit_kip=None, capacity=again.capacity, share=again.share,
        live_factor=again.live_factor, impact=again.impact, factor=again.factor,
        plain_factor=again.plain_factor, tons=again.tons,
    )


def _truss(bridge: Bridge, part: RatedPart) -> Truss:
    return next(truss for truss in bridge.trusses if truss.name == part.truss)


def _on_block(bridge: Bridge, part: RatedPart, rating: PartRating) -> Bar | None:
    """The bar whose push on a block was meant, or any that pushes there where none was."""
    assert part.seat is not None, "a block's ratings come with it"
    pushing = {bar.name: bar for bar in _truss(bridge, part).bars if part.seat in bar.seats}
    bar = pushing.get(rating.of_bar, next(iter(pushing.values()), None))
    return None if bar is None else bearing_bar(bar, part.seat)


def _limit(
    bridge: Bridge, part: RatedPart, rating: PartRating, bar: Bar, values: Values
) -> tuple[float | None, float | None]:
    """Force and capacity of the check that governed, worked out again."""
    if rating.limit is None:
        return None, None
    if part.seat is not None:
        on_seat = push_on_seat(part.seat, bar.name, rating.limit.level, values)
        return on_seat.force, on_seat.capacity
    found = limits(
        bar, method=rating.limit.method, level=rating.limit.level,
        dead_factor_dc=rating.dead_factors[0], values=values,
        condition=Condition(
            superstructure_condition=bridge.superstructure_condition,
            loss_measured=bridge.condition_measured,
        ),
    )
    one = next(x for x in found
               if (x.check, x.sense) == (rating.limit.check, rating.limit.sense))
    return one.force, one.capacity


def _factors(
    rating: PartRating, limit: tuple[float | None, float | None],
    loads: tuple[float, float, float],
) -> tuple[float | None, float | None]:
    """The factor and the plain factor, from the facts of the path."""
    facts, force = rating.facts, limit[0]
    if facts is None or rating.factor is None:
        return None, None
    live, shock, share = loads
    if rating.check == "dead load":
        return 0.0, _plain(rating, force, live, shock)
    if force is None:
        multiple = facts.multiple_after
        note("multiple of the axles at which equilibrium ends", "m", multiple, "1")
    else:
        multiple = multiple_at_limit(
            limit=force, force_before=facts.force_before, force_after=facts.force_after,
            multiple_before=facts.multiple_before, multiple_after=facts.multiple_after,
        )
    factor = rating_factor(
        multiple=multiple, scale=facts.scale, live_factor=live, impact=shock, share=share
    )
    return factor, _plain(rating, force, live, shock)


def _plain(
    rating: PartRating, force: float | None, live: float, shock: float
) -> float | None:
    if rating.plain_factor is None or force is None or rating.live is None or not rating.facts:
        return None
    return plain_rating_factor(
        limit=force, factored_dead=rating.facts.factored_dead, live=rating.live,
        live_factor=live, impact=shock,
    )
