"""Forms that are refused come back as they were filled in, with what is wrong at its field."""

import html
import re
import threading
import time
from collections.abc import Iterator
from datetime import date

import pytest

from eyebar.store.documents import bridge_document
from eyebar.store.issued import Crossing, give_slip
from tests.web.benches import HANDLE, Seat, seated

OPEN = "22-03"
"""The demo bridge of the tests that stays open to light vehicles."""
CROSSING = {"vehicle": "buggy", "axles": "", "gauge": "", "width": "", "towing": "",
            "holder": "A. <Farmer>", "day": "2026-10-04"}


@pytest.fixture(scope="module")
def open_seat(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Seat]:
    with seated(tmp_path_factory.mktemp("open"), "dovetansy") as found:
        yield found


def field(page: str, name: str) -> str:
    """The field of a form, as it is written in the page."""
    found = [one for one in re.findall(r"<(?:input|select)[^>]*>", page)
             if f'name="{name}"' in one and 'type="hidden"' not in one]
    assert len(found) == 1, (name, found)
    return found[0]


def fault(page: str, name: str) -> str:
    """What is wrong at a field, which points at it."""
    at = f"fault-{name}"
    assert f'aria-describedby="{at}"' in field(page, name)
    assert 'aria-invalid="true"' in field(page, name)
    found = re.search(rf'<span class="fault" id="{at}">(.*?)</span>', page, re.S)
    assert found is not None
    return html.unescape(found[1])


def refused(seat: Seat, form: str, **fields: str) -> str:
    """The page that answers a form that is refused, once what it needs was made."""
    seat.get(f"/bridges/{HANDLE}")
    return refused_of(seat, HANDLE, form, fields)


def refused_of(seat: Seat, handle: str, form: str, fields: dict[str, str]) -> str:
    """The same of any bridge."""
    before = bridge_document(seat.bench.register, handle)
    for _ in range(400):
        answer = seat.post(f"/bridges/{handle}/{form}", **fields)
        if answer.status_code != 409:
            break
        time.sleep(0.05)
    assert answer.status_code == 422, answer.text[:300]
    assert bridge_document(seat.bench.register, handle) == before
    return str(answer.text)


def test_a_slip_with_no_day_keeps_who_it_is_for(open_seat: Seat) -> None:
    page = refused_of(open_seat, OPEN, "slip", {**CROSSING, "day": "tomorrow"})
    assert 'value="A. &lt;Farmer&gt;"' in field(page, "holder")
    assert 'value="tomorrow"' in field(page, "day")
    assert "'tomorrow' is no day; write it year-month-day" in fault(page, "day")
    assert "aria-invalid" not in field(page, "holder")
    assert "<option selected>buggy</option>" in page
    assert '<input type="hidden" name="vehicle" value="buggy">' in page
    assert "Nothing was changed" in page


def test_all_that_is_wrong_with_a_form_is_said_at_once_and_the_first_has_the_focus(
    open_seat: Seat,
) -> None:
    page = refused_of(open_seat, OPEN, "slip", {**CROSSING, "day": "tomorrow", "holder": ""})
    assert fault(page, "holder") == "is empty: to whom it is given is needed"
    assert fault(page, "day")
    assert ["autofocus" in field(page, name) for name in ("holder", "day")] == [True, False]


def test_an_axle_in_stones_is_refused_at_its_field(seat: Seat) -> None:
    for _ in range(400):
        answer = seat.client.get(f"/bridges/{HANDLE}/cross?axles=10 kip, 12 ft, 10 stone&gauge=6")
        if "Refresh" not in answer.headers:
            break
    assert answer.status_code == 422
    assert "comes back by itself" not in answer.text
    assert 'value="10 kip, 12 ft, 10 stone"' in field(answer.text, "axles")
    assert "gauge: '6' has no unit" in fault(answer.text, "gauge")
    page = refused(seat, "slip", **{**CROSSING, "axles": "10 stone"})
    assert fault(page, "axles").startswith("axle 1: '10 stone'")
    assert "; did you mean" in fault(page, "axles")


