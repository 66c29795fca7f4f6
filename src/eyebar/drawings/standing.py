"""Where the load stands: a truss with a vehicle on a ruler below it, every bar as it works there.

Made from a `force-table` document and one truss of a `forces` document. Each bar holds its three
looks, of which a page shows one, and one figure: a page's script changes both by the table, which
is exact, and computes nothing else.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from eyebar.drawings import bearings, joints
from eyebar.drawings.boxes import Point
from eyebar.drawings.elevation import Link
from eyebar.drawings.ink import (
    FINE,
    HAIR,
    HEAVY,
    MIDDLE,
    Changing,
    Circle,
    Group,
    Ink,
    Line,
    Plate,
    identity,
    letterings,
    lines,
    number,
)
from eyebar.drawings.lettering import FAINT, PAPER, Lettering, run, run_width
from eyebar.drawings.measured import truss_size
from eyebar.drawings.members import PIN, DrawnBar, bar_ink, drawn_bars
from eyebar.drawings.on_page import page_svg
from eyebar.drawings.placement import ground_under, one_figure
from eyebar.drawings.ruler_marks import To, ruler_marks
from eyebar.views.governing_places import GoverningPlace
from eyebar.views.standing import Standing
from eyebar.views.stress_sheet import BarFigures, Work

WIDTH = 1240.0
ASIDE = 66.0
DEEPEST = 380.0
"""The most room that the truss takes in height."""
TOP = 34.0
LONGEST = "\u2212888.8"
"""A figure as long as any that a country bridge will show."""
FIGURES = (16.0, 14.0, 12.5, 11.0, 9.5)
RULED, LARGEST_RULED = 13.5, 17.0
"""Figures of the ruler and of the axles, and as large as a page makes them."""
BODY_FT, WHEEL_FT, OVERHANG_FT = 6.5, 1.7, 3.0
"""Of the vehicle as it is sketched: height of its body, size of a wheel, what overhangs."""
WORKS = {Work.PUSHED: "pushed", Work.PULLED: "pulled", Work.SLACK: "slack"}


@dataclass(frozen=True, slots=True, kw_only=True)
class StandingDrawing:
    """The drawing: its ink and its size, and how feet along the road lie on it."""

    ink: tuple[Ink, ...]
    width: float
    height: float
    zero: float
    per_foot: float
    title: str
    said: str

    @property
    def svg(self) -> str:
        """The element for a page whose style sheet brings letters and looks."""
        more = f' data-zero="{number(self.zero)}" data-per-foot="{self.per_foot:.6f}"'
        return page_svg(
            self.ink, (self.width, self.height), name="standing", words=(self.title, self.said),
            more=more,
        )

    @property
    def letterings(self) -> tuple[Lettering, ...]:
        """All lettering that does not change."""
        return tuple(letterings(*self.ink))


def standing_drawing(
    table: Mapping[str, Any], truss: Mapping[str, Any], view: Standing, link: Link, *,
    places: Sequence[GoverningPlace] = (), to: To = lambda _: "",
) -> StandingDrawing:
    """The drawing of a `force-table` document, its truss of a `forces` document, as a view says.

    `places` that govern are marked on the ruler, and lead where `to` says.
    """
    return _Standing(
        table=table, truss=truss, view=view, link=link, places=tuple(places), to=to
    ).drawn()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Standing:
    table: Mapping[str, Any]
    truss: Mapping[str, Any]
    view: Standing
    link: Link
    places: tuple[GoverningPlace, ...]
    to: To

    @property
    def scale(self) -> float:
        """Units of the drawing for an inch of the bridge."""
        length, depth = truss_size(self.truss)
        return float(min((WIDTH - 2 * ASIDE) / length, DEEPEST / max(depth, 1.0)))

    def points(self) -> dict[str, Point]:
        """Where the panel points lie."""
        k, (length, depth) = self.scale, truss_size(self.truss)
        xs, ys = zip(*self.truss["joints"].values(), strict=True)
        left = (WIDTH - length * k) / 2 - min(xs) * k
        base = TOP + (min(ys) + depth) * k
        return {
            name: (left + x * k, base - y * k) for name, (x, y) in self.truss["joints"].items()
        }

    def drawn(self) -> StandingDrawing:
        """The truss, and under it the ruler with the vehicle."""
        points = self.points()
        stations = self.table["stations_ft"]
        zero = points[stations[0][0]][0] - stations[0][1] * 12.0 * self.scale
        truss, bottom = self._truss(points)
        per_foot = 12.0 * self.scale
        road = _road(self.table, zero, per_foot, bottom + 12.0)
        train, ruler, level = road
        marks, depth = ruler_marks(
            self.places, lambda front: zero + front * per_foot, level, width=WIDTH, to=self.to
        )
        return StandingDrawing(
            ink=(*truss, *marks, *ruler, Group(
                children=train, look="train", shift=(
                    zero + self.view.front_ft * per_foot, 0.0
                ),
            )),
            width=WIDTH, height=level + max(36.0, depth + 4.0), zero=zero, per_foot=per_foot,
            title=self.view.title, said=self.view.said,
        )

    def _truss(self, points: dict[str, Point]) -> tuple[tuple[Ink, ...], float]:
        bars = drawn_bars([_figures(self.truss["truss"], one) for one in self.view.bars],
                          self.truss, points, PIN)
        stones = [
            bearings.bearing_ink(
                bearings.Bearing(pin=points[joint], held=(bool(held[0]), bool(held[1]))),
                name=joint, colour=FAINT,
            ) for joint, held in self.truss["supports"].items()
        ]
        ground = ground_under(bars, list(points.values()), PIN)
        for one in stones:
            ground.take(*lines(*one), *(lettering.box for lettering in letterings(*one)))
        ends = [(bar["ends"][0], bar["ends"][1]) for bar in self.truss["bars"].values()]
        names = joints.placed_names(points, ends, ground, pin=PIN, colours={})
        for size in FIGURES:
            tried = ground.copied()
            places = list(one_figure(bars, tried, LONGEST, size))
            if all(place for _, place in places):
                break
        spots = {
            bar.figures.bar: Changing(
                text="", at=place.spots[0].at, angle=place.spots[0].angle, size=size
            ) for bar, place in places if place
        }
        pins = [joints.pin_ink(at, PIN) for at in points.values()]
        bottom = max(y for _, y in points.values()) + bearings.DEPTH
        order = sorted(bars, key=lambda bar: bar.figures.work == Work.PUSHED)
        return (
            *(ink for one in stones for ink in one),
            *(self._bar(bar, spots.get(bar.figures.bar)) for bar in order),
            *pins, *names.values(),
        ), bottom

    def _bar(self, bar: DrawnBar, spot: Changing | None) -> Group:
        one = self.view.of(bar.figures.bar)
        looks = tuple(
            Group(children=bar_ink(_worked(bar, work)), look=name) for work, name in WORKS.items()
        )
        figure = () if spot is None else (
            Changing(text=one.force, at=spot.at, angle=spot.angle, size=spot.size),
        )
        return Group(
            children=(*looks, *figure), part=bar.figures.part, identity=identity(bar.figures.part),
            title=f"{bar.figures.bar}: {one.said}", said="", href=self.link(bar.figures.bar),
            touch=(bar.start, bar.end), look="bar chosen" if one.chosen else "bar", work=one.work,
        )


def _figures(truss: str, one: Any) -> BarFigures:
    """A bar as the drawing of bars wants it; its figures stand elsewhere."""
    work = next((key for key, name in WORKS.items() if name == one.work), Work.PULLED)
    return BarFigures(
        bar=one.bar, part=f"{truss}/{one.bar}", work=work, dead="", pull="", push="", mark="",
        said=one.said,
    )


def _worked(bar: DrawnBar, work: Work) -> DrawnBar:
    """The bar as it is drawn when it works so."""
    figures = bar.figures
    changed = BarFigures(
        bar=figures.bar, part=figures.part, work=work, dead="", pull="", push="", mark="", said="",
    )
    half = bar.half if work == figures.work else 3.6 if work is Work.PUSHED else 0.8
    return DrawnBar(figures=changed, start=bar.start, end=bar.end, half=half)


def _road(
    table: Mapping[str, Any], zero: float, per_foot: float, top: float
) -> tuple[tuple[Ink, ...], tuple[Ink, ...], float]:
    """The vehicle with its front axle at the ruler's zero place, the ruler, and its level."""
    body, wheel = BODY_FT * per_foot, WHEEL_FT * per_foot
    body, wheel = min(max(body, 24.0), 60.0), min(max(wheel, 4.0), 13.0)
    level = top + 16.0 + body + wheel
    forward = 1.0 if table["direction"] == "up" else -1.0
    axles = [-forward * one * per_foot for one in table["behind_front_ft"]]
    over = OVERHANG_FT * per_foot
    left, right = min(axles) - over, max(axles) + over
    train: list[Ink] = [
        Plate(left=left, top=level - wheel - body, right=right, bottom=level - wheel * 0.8,
              round=3.0, fill=PAPER, weight=MIDDLE),
        *(Circle(centre=(x, level - wheel), radius=wheel, fill=PAPER, weight=MIDDLE)
          for x in axles),
        *(Line(start=(x, level), end=(x, level + 12.0), weight=FINE) for x in axles),
        *_weights(table["vehicle"]["axles_kip"], axles, level - wheel - body - 5.0),
    ]
    return tuple(train), _ruler(table, zero, per_foot, level), level


