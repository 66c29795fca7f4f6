"""Thin plates: what they leave by hand, and what follows for a column."""

import math
from dataclasses import replace

import pytest

from eyebar.office import shipped_values
from eyebar.resistance.thin_plates import (
    effective_width,
    free_edge_factor,
    idle_area,
    plate_slenderness,
    thin_plate_factor,
    thin_plates,
)
from eyebar.sections.local import PlateStrip, StripKind
from eyebar.sections.properties import properties
from eyebar.sections.shapes import Plate, Rolled, RolledShape
from eyebar.terms import Level, Method
from tests.resistance.bars import COVERED, EVERY_LEVEL, IRON, bar, limits_of

ROOT = math.sqrt(27_900 / 26)
"""sqrt(E / F_y) of iron, 32.758."""
FLANGE = {
    "thick_limit": 0.56, "elastic_limit": 1.03, "first": 1.415, "second": 0.74, "elastic": 0.69
}
LEG = {"thick_limit": 0.45, "elastic_limit": 0.91, "first": 1.34, "second": 0.76, "elastic": 0.53}
COVER = {"carrying": 1.92, "imperfect": 0.38}
IN_PLANE = "column in the plane of the truss"


def test_a_cover_of_fifty_two_thicknesses_is_thin_in_iron() -> None:
    # By hand: 13 / 0.25 = 52 over 1.40 x 32.758 = 45.861 is 1.1339.
    use = plate_slenderness(13.0, 0.25, thick_limit=1.40, modulus=27_900.0, yield_stress=26.0)
    assert use == pytest.approx(1.1339, abs=5e-5)


def test_a_cover_carries_beside_its_rivets_only_where_the_stress_is_high() -> None:
    # By hand: at 20 ksi the limit is 1.40 x sqrt(27900/20) = 52.29, above 52 (the formula gives
    # 13.035); at 1 ksi it is far away; at 26 ksi 1.92 x 0.25 x 32.7579 (1 - 0.38 x 0.25/13 x
    # 32.7579) = 15.7238 x 0.760616 = 11.9597 in.
    sizes = {"modulus": 27_900.0, **COVER}
    assert effective_width(13.0, 0.25, stress=20.0, **sizes) == 13.0
    assert effective_width(13.0, 0.25, stress=1.0, **sizes) == 13.0
    assert effective_width(13.0, 0.25, stress=26.0, **sizes) == pytest.approx(11.9597, abs=5e-5)


@pytest.mark.parametrize(
    ("width", "constants", "part"),
    [
        # By hand, thickness 1/4 in: 18 thicknesses are 0.549 of sqrt(E/F_y), below 0.56; 32 are
        # 0.976865: 1.415 - 0.74 x 0.976865; 40 are 1.221081, elastic: 0.69 / 1.491040; the leg of
        # 21.3333 thicknesses 0.651243: 1.34 - 0.76 x 0.651243.
        (4.5, FLANGE, 1.0),
        (8.0, FLANGE, 0.692120),
        (10.0, FLANGE, 0.462764),
        (21.0 / 4 + 1.0 / 12, LEG, 0.845055),
    ],
)
def test_a_free_edge_brings_the_whole_section_down(
    width: float, constants: dict[str, float], part: float
) -> None:
    found = free_edge_factor(width, 0.25, yield_stress=26.0, modulus=27_900.0, **constants)
    assert found == pytest.approx(part, abs=5e-7)


@pytest.mark.parametrize("constants", [FLANGE, LEG])
def test_the_branches_of_a_free_edge_meet(constants: dict[str, float]) -> None:
    # Law: the standard's rounded constants leave no more than 1 % between the branches.
    for limit in (constants["thick_limit"], constants["elastic_limit"]):
        below, above = (
            free_edge_factor(
                limit * ROOT * part, 1.0, yield_stress=26.0, modulus=27_900.0, **constants
            )
            for part in (1 - 1e-9, 1 + 1e-9)
        )
        assert below == pytest.approx(above, abs=0.01)


def test_idle_plates_and_free_edges_count_together() -> None:
    # By hand: 2 plates lose (13 - 12) x 0.25 each, 0.5 of 10 in2; times 0.9.
    idle = idle_area(2, 13.0, 12.0, 0.25)
    assert thin_plate_factor(0.9, 10.0, idle) == pytest.approx(0.9 * 0.95, rel=1e-12)


def test_a_column_with_a_thin_web_pushes_less_and_says_so() -> None:
    # By hand: web 9.2 in between flanges, 1/8 in: 73.6 thicknesses over 1.49 x 32.758 = 48.81 is
    # 1.51. Other method: the width, Q and the standard's curve written out again.
    beam = Rolled(
        shape=RolledShape.I, number=1, depth=10.0, web=0.125, flange=5.0, flange_thickness=0.4
    )
    shape = properties(beam)
    found = limits_of(bar(beam, length=120.0), Method.LOAD_FACTOR, Level.OPERATING)[IN_PLANE]
    square = (120.0 / shape.r_x) ** 2
    stress = 26 * (1 - 26 * square / (4 * math.pi**2 * 27_900))
    root = math.sqrt(27_900 / stress)
    width = 1.92 * 0.125 * root * (1 - 0.34 * 0.125 / 9.2 * root)
    left = 26 * (1 - (9.2 - width) * 0.125 / shape.area)
    push = 0.85 * left * (1 - left * square / (4 * math.pi**2 * 27_900)) * shape.area
    assert -found.force == pytest.approx(push, rel=1e-12)
    assert left < 25.5
    assert "web: 74 thicknesses wide, 1.51 of what is not thin" in found.remarks


@pytest.mark.parametrize(("method", "level"), EVERY_LEVEL)
def test_thick_plates_take_nothing_away(method: Method, level: Level) -> None:
    # By hand: cover 10 in between the flanges' toes, 1/4 in: 40 thicknesses under 45.9.
    found = limits_of(bar(COVERED), method, level)
    assert not any("thicknesses wide" in remark for one in found.values() for remark in one.remarks)
    thinner = replace(COVERED, cover=Plate(width=11.0, thickness=0.2))
    found = limits_of(bar(thinner), method, level)[IN_PLANE]
    assert "cover plate: 50 thicknesses wide, 1.09 of what is not thin" in found.remarks


def test_a_plate_rusted_away_neither_carries_nor_waves() -> None:
    gone = PlateStrip(name="cover plate", width=10.0, thickness=0.0, kind=StripKind.COVER)
    found = thin_plates(
        [gone], shipped_values(), area=5.0, modulus=IRON.modulus, yield_stress=26.0
    )
    assert found.remarks == ()
    assert found.yields(lambda: 26.0) == 26.0
