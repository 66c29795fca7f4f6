"""The parts of the floor as they are written: timbers, stringers, floorbeams, hangers, shoes."""

from enum import StrEnum
from typing import Annotated, Self

from pydantic import BeforeValidator, Field, InstanceOf, model_validator

from eyebar.record.fields import (
    Count,
    Distance,
    Entry,
    Length,
    SidesField,
    Size,
    Stress,
    Text,
    Truth,
    UnsureArea,
    refusal,
    weighing,
    word,
)
from eyebar.record.joined import EndRivetSizes
from eyebar.record.sections import SectionEntry
from eyebar.units import Dimension, Quantity


class Species(StrEnum):
    """Timber that the office's table has."""

    DOUGLAS_FIR = "Douglas fir-larch"
    SOUTHERN_PINE = "southern pine"
    MIXED_OAK = "mixed oak"


class Grade(StrEnum):
    """How a stick was graded."""

    SELECT = "select structural"
    FIRST = "No. 1"
    SECOND = "No. 2"


class HeldBy(StrEnum):
    """What keeps the upper edge of a beam from turning over."""

    CONCRETE = "concrete"
    NAILED_PLANKS = "nailed planks"
    NAILING_STRIPS = "nailing strips"
    CLIPS = "clips"
    BOLTS = "bolts"
    STRINGERS = "stringers"
    RESTING_PLANKS = "resting planks"
    NOTHING = "nothing"


class PlanksRun(StrEnum):
    """Which way a deck spans: across the road or along it."""

    ACROSS = "across"
    ALONG = "along"


class BeamEnd(StrEnum):
    """How a floorbeam is joined to the trusses."""

    HUNG = "hung"
    RIVETED = "riveted"


HeldWord = Annotated[HeldBy, BeforeValidator(word(HeldBy))]
SpeciesWord = Annotated[Species, BeforeValidator(word(Species))]
GradeWord = Annotated[Grade, BeforeValidator(word(Grade))]
RunsWord = Annotated[PlanksRun, BeforeValidator(word(PlanksRun))]
BeamEndWord = Annotated[BeamEnd, BeforeValidator(word(BeamEnd))]
AreaWeight = Annotated[InstanceOf[Quantity], BeforeValidator(weighing(Dimension.SURFACE_LOAD))]
AT_POINTS = (HeldBy.NAILING_STRIPS, HeldBy.CLIPS, HeldBy.BOLTS)
"""What holds an edge at points alone, so that their distance matters."""


class TimberEntry(Entry):
    """What sticks are made of: species and grade, or reference values given with their source."""

    species: SpeciesWord | None = None
    grade: GradeWord | None = None
    wet: Truth
    """Damp in use."""
    incised: Truth = False
    """Cut on its faces to take the preservative."""
    bending: Stress | None = None
    shear: Stress | None = None
    across_the_grain: Stress | None = None
    modulus: Stress | None = None
    source: Text | None = None

    @model_validator(mode="after")
    def _by_grade_or_by_values(self) -> Self:
        given = (self.bending, self.shear, self.across_the_grain, self.modulus)
        if any(given) and (self.source is None or not all(given)):
            raise refusal(next(str(one) for one in given if one), "is not all that is needed",
                          "write bending, shear, across the grain, modulus, and their source")
        if not any(given) and (self.species is None or self.grade is None):
            raise refusal(self.species or self.grade, "does not tell the timber's strength",
                          "write species and grade, or the values with their source")
        return self


class FlangeEntry(Entry):
    """What holds the compressed edge of a beam: `flange: {held by: clips, every: 2 ft}`."""

    held_by: HeldWord
    every: Length | None = None

    @model_validator(mode="after")
    def _points_have_a_distance(self) -> Self:
        if (self.every is None) != (self.held_by not in AT_POINTS):
            cure = "write 'every:' with the distance" if self.every is None else "leave it out"
            raise refusal(self.held_by, "and the distance of its points do not go together", cure)
        return self


class CopeEntry(Entry):
    """What is cut from a beam's end."""

    depth: Size
    length: Size
    both: Truth = False
    """True where the lower edge is cut alike."""


class AnchorsEntry(Entry):
    """Bolts that hold an end down on what it stands on."""

    number: Count
    root_diameter: Size
    """Of the thread."""
    material: Text


class _BeamPart(Entry):
    """What may be said of one beam."""

    section: SectionEntry | None = None
    material: Text | None = None
    """A material of the record, a timber of the floor, or the word of a metal."""
    flange: FlangeEntry | None = None
    seat: Size = None
    """Length along the beam of what it rests on, or of the plate it hangs on."""
    cope: CopeEntry | None = None
    rivets: EndRivetSizes | None = None
    """Those of one end, through the beam's own web."""
    post_rivets: EndRivetSizes | None = None
    """Those of the same end through what it is riveted to."""
    thinner: Size = None
    """The thinner of what they hold."""
    stiffened: Truth | None = None
    """True where angles or plates stiffen the web over the seat, from flange to flange; left out:
    nothing does."""


