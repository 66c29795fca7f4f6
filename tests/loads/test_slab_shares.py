"""Shares of stringers under a slab on steel, by hand: the formulas are from memory."""

import pytest

from eyebar.loads.slab_shares import edge_share, slab_share
from eyebar.office import office_values

VALUES = office_values()


@pytest.mark.parametrize(("spacing", "share"), [
    # S / 5.5 up to 6 ft, S / (4.0 + 0.25 S) beyond; both are 12 / 11 at 6 ft.
    (2.75, 0.5), (6.0, 12 / 11), (8.0, 8 / 6),
])
def test_the_least_share_of_an_edge_stringer(spacing: float, share: float) -> None:
    assert edge_share(spacing, 5.5, 4.0) == pytest.approx(share)


@pytest.mark.parametrize(("spacing", "span", "lanes", "inside", "share"), [
    # (5 / 9.5)^0.6 = 0.68038, (5 / 15)^0.2 = 0.80274: 0.075 + 0.54617 x 1.02; shear 0.5963.
    (5.0, 15.0, 2, None, 0.63209),
    # (6 / 14)^0.4 = 0.71254, (6 / 15)^0.3 = 0.75966: 0.06 + 0.54129 x 1.02 = 0.61211; shear 0.60.
    # Of one lane 1.2 is inside.
    (6.0, 15.0, 1, None, 0.61211 / 1.2),
    # Shear governs where spans are long: 0.2 + 4 / 12 - (4 / 35)^2.
    (4.0, 40.0, 2, None, 0.52027),
    # An edge stringer 2 ft inside: 0.77 + 2 / 9.1 = 0.98978 of the first.
    (5.0, 15.0, 2, 2.0, 0.98978 * 0.63209),
    # With one lane the standard has the lever rule alone.
    (5.0, 15.0, 1, 2.0, 0.0),
    # Three lanes have the formulas of two.
    (5.0, 15.0, 3, None, 0.63209),
])
def test_what_the_newer_formulas_give(
    spacing: float, span: float, lanes: int, inside: float | None, share: float
) -> None:
    found = slab_share(spacing, span, lanes=lanes, inside_ft=inside, values=VALUES)
    assert found == pytest.approx(share, rel=2e-5)
