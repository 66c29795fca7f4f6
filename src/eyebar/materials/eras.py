"""Which row of the table of strengths a metal falls under when no coupon was tested."""

from dataclasses import dataclass

from eyebar.terms import Metal

STEEL_ERAS = ((1905, "before 1905"), (1936, "1905 to 1936"), (1963, "1936 to 1963"))
"""(year in which the next, stronger era begins, name of the one before it)."""
LAST_STEEL_ERA = "after 1963"


@dataclass(frozen=True, slots=True, kw_only=True)
class RowNames:
    """Names of the office's values for one metal; strengths are empty where no table gives any."""

    yield_stress: str
    tensile_strength: str
    modulus: str
    density: str


def era(built: int) -> str:
    """The era of rolled steel that a year belongs to: `before 1905` ... `after 1963`.

    A year that ends one era and begins the next (1936, 1963) is taken to the older, weaker one.
    Source: Manual for Bridge Evaluation Table 6A.6.2.1-1, from memory.
    """
    if built < STEEL_ERAS[0][0]:
        return STEEL_ERAS[0][1]
    for last, name in STEEL_ERAS[1:]:
        if built <= last:
            return name
    return LAST_STEEL_ERA


def row_names(metal: Metal, built: int) -> RowNames:
    """Names of the rows with a metal's strength, stiffness and weight.

    Cast iron and timber have no strength in any table here: their names are empty, and a record
    that has them in a rated part gives a strength with its source.
    """
    match metal:
        case Metal.WROUGHT_IRON:
            name = str(metal)
        case Metal.STEEL:
            name = f"{metal}.{era(built)}"
        case _:
            name = ""
    return RowNames(
        yield_stress=f"yield.{name}" if name else "",
        tensile_strength=f"tensile.{name}" if name else "",
        modulus=f"modulus.{metal}" if name else "",
        density=f"density.{metal}",
    )
