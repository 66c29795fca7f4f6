"""Two trusses together carry what stands on the road, wherever it stands.

For roads whose curbs and clear width fill the distance between the trusses.
"""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from eyebar.loads.across import lever_share, shares
from eyebar.office import shipped_values
from tests.loads.made import road, wide

widths = st.floats(9.0, 34.0)
gauges = st.floats(4.0, 8.0)
curbs = st.floats(0.5, 4.0)


@given(st.floats(0.0, 20.0), gauges, st.floats(20.0, 40.0))
def test_what_one_truss_does_not_take_the_other_does(
    near_ft: float, gauge_ft: float, apart_ft: float
) -> None:
    other_ft = apart_ft - near_ft - gauge_ft
    both = lever_share(near_ft, gauge_ft, apart_ft) + lever_share(other_ft, gauge_ft, apart_ft)
    assert both == pytest.approx(1.0)


@given(widths, curbs, curbs, gauges)
def test_a_vehicle_in_the_middle_is_shared_out_whole(
    clear_ft: float, near_ft: float, far_ft: float, gauge_ft: float
) -> None:
    across, vehicle = road(clear_ft, near_ft=near_ft, far_ft=far_ft), wide(gauge_ft, gauge_ft + 1.0)
    values = shipped_values()
    middle = [shares(across, truss, vehicle, values).middle for truss in ("near", "far")]
    assert sum(middle) == pytest.approx(1.0)


@given(widths, curbs, curbs, gauges)
def test_the_middle_is_never_the_worst_place_and_a_second_lane_adds_load(
    clear_ft: float, near_ft: float, far_ft: float, gauge_ft: float
) -> None:
    # Condition: both vehicles stand between the trusses, so each loads both.
    across, vehicle = road(clear_ft, near_ft=near_ft, far_ft=far_ft), wide(gauge_ft, gauge_ft + 1.0)
    found = shares(across, "near", vehicle, shipped_values())
    assert found.middle <= found.one_lane + 1e-12
    assume(found.two_lanes is not None)
    assert found.two_lanes is not None
    assert found.one_lane < found.two_lanes + 1e-12 < 2.0 * found.one_lane + 1e-12
