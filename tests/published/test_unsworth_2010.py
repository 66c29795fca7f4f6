"""J. F. Unsworth, Design of Modern Steel Railway Bridges (2010), example 6.5.

Built-up column: A 26.5 in2, r_x 6.14 in, r_y 3.70 in, 19.55 ft long. Printed: L/r 63.4, 0.75 L/r
47.6, 22.1 ksi (a railway rule, not ours), 586 kip. Read at what-when-how.com, page 277.
"""

from eyebar.resistance.column import allowable_push, slenderness_ratio
from tests.published.printing import printed

LENGTH = 19.55 * 12


def test_slenderness_and_its_effective_part() -> None:
    assert slenderness_ratio(1.0, LENGTH, 3.70) == printed("63.4")
    assert slenderness_ratio(0.75, LENGTH, 3.70) == printed("47.6")


def test_the_load_at_the_printed_stress() -> None:
    assert allowable_push(22.1, 26.5) == printed("586")
