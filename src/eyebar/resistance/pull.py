"""A bar in pull: its body, its heads or threads, the section that holes leave, its ends."""

import math
from dataclasses import replace

from eyebar.bridge.parts import Bar
from eyebar.errors import NotMeasured
from eyebar.office import Values
from eyebar.resistance.ends import pulls_of_ends, unrecorded
from eyebar.resistance.eyebar import clevises, heads
from eyebar.resistance.flags import prone_to_fatigue, slender_in_pull
from eyebar.resistance.found import Pull, pulled
from eyebar.resistance.net_section import net_area
from eyebar.resistance.rules import Rules
from eyebar.resistance.tension import pull_on_area, pull_on_net_area, reduced_pull
from eyebar.resistance.threads import is_bent, is_looped, loop_pull, root_ratio, turnbuckle_ratio
from eyebar.resistance.whole_column import area_of
from eyebar.sections.closed_forms import rectangle_area
from eyebar.sections.properties import measured, rod_area
from eyebar.sections.shapes import Eyebars, Rods, Section
from eyebar.terms import Method


def pulls(bar: Bar, rules: Rules, values: Values) -> list[Pull]:
    """Every check of a bar in pull. Raises NotMeasured (part left empty), OutOfRange.

    The bodies of a set carry equal stress, so that it is worth the sum of what is left of them; its
    details (heads, threads) are used up by the share that their piece takes as built.
    """
    section, material = bar.left, bar.material
    size = area_of(section)
    found = [pulled("yield of the body", pull_on_area(rules, material.yield_stress, size))]
    net, remarks = net_area(bar, size, rules, values)
    if net is not None:
        force = pull_on_net_area(rules, material.tensile_strength, net)
        found.append(pulled("fracture of the net section", force, remarks + unrecorded(bar)))
    match section:
        case Eyebars():
            found += _heads(bar, section, rules, values)
        case Rods():
            found += _rod_ends(bar, section, rules, values)
            if is_looped(section):
                found += _loops(section, min(one.force for one in found), values)
        case _:
            body = min(one.force for one in found)
            found += pulls_of_ends(bar, rules, values, net=net or size, body=body)
    said = slender_in_pull(bar, values) + prone_to_fatigue(bar)
    return [replace(one, remarks=one.remarks + said) for one in found] if said else found


def _heads(bar: Bar, section: Eyebars, rules: Rules, values: Values) -> list[Pull]:
    """Heads that are weaker than their bodies; one that is stronger is no check of its own."""
    bodies = _bodies(bar)
    built = bar.as_built if isinstance(bar.as_built, Eyebars) else section
    weakest = heads(section, built, bodies, values)
    whole = _whole(bar, rules, bodies)
    found = [
        pulled(check, reduced_pull(ratio, whole), weakest.remarks)
        for check, ratio in (
            ("head across the pin hole", weakest.across),
            ("head beyond the pin hole", weakest.beyond),
        )
        if ratio < 1.0
    ]
    broken = reduced_pull(
        weakest.net, pull_on_net_area(rules, bar.material.tensile_strength, math.fsum(bodies))
    )
    if broken < whole:
        found.append(pulled("fracture of the head across the pin hole", broken, weakest.remarks))
    return found


def _rod_ends(bar: Bar, section: Rods, rules: Rules, values: Values) -> list[Pull]:
    """Threads, turnbuckles and clevises that are weaker than their bodies."""
    bodies = _bodies(bar)
    across, beyond = clevises(section, bodies, values)
    return [
        pulled(check, reduced_pull(ratio, _whole(bar, rules, bodies)))
        for check, ratio in (
            ("threads at the root", root_ratio(section, bodies)),
            ("turnbuckle", turnbuckle_ratio(section, bodies)),
            ("clevis across its hole", across),
            ("clevis beyond its hole", beyond),
        )
        if ratio is not None and ratio < 1.0
    ]


def _loops(section: Rods, pull: float, values: Values) -> list[Pull]:
    """The weld of loops, where the office does not trust it with all that the rod may pull.

    Raises NotMeasured for loops that are only bent round, unless the office says what they hold.
    """
    found = []
    if is_bent(section):
        held = values.number("loop rod.bent")
        if held <= 0.0:
            raise NotMeasured("", "strength of loops that are bent and not welded")
        found.append(pulled("bent loop", loop_pull(held, pull)))
    weld = values.number("loop rod.weld")
    if weld < 1.0:
        found.append(pulled("weld of the loop", loop_pull(weld, pull)))
    return found


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
