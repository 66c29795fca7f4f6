"""A vehicle of one's own, from axles and distances typed on one line: `10 kip, 12 ft, 18 kip`."""

import re
from itertools import starmap

from eyebar.errors import OutOfRange, Unreadable
from eyebar.terms import VehicleClass
from eyebar.units import Dimension, Quantity, quantity
from eyebar.vehicles.tables import HEAVIEST_AXLE_KIP, LONGEST_SPACING_FT, MOST_AXLES, WIDEST_FT
from eyebar.vehicles.vehicle import Spacing, Vehicle

USUAL_GAUGE_FT = 6.0
USUAL_WIDTH_FT = 8.5
_APART = re.compile(r"\s*;\s*|,\s+|,\s*$")
_RANGE = re.compile(r"(.+?)\s+to\s+(.+)")
LIKE = "write axles and the distances between them in turn, like '10 kip, 12 ft, 18 kip'"


def typed_vehicle(
    axles: str, *, gauge: str = "", width: str = "", name: str = "own vehicle", towing: bool = False
) -> Vehicle:
    """A vehicle of axles and distances in turn, front to rear; a distance may be `10 ft to 14 ft`.

    A gauge or a width that is not given is assumed as a truck's, and said to be. Raises Unreadable
    and OutOfRange.
    """
    pieces = [piece for piece in _APART.split(axles.strip()) if piece]
    if not pieces:
        raise Unreadable(axles, "has no axle", LIKE, where="axles")
    if len(pieces) % 2 == 0:
        raise Unreadable(axles, "does not end with an axle", LIKE, where="axles")
    if len(pieces) > 2 * MOST_AXLES - 1:
        raise OutOfRange("number of axles", (len(pieces) + 1) // 2, f"{MOST_AXLES} or fewer")
    spacings = tuple(starmap(_spacing, enumerate(pieces[1::2], 1)))
    if sum(isinstance(one, tuple) for one in spacings) > 1:
        raise Unreadable(
            axles, "has several distances that vary", "one at most may vary", where="axles"
        )
    gauge_ft = _feet("gauge", gauge, WIDEST_FT) if gauge else USUAL_GAUGE_FT
    width_ft = _feet("width", width, WIDEST_FT) if width else max(USUAL_WIDTH_FT, gauge_ft)
    if width_ft < gauge_ft:
        raise OutOfRange("width of the vehicle", f"{width_ft:g} ft",
                         f"no less than its gauge, {gauge_ft:g} ft")
    assumed = (*(() if gauge else ("gauge",)), *(() if width else ("width",)))
    return Vehicle(
        name=name, vehicle_class=VehicleClass.EVERYDAY,
        axles_kip=tuple(starmap(_axle, enumerate(pieces[0::2], 1))), spacings_ft=spacings,
        gauge_ft=gauge_ft, width_ft=width_ft, source=f"typed: {axles.strip()}", confirmed=False,
        layer="typed", assumed=assumed,
        posted_as=VehicleClass.COMBINATION if towing else VehicleClass.SINGLE,
    )


def _axle(number: int, text: str) -> float:
    where = f"axle {number}"
    kip = _measured(where, text, Dimension.FORCE).number
    if not 0.0 < kip <= HEAVIEST_AXLE_KIP:
        raise OutOfRange(where, text, f"over 0 and up to {HEAVIEST_AXLE_KIP:g} kip")
    return kip


def _spacing(number: int, text: str) -> Spacing:
    where, found = f"distance behind axle {number}", _RANGE.fullmatch(text)
    if not found:
        return _feet(where, text, LONGEST_SPACING_FT)
    least, greatest = (_feet(where, one, LONGEST_SPACING_FT) for one in found.groups())
    if least >= greatest:
        raise OutOfRange(where, text, "written from the least to the greatest")
    return least, greatest


def _feet(where: str, text: str, most: float) -> float:
    feet = _measured(where, text, Dimension.LENGTH).in_unit("ft")
    if not 0.0 < feet <= most:
        raise OutOfRange(where, text, f"over 0 and up to {most:g} ft")
    return feet


def _measured(where: str, text: str, dimension: Dimension) -> Quantity:
    """A measure of a vehicle; what is wrong with it names where it stands."""
    try:
        return quantity(text, dimension)
    except Unreadable as wrong:
        raise Unreadable(text, wrong.rule, wrong.cure, where=where) from None
