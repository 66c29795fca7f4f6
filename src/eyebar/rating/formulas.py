"""The closed forms of a rating: where a force reaches its limit, and what factor that makes."""

from typing import Any

from eyebar.formula import Symbol, formula

Number = Any
"""A float, or an array of them."""


@formula(
    "m = m1 + (C - N1) / (N2 - N1) * (m2 - m1)",
    result=Symbol("multiple of the axles at which the force reaches its limit", "1"),
    C=Symbol("force at the limit", "kip", "limit"),
    N1=Symbol("force at the last event before", "kip", "force_before", low=-50.0, high=0.0),
    N2=Symbol("force at the next event", "kip", "force_after", low=10.0, high=100.0),
    m1=Symbol("multiple at the last event before", "1", "multiple_before"),
    m2=Symbol("multiple at the next event", "1", "multiple_after"),
    source="straight line between two events of a growing load",
)
def multiple_at_limit(
    *, limit: Number, force_before: Number, force_after: Number, multiple_before: Number,
    multiple_after: Number,
) -> Number:
    """The multiple of the axles at which a force reaches its limit [1].

    Forces [kip], multiples [1]; scalars or arrays. Limits: the force changes between the events.
    """
    part = (limit - force_before) / (force_after - force_before)
    return multiple_before + part * (multiple_after - multiple_before)


@formula(
    "RF = m / k / (gL * (1 + I) * s)",
    result=Symbol("rating factor", "1"),
    m=Symbol("multiple of the axles at which the limit is reached", "1", "multiple"),
    k=Symbol("axles of the vehicle over those of the load that was followed", "1", "scale"),
    gL=Symbol("live load factor", "1", "live_factor"),
    I=Symbol("impact", "1", "impact"),
    s=Symbol("share of the axles that comes to the truss, with multiple presence", "1", "share"),
    source="Manual for Bridge Evaluation, general rating equation solved along the load's path, "
    "from memory",
)
def rating_factor(
    *, multiple: Number, scale: float, live_factor: float, impact: Number, share: float
) -> Number:
    """The rating factor of a part [1] from the multiple of axles it bears.

    All [1]; scalars or arrays. Limits: scale, factors and share over 0.
    """
    return multiple / scale / (live_factor * (1.0 + impact) * share)


@formula(
    "RF = (C - D) / (gL * L * (1 + I))",
    result=Symbol("plain rating factor", "1"),
    C=Symbol("force at the limit", "kip", "limit"),
    D=Symbol("force under factored dead load", "kip", "factored_dead"),
    L=Symbol("live force by the bars that work under dead load", "kip", "live"),
    gL=Symbol("live load factor", "1", "live_factor"),
    I=Symbol("impact", "1", "impact"),
    source="Manual for Bridge Evaluation, general rating equation, from memory",
)
def plain_rating_factor(
    *, limit: float, factored_dead: float, live: float, live_factor: float, impact: float,
) -> float:
    """The factor if no bar went slack or taut on the way [1].

    Forces [kip], signed; factors [1]; scalars or arrays. Limits: a live force other than zero.
    """
    return (limit - factored_dead) / (live_factor * live * (1.0 + impact))


@formula(
    "T = RF * W",
    result=Symbol("safe load of a vehicle of this shape", "ton"),
    RF=Symbol("rating factor", "1", "factor"),
    W=Symbol("weight of the vehicle", "ton", "weight_tons"),
    source="Manual for Bridge Evaluation, from memory",
)
def rated_tons(factor: float, weight_tons: float) -> float:
    """What a vehicle of this shape may weigh [ton of 2,000 lb].

    Factor [1], weight [ton]; scalars or arrays. Limits: none.
    """
    return factor * weight_tons
