"""What a cross frame of a half-through bridge holds the chord with, by hand."""

import math

import numpy as np
import pytest

from eyebar.resistance.cross_frames import (
    beam_flexibility,
    head_stiffness,
    joint_flexibility,
    lacing_flexibility,
    length_of_equal_column,
    outrigger_flexibility,
    post_flexibility,
)


def test_a_post_is_a_cantilever() -> None:
    # By hand: 1 kip on 80 in, E I = 29,000 x 20: 80^3 / (3 x 580,000) = 0.29425 in.
    assert post_flexibility(80.0, 29_000.0, 20.0) == pytest.approx(0.294253, rel=1e-5)


def test_a_floorbeam_bends_evenly_between_two_moments() -> None:
    # By hand: moments of 90 kip in at both ends of 180 in, E I = 29,000 x 250: each end turns by
    # M b / (2 E I) = 90 x 180 / 14,500,000 = 0.0011172, and the chord moves 90 times that.
    assert beam_flexibility(90.0, 180.0, 29_000.0, 250.0) == pytest.approx(0.1005517, rel=1e-5)


def test_a_joint_that_turns_and_lacing_that_yields() -> None:
    # By hand: 5e-6 x 90 kip in is 0.00045, 90 in above it 0.0405 in; 80 in sheared by 1/400.
    assert joint_flexibility(5e-6, 90.0) == pytest.approx(0.0405)
    assert lacing_flexibility(80.0, 400.0) == pytest.approx(0.2)
    assert head_stiffness(0.5) == 2.0


def test_turns_are_those_of_the_source_in_its_own_units() -> None:
    # By hand: 1 kip in is 4,448.2 N x 25.4 mm = 112,985 N mm; 0.5e-10 x 112,985 = 5.65e-6.
    turn = 0.5e-10 * 4448.222 * 25.4
    assert turn == pytest.approx(5.65e-6, rel=1e-3)


def _by_stiffness_matrix(
    *, foot: float, height: float, spacing: float, area: float, post_area: float, beam: float,
) -> float:
    """Other method: half of the frame, beam elements and bars, solved; its middle cannot turn.

    Directions: chord x; foot of the post: slope; tip of the beam: y, slope; post's head y.
    """
    modulus = 29_000.0
    # Free: 0 head x, 1 head y, 2 slope at the post's foot, 3 tip y, 4 slope at the tip.
    matrix = np.zeros((5, 5))
    long = math.hypot(foot, height)
    cos, sin = -foot / long, height / long  # from the tip up to the head, inwards
    bar = modulus * area / long
    along = np.array([cos, sin, 0.0, -sin, 0.0])
    matrix += bar * np.outer(along, along)
    matrix[1, 1] += modulus * post_area / height
    e_i = modulus * beam
    # The half of the beam between the trusses under even bending: moment = 2 E I / b x turn.
    matrix[2, 2] += 2 * e_i / spacing
    over = np.array([
        [12.0, 6 * foot, -12.0, 6 * foot], [6 * foot, 4 * foot**2, -6 * foot, 2 * foot**2],
        [-12.0, -6 * foot, 12.0, -6 * foot], [6 * foot, 2 * foot**2, -6 * foot, 4 * foot**2],
    ]) * e_i / foot**3
    places = [2, 3, 4]
    matrix[np.ix_(places, places)] += over[1:, 1:]
    return float(np.linalg.solve(matrix, np.array([1.0, 0, 0, 0, 0]))[0])


def test_an_outrigger_against_the_frame_solved() -> None:
    sizes = {"foot": 18.0, "height": 90.0, "spacing": 180.0, "post_area": 4.0}
    ours = outrigger_flexibility(
        height=90.0, head=90.0, length=math.hypot(18.0, 90.0), foot=18.0, modulus=29_000.0,
        outrigger_area=1.5, post_area=4.0, spacing=180.0, beam_inertia=250.0, post_inertia=20.0,
    )
    assert ours == pytest.approx(_by_stiffness_matrix(area=1.5, beam=250.0, **sizes), rel=1e-9)


def test_a_post_that_runs_on_above_its_outrigger() -> None:
    # By hand: a beam on two supports 60 in apart with 30 in beyond: F a^2 (L + a) / (3 E I) of its
    # own, 30^2 x 90 / (3 x 580,000) = 0.046552, and (90/60)^2 times what the outrigger gives.
    sizes = {
        "length": math.hypot(18.0, 60.0), "foot": 18.0, "modulus": 29_000.0,
        "outrigger_area": 1.5, "post_area": 4.0, "spacing": 180.0, "beam_inertia": 250.0,
        "post_inertia": 20.0,
    }
    below = outrigger_flexibility(height=60.0, head=60.0, **sizes)
    assert outrigger_flexibility(height=90.0, head=60.0, **sizes) == pytest.approx(
        2.25 * below + 0.0465517, rel=1e-5
    )


def test_the_equal_column_buckles_at_the_same_push() -> None:
    # By hand: pi^2 x 29,000 x 40 / 240^2 = 198.76 kip.
    assert length_of_equal_column(29_000.0, 40.0, 1.9876, 100.0) == pytest.approx(240.0, rel=1e-4)
