"""What a rating says: frozen results with the facts from which their working is made again."""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from operator import attrgetter

from eyebar.bridge.floor_parts import FloorPart
from eyebar.bridge.parts import Bar, Bridge, Pin, Seat
from eyebar.rating.floor_facts import FloorFacts
from eyebar.rating.posting import Posting
from eyebar.resistance import Limit
from eyebar.terms import Direction, Kind, Level, Method

NO_RULE = "no rule by this method"
"""The reason where a method has no rule for a part; its ratings then do not count."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where a vehicle stands: station of its front axle from end 0 [ft], the way it travels, all
    spacings front to rear [ft]."""

    front_axle_ft: float
    direction: Direction
    spacing_ft: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """A bar that goes `slack` or `taut` when the vehicle at the place has grown by `factor`."""

    factor: float
    bar: str
    goes: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Facts:
    """The stretch of the load's path on which the limit is reached: multiples [1] of the load that
    was followed and forces of the part [kip] at its ends; `scale`, the vehicle's axles over that
    load's; `factored_dead` [kip], the part's force under factored dead load; `loaded_ft`, length of
    road on which a weight acts on the part in the limit's sense."""

    multiple_before: float
    multiple_after: float
    force_before: float
    force_after: float
    factored_dead: float
    scale: float
    loaded_ft: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PinFacts:
    """The stretch of the load's path on which a pin's check is reached, as in Facts, with all its
    bars' forces (b,) [kip] at both ends; `part` [1] how far along it the check is reached."""

    bars: tuple[str, ...]
    forces_before: tuple[float, ...]
    forces_after: tuple[float, ...]
    part: float
    multiple_before: float
    multiple_after: float
    scale: float
    loaded_ft: float
    span_ft: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PartRating:
    """The least factor of a part for one vehicle, method and level.

    `factor` None with `reason` where there is none. `capacity` in `unit` is what the check compares
    (`kip` for plain axial strength, `ratio` for thrust with bending), `limit_kip` the signed axial
    force at which it is reached. `dead` [kip] is the part's force under unfactored dead load,
    `live` [kip] that of the vehicle at the place, times `share`, by the bars that work under the
    factored dead load. `share` multiplies the axles beside `factor`, `live_factor`, 1 + `impact`.
    `pull` tells whether the counters' measured pull was in the bars: `none` or `measured`.
    Of a part of the floor `dead` and `live` are in `unit`, and `limit_kip` is None.
    """

    vehicle: str
    method: Method
    level: Level
    factor: float | None
    reason: str = ""
    plain_factor: float | None = None
    tons: float | None = None
    check: str = ""
    capacity: float | None = None
    unit: str = ""
    limit_kip: float | None = None
    dead: float | None = None
    live: float | None = None
    dead_factors: tuple[float, float] = (1.0, 1.0)
    live_factor: float = 1.0
    impact: float = 0.0
    share: float = 1.0
    lanes: int = 1
    at: Place | None = None
    events: tuple[Event, ...] = ()
    pull: str = "none"
    limit: Limit | None = None
    facts: Facts | None = None
    pin_facts: PinFacts | None = None
    """Of a pin, on which several forces act together: then `dead`, `live` and `limit_kip` are None,
    and `capacity` is the ratio 1."""
    floor: FloorFacts | None = None
    of_bar: str = ""
    """Of a block: the bar whose push on it is meant."""

    def elsewhere(self, at: Place) -> "PartRating":
        """The same rating of a part alike that stands elsewhere along the road."""
        # A floor has thousands: `dataclasses.replace` takes three times as long.
        made = object.__new__(PartRating)
        for put, value in zip(_PUT, _values_of(self), strict=True):
            put(made, value)
        _put_at(made, at)
        return made


_FIELDS = tuple(one.name for one in fields(PartRating))
_values_of = attrgetter(*_FIELDS)
_PUT = tuple(getattr(PartRating, name).__set__ for name in _FIELDS)
_put_at = _PUT[_FIELDS.index("at")]


@dataclass(frozen=True, slots=True, kw_only=True)
class RatedPart:
    """A part with its ratings, or the reason for which it is not rated."""

    address: str
    truss: str | None
    kind: Kind
    not_rated: str = ""
    ratings: tuple[PartRating, ...] = ()
    bar: Bar | None = None
    pin: Pin | None = None
    provisional: str = ""
    """Why the ratings, as long as this stands, let the posting be no more than provisional."""
    floor: FloorPart | None = None
    seat: Seat | None = None

    @property
    def readings(self) -> tuple[str, ...]:
        """The readings that its sections rest on, in words."""
        known = self.bar or self.floor
        return known.readings if known else ()


@dataclass(frozen=True, slots=True, kw_only=True)
class BridgeRating:
    """The whole rating of a bridge on a date."""

    bridge: Bridge
    parts: tuple[RatedPart, ...]
    posting: Posting
    values_used: tuple[str, ...]
    unconfirmed: tuple[str, ...]
    cautions: tuple[str, ...]
    values_hash: str
    weights: Mapping[str, float]
    """Vehicle -> weight [tons]."""
