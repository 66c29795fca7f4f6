"""What a vehicle may weigh on one part: the rule of the method that rated the part."""

from dataclasses import dataclass
from math import floor

from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.terms import Level, Method
from eyebar.vehicles import Vehicle

ALIKE = 1e-9
"""Factors that differ by less are alike: the machine's last digits do not choose between them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Governing:
    """The factor of one part for one vehicle by one method at one level.

    `factor` is None where the vehicle has no effect on the part, which then restricts nothing.
    """

    vehicle: Vehicle
    factor: float | None
    method: Method
    level: Level
    part: str
    check: str

    @property
    def restricts(self) -> bool:
        """Whether the vehicle may not cross as it is."""
        return self.factor is not None and self.factor < 1.0


@formula(
    "T = W if F >= 1 else (W / d * (F - t) if F > t else 0 ton)",
    result=Symbol("safe load", "ton"),
    W=Symbol("weight of the vehicle or of the axle group", "ton", "tons"),
    F=Symbol("rating factor", "1", "factor", low=-0.5, high=1.5),
    t=Symbol("taken off the factor", "1", "taken_off", low=0.1, high=0.5),
    d=Symbol("divisor", "1", "divided_by", low=0.5, high=0.9),
    source="Bridge and Highway Structure Rehabilitation and Repair (2010), p. 187, quoting the "
    "Manual for Bridge Evaluation: W/0.7 (RF - 0.3) for factors of 0.3 to 1",
)
def safe_load_by_formula(
    tons: float, factor: float, taken_off: float, divided_by: float
) -> float:
    """Safe load by the posting formula of load and resistance [ton].

    Weight [ton], factors [1]. Scalars. Limits: the formula holds for factors of 0.3 to 1. Below,
    the vehicle is not allowed; from 1 on it counts with its own weight.
    """
    if factor >= 1.0:
        return tons
    return tons / divided_by * (factor - taken_off) if factor > taken_off else 0.0


@formula(
    "T = W if F >= 1 else max(F * W, 0 ton)",
    result=Symbol("safe load", "ton"),
    W=Symbol("weight of the vehicle or of the axle group", "ton", "tons"),
    F=Symbol("rating factor", "1", "factor", low=-0.5, high=1.5),
    source="Manual for Bridge Evaluation 6B.7.1, from memory",
)
def safe_load_by_factor(tons: float, factor: float) -> float:
    """Safe load by allowable stress or load factor [ton].

    Weight [ton], factor [1]. Scalars. Limits: from a factor of 1 on the vehicle counts with its own
    weight; below 0 there is no safe load.
    """
    return tons if factor >= 1.0 else max(factor * tons, 0.0)


def safe_load(tons: float, factor: float, method: Method, values: Values) -> float:
    """What a weight that rates at `factor` by `method` may be [ton]."""
    if method is not Method.LOAD_AND_RESISTANCE:
        return safe_load_by_factor(tons, factor)
    return safe_load_by_formula(
        tons, factor,
        values.number("posting.formula.taken off"), values.number("posting.formula.divided by"),
    )


def heaviest_group(vehicle: Vehicle, apart_ft: float) -> tuple[float, int]:
    """(weight [ton], number of axles) of a vehicle's heaviest axle group.

    Neighbouring axles no farther than `apart_ft` from each other are one group.
    """
    groups = [[vehicle.axles_kip[0]]]
    for axle, spacing in zip(vehicle.axles_kip[1:], vehicle.least_spacings_ft, strict=True):
        if spacing <= apart_ft:
            groups[-1].append(axle)
        else:
            groups.append([axle])
    heaviest = max(groups, key=sum)
    return sum(heaviest) / 2.0, len(heaviest)


def rounded_down(tons: float, values: Values) -> int:
    """Down to the office's step [tons]."""
    step = values.number("posting.step")
    return int(floor(tons / step) * step)
