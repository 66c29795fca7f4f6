"""Rivets in shear and in bearing, by each method and age."""

from dataclasses import replace

import pytest

from eyebar.office import shipped_values
from eyebar.resistance.rivets import rivet_pull
from eyebar.resistance.rules import rules
from eyebar.terms import Level, Method
from tests.resistance.bars import IRON, LACED, SOUND, office


def carried(
    method: Method, level: Level, *, cuts: int = 1, thinner: float | None = 0.25, built: int = 1890
) -> float:
    found = rules(method, level, values=shipped_values(), condition=SOUND, section=LACED)
    metal = replace(IRON, built=built)
    return rivet_pull(found, shipped_values(), metal, rivet=0.75, cuts=cuts, thinner=thinner)


@pytest.mark.parametrize(
    ("method", "level", "kip"),
    [
        # By hand: 3/4 in is 0.441786 in2; 9, 12, 18 ksi; the last times 0.90 (system).
        (Method.ALLOWABLE_STRESS, Level.INVENTORY, 3.97608),
        (Method.ALLOWABLE_STRESS, Level.OPERATING, 5.30144),
        (Method.LOAD_FACTOR, Level.OPERATING, 7.95216),
        (Method.LOAD_AND_RESISTANCE, Level.LEGAL, 7.15694),
    ],
)
def test_a_rivet_of_unknown_origin_in_single_shear(
    method: Method, level: Level, kip: float
) -> None:
    assert carried(method, level) == pytest.approx(kip, rel=1e-5)


@pytest.mark.parametrize(
    ("method", "level", "kip"),
    [
        # By hand, double shear on 1/4 in of iron, 48 ksi: 40 x 48/58 x 0.1875 = 6.20690 under
        # 7.95216; 53 x 48/58 x 0.1875 = 8.22414 under 10.60288; 1.8 x 48 x 0.1875 = 16.2 and 0.90 x
        # 1.92 x 48 x 0.1875 = 15.552 over 15.90431 and 14.31388.
        (Method.ALLOWABLE_STRESS, Level.INVENTORY, 6.20690),
        (Method.ALLOWABLE_STRESS, Level.OPERATING, 8.22414),
        (Method.LOAD_FACTOR, Level.OPERATING, 15.90431),
        (Method.LOAD_AND_RESISTANCE, Level.LEGAL, 14.31388),
    ],
)
def test_bearing_holds_a_rivet_in_double_shear_to_less(
    method: Method, level: Level, kip: float
) -> None:
    assert carried(method, level, cuts=2) == pytest.approx(kip, rel=1e-5)


def test_bearing_that_is_not_asked_for_is_not_a_limit() -> None:
    assert carried(Method.ALLOWABLE_STRESS, Level.INVENTORY, cuts=2, thinner=None) == (
        pytest.approx(7.95216, rel=1e-5)
    )


@pytest.mark.parametrize(("built", "stress"), [(0, 18.0), (1935, 18.0), (1936, 21.0)])
def test_later_rivets_count_for_more(built: int, stress: float) -> None:
    # By hand: 18 or 21 ksi on 0.441786 in2.
    found = carried(Method.LOAD_FACTOR, Level.OPERATING, built=built)
    assert found == pytest.approx(stress * 0.441786, rel=1e-5)


def test_the_office_confirms_its_own_rivets() -> None:
    found = rules(
        Method.LOAD_FACTOR, Level.OPERATING, values=shipped_values(), condition=SOUND,
        section=LACED,
    )
    own = office(rivet__shear__factored__earlier=25.0)
    kip = rivet_pull(found, own, IRON, rivet=0.75, cuts=1, thinner=None)
    assert kip == pytest.approx(25 * 0.441786, rel=1e-5)
