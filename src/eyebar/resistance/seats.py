"""The ends of bars on the blocks and shoes of their joints, where the record gives a stress."""

from eyebar.bridge.parts import Seat
from eyebar.errors import NotMeasured
from eyebar.office import Values
from eyebar.resistance.given_stress import force_at_given_stress
from eyebar.resistance.limit import Limit
from eyebar.terms import Level, Metal, Method


def push_on_seat(seat: Seat, bar: str, level: Level, values: Values) -> Limit:
    """The push of a bar at which the block that it bears on is used up.

    By allowable stress, which alone has a rule. Raises NotMeasured for a block without a stress or
    an area.
    """
    if seat.allowed is None or seat.area is None:
        raise NotMeasured("", f"strength of the block at {seat.joint}")
    push = force_at_given_stress(_times(seat, level, values), seat.allowed, seat.area)
    return Limit(
        check=f"bearing of {bar}", method=Method.ALLOWABLE_STRESS, level=level, sense=-1,
        force=-push, capacity=push, unit="kip",
        remarks=(f"stress given by the record: {seat.source}",),
    )


def _times(seat: Seat, level: Level, values: Values) -> float:
    if level is not Level.OPERATING:
        return 1.0
    kind = "timber" if seat.metal is Metal.TIMBER else "cast iron"
    return values.number(f"{kind}.operating over inventory")