@pytest.mark.parametrize(("form", "fields", "wrong"), [
    ("sign", {"rating": "1", "name": "", "licence": "PE 7"}, "name"),
    ("sign", {"rating": "1", "name": "E. Signer", "licence": ""}, "licence"),
    ("sign", {"rating": "x", "name": "E. Signer", "licence": "PE 7"}, "rating"),
    ("issue", {"why": "  "}, "why"),
    ("files", {"part": "upstream//", "note": "rust at the pin"}, "part"),
])
def test_papers_keep_what_was_typed(
    own_seat: Seat, form: str, fields: dict[str, str], wrong: str
) -> None:
    own_seat.get(f"/bridges/{HANDLE}")
    assert own_seat.post(f"/bridges/{HANDLE}/issue", why="first").status_code == 303
    page = refused(own_seat, form, **fields)
    assert fault(page, wrong)
    for name, typed in fields.items():
        if name != "rating" and typed.strip():
            assert f'value="{typed}"' in field(page, name)


def test_readings_of_a_page_without_script_are_kept(seat: Seat) -> None:
    page = refused(seat, "field", **{
        "date": "1st of May", "by": "crew", "part": "north/L1-L2", "what 1": "width",
        "value 1": "2 in", "note 1": "bright",
    })
    assert fault(page, "date")
    for name, typed in (("by", "crew"), ("value 1", "2 in"), ("note 1", "bright")):
        assert f'value="{typed}"' in field(page, name)
    assert page.count("<option selected>width</option>") == 1


def test_a_new_bridge_keeps_its_sizes(seat: Seat) -> None:
    answer = seat.post("/new", form="Pratt", panels="7 at 15 ft", depth="20 stone", name="Mill")
    assert answer.status_code == 422
    assert 'value="20 stone"' in field(answer.text, "depth")
    assert 'value="Mill"' in field(answer.text, "name")
    assert "&#39;20 stone&#39;" in answer.text


def test_a_form_that_comes_while_the_bridge_is_rated_can_be_sent_again(own_seat: Seat) -> None:
    busy = threading.Event()
    own_seat.bench.kept.jobs.clear()
    own_seat.bench.kept.worker.submit(busy.wait)
    answer = own_seat.post(f"/bridges/{HANDLE}/issue", why="before <harvest>")
    busy.set()
    assert answer.status_code == 409
    assert '<input type="hidden" name="why" value="before &lt;harvest&gt;">' in answer.text
    assert f'action="/bridges/{HANDLE}/issue"' in answer.text
    assert bridge_document(own_seat.bench.register, HANDLE)["ratings"] == []


def test_a_slip_for_what_may_not_cross_says_so_above_the_form(seat: Seat) -> None:
    page = html.unescape(refused(seat, "slip", **CROSSING))
    assert "answer for buggy is no" in page
    assert "aria-invalid" not in page


def test_a_slip_given_before_is_made_again_from_its_revision(open_seat: Seat) -> None:
    """Other way: the slip as it is shown right after it was given."""
    open_seat.get(f"/bridges/{OPEN}/cross?vehicle=buggy")
    given = open_seat.post(f"/bridges/{OPEN}/slip", **CROSSING)
    assert given.status_code == 303, given.text
    address = given.headers["location"]
    first = open_seat.get(address)
    open_seat.bench.slips.clear()
    again = open_seat.get(address)
    (slip,) = re.findall(r'<pre class="slip">.*?</pre>', first, re.S)
    assert slip in again
    assert "Made again from revision 1" in again
    assert "Nobody crosses by this one" in again
    assert "Made again" not in first


@pytest.mark.parametrize(("vehicle", "conditions", "why"), [
    ("own vehicle", "none", "axles of a typed one are not kept"),
    ("buggy", "it flies", "gives other conditions"),
])
def test_a_slip_that_cannot_be_made_again_says_why(
    open_seat: Seat, vehicle: str, conditions: str, why: str
) -> None:
    day = date(2026, 10, 4)
    given = give_slip(open_seat.bench.register, OPEN, Crossing(
        vehicle=vehicle, holder="A. Farmer", begins=day, ends=day, conditions=conditions,
    ), person="B. Before", reason="harvest")
    page = open_seat.get(f"/bridges/{OPEN}/slips/{given.number}")
    assert why in page
    assert "<pre" not in page
    assert conditions in page
