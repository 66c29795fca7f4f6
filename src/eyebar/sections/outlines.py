"""Sections as figures: every piece with its sizes and its outline, where it stands.

x runs across the truss from the near side to the far one, y upwards, as in `composed`. Pieces that
hang side by side on a pin (eyebars, rods, plates, sticks) have no recorded distance: they are set a
thickness apart, and `apart_known` is False. Corners are sharp, as the areas count them.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate

from eyebar.errors import NotMeasured
from eyebar.sections.amounts import measured
from eyebar.sections.composed import (
    angles_parts,
    channels_parts,
    plates_and_angles_parts,
    segments_parts,
)
from eyebar.sections.corners import (
    Corners,
    angle_outline,
    channel_outline,
    flange_edge,
    moved,
    rectangle,
    rolled_outline,
)
from eyebar.sections.gathered import Part
from eyebar.sections.known import channel_sizes, plate_sizes
from eyebar.sections.pieces import Angle, Channel, Plate
from eyebar.sections.shapes import (
    Angles,
    Channels,
    Eyebars,
    FlangedSegments,
    Given,
    Plates,
    PlatesAndAngles,
    Rods,
    RodShape,
    Rolled,
    Section,
    Timbers,
    Toes,
)

Sizes = tuple[tuple[str, float | None], ...]
ROUND = 36
"""Sides of the figure that stands for a circle."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """One piece: its name, its sizes by name [in], its outline [in]; empty where a size that it
    needs was never measured."""

    name: str
    sizes: Sizes
    outline: Corners


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A section as its pieces; `shape` in a word or two; whether their distances are recorded."""

    shape: str
    pieces: tuple[Piece, ...]
    apart_known: bool


def figure(section: Section) -> Figure:
    """The section as a figure."""
    match section:
        case Eyebars():
            return _side_by_side("eyebar", [
                (("width", bar.width), ("thickness", bar.thickness)) for bar in section.bars
            ])
        case Plates():
            return _side_by_side("plate", [
                (("width", one.width), ("thickness", one.thickness)) for one in section.plates
            ])
        case Timbers():
            return _side_by_side("stick", [
                (("depth", one.depth), ("width", one.width)) for one in section.sticks
            ])
        case Rods():
            return _rods(section)
        case Rolled():
            return _rolled(section)
        case Channels():
            sizes = _channel_sizes(section)
            return _composed("channels", sizes, lambda: _channels(section))
        case PlatesAndAngles():
            sizes = _plates_and_angles_sizes(section)
            return _composed("plates and angles", sizes, lambda: _built(section))
        case Angles():
            sizes = [(f"angle {i}", _angle(one)) for i, one in enumerate(section.angles, 1)]
            return _composed("angles", sizes, lambda: _angles(section))
        case FlangedSegments():
            sizes = [
                (f"segment {i}", (("thickness", one.thickness), ("flange", one.flange)))
                for i, one in enumerate(section.segments, 1)
            ]
            return _composed("round column", sizes, lambda: _segments(section))
        case Given():
            return Figure(shape="given by its properties", apart_known=True, pieces=(
                Piece(name="area in square inches", sizes=(("area", section.area),), outline=()),
            ))


def _side_by_side(name: str, sizes: Sequence[Sizes]) -> Figure:
    """Upright strips, the first size their height, the second their breadth; about (0, 0)."""
    known = [(high, wide) for (_, high), (_, wide) in sizes]
    widths = [wide or 0.0 for _, wide in known]
    gap = max(widths)
    lefts = [sum(widths[:i]) + i * gap for i in range(len(widths))]
    half = (sum(widths) + (len(widths) - 1) * gap) / 2
    several = len(sizes) > 1
    return Figure(shape=f"{name}s" if several else name, apart_known=not several, pieces=tuple(
        Piece(name=f"{name} {i + 1}" if several else name, sizes=sizes[i], outline=(
            () if high is None or wide is None
            else rectangle(lefts[i] - half, -high / 2, lefts[i] - half + wide, high / 2)
        ))
        for i, (high, wide) in enumerate(known)
    ))


