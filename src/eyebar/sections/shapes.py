"""The shapes that bars are made of, as built and as rust has left them.

A section is kept as its parts, each with its own thickness. All lengths in inches. `None` stands
for a size that was never measured: it is not zero, and what needs it is not rated.
"""

from dataclasses import dataclass
from enum import StrEnum


class Thread(StrEnum):
    """How a rod's end is threaded."""

    NONE = "none"
    PLAIN = "plain"
    UPSET = "upset"


class RodShape(StrEnum):
    """A rod is round or square."""

    ROUND = "round"
    SQUARE = "square"


class Toes(StrEnum):
    """Which way the flanges of two channels point."""

    IN = "in"
    OUT = "out"


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
class Rod:
    """One rod or loop rod: its body, its thread, its turnbuckle's open bars."""

    shape: RodShape
    size: float | None
    """Diameter of a round rod, side of a square one."""
    threads: Thread = Thread.NONE
    root_diameter: float | None = None
    turnbuckle: bool = False
    turnbuckle_area: float | None = None
    """Both open bars together [in2]; None where not measured."""
    looped: bool = False
    """True for a loop rod: its ends are loops welded round the pins, without threads."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rods:
    """A set of rods side by side."""

    rods: tuple[Rod, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Channel:
    """One rolled channel by its four measures; the flange tapers, its mean thickness is given."""

    depth: float | None
    web: float | None
    flange: float | None
    """Width of the flange, from the back of the web."""
    flange_thickness: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Plate:
    """A flat plate: width across, thickness."""

    width: float | None
    thickness: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Lacing:
    """Single zigzag lacing bars in one or two planes.

    `pitch` is the distance along the member between neighbouring fastenings on the same channel,
    which is twice the advance of one bar.
    """

    bar: Plate
    pitch: float | None
    planes: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Battens:
    """Batten plates: `width` across, `thickness`, `length` along the member, `pitch` of centres."""

    plate: Plate
    length: float | None
    pitch: float | None
    planes: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Channels:
    """Two channels, webs upright, joined by a cover plate above, lacing or battens.

    `apart` is the clear distance between the backs of the webs (toes out) or between the outer
    faces less both webs (toes in): in both cases the distance between the webs' inner faces.
    """

    near: Channel
    far: Channel
    apart: float | None
    toes: Toes
    cover: Plate | None = None
    lacing: Lacing | None = None
    battens: Battens | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Rolled:
    """One rolled shape by its measures, or several side by side (`number`)."""

    shape: RolledShape
    number: int
    depth: float | None
    web: float | None
    flange: float | None
    flange_thickness: float | None


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


Section = Eyebars | Rods | Channels | Rolled | Plates | Given
"""Any section a bar may have."""
