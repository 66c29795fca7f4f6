"""What is asked of a bridge: which methods and levels rate a vehicle, all vehicles as arrays."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from eyebar.loads.dead import DeadSet, dead_sets, factor_with_details
from eyebar.loads.live import levels, live_factor
from eyebar.office import Values
from eyebar.terms import Combine, Level, Method, VehicleClass
from eyebar.vehicles import Vehicle

Floats = NDArray[np.float64]
SERVICE = "service"


def methods_of(vehicle: Vehicle) -> tuple[Method, ...]:
    """The methods by which a vehicle is rated: each generation of design load by its own."""
    if vehicle.combine is Combine.SUM:
        return (Method.LOAD_AND_RESISTANCE,)
    if vehicle.vehicle_class is VehicleClass.DESIGN:
        return (Method.ALLOWABLE_STRESS, Method.LOAD_FACTOR)
    return tuple(Method)


Way = tuple[Method, Level]


@dataclass(frozen=True, slots=True)
class Wanted:
    """By which methods and levels alone ratings are wanted: pairs of one and of the other that
    stands in its place for a part that has no rule by it. Without pairs all are."""

    pairs: tuple[tuple[Way, Way], ...] = ()

    @property
    def ways(self) -> frozenset[Way]:
        """All of them; none where everything is wanted."""
        return frozenset(way for pair in self.pairs for way in pair)

    def of(self, vehicle: Vehicle) -> tuple[Way, ...]:
        """The methods and levels by which a vehicle is rated, whatever rules a part has."""
        return ways_of(vehicle, self.ways)

    def of_ruled(self, vehicle: Vehicle) -> tuple[Way, ...]:
        """Those for a part that has a rule by the first of every pair: of the others only what
        stands in the place of a first that is not for the vehicle."""
        found = self.of(vehicle)
        if not self.pairs:
            return found
        needed = {first if first in found else other for first, other in self.pairs}
        return tuple(way for way in found if way in needed)

    def unruled(self, ruled: Callable[[Way], bool]) -> bool:
        """Whether a part has no rule by the first of some pair, so that the other counts."""
        return not all(ruled(first) for first, _ in self.pairs)


EVERYTHING = Wanted()


def ways_of(vehicle: Vehicle, wanted: frozenset[Way] = frozenset()) -> tuple[Way, ...]:
    """The methods and levels by which a vehicle is rated; of some that are `wanted` alone."""
    return tuple(
        (method, level)
        for method in methods_of(vehicle)
        for level in levels(method, vehicle.vehicle_class)
        if not wanted or (method, level) in wanted
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One method and level, and the vehicles that it rates: their places (v,) among all, live load
    factors (v,) for strength and service, and dead-load factors by the name of their set."""

    method: Method
    level: Level
    rows: NDArray[np.intp]
    live: Floats
    service_live: Floats
    dead: Mapping[str, tuple[float, float]]


def service_factor(
    method: Method, level: Level, vehicle_class: VehicleClass, values: Values
) -> float:
    """Live load factor of the service check [1]; 1 by allowable stress, which has none."""
    row = f"service.live factor.{method}"
    if method is Method.ALLOWABLE_STRESS:
        return 1.0
    if method is Method.LOAD_AND_RESISTANCE and vehicle_class is VehicleClass.DESIGN:
        return values.number(f"{row}.design.{level}")
    return values.number(f"{row}.{level}")


def dead_factors(
    method: Method, *, surfacing_measured: bool, values: Values
) -> Mapping[str, tuple[float, float]]:
    """Name of a set -> factors on DC and DW: greatest, least, and that of service checks."""
    found: list[DeadSet] = [
        *dead_sets(method, surfacing_measured=surfacing_measured, values=values)
    ]
    factor = values.number("service.dead factor")
    details = factor_with_details(factor, values.number("allowance for details"))
    return {**{one.name: (one.dc, one.dw) for one in found}, SERVICE: (details, factor)}


def asked_of(
    vehicles: Mapping[str, Vehicle], *, trucks_a_day: float | None, surfacing_measured: bool,
    values: Values, ways: Callable[[Vehicle], Sequence[Way]] = ways_of,
) -> Iterator[Asked]:
    """Every method and level with the vehicles that it rates, by the `ways` of each."""
    rated: dict[Way, list[int]] = {}
    for row, vehicle in enumerate(vehicles.values()):
        for way in ways(vehicle):
            rated.setdefault(way, []).append(row)
    everything = list(vehicles.values())
    for (method, level), rows in rated.items():
        classes = [everything[row].vehicle_class for row in rows]
        yield Asked(
            method=method, level=level, rows=np.array(rows, dtype=np.intp),
            live=np.array([
                live_factor(
                    method=method, level=level, vehicle_class=one, trucks_a_day=trucks_a_day,
                    values=values,
                )
                for one in classes
            ]),
            service_live=np.array([
                service_factor(method, level, one, values) for one in classes
            ]),
            dead=dead_factors(method, surfacing_measured=surfacing_measured, values=values),
        )
