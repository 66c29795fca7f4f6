"""A crowd on the floor of an invented bridge, part by part, by hand."""

from dataclasses import replace
from functools import cache

import pytest

from eyebar.bridge.parts import Use
from eyebar.documents.opened import opened
from eyebar.loads.wheels_across import AcrossLine, RoadAcross, placed_all_over
from eyebar.rating import BridgeRating, rated_bridge
from eyebar.terms import Level, Method, Pace
from eyebar.vehicles import shipped_vehicles, spread_over
from tests.documents import demos

LEGAL = (Method.LOAD_AND_RESISTANCE, Level.LEGAL)


@cache
def rated() -> BridgeRating:
    """The crowd of 90 lb/ft2 on 16 ft, in panels of 15 ft, stringers 2 ft 2 in apart."""
    one = opened(demos.without_pins("quillmarsh"))
    road = replace(one.bridge.road, use=Use(alone=True, pace=Pace.STILL))
    crowd = spread_over(shipped_vehicles()["crowd"], road.clear_width_ft)
    return rated_bridge(replace(one.bridge, roadway=road), one.values, {"crowd": crowd})


@pytest.mark.parametrize(
    ("address", "live", "near"),
    [
        # 0.09 kip/ft2 x 26/12 ft x 15^2/8 ft2 x 12 in/ft, over 6 x 12^2/6 = 144 in3: ksi.
        ("floor/panel 1/stringer 3", 0.09 * 26 / 12 * 15**2 / 8 * 12 / 144, 1e-9),
        # The outer one carries from the curb at 1 ft, 5 in outside it, to half a spacing inside,
        # with what the deck that cantilevers adds: reaction of the deck about its neighbour.
        ("floor/panel 1/stringer 1",
         0.09 * (31 / 12) ** 2 / 2 / (26 / 12) * 15**2 / 8 * 12 / 144, 1e-6),
        # 0.09 x 16 x 15 ft, half of it at each end of the floorbeam: kip.
        ("upstream/L1/hanger", 0.09 * 16 * 15 / 2, 1e-9),
        # Planks of 2 7/8 in on 20 in clear: span 22 7/8 in, a strip of any width: ksi.
        ("floor/deck", 0.09 / 144 * 22.875**2 / 8 / (2.875**2 / 6), 1e-9),
    ],
)
def test_a_crowd_does_to_a_part_of_the_floor_what_the_pencil_says(
    address: str, live: float, near: float
) -> None:
    part = next(one for one in rated().parts if one.address == address)
    (found,) = [one for one in part.ratings if (one.method, one.level) == LEGAL]
    assert found.impact == 0.0
    assert found.live == pytest.approx(live, rel=near)


def test_a_floorbeam_takes_the_crowd_spread_over_its_width() -> None:
    # By hand: 21.6 kip over 16 ft of 18 ft: 10.8 x 9 - 10.8 x 4 = 54 kip ft at the middle. The
    # stringers bring it as eight loads: at most a fiftieth less.
    part = next(one for one in rated().parts if one.address == "floor/L1/floorbeam")
    (found,) = [one for one in part.ratings if (one.method, one.level) == LEGAL]
    assert found.floor is not None
    assert found.live is not None
    moment = found.live * found.floor.strength.divisor / 12.0
    assert 54.0 * 0.98 <= moment <= 54.0


@pytest.mark.parametrize(
    ("ordinates", "share"),
    [
        # The road from 2 to 10 ft. Half of a truss's line from 1 at 0 ft to 0 at 12 ft: mean 0.5.
        ((1.0, 0.0), 0.5),
        # From 1 at 0 to -1 at 12 ft: nothing from 6 ft on; 4 ft of mean 1/3 over 8 ft.
        ((1.0, -1.0), (2.0 / 3.0) * 4.0 / 2.0 / 8.0),
        ((-1.0, -1.0), 0.0),
    ],
)
def test_a_load_by_area_lies_only_where_it_adds(
    ordinates: tuple[float, float], share: float
) -> None:
    line = AcrossLine(places_ft=(0.0, 12.0), ordinates=ordinates)
    found = placed_all_over(line, RoadAcross(curb_ft=2.0, clear_ft=8.0))
    assert found.share == pytest.approx(share)
