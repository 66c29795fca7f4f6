"""Every page, also those that refuse, wait or have nothing to show: for those who see or move
less, on a telephone, on paper; by the keyboard alone, and without script."""

from collections.abc import Iterator
from concurrent.futures import Future

import pytest

from eyebar.store.asked import bridge_named, revision_of
from eyebar.web import urls
from tests.browser.conftest import PATIENCE_MS, Served, come, serious_faults, serving

pytestmark = pytest.mark.browser

WREN = "/bridges/31-08"
TELEPHONE = {"viewport": {"width": 390, "height": 844}}
PAGES = (
    "/", "/new", "/new?form=Pratt&panels=7+at+15+ft&depth=20+ft", WREN, f"{WREN}?part=north/L2/pin",
    f"{WREN}/load?vehicle=SU7&bar=U1-L2", f"{WREN}/weakest", f"{WREN}/cross?vehicle=car",
    f"{WREN}/measure", f"{WREN}/field", f"{WREN}/field?part=north/L1-L2", f"{WREN}/revisions",
    f"{WREN}/papers",
)
REFUSALS = {
    "/bridges/nowhere": (404, "Not here"), "/nothing": (404, "Not here"),
    f"{WREN}?part=north/U9-L9": (404, "Not here"), f"{WREN}/save": (405, "Not here"),
    f"{WREN}/load?at=far": (422, "Refused"), f"{WREN}/load?way=over": (422, "Refused"),
}


def sideways(page) -> int:
    return page.evaluate("document.documentElement.scrollWidth - innerWidth")


def narrowed(page) -> None:
    page.set_viewport_size(TELEPHONE["viewport"])


@pytest.mark.parametrize("address", PAGES)
def test_a_page_serves_who_sees_less_a_telephone_and_paper(page, address: str) -> None:
    """One visit: axe at a desk, the width of a telephone, then what is printed."""
    come(page, address)
    assert serious_faults(page) == []
    narrowed(page)
    assert sideways(page) <= 0
    for rows in page.locator("div:has(> table.stacked)").all():
        assert rows.evaluate("one => one.scrollWidth - one.clientWidth") <= 0
    page.emulate_media(media="print")
    for control in ("nav", "button", "input", "select", "textarea"):
        shown = [one for one in page.locator(control).all() if one.is_visible()]
        assert shown == [], control
    assert page.locator("h1").is_visible()
    place = page.locator("#place")
    assert place.count() == 0 or place.is_visible()  # where the vehicle stands is printed too


@pytest.mark.parametrize(("address", "told"), REFUSALS.items())
def test_a_refusal_is_a_page_that_leads_back(page, address: str, told: tuple[int, str]) -> None:
    status, heading = told
    come(page, address)
    assert page.request.get(address).status == status
    assert page.get_by_role("heading").first.inner_text() == heading
    assert page.locator(".faults li").count() >= 1
    assert serious_faults(page) == []
    narrowed(page)
    assert sideways(page) <= 0
    assert page.get_by_role("link", name="Back").get_attribute("href") == "/"
    page.faults.clear()  # the refusal itself is written to the console


def test_a_field_that_is_refused_has_the_focus_and_what_was_typed(page) -> None:
    come(page, f"{WREN}/cross")
    axles = page.get_by_label("Axles, front to rear")
    axles.fill("10 stone")
    page.get_by_label("Gauge").fill("7 ft")
    page.get_by_role("button", name="May it cross?").click()
    page.locator(".fault").first.wait_for()
    assert page.evaluate("document.activeElement.name") == "axles"
    assert axles.input_value() == "10 stone"
    assert page.get_by_label("Gauge").input_value() == "7 ft"
    said = page.locator(f"#{axles.get_attribute('aria-describedby')}")
    assert "axle 1: '10 stone'" in said.inner_text()
    assert serious_faults(page) == []
    narrowed(page)
    assert sideways(page) <= 0
    page.faults.clear()  # the refusal itself is written to the console


