"""A pin on a sheet: its packing to scale, forces, shears and moments in both planes, a table."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields
from fractions import Fraction
from itertools import pairwise
from typing import Any

from eyebar.drawings import blocks
from eyebar.drawings.blocks import Drawn, Laid, Place
from eyebar.drawings.boxes import Point
from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import FINE, HAIR, HEAVY, MIDDLE, Ink, Line, Outline, Plate, letterings
from eyebar.drawings.lettering import (
    FAINT,
    INK,
    PAPER,
    RUST,
    Run,
    anchored,
    fitted,
    on_line,
    run,
    run_width,
)
from eyebar.drawings.paper import UNITS_PER_INCH, Paper
from eyebar.drawings.svg_file import svg_file
from eyebar.drawings.title_block import border
from eyebar.views.pin_sheet import PinBearingRow, PinSheet, pin_sheet

PAPER_OF_A_PIN = Paper(width_in=11.0, least_height_in=8.5, margin_in=0.375, deepest_in=6.0)
SCALES = ((Fraction(1), "full size"), (Fraction(1, 2), "half size"),
          (Fraction(1, 4), "quarter size"))
LABELS, EDGE = 150.0, 30.0
"""Room left of the diagrams for their names; room inside the border."""
NAMES = 120.0
"""The most room that the bearings' names take, written upwards under the packing."""
HALF_HEIGHT, ARROW = 28.0, 24.0
WIDTHS = (30.0, 168.0, 72.0, 66.0, 66.0, 66.0, 66.0, 66.0, 66.0, 66.0, 66.0, 66.0, 60.0)
GROUPS = ((3, 5, "Force, kip"), (5, 8, "Shear beyond, kip"), (8, 12, "Moment, kip in"))
PLANES = ("horizontal", "upright")


@dataclass(frozen=True, slots=True, kw_only=True)
class PinDrawing:
    """A pin's sheet, drawn."""

    svg: str
    view: PinSheet
    ink: tuple[Ink, ...]
    bars: tuple[()] = ()

    @property
    def letterings(self) -> tuple[Any, ...]:
        """All its lettering."""
        return tuple(letterings(*self.ink))


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


def pin_drawing(document: Mapping[str, Any]) -> PinDrawing:
    """The sheet of a pin from its `explain` document. Raises Unknown where nothing acts on it."""
    view = pin_sheet(dict(document))
    pin, paper = document["pin"], PAPER_OF_A_PIN
    inner = Place(left=paper.margin + EDGE, top=paper.margin + EDGE,
                  width=paper.width - 2 * (paper.margin + EDGE))
    axis = _axis(pin, inner)
    drawn = [_title(view, inner)]
    drawn.append(_packing(pin, view, axis, inner.below(drawn[-1].bottom + 16)))
    top = drawn[-1].bottom
    for plane, name in enumerate(PLANES):
        for kind in (_forces, _shears, _moments):
            drawn.append(kind(pin, axis, inner.below(drawn[-1].bottom + 8), plane, name))
    x = axis.x[view.governing]
    mark = Line(start=(x, top + 4), end=(x, drawn[-1].bottom), weight=FINE, colour=RUST, dash="3 5")
    drawn.append(_table(view, inner.below(drawn[-1].bottom + 22)))
    drawn.append(_said(view, axis, inner.below(drawn[-1].bottom + 10)))
    height = paper.cut(drawn[-1].bottom + EDGE + paper.margin)
    ink = (*border(paper, height), mark, *(one for block in drawn for one in block.ink))
    laid = Laid(paper=paper, height=height, ink=ink, bars=())
    svg = svg_file(laid, title=f"{view.title}: {view.part}", said=view.answer)
    return PinDrawing(svg=svg, view=view, ink=ink)


