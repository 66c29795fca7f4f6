"""The pages as a reader without script sees them."""

import re
from datetime import date
from html import unescape

import pytest

from eyebar.documents.opened import CAUTION
from eyebar.store.issued import Crossing, give_slip
from eyebar.views.words import CLOSE
from eyebar.views.workbench import due_words, is_poor, months_after
from tests.documents import demos
from tests.web.benches import HANDLE, Seat, links

OF_BRIDGE = ("", "load", "weakest", "measure", "revisions", "papers", "field")


@pytest.mark.parametrize("page", OF_BRIDGE)
def test_every_page_of_a_bridge_says_the_caution_and_the_posting(seat: Seat, page: str) -> None:
    text = unescape(seat.get(f"/bridges/{HANDLE}/{page}".rstrip("/")))
    assert CAUTION in text
    # Wrenmallow is to be closed: that is said before anything else of it.
    assert text.index(CLOSE) < text.index("<main")


def test_every_link_of_every_page_leads_somewhere(seat: Seat) -> None:
    known: set[str] = set()
    for page in OF_BRIDGE:
        found = links(seat.get(f"/bridges/{HANDLE}/{page}".rstrip("/"))) - known
        for address in sorted(found)[:40]:
            if any(word in address for word in ("/papers/", "part=", "bar=", "at=")):
                continue
            status = seat.client.get(address).status_code
            assert status in (200, 405), address
        known |= found


def test_a_bar_of_the_drawing_leads_to_what_is_known_of_it(seat: Seat) -> None:
    page = seat.get(f"/bridges/{HANDLE}")
    rate = demos.rate("wrenmallow")
    bars = [one["part"] for one in rate["parts"] if re.fullmatch(r"\w+/\w+-\w+", one["part"])]
    drawn = [bar for bar in bars if f'data-part="{bar}"' in page]
    assert len(drawn) == len(bars) / 2  # one truss of two
    text = seat.get(f"/bridges/{HANDLE}?part={drawn[3]}")
    assert f'data-part="{drawn[3]}" class="part chosen"' in text
    factors = [
        one["factor"] for one in rate["parts"] if one["part"] == drawn[3]
        for one in one["ratings"] if one["factor"] is not None
    ]
    assert all(f">{factor:.2f}<" in text for factor in factors if factor < 0.99 or factor >= 1.01)
    assert "<math" in text


def test_the_list_finds_and_orders(seat: Seat) -> None:
    assert "Wrenmallow" in seat.get("/?find=wren+teasel")
    assert "None of the 1 bridges" in seat.get("/?find=elsewhere")
    assert "Wrenmallow" in seat.get("/?sort=due")


def test_an_empty_register_says_how_to_begin(tmp_path) -> None:
    from tests.web.benches import seated

    with seated(tmp_path) as found:
        assert "No bridge is in this register yet" in found.get("/")


@pytest.mark.parametrize(("last", "today", "said"), [
    # By hand: 24 months after the day.
    ("2024-02-29", "2026-01-01", "2026-02-28, within 90 days"),
    ("2024-02-29", "2026-03-01", "2026-02-28, overdue"),
    ("2025-06-15", "2026-01-01", "2027-06-15"),
    (None, "2026-01-01", "overdue: never inspected"),
])
def test_the_next_inspection_is_due_when_the_interval_is_over(
    last: str | None, today: str, said: str
) -> None:
    assert due_words(last, date.fromisoformat(today), 24.0) == said


@pytest.mark.parametrize(("codes", "poor"), [
    # 23 CFR 650.311 as the office's rows have it, from memory.
    ((6, 5, 6), False), ((3, 5, 6), True), ((6, 4, 6), True), ((4, 5, 4), False),
    ((None, None, None), False), ((None, 4, None), True), ((6, 5, 3), True),
])
def test_a_poor_bridge_is_inspected_more_often(codes: tuple, poor: bool) -> None:
    names = ("deck", "superstructure", "substructure")
    assert is_poor(dict(zip(names, codes, strict=True))) is poor


