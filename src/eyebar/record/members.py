"""What the bars are made of: materials, groups of like bars, and what differs for one part."""

from functools import cached_property
from typing import Annotated, Self

from pydantic import AfterValidator, BeforeValidator, Field, model_validator

from eyebar.addresses import bars_of
from eyebar.record.fields import (
    Density,
    Entry,
    KindWord,
    MetalWord,
    Offset,
    Run,
    Size,
    Stress,
    Text,
    TrussName,
    Truth,
    Year,
    once,
    refusal,
    word,
)
from eyebar.record.floor_members import FloorbeamPart, HangerEntry, ShoeEntry, StringerPart
from eyebar.record.joined import PinPlateSizes, RivetHolesEntry, SpliceEntry
from eyebar.record.pins import PackedEntry
from eyebar.record.sections import SectionEntry
from eyebar.record.trusses import BearingWord, JointList
from eyebar.record.words import EndFixing
from eyebar.terms import Metal


def _each_bar_once(runs: tuple[str, ...]) -> tuple[str, ...]:
    """The same list; refuses a bar that stands twice in it."""
    once(tuple(bar for run in runs for bar in bars_of(run)), "a bar")
    return runs


FixingWord = Annotated[EndFixing, BeforeValidator(word(EndFixing))]
RunList = Annotated[tuple[Run, ...], AfterValidator(_each_bar_once)]
BOTH_TRUSSES = ""
"""`truss` of a member group that stands in every truss."""


class CouponsEntry(Entry):
    """What tests of metal cut from the bridge gave, one figure for each coupon."""

    yield_stress: tuple[Stress, ...] = Field(default=(), alias="yield")
    tensile: tuple[Stress, ...] = ()
    source: Text | None = None


class AllowedEntry(Entry):
    """Allowable stresses of a metal or timber that no rule here has, for the loads of the road."""

    pull: Stress | None = None
    push: Stress | None = None
    column_modulus: Stress | None = None
    """Of timber columns, its safety counted."""
    source: Text


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
    allowed: AllowedEntry | None = None
    """Needed for cast iron and timber, which are not rated without."""

    @model_validator(mode="after")
    def _only_where_no_rule_is(self) -> Self:
        if self.allowed is not None and self.metal not in (Metal.CAST_IRON, Metal.TIMBER):
            raise refusal(self.metal, "has stresses that the methods themselves allow",
                          "leave 'allowed' out; give 'yield' and 'tensile', or coupons")
        return self

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
    runs: RunList = Field(alias="bars", min_length=1)
    """The bars as they are written: names and runs."""
    truss: TrussName = BOTH_TRUSSES
    """The one truss the group stands in; empty: in both."""
    section: SectionEntry
    material: Text
    pin_offset: Offset | None = None
    """Pins below the centre of gravity; not given: in it, or at mid-depth under a cover plate."""
    spliced_at: JointList | None = None
    """Joints where the run of bars is cut; not given: at every joint."""
    splice: SpliceEntry | None = None
    """How the bars are joined there; not given: not known."""
    pin_plates: PinPlateSizes | None = None
    """What strengthens the webs about the pins; not given: not known."""
    jaw: Size = None
    """From the pin to where the whole section begins, where flanges are cut away there."""
    rivet_holes: RivetHolesEntry | None = None
    """Not given: the net section is taken as a part of the gross."""
    other_pin_offset: Offset | None = None
    """`pin_offset` at the bar's second joint, where it differs."""
    side_offset: Offset | None = None
    """Pins beside the centre of gravity, across the truss; not given: none."""
    welded: Text | None = None
    """What was welded to the bars later, in words."""
    lateral_points: JointList | None = None
    """Joints that are held sideways; not given: both ends of a bar, of a top chord its two ends."""
    ends: FixingWord | None = None
    """How the bars end; not given: on pins."""
    can_push: Truth | None = None
    """Needed only where the section does not tell, as for `given`, or for a counter that pushes."""
    can_pull: Truth | None = None
    """`false` for a brace that only butts against its blocks; not given: it can."""
    note: Text | None = None

    @cached_property
    def bars(self) -> tuple[str, ...]:
        """Every bar by its name, upper joint first, runs spelled out."""
        return tuple(bar for run in self.runs for bar in bars_of(run))


class OverrideEntry(Entry):
    """What differs from the group for one part, by the part's own address.

    `section` is whole here: what the override left out was filled in from the group's.
    """

    kind: KindWord | None = None
    section: SectionEntry | None = None
    material: Text | None = None
    pin_offset: Offset | None = None
    spliced_at: JointList | None = None
    splice: SpliceEntry | None = None
    pin_plates: PinPlateSizes | None = None
    jaw: Size = None
    rivet_holes: RivetHolesEntry | None = None
    other_pin_offset: Offset | None = None
    side_offset: Offset | None = None
    welded: Text | None = None
    lateral_points: JointList | None = None
    ends: FixingWord | None = None
    can_push: Truth | None = None
    can_pull: Truth | None = None
    bearing: BearingWord | None = None
    """For the address of a bearing: how it sits."""
    diameter: Size = None
    """For the address of a pin, as `packing` and `half` are."""
    packing: tuple[PackedEntry, ...] | None = None
    half: Truth | None = None
    stringer: StringerPart | None = None
    """For the address of a stringer: what differs; likewise for the three below."""
    floorbeam: FloorbeamPart | None = None
    hanger: HangerEntry | None = None
    shoe: ShoeEntry | None = None
    note: Text | None = None
    reason: Text
