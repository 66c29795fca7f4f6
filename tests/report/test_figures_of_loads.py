"""Figures of loads, materials and stress sheets: from the documents, and none besides."""

import re
from collections import Counter
from collections.abc import Iterable

import pytest

from tests.documents import demos
from tests.report import made
from tests.report.test_figures import squeezed

pytestmark = pytest.mark.typst
each = pytest.mark.parametrize("name", demos.NAMES)

SIGNED = re.compile(r"[+−]\d+\.\d+")


def between(name: str, heading: str, following: str) -> str:
    """The text of the report from one heading to the next, without spaces and the pages' feet."""
    said = squeezed(made.text(made.brief(name)))
    found = re.search(f"{squeezed(heading)}(.*?){squeezed(following)}", said)
    assert found
    bridge = squeezed(demos.rate(name)["bridge"]["name"])
    return re.sub(rf"{re.escape(bridge)},[^·]*·ason.*?page\d+of\d+", "", found[1])


def without(section: str, rows: Iterable[str]) -> str:
    """What is left of a section once each row has been found in it and taken out."""
    for row in sorted(map(squeezed, rows), key=len, reverse=True):
        assert row in section
        section = section.replace(row, "", 1)
    return section


def plain(number: float) -> str:
    """As somebody wrote it: no zeros behind."""
    return f"{number:.6g}"


def vehicle_row(one: demos.Document) -> str:
    spacings = (
        " to ".join(map(plain, by)) if isinstance(by, list) else plain(by)
        for by in one["spacings_ft"]
    )
    lane = "-"
    if one["lane_kip_per_ft"]:
        points = " or ".join(map(plain, one["lane_point_kip"] or ()))
        lane = plain(one["lane_kip_per_ft"]) + (f" + {points}" if points else "")
        lane += f", {one['combine']}"
    tons = f"{sum(one['axles_kip']) / 2:.1f}"
    return " ".join([one["name"], one["class"], tons, *map(plain, one["axles_kip"]), *spacings,
                     lane, "yes" if one["confirmed"] else "no"])


@each
def test_the_loads_are_those_of_the_documents_and_no_figure_is_left_over(name: str) -> None:
    section = between(
        name, "Loads Dead load on one truss", "The weakest parts The least factor of each part"
    )
    describe = demos.describe(name)
    # Items alike on both trusses stand once.
    dead = {
        f"{one['kip_per_ft']:.4g} kip/ft" * bool(one["kip_per_ft"])
        + " and " * bool(one["kip_per_ft"] and one["kip_at_joints"])
        + f"{one['kip_at_joints']:.1f} kip at joints" * bool(one["kip_at_joints"])
        + ("wearing" if one["wearing"] else "stays") + one["working"]
        for one in describe["dead_loads"]
    }
    rated = {one["vehicle"] for part in demos.rate(name)["parts"]
             for one in part.get("ratings", ())}
    vehicles = [one for one in demos.vehicles()["vehicles"] if one["name"] in rated]
    assert len(vehicles) > 10
    rest = without(section, [*dead, *map(vehicle_row, vehicles)])
    # The names of items and trusses alone remain.
    assert re.findall(r"\d+", rest) == []


@each
def test_the_materials_are_those_of_the_documents(name: str) -> None:
    section = between(name, "Materials of the bars", "Loads Dead load on one truss")
    without(section, (
        " ".join([f"{one['name']} ({one['metal']})",
                  *map(plain, (one["yield_ksi"], one["tensile_ksi"], one["modulus_ksi"])),
                  str(one["coupons"])])
        for one in demos.describe(name)["materials"]
    ))


@each
def test_the_forces_on_each_stress_sheet_are_those_of_the_forces_document(name: str) -> None:
    pages = [page for page in made.read(made.brief(name)).pages if page.mediabox.width > 800]
    trusses = demos.forces(name)["trusses"]
    assert len(pages) == len(trusses)
    for page, truss in zip(pages, trusses, strict=True):
        expected: Counter[str] = Counter()
        for bar, dead in truss["dead"].items():
            live = [bars[bar] for bars in truss["live"].values() if bars is not None]
            most = max(one["max"] for one in live), min(one["min"] for one in live)
            expected.update(
                f"{force:+.1f}".replace("-", "−") for force in (dead, *most)
                if f"{abs(force):.1f}" != "0.0"
            )
        text = page.extract_text()
        assert f"of the {truss['truss']} truss" in text
        assert Counter(SIGNED.findall(text)) == expected
