"""The checks that ties bring with them: the halves between them, lacing bars, rivets, battens."""

from eyebar.office import Values
from eyebar.resistance.built_up import flat_radius, lacing_length, later_shear, older_shear
from eyebar.resistance.column import push_of_column, slenderness_ratio
from eyebar.resistance.found import Push, pushed, slender
from eyebar.resistance.moments import moment_strength, thrust_at_ends
from eyebar.resistance.punched import hole_width
from eyebar.resistance.rivets import WEAK_MEMORY, rivet_pull
from eyebar.resistance.tension import pull_on_area, pull_on_net_area
from eyebar.resistance.thrust_with_bending import weights
from eyebar.resistance.tie_strength import (
    offset_between_battens,
    plate_inertia,
    plate_shear,
    thrust_of_bent_battens,
    thrust_of_lacing,
    thrust_of_lacing_rivets,
    thrust_of_sheared_battens,
)
from eyebar.resistance.whole_column import Column, Ties, capacity
from eyebar.sections.built import Spread
from eyebar.sections.known import plate_sizes
from eyebar.sections.pieces import Battens, Lacing
from eyebar.sections.properties import measured
from eyebar.sections.shapes import Angles, Channels, Section
from eyebar.terms import Method


def between_ties(found: Column, ties: Ties, values: Values) -> list[Push]:
    """The halves between their fastenings; in zigzag lacing held at every second bar only."""
    tied = ties.tied
    if tied.lacing is not None:
        pitch, at = measured(tied.lacing.pitch, "pitch of the lacing"), "lacing points"
    elif tied.battens is not None:
        pitch, at = measured(tied.battens.pitch, "distance of the battens"), "battens"
    else:
        return []
    slenderness = slenderness_ratio(1.0, pitch, tied.radius)
    part = values.number("slenderness.between lacing points.part of the column's")
    limit = min(
        values.number("slenderness.between lacing points"),
        part * max(found.in_plane, found.out_of_plane),
    )
    return [
        pushed(
            f"{_piece(found.bar.left)} between {at}{_where(ties)}", capacity(found, slenderness),
            found.plates.remarks + slender(slenderness, limit),
        )
    ]


def tie_checks(found: Column, ties: Ties, values: Values) -> list[Push]:
    """The thrusts at which the shear that comes with them uses up what ties the halves."""
    if ties.tied.lacing is not None:
        return _lacing(found, ties, ties.tied.lacing, values)
    if ties.tied.battens is not None:
        return _battens(found, ties, ties.tied.battens, values)
    return []


def _piece(section: Section) -> str:
    match section:
        case Channels():
            return "channel"
        case Angles():
            return "angle"
        case _:
            return "web with its angles"


def _where(ties: Ties) -> str:
    """Said where the ties lie in the plane of the truss; usually they lie across it."""
    return "" if ties.tied.spread is Spread.ACROSS else " in the plane of the truss"


def _shared(ties: Ties) -> tuple[str, ...]:
    return ("a plate takes its share of the shear",) * bool(ties.tied.plates)


def _shear(found: Column, ties: Ties) -> float:
    """Shear in the ties over the thrust, by the method's rule [1]."""
    material, slenderness = found.bar.material, found.slenderness(ties.tied.spread)
    if found.rules.method is Method.LOAD_AND_RESISTANCE:
        return later_shear(slenderness, material.yield_stress, material.modulus)
    return older_shear(slenderness, material.yield_stress)


