"""Thin plates in push: what the waves that a plate throws take from the column it belongs to.

A plate held on one edge brings down the whole section's stress (Q_s); of one held on both edges a
strip beside each edge goes on carrying (effective width, Q_a). Their product Q stands beside the
yield stress in all three methods' columns, and in bending where such a plate is compressed.
"""

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass

from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.sections.local import Held, PlateStrip

MODULUS = Symbol("modulus of elasticity of the metal", "ksi", "modulus", low=2.5e4, high=3.0e4)
YIELD = Symbol("yield stress", "ksi", "yield_stress", low=20.0, high=50.0)
WIDTH = Symbol("width of the plate", "in", "width", low=2.0, high=24.0)
THICKNESS = Symbol("thickness of a plate or a bar", "in", "thickness", low=0.15, high=0.6)
AREA = Symbol("area of the section", "in2", "area", low=5.0, high=60.0)
THIN_PLATES = (
    "Specification for Structural Steel Buildings (2010) E7, LRFD Bridge Design Specifications "
    "6.9.4.2, from memory"
)


@formula(
    "u = b / t / (k * sqrt(E / F_y))",
    result=Symbol("width over thickness of a plate, over the greatest that is not thin", "1"),
    b=WIDTH,
    t=THICKNESS,
    k=Symbol("greatest width over thickness, over sqrt(E / F_y)", "1", "thick_limit", low=0.45,
             high=1.86),
    E=MODULUS,
    F_y=YIELD,
    source="LRFD Bridge Design Specifications 6.9.4.2, from memory",
)
def plate_slenderness(
    width: float, thickness: float, *, thick_limit: float, modulus: float, yield_stress: float
) -> float:
    """How far a plate uses up the slenderness that a plate may have, 1 at the limit [1].

    Lengths [in], limit [1], modulus, yield stress [ksi]. Scalars. Limits: none.
    """
    return width / thickness / (thick_limit * math.sqrt(modulus / yield_stress))


@formula(
    "Q_s = 1 if b / t * sqrt(F_y / E) <= k else (min(1, a - c * b / t * sqrt(F_y / E))"
    " if b / t * sqrt(F_y / E) < k_2 else m * E / (F_y * (b / t)**2))",
    result=Symbol("part of the yield stress that a plate held on one edge leaves", "1"),
    b=WIDTH,
    t=THICKNESS,
    F_y=YIELD,
    E=MODULUS,
    k=Symbol("greatest width over thickness, over sqrt(E / F_y)", "1", "thick_limit", low=0.45,
             high=0.6),
    k_2=Symbol("the same where the plate waves elastically", "1", "elastic_limit", low=0.9,
               high=1.1),
    a=Symbol("first constant of the straight line", "1", "first", low=1.34, high=1.415),
    c=Symbol("second constant of the straight line", "1", "second", low=0.72, high=0.78),
    m=Symbol("constant of the elastic plate", "1", "elastic", low=0.5, high=0.7),
    source=THIN_PLATES,
)
def free_edge_factor(
    width: float, thickness: float, *, yield_stress: float, modulus: float, thick_limit: float,
    elastic_limit: float, first: float, second: float, elastic: float,
) -> float:
    """Part of the yield stress that a plate held on one edge leaves to its section [1].

    Lengths [in], yield stress, modulus [ksi], constants [1]. Scalars. Limits: none.
    """
    slenderness = width / thickness * math.sqrt(yield_stress / modulus)
    if slenderness <= thick_limit:
        return 1.0
    if slenderness < elastic_limit:
        return min(1.0, first - second * slenderness)
    return elastic * modulus / (yield_stress * (width / thickness) ** 2)


@formula(
    "b_e = b if b / t <= 2 * d * sqrt(E / f)"
    " else min(b, c * t * sqrt(E / f) * (1 - d * t / b * sqrt(E / f)))",
    result=Symbol("width of a plate that goes on carrying", "in"),
    b=WIDTH,
    t=THICKNESS,
    E=MODULUS,
    f=Symbol("stress of the column were its plates thick", "ksi", "stress", low=5.0, high=50.0),
    c=Symbol("constant of the carrying width", "1", "carrying", low=1.9, high=2.4),
    d=Symbol("constant of its imperfections", "1", "imperfect", low=0.3, high=0.4),
    source=THIN_PLATES + "; the whole width as soon as the formula itself gives it, at 1.48 "
    "sqrt(E / f) for the standard's 1.49",
)
def effective_width(
    width: float, thickness: float, *, modulus: float, stress: float, carrying: float,
    imperfect: float,
) -> float:
    """Width that goes on carrying of a plate held on both edges [in].

    Lengths [in], modulus, stress [ksi], constants [1]. Scalars. Limits: none.
    """
    root = math.sqrt(modulus / stress)
    if width / thickness <= 2 * imperfect * root:
        return width
    return min(width, carrying * thickness * root * (1 - imperfect * thickness / width * root))


