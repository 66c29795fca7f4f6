"""Who may cross, in strings; expected ones by hand from the samples."""

from eyebar.views.columns import cells
from eyebar.views.crossing import board, said, slip_lines
from eyebar.views.use import use_rows
from tests.views import samples


def test_the_board_has_one_line_for_each_vehicle() -> None:
    rows = board(samples.cross())
    assert cells(rows[0]) == [
        "milk truck*", "28.0", "yes, if", "over 9", "0.58", "upstream/U2-L4",
        "alone; in the middle; 25 tons in all; with a permit",
    ]
    assert cells(rows[1]) == ["buggy", "1.4", "yes", "within 9", "8.33", "floor/deck", ""]
    assert cells(rows[2]) == [
        "combine", "20.0", "no", "over 9", "-", "-", "it is 17 ft wide",
    ]
    assert cells(rows[3]) == ["crowd", "-", "yes, if", "-", "0.79", "floor/deck", "70 lb/ft2"]


def test_the_sign_and_the_axles_are_both_said() -> None:
    document = samples.cross()
    view = said(document, document["vehicles"][0])
    assert view.line == (
        "milk truck, 28.0 tons: provisionally yes, if the conditions below are kept."
    )
    assert view.sign == "The sign says no: 28 tons, over the limit of 9 tons."
    assert view.axles == (
        "Its loads say no: factor 0.58, decided by upstream/U2-L4 (head beyond the pin hole; load "
        "and resistance, legal)."
    )
    assert view.ways[0] == (
        "If nothing else is on the bridge, it keeps to the middle of the roadway, at most 1 ft to "
        "either side, it weighs no more than 25 tons in all, less by the same part on every axle, "
        "and the owner has given a permit, as it is over the posted weight: factor 1.02, "
        "upstream/U2-L4 (head beyond the pin hole)."
    )
    assert view.ways[1].startswith("Or if it weighs no more than 17 tons")
    assert view.provisional.startswith("Provisional:")
    assert view.figures == "Its figures: a page. Assumed: axles, width."


def test_a_plain_yes_and_a_no_are_said_plainly() -> None:
    document = samples.cross()
    buggy, combine = document["vehicles"][1:3]
    assert said(document, buggy).line == "buggy, 1.4 tons: provisionally yes."
    assert said(document, buggy).sign == (
        "The sign lets it pass: it is within the limit of 9 tons."
    )
    assert said(document, combine).line == "combine, 20.0 tons: no: it is 17 ft wide."
    assert said(document, combine).axles == "No part is rated for it."
    assert said(document, document["vehicles"][3]).sign == "The sign says nothing of it."
    firm = {**document, "posting": samples.posting(provisional=False)}
    assert said(firm, buggy).line == "buggy, 1.4 tons: yes."


def test_a_slip_has_its_day_its_conditions_and_lines_to_sign() -> None:
    lines = slip_lines(samples.slip())
    assert lines[0] == "SLIP FOR ONE CROSSING, PROVISIONAL"
    assert "Day       2026-10-04" in lines
    assert "Axles     16 kip, 17 ft, 20 kip, 4.5 ft, 20 kip; gauge 6 ft, width 8.5 ft" in lines
    assert "  [ ] nothing else is on the bridge" in lines
    assert any(line.startswith("Licensed engineer") and "......" in line for line in lines)
    assert all(len(line) <= 100 for line in lines)
    assert "- This is a calculation." in lines


def test_a_slip_for_a_load_by_area_or_without_conditions() -> None:
    crowd = {**samples.slip()["vehicle"], "area_psf": 90.0, "axles_kip": []}
    lines = slip_lines({**samples.slip(), "vehicle": crowd, "way": None})
    assert "Axles     none; 90 lb to the square foot" in lines
    assert "It may cross once on the day." in lines


def test_what_a_use_is_worth_stands_beside_today() -> None:
    today, curb, bare = use_rows(samples.use())
    assert cells(today) == ["as it is used today", "6 / none", "6.74", "-", "upstream/U2-L4"]
    assert cells(curb) == [
        "a curb that holds traffic to the middle", "8", "8.74", "2.00", "upstream/U3-L3",
    ]
    assert cells(bare) == ["the surfacing taken off", "no surfacing", "-", "-", "-"]


def test_of_a_closed_bridge_the_sign_says_no_to_everybody() -> None:
    document = samples.cross()
    closed = {**document, "posting": samples.posting(closed=True)}
    assert said(closed, document["vehicles"][1]).sign == "The sign says no: the bridge is closed."
