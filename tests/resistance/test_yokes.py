"""Yokes of hangers, by hand."""

from dataclasses import replace

import pytest

from eyebar.bridge.floor_joined import Yoke
from eyebar.bridge.floor_parts import Hanger
from eyebar.bridge.parts import Material
from eyebar.errors import NotMeasured
from eyebar.office import office_values
from eyebar.resistance import Condition
from eyebar.resistance.floor_rules import Strength, floor_rules
from eyebar.resistance.yokes import yoke_strengths
from eyebar.sections.shapes import Rolled, RolledShape
from eyebar.terms import Level, Metal, Method

VALUES = office_values()
INVENTORY = (Method.ALLOWABLE_STRESS, Level.INVENTORY)
IRON = Material(
    name="iron", metal=Metal.WROUGHT_IRON, yield_stress=26.0, tensile_strength=48.0,
    modulus=27_900.0, density=0.278, sources={},
)
PLATE = Yoke(plate=(6.0, 1.5), section=None, number=1, material=IRON, on_it=6.0)
HANGER = Hanger(
    address="upstream/L4/hanger", truss="upstream", joint="L4", station_ft=0.0, before_ft=15.0,
    behind_ft=15.0, bar=None, apart=8.0, yoke=PLATE, made_of=IRON,
)


def found(hanger: Hanger, by: tuple[Method, Level] = INVENTORY) -> dict[str, Strength]:
    rules = floor_rules(
        *by, system="single bar", values=VALUES,
        condition=Condition(superstructure_condition=7, loss_measured=False),
    )
    return {one.check: one for one in yoke_strengths(hanger, rules, VALUES)}


def test_a_plate_under_a_beam() -> None:
    ours = found(HANGER)
    # Half of the load at each leg, 4 in from the middle; the beam's half spread on 3 in: its middle
    # 1.5 in out: 0.5 (4 - 1.5) = 1.25 in. S = 6 x 1.5^2 / 6 = 2.25 in3.
    assert ours["bending of the yoke"].divisor == pytest.approx(2.25 / 1.25)
    assert ours["bending of the yoke"].capacity == pytest.approx(0.55 * 26.0)
    assert ours["shear of the yoke"].divisor == pytest.approx(2 * 9.0)
    assert ours["shear of the yoke"].capacity == pytest.approx(0.33 * 26.0)


def test_by_load_factor_a_plate_reaches_its_plastic_moment() -> None:
    ours = found(HANGER, (Method.LOAD_FACTOR, Level.OPERATING))
    assert ours["bending of the yoke"].divisor == pytest.approx(1.5 * 2.25 / 1.25)
    assert ours["bending of the yoke"].capacity == pytest.approx(26.0)


def test_a_beam_whose_width_nobody_measured_lies_on_its_yoke_as_an_edge() -> None:
    ours = found(replace(HANGER, yoke=replace(PLATE, on_it=None)))
    assert ours["bending of the yoke"].divisor == pytest.approx(2.25 / 2.0)


def test_two_rolled_beams_as_a_yoke() -> None:
    joist = Rolled(
        shape=RolledShape.CHANNEL, number=1, depth=4.0, web=0.25, flange=1.6, flange_thickness=0.3
    )
    ours = found(replace(HANGER, yoke=replace(PLATE, plate=None, section=joist, number=2)))
    inertia = 1.6 * 4.0**3 / 12 - (1.6 - 0.25) * 3.4**3 / 12
    assert ours["bending of the yoke"].divisor == pytest.approx(2 * inertia / 2.0 / 1.25)
    assert ours["shear of the yoke"].divisor == pytest.approx(2 * 2 * 4.0 * 0.25)


def test_a_yoke_of_which_something_was_not_measured_is_not_rated() -> None:
    with pytest.raises(NotMeasured, match="distance of its legs"):
        found(replace(HANGER, apart=None))
    with pytest.raises(NotMeasured, match="thickness of the yoke"):
        found(replace(HANGER, yoke=replace(PLATE, plate=(6.0, None))))
    assert not found(replace(HANGER, yoke=None))
