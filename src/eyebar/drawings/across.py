"""The roadway in cross-section: trusses, floorbeam, stringers, deck, curbs, and a vehicle.

Levels are counted from the deck's upper side; where a vehicle stands, and how high what holds it up
is, comes from the document.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

Document = Mapping[str, Any]
Point = tuple[float, float]
TYRE = (20.0, 40.0)
"""Width of the tyres of one wheel line side by side, and their height [in]."""
BODY_HIGH = 108.0
"""How high a vehicle is drawn [in]: its height is of no record."""
POST_ABOVE, POST_BELOW = 120.0, 12.0
CURB = (6.0, 8.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Solid:
    """A figure in the plane across the road [in], with the part that it belongs to."""

    part: str
    points: tuple[Point, ...]
    layer: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CrossSection:
    """The solids of a cross-section at one panel point, and its places across [in]."""

    joint: str
    solids: tuple[Solid, ...]
    trusses: Mapping[str, float]
    curbs: tuple[float, float]
    wheels: tuple[float, ...]
    stringers: tuple[float, ...]
    bottom: float
    top: float


def cross_section(document: Document, across: Document | None, joint: str = "") -> CrossSection:
    """The cross-section at a panel point that has a floorbeam; without one named, the middle one.

    `across` is a vehicle with the places of its wheel lines, or None.
    """
    road, floor = document["road"], document["floor"]
    beams = floor["floorbeams"]
    beam = next((one for one in beams if one["joint"] == joint), beams[len(beams) // 2])
    panel = _stringers(floor, beam, across)
    spacing = road["truss_spacing_ft"] * 12.0
    first = road["curb_ft"] * 12.0
    curbs = first, first + road["clear_width_ft"] * 12.0
    deck = _deck_thickness(floor)
    solids = [*_deck(floor, curbs, panel, deck), *_curbs(curbs)]
    under = -deck
    solids += [_placed(one, one["place_ft"] * 12.0, under) for one in panel]
    framed = any(one["framed"] for one in panel)
    seat = under if framed else under - max((_height(one) for one in panel), default=0.0)
    high = _height(beam)
    solids.append(Solid(part=beam["part"], layer="floorbeam", points=(
        (0.0, seat - high), (spacing, seat - high), (spacing, seat), (0.0, seat),
    )))
    if across is not None:
        solids += _vehicle(across)
    names = [one["truss"] for one in document["trusses"]]
    return CrossSection(
        joint=beam["joint"], solids=tuple(solids), curbs=curbs,
        trusses=dict(zip(names, (0.0, spacing), strict=False)),
        wheels=() if across is None else tuple(12.0 * at for at in across["wheels_ft"]),
        stringers=tuple(one["place_ft"] * 12.0 for one in panel),
        bottom=seat - high - POST_BELOW, top=max(POST_ABOVE, BODY_HIGH + 6.0),
    )


def _stringers(floor: Document, beam: Document, across: Document | None) -> list[Document]:
    """The stringers of the panel that is cut: that of the stringer meant, else beyond the beam."""
    meant = "" if across is None else across["worst_for"]
    panels = {one["part"]: one["panel"] for one in floor["stringers"]}
    panel = panels.get(meant)
    if panel is None:
        behind = [one for one in floor["stringers"] if one["begin_ft"] >= beam["station_ft"] - 0.01]
        panel = min((one["panel"] for one in behind), default=None)
    found = (one for one in floor["stringers"] if one["panel"] == panel)
    return sorted(found, key=lambda one: one["place_ft"])


def _outline(one: Document) -> list[Point]:
    return [
        (x, y) for piece in one["as_built"]["pieces"] for x, y in piece["outline_in"]
    ]


def _height(one: Document) -> float:
    ys = [y for _, y in _outline(one)]
    return max(ys) - min(ys) if ys else 12.0


def _placed(one: Document, at: float, top: float) -> Solid:
    """A stringer's figure as built, its middle at a place, hung from a level."""
    points = _outline(one) or [(-3.0, 0.0), (3.0, 0.0), (3.0, 12.0), (-3.0, 12.0)]
    xs, ys = zip(*points, strict=True)
    middle, high = (min(xs) + max(xs)) / 2, max(ys)
    first = next((p["outline_in"] for p in one["as_built"]["pieces"] if p["outline_in"]), points)
    whole = first if len(one["as_built"]["pieces"]) == 1 else (
        (min(xs), min(ys)), (max(xs), min(ys)), (max(xs), max(ys)), (min(xs), max(ys)),
    )
    return Solid(part=one["part"], layer="stringers", points=tuple(
        (x - middle + at, y - high + top) for x, y in whole
    ))


def _deck_thickness(floor: Document) -> float:
    deck = floor["deck"]
    return 3.0 if deck is None or deck["built_in"] is None else float(deck["built_in"])


def _deck(
    floor: Document, curbs: tuple[float, float], panel: Sequence[Document], deck: float
) -> list[Solid]:
    """The deck, from beyond one curb to beyond the other."""
    outer = [one["place_ft"] * 12.0 for one in panel]
    left = min([curbs[0] - CURB[0], *(at - 4.0 for at in outer)])
    right = max([curbs[1] + CURB[0], *(at + 4.0 for at in outer)])
    part = floor["deck"]["part"] if floor["deck"] else "floor/deck"
    return [Solid(part=part, layer="deck", points=(
        (left, -deck), (right, -deck), (right, 0.0), (left, 0.0),
    ))]


def _curbs(curbs: tuple[float, float]) -> list[Solid]:
    wide, high = CURB
    return [
        Solid(part="", layer="curbs", points=((x, 0.0), (x + wide * way, 0.0),
                                              (x + wide * way, high), (x, high)))
        for x, way in ((curbs[0], -1.0), (curbs[1], 1.0))
    ]


def _vehicle(across: Document) -> list[Solid]:
    """Tyres under each wheel line, and the body as wide as the vehicle."""
    wide, high = TYRE
    wheels = [12.0 * at for at in across["wheels_ft"]]
    body = 12.0 * across["vehicle"]["width_ft"] / 2
    middle = (wheels[0] + wheels[-1]) / 2
    tyres = [
        Solid(part="", layer="vehicle", points=(
            (x - wide / 2, 0.0), (x + wide / 2, 0.0), (x + wide / 2, high), (x - wide / 2, high),
        ))
        for x in wheels
    ]
    return [*tyres, Solid(part="", layer="vehicle", points=(
        (middle - body, high - 8.0), (middle + body, high - 8.0), (middle + body, BODY_HIGH),
        (middle - body, BODY_HIGH),
    ))]


