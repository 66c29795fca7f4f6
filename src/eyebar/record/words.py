"""The closed lists of words that only a record uses."""

from enum import StrEnum

from eyebar.units import Dimension


class Bearing(StrEnum):
    """How an end of a truss sits: `frozen` was free to slide and no longer does."""

    FIXED = "fixed"
    FREE = "free"
    FROZEN = "frozen"


class EndFixing(StrEnum):
    """How a member ends."""

    PINNED = "pinned"
    RIVETED = "riveted"
    BOLTED = "bolted"
    WELDED = "welded"


class DeckKind(StrEnum):
    """What the wheels' floor is made of."""

    PLANK = "plank"
    NAIL_LAMINATED = "nail-laminated"
    GLUED_LAMINATED = "glued-laminated"
    STEEL_PLANK = "steel plank"
    STEEL_GRATING = "steel grating"
    CONCRETE = "concrete"


class SurfacingKind(StrEnum):
    """What lies on the deck."""

    NONE = "none"
    GRAVEL = "gravel"
    EARTH = "earth"
    ASPHALT = "asphalt"
    CONCRETE = "concrete"
    WEARING_PLANKS = "wearing planks"


class RoadSurface(StrEnum):
    """How even the road is, which decides the shock of a passing truck."""

    SMOOTH = "smooth"
    MINOR_DEPRESSIONS = "minor depressions"
    ROUGH = "rough"


class What(StrEnum):
    """What a reading measures. A size of metal is what is left of it, not what is lost."""

    THICKNESS = "thickness"
    WIDTH = "width"
    DIAMETER = "diameter"
    SIDE = "side"
    HEAD = "head"
    HOLE = "hole"
    BEYOND_HOLE = "beyond hole"
    HEAD_THICKNESS = "head thickness"
    ROOT_DIAMETER = "root diameter"
    DEPTH = "depth"
    WEB = "web"
    FLANGE = "flange"
    FLANGE_THICKNESS = "flange thickness"
    COVER_PLATE_WIDTH = "cover plate width"
    COVER_PLATE_THICKNESS = "cover plate thickness"
    LACING_WIDTH = "lacing width"
    LACING_THICKNESS = "lacing thickness"
    BATTEN_THICKNESS = "batten thickness"
    BOW = "bow"
    GAP = "gap"
    CRACK = "crack"
    PULL = "pull"
    DECK_THICKNESS = "deck thickness"
    SURFACING_THICKNESS = "surfacing thickness"

    @property
    def dimension(self) -> Dimension:
        """A force for a pull; everything else is a length."""
        return Dimension.FORCE if self is What.PULL else Dimension.LENGTH


WHAT_CURES = {
    "loss": "write what is left, as in 'what: thickness, value: 5/16 in'",
    "section loss": "write what is left, as in 'what: thickness, value: 5/16 in'",
    "pitting": "write what is left, as in 'what: thickness, value: 5/16 in'",
    "tension": "did you mean 'pull'?",
}
"""Words that a field book may use, and what to write instead."""


class Decided(StrEnum):
    """What was decided on a part."""

    REPAIR = "repair"
    BROKEN = "broken"
    LOOSE = "loose"
    PULL_ACCEPTED = "pull accepted"
    CRACK_FOUND = "crack found"
