"""The workbench in a real Chromium."""

import re

import pytest

from eyebar.analysis.paths import paths
from eyebar.analysis.places import panel_loads
from eyebar.documents.opened import opened
from eyebar.loads import shares
from eyebar.rating import loaded_states
from eyebar.rating.force_table import train_positions
from eyebar.terms import Direction
from tests.browser.conftest import Served, come, serious_faults
from tests.documents import demos

pytestmark = pytest.mark.browser

WREN, DOVE = "/bridges/31-08", "/bridges/22-03"


def test_a_first_visit_leads_from_the_list_to_a_bar(page) -> None:
    page.goto("/")
    page.get_by_role("link", name="Wrenmallow Bridge (invented)").click()
    page.wait_for_selector("#truss")
    page.locator("#truss [data-part='north/U1-L2']").click()
    page.wait_for_url("**part=north*")
    assert "north/U1-L2" in page.locator("#part-name").inner_text()
    assert page.locator("#truss .part.chosen").get_attribute("data-part") == "north/U1-L2"


def solved(name: str, truss: str, vehicle: str, front_ft: float) -> dict[str, float]:
    """Other method: the truss solved with the vehicle at that place alone, by the path of its
    growing load, not by the sweep that makes the table."""
    import numpy as np

    one = opened(demos.record(name))
    drawn = next(each for each in one.bridge.trusses if each.name == truss)
    states, _ = loaded_states(one.bridge, drawn)
    loaded = states.get("measured", states["none"])
    train = one.vehicles[vehicle]
    share = shares(one.bridge.road, truss, train, one.values).one_lane
    stations = train_positions(train, Direction.UP, np.array([front_ft]))
    loads = panel_loads(stations, np.array(train.axles_kip), loaded.lines.stations_ft)
    walked = paths(
        loaded.sets, loaded.dead(1.0, 1.0)[None], loads @ loaded.lines.units,
        start=np.array([loaded.start(1.0, 1.0)]), cap=share,
    )
    forces = loaded.model.bar_forces(walked.forces[0, walked.count[0]])
    return dict(zip(loaded.model.names, forces.tolist(), strict=True))


def test_the_load_moved_by_hand_shows_what_the_server_solves_there(page, served: Served) -> None:
    asked: list[str] = []
    come(page, f"{DOVE}/load?vehicle=large school bus full&truss=west&way=up")
    page.wait_for_selector("#load[data-ready]")
    page.on("request", lambda request: asked.append(request.url))
    drawing = page.locator("#standing")
    box = drawing.bounding_box()
    view = [float(one) for one in drawing.get_attribute("viewBox").split()]
    scale = box["width"] / view[2]
    page.mouse.move(box["x"] + 300 * scale, box["y"] + (view[3] - 36) * scale)
    page.mouse.down()
    for x in (310, 455.5, 602.25, 777.7, 1003.3):
        page.mouse.move(box["x"] + x * scale, box["y"] + (view[3] - 36) * scale)
        front = float(drawing.get_attribute("data-front"))
        expected = solved("dovetansy", "west", "large school bus full", front)
        shown = page.evaluate(
            """() => Object.fromEntries([...document.querySelectorAll('#standing .bar')].map(
            (one) => [one.dataset.part.split('/').pop(),
            [one.dataset.work, one.querySelector('.changing').textContent]]))"""
        )
        assert set(shown) == set(expected)
        for bar, force in expected.items():
            work, figure = shown[bar]
            assert float(figure.replace("\u2212", "-")) == pytest.approx(force, abs=0.0501)
            if abs(force) > 0.06:
                assert work == ("pulled" if force > 0 else "pushed")
    page.mouse.up()
    # No request was made while the load moved.
    assert asked == []


def test_arrow_keys_move_the_load_and_shift_goes_from_place_to_place(page) -> None:
    come(page, f"{WREN}/load?vehicle=grain cart&bar=U1-L2")
    page.wait_for_selector("#load[data-ready]")
    drawing = page.locator("#standing")
    start = float(drawing.get_attribute("data-front"))
    page.keyboard.press("ArrowRight")
    assert float(drawing.get_attribute("data-front")) == pytest.approx(start + 0.5)
    page.keyboard.press("Shift+ArrowLeft")
    page.keyboard.press("Shift+ArrowLeft")
    table = page.evaluate(
        "fetch(document.getElementById('load').dataset.table).then((answer) => answer.json())"
    )
    fronts = [row["front_axle_ft"] for row in table["rows"]]
    at = float(drawing.get_attribute("data-front"))
    assert min(abs(at - one) for one in fronts) < 1e-6
    said = re.search(r"at ([\d.-]+) ft", page.locator("#place").inner_text())
    assert float(said[1]) == pytest.approx(at, abs=0.0501)


