"""What is asked of a bridge: which methods and levels rate a vehicle, all vehicles as arrays."""

from collections.abc import Iterator, Mapping
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


Ways = frozenset[tuple[Method, Level]]
"""Methods and levels by which alone a rating is wanted; empty for all."""


def ways_of(vehicle: Vehicle, wanted: Ways = frozenset()) -> tuple[tuple[Method, Level], ...]:
    """The methods and levels by which a vehicle is rated."""
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
    values: Values, wanted: Ways = frozenset(),
) -> Iterator[Asked]:
    """Every method and level with the vehicles that it rates."""
    rated: dict[tuple[Method, Level], list[int]] = {}
    for row, vehicle in enumerate(vehicles.values()):
        for way in ways_of(vehicle, wanted):
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
