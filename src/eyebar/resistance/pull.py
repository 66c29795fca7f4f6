"""A bar in pull: its body, its heads or threads, and the section that holes leave."""

import math
from dataclasses import dataclass

from eyebar.bridge.parts import Bar
from eyebar.errors import NotMeasured
from eyebar.formula import note
from eyebar.office import Values
from eyebar.resistance.eyebar import heads
from eyebar.resistance.rules import Rules
from eyebar.resistance.tension import net_area, pull_on_area, pull_on_net_area, reduced_pull
from eyebar.resistance.threads import is_looped, loop_pull, root_ratio, turnbuckle_ratio
from eyebar.sections.closed_forms import rectangle_area
from eyebar.sections.properties import area, measured, rod_area
from eyebar.sections.shapes import Eyebars, Rods, Section
from eyebar.terms import Method


@dataclass(frozen=True, slots=True, kw_only=True)
class Pull:
    """One check in pull: its name, the pull at which it is reached [kip], and remarks."""

    check: str
    force: float
    remarks: tuple[str, ...] = ()


def _found(check: str, force: float, remarks: tuple[str, ...] = ()) -> Pull:
    """The check with its pull, which the working names too."""
    note(check, "P", force, "kip")
    return Pull(check=check, force=force, remarks=remarks)


def pulls(bar: Bar, rules: Rules, values: Values) -> list[Pull]:
    """Every check of a bar in pull. Raises NotMeasured (part left empty), OutOfRange.

    The bodies of a set carry equal stress, so that it is worth the sum of what is left of them; its
    details (heads, threads) are used up by the share that their piece takes as built.
    """
    section, material = bar.left, bar.material
    size = area(section)
    found = [_found("yield of the body", pull_on_area(rules, material.yield_stress, size))]
    net, remarks = net_area(section, size, rules, values)
    if net is not None:
        force = pull_on_net_area(rules, material.tensile_strength, net)
        found.append(_found("fracture of the net section", force, remarks))
    match section:
        case Eyebars():
            found += _heads(bar, section, rules, values)
        case Rods():
            found += _rod_ends(bar, section, rules)
            if is_looped(section):
                found += _loops(min(one.force for one in found), values)
        case _:
            pass
    return found


def _heads(bar: Bar, section: Eyebars, rules: Rules, values: Values) -> list[Pull]:
    """Heads that are weaker than their bodies; one that is stronger is no check of its own."""
    bodies = _bodies(bar)
    weakest = heads(section, bodies, values)
    return [
        _found(check, reduced_pull(ratio, _whole(bar, rules, bodies)), weakest.remarks)
        for check, ratio in (
            ("head across the pin hole", weakest.across),
            ("head beyond the pin hole", weakest.beyond),
        )
        if ratio < 1.0
    ]


def _rod_ends(bar: Bar, section: Rods, rules: Rules) -> list[Pull]:
    """Threads and turnbuckles that are weaker than their bodies."""
    bodies = _bodies(bar)
    return [
        _found(check, reduced_pull(ratio, _whole(bar, rules, bodies)))
        for check, ratio in (
            ("threads at the root", root_ratio(section, bodies)),
            ("turnbuckle", turnbuckle_ratio(section, bodies)),
        )
        if ratio is not None and ratio < 1.0
    ]


def _loops(pull: float, values: Values) -> list[Pull]:
    """The weld of loops, where the office does not trust it with all that the rod may pull."""
    weld = values.number("loop rod.weld")
    if weld >= 1.0:
        return []
    return [_found("weld of the loop", loop_pull(weld, pull))]


def _bodies(bar: Bar) -> tuple[float, ...]:
    """Areas of the pieces as built [in2]; as they are left where those were never known."""
    try:
        built = piece_areas(bar.as_built)
    except NotMeasured:
        return piece_areas(bar.left)
    left = piece_areas(bar.left)
    return built if len(built) == len(left) else left


def _whole(bar: Bar, rules: Rules, bodies: tuple[float, ...]) -> float:
    """What all bodies as built would pull [kip]."""
    material, size = bar.material, math.fsum(bodies)
    whole = pull_on_area(rules, material.yield_stress, size)
    if rules.method is not Method.LOAD_AND_RESISTANCE:
        return whole
    return min(whole, pull_on_net_area(rules, material.tensile_strength, size))


def piece_areas(section: Section) -> tuple[float, ...]:
    """Area of each eyebar or rod of a set [in2]; none for other sections. Raises NotMeasured."""
    match section:
        case Eyebars():
            return tuple(
                rectangle_area(
                    measured(one.thickness, "thickness"), measured(one.width, "width")
                )
                for one in section.bars
            )
        case Rods():
            return tuple(rod_area(rod) for rod in section.rods)
        case _:
            return ()
