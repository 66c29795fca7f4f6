"""How much of a pin's strength the forces of its bars take, all at one place of the load.

Each check is the greatest resultant of rows of the forces, or a sum of powers of such: it is convex
in the forces, and 1 is its limit.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from eyebar.analysis.model import Floats
from eyebar.analysis.pins import PinBeam, PinBearing, pin_beam, resultants
from eyebar.bridge.parts import Packed, Pin
from eyebar.formula import note
from eyebar.office import Values
from eyebar.resistance.limit import Condition
from eyebar.resistance.pins import (
    bearing_resistance,
    bearing_stress,
    bending_stress,
    bending_with_shear,
    shear_stress,
)
from eyebar.resistance.rules import rules
from eyebar.sections.shapes import Rod, Rods, RodShape
from eyebar.terms import Level, Method

BENDING, SHEAR, TOGETHER = (
    "bending of the pin", "shear of the pin", "bending and shear of the pin together"
)
METHODS = (Method.ALLOWABLE_STRESS, Method.LOAD_AND_RESISTANCE)
"""By load factor there is no rule for pins."""


MOST_TRIALS = 60
CLOSE, TINY = 4e-15, 1e-290
"""Trials end where a sum of ratios is so near 1; least size that is divided by."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PinRules:
    """What a method and level let a pin take: parts of the yield stress by allowable stress; by
    load and resistance the greatest sum, and the product of condition and system factor."""

    method: Method
    bending: float = 1.0
    shear: float = 1.0
    bearing: float = 1.0
    together: float = 1.0
    reduction: float = 1.0
    spread: bool = False
    """True where loads count as spread over their bearings."""