def _rods(section: Rods) -> Figure:
    sizes = [rod.size or 0.0 for rod in section.rods]
    gap = max(sizes)
    several = len(sizes) > 1
    half = (sum(sizes) + (len(sizes) - 1) * gap) / 2
    ends = list(accumulate((size + gap for size in sizes), initial=0.0))
    pieces = []
    for i, rod in enumerate(section.rods):
        round_ = rod.shape is RodShape.ROUND
        middle = ends[i] + sizes[i] / 2 - half
        outline: Corners = ()
        if rod.size is not None and round_:
            outline = tuple(
                (middle + rod.size / 2 * math.cos(turn), rod.size / 2 * math.sin(turn))
                for turn in (2 * math.pi * k / ROUND for k in range(ROUND))
            )
        elif rod.size is not None:
            r = rod.size / 2
            outline = rectangle(middle - r, -r, middle + r, r)
        named: list[tuple[str, float | None]] = [("diameter" if round_ else "side", rod.size)]
        if rod.root_diameter is not None:
            named.append(("root diameter", rod.root_diameter))
        pieces.append(Piece(
            name=f"rod {i + 1}" if several else "rod", sizes=tuple(named), outline=outline
        ))
    looped = any(rod.looped for rod in section.rods)
    kind = "loop rod" if looped else "rod"
    return Figure(
        shape=f"{kind}s" if several else kind, pieces=tuple(pieces), apart_known=not several
    )


def _rolled(section: Rolled) -> Figure:
    thickness = section.flange_thickness
    if section.taper is not None and None not in (section.taper.edge, section.taper.at_web):
        thickness = ((section.taper.edge or 0.0) + (section.taper.at_web or 0.0)) / 2
    sizes: Sizes = (
        ("depth", section.depth), ("web", section.web), ("flange", section.flange),
        ("flange thickness", thickness),
    )
    outline: Corners = ()
    if all(one is not None for _, one in sizes):
        d, w, b, t = (one or 0.0 for _, one in sizes)
        outline = rolled_outline(section.shape, (d, w, b, t))
    wide = (section.flange or 0.0) * 1.5
    name = {"I": "I-beam"}.get(str(section.shape), str(section.shape))
    return Figure(
        shape=f"rolled {name}{'s' if section.number > 1 else ''}",
        apart_known=section.number == 1,
        pieces=tuple(
            Piece(
                name=f"{name} {i + 1}" if section.number > 1 else name, sizes=sizes,
                outline=moved(outline, (i - (section.number - 1) / 2) * wide, 0.0),
            )
            for i in range(section.number)
        ),
    )


Placed = Iterator[Corners]


def _composed(shape: str, sizes: Sequence[tuple[str, Sizes]], outlines: object) -> Figure:
    """Pieces with the outlines that `outlines()` gives in the same order; none where a size that
    places them is not measured."""
    assert callable(outlines)
    try:
        placed = list(outlines())
    except NotMeasured:
        placed = [()] * len(sizes)
    return Figure(shape=shape, apart_known=True, pieces=tuple(
        Piece(name=name, sizes=own, outline=tuple(outline))
        for (name, own), outline in zip(sizes, placed, strict=True)
    ))


def _channel(one: Channel) -> Sizes:
    thickness = one.flange_thickness
    if one.taper is not None and None not in (one.taper.edge, one.taper.at_web):
        thickness = ((one.taper.edge or 0.0) + (one.taper.at_web or 0.0)) / 2
    return (
        ("depth", one.depth), ("web", one.web), ("flange", one.flange),
        ("flange thickness", thickness),
    )


def _plate(one: Plate) -> Sizes:
    return ("width", one.width), ("thickness", one.thickness)


def _angle(one: Angle) -> Sizes:
    return (
        ("upright leg", one.upright), ("level leg", one.level),
        ("thickness", one.upright_thickness),
    )


