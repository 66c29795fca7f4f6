"""The closed lists of words by which a record lays out a truss from a few sizes."""

from enum import StrEnum


class Form(StrEnum):
    """The forms of truss that are laid out from panels and depth."""

    KING_POST = "king post"
    QUEEN_POST = "queen post"
    PRATT = "Pratt"
    HALF_HIP_PRATT = "half-hip Pratt"
    SMALL_PRATT = "small Pratt"
    DOUBLE_INTERSECTION_PRATT = "double-intersection Pratt"
    PARKER = "Parker"
    CAMELBACK = "Camelback"
    WARREN = "Warren"
    WARREN_WITH_VERTICALS = "Warren with verticals"
    DOUBLE_INTERSECTION_WARREN = "double-intersection Warren"
    HOWE = "Howe"
    BALTIMORE = "Baltimore"
    PENNSYLVANIA = "Pennsylvania"
    BOWSTRING = "bowstring"
    LENTICULAR = "lenticular"


FORM_CURES = {
    "Whipple": "did you mean 'double-intersection Pratt'?",
    "half-hip": "did you mean 'half-hip Pratt'?",
    "Petit": "did you mean 'Pennsylvania', or 'Baltimore' where the upper chord is level?",
    "Pettit": "did you mean 'Pennsylvania', or 'Baltimore' where the upper chord is level?",
    "pony": "name the form of the truss, and leave out what is not overhead",
    "deck": "name the form of the truss, and write 'floor: on the upper chord'",
}
"""Words that a field book may use, and what to write instead."""

SUBDIVIDED = (Form.BALTIMORE, Form.PENNSYLVANIA)
"""Every main panel is halved: `panels` counts the halves, each with a floor joint."""

POINTED = (Form.BOWSTRING, Form.LENTICULAR)
"""The chords meet over the bearings: their depth there is nothing."""

CURVED = (Form.PARKER, Form.CAMELBACK, Form.PENNSYLVANIA, *POINTED)
"""One chord at least is not level."""


class EndPosts(StrEnum):
    """How a truss ends: posts that lean, posts that stand upright, or none, the truss hanging from
    the ends of its upper chord.
    """

    INCLINED = "inclined"
    VERTICAL = "vertical"
    NONE = "none"


class FloorOn(StrEnum):
    """Which chord carries the floor: the lower one of a through or pony truss, or a deck's."""

    LOWER = "on the lower chord"
    UPPER = "on the upper chord"


class SubMembers(StrEnum):
    """What holds the middle of a diagonal: a strut from below, or a tie from above."""

    STRUTS = "sub-struts"
    TIES = "sub-ties"


class CurveShape(StrEnum):
    """The line on which the joints of a curved chord lie."""

    PARABOLA = "parabola"
    CIRCLE = "circle"
    FIVE_SLOPES = "five slopes"
