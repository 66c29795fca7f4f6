"""The numbers of a method and level for parts of the floor, and what one strength of theirs is."""

from dataclasses import dataclass, replace
from enum import StrEnum

from eyebar.office import Values
from eyebar.resistance.limit import Condition
from eyebar.resistance.rules import Rules, condition_and_system, condition_factor, rules
from eyebar.sections.shapes import PlatesAndAngles, Side, Toes
from eyebar.terms import Level, Method

_RIVETED = PlatesAndAngles(
    near=Side(web=None, top=None, bottom=None), far=Side(web=None, top=None, bottom=None),
    middle=None, apart=None, toes=Toes.OUT,
)


class Effect(StrEnum):
    """What of the loads a strength is compared with."""

    MOMENT = "moment"
    SHEAR = "shear"
    REACTION = "reaction"
    STRINGER = "load of one stringer"
    TIMBER_SHEAR = "shear of timber under wheels"
    RODS = "pull of truss rods"
    HUNG = "hung load"
    PLANK_MOMENT = "moment of the deck"
    PLANK_SHEAR = "shear of the deck"
    PLANK_PUSH = "push of the deck"
    TRUSS_REACTION = "reaction of the truss"
    TRUSS_UPLIFT = "uplift of the truss"
    UPLIFT = "uplift at a seat"
    BRACKET = "load of a sidewalk"
    SIMPLE_MOMENT = "moment of a simple span"


@dataclass(frozen=True, slots=True, kw_only=True)
class Strength:
    """One check of a part of the floor by a method and level.

    The effect over `divisor` (in3, in2, or 1) is compared with `capacity` in `unit` (`ksi`, `kip`).
    It holds from `begin_ft` to `end_ft` along the part, or at its end 0 or 1. `sense` -1 for a
    moment that stretches the upper edge. `service`: with the load factors of a service check.
    """

    check: str
    effect: Effect
    capacity: float
    unit: str
    divisor: float
    begin_ft: float = 0.0
    end_ft: float = 0.0
    end: int = 0
    sense: int = 1
    service: bool = False
    remarks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class FloorRules:
    """`bending`: the rules with the system factor of the part; `shear`: with that of shear."""

    bending: Rules
    shear: Rules


def floor_rules(
    method: Method, level: Level, *, system: str, values: Values, condition: Condition
) -> FloorRules:
    """The rules of a part of the floor whose system factor is the row `system`.

    Raises OutOfRange where the method has no such level.
    """
    common = rules(method, level, values=values, condition=condition, section=_RIVETED)
    if method is not Method.LOAD_AND_RESISTANCE:
        return FloorRules(bending=common, shear=common)
    sound, remarks = condition_factor(values, condition)
    least = values.number("condition and system.least product")
    bending, shear = (
        replace(
            common, remarks=remarks,
            reduction=condition_and_system(sound, values.number(f"system factor.{row}"), least),
        )
        for row in (system, "shear")
    )
    return FloorRules(bending=bending, shear=shear)
