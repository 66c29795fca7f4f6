"""What a truss rests on, drawn under its end pins: a shoe on the stone, or a shoe on rollers."""

from dataclasses import dataclass

from eyebar.drawings.boxes import Box, Point, upright
from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import FINE, HAIR, MIDDLE, Circle, Ink, Line, Outline
from eyebar.drawings.lettering import FAINT, INK, PAPER, on_line, run

SHOE = 17.0
"""Height of the shoe under the pin; rollers take a part of it."""
ROLLER = 2.6
STONE_WIDTH = 52.0
BESIDE = STONE_WIDTH / 2 + 9.0
"""How far beside their pin stones stand where a bar runs down from it."""
WIDTH = 84.0
"""Breadth of a bearing with its lettering."""
COURSES = (13.0, 11.0, 11.0)
"""Heights of the cap stone and of the courses under it."""
LETTERS = 10.5
DEPTH = SHOE + sum(COURSES) + 17.0
"""How far a bearing with its lettering reaches below the pin."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bearing:
    """Where a pin rests: whether it is held lengthwise and upright.

    `aside` is how far beside the pin its stones stand, clear of bars that run down from it.
    """

    pin: Point
    held: tuple[bool, bool]
    aside: float = 0.0

    @property
    def stones(self) -> Box:
        """The box around the stones."""
        x, y = self.pin[0] + self.aside, self.pin[1] + SHOE
        half = STONE_WIDTH / 2
        return upright(x - half, y, x + half, y + sum(COURSES))


def bearing_ink(bearing: Bearing, *, name: str, colour: str) -> tuple[Ink, ...]:
    """A bearing on its stones, with its name under them.

    One that is free lengthwise stands on rollers; one that is only held lengthwise has no stone to
    stand on, and gets its name alone.
    """
    (x, y), (lengthwise, held) = bearing.pin, bearing.held
    foot = x + bearing.aside
    word = f"{name}, {'fixed' if lengthwise else 'on rollers'}"
    named = on_line((run(word, LETTERS, Face.SLANTED),), (foot, y + DEPTH - 4), share=0.5,
                    colour=FAINT if colour == INK else colour)
    if not held:
        return (named,)
    under = y + SHOE - (0.0 if lengthwise else 2 * ROLLER + 1)
    shoe = Outline(
        points=((x - 4, y + 2), (x + 4, y + 2), (foot + 15, under), (foot - 15, under)),
        fill=PAPER, weight=FINE, colour=colour,
    )
    rollers = () if lengthwise else tuple(
        Circle(centre=(foot + i * 7.0, y + SHOE - ROLLER - 0.6), radius=ROLLER, fill=PAPER,
               colour=colour)
        for i in (-2, -1, 0, 1, 2)
    )
    plate = Line(start=(foot - 20, y + SHOE), end=(foot + 20, y + SHOE), weight=MIDDLE,
                 colour=colour)
    return (*_stones((foot, y + SHOE)), shoe, *rollers, plate, named)


def level_mark(at: Point, word: str) -> tuple[Ink, ...]:
    """A level: a line with a small triangle standing on it, and what lies at that height."""
    x, y = at
    letters = on_line((run(word, LETTERS, Face.SLANTED),), (x + 18, y - 4.5), colour=FAINT)
    width = 18 + 2 * letters.box.along
    return (
        Line(start=(x, y), end=(x + width, y), weight=HAIR),
        Outline(points=((x + 8, y - 0.6), (x + 3.5, y - 8), (x + 12.5, y - 8)), weight=HAIR),
        letters,
    )


def _stones(top: Point) -> tuple[Ink, ...]:
    """A cap stone and two courses, their joints broken, the lowest left open to the ground."""
    x, y = top
    half, cap = STONE_WIDTH / 2, COURSES[0]
    ink: list[Ink] = [
        Outline(
            points=((x - half, y), (x + half, y), (x + half, y + cap), (x - half, y + cap)),
            fill=PAPER, weight=FINE,
        )
    ]
    level, inset = y + cap, 3.0
    for i, height in enumerate(COURSES[1:]):
        left, right = x - half + inset, x + half - inset
        joints = (-0.36, 0.3) if i % 2 == 0 else (-0.1, 0.62)
        ink += [Line(start=(side, level), end=(side, level + height)) for side in (left, right)]
        ink += [
            Line(start=(x + share * half, level), end=(x + share * half, level + height),
                 weight=HAIR)
            for share in joints
        ]
        level += height
        ink.append(Line(start=(left, level), end=(right, level), weight=HAIR))
    return tuple(ink)


