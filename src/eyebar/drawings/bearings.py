"""What a truss rests on, drawn under its end pins: a shoe on the stone, or a shoe on rollers."""

from eyebar.drawings.boxes import Box, Point, upright
from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import FINE, HAIR, MIDDLE, Circle, Ink, Line, Outline
from eyebar.drawings.lettering import FAINT, INK, PAPER, on_line, run

SHOE = 17.0
"""Height of the shoe under the pin; rollers take a part of it."""
ROLLER = 2.6
STONE_WIDTH = 52.0
WIDTH = 84.0
"""Breadth of a bearing with its lettering."""
COURSES = (13.0, 11.0, 11.0)
"""Heights of the cap stone and of the courses under it."""
LETTERS = 10.5
DEPTH = SHOE + sum(COURSES) + 17.0
"""How far a bearing with its lettering reaches below the pin."""


def bearing_ink(pin: Point, *, held: tuple[bool, bool], name: str, colour: str) -> tuple[Ink, ...]:
    """A bearing on its stones, with its name under them.

    `held` says whether the pin is held lengthwise and upright. One that is free lengthwise stands
    on rollers; one that is only held lengthwise has no stone to stand on, and gets its name alone.
    """
    x, y = pin
    word = f"{name}, {'fixed' if held[0] else 'on rollers'}"
    named = on_line((run(word, LETTERS, Face.SLANTED),), (x, y + DEPTH - 4), share=0.5,
                    colour=FAINT if colour == INK else colour)
    if not held[1]:
        return (named,)
    under = y + SHOE - (0.0 if held[0] else 2 * ROLLER + 1)
    shoe = Outline(
        points=((x - 4, y + 2), (x + 4, y + 2), (x + 15, under), (x - 15, under)),
        fill=PAPER, weight=FINE, colour=colour,
    )
    rollers = () if held[0] else tuple(
        Circle(centre=(x + i * 7.0, y + SHOE - ROLLER - 0.6), radius=ROLLER, fill=PAPER,
               colour=colour)
        for i in (-2, -1, 0, 1, 2)
    )
    plate = Line(start=(x - 20, y + SHOE), end=(x + 20, y + SHOE), weight=MIDDLE, colour=colour)
    return (*_stones((x, y + SHOE)), shoe, *rollers, plate, named)


def stones_box(pin: Point) -> Box:
    """The box around the stones under a pin."""
    x, y = pin
    return upright(x - STONE_WIDTH / 2, y + SHOE, x + STONE_WIDTH / 2, y + SHOE + sum(COURSES))


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