@formula(
    "A_l = n * (b - b_e) * t",
    result=Symbol("area of plates that carries no more", "in2"),
    n=Symbol("plates alike", "1", "number", low=1.0, high=4.0),
    b=WIDTH,
    b_e=Symbol("width that goes on carrying", "in", "carrying_width", low=0.5, high=2.0),
    t=THICKNESS,
    source="definition",
)
def idle_area(number: float, width: float, carrying_width: float, thickness: float) -> float:
    """Area of like plates that carries no more [in2].

    Number [1], lengths [in]; scalars or arrays. Limits: none.
    """
    return number * (width - carrying_width) * thickness


@formula(
    "Q = Q_s * (A - A_l) / A",
    result=Symbol("part of the yield stress that thin plates leave to the section", "1"),
    Q_s=Symbol("part left by plates held on one edge", "1", "free_edge", low=0.3, high=1.0),
    A=AREA,
    A_l=Symbol("area that carries no more", "in2", "idle", low=0.0, high=4.0),
    source=THIN_PLATES,
)
def thin_plate_factor(free_edge: float, area: float, idle: float) -> float:
    """Part of the yield stress that its thin plates leave to a section [1].

    Factor [1], areas [in2]; scalars or arrays. Limits: area above 0.
    """
    return free_edge * (area - idle) / area


@formula(
    "F_q = Q * F_y",
    result=Symbol("yield stress as its thin plates leave it", "ksi"),
    Q=Symbol("part that thin plates leave", "1", "part", low=0.3, high=1.0),
    F_y=YIELD,
    source=THIN_PLATES,
)
def reduced_yield(part: float, yield_stress: float) -> float:
    """Yield stress that a section with thin plates is reckoned with [ksi].

    Part [1], yield stress [ksi]; scalars or arrays. Limits: none.
    """
    return part * yield_stress


_ONE = ("elastic limit", "first", "second", "elastic")
_BOTH = ("carrying", "imperfect")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Thin:
    """A plate beyond the limit of its kind, and the constants that then hold."""

    plate: PlateStrip
    limit: float
    later: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ThinPlates:
    """The plates of a section that wave before its metal yields; [in2], [ksi]."""

    area: float
    modulus: float
    yield_stress: float
    free: tuple[_Thin, ...] = ()
    held: tuple[_Thin, ...] = ()
    remarks: tuple[str, ...] = ()

    def yields(self, stress: Callable[[], float]) -> float:
        """Yield stress that is left to the section [ksi], were thick plates to fail at `stress()`.

        Without thin plates it is the metal's own.
        """
        if not (self.free or self.held):
            return self.yield_stress
        one_edge = min((self._free_edge(one) for one in self.free), default=1.0)
        failing = stress() if self.held else 0.0
        idle = math.fsum(self._idle(one, failing) for one in self.held)
        return reduced_yield(thin_plate_factor(one_edge, self.area, idle), self.yield_stress)

    def _free_edge(self, thin: _Thin) -> float:
        elastic_limit, first, second, elastic = thin.later
        return free_edge_factor(
            thin.plate.width, thin.plate.thickness, yield_stress=self.yield_stress,
            modulus=self.modulus, thick_limit=thin.limit, elastic_limit=elastic_limit, first=first,
            second=second, elastic=elastic,
        )

    def _idle(self, thin: _Thin, stress: float) -> float:
        plate, (carrying, imperfect) = thin.plate, thin.later
        width = effective_width(
            plate.width, plate.thickness, modulus=self.modulus, stress=stress, carrying=carrying,
            imperfect=imperfect,
        )
        return idle_area(plate.number, plate.width, width, plate.thickness)


def thin_plates(
    plates: Iterable[PlateStrip], values: Values, *, area: float, modulus: float,
    yield_stress: float,
) -> ThinPlates:
    """Those of the plates that are thinner than the standards' limit, and a remark on each.

    A plate of no thickness is no plate: it carries nothing and waves at nothing.
    """
    free: list[_Thin] = []
    held: list[_Thin] = []
    remarks: list[str] = []
    for plate in plates:
        if plate.thickness <= 0.0:
            continue
        limit = values.number(f"plate.{plate.kind}.limit")
        use = plate_slenderness(
            plate.width, plate.thickness, thick_limit=limit, modulus=modulus,
            yield_stress=yield_stress,
        )
        if use > 1.0:
            thin = _Thin(plate=plate, limit=limit, later=_later(plate, values))
            (free if plate.held is Held.ONE else held).append(thin)
            remarks.append(
                f"{plate.name}: {plate.width / plate.thickness:.0f} thicknesses wide, "
                f"{use:.2f} of what is not thin"
            )
    return ThinPlates(
        area=area, modulus=modulus, yield_stress=yield_stress, free=tuple(free),
        held=tuple(held), remarks=tuple(remarks),
    )


def _later(plate: PlateStrip, values: Values) -> tuple[float, ...]:
    names = _BOTH if plate.held is Held.BOTH else _ONE
    return tuple(values.number(f"plate.{plate.kind}.{name}") for name in names)
