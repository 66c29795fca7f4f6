"""Bars and metals that the tests of strength are made with."""

from dataclasses import replace
from typing import Any

from eyebar.bridge.parts import Bar, Material
from eyebar.formula import Entry, recording
from eyebar.office import Values, shipped_values
from eyebar.resistance import Condition, Limit, limits
from eyebar.sections.shapes import (
    Channel,
    Channels,
    Eyebar,
    Eyebars,
    Given,
    Lacing,
    Plate,
    Section,
    Toes,
)
from eyebar.terms import Kind, Level, Metal, Method

IRON = Material(
    name="bar iron", metal=Metal.WROUGHT_IRON, yield_stress=26.0, tensile_strength=48.0,
    modulus=27_900.0, density=480.0 / 1728.0, sources={},
)
STANDARD = replace(IRON, name="iron with the standard's modulus", modulus=29_000.0)

SOUND = Condition(superstructure_condition=6, loss_measured=False)

EVERY_LEVEL = (
    (Method.ALLOWABLE_STRESS, Level.INVENTORY),
    (Method.ALLOWABLE_STRESS, Level.OPERATING),
    (Method.LOAD_FACTOR, Level.OPERATING),
    (Method.LOAD_AND_RESISTANCE, Level.LEGAL),
)

CHANNEL = Channel(depth=6.0, web=0.25, flange=2.0, flange_thickness=0.3125)
LACED = Channels(
    near=CHANNEL, far=CHANNEL, apart=6.0, toes=Toes.OUT,
    lacing=Lacing(bar=Plate(width=1.75, thickness=0.25), pitch=10.0, planes=2),
)
COVERED = replace(
    LACED, cover=Plate(width=11.0, thickness=0.25),
    lacing=Lacing(bar=Plate(width=1.75, thickness=0.25), pitch=10.0, planes=1),
)


def eyebars(number: int, **sizes: float | None) -> Eyebars:
    """So many bars 3 in x 3/4 in with 7 in heads, with the sizes given instead."""
    usual: dict[str, float | None] = {
        "width": 3.0, "thickness": 0.75, "head": 7.0, "hole": 2.5
    }
    return Eyebars(bars=(Eyebar(**{**usual, **sizes}),) * number)  # type: ignore[arg-type]


def given(area: float, r_x: float, r_y: float, **more: Any) -> Given:
    """Properties given as numbers."""
    sizes = {"net_area": None, "top": None, "bottom": None, "source": "made", **more}
    return Given(area=area, r_x=r_x, r_y=r_y, **sizes)


def bar(section: Section, *, length: float = 180.0, **more: Any) -> Bar:
    """A bar of this section, upright and straight unless said otherwise."""
    usual: dict[str, Any] = {
        "name": "U2-L2", "address": "upstream/U2-L2", "kind": Kind.POST, "ends": ("U2", "L2"),
        "length": length, "length_in_plane": length, "length_out_of_plane": length,
        "run": 0.0, "as_built": section, "left": section, "material": IRON, "can_push": True,
        "can_pull": True,
    }
    return Bar(**{**usual, **more})


def office(**numbers: float) -> Values:
    """Shipped values, with some numbers replaced (a dot is written as two underscores)."""
    values = shipped_values()
    rows = dict(values.rows)
    for name, number in numbers.items():
        row = name.replace("__", ".").replace("_", " ")
        rows[row] = replace(rows[row], value=number)
    return replace(values, rows=rows)


STIFF_ENDS = office(effective_length__in_plane=1.0, effective_length__out_of_plane=1.0)
"""Effective lengths are the lengths themselves, in both planes."""


def limits_of(
    one: Bar, method: Method, level: Level, *, condition: Condition = SOUND,
    dead_factor_dc: float = 1.0, values: Values | None = None,
) -> dict[str, Limit]:
    """The limits of a bar by the names of their checks."""
    found = limits(
        one, method=method, level=level, dead_factor_dc=dead_factor_dc,
        values=shipped_values() if values is None else values, condition=condition,
    )
    assert len({limit.check for limit in found}) == len(found)
    return {limit.check: limit for limit in found}


def greatest_push(one: Bar, method: Method, level: Level, **more: Any) -> float:
    """The thrust at which the first of all checks in push is reached [kip]."""
    found = limits_of(one, method, level, **more).values()
    return min(-limit.force for limit in found if limit.sense < 0)


def greatest_pull(one: Bar, method: Method, level: Level, **more: Any) -> float:
    """The pull at which the first of all checks in pull is reached [kip]."""
    found = limits_of(one, method, level, **more).values()
    return min(limit.force for limit in found if limit.sense > 0)


def working_of(one: Bar, method: Method, level: Level) -> tuple[dict[str, Limit], list[Entry]]:
    """The limits of a bar, and the working they leave under a recorder."""
    with recording() as steps:
        found = limits_of(one, method, level)
    return found, steps
