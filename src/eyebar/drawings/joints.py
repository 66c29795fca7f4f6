"""Panel points: the pin as a small circle, and its name, the figure set low."""

import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from eyebar.drawings.boxes import Point, TakenGround
from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import MIDDLE, Circle
from eyebar.drawings.lettering import INK, PAPER, Lettering, Run, centred, extent, plain

SIZES = (15.0, 13.0, 11.0, 9.0, 8.0)
"""Of the letter; its figure is smaller. The first at which all names find room is taken."""
CLEAR = 2.0

_NAME = re.compile(r"(.*?)(\d*)")
_AROUND = {
    "up": (-90, -60, -120, -30, -150, 0, 180, 90, 60, 120, 30, 150),
    "down": (90, 60, 120, 30, 150, 0, 180, -90, -60, -120, -30, -150),
    "aside": (0, 180, -45, 45, -135, 135, -90, 90, -22, 22, -158, 158, -68, 68, -112, 112),
}
"""Directions [degrees, clockwise from the right] in which a name is tried, by where it is open."""


def pin_ink(point: Point, radius: float, colour: str = INK) -> Circle:
    """A pin."""
    return Circle(centre=point, radius=radius, fill=PAPER, weight=MIDDLE, colour=colour)


def named_runs(name: str, size: float) -> tuple[Run, ...]:
    """A panel point's name: its letter, and its figure small and low."""
    found = _NAME.fullmatch(plain(name))
    letters, figures = (found[1], found[2]) if found else (plain(name), "")
    runs = (
        Run(text=letters, size=size, face=Face.SLANTED),
        Run(text=figures, size=size * 0.7, face=Face.UPRIGHT, lead=0.6, drop=size * 0.2),
    )
    return tuple(one for one in runs if one.text)


def placed_names(
    points: Mapping[str, Point], bars: Sequence[tuple[str, str]], ground: TakenGround, *,
    pin: float, colours: Mapping[str, str],
) -> dict[str, Lettering]:
    """Joint -> its name, set where the truss is open; the names are put on the ground.

    All have one size, the largest of those tried at which every name finds room; at the smallest,
    names without room are left out.
    """
    places = _Places(points=points, bars=bars, pin=pin, colours=colours)
    found: dict[str, Lettering] = {}
    for size in SIZES:
        tried, found = ground.copied(), {}
        for joint in points:
            name = places.placed(joint, size, tried)
            if name is not None:
                found[joint] = name
            elif size != SIZES[-1]:
                break
        if len(found) == len(points):
            break
    ground.take(*(name.box for name in found.values()))
    return found


@dataclass(frozen=True, slots=True, kw_only=True)
class _Places:
    """Where names may stand around their panel points."""

    points: Mapping[str, Point]
    bars: Sequence[tuple[str, str]]
    pin: float
    colours: Mapping[str, str]

    def placed(self, joint: str, size: float, ground: TakenGround) -> Lettering | None:
        """A name at the first free place around its pin, nearest first; it takes the ground."""
        runs, (x, y) = named_runs(joint, size), self.points[joint]
        reach = extent(runs)
        half_wide, half_high = reach.width / 2, (reach.above + reach.below) / 2
        for away in (self.pin + 2.5, self.pin + 7.0, self.pin + 13.0, self.pin + 21.0):
            for degrees in _AROUND[self._open_side(joint)]:
                cos, sin = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
                at = x + cos * (away + half_wide), y + sin * (away + half_high)
                name = centred(runs, at, colour=self.colours.get(joint, INK))
                if ground.free([name.box.grown(CLEAR)]):
                    ground.take(name.box)
                    return name
        return None

    def _open_side(self, joint: str) -> str:
        """Where no bar of the joint runs: up, down, or else to a side."""
        x, y = self.points[joint]
        others = [
            self.points[second if first == joint else first]
            for first, second in self.bars if joint in (first, second)
        ]
        steep = [(ox - x, oy - y) for ox, oy in others if abs(oy - y) > 0.3 * abs(ox - x)]
        if not any(fall < 0 for _, fall in steep):
            return "up"
        return "aside" if any(fall > 0 for _, fall in steep) else "down"
