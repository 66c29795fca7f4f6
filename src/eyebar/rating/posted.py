"""What the sign at the bridge says of a vehicle: the limits it goes under, and whether it is over
one of them."""

from dataclasses import dataclass

from eyebar.office import Values
from eyebar.rating.posting import Posting
from eyebar.rating.safe_load import heaviest_group
from eyebar.terms import Combine, VehicleClass
from eyebar.vehicles import Vehicle


@dataclass(frozen=True, slots=True, kw_only=True)
class Posted:
    """`limit_tons`, the gross limit that the vehicle goes under, None where there is none for it;
    `above`, what of it is over which limit, in words, empty where nothing is."""

    limit_tons: int | None
    above: str


def posted_for(vehicle: Vehicle, posting: Posting, values: Values) -> Posted:
    """What the limits of a posting say of a vehicle; nothing of a load by area.

    An emergency vehicle goes under its own limits and under that of single vehicles.
    """
    if vehicle.combine is Combine.AREA:
        return Posted(limit_tons=None, above="")
    limits = {
        VehicleClass.SINGLE: (posting.single_tons,),
        VehicleClass.COMBINATION: (posting.combination_tons,),
        VehicleClass.EMERGENCY: (posting.emergency.gross_tons, posting.single_tons),
    }[vehicle.posted_as]
    limit = min((tons for tons in limits if tons is not None), default=None)
    weight = vehicle.weight_tons
    if limit is not None and weight > limit:
        return Posted(limit_tons=limit, above=f"{weight:.4g} tons, over the limit of {limit} tons")
    if vehicle.posted_as is VehicleClass.EMERGENCY:
        return Posted(limit_tons=limit, above=_axles_above(vehicle, posting, values))
    return Posted(limit_tons=limit, above="")


def _axles_above(vehicle: Vehicle, posting: Posting, values: Values) -> str:
    """The axle or tandem of an emergency vehicle that is over its limit, in words."""
    single = posting.emergency.single_axle_tons
    heaviest = max(vehicle.axles_kip) / 2.0
    if single is not None and heaviest > single:
        return f"an axle of {heaviest:.4g} tons, over the limit of {single} tons"
    tandem = posting.emergency.tandem_tons
    weight, axles = heaviest_group(vehicle, values.number("posting.tandem spacing"))
    if tandem is not None and axles > 1 and weight > tandem:
        return f"a group of axles of {weight:.4g} tons, over the limit of {tandem} tons"
    return ""
