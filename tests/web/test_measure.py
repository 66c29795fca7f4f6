"""Measuring at the workbench: nothing is lost, and what a change does is seen before saving."""

import json
import re
from dataclasses import replace
from datetime import date
from html import unescape

import pytest

from eyebar.documents.opened import CAUTION
from eyebar.record import record_of
from eyebar.record.adding import Read, leaves, with_inspection, with_values
from tests.documents import demos
from tests.web.benches import HANDLE, ORIGIN, Seat, links

MEASURE = f"/bridges/{HANDLE}/measure"
OF_BRIDGE = f"/bridges/{HANDLE}"


def text_of(seat: Seat, number: int = 1) -> str:
    return seat.client.get(f"{OF_BRIDGE}/revisions/{number}").text


def thinner(text: str) -> str:
    """The record with an inspection that found an eyebar half as thick."""
    reading = Read(part="north/L1-L2", what="thickness", value="7/16 in", place="mid")
    return with_inspection(text, date(2026, 10, 1), "crew", [reading])


def test_what_a_change_does_is_shown_before_it_is_saved(own_seat: Seat) -> None:
    answer = own_seat.post(f"{OF_BRIDGE}/look", text=thinner(text_of(own_seat)), onto="1")
    assert answer.status_code == 303
    page = own_seat.get(answer.headers["location"])
    assert "thickness" in page
    assert "7/16 in" in page
    assert "Posting then" in page
    rate = demos.rate("wrenmallow")
    (before,) = (one for one in rate["parts"] if one["part"] == "north/L1-L2")
    least = min(
        one["factor"] for one in before["ratings"] if one["vehicle"] in rate["posting"]["vehicles"]
        and all(one[key] == rate["posting"][key] for key in ("method", "level"))
    )
    assert f"Factor {least:.2f}" in own_seat.get(f"{OF_BRIDGE}?part=north/L1-L2")
    figure = r'<td class="n">([\d.]+)</td>'
    row = re.search(rf'<th scope="row">north/L1-L2</th>{figure}{figure}', page)
    assert row is not None
    assert float(row[1]) == pytest.approx(least, abs=0.005)
    # Law: one of two bars half as thick lowers the factor.
    assert float(row[2]) < float(row[1])
    draft = re.search(r'name="draft" value="([^"]+)"', page)
    assert draft is not None
    saved = own_seat.post(f"{OF_BRIDGE}/save", draft=draft[1], why="calipered again")
    assert saved.status_code == 303
    assert text_of(own_seat, 2) == thinner(text_of(own_seat))
    assert "calipered again" in own_seat.get(f"{OF_BRIDGE}/revisions")


def test_a_record_that_cannot_be_rated_can_be_looked_at_and_mended(own_seat: Seat) -> None:
    text = text_of(own_seat)
    wrong = text.replace("panels: 4 at", "panels: 5 at")
    typed = own_seat.client.post(f"{OF_BRIDGE}/faults", data={"text": wrong}, headers=ORIGIN)
    assert any("has no group for U4-U5" in one["said"] for one in typed.json()["faults"])
    draft = drafted(own_seat, wrong)
    looked = own_seat.get(f"{MEASURE}?draft={draft}")
    assert "cannot be rated: what you typed:" in looked
    assert "U4-U5" in looked
    assert own_seat.post(f"{OF_BRIDGE}/save", draft=draft, why="as told").status_code == 303
    refused = own_seat.client.get(OF_BRIDGE)
    while "Refresh" in refused.headers:
        refused = own_seat.client.get(OF_BRIDGE)
    assert (refused.status_code, MEASURE in links(refused.text)) == (422, True)
    for page in ("measure", "revisions", "papers"):
        shown = own_seat.get(f"{OF_BRIDGE}/{page}")
        assert "It cannot be rated: no load can be called safe" in shown
        assert CAUTION in unescape(shown)
    mended = own_seat.get(f"{MEASURE}?draft={drafted(own_seat, text, '2')}")
    assert "cannot be rated: 31-08, revision 2:" in mended
    assert 'Posting then</dt><dd class="strong">Close this bridge' in mended


def test_faults_are_told_with_their_lines_and_what_was_typed_stays(seat: Seat) -> None:
    wrong = text_of(seat).replace("thickness: 7/8 in", "thickness: 7/8 stone")
    line = wrong[:wrong.index("stone")].count("\n") + 1
    found = seat.client.post(f"{OF_BRIDGE}/faults", data={"text": wrong}, headers=ORIGIN).json()
    assert line in [one["line"] for one in found["faults"]]
    answer = seat.post(f"{OF_BRIDGE}/look", text=wrong, onto="1")
    page = seat.get(answer.headers["location"])
    assert f'data-line="{line}"' in page
    assert "7/8 stone" in page
    assert "Save as revision" not in page


