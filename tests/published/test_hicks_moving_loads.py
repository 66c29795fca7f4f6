"""T. G. Hicks (ed.), Handbook of Civil Engineering Calculations, 2nd ed., pp. 1.69-1.75.

Influence lines of trusses. (a) 120 ft in six panels of 20 ft, 25 ft deep, 2.3 kip/ft moving on
the bottom chord; member Cd of the third panel: shear 41.4 kip, printed +53.0 and -23.6 kip. (c) A
Warren deck truss of 120 ft, four panels of 30 ft, 20 ft deep; wheels of 24 and 6 kip 14 ft apart;
printed moment at the lower joint 45 ft from the left 664.5 ft-kip, 643.5 the other way, and 33.2
kip of push in the chord BC.
(b) p. 1.73: a wheel of 5 kip 6 ft from e in the panel d-e of 25 ft brings P_d = 5 (6) / 25 = 1.2
kip to the panel point d.
"""

import numpy as np

from eyebar.analysis.influence import uniform_panel_loads
from eyebar.analysis.passage import extremes
from eyebar.rating.floor_reactions import panel_ordinate
from eyebar.terms import Direction
from tests.analysis.solving import loaded
from tests.analysis.trusses import Drawing, bar, pratt
from tests.published.printing import printed

PRATT = pratt(6, counters=(), pitch=240.0, depth=300.0, slender=False)


def deck_warren() -> Drawing:
    """Upper joints every 30 ft, lower ones between them, 20 ft below; it hangs by its upper ends.
    """
    upper = {f"T{i}": (360.0 * i, 240.0) for i in range(5)}
    lower = {f"B{i}": (180.0 + 360.0 * (i - 1), 0.0) for i in range(1, 5)}
    bars = [bar(f"T{i}", f"T{i + 1}", 5.0) for i in range(4)]
    bars += [bar(f"B{i}", f"B{i + 1}", 5.0) for i in range(1, 4)]
    bars += [bar(f"T{i - 1}", f"B{i}", 3.0) for i in range(1, 5)]
    bars += [bar(f"T{i}", f"B{i}", 3.0) for i in range(1, 5)]
    return Drawing(
        joints=upper | lower, bars=tuple(bars),
        supports={"T0": (True, True), "T4": (False, True)}, floor_joints=tuple(upper),
    )


def test_the_diagonal_of_the_third_panel_under_a_moving_uniform_load() -> None:
    truss = loaded(PRATT, {})
    number = truss.model.names.index("U2-L3")
    line = truss.lines.ordinates(truss.start)[:, number]
    for sign, print_ in ((1.0, "+53.0"), (-1.0, "-23.6")):
        weights = uniform_panel_loads(truss.lines.stations_ft, sign * line, 2.3)
        assert float(weights @ line) == printed(print_)


def test_the_shear_of_its_panel() -> None:
    truss = loaded(PRATT, {})
    line = truss.lines.ordinates(truss.start)[:, truss.model.names.index("U2-L3")]
    pull = float(uniform_panel_loads(truss.lines.stations_ft, line, 2.3) @ line)
    # The diagonal's vertical part: 25 ft of its 32.0156 ft.
    assert pull * 25.0 / np.hypot(20.0, 25.0) == printed("41.4")


def greatest_push(way: Direction) -> float:
    """Of the chord BC, the heavy wheel in front [kip]."""
    truss = loaded(deck_warren(), {})
    sweep = truss.sweep((24.0, 6.0), (14.0,), way, 2.0)
    least, *_ = extremes(sweep, 1.0)
    return -float(least[truss.model.names.index("T1-T2")])


def test_the_moment_at_the_lower_joint_one_way() -> None:
    # The chord's push times its arm of 20 ft.
    assert 20.0 * greatest_push(Direction.UP) == printed("664.5")
    assert greatest_push(Direction.UP) == printed("33.2")


def test_the_moment_at_the_lower_joint_the_other_way() -> None:
    assert 20.0 * greatest_push(Direction.DOWN) == printed("643.5")


def test_what_a_wheel_in_a_panel_brings_to_the_floorbeam_behind_it() -> None:
    assert 5 * panel_ordinate(25.0 - 6.0, 25.0) == printed("1.2")
