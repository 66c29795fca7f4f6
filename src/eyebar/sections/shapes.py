"""The shapes that bars are made of, as built and as rust has left them.

A section is kept as its parts, each with its own thickness. All lengths in inches. `None` stands
for a size that was never measured: it is not zero, and what needs it is not rated.
"""

from dataclasses import dataclass
from enum import StrEnum

from eyebar.sections.built import (
    Angles,
    Channels,
    FlangedSegments,
    Placed,
    PlatesAndAngles,
    Segment,
    Side,
    Stick,
    Timbers,
)
from eyebar.sections.pieces import (
    Angle,
    Battens,
    Channel,
    Holes,
    Lacing,
    Plate,
    Taper,
    Toes,
)

__all__ = [
    "Angle", "Angles", "Battens", "Channel", "Channels", "Clevis", "Eyebar", "Eyebars",
    "FlangedSegments", "Given", "Holes", "Lacing", "Loops", "Placed", "Plate", "Plates",
    "PlatesAndAngles", "Rod", "RodShape", "Rods", "Rolled", "RolledShape", "Section", "Segment",
    "Side", "Stick", "Taper", "Thread", "Timbers", "Toes",
]


class Thread(StrEnum):
    """How a rod's end is threaded: on a swelled end, on one as thick as the body, or cut into the
    body later, with a sharp root."""

    NONE = "none"
    PLAIN = "plain"
    UPSET = "upset"
    CUT = "cut"


class Loops(StrEnum):
    """How the eye of a loop rod is closed: forge-welded to the body, or only bent round."""

    WELDED = "welded"
    BENT = "bent"


class RodShape(StrEnum):
    """A rod is round or square."""

    ROUND = "round"
    SQUARE = "square"


class RolledShape(StrEnum):
    """A rolled shape by its outline."""

    I = "I"
    CHANNEL = "channel"
    ANGLE = "angle"
    TEE = "tee"


@dataclass(frozen=True, slots=True, kw_only=True)
class Eyebar:
    """One eyebar: body and the weaker of its two heads.

    `head` is the width of the head across the hole's centre, `beyond` the metal beyond the hole in
    the line of the bar (None: taken as (head - hole) / 2, a round head), `thickness` that of the
    body and `head_thickness` that of the head where it differs.
    """

    width: float | None
    thickness: float | None
    head: float | None
    hole: float | None
    beyond: float | None = None
    head_thickness: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Eyebars:
    """A set of eyebars side by side on the same pins."""

    bars: tuple[Eyebar, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Clevis:
    """The fork at a rod's end: two jaws alike, each `width` across its `hole`, `thickness`.

    `beyond` is the metal beyond the hole in the line of the rod (None: a round jaw).
    """

    width: float | None
    thickness: float | None
    hole: float | None
    beyond: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Rod:
    """One rod or loop rod: its body, its thread, its turnbuckle's open bars, its clevis."""

    shape: RodShape
    size: float | None
    """Diameter of a round rod, side of a square one."""
    threads: Thread = Thread.NONE
    root_diameter: float | None = None
    turnbuckle: bool = False
    turnbuckle_area: float | None = None
    """Both open bars together [in2]; None where not measured."""
    looped: bool = False
    """True for a loop rod: its ends are loops round the pins, without threads."""
    loops: Loops = Loops.WELDED
    clevis: Clevis | None = None
    """The weaker of its two clevises; None where it has none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rods:
    """A set of rods side by side."""

    rods: tuple[Rod, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Rolled:
    """One rolled shape by its measures, or several side by side (`number`)."""

    shape: RolledShape
    number: int
    depth: float | None
    web: float | None
    flange: float | None
    flange_thickness: float | None
    taper: Taper | None = None
    """Of an I or a channel; where it is there, `flange_thickness` counts for nothing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plates:
    """Flat plates side by side, upright."""

    plates: tuple[Plate, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Given:
    """Properties given as numbers, with where they come from.

    In inches: area, radii of gyration about the horizontal (`r_x`) and upright (`r_y`) axes, and
    distances from the centre of gravity to the extreme fibres above, below and at the side.
    """

    area: float
    net_area: float | None
    r_x: float | None
    r_y: float | None
    top: float | None
    bottom: float | None
    source: str
    side: float | None = None


Section = (
    Eyebars | Rods | Channels | Angles | PlatesAndAngles | FlangedSegments | Rolled | Plates
    | Timbers | Given
)
"""Any section a bar may have."""
