"""Ink drawn larger or smaller about a point, its lettering with it; line weights stay."""

from dataclasses import replace

from eyebar.drawings.boxes import Point
from eyebar.drawings.ink import Changing, Circle, Group, Ink, Line, Outline, Plate
from eyebar.drawings.lettering import Lettering


def enlarged(one: Ink, times: float, about: Point, to: Point) -> Ink:
    """The ink so many times as large, `about` brought `to` another point."""
    def at(point: Point) -> Point:
        return to[0] + (point[0] - about[0]) * times, to[1] + (point[1] - about[1]) * times

    match one:
        case Line():
            return replace(one, start=at(one.start), end=at(one.end))
        case Outline():
            return replace(one, points=tuple(map(at, one.points)))
        case Plate():
            (left, top), (right, bottom) = at((one.left, one.top)), at((one.right, one.bottom))
            return replace(one, left=left, top=top, right=right, bottom=bottom,
                           round=one.round * times)
        case Circle():
            return replace(one, centre=at(one.centre), radius=one.radius * times)
        case Lettering():
            x, y = at((one.x, one.y))
            return replace(one, x=x, y=y, runs=tuple(
                replace(run, size=run.size * times, lead=run.lead * times, drop=run.drop * times,
                        spread=run.spread * times)
                for run in one.runs
            ))
        case Changing():
            return replace(one, at=at(one.at), size=one.size * times)
        case Group():
            touch = one.touch and (at(one.touch[0]), at(one.touch[1]))
            return replace(one, touch=touch, children=tuple(
                enlarged(child, times, about, to) for child in one.children
            ))