def _weights(axles_kip: Sequence[float], axles: Sequence[float], level: float) -> list[Ink]:
    """The weight over each axle; where two would touch, the later one is not written."""
    ink: list[Ink] = []
    taken: list[tuple[float, float]] = []
    for x, kip in zip(axles, axles_kip, strict=True):
        said = f"{kip:.1f}".removesuffix(".0")
        half = run_width(run(said, LARGEST_RULED)) / 2 + 1.0
        if all(x + half < low or x - half > high for low, high in taken):
            taken.append((x - half, x + half))
            ink.append(Changing(text=said, at=(x, level - 5.0), size=RULED))
    return ink


def _ruler(
    table: Mapping[str, Any], zero: float, per_foot: float, level: float
) -> tuple[Ink, ...]:
    """The road as a ruler: a mark at every foot, fives and tens longer, tens lettered; panel points
    as broken lines up to the truss."""
    first, last = table["stations_ft"][0][1], table["stations_ft"][-1][1]
    ink: list[Ink] = [
        Line(start=(zero + first * per_foot, level), end=(zero + last * per_foot, level),
             weight=HEAVY),
    ]
    figures: list[Ink] = []
    step = next(one for one in (10, 20, 25, 50, 100, 200, 500) if one * per_foot >= 38.0)
    fine = next(one for one in (1, 2, 5, 10, 20, 50) if one * per_foot >= 5.0)
    for foot in range(0, int(last - first) + 1, fine):
        x = zero + (first + foot) * per_foot
        longer = foot % step == 0
        ink.append(Line(start=(x, level), end=(x, level + (11.0 if longer else 5.0)), weight=HAIR))
        if longer:
            figures.append(Changing(text=f"{first + foot:g}", at=(x, level + 20.5), size=RULED))
    return (*ink, Group(children=tuple(figures), look="ruled"))
