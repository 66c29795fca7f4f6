"""Where the load stands, without script: the page's figures are the table's."""

import re

from eyebar.views.standing import forces_at
from eyebar.views.stress_sheet import signed
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
