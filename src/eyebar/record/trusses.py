"""How the trusses are laid out: by form from panels and depth, or joint by joint."""

from collections.abc import Mapping
from typing import Annotated, Self

from pydantic import AfterValidator, BeforeValidator, Field, model_validator

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
    once,
    refusal,
    word,
)
from eyebar.record.words import Bearing, Form

BearingWord = Annotated[Bearing, BeforeValidator(word(Bearing))]
FormWord = Annotated[Form, BeforeValidator(word(Form))]
CounterList = Annotated[tuple[BarName, ...], AfterValidator(lambda bars: once(bars, "a counter"))]
JointList = Annotated[tuple[Joint, ...], AfterValidator(lambda joints: once(joints, "a joint"))]


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
            raise refusal("free", "stands at both ends, so nothing keeps the truss from rolling",
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