def drafted(seat: Seat, text: str, onto: str = "1") -> str:
    """The name of a draft of a text."""
    answer = seat.post(f"{OF_BRIDGE}/look", text=text, onto=onto)
    return answer.headers["location"].split("draft=")[1].split("&")[0]


def test_two_who_save_lose_nothing_and_both_together_can_be_saved(own_seat: Seat) -> None:
    text = text_of(own_seat)
    older = text.replace("built: 1900\nends", "built: 1901\nends")
    first, second = drafted(own_seat, thinner(text)), drafted(own_seat, older)
    assert own_seat.post(f"{OF_BRIDGE}/save", draft=first, why="one").status_code == 303
    own_seat.get(MEASURE)
    # A draft that has been overtaken says so before it is saved, and before it is rated.
    looked = own_seat.client.get(f"{MEASURE}?draft={second}").text
    assert "has saved revision 2 since: one" in looked
    answer = own_seat.post(f"{OF_BRIDGE}/save", draft=second, why="other")
    assert answer.status_code == 409
    assert "1901" in answer.text
    assert "crew: added: 1 reading" in answer.text
    (mine,) = (one for one in links(answer.text) if "draft=" in one and "together" not in one)
    assert own_seat.bench.drafts.get(mine.split("draft=")[1], HANDLE).text == older
    assert text_of(own_seat, 2) == thinner(text)
    (together,) = (one for one in links(answer.text) if "together" in one)
    draft = own_seat.client.get(together, follow_redirects=False).headers["location"]
    found = own_seat.bench.drafts.get(draft.split("draft=")[1], HANDLE)
    # By hand: the one line of theirs and the inspection of ours.
    assert (found.text, found.onto, found.why) == (thinner(older), 2, "other")
    saved = own_seat.post(f"{OF_BRIDGE}/save", draft=draft.split("draft=")[1], why="both")
    assert saved.status_code == 303
    assert text_of(own_seat, 3) == thinner(older)


def test_what_both_changed_is_put_together_by_nobody(own_seat: Seat) -> None:
    text = text_of(own_seat)
    names = [
        drafted(own_seat, text.replace("built: 1900\nends", f"built: {year}\nends"))
        for year in (1901, 1902)
    ]
    assert own_seat.post(f"{OF_BRIDGE}/save", draft=names[0], why="one").status_code == 303
    answer = own_seat.post(f"{OF_BRIDGE}/save", draft=names[1], why="other")
    assert answer.status_code == 409
    assert "Both changed: built" in answer.text
    assert not [one for one in links(answer.text) if "together" in one]
    refused = own_seat.client.get(f"{MEASURE}?draft={names[1]}&together=yes")
    assert (refused.status_code, "put together by hand" in refused.text) == (422, True)


def test_a_form_that_was_overtaken_changes_the_field_that_it_showed(own_seat: Seat) -> None:
    text = text_of(own_seat)
    number, (path, _) = next(
        (i, one) for i, one in enumerate(leaves(text)) if one[0] == ("owner",)
    )
    shorter = text.replace('number: "31-08"\n', "")  # so that all fields below have new numbers
    first = drafted(own_seat, shorter)
    assert own_seat.post(f"{OF_BRIDGE}/save", draft=first, why="one").status_code == 303
    answer = own_seat.post(f"{OF_BRIDGE}/look", onto="1", group="heading",
                           **{f"leaf {number}": "Somebody else"})
    draft = answer.headers["location"].split("draft=")[1].split("&")[0]
    found = own_seat.bench.drafts.get(draft, HANDLE)
    assert found.onto == 1
    assert dict(leaves(found.text)) == {**dict(leaves(text)), path: "Somebody else"}


def test_a_field_of_a_form_changes_its_text_alone(own_seat: Seat) -> None:
    seat, text = own_seat, text_of(own_seat)
    numbered = list(enumerate(leaves(text)))
    number, (path, value) = next(
        (i, one) for i, one in numbered if one[0][-1] == "clear width" or one[0] == ("name",)
    )
    answer = seat.post(f"{OF_BRIDGE}/look", onto="1", group="heading",
                       **{f"leaf {number}": value + " again", "leaf 0": "1"})
    draft = answer.headers["location"].split("draft=")[1].split("&")[0]
    after = seat.bench.drafts.get(draft, HANDLE).text
    changed = [(a, b) for a, b in zip(text.splitlines(), after.splitlines(), strict=True) if a != b]
    assert len(changed) == 1
    assert dict(leaves(after))[path] == value + " again"


