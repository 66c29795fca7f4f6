"""Where the load stands, without script: the page's figures are the table's."""

import json
import re
from dataclasses import replace

import pytest

from eyebar.documents.cross import cross_document
from eyebar.drawings.ink import written
from eyebar.drawings.ruler_marks import ruler_marks
from eyebar.views.governing_places import GoverningPlace, governing_places
from eyebar.views.standing import forces_at
from eyebar.views.stress_sheet import signed
from tests.documents import demos
from tests.web.benches import HANDLE, Seat

PAGE = f"/bridges/{HANDLE}/load"


def test_the_figures_of_the_page_are_those_of_the_table_at_rows_and_between(seat: Seat) -> None:
    table = seat.table(f"{PAGE}.json?vehicle=grain cart")
    fronts = [row["front_axle_ft"] for row in table["rows"]]
    for at in (fronts[4], (fronts[4] + fronts[5]) / 2.0, fronts[-1]):
        page = seat.get(f"{PAGE}?vehicle=grain cart&at={at!r}")
        for bar, force in zip(table["bars"], forces_at(table, at), strict=True):
            drawn = re.search(rf'data-part="[^"]*/{bar}"[^>]*data-work="(\w+)".*?'
                              r'class="changing"[^>]*>([^<]*)<', page)
            assert drawn is not None, bar
            assert drawn[2] == signed(force)
            slack = abs(force) < 0.05
            assert drawn[1] == ("slack" if slack else "pulled" if force > 0 else "pushed")


def test_links_lead_from_place_to_place_over_the_whole_bridge(seat: Seat) -> None:
    table = seat.table(f"{PAGE}.json?vehicle=car")
    address, seen = f"{PAGE}?vehicle=car&at={table['rows'][0]['front_axle_ft']!r}", 0
    while address:
        page = seat.get(address.replace("&amp;", "&"))
        seen += 1
        found = re.search(r'rel="next" href="([^"]*)"', page)
        address = found[1] if found else ""
    assert seen == len(table["rows"])


def test_a_bar_that_is_pointed_at_shows_its_force_place_by_place(seat: Seat) -> None:
    table = seat.table(f"{PAGE}.json?vehicle=grain cart")
    page = seat.get(f"{PAGE}?vehicle=grain cart&bar=U1-L2")
    number = table["bars"].index("U1-L2")
    forces = [row["forces_kip"][number] for row in table["rows"]]
    assert f"Greatest {signed(max(forces))} kip" in page
    assert f"Least {signed(min(forces))} kip" in page
    points = re.search(r'<polyline points="([^"]*)"', page)
    assert points is not None
    assert len(points[1].split()) == len(forces)


@pytest.fixture(scope="module")
def rate(seat: Seat) -> dict:
    return json.loads(seat.get(f"/json/bridges/{HANDLE}/rate"))


def table_of(seat: Seat, vehicle: str, way: str) -> dict:
    return seat.table(f"{PAGE}.json?vehicle={vehicle}&way={way}&truss=north")


def recorded(rate: dict, part: str, vehicle: str) -> dict | None:
    """The least rating of a part under a vehicle by the posting's own method and level, read off
    the document; by allowable stress at operating where that has no rule."""
    ratings = next(one for one in rate["parts"] if one["part"] == part).get("ratings", [])
    own = rate["posting"]["method"], rate["posting"]["level"]
    for by in (own, ("allowable-stress", "operating")):
        found = [one for one in ratings if one["vehicle"] == vehicle and one["factor"] is not None
                 and (one["method"], one["level"]) == by]
        if found:
            return min(found, key=lambda one: one["factor"])
    return None


@pytest.mark.parametrize("vehicle", ["SU7", "H15"])
@pytest.mark.parametrize("way", ["up", "down"])
def test_the_marked_places_are_those_that_the_rating_recorded(
    seat: Seat, rate: dict, vehicle: str, way: str
) -> None:
    table = table_of(seat, vehicle, way)
    for bar in table["bars"]:
        rating = recorded(rate, f"north/{bar}", vehicle)
        shown = next(one for one in governing_places(table, rate, bar)
                     if one.name == f"Rating of {bar}")
        assert rating is not None
        if rating["at"] is None:
            assert (shown.letter, shown.front_ft) == ("", None)
            continue
        assert (shown.front_ft, shown.way) == (
            rating["at"]["front_axle_ft"], rating["at"]["direction"]
        )
        assert bool(shown.letter) == (rating["at"]["direction"] == way)
    ratings = [recorded(rate, part["part"], vehicle) for part in rate["parts"]]
    shown = governing_places(table, rate)[0]
    of = recorded(rate, shown.name.rpartition(" ")[2], vehicle)
    assert of is not None
    assert of["factor"] == pytest.approx(min(one["factor"] for one in ratings if one), rel=1e-9)
    assert shown.front_ft == (of["at"] and of["at"]["front_axle_ft"])