def test_the_keyboard_alone_reaches_a_bar_and_opens_it(page) -> None:
    come(page, WREN)
    for _ in range(60):
        page.keyboard.press("Tab")
        part = page.evaluate("document.activeElement.querySelector?.('[data-part]')?.dataset.part")
        if part:
            break
    assert part
    page.keyboard.press("Enter")
    page.wait_for_url("**part=*")
    assert part in page.locator("#part-name").inner_text()


def test_a_fault_is_marked_on_its_line_while_one_types(page) -> None:
    come(page, f"{WREN}/measure")
    area = page.locator("#text")
    text = area.input_value()
    wrong = text.replace("depth: 7 ft 3 in", "depth: 7 stone 3 in", 1)
    line = wrong[:wrong.index("stone")].count("\n") + 1
    area.fill(wrong)
    page.wait_for_selector(".gutter .fault")
    assert page.locator(".gutter .fault").first.inner_text() == str(line)
    assert "stone" in page.locator("#typing").inner_text()


def test_an_edit_shows_its_effect_and_is_saved_over_nobody(page, browser, let_in, served) -> None:
    come(page, f"{WREN}/measure")
    area = page.locator("#text")
    area.fill(re.sub(r"(?m)^owner: .*$", "owner: Somebody Else (invented)", area.input_value()))
    page.get_by_role("button", name="Look what it does").first.click()
    page.get_by_text("Posting then").wait_for()
    assert "Somebody Else" in page.locator(".effect").inner_text()
    # Another saves first.
    other = browser.new_context(storage_state=let_in, base_url=served.root).new_page()
    other.set_default_timeout(60_000)
    come(other, f"{WREN}/measure")
    area = other.locator("#text")
    area.fill(re.sub(r"(?m)^built: \d+", "built: 1877", area.input_value()))
    other.get_by_role("button", name="Look what it does").first.click()
    other.get_by_text("Posting then").wait_for()
    other.locator("input[name=why] >> visible=true").first.fill("the plaque was read")
    other.get_by_role("button", name="Save as revision 2").click()
    other.wait_for_selector("#truss")
    page.locator(".effect input[name=why]").fill("sold")
    page.get_by_role("button", name="Save as revision 2").click()
    page.get_by_text("Another has saved meanwhile").first.wait_for()
    assert "1877" in page.content()
    assert "Somebody Else" in page.content()
    assert serious_faults(page) == []
    page.faults.clear()  # the refusal itself is written to the console


def test_readings_are_kept_while_the_signal_is_lost(page) -> None:
    come(page, f"{WREN}/field?part=north/L1-L2")
    page.context.set_offline(True)
    page.locator("input[name='value 0']").fill("13/16 in")
    page.get_by_role("button", name="Keep, and on to the next part").click()
    entries = page.locator("#entries")
    assert "north/L1-L2: thickness 13/16 in" in entries.inner_text()
    # The next part is measured on the same page, which cannot be left.
    page.wait_for_selector("#part-name:text('north/L2-L3')")
    page.locator("input[name='value 0']").fill("25/32 in")
    page.get_by_role("button", name="Keep, and on to the next part").click()
    assert entries.locator("li").all_inner_texts()[1].startswith(
        "north/L2-L3: thickness 25/32 in"
    )
    page.locator("#send").click()
    assert entries.locator("li").count() == 2
    assert "No signal" in page.locator("#signal").inner_text()
    page.context.set_offline(False)
    page.reload()
    assert "2 readings are kept on this device" in page.locator("#count").inner_text()
    entries.locator("button").nth(1).click()
    assert entries.locator("li").count() == 1
    page.locator("#send").click()
    page.wait_for_url("**/measure?draft=*")
    page.faults.clear()
    page.get_by_text("Posting then").wait_for()
    # What was sent before a later revision came is not sent twice unawares.
    come(page, f"{WREN}/field?part=north/L1-L2")
    assert page.locator("#were-sent").inner_text() == ""
    page.evaluate(
        "localStorage.setItem('eyebar field 31-08 sent', JSON.stringify({onto: 0, count: 1}))"
    )
    page.reload()
    told = page.locator("#were-sent").inner_text()
    assert "The first 1 of these had been sent when revision" in told


def test_the_report_comes_as_a_paper(page) -> None:
    come(page, f"{WREN}/papers")
    for _ in range(120):
        answer = page.request.get(f"{WREN}/papers/public.pdf")
        if answer.headers["content-type"] == "application/pdf":
            break
        page.wait_for_timeout(500)
    assert answer.body()[:5] == b"%PDF-"


@pytest.mark.parametrize("page", [{"java_script_enabled": False}], indirect=True)
def test_without_script_the_load_steps_from_place_to_place(page) -> None:
    page.goto(f"{WREN}/load?vehicle=grain cart")
    page.wait_for_selector("#standing")
    before = page.locator("#place").inner_text()
    page.get_by_role("link", name="Place after").click()
    assert page.locator("#place").inner_text() != before
    assert not page.locator("#large").is_visible()
    page.goto(f"{WREN}/measure")
    assert page.locator("#text").input_value().startswith("eyebar: 1")
