"""The record of one bridge: as built, its inspections, the decisions taken on them.

Every measure is a `Quantity` (its text as written, its exact size in inside units); what is not
measured is None. Keys of the file have spaces where the names here have underscores.
"""

import re
from collections.abc import Mapping
from typing import Annotated, Self

from pydantic import AfterValidator, BeforeValidator, Field, PrivateAttr, model_validator

from eyebar.addresses import Address, bar_name
from eyebar.record.fields import (
    Angle, Bars, BeamWeight, Code, Coordinate, Count, Day, Density, Distance, Entry, Force, Joint,
    KindWord, Lanes, Length, LineWeight, Measure, MetalWord, Number, Offset, Panels, Part, Picture,
    Place, SheetWeight, SidesField, Size, Stress, Text, Trucks, TrussName, Truth, Year, once,
    refusal, word,
)
from eyebar.record.sections import SectionEntry
from eyebar.record.words import (
    WHAT_CURES, Bearing, Decided, DeckKind, EndFixing, Form, RoadSurface, SurfacingKind, What,
)

BearingWord = Annotated[Bearing, BeforeValidator(word(Bearing))]
FormWord = Annotated[Form, BeforeValidator(word(Form))]
FixingWord = Annotated[EndFixing, BeforeValidator(word(EndFixing))]
WhatWord = Annotated[What, BeforeValidator(word(What, WHAT_CURES))]
DecidedWord = Annotated[Decided, BeforeValidator(word(Decided))]
SurfaceWord = Annotated[RoadSurface, BeforeValidator(word(RoadSurface))]
DeckWord = Annotated[DeckKind, BeforeValidator(word(DeckKind))]
SurfacingWord = Annotated[SurfacingKind, BeforeValidator(word(SurfacingKind))]
BarList = Annotated[Bars, AfterValidator(lambda bars: once(bars, "a bar"))]
CounterList = Annotated[Bars, AfterValidator(lambda bars: once(bars, "a counter"))]
JointList = Annotated[tuple[Joint, ...], AfterValidator(lambda joints: once(joints, "a joint"))]
BOTH_TRUSSES = ""
"""`truss` of a member group that stands in every truss."""


class EndsEntry(Entry):
    """Which end is 0, and how the bridge lies."""

    zero: Text
    """Panel points are counted from here."""
    other: Text
    bearing: Angle | None = None
    """Compass direction of the road, from end 0."""
    skew: Angle | None = None


class BearingsEntry(Entry):
    """How the two ends of each truss sit."""

    zero: BearingWord
    other: BearingWord
    at: tuple[Joint, Joint] | None = None
    """The joints over the bearings, end 0 first; left out: the first and the last floor joint."""

    @model_validator(mode="after")
    def _something_holds(self) -> Self:
        if Bearing.FREE is self.zero is self.other:
            raise refusal("free", "stands at both ends, so nothing keeps the truss from rolling off",
                          "write 'fixed' at one end")
        return self


class TrussesEntry(Entry):
    """The trusses: laid out by form from panels and depth, or joint by joint."""

    names: tuple[TrussName, ...] = Field(min_length=1, max_length=2)
    spacing: Length
    """From centre to centre."""
    form: FormWord | None = None
    panels: Panels | None = None
    """One length for each panel, from end 0."""
    depth: Length | None = None
    depths: Mapping[Joint, Length] | None = None
    """Upper joint -> depth there, where the upper chord is not level."""
    counters: CounterList = ()
    joints: Mapping[Joint, tuple[Coordinate, Coordinate]] | None = None
    """Joint -> (from end 0 along the road, up)."""
    floor: JointList | None = None
    """The joints that carry the floor, in order; left out with a form: the lower chord's."""
    mirrored: Truth = False
    """True where only the half at end 0 is given and the other half is its mirror image."""
    span: Length | None = None
    """Needed only where the joints are given one by one and mirrored."""
    bearings: BearingsEntry

    @model_validator(mode="after")
    def _form_or_joints(self) -> Self:
        once(self.names, "a truss")
        by_form = {"form", "panels"} & self.model_fields_set
        if self.joints is not None and by_form:
            raise refusal("joints", "stand beside a form", "write a form with panels, or joints")
        if self.joints is None:
            self._by_form()
        else:
            self._by_joints()
        return self

    def _by_form(self) -> None:
        if self.form is None or self.panels is None:
            raise refusal(None, "tells the shape of the truss",
                          "write 'form' and 'panels' and 'depth', or 'joints' and 'floor'")
        if (self.depth is None) == (self.depths is None):
            raise refusal(self.depth, "is not one depth",
                          "write 'depth: 26 ft', or 'depths: {U1: 20 ft, U2: 24 ft}'")

    def _by_joints(self) -> None:
        if self.floor is None:
            raise refusal(None, "tells which joints carry the floor", "write 'floor: [L0, L1, L2]'")
        if self.mirrored and self.span is None:
            raise refusal("mirrored", "needs the whole span", "write 'span: 150 ft'")


