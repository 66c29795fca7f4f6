"""What bears on a pin to scale, and the forces, shears and moments along it in both planes."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import Any

from eyebar.drawings.blocks import Drawn, Place
from eyebar.drawings.boxes import Point
from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import FINE, HAIR, HEAVY, MIDDLE, Ink, Line, Outline, Plate
from eyebar.drawings.lettering import (
    FAINT,
    INK,
    PAPER,
    RUST,
    anchored,
    fitted,
    on_line,
    run,
    run_width,
)
from eyebar.drawings.paper import UNITS_PER_INCH
from eyebar.views.pin_sheet import PinSheet

SCALES = ((Fraction(1), "full size"), (Fraction(1, 2), "half size"),
          (Fraction(1, 4), "quarter size"))
LABELS = 150.0
"""Room left of the diagrams for their names."""
NAMES = 120.0
"""The most room that the bearings' names take, written upwards under the packing."""
HALF_HEIGHT, ARROW = 28.0, 24.0
PLANES = ("horizontal", "upright")


@dataclass(frozen=True, slots=True, kw_only=True)
class Diagrams:
    """A packing with its diagrams below it; `scale` of the packing in words."""

    drawn: Drawn
    scale: str


def pin_diagrams(
    pin: Mapping[str, Any], view: PinSheet, place: Place, *, deepest: float = math.inf
) -> Diagrams:
    """The diagrams of an `explain` document's `pin`, at the largest usual scale that fits: beside
    the names, and the pin's diameter within `deepest` units of the sheet."""
    axis = _axis(pin, place, deepest)
    drawn = [_packing(pin, view, axis, place)]
    top = drawn[-1].bottom
    for plane, name in enumerate(PLANES):
        for kind in (_forces, _shears, _moments):
            drawn.append(kind(pin, axis, place.below(drawn[-1].bottom + 8), plane, name))
    x, bottom = axis.x[view.governing], drawn[-1].bottom
    mark = Line(start=(x, top + 4), end=(x, bottom), weight=FINE, colour=RUST, dash="3 5")
    ink = (mark, *(one for block in drawn for one in block.ink))
    return Diagrams(drawn=Drawn(ink=ink, bottom=bottom), scale=axis.said)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Axis:
    """Where inches along the pin lie on the sheet; `x` of every bearing's middle."""

    left: float
    scale: float
    said: str
    x: tuple[float, ...]
    length: float

    def at(self, along: float) -> float:
        """The sheet's x of a place along the pin [in]."""
        return self.left + along * self.scale


def _axis(pin: Mapping[str, Any], inner: Place, deepest: float) -> _Axis:
    """Where the pin lies, at the largest of the usual scales at which it fits."""
    last = pin["bearings"][-1]
    length = last["along_in"] + (0.0 if last["middle"] else last["thickness_in"] / 2.0)
    room = inner.width - LABELS - 30.0
    most = min(room / length, deepest / pin["diameter_in"])
    scale, said = next(
        ((float(one) * UNITS_PER_INCH, name) for one, name in SCALES
         if float(one) * UNITS_PER_INCH <= most),
        (most, "to fit"),
    )
    left = inner.left + LABELS
    return _Axis(
        left=left, scale=scale, said=said, length=length,
        x=tuple(left + one["along_in"] * scale for one in pin["bearings"]),
    )


def _packing(pin: Mapping[str, Any], view: PinSheet, axis: _Axis, place: Place) -> Drawn:
    """The bearings across the pin, to scale from the outside; names written upwards below them."""
    radius = pin["diameter_in"] * axis.scale / 2.0
    high = radius + 16.0
    level = place.top + 22.0 + high
    ends = axis.at(-0.35), axis.at(axis.length + (0.0 if pin["half"] else 0.35))
    names = [fitted(run(row.bears, 12.0), NAMES) for row in view.rows]
    ink: list[Ink] = [
        Outline(points=((ends[0], level - radius), (ends[1], level - radius),
                        (ends[1], level + radius), (ends[0], level + radius)), weight=MIDDLE),
        *_label("Packing, from outside", place.left, level, axis.said),
    ]
    for i, (one, row) in enumerate(zip(pin["bearings"], view.rows, strict=True)):
        half = one["thickness_in"] * axis.scale / 2.0
        x = axis.x[i]
        heavy = i == view.governing
        right = x if one["middle"] else x + half
        ink.append(Plate(left=x - half, top=level - high, right=right, bottom=level + high,
                         fill=PAPER, weight=HEAVY if heavy else FINE,
                         colour=RUST if heavy else INK))
        ink.append(on_line((run(row.number, 12.0, Face.STRONG),), (x, level - high - 8),
                           share=0.5))
        ink.append(anchored((names[i],), (x, level + high + 10.0), (1.0, 0.5), angle=-math.pi / 2,
                            colour=RUST if heavy else INK))
    if pin["half"]:
        ink.append(Line(start=(ends[1] + 8, level - high - 6), end=(ends[1] + 8, level + high + 6),
                        weight=HAIR, dash="12 3 2 3"))
    return Drawn(ink=tuple(ink), bottom=level + high + 22.0 + max(map(run_width, names)))


