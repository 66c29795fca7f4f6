"""One vehicle as loads and road read it."""

from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import accumulate

from eyebar.errors import OutOfRange
from eyebar.sources import Confirmation
from eyebar.terms import Combine, VehicleClass

Spacing = float | tuple[float, float]
"""A distance between two axles [ft], or the least and the greatest of a varied one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Vehicle:
    """A train of axles, and the lane load that goes with it where there is one.

    `axles_kip` and `spacings_ft` run from front to rear. `gauge_ft` lies between the wheel lines,
    `width_ft` is over all. The lane load is `lane_kip_per_ft` over one lane with one single weight,
    `lane_point_kip` = (for moment, for shear). `combine` says how axles and lane load go together,
    `lane_impact` whether shock acts on the lane load too. `layer`: `shipped` or `office`.

    `area_psf` [lb/ft2] is a load without axles, a crowd or snow; `spread_over` lays it on a road.
    `empty_axles_kip` are the axles without what can be taken off. `posted_as` says under which
    limit of a sign the vehicle goes; `assumed` names the figures that nobody has measured or read.
    """

    name: str
    vehicle_class: VehicleClass
    axles_kip: tuple[float, ...]
    spacings_ft: tuple[Spacing, ...]
    gauge_ft: float
    width_ft: float
    lane_kip_per_ft: float = 0.0
    lane_point_kip: tuple[float, float] | None = None
    combine: Combine = Combine.NONE
    lane_impact: bool = False
    source: str
    confirmed: bool
    layer: str = "shipped"
    confirmation: Confirmation | None = None
    area_psf: float = 0.0
    empty_axles_kip: tuple[float, ...] = ()
    posted_as: VehicleClass = VehicleClass.SINGLE
    spread_to_ft: tuple[float, ...] = ()
    """The distance to which a varied spacing was drawn out [ft]; empty where none was."""
    assumed: tuple[str, ...] = ()

    @property
    def area_kip_per_ft2(self) -> float:
        """The load by area [kip/ft2]."""
        return self.area_psf / 1000.0

    @property
    def weight_kip(self) -> float:
        """All axles together [kip]."""
        return sum(self.axles_kip)

    @property
    def weight_tons(self) -> float:
        """All axles together [tons of 2,000 lb]."""
        return sum(self.axles_kip) / 2.0

    @property
    def least_spacings_ft(self) -> tuple[float, ...]:
        """The spacings, every varied one at its least [ft]."""
        return _least(self.spacings_ft)

    @property
    def greatest_spacings_ft(self) -> tuple[float, ...]:
        """The spacings, every varied one at its greatest [ft]."""
        return tuple(s[1] if isinstance(s, tuple) else s for s in self.spacings_ft)

    @property
    def varied(self) -> tuple[int, ...]:
        """The places in `spacings_ft` of those that vary."""
        return tuple(i for i, s in enumerate(self.spacings_ft) if isinstance(s, tuple))

    def behind_front_ft(self, spacings_ft: tuple[float, ...] | None = None) -> tuple[float, ...]:
        """How far each axle stands behind the front one [ft]; at the least spacings by default.

        Raises OutOfRange where a spacing is not among those of the vehicle.
        """
        if spacings_ft is None:
            return _behind(self.spacings_ft)
        limits = zip(spacings_ft, self.least_spacings_ft, self.greatest_spacings_ft, strict=True)
        for got, least, greatest in limits:
            if not least <= got <= greatest:
                limit = f"{least:g} to {greatest:g} ft" if least < greatest else f"{least:g} ft"
                raise OutOfRange(f"axle spacing of {self.name}", f"{got:g} ft", limit)
        return tuple(accumulate(spacings_ft, initial=0.0))


@lru_cache(maxsize=1024)
def _least(spacings_ft: tuple[Spacing, ...]) -> tuple[float, ...]:
    """Every varied spacing at its least [ft]."""
    return tuple(s[0] if isinstance(s, tuple) else s for s in spacings_ft)


@lru_cache(maxsize=1024)
def _behind(spacings_ft: tuple[Spacing, ...]) -> tuple[float, ...]:
    """How far each axle stands behind the front one [ft], varied spacings at their least."""
    return tuple(accumulate(_least(spacings_ft), initial=0.0))


def spread_over(vehicle: Vehicle, clear_width_ft: float) -> Vehicle:
    """A load by area laid on the clear width of a road [ft]; a vehicle with axles as it is."""
    if vehicle.combine is not Combine.AREA:
        return vehicle
    return replace(
        vehicle, lane_kip_per_ft=vehicle.area_kip_per_ft2 * clear_width_ft,
        gauge_ft=clear_width_ft, width_ft=clear_width_ft,
    )


def loaded_by(vehicle: Vehicle, part: float) -> Vehicle:
    """A vehicle with a part [1] of what can be taken off it; a load by area with a part of it all.

    Raises OutOfRange where the part is not from 0 to 1, or nothing can be taken off.
    """
    if not 0.0 <= part <= 1.0:
        raise OutOfRange(f"part of the load of {vehicle.name}", f"{part:g}", "from 0 to 1")
    if vehicle.combine is Combine.AREA:
        return replace(
            vehicle, area_psf=part * vehicle.area_psf,
            lane_kip_per_ft=part * vehicle.lane_kip_per_ft,
        )
    if not vehicle.empty_axles_kip:
        raise OutOfRange(f"axles of {vehicle.name} empty", "not known", "given to take load off")
    pairs = zip(vehicle.empty_axles_kip, vehicle.axles_kip, strict=True)
    return replace(
        vehicle, axles_kip=tuple(empty + part * (full - empty) for empty, full in pairs)
    )


def axles_spread(vehicle: Vehicle) -> Vehicle:
    """A vehicle with its varied spacing at the greatest."""
    drawn = tuple(vehicle.greatest_spacings_ft[i] for i in vehicle.varied)
    return replace(vehicle, spacings_ft=vehicle.greatest_spacings_ft, spread_to_ft=drawn)