def _lacing(found: Column, ties: Ties, lacing: Lacing, values: Values) -> list[Push]:
    """Lacing bars in push and in pull, and the rivets at their ends."""
    rules, material = found.rules, found.bar.material
    width, thickness = plate_sizes(lacing.bar, "lacing bar")
    advance, distance = measured(lacing.pitch, "pitch of the lacing") / 2, ties.tied.distance
    length, part = lacing_length(advance, distance), _shear(found, ties)
    planes = lacing.planes + ties.tied.plates

    def thrust(force: float) -> float:
        return thrust_of_lacing(
            planes, force, distance=distance, shear_part=part, length=length
        )

    slenderness = slenderness_ratio(1.0, length, flat_radius(thickness))
    push = push_of_column(
        rules, width * thickness, slenderness, yield_stress=material.yield_stress,
        modulus=material.modulus,
    )
    remarks = _shared(ties) + slender(slenderness, values.number("slenderness.lacing bar"))
    rivet = found.bar.lacing_rivet
    if rivet is None:
        remarks += ("rivets of the lacing not recorded: neither they nor its holes are checked",)
        return [pushed(f"lacing bar{_where(ties)}", thrust(push), remarks)]
    net = (width - hole_width(rivet)) * thickness
    pull = min(
        pull_on_area(rules, material.yield_stress, width * thickness),
        pull_on_net_area(rules, material.tensile_strength, net),
    )
    held = rivet_pull(rules, values, material, rivet=rivet, cuts=1, thinner=thickness)
    return [
        pushed(f"lacing bar{_where(ties)}", thrust(push), remarks),
        pushed(f"lacing bar in pull{_where(ties)}", thrust(pull), _shared(ties)),
        pushed(
            f"rivets of the lacing{_where(ties)}",
            thrust_of_lacing_rivets(
                planes, held, distance=distance, shear_part=part, length=length, advance=advance
            ),
            (*_shared(ties), WEAK_MEMORY),
        ),
    ]


def _battens(found: Column, ties: Ties, battens: Battens, values: Values) -> list[Push]:
    """Battens bent and sheared, and the halves that bend between them."""
    rules, material = found.rules, found.bar.material
    _, thickness = plate_sizes(battens.plate, "battens")
    length = measured(battens.length, "length of the battens")
    pitch = measured(battens.pitch, "distance of the battens")
    part, planes = _shear(found, ties), battens.planes + ties.tied.plates
    moment = moment_strength(
        rules, material.yield_stress, plate_inertia(thickness, length), length / 2
    )
    shear = plate_shear(
        rules.reduction, _shear_part(found, values), material.yield_stress, width=length,
        thickness=thickness,
    )
    return [
        pushed(
            f"battens in bending{_where(ties)}",
            thrust_of_bent_battens(planes, moment, shear_part=part, pitch=pitch), _shared(ties),
        ),
        pushed(
            f"battens in shear{_where(ties)}",
            thrust_of_sheared_battens(
                planes, shear, distance=ties.tied.distance, shear_part=part, pitch=pitch
            ),
            _shared(ties),
        ),
        _bent_between(found, ties, pitch, part),
    ]


def _shear_part(found: Column, values: Values) -> float:
    """Shear stress over yield stress by the method, any resistance factor with it."""
    method = found.rules.method
    if method is Method.ALLOWABLE_STRESS:
        return values.number(f"allowable.shear.{found.rules.level}")
    part = values.number("shear.part of yield stress")
    if method is Method.LOAD_FACTOR:
        return part
    return part * values.number("resistance factor.shear")


def _bent_between(found: Column, ties: Ties, pitch: float, part: float) -> Push:
    """One half between battens, pushed by its share and bent to and fro by the shear."""
    tied, material = ties.tied, found.bar.material
    column = capacity(found, slenderness_ratio(1.0, pitch, tied.radius))
    offset = offset_between_battens(part, pitch)
    weakest = min(tied.halves, key=lambda half: half.inertia / half.reach)
    strength = moment_strength(
        found.rules, material.yield_stress, weakest.inertia, weakest.reach
    )
    thrust = min(
        thrust_at_ends(
            axial=axial, column=column, bending=bending, offset=offset, moment_strength=strength
        )
        for axial, bending in weights(found.rules)
    )
    return pushed(f"{_piece(found.bar.left)} bent between battens{_where(ties)}", thrust)
