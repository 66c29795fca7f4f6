"""Everyday vehicles, loads by area, what can be taken off, scale tickets, axles typed on a line."""

from pathlib import Path

import pytest

from eyebar.errors import BadRecord, OutOfRange, Unreadable
from eyebar.office import shipped_values
from eyebar.terms import Combine, VehicleClass
from eyebar.vehicles import (
    axles_spread,
    loaded_by,
    shipped_vehicles,
    spread_over,
    typed_vehicle,
    vehicles_of,
    vehicles_read,
)

SHIPPED = shipped_vehicles()
EVERYDAY = {
    name: one for name, one in SHIPPED.items() if one.vehicle_class is VehicleClass.EVERYDAY
}
EVERY_FIGURE = {"axles", "spacings", "gauge", "width"}


def test_every_vehicle_of_the_order_is_there() -> None:
    # The list is the order's own.
    assert list(EVERYDAY) == [
        "car", "pickup", "pickup with stock trailer", "ambulance", "small school bus empty",
        "small school bus full", "large school bus empty", "large school bus full", "fire engine",
        "fire tender", "milk truck", "refuse truck", "tractor", "tractor with one wagon",
        "tractor with two wagons", "grain cart", "combine", "manure tanker", "hay wagon with team",
        "buggy", "ridden horses", "cattle herd", "crowd", "snow",
    ]


def test_no_everyday_vehicle_sets_the_posting() -> None:
    values = shipped_values()
    setting = {*values.names("posting.vehicles"), *values.names("posting.emergency vehicles")}
    assert not setting & set(EVERYDAY)


@pytest.mark.parametrize("name", list(EVERYDAY))
def test_a_figure_without_a_text_is_marked_as_assumed(name: str) -> None:
    one = EVERYDAY[name]
    assert not one.confirmed
    assert "assum" in one.source or len(one.assumed) < len(EVERY_FIGURE) or "split" in one.source


@pytest.mark.parametrize(
    ("name", "axles", "tons"),
    [
        # A school board's purchase specification: 13,200 and 23,000 lb.
        ("large school bus full", (13.2, 23.0), 18.1),
        # A maker's manual: 10,546 + 14,537 = 25,083 lb.
        ("tractor", (10.546, 14.537), 12.5415),
        # A buggy of 1,000 lb, four people of 175 lb, a horse of 1,000 lb.
        ("buggy", (0.55, 0.45, 0.85, 0.85), 1.35),
    ],
)
def test_figures_that_were_read_are_as_their_texts_have_them(
    name: str, axles: tuple[float, ...], tons: float
) -> None:
    assert SHIPPED[name].axles_kip == axles
    assert SHIPPED[name].weight_tons == pytest.approx(tons)


def test_four_thousand_gallons_of_milk_weigh_what_the_truck_carries() -> None:
    # 4,000 gal x 8.6 lb = 34,400 lb, up to half a ton of rounding.
    truck = SHIPPED["milk truck"]
    milk = truck.weight_kip - sum(truck.empty_axles_kip)
    assert milk == pytest.approx(34.4, abs=0.5)


def test_a_school_bus_has_no_more_than_three_quarters_on_its_rear_axle() -> None:
    # The rule of California for buses built after 1950.
    for name in EVERYDAY:
        if "bus" in name:
            assert SHIPPED[name].axles_kip[1] <= 0.75 * SHIPPED[name].weight_kip


def test_a_load_by_area_lies_all_over_the_clear_width() -> None:
    # 90 lb/ft2 x 16 ft = 1,440 lb/ft.
    laid = spread_over(SHIPPED["crowd"], 16.0)
    assert laid.lane_kip_per_ft == pytest.approx(1.44)
    assert laid.width_ft == 16.0
    assert spread_over(SHIPPED["car"], 16.0) is SHIPPED["car"]


def test_half_of_the_load_is_half_way_between_empty_and_full() -> None:
    truck = SHIPPED["milk truck"]
    assert loaded_by(truck, 1.0).axles_kip == truck.axles_kip
    assert loaded_by(truck, 0.0).axles_kip == truck.empty_axles_kip
    assert loaded_by(truck, 0.5).axles_kip == pytest.approx((13.0, 13.0, 13.0))
    with pytest.raises(OutOfRange):
        loaded_by(truck, 1.5)
    with pytest.raises(OutOfRange, match="empty"):
        loaded_by(SHIPPED["tractor"], 0.5)


def test_axles_are_spread_to_the_greatest_of_a_varied_distance() -> None:
    spread = axles_spread(SHIPPED["tractor with one wagon"])
    assert spread.spacings_ft == (9.5, 14.0, 9.0)
    assert spread.spread_to_ft == (14.0,)


TICKET = """
[[vehicle]]
name = "milk truck"
like = "milk truck"
axles_kip = [14.2, 18.1, 18.0]
source = "scale ticket of 3 October 2026"
confirmed = false
"""