def pin_rules(
    method: Method, level: Level, *, values: Values, condition: Condition
) -> PinRules:
    """The numbers of a method and level for pins."""
    spread = values.text("pin.loads") != "middle of bearings"
    if method is Method.ALLOWABLE_STRESS:
        return PinRules(
            method=method, spread=spread, bending=values.number(f"pin.bending.{level}"),
            shear=values.number(f"pin.shear.{level}"),
            bearing=values.number(f"pin.bearing.{level}"),
        )
    single = Rods(rods=(Rod(shape=RodShape.ROUND, size=None),))
    reduction = rules(method, level, values=values, condition=condition, section=single).reduction
    return PinRules(
        method=method, spread=spread, reduction=reduction,
        together=values.number("pin.bending with shear.load-and-resistance"),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class PinRows:
    """A pin as rows of the forces (b,) of its `bars`, at its k bearings from the outer end.

    `moments`, `eased`, `shears` (just beyond each), `loads` (k, 2, b), as in PinBeam.
    """

    pin: Pin
    bars: tuple[str, ...]
    moments: Floats
    eased: Floats
    shears: Floats
    loads: Floats


def pin_rows(pin: Pin) -> PinRows:
    """The rows of a pin. Raises OutOfRange where its packing is out of balance."""
    beam = _beam(pin)
    along = np.array([one.along for one in beam.bearings])
    first = np.flatnonzero(np.diff(along, prepend=-1.0))
    last = np.append(first[1:], len(along)) - 1
    eased = np.add.reduceat(beam.eased - beam.moments, first)
    return PinRows(
        pin=pin, bars=beam.bars, moments=beam.moments[first], shears=beam.shears[last],
        eased=beam.moments[first] + eased, loads=np.add.reduceat(beam.loads, first),
    )


def _beam(pin: Pin) -> PinBeam:
    return pin_beam(
        dict(pin.toward),
        [
            # Half of what stands across the middle lies outwards of it, at a quarter of its
            # thickness: eased as a load is that is spread over twice as much.
            PinBearing(
                bar=bar, along=one.along, share=one.share,
                thickness=2.0 * one.thickness if one.middle else one.thickness,
            )
            for one in pin.packing
            for bar in (*one.bars, *(("",) if one.hung else ()))
        ],
        whole=pin.whole, pin=pin.address,
    )


def bears_on(one: Packed) -> float:
    """The thickness on which a bearing's share of the force bears [in]."""
    left = one.thickness - one.worn
    return left / 2.0 if one.middle else left


@dataclass(frozen=True, slots=True, kw_only=True)
class PinCheck:
    """All checks of a pin by one method and level as one convex function of its bars' forces.

    `rows` (2 s, b): horizontal and upright parts of s resultants as parts of their limits: k
    moments, k shears, k bearings.
    """

    rules: PinRules
    rows: Floats

    def __call__(self, forces: Floats) -> Floats:
        """(...) the greatest ratio under forces (..., b)."""
        size = self._squares(forces.reshape(-1, forces.shape[-1]))
        if self.rules.method is Method.ALLOWABLE_STRESS:
            greatest = np.sqrt(size.max(axis=0))
        else:
            k = len(size) // 3
            joint = self._joint(np.sqrt(size[: 2 * k])).max(axis=0)
            greatest = np.maximum(joint, np.sqrt(size[2 * k :].max(axis=0)))
        shaped: Floats = greatest.reshape(forces.shape[:-1])
        return shaped

    def ratios(self, forces: Floats) -> Floats:
        """(..., s) each resultant as part of its limit; by load and resistance (..., 2 k): bending
        and shear together at each bearing, and bearing."""
        size = np.sqrt(self._squares(forces.reshape(-1, forces.shape[-1])))
        if self.rules.method is not Method.ALLOWABLE_STRESS:
            k = len(size) // 3
            size = np.concatenate([self._joint(size[: 2 * k]), size[2 * k :]])
        shaped: Floats = size.T.reshape(*forces.shape[:-1], len(size))
        return shaped

    def counting(self, most: Floats) -> NDArray[np.bool_]:
        """(s,) which resultants, none of them over `most` (s,), may bring the check to 1."""
        counts: NDArray[np.bool_] = most >= 1.0
        if self.rules.method is not Method.ALLOWABLE_STRESS:
            k = len(most) // 3
            joint = self._joint(most[: 2 * k, None])[:, 0] >= 1.0
            counts[: 2 * k] = np.concatenate([joint, joint])
            counts[k : 2 * k - 1] |= joint[1:]
        return counts

    def _squares(self, forces: Floats) -> Floats:
        """(s, q) squares of the resultants; rows first, so that what is done point by point runs
        along the memory."""
        both = self.rows @ forces.T
        half = len(both) // 2
        np.square(both, out=both)
        square: Floats = both[:half]
        square += both[half:]
        return square

    def _joint(self, size: Floats) -> Floats:
        """(k, q) bending and shear together from moments and shears (2 k, q).

        Far over the limit, where shear alone is over 1, its third power goes on along its tangent:
        no passage changes by that, and the sum stays convex and of the forces' own size.
        """
        k = len(size) // 2
        shear = size[k:]
        beside = shear.copy()
        np.maximum(shear[1:], shear[:-1], out=beside[1:])
        inner = np.minimum(beside, 1.0)
        joint: Floats = (size[:k] + inner**2 * inner + 3.0 * (beside - inner)) / self.rules.together
        return joint

    def passed(self, first: Floats, change: Floats, part: Floats) -> Floats:
        """(h,) how far from forces `first` (h, b), that change by (h, b), the greatest ratio comes
        to 1, being under it at the first and not at `part` (h,) of the way."""
        begin = (self.rows @ first.T).reshape(2, -1, len(first))
        grown = (self.rows @ change.T).reshape(2, -1, len(first))
        # A square of size along the way, by powers of the part.
        powers = (begin**2).sum(axis=0), (begin * grown).sum(axis=0), (grown**2).sum(axis=0)
        if self.rules.method is Method.ALLOWABLE_STRESS:
            first_whole: Floats = _whole(*powers).min(axis=0)
            return first_whole
        k = len(powers[0]) // 3
        bear = _whole(*(one[2 * k :] for one in powers)).min(axis=0)
        both = [one[: 2 * k] for one in powers]
        return self._sum_whole((both[0], both[1], both[2]), np.minimum(part, bear))

    def _sum_whole(self, powers: tuple[Floats, Floats, Floats], part: Floats) -> Floats:
        """(h,) where bending and shear together come to 1, at `part` or before; squares of moments
        and shears by powers (2 k, h). The sum is convex: a tangent to it comes to 1 nearer, and
        never before."""
        begin, half, square = powers
        k, column = len(begin) // 2, np.arange(len(part))
        for _ in range(MOST_TRIALS):
            slope = half + part * square
            size = np.sqrt(begin + part * (half + slope))
            joint = self._joint(size)
            row = joint.argmax(axis=0)
            over = joint[row, column] - 1.0
            if over.max() <= CLOSE:
                break
            outer = k + row - ((row > 0) & (size[k + row - 1, column] > size[k + row, column]))
            shear = size[outer, column]
            rise = slope[row, column] / np.maximum(size[row, column], TINY)
            rise += 3.0 * np.minimum(shear, 1.0) ** 2 * (
                slope[outer, column] / np.maximum(shear, TINY)
            )
            beyond = over > CLOSE
            step = over * self.rules.together / np.where(beyond, rise, 1.0)
            part = part - np.where(beyond, step, 0.0)
        return part

    def reach(self, forces: Floats) -> Floats:
        """(...) sizes of forces (..., b): while the sizes of forces together are not over 1, the
        check of their sum is not.

        By load and resistance shear counts by its third power, which is under itself while it is
        under 1: here it counts as it is.
        """
        if self.rules.method is Method.ALLOWABLE_STRESS:
            return self(forces)
        size = np.sqrt(self._squares(forces))
        k = len(size) // 3
        joint = (size[:k].max(axis=0) + size[k : 2 * k].max(axis=0)) / self.rules.together
        greater: Floats = np.maximum(joint, size[2 * k :].max(axis=0))
        return greater


def _whole(begin: Floats, half: Floats, square: Floats) -> Floats:
    """(s, h) how far resultants come to 1 whose squares are begin + 2 half p + square p^2, and
    under 1 at the beginning; infinity where they do not."""
    left = 1.0 - begin
    root = np.sqrt(half**2 + square * left)
    with np.errstate(divide="ignore", invalid="ignore"):
        # Of the two ways to write it, that in which nothing of like size is taken away.
        far: Floats = np.where(half > 0.0, left / (root + half), (root - half) / square)
    far[square == 0.0] = np.inf
    return far


def pin_check(rows: PinRows, by: PinRules) -> PinCheck:
    """The checks of a pin by one method and level."""
    pin, d = rows.pin, rows.pin.diameter
    moments = rows.eased if by.spread else rows.moments
    fy = pin.material.yield_stress
    thick = np.array([bears_on(one) for one in pin.packing])
    least = np.array([one.yield_stress for one in pin.packing])
    if by.method is Method.ALLOWABLE_STRESS:
        bend = bending_stress(1.0, d) / (by.bending * fy)
        cut = shear_stress(1.0, d) / (by.shear * fy)
        bear = bearing_stress(1.0, d, 1.0) / (by.bearing * least * thick)
    else:
        bend = bending_with_shear(1.0, 0.0, diameter=d, yield_stress=fy) / by.reduction
        cut = np.cbrt(bending_with_shear(0.0, 1.0, diameter=d, yield_stress=fy)) / by.reduction
        bear = 1.0 / (by.reduction * bearing_resistance(1.0, d, 1.0) * thick * least)
    every = np.concatenate([bend * moments, cut * rows.shears, bear[:, None, None] * rows.loads])
    return PinCheck(rules=by, rows=np.concatenate([every[:, 0], every[:, 1]]))


def check_name(rows: PinRows, by: PinRules, number: int) -> str:
    """What the resultant of a number (`PinCheck.ratios`) is called."""
    k = len(rows.pin.packing)
    firsts = (BENDING, SHEAR) if by.method is Method.ALLOWABLE_STRESS else (TOGETHER,)
    group, place = divmod(number, k)
    if group < len(firsts):
        return firsts[group]
    return f"bearing of {rows.pin.packing[place].name} on the pin"


def worked(rows: PinRows, by: PinRules, forces: Floats, check: str) -> float:
    """The ratio of one check under forces (b,), by its formulas, told to a recorder."""
    pin, fy = rows.pin, rows.pin.material.yield_stress
    for bar, force in zip(rows.bars, forces.tolist(), strict=True):
        note(f"force of {bar}", "", force, "kip")
    moments = resultants(rows.moments, forces)
    eased, shears = resultants(rows.eased, forces), resultants(rows.shears, forces)
    note("greatest moment, loads at the middle of their bearings", "M", float(moments.max()),
         "kip in")
    note("greatest moment, loads spread over their bearings", "Me", float(eased.max()), "kip in")
    counted = eased if by.spread else moments
    if check == BENDING:
        stress = bending_stress(float(counted.max()), pin.diameter)
        return stress / (by.bending * fy)
    if check == SHEAR:
        return shear_stress(float(shears.max()), pin.diameter) / (by.shear * fy)
    if check == TOGETHER:
        return _together(pin, by, counted, shears)
    return max(
        _bearing(pin, by, one, float(force))
        for one, force in zip(pin.packing, resultants(rows.loads, forces), strict=True)
        if f"bearing of {one.name} on the pin" == check
    )


def _together(pin: Pin, by: PinRules, moments: Floats, shears: Floats) -> float:
    beside = np.maximum(shears, np.concatenate([[0.0], shears[:-1]]))
    ratios = [
        bending_with_shear(
            moment / by.reduction, shear / by.reduction, diameter=pin.diameter,
            yield_stress=pin.material.yield_stress,
        ) / by.together
        for moment, shear in zip(moments.tolist(), beside.tolist(), strict=True)
    ]
    return max(ratios)


def _bearing(pin: Pin, by: PinRules, one: Packed, force: float) -> float:
    if by.method is Method.ALLOWABLE_STRESS:
        stress = bearing_stress(force, pin.diameter, bears_on(one))
        return stress / (by.bearing * one.yield_stress)
    whole = bearing_resistance(bears_on(one), pin.diameter, one.yield_stress)
    return force / (by.reduction * whole)
