"""The floor in plan: trusses, floorbeams, stringers, deck and curbs, in inches.

x runs along the road from end 0, y across it from the first truss. On a skew bridge the trusses
begin at different stations, and floorbeams join the joints of one name.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

Document = Mapping[str, Any]
Point = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Stroke:
    """A middle line in plan: from where to where, how broad it is drawn [in], and whose it is."""

    part: str
    layer: str
    start: Point
    end: Point
    breadth: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """The strokes of a plan; truss -> its panel points; lines of stringers across."""

    strokes: tuple[Stroke, ...]
    points: Mapping[str, Mapping[str, Point]]
    curbs: tuple[float, float]
    lines: tuple[float, ...]
    width: float


def floor_plan(document: Document) -> Plan:
    """The plan of a `drawn` document whose road and floor are recorded."""
    road, floor = document["road"], document["floor"]
    spacing = road["truss_spacing_ft"] * 12.0
    first = road["curb_ft"] * 12.0
    curbs = first, first + road["clear_width_ft"] * 12.0
    places = dict(zip((one["truss"] for one in document["trusses"]), (0.0, spacing), strict=False))
    points = {
        one["truss"]: {
            joint: (station * 12.0, places[one["truss"]]) for joint, station in one["floor_joints"]
        }
        for one in document["trusses"] if one["truss"] in places
    }
    strokes = [*_trusses(points)]
    ends = list(points.values())
    for beam in floor["floorbeams"]:
        near, far = ends[0][beam["joint"]], ends[-1][beam["joint"]]
        strokes.append(Stroke(part=beam["part"], layer="floorbeams", start=near, end=far,
                              breadth=_breadth(beam)))
    slope = _slope(ends[0], ends[-1], spacing)
    for one in floor["stringers"]:
        y = one["place_ft"] * 12.0
        begin, finish = (12.0 * one[key] + slope * y for key in ("begin_ft", "end_ft"))
        strokes.append(Stroke(
            part=one["part"], layer="stringers", breadth=_breadth(one),
            start=(begin, y), end=(finish, y),
        ))
    begin = min(x for x, _ in ends[0].values())
    finish = max(x for x, _ in ends[0].values())
    strokes += [
        Stroke(part="", layer="curbs", start=(begin + slope * y, y), end=(finish + slope * y, y))
        for y in curbs
    ]
    return Plan(
        strokes=tuple(strokes), points=points, curbs=curbs, width=spacing,
        lines=tuple(sorted({one["place_ft"] * 12.0 for one in floor["stringers"]
                            if one["panel"] == floor["stringers"][0]["panel"]})),
    )


def _trusses(points: Mapping[str, Mapping[str, Point]]) -> list[Stroke]:
    """Each truss as its line from end to end."""
    return [
        Stroke(part="", layer="trusses", start=min(own.values()), end=max(own.values()))
        for own in points.values()
    ]


def _slope(near: Mapping[str, Point], far: Mapping[str, Point], spacing: float) -> float:
    """How much farther along the road a floor's line lies for each inch across."""
    joint = next(iter(near))
    return (far[joint][0] - near[joint][0]) / spacing if joint in far else 0.0


def _breadth(beam: Document) -> float:
    """How broad a beam is seen from above [in]."""
    xs = [x for piece in beam["as_built"]["pieces"] for x, _ in piece["outline_in"]]
    return max(xs) - min(xs) if xs else 0.0
