"""The floor plan on a sheet: along the sheet, or down a narrow page."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

from eyebar.addresses import joint_order
from eyebar.drawings import dimensions
from eyebar.drawings.boxes import Point, strip
from eyebar.drawings.dimensions import Reach
from eyebar.drawings.fonts import Face
from eyebar.drawings.framed import Content, Drawing, FramedSheet, Room, framed
from eyebar.drawings.ink import FINE, HAIR, HEAVY, MIDDLE, Group, Ink, Line, Outline, identity
from eyebar.drawings.joints import named_runs
from eyebar.drawings.lettering import FAINT, PAPER, centred, fitted, on_line, run
from eyebar.drawings.paper import Paper, drawing_scale
from eyebar.drawings.plan import Plan, Stroke, floor_plan
from eyebar.drawings.tables import Column, Row, table
from eyebar.errors import NotMeasured
from eyebar.views import across_words, drawn, sheet_words
from eyebar.views.drawn import member_words

ASIDE, ABOVE, BELOW = 92.0, 34.0, 92.0
NARROW_ASIDE = 52.0
COLUMNS = (Column(heading="Part", share=0.38), Column(heading="What it is", share=0.62))
HOW = ("Places and lengths are to scale, breadths too where they can be seen. Stringers and "
       "floorbeams as seen from above, without the deck; curbs as broken lines. Panel 1 lies next "
       "to end 0; stringers count from the truss drawn below, on a narrow page from the left.")
_ORDER = ("curbs", "stringers", "floorbeams", "trusses")


def floor_sheet(document: Mapping[str, Any], papers: Sequence[Paper]) -> FramedSheet:
    """The floor plan from a `drawn` document.

    Raises NotMeasured where the road or the floor is not recorded.
    """
    whole = dict(document)
    if whole["road"] is None or not whole["floor"] or not whole["floor"]["stringers"]:
        raise NotMeasured("the floor", "widths, floorbeams and stringers")
    joint = whole["floor"]["floorbeams"][0]["joint"] if whole["floor"]["floorbeams"] else ""
    return framed(Content(
        bridge=whole["bridge"]["name"], number=whole["bridge"]["number"],
        date=sheet_words.long_date(whole["date"]), units=drawn.UNITS, how=HOW, title="Floor plan",
        source=drawn.source(whole), draw=lambda room: plan(whole, room),
        said=f"{len(whole['floor']['floorbeams'])} floorbeams and "
             f"{len(whole['floor']['stringers'])} stringers. {drawn.NOT_RATED_HERE}",
        blocks=(lambda place: table(COLUMNS, [
            Row(cells=row) for row in across_words.parts(whole, joint)
        ], place, title="The floor"),),
    ), papers)


def plan(document: Mapping[str, Any], room: Room) -> Drawing | None:
    """The floor of a `drawn` document alone, every part of it a group; None where there is no room.
    """
    floor = document["floor"]
    said = {
        one["part"]: member_words(one) for one in (*floor["floorbeams"], *floor["stringers"])
    }
    return _Drawn(floor_plan(dict(document)), said, room).all()


class _Drawn:
    """A plan being laid into a room: along it, or on a narrow page down it."""

    def __init__(self, plan: Plan, said: Mapping[str, str], room: Room) -> None:
        self.plan, self.said, self.room = plan, said, room
        xs = [x for own in plan.points.values() for x, _ in own.values()]
        self.begin, self.length = min(xs), max(xs) - min(xs)
        if room.narrow:
            fit = room.width - 3 * NARROW_ASIDE - 20.0, room.height - ABOVE - 20.0
            self.scale = drawing_scale((plan.width, self.length), fit)
        else:
            fit = room.width - 2 * ASIDE, room.height - ABOVE - BELOW
            self.scale = drawing_scale((self.length, plan.width), fit)
        self.fits = min(fit) > 20.0
        k = self.scale.units_per_inch
        self.left = (
            room.left + 2 * NARROW_ASIDE + 10.0 if room.narrow
            else room.middle - self.length * k / 2
        )

    def at(self, point: Point) -> Point:
        """A place of the plan on the sheet."""
        k, (x, y) = self.scale.units_per_inch, point
        top = self.room.top + ABOVE
        if self.room.narrow:
            return self.left + y * k, top + (x - self.begin) * k
        return self.left + (x - self.begin) * k, top + (self.plan.width - y) * k

    def all(self) -> Drawing | None:
        """The drawing, None where it finds no room."""
        k = self.scale.units_per_inch
        closest = min((b - a for a, b in pairwise(self._stations())), default=0.0) * k
        if not self.fits or closest < 22.0:
            return None
        ordered = sorted(self.plan.strokes, key=lambda one: _ORDER.index(one.layer))
        ink: list[Ink] = [self._stroke(one) for one in ordered]
        ink += self._names()
        bottom = max(self.at((self.begin, 0.0))[1], self.at((self.begin + self.length, 0.0))[1])
        if self.room.narrow:
            return Drawing(ink=(*ink, *self._down()), bottom=bottom + 20.0, scale=self.scale)
        return Drawing(ink=(*ink, *self._along()), bottom=bottom + BELOW - 10.0, scale=self.scale)

    def _stroke(self, one: Stroke) -> Ink:
        weight = {"trusses": HEAVY, "floorbeams": FINE, "stringers": FINE, "curbs": HAIR}[one.layer]
        start, end = self.at(one.start), self.at(one.end)
        broad = one.breadth * self.scale.units_per_inch
        if broad > 2.2:
            box = strip(start, end, broad / 2)
            shape: Ink = Outline(points=box.corners, fill=PAPER, weight=weight)
        else:
            dash = "8 4" if one.layer == "curbs" else ""
            shape = Line(start=start, end=end, dash=dash,
                         weight=MIDDLE if one.layer == "floorbeams" else weight)
        if not one.part:
            return shape
        return Group(children=(shape,), part=one.part, identity=identity(one.part),
                     title=one.part, said=self.said.get(one.part, ""), touch=(start, end))

    def _stations(self) -> list[float]:
        first = next(iter(self.plan.points.values()))
        return sorted(x for x, _ in first.values())

    def _names(self) -> list[Ink]:
        """Joints outside the trusses, the trusses' names, and the numbers of stringers."""
        ink: list[Ink] = []
        trusses = list(self.plan.points.items())
        for i, (_, own) in enumerate(trusses):
            for joint in sorted(own, key=joint_order):
                x, y = self.at(own[joint])
                size = 13.0 if not self.room.narrow else 12.0
                off = (-15.0 if i else 15.0)
                at = (x - off, y) if self.room.narrow else (x, y + off)
                ink.append(centred(named_runs(joint, size), at))
        for truss, own in trusses:
            words = run(truss, 12.0, Face.SLANTED)
            first = self.at(min(own.values()))
            if self.room.narrow:
                word = fitted(words, self.plan.width * self.scale.units_per_inch * 0.8)
                ink.append(on_line((word,), (first[0], self.room.top + 10), share=0.5,
                                   colour=FAINT))
            else:
                ink.append(on_line((words,), (first[0] - 22, first[1] + 4), share=1.0,
                                   colour=FAINT))
        return ink

    def _along(self) -> list[Ink]:
        """Panels and length under the plan, curbs and stringers to its right."""
        first = next(iter(self.plan.points.values()))
        xs = sorted(first.values())
        level = self.at((0.0, 0.0))[1] + 44.0
        reaches = [self._reach(a[0], b[0]) for a, b in pairwise(xs)]
        whole = self._reach(xs[0][0], xs[-1][0])
        ink: list[Ink] = [
            *dimensions.panel_string(dimensions.measured_together(reaches), level),
            *dimensions.span_string(
                whole, level + 28.0,
                sheet_words.span(len(reaches), whole.length_in, 0.0)),
        ]
        right = max(self.at(point)[0] for own in self.plan.points.values()
                    for point in own.values()) + 46.0
        top, bottom = self.at((0.0, self.plan.width))[1], self.at((0.0, 0.0))[1]
        ink += dimensions.depth_string(top, bottom, right, self.plan.width)
        return ink

    def _reach(self, a: float, b: float) -> Reach:
        return Reach(start=self.at((a, 0.0))[0], end=self.at((b, 0.0))[0], length_in=b - a)

    def _down(self) -> list[Ink]:
        """On a narrow page: a dimension for each panel at the left, read from the right."""
        ink: list[Ink] = []
        x = self.left - 44.0
        for a, b in pairwise(self._stations()):
            ink += dimensions.depth_string(
                self.at((a, 0.0))[1], self.at((b, 0.0))[1], x, b - a
            )
        return ink