def _label(text: str, left: float, level: float, beside: str) -> tuple[Ink, ...]:
    return (
        on_line((fitted(run(text, 12.5, Face.SLANTED), LABELS - 44.0),), (left, level - 4.0)),
        on_line((fitted(run(beside, 11.5), LABELS - 44.0),), (left, level + 12.0), colour=FAINT),
    )


def _most(values: Sequence[float], unit: str) -> str:
    return f"at most {max(map(abs, values)):.1f} {unit}"


def _row(axis: _Axis, place: Place) -> tuple[float, Line]:
    level = place.top + HALF_HEIGHT + 4
    return level, Line(start=(axis.at(0.0), level), end=(axis.at(axis.length), level), weight=HAIR)


def _scaled(values: Sequence[float]) -> float:
    """Units of the sheet for one of the values: the greatest is as high as the row."""
    most = max(map(abs, values))
    return HALF_HEIGHT / most if most > 1e-9 else 0.0


def _forces(
    pin: Mapping[str, Any], axis: _Axis, place: Place, plane: int, name: str
) -> Drawn:
    """Arrows on the pin: up where a force acts towards higher stations, or upwards."""
    values = [one["load_kip"][plane] for one in pin["bearings"]]
    level, zero = _row(axis, place)
    scale = _scaled(values)
    ink: list[Ink] = [zero, *_label(f"Forces, {name}", place.left, level, _most(values, "kip"))]
    for x, value in zip(axis.x, values, strict=True):
        tip = level - value * scale
        if abs(tip - level) < 1.0:
            continue
        back = math.copysign(min(7.0, abs(tip - level)), tip - level)
        ink.append(Line(start=(x, level), end=(x, tip - back * 0.5), weight=MIDDLE))
        ink.append(Outline(points=((x, tip), (x - 3.5, tip - back), (x + 3.5, tip - back)),
                           fill=INK))
    return Drawn(ink=tuple(ink), bottom=level + HALF_HEIGHT + 4)


def _shears(
    pin: Mapping[str, Any], axis: _Axis, place: Place, plane: int, name: str
) -> Drawn:
    """Steps from bearing to bearing."""
    values = [one["shear_kip"][plane] for one in pin["bearings"]]
    level, zero = _row(axis, place)
    scale = _scaled(values)
    points: list[Point] = [(axis.x[0], level)]
    for i, value in enumerate(values):
        y = level - value * scale
        after = axis.x[i + 1] if i + 1 < len(values) else axis.at(axis.length)
        points += [(axis.x[i], y), (after, y)]
    label = _label(f"Shear, {name}", place.left, level, _most(values, "kip"))
    return Drawn(ink=(zero, *_through(points), *label), bottom=level + HALF_HEIGHT + 4)


def _moments(
    pin: Mapping[str, Any], axis: _Axis, place: Place, plane: int, name: str
) -> Drawn:
    """Straight from bearing to bearing, heavy; with spread loads at the bearings, fine."""
    points_of = {
        key: [one[key][plane] for one in pin["bearings"]]
        for key in ("moment_kip_in", "spread_moment_kip_in")
    }
    values = points_of["moment_kip_in"]
    level, zero = _row(axis, place)
    scale = _scaled([*values, *points_of["spread_moment_kip_in"]])
    ends = [*zip(axis.x, values, strict=True), (axis.at(axis.length), values[-1])]
    solid = _through([(x, level - value * scale) for x, value in ends])
    fine = [
        Line(start=(x - 4, level - value * scale), end=(x + 4, level - value * scale), weight=FINE)
        for x, value in zip(axis.x, points_of["spread_moment_kip_in"], strict=True)
    ]
    label = _label(f"Moment, {name}", place.left, level, _most(values, "kip in"))
    return Drawn(ink=(zero, *solid, *fine, *label), bottom=level + HALF_HEIGHT + 4)


def _through(points: Sequence[Point]) -> tuple[Ink, ...]:
    return tuple(
        Line(start=a, end=b, weight=MIDDLE) for a, b in pairwise(points)
    )


