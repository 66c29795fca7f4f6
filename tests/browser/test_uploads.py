"""Records and pictures sent as files: taken, refused with faults on their lines, refused whole."""

import io
import re

import pytest
from PIL import Image

from eyebar.record import LARGEST
from tests.browser.conftest import Served, come, serious_faults
from tests.documents import demos

pytestmark = pytest.mark.browser

WREN = "/bridges/31-08"


def record() -> str:
    """A demo bridge under another name and number."""
    text = demos.record("wrenmallow").read_text(encoding="utf-8")
    text = re.sub(r"(?m)^number: .*$", "number: '44-01'", text)
    return re.sub(r"(?m)^name: .*$", "name: Sorrelwick Bridge (invented)", text)


def sent(page, name: str, content: bytes) -> None:
    """Choose a file on the page for a new bridge, and send it."""
    page.goto("/new")
    page.get_by_label("File").set_input_files(
        files=[{"name": name, "mimeType": "text/yaml", "buffer": content}]
    )
    page.get_by_role("button", name="Look at it").click()


def test_a_record_that_is_sent_becomes_a_bridge_after_its_faults_are_mended(page) -> None:
    wrong = record().replace("depth: 7 ft 3 in", "depth: 7 stone 3 in", 1)
    line = wrong[:wrong.index("stone")].count("\n") + 1
    sent(page, "sorrelwick.yaml", wrong.encode())
    page.wait_for_url("**/new/*")
    assert "stone" in page.get_by_role("alert").inner_text()
    assert page.locator(".gutter .fault").all_inner_texts() == [str(line)]
    assert serious_faults(page) == []
    page.get_by_role("alert").get_by_role("link", name=f"line {line}").click()
    assert page.evaluate("document.activeElement.id") == "text"
    # Taken with its fault it is no bridge yet.
    page.get_by_role("button", name="Take it into the register").click()
    page.wait_for_url("**/new/*")
    area = page.locator("#text")
    area.fill(area.input_value().replace("7 stone 3 in", "7 ft 3 in"))
    page.locator(".gutter .fault").wait_for(state="detached")
    page.get_by_role("button", name="Take it into the register").click()
    page.wait_for_url("**/bridges/44-01")
    page.goto("/")
    assert page.get_by_role("link", name="Sorrelwick Bridge (invented)").is_visible()


@pytest.mark.parametrize(("name", "content", "said"), [
    ("photograph.jpg", b"\xff\xd8\xff\xe0 and so on", "is not text in UTF-8"),
    ("long.yaml", b"# \n" * LARGEST, f"at most {LARGEST:,}"),
])
def test_what_is_no_record_is_refused_whole(page, name: str, content: bytes, said: str) -> None:
    sent(page, name, content)
    page.get_by_role("heading", name="Refused").wait_for()
    assert said in page.locator("main").inner_text()
    assert serious_faults(page) == []
    page.faults.clear()  # the refusal itself is written to the console
    page.get_by_role("link", name="Back").click()
    page.get_by_role("button", name="Look at it").wait_for()


def picture() -> bytes:
    made = io.BytesIO()
    Image.new("RGB", (60, 40), "white").save(made, "PNG")
    return made.getvalue()


def test_a_photograph_is_kept_with_its_part_and_shown(page, served: Served) -> None:
    del served
    come(page, f"{WREN}/papers")
    page.get_by_label("Photograph or file").set_input_files(
        files=[{"name": "eye.png", "mimeType": "image/png", "buffer": picture()}]
    )
    page.get_by_label("Part", exact=True).fill("north/U1-L2")
    page.get_by_label("Note").fill("the upper eye")
    page.get_by_role("button", name="Keep it", exact=True).click()
    shown = page.get_by_role("img", name="the upper eye")
    shown.wait_for()
    assert "north/U1-L2" in page.locator("#part-name").inner_text()
    assert shown.evaluate("one => one.decode().then(() => one.naturalWidth)") == 60
    assert serious_faults(page) == []


def test_a_picture_that_is_none_is_refused(page) -> None:
    come(page, f"{WREN}/papers")
    page.get_by_label("Photograph or file").set_input_files(
        files=[{"name": "eye.png", "mimeType": "image/png", "buffer": picture()[:40]}]
    )
    page.get_by_role("button", name="Keep it", exact=True).click()
    page.get_by_role("heading", name="Nothing was changed").wait_for()
    assert page.evaluate("document.activeElement.name") == "file"
    assert "eye.png" in page.locator("#fault-file").inner_text()
    page.faults.clear()
