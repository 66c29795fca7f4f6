"""A member's section to scale: what is left of it, and what is gone, hatched inside its outline."""

from collections.abc import Mapping, Sequence
from typing import Any

from eyebar.drawings import blocks, dimensions
from eyebar.drawings.blocks import Drawn, Place
from eyebar.drawings.boxes import Point
from eyebar.drawings.fonts import Face
from eyebar.drawings.framed import Block, Content, Drawing, FramedSheet, Room, framed
from eyebar.drawings.hatching import hatched
from eyebar.drawings.ink import FINE, HAIR, MIDDLE, Group, Ink, Line, Outline, identity
from eyebar.drawings.lettering import FAINT, RUST, on_line, run
from eyebar.drawings.paper import DETAIL_SCALES, Paper, drawing_scale
from eyebar.drawings.tables import Column, Row, table
from eyebar.errors import NotMeasured
from eyebar.views import drawn
from eyebar.views.member_sheet import MemberSheet, member_of, member_view

LEAST = 300.0
"""The least height of the drawing."""
METAL = "#d9d4c6"
BUILT = "5 2.5"
ASIDE, ABOVE, BELOW = 70.0, 26.0, 62.0
"""Room beside, over and under the section for its measures and names."""
COLUMNS = (
    Column(heading="Piece", share=0.25), Column(heading="As built", share=0.48),
    Column(heading="Left", share=0.27),
)
HOW = ("Cut metal is tinted; hatched in rust inside a broken line is what is gone. Corners and "
       "fillets are drawn sharp; where across a piece its loss lies is not recorded.")


def member_sheet(
    document: Mapping[str, Any], part: str, papers: Sequence[Paper]
) -> FramedSheet:
    """The section of one bar, stringer or floorbeam from a `drawn` document.

    Raises Unknown for a part that is no member, NotMeasured where no size of it is known.
    """
    whole = dict(document)
    view, bar = member_view(whole, part), member_of(whole, part)
    if not any(piece["outline_in"] for piece in bar["as_built"]["pieces"]):
        raise NotMeasured(part, "a section that can be drawn")

    def draw(room: Room) -> Drawing | None:
        return section(bar, view, room)

    words: tuple[Block, ...] = (
        lambda place: _sizes(view, place), lambda place: _said(view, place),
    )
    return framed(Content(
        bridge=view.title, number=whole["bridge"]["number"], date=view.date,
        title=f"Section of {part}", units="inches", source=drawn.source(whole), how=HOW,
        said=" ".join((*view.facts, view.area, *(f"Read: {one}." for one in view.readings))),
        draw=draw, blocks=words, least=LEAST,
    ), papers)


def section(bar: Mapping[str, Any], view: MemberSheet, room: Room) -> Drawing | None:
    """The section of one member with its measures; None where the room is too small."""
    built = bar["as_built"]["pieces"]
    points = [point for piece in built for point in piece["outline_in"]]
    low_x, high_x = min(x for x, _ in points), max(x for x, _ in points)
    low_y, high_y = min(y for _, y in points), max(y for _, y in points)
    size = high_x - low_x, high_y - low_y
    fit = room.width - 2 * ASIDE, min(room.height - ABOVE - BELOW, 620.0)
    if min(fit) < 40.0:
        return None
    scale = drawing_scale(size, fit, DETAIL_SCALES)
    k = scale.units_per_inch
    top = room.top + ABOVE

    def at(point: Sequence[float]) -> Point:
        return room.middle + (point[0] - (low_x + high_x) / 2) * k, top + (high_y - point[1]) * k

    left = {piece["name"]: piece for piece in bar["left"]["pieces"]}
    ink: list[Ink] = []
    for piece in built:
        ink += _piece(piece, left.get(piece["name"]), at)
    bottom = top + size[1] * k
    edge = room.middle - size[0] * k / 2
    across = dimensions.Reach(start=edge, end=room.middle + size[0] * k / 2, length_in=size[0])
    ink += _names(built, at, bottom + 16.0)
    if bar["as_built"]["apart_known"]:
        ink += _extended(across, bottom)
    ink += dimensions.depth_string(top, bottom, edge - 26.0, size[1])
    group = Group(children=tuple(ink), part=view.part, identity=identity(view.part),
                  title=f"Section of {view.part}", said=f"{view.area}")
    return Drawing(ink=(group,), bottom=bottom + BELOW, scale=scale)


