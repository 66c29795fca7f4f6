"""What holds the trusses sideways, as it is written: cross frames of a half-through bridge, or
portals, struts and laterals overhead; laterals below."""

from collections.abc import Mapping
from enum import StrEnum
from typing import Annotated, Self

from pydantic import BeforeValidator, Field, model_validator

from eyebar.record.fields import Entry, Joint, Length, Size, Text, Truth, refusal, word
from eyebar.record.sections import SectionEntry
from eyebar.record.trusses import JointList


class FrameJoint(StrEnum):
    """How a post of a half-through truss is fastened to its floorbeam."""

    HUNG = "hung"
    RIVETED = "riveted"
    STIFFENED = "stiffened"
    GUSSET = "gusset"


class Bases(StrEnum):
    """How the feet of the end posts of a half-through truss stand, across the bridge."""

    HINGED = "hinged"
    HELD = "held"


class PortalForm(StrEnum):
    """How a portal is made."""

    STRUT = "strut"
    STRUT_WITH_KNEES = "strut with knees"
    LATTICE = "lattice"
    PLATE = "plate"


FrameJointWord = Annotated[FrameJoint, BeforeValidator(word(FrameJoint))]
BasesWord = Annotated[Bases, BeforeValidator(word(Bases))]
PortalFormWord = Annotated[PortalForm, BeforeValidator(word(PortalForm))]


class OutriggerEntry(Entry):
    """A brace from the end of a long floorbeam up to the post."""

    foot: Length
    """On the floorbeam, from the truss's centre line outwards."""
    head: Length
    """On the post, above the floorbeam's middle."""
    section: SectionEntry
    material: Text


class CrossFrameEntry(Entry):
    """Post, floorbeam and their joint, which hold the upper chord of a half-through truss."""

    joint: FrameJointWord | None = None
    """Left out: not known, and then the post stands on it as on a hinge."""
    height: Size = None
    """From the floorbeam's middle up to the chord's."""
    clear_height: Size = None
    """The part of it that is free to bend: from the top of the joint. Left out: all of it."""
    outrigger: OutriggerEntry | None = None


class KneeEntry(Entry):
    """A brace from a portal or strut down to the post on either side."""

    along: Length
    """From the truss's centre line to its upper end."""
    down: Length
    """From the strut's middle to its lower end."""
    section: SectionEntry | None = None
    material: Text | None = None


class PortalEntry(Entry):
    """The frame that stands between the two end posts at one end."""

    form: PortalFormWord
    at: Joint | None = None
    """Left out: the upper end of the end post."""
    depth: Size = None
    """Along the end post, from the middle of its top to the lowest thing fastened to the post."""
    section: SectionEntry | None = None
    """Of its strut, or of one of the two flanges of a lattice or plate."""
    material: Text | None = None
    knee: KneeEntry | None = None
    foot_width: Size = None
    """Over which the foot of an end post bears, across the truss; left out: it stands on a hinge.
    """


class PortalsEntry(Entry):
    """The portals at the two ends; left out: none there."""

    zero: PortalEntry | None = None
    other: PortalEntry | None = None


class StrutEntry(Entry):
    """Struts that are alike, from chord to chord."""

    at: JointList = Field(min_length=1)
    section: SectionEntry | None = None
    material: Text | None = None
    knee: KneeEntry | None = None


class LateralsEntry(Entry):
    """Crossed braces between the trusses in each panel, all alike."""

    joints: JointList | None = None
    """In order, from end 0; left out: all joints of the chord that carry it."""
    section: SectionEntry | None = None
    """Of one brace."""
    material: Text | None = None


class BracingEntry(Entry):
    """What holds the trusses sideways."""

    overhead: Truth
    """False for a half-through bridge, where nothing joins the two upper chords."""
    cross_frames: CrossFrameEntry | None = None
    """All alike, but for what `frames` says."""
    frames: Mapping[Joint, CrossFrameEntry] = Field(default_factory=dict)
    """Joint of the upper chord -> what stands there in the place of `cross frames`."""
    bases: BasesWord | None = None
    """Of the end posts, on their shoes; left out: hinged, the safe side."""
    stiff_joints: JointList = ()
    """Splices of the upper chord whose plates carry it on across the truss; others are hinges."""
    portals: PortalsEntry | None = None
    struts: Mapping[str, StrutEntry] = Field(default_factory=dict)
    top_laterals: LateralsEntry | None = None
    bottom_laterals: LateralsEntry | None = None
    note: Text | None = None

    @model_validator(mode="after")
    def _one_or_the_other(self) -> Self:
        above = (self.portals, self.struts or None, self.top_laterals)
        below = (self.cross_frames, self.frames or None, self.bases, self.stiff_joints or None)
        if not self.overhead and any(above):
            raise refusal("overhead: false", "stands beside braces that are overhead",
                          "write 'overhead: true', or leave portals, struts, top laterals out")
        if self.overhead and any(below):
            raise refusal("overhead: true", "stands beside cross frames, which are of half-through"
                          " bridges", "leave cross frames, bases and stiff joints out")
        return self
