"""Figures in the open beside a bar that has no room along it, on a leader that crosses nothing."""

import math
from collections.abc import Sequence
from dataclasses import replace

from eyebar.drawings.boxes import Point, TakenGround, strip, touching
from eyebar.drawings.members import PIN, DrawnBar
from eyebar.drawings.spots import BETWEEN, Placed, Row, Spot, placed

FEET = (0.5, 0.4, 0.6, 0.3, 0.7)
"""Where a leader may start, as parts of the bar."""
REACHES = (10.0, 16.0, 24.0, 34.0, 46.0, 62.0, 80.0)
WAYS = ((0, -1), (0, 1), (1, -1), (-1, -1), (1, 1), (-1, 1), (1, 0), (-1, 0))
"""Where its lettering is tried, as steps across and down from the bar."""
AROUND = 3.0
"""Between a leader's end and its lettering."""


def on_leader(
    bar: DrawnBar, rows: Sequence[Row], bars: Sequence[DrawnBar], ground: TakenGround
) -> Placed | None:
    """Level rows in the open near the bar, or None."""
    width = max(one.width for one in rows)
    height = sum(one.height for one in rows) + BETWEEN * (len(rows) - 1)
    near = [other for other in bars if other is not bar]
    for share in FEET:
        x, y = bar.at(bar.length * share)
        for reach in REACHES:
            for across, down in WAYS:
                middle = x + across * (reach + width / 2), y + down * (reach + height / 2)
                place = placed(bar, _level(rows, middle, height))
                if not place.free(ground):
                    continue
                led = _led(place, (x, y), middle, (width, height))
                if led and _runs_free(led, bar, near, ground):
                    return led
    return None


def _level(rows: Sequence[Row], middle: Point, height: float) -> list[Spot]:
    """Level rows under each other about a point."""
    x, top = middle[0], middle[1] - height / 2
    spots = []
    for one in rows:
        spots.append(Spot(row=one, at=(x, top + one.height / 2)))
        top += one.height + BETWEEN
    return spots


def _led(
    place: Placed, foot: Point, middle: Point, size: tuple[float, float]
) -> Placed | None:
    """The same with a leader from the bar to its edge; None where it stands on the bar itself."""
    away = middle[0] - foot[0], middle[1] - foot[1]
    beyond = max(
        abs(away[0]) / (size[0] / 2 + AROUND), abs(away[1]) / (size[1] / 2 + AROUND)
    )
    if beyond <= 1.05:
        return None
    edge = middle[0] - away[0] / beyond, middle[1] - away[1] / beyond
    return replace(place, leader=(foot, edge))


def _runs_free(
    place: Placed, bar: DrawnBar, others: Sequence[DrawnBar], ground: TakenGround
) -> bool:
    """Whether a leader, once clear of its own bar, meets neither another bar nor lettering."""
    if place.leader is None:
        return True
    foot, edge = place.leader
    off = (bar.half + PIN / 2) / math.dist(foot, edge)
    if off >= 1.0:
        return False
    start = foot[0] + (edge[0] - foot[0]) * off, foot[1] + (edge[1] - foot[1]) * off
    whole = strip(foot, edge, 1.0)
    return ground.free([strip(start, edge, 1.0)]) and not any(
        touching(whole, other.box) for other in others
    )
