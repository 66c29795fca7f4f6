"""J. F. Unsworth, Design of Modern Steel Railway Bridges (2010), examples 5.3 and 6.5.

Example 5.3, page 179: a train on a beam of 60 ft, moment at its middle C. Ordinates 3.50, 7.5,
10.0, 12.50, 15.00, 10.50, 8.00, 5.00 and 2.50 ft under 20, four times 40 and four times 26 kip;
printed 2546 ft-kips.

Built-up column: A 26.5 in2, r_x 6.14 in, r_y 3.70 in, 19.55 ft long. Printed: L/r 63.4, 0.75 L/r
47.6, 22.1 ksi (a railway rule, not ours), 586 kip. Read at what-when-how.com, page 277.
"""

from eyebar.loads.simple_beam import moment_ordinate
from eyebar.resistance.column import allowable_push, slenderness_ratio
from tests.published.printing import printed

LENGTH = 19.55 * 12


def test_slenderness_and_its_effective_part() -> None:
    assert slenderness_ratio(1.0, LENGTH, 3.70) == printed("63.4")
    assert slenderness_ratio(0.75, LENGTH, 3.70) == printed("47.6")


def test_the_load_at_the_printed_stress() -> None:
    assert allowable_push(22.1, 26.5) == printed("586")


PLACES_FT = (7.0, 15.0, 20.0, 25.0, 30.0, 39.0, 44.0, 50.0, 55.0)
"""Where the axles stand, from their ordinates: 8, 5, 5, 5, 9, 5, 6 and 5 ft apart."""
AXLES = (20.0, 40.0, 40.0, 40.0, 40.0, 26.0, 26.0, 26.0, 26.0)
ORDINATES = ("3.50", "7.5", "10.00", "12.50", "15.00", "10.50", "8.00", "5.00", "2.50")


def test_ordinates_of_the_moment_at_mid_span() -> None:
    found = [moment_ordinate(place, 30.0, 60.0) for place in PLACES_FT]
    assert found == [printed(one) for one in ORDINATES]


def test_the_moment_of_the_train() -> None:
    moment = sum(
        axle * moment_ordinate(place, 30.0, 60.0)
        for axle, place in zip(AXLES, PLACES_FT, strict=True)
    )
    assert moment == printed("2546")