def _axis(pin: Mapping[str, Any], inner: Place) -> _Axis:
    """The largest of the usual scales at which the pin fits beside the names of the diagrams."""
    last = pin["bearings"][-1]
    length = last["along_in"] + (0.0 if last["middle"] else last["thickness_in"] / 2.0)
    room = inner.width - LABELS - 30.0
    scale, said = next(
        ((float(one) * UNITS_PER_INCH, name) for one, name in SCALES
         if length * float(one) * UNITS_PER_INCH <= room),
        (room / length, "to fit"),
    )
    left = inner.left + LABELS
    return _Axis(
        left=left, scale=scale, said=said, length=length,
        x=tuple(left + one["along_in"] * scale for one in pin["bearings"]),
    )


def _title(view: PinSheet, place: Place) -> Drawn:
    middle = place.left + place.width / 2
    name = fitted(run(view.title.upper(), 20.0, Face.STRONG, spread=3.2), place.width)
    under = fitted(run(f"{view.part}: {view.load}", 14.0, Face.SLANTED), place.width)
    said = blocks.text_block(view.answer, place.below(place.top + 58), size=14.5, colour=RUST,
                             face=Face.SLANTED)
    return Drawn(
        ink=(on_line((name,), (middle, place.top + 18), share=0.5),
             on_line((under,), (middle, place.top + 42), share=0.5), *said.ink),
        bottom=said.bottom,
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


def _table(view: PinSheet, place: Place) -> Drawn:
    """All figures, bearing by bearing; the governing row in the accent."""
    columns = fields(PinBearingRow)
    lefts = [place.left + sum(WIDTHS[:i]) for i in range(len(WIDTHS))]
    level = place.top + 12
    ink: list[Ink] = []
    for first, after, name in GROUPS:
        ink.append(on_line((run(name, 11.5, Face.SLANTED),), (lefts[first] + 12, level)))
        ink.append(Line(start=(lefts[first] + 12, level + 6), end=(lefts[after] - 2, level + 6),
                        weight=HAIR))
    level += 24
    for column, (left, width) in zip(columns, zip(lefts, WIDTHS, strict=True), strict=True):
        head = run(column.metadata["heading"], 11.5, Face.SLANTED)
        ink.append(_cell(head, (left, level), width, name=column.name))
    ink.append(Line(start=(place.left, level + 7), end=(place.left + place.width, level + 7),
                    weight=FINE))
    for i, row in enumerate(view.rows):
        level += 21 if i else 25
        chosen = i == view.governing
        face, colour = (Face.STRONG, RUST) if chosen else (Face.UPRIGHT, INK)
        for column, (left, width) in zip(columns, zip(lefts, WIDTHS, strict=True), strict=True):
            said = fitted(run(getattr(row, column.name), 12.5, face), width - 8)
            ink.append(_cell(said, (left, level), width, name=column.name, colour=colour))
    return Drawn(ink=tuple(ink), bottom=level + 12)


def _cell(said: Run, at: Point, width: float, *, name: str, colour: str = INK) -> Ink:
    """Words begin at the left of their column, figures end at its right."""
    left, level = at
    if name in ("number", "bears"):
        return on_line((said,), (left, level), colour=colour)
    return on_line((said,), (left + width - 4, level), share=1.0, colour=colour)


def _said(view: PinSheet, axis: _Axis, place: Place) -> Drawn:
    how = (
        f"Bearings and pin in {axis.said} where the sheet is {PAPER_OF_A_PIN.width_in:g} inches "
        "wide; what bears is drawn higher than the pin to be seen. An arrow up is a force towards "
        "higher stations, or upwards. Short fine strokes are moments with loads spread over their "
        "bearings. Forces are those at which the check is reached, all of one place of the load. "
        "Not signed; to be checked and signed by a licensed engineer."
    )
    drawn = [Drawn(ink=(), bottom=place.top)]
    for text in (*view.remarks, how, *view.cautions):
        drawn.append(blocks.text_block(text, place.below(drawn[-1].bottom + 2),
                                       size=blocks.SMALL))
    return Drawn(ink=blocks.stacked(drawn), bottom=drawn[-1].bottom)
