"""The elevation of one truss to scale: bars, pins, bearings, figures, dimension strings."""

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from eyebar.addresses import joint_order
from eyebar.drawings import bearings, joints
from eyebar.drawings.boxes import Box, Point, TakenGround, upright
from eyebar.drawings.ink import Group, Ink, identity, letterings, lines
from eyebar.drawings.lettering import INK, RUST, Lettering
from eyebar.drawings.measured import STRINGS, hung, surroundings, truss_size
from eyebar.drawings.members import PIN, DrawnBar, bar_ink, drawn_bars
from eyebar.drawings.paper import Scale
from eyebar.drawings.placement import BarLettering, ground_under, placing
from eyebar.views.stress_sheet import BarFigures, StressSheet, Work

NAMES_ABOVE = 42.0
"""Room above the upper panel points for their names, and for leaders."""
NAMES_BELOW = 24.0
ENDLESS = 4000.0
"""Longer than any truss is high on a sheet."""
ASIDE = 104.0
"""Room at each side for depth, level and the names of the ends."""
NARROW_ASIDE = 33.0
NARROW_HUNG_ASIDE = 70.0
"""The same where paper is scarce; the second where stones stand beside their pins."""

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

    `inside` are the least and greatest x that its ink may reach, `aside` is the room beside its
    ends. Size 0 writes no figures along the bars.
    """

    middle: float
    top: float
    inside: tuple[float, float]
    scale: Scale
    figures: float
    aside: float = ASIDE

    @property
    def edges(self) -> tuple[Box, Box, Box]:
        """What lettering must not cross: the sides of its place, and the level of its top."""
        left, right = self.inside
        low = self.top + ENDLESS
        return (
            upright(left - 1, self.top, left, low), upright(right, self.top, right + 1, low),
            upright(left, self.top - 1, right, self.top),
        )


def elevation(
    view: StressSheet, truss: Mapping[str, Any], frame: Frame, link: Link | None = None
) -> Elevation:
    """The truss of a `forces` document with the figures of its view."""
    return _Elevation(view=view, truss=truss, frame=frame, link=link).drawn()


def has_room(view: StressSheet, truss: Mapping[str, Any], frame: Frame) -> bool:
    """Whether the figures of all bars find room beside them, and every panel point its name."""
    tried = _Elevation(view=view, truss=truss, frame=frame, link=None)
    laid = tried.laid_out()
    return len(laid.names) == len(tried.points) and not any(
        one.without_room for one in tried.placing(laid)
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
        ground.take(*self.frame.edges, *lines(*standing))
        ground.take(*(one.box for one in letterings(*standing)))
        ground.take(*(self._bearing(joint).stones for joint in self.truss["supports"]))
        names = joints.placed_names(
            self.points, self._ends(), ground, pin=self.pin, colours=self._colours()
        )
        return _LaidOut(bars=bars, ground=ground, around=around, names=names)

    def placing(self, laid: "_LaidOut") -> Iterator[BarLettering]:
        """The bars one by one, with the lettering that found room."""
        return placing(laid.bars, laid.ground, self.frame.figures)

    def drawn(self) -> Elevation:
        """Everything: thin bars first, then hollow ones, pins over their ends."""
        laid = self.laid_out()
        found = list(self.placing(laid))
        lacking = {one.bar.figures.bar for one in found if one.without_room}
        return Elevation(
            ink=(
                *laid.around, *self._bearings(),
                *map(self._bar, _in_order(found)),
                *(self._pin(joint, laid.names) for joint in self.points),
            ),
            bottom=self._bottom() + STRINGS[1] + 6.0,
            bars=laid.bars,
            without_room=tuple(
                bar.figures for bar in laid.bars if bar.figures.bar in lacking
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

    def _bar(self, lettering: BarLettering) -> Group:
        bar = lettering.bar
        return self._part(
            bar.figures.part, bar.figures.part, bar.figures.said,
            (*bar_ink(bar), *lettering.ink), touch=(bar.start, bar.end),
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
        for joint in self.truss["supports"]:
            part = f"{self.view.truss}/{joint}/bearing"
            ink = bearings.bearing_ink(
                self._bearing(joint), name=self._end_name(joint),
                colour=RUST if self.view.governs == part else INK,
            )
            groups.append(self._part(part, part, self._said(part), ink))
        return groups

    def _bearing(self, joint: str) -> bearings.Bearing:
        """A bearing, its stones moved outward where the truss hangs from it."""
        x, held = self.points[joint][0], self.truss["supports"][joint]
        outward = 1.0 if x > self.frame.middle else -1.0
        aside = outward * bearings.BESIDE if joint in hung(self.truss) else 0.0
        return bearings.Bearing(
            pin=self.points[joint], held=(bool(held[0]), bool(held[1])), aside=aside
        )

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
        """The lowest level of bearings, and of the names under panel points."""
        names = max(y for _, y in self.points.values()) + NAMES_BELOW
        stones = [self.points[joint][1] + bearings.DEPTH for joint in self.truss["supports"]]
        return max(names, *stones)


def _in_order(found: list[BarLettering]) -> list[BarLettering]:
    """Thin bars first, so that hollow ones hide what runs behind them; by name among their like."""
    order = (Work.GONE, Work.SLACK, Work.PULLED, Work.ONLY_PULLS, Work.PUSHED, Work.CAN_PUSH)
    return sorted(found, key=lambda one: (
        order.index(Work(one.bar.figures.work)), joint_order(one.bar.figures.bar.split("-")[0]),
        one.bar.figures.bar,
    ))
