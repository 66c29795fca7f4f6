"""Pins as beams on their bars: a half pin worked by hand, balance, and loads that are spread."""

import math

import numpy as np
import pytest

from eyebar.analysis.pins import PinBearing, pin_beam, resultants
from eyebar.errors import OutOfRange
from eyebar.resistance.pins import bending_stress, bending_with_shear, shear_stress

PIN = "upstream/L4/pin"
SLANT = math.hypot(10.0, 12.0)


def half_pin() -> tuple[np.ndarray, object]:
    """A half pin with H = +30, -20, -10 and V = +12, -12 kip at 0, 1.25, 2.5, 2.5, 4 in."""
    directions = {
        "A": (1.0, 0.0),
        "B": (-1.0, 0.0),
        "C": (-10.0 / SLANT, 12.0 / SLANT),
        "D": (0.0, -1.0),
    }
    places = {"A": 0.0, "B": 1.25, "C": 2.5, "D": 4.0}
    bearings = [
        PinBearing(bar=bar, along=along, thickness=1.0, share=0.5) for bar, along in places.items()
    ]
    beam = pin_beam(directions, bearings, whole=0.5, pin=PIN)
    return 2.0 * np.array([30.0, 20.0, SLANT, 12.0]), beam


def test_a_half_pin_has_the_moments_and_shears_worked_by_hand() -> None:
    # By hand, running sums from outside. H: 30 x 1.25 = 37.5; 37.5 + 10 x 1.25 = 50.0, then no more
    # horizontal shear. V: 12 x 1.5 = 18.0 at 4.00 in; resultant root(50.0^2 + 18.0^2) = 53.14.
    # Shears 30, 10, 12 kip between the bearings, 0 beyond the last.
    forces, beam = half_pin()
    assert resultants(beam.moments, forces) == pytest.approx([0.0, 37.5, 50.0, 53.1413], abs=1e-4)
    assert resultants(beam.shears, forces) == pytest.approx([30.0, 10.0, 12.0, 0.0], abs=1e-9)


def test_its_stresses_are_those_worked_by_hand_on_a_three_inch_pin() -> None:
    # By hand: 32 x 53.14 / (pi x 27) = 20.05 ksi; 4 x 30 / (pi x 9) = 4.244 ksi;
    # 6 x 53.14 / (27 x 26) + (2.2 x 30 / (9 x 26))^3 = 0.4542 + 0.0224 = 0.4766.
    assert bending_stress(53.1413, 3.0) == pytest.approx(20.05, abs=0.005)
    assert shear_stress(30.0, 3.0) == pytest.approx(4.244, abs=0.0005)
    together = bending_with_shear(53.1413, 30.0, diameter=3.0, yield_stress=26.0)
    assert together == pytest.approx(0.4766, abs=0.0001)


def test_a_load_spread_over_its_bearing_bends_less_where_it_turns_the_moment_back() -> None:
    # By hand: the half of B's 20 kip that lies outwards acts 1/4 in out: 10 x 0.25 = 2.5 kip-in
    # against 37.5, so 35.0.
    forces, beam = half_pin()
    assert resultants(beam.eased, forces)[1] == pytest.approx(35.0)


def test_a_packing_that_leaves_a_bar_out_of_balance_is_refused_with_the_imbalance() -> None:
    bearings = [
        PinBearing(bar="A", along=0.0, thickness=1.0, share=0.5),
        PinBearing(bar="B", along=1.0, thickness=1.0, share=0.25),
    ]
    with pytest.raises(OutOfRange, match=r"share of B .*out of balance by -0\.25"):
        pin_beam({"A": (1.0, 0.0), "B": (-1.0, 0.0)}, bearings, whole=0.5, pin=PIN)


def test_a_single_rod_beside_the_middle_of_a_whole_pin_goes_by_the_lever() -> None:
    # By hand: a rod of 12 kip 2 in from one post and 4 in from the other brings them 8 and 4 kip,
    # and bends the pin by 8 x 2 = 16 kip-in; halves would have told 6 x 2 = 12.
    bearings = [
        PinBearing(bar="post", along=0.0, thickness=0.5, share=0.5),
        PinBearing(bar="rod", along=2.0, thickness=1.0, share=1.0),
        PinBearing(bar="post", along=6.0, thickness=0.5, share=0.5),
    ]
    beam = pin_beam(
        {"rod": (0.0, -1.0), "post": (0.0, 1.0)}, bearings, whole=1.0, pin=PIN,
    )
    forces = np.array([12.0, 12.0])
    assert (beam.loads @ forces)[:, 1] == pytest.approx([8.0, -12.0, 4.0])
    assert resultants(beam.moments, forces) == pytest.approx([0.0, 16.0, 0.0])


def test_a_whole_pin_that_nothing_can_hold_is_refused() -> None:
    bearings = [
        PinBearing(bar="post", along=0.0, thickness=0.5, share=1.0),
        PinBearing(bar="rod", along=2.0, thickness=1.0, share=1.0),
    ]
    with pytest.raises(OutOfRange, match="a moment left beyond its end"):
        pin_beam({"rod": (0.0, -1.0), "post": (0.0, 1.0)}, bearings, whole=1.0, pin=PIN)


def test_forces_on_a_pin_with_its_hung_load_sum_to_zero() -> None:
    # A law: what the bars leave over is the load hung on the pin, so nothing is left beyond the
    # last bearing, whatever the bars' forces.
    directions = {"L3-L4": (-1.0, 0.0), "L4-L5": (1.0, 0.0), "U2-L4": (-0.6, 0.8)}
    bearings = [
        PinBearing(bar="L3-L4", along=0.0, thickness=0.8, share=0.5),
        PinBearing(bar="L4-L5", along=0.9, thickness=0.8, share=0.5),
        PinBearing(bar="U2-L4", along=1.8, thickness=0.6, share=0.5),
        PinBearing(bar="", along=3.0, thickness=1.0, share=0.5),
    ]
    beam = pin_beam(directions, bearings, whole=0.5, pin=PIN)
    forces = np.random.default_rng(4).normal(size=(50, 3)) * 40.0
    assert np.abs(resultants(beam.shears, forces)[:, -1]).max() < 1e-12