IN_SIGHT = """() => {
  const [sheet, drawing, train] = [".standing", ".standing svg", ".train"].map((one) =>
    document.querySelector(one).getBoundingClientRect());
  const middle = (Math.max(train.left, drawing.left) + Math.min(train.right, drawing.right)) / 2;
  return sheet.left <= middle && middle <= sheet.right;
}"""
"""Whether the middle of what is drawn of the vehicle can be seen without moving the drawing."""


@pytest.mark.parametrize("page", [TELEPHONE], indirect=True)
def test_on_a_telephone_the_vehicle_stays_in_sight(page) -> None:
    come(page, f"{WREN}/load?vehicle=SU7")
    page.locator("#load[data-ready]").wait_for()
    assert page.evaluate("document.querySelector('.standing').scrollWidth") > 390
    ruler = page.locator("#ruler")
    for at in ("min", "max"):
        ruler.evaluate(f"one => {{ one.value = one.{at}; one.dispatchEvent(new Event('input')); }}")
        assert page.evaluate(IN_SIGHT), at


def test_a_page_that_waits_says_for_what(page, served: Served) -> None:
    """A paper that is never ready: its job does not end."""
    with served.bench.register.reading() as connection:
        text = revision_of(connection, bridge_named(connection, "31-08")).text
    jobs, key = served.bench.kept.jobs, ("public.pdf", text)
    come(page, WREN)
    jobs[key] = Future()
    try:
        page.goto(f"{WREN}/papers/public.pdf")
        assert page.get_by_role("heading").inner_text() == "The paper is being made"
        assert "comes back by itself" in page.get_by_role("status").inner_text()
        assert serious_faults(page) == []
        narrowed(page)
        assert sideways(page) <= 0
    finally:
        page.goto("about:blank")
        del jobs[key]


@pytest.fixture(scope="module")
def empty(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """A workbench on a register that holds nothing yet."""
    with serving(tmp_path_factory.mktemp("empty") / "register.db") as one:
        yield one


def test_an_empty_register_says_how_to_begin(browser, empty: Served) -> None:
    context = browser.new_context(**TELEPHONE)
    page = context.new_page()
    page.goto(empty.root + urls.enter(empty.bench.keeper.key))
    assert "No bridge is in this register yet" in page.locator("main").inner_text()
    assert serious_faults(page) == []
    assert sideways(page) <= 0
    page.get_by_role("link", name="Begin one").click()
    page.get_by_label("Greatest depth between the chords").wait_for()
    context.close()


def reached(page, wanted: str) -> None:
    """Go on with the tab key until what has the focus fits a selector."""
    for _ in range(250):
        page.keyboard.press("Tab")
        if page.evaluate(f"document.activeElement.matches({wanted!r})"):
            return
    raise AssertionError(f"the tab key does not reach {wanted}")


def test_keys_alone_lead_from_the_list_to_the_working_of_a_bar(page) -> None:
    page.goto("/")
    reached(page, f"a[href='{WREN}']")
    page.keyboard.press("Enter")
    page.wait_for_url(f"**{WREN}")
    page.locator("p.waiting").wait_for(state="detached")
    reached(page, "a[href*='north%2FU1-L2']")
    page.keyboard.press("Enter")
    page.wait_for_url("**part=north*")
    assert "north/U1-L2" in page.locator("#part-name").inner_text()
    reached(page, ".working")
    assert page.locator(".working").evaluate("one => one.querySelectorAll('math').length") > 3
    box = page.locator(".working").bounding_box()
    assert box["y"] < 900  # it was brought into view


@pytest.mark.parametrize("page", [{"java_script_enabled": False}], indirect=True)
def test_without_script_a_vehicle_of_ones_own_is_answered(page) -> None:
    page.set_default_timeout(PATIENCE_MS)
    page.goto(f"{WREN}/cross")
    page.get_by_label("Axles, front to rear").fill("2 kip, 9 ft, 2 kip")
    page.get_by_role("button", name="May it cross?").click()
    page.wait_for_url("**axles=2*")
    page.locator(".answer").wait_for()
    assert "own vehicle" in page.locator(".answer").inner_text()
