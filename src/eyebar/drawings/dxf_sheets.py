"""Elevation, cross-section and floor plan as DXF, in inches of the bridge."""

import math
from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

from eyebar.drawings.across import cross_section
from eyebar.drawings.dxf_file import DxfFile, Point
from eyebar.drawings.plan import floor_plan
from eyebar.errors import NotMeasured
from eyebar.views import across_words, drawn, sheet_words

Document = Mapping[str, Any]
SUPPORT = 12.0
"""Half the breadth of the sign for a support [in]."""


def elevation_dxf(document: Document, truss: str | None = None) -> bytes:
    """One truss: middle lines, members as broad as they are, pins, names, dimensions.

    Raises Unknown for a truss that is not there, MissingLibrary without the library.
    """
    shown = drawn.chosen(dict(document), truss)
    file = DxfFile(letters=7.0)
    joints = {name: (x, y) for name, (x, y) in shown["joints"].items()}
    for name, bar in shown["bars"].items():
        start, end = (joints[one] for one in bar["ends"])
        file.line(start, end, "CENTRE LINES", bar["part"])
        broad = _broad(bar)
        if broad > 0.0:
            file.strip((start, end), broad, "MEMBERS", bar["part"])
        at, degrees = _beside(start, end, broad / 2 + 5.0)
        file.name(name, at, height=5.0, degrees=degrees)
    for name, place in joints.items():
        if name in shown["pins"]:
            file.circle(place, shown["pins"][name] / 2, "PINS", f"{shown['truss']}/{name}/pin")
        upper = place[1] > min(y for _, y in joints.values()) + 1.0
        aside, above = (0.0, 16.0) if upper else (14.0, -14.0)
        file.name(name, (place[0] + aside, place[1] + above))
    for name in shown["supports"]:
        x, y = joints[name]
        file.outline([(x, y), (x - SUPPORT, y - 2 * SUPPORT), (x + SUPPORT, y - 2 * SUPPORT)],
                     "SUPPORTS", f"{shown['truss']}/{name}/bearing")
    floor = [joints[joint] for joint, _ in shown["floor_joints"]]
    low = min(y for _, y in joints.values())
    for a, b in pairwise(floor):
        file.dimension(a, b, (a[0], low - 60.0))
    file.dimension(floor[0], floor[-1], (floor[0][0], low - 90.0))
    high = max(joints.values(), key=lambda place: (place[1], -place[0]))
    left = min(x for x, _ in joints.values())
    file.dimension((left, low), high, (left - 60.0, low), upright=True)
    file.notes(_notes(document, f"Elevation of the {shown['truss']} truss"), (left, low - 140.0))
    return file.written()


def cross_section_dxf(document: Document, across: Document | None) -> bytes:
    """The roadway across, with a vehicle where one is given. Raises NotMeasured."""
    if document["road"] is None or not document["floor"] or not document["floor"]["floorbeams"]:
        raise NotMeasured("the roadway", "widths and floorbeams")
    found = cross_section(document, across)
    file = DxfFile(letters=4.0)
    layers = {"floorbeam": "FLOORBEAMS", "stringers": "STRINGERS", "deck": "DECK",
              "curbs": "CURBS", "vehicle": "VEHICLE"}
    for solid in found.solids:
        file.outline(solid.points, layers[solid.layer], solid.part)
    for truss, x in found.trusses.items():
        file.line((x, found.bottom), (x, found.top), "CENTRE LINES", truss)
        file.name(truss, (x, found.top + 6.0))
    trusses = sorted(found.trusses.values())
    strings = [
        [found.curbs[0], *found.wheels, found.curbs[1]] if found.wheels else [],
        [trusses[0], *found.stringers, trusses[-1]],
        [trusses[0], *found.curbs, trusses[-1]],
        [trusses[0], trusses[-1]],
    ]
    _strings(file, strings, found.bottom, 16.0)
    words = [across_words.standing(dict(across))] if across else []
    file.notes([*_notes(document, f"Cross-section of the roadway at {found.joint}"), *words],
               (trusses[0], found.bottom - 90.0))
    return file.written()


def floor_dxf(document: Document) -> bytes:
    """The floor in plan. Raises NotMeasured."""
    if document["road"] is None or not document["floor"] or not document["floor"]["stringers"]:
        raise NotMeasured("the floor", "widths, floorbeams and stringers")
    plan = floor_plan(document)
    file = DxfFile(letters=7.0)
    layers = {"trusses": "TRUSSES", "floorbeams": "FLOORBEAMS", "stringers": "STRINGERS",
              "curbs": "CURBS"}
    for one in plan.strokes:
        if one.breadth > 0.0:
            file.strip((one.start, one.end), one.breadth, layers[one.layer], one.part)
        else:
            file.line(one.start, one.end, layers[one.layer], one.part)
    for i, (truss, own) in enumerate(plan.points.items()):
        for joint, (x, y) in own.items():
            file.name(joint, (x, y + (14.0 if i else -14.0)))
        x, y = min(own.values())
        file.name(truss, (x - 50.0, y))
    near = sorted(next(iter(plan.points.values())).values())
    _strings(file, [[x for x, _ in near], [near[0][0], near[-1][0]]], 0.0, 30.0)
    right = max(x for own in plan.points.values() for x, _ in own.values())
    file.dimension((right, 0.0), (right, plan.width), (right + 50.0, 0.0), upright=True)
    file.notes(_notes(document, "Floor plan"), (near[0][0], -130.0))
    return file.written()


def _strings(
    file: DxfFile, strings: Sequence[Sequence[float]], level: float, step: float
) -> None:
    """Strings of dimensions under a level, one below the other."""
    rows = [row for row in strings if len(row) > 1]
    for i, row in enumerate(rows, 1):
        base = level - (1 + i) * step
        for a, b in pairwise(row):
            if b - a > 0.5:
                file.dimension((a, level), (b, level), (a, base))


def _beside(start: Point, end: Point, off: float) -> tuple[Point, float]:
    """A place beside a bar, a third from its upper end, and the turn that reads along it."""
    (x1, y1), (x2, y2) = sorted((start, end), key=lambda place: -place[1])
    x, y = x1 + (x2 - x1) * 0.36, y1 + (y2 - y1) * 0.36
    turn = math.atan2(y2 - y1, x2 - x1)
    while turn <= -math.pi / 2:
        turn += math.pi
    while turn > math.pi / 2:
        turn -= math.pi
    return (x - math.sin(turn) * off, y + math.cos(turn) * off), math.degrees(turn)


def _broad(bar: Document) -> float:
    """How broad a bar is seen from the side [in]: the height of its section."""
    ys = [y for piece in bar["as_built"]["pieces"] for _, y in piece["outline_in"]]
    return max(ys) - min(ys) if ys else 0.0


def _notes(document: Document, title: str) -> list[str]:
    return [
        f"{document['bridge']['name']}, {document['bridge']['number']}: {title}",
        f"As on {sheet_words.long_date(document['date'])}; drawn {drawn.source(dict(document))}; "
        "all lengths in inches",
        "Not signed; to be checked and signed by a licensed engineer",
    ]
