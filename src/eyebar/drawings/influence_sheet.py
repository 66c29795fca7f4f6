"""The influence line of a bar: the truss, the road with the worst vehicle on it, and the line."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

from eyebar.drawings import blocks
from eyebar.drawings.blocks import Drawn, Place
from eyebar.drawings.elevation import (
    ASIDE,
    NARROW_ASIDE,
    NARROW_HUNG_ASIDE,
    Frame,
    elevation,
)
from eyebar.drawings.fonts import Face
from eyebar.drawings.framed import Content, Drawing, FramedSheet, Room, framed
from eyebar.drawings.ink import FINE, HAIR, MIDDLE, Circle, Ink, Line, Outline
from eyebar.drawings.lettering import FAINT, RUST, on_line, run
from eyebar.drawings.measured import STRINGS, hung, truss_size
from eyebar.drawings.paper import Paper, drawing_scale
from eyebar.drawings.side_view import side_view
from eyebar.drawings.tables import Column, Row, table
from eyebar.views import drawn, influence
from eyebar.views.columns import cells, columns

ROAD, LINE, TALLEST = 92.0, 74.0, 130.0
"""Height of the road with the vehicle on it; half of that of the line, and at most."""
AROUND = 34.0 + 24.0 + STRINGS[1] + 70.0
TINT = "#e7c9bb"
HOW = ("Panel points, axles and ordinates stand at their stations, to scale; the truss's bars are "
       "not as broad as drawn, the vehicle's height is not to scale.")


def influence_sheet(document: Mapping[str, Any], papers: Sequence[Paper]) -> FramedSheet:
    """The sheet from an `influence` document."""
    whole = dict(document)
    view = influence.line_view(whole)
    said = influence.sentences(whole)

    def draw(room: Room) -> Drawing | None:
        return _drawn(whole, room)

    return framed(Content(
        bridge=view.title, number=view.number, date=view.date, units="feet, kip of 1,000 lb",
        title=f"Influence line of {whole['part']}", source=drawn.source(whole), how=HOW,
        said=" ".join(said), draw=draw, least=420.0,
        blocks=(
            lambda place: _said([*said, *whole["cautions"][:1]], place),
            lambda place: _table(influence.AxleRow, influence.axle_rows(whole),
                                 f"Axles of {whole['vehicle']['name']}", place),
            lambda place: _table(influence.OrdinateRow, influence.ordinate_rows(whole),
                                 "The line, kip for a kip", place),
        ),
    ), papers)


def _drawn(document: Mapping[str, Any], room: Room) -> Drawing | None:
    truss = document["truss"]
    aside = ASIDE
    if room.narrow:
        aside = NARROW_HUNG_ASIDE if hung(truss) else NARROW_ASIDE
    half = LINE if room.narrow else min(TALLEST, max(LINE, 0.15 * room.height))
    fit = room.width - 2 * aside, room.height - AROUND - ROAD - 2 * half - 56.0
    if min(fit) < 40.0:
        return None
    scale = drawing_scale(truss_size(truss), fit)
    frame = Frame(middle=room.middle, top=room.top, scale=scale, figures=0.0, aside=aside,
                  inside=(room.left, room.right))
    found = elevation(influence.line_view(dict(document)), truss, frame)
    length, _ = truss_size(truss)
    first = min(x for x, _ in truss["joints"].values())
    begin = room.middle - (first + length / 2) * scale.units_per_inch
    # A floor joint's own x; stations between run on with them.
    places = [begin + truss["joints"][joint][0] * scale.units_per_inch
              for joint in document["joints"]]
    xs = _Stations(document["stations_ft"], places)
    road = found.bottom + ROAD
    ink = [*found.ink, *_road(document, xs, road, scale.units_per_foot)]
    zero = road + half + 24.0
    ink += _line(document, xs, (road, zero), half - 18.0)
    words = blocks.text_block(
        influence.peaks(dict(document)),
        Place(left=begin, top=zero + half, width=room.right - begin),
        size=blocks.SMALL, face=Face.SLANTED, colour=FAINT,
    )
    return Drawing(ink=(*ink, *words.ink), bottom=words.bottom, scale=scale)


class _Stations:
    """Stations of the road [ft] -> places on the sheet; beyond the ends the scale runs on."""

    def __init__(self, stations: Sequence[float], places: Sequence[float]) -> None:
        self.stations, self.places = stations, places

    def at(self, station: float) -> float:
        """The x of a station."""
        pairs = list(zip(self.stations, self.places, strict=True))
        (s0, x0), (s1, x1) = next(
            ((a, b) for a, b in pairwise(pairs) if station <= b[0]), (pairs[-2], pairs[-1])
        )
        return x0 + (x1 - x0) * (station - s0) / (s1 - s0)


def _road(
    document: Mapping[str, Any], xs: _Stations, level: float, per_foot: float
) -> list[Ink]:
    """The road's line from end to end, the vehicle standing on it."""
    begin, end = xs.places[0], xs.places[-1]
    ink: list[Ink] = []
    on = [xs.at(one["station_ft"]) for one in document["axles"]]
    if on:
        vehicle, top = side_view(on, level, per_foot, colour=RUST)
        ink += vehicle
        name = run(document["vehicle"]["name"], 12.0, Face.STRONG)
        ink.append(on_line((name,), (sum(on) / len(on), top - 5.0), share=0.5, colour=RUST))
    ink.append(Line(start=(min([begin, *on]) - 6, level), end=(max([end, *on]) + 6, level),
                    weight=MIDDLE))
    ink += [Line(start=(x, level), end=(x, level + 5), weight=FINE) for x in xs.places]
    return ink


