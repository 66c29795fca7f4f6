"""L. DeC. Berg, Safe Building (about 1889-92), chapter on rivets, riveting and pins, example IV.

Read at chestofbooks.com/architecture/Safe-Building/Rivets-Riveting-And-Pins-Part-10, -12, -13. A
joint with forces of 28,000, 70,000, 20,000 and 88,000 lb on a pin of 2 3/4 in; bearing 12,000
lb/in2, shear 8,000 lb/in2 of wrought iron and 10,000 of steel. Pounds go through as kips do. The
printed moments of the example (part 14) could not be read.
"""

import numpy as np
import pytest

from eyebar.analysis.pins import PinBearing, pin_beam, resultants
from eyebar.resistance.pins import bearing_stress, shear_stress
from tests.published.printing import printed

PIN_IN = 2.75


@pytest.mark.parametrize(
    ("pounds", "thickness"), [(28000.0, "0.85"), (70000.0, "2.12"), (20000.0, "0.6"),
                              (88000.0, "2.67")],
)
def test_thickness_of_heads_by_bearing(pounds: float, thickness: str) -> None:
    # A head one inch thick is stressed as many times 12,000 lb/in2 as it should be inches thick.
    assert bearing_stress(pounds, PIN_IN, 1.0) / 12000.0 == printed(thickness)


def test_single_shear_of_the_pin() -> None:
    # The print takes an area of 5.939 in2 (5.9396): 5.939 x 8,000 = 47,512 lb.
    area = 1.0 / shear_stress(1.0, PIN_IN)
    assert area == pytest.approx(5.939, abs=0.001)  # cut, not rounded, in print
    assert area * 8000.0 == pytest.approx(47512.0, abs=8.0)


def test_single_shear_of_two_inch_pins() -> None:
    assert 8000.0 / shear_stress(1.0, 2.0) == printed("25133")
    assert 10000.0 / shear_stress(1.0, 2.0) == printed("31416")


def test_greatest_cross_shear_of_the_packing() -> None:
    # Rods E and C in two heads each, B in the middle, as in the print's figure 187: E, C, B, C, E
    # with forces along E's line of 44,000, 32,000, 24,000, 32,000 and 44,000 lb.
    directions = {"E": (1.0, 0.0), "C": (-1.0, 0.0), "B": (-1.0, 0.0)}
    heads = [("E", 0.5), ("C", 0.5), ("B", 1.0), ("C", 0.5), ("E", 0.5)]
    beam = pin_beam(
        directions,
        [PinBearing(bar=bar, along=1.2 * i, thickness=1.0, share=share)
         for i, (bar, share) in enumerate(heads)],
        whole=1.0, pin="A",
    )
    shears = resultants(beam.shears, np.array([88.0, 64.0, 24.0]))
    assert shears.max() * 1000.0 == printed("44000")
