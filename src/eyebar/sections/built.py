"""The built-up shapes: several pieces riveted, laced or battened into one member.

Upright means in the plane of the truss, across means from the near side (of the road) to the far
one. A shape is kept as its pieces, so that each may lose its own.
"""

from dataclasses import dataclass
from enum import StrEnum

from eyebar.sections.pieces import Angle, Battens, Channel, Lacing, Plate, Toes


class Placed(StrEnum):
    """How the angles of a member stand to each other."""

    SINGLE = "single"
    BACK_TO_BACK = "back to back"
    STAR = "star"
    LACED = "laced"
    BOX = "box"


class Spread(StrEnum):
    """Which way the pieces of a laced member stand apart."""

    ACROSS = "across the truss"
    UPRIGHT = "in the plane of the truss"


@dataclass(frozen=True, slots=True, kw_only=True)
class Channels:
    """Two channels, webs upright, joined by plates above and below, lacing or battens.

    `apart` is the clear distance between the backs of the webs (toes out) or between the outer
    faces less both webs (toes in): in both cases the distance between the webs' inner faces.
    `rivet_lines` is the distance between the rivets that hold a plate's two edges, None where not
    recorded.
    """

    near: Channel
    far: Channel
    apart: float | None
    toes: Toes
    cover: Plate | None = None
    bottom: Plate | None = None
    lacing: Lacing | None = None
    battens: Battens | None = None
    rivet_lines: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Angles:
    """Angles by themselves or as one member; counted from the near side, the upper ones first.

    - single: level leg on top, upright leg on the near side;
    - back to back: two, upright legs' backs `apart`, level legs on top;
    - star: two (far upper, near lower) or four about a cross, `apart` both ways;
    - laced: two facing angles, or two facing pairs whose backs are `apart` (the lacing bars lie
      between). By `spread` one stands above the other, their backs `backs` apart, or beside it,
      `backs_across` apart; with toes in the backs look outwards, with toes out at each other;
    - box: four at the corners of a rectangle, `backs` high and `backs_across` wide, laced on all
      four sides.

    `separate` marks angles that pack rust has parted: each bends by itself.
    """

    angles: tuple[Angle, ...]
    placed: Placed
    apart: float | None = None
    backs: float | None = None
    backs_across: float | None = None
    spread: Spread = Spread.UPRIGHT
    toes: Toes = Toes.IN
    lacing: Lacing | None = None
    battens: Battens | None = None
    separate: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """One side of a member of plates and angles: its web plate and what is riveted to it."""

    web: Plate | None
    """Width is its depth. None where one web in the middle serves both sides."""
    top: Angle | None
    bottom: Angle | None


@dataclass(frozen=True, slots=True, kw_only=True)
class PlatesAndAngles:
    """Web plates with angles along their edges, and plates above and below.

    Two webs `apart` (between their inner faces) with angles on their outer faces (toes out) or
    inner ones (toes in), or one web in the `middle` with angles on both faces. The angles' backs
    are flush with the webs' edges.
    """

    near: Side
    far: Side
    middle: Plate | None
    apart: float | None
    toes: Toes
    cover: Plate | None = None
    bottom: Plate | None = None
    lacing: Lacing | None = None
    battens: Battens | None = None
    rivet_lines: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Segment:
    """One rolled segment of a round column with a flange along each edge.

    `thickness` of its curved wall; `flange` is how far its flanges project from the wall's outer
    face, `flange_thickness` how thick each is.
    """

    thickness: float | None
    flange: float | None
    flange_thickness: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class FlangedSegments:
    """A round hollow column of equal segments, riveted together through their flanges."""

    segments: tuple[Segment, ...]
    inside: float | None
    """Inside diameter of the round."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stick:
    """One stick of timber: `width` across the truss, `depth` in its plane."""

    width: float | None
    depth: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Timbers:
    """Sticks of timber side by side; what ties them is not counted on."""

    sticks: tuple[Stick, ...]
