"""The ends of bars on the blocks and shoes of their joints, where the record gives a stress."""

from eyebar.bridge.parts import Bar, Seat
from eyebar.office import Values
from eyebar.resistance.found import Push, pushed
from eyebar.resistance.given_stress import force_at_given_stress
from eyebar.resistance.rules import Rules
from eyebar.terms import Level, Metal, Method


def pushes_on_seats(bar: Bar, rules: Rules, values: Values) -> list[Push]:
    """The push at which each block that a bar bears on is used up.

    By allowable stress alone; a block without a stress or an area is told among the parts that are
    not rated, and is no check of its bars.
    """
    if rules.method is not Method.ALLOWABLE_STRESS:
        return []
    return [
        pushed(
            f"bearing on the block at {seat.joint}",
            force_at_given_stress(_times(seat, rules, values), seat.allowed, seat.area),
            (f"stress given by the record: {seat.source}",),
        )
        for seat in bar.seats if seat.allowed is not None and seat.area is not None
    ]


def _times(seat: Seat, rules: Rules, values: Values) -> float:
    if rules.level is not Level.OPERATING:
        return 1.0
    kind = "timber" if seat.metal is Metal.TIMBER else "cast iron"
    return values.number(f"{kind}.operating over inventory")
