"""Levels and live load factors of each method, by class of vehicle and by traffic."""

from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.terms import Level, Method, VehicleClass


@formula(
    "g = a + (b - a) * min(max((n - p) / (q - p), 0), 1)",
    result=Symbol("live load factor", "1"),
    a=Symbol("factor where traffic is low", "1", "low_factor"),
    b=Symbol("factor where traffic is high", "1", "high_factor"),
    n=Symbol("trucks a day in one direction", "1/day", "trucks_a_day", low=0.0, high=8000.0),
    p=Symbol("trucks a day up to which traffic is low", "1/day", "low_traffic", 500.0, 1500.0),
    q=Symbol("trucks a day from which traffic is high", "1/day", "high_traffic", 4000.0, 6000.0),
    source="Manual for Bridge Evaluation Table 6A.4.4.2.3a-1: straight between, from memory",
)
def factor_by_traffic(
    *, low_factor: float, high_factor: float, trucks_a_day: float, low_traffic: float,
    high_traffic: float,
) -> float:
    """Live load factor of a legal load by the trucks of a day [1].

    Factors [1], trucks [1/day]. Scalars. Limits: low traffic below high traffic.
    """
    part = (trucks_a_day - low_traffic) / (high_traffic - low_traffic)
    return low_factor + (high_factor - low_factor) * min(max(part, 0.0), 1.0)


def levels(method: Method, vehicle_class: VehicleClass) -> tuple[Level, ...]:
    """The levels at which a method rates a class of vehicles, the lower first."""
    by_resistance = method is Method.LOAD_AND_RESISTANCE
    if by_resistance and vehicle_class is not VehicleClass.DESIGN:
        return (Level.LEGAL,)
    return (Level.INVENTORY, Level.OPERATING)


def live_factor(
    *, method: Method, level: Level, vehicle_class: VehicleClass, trucks_a_day: float | None,
    values: Values,
) -> float:
    """The factor on the live load [1]; unknown traffic counts as high.

    Raises OutOfRange where the method has no such level for the class.
    """
    if level not in levels(method, vehicle_class):
        choice = " or ".join(levels(method, vehicle_class))
        raise OutOfRange(f"level of a {vehicle_class} vehicle by {method}", level, choice)
    if method is not Method.LOAD_AND_RESISTANCE:
        return values.number(f"live factor.{method}.{level}")
    if vehicle_class is VehicleClass.DESIGN:
        return values.number(f"live factor.design.{level}")
    if vehicle_class is VehicleClass.EMERGENCY:
        return values.number("live factor.emergency")
    if trucks_a_day is None:
        return values.number("live factor.legal.high traffic")
    return factor_by_traffic(
        low_factor=values.number("live factor.legal.low traffic"),
        high_factor=values.number("live factor.legal.high traffic"),
        trucks_a_day=trucks_a_day,
        low_traffic=values.number("traffic.low"),
        high_traffic=values.number("traffic.high"),
    )
