"""The small sketches beside the words on how a truss works."""

from collections.abc import Mapping, Sequence
from typing import Any

from eyebar.drawings.blocks import Drawn, Place
from eyebar.drawings.boxes import Point
from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import BROKEN, FINE, HAIR, HEAVY, Circle, Ink, Line, Outline
from eyebar.drawings.lettering import FAINT, INK, PAPER, anchored, fitted, on_line, run
from eyebar.drawings.members import PIN
from eyebar.views import how

SMALL = 12.0
LEANS = 0.2
"""How far the empty frame is drawn leaning, as a part of its height."""
HIGH = 92.0
BROAD = 150.0
BLOCK = 46.0
"""Height of the stoutest block of a strip of sizes."""


def frames(panel: Mapping[str, Any], joints: Mapping[str, Sequence[float]], place: Place) -> Drawn:
    """The panel as an empty frame that leans, and with its slanting bar, as it stands; where its
    corner is not square, the three bars alone."""
    corner, high, low = (tuple(joints[panel[one]]) for one in ("corner", "high", "low"))
    third = (low[0] + high[0] - corner[0], low[1] + high[1] - corner[1])
    corners = (corner, low, third, high) if panel["square"] else (corner, low, high)
    xs, ys = zip(*corners, strict=True)
    k = min(HIGH / (max(ys) - min(ys)), BROAD / (max(xs) - min(xs)))
    foot = place.top + 24.0 + (max(ys) - min(ys)) * k
    away = (1.0 if high[0] > low[0] else -1.0) * LEANS * panel["rise_in"] * k

    def drawn(share: float, lean: float, said: str) -> list[Ink]:
        middle = place.left + share * place.width
        base = (max(xs) + min(xs)) / 2
        straight = [(middle + (x - base) * k, foot - (y - min(ys)) * k) for x, y in corners]
        leaning = [(a + lean * (b < foot - 1.0), b) for a, b in straight]
        name = fitted(run(said, SMALL, Face.SLANTED), place.width * 0.46)
        return [
            *_frame(straight, leaning, leans=bool(lean)),
            *([] if lean else _with_bar(straight, panel)),
            on_line((name,), (middle, foot + 24.0), share=0.5),
        ]

    ink = drawn(0.73 if panel["square"] else 0.5, 0.0, how.with_bar(panel["diagonal"]))
    if panel["square"]:
        ink = [*drawn(0.27, away, how.EMPTY_FRAME), *ink]
    return Drawn(ink=tuple(ink), bottom=foot + 32.0)


def _frame(straight: list[Point], leaning: list[Point], *, leans: bool) -> list[Ink]:
    ink: list[Ink] = []
    if leans:
        ink += _sides(straight, weight=HAIR, dash=BROKEN)
    ink += _sides(leaning, weight=1.6)
    return [*ink, *(_pin(at) for at in leaning)]


def _with_bar(points: list[Point], panel: Mapping[str, Any]) -> list[Ink]:
    """The slanting bar from `low`, the second corner, to `high`, the last; and their names."""
    corner, low, high = points[0], points[1], points[-1]
    side = 1.0 if low[0] < corner[0] else -1.0
    named = (
        (panel["corner"], corner, side), (panel["low"], low, -side), (panel["high"], high, side)
    )
    return [
        Line(start=low, end=high, weight=HEAVY),
        *(_pin(at) for at in (corner, low, high)),
        *(
            anchored((run(name, SMALL),), (x + 10.0 * toward, y), (0.0 if toward > 0 else 1.0, 0.5))
            for name, (x, y), toward in named
        ),
    ]


def _sides(points: list[Point], *, weight: float, dash: str = "") -> list[Line]:
    return [
        Line(start=start, end=end, weight=weight, dash=dash)
        for start, end in zip(points, [*points[1:], points[0]], strict=True)
    ]


def _pin(at: Point) -> Circle:
    return Circle(centre=at, radius=PIN * 0.7, fill=PAPER)


def two_webs(truss: Mapping[str, Any], place: Place) -> Drawn:
    """The truss twice, each time with one of its webs drawn heavy in the half at end 0."""
    width = 0.47 * place.width
    joints = truss["joints"]
    xs, ys = zip(*joints.values(), strict=True)
    k = min(width / (max(xs) - min(xs)), HIGH / (max(ys) - min(ys)))
    foot = place.top + 6.0 + (max(ys) - min(ys)) * k
    ink: list[Ink] = []
    for web, share, words in zip(truss["webs"], (0.245, 0.755), how.WEB_NAMES, strict=True):
        middle = place.left + share * place.width
        off = middle - (max(xs) + min(xs)) / 2 * k
        points = {name: (off + x * k, foot - (y - min(ys)) * k) for name, (x, y) in joints.items()}
        heavy = {frozenset(bar) for bar in web["bars"]}
        for bar in truss["bars"]:
            start, end = (points[joint] for joint in bar["ends"])
            ink.append(
                Line(start=start, end=end, weight=HEAVY) if frozenset(bar["ends"]) in heavy
                else Line(start=start, end=end, weight=HAIR, colour=FAINT)
            )
        ink += [
            on_line((run(name, 10.5),), (points[name][0], foot + 14.0), share=0.5)
            for name in web["panel_points"]
        ]
        ink.append(on_line((run(words, SMALL, Face.SLANTED),), (middle, foot + 32.0), share=0.5))
    return Drawn(ink=tuple(ink), bottom=foot + 40.0)


def strip_of_sizes(truss: Mapping[str, Any], kind: str, place: Place) -> Drawn:
    """The bars of one chord side by side: blocks as high as they have metal, with a heavy line as
    high as they have force; both fill the block of the bar that works hardest."""
    at = {name: x for name, (x, _) in truss["joints"].items()}
    bars = sorted(
        (one for one in truss["bars"] if one["kind"] == kind),
        key=lambda one: sum(at[joint] for joint in one["ends"]),
    )
    first = min(at[joint] for one in bars for joint in one["ends"])
    last = max(at[joint] for one in bars for joint in one["ends"])
    k = place.width / (last - first)
    stout = max(one["area_in2"] for one in bars)
    hardest = max(how.most(one) / one["area_in2"] for one in bars)
    foot = place.top + BLOCK + 4.0
    ink: list[Ink] = []
    for one in bars:
        left, right = sorted(place.left + (at[joint] - first) * k for joint in one["ends"])
        top = foot - BLOCK * one["area_in2"] / stout
        level = foot - BLOCK * how.most(one) / hardest / stout
        ink += [
            Outline(points=((left, foot), (right, foot), (right, top), (left, top)), fill=PAPER,
                    weight=FINE, colour=INK),
            Line(start=(left + 2.0, level), end=(right - 2.0, level), weight=HEAVY),
            on_line((fitted(run(one["bar"], 10.5), right - left),),
                    ((left + right) / 2, foot + 13.0), share=0.5),
        ]
    level = foot + 30.0
    ink.append(on_line((fitted(run(how.strip_words(kind), SMALL, Face.SLANTED), place.width),),
                       (place.left + place.width / 2, level), share=0.5))
    return Drawn(ink=tuple(ink), bottom=level + 8.0)
