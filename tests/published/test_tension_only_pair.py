"""A pair of bars that only pull, from the tests of an open general frame library.

Nodes (0, 0), (0, 10), (0, -10) in held, (100, 0) loaded by 10 kip down; A = 1.94 in2, E = 29,000
ksi; the two inclined bars can only pull. Expected: the upper one pulls 100.499 kip, the middle
one pushes 100, the lower one is slack.
"""

from dataclasses import replace

from tests.analysis.oracles import least_energy, statics
from tests.analysis.solving import at_rest
from tests.published.printing import printed
from tests.published.small_trusses import HELD, truss

PAIR = truss(
    {"middle": (0.0, 0.0), "upper": (0.0, 10.0), "lower": (0.0, -10.0), "end": (100.0, 0.0)},
    [("middle-end", 1.94), ("upper-end", 1.94), ("lower-end", 1.94)], 29_000.0,
    {"middle": HELD, "upper": HELD, "lower": HELD},
)
RODS = replace(
    PAIR, bars=tuple(replace(bar, can_push=bar.name == "middle-end") for bar in PAIR.bars)
)


def test_the_upper_rod_carries_and_the_lower_is_slack() -> None:
    forces = at_rest(RODS, {"end": 10.0})
    assert forces["upper-end"] == printed("100.499")
    assert forces["middle-end"] == printed("-100")
    assert forces["lower-end"] == printed("0.000")


def test_the_oracle_of_least_energy_gives_the_same() -> None:
    forces = least_energy(RODS).forces(statics(RODS).loads({"end": 10.0}))
    assert forces is not None
    middle, upper, lower = forces.tolist()
    assert upper == printed("100.499")
    assert middle == printed("-100")
    assert lower == printed("0.000")
