"""The drawing of a pin: nothing touches, everything that bears on it is there."""

import math
from types import SimpleNamespace
from typing import Any
from xml.etree import ElementTree as ET

import pytest

from eyebar.drawings import pin_drawing, pin_figure, pin_figures
from eyebar.drawings.ink import letterings
from eyebar.errors import Unknown
from eyebar.views.pin_sheet import governing_pins
from tests.documents import demos
from tests.drawings.apart import faults

PINS = [
    ("quillmarsh", "upstream/L4/pin"), ("quillmarsh", "upstream/U5/pin"),
    ("dovetansy", "east/L2/pin"), ("wrenmallow", "north/U2/pin"),
]
"""Half a crowded lower joint, one told from end to end, one that governs, one only proposed."""

each = pytest.mark.parametrize(("name", "part"), PINS)


@each
def test_no_lettering_touches_another_or_any_line(name: str, part: str) -> None:
    assert faults(pin_drawing(demos.explain(name, part))) == []


@each
def test_every_bearing_has_its_row_and_its_place(name: str, part: str) -> None:
    document = demos.explain(name, part)
    drawn = pin_drawing(document)
    ET.fromstring(drawn.svg)
    said = ["".join(run.text for run in one.runs) for one in drawn.letterings]
    for row, one in zip(drawn.view.rows, document["pin"]["bearings"], strict=True):
        assert said.count(row.bears) >= 2  # beside the bearing and in the table
        assert all(bar in row.bears for bar in one["bars"])
    assert document["rating"]["check"].split(" of ")[0] in drawn.view.answer


@each
def test_the_figures_of_a_pin_are_those_of_statics(name: str, part: str) -> None:
    # A law: shears are the sum of the loads outside, moments those loads times their distances;
    # nothing is left beyond the last.
    bearings = demos.explain(name, part)["pin"]["bearings"]
    for i, here in enumerate(bearings):
        outer = bearings[: i + 1]
        for plane in (0, 1):
            shear = math.fsum(one["load_kip"][plane] for one in outer)
            moment = math.fsum(
                one["load_kip"][plane] * (here["along_in"] - one["along_in"]) for one in outer
            )
            assert here["shear_kip"][plane] == pytest.approx(shear, abs=1e-9)
            assert here["moment_kip_in"][plane] == pytest.approx(moment, abs=1e-9)
    assert bearings[-1]["shear_kip"] == pytest.approx([0.0, 0.0], abs=1e-9)
    assert max(one["used"] for one in bearings) == pytest.approx(1.0, abs=1e-6)


def test_a_pin_on_which_nothing_reaches_a_limit_has_no_drawing() -> None:
    document: dict[str, Any] = {**demos.explain(*PINS[0]), "pin": None}
    with pytest.raises(Unknown, match="moments of"):
        pin_drawing(document)


@each
def test_a_figure_between_the_margins_has_the_diagrams_of_the_sheet(name: str, part: str) -> None:
    # Pages of letter paper are 11 in high: a figure with its caption stays under 9 in of 96 units.
    document = demos.explain(name, part)
    one = pin_figure(document)
    ET.fromstring(one.printed.svg)
    drawn: Any = SimpleNamespace(
        ink=one.printed.ink, bars=(), letterings=tuple(letterings(*one.printed.ink))
    )
    assert faults(drawn) == []
    assert one.printed.width == 640.0
    assert one.printed.height < 9 * 96
    assert one.view == pin_drawing(document).view
    said = ["".join(run.text for run in here.runs) for here in drawn.letterings]
    for plane in ("horizontal", "upright"):
        assert {f"Forces, {plane}", f"Shear, {plane}", f"Moment, {plane}"} <= set(said)


@pytest.mark.parametrize("name", demos.NAMES)
def test_the_pins_that_govern_are_the_least_of_each_truss_as_the_posting_takes_them(
    name: str,
) -> None:
    rate = demos.rate(name)
    posting, least = rate["posting"], dict[str, float]()
    for part in rate["parts"]:
        for one in part.get("ratings", ()) if part["kind"] == "pin" else ():
            if one["factor"] is not None and one["vehicle"] in posting["vehicles"] and (
                (one["method"], one["level"]) == (posting["method"], posting["level"])
            ):
                least[part["truss"]] = min(least.get(part["truss"], math.inf), one["factor"])
    found = [pin_figure(demos.explain(name, part)) for part in governing_pins(rate)]
    assert [one.part.split("/")[0] for one in found] == list(least)
    for one, factor in zip(found, least.values(), strict=True):
        assert one.view.answer.startswith(f"Factor {factor:.2f} ")


def test_a_truss_without_rated_pins_has_no_figure() -> None:
    assert pin_figures(demos.rate_without_pins("quillmarsh"), lambda _: {}) == ()
