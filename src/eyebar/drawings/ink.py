"""What a drawing is made of: lines, outlines, circles, lettering, groups; and how they are written.

Written as SVG with every property on the element itself, so that it looks the same on a page, in a
report and alone. Numbers have two decimals: identical input gives identical bytes.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass, field
from xml.sax.saxutils import escape, quoteattr

from eyebar.drawings.boxes import Box, Point, strip, upright
from eyebar.drawings.fonts import FAMILY, STYLES
from eyebar.drawings.lettering import INK, Lettering, Run, plain, run_width

HAIR = 0.5
FINE = 0.8
MIDDLE = 1.3
HEAVY = 2.2
BROKEN = "7 4"


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A straight line."""

    start: Point
    end: Point
    weight: float = FINE
    colour: str = INK
    dash: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Outline:
    """A closed figure with straight sides; a weight of 0 leaves its edge undrawn."""

    points: tuple[Point, ...]
    fill: str = "none"
    weight: float = 0.0
    colour: str = INK


@dataclass(frozen=True, slots=True, kw_only=True)
class Plate:
    """An upright rectangle with rounded corners."""

    left: float
    top: float
    right: float
    bottom: float
    round: float = 0.0
    fill: str = "none"
    weight: float = FINE
    colour: str = INK


@dataclass(frozen=True, slots=True, kw_only=True)
class Circle:
    """A circle."""

    centre: Point
    radius: float
    fill: str = "none"
    weight: float = FINE
    colour: str = INK


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Ink that belongs together; with a `part` it has a name, a title, and perhaps a link."""

    children: tuple["Ink", ...]
    part: str = ""
    identity: str = ""
    title: str = ""
    said: str = ""
    href: str = ""
    touch: tuple[Point, Point] | None = field(default=None)
    """Where an unseen broad line makes the part easy to point at."""
    look: str = ""
    """A name by which a page's style sheet finds it."""
    work: str = ""
    """What a bar does where the load stands; a page shows of its looks the one so named."""
    shift: Point | None = None
    """So far the whole group is moved."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Changing:
    """A figure that changes on a page as the load moves: set about its middle."""

    text: str
    at: Point
    size: float
    angle: float = 0.0


Ink = Line | Outline | Plate | Circle | Lettering | Group | Changing


def letterings(*ink: Ink) -> Iterator[Lettering]:
    """All lettering in some ink."""
    for one in ink:
        if isinstance(one, Lettering):
            yield one
        elif isinstance(one, Group):
            yield from letterings(*one.children)


def lines(*ink: Ink) -> Iterator[Box]:
    """A box around every drawn line, edge and circle: what lettering must not lie across."""
    for one in ink:
        if isinstance(one, Line):
            yield strip(one.start, one.end, one.weight / 2)
        elif isinstance(one, Outline) and one.weight:
            yield from _edges(one.points, one.weight / 2)
        elif isinstance(one, Plate):
            yield from _edges(_corners(one), one.weight / 2)
        elif isinstance(one, Circle):
            (x, y), r = one.centre, one.radius
            yield upright(x - r, y - r, x + r, y + r)
        elif isinstance(one, Group):
            yield from lines(*one.children)


def written(one: Ink) -> str:
    """The ink as SVG."""
    match one:
        case Line():
            place = _points(x1=one.start[0], y1=one.start[1], x2=one.end[0], y2=one.end[1])
            dash = f' stroke-dasharray="{one.dash}"' if one.dash else ""
            return f"<line{place}{_stroke(one.colour, one.weight)}{dash}/>"
        case Outline():
            points = " ".join(f"{number(x)},{number(y)}" for x, y in one.points)
            edge = _stroke(one.colour, one.weight) if one.weight else ""
            return f'<polygon points="{points}" fill="{one.fill}"{edge}/>'
        case Plate():
            place = _points(
                x=one.left, y=one.top, width=one.right - one.left, height=one.bottom - one.top,
                rx=one.round,
            )
            return f'<rect{place} fill="{one.fill}"{_stroke(one.colour, one.weight)}/>'
        case Circle():
            place = _points(cx=one.centre[0], cy=one.centre[1], r=one.radius)
            return f'<circle{place} fill="{one.fill}"{_stroke(one.colour, one.weight)}/>'
        case Lettering():
            return _text(one)
        case Group():
            return _group(one)
        case Changing():
            return _changing(one)


def number(value: float) -> str:
    """A number with two decimals at most."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def attribute(text: str) -> str:
    """A text in quotes, safe as an attribute."""
    return quoteattr(plain(text))


