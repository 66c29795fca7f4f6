"""One vehicle as loads and road read it."""

from dataclasses import dataclass
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
        return tuple(s[0] if isinstance(s, tuple) else s for s in self.spacings_ft)

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
        chosen = self.least_spacings_ft if spacings_ft is None else spacings_ft
        limits = zip(chosen, self.least_spacings_ft, self.greatest_spacings_ft, strict=True)
        for got, least, greatest in limits:
            if not least <= got <= greatest:
                limit = f"{least:g} to {greatest:g} ft" if least < greatest else f"{least:g} ft"
                raise OutOfRange(f"axle spacing of {self.name}", f"{got:g} ft", limit)
        return tuple(accumulate(chosen, initial=0.0))
