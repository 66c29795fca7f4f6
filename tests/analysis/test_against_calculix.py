"""CalculiX on redundant trusses, with the bars that were found to work.

CalculiX knows no slack bars here: those found slack are left out of its model, and it must then
give the forces found, pulls in all bars that only pull among them.
"""

from collections.abc import Mapping
from pathlib import Path

import numpy as np
import pytest

from eyebar.terms import Direction
from tests.analysis import calculix
from tests.analysis.oracles import axles_at, road_loads
from tests.analysis.solving import FORWARD, at_rest, loaded, pulled
from tests.analysis.trusses import (
    Drawing,
    countered,
    crossed_pratt,
    dead_load,
    double_intersection,
)

pytestmark = pytest.mark.calculix

AXLES, SPACINGS = (10.0, 15.5, 15.5, 15.5, 15.5), (11.0, 4.0, 22.0, 4.0)
"""A legal combination, from memory; any train would do."""


def agree(found: Mapping[str, float], by_calculix: Mapping[str, float]) -> None:
    """Every bar that CalculiX knows to seven figures of the greatest, every other one slack."""
    most = max(abs(kip) for kip in by_calculix.values())
    for name, kip in found.items():
        assert kip == pytest.approx(by_calculix.get(name, 0.0), abs=most * calculix.DIGITS), name


def working(drawing: Drawing, found: Mapping[str, float]) -> Drawing:
    """Without the bars that were found slack."""
    slack = [b.name for b in drawing.bars if not b.can_push and abs(found[b.name]) < 1e-7]
    return drawing.without(*slack)


def test_the_double_intersection_truss_with_all_bars_working(tmp_path: Path) -> None:
    drawing = double_intersection(slender=False)
    cases = [{f"L{i}": 10.0 for i in range(1, 10)}, {"L3": 10.0}, {"L7": 10.0}]
    for case, by_calculix in zip(
        cases, calculix.forces(drawing, cases, tmp_path), strict=True
    ):
        found, _ = pulled(drawing, {joint: (0.0, -kip) for joint, kip in case.items()})
        agree(found, by_calculix)


def test_the_crossed_rods_both_elastic_and_with_the_slack_ones_out(tmp_path: Path) -> None:
    drawing, case = crossed_pratt(), {f"L{i}": 12.0 for i in range(1, 6)}
    elastic, _ = pulled(drawing, {joint: (0.0, -kip) for joint, kip in case.items()})
    agree(elastic, calculix.forces(drawing, [case], tmp_path)[0])
    found = at_rest(drawing, case)
    left = working(drawing, found)
    assert set(drawing.names) - set(left.names) == {"U2-L1", "U3-L2", "U3-L4", "U4-L5"}
    agree(found, calculix.forces(left, [case], tmp_path)[0])


@pytest.mark.parametrize("way", list(Direction))
def test_a_train_at_eight_places_of_a_truss_with_counters(way: Direction, tmp_path: Path) -> None:
    drawing = countered()
    dead = dead_load(drawing, floor_kip=4.0, roof_kip=1.0)
    truss = loaded(drawing, dead)
    met = set()
    for number, front in enumerate(np.linspace(8.0, 142.0, 8)):
        axles = axles_at(AXLES, SPACINGS, float(front), FORWARD[way])
        moving = {joint: 2.0 * kip for joint, kip in road_loads(drawing, axles).items()}
        found = truss.forces(moving)
        left = working(drawing, found)
        met.add(frozenset(drawing.names) - frozenset(left.names))
        both = {joint: dead.get(joint, 0.0) + moving.get(joint, 0.0) for joint in drawing.joints}
        folder = tmp_path / str(number)
        folder.mkdir()
        by_calculix = calculix.forces(left, [both], folder)[0]
        agree(found, by_calculix)
        most = max(map(abs, by_calculix.values()))
        assert all(
            by_calculix[bar.name] > -calculix.DIGITS * most for bar in left.bars if not bar.can_push
        )
    # The places are chosen so that different bars work.
    assert len(met) >= 4