class CouponsEntry(Entry):
    """What tests of metal cut from the bridge gave, one figure for each coupon."""

    yield_stress: tuple[Stress, ...] = Field(default=(), alias="yield")
    tensile: tuple[Stress, ...] = ()
    source: Text | None = None


class MaterialEntry(Entry):
    """What members are made of: metal and year, coupons, or figures given with their source."""

    metal: MetalWord
    built: Year | None = None
    """Year of the metal; left out: the bridge's."""
    coupons: CouponsEntry | None = None
    yield_stress: Stress | None = Field(default=None, alias="yield")
    tensile: Stress | None = None
    modulus: Stress | None = None
    density: Density | None = None
    source: Text | None = None

    @model_validator(mode="after")
    def _figures_have_a_source(self) -> Self:
        figures = (self.yield_stress, self.tensile, self.modulus, self.density)
        if self.source is None and any(figures):
            raise refusal(next(str(figure) for figure in figures if figure), "has no source",
                          "write 'source:', where the figure comes from")
        return self


class MemberGroup(Entry):
    """Bars that are alike."""

    kind: KindWord
    bars: BarList
    """Every bar by its name, upper joint first; runs are already spelled out."""
    truss: TrussName = BOTH_TRUSSES
    """The one truss the group stands in; empty: in both."""
    section: SectionEntry
    material: Text
    pin_offset: Offset | None = None
    """Pins below the centre of gravity; not given: in it."""
    spliced_at: JointList | None = None
    """Joints where the run of bars is cut; not given: at every joint."""
    lateral_points: JointList | None = None
    """Joints that are held sideways; not given: both ends of every bar."""
    ends: FixingWord | None = None
    """How the bars end; not given: on pins."""
    can_push: Truth | None = None
    """Needed only where the section does not tell, as for `given`."""
    note: Text | None = None


class OverrideEntry(Entry):
    """What differs from the group for one part, by the part's own address.

    `section` is whole here: what the override left out was filled in from the group's.
    """

    kind: KindWord | None = None
    section: SectionEntry | None = None
    material: Text | None = None
    pin_offset: Offset | None = None
    spliced_at: JointList | None = None
    lateral_points: JointList | None = None
    ends: FixingWord | None = None
    can_push: Truth | None = None
    bearing: BearingWord | None = None
    """For the address of a bearing: how it sits."""
    note: Text | None = None
    reason: Text


class DeckEntry(Entry):
    """The deck that the wheels' floor is made of; it counts as dead load that stays."""

    kind: DeckWord
    thickness: Size
    weight: SheetWeight
    width: Length | None = None
    """Left out: the clear width."""


class SurfacingEntry(Entry):
    """What lies on the deck and may be laid on or taken off."""

    kind: SurfacingWord
    thickness: Size
    weight: SheetWeight
    measured: Truth
    """True where the thickness was measured in the field."""
    width: Length | None = None


class StringersEntry(Entry):
    """The stringers of one panel, all alike."""

    number: Count
    size: SidesField | None = None
    """Width by depth."""
    weight: BeamWeight
    """By volume (with `size`), or along the length of one."""
    material: Text
    spacing: Length | None = None


class FloorbeamsEntry(Entry):
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


CURB = re.compile(r"curb to (.+) truss")


class FloorEntry(Entry):
    """Floor and road, as sizes and weights."""

    clear_width: Length
    """Between the curbs."""
    curbs: Mapping[TrussName, Coordinate]
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
    surface: SurfaceWord
    lanes: Lanes | None = None
    """The lanes that are marked or fenced; left out: from the clear width."""

    _gathered = model_validator(mode="before")(_curbs_gathered)