def _piece(piece: Mapping[str, Any], left: Mapping[str, Any] | None, at: Any) -> list[Ink]:
    """A piece as it is left, its outline as built broken where they differ, its loss hatched."""
    outline = [at(point) for point in piece["outline_in"]]
    if not outline:
        return []
    now = [at(point) for point in _about(piece, left)] if left else []
    if _alike(outline, now):
        return [Outline(points=tuple(outline), fill=METAL, weight=MIDDLE)]
    ink: list[Ink] = list(hatched(outline, now))
    ink += [
        Line(start=start, end=end, weight=FINE, dash=BUILT, colour=RUST)
        for start, end in zip(outline, (*outline[1:], outline[0]), strict=True)
    ]
    return [*ink, *([Outline(points=tuple(now), fill=METAL, weight=MIDDLE)] if now else [])]


def _about(piece: Mapping[str, Any], left: Mapping[str, Any]) -> list[Point]:
    """What is left of a piece; of one that hangs beside others, about the middle that it had."""
    points = [(x, y) for x, y in left["outline_in"]]
    if not points or (" " in piece["name"] and not piece["name"].rsplit(" ", 1)[-1].isdigit()):
        return points
    was, now = (_middle(one) for one in (piece["outline_in"], points))
    return [(x + was - now, y) for x, y in points]


def _middle(points: Sequence[Sequence[float]]) -> float:
    return (min(x for x, *_ in points) + max(x for x, *_ in points)) / 2


def _alike(one: Sequence[Point], other: Sequence[Point]) -> bool:
    return len(one) == len(other) and all(
        abs(a - c) + abs(b - d) < 1e-6 for (a, b), (c, d) in zip(one, other, strict=True)
    )


def _extended(reach: dimensions.Reach, level: float) -> tuple[Ink, ...]:
    """The width under the section, with fine lines down to it."""
    string = level + 46.0
    return (
        *(Line(start=(x, level + 24), end=(x, string + 4), weight=HAIR)
          for x in (reach.start, reach.end)),
        *dimensions.panel_string([[reach]], string),
    )


def _names(pieces: Sequence[Mapping[str, Any]], at: Any, level: float) -> list[Ink]:
    """Numbers under pieces that hang side by side; the two sides of what is built together."""
    numbered = [one for one in pieces if one["name"].rsplit(" ", 1)[-1].isdigit()]
    if numbered:
        return [
            on_line((run(one["name"].rsplit(" ", 1)[-1], 11.0),),
                    (at((_middle(one["outline_in"]), 0.0))[0], level), share=0.5, colour=FAINT)
            for one in numbered if one["outline_in"]
        ]
    sided = any(one["name"].startswith("near ") for one in pieces)
    if not sided:
        return []
    xs = [at(point)[0] for one in pieces for point in one["outline_in"]]
    return [
        on_line((run(word, 11.0, Face.SLANTED),), (x, level), share=share, colour=FAINT)
        for word, x, share in (("near", min(xs), 0.0), ("far", max(xs), 1.0))
    ]


def _sizes(view: MemberSheet, place: Place) -> Drawn:
    return table(COLUMNS, [
        Row(cells=(one.piece, one.built, one.left), marked=one.lost)
        for one in view.sizes
    ], place, title="Sizes, in inches")


def _said(view: MemberSheet, place: Place) -> Drawn:
    said = [blocks.heading(f"{view.kind} {view.part}", place)]
    for text in view.facts:
        said.append(blocks.text_block(text, place.below(said[-1].bottom + 1)))
    said.append(blocks.text_block(view.area, place.below(said[-1].bottom + 3), colour=RUST,
                                  face=Face.SLANTED, size=14.0))
    for text in view.readings or ("Nothing was read on it: it is drawn as it was built.",):
        said.append(blocks.text_block(f"Read: {text}" if view.readings else text,
                                      place.below(said[-1].bottom + 2), size=blocks.SMALL))
    return Drawn(ink=blocks.stacked(said), bottom=said[-1].bottom)
