"""Influence lines with their vehicle, and metal given against metal needed."""

import math
from typing import Any

import pytest

from eyebar.drawings.influence_sheet import influence_sheet
from eyebar.drawings.proportion_sheet import proportion_sheet
from eyebar.drawings.sizes import FREE, sheets_of
from eyebar.errors import Unknown
from tests.drawings import sheets
from tests.drawings.test_sheets import NARROW, lettered, parts, sound

LINES = (("wrenmallow", "north/U1-L1"), ("dovetansy", "U3-L4"), ("quillmarsh", "upstream/U1-L1"))


@pytest.mark.parametrize("papers", [FREE, NARROW])
@pytest.mark.parametrize(("name", "part"), LINES)
def test_a_line_stands_under_its_truss_with_its_vehicle(name: str, part: str, papers: Any) -> None:
    document = sheets.influence(name, part)
    sheet = influence_sheet(document, papers)
    sound(sheet)
    assert {bar["part"] for bar in document["truss"]["bars"].values()} <= set(parts(sheet))
    assert document["vehicle"]["name"] in lettered(sheet)


@pytest.mark.parametrize(("name", "part"), [LINES[0], LINES[2]])
def test_axles_times_ordinates_are_the_force(name: str, part: str) -> None:
    # Law: influence line x load = direct solve, where no bar goes slack on the way.
    document = sheets.influence(name, part)
    by_line = document["share"] * math.fsum(
        one["axle_kip"] * one["ordinate"] for one in document["axles"]
    )
    assert by_line == pytest.approx(document["live_kip"], rel=1e-9)


def test_a_hip_vertical_carries_what_stands_at_its_foot() -> None:
    # By hand: a hip vertical hangs the floor at L1 and nothing else.
    document = sheets.influence("quillmarsh", "upstream/U1-L1")
    at = dict(zip(document["joints"], document["ordinates"], strict=True))
    assert at["L1"] == pytest.approx(1.0)
    assert [at[joint] for joint in at if joint != "L1"] == pytest.approx([0.0] * 10, abs=1e-9)


def test_a_line_of_no_bar_is_refused_with_the_nearest() -> None:
    with pytest.raises(Unknown, match="did you mean 'north/U1-L1'"):
        sheets.influence("wrenmallow", "north/U1-L11")


def of(bar: str) -> dict[str, Any]:
    """One bar of the `proportion` document."""
    (found,) = (one for one in sheets.proportion()["bars"] if one["bar"] == bar)
    return dict(found)


@pytest.mark.parametrize(
    ("bar", "figures"),
    [
        # By hand, from the record and from the figures of the `rate` document for SU7 (load and
        # resistance, legal): force = limit - (factor - 1) x 1.3 x 1.33 x live.
        # Two loop rods of 1 in: 44.46 + 0.47851 x 1.729 x 41.8973 = 79.12 kip; limit 0.95 x 0.90 x
        # 26 ksi x 2.00 = 44.46 kip; 79.12 / 22.23 ksi = 3.56.
        ("U1-L2", (2.00, 79.12, 44.46, 3.559, 2.00)),
        # A post, its column strength 61.78 kip: 61.778 - 0.82395 x 1.729 x 18.4817 = 35.45 kip;
        # 3.297 x 35.45 / 61.78 = 1.89.
        ("U1-L1", (3.297, -35.45, -61.78, 1.892, 3.297)),
        # Two eyebars 2 x 13/16 in: 22.23 x 3.25 = 72.25 kip as built; a head thinned to 11/16 and
        # 23/32 in bears 65.59 kip: 3.25 x 65.59 / 72.25 = 2.95. Force 65.590 + 0.34504 x 1.729 x
        # 46.8946 = 93.57 kip; 93.57 / 22.23 = 4.21.
        ("U0-L1", (3.25, 93.57, 72.25, 4.209, 2.951)),
    ],
)
def test_three_members_by_hand(bar: str, figures: tuple[float, ...]) -> None:
    given, force, limit, needed, left = figures
    found = of(bar)
    assert found["provided_in2"] == pytest.approx(given, abs=0.0005)
    assert found["force_kip"] == pytest.approx(force, abs=0.006)
    assert found["limit_kip"] == pytest.approx(limit, abs=0.006)
    assert found["needed_in2"] == pytest.approx(needed, abs=0.001)
    assert found["left_in2"] == pytest.approx(left, abs=0.001)


def test_a_counter_that_is_slack_is_not_said_to_need_nothing() -> None:
    assert of("U2-L1")["not_compared"] == "slack until another bar has let go"


@pytest.mark.parametrize("papers", [FREE, NARROW, sheets_of("A2")])
def test_every_bar_has_its_measure(papers: Any) -> None:
    sheet = proportion_sheet(sheets.proportion(), papers)
    sound(sheet)
    assert {one["part"] for one in sheets.proportion()["bars"]} <= set(parts(sheet))
    words = lettered(sheet)
    assert "U0-L1 3.25 4.21 2.95" in words
    assert "licensed engineer" in words
