"""The roadway in cross-section on a sheet, with a vehicle to scale where it is worst for a part."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

from eyebar.drawings import blocks, dimensions
from eyebar.drawings.across import CrossSection, Solid, cross_section
from eyebar.drawings.blocks import Drawn, Place
from eyebar.drawings.boxes import Point
from eyebar.drawings.dimensions import Reach
from eyebar.drawings.fonts import Face
from eyebar.drawings.framed import Content, Drawing, FramedSheet, Room, framed
from eyebar.drawings.ink import FINE, HAIR, MIDDLE, Group, Ink, Line, Outline, identity
from eyebar.drawings.lettering import FAINT, INK, PAPER, RUST, fitted, on_line, run
from eyebar.drawings.paper import Paper, drawing_scale
from eyebar.drawings.tables import Column, Row, table
from eyebar.errors import NotMeasured
from eyebar.views import across_words, drawn, sheet_words

ASIDE, ABOVE, BELOW = 44.0, 22.0, 128.0
METAL = "#d9d4c6"
WEIGHTS = {"floorbeam": MIDDLE, "stringers": MIDDLE, "deck": FINE, "curbs": FINE,
           "vehicle": MIDDLE}
COLUMNS = (Column(heading="Part", share=0.38), Column(heading="What it is", share=0.62))
HOW = ("Widths, stringers, floorbeam and deck are to scale as built, seen towards higher stations; "
       "the height of the vehicle, curbs and posts is not.")


def cross_section_sheet(
    document: Mapping[str, Any], across: Mapping[str, Any] | None, papers: Sequence[Paper]
) -> FramedSheet:
    """The cross-section from a `drawn` document and where a vehicle stands across.

    Raises NotMeasured where the road or the floor is not recorded.
    """
    whole = dict(document)
    if whole["road"] is None or not whole["floor"] or not whole["floor"]["floorbeams"]:
        raise NotMeasured("the roadway", "widths and floorbeams")
    found = cross_section(whole, across)
    stands = across_words.standing(dict(across)) if across else ""

    def draw(room: Room) -> Drawing | None:
        return _drawn(found, across, room)

    return framed(Content(
        bridge=whole["bridge"]["name"], number=whole["bridge"]["number"],
        date=sheet_words.long_date(whole["date"]), units=drawn.UNITS, how=HOW,
        title=f"Cross-section of the roadway at {found.joint}", source=drawn.source(whole),
        said=" ".join((stands, *(f"{part}: {words}" for part, words in
                                 across_words.parts(whole, found.joint)))),
        draw=draw, least=420.0,
        blocks=(
            lambda place: table(COLUMNS, [
                Row(cells=row) for row in across_words.parts(whole, found.joint)
            ], place, title="The floor"),
            *((lambda place: _said(stands, place),) if stands else ()),
        ),
    ), papers)


def _said(stands: str, place: Place) -> Drawn:
    head = blocks.heading("Where the vehicle stands", place)
    said = blocks.text_block(stands, place.below(head.bottom))
    return Drawn(ink=(*head.ink, *said.ink), bottom=said.bottom)


def _drawn(
    found: CrossSection, across: Mapping[str, Any] | None, room: Room
) -> Drawing | None:
    spacing = max(found.trusses.values())
    wide, high = spacing + 24.0, found.top - found.bottom
    fit = room.width - 2 * (12.0 if room.narrow else ASIDE), room.height - ABOVE - BELOW
    if min(fit) < 60.0:
        return None
    scale = drawing_scale((wide, high), fit)
    k = scale.units_per_inch
    left, top = room.middle - spacing * k / 2, room.top + ABOVE

    def at(point: Point) -> Point:
        return left + point[0] * k, top + (found.top - point[1]) * k

    ink: list[Ink] = []
    by_part: dict[str, list[Ink]] = {}
    order = ("floorbeam", "stringers", "deck", "curbs", "vehicle")
    for solid in sorted(found.solids, key=lambda one: order.index(one.layer)):
        by_part.setdefault(solid.part or solid.layer, []).append(_solid(solid, at))
    for truss, x in found.trusses.items():
        ink += _truss(truss, at((x, found.top)), at((x, found.bottom)))
    for part, own in by_part.items():
        ink.append(Group(children=tuple(own), part=part, identity=identity(part), title=part,
                         said=""))
    if across is not None:
        ink += _axle(found, across, at)
    foot = at((0.0, found.bottom))[1]
    ink += _strings(found, at, foot)
    return Drawing(ink=tuple(ink), bottom=foot + BELOW - 10.0, scale=scale)


def _solid(solid: Solid, at: Any) -> Outline:
    cut = solid.layer in ("stringers", "deck")
    colour = RUST if solid.layer == "vehicle" else INK
    return Outline(points=tuple(map(at, solid.points)), fill=METAL if cut else PAPER,
                   weight=WEIGHTS[solid.layer], colour=colour)


def _truss(name: str, top: Point, bottom: Point) -> list[Ink]:
    """A truss as its middle line, named over it."""
    return [
        Line(start=top, end=bottom, weight=HAIR, dash="14 3 3 3"),
        on_line((run(name, 12.0, Face.SLANTED),), (top[0], top[1] - 8), share=0.5, colour=FAINT),
    ]


def _axle(found: CrossSection, across: Mapping[str, Any], at: Any) -> list[Ink]:
    """The vehicle's name on its body; its axle between the wheels."""
    first, last = found.wheels[0], found.wheels[-1]
    middle = at(((first + last) / 2, 78.0))
    width = at((last, 0.0))[0] - at((first, 0.0))[0]
    name = fitted(run(across["vehicle"]["name"], 15.0, Face.STRONG), width)
    return [
        on_line((name,), middle, share=0.5, colour=RUST),
        Line(start=at((first + 10.0, 20.0)), end=at((last - 10.0, 20.0)), weight=MIDDLE,
             colour=RUST),
    ]


def _strings(found: CrossSection, at: Any, foot: float) -> list[Ink]:
    """Wheels between the curbs, stringers, curbs, and the trusses: a string each."""
    trusses = sorted(found.trusses.values())
    rows = [
        [found.curbs[0], *found.wheels, found.curbs[1]] if found.wheels else [],
        [trusses[0], *found.stringers, trusses[-1]],
        [trusses[0], *found.curbs, trusses[-1]],
        [trusses[0], trusses[-1]],
    ]
    ink: list[Ink] = []
    level = foot + 30.0
    for row in (row for row in rows if len(row) > 1):
        reaches = [
            Reach(start=at((a, 0.0))[0], end=at((b, 0.0))[0], length_in=b - a)
            for a, b in pairwise(row) if b - a > 0.5
        ]
        ink += dimensions.panel_string(dimensions.measured_together(reaches), level)
        level += 27.0
    for x in trusses:
        end = level - 27.0 + 4.0
        ink.append(Line(start=(at((x, 0.0))[0], foot + 4.0), end=(at((x, 0.0))[0], end),
                        weight=HAIR))
    return ink
