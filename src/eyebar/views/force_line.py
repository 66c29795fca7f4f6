"""The force of one bar wherever the vehicle stands, as a line in a picture."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from eyebar.views import rounding
from eyebar.views.columns import Document, figure, text
from eyebar.views.governing_places import FORCE, GoverningPlace
from eyebar.views.stress_sheet import signed

LINE_WIDTH, LINE_HEIGHT = 600.0, 160.0
CLOSE = 26.0
"""Letters nearer than this would touch."""
SHARE_LEFT = 0.6
"""Beyond this share of the width words stand on the left of their mark."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LineMark:
    """A place that governs, on the line: round where the force is, square below for a rating."""

    shape: str = text("Shape", "Round for a force, square for a rating.")
    x: float = figure("Across", "The place.")
    y: float = figure("Height", "The force of the bar there.")
    beside: str = text("Beside it", "Letters; of a greatest force also its kip and place.")
    left: bool = text("To the left", "Whether the words stand on its left, for want of room.")
    below: bool = text("Below", "Whether they stand below the line.")


@dataclass(frozen=True, slots=True, kw_only=True)
class ForceLine:
    """The force of one bar at every row of the table, as a line in a picture of 600 by 160."""

    bar: str = text("Bar", "Name of the bar.")
    points: str = text("Points", "Place and force of each row, as a polyline has them.")
    zero: float = figure("Zero", "Height of no force.")
    here: float = figure("Here", "Where the vehicle stands.")
    dead: float = figure("Dead", "Height of the force under dead load alone.")
    least: str = figure("Least", "The least force, and where.")
    greatest: str = figure("Greatest", "The greatest force, and where.")
    low_kip: float = figure("Low", "Force at the lower edge [kip].")
    high_kip: float = figure("High", "Force at the upper edge [kip].")
    marks: tuple[LineMark, ...] = text("Marks", "The places that govern.")


def force_line(
    table: Document, bar: str, front_ft: float, places: Sequence[GoverningPlace] = ()
) -> ForceLine:
    """The line of one bar of a `force-table` document, the vehicle on it, and places that govern.
    """
    number = table["bars"].index(bar)
    rows = [(row["front_axle_ft"], row["forces_kip"][number]) for row in table["rows"]]
    dead = table["dead_kip"][bar]
    picture = _Picture(
        first=rows[0][0], last=rows[-1][0], dead=dead,
        low=min(0.0, dead, *(force for _, force in rows)),
        high=max(0.0, dead, *(force for _, force in rows)),
    )
    least, greatest = min(rows, key=lambda one: one[1]), max(rows, key=lambda one: one[1])
    return ForceLine(
        bar=bar, zero=picture.level(0.0), dead=picture.level(dead), low_kip=picture.low,
        high_kip=picture.high, here=picture.across(front_ft),
        points=" ".join(
            f"{picture.across(at):.2f},{picture.level(force):.2f}" for at, force in rows
        ),
        least=f"{signed(least[1])} kip at {rounding.feet(least[0])} ft",
        greatest=f"{signed(greatest[1])} kip at {rounding.feet(greatest[0])} ft",
        marks=tuple(picture.marks(places)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Picture:
    """Feet and kip on the picture."""

    first: float
    last: float
    dead: float
    low: float
    high: float

    def across(self, at: float) -> float:
        return round(LINE_WIDTH * (at - self.first) / (self.last - self.first), 2)

    def level(self, force: float) -> float:
        return round(LINE_HEIGHT * (self.high - force) / (self.high - self.low or 1.0), 2)

    def marks(self, places: Sequence[GoverningPlace]) -> Iterator[LineMark]:
        """The marks; ratings that stand all but together share their letters."""
        on_it = [
            (one, self.across(one.front_ft), one.force_kip) for one in places
            if one.front_ft is not None and one.force_kip is not None
        ]
        letters: dict[float, str] = {}
        for one, x, _ in on_it:
            if one.shape != FORCE:
                near = next((there for there in letters if abs(there - x) < CLOSE), x)
                letters[near] = ", ".join(filter(None, (letters.get(near), one.letter)))
        for one, x, force in on_it:
            if one.shape == FORCE:
                said = f"{signed(force)} kip at {rounding.feet(one.front_ft or 0.0)} ft"
                beside = f"{one.letter}: {said}"
            else:
                beside = letters.pop(x, "")
            yield LineMark(
                shape=one.shape, x=x, y=self.level(force), beside=beside,
                left=x > SHARE_LEFT * LINE_WIDTH, below=force < self.dead,
            )