def content(text: str) -> str:
    """A text safe between tags."""
    return escape(plain(text))


def identity(part: str) -> str:
    """A part's address as an XML name: letters, figures and hyphens stay, `/` becomes a dot."""
    return "".join(
        one if one.isascii() and (one.isalnum() or one == "-") else
        "." if one == "/" else f"_{ord(one):x}_"
        for one in part
    )


def _stroke(colour: str, weight: float) -> str:
    return f' stroke="{colour}" stroke-width="{number(weight)}"'


def _points(**values: float) -> str:
    return "".join(f' {name}="{number(value)}"' for name, value in values.items())


def _corners(plate: Plate) -> tuple[Point, ...]:
    return (
        (plate.left, plate.top), (plate.right, plate.top),
        (plate.right, plate.bottom), (plate.left, plate.bottom),
    )


def _edges(points: tuple[Point, ...], half_width: float) -> Iterator[Box]:
    for start, end in zip(points, (*points[1:], points[0]), strict=True):
        yield strip(start, end, half_width)


def _text(one: Lettering) -> str:
    turned = (
        f' transform="rotate({number(math.degrees(one.angle))} {number(one.x)} {number(one.y)})"'
        if one.angle else ""
    )
    place = f"{_points(x=one.x, y=one.y)}{turned}"
    if len(one.runs) == 1:
        return f"<text{place}{_face(one.runs[0])} fill=\"{one.colour}\">{_letters(one)}</text>"
    return f'<text{place} fill="{one.colour}">{_letters(one)}</text>'


def _letters(one: Lettering) -> str:
    if len(one.runs) == 1:
        return content(one.runs[0].text)
    spans, drop = [], 0.0
    for run in one.runs:
        moved = f' dx="{number(run.lead)}"' if run.lead else ""
        moved += f' dy="{number(run.drop - drop)}"' if run.drop != drop else ""
        spans.append(f"<tspan{_face(run)}{moved}>{content(run.text)}</tspan>")
        drop = run.drop
    return "".join(spans)


def _face(run: Run) -> str:
    """Family, cut, size and measured length: another face in its place takes no more room."""
    style, weight = STYLES[run.face]
    spread = f' letter-spacing="{number(run.spread)}"' if run.spread else ""
    length = number(run_width(run) - run.lead + run.spread)
    return (
        f' font-family="{FAMILY}, serif" font-style="{style}" font-weight="{weight}"'
        f' font-size="{number(run.size)}"{spread} textLength="{length}"'
        ' lengthAdjust="spacingAndGlyphs"'
    )


def _changing(one: Changing) -> str:
    x, y = one.at
    turned = (
        f' transform="rotate({number(math.degrees(one.angle))} {number(x)} {number(y)})"'
        if one.angle else ""
    )
    return (
        f'<text class="changing"{_points(x=x, y=y)}{turned} text-anchor="middle" '
        f'dominant-baseline="central" font-family="{FAMILY}, serif" '
        f'font-size="{number(one.size)}" fill="{INK}">{content(one.text)}</text>'
    )


def _group(one: Group) -> str:
    inside = "".join(map(written, one.children))
    look = f' class="{one.look}"' if one.look else ""
    if one.work:
        look += f' data-work="{one.work}"'
    if one.shift:
        look += f' transform="translate({number(one.shift[0])} {number(one.shift[1])})"'
    if not one.part:
        return f"<g{look}>{inside}</g>"
    touch = ""
    if one.touch:
        (x1, y1), (x2, y2) = one.touch
        touch = (
            f'<line{_points(x1=x1, y1=y1, x2=x2, y2=y2)} stroke="none" stroke-width="16" '
            'pointer-events="stroke"/>'
        )
    group = (
        f'<g id="{one.identity}" data-part={attribute(one.part)}{look} role="graphics-symbol" '
        f"aria-label={attribute(one.title)}><title>{content(one.title)}</title>"
        f"<desc>{content(one.said)}</desc>{touch}{inside}</g>"
    )
    return f"<a href={attribute(one.href)}>{group}</a>" if one.href else group
