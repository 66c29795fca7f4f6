"""Greatest moment and end shear of a uniform simple beam under a train of axles, exactly.

A varied spacing governs at its least: it lies on one side of the axle under which the effect is
sought, and as it shrinks the axles beyond it come nearer to the section, where the ordinate of the
influence line is greater. The beam is alike from both ends, so a train that travels the other way
gives the mirror image.
"""

from dataclasses import dataclass
from math import fsum

from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula, note, procedure
from eyebar.vehicles import Vehicle


@dataclass(frozen=True, slots=True, kw_only=True)
class Extreme:
    """A greatest effect and where it arises.

    `value` [kip-ft] for a moment, [kip] for a shear; `section_ft` the section and `front_axle_ft`
    the front axle, both from end 0, for a train that travels up.
    """

    value: float
    section_ft: float
    front_axle_ft: float


@formula(
    "h = x * (L - z) / L if x <= z else z * (L - x) / L",
    result=Symbol("moment at the section for a unit load", "ft"),
    x=Symbol("place of the load", "ft", "load_ft", low=0.0, high=30.0),
    z=Symbol("place of the section", "ft", "section_ft", low=0.0, high=30.0),
    L=Symbol("span", "ft", "span_ft", low=30.0, high=200.0),
    source="statics",
)
def moment_ordinate(load_ft: float, section_ft: float, span_ft: float) -> float:
    """Moment of a simple beam at a section for a unit load [ft].

    Places from end 0 and span [ft]. Scalars. Limits: both places on the span.
    """
    near, far = min(load_ft, section_ft), max(load_ft, section_ft)
    return near * (span_ft - far) / span_ft


@formula(
    "M = w * L**2 / 8 + P * L / 4",
    result=Symbol("moment at mid-span of a lane load", "kip ft"),
    w=Symbol("uniform load of the lane", "kip/ft", "kip_per_ft"),
    P=Symbol("single weight for moment", "kip", "point_kip"),
    L=Symbol("span", "ft", "span_ft"),
    source="statics",
)
def lane_moment(kip_per_ft: float, point_kip: float, span_ft: float) -> float:
    """Greatest moment of a simple beam under a lane load [kip ft].

    Uniform load [kip/ft], single weight [kip], span [ft]. Scalars or arrays. Limits: none.
    """
    return kip_per_ft * span_ft**2 / 8.0 + point_kip * span_ft / 4.0


@formula(
    "V = w * L / 2 + P",
    result=Symbol("end shear of a lane load", "kip"),
    w=Symbol("uniform load of the lane", "kip/ft", "kip_per_ft"),
    P=Symbol("single weight for shear", "kip", "point_kip"),
    L=Symbol("span", "ft", "span_ft"),
    source="statics",
)
def lane_end_shear(kip_per_ft: float, point_kip: float, span_ft: float) -> float:
    """Greatest end shear of a simple beam under a lane load [kip].

    Uniform load [kip/ft], single weight [kip], span [ft]. Scalars or arrays. Limits: none.
    """
    return kip_per_ft * span_ft / 2.0 + point_kip


@procedure(
    "greatest moment of a simple beam under a train",
    source="statics: it lies under an axle, and there mid-span halves the distance between that "
    "axle and the resultant of the axles on the beam",
    steps=(
        "for every run of neighbouring axles and every axle of the run: put mid-span half-way "
        "between that axle and the run's resultant",
        "moment under that axle of all axles that then stand on the beam",
        "the greatest of all",
    ),
)
def greatest_moment(vehicle: Vehicle, span_ft: float) -> Extreme:
    """Greatest moment anywhere on a simple beam under a vehicle's axles [kip ft].

    Scalars. Limits: span over 0 (OutOfRange); a beam alike all along. One lane, no impact.

    Under one axle, at one set of axles on the beam, the moment is a parabola in the train's place;
    where an axle enters or leaves, its slope only grows. So its summits are the only candidates,
    and every candidate is a place that the train can have.
    """
    _checked(span_ft)
    behind, axles = vehicle.behind_front_ft(), vehicle.axles_kip
    found = [
        _moment_at(vehicle, span_ft, front, front - behind[under])
        for first in range(len(axles))
        for last in range(first, len(axles))
        for under in range(first, last + 1)
        for front in [span_ft / 2.0 + (behind[under] + _resultant(vehicle, first, last)) / 2.0]
        if 0.0 < front - behind[under] < span_ft
    ]
    best = max(found, key=lambda one: one.value)
    note("section of the greatest moment, from end 0", "z", best.section_ft, "ft")
    note("front axle, from end 0", "x", best.front_axle_ft, "ft")
    return best


@procedure(
    "greatest end shear of a simple beam under a train",
    source="statics: an axle stands over the support",
    steps=(
        "for every axle and either end: put the axle over the support",
        "reaction there of all axles that then stand on the beam",
        "the greatest of all",
    ),
)
def greatest_end_shear(vehicle: Vehicle, span_ft: float) -> Extreme:
    """Greatest shear at an end of a simple beam under a vehicle's axles [kip].

    Scalars. Limits: span over 0 (OutOfRange). One lane, no impact; an axle just over the support
    counts whole.
    """
    _checked(span_ft)
    behind = vehicle.behind_front_ft()
    found = [
        Extreme(
            value=_reaction(vehicle, span_ft, over, ahead), section_ft=end,
            front_axle_ft=end + behind[over],
        )
        for over in range(len(behind))
        for end, ahead in ((0.0, 1.0), (span_ft, -1.0))
    ]
    best = max(found, key=lambda one: one.value)
    note("front axle, from end 0", "x", best.front_axle_ft, "ft")
    return best


def _checked(span_ft: float) -> None:
    if not 0.0 < span_ft < float("inf"):
        raise OutOfRange("span", f"{span_ft:g} ft", "over 0 ft")


def _resultant(vehicle: Vehicle, first: int, last: int) -> float:
    """How far behind the front axle the resultant of a run of axles lies [ft]."""
    behind = vehicle.behind_front_ft()[first : last + 1]
    axles = vehicle.axles_kip[first : last + 1]
    return fsum(p * d for p, d in zip(axles, behind, strict=True)) / fsum(axles)


def _on_span(vehicle: Vehicle, span_ft: float, front_ft: float) -> list[tuple[float, float]]:
    """(axle [kip], place from end 0 [ft]) of the axles that stand on the beam."""
    stand = ((p, front_ft - d)
             for p, d in zip(vehicle.axles_kip, vehicle.behind_front_ft(), strict=True))
    return [(p, x) for p, x in stand if 0.0 <= x <= span_ft]


def _moment_at(vehicle: Vehicle, span_ft: float, front_ft: float, section_ft: float) -> Extreme:
    moment = fsum(
        p * moment_ordinate(x, section_ft, span_ft)
        for p, x in _on_span(vehicle, span_ft, front_ft)
    )
    return Extreme(value=moment, section_ft=section_ft, front_axle_ft=front_ft)


def _reaction(vehicle: Vehicle, span_ft: float, over: int, ahead: float) -> float:
    """Reaction at an end with axle `over` above it; `ahead` +1 where the axles in front of it stand
    on the beam, -1 where those behind it do.
    """
    behind = vehicle.behind_front_ft()
    inward = [(p, ahead * (behind[over] - d))
              for p, d in zip(vehicle.axles_kip, behind, strict=True)]
    return fsum(p * (1.0 - far / span_ft) for p, far in inward if 0.0 <= far <= span_ft)
