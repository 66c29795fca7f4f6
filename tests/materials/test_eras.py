"""Which row of the table of strengths a metal falls under."""

import pytest

from eyebar.materials import era, row_names
from eyebar.terms import Metal


@pytest.mark.parametrize(
    ("built", "name"),
    [
        # The four rows of Manual for Bridge Evaluation Table 6A.6.2.1-1, from memory; where two
        # rows share a year the weaker one is the safe side.
        (1880, "before 1905"), (1904, "before 1905"), (1905, "1905 to 1936"),
        (1936, "1905 to 1936"), (1937, "1936 to 1963"), (1963, "1936 to 1963"),
        (1964, "after 1963"), (2020, "after 1963"),
    ],
)
def test_steel_falls_into_the_era_of_its_year(built: int, name: str) -> None:
    assert era(built) == name


def test_wrought_iron_is_one_row_whatever_its_year() -> None:
    assert row_names(Metal.WROUGHT_IRON, 1870) == row_names(Metal.WROUGHT_IRON, 1899)
    assert row_names(Metal.WROUGHT_IRON, 1870).yield_stress == "yield.wrought iron"


@pytest.mark.parametrize("metal", [Metal.CAST_IRON, Metal.TIMBER])
def test_cast_iron_and_timber_have_a_weight_and_no_strength(metal: Metal) -> None:
    names = row_names(metal, 1880)
    assert (names.yield_stress, names.tensile_strength, names.modulus) == ("", "", "")
    assert names.density == f"density.{metal}"
