"""How a bar is drawn: as the iron is made and as it works.

Pushed: broad and hollow, two fine lines with arrows that push together. Pulled: one solid line with
arrows that pull apart. Slack under dead load: a broken line. The breadth grows with the area, but
not to scale.
"""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from eyebar.drawings.boxes import Box, Point, strip
from eyebar.drawings.ink import BROKEN, FINE, Ink, Line, Outline
from eyebar.drawings.lettering import INK, PAPER, RUST
from eyebar.views.stress_sheet import BarFigures, Work

PIN = 5.4
"""Radius of a pin on the sheet, where the panels are not too short for it."""
ARROW_FROM_JOINT = 27.0
"""Where an arrow's point stands, or at a sixth of a short bar."""
ARROW = 9.0
"""Length of an arrow, or a fifth of a short bar."""
DOTTED = "1.2 4"
ACCENTED = ("governs", "this bar")
"""Marks of the one part that is meant."""
BESIDE = 7.0
"""Distance of two bars between the same joints."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnBar:
    """A bar on the sheet: where it runs, half the breadth of its ink, the box around it.

    Arrows may stand out of the box.
    """

    figures: BarFigures
    start: Point
    end: Point
    half: float
    box: Box = field(init=False, repr=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "box", strip(self.start, self.end, self.half))

    @property
    def length(self) -> float:
        """Its length on the sheet."""
        return math.dist(self.start, self.end)

    @property
    def along(self) -> Point:
        """The direction from its start to its end."""
        return (
            (self.end[0] - self.start[0]) / self.length, (self.end[1] - self.start[1]) / self.length
        )

    @property
    def colour(self) -> str:
        """The accent where it governs, else ink."""
        return RUST if self.figures.mark in ACCENTED else INK

    def at(self, distance: float, aside: float = 0.0) -> Point:
        """The point so far from its start, and so far to its right."""
        ux, uy = self.along
        return (
            self.start[0] + ux * distance - uy * aside, self.start[1] + uy * distance + ux * aside
        )


def drawn_bars(
    figures: Sequence[BarFigures], truss: Mapping[str, Any], points: Mapping[str, Point],
    pin: float,
) -> tuple[DrawnBar, ...]:
    """The bars of a truss between its panel points on the sheet, none broader than its pins.

    Bars between the same two joints stand side by side.
    """
    ends = {one.bar: _ends(one.bar, truss) for one in figures}
    beside: dict[frozenset[str], list[str]] = {}
    for bar, pair in ends.items():
        beside.setdefault(frozenset(pair), []).append(bar)
    found = []
    for one in figures:
        start, end = (points[joint] for joint in ends[one.bar])
        alike = beside[frozenset(ends[one.bar])]
        aside = (alike.index(one.bar) - (len(alike) - 1) / 2) * BESIDE
        area = float(truss["bars"].get(one.bar, {}).get("area_in2") or 1.0)
        half = min(_half(one.work, area), 0.93 * pin)
        straight = DrawnBar(figures=one, start=start, end=end, half=half)
        found.append(_moved(straight, aside) if aside else straight)
    return tuple(found)


def bar_ink(bar: DrawnBar) -> tuple[Ink, ...]:
    """A bar with its arrows."""
    match bar.figures.work:
        case Work.PUSHED:
            return (*_hollow(bar), *_arrows(bar, inward=1.0))
        case Work.PULLED:
            line = Line(start=bar.start, end=bar.end, weight=2 * bar.half, colour=bar.colour)
            return (line, *_arrows(bar, inward=-1.0))
        case Work.CAN_PUSH:
            return _hollow(bar)
        case Work.ONLY_PULLS:
            return (Line(start=bar.start, end=bar.end, weight=2 * bar.half, colour=bar.colour),)
        case Work.SLACK:
            return (Line(start=bar.start, end=bar.end, weight=2 * bar.half, colour=bar.colour,
                         dash=BROKEN),)
        case _:
            return (Line(start=bar.start, end=bar.end, weight=2 * bar.half, colour=bar.colour,
                         dash=DOTTED),)


def arrow_boxes(bar: DrawnBar) -> Iterable[Box]:
    """The boxes around a bar's arrows, where they are broader than the bar."""
    if bar.figures.work != Work.PULLED:
        return ()
    tip, head = _tip(bar), _head(bar)
    return tuple(
        strip(bar.at(near), bar.at(far), _arrow_half(bar))
        for near, far in ((tip, tip + head), (bar.length - tip - head, bar.length - tip))
    )


def _ends(bar: str, truss: Mapping[str, Any]) -> tuple[str, str]:
    """A bar's two joints; those of a bar that was left out are read from its name."""
    if bar in truss["bars"]:
        first, second = truss["bars"][bar]["ends"]
        return first, second
    first, _, second = bar.removesuffix(" loose").partition("-")
    return first, second


def _half(work: str, area: float) -> float:
    """Half the breadth of a bar's ink, by its area [in2]."""
    root = math.sqrt(max(area, 0.0))
    if work in (Work.PUSHED, Work.CAN_PUSH):
        return min(max(1.35 * root, 3.4), 5.0)
    if work in (Work.PULLED, Work.ONLY_PULLS):
        return min(max(0.2 + 0.24 * root, 0.45), 1.3)
    return 0.45


def _moved(bar: DrawnBar, aside: float) -> DrawnBar:
    return DrawnBar(
        figures=bar.figures, start=bar.at(0.0, aside), end=bar.at(bar.length, aside), half=bar.half
    )


def _hollow(bar: DrawnBar) -> tuple[Ink, ...]:
    """Two fine lines, paper between them: what runs behind is hidden."""
    edge = bar.half - FINE / 2
    sides = [(bar.at(0.0, aside), bar.at(bar.length, aside)) for aside in (-edge, edge)]
    (a, b), (d, c) = sides
    return (
        Outline(points=(a, b, c, d), fill=PAPER),
        *(Line(start=start, end=end, colour=bar.colour) for start, end in sides),
    )


def _arrows(bar: DrawnBar, *, inward: float) -> tuple[Ink, ...]:
    """Two narrow arrowheads near the ends; inward 1 points them to each other, -1 apart."""
    tip, half = _tip(bar), _arrow_half(bar)
    heads = []
    for near, sense in ((tip, 1.0), (bar.length - tip, -1.0)):
        back = near + sense * _head(bar)
        point, foot = (back, near) if inward > 0 else (near, back)
        notch = foot + (point - foot) * 0.22
        heads.append(Outline(
            points=(bar.at(point), bar.at(foot, half), bar.at(notch), bar.at(foot, -half)),
            fill=bar.colour,
        ))
    return tuple(heads)


def _tip(bar: DrawnBar) -> float:
    return min(ARROW_FROM_JOINT, bar.length / 6)


def _head(bar: DrawnBar) -> float:
    return min(ARROW, bar.length / 5)


def _arrow_half(bar: DrawnBar) -> float:
    if bar.figures.work == Work.PUSHED:
        return max(0.6, min(bar.half - 1.4, 2.6))
    return max(2.7, bar.half + 1.6)
