"""Spots for lettering that is still looking for room: measured, but not yet set."""

from collections.abc import Sequence
from dataclasses import dataclass

from eyebar.drawings.boxes import Box, Point, TakenGround, strip
from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import HAIR, Circle, Ink, Line
from eyebar.drawings.lettering import INK, RUST, Lettering, Run, centred, extent, run
from eyebar.drawings.members import ACCENTED, DrawnBar

CLEAR = 1.6
"""What stays free around lettering."""
BETWEEN = 2.6
"""Between a bar and its figures, and between two rows of them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A row of lettering, measured once."""

    runs: tuple[Run, ...]
    width: float
    height: float


def row(*runs: Run) -> Row:
    """A row of these runs."""
    reach = extent(runs)
    return Row(runs=runs, width=reach.width, height=reach.above + reach.below)


def figure_rows(bar: DrawnBar, size: float) -> tuple[Row, Row]:
    """Dead load upright, live load slanted."""
    return (
        row(run(bar.figures.dead, size)), row(run(bar.figures.live, size, Face.SLANTED)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A row about a point."""

    row: Row
    at: Point
    angle: float = 0.0

    def box(self, clear: float = 0.0) -> Box:
        """The box around it, and so much around the box."""
        return Box(
            x=self.at[0], y=self.at[1], along=self.row.width / 2 + clear,
            across=self.row.height / 2 + clear, angle=self.angle,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """The lettering of one bar: its spots, and the leader to them from the bar where it has one."""

    spots: tuple[Spot, ...]
    colour: str
    leader: tuple[Point, Point] | None = None

    @property
    def letterings(self) -> tuple[Lettering, ...]:
        """The rows, set."""
        return tuple(
            centred(spot.row.runs, spot.at, angle=spot.angle, colour=self.colour)
            for spot in self.spots if spot.row.runs[0].text
        )

    @property
    def ink(self) -> tuple[Ink, ...]:
        """The leader first, lettering over it."""
        if self.leader is None:
            return self.letterings
        foot, edge = self.leader
        return (
            Line(start=foot, end=edge, weight=HAIR, colour=self.colour),
            Circle(centre=foot, radius=1.3, fill=self.colour, weight=HAIR, colour=self.colour),
            *self.letterings,
        )

    def free(self, ground: TakenGround) -> bool:
        """Whether its rows find room."""
        return ground.free(spot.box(CLEAR) for spot in self.spots)

    def take(self, ground: TakenGround) -> None:
        """Put its rows and its leader on the ground."""
        ground.take(*(spot.box() for spot in self.spots))
        if self.leader:
            ground.take(strip(*self.leader, 1.0))


def placed(bar: DrawnBar, spots: Sequence[Spot]) -> Placed:
    """Spots in the colour of their bar."""
    colour = RUST if bar.figures.mark in ACCENTED else INK
    return Placed(spots=tuple(spots), colour=colour)
