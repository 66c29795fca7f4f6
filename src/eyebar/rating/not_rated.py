"""Which parts of a bridge cannot be rated as it is known, and why, without finding any force."""

from eyebar.bridge.parts import Bridge
from eyebar.office import Values
from eyebar.rating.floor import unrated_floor
from eyebar.rating.strengths import StrengthTable
from eyebar.resistance import Condition
from eyebar.terms import Level, Method

WAYS = (
    (Method.ALLOWABLE_STRESS, Level.INVENTORY), (Method.LOAD_FACTOR, Level.OPERATING),
    (Method.LOAD_AND_RESISTANCE, Level.LEGAL),
)
"""One level of each method, as a strength that is known at one is known at all."""


def unrated_parts(bridge: Bridge, values: Values) -> list[tuple[str, str]]:
    """(address, reason) of every part that has no rating by any method."""
    condition = Condition(
        superstructure_condition=bridge.superstructure_condition,
        loss_measured=bridge.condition_measured,
    )
    table = StrengthTable(values=values.watched(), condition=condition)
    found: list[tuple[str, str]] = []
    for truss in bridge.trusses:
        for method, level in WAYS:
            table.of(truss.bars, method, level, 1.0)
        found += [(b.address, table.not_rated[b.address]) for b in truss.bars
                  if b.address in table.not_rated]
        found += [(b.address, b.not_rated or "declared broken") for b in truss.broken]
    found += unrated_floor(bridge, values.watched(), condition, WAYS)
    return found + [(other.address, other.not_rated) for other in bridge.others]
