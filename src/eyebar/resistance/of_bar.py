"""All the limits of one bar, by one method and level."""

from eyebar.bridge.parts import Bar
from eyebar.errors import NotMeasured
from eyebar.office import Values
from eyebar.resistance.given_stress import (
    allowed_of,
    pulls_by_given_stress,
    pushes_by_given_stress,
)
from eyebar.resistance.limit import Condition, Limit
from eyebar.resistance.pull import pulls
from eyebar.resistance.push import pushes
from eyebar.resistance.rules import Rules, rules
from eyebar.terms import Level, Metal, Method

RATED_METALS = (Metal.WROUGHT_IRON, Metal.STEEL)
"""The metals that the standards' rules of this room are for; others by a stress given."""


def limits(
    bar: Bar, *, method: Method, level: Level, dead_factor_dc: float, values: Values,
    condition: Condition,
) -> tuple[Limit, ...]:
    """Every check of a bar in pull and in push, and the axial force at which it is reached [kip].

    `dead_factor_dc` is the factor that the bar's own weight bends it with. A bar that cannot push
    has no limits in push, one that cannot pull none in pull. Raises NotMeasured, naming the part,
    where a size or a strength is unknown; OutOfRange where the method has no such level, or a size
    lies outside a rule. Cast iron and timber have limits by allowable stress alone, where the
    record gives one; by the other methods none (no rule).
    """
    found = rules(method, level, values=values, condition=condition, section=bar.left)
    try:
        if bar.material.metal not in RATED_METALS:
            allowed_of(bar)
            if method is not Method.ALLOWABLE_STRESS:
                return ()
        pull = _in_pull(bar, found, values) if bar.can_pull else ()
        push = _in_push(bar, found, values, dead_factor_dc) if bar.can_push else ()
    except NotMeasured as missing:
        raise NotMeasured(bar.address, missing.what) from None
    return pull + push


def _in_pull(bar: Bar, found: Rules, values: Values) -> tuple[Limit, ...]:
    return tuple(
        Limit(
            check=one.check, method=found.method, level=found.level, sense=1, force=one.force,
            capacity=one.force, unit="kip", remarks=found.remarks + one.remarks,
        )
        for one in (
            pulls(bar, found, values) if bar.material.metal in RATED_METALS
            else pulls_by_given_stress(bar, found, values)
        )
    )


def _in_push(
    bar: Bar, found: Rules, values: Values, dead_factor_dc: float
) -> tuple[Limit, ...]:
    return tuple(
        Limit(
            check=one.check, method=found.method, level=found.level, sense=-1, force=-one.thrust,
            capacity=1.0 if one.is_ratio else one.thrust, unit="ratio" if one.is_ratio else "kip",
            remarks=found.remarks + one.remarks,
        )
        for one in (
            pushes(bar, found, values, dead_factor_dc) if bar.material.metal in RATED_METALS
            else pushes_by_given_stress(bar, found, values)
        )
    )