def test_months_run_over_the_year_and_end_with_their_last_day() -> None:
    # By hand.
    assert months_after(date(2026, 11, 30), 3) == date(2027, 2, 28)
    assert months_after(date(2026, 12, 31), 1) == date(2027, 1, 31)
    assert months_after(date(2027, 8, 31), 6) == date(2028, 2, 29)


@pytest.mark.parametrize(("address", "status", "said"), [
    ("/bridges/99-99", 404, "no bridge"),
    (f"/bridges/{HANDLE}?part=upstream/U9-L9", 404, "no part"),
    (f"/bridges/{HANDLE}?part=%3Cb%3E", 422, "&lt;b&gt;"),
    (f"/bridges/{HANDLE}/load?vehicle=bicycle", 404, "no vehicle"),
    (f"/bridges/{HANDLE}/load?at=nowhere", 422, "write feet"),
    (f"/bridges/{HANDLE}/load?at=1e9", 422, "it must be from"),
    (f"/bridges/{HANDLE}/load?at=nan", 422, "it must be from"),
    (f"/bridges/{HANDLE}/load?way=sideways", 422, "write up or down"),
    (f"/bridges/{HANDLE}/load?vehicle=crowd", 422, "number of axles"),
    (f"/bridges/{HANDLE}/papers/other.pdf", 404, "no paper"),
    (f"/bridges/{HANDLE}/files/77", 404, "no file"),
    (f"/bridges/{HANDLE}/measure?draft=none", 404, "no draft"),
    (f"/bridges/{HANDLE}/cross?axles=heavy", 422, "heavy"),
    (f"/bridges/{HANDLE}/revisions?from=7", 404, "no revision"),
])
def test_a_wrong_address_is_refused_in_words(
    seat: Seat, address: str, status: int, said: str
) -> None:
    for _ in range(200):
        answer = seat.client.get(address)
        if "Refresh" not in answer.headers:
            break
    assert answer.status_code == status
    assert said in answer.text


def test_the_page_for_the_field_says_first_to_choose_a_part(seat: Seat) -> None:
    hint = "Choose a part; then write what is read of it."
    assert hint in seat.get(f"/bridges/{HANDLE}/field")
    assert hint not in seat.get(f"/bridges/{HANDLE}/field?part=north/L1-L2")


def test_a_slip_is_shown_again_by_another_workbench(own_seat: Seat) -> None:
    day = date(2026, 10, 4)
    given = give_slip(own_seat.bench.register, HANDLE, Crossing(
        vehicle="grain cart", holder="A. Farmer", begins=day, ends=day, conditions="walking pace",
    ), person="B. Before", reason="harvest")
    address = f"/bridges/{HANDLE}/slips/{given.number}"
    assert address in links(own_seat.get(f"/bridges/{HANDLE}/papers"))
    page = own_seat.get(address)
    for said in ("grain cart", "A. Farmer", "2026-10-04", "walking pace", "B. Before", "harvest"):
        assert said in page
    assert own_seat.client.get(f"/bridges/{HANDLE}/slips/7").status_code == 404


@pytest.mark.parametrize(("form", "page"), [
    ("look", "measure"), ("field", "field"), ("slip", "cross"), ("issue", "papers"),
    ("sign", "papers"), ("files", "papers"),
])
def test_from_a_refused_form_the_way_back_is_its_page(seat: Seat, form: str, page: str) -> None:
    seat.get(f"/bridges/{HANDLE}")
    answer = seat.post(f"/bridges/{HANDLE}/{form}", onto="x", why="")
    assert (answer.status_code, f"/bridges/{HANDLE}/{page}" in links(answer.text)) == (422, True)


def test_another_part_chosen_is_all_that_changes_in_a_drawing(seat: Seat) -> None:
    first, second = "north/U1-L2", "north/L1-L2"
    drawings = [
        re.search(r'<svg id="truss".*?</svg>', seat.get(f"/bridges/{HANDLE}?part={part}"), re.S)
        for part in (first, second, first)
    ]
    one, other, again = (found[0] for found in drawings if found)
    assert one == again != other
    assert one.count('class="part chosen"') == other.count('class="part chosen"') == 1
    assert one.replace(" chosen", "") == other.replace(" chosen", "")
