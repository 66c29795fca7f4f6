"""The posting in sentences."""

from eyebar.views import words
from eyebar.views.posting import posting
from tests.views import samples

# Expected sentences by hand from the wording in views/words.


def test_a_limit_is_said_as_the_sign_says_it() -> None:
    sign = {"designation": "R12-1", "legend": "WEIGHT LIMIT 6 TONS"}
    assert words.posting_line(samples.posting(sign=sign)) == "WEIGHT LIMIT 6 TONS"


def test_a_legend_of_several_lines_is_said_on_one() -> None:
    assert words.posting_line(samples.posting()) == "PROVISIONAL WEIGHT LIMIT 6 TONS"


def test_of_two_signs_the_first_is_the_posting() -> None:
    sign = {"designation": "R12-1, R12-7", "legend": "WEIGHT LIMIT 6 TONS; EMERGENCY VEHICLES"}
    assert words.posting_line(samples.posting(sign=sign)) == "WEIGHT LIMIT 6 TONS"


def test_a_bridge_to_be_closed_says_that_and_nothing_else_on_its_line() -> None:
    closed = samples.posting(closed=True, exact_tons=2.996, single_tons=None)
    assert words.posting_line(closed) == "Close this bridge"
    assert words.exact(closed) == "The least safe load of a single vehicle is 2.99 tons."


def test_where_the_owner_must_decide_the_load_at_the_operating_level_is_said() -> None:
    assert words.exact(samples.posting(closed=None, exact_tons=4.0)) == (
        "The least safe load of a single vehicle at the operating level is 4.00 tons."
    )
    assert words.exact(samples.posting(closed=None, exact_tons=None)) == ""
    assert words.exact(samples.posting()) == ""


def test_no_limit_is_said_with_what_it_rests_on() -> None:
    free = samples.posting(sign=None, single_tons=None, exact_tons=None)
    assert words.posting_line(free) == "No weight limit needed by the parts that are rated"
    assert words.posting_line(free | {"provisional": False}) == "No weight limit needed"


def test_what_governs_is_named_with_part_check_vehicle_and_method() -> None:
    assert words.governed(samples.posting()) == (
        "Governed by upstream/U2-L4: head of the eyebar, under Type 3 (load and resistance, legal)."
    )
    assert words.governed(samples.posting(governed_by=None)) == (
        "No part is rated, so nothing governs."
    )


def test_emergency_vehicles_have_limits_of_their_own() -> None:
    own = {"single_axle_tons": 8.9, "tandem_tons": 14.0, "gross_tons": None}
    said = words.emergency(samples.posting(emergency=own))
    assert said == "Emergency vehicles: single axle 8 tons, tandem 14 tons."
    assert words.emergency(samples.posting()) == ""


def test_one_part_and_several_are_counted_in_good_english() -> None:
    one = words.provisional(samples.posting(not_rated=["floor/deck"]))
    assert one == "Provisional: 1 part that carries traffic is not rated."
    assert words.provisional(samples.posting()) == (
        "Provisional: 2 parts that carry traffic are not rated."
    )


def test_the_view_holds_the_bridge_its_date_and_what_is_unconfirmed() -> None:
    view = posting(samples.rate())
    assert view.bridge == "Sedgebarrow Ford Bridge (invented), 03-02"
    assert view.date == "2026-06-09"
    assert view.unconfirmed == "1 value used here nobody has confirmed yet."
    assert words.unconfirmed([]) == ""
