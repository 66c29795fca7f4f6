"""Dead load of the floor's parts: what each stringer carries along, each floorbeam across, each
hanger and each end of a truss.

The deck is taken as simple spans from stringer to stringer, hanging over beyond the outer ones. A
sidewalk outside a truss would relieve the floorbeam between the trusses; it is not counted there.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from eyebar.bridge.floor_parts import Floor, Floorbeam, Hanger, Stringer
from eyebar.bridge.parts import Weight
from eyebar.formula import Symbol, formula
from eyebar.loads.wheels_across import AcrossLine, hat

BRACING = "bracing"
"""The weight that does not hang on the floor."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """A weight or its effect: `dc` that stays, `dw` that may be laid on or taken off."""

    dc: float
    dw: float

    def plus(self, other: "Pair") -> "Pair":
        """Both together."""
        return Pair(dc=self.dc + other.dc, dw=self.dw + other.dw)

    def times(self, factor: float) -> "Pair":
        """So many times."""
        return Pair(dc=self.dc * factor, dw=self.dw * factor)


NONE = Pair(dc=0.0, dw=0.0)


@formula(
    "w = q * s + g",
    result=Symbol("weight along a stringer", "kip/ft"),
    q=Symbol("weight by area", "kip/ft2", "kip_per_ft2", low=0.01, high=0.2),
    s=Symbol("width of deck that it carries", "ft", "width_ft", low=1.0, high=5.0),
    g=Symbol("its own and what lies on it along", "kip/ft", "kip_per_ft"),
    source="statics",
)
def stringer_weight(kip_per_ft2: float, width_ft: float, kip_per_ft: float) -> float:
    """Weight along a stringer [kip/ft].

    Weight by area [kip/ft2], width [ft], weight along [kip/ft]; scalars or arrays. Limits: none.
    """
    return kip_per_ft2 * width_ft + kip_per_ft


@formula(
    "M = w * x * (L - x) / 2",
    result=Symbol("moment of a uniform load at a section", "kip ft"),
    w=Symbol("uniform load", "kip/ft", "kip_per_ft"),
    x=Symbol("place of the section", "ft", "section_ft", low=0.0, high=30.0),
    L=Symbol("span", "ft", "span_ft", low=30.0, high=200.0),
    source="statics",
)
def uniform_moment(kip_per_ft: float, section_ft: float, span_ft: float) -> float:
    """Moment of a simple beam under a uniform load [kip ft].

    Load [kip/ft], lengths [ft]; scalars or arrays. Limits: the section on the span.
    """
    return kip_per_ft * section_ft * (span_ft - section_ft) / 2.0


@formula(
    "V = w * (L / 2 - x)",
    result=Symbol("shear of a uniform load at a section", "kip"),
    w=Symbol("uniform load", "kip/ft", "kip_per_ft"),
    x=Symbol("place of the section", "ft", "section_ft", low=0.0, high=15.0),
    L=Symbol("span", "ft", "span_ft", low=30.0, high=200.0),
    source="statics",
)
def uniform_shear(kip_per_ft: float, section_ft: float, span_ft: float) -> float:
    """Shear of a simple beam under a uniform load [kip].

    Load [kip/ft], lengths [ft]; scalars or arrays. Limits: the section on the span.
    """
    return kip_per_ft * (span_ft / 2.0 - section_ft)


def stringer_line(stringer: Stringer, places_ft: Sequence[float]) -> AcrossLine:
    """Influence line of a stringer's load across the road, among those of its panel that work."""
    return hat(places_ft, list(places_ft).index(stringer.place_ft))


def stringer_dead(floor: Floor, stringer: Stringer, line: AcrossLine) -> Pair:
    """Dead load along a stringer [kip/ft]."""
    middle = floor.curb_ft + floor.clear_width_ft / 2.0
    along = {False: stringer.weight_kip_per_ft, True: 0.0}
    for curb in (floor.curb_ft, floor.curb_ft + floor.clear_width_ft):
        along[False] += floor.guard_kip_per_ft * line.at(curb)
    for layer in floor.layers:
        half = layer.width_ft / 2.0
        width = round(line.under(middle - half, middle + half), 9)
        along[layer.wearing] = stringer_weight(layer.kip_per_ft2, width, along[layer.wearing])
    return Pair(dc=along[False], dw=along[True])


@dataclass(frozen=True, slots=True, kw_only=True)
class PointLoad:
    """A dead load on a floorbeam at a place across the road [kip]."""

    place_ft: float
    load: Pair


def floorbeam_points(
    panels: Sequence[tuple[float, Mapping[float, Pair]]],
) -> tuple[PointLoad, ...]:
    """What the stringers of its two panels bring to a floorbeam.

    `panels`: length [ft] of each, and dead load along its stringers [kip/ft] by their places.
    """
    found: dict[float, Pair] = {}
    for length, lines in panels:
        for place, line in lines.items():
            found[place] = found.get(place, NONE).plus(line.times(length / 2.0))
    return tuple(PointLoad(place_ft=place, load=found[place]) for place in sorted(found))


def heavier(
    before: Mapping[float, Pair], behind: Mapping[float, Pair]
) -> Mapping[float, Pair]:
    """The greater dead load of the stringers of two panels at each place [kip/ft]."""
    pairs = {
        place: (before.get(place, NONE), behind.get(place, NONE)) for place in {**before, **behind}
    }
    return {
        place: Pair(dc=max(a.dc, b.dc), dw=max(a.dw, b.dw)) for place, (a, b) in pairs.items()
    }


def spread_points(floor: Floor, beam: Floorbeam, pieces: int = 40) -> tuple[PointLoad, ...]:
    """The layers of a deck that lies on the floorbeam itself, as many small loads."""
    length = (beam.before_ft + beam.behind_ft) / 2.0
    found = []
    middle = floor.curb_ft + floor.clear_width_ft / 2.0
    for layer in floor.layers:
        piece = layer.width_ft / pieces
        load = layer.kip_per_ft2 * piece * length
        for i in range(pieces):
            place = middle - layer.width_ft / 2.0 + (i + 0.5) * piece
            pair = Pair(dc=0.0, dw=load) if layer.wearing else Pair(dc=load, dw=0.0)
            found.append(PointLoad(place_ft=place, load=pair))
    return tuple(found)


def hanger_dead(
    hanger: Hanger, weights: Sequence[Weight], running_ft: float = 0.0
) -> Pair:
    """What hangs at a joint of the truss's floor: all that its weights bring there but the bracing
    [kip].

    `running_ft`: the length that stringers which run on bring there, counted where it is more than
    half of both panels.
    """
    length = max((hanger.before_ft + hanger.behind_ft) / 2.0, running_ft)
    found = NONE
    for weight in weights:
        if weight.name == BRACING:
            continue
        load = weight.kip_per_ft * length + weight.kip_at_joints.get(hanger.joint, 0.0)
        found = found.plus(
            Pair(dc=0.0, dw=load) if weight.wearing else Pair(dc=load, dw=0.0)
        )
    return found
