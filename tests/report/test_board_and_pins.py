"""Who may cross and the pins that govern, in the report; the slip as a page of its own."""

import pytest

from eyebar.report.slip_report import slip_report
from eyebar.terms import Board
from eyebar.views.pin_sheet import governing_pins
from eyebar.views.report_board import who_may_cross
from eyebar.views.words import condition
from tests.documents import demos
from tests.report import made
from tests.report.test_figures import nearest_hundredth, squeezed
from tests.views import samples

pytestmark = pytest.mark.typst


def test_every_vehicle_of_every_day_stands_on_the_board_with_its_figures() -> None:
    said = squeezed(made.text(made.report(made.BOARDED)))
    board = said[said.index("Vehiclesofeveryday"):]
    answers = {"yes": "yes", "no": "no", "conditions": "yes,if"}
    vehicles = made.documents(made.BOARDED).board(Board.ANSWERS)
    assert {one["vehicle"] for one in vehicles} == {
        one["name"] for one in demos.vehicles()["vehicles"] if one["class"] == "everyday"
    }
    for one in vehicles:
        row = squeezed(one["vehicle"]) + ("*" if one["assumed"] else "")
        if one["tons"] is None:
            assert f"{row}--" not in board  # an answer stands between
            continue
        over = "over" if one["above_posting"] else "within"
        sign = "-" if one["posted_tons"] is None else f"{over}{one['posted_tons']}"
        row += f"{one['tons']:.1f}{answers[one['answer']]}{sign}"
        row += f"{nearest_hundredth(one['factor'])}{squeezed(one['decided_by'])}"
        assert row in board
    assert "Overthepostedweightnothingcrosseswithoutapermit" in board
    assert squeezed("A no here is without conditions") in board


def test_a_report_without_the_board_does_not_name_one() -> None:
    assert "Vehicles of every day, by the method" not in made.text(made.brief(made.BOARDED))


def test_over_a_closed_bridge_nothing_may_cross() -> None:
    rate = demos.rate("wrenmallow")
    closed = {**rate, "posting": {**rate["posting"], "closed": True}}
    section = who_may_cross(closed, (), looked_for=False)
    assert [one.text for one in section.blocks] == [
        "Nothing may cross: the bridge is to be closed."
    ]


@pytest.mark.parametrize("name", demos.NAMES)
def test_the_pin_with_the_least_factor_of_each_truss_is_drawn_and_told(name: str) -> None:
    of = made.documents(name)
    pins = governing_pins(of.rate)
    assert pins
    said = squeezed(made.text(made.brief(name)))
    # Between these headings; and the words for those who do not see the figure.
    section = said[said.index("OfeachtrussthepinwiththeleastFactor".replace("F", "f")):]
    alts = [str(one["/Alt"]) for one in made.figures(made.brief(name))]
    for pin in pins:
        document = of.explain(pin)
        factor = document["rating"]["factor"]
        assert squeezed(f"Pin {pin}, ") in section
        assert squeezed(f"Factor {nearest_hundredth(factor)}") in section
        for number, one in enumerate(document["pin"]["bearings"], start=1):
            bears = squeezed(", ".join([*one["bars"], *(["hung load"] if one["hung"] else [])]))
            figures = [f"{one['load_kip'][0]:.1f}", f"{one['load_kip'][1]:.1f}"]
            row = f"{number}{bears}{one['thickness_in']:g}" + "".join(figures)
            assert row.replace("-0.0", "0.0") in section
        assert any(alt.startswith(f"Pin {pin}, ") for alt in alts)


def test_a_slip_is_a_page_with_boxes_to_tick_and_places_to_sign() -> None:
    slip = samples.slip()
    pdf = slip_report(slip)
    said = squeezed(made.text(pdf))
    for text in (
        slip["bridge"]["name"], slip["vehicle"]["name"], slip["record_hash"][:12], slip["day"],
        *(condition(one) for one in (slip["way"] or {"conditions": []})["conditions"]),
        *(f"{one['role'].capitalize()}: name and signature" for one in slip["signed"]),
        *slip["cautions"],
    ):
        assert squeezed(text) in said
    assert slip_report(slip) == pdf


@pytest.mark.parametrize("name", demos.NAMES)
def test_every_member_of_the_bracing_that_is_judged_has_its_kind_and_least_margin(
    name: str
) -> None:
    document = made.documents(name).bracing()
    section = squeezed(made.text(made.brief(name)))
    section = section[section.index("Bracingunderwind"):section.index("Thebridgeundereveryvehicle")]
    assert squeezed("no factor and no posting rests on it") in section
    for what in {one["what"] for one in document["members"]}:
        assert squeezed(what) in section
