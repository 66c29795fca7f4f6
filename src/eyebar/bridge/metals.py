"""What a material of the record is: figures given, coupons tested, or the office's table."""

from dataclasses import dataclass, field, replace

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


Wrong = tuple[tuple[str, ...], OutOfRange]
"""(keys below a material, what is wrong there)."""


@dataclass(slots=True, kw_only=True)
class _Figures:
    """The figures of one material as they are found, with their sources, and what is wrong."""

    entry: MaterialEntry
    values: Values
    sources: dict[str, str] = field(default_factory=dict)
    wrong: list[Wrong] = field(default_factory=list)

    def figure(
        self, what: str, given: Quantity | None, row: str, coupons: tuple[Quantity, ...] = ()
    ) -> float:
        """One figure: given, proven by coupons, or the office's; 0 where there is none."""
        if given is not None:
            self.sources[what] = f"{given}, {self.entry.source}"
            return given.number
        if coupons:
            return self._proven(what, [one.number for one in coupons])
        if not row:
            return 0.0
        self.sources[what] = self.values[row].source
        return self.values.number(row)

    def _proven(self, what: str, sample: list[float]) -> float:
        try:
            proven = characteristic_value(
                sample, share=self.values.number("coupons.share"),
                confidence=self.values.number("coupons.confidence"),
            )
        except OutOfRange as refused:
            self.wrong.append((("coupons", what.partition(" ")[0]), refused))
            return 0.0
        source = self.entry.coupons.source if self.entry.coupons else None
        self.sources[what] = proven.sentence + (f", {source}" if source else "")
        return proven.value


def material_of(
    name: str, entry: MaterialEntry, built: int | None, values: Values
) -> tuple[Material, tuple[Wrong, ...]]:
    """A material with a source for each figure, and what is wrong with it.

    A figure given in the record comes first, then what coupons prove, then the office's table for
    the metal and its year. A strength that none of them gives is 0, which rates nothing, and so is
    that of steel whose year nobody knows. Wrong are coupons that are too few or scatter too much,
    and a modulus that is unknown.
    """
    year = entry.built or built or YEAR_UNKNOWN
    rows = row_names(entry.metal, year)
    if entry.metal is Metal.STEEL and year == YEAR_UNKNOWN:
        rows = replace(rows, yield_stress="", tensile_strength="")
    found = _Figures(entry=entry, values=values)
    yields = entry.coupons.yield_stress if entry.coupons else ()
    tensile = entry.coupons.tensile if entry.coupons else ()
    modulus = found.figure("modulus", entry.modulus, rows.modulus)
    if modulus <= 0:
        found.wrong.append(((), OutOfRange(
            f"modulus of {entry.metal}", "unknown here", "given in the record with its source"
        )))
    return Material(
        name=name, metal=entry.metal,
        yield_stress=found.figure("yield stress", entry.yield_stress, rows.yield_stress, yields),
        tensile_strength=found.figure(
            "tensile strength", entry.tensile, rows.tensile_strength, tensile
        ),
        modulus=modulus,
        density=_density(entry, rows.density, values, found.sources),
        sources=found.sources, coupons=max(len(yields), len(tensile)), built=year,
        allowed=_allowed(entry, found.sources),
    ), tuple(found.wrong)


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
