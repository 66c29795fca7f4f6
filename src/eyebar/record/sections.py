"""The sections of a record as they are written: sizes with their text, None where not measured."""

from typing import Annotated, Self

from pydantic import BeforeValidator, model_validator

from eyebar.record.built_sections import (
    AngleSizes,
    ClevisSizes,
    FlangedSegmentSizes,
    HoleSizes,
    PlateAngleSizes,
    TimberSizes,
    ToesWord,
)
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
from eyebar.sections.shapes import Loops, Placed, RodShape, RolledShape, Thread
from eyebar.units import Quantity

RodShapeWord = Annotated[RodShape, BeforeValidator(word(RodShape))]
ThreadWord = Annotated[Thread, BeforeValidator(word(Thread))]
LoopsWord = Annotated[Loops, BeforeValidator(word(Loops))]
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
    """`upset` (the threaded end is swelled), `plain` (as thick as the body), `cut` (cut into the
    body later, with a sharp root) or `none`."""
    root_diameter: Size = None
    """At the root of the thread."""
    turnbuckle: Truth = False
    turnbuckle_area: UnsureArea = None
    """Both open bars of the turnbuckle together."""
    clevis: ClevisSizes | None = None
    """The fork at each end; left out: none."""

    @model_validator(mode="after")
    def _threads_have_a_root(self) -> Self:
        if self.threads is not Thread.NONE and "root_diameter" not in self.model_fields_set:
            raise refusal(self.threads, "threads need their root diameter",
                          "write 'root diameter: 1 1/8 in', or 'root diameter: not measured'")
        return self


class LoopRodSizes(_RoundOrSquare):
    """A set of like loop rods: their ends are loops round the pins."""

    loops: LoopsWord = Loops.WELDED
    """`welded` to the body, or only `bent` round."""


class _Flanged(Entry):
    """What rolled shapes have in common: a flange of one mean thickness, or of two."""

    depth: Size
    web: Size
    """Thickness of the web."""
    flange_thickness: Size = None
    """Mean of the tapering flange."""
    flange_edge: Size = None
    """In its place: the flange's thickness at its edge, and"""
    flange_at_web: Size = None
    """at the web."""

    @property
    def tapered(self) -> bool:
        """Whether the flange is given by its two thicknesses."""
        return "flange_edge" in self.model_fields_set

    @model_validator(mode="before")
    @classmethod
    def _no_name(cls, got: object) -> object:
        if isinstance(got, dict) and "name" in got:
            raise refusal(got["name"], "names a shape, and no table of old shapes is at hand",
                          "measure its depth, web, flange and the flange's two thicknesses: shapes"
                          " of one name had variants")
        return got

    @model_validator(mode="after")
    def _one_thickness_or_two(self) -> Self:
        said = [
            name.replace("_", " ")
            for name in ("flange_thickness", "flange_edge", "flange_at_web")
            if name in self.model_fields_set
        ]
        if said not in (["flange thickness"], ["flange edge", "flange at web"]):
            raise refusal(
                " and ".join(said) or None, "does not tell how thick the flange is",
                "write 'flange thickness', or 'flange edge' and 'flange at web'",
            )
        if self.flange_edge and self.flange_at_web and (
            self.flange_edge.exact > self.flange_at_web.exact
        ):
            raise refusal(self.flange_edge, "is thicker at the flange's edge than at the web",
                          "flanges grow thicker towards the web; exchange the two")
        return self


class ChannelSizes(_Flanged):
    """Two like channels with their webs upright."""

    flange: Size
    """Width of the flange, from the back of the web."""
    apart: Size
    """Clear distance between the inner faces of the webs."""
    toes: ToesWord
    """Which way the flanges point: `out` or `in`."""


class LacingSizes(Entry):
    """Zigzag lacing bars: `lacing: {bar: 2 in x 1/4 in, pitch: 14 in, planes: 1}`."""

    bar: SidesField
    pitch: Size
    """Between neighbouring fastenings on one piece: twice the advance of one bar."""
    planes: Planes
    rivet: Size = None
    """Diameter of the rivets that hold it; left out: not recorded."""


