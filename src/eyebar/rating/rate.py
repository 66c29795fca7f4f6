"""The rating of a whole bridge on a date."""

from collections.abc import Mapping, Sequence

from eyebar.bridge.parts import Bridge
from eyebar.loads import (
    lanes,
)
from eyebar.office import Values
from eyebar.rating.asked import Way
from eyebar.rating.blocks import unrated_blocks
from eyebar.rating.floor import rated_floor
from eyebar.rating.kept import Kept, kept_for
from eyebar.rating.one_truss import TrussRating
from eyebar.rating.pins import SAID, pin_parts, unrated_pins
from eyebar.rating.posting import Governing, posting, wanted_by
from eyebar.rating.rated import NO_RULE, BridgeRating, PartRating, RatedPart
from eyebar.vehicles import Vehicle


def rated_bridge(
    bridge: Bridge, values: Values, vehicles: Mapping[str, Vehicle], kept: Kept | None = None
) -> BridgeRating:
    """Every bar of a bridge rated for every vehicle by every method with a rule; the posting.

    `kept` is of an earlier rating of the same bridge by the same values, and is added to. Raises
    Unstable, OutOfRange and NotMeasured where no forces can be found at all.
    """
    kept = kept or kept_for(bridge, values)
    values = kept.values
    parts, cautions = rated_parts(bridge, vehicles, kept)
    posted = posting(
        governing(parts, vehicles, values),
        not_rated=[part.address for part in parts if part.not_rated],
        provisional_parts=[part.address for part in parts if part.provisional], values=values,
    )
    return BridgeRating(
        bridge=kept.held(bridge)[0], parts=tuple(parts), posting=posted,
        values_used=tuple(sorted(values.used)),
        unconfirmed=tuple(row.name for row in values.unconfirmed(values.used)),
        cautions=tuple(cautions), values_hash=values.digest(),
        weights={name: vehicle.weight_tons for name, vehicle in vehicles.items()},
    )


def rated_parts(
    bridge: Bridge, vehicles: Mapping[str, Vehicle], kept: Kept
) -> tuple[list[RatedPart], list[str]]:
    """Every part of a bridge with its ratings for some vehicles, and what must be said of them.

    Raises as `rated_bridge` does.
    """
    values, table = kept.values, kept.table
    cautions = list(bridge.rules)
    bridge, said = kept.held(bridge)
    cautions += said
    if bridge.roadway is not None:
        cautions += filter(None, [lanes(bridge.road, values).caution])
    stopped = frozenset(other.address for other in bridge.others)
    parts: list[RatedPart] = []
    for truss in bridge.trusses:
        ratings: list[list[PartRating]] = [[] for _ in truss.bars]
        more: list[RatedPart] = []
        if bridge.unknown_loads:
            # Without the floor's weight no force is known: nothing is looked for.
            table.not_rated.update({bar.address: bar.not_rated for bar in truss.bars})
            reason = f"dead load not known: {'; '.join(bridge.unknown_loads)}"
            more = [*unrated_pins(truss, reason), *unrated_blocks(truss, stopped, reason)]
        else:
            states, assumed = kept.states_of(bridge, truss)
            cautions += assumed
            its = TrussRating(bridge, truss, kept=kept, states=states)
            ratings = its.all(vehicles, stopped)
            if truss.pins:
                refused = [row[0] for row in its.refused]
                more += pin_parts(bridge, truss, (its.asked, refused), kept.pins)
                cautions.append(SAID)
            more += its.blocks(stopped)
        parts += [
            RatedPart(
                address=bar.address, truss=truss.name, kind=bar.kind, bar=bar,
                not_rated=table.not_rated.get(bar.address, ""),
                ratings=() if bar.address in table.not_rated else tuple(ratings[i]),
            )
            for i, bar in enumerate(truss.bars)
        ]
        parts += [
            RatedPart(
                address=bar.address, truss=truss.name, kind=bar.kind, bar=bar,
                not_rated=bar.not_rated or "declared broken",
            )
            for bar in truss.broken
        ]
        parts += more
    parts += rated_floor(
        bridge, values, vehicles, kept.condition, wanted=kept.wanted, kept=kept.floor
    )
    parts += [
        RatedPart(address=o.address, truss=o.truss, kind=o.kind, not_rated=o.not_rated)
        for o in bridge.others
    ]
    return parts, list(dict.fromkeys(cautions))


def governing(
    parts: Sequence[RatedPart], vehicles: Mapping[str, Vehicle], values: Values
) -> list[Governing]:
    """What the posting reads: the ratings of the vehicles that set it and of emergency ones by its
    methods and levels."""
    return factors_of(parts, posting_vehicles(vehicles, values), wanted_by(values).ways)


def posting_vehicles(vehicles: Mapping[str, Vehicle], values: Values) -> dict[str, Vehicle]:
    """Those of some vehicles that set the posting, and the emergency ones; others say nothing of
    it."""
    wanted = {
        *values.names("posting.vehicles"), *values.names("posting.emergency vehicles")
    }
    return {name: vehicle for name, vehicle in vehicles.items() if name in wanted}


def factors_of(
    parts: Sequence[RatedPart], vehicles: Mapping[str, Vehicle], by: frozenset[Way] = frozenset()
) -> list[Governing]:
    """Every rating of some vehicles by a method that has a rule for the part; `by` are the methods
    and levels that alone are wanted, empty for all."""
    return [
        Governing(
            vehicle=vehicles[rating.vehicle], factor=rating.factor, method=rating.method,
            level=rating.level, part=part.address, check=rating.check,
        )
        for part in parts
        for rating in part.ratings
        if rating.vehicle in vehicles and rating.reason != NO_RULE
        and (not by or (rating.method, rating.level) in by)
    ]