def test_a_scale_ticket_replaces_the_weights_and_nothing_else(tmp_path: Path) -> None:
    file = tmp_path / "tickets.toml"
    file.write_text(TICKET, encoding="utf-8")
    shipped, found = SHIPPED["milk truck"], vehicles_of(file, SHIPPED, layer="file")["milk truck"]
    assert found.axles_kip == (14.2, 18.1, 18.0)
    assert (found.spacings_ft, found.width_ft) == (shipped.spacings_ft, shipped.width_ft)
    assert found.assumed == ("spacings", "gauge", "width")
    # What another truck weighs empty is not told by the ticket.
    assert found.empty_axles_kip == ()
    assert found.source == "scale ticket of 3 October 2026"


def test_every_shipped_vehicle_is_like_itself() -> None:
    rows = "".join(
        f'[[vehicle]]\nname = "{name}"\nlike = "{name}"\nsource = "x"\nconfirmed = false\n'
        for name in SHIPPED
    )
    found = vehicles_read(rows.encode(), file="all.toml", layer="shipped", known=SHIPPED)
    for name, one in SHIPPED.items():
        same = found[name]
        for key in ("axles_kip", "spacings_ft", "gauge_ft", "width_ft", "lane_kip_per_ft",
                    "lane_point_kip", "combine", "lane_impact", "area_psf", "empty_axles_kip",
                    "posted_as", "assumed", "vehicle_class"):
            assert getattr(same, key) == getattr(one, key), (name, key)


AREA = '[[vehicle]]\nname = "fair"\nclass = "everyday"\narea_psf = 60\nsource = "x"\n' \
    "confirmed = false\n"


def refused(text: str) -> str:
    with pytest.raises(BadRecord) as caught:
        vehicles_read(text.encode(), file="own.toml", layer="file", known=SHIPPED)
    return str(caught.value)


def test_a_load_by_area_needs_no_axles() -> None:
    fair = vehicles_read(AREA.encode(), file="own.toml", layer="file")["fair"]
    assert (fair.combine, fair.area_psf, fair.axles_kip) == (Combine.AREA, 60.0, ())


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (AREA + "axles_kip = [4]\n", "axles_kip: has no place where a load is by area"),
        (AREA.replace("60", "-60"), "area_psf: -60 must be over 0"),
        (AREA.replace("area_psf = 60\n", ""), "axles_kip: is missing"),
        (TICKET.replace('like = "milk truck"', 'like = "milk trick"'), "did you mean 'milk truck'"),
        (TICKET.replace("[14.2, 18.1, 18.0]", "[]"), "axles_kip"),
        (TICKET.replace("[14.2, 18.1, 18.0]", "[14.2, 18.1]"), "spacings_ft: must be one fewer"),
        (TICKET + "empty_axles_kip = [20, 6, 6]\n", "none heavier than loaded"),
        (TICKET + 'posted_as = "everyday"\n', "posted_as"),
        (TICKET + 'assumed = ["colour"]\n', "assumed"),
        (TICKET + "gauge_ft = 60.5\n", "gauge_ft"),
    ],
)
def test_a_faulty_row_is_refused_with_the_place(text: str, said: str) -> None:
    assert said in refused(text)


def test_axles_typed_on_a_line_are_a_vehicle() -> None:
    one = typed_vehicle("10,000 lb, 12 ft 6 in, 9 tons, 4 ft to 6 ft, 18 kip", gauge="7 ft")
    assert one.axles_kip == (10.0, 18.0, 18.0)
    assert one.spacings_ft == (12.5, (4.0, 6.0))
    assert (one.gauge_ft, one.assumed) == (7.0, ("width",))
    assert one.posted_as is VehicleClass.SINGLE
    assert typed_vehicle("10 kip", towing=True).posted_as is VehicleClass.COMBINATION


@pytest.mark.parametrize(
    ("axles", "more", "said"),
    [
        ("", {}, "has no axle"),
        (" , ", {}, "has no axle"),
        ("10 kip, 12 ft", {}, "axles: '10 kip, 12 ft' does not end with an axle"),
        ("10 kip, 12 ft, 10 stone", {}, "axle 2: '10 stone' has the unknown unit .*; did you mean"),
        ("10 kip, 12 stone, 9 kip", {}, "distance behind axle 1: '12 stone'"),
        ("10 kip", {"width": "9 stone"}, "width: '9 stone'"),
        ("10 kip, -12 ft, 18 kip", {}, "below zero"),
        ("10 kip, 0 ft, 18 kip", {}, "over 0"),
        ("10, 12 ft, 18 kip", {}, "has no unit"),
        ("12 ft, 10 kip, 8 ft", {}, "is a force; here stands a length"),
        ("-10 kip", {}, "below zero"),
        ("0 kip", {}, "over 0"),
        ("10 kip, 14 ft to 12 ft, 18 kip", {}, "from the least to the greatest"),
        ("1 kip, 1 ft to 2 ft, 1 kip, 1 ft to 2 ft, 1 kip", {}, "one at most may vary"),
        ("10 kip", {"gauge": "7 ft", "width": "6 ft"}, "no less than its gauge"),
        ("10 kip", {"gauge": "700 ft"}, "60 ft"),
        ("1 kip" + ", 1 ft, 1 kip" * 60, {}, "60 or fewer"),
    ],
)
def test_a_line_that_is_no_vehicle_is_refused(
    axles: str, more: dict[str, str], said: str
) -> None:
    with pytest.raises((Unreadable, OutOfRange), match=said):
        typed_vehicle(axles, **more)
