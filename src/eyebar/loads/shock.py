"""Shock of a moving load: impact by method, loaded length, road surface and material."""

from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.terms import CHORD_KINDS, Kind, Metal, Method, Pace, VehicleClass

SURFACES = ("smooth", "minor depressions", "rough")


@formula(
    "I = min(50 ft / (L + 125 ft), c)",
    result=Symbol("impact, as a part of the live load", "1"),
    L=Symbol("loaded length", "ft", "loaded_length_ft", low=0.0, high=400.0),
    c=Symbol("greatest impact", "1", "greatest", low=0.1, high=0.4),
    source="Standard Specifications for Highway Bridges 3.8.2, from memory",
)
def impact_of_length(loaded_length_ft: float, greatest: float) -> float:
    """Impact of the older methods [1].

    Loaded length [ft], cap [1]. Scalars. Limits: lengths of 0 and more (OutOfRange).
    """
    if not loaded_length_ft >= 0.0:
        raise OutOfRange("loaded length", f"{loaded_length_ft:g} ft", "0 ft or more")
    return min(50.0 / (loaded_length_ft + 125.0), greatest)


def loaded_length_ft(kind: Kind, *, span_ft: float, like_signed_ft: float) -> float:
    """The loaded length of a bar of a truss [ft]: the whole span for chords, else the part of its
    influence line that has the sign of the force looked at.
    """
    return span_ft if kind in CHORD_KINDS else like_signed_ft


def impact(
    *, method: Method, vehicle_class: VehicleClass, metal: Metal, loaded_length_ft: float,
    span_ft: float, surface: str, values: Values, pace: Pace = Pace.ANY,
) -> float:
    """Impact on a part, as a part of the axle loads [1].

    Older methods: by loaded length, none on timber. Load and resistance: the design load has one
    figure; other vehicles go by the road's surface, but the whole figure on parts of 40 ft span or
    less (`span_ft`, for a bar that of its truss); timber takes a part of it. Whether it acts on a
    lane load too is the vehicle's own (`lane_impact`). At walking pace it is no more than the
    office's figure, and what stands still has none. Raises OutOfRange for an unknown surface.
    """
    if pace is Pace.STILL:
        return 0.0
    if method is not Method.LOAD_AND_RESISTANCE:
        if metal is Metal.TIMBER:
            return 0.0
        found = impact_of_length(
            loaded_length_ft, values.number("impact.older methods.greatest")
        )
        if pace is Pace.WALKING:
            return min(found, values.number("impact.older methods.walking pace"))
        return found
    row = f"impact.{method}"
    whole = values.number(f"{row}.{_row(vehicle_class, span_ft, surface, values)}")
    if pace is Pace.WALKING:
        on = "smooth" if surface == "smooth" else "not smooth"
        whole = min(whole, values.number(f"{row}.walking pace.{on}"))
    return whole * values.number(f"{row}.timber") if metal is Metal.TIMBER else whole


def _row(vehicle_class: VehicleClass, span_ft: float, surface: str, values: Values) -> str:
    if surface not in SURFACES:
        raise OutOfRange("road surface", repr(surface), f"one of {', '.join(SURFACES)}")
    if vehicle_class is VehicleClass.DESIGN:
        return "design"
    if span_ft <= values.number("impact.load-and-resistance.short span"):
        return "rough"
    return surface
