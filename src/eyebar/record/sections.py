"""The sections of a record as they are written: sizes with their text, None where not measured."""

from typing import Annotated, Self

from pydantic import BeforeValidator, model_validator

from eyebar.record.fields import (
    Area,
    Count,
    Entry,
    Planes,
    SidesField,
    Size,
    Text,
    Truth,
    UnsureArea,
    refusal,
    word,
)
from eyebar.sections.shapes import RodShape, RolledShape, Thread, Toes
from eyebar.units import Quantity

RodShapeWord = Annotated[RodShape, BeforeValidator(word(RodShape))]
ThreadWord = Annotated[Thread, BeforeValidator(word(Thread))]
ToesWord = Annotated[Toes, BeforeValidator(word(Toes))]
RolledWord = Annotated[RolledShape, BeforeValidator(word(RolledShape))]


class EyebarSizes(Entry):
    """A set of like eyebars: `eyebars: {number: 2, width: 3 in, thickness: 3/4 in, ...}`."""

    number: Count
    width: Size
    thickness: Size
    head: Size
    """Width of the head across the hole."""
    hole: Size
    beyond_hole: Size = None
    """Metal beyond the hole in the line of the bar; left out for a round head."""
    head_thickness: Size = None
    """Left out where the head is as thick as the body."""

    @model_validator(mode="after")
    def _head_and_hole(self) -> Self:
        if self.head and self.width and self.head.exact < self.width.exact:
            raise refusal(self.head, f"is a head smaller than its body of '{self.width}'",
                          "measure the head across the hole, and the body")
        if self.head and self.hole and self.hole.exact >= self.head.exact:
            raise refusal(self.hole, f"is a hole no narrower than its head of '{self.head}'",
                          "measure the hole, and the head across it")
        return self


class _RoundOrSquare(Entry):
    """What rods and loop rods have in common: `shape: round` with a diameter, or square, a side."""

    number: Count
    shape: RodShapeWord
    diameter: Size = None
    side: Size = None

    @property
    def size(self) -> Quantity | None:
        """Diameter of a round rod, side of a square one; None where not measured."""
        return self.diameter if self.shape is RodShape.ROUND else self.side

    @model_validator(mode="after")
    def _size_fits_shape(self) -> Self:
        wanted, other = ("diameter", "side") if self.shape is RodShape.ROUND else (
            "side", "diameter")
        if other in self.model_fields_set or wanted not in self.model_fields_set:
            raise refusal(self.shape, f"needs a {wanted} and no {other}",
                          f"write '{wanted}: 1 in', or '{wanted}: not measured'")
        return self


class RodSizes(_RoundOrSquare):
    """A set of like rods with threaded ends or turnbuckles."""

    threads: ThreadWord
    """`upset` (the threaded end is swelled), `plain` (cut into the body) or `none`."""
    root_diameter: Size = None
    """At the root of the thread."""
    turnbuckle: Truth = False
    turnbuckle_area: UnsureArea = None
    """Both open bars of the turnbuckle together."""

    @model_validator(mode="after")
    def _threads_have_a_root(self) -> Self:
        if self.threads is not Thread.NONE and "root_diameter" not in self.model_fields_set:
            raise refusal(self.threads, "threads need their root diameter",
                          "write 'root diameter: 1 1/8 in', or 'root diameter: not measured'")
        return self


class LoopRodSizes(_RoundOrSquare):
    """A set of like loop rods: their ends are loops welded round the pins."""


class ChannelSizes(Entry):
    """Two like channels with their webs upright."""

    depth: Size
    web: Size
    """Thickness of the web."""
    flange: Size
    """Width of the flange, from the back of the web."""
    flange_thickness: Size
    """Mean of the tapering flange."""
    apart: Size
    """Clear distance between the inner faces of the webs."""
    toes: ToesWord
    """Which way the flanges point: `out` or `in`."""


class LacingSizes(Entry):
    """Zigzag lacing bars: `lacing: {bar: 2 in x 1/4 in, pitch: 14 in, planes: 1}`."""

    bar: SidesField
    pitch: Size
    """Between neighbouring fastenings on one channel: twice the advance of one bar."""
    planes: Planes


class BattenSizes(Entry):
    """Batten plates: `battens: {plate: 10 in x 1/4 in, length: 8 in, pitch: 3 ft, planes: 1}`."""

    plate: SidesField
    """Width across the member, and thickness."""
    length: Size
    """Along the member."""
    pitch: Size
    """From centre to centre."""
    planes: Planes


class RolledSizes(Entry):
    """One rolled shape by its measures, or several side by side."""

    shape: RolledWord
    number: Count = 1
    depth: Size
    web: Size
    flange: Size
    """Whole width of the flange; of an angle, the other leg."""
    flange_thickness: Size


class GivenSizes(Entry):
    """Properties given as numbers, with where they come from."""

    area: Area
    net_area: UnsureArea = None
    radius_x: Size = None
    """Radius of gyration about the horizontal axis."""
    radius_y: Size = None
    """Radius of gyration about the upright axis."""
    top: Size = None
    """From the centre of gravity to the extreme fibre above."""
    bottom: Size = None
    source: Text

    @model_validator(mode="after")
    def _net_within_gross(self) -> Self:
        if self.net_area and self.net_area.exact > self.area.exact:
            raise refusal(self.net_area, f"is a net area greater than the area of '{self.area}'",
                          "look for a slip of the pen")
        return self


MAIN_SHAPES = ("eyebars", "rods", "loop rods", "channels", "rolled", "plates", "given")
"""A section is one of these; only channels take a cover plate, lacing or battens."""


class SectionEntry(Entry):
    """What a member is made of: exactly one of `MAIN_SHAPES`."""

    eyebars: EyebarSizes | None = None
    rods: RodSizes | None = None
    loop_rods: LoopRodSizes | None = None
    channels: ChannelSizes | None = None
    cover_plate: SidesField | None = None
    lacing: LacingSizes | None = None
    battens: BattenSizes | None = None
    rolled: RolledSizes | None = None
    plates: tuple[SidesField, ...] | None = None
    """Flat plates side by side, upright: width across, thickness."""
    given: GivenSizes | None = None

    @property
    def shape(self) -> str:
        """Which of `MAIN_SHAPES` it is."""
        return next(shape for shape in MAIN_SHAPES if self._has(shape))

    def _has(self, shape: str) -> bool:
        return getattr(self, shape.replace(" ", "_")) is not None

    @model_validator(mode="after")
    def _one_shape(self) -> Self:
        found = [shape for shape in MAIN_SHAPES if self._has(shape)]
        if len(found) != 1:
            got = " and ".join(found) if found else None
            raise refusal(got, "is not one section",
                          f"write exactly one of: {', '.join(MAIN_SHAPES)}")
        beside = [name for name in ("cover plate", "lacing", "battens") if self._has(name)]
        if beside and self.channels is None:
            raise refusal(beside[0], f"belongs to channels, not to {found[0]}",
                          "leave it out, or write the channels")
        return self