def _line(
    document: Mapping[str, Any], xs: _Stations, levels: tuple[float, float], high: float
) -> list[Ink]:
    """The influence line about its zero, so high: + upwards; from each axle a line down to it."""
    road, zero = levels
    values = document["ordinates"]
    most = max(map(abs, values)) or 1.0
    scale = high / most
    points = [(x, zero - value * scale) for x, value in zip(xs.places, values, strict=True)]
    ink: list[Ink] = []
    for (a, b) in pairwise(points):
        if (a[1] - zero) * (b[1] - zero) >= 0:
            ink.append(Outline(points=((a[0], zero), a, b, (b[0], zero)), fill=TINT))
        else:
            x = a[0] + (b[0] - a[0]) * (zero - a[1]) / (b[1] - a[1])
            ink.append(Outline(points=((a[0], zero), a, (x, zero)), fill=TINT))
            ink.append(Outline(points=((x, zero), b, (b[0], zero)), fill=TINT))
    ink.append(Line(start=(points[0][0], zero), end=(points[-1][0], zero), weight=HAIR))
    ink += [Line(start=a, end=b, weight=MIDDLE) for a, b in pairwise(points)]
    for one in document["axles"]:
        x = xs.at(one["station_ft"])
        at = x, zero - one["ordinate"] * scale
        ink.append(Line(start=(x, road + 2), end=at, weight=HAIR, colour=RUST, dash="2 3"))
        ink.append(Circle(centre=at, radius=2.2, fill=RUST, weight=HAIR, colour=RUST))
    return ink


def _said(said: Sequence[str], place: Place) -> Drawn:
    drawn_ = [blocks.heading("What the line says", place)]
    for text in said:
        drawn_.append(blocks.text_block(text, place.below(drawn_[-1].bottom + 1)))
    return Drawn(ink=blocks.stacked(drawn_), bottom=drawn_[-1].bottom)


def _table(kind: type, rows: Sequence[Any], title: str, place: Place) -> Drawn:
    own = columns(kind)
    return table(
        [Column(heading=one.heading, share=1.0 / len(own), figure=one.figure) for one in own],
        [Row(cells=tuple(cells(row))) for row in rows], place, title=title,
    )
