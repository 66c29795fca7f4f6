"""Where built members end or are joined: pin plates and jaws, splices and butts."""

from eyebar.bridge.parts import Bar
from eyebar.formula import remembered
from eyebar.office import Values
from eyebar.resistance.built_up import flat_radius
from eyebar.resistance.column import push_of_column, slenderness_ratio
from eyebar.resistance.found import Pull, Push, pulled, pushed
from eyebar.resistance.pin_plates import (
    Webs,
    area_behind_pin,
    area_through_hole,
    force_of_pin_plate_rivets,
    jaw_thickness,
    pin_ratio,
)
from eyebar.resistance.punched import chain_width, hole_width
from eyebar.resistance.rivets import WEAK_MEMORY, rivet_pull
from eyebar.resistance.rules import Rules
from eyebar.resistance.splices import bearing_part, force_of_splice_rivets, push_of_butt
from eyebar.resistance.tension import (
    assumed_net_area,
    pull_on_area,
    pull_on_net_area,
    reduced_pull,
)
from eyebar.resistance.whole_column import area_of
from eyebar.sections.composed import depth_of_webs
from eyebar.sections.joined import PinPlates, Splice
from eyebar.sections.known import channel_sizes, plate_sizes
from eyebar.sections.properties import measured
from eyebar.sections.shapes import Channels, PlatesAndAngles, Section
from eyebar.terms import CHORD_KINDS

NOT_RECORDED = "pin plates not recorded: its ends about the pins are not checked"
SPLICE_NOT_RECORDED = "no splice recorded: none is checked"
NO_WEBS = "pin plates of a member without webs: not checked"


def unrecorded(bar: Bar) -> tuple[str, ...]:
    """What a record of a built member leaves out about its ends, in remarks."""
    if not isinstance(bar.left, Channels | PlatesAndAngles):
        return (NO_WEBS,) * (bar.pin_plates is not None)
    remarks = (NOT_RECORDED,) * (bar.pin_plates is None)
    return remarks + (SPLICE_NOT_RECORDED,) * (bar.splice is None and bar.kind in CHORD_KINDS)


def pulls_of_ends(
    bar: Bar, rules: Rules, values: Values, *, net: float, body: float
) -> list[Pull]:
    """Pin plates and splices in pull: `net` area of the body [in2], `body` what it pulls [kip]."""
    found: list[Pull] = []
    webs = webs_of(bar.left)
    if bar.pin_plates is not None and webs is not None:
        found += _about_the_pin(bar, bar.pin_plates, webs, values, net=net, body=body)
        found += [pulled(*one) for one in _pin_plate_rivets(bar, webs, rules, values)]
    if bar.splice is not None:
        found += _spliced_in_pull(bar, bar.splice, rules, values)
    return found


def pushes_of_ends(bar: Bar, rules: Rules, values: Values) -> list[Push]:
    """Pin plates, jaws and splices in push."""
    found: list[Push] = []
    webs = webs_of(bar.left)
    if bar.pin_plates is not None and webs is not None:
        found += [_in_push(*one) for one in _pin_plate_rivets(bar, webs, rules, values)]
        found += _jaws(bar, bar.pin_plates, webs, rules)
    if bar.splice is not None:
        found += _spliced_in_push(bar, bar.splice, rules, values)
    return found


def _webs(section: Section) -> Webs | None:
    """The webs that a pin goes through, as thick as the thinner one; None where there are none."""
    match section:
        case Channels():
            sizes = [channel_sizes(one) for one in (section.near, section.far)]
            return Webs(
                number=2, thickness=min(one[1] for one in sizes), depth=min(one[0] for one in sizes)
            )
        case PlatesAndAngles():
            plates = [
                one for one in (section.middle, section.near.web, section.far.web)
                if one is not None
            ]
            return Webs(
                number=len(plates), depth=depth_of_webs(section),
                thickness=min(
                    measured(one.thickness, "thickness of the web") for one in plates
                ),
            )
        case _:
            return None


webs_of = remembered(_webs)


def _thickness(plates: PinPlates) -> tuple[float, float]:
    """Width and thickness of the pin plates on one web; none of either where there are none."""
    return (0.0, 0.0) if plates.plate is None else plate_sizes(plates.plate, "pin plates")


def _about_the_pin(
    bar: Bar, plates: PinPlates, webs: Webs, values: Values, *, net: float, body: float
) -> list[Pull]:
    """The section through the hole and the metal behind it, against the body's net area."""
    width, thickness = _thickness(plates)
    standing = area_of(bar.left)
    if bar.jaw is not None:
        standing = webs.number * webs.depth * webs.thickness
    through = area_through_hole(
        standing, webs.number, hole=measured(plates.hole, "diameter of the pin hole"),
        web=webs.thickness, plate_width=width, pin_plates=thickness,
    )
    behind = area_behind_pin(
        webs.number, measured(plates.beyond, "metal behind the pin hole"), webs.thickness,
        thickness,
    )
    ratios = (
        ("net section through the pin hole", through, "pin plates.through the hole"),
        ("metal behind the pin", behind, "pin plates.behind the pin"),
    )
    found = [
        (check, pin_ratio(size, values.number(row), net)) for check, size, row in ratios
    ]
    return [pulled(check, reduced_pull(ratio, body)) for check, ratio in found if ratio < 1.0]


