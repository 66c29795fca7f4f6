"""Factors for the tests of the posting, without a bridge behind them."""

from collections.abc import Mapping

from eyebar.office import Values, office_values
from eyebar.rating.posting import Governing, Posting, posting
from eyebar.terms import Level, Method
from eyebar.vehicles import shipped_vehicles

VEHICLES = shipped_vehicles()
RESISTANCE = (Method.LOAD_AND_RESISTANCE, Level.LEGAL)
OPERATING = (Method.ALLOWABLE_STRESS, Level.OPERATING)
INVENTORY = (Method.ALLOWABLE_STRESS, Level.INVENTORY)


def policy(method: str, level: str) -> Values:
    return office_values(exceptions={
        "posting.method": (method, "word", "trial"), "posting.level": (level, "word", "trial"),
    })


def one(
    vehicle: str, factor: float | None, by: tuple[Method, Level] = RESISTANCE,
    part: str = "upstream/U1-L2",
) -> Governing:
    return Governing(
        vehicle=VEHICLES[vehicle], factor=factor, method=by[0], level=by[1], part=part,
        check="body",
    )


def all_of(
    factors: Mapping[str, float], by: tuple[Method, Level] = RESISTANCE, otherwise: float = 1.5
) -> list[Governing]:
    """One part with a factor for every vehicle that sets the posting."""
    names = ("Type 3", "Type 3S2", "Type 3-3", "SU4", "SU5", "SU6", "SU7")
    return [one(name, factors.get(name, otherwise), by) for name in names]


def posted(
    factors: list[Governing], *, not_rated: tuple[str, ...] = (), values: Values | None = None
) -> Posting:
    return posting(factors, not_rated=not_rated, values=values or office_values())
