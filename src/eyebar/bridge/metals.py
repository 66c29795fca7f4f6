"""What a material of the record is: figures given, coupons tested, or the office's table."""

from dataclasses import replace

from eyebar.bridge.parts import AllowedStress, Material
from eyebar.errors import OutOfRange
from eyebar.materials import characteristic_value, row_names
from eyebar.office import Values
from eyebar.record import MaterialEntry
from eyebar.terms import Metal
from eyebar.units import Quantity

YEAR_UNKNOWN = 0
"""`built` of a material whose year nobody knows."""
POUNDS_PER_KIP = 1000.0
CUBIC_INCHES_PER_CUBIC_FOOT = 1728.0


def material_of(name: str, entry: MaterialEntry, built: int | None, values: Values) -> Material:
    """A material with a source for each figure.

    A figure given in the record comes first, then what coupons prove, then the office's table for
    the metal and its year. A strength that none of them gives is 0, which rates nothing, and so is
    that of steel whose year nobody knows; raises OutOfRange where coupons are too few or scatter
    too much, or where the modulus is unknown.
    """
    year = entry.built or built or YEAR_UNKNOWN
    rows = row_names(entry.metal, year)
    if entry.metal is Metal.STEEL and year == YEAR_UNKNOWN:
        rows = replace(rows, yield_stress="", tensile_strength="")
    sources: dict[str, str] = {}
    coupons = entry.coupons

    def figure(
        what: str, given: Quantity | None, row: str, sample: tuple[Quantity, ...] = ()
    ) -> float:
        if given is not None:
            sources[what] = f"{given}, {entry.source}"
            return given.number
        if sample:
            proven = characteristic_value(
                [one.number for one in sample],
                share=values.number("coupons.share"),
                confidence=values.number("coupons.confidence"),
            )
            of = f", {coupons.source}" if coupons and coupons.source else ""
            sources[what] = proven.sentence + of
            return proven.value
        if not row:
            return 0.0
        sources[what] = values[row].source
        return values.number(row)

    yields = coupons.yield_stress if coupons else ()
    tensile = coupons.tensile if coupons else ()
    modulus = figure("modulus", entry.modulus, rows.modulus)
    if modulus <= 0:
        raise OutOfRange(
            f"modulus of {entry.metal}", "unknown here", "given in the record with its source"
        )
    return Material(
        name=name, metal=entry.metal,
        yield_stress=figure("yield stress", entry.yield_stress, rows.yield_stress, yields),
        tensile_strength=figure("tensile strength", entry.tensile, rows.tensile_strength, tensile),
        modulus=modulus,
        density=_density(entry, rows.density, values, sources),
        sources=sources, coupons=max(len(yields), len(tensile)), built=year,
        allowed=_allowed(entry, sources),
    )


def strength_unknown(material: Material) -> str:
    """The reason for which nothing of this material is rated; empty when there is none."""
    if material.allowed is not None:
        return ""
    if material.yield_stress > 0 and material.tensile_strength > 0:
        return ""
    if material.metal is Metal.STEEL and material.built == YEAR_UNKNOWN:
        return "no year is known for its steel; write 'built' of the material or of the bridge"
    return f"no strength is known here for {material.metal}; give one with its source"


def _allowed(entry: MaterialEntry, sources: dict[str, str]) -> AllowedStress | None:
    """The allowable stresses that the record gives, each with its source; None where none."""
    allowed = entry.allowed
    if allowed is None:
        return None
    figures = {
        "allowed in pull": allowed.pull, "allowed in push": allowed.push,
        "modulus for columns": allowed.column_modulus,
    }
    for what, figure in figures.items():
        if figure is not None:
            sources[what] = f"{figure}, {allowed.source}"
    pull, push, modulus = (
        None if figure is None else figure.number for figure in figures.values()
    )
    return AllowedStress(pull=pull, push=push, column_modulus=modulus, source=allowed.source)


def _density(
    entry: MaterialEntry, row: str, values: Values, sources: dict[str, str]
) -> float:
    """Weight of the metal by volume [lb/in3]."""
    if entry.density is not None:
        sources["density"] = f"{entry.density}, {entry.source}"
        return entry.density.number * POUNDS_PER_KIP
    sources["density"] = values[row].source
    return values.number(row) / CUBIC_INCHES_PER_CUBIC_FOOT
