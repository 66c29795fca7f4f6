"""The working of one rating of a pin, made again by the formulas that made the result."""

import numpy as np

from eyebar.analysis.model import Floats
from eyebar.bridge.parts import Bridge, Pin
from eyebar.formula import note, recording
from eyebar.loads import lane_cases, live_factor, shares, worst_case
from eyebar.office import Values
from eyebar.rating.entries import WEIGHTLESS
from eyebar.rating.formulas import rated_tons
from eyebar.rating.pin_checks import (
    PinRules,
    check_name,
    pin_check,
    pin_rows,
    pin_rules,
    worked,
)
from eyebar.rating.pins import factor_of, pin_impact
from eyebar.rating.rated import PartRating, PinFacts, RatedPart
from eyebar.rating.replay import Replay
from eyebar.resistance import Condition
from eyebar.vehicles import Vehicle


def pin_replayed(
    bridge: Bridge, part: RatedPart, rating: PartRating, *, vehicle: Vehicle, values: Values
) -> Replay:
    """The working of one rating of a pin: its check at the forces, then the factor."""
    facts, factor, ratio = rating.pin_facts, None, None
    pin = part.pin
    assert pin is not None, "a pin's ratings come with it"
    named = "" if facts is None else _check(bridge, pin, rating, facts, values)
    with recording() as steps:
        across = shares(bridge.road, part.truss or "", vehicle, values)
        case = worst_case(lane_cases(across, rating.method, values))
        note("share with multiple presence", "s", case.total, "1")
        factor_of_load = live_factor(
            method=rating.method, level=rating.level, vehicle_class=vehicle.vehicle_class,
            trucks_a_day=bridge.road.trucks_a_day, values=values,
        )
        note("live load factor", "gL", factor_of_load, "1")
        shock = 0.0
        if facts is not None:
            shock = pin_impact(
                bridge, pin, vehicle, rating.method,
                lengths=(facts.loaded_ft, facts.span_ft), values=values,
            )
            note("impact", "I", shock, "1")
            ratio = _worked(bridge, pin, rating, facts, values=values, named=named)
            factor = factor_of(
                facts, scale=facts.scale, live_factor=factor_of_load, impact=shock,
                share=case.total,
            )
        tons = None
        if factor is not None and vehicle.combine not in WEIGHTLESS:
            tons = rated_tons(factor, vehicle.weight_tons)
    return Replay(
        steps=tuple(steps), limit_kip=None, capacity=None if ratio is None else 1.0,
        share=case.total, live_factor=factor_of_load, impact=shock, factor=factor,
        plain_factor=None, tons=tons,
    )


def rules_of(bridge: Bridge, rating: PartRating, values: Values) -> PinRules:
    """The numbers by which a pin's rating was made."""
    return pin_rules(
        rating.method, rating.level, values=values,
        condition=Condition(
            superstructure_condition=bridge.superstructure_condition,
            loss_measured=bridge.condition_measured,
        ),
    )


def reached(facts: PinFacts) -> Floats:
    """(b,) forces of the pin's bars where its check is reached [kip]."""
    begin, end = np.array(facts.forces_before), np.array(facts.forces_after)
    forces: Floats = begin + facts.part * (end - begin)
    return forces


def _check(
    bridge: Bridge, pin: Pin, rating: PartRating, facts: PinFacts, values: Values
) -> str:
    """What the greatest of the pin's checks is called."""
    rows, by = pin_rows(pin), rules_of(bridge, rating, values)
    return check_name(rows, by, int(pin_check(rows, by).ratios(reached(facts)).argmax()))


def _worked(
    bridge: Bridge, pin: Pin, rating: PartRating, facts: PinFacts, *,
    values: Values, named: str,
) -> float | None:
    """The governing check under the forces at which it is reached: 1, or over it where dead load
    alone is too much; None where equilibrium ends first."""
    note("part of the way between two events at which the check is reached", "p", facts.part, "1")
    if rating.capacity is None:
        return None
    ratio = worked(pin_rows(pin), rules_of(bridge, rating, values), reached(facts), named)
    note("the check as part of its limit", "q", ratio, "1")
    return ratio
