"""ACI 343, 10.4.2.2, read at 1library.net: slabs with their bars across the road.

M = (S + 2) P / 32 ft-lb for a foot of width, P 12,000 lb for HS15, 16,000 lb for HS20; four fifths
of it in slabs continuous over three or more supports, for moments of both senses.
"""

import pytest

from eyebar.office import office_values
from eyebar.resistance.decks import wheel_moment
from eyebar.resistance.slabs import strip_across
from tests.published.printing import printed


@pytest.mark.parametrize(("span_ft", "wheel", "moment"), [
    # By the printed formula: (2 + 2) 12,000 / 32, (4 + 2) 16,000 / 32, (6 + 2) 16,000 / 32.
    (2.0, 12_000, "1500"), (4.0, 16_000, "3000"), (6.0, 16_000, "4000"),
])
def test_moment_for_a_foot_of_width(span_ft: float, wheel: int, moment: str) -> None:
    inches = 12 * span_ft
    assert wheel * wheel_moment(1.0, inches, 0.0) / strip_across(inches) == printed(moment)


def test_slabs_that_run_on_have_four_fifths() -> None:
    assert office_values().number("slab.part of simple moment") == printed("0.80")
