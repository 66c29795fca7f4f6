"""What each method and level makes of a metal's strength."""

from dataclasses import dataclass

from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.resistance.limit import Condition
from eyebar.sections.shapes import Eyebars, Given, Rods, Section
from eyebar.terms import Level, Method

CONDITION = Symbol("condition factor", "1", low=0.5, high=1.0)
SYSTEM = Symbol("system factor", "1", low=0.5, high=1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rules:
    """The numbers of one method and level for one bar.

    `tension`, `net`, `bending`: by allowable stress the part of the strength that may be used, by
    load and resistance the resistance factor, by load factor 1. `column`: by allowable stress the
    factor of safety, else the part of the strength. `reduction` is the product of condition and
    system factor by load and resistance, else 1.
    """

    method: Method
    level: Level
    tension: float
    net: float
    bending: float
    column: float
    reduction: float
    remarks: tuple[str, ...] = ()


def rules(
    method: Method, level: Level, *, values: Values, condition: Condition, section: Section
) -> Rules:
    """The numbers of this method and level for a bar of this section.

    Raises OutOfRange where allowable stress or load factor is asked for at a level it has not.
    """
    match method:
        case Method.ALLOWABLE_STRESS:
            _older(method, level)
            return Rules(
                method=method, level=level, reduction=1.0,
                tension=values.number(f"allowable.tension.{level}"),
                net=values.number(f"allowable.net section.{level}"),
                bending=values.number(f"allowable.bending.{level}"),
                column=values.number(f"column.factor of safety.{level}"),
            )
        case Method.LOAD_FACTOR:
            _older(method, level)
            return Rules(
                method=method, level=level, tension=1.0, net=1.0, bending=1.0, reduction=1.0,
                column=values.number("column.part of strength.load-factor"),
            )
        case Method.LOAD_AND_RESISTANCE:
            reduction, remarks = _reduction(values, condition, section)
            return Rules(
                method=method, level=level, reduction=reduction, remarks=remarks,
                tension=values.number("resistance factor.tension yield"),
                net=values.number("resistance factor.tension fracture"),
                bending=values.number("resistance factor.flexure"),
                column=values.number("resistance factor.compression"),
            )


def _older(method: Method, level: Level) -> None:
    if level not in (Level.INVENTORY, Level.OPERATING):
        raise OutOfRange(f"level by {method}", level.value, "inventory or operating")


def _reduction(
    values: Values, condition: Condition, section: Section
) -> tuple[float, tuple[str, ...]]:
    sound, remarks = condition_factor(values, condition)
    system, more = _system(values, section)
    least = values.number("condition and system.least product")
    return condition_and_system(sound, system, least), remarks + more


def condition_factor(values: Values, condition: Condition) -> tuple[float, tuple[str, ...]]:
    """Condition factor by load and resistance [1], and remarks on it."""
    code = condition.superstructure_condition
    word = "poor" if code is None or code < 5 else "fair" if code == 5 else "good"
    factor = values.number(f"condition factor.{word}")
    remarks = ("superstructure not coded: the condition factor of a poor one",) * (code is None)
    if condition.loss_measured:
        raised = values.number("condition factor.raise where measured")
        factor = raised_condition_factor(factor, raised)
    return factor, remarks


def _system(values: Values, section: Section) -> tuple[float, tuple[str, ...]]:
    match section:
        case Eyebars(bars=pieces) | Rods(rods=pieces):
            row = "several eyebars" if len(pieces) > 1 else "single bar"
            return values.number(f"system factor.{row}"), ()
        case Given():
            remark = "make not recorded: the system factor of a single bar"
            return values.number("system factor.single bar"), (remark,)
        case _:
            return values.number("system factor.riveted"), ()


@formula(
    "phi_c = min(phi_0 + d, 1)",
    result=CONDITION,
    phi_0=Symbol("condition factor by code", "1", "factor", low=0.5, high=1.0),
    d=Symbol("raise where the loss was measured", "1", "raised", low=0.0, high=0.1),
    source="Manual for Bridge Evaluation 6A.4.2.3, from memory",
)
def raised_condition_factor(factor: float, raised: float) -> float:
    """Condition factor where the loss of section was measured [1].

    Plain numbers [1]. Scalars. Limits: never above 1.
    """
    return min(factor + raised, 1.0)


@formula(
    "psi = max(phi_c * phi_s, psi_0)",
    result=Symbol("condition and system factor together", "1"),
    phi_c=Symbol("condition factor", "1", "condition", low=0.5, high=1.0),
    phi_s=Symbol("system factor", "1", "system", low=0.5, high=1.0),
    psi_0=Symbol("least product", "1", "least", low=0.5, high=1.0),
    source="Bridge and Highway Structure Rehabilitation and Repair (2010), p. 187",
)
def condition_and_system(condition: float, system: float, least: float) -> float:
    """Product of condition and system factor, not less than a least one [1].

    Plain numbers [1]. Scalars. Limits: none.
    """
    return max(condition * system, least)