def _level_plates(section: Channels | PlatesAndAngles) -> list[tuple[str, Sizes]]:
    named = (("cover plate", section.cover), ("bottom plate", section.bottom))
    return [(name, _plate(one)) for name, one in named if one is not None]


def _channel_sizes(section: Channels) -> list[tuple[str, Sizes]]:
    return [
        ("near channel", _channel(section.near)), ("far channel", _channel(section.far)),
        *_level_plates(section),
    ]


def _plates_and_angles_sizes(section: PlatesAndAngles) -> list[tuple[str, Sizes]]:
    found = [] if section.middle is None else [("web", _plate(section.middle))]
    for name, side in (("near", section.near), ("far", section.far)):
        found += [(f"{name} web", _plate(side.web))] if side.web is not None else []
        found += [(f"{name} top angle", _angle(side.top))] if side.top is not None else []
        found += [(f"{name} bottom angle", _angle(side.bottom))] if side.bottom is not None else []
    return found + _level_plates(section)


def _channels(section: Channels) -> Placed:
    parts = channels_parts(section)
    for channel, part, side in ((section.near, parts[0], -1), (section.far, parts[1], 1)):
        outward = section.toes is Toes.OUT
        back = (part.right if side < 0 else part.left) if outward else (
            part.left if side < 0 else part.right
        )
        yield channel_outline(
            channel_sizes(channel), back=back, out=side if outward else -side
        )
    yield from _plates_of(section, parts[2:])


def _plates_of(section: Channels | PlatesAndAngles, parts: Sequence[Part]) -> Placed:
    """The level plates; the two strips beside access holes are drawn as the one plate they are."""
    for plate, up in ((section.cover, 1), (section.bottom, -1)):
        if plate is None:
            continue
        half = measured(plate.width, "width") / 2
        thickness = plate_sizes(plate, "plate")[1]
        edge = next(
            one.bottom if up > 0 else one.top for one in parts
            if one.name == ("cover plate" if up > 0 else "bottom plate")
        )
        yield rectangle(-half, min(edge, edge + up * thickness), half,
                        max(edge, edge + up * thickness))


def _box(part: Part) -> Corners:
    return rectangle(part.left, part.bottom, part.right, part.top)


def _built(section: PlatesAndAngles) -> Placed:
    parts = {part.name: part for part in reversed(plates_and_angles_parts(section))}
    if section.middle is not None:
        yield _box(parts["web"])
    for name, side in (("near", section.near), ("far", section.far)):
        if side.web is not None:
            yield _box(parts[f"{name} web"])
        for where, angle in (("top", side.top), ("bottom", side.bottom)):
            if angle is not None:
                yield angle_outline(angle, parts[f"{name} {where} angle"])
    yield from _plates_of(section, tuple(parts.values()))


def _angles(section: Angles) -> Placed:
    for angle, part in zip(section.angles, angles_parts(section), strict=True):
        yield angle_outline(angle, part)


def _segments(section: FlangedSegments) -> Placed:
    """Each segment as its curved wall and both its flanges, in one outline."""
    segments_parts(section)  # refuses what is not measured
    inner = measured(section.inside, "inside diameter of the column") / 2
    half = math.pi / len(section.segments)
    for number, one in enumerate(section.segments):
        middle = (2 * number + 1) * half
        outer = inner + (one.thickness or 0.0)
        tip, side = outer + (one.flange or 0.0), (one.flange_thickness or 0.0)
        rays = [middle - half + 2 * half * k / 12 for k in range(13)]
        wall = [(outer * math.cos(ray), outer * math.sin(ray)) for ray in rays[1:-1]]
        back = [(inner * math.cos(ray), inner * math.sin(ray)) for ray in reversed(rays)]
        yield (
            *flange_edge(tip, outer, side, rays[0]), *wall,
            *reversed(flange_edge(tip, outer, -side, rays[-1])), *back,
        )
