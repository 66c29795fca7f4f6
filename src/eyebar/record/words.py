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
    TURNBUCKLE_AREA = "turnbuckle area"
    CLEVIS_WIDTH = "clevis width"
    CLEVIS_THICKNESS = "clevis thickness"
    CLEVIS_HOLE = "clevis hole"
    DEPTH = "depth"
    WEB = "web"
    FLANGE = "flange"
    FLANGE_THICKNESS = "flange thickness"
    FLANGE_EDGE = "flange edge"
    FLANGE_AT_WEB = "flange at web"
    UPRIGHT_LEG = "upright leg"
    LEVEL_LEG = "level leg"
    UPRIGHT_LEG_THICKNESS = "upright leg thickness"
    LEVEL_LEG_THICKNESS = "level leg thickness"
    TOP_ANGLE_THICKNESS = "top angle thickness"
    BOTTOM_ANGLE_THICKNESS = "bottom angle thickness"
    COVER_PLATE_WIDTH = "cover plate width"
    COVER_PLATE_THICKNESS = "cover plate thickness"
    BOTTOM_PLATE_WIDTH = "bottom plate width"
    BOTTOM_PLATE_THICKNESS = "bottom plate thickness"
    LACING_WIDTH = "lacing width"
    LACING_THICKNESS = "lacing thickness"
    BATTEN_THICKNESS = "batten thickness"
    PIN_PLATE_WIDTH = "pin plate width"
    PIN_PLATE_THICKNESS = "pin plate thickness"
    PIN_PLATE_HOLE = "pin plate hole"
    PIN_PLATE_BEYOND_HOLE = "pin plate beyond hole"
    SPLICE_PLATE_WIDTH = "splice plate width"
    SPLICE_PLATE_THICKNESS = "splice plate thickness"
    BOW = "bow"
    KINK = "kink"
    PACK_RUST = "pack rust"
    GAP = "gap"
    CRACK = "crack"
    PULL = "pull"
    DECK_THICKNESS = "deck thickness"
    SURFACING_THICKNESS = "surfacing thickness"

    @property
    def dimension(self) -> Dimension:
        """A force for a pull, an area for a turnbuckle's bars; everything else is a length."""
        if self is What.TURNBUCKLE_AREA:
            return Dimension.AREA
        return Dimension.FORCE if self is What.PULL else Dimension.LENGTH


OF_JOINTS = (
    What.PIN_PLATE_WIDTH, What.PIN_PLATE_THICKNESS, What.PIN_PLATE_HOLE,
    What.PIN_PLATE_BEYOND_HOLE, What.SPLICE_PLATE_WIDTH, What.SPLICE_PLATE_THICKNESS,
)
"""What is read where built members end or are joined, and is no size of their section."""

WHAT_CURES = {
    "loss": "write what is left, as in 'what: thickness, value: 5/16 in'",
    "section loss": "write what is left, as in 'what: thickness, value: 5/16 in'",
    "pitting": "write what is left, as in 'what: thickness, value: 5/16 in'",
    "decay": "write what is left sound, as in 'what: depth, value: 9 in'",
    "rot": "write what is left sound, as in 'what: depth, value: 9 in'",
    "bend": "write 'bow' for a bar crooked all along, 'kink' for a sharp bend at one place",
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
