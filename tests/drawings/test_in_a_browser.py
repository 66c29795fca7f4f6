"""A browser that measures the lettering itself finds it as wide as it was measured here."""

import json
import re
import shutil
import subprocess
from pathlib import Path
from urllib.parse import unquote

import pytest

from eyebar.drawings import stress_sheet
from tests.drawings import made
from tests.groups import GROUPS

pytestmark = pytest.mark.browser

MEASURE = """
document.fonts.ready.then(() => {
  const runs = [...document.querySelectorAll("svg [textLength]")].map((one) => {
    const wanted = Number(one.getAttribute("textLength"));
    one.removeAttribute("textLength");
    return [one.textContent, wanted, one.getComputedTextLength()];
  });
  const faces = [...document.fonts].map((face) => face.status);
  document.body.innerHTML = "<pre>" + encodeURIComponent(JSON.stringify({runs, faces})) + "</pre>";
});
"""


def measured(page: Path) -> str:
    """What the page has become once its script has run."""
    (group,) = (one for one in GROUPS if one.marker == "browser")
    browser = next(filter(None, map(shutil.which, group.programs)))
    answer = subprocess.run(
        [
            browser, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic",
            "--no-first-run", "--disable-background-networking", "--disable-component-update",
            "--disable-sync", "--virtual-time-budget=10000", "--dump-dom", page.as_uri(),
        ],
        check=True, capture_output=True, text=True, timeout=120,
    )
    return answer.stdout


def test_a_browser_measures_every_run_of_letters_as_we_do(tmp_path: Path) -> None:
    # Other method: the browser's own text layout, with the lengths that we state taken away.
    svg = stress_sheet(*made.documents(made.double_pratt(10))).svg
    page = tmp_path / "sheet.html"
    page.write_text(
        f"<!doctype html><meta charset='utf-8'><body>{svg}<script>{MEASURE}</script></body>",
        encoding="utf-8",
    )
    found = re.search(r"<pre>(.*?)</pre>", measured(page), flags=re.DOTALL)
    assert found
    answer = json.loads(unquote(found[1]))
    assert answer["faces"] == ["loaded"] * 3
    assert len(answer["runs"]) > 150
    off = [run for run in answer["runs"] if abs(run[1] - run[2]) > 0.02 + 0.001 * run[1]]
    assert off == []
