"""Floor and road as sizes and weights."""

import re
from collections.abc import Mapping
from typing import Annotated, Self

from pydantic import BeforeValidator, Field, InstanceOf, model_validator

from eyebar.record.fields import (
    Distance,
    Entry,
    Lanes,
    Length,
    Size,
    Text,
    TrussName,
    Truth,
    UnsureArea,
    UnsureCoordinate,
    UnsureCount,
    UnsureLength,
    UnsureStress,
    perhaps,
    refusal,
    weighing,
    word,
)
from eyebar.record.floor_members import (
    FloorbeamPart,
    HangerEntry,
    RunsWord,
    ShoesEntry,
    SidewalkEntry,
    StringerGroupEntry,
    StringerPart,
    TimberEntry,
)
from eyebar.record.trusses import JointList
from eyebar.record.words import DeckKind, RoadSurface, SurfacingKind
from eyebar.units import Dimension, Quantity

SheetWeight = Annotated[
    InstanceOf[Quantity], BeforeValidator(weighing(Dimension.DENSITY, Dimension.SURFACE_LOAD))
]
"""A weight by volume or by area."""
BeamWeight = Annotated[
    InstanceOf[Quantity] | None,
    BeforeValidator(
        perhaps(weighing(Dimension.LINE_LOAD, Dimension.FORCE, Dimension.DENSITY))
    ),
]
"""A weight along the length, of one piece, or by volume; None where not measured."""
LineWeight = Annotated[
    InstanceOf[Quantity] | None, BeforeValidator(perhaps(weighing(Dimension.LINE_LOAD)))
]
"""A weight along the bridge; None where not measured."""

SurfaceWord = Annotated[RoadSurface, BeforeValidator(word(RoadSurface))]
DeckWord = Annotated[DeckKind, BeforeValidator(word(DeckKind))]
SurfacingWord = Annotated[SurfacingKind, BeforeValidator(word(SurfacingKind))]
CURB = re.compile(r"curb to (.+) truss")
"""The key of a curb's distance, which names the truss."""


def _curbs_gathered(got: object) -> object:
    """`curb to upstream truss: 1 ft` as an entry of `curbs`."""
    if not isinstance(got, dict):
        return got
    curbs = {key: value for key, value in got.items() if CURB.fullmatch(str(key))}
    rest = {key: value for key, value in got.items() if key not in curbs}
    if curbs:
        rest["curbs"] = {CURB.fullmatch(key)[1]: value  # type: ignore[index]
                         for key, value in curbs.items()}
    return rest


class SlabBarsEntry(Entry):
    """The main bars on one face of a slab of concrete."""

    diameter: Size
    """Of square bars the side."""
    every: Size
    """From bar to bar."""
    cover: Size
    """From the slab's face as built to the bars."""
    square: Truth = False
    yield_stress: UnsureStress


class DeckEntry(Entry):
    """The deck that the wheels' floor is made of; it counts as dead load that stays."""

    kind: DeckWord
    thickness: Size
    weight: SheetWeight
    width: Length | None = None
    """Left out: the clear width."""
    runs: RunsWord | None = None
    """Which way it spans."""
    material: Text | None = None
    """A timber of the floor, or a material of the record."""
    plank_width: Size = None
    """Of one plank, lamination or panel."""
    clear: Size = None
    """Between its supports; left out: between the stringers."""
    support: Size = None
    """Width of a support; left out: that of the stringers."""
    continuous: Truth = False
    """True where its planks run on over more than two spans."""
    joined: Truth = False
    """True where panels or laminations run on or are tied to each other."""
    section_modulus: UnsureArea = None
    """Of a deck of steel, for each inch of width: in3 an inch is in2."""
    bars_apart: Size = None
    """Spacing of a grating's main bars."""
    concrete_strength: UnsureStress = None
    """Of a slab: crushing strength, from cores or from papers."""
    lower_bars: SlabBarsEntry | None = None
    """Of a slab: those along its span, below."""
    upper_bars: SlabBarsEntry | None = None
    """Those above, over the stringers."""


class SurfacingEntry(Entry):
    """What lies on the deck and may be laid on or taken off."""

    kind: SurfacingWord
    thickness: Size
    weight: SheetWeight
    measured: Truth
    """True where the thickness was measured in the field."""
    width: Length | None = None


class StringersEntry(StringerPart):
    """The stringers of one panel, all alike but for what `groups` and overrides say."""

    number: UnsureCount
    weight: BeamWeight
    """By volume (with `size`), or along the length of one."""
    material: Text
    spacing: Length | None = None
    spacings: tuple[Length, ...] | None = None
    """In the place of `spacing`, where they are uneven: from the first stringer on."""
    first: Distance | None = None
    """From the first truss's centre line; left out: they lie about the road's middle."""
    continuous: Truth = False
    """True where they run on over the floorbeams."""
    cut_at: JointList | None = None
    """The joints at which stringers that run on are cut; left out: at none."""
    groups: Mapping[str, StringerGroupEntry] = Field(default_factory=dict)

    @model_validator(mode="after")
    def _spacings_fit(self) -> Self:
        if self.spacings is None:
            return self
        if self.spacing is not None:
            raise refusal("spacing and spacings", "say the same twice", "leave one of them out")
        if self.number is not None and len(self.spacings) != self.number - 1:
            raise refusal(
                f"{len(self.spacings)} spacings", f"do not go with {self.number} stringers",
                f"write {self.number - 1}, one between each two",
            )
        return self


class FloorbeamsEntry(FloorbeamPart):
    """The floorbeams, one at each floor joint between the ends."""

    weight: BeamWeight
    """Of one, or along its length (with `length`)."""
    length: Length | None = None


class LineWeightEntry(Entry):
    """Something that runs along the bridge."""

    weight: LineWeight
    truss: TrussName | None = None
    """The truss that carries it; left out: both alike."""


class RailingEntry(Entry):
    """The railing, along each side."""

    weight: LineWeight


class FloorEntry(Entry):
    """Floor and road, as sizes and weights."""

    clear_width: UnsureLength
    """Between the curbs."""
    curbs: Mapping[TrussName, UnsureCoordinate]
    """Truss -> from its centre line to the face of its curb."""
    deck: DeckEntry
    surfacing: SurfacingEntry | None = None
    stringers: StringersEntry
    floorbeams: FloorbeamsEntry
    railing: RailingEntry | None = None
    utilities: Mapping[str, LineWeightEntry] = Field(default_factory=dict)
    bracing: LineWeightEntry | None = None
    """Laterals, struts and portals, along the whole bridge."""
    others: Mapping[str, LineWeightEntry] = Field(default_factory=dict)
    """Sidewalks and what else stays."""
    timbers: Mapping[str, TimberEntry] = Field(default_factory=dict)
    """What sticks of the floor are made of, each under a name of its own."""
    hangers: HangerEntry | None = None
    """All alike, but for what overrides say."""
    shoes: ShoesEntry = ShoesEntry()
    sidewalks: Mapping[TrussName, SidewalkEntry] = Field(default_factory=dict)
    wheel_guards: RailingEntry | None = None
    """The timbers or rails along both curbs."""
    surface: SurfaceWord
    lanes: Lanes | None = None
    """The lanes that are marked or fenced; left out: from the clear width."""

    _gathered = model_validator(mode="before")(_curbs_gathered)
