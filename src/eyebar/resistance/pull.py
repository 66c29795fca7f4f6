"""A bar in pull: its body, its heads or threads, and the section that holes leave."""

from dataclasses import dataclass

from eyebar.bridge.parts import Bar
from eyebar.office import Values
from eyebar.resistance.eyebar import heads
from eyebar.resistance.rules import Rules
from eyebar.resistance.tension import net_area, pull_on_area, pull_on_net_area, reduced_pull
from eyebar.resistance.threads import is_looped, root_ratio, turnbuckle_ratio
from eyebar.sections.properties import area
from eyebar.sections.shapes import Eyebars, Rods


@dataclass(frozen=True, slots=True, kw_only=True)
class Pull:
    """One check in pull: its name, the pull at which it is reached [kip], and remarks."""

    check: str
    force: float
    remarks: tuple[str, ...] = ()


def pulls(bar: Bar, rules: Rules, values: Values) -> list[Pull]:
    """Every check of a bar in pull. Raises NotMeasured (part left empty), OutOfRange."""
    section, material = bar.left, bar.material
    size = area(section)
    found = [
        Pull(check="yield of the body", force=pull_on_area(rules, material.yield_stress, size))
    ]
    net, remarks = net_area(section, size, rules, values)
    if net is not None:
        force = pull_on_net_area(rules, material.tensile_strength, net)
        found.append(Pull(check="fracture of the net section", force=force, remarks=remarks))
    body = min(one.force for one in found)
    match section:
        case Eyebars():
            found += _heads(section, body, values)
        case Rods():
            found += _rod_ends(section, body, values)
        case _:
            pass
    return found


def _heads(section: Eyebars, body: float, values: Values) -> list[Pull]:
    """Heads that are weaker than their bodies; one that is stronger is no check of its own."""
    weakest = heads(section, values)
    return [
        Pull(check=check, force=reduced_pull(ratio, body), remarks=weakest.remarks)
        for check, ratio in (
            ("head across the pin hole", weakest.across),
            ("head beyond the pin hole", weakest.beyond),
        )
        if ratio < 1.0
    ]


def _rod_ends(section: Rods, body: float, values: Values) -> list[Pull]:
    """Threads, turnbuckles and loops."""
    weld = values.number("loop rod.weld") if is_looped(section) else None
    return [
        Pull(check=check, force=reduced_pull(ratio, body))
        for check, ratio in (
            ("threads at the root", root_ratio(section)),
            ("turnbuckle", turnbuckle_ratio(section)),
            ("weld of the loop", weld),
        )
        if ratio is not None and ratio < 1.0
    ]
