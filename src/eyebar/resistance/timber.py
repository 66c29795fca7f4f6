"""Timber of the floor: reference values, and every factor that they are multiplied by.

Each factor has its condition, which is enforced: where it does not hold the factor is 1, or there
is no value. Stresses in ksi. By load factor timber has no rule.
"""

from dataclasses import dataclass

from eyebar.bridge.floor_parts import Timber
from eyebar.errors import NotMeasured, OutOfRange
from eyebar.formula import note
from eyebar.office import Values
from eyebar.resistance.timber_factors import (
    adjusted_across,
    adjusted_bending,
    adjusted_shear,
    allowed_at_level,
    beam_slenderness,
    beam_stability,
    beam_turning_stress,
    effective_beam_length,
    factored_timber,
    modulus_for_stability,
    size_of_timber,
)
from eyebar.terms import Level, Method

BEAMS = "beams and stringers"
LUMBER = "lumber"
LUMBER_UNDER = 4.5
"""Least side [in] from which a stick is a timber (5 in nominal); thinner is lumber."""
THICK_FROM = 3.5
"""Least side [in] from which lumber counts as 4 in thick."""
DRESSED = 0.75
"""How much less than its nominal size a dressed board may measure [in]."""
DEPTHS = (4, 5, 6, 8, 10, 12, 14)
WIDTHS = (4, 5, 6, 8, 10)
SQUARE = 2.0
"""Beams and stringers are deeper than wide by more than this [in]."""
PSI = 1000.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Stick:
    """A stick as it is used: as built `breadth` and `depth` [in] (the size its grade goes by);
    `flat`: on its broad side; `unheld` length of its compressed edge [in]; how many share, how far
    apart [in] (None: it stands alone or is not known)."""

    breadth: float
    depth: float
    flat: bool = False
    unheld: float = 0.0
    left_breadth: float = 0.0
    left_depth: float = 0.0
    sharing: int = 1
    apart: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class TimberStrength:
    """What a stick may bear [ksi]: bending, shear along the grain (not notched), push across."""

    bending: float
    shear: float
    across: float


def timber_strength(
    timber: Timber, stick: Stick, *, method: Method, level: Level, reduction: float,
    shear_reduction: float, values: Values,
) -> TimberStrength:
    """Bending, shear and push across the grain by a method and level.

    Raises NotMeasured where no value is known, OutOfRange for a beam too slender and by load
    factor.
    """
    grade = _Graded(timber, stick, values)
    resistance = method is Method.LOAD_AND_RESISTANCE
    if method is Method.LOAD_FACTOR:
        raise OutOfRange("method", method, "one that has a rule for timber")
    duration = 1.0 if resistance else values.number("timber.duration")
    bending = adjusted_bending(
        grade.value("bending"), duration=duration, wet=grade.wet_bending(), size=grade.size(),
        flat=grade.flat(), incised=grade.factor("incised", "bending"),
        repetitive=grade.repetitive(),
    )
    shear = adjusted_shear(
        grade.value("shear"), duration=duration, wet=grade.factor("wet", "shear"),
        incised=grade.factor("incised", "shear"),
    )
    across = adjusted_across(
        grade.value("across the grain"), wet=grade.factor("wet", "across the grain"),
        incised=grade.factor("incised", "across the grain"),
    )
    if resistance:
        def by(what: str, psi: float, stress: float) -> float:
            row = "format across the grain" if what == "across the grain" else "format"
            effect = "time effect.permit" if level is Level.PERMIT else "time effect"
            return factored_timber(
                psi, values.number(f"timber.{what}.load-and-resistance"),
                conversion=values.number(f"timber.{row}.load-and-resistance"),
                time_effect=values.number(f"timber.{effect}.load-and-resistance"),
                adjusted=stress,
            )
        factored = by("flexure", reduction, bending)
        stability = grade.stability(
            factored / reduction, values.number("timber.buckling.load-and-resistance"),
            grade.modulus(),
        )
        return TimberStrength(
            bending=stability * factored, shear=by("shear", shear_reduction, shear),
            across=by("across the grain", shear_reduction, across),
        )
    times = values.number("timber.operating over inventory") if level is Level.OPERATING else 1.0
    least = modulus_for_stability(grade.modulus(), values.number("timber.scatter of the modulus"))
    stability = grade.stability(bending, 1.20, least)
    return TimberStrength(
        bending=allowed_at_level(times, stability * bending),
        shear=allowed_at_level(times, shear), across=allowed_at_level(times, across),
    )


def class_of(timber: Timber, breadth: float, depth: float) -> str:
    """Which table a stick of this size as built is graded by.

    Raises NotMeasured for posts and timbers, for which there is no table here.
    """
    if min(breadth, depth) < LUMBER_UNDER:
        return LUMBER
    square = max(breadth, depth) <= min(breadth, depth) + SQUARE
    if timber.bending is None and timber.species != "southern pine" and square:
        raise NotMeasured(
            "", f"values of a stick of {breadth:g} in x {depth:g} in, graded as a post,"
        )
    return BEAMS


