"""Marks under a ruler: a letter in a ring for a force, in a square for a rating, with a leader."""

from collections.abc import Callable, Sequence

from eyebar.drawings.boxes import Point
from eyebar.drawings.ink import (
    FINE,
    HAIR,
    MIDDLE,
    Changing,
    Circle,
    Group,
    Ink,
    Line,
    Outline,
    Plate,
)
from eyebar.drawings.lettering import INK, PAPER, on_line, run, run_width
from eyebar.views import rounding
from eyebar.views.governing_places import FORCE, GoverningPlace

HALF = 10.0
"""Half the size of a mark."""
APART = 2 * HALF + 3.0
BELOW = 30.0
"""From the ruler down to the uppermost marks: its figures stand between."""
ARROW = 14.0

To = Callable[[GoverningPlace], str]


def ruler_marks(
    places: Sequence[GoverningPlace], station: Callable[[float], float], level: float, *,
    width: float, to: To,
) -> tuple[tuple[Ink, ...], float]:
    """The marks of the places that have a letter, and how deep they reach under the ruler.

    What lies beyond the paper is marked at its edge, with an arrow and the place in feet.
    """
    rows: list[list[float]] = []
    leaders: list[Ink] = []
    marks: list[Ink] = []
    for one in places:
        if not one.letter or one.front_ft is None:
            continue
        true = station(one.front_ft)
        edge = HALF + ARROW
        x = min(max(true, edge), width - edge)
        row = next((row for row in rows if all(abs(x - there) > APART for there in row)), None)
        if row is None:
            row = []
            rows.append(row)
        row.append(x)
        at = (x, level + BELOW + HALF + rows.index(row) * APART)
        # Apart from the marks: the leader of a lower one lies under those above it.
        leaders += _beyond(one, at, true) if x != true else _leader(at, level)
        marks.append(Group(
            children=_mark(one, at), part=f"place {one.letter}",
            identity=f"place-{one.letter}", title=f"{one.letter}: {one.name}", said=one.said,
            href=to(one), touch=((at[0] - HALF, at[1]), (at[0] + HALF, at[1])), look="place",
        ))
    return (*leaders, *marks), BELOW + len(rows) * APART if rows else 0.0


def _mark(one: GoverningPlace, at: Point) -> tuple[Ink, ...]:
    x, y = at
    letter = Changing(text=one.letter, at=(x, y), size=14.0)
    if one.shape == FORCE:
        return Circle(centre=at, radius=HALF, fill=PAPER, weight=MIDDLE), letter
    return Plate(left=x - HALF, top=y - HALF, right=x + HALF, bottom=y + HALF, fill=PAPER,
                 weight=MIDDLE), letter


def _leader(at: Point, level: float) -> tuple[Ink, ...]:
    x, y = at
    tip = ((x, level), (x - 3.5, level + 9.0), (x + 3.5, level + 9.0))
    return (Line(start=(x, level + 9.0), end=(x, y), weight=HAIR), Outline(points=tip, fill=INK))


def _beyond(one: GoverningPlace, at: Point, true: float) -> tuple[Ink, ...]:
    """An arrow towards a place beyond the paper, and the place in words."""
    x, y = at
    out = 1.0 if true > x else -1.0
    assert one.front_ft is not None
    said = run(f"{rounding.feet(one.front_ft)} ft", 12.0)
    tip = x + out * (HALF + ARROW)
    head = ((tip, y), (tip - out * 7.0, y - 3.5), (tip - out * 7.0, y + 3.5))
    middle = x - out * (HALF + 5.0 + run_width(said) / 2)
    return (
        Line(start=at, end=(tip - out * 7.0, y), weight=FINE), Outline(points=head, fill=INK),
        on_line((said,), (middle, y + 4.2), share=0.5),
    )
