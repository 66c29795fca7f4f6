"""What the use of the road is worth: the posting made again under a rule, a curb, without asphalt.

The weight of a curb or a fence that would hold traffic is not counted; it is the engineer's to add.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from eyebar.bridge.parts import Bridge, Use
from eyebar.office import Values
from eyebar.rating.kept import Kept, kept_for
from eyebar.rating.posting import Posting, wanted_by
from eyebar.rating.rate import posting_vehicles, rated_bridge
from eyebar.rating.rated import BridgeRating
from eyebar.terms import Pace, RoadUse
from eyebar.vehicles import Vehicle

SURFACING = "surfacing"
"""What the record calls the layer on the deck."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Worth:
    """The posting under one use of the road. `not_here` says why it cannot be had, else empty."""

    use: RoadUse
    posting: Posting | None
    not_here: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Worths:
    """The rating as the road is used, and the posting under each other use."""

    rating: BridgeRating
    worths: tuple[Worth, ...]
    values: Values


def without_surfacing(bridge: Bridge) -> Bridge | None:
    """The bridge without the layer on its deck; None where none is recorded."""
    weights = {
        truss: tuple(one for one in items if one.name != SURFACING)
        for truss, items in bridge.weights.items()
    }
    if all(len(weights[truss]) == len(bridge.weights[truss]) for truss in weights):
        return None
    floor = bridge.floor
    if floor is not None:
        layers = tuple(one for one in floor.layers if one.name != SURFACING)
        floor = replace(floor, layers=layers)
    return replace(bridge, weights=weights, floor=floor)


def use_worth(bridge: Bridge, values: Values, vehicles: Mapping[str, Vehicle]) -> Worths:
    """The posting under each use of the road, and under all together.

    Raises Unstable, OutOfRange and NotMeasured where no forces can be found at all.
    """
    kept = kept_for(bridge, values, wanted_by(values))
    setting = posting_vehicles(vehicles, kept.values)
    now = rated_bridge(bridge, values, setting, kept)
    held = kept.values.number("crossing.beside the middle")
    uses = {
        RoadUse.CURB: Use(held_ft=held),
        RoadUse.WALKING: Use(pace=Pace.WALKING),
        RoadUse.ALONE: Use(alone=True),
    }
    found = [
        Worth(use=use, posting=_posting(bridge, of, setting, kept)) for use, of in uses.items()
    ]
    bare = without_surfacing(bridge)
    every = Use(alone=True, held_ft=held, pace=Pace.WALKING)
    if bare is None:
        found.append(Worth(
            use=RoadUse.BARE, posting=None, not_here="no surfacing is recorded on this deck"
        ))
        together = _posting(bridge, every, setting, kept)
    else:
        other = kept_for(bare, kept.values, kept.wanted)
        found.append(Worth(
            use=RoadUse.BARE, posting=rated_bridge(bare, values, setting, other).posting
        ))
        together = _posting(bare, every, setting, other)
    found.append(Worth(use=RoadUse.TOGETHER, posting=together))
    return Worths(rating=now, worths=tuple(found), values=kept.values)


def _posting(bridge: Bridge, use: Use, vehicles: Mapping[str, Vehicle], kept: Kept) -> Posting:
    used = replace(bridge, roadway=replace(bridge.road, use=use))
    return rated_bridge(used, kept.values, vehicles, kept).posting
