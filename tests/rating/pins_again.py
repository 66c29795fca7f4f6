"""Pins of the demo bridges rated again from the record's own lines: statics along the pin by hand.

Nothing here is of the package: sizes are read as fractions, directions from the joints of the
`forces` document, moments and shears by cutting the pin beside every bearing.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from math import dist, hypot, pi
from typing import Any

from ruamel.yaml import YAML

from tests.documents import demos
from tests.rating.resolved import Resolved, trusses

HUNG = {"hanger", "shoe"}


def inches(text: str) -> float:
    """A size as it is written: '1 3/8 in'."""
    *parts, unit = text.split()
    assert unit == "in"
    return float(sum(Fraction(part) for part in parts))


@dataclass(frozen=True, slots=True)
class Bearing:
    """One bearing: its middle from the outer end and thickness [in], part of its forces, yield."""

    bars: tuple[str, ...]
    hung: bool
    along: float
    thickness: float
    share: float
    yield_ksi: float


@dataclass(frozen=True, slots=True)
class PinAgain:
    """A pin as the record has it."""

    joint: str
    diameter: float
    yield_ksi: float
    bearings: tuple[Bearing, ...]
    whole: float

    def ratios(
        self, truss: Resolved, forces: Mapping[str, float], by: tuple[str, str],
        values: Mapping[str, float],
    ) -> dict[str, float]:
        """Each check of a method and level as part of its limit."""
        loads = [self._load(truss, one, forces) for one in self.bearings]
        if self.whole == 1.0:
            loads = self._held(truss, loads)
        moments, shears = [], []
        for here in self.bearings:
            outer = [(one, load) for one, load in zip(self.bearings, loads, strict=True)
                     if one.along <= here.along]
            moments.append(hypot(*(sum(load[i] * (here.along - one.along) for one, load in outer)
                                   for i in (0, 1))))
            shears.append(hypot(*(sum(load[i] for _, load in outer) for i in (0, 1))))
        d, fy = self.diameter, self.yield_ksi
        bears = [(hypot(*load), one) for one, load in zip(self.bearings, loads, strict=True)]
        if by[0] == "allowable-stress":
            part = {what: values[f"pin.{what}.{by[1]}"] for what in ("bending", "shear", "bearing")}
            return {
                "bending of the pin": max(moments) * 32.0 / (pi * d**3) / (part["bending"] * fy),
                "shear of the pin": max(shears) * 4.0 / (pi * d**2) / (part["shear"] * fy),
                "bearing": max(force / (d * one.thickness * part["bearing"] * one.yield_ksi)
                               for force, one in bears),
            }
        # Superstructure 5 is fair: 0.95, and 0.05 more where loss was measured. System 0.85.
        phi, limit = 0.85, values["pin.bending with shear.load-and-resistance"]
        beside = [max(pair) for pair in zip(shears, [0.0, *shears[:-1]], strict=True)]
        return {
            "bending and shear of the pin together": max(
                (6.0 * m / phi / (d**3 * fy) + (2.2 * v / phi / (d**2 * fy)) ** 3) / limit
                for m, v in zip(moments, beside, strict=True)
            ),
            "bearing": max(force / (phi * 1.5 * one.thickness * d * one.yield_ksi)
                           for force, one in bears),
        }

    def _held(
        self, truss: Resolved, loads: list[tuple[float, float]]
    ) -> list[tuple[float, float]]:
        """Loads with the couples by which chord and post hold the pin, told from end to end.

        The level chord bears twice and holds what is left of the horizontal forces' moment, the
        upright post what is left of the other's.
        """
        end, found = self.bearings[-1].along, [list(load) for load in loads]
        names = [one.bars for one in self.bearings]
        for axis in (0, 1):
            left = sum(load[axis] * (end - one.along)
                       for one, load in zip(self.bearings, loads, strict=True))
            first, last = (
                i for i, bars in enumerate(names) if names.count(bars) == 2
                and abs(self._pull(truss, bars[0], 1.0)[axis]) > 0.999
            )
            couple = left / (self.bearings[last].along - self.bearings[first].along)
            found[first][axis] -= couple
            found[last][axis] += couple
        return [(x, y) for x, y in found]

    def _load(
        self, truss: Resolved, one: Bearing, forces: Mapping[str, float]
    ) -> tuple[float, float]:
        """What acts on the pin at a bearing; hung there is what all bars together leave over."""
        pulls = {bar: self._pull(truss, bar, force) for bar, force in forces.items()
                 if self.joint in bar.split("-")}
        here = [pulls[bar] for bar in one.bars]
        if one.hung:
            here += [(-x, -y) for x, y in pulls.values()]
        return tuple(one.share * sum(pull[i] for pull in here) for i in (0, 1))  # type: ignore[return-value]

    def _pull(self, truss: Resolved, bar: str, force: float) -> tuple[float, float]:
        joints = truss.drawing.joints
        first, second = bar.split("-")
        x, y = joints[self.joint]
        u, v = joints[second if first == self.joint else first]
        length = dist((x, y), (u, v))
        return (u - x) / length * force, (v - y) / length * force


@cache
def _record(name: str) -> Any:
    return YAML(typ="safe").load(demos.record(name).read_text())


@cache
def values(name: str) -> Mapping[str, float]:
    """Value -> number, of those that the rating read."""
    return {row["name"]: row["value"] for row in demos.rate(name)["values_used"]}


YIELD_KSI = 26.0
"""Of wrought iron, and of steel before 1905: Manual for Bridge Evaluation Table 6A.6.2.1-1."""


def _yield(name: str) -> float:
    for about in _record(name)["materials"].values():
        assert about["metal"] in ("wrought iron", "steel")
        assert int(about.get("built", _record(name)["built"])) < 1905
    return YIELD_KSI


@cache
def pin_again(name: str, address: str) -> PinAgain | None:
    """The pin at an address; None where its packing was not measured."""
    truss, joint, _ = address.split("/")
    entry = next(one for one in _record(name)["pins"].values() if joint in one["joints"])
    if "packing" not in entry:
        return None
    whole = 0.5 if entry.get("half", True) else 1.0
    names = [one["bar"] if isinstance(one["bar"], list) else [one["bar"]]
             for one in entry["packing"]]
    times = [bar for its in names for bar in its]
    there = {bar for bar in trusses(name)[truss].drawing.names if joint in bar.split("-")}
    assert {bar for bar in times if bar not in HUNG} == there
    yields, hung = _yield(name), HUNG & set(times)
    found, at = [], 0.0
    for one, its in zip(entry["packing"], names, strict=True):
        thickness = inches(one["thickness"]) + inches(one.get("pin plates", "0 in"))
        read = [_head(name, f"{truss}/{bar}", joint, thickness) for bar in its]
        bars = tuple(bar for bar in its if bar not in HUNG)
        # Where no load hangs, the own weight comes by the chord that is pushed.
        takes = not hung and joint.startswith("U") and len(bars) == 2
        bears = min(read) / 2.0 if one.get("middle") else min(read)
        found.append(Bearing(
            bars, not bars or takes, at + thickness / 2.0, bears, whole / times.count(its[0]),
            yields,
        ))
        at += thickness + inches(one.get("clearance", "0 in"))
    return PinAgain(joint, _diameter(name, address, entry), yields, tuple(found), whole)


def _head(name: str, part: str, joint: str, built: float) -> float:
    """The thinnest that the head at a joint was read at the last visit that read it."""
    for visit in sorted(_record(name)["inspections"], key=lambda one: one["date"], reverse=True):
        read = [inches(one["value"]) for one in visit["readings"]
                if (one["part"], one.get("place")) == (part, f"head {joint}")
                and one["what"] == "thickness"]
        if read:
            return min(built, *read)
    return built


def _diameter(name: str, address: str, entry: Any) -> float:
    """The least that was read at the last visit that read it, else as built."""
    for visit in sorted(_record(name)["inspections"], key=lambda one: one["date"], reverse=True):
        read = [inches(one["value"]) for one in visit["readings"]
                if one["part"] == address and one["what"] == "diameter"]
        if read:
            return min(read)
    return inches(entry["diameter"])
