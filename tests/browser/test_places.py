"""Places that govern, marked on the ruler: reached by pointing, by the keyboard, without script."""

import pytest

from tests.browser.conftest import come

pytestmark = pytest.mark.browser

LOAD = "/bridges/31-08/load?vehicle=SU7&truss=north&way=up&bar=U1-L2"


def front(page) -> float:
    return float(page.locator("#standing").get_attribute("data-front"))


def test_a_mark_takes_the_vehicle_there_by_keys_or_by_pointing(page) -> None:
    come(page, LOAD)
    page.wait_for_selector("#load[data-ready]")
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    links = page.locator("a.to-place")
    assert links.count() == page.locator("#standing .place").count() == 4
    for number in range(4):
        wanted = float(links.nth(number).get_attribute("href").split("at=")[1].split("&")[0])
        letter = page.locator(".places .mark").nth(number).inner_text()
        for reach in ("keys", "mark"):
            page.evaluate("document.getElementById('ruler').value = 0")
            page.locator("#ruler").focus()
            page.keyboard.press("ArrowLeft")
            assert front(page) != pytest.approx(wanted)
            if reach == "keys":
                links.nth(number).focus()
                page.keyboard.press("Enter")
            else:
                page.locator(f"#place-{letter}").click()
            assert front(page) == pytest.approx(wanted)
    assert asked == []
    # A ring is a force, a square a rating: by form, not by colour.
    shapes = [page.locator("#standing .place").nth(number).locator("circle").count()
              for number in range(4)]
    assert sorted(shapes) == [0, 0, 1, 1]


@pytest.mark.parametrize("page", [{"java_script_enabled": False}], indirect=True)
def test_without_script_the_marks_are_links(page) -> None:
    page.goto(LOAD)
    page.wait_for_selector("#standing")
    link = page.locator("a.to-place").last
    wanted = float(link.get_attribute("href").split("at=")[1].split("&")[0])
    link.click()
    assert float(page.locator("input[name=at]").input_value()) == pytest.approx(wanted, abs=0.006)
    assert page.locator("h2.chosen").inner_text().startswith("U1-L2")