def _pin_plate_rivets(
    bar: Bar, webs: Webs, rules: Rules, values: Values
) -> list[tuple[str, float, tuple[str, ...]]]:
    plates = bar.pin_plates
    if plates is None or plates.plate is None or plates.rivets is None:
        return []
    _, thickness = _thickness(plates)
    if not thickness:
        return []
    force = rivet_pull(
        rules, values, bar.material, cuts=plates.rivets.cuts,
        rivet=measured(plates.rivets.diameter, "diameter of the rivets of the pin plates"),
        thinner=min(webs.thickness, thickness),
    )
    number = measured(plates.rivets.number, "number of the rivets of the pin plates")
    whole = force_of_pin_plate_rivets(
        webs.number, number, force, web=webs.thickness, pin_plates=thickness
    )
    return [("rivets of the pin plates", whole, (WEAK_MEMORY,))]


def _jaws(bar: Bar, plates: PinPlates, webs: Webs, rules: Rules) -> list[Push]:
    """Ends whose flanges are cut away push through their webs and pin plates alone."""
    if bar.jaw is None:
        return []
    _, thickness = _thickness(plates)
    thick = jaw_thickness(webs.thickness, thickness)
    slenderness = slenderness_ratio(1.0, bar.jaw, flat_radius(thick))
    material = bar.material
    push = push_of_column(
        rules, webs.number * webs.depth * thick, slenderness,
        yield_stress=material.yield_stress, modulus=material.modulus,
    )
    return [pushed("jaws as columns", push)]


def _gross_and_net(splice: Splice, values: Values) -> tuple[float, float, tuple[str, ...]]:
    """Area of a splice's plates, what their holes leave [in2], and remarks."""
    sizes = [plate_sizes(plate, "splice plate") for plate in splice.plates]
    gross = sum(width * thickness for width, thickness in sizes)
    if splice.across is None or splice.rivets is None:
        part = values.number("net section.holes not recorded")
        remark = f"holes of the splice not recorded: its net section taken as {part:g} of the gross"
        return gross, assumed_net_area(part, gross), (remark,)
    rivet = measured(splice.rivets.diameter, "diameter of the rivets of the splice")
    counted = hole_width(rivet)
    net = sum(
        chain_width(width, splice.across, counted, 0.0) * thickness for width, thickness in sizes
    )
    return gross, net, ()


def _splice_rivets(
    bar: Bar, splice: Splice, rules: Rules, values: Values
) -> list[tuple[str, float, tuple[str, ...]]]:
    if splice.rivets is None:
        return []
    rivets, webs = splice.rivets, webs_of(bar.left)
    thinner = rivets.cuts * min(
        plate_sizes(plate, "splice plate")[1] for plate in splice.plates
    )
    force = rivet_pull(
        rules, values, bar.material, cuts=rivets.cuts,
        rivet=measured(rivets.diameter, "diameter of the rivets of the splice"),
        thinner=thinner if webs is None else min(thinner, webs.thickness),
    )
    number = measured(rivets.number, "number of the rivets of the splice")
    return [("rivets of the splice", force_of_splice_rivets(number, force), (WEAK_MEMORY,))]


def _spliced_in_pull(bar: Bar, splice: Splice, rules: Rules, values: Values) -> list[Pull]:
    if not splice.plates:
        return [pulled("splice", 0.0, ("a joint without splice plates cannot pull",))]
    gross, net, remarks = _gross_and_net(splice, values)
    material = bar.material
    plates = min(
        pull_on_area(rules, material.yield_stress, gross),
        pull_on_net_area(rules, material.tensile_strength, net),
    )
    remarks += ("rivets of the splice not recorded: not checked",) * (splice.rivets is None)
    rivets = _splice_rivets(bar, splice, rules, values)
    return [pulled("splice plates", plates, remarks), *(pulled(*one) for one in rivets)]


def _spliced_in_push(bar: Bar, splice: Splice, rules: Rules, values: Values) -> list[Push]:
    material = bar.material
    if splice.butted:
        push = push_of_butt(
            rules.reduction, bearing_part(rules, values), material.yield_stress, area_of(bar.left)
        )
        return [pushed("butted joint", push, ("ends taken to bear on each other all over",))]
    if not splice.plates:
        remark = "neither butted nor plated: nothing carries the push"
        return [pushed("splice in push", 0.0, (remark,))]
    gross, _, _ = _gross_and_net(splice, values)
    push = push_of_column(
        rules, gross, 0.0, yield_stress=material.yield_stress, modulus=material.modulus
    )
    rivets = _splice_rivets(bar, splice, rules, values)
    return [pushed("splice plates in push", push), *(_in_push(*one) for one in rivets)]


def _in_push(check: str, thrust: float, remarks: tuple[str, ...]) -> Push:
    """A check that a bar has in pull as well."""
    return pushed(f"{check} in push", thrust, remarks)