class BattenSizes(Entry):
    """Batten plates: `battens: {plate: 10 in x 1/4 in, length: 8 in, pitch: 3 ft, planes: 1}`."""

    plate: SidesField
    """Width across the member, and thickness."""
    length: Size
    """Along the member."""
    pitch: Size
    """From centre to centre."""
    planes: Planes


class RolledSizes(_Flanged):
    """One rolled shape by its measures, or several side by side."""

    shape: RolledWord
    number: Count = 1
    flange: Size
    """Whole width of the flange; of an angle, the other leg."""

    @model_validator(mode="after")
    def _only_beams_taper(self) -> Self:
        if self.tapered and self.shape not in (RolledShape.I, RolledShape.CHANNEL):
            raise refusal(self.shape, "has one flange thickness", "write 'flange thickness'")
        return self


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


MAIN_SHAPES = (
    "eyebars", "rods", "loop rods", "channels", "angles", "plates and angles", "flanged segments",
    "rolled", "plates", "timber", "given",
)
"""A section is one of these."""
PLATED = ("channels", "plates and angles")
"""Sections that take plates on top and below."""
TIED = (*PLATED, "angles")
"""Sections that may be tied by lacing or battens."""
ATTACHED = {
    "cover plate": PLATED, "cover plate holes": PLATED, "bottom plate": PLATED,
    "bottom plate holes": PLATED, "rivet lines": PLATED, "lacing": TIED, "battens": TIED,
}
"""What may stand beside a section -> the sections that take it."""
LACED = (Placed.LACED, Placed.BOX)


class SectionEntry(Entry):
    """What a member is made of: exactly one of `MAIN_SHAPES`."""

    eyebars: EyebarSizes | None = None
    rods: RodSizes | None = None
    loop_rods: LoopRodSizes | None = None
    channels: ChannelSizes | None = None
    angles: AngleSizes | None = None
    plates_and_angles: PlateAngleSizes | None = None
    flanged_segments: FlangedSegmentSizes | None = None
    cover_plate: SidesField | None = None
    cover_plate_holes: HoleSizes | None = None
    bottom_plate: SidesField | None = None
    bottom_plate_holes: HoleSizes | None = None
    rivet_lines: Size = None
    """Distance between the rivets along a plate's two edges; left out: as far as can be."""
    lacing: LacingSizes | None = None
    battens: BattenSizes | None = None
    rolled: RolledSizes | None = None
    plates: tuple[SidesField, ...] | None = None
    """Flat plates side by side, upright: width across, thickness."""
    timber: TimberSizes | None = None
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
        return self

    @model_validator(mode="after")
    def _what_stands_beside(self) -> Self:
        for name, shapes in ATTACHED.items():
            if self._has(name) and not any(self._has(shape) for shape in shapes):
                raise refusal(name, f"belongs to {_either(shapes)}, not to {self.shape}",
                              f"leave it out, or write the {shapes[0]}")
        for plate in ("cover plate", "bottom plate"):
            if self._has(f"{plate} holes") and not self._has(plate):
                raise refusal(f"{plate} holes", f"has no {plate} to be in", f"write '{plate}:'")
        return self

    @model_validator(mode="after")
    def _laced_angles_have_lacing(self) -> Self:
        ties = self.lacing or self.battens
        if self.angles is not None:
            if self.angles.placed in LACED and ties is None:
                raise refusal(self.angles.placed, "has no lacing or battens",
                              "write 'lacing:' or 'battens:' beside the angles")
            if self.angles.placed not in LACED and ties is not None:
                raise refusal(self.angles.placed, "has lacing or battens",
                              "angles that are tied so are placed 'laced' or 'box'")
        webs = self.plates_and_angles
        if webs is not None and webs.webs == 1 and ties is not None:
            raise refusal("1 web", "has lacing or battens", "leave them out, or write 'webs: 2'")
        return self


def _either(shapes: tuple[str, ...]) -> str:
    """`channels or plates and angles`."""
    return " or ".join(shapes)