class TrafficEntry(Entry):
    """How busy the road is."""

    trucks_a_day: Trucks | None = None
    """In one direction; left out or not measured: unknown."""


class ConditionEntry(Entry):
    """Condition codes of the national inspection, 0 to 9."""

    deck: Code | None = None
    superstructure: Code | None = None
    substructure: Code | None = None


class ReadingEntry(Entry):
    """One thing that was measured on one part."""

    part: Part
    place: Place = ""
    what: WhatWord
    value: Measure
    gauge: Text | None = None
    plus_minus: Measure | None = None
    piece: Count | None = None
    """Which eyebar, rod, channel or plate of the set, counted from the road side."""
    note: Text | None = None
    photographs: tuple[Picture, ...] = ()

    @property
    def address(self) -> Address:
        """The part, with the place of the reading on it."""
        return self.part.at(self.place) if self.place else self.part

    @model_validator(mode="after")
    def _measure_fits(self) -> Self:
        for found in (self.value, self.plus_minus):
            if found and found.dimension is not self.what.dimension:
                raise refusal(found, f"is a {found.dimension}",
                              f"a {self.what} is a {self.what.dimension}")
        if self.place and self.part.place:
            raise refusal(self.place, "gives a second place", "write the place once")
        return self


class InspectionEntry(Entry):
    """What was found on one day."""

    date: Day
    by: Text
    note: Text | None = None
    condition: ConditionEntry | None = None
    """Codes given on that day; they stand until the next."""
    readings: tuple[ReadingEntry, ...] = ()
    photographs: tuple[Picture, ...] = ()


class DecisionEntry(Entry):
    """What was decided, or done, on one day about one part."""

    date: Day
    what: DecidedWord
    part: Part
    by: Text | None = None
    note: Text | None = None
    section: SectionEntry | None = None
    """The part's section after a repair."""
    material: Text | None = None
    pieces: tuple[Count, ...] | None = None
    """Which pieces of the set are loose, cracked or broken; left out: all."""
    gap: Distance | None = None
    """How far a loose bar or piece stretches before it works."""
    pull: Force | None = None
    """The pull under dead load that was measured and accepted."""
    plus_minus: Force | None = None


class ExceptionEntry(Entry):
    """A value that is this bridge's own, laid over the office's."""

    value: Number
    unit: Text
    reason: Text


class Record(Entry):
    """All that is known of one bridge, with the text it was read from."""

    eyebar: Count
    """Number of the format."""
    name: Text
    number: Text = ""
    owner: Text = ""
    place: Text = ""
    built: Year
    ends: EndsEntry
    trusses: TrussesEntry
    materials: Mapping[str, MaterialEntry]
    members: Mapping[str, MemberGroup] = Field(min_length=1)
    overrides: Mapping[str, OverrideEntry] = Field(default_factory=dict)
    """Address, in its one spelling -> what differs there."""
    floor: FloorEntry
    traffic: TrafficEntry = TrafficEntry()
    condition: ConditionEntry = ConditionEntry()
    inspections: tuple[InspectionEntry, ...] = ()
    decisions: tuple[DecisionEntry, ...] = ()
    values: Mapping[str, ExceptionEntry] = Field(default_factory=dict)
    note: Text | None = None

    _file: str = PrivateAttr(default="")
    _text: str = PrivateAttr(default="")
    _hash: str = PrivateAttr(default="")
    _lines: Mapping[tuple[str | int, ...], int] = PrivateAttr(default_factory=dict)

    @property
    def file(self) -> str:
        """The name of the file it was read from."""
        return self._file

    @property
    def text(self) -> str:
        """The text it was read from."""
        return self._text

    @property
    def hash(self) -> str:
        """SHA-256 of the text."""
        return self._hash

    def line_of(self, *path: str | int) -> int | None:
        """The line of a key, `line_of("members", "posts", "section")`, or of what holds it."""
        while path and path not in self._lines:
            path = path[:-1]
        return self._lines.get(path)

    def group_of(self, truss: str, bar: str) -> str:
        """The name of the group that a bar belongs to; empty when it is in none."""
        wanted = bar_name(bar)
        for name, group in self.members.items():
            if wanted in group.bars and group.truss in (BOTH_TRUSSES, truss):
                return name
        return ""
