"""Lateral trusses with crossed braces, by hand and by the laws of statics."""

from dataclasses import replace

import numpy as np
import pytest

from eyebar.analysis.laterals import LateralTruss, lateral_forces
from eyebar.analysis.model import ModelBar, model_of
from eyebar.errors import OutOfRange

BOTH = (1, 2)


def four_panels(**other: object) -> LateralTruss:
    """Panels of 12 ft, trusses 16 ft apart: a brace of 20 ft. 2 kip at inner joints, 1 at ends."""
    truss = LateralTruss(
        stations=(0.0, 144.0, 288.0, 432.0, 576.0), spacing=192.0,
        steady=(1.0, 2.0, 2.0, 2.0, 1.0), moving=(0.0,) * 5, working=(BOTH,) * 4,
        rigid=(False,) * 4,
    )
    return replace(truss, **other)  # type: ignore[arg-type]


def test_four_panels_by_hand() -> None:
    # By hand: the ends hold 4 kip each; shears 4 - 1 = 3 and 3 - 2 = 1 kip; braces 3 x 20/16 = 3.75
    # and 1.25 kip. Moments 3 x 12 = 36 and 36 + 12 = 48 kip ft. Brace 1 runs from windward 0 to
    # leeward 1: windward chord of panel 1 by the moment at joint 1, 36/16 = 2.25 kip, leeward by
    # that at joint 0, 0; of panel 2 48/16 = 3 and 36/16 = 2.25. Struts: what brace and wind bring
    # to the windward joint: 1 + 3 = 4 at the end, 2 + 1 = 3, and 2 at the middle.
    found = lateral_forces(four_panels())
    assert found.reactions == pytest.approx((4.0, 4.0))
    assert found.shear == pytest.approx((3.0, 1.0, -1.0, -3.0))
    assert found.pull == pytest.approx((3.75, 1.25, 1.25, 3.75))
    assert found.push == (0.0,) * 4
    assert found.windward == pytest.approx((2.25, 3.0, 3.0, 2.25))
    assert found.leeward == pytest.approx((0.0, 2.25, 2.25, 0.0))
    assert found.struts == pytest.approx((4.0, 3.0, 2.0, 3.0, 4.0))


def test_moving_wind_stands_on_the_one_side_of_a_panel() -> None:
    # By hand, 4 kip moving at each inner joint, nothing else: panel 2 has the most with joints 2
    # and 3 covered: 4 (1/2 + 1/4) = 3 kip; covered at joint 1 alone it is -4 x 1/4 = -1 kip.
    found = lateral_forces(four_panels(steady=(0.0,) * 5, moving=(0.0, 4.0, 4.0, 4.0, 0.0)))
    assert found.shear[1] == pytest.approx(3.0)
    assert found.pull[1] == pytest.approx(3.0 * 20 / 16)
    assert found.shear[0] == pytest.approx(4 * (3 + 2 + 1) / 4)


def test_a_brace_that_is_gone_leaves_its_fellow_to_push_or_nothing() -> None:
    gone = ((2,), BOTH, BOTH, BOTH)
    rods = lateral_forces(four_panels(working=gone))
    assert rods.carried == (False, True, True, True)
    stiff = lateral_forces(four_panels(working=gone, rigid=(True,) * 4))
    assert stiff.carried == (True,) * 4
    assert (stiff.pull[0], stiff.push[0]) == pytest.approx((0.0, 3.75))
    # The other brace of that panel is not wanted by this wind at all.
    assert lateral_forces(four_panels(working=((1,), BOTH, BOTH, BOTH))).carried == (True,) * 4


@pytest.mark.parametrize("seed", range(5))
def test_forces_are_those_of_a_plane_truss_with_the_working_braces(seed: int) -> None:
    # Another road: the stiffness model of a plane truss with one brace in every panel, the one that
    # this wind pulls.
    draws = np.random.default_rng(seed)
    panels = draws.uniform(90.0, 220.0, size=5)
    stations = tuple(float(x) for x in np.concatenate([[0.0], np.cumsum(panels)]))
    loads = tuple(float(x) for x in draws.uniform(0.5, 4.0, size=6))
    truss = LateralTruss(
        stations=stations, spacing=190.0, steady=loads, moving=(0.0,) * 6,
        working=(BOTH,) * 5, rigid=(False,) * 5,
    )
    found = lateral_forces(truss)
    joints = {f"W{i}": (x, 190.0) for i, x in enumerate(stations)}
    joints |= {f"V{i}": (x, 0.0) for i, x in enumerate(stations)}
    ends = [(f"{chord}{i}", f"{chord}{i + 1}") for chord in "WV" for i in range(5)]
    ends += [(f"W{i}", f"V{i}") for i in range(6)]
    ends += [
        (f"W{i}", f"V{i + 1}") if found.shear[i] > 0 else (f"W{i + 1}", f"V{i}")
        for i in range(5)
    ]
    bars = [
        ModelBar(name="-".join(one), ends=one, area=2.0, modulus=29000.0, can_push=True,
                 can_pull=True, initial_kip=0.0, gap_in=0.0)
        for one in ends
    ]
    model = model_of(joints, bars, {"V0": (True, True), "V5": (False, True)}, truss="laterals")
    forces = dict(zip(
        model.names, model.bar_forces(
            (model.influence @ model.loads(
                {f"W{i}": load for i, load in enumerate(loads)}
            ))[None]
        )[0].tolist(), strict=True,
    ))
    for i in range(5):
        brace = forces.get(f"W{i}-V{i + 1}", forces.get(f"W{i + 1}-V{i}"))
        assert brace == pytest.approx(found.pull[i])
        assert -forces[f"W{i}-W{i + 1}"] == pytest.approx(found.windward[i], abs=1e-9)
        assert forces[f"V{i}-V{i + 1}"] == pytest.approx(found.leeward[i], abs=1e-9)
    for i in range(1, 5):
        assert -forces[f"W{i}-V{i}"] == pytest.approx(found.struts[i])


def test_what_is_no_lateral_truss_is_refused() -> None:
    with pytest.raises(OutOfRange):
        four_panels(spacing=0.0)
    with pytest.raises(OutOfRange):
        four_panels(steady=(1.0, 2.0))
