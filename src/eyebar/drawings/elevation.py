"""The elevation of one truss to scale: bars, pins, bearings, figures, dimension strings."""

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from eyebar.drawings import bearings, joints
from eyebar.drawings.boxes import Point, TakenGround
from eyebar.drawings.ink import Group, Ink, identity, letterings, lines
from eyebar.drawings.lettering import INK, RUST, Lettering
from eyebar.drawings.measured import STRINGS, surroundings, truss_size
from eyebar.drawings.members import PIN, DrawnBar, bar_ink, drawn_bars
from eyebar.drawings.paper import Scale
from eyebar.drawings.placement import ground_under, placed_mark, placing
from eyebar.drawings.spots import Placed
from eyebar.views.stress_sheet import BarFigures, StressSheet, Work

NAMES_ABOVE = 30.0
"""Room above the upper panel points for their names."""
ASIDE = 104.0
"""Room at each side for depth, level and the names of the ends."""
NARROW_ASIDE = 33.0
"""The same where paper is scarce: the level is left out."""

Link = Callable[[str], str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Elevation:
    """A truss drawn: its ink, the ink's lowest level, its bars, and those whose figures found no
    room."""

    ink: tuple[Ink, ...]
    bottom: float
    bars: tuple[DrawnBar, ...]
    without_room: tuple[BarFigures, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """Where a truss is drawn: the middle of its span, its top, the scale, the size of figures.

    `aside` is the room beside its ends. Size 0 writes no figures along the bars.
    """

    middle: float
    top: float
    scale: Scale
    figures: float
    aside: float = ASIDE


def elevation(
    view: StressSheet, truss: Mapping[str, Any], frame: Frame, link: Link | None = None
) -> Elevation:
    """The truss of a `forces` document with the figures of its view."""
    return _Elevation(view=view, truss=truss, frame=frame, link=link).drawn()


def has_room(view: StressSheet, truss: Mapping[str, Any], frame: Frame) -> bool:
    """Whether the figures of all bars find room beside them, and every panel point its name."""
    tried = _Elevation(view=view, truss=truss, frame=frame, link=None)
    laid = tried.laid_out()
    return len(laid.names) == len(tried.points) and all(
        place is not None for _, place in tried.placing(laid)
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _LaidOut:
    """What stands on the sheet before the figures look for room."""

    bars: tuple[DrawnBar, ...]
    ground: TakenGround
    around: tuple[Ink, ...]
    names: Mapping[str, Lettering]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Elevation:
    """A truss about to be drawn: the places of its panel points, and the size of its pins."""

    view: StressSheet
    truss: Mapping[str, Any]
    frame: Frame
    link: Link | None
    points: dict[str, Point] = field(init=False)
    pin: float = field(init=False)

    def __post_init__(self) -> None:
        length, depth = truss_size(self.truss)
        k = self.frame.scale.units_per_inch
        left = min(x for x, _ in self.truss["joints"].values())
        low = min(y for _, y in self.truss["joints"].values())
        x0 = self.frame.middle - (left + length / 2) * k
        y0 = self.frame.top + NAMES_ABOVE + (low + depth) * k
        object.__setattr__(self, "points", {
            joint: (x0 + x * k, y0 - y * k) for joint, (x, y) in self.truss["joints"].items()
        })
        shortest = min(
            (math.dist(self.points[one], self.points[other]) for one, other in self._ends()),
            default=PIN * 8,
        )
        object.__setattr__(self, "pin", min(PIN, shortest / 8))

    def laid_out(self) -> "_LaidOut":
        """What takes ground before the figures: bars, strings, bearings, names."""
        bars = drawn_bars(self.view.bars, self.truss, self.points, self.pin)
        ground = ground_under(bars, list(self.points.values()), self.pin)
        around = surroundings(
            self.truss, self.points, bottom=self._bottom(), narrow=self.frame.aside < ASIDE
        )
        standing = (*around, *self._bearings())
        ground.take(*lines(*standing), *(one.box for one in letterings(*standing)))
        ground.take(*(
            bearings.stones_box(self.points[joint]) for joint in self.truss["supports"]
        ))
        names = joints.placed_names(
            self.points, self._ends(), ground, pin=self.pin, colours=self._colours()
        )
        return _LaidOut(bars=bars, ground=ground, around=around, names=names)

    def placing(self, laid: "_LaidOut") -> Iterator[tuple[DrawnBar, Placed | None]]:
        """The bars that have figures, with the places of these."""
        carrying = [bar for bar in laid.bars if bar.figures.work != Work.GONE]
        return placing(carrying, laid.ground, self.frame.figures)

    def drawn(self) -> Elevation:
        """Everything: thin bars first, then hollow ones, pins over their ends."""
        laid = self.laid_out()
        found = list(self.placing(laid)) if self.frame.figures else []
        placed = {bar.figures.bar: place for bar, place in found if place is not None}
        marks = self._marks(laid.bars, laid.ground)
        return Elevation(
            ink=(
                *laid.around, *self._bearings(),
                *(self._bar(bar, placed, marks) for bar in _in_order(laid.bars)),
                *(self._pin(joint, laid.names) for joint in self.points),
            ),
            bottom=self._bottom() + STRINGS[1] + 6.0,
            bars=laid.bars,
            without_room=tuple(
                bar.figures for bar in laid.bars
                if bar.figures.work != Work.GONE and bar.figures.bar not in placed
            ),
        )

    def _ends(self) -> list[tuple[str, str]]:
        return [(bar["ends"][0], bar["ends"][1]) for bar in self.truss["bars"].values()]

    def _colours(self) -> dict[str, str]:
        """The accent for the panel point at which the governing part sits."""
        return {joint: RUST for joint in self.points if self._governs_at(joint)}

    def _governs_at(self, joint: str) -> bool:
        pieces = self.view.governs.split("/")
        return len(pieces) == 3 and pieces[1] == joint and pieces[0] in (self.view.truss, "floor")

    def _marks(self, bars: tuple[DrawnBar, ...], ground: TakenGround) -> dict[str, Placed]:
        size = self.frame.figures or 9.0
        placed = {
            bar.figures.bar: placed_mark(bar, ground, size) for bar in bars if bar.figures.mark
        }
        return {bar: place for bar, place in placed.items() if place is not None}

    def _bar(
        self, bar: DrawnBar, placed: Mapping[str, Placed], marks: Mapping[str, Placed]
    ) -> Group:
        name = bar.figures.bar
        lettering = [ink for found in (placed, marks) if name in found for ink in found[name].ink]
        return self._part(
            bar.figures.part, bar.figures.part, bar.figures.said, (*bar_ink(bar), *lettering),
            touch=(bar.start, bar.end),
        )

    def _pin(self, joint: str, names: Mapping[str, Lettering]) -> Group:
        colour = self._colours().get(joint, INK)
        ink: list[Ink] = [joints.pin_ink(self.points[joint], self.pin, colour)]
        if joint in names:
            ink.append(names[joint])
        part = f"{self.view.truss}/{joint}/pin"
        return self._part(part, part, self._said(part), tuple(ink))

    def _bearings(self) -> list[Group]:
        groups = []
        for joint, held in self.truss["supports"].items():
            part = f"{self.view.truss}/{joint}/bearing"
            ink = bearings.bearing_ink(
                self.points[joint], held=(bool(held[0]), bool(held[1])),
                name=self._end_name(joint),
                colour=RUST if self.view.governs == part else INK,
            )
            groups.append(self._part(part, part, self._said(part), ink))
        return groups

    def _end_name(self, joint: str) -> str:
        floor = self.truss["floor_joints"]
        return "end 0" if floor and floor[0][0] == joint else joint

    def _said(self, part: str) -> str:
        return next((one.said for one in self.view.at_joints if one.part == part), "")

    def _part(
        self, part: str, title: str, said: str, ink: tuple[Ink, ...],
        touch: tuple[Point, Point] | None = None,
    ) -> Group:
        return Group(
            children=ink, part=part, identity=identity(part), title=title, said=said,
            href=self.link(part) if self.link else "", touch=touch,
        )

    def _bottom(self) -> float:
        """The lowest level of panel points and bearings."""
        pins = max(y for _, y in self.points.values())
        stones = [
            self.points[joint][1] + bearings.DEPTH for joint in self.truss["supports"]
        ]
        return max(pins, *stones) if stones else pins


def _in_order(bars: tuple[DrawnBar, ...]) -> list[DrawnBar]:
    """Thin bars first, so that hollow ones hide what runs behind them."""
    order = (Work.GONE, Work.SLACK, Work.PULLED, Work.PUSHED)
    return sorted(bars, key=lambda bar: order.index(Work(bar.figures.work)))


