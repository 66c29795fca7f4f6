import numpy as np
import pytest

from eyebar.analysis.places import panel_loads, places
from eyebar.errors import OutOfRange
from eyebar.terms import Direction
from tests.analysis.oracles import axles_at, road_loads
from tests.analysis.solving import FORWARD
from tests.analysis.trusses import countered, double_intersection

EVEN = np.arange(0.0, 61.0, 15.0)
UNEVEN = np.array([0.0, 12.5, 30.0, 44.0, 60.0])


def test_an_axle_between_two_joints_is_shared_as_on_a_simple_beam() -> None:
    # By hand: 12 kip 5 ft from one end of a 15 ft stringer: 8 and 4 kip.
    loads = panel_loads(np.array([[20.0]]), np.array([12.0]), EVEN)
    assert loads.tolist() == [[0.0, pytest.approx(8.0), pytest.approx(4.0), 0.0, 0.0]]


@pytest.mark.parametrize("at", [-0.001, -20.0, 60.001, 300.0])
def test_an_axle_off_the_span_loads_nothing(at: float) -> None:
    assert not panel_loads(np.array([[at]]), np.array([12.0]), EVEN).any()


def test_an_axle_over_a_joint_loads_it_alone() -> None:
    loads = panel_loads(np.array([[0.0], [30.0], [60.0]]), np.array([12.0]), EVEN)
    assert loads.tolist() == [[12, 0, 0, 0, 0], [0, 0, 12, 0, 0], [0, 0, 0, 0, 12]]


@pytest.mark.parametrize("way", list(Direction))
@pytest.mark.parametrize("stations", [EVEN, UNEVEN])
def test_panel_loads_are_those_added_up_axle_by_axle(
    stations: np.ndarray, way: Direction
) -> None:
    axles, spacings = (8.0, 17.0, 17.0, 5.5), (10.0, 4.0, 21.0)
    drawing = double_intersection(pitches=(np.diff(stations) * 12.0).tolist() * 2 + [100.0] * 2)
    for front in np.random.default_rng(1).uniform(-40.0, 140.0, 30):
        on = axles_at(axles, spacings, float(front), FORWARD[way])
        by_axle = list(road_loads(drawing, on).values())
        at_once = panel_loads(
            np.array([[at for _, at in on]]), np.array(axles), drawing.stations_ft
        )[0]
        assert at_once == pytest.approx(by_axle, abs=1e-9)


def test_every_axle_stands_over_every_joint_once_going_up() -> None:
    # By hand: the rear axle, 14 ft behind, is over a joint when the front is 14 ft past it.
    fronts = places((6.0, 24.0), (14.0,), EVEN, Direction.UP).front_ft
    assert fronts.tolist() == [0, 14, 15, 29, 30, 44, 45, 59, 60, 74]


def test_going_down_the_train_lies_behind_on_higher_stations() -> None:
    stand = places((6.0, 24.0), (14.0,), EVEN, Direction.DOWN)
    assert stand.front_ft.tolist() == [-14, 0, 1, 15, 16, 30, 31, 45, 46, 60]
    # By hand: front over station 16, 1 ft past 15 of 15, and the rear over 30.
    row = stand.front_ft.tolist().index(16.0)
    assert stand.loads[row] == pytest.approx([0.0, 6.0 * 14 / 15, 6.0 / 15 + 24.0, 0.0, 0.0])


def test_one_axle_alone_stands_over_each_joint() -> None:
    stand = places((26.0,), (), UNEVEN, Direction.UP)
    assert stand.front_ft.tolist() == UNEVEN.tolist()
    assert stand.loads.tolist() == (26.0 * np.eye(5)).tolist()


@pytest.mark.parametrize("way", list(Direction))
@pytest.mark.parametrize("spread", [14.0, (14.0, 30.0), (14.0, 14.0)])
@pytest.mark.parametrize("stations", [EVEN, UNEVEN])
def test_between_neighbours_panel_loads_are_straight(
    stations: np.ndarray, spread: float | tuple[float, float], way: Direction
) -> None:
    # Law: half-way between two neighbours on a line each joint's load is their mean; but for the
    # end joints, which are supports, and from which an axle goes off the span at once.
    axles = np.array([8.0, 32.0, 32.0])
    stand = places(axles.tolist(), (14.0, spread), stations, way)
    together = np.flatnonzero(stand.line[:-1] == stand.line[1:])
    front = 0.5 * (stand.front_ft[together] + stand.front_ft[together + 1])
    apart = 0.5 * (stand.spacing_ft[together] + stand.spacing_ft[together + 1])
    for row, at, gaps in zip(together, front, apart, strict=True):
        behind = np.concatenate([[0.0], np.cumsum(gaps)])
        middle = panel_loads((at - FORWARD[way] * behind)[None], axles, stations)[0]
        mean = 0.5 * (stand.loads[row] + stand.loads[row + 1])
        assert middle[1:-1] == pytest.approx(mean[1:-1], abs=1e-9)


@pytest.mark.parametrize("way", list(Direction))
def test_a_varied_spacing_takes_its_ends_and_what_puts_another_axle_over_a_joint(
    way: Direction,
) -> None:
    stand = places((8.0, 32.0, 32.0), (14.0, (14.0, 30.0)), EVEN, way)
    spreads = stand.spacing_ft[:, 1]
    assert spreads.min() == 14.0
    assert spreads.max() == 30.0
    inside = (spreads > 14.0) & (spreads < 30.0)
    assert inside.any()
    # At any spacing between, the rear axle and one ahead of it are both over joints.
    for row in np.flatnonzero(inside):
        behind = np.concatenate([[0.0], np.cumsum(stand.spacing_ft[row])])
        at = stand.front_ft[row] - FORWARD[way] * behind
        over = [np.abs(EVEN - x).min() < 1e-6 for x in at]
        assert over[2]
        assert over[0] or over[1]


def test_the_first_spacing_may_be_the_one_that_varies() -> None:
    # By hand, on one panel of 10 ft: front over 0 or 10, rear over 0 or 10, at 4 and at 12 ft.
    stand = places((1.0, 2.0), ((4.0, 12.0),), np.array([0.0, 10.0]), Direction.UP)
    seen = {
        (round(x, 6), round(s, 6))
        for x, (s,) in zip(stand.front_ft.tolist(), stand.spacing_ft.tolist(), strict=True)
    }
    assert seen == {
        (0, 4), (4, 4), (10, 4), (14, 4), (0, 12), (10, 12), (12, 12), (22, 12), (10, 10),
    }


def test_only_one_spacing_may_vary() -> None:
    with pytest.raises(OutOfRange, match="number of spacings that vary is 2"):
        places((1.0, 1.0, 1.0), ((4.0, 5.0), (4.0, 5.0)), EVEN, Direction.UP)


def test_places_nearer_than_rounding_are_one() -> None:
    # Axles exactly a panel apart: both are over joints at once.
    stand = places((10.0, 10.0), (15.0,), EVEN, Direction.UP)
    assert stand.front_ft.tolist() == [0, 15, 30, 45, 60, 75]


def test_the_road_begins_at_the_first_floor_joint() -> None:
    assert countered().stations_ft.tolist() == [15.0 * i for i in range(11)]