class StringerPart(_BeamPart):
    """What may be said of one stringer."""

    size: SidesField | None = None
    """Of a timber: width by depth."""
    notch: Size = None
    """Depth cut away over the seat; left out: none."""
    anchors: AnchorsEntry | None = None
    """Those that hold each end down, of stringers that run on; left out: none."""


class StringerGroupEntry(StringerPart):
    """Stringers of some panels that differ from the others."""

    panels: tuple[Count, ...] = Field(min_length=1)


class TaperEntry(Entry):
    """A beam that grows less deep towards its ends."""

    at_ends: Size
    over: Length
    """How far from each end it grows to its whole depth."""


class TrussRodsEntry(Entry):
    """Rods under a beam."""

    section: SectionEntry
    material: Text
    posts_at: tuple[Length, ...] = Field(min_length=1)
    """From the first truss."""
    drop: Size
    """From the beam's middle line to the rods."""
    post_area: UnsureArea = None
    post_material: Text | None = None


class FloorbeamPart(_BeamPart):
    """What may be said of one floorbeam."""

    taper: TaperEntry | None = None
    truss_rods: TrussRodsEntry | None = None
    ends: BeamEndWord | None = None


class YokeEntry(Entry):
    """What lies under the floorbeam on the nuts of a hanger."""

    plate: SidesField | None = None
    """Laid flat: width and thickness."""
    section: SectionEntry | None = None
    """In its place, of a yoke that is a beam: upright as it lies there."""
    number: Count = 1
    material: Text
    on_it: Size = None
    """Width of the floorbeam that lies on it; left out: taken to lie on it as an edge."""

    @model_validator(mode="after")
    def _plate_or_section(self) -> Self:
        if (self.plate is None) == (self.section is None):
            raise refusal("yoke", "is a plate or a beam", "write 'plate:' or 'section:'")
        return self


class HangerEntry(Entry):
    """What hangs one end of a floorbeam."""

    section: SectionEntry | None = None
    """All its legs, plates or bars together."""
    material: Text | None = None
    bent: Truth = False
    """True for rods bent over the pin, U-bolts."""
    inside: Size = None
    """Clear width between the legs of a bent rod."""
    leg: Size = None
    """Length of a leg."""
    pin: Size = None
    """Diameter of the pin; left out: that of the joint's pin, where it is recorded."""
    hole: Size = None
    """Diameter of the pin's hole in plates."""
    beyond: Size = None
    """Metal of plates beyond the pin's hole."""
    off_centre: Distance | None = None
    """How far the beam hangs beside the middle of the legs; left out: not at all."""
    apart: Size = None
    """Distance of the legs on either side of the beam."""
    yoke: YokeEntry | None = None
    rivets: EndRivetSizes | None = None
    """Of a floorbeam riveted to the post."""
    post_rivets: EndRivetSizes | None = None
    """Those through the post."""
    thinner: Size = None


class RollersEntry(Entry):
    """A nest of rollers."""

    number: Count
    diameter: Size
    length: Size


class ShoeEntry(Entry):
    """What an end of a truss stands on."""

    plate: SidesField | None = None
    """On its seat."""
    pressure: Stress | None = None
    """That the seat may bear."""
    source: Text | None = None
    rollers: RollersEntry | None = None
    material: Text | None = None
    """Of rollers and plates, the weaker."""
    anchors: AnchorsEntry | None = None
    """Left out: none are known to hold it down."""

    @model_validator(mode="after")
    def _pressure_has_a_source(self) -> Self:
        if self.pressure is not None and self.source is None:
            raise refusal(self.pressure, "has no source", "write 'source:', where it comes from")
        return self


class ShoesEntry(Entry):
    """What the trusses stand on at both ends."""

    zero: ShoeEntry | None = None
    other: ShoeEntry | None = None


class BracketEntry(Entry):
    """What carries a sidewalk outside a truss at each joint of the floor, from the post."""

    section: SectionEntry
    """Where it springs from the post."""
    material: Text
    springs: Distance
    """From the truss's centre line to where it springs."""


class SidewalkEntry(Entry):
    """A sidewalk beside a truss."""

    width: Length
    from_truss: Distance
    """From the truss's centre line to its nearer edge."""
    outside: Truth
    weight: AreaWeight
    """With what carries it."""
    bracket: BracketEntry | None = None
    """Of a walk outside; left out: its brackets are not rated."""
