"""Turned boxes: their corners, and whether they touch."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from eyebar.drawings.boxes import Box, TakenGround, strip, touching, upright
from tests.drawings.apart import apart, met

places = st.floats(-60.0, 60.0)
sides = st.floats(0.5, 40.0)
turns = st.floats(-math.pi, math.pi)
boxes = st.builds(
    lambda x, y, along, across, angle: Box(x=x, y=y, along=along, across=across, angle=angle),
    places, places, sides, sides, turns,
)


def test_a_box_turned_by_a_right_angle_stands_upright() -> None:
    # By hand: 6 long and 2 high about (10, 20), turned: 2 wide and 6 high.
    left, top, right, bottom = Box(x=10, y=20, along=3, across=1, angle=math.pi / 2).bounds
    assert (left, top, right, bottom) == pytest.approx((9.0, 17.0, 11.0, 23.0))


def test_the_box_of_a_line_runs_from_end_to_end() -> None:
    # By hand: from (0, 0) to (30, 40) is 50 long, its middle (15, 20).
    box = strip((0.0, 0.0), (30.0, 40.0), 2.0)
    assert (box.x, box.y, box.along, box.across) == pytest.approx((15.0, 20.0, 25.0, 2.0))


@pytest.mark.parametrize(
    ("other", "touch"),
    [
        # By hand, about the box from (0, 0) to (10, 4).
        (upright(10.5, 0, 12, 4), False),
        (upright(9.5, 3, 12, 8), True),
        # The corner of a square of side 2 root 2, turned by an eighth, reaches 2 from its middle.
        (Box(x=12.1, y=2, along=math.sqrt(2), across=math.sqrt(2), angle=math.pi / 4), False),
        (Box(x=11.9, y=2, along=math.sqrt(2), across=math.sqrt(2), angle=math.pi / 4), True),
        # Its bounds overlap, but the slanting side passes the corner (10, 4) on the outside:
        # the corner lies 3 + 0.1 from the line x + y = 18.4 in the direction (1, 1) / root 2.
        (Box(x=11.3, y=7.1, along=9, across=3, angle=-math.pi / 4), False),
    ],
)
def test_boxes_touch_where_they_have_a_point_in_common(other: Box, touch: bool) -> None:
    assert touching(upright(0, 0, 10, 4), other) is touch


@given(boxes, boxes)
def test_touching_is_the_same_by_corners_alone(one: Box, other: Box) -> None:
    # Other method: the separating side found from the corners. A hair of room is left to rounding.
    if apart(one.grown(0.001).corners, other.grown(0.001).corners):
        assert not touching(one, other)
    if not apart(one.corners, other.corners):
        assert touching(one.grown(0.001), other.grown(0.001))


@given(st.lists(boxes, max_size=12), boxes)
def test_ground_is_free_where_nothing_that_was_put_there_touches(
    taken: list[Box], box: Box
) -> None:
    ground = TakenGround()
    ground.take(*taken)
    assert ground.free([box]) is not any(touching(box, one) for one in taken)


def test_a_copy_of_the_ground_is_taken_alone() -> None:
    ground = TakenGround()
    ground.copied().take(upright(0, 0, 1, 1))
    assert ground.free([upright(0, 0, 1, 1)])


def test_the_sweep_finds_each_pair_that_meets() -> None:
    # By hand: a and b overlap, c stands alone.
    named = [
        ("a", upright(0, 0, 10, 4).corners), ("b", upright(9, 3, 12, 8).corners),
        ("c", upright(30, 0, 31, 1).corners),
    ]
    assert met(named[:1], named[1:]) == ["b | a"]
