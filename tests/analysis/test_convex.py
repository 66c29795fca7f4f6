"""First passages of a convex check against the check tried on every edge of a sweep.

The other road: no bounds and no order; every edge along which the check changes from under 1 to
over it is halved sixty times. Checks are those of a pin, with rows of forces drawn at random.
"""

import numpy as np
import pytest

from eyebar.analysis.convex import edges_of, first_passages, spread
from eyebar.analysis.sweep import Bundle
from eyebar.rating.pin_checks import PinCheck, PinRules
from eyebar.terms import Direction, Method
from tests.analysis.solving import Loaded, loaded
from tests.analysis.trusses import countered, dead_load

AXLES, SPACINGS, CAP = (16.0, 17.0, 17.0), (15.0, 4.0), 60.0
BARS = 4
PLACES = 3
"""Bearings on the pin: so many moments, shears and bearings."""


@pytest.fixture(scope="module")
def truss() -> Loaded:
    drawing = countered()
    return loaded(drawing, dead_load(drawing, floor_kip=5.0, roof_kip=1.2))


@pytest.fixture(scope="module")
def bundle(truss: Loaded) -> Bundle:
    return truss.sweep(AXLES, SPACINGS, Direction.UP, CAP).bundle


def a_check(seed: int, method: Method, kip: float) -> PinCheck:
    """A check with limits of about so many kips."""
    rows = np.random.default_rng(seed).normal(size=(2 * 3 * PLACES, BARS)) / kip
    return PinCheck(rules=PinRules(method=method, together=0.95), rows=rows)


def by_halving(bundle: Bundle, bars: np.ndarray, check: PinCheck) -> float:
    forces = bundle.forces[:, bars]
    values = check(forces)
    if values[0] >= 1.0:
        return 0.0
    over = values >= 1.0
    edge = np.flatnonzero(over[bundle.begin] != over[bundle.end])
    low = np.where(over[bundle.begin[edge]], bundle.end[edge], bundle.begin[edge])
    high = np.where(over[bundle.begin[edge]], bundle.begin[edge], bundle.end[edge])
    under, beyond = np.zeros(len(edge)), np.ones(len(edge))
    for _ in range(60):
        part = 0.5 * (under + beyond)
        reached = check(forces[low] + part[:, None] * (forces[high] - forces[low])) >= 1.0
        under, beyond = np.where(reached, under, part), np.where(reached, part, beyond)
    multiple = bundle.multiple[low] + beyond * (bundle.multiple[high] - bundle.multiple[low])
    return float(multiple.min(initial=np.inf))


@pytest.mark.parametrize("method", [Method.ALLOWABLE_STRESS, Method.LOAD_AND_RESISTANCE])
@pytest.mark.parametrize("seed", range(12))
def test_no_edge_is_passed_over_that_holds_the_first_passage(
    bundle: Bundle, seed: int, method: Method
) -> None:
    bars = np.random.default_rng(seed).choice(bundle.forces.shape[1], BARS, replace=False)
    one = spread(edges_of(bundle), bars)
    before = None
    for kip in (10.0, 40.0, 90.0, 1000.0, 1e6):
        check = a_check(seed, method, kip)
        least = by_halving(bundle, bars, check)
        for near in (None, before):
            found = first_passages(one, check, near)
            assert found.multiple[0] == pytest.approx(least, rel=1e-12)
        before = found
        if 0.0 < least < np.inf:
            p, q = bundle.edges[found.edge[0]]
            begin, end = bundle.multiple[[p, q]]
            assert begin + found.part[0] * (end - begin) == pytest.approx(least, rel=1e-12)
            first, second = bundle.forces[p, bars], bundle.forces[q, bars]
            assert check(first + found.part[0] * (second - first)) == pytest.approx(1.0, abs=1e-12)
