"""What is known of a section once its measures are added up."""

import math
from dataclasses import dataclass

from eyebar.errors import NotMeasured
from eyebar.sections.closed_forms import radius_of_gyration


@dataclass(frozen=True, slots=True, kw_only=True)
class Properties:
    """What a section's measures amount to.

    `area` [in2]; `y_bar` centre of gravity above the edge that the section is measured from [in]
    (the lower edge of channels, webs, beams and plates, the back of the level leg or flange of
    angles and tees); `x_bar` beside its middle, towards the far side [in]; `i_x`, `i_y` inertia
    about the level and the upright axis, `product` their product of inertia [in4]; `r_x`, `r_y`
    radii of gyration [in], `r_least` the least about any axis; `top`, `bottom` distances from the
    centre of gravity to the highest and the lowest fibre [in], `side` to the farther side [in];
    `farther_side` is None where given properties do not tell it, and `side` then raises
    NotMeasured.
    """

    area: float
    y_bar: float
    i_x: float
    i_y: float
    r_x: float
    r_y: float
    r_least: float
    top: float
    bottom: float
    farther_side: float | None
    x_bar: float = 0.0
    product: float = 0.0

    @property
    def r_greatest(self) -> float:
        """Radius of gyration about the axis across that of `r_least` [in]."""
        return math.sqrt(self.r_x**2 + self.r_y**2 - self.r_least**2)

    @property
    def side(self) -> float:
        """Distance to the farther side [in]. Raises NotMeasured."""
        return measured(self.farther_side, "distance to the fibre at the side")


def measured(value: float | None, what: str) -> float:
    """The size, or NotMeasured naming it (the caller, who knows the part, puts its name in)."""
    if value is None:
        raise NotMeasured("", what)
    return value


def symmetric(size: float, i_x: float, i_y: float, *, top: float, side: float) -> Properties:
    """Properties of a section that is alike above and below, left and right."""
    r_x = radius_of_gyration(i_x, size)
    r_y = radius_of_gyration(i_y, size)
    return Properties(
        area=size, y_bar=top, i_x=i_x, i_y=i_y, r_x=r_x, r_y=r_y, r_least=min(r_x, r_y),
        top=top, bottom=top, farther_side=side,
    )