def test_the_greatest_forces_are_those_of_the_forces_document(seat: Seat, rate: dict) -> None:
    """Other method: the extremes of the sweep over lines of influence, both ways at once. Its place
    has the marked force; there may be more than one such place."""
    found = next(job.result() for key, job in seat.bench.kept.jobs.items() if key[0] == "rate")
    north = next(one for one in found.forces["trusses"] if one["truss"] == "north")
    tables = {way: table_of(seat, "SU7", way) for way in ("up", "down")}
    seen = 0
    for number, bar in enumerate(tables["up"]["bars"]):
        extremes = north["live"]["SU7"][bar]
        for toward, side in (("pull", "max"), ("push", "min")):
            at = extremes[f"{side}_at"]
            if at is None or abs(extremes[side]) < 0.06:
                continue
            table = tables[at["direction"]]
            mark = next(one for one in governing_places(table, rate, bar)
                        if one.name == f"{bar} most towards {toward}")
            assert mark.letter
            greatest = pytest.approx(north["dead"][bar] + extremes[side], abs=1e-6)
            assert mark.force_kip == greatest
            assert forces_at(table, at["front_axle_ft"])[number] == greatest
            assert forces_at(table, mark.front_ft)[number] == greatest
            seen += 1
    assert seen > 10


def test_a_place_on_another_ruler_is_a_link_there_and_no_mark(seat: Seat, rate: dict) -> None:
    """HS20 governs the pin going down alone (the rate document says so)."""
    rating = recorded(rate, "north/L2/pin", "HS20")
    assert rating is not None
    assert rating["at"]["direction"] == "down"
    worst, here = governing_places(table_of(seat, "HS20", "up"), rate)
    assert (worst.letter, worst.way, here.letter, here.way) == ("", "down", "A", "up")
    page = seat.get(f"{PAGE}?vehicle=HS20&way=up&truss=north")
    assert f"way=down&amp;at={rating['at']['front_axle_ft']:.9g}" in page
    assert page.count('class="place"') == 1


def test_what_has_no_place_says_why(seat: Seat, rate: dict) -> None:
    worst = governing_places(table_of(seat, "H15", "up"), rate)[0]
    assert "lane load governs, which has no place" in worst.said
    bare = {**rate, "parts": [{**one, "ratings": []} for one in rate["parts"]]}
    (said,) = governing_places(table_of(seat, "H15", "up"), bare)
    assert (said.front_ft, said.letter) == (None, "")
    assert "no part is rated for H15" in said.said


def test_a_vehicle_that_sets_no_posting_is_rated_alone_for_its_places(seat: Seat) -> None:
    """Other way: the answer whether it may cross, which tries it together with the posting's."""
    page = seat.get(f"{PAGE}?vehicle=grain cart&truss=north&way=up")
    found = next(job.result() for key, job in seat.bench.kept.jobs.items() if key[0] == "rate")
    (crossing,) = cross_document(demos.record("wrenmallow"), ["grain cart"])["vehicles"]
    rate = seat.bench.kept.rate(found, found.one.vehicles["grain cart"])
    places = governing_places(table_of(seat, "grain cart", "up"), rate)
    assert f"Worst part of the bridge, {crossing['decided_by']}" in page
    assert places[0].name.endswith(crossing["decided_by"])
    part = recorded(rate, crossing["decided_by"], "grain cart")
    assert part is not None
    assert part["factor"] == pytest.approx(crossing["factor"], rel=1e-9)
    assert places[0].front_ft == part["at"]["front_axle_ft"]


def test_a_mark_beyond_the_paper_stands_at_its_edge_with_an_arrow() -> None:
    place = GoverningPlace(
        letter="A", shape="rating", name="x", said="y", front_ft=83.5, truss="north", way="up",
        force_kip=None,
    )
    ink, depth = ruler_marks([place, replace(place, letter="B", front_ft=20.0)],
                             lambda front: 20.0 * front, 100.0, width=1240.0, to=lambda _: "/x")
    drawn = "".join(map(written, ink))
    assert re.findall(r">([\d.]+) ft<", drawn) == ["83.5"]
    assert depth > 0
    assert all(0 <= x <= 1240 for x in map(float, re.findall(r'x\d?="([\d.]+)"', drawn)))
