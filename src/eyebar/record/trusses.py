"""How the trusses are laid out: by form from panels and depth, or joint by joint."""

from collections.abc import Mapping
from typing import Annotated, Self

from pydantic import AfterValidator, BeforeValidator, Field, model_validator

from eyebar.addresses import joint_name
from eyebar.record.fields import (
    Angle,
    BarName,
    Coordinate,
    Entry,
    Joint,
    Length,
    Panels,
    Text,
    TrussName,
    Truth,
    UnsureAngle,
    UnsureLength,
    once,
    read,
    refusal,
    word,
)
from eyebar.record.form_joints import Pattern
from eyebar.record.form_words import FORM_CURES, SUBDIVIDED
from eyebar.record.words import Bearing
from eyebar.terms import CurveShape, EndPosts, FloorOn, Form, SubMembers

BearingWord = Annotated[Bearing, BeforeValidator(word(Bearing))]
FormWord = Annotated[Form, BeforeValidator(word(Form, FORM_CURES))]
EndPostsWord = Annotated[EndPosts, BeforeValidator(word(EndPosts))]
SubMembersWord = Annotated[SubMembers, BeforeValidator(word(SubMembers))]
CurveShapeWord = Annotated[CurveShape, BeforeValidator(word(CurveShape))]
CounterList = Annotated[tuple[BarName, ...], AfterValidator(lambda bars: once(bars, "a counter"))]
JointList = Annotated[tuple[Joint, ...], AfterValidator(lambda joints: once(joints, "a joint"))]


def _floor(got: object) -> object:
    """One of the two chords, or a list of joints."""
    if isinstance(got, tuple):
        return once(tuple(read(joint, joint_name) for joint in got), "a joint")
    return word(FloorOn)(got)


Floor = Annotated[FloorOn | tuple[str, ...], BeforeValidator(_floor)]
GREATEST_SKEW = 75
"""Degrees; a greater skew is a slip of the pen."""
BY_FORM_ALONE = ("curve", "hip", "end_posts", "sub_members")
"""What has a sense only where the truss is laid out by its form."""


class EndsEntry(Entry):
    """Which end is 0, and how the bridge lies."""

    zero: Text
    """Panel points are counted from here."""
    other: Text
    bearing: Angle | None = None
    """Compass direction of the road, from end 0."""
    skew: UnsureAngle = None
    """How far the line of bearings leans from square; above zero where the truss named second
    stands further from end 0. Left out or not measured: square."""

    @model_validator(mode="after")
    def _no_wild_skew(self) -> Self:
        if self.skew is not None and abs(self.skew.exact) > GREATEST_SKEW:
            raise refusal(self.skew, "is no skew of a bridge",
                          f"write at most {GREATEST_SKEW} deg, from square")
        return self


class BearingsEntry(Entry):
    """How the two ends of each truss sit."""

    zero: BearingWord
    other: BearingWord
    at: tuple[Joint, Joint] | None = None
    """The joints over the bearings, end 0 first; left out: the first and the last floor joint."""

    @model_validator(mode="after")
    def _something_holds(self) -> Self:
        if Bearing.FREE is self.zero is self.other:
            raise refusal("free", "stands at both ends, so nothing keeps the truss from rolling",
                          "write 'fixed' at one end")
        once(self.at or (), "the joint of a bearing")
        return self


class CurveEntry(Entry):
    """A chord whose joints lie on a line of known shape; `depth` is then that of its crown."""

    shape: CurveShapeWord
    rise: Length | None = None
    """From the first joint of the curved chord to its crown; of a bowstring it is the depth."""
    sag: Length | None = None
    """Of a lenticular truss: how much of the depth lies below its bearings; left out: half."""
    shoulder: Joint | None = None
    """Of five slopes: the joint at end 0 where the level part begins."""


class TrussesEntry(Entry):
    """The trusses: laid out by form from panels and depth, or joint by joint."""

    names: tuple[TrussName, ...] = Field(min_length=1, max_length=2)
    spacing: UnsureLength
    """From centre to centre."""
    form: FormWord | None = None
    panels: Panels | None = None
    """One length for each panel, from end 0; of a subdivided form for each half."""
    depth: Length | None = None
    depths: Mapping[Joint, Length] | None = None
    """Joint of the curved chord -> depth there; of a lenticular truss from its bearings' line."""
    curve: CurveEntry | None = None
    """Instead of depths, where the joints of the curved chord lie on a line of known shape."""
    hip: Length | None = None
    """Of a half-hip truss: from the bearing to the hip, along the road."""
    end_posts: EndPostsWord = EndPosts.INCLINED
    sub_members: SubMembersWord = SubMembers.STRUTS
    """What holds the middles of the diagonals of a subdivided form."""
    counters: CounterList = ()
    joints: Mapping[Joint, tuple[Coordinate, Coordinate]] | None = None
    """Joint -> (from end 0 along the road, up)."""
    floor: Floor | None = None
    """The chord that carries the floor, or its joints in order; left out with a form: the lower."""
    mirrored: Truth = False
    """True where only the half at end 0 is given: panels, depths, joints, bars, counters."""
    span: Length | None = None
    """Needed where one half is given joint by joint, or has a middle panel between the halves."""
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

    @property
    def floor_on(self) -> FloorOn:
        """The chord that a form puts its floor on."""
        return self.floor if isinstance(self.floor, FloorOn) else FloorOn.LOWER

    def pattern(self, count: int) -> Pattern:
        """What decides the names of a form's joints. Asked only of a record that has a form."""
        assert self.form is not None
        return Pattern(
            form=self.form, count=count, end_posts=self.end_posts, floor=self.floor_on
        )

    def _by_form(self) -> None:
        if self.form is None or self.panels is None:
            raise refusal(None, "tells the shape of the truss",
                          "write 'form' and 'panels' and 'depth', or 'joints' and 'floor'")
        if (self.depth is None) == (self.depths is None):
            raise refusal(self.depth, "is not one depth",
                          "write 'depth: 26 ft', or 'depths: {U1: 20 ft, U2: 24 ft}'")
        if self.curve is not None and self.depth is None:
            raise refusal("curve", "stands beside depths", "write the depth of its crown alone")
        half_hip = self.form is Form.HALF_HIP_PRATT
        if (self.hip is None) is half_hip:
            raise refusal(self.hip, "is needed of a half-hip truss, and of no other",
                          "write 'hip: 7 ft 6 in', from the bearing to the hip along the road"
                          if half_hip else "leave it out")
        if "sub_members" in self.model_fields_set and self.form not in SUBDIVIDED:
            raise refusal(self.sub_members, "stand only in a subdivided truss", "leave them out")

    def _by_joints(self) -> None:
        if not isinstance(self.floor, tuple):
            raise refusal(self.floor, "tells which joints carry the floor",
                          "write 'floor: [L0, L1, L2]'")
        given = next((name for name in BY_FORM_ALONE if name in self.model_fields_set), None)
        if given:
            raise refusal(given.replace("_", " "), "has no sense beside joints", "leave it out")
        if self.mirrored and self.span is None:
            raise refusal("mirrored", "needs the whole span", "write 'span: 150 ft'")
