"""Computational Analysis and Design of Bridge Structures, 14.2.2.2, after Timoshenko: pony chord.

A bar on an elastic foundation of modulus beta, its thrust parabolic along the span, its ends held:
reduced length over the span, 1/m, against beta L^4 / (16 E I). Read at what-when-how.com, topic
page 468.
"""

import math

import pytest

from eyebar.analysis.elastic_posts import ElasticChord, Piece, buckling_multiple
from tests.published.printing import Printed, printed

OLDER = "the source's figures come from few terms of a series; forty terms give {}"


def loose(text: str, within: float, better: str) -> Printed:
    return printed(text, within=within, because=OLDER.format(better))


TABLE = {
    0.0: loose(".696", 0.002, ".6941"), 5.0: printed(".524"), 10.0: printed(".443"),
    15.0: printed(".396"), 22.8: printed(".363"), 56.5: printed(".324"), 100.0: printed(".290"),
    162.8: loose(".259", 0.001, ".2583"), 200.0: loose(".246", 0.001, ".2453"),
    300.0: printed(".225"), 500.0: printed(".204"), 1000.0: printed(".174"),
}
PANELS = 40
"""So many posts are as good as a foundation."""


def reduced_length(stiffness: float) -> float:
    """1/m by the package: length L 1,000 in, E I 1e6 kip in2, the greatest thrust 1 kip."""
    span, rigidity = 1000.0, 1e6
    panel = span / PANELS
    spring = stiffness * 16 * rigidity / span**4 * panel
    middles = [(i + 0.5) / PANELS for i in range(PANELS)]
    load = buckling_multiple(ElasticChord(
        pieces=tuple(
            Piece(length=panel, rigidity=rigidity, thrust=4 * x * (1 - x)) for x in middles
        ),
        springs=(math.inf, *(spring,) * (PANELS - 1), math.inf),
        hinged=(True, *(False,) * (PANELS - 1), True),
    ))
    return math.sqrt(math.pi**2 * rigidity / load) / span


@pytest.mark.parametrize("stiffness", list(TABLE))
def test_reduced_length(stiffness: float) -> None:
    assert reduced_length(stiffness) == TABLE[stiffness]
