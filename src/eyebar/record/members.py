"""What the bars are made of: materials, groups of like bars, and what differs for one part."""

from typing import Annotated, Self

from pydantic import AfterValidator, BeforeValidator, Field, model_validator

from eyebar.record.fields import (
    Bars,
    Density,
    Entry,
    KindWord,
    MetalWord,
    Offset,
    Stress,
    Text,
    TrussName,
    Truth,
    Year,
    once,
    refusal,
    word,
)
from eyebar.record.sections import SectionEntry
from eyebar.record.trusses import BearingWord, JointList
from eyebar.record.words import EndFixing

FixingWord = Annotated[EndFixing, BeforeValidator(word(EndFixing))]
BarList = Annotated[Bars, AfterValidator(lambda bars: once(bars, "a bar"))]
BOTH_TRUSSES = ""
"""`truss` of a member group that stands in every truss."""


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
