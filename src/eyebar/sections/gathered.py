"""A section gathered from its parts: each part where it stands, then sums about their centre.

x runs across the truss from the near side to the far one, y upwards. Where y = 0 lies is fixed by
the pieces that pins and rivets hold (the lower edge of channels and webs), so that a plate that
rusts away does not move it.
"""

import math
from dataclasses import dataclass

from eyebar.formula import Symbol, formula, note, procedure
from eyebar.sections import closed_forms as form
from eyebar.sections.amounts import Properties
from eyebar.sections.known import angle_sizes, hole_width, plate_sizes
from eyebar.sections.pieces import Angle, Plate


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One part of a section: its area, its centre, its own inertias, how far it reaches.

    `i_x`, `i_y`, `product` are about axes through its own centre [in4]; `left` to `right` and
    `bottom` to `top` is the room it takes [in].
    """

    name: str
    area: float
    x: float
    y: float
    i_x: float
    i_y: float
    product: float
    left: float
    right: float
    bottom: float
    top: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Sums:
    """What parts amount to about their common centre of gravity."""

    area: float
    x: float
    y: float
    i_x: float
    i_y: float
    product: float
    left: float
    right: float
    bottom: float
    top: float


@formula(
    "I = I_0 + A * e**2",
    result=Symbol("inertia of a part about the axis of the whole", "in4"),
    I_0=Symbol("its own inertia", "in4", "own", low=0.0, high=200.0),
    A=Symbol("area of the part", "in2", "area", low=0.1, high=20.0),
    e=Symbol("distance of its centre from the axis", "in", "distance", low=-10.0, high=10.0),
    source="parallel-axis theorem",
)
def about_the_whole(own: float, area: float, distance: float) -> float:
    """Moment of inertia of a part about the axis of the whole section [in4].

    Own inertia [in4], area [in2], distance [in]; scalars or arrays. Limits: none. Source:
    parallel-axis theorem.
    """
    return own + area * distance**2


@formula(
    "P = P_0 + A * e_x * e_y",
    result=Symbol("product of inertia of a part about the axes of the whole", "in4"),
    P_0=Symbol("its own product of inertia", "in4", "own", low=-50.0, high=50.0),
    A=Symbol("area of the part", "in2", "area", low=0.1, high=20.0),
    e_x=Symbol("its centre beside the centre of the whole", "in", "aside", low=-10.0, high=10.0),
    e_y=Symbol("its centre above the centre of the whole", "in", "above", low=-10.0, high=10.0),
    source="parallel-axis theorem",
)
def product_about_the_whole(own: float, area: float, aside: float, above: float) -> float:
    """Product of inertia of a part about the axes of the whole section [in4].

    Own product [in4], area [in2], distances [in]; scalars or arrays. Limits: none. Source:
    parallel-axis theorem.
    """
    return own + area * aside * above


@procedure(
    "Section by its parts",
    source="plane geometry, parallel-axis theorem",
    steps=(
        "area, centre and own inertias of each part, with the thickness that is left of it",
        "area and centre of gravity of the whole: sums of areas and of their moments",
        "inertias and product of inertia of each part about the centre of the whole, and their sum",
    ),
)
def gathered(parts: tuple[Part, ...]) -> Sums:
    """What parts that are tied together amount to.

    Lengths [in]; at least one part. Scalars. Limits: area above 0.
    """
    area = math.fsum(part.area for part in parts)
    x = math.fsum(part.area * part.x for part in parts) / area
    y = math.fsum(part.area * part.y for part in parts) / area
    note("area of the whole", "A", area, "in2")
    note("centre of gravity above the edge that the section is measured from", "y", y, "in")
    if x:
        note("centre of gravity beside the middle", "x", x, "in")
    i_x = math.fsum(about_the_whole(part.i_x, part.area, part.y - y) for part in parts)
    i_y = math.fsum(about_the_whole(part.i_y, part.area, part.x - x) for part in parts)
    product = math.fsum(
        product_about_the_whole(part.product, part.area, part.x - x, part.y - y)
        for part in parts
    )
    note("inertia of the whole about its level axis", "I_x", i_x, "in4")
    note("inertia of the whole about its upright axis", "I_y", i_y, "in4")
    return Sums(
        area=area, x=x, y=y, i_x=i_x, i_y=i_y, product=product,
        left=min(part.left for part in parts), right=max(part.right for part in parts),
        bottom=min(part.bottom for part in parts), top=max(part.top for part in parts),
    )


def held_in_both_planes(sums: Sums) -> Properties:
    """Properties of a section that bends in the plane of the truss or out of it.

    Built symmetrically, it is held in both planes: where rust has turned its axes a little its
    radii are still those about the level and the upright axis.
    """
    return _properties(sums, None)


def free_to_slant(sums: Sums) -> Properties:
    """Properties of a section that bends about whichever axis is its weakest."""
    if abs(sums.product) <= 1e-9 * (sums.i_x + sums.i_y):
        return _properties(sums, None)
    return _properties(sums, form.least_inertia(sums.i_x, sums.i_y, sums.product))


def _properties(sums: Sums, least: float | None) -> Properties:
    r_x = form.radius_of_gyration(sums.i_x, sums.area)
    r_y = form.radius_of_gyration(sums.i_y, sums.area)
    r_least = min(r_x, r_y) if least is None else form.radius_of_gyration(least, sums.area)
    return Properties(
        area=sums.area, y_bar=sums.y, i_x=sums.i_x, i_y=sums.i_y, r_x=r_x, r_y=r_y,
        r_least=min(r_least, r_x, r_y), top=sums.top - sums.y, bottom=sums.y - sums.bottom,
        farther_side=max(sums.right - sums.x, sums.x - sums.left), x_bar=sums.x,
        product=sums.product,
    )


def block(name: str, *, width: float, height: float, x: float, y: float) -> Part:
    """A rectangle with its centre at (x, y) [in]."""
    return Part(
        name=name, area=form.rectangle_area(width, height), x=x, y=y,
        i_x=form.rectangle_inertia(width, height), i_y=form.rectangle_inertia(height, width),
        product=0.0, left=x - width / 2, right=x + width / 2, bottom=y - height / 2,
        top=y + height / 2,
    )


def level_plate(plate: Plate, name: str, *, y: float, up: int) -> tuple[Part, ...]:
    """A plate lying level about the middle, on top (`up` +1) of height `y` or below it (-1).

    One with access holes is the two strips beside them. Raises NotMeasured, OutOfRange.
    """
    net, thickness = plate_sizes(plate, name)
    hole, centre = hole_width(plate, name), y + up * thickness / 2
    if not hole:
        return (block(name, width=net, height=thickness, x=0.0, y=centre),)
    return tuple(
        block(name, width=net / 2, height=thickness, x=side * (hole + net / 2) / 2, y=centre)
        for side in (-1, 1)
    )


def angle_at(
    angle: Angle, name: str, *, heel: tuple[float, float], aside: int, up: int
) -> Part:
    """An angle with its heel's corner at a point, its level leg pointing `aside` (+1 to the far
    side, -1 to the near one) and its upright leg pointing `up` (+1) or down (-1).

    Raises NotMeasured.
    """
    sizes = depth, web, flange, thickness = angle_sizes(angle, name)
    size = form.angle_area(*sizes)
    height = form.angle_height(*sizes, area=size)
    turned = (flange, thickness, depth, web)
    side = form.angle_height(*turned, area=size)
    x, y = heel
    across, along = sorted((x, x + aside * flange)), sorted((y, y + up * depth))
    return Part(
        name=name, area=size, x=x + aside * side, y=y + up * height,
        i_x=form.angle_inertia(*sizes, height=height),
        i_y=form.angle_inertia(*turned, height=side),
        product=aside * up * form.angle_product(*sizes, side=side, height=height),
        left=across[0], right=across[1], bottom=along[0], top=along[1],
    )
