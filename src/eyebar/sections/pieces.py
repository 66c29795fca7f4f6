"""The pieces that built-up shapes are made of: plates, channels, angles, and what ties them.

All lengths in inches. `None` stands for a size that was never measured.
"""

from dataclasses import dataclass
from enum import StrEnum


class Toes(StrEnum):
    """Which way flanges or legs point: towards each other, or away."""

    IN = "in"
    OUT = "out"


@dataclass(frozen=True, slots=True, kw_only=True)
class Holes:
    """Access holes along the middle of a plate: `width` across, `length` and `spacing` along."""

    width: float | None
    length: float | None
    spacing: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Plate:
    """A flat plate: width across, thickness."""

    width: float | None
    thickness: float | None
    holes: Holes | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Taper:
    """A flange that grows thicker towards its web: thickness at its `edge` and `at_web`."""

    edge: float | None
    at_web: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Channel:
    """One rolled channel by its measures: the flange by its mean thickness, or by its taper."""

    depth: float | None
    web: float | None
    flange: float | None
    """Width of the flange, from the back of the web."""
    flange_thickness: float | None
    taper: Taper | None = None
    """Where it is there, `flange_thickness` counts for nothing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Angle:
    """One angle: its upright and its level leg, over the heel, each with its own thickness."""

    upright: float | None
    level: float | None
    upright_thickness: float | None
    level_thickness: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Lacing:
    """Single zigzag lacing bars in one or two planes.

    `pitch` is the distance along the member between neighbouring fastenings on the same piece,
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