class _Graded:
    """One stick's values and factors, each asked for once."""

    def __init__(self, timber: Timber, stick: Stick, values: Values) -> None:
        self.timber, self.stick, self.values = timber, stick, values
        self.of_class = class_of(timber, stick.breadth, stick.depth)

    def value(self, what: str) -> float:
        """A reference value [ksi]."""
        given = {
            "bending": self.timber.bending, "shear": self.timber.shear,
            "across the grain": self.timber.across,
        }[what]
        if given is not None:
            return given
        return self.values.number(self._row(what)) / PSI

    def modulus(self) -> float:
        """Modulus of elasticity with its factors [ksi]."""
        given = self.timber.modulus
        whole = self.values.number(self._row("modulus")) if given is None else given
        return whole * self.factor("wet", "modulus") * self.factor("incised", "modulus")

    def _row(self, what: str) -> str:
        row = f"timber.{self.timber.species}.{self.of_class}.{self.timber.grade}.{what}"
        if row not in self.values:
            raise NotMeasured(
                "", f"{what} of {self.timber.species}, {self.timber.grade}, as {self.of_class}:"
                " no value in the office's table, give it with its source;"
            )
        return row

    def factor(self, kind: str, what: str) -> float:
        """Wet service or incising factor of one value [1]; 1 where the timber is neither."""
        if kind == "wet":
            return self.values.number(f"timber.wet.{self.of_class}.{what}") if (
                self.timber.wet) else 1.0
        return self.values.number(f"timber.incised.{what}") if self.timber.incised else 1.0

    def wet_bending(self) -> float:
        """Wet service in bending: weak lumber loses nothing."""
        if self.timber.wet and self.of_class == LUMBER:
            most = self.values.number("timber.wet.lumber.bending not under") / PSI
            if self.value("bending") * self.size() <= most:
                return 1.0
        return self.factor("wet", "bending")

    def size(self) -> float:
        """Size factor [1]."""
        stick = self.stick
        if self.of_class == BEAMS:
            limit = self.values.number("timber.size.deeper than")
            if stick.flat or stick.depth <= limit:
                return 1.0
            return size_of_timber(stick.depth, self.values.number("timber.size.power"))
        if self.timber.species == "southern pine":
            return 1.0
        broad, thick = max(stick.breadth, stick.depth), min(stick.breadth, stick.depth)
        depth = next((one for one in DEPTHS if broad <= one), DEPTHS[-1])
        return self.values.number(f"timber.size.lumber.{depth} in.{_thickness(thick)}")

    def flat(self) -> float:
        """Flat use factor [1], of a stick on its broad side alone."""
        if not self.stick.flat:
            return 1.0
        if self.of_class == BEAMS:
            row = f"timber.flat.{BEAMS}.{self.timber.grade}"
            return self.values.number(row) if row in self.values else min(
                self.values.number(f"timber.flat.{BEAMS}.No. 1"), 1.0)
        broad = max(self.stick.breadth, self.stick.depth)
        thick = min(self.stick.breadth, self.stick.depth)
        width = next((one for one in reversed(WIDTHS) if broad >= one - DRESSED), None)
        if width is None:
            return 1.0
        return self.values.number(f"timber.flat.lumber.{width} in.{_thickness(thick)}")

    def repetitive(self) -> float:
        """Repetitive member factor [1]: thin lumber, three or more, close together under a deck."""
        stick, number = self.stick, self.values.number
        if self.of_class != LUMBER or stick.flat or stick.apart is None:
            return 1.0
        if min(stick.breadth, stick.depth) > number("timber.repetitive.thickest"):
            return 1.0
        if stick.apart > number("timber.repetitive.farthest apart"):
            return 1.0
        few = stick.sharing < number("timber.repetitive.fewest")
        return 1.0 if few else number("timber.repetitive")

    def stability(self, stress: float, coefficient: float, modulus: float) -> float:
        """Beam stability factor [1] by what is left of the stick."""
        stick = self.stick
        breadth = stick.left_breadth or stick.breadth
        depth = stick.left_depth or stick.depth
        if stick.unheld == 0.0 or stick.flat or depth <= breadth:
            return 1.0
        ratio = beam_slenderness(effective_beam_length(stick.unheld, depth), depth, breadth)
        most = self.values.number("timber.most slender beam")
        if ratio > most:
            raise OutOfRange(
                "slenderness ratio of the timber", f"{ratio:.0f}", f"{most:g} at most"
            )
        factor = beam_stability(beam_turning_stress(coefficient, modulus, ratio), stress)
        note("beam stability factor", "C_L", factor, "1")
        return factor


def _thickness(thick: float) -> str:
    return "thick" if thick >= THICK_FROM else "thin"