def test_readings_from_the_field_become_an_inspection(seat: Seat) -> None:
    entries = [
        {"part": "north/L1-L2", "what": "thickness", "value": "13/16 in", "place": "mid",
         "gauge": "caliper", "plus_minus": "1/32 in", "piece": "", "note": "pitted, # deep"},
        {"part": "floor/deck", "what": "deck thickness", "value": "2 3/4 in"},
    ]
    answer = seat.post(f"{OF_BRIDGE}/field", date="2026-10-02", by="crew: two", note="",
                       part="", entries=json.dumps(entries))
    assert answer.status_code == 303
    draft = answer.headers["location"].split("draft=")[1]
    record = record_of(seat.bench.drafts.get(draft, HANDLE).text)
    last = record.inspections[-1]
    assert (str(last.date), last.by) == ("2026-10-02", "crew: two")
    assert [str(one.value) for one in last.readings] == ["13/16 in", "2 3/4 in"]
    assert last.readings[0].note == "pitted, # deep"


@pytest.mark.parametrize("name", demos.NAMES)
def test_an_inspection_is_added_and_nothing_else_changes(name: str) -> None:
    text = demos.record(name).read_text(encoding="utf-8")
    before = record_of(text)
    reading = Read(part="floor/deck", what="deck thickness", value="2 in", note="it's: {soft}, ok")
    on = max(one.date for one in before.inspections).replace(year=2026, month=11, day=1)
    after = record_of(with_inspection(text, on, "x", [reading, replace(reading, place="mid")]))
    assert after.inspections[:-1] == before.inspections
    assert len(after.inspections[-1].readings) == 2
    assert after.members == before.members
    assert with_values(text, {}) == text


def test_a_photograph_is_kept_with_its_part(own_seat: Seat) -> None:
    import io

    from PIL import Image

    content = io.BytesIO()
    Image.new("RGB", (40, 30), "white").save(content, "PNG")
    answer = own_seat.client.post(
        f"{OF_BRIDGE}/files", data={"part": "north/L1-L2", "note": "the head"},
        files={"file": ("../../head.png", content.getvalue(), "image/png")}, headers=ORIGIN,
        follow_redirects=False,
    )
    assert answer.status_code == 303
    page = own_seat.get(answer.headers["location"].split("#")[0])
    assert "the head" in page
    picture = own_seat.client.get(f"{OF_BRIDGE}/files/1")
    assert picture.headers["content-type"].startswith("image/")
    assert own_seat.client.get(f"{OF_BRIDGE}/files/2").status_code == 404


def test_a_file_that_is_no_picture_is_only_handed_out(own_seat: Seat) -> None:
    answer = own_seat.client.post(
        f"{OF_BRIDGE}/files", data={"part": "", "note": ""}, headers=ORIGIN,
        files={"file": ("page.html", b"<script>alert(1)</script>", "text/html")},
        follow_redirects=False,
    )
    assert answer.status_code == 303
    handed = own_seat.client.get(f"{OF_BRIDGE}/files/1")
    assert handed.headers["content-type"] == "application/octet-stream"
    assert handed.headers["content-disposition"].startswith("attachment")


def test_a_new_bridge_is_drawn_begun_and_taken(own_seat: Seat) -> None:
    asked = {"form": "Pratt", "panels": "7 at 15 ft", "depth": "20 ft", "name": "Mossgate Bridge"}
    page = own_seat.client.get("/new", params=asked).text
    assert page.count("<line") >= 25
    wrong = own_seat.client.get("/new", params={**asked, "panels": "two at 15 ft"}).text
    assert '<ul class="faults"><li>' in wrong
    begun = own_seat.post("/new", **asked)
    page = own_seat.get(begun.headers["location"])
    assert "The record is in order" in page
    text = own_seat.bench.drafts.get(begun.headers["location"].split("/")[-1], "").text
    taken = own_seat.post("/new/take", text=text, why="first entry")
    assert taken.headers["location"].startswith("/bridges/Mossgate")
    assert "Mossgate Bridge" in own_seat.get("/")


def test_a_rating_is_issued_and_signed(own_seat: Seat) -> None:
    own_seat.get(OF_BRIDGE)
    assert own_seat.post(f"{OF_BRIDGE}/issue", why="after the inspection").status_code == 303
    assert "draft" in own_seat.get(f"{OF_BRIDGE}/papers")
    signed = own_seat.post(f"{OF_BRIDGE}/sign", rating="1", name="E. Engineer", licence="PE 1")
    assert signed.status_code == 303
    assert "I, E. Engineer, licence PE 1" in own_seat.get(f"{OF_BRIDGE}/papers")
    assert "signed" in own_seat.get("/")
