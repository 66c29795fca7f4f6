"""A Beginner's Guide to the Steel Construction Manual, 13th ed., failure paths, example 4.

An angle opened out flat: width 9.625 in (both legs over the heel), thickness 0.375 in, bolts of
7/8 in. The path D-G-L through three holes, with steps of 2 in over gauges of 2.5 and 4.125 in, is
7.27 in long, 2.73 in2. Read at bgstructuralengineering.com, FailurePaths, Example04.
"""

from eyebar.resistance.punched import Hole, hole_width, net_width
from tests.published.printing import printed


def test_the_path_through_three_holes() -> None:
    # Edge distances are not printed; they change nothing.
    holes = tuple(
        Hole(along=along, across=across)
        for along, across in ((0.0, 1.5), (2.0, 4.0), (0.0, 8.125))
    )
    # The print's hole is the standard one, 7/8 + 1/16 in, and 1/16 in of damage.
    assert hole_width(7 / 8) == 1.0
    width = net_width(9.625, holes, 7 / 8)
    assert width == printed("7.27")
    assert width * 0.375 == printed("2.73")
