"""The list of parts by safe load, in strings; expected ones by hand from the samples."""

from eyebar.views import words
from eyebar.views.columns import cells
from eyebar.views.weakest import weak_list
from tests.views import samples


def test_parts_alike_share_a_line_that_opens() -> None:
    view = weak_list(samples.rate())
    assert [row.parts for row in view.rows] == [
        "upstream/U2-L4", "floor/panel 1/stringer 3 and 1 alike", "upstream/U4-L4",
    ]
    assert [row.parts for row in view.opened] == [
        "upstream/U2-L4", "floor/panel 1/stringer 3", "floor/panel 2/stringer 3", "upstream/U4-L4",
    ]
    assert cells(view.rows[0]) == [
        "upstream/U2-L4", "6.74", "0.46", "Type 3", "head of the eyebar", "8",
    ]


def test_a_part_that_limits_nothing_has_no_safe_load() -> None:
    assert weak_list(samples.rate()).rows[2].tons == "-"


def test_what_is_not_rated_stands_in_the_list() -> None:
    (row,) = weak_list(samples.rate()).not_rated
    assert row.count == "4"


def test_the_sentences_say_what_would_hold_the_bridge() -> None:
    assert weak_list(samples.rate()).sentences == (
        "If upstream/U2-L4 were no limit, floor/panel 1/stringer 3 (bending of the timber) would "
        "hold it at 8 tons.",
        "If the diagonals were no limit, upstream/U3-L3 (column) would hold it at 9 tons.",
    )


def test_limits_are_said_for_both_kinds_of_vehicles() -> None:
    made = samples.if_no_limit(10, "a", "b")
    assert words.limits(made) == "10 tons"
    assert words.limits({**made, "combination_tons": 18}) == (
        "10 tons for single vehicles and 18 tons for combinations"
    )
    assert words.limits({**made, "combination_tons": None}) == "10 tons for single vehicles"
    assert words.limits_short({**made, "combination_tons": None}) == "10 / none"
    assert words.limits({**made, "closed": True}) == "closed"


def test_a_posting_that_falls_away_or_closes_is_said_in_words() -> None:
    none = samples.if_no_limit(None, "upstream/U3-L3", "column")
    assert words.if_no_limit("it", none) == (
        "If it were no limit, no weight limit would be needed; upstream/U3-L3 (column) would be "
        "next."
    )
    assert "would still close the bridge" in words.if_no_limit("it", {**none, "closed": True})
    assert "close or to post" in words.if_no_limit("it", {**none, "closed": None})
    assert "no other part" in words.if_no_limit("it", {**none, "governed_by": None})
